//! What changed between a quote and the one that supersedes it.

use chrono::NaiveDate;
use reeve_book::QuoteFigures;
use reeve_costing::money::{Currency, to_decimals};
use reeve_costing::quote::{Quote, QuoteAmount, QuoteLine};
use rust_decimal::Decimal;

/// What stood before and what stands in its place: the two differ.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Replaced<T> {
    /// Before.
    pub old: T,
    /// Now.
    pub new: T,
}

/// A change that the client reads.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum QuoteChange {
    /// A line came, for so much.
    New(String, Decimal),
    /// A line went.
    Gone(String),
    /// So many of a line.
    Quantity(String, Replaced<Decimal>),
    /// The price of one of a line.
    UnitPrice(String, Replaced<Decimal>),
    /// What is taken off the whole.
    TakenOff(Replaced<Decimal>),
    /// What is put on the whole.
    PutOn(Replaced<Decimal>),
    /// What it comes to in all.
    InAll(Replaced<Decimal>),
    /// When it is promised.
    Promised(Replaced<Option<NaiveDate>>),
    /// What was paid so far.
    Paid(Replaced<Decimal>),
    /// The last day of the quote.
    ValidUntil(Replaced<NaiveDate>),
}

/// A change for the maker alone.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CostChange {
    /// Bench hours, to a hundredth.
    Hours(Replaced<Decimal>),
    /// Everything it costs, to the minor unit.
    Cost(Replaced<Decimal>),
    /// What remains, to the minor unit.
    Margin(Replaced<Decimal>),
}

/// What changed, for the client and for the maker alone.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Changes {
    /// For the client.
    pub client: Vec<QuoteChange>,
    /// For the maker.
    pub maker: Vec<CostChange>,
    /// Whether anything but dates and payments changed.
    pub is_more_than_dates: bool,
}

impl Changes {
    /// Compares a quote with the one that it supersedes.
    pub fn between(before: (&Quote, &QuoteFigures), after: (&Quote, &QuoteFigures), currency: Currency) -> Self {
        let (old, new) = (before.0, after.0);
        let mut client = lines(&old.lines, &new.lines);
        let sum = |amounts: &[QuoteAmount]| amounts.iter().map(|named| named.amount).sum::<Decimal>();
        client.extend(replaced(sum(&old.allowances), sum(&new.allowances)).map(QuoteChange::TakenOff));
        client.extend(replaced(sum(&old.charges), sum(&new.charges)).map(QuoteChange::PutOn));
        client.extend(replaced(old.totals.gross, new.totals.gross).map(QuoteChange::InAll));
        client.extend(replaced(old.promised, new.promised).map(QuoteChange::Promised));
        let is_more = !client.is_empty() || old.title != new.title || old.note != new.note || old.terms != new.terms;
        client.extend(replaced(old.totals.paid, new.totals.paid).map(QuoteChange::Paid));
        client.extend(replaced(old.valid_until, new.valid_until).map(QuoteChange::ValidUntil));
        let maker = maker_changes(before.1, after.1, currency);
        Self { client, is_more_than_dates: is_more || !maker.is_empty(), maker }
    }
}

fn replaced<T: PartialEq>(old: T, new: T) -> Option<Replaced<T>> {
    (old != new).then_some(Replaced { old, new })
}

/// Lines that went, came or changed; those of the same words are the same line.
fn lines(old: &[QuoteLine], new: &[QuoteLine]) -> Vec<QuoteChange> {
    let mut told = Vec::new();
    for line in new {
        let text = || line.text.clone();
        let Some(other) = old.iter().find(|other| other.text == line.text) else {
            told.push(QuoteChange::New(text(), line.amount));
            continue;
        };
        let quantity = replaced(other.quantity, line.quantity).map(|both| QuoteChange::Quantity(text(), both));
        let price = || replaced(other.unit_price, line.unit_price).map(|both| QuoteChange::UnitPrice(text(), both));
        told.extend(quantity.or_else(price));
    }
    let gone = old.iter().filter(|line| !new.iter().any(|other| other.text == line.text));
    told.extend(gone.map(|line| QuoteChange::Gone(line.text.clone())));
    told
}

fn maker_changes(old: &QuoteFigures, new: &QuoteFigures, currency: Currency) -> Vec<CostChange> {
    let rounded = |old, new| replaced(currency.round_half_away(old), currency.round_half_away(new));
    let hours = replaced(to_decimals(old.hours, 2), to_decimals(new.hours, 2)).map(CostChange::Hours);
    let cost = rounded(old.cost, new.cost).map(CostChange::Cost);
    let margin = rounded(old.margin, new.margin).map(CostChange::Margin);
    [hours, cost, margin].into_iter().flatten().collect()
}
