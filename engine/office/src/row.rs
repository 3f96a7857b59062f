//! A design beside others: what one of it needs, costs, brings in and earns.

use reeve_costing::money::{decimal, to_millionths};
use reeve_costing::rates::Rates;
use reeve_costing::single_piece::SinglePiece;
use reeve_measure::count;
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

/// A design in a size, and what one of it comes to alone. Amounts are decimal strings in the shop's currency, without
/// tax but for prices, which stand as the shop shows them.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
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
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
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
            before_fees: to_millionths(outcome.margin + outcome.fees),
            fees: to_millionths(outcome.fees),
            margin: to_millionths(outcome.margin),
            margin_percent: to_millionths(outcome.margin_percent.unwrap_or_default()),
            per_hour: to_millionths(outcome.per_hour.unwrap_or_default()),
            contribution: to_millionths(outcome.contribution()),
            contribution_per_hour: to_millionths(outcome.contribution_per_hour().unwrap_or_default()),
        }
    }
}

/// A design in a size, as it is to be called and sold.
#[derive(Debug, Clone, Copy)]
pub struct Offered<'a> {
    /// Its file's stem.
    pub design: &'a str,
    /// Its size or its measures, where it is not as it stands.
    pub size: Option<&'a str>,
    /// As written on pages.
    pub title: &'a str,
    /// What buyers pay, where it is known; as prices are shown.
    pub market: Option<Decimal>,
    /// How many find a buyer in a week, where it is known.
    pub weekly: Option<u32>,
}

impl DesignRow {
    /// The row of a design that was costed by itself.
    pub fn of(offered: &Offered<'_>, alone: &SinglePiece, rates: &Rates) -> Self {
        let cost = &alone.cost;
        let items = || alone.job.items.iter().map(|item| &item.take_off);
        let cord_mm: u64 = items().flat_map(|taken| &taken.cords).map(|line| line.cut_mm * line.count).sum();
        let grams: f64 = items().map(|taken| taken.weight.as_g()).sum();
        let put_ups: u64 =
            alone.job.needs.cords.iter().flat_map(|bought| &bought.put_ups).map(|(_, count)| *count).sum();
        let once = alone.once();
        Self {
            design: offered.design.to_owned(),
            size: offered.size.map(str::to_owned),
            title: offered.title.to_owned(),
            cord_m: decimal(count(cord_mm) / 1000.0, 2),
            put_ups: Decimal::from(put_ups),
            weight_g: decimal(grams, 0),
            hours: cost.hours,
            once_hours: once.hours,
            material: to_millionths(cost.material() + cost.other),
            labour: to_millionths(cost.labour()),
            overhead: to_millionths(cost.overhead),
            cost: to_millionths(cost.total()),
            once_cost: to_millionths(once.cost),
            lowest_price: alone.lowest,
            price: alone.price.unit,
            sold: Earned::at(alone, alone.price.unit, rates),
            market: offered.market,
            market_sold: offered.market.map(|price| Earned::at(alone, price, rates)),
            weekly: offered.weekly,
        }
    }
}
