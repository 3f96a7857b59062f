//! One design weighed: what its price is made of, what moves the margin, how sure its hours are, when it pays back.

mod document;
mod page;

pub use document::{AtPrice, MoveJson, SureHours, WEIGH_COLUMNS, WeighJson, weigh_json, weigh_rows};
pub use page::{WeighPage, weigh_page};
pub(crate) use page::{change_words, effect_bars, price_kinds, price_stack};
