//! The templates inside the program.

use crate::render::{TemplateFault, Templates};

macro_rules! built_in {
    ($($name:literal),+ $(,)?) => {
        &[$(($name, include_str!(concat!("../../../templates/", $name)))),+]
    };
}

/// Every built-in template: its name and its text.
pub const BUILT_IN: &[(&str, &str)] = built_in![
    "page.html",
    "style.css",
    "work.html",
    "quote.html",
    "costing.html",
    "bench.html",
    "takeoff.html",
    "work.txt",
    "quote.txt",
    "costing.txt",
    "bench.txt",
    "takeoff.txt",
    "book.html",
    "book.txt",
    "compare.html",
    "compare.txt",
    "mix.html",
    "mix.txt",
    "weigh.html",
    "weigh.txt",
    "knots.txt",
    "knot.txt",
    "tight.txt",
    "drawing.css",
    "chart.css",
    "graph.css",
    "legend.html",
    "sheet.html",
    "chart.html",
    "knot.html",
    "hand.txt",
    "sample.txt",
    "library.txt",
];

/// Checks the built-in templates together with a shop's own (name, path shown, text).
///
/// # Errors
/// A [`TemplateFault`] with the file, line and reason.
pub fn load(own: &[(String, String, String)]) -> Result<Templates, TemplateFault> {
    Templates::new(BUILT_IN, own)
}
