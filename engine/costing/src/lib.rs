//! The sums of `reeve`: piece, take-off, labour, cost, price, quote.
//!
//! Data flows one way: [`piece`] -> [`takeoff`] -> [`cost`] -> [`price`] -> [`quote`]. Nothing here opens a
//! file, reads a clock or looks at the environment; today's date is handed in.

pub mod basis;
pub mod calendar;
pub mod caution;
pub mod commission;
pub mod cost;
pub mod hand;
pub mod labour;
pub mod learning_curve;
pub mod mix;
pub mod money;
pub mod piece;
pub mod places;
pub mod price;
pub mod pricing;
pub mod purchase;
pub mod quote;
pub mod rates;
#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::panic, reason = "a test may stop at the first surprise")]
mod restated;
pub mod risk;
pub mod run;
#[cfg(test)]
#[allow(clippy::expect_used, reason = "a test may stop at the first surprise")]
mod sample;
pub mod schedule;
pub mod single_piece;
pub mod store;
pub mod takeoff;
pub mod totals;
pub mod whatif;
