//! Reads the files of a knot type: the knot itself, its path, and what tightening left beside it.

mod knot;
mod path;
mod tightened;

pub use knot::knot_file;
pub(crate) use tightened::{shape_file, table_file};
pub use tightened::{shape_text, table_text};
