//! A client's order or enquiry, resolved.

use std::sync::Arc;

use chrono::NaiveDate;
use reeve_measure::Time;
use rust_decimal::Decimal;

use crate::piece::Piece;
use crate::quote::AmountKind;
use crate::totals::{Amount, TaxClass};

/// A client's order or enquiry.
#[derive(Debug, Clone, PartialEq)]
pub struct Commission {
    /// The file's stem; the quote's reference.
    pub reference: String,
    /// What it is about.
    pub title: String,
    /// Who asks.
    pub client: Client,
    /// When it was asked.
    pub asked: Option<NaiveDate>,
    /// When the client needs it.
    pub needed_by: Option<NaiveDate>,
    /// When the maker promises it.
    pub promised: Option<NaiveDate>,
    /// Pieces to be made.
    pub items: Vec<Item>,
    /// Lines with a price given: bought-in articles, credits, delivery.
    pub lines: Vec<FixedLine>,
    /// Whether it jumps the queue.
    pub rush: bool,
    /// How sure the hours of its prices are, in per cent, where that differs from the shop's rule.
    pub confidence: Option<Decimal>,
    /// Taken off all lines.
    pub discount: Option<Discount>,
    /// Further amounts taken off the whole.
    pub allowances: Vec<NamedAmount>,
    /// Further amounts put on the whole.
    pub charges: Vec<NamedAmount>,
    /// Deposit in per cent, where it differs from the shop's terms.
    pub deposit: Option<Decimal>,
    /// Paid already.
    pub paid: Decimal,
    /// A sentence for the client.
    pub note: Option<String>,
}

/// Who asks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Client {
    /// Name.
    pub name: String,
    /// Lines of the address.
    pub address: Vec<String>,
}

/// So many of one design.
#[derive(Debug, Clone, PartialEq)]
pub struct Item {
    /// The design's file stem.
    pub design: String,
    /// The piece.
    pub piece: Arc<Piece>,
    /// How many.
    pub quantity: u32,
    /// What the client reads in place of the design's title.
    pub text: Option<String>,
    /// A price of one, agreed, in place of the computed one.
    pub price: Option<Decimal>,
    /// How it is taxed.
    pub tax: TaxClass,
}

/// A line with a price given.
#[derive(Debug, Clone, PartialEq)]
pub struct FixedLine {
    /// What the client reads.
    pub text: String,
    /// How many; negative for a credit.
    pub quantity: Decimal,
    /// Price of one, up to 5 decimals.
    pub unit_price: Decimal,
    /// How it is taxed.
    pub tax: TaxClass,
    /// What the whole line costs the maker.
    pub cost: Decimal,
    /// Bench time the whole line takes.
    pub time: Time,
}

/// Taken off all lines.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Discount {
    /// Why, for the client.
    pub text: String,
    /// How much.
    pub size: DiscountSize,
}

/// How much a discount takes off.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DiscountSize {
    /// So many per cent of the lines.
    Percent(Decimal),
    /// An amount, spread over the tax rates as the lines are.
    Amount(Decimal),
}

/// An amount on the whole, with its reason.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NamedAmount {
    /// Why it is taken off or put on.
    pub kind: AmountKind,
    /// Why in the maker's words; `None` for work out of turn.
    pub text: Option<String>,
    /// How many per cent it is, where it is so many of the lines.
    pub percent: Option<Decimal>,
    /// How much, positive, and how it is taxed.
    pub amount: Amount,
}
