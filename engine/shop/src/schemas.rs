//! JSON Schemas of the files a maker writes, from the readers themselves.

use reeve_catalogue::knot_file;
use reeve_reading::schema;
use serde_json::Value;

use crate::choice::Choice;
use crate::files::{commission_file, cords_file, design_file, fittings_file, samples_file, shop_file};

/// Every schema under the name of its file.
pub fn schemas() -> Vec<(&'static str, Value)> {
    vec![
        ("shop", schema("Shop", "shop.toml: who makes, and every rate of the shop.", shop_file)),
        ("cords", schema("Cords", "store/cords.toml: the cords the shop buys.", cords_file)),
        ("fittings", schema("Fittings", "store/fittings.toml: rings, dowels, beads.", fittings_file)),
        (
            "design",
            schema("Design", "designs/*.toml: a piece, described step by step.", |t| {
                design_file(t, &Choice::default())
            }),
        ),
        ("commission", schema("Commission", "commissions/*.toml: a client's order or enquiry.", commission_file)),
        ("knot", schema("Knot", "knots/*.toml: a knot type.", knot_file)),
        ("samples", schema("Samples", "knots/samples.toml: knots tied for trial and measured.", samples_file)),
    ]
}
