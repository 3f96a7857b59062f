//! One design weighed: what its price is made of, what moves the margin, how sure its hours are, when it pays back.

mod document;
mod page;

pub use document::{AtPrice, MoveJson, SureHours, WEIGH_COLUMNS, WeighJson, weigh_json, weigh_rows};
pub(crate) use page::{KINDS, effect_bars, price_stack};
pub use page::{WeighPage, weigh_page};
