//! JSON Schemas of the documents the program writes: as checked in, and from the types they are written from.

#[cfg(feature = "schemas")]
pub use of_types::schemas;

/// The text of every schema under the name of its document.
pub const SCHEMAS: &[(&str, &str)] = &[
    ("quote-json", include_str!("../schemas/quote.json")),
    ("takeoff-json", include_str!("../schemas/takeoff.json")),
    ("bench-json", include_str!("../schemas/bench.json")),
    ("costing-json", include_str!("../schemas/costing.json")),
    ("compare-json", include_str!("../schemas/compare.json")),
    ("weigh-json", include_str!("../schemas/weigh.json")),
    ("mix-json", include_str!("../schemas/mix.json")),
    ("book-list-json", include_str!("../schemas/book-list.json")),
    ("book-show-json", include_str!("../schemas/book-show.json")),
    ("book-queue-json", include_str!("../schemas/book-queue.json")),
    ("book-took-json", include_str!("../schemas/book-took.json")),
    ("book-summary-json", include_str!("../schemas/book-summary.json")),
    ("knot-json", include_str!("../schemas/knot.json")),
    ("tight-json", include_str!("../schemas/tight.json")),
    ("hand-json", include_str!("../schemas/hand.json")),
];

#[cfg(feature = "schemas")]
mod of_types {
    use reeve_costing::quote::Quote;
    use schemars::{JsonSchema, schema_for};
    use serde_json::Value;

    use crate::book::{ListJson, QueueJson, SummaryJson, TookJson, WholeJson};
    use crate::compare::CompareJson;
    use crate::hand::HandJson;
    use crate::json::{BenchJson, CostingJson, TakeOffJson};
    use crate::knots::KnotJson;
    use crate::mix::MixJson;
    use crate::tight::TightJson;
    use crate::weigh::WeighJson;

    /// The same from the types: the tests hold the texts against them.
    pub fn schemas() -> Vec<(&'static str, Value)> {
        vec![
            ("quote-json", schema_of::<Quote>()),
            ("takeoff-json", schema_of::<TakeOffJson>()),
            ("bench-json", schema_of::<BenchJson>()),
            ("costing-json", schema_of::<CostingJson>()),
            ("compare-json", schema_of::<CompareJson>()),
            ("weigh-json", schema_of::<WeighJson>()),
            ("mix-json", schema_of::<MixJson>()),
            ("book-list-json", schema_of::<ListJson>()),
            ("book-show-json", schema_of::<WholeJson>()),
            ("book-queue-json", schema_of::<QueueJson>()),
            ("book-took-json", schema_of::<TookJson>()),
            ("book-summary-json", schema_of::<SummaryJson>()),
            ("knot-json", schema_of::<KnotJson>()),
            ("tight-json", schema_of::<TightJson>()),
            ("hand-json", schema_of::<HandJson>()),
        ]
    }

    fn schema_of<T: JsonSchema>() -> Value {
        schema_for!(T).to_value()
    }
}
