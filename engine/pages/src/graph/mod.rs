//! Charts of a page's figures, as inline SVG and as letters for plain text.
//!
//! Words come in finished and lengths as plain numbers, in any unit that is the same throughout a chart. A number
//! that is not finite counts as nothing. A page that shows a chart includes `graph.css` and holds the same figures in a
//! table; no two charts of one kind on a page have the same title. The charts tell by pattern and place, so that they
//! hold in black and white. The same figures give the same bytes.

mod effects;
mod fills;
mod letters;
mod numerals;
mod sheet;
mod spots;
mod stacks;
#[cfg(test)]
#[allow(clippy::disallowed_methods, reason = "a test reckons and writes by the standard library")]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests;
mod ticks;

pub use effects::{EffectBar, effects};
pub use letters::bar;
pub use spots::{Axis, Spot, spots};
pub use stacks::{Stack, stacks};
pub use ticks::ticks;
