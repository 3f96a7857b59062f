//! What changed between a quote and the one that supersedes it, in words.

use chrono::NaiveDate;
use reeve_office::{CostChange, QuoteChange, Replaced};
use rust_decimal::Decimal;

use crate::phrases::say;
use crate::words::Words;

/// A change as the client reads it.
pub fn quote_change_words(change: &QuoteChange, words: &Words) -> String {
    let money = |both: &Replaced<Decimal>| (words.money(both.new), words.money(both.old));
    match change {
        QuoteChange::New(text, amount) => {
            say!(words, "change-new", what = text.as_str(), amount = words.money(*amount))
        }
        QuoteChange::Gone(text) => say!(words, "change-gone", what = text.as_str()),
        QuoteChange::Quantity(text, Replaced { old, new }) => {
            let (new, old) = (words.number(*new), words.number(*old));
            say!(words, "change-quantity", what = text.as_str(), new = new, old = old)
        }
        QuoteChange::UnitPrice(text, Replaced { old, new }) => {
            let (new, old) = (words.price(*new), words.price(*old));
            say!(words, "change-unit-price", what = text.as_str(), new = new, old = old)
        }
        QuoteChange::TakenOff(both) => {
            let (new, old) = money(both);
            say!(words, "change-taken-off", new = new, old = old)
        }
        QuoteChange::PutOn(both) => {
            let (new, old) = money(both);
            say!(words, "change-put-on", new = new, old = old)
        }
        QuoteChange::InAll(both) => {
            let (new, old) = money(both);
            say!(words, "change-in-all", new = new, old = old)
        }
        QuoteChange::Promised(Replaced { old, new }) => {
            let day = |day: Option<NaiveDate>| day.map_or_else(|| say!(words, "change-no-day"), |day| words.date(day));
            say!(words, "change-promised", new = day(*new), old = day(*old))
        }
        QuoteChange::Paid(both) => {
            let (new, old) = money(both);
            say!(words, "change-paid", new = new, old = old)
        }
        QuoteChange::ValidUntil(Replaced { old, new }) => {
            say!(words, "change-valid-until", new = words.date(*new), old = words.date(*old))
        }
    }
}

/// A change as the maker reads it.
pub fn cost_change_words(change: &CostChange, words: &Words) -> String {
    match change {
        CostChange::Hours(Replaced { old, new }) => {
            say!(words, "change-hours", new = words.hours(*new), old = words.hours(*old))
        }
        CostChange::Cost(Replaced { old, new }) => {
            say!(words, "change-cost", new = words.rounded(*new), old = words.rounded(*old))
        }
        CostChange::Margin(Replaced { old, new }) => {
            say!(words, "change-margin", new = words.rounded(*new), old = words.rounded(*old))
        }
    }
}
