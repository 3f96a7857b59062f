//! The shop's rates: what its bench, its selling and its terms cost.

use reeve_measure::{Length, Time};
use rust_decimal::Decimal;

use crate::calendar::Calendar;
use crate::learning_curve::LearningCurve;
use crate::money::{Currency, fraction};

/// Everything a shop decides once for all its commissions.
#[derive(Debug, Clone, PartialEq)]
pub struct Rates {
    /// Who makes and sells.
    pub maker: Maker,
    /// The currency of every amount.
    pub currency: Currency,
    /// How tax stands in prices.
    pub tax: TaxRule,
    /// Pay of a bench hour.
    pub wage: Decimal,
    /// How overhead is laid on the work.
    pub overhead: Overhead,
    /// Bench hours in a week, where the shop says so.
    pub weekly_hours: Option<Decimal>,
    /// Days at the bench, and days off.
    pub calendar: Calendar,
    /// How numbers of quotes are written, where the shop says so: with `{year}` and `{running}`.
    pub number_pattern: Option<String>,
    /// Pace, allowances and handling.
    pub bench: Bench,
    /// What every price aims at.
    pub price: PriceRule,
    /// What selling costs.
    pub fees: Vec<Fee>,
    /// What the client is told.
    pub terms: Terms,
}

/// The maker, as on the letterhead.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Maker {
    /// The shop's name.
    pub name: String,
    /// A line beneath it.
    pub tagline: Option<String>,
    /// Lines of the address.
    pub address: Vec<String>,
    /// Lines of how to reach it.
    pub contact: Vec<String>,
    /// Accent colour of the pages, as `#rrggbb`.
    pub accent: String,
    /// Language tag of numbers, dates and pages (BCP 47).
    pub language: String,
}

/// How tax stands in prices.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TaxRule {
    /// Whether and how prices hold tax.
    pub scheme: TaxScheme,
    /// Rate of the shop's own pieces, in per cent.
    pub rate: Decimal,
    /// Registration number shown to the client.
    pub number: Option<String>,
    /// A sentence shown to the client.
    pub note: Option<String>,
}

/// Whether and how prices hold tax.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TaxScheme {
    /// Not registered: no tax is charged.
    NotRegistered,
    /// Prices are net; tax is added below.
    Net,
    /// Prices include tax; it is shown as contained.
    Inclusive,
}

impl TaxScheme {
    /// Every scheme with its word.
    pub const WORDS: &'static [(&'static str, Self)] =
        &[("not-registered", Self::NotRegistered), ("net", Self::Net), ("inclusive", Self::Inclusive)];
}

/// How overhead is laid on the work.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Overhead {
    /// An amount for each bench hour: yearly overhead by yearly bench hours.
    PerHour(Decimal),
    /// So many per cent of the labour.
    OfLabour(Decimal),
    /// So many per cent of the prime cost: material, labour and other direct costs.
    OfPrimeCost(Decimal),
}

impl Overhead {
    /// The rate for each bench hour that a year's overhead comes to.
    pub fn yearly(overhead: Decimal, bench_hours: Decimal) -> Self {
        Self::PerHour(overhead / bench_hours)
    }

    /// What it adds to some work.
    pub fn on(self, labour: Decimal, hours: Decimal, other_direct: Decimal) -> Decimal {
        match self {
            Self::PerHour(rate) => rate * hours,
            Self::OfLabour(percent) => labour * fraction(percent),
            Self::OfPrimeCost(percent) => (labour + other_direct) * fraction(percent),
        }
    }
}

/// Pace, allowances and handling times of the bench.
#[derive(Debug, Clone, PartialEq)]
pub struct Bench {
    /// The maker's time against the catalogue's: 1.2 takes a fifth longer. It stands where a time study puts its rating.
    ///
    /// Timed samples and finished work start from it and stand in its place: see [`crate::basis::Basis::pace_and_pull`].
    pub pace: f64,
    /// How far that strays from job to job, as a share of it, where the shop says so. See [`crate::basis::Basis::pace_strays`].
    pub pace_spread: Option<f64>,
    /// Relaxation allowances, each a name and a percentage of the time.
    pub allowances: Vec<(String, Decimal)>,
    /// How practice shortens the making of many alike.
    pub practice: LearningCurve,
    /// Times of handling.
    pub handling: Handling,
    /// Added to every cut length, in per cent.
    pub cutting_allowance: Decimal,
    /// Cut lengths are rounded up to a whole number of these.
    pub cutting_step: Length,
}

/// Times of handling, before pace and allowances.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Handling {
    /// Laying out for one design, however many pieces.
    pub set_up: Time,
    /// Setting the marks for one group of cords, however many pieces are cut to them.
    pub marks: Time,
    /// Measuring and cutting one cord.
    pub cut: Time,
    /// Threading one bead.
    pub bead: Time,
    /// Trimming one leg's tail.
    pub trim: Time,
    /// Combing out one leg's tail.
    pub comb: Time,
    /// Packing one piece.
    pub pack: Time,
}

/// What every price aims at, and what bounds it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PriceRule {
    /// The aim.
    pub aim: Aim,
    /// No piece is sold below this.
    pub minimum: Decimal,
    /// Prices are rounded up to a whole number of these.
    pub step: Decimal,
    /// How sure the hours of a price are, in per cent, where the shop says so; else a price is for the hours expected.
    pub confidence: Option<Decimal>,
    /// Surcharge for work that jumps the queue, in per cent.
    pub rush: Decimal,
    /// From so many pieces of one design on, so many per cent off; ascending.
    pub breaks: Vec<(u32, Decimal)>,
    /// Whether the client sees what a piece's price is made up of.
    pub itemised: bool,
}

impl PriceRule {
    /// Per cent off for a quantity.
    pub fn break_for(&self, quantity: u32) -> Decimal {
        let reached = self.breaks.iter().rev().find(|(from, _)| quantity >= *from);
        reached.map_or(Decimal::ZERO, |(_, off)| *off)
    }
}

/// What a price aims at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Aim {
    /// So many per cent of the price are left over after cost and fees.
    Margin(Decimal),
    /// So many per cent on top of cost.
    Markup(Decimal),
    /// So much is earned by a bench hour, in place of the wage.
    PerHour(Decimal),
}

/// A fee of selling.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fee {
    /// What it is for.
    pub name: String,
    /// Per cent of what it is taken on.
    pub rate: Decimal,
    /// So much for each order.
    pub fixed: Decimal,
    /// What the rate is taken on.
    pub on: FeeBase,
}

/// What a fee's rate is taken on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FeeBase {
    /// The price without tax.
    Net,
    /// Everything the client pays.
    Gross,
}

impl FeeBase {
    /// Both with their word.
    pub const WORDS: &'static [(&'static str, Self)] = &[("net", Self::Net), ("gross", Self::Gross)];
}

/// What the client is told.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Terms {
    /// Days the quote stays open.
    pub valid_days: u32,
    /// Deposit on acceptance, in per cent of the whole.
    pub deposit: Decimal,
    /// Sentences of the terms.
    pub sentences: Vec<String>,
    /// How to look after the piece.
    pub care: Vec<String>,
}
