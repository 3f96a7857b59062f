//! What holds for every shop, design and commission, tried on random ones.
//!
//! They are built as the text of their files and go through the readers, as a maker's do. `PROPTEST_CASES` sets how many
//! cases each property takes.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

mod bytes;
mod extremes;
mod hand;
mod pages;
mod random;
mod scaling;
mod secrets;
mod sums;

use chrono::NaiveDate;
use proptest::test_runner::Config;
use reeve_shop::{Answer, Order};
use reeve_tests::TestShop;

/// So many cases, or as many as `PROPTEST_CASES` says.
fn cases(cases: u32) -> Config {
    let given = std::env::var_os("PROPTEST_CASES").is_some();
    let cases = if given { Config::default().cases } else { cases };
    // A case is a whole shop, too large to be kept as a seed; the text of a failing one is printed.
    Config { cases, failure_persistence: None, max_shrink_iters: 400, ..Config::default() }
}

/// A day for every quote.
fn day() -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 11, 25).unwrap()
}

/// The shop's one commission, priced; a fault stops the test, since every random shop is sound.
fn order(shop: &TestShop) -> Order {
    let Answer { value: open, mut faults } = shop.open();
    let order = open.order("order", &reeve_shop::Wish::default(), day()).noted(&mut faults);
    let faults: Vec<String> = faults.iter().map(|fault| fault.render(false)).collect();
    order.unwrap_or_else(|| panic!("the random shop has faults:\n{}", faults.join("\n")))
}
