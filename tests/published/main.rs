//! The sums against values that others have published, each with its source beside it.
//!
//! Where the program differs from a published value on purpose, the row says DIFFERENCE and why.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

mod coil;
mod conversions;
mod currencies;
mod examples;
mod packing;
mod totals;
mod weights;

/// Whether two figures agree within a part of the second.
#[track_caller]
fn within(part: f64, figure: f64, published: f64, what: &str) {
    let off = figure / published - 1.0;
    assert!(off.abs() <= part, "{what}: {figure} is {:.2} % off {published}", off * 100.0);
}
