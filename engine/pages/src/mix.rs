//! The best use of a week's bench hours: which designs, how many of each, and what one more hour would bring.

use reeve_costing::mix::Once;
use reeve_costing::money::to_millionths;
use reeve_costing::rates::Rates;
use reeve_costing::whatif::Change;
use reeve_office::{Week, WeekDesign};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde::Serialize;

use crate::graph;
use crate::phrases::say;
use crate::quote::{Letterhead, Sum};
use crate::weigh::change_words;
use crate::words::Words;

/// The form of the document for other programs; raised when a field changes its meaning or goes.
const FORM: u32 = 1;

/// A week shared out, in finished words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct MixPage {
    head: Letterhead,
    hours: String,
    changes: Vec<String>,
    rows: Vec<MixRow>,
    sums: Vec<Sum>,
    remarks: Vec<String>,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct MixRow {
    title: String,
    price: String,
    hours: String,
    per_hour: String,
    weekly: String,
    pieces: String,
    made: bool,
    bar: String,
    /// A length from 0 to 100 for what an hour contributes, the best design's being 100.
    length: u32,
}

/// Width of the bars of text, in characters.
const BAR: usize = 12;

/// Words a week shared out; `changes` says what is otherwise than in the shop.
pub fn mix_page(week: &Week, changes: &[Change], rates: &Rates, words: &Words) -> MixPage {
    let best = week.designs.iter().filter_map(|design| design.offer.per_hour()).max().unwrap_or_default();
    MixPage {
        head: Letterhead::new(rates, &say!(words, "mix-title")),
        hours: words.hours(week.hours),
        changes: changes.iter().map(|change| change_words(change, words)).collect(),
        rows: week.designs.iter().map(|design| mix_row(design, best, words)).collect(),
        sums: sums(week, words),
        remarks: remarks(week, words),
    }
}

fn mix_row(WeekDesign { row, offer, pieces }: &WeekDesign, best: Decimal, words: &Words) -> MixRow {
    let pieces = *pieces;
    let per_hour = offer.per_hour().unwrap_or_default();
    let share = if best > Decimal::ZERO { (per_hour / best).to_f64().unwrap_or_default() } else { 0.0 };
    MixRow {
        title: row.title.clone(),
        price: words.price(row.asked()),
        hours: words.fixed(row.hours, 2),
        per_hour: words.rounded(per_hour),
        weekly: row.weekly.map_or_else(|| say!(words, "mix-any"), |weekly| words.count(u64::from(weekly))),
        pieces: if pieces == 0 { String::new() } else { words.count(u64::from(pieces)) },
        made: pieces > 0,
        bar: graph::bar(share, BAR),
        length: (Decimal::ONE_HUNDRED * per_hour.max(Decimal::ZERO) / best.max(Decimal::ONE)).to_u32().unwrap_or(100),
    }
}

fn sums(week: &Week, words: &Words) -> Vec<Sum> {
    let row = |text: String, amount: String, strong| Sum { text, amount, strong };
    let mut rows = vec![
        row(say!(words, "mix-take"), words.hours(week.mix.hours), false),
        row(say!(words, "mix-contribute"), words.rounded(week.mix.contribution), true),
    ];
    if !week.mix.hours.is_zero() {
        rows.push(row(say!(words, "mix-per-hour"), words.rounded(week.mix.contribution / week.mix.hours), false));
    }
    rows.push(row(say!(words, "mix-another-hour"), words.rounded(week.mix.another_hour), true));
    rows
}

fn remarks(week: &Week, words: &Words) -> Vec<String> {
    let any = |is_so: fn(&WeekDesign) -> bool| week.designs.iter().any(is_so);
    let remarks = [
        any(|design| design.offer.once != Once::default()).then(|| say!(words, "mix-done-once")),
        any(|design| design.row.weekly.is_none()).then(|| say!(words, "mix-any-number")),
        any(|design| design.row.market.is_none()).then(|| say!(words, "mix-no-market")),
        (!week.mix.proven).then(|| say!(words, "mix-unproven")),
    ];
    remarks.into_iter().flatten().collect()
}

/// A week shared out, for other programs. Amounts are decimal strings.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct MixJson {
    /// Version of this form.
    pub form: u32,
    /// Three letters of ISO 4217.
    pub currency: String,
    /// Bench hours in the week.
    pub hours: Decimal,
    /// Each design, in order of what an hour of it contributes.
    pub designs: Vec<MixedDesign>,
    /// Bench hours that they take.
    pub hours_taken: Decimal,
    /// What they contribute.
    pub contribution: Decimal,
    /// What one more bench hour would bring.
    pub another_hour: Decimal,
    /// Whether no mix brings more.
    pub proven: bool,
}

/// A design in a week.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct MixedDesign {
    /// The design's file stem.
    pub design: String,
    /// Its size or its measures, where it is not as it stands.
    pub size: Option<String>,
    /// The price it is sold at.
    pub price: Decimal,
    /// Bench hours of one made by itself.
    pub hours: Decimal,
    /// Of these, hours of what is done once for all pieces made.
    pub once_hours: Decimal,
    /// What an hour of one made by itself contributes; nothing without hours.
    pub per_hour: Option<Decimal>,
    /// The most that find a buyer in a week; nothing where nobody has said.
    pub weekly: Option<u32>,
    /// How many to make.
    pub pieces: u32,
}

/// A week shared out, for other programs.
pub fn mix_json(week: &Week, rates: &Rates) -> MixJson {
    MixJson {
        form: FORM,
        currency: rates.currency.code().to_owned(),
        hours: week.hours,
        designs: week
            .designs
            .iter()
            .map(|WeekDesign { row, offer, pieces }| MixedDesign {
                design: row.design.clone(),
                size: row.size.clone(),
                price: row.asked(),
                hours: row.hours,
                once_hours: row.once_hours,
                per_hour: offer.per_hour().map(to_millionths),
                weekly: row.weekly,
                pieces: *pieces,
            })
            .collect(),
        hours_taken: week.mix.hours,
        contribution: to_millionths(week.mix.contribution),
        another_hour: to_millionths(week.mix.another_hour),
        proven: week.mix.proven,
    }
}
