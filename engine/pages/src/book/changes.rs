//! What changed between a quote and the one that supersedes it, in words.

use chrono::NaiveDate;
use reeve_office::{CostChange, QuoteChange, Replaced};

use crate::words::Words;

/// A change as the client reads it.
pub fn quote_change_words(change: &QuoteChange, words: &Words) -> String {
    let money = |amount| words.money(amount);
    let day = |day: Option<NaiveDate>| day.map_or_else(|| "none".to_owned(), |day| words.date(day));
    match change {
        QuoteChange::New(text, amount) => format!("New: {text}, {}.", money(*amount)),
        QuoteChange::Gone(text) => format!("No longer: {text}."),
        QuoteChange::Quantity(text, both) => told(text, both, |quantity| words.number(quantity)),
        QuoteChange::UnitPrice(text, Replaced { old, new }) => {
            format!("{text}: {} each in place of {}.", words.price(*new), words.price(*old))
        }
        QuoteChange::TakenOff(both) => told("Taken off the whole", both, money),
        QuoteChange::PutOn(both) => told("Put on the whole", both, money),
        QuoteChange::InAll(both) => told("In all", both, money),
        QuoteChange::Promised(both) => told("To be ready", both, day),
        QuoteChange::Paid(both) => told("Paid so far", both, money),
        QuoteChange::ValidUntil(both) => told("Valid until", both, |day| words.date(day)),
    }
}

/// A change as the maker reads it.
pub fn cost_change_words(change: &CostChange, words: &Words) -> String {
    match change {
        CostChange::Hours(both) => told("Bench hours", both, |hours| words.hours(hours)),
        CostChange::Cost(both) => told("Cost", both, |amount| words.rounded(amount)),
        CostChange::Margin(both) => told("Margin", both, |amount| words.rounded(amount)),
    }
}

fn told<T: Copy>(what: &str, Replaced { old, new }: &Replaced<T>, worded: impl Fn(T) -> String) -> String {
    format!("{what}: {} in place of {}.", worded(*new), worded(*old))
}
