//! What changed between a quote and the one that supersedes it.

use reeve_book::QuoteFigures;
use reeve_costing::quote::{Quote, QuoteLine};
use rust_decimal::Decimal;

use crate::words::Words;

/// What changed, for the client and for the maker alone.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Changed {
    /// For the client.
    pub client: Vec<String>,
    /// For the maker.
    pub maker: Vec<String>,
    /// Whether anything but dates changed.
    pub is_more_than_dates: bool,
}

/// Compares a quote with the one that supersedes it.
pub fn changed(before: (&Quote, &QuoteFigures), after: (&Quote, &QuoteFigures), words: &Words) -> Changed {
    let (old, new) = (before.0, after.0);
    let mut client = lines(&old.lines, &new.lines, words);
    let none = || "none".to_owned();
    let day = |day: Option<chrono::NaiveDate>| day.map_or_else(none, |day| words.date(day));
    let off = |quote: &Quote| quote.allowances.iter().map(|named| named.amount).sum::<Decimal>();
    let on = |quote: &Quote| quote.charges.iter().map(|named| named.amount).sum::<Decimal>();
    tell(&mut client, "Taken off the whole", &words.money(off(old)), &words.money(off(new)));
    tell(&mut client, "Put on the whole", &words.money(on(old)), &words.money(on(new)));
    tell(&mut client, "In all", &words.money(old.totals.gross), &words.money(new.totals.gross));
    tell(&mut client, "To be ready", &day(old.promised), &day(new.promised));
    let is_more_than_dates =
        !client.is_empty() || old.title != new.title || old.note != new.note || old.terms != new.terms;
    tell(&mut client, "Paid so far", &words.money(old.totals.paid), &words.money(new.totals.paid));
    tell(&mut client, "Valid until", &words.date(old.valid_until), &words.date(new.valid_until));
    let maker = maker_lines(before.1, after.1, words);
    Changed { client, is_more_than_dates: is_more_than_dates || !maker.is_empty(), maker }
}

/// Lines that went, came or changed; those of the same words are the same line.
fn lines(old: &[QuoteLine], new: &[QuoteLine], words: &Words) -> Vec<String> {
    let mut told = Vec::new();
    for line in new {
        match old.iter().find(|other| other.text == line.text) {
            None => told.push(format!("New: {}, {}.", line.text, words.money(line.net))),
            Some(other) if other.quantity != line.quantity => told.push(format!(
                "{}: {} in place of {}.",
                line.text,
                words.number(line.quantity),
                words.number(other.quantity)
            )),
            Some(other) if other.unit_price != line.unit_price => told.push(format!(
                "{}: {} each in place of {}.",
                line.text,
                words.price(line.unit_price),
                words.price(other.unit_price)
            )),
            Some(_) => {}
        }
    }
    let gone = old.iter().filter(|line| !new.iter().any(|other| other.text == line.text));
    told.extend(gone.map(|line| format!("No longer: {}.", line.text)));
    told
}

fn maker_lines(old: &QuoteFigures, new: &QuoteFigures, words: &Words) -> Vec<String> {
    let mut told = Vec::new();
    tell(&mut told, "Bench hours", &words.hours(old.hours.round_dp(2)), &words.hours(new.hours.round_dp(2)));
    tell(&mut told, "Cost", &words.rounded(old.cost), &words.rounded(new.cost));
    tell(&mut told, "Margin", &words.rounded(old.margin), &words.rounded(new.margin));
    told
}

/// Tells what stands in place of what, if it reads otherwise.
fn tell(told: &mut Vec<String>, what: &str, old: &str, new: &str) {
    if old != new {
        told.push(format!("{what}: {new} in place of {old}."));
    }
}
