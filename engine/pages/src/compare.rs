//! Designs beside one another: what each needs, costs, brings in and earns.

mod columns;
mod page;

use reeve_costing::rates::Rates;
use reeve_costing::single_piece::SinglePiece;
use reeve_measure::count;
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use schemars::JsonSchema;
use serde::Serialize;

use crate::figures::cents;
pub use columns::{Condition, column_words, compare_csv, sort_rows};
pub use page::{ComparePage, Comparison, compare_page};

/// The form of a comparison for other programs; raised when a field changes its meaning or goes.
const FORM: u32 = 2;

/// A design in a size, and what one of it comes to alone. Amounts are decimal strings in the shop's currency, without
/// tax but for prices, which stand as the shop shows them.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct DesignRow {
    /// The design's file stem.
    pub design: String,
    /// Its size or its measures, where it is not as it stands.
    pub size: Option<String>,
    /// As written on pages.
    pub title: String,
    /// Cord cut, in metres.
    pub cord_m: Decimal,
    /// Put-ups bought for one alone.
    pub put_ups: Decimal,
    /// Mass of the finished piece, in grams.
    pub weight_g: Decimal,
    /// Bench hours.
    pub hours: Decimal,
    /// Of these, hours of what is done once however many are made.
    pub once_hours: Decimal,
    /// Cord, rings, dowels, beads and what tasks use up.
    pub material: Decimal,
    /// Labour.
    pub labour: Decimal,
    /// Overhead.
    pub overhead: Decimal,
    /// Everything it costs.
    pub cost: Decimal,
    /// Of this, what is used up once however many are made.
    pub once_cost: Decimal,
    /// The lowest price that still pays the wage.
    pub lowest_price: Decimal,
    /// Price of one by the shop's aim, and what that comes to.
    pub price: Decimal,
    /// What it then earns.
    pub sold: Earned,
    /// What buyers pay, where it is known.
    pub market: Option<Decimal>,
    /// What it earns at that.
    pub market_sold: Option<Earned>,
    /// The most that find a buyer in a week, where it is known.
    pub weekly: Option<u32>,
}

/// What a design earns at a price.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Earned {
    /// What remains after cost, before fees.
    pub before_fees: Decimal,
    /// Fees of selling one.
    pub fees: Decimal,
    /// What remains after cost and fees.
    pub margin: Decimal,
    /// The same in per cent of the price without tax.
    pub margin_percent: Decimal,
    /// What a bench hour earns: the margin and the labour, by hours.
    pub per_hour: Decimal,
    /// What comes in less fees, material and other direct costs.
    pub contribution: Decimal,
    /// The same by hours: what scarce hours are ranked by.
    pub contribution_per_hour: Decimal,
}

/// Designs beside one another, for other programs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct CompareJson {
    /// Version of this form.
    pub form: u32,
    /// Three letters of ISO 4217.
    pub currency: String,
    /// Each design.
    pub designs: Vec<DesignRow>,
}

impl DesignRow {
    /// The price that it is sold at: what buyers pay where that is known, else by the shop's aim.
    pub fn asked(&self) -> Decimal {
        self.market.unwrap_or(self.price)
    }

    /// What it earns at that price.
    pub fn earned(&self) -> &Earned {
        self.market_sold.as_ref().unwrap_or(&self.sold)
    }
}

impl Earned {
    fn at(alone: &SinglePiece, price: Decimal, rates: &Rates) -> Self {
        let outcome = alone.sold_at(price, rates);
        Self {
            before_fees: cents(outcome.margin + outcome.fees),
            fees: cents(outcome.fees),
            margin: cents(outcome.margin),
            margin_percent: cents(outcome.margin_percent.unwrap_or_default()),
            per_hour: cents(outcome.per_hour.unwrap_or_default()),
            contribution: cents(outcome.contribution()),
            contribution_per_hour: cents(outcome.contribution_per_hour().unwrap_or_default()),
        }
    }
}

/// How far each input is changed to tell what it moves, in per cent.
pub const TENTH: Decimal = Decimal::TEN;

/// Names of a design: its file's stem, its size if it is not as it stands, and its title.
pub type Names<'a> = (&'a str, Option<String>, &'a str);

/// One design's row; the market is what buyers pay, and how many of them there are in a week.
pub fn design_row(
    (design, size, title): Names<'_>,
    alone: &SinglePiece,
    (market, weekly): (Option<Decimal>, Option<u32>),
    rates: &Rates,
) -> DesignRow {
    let cost = &alone.cost;
    let cord_mm: u64 =
        alone.job.items.iter().flat_map(|item| &item.take_off.cords).map(|line| line.cut_mm * line.count).sum();
    let grams: f64 = alone.job.items.iter().map(|item| item.take_off.weight.as_g()).sum();
    let put_ups: u64 = alone.job.cords.iter().flat_map(|bought| &bought.put_ups).map(|(_, count)| *count).sum();
    let once = alone.once();
    DesignRow {
        design: design.to_owned(),
        size,
        title: title.to_owned(),
        cord_m: Decimal::from_f64(count(cord_mm) / 1000.0).unwrap_or_default().round_dp(2),
        put_ups: Decimal::from(put_ups),
        weight_g: Decimal::from_f64(grams).unwrap_or_default().round_dp(0),
        hours: cost.hours,
        once_hours: once.hours,
        material: cents(cost.material() + cost.other),
        labour: cents(cost.labour()),
        overhead: cents(cost.overhead),
        cost: cents(cost.total()),
        once_cost: cents(once.cost),
        lowest_price: alone.lowest,
        price: alone.price.unit,
        sold: Earned::at(alone, alone.price.unit, rates),
        market,
        market_sold: market.map(|price| Earned::at(alone, price, rates)),
        weekly,
    }
}

/// Designs beside one another, for other programs.
pub fn compare_json(rows: &[DesignRow], rates: &Rates) -> CompareJson {
    CompareJson { form: FORM, currency: rates.currency.code().to_owned(), designs: rows.to_vec() }
}
