//! Schemas, manual and command page: what is checked in is what the program prints, and files keep to their schemas.
//!
//! `REEVE_REGENERATE=1` writes them anew.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

mod documents;
mod files;
mod reference;

use reeve_tests::{TestShop, root};
use serde_json::Value;

/// Kinds of file that a maker writes; their schemas stand in `engine/shop/schemas/`.
const FILES: [&str; 7] = ["shop", "cords", "fittings", "design", "commission", "knot", "samples"];
/// Documents that the program writes; their schemas stand in `engine/pages/schemas/`.
const DOCUMENTS: [&str; 15] = [
    "book-list",
    "book-show",
    "book-queue",
    "book-took",
    "book-summary",
    "quote",
    "takeoff",
    "bench",
    "costing",
    "compare",
    "weigh",
    "mix",
    "knot",
    "tight",
    "hand",
];

/// What the program prints.
fn print(words: &[&str]) -> String {
    TestShop::none().run(words).done()
}

/// The schema of a kind, as the program prints it.
fn schema(kind: &str) -> Value {
    serde_json::from_str(&print(&["schema", kind])).unwrap()
}

/// What a value breaks of a schema, formats such as dates included.
fn breaks(schema: &Value, value: &Value) -> Vec<String> {
    let validator = jsonschema::options().should_validate_formats(true).build(schema).unwrap();
    validator.iter_errors(value).map(|error| format!("{}: {error}", error.instance_path())).collect()
}

/// A file of the workspace.
fn at(path: &str) -> std::path::PathBuf {
    root().join(path)
}
