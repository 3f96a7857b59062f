//! JSON Schemas of the documents the program writes, from the types they are written from.

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

/// Every schema under the name of its document.
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
