//! One design weighed, for other programs.

use std::fmt::Write;

use reeve_costing::money::{to_decimals, to_millionths};
use reeve_office::{TENTH, Weighed};
use rust_decimal::Decimal;
use serde::Serialize;

/// The form of the document; raised when a field changes its meaning or goes.
const FORM: u32 = 1;

/// A design weighed, for other programs. Amounts are decimal strings.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct WeighJson {
    /// Version of this form.
    pub form: u32,
    /// The design's file stem.
    pub design: String,
    /// As written on pages.
    pub title: String,
    /// Three letters of ISO 4217.
    pub currency: String,
    /// What it comes to at the price weighed.
    pub weighed: AtPrice,
    /// Bench hours expected.
    pub hours: Decimal,
    /// The lowest price that still pays the wage.
    pub lowest_price: Decimal,
    /// The price by the shop's aim.
    pub price: Decimal,
    /// What each input moves when it alone is changed by a tenth.
    pub moves: Vec<MoveJson>,
    /// The hours that suffice with some confidences.
    pub sure: Vec<SureHours>,
    /// What it comes to at other prices.
    pub prices: Vec<AtPrice>,
    /// What work done once for the design cost.
    pub efforts: Decimal,
    /// How many pieces pay for it; nothing if none ever do, or if there was none.
    pub pieces_to_pay: Option<Decimal>,
}

/// What a design comes to at a price.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct AtPrice {
    /// The price, as prices are shown.
    pub price: Decimal,
    /// What comes in, without tax.
    pub income: Decimal,
    /// Fees of selling.
    pub fees: Decimal,
    /// What remains after cost and fees.
    pub margin: Decimal,
    /// The same in per cent of what comes in; nothing without income.
    pub margin_percent: Option<Decimal>,
    /// What a bench hour earns; nothing without hours.
    pub per_hour: Option<Decimal>,
}

/// What an input moves.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct MoveJson {
    /// The word it is called by.
    pub input: &'static str,
    /// By how many per cent it is changed.
    pub percent: Decimal,
    /// What the margin gains, at the same price, when it is higher.
    pub higher: Decimal,
    /// The same when it is lower.
    pub lower: Decimal,
}

/// Hours that suffice with a confidence.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct SureHours {
    /// In per cent.
    pub confidence: Decimal,
    /// Bench hours.
    pub hours: Decimal,
    /// The price that the aim asks for them.
    pub price: Decimal,
    /// What remains at the price weighed if it takes them all.
    pub margin: Decimal,
}

fn at_price(weighed: &Weighed<'_>, price: Decimal) -> AtPrice {
    let sold = weighed.scales.sold_at(price);
    AtPrice {
        price,
        income: sold.income,
        fees: to_millionths(sold.fees),
        margin: to_millionths(sold.margin),
        margin_percent: sold.margin_percent.map(to_millionths),
        per_hour: sold.per_hour.map(to_millionths),
    }
}

/// A design weighed, and what it comes to at some prices, for other programs.
pub fn weigh_json(weighed: &Weighed<'_>, prices: &[Decimal]) -> WeighJson {
    let scales = weighed.scales;
    let (efforts, pieces_to_pay) = weighed.pays_back().unwrap_or_default();
    WeighJson {
        form: FORM,
        design: scales.found.name.clone(),
        title: scales.found.piece.title.clone(),
        currency: scales.changed.basis.rates.currency.code().to_owned(),
        weighed: at_price(weighed, weighed.price),
        hours: scales.alone.cost.hours,
        lowest_price: scales.alone.lowest,
        price: scales.alone.price.unit,
        moves: weighed
            .effects
            .iter()
            .map(|effect| MoveJson {
                input: effect.input.word(),
                percent: TENTH,
                higher: to_millionths(effect.higher),
                lower: to_millionths(effect.lower),
            })
            .collect(),
        sure: weighed
            .sure
            .iter()
            .map(|sure| SureHours {
                confidence: sure.confidence,
                hours: to_decimals(sure.hours, 4).normalize(),
                price: sure.price,
                margin: to_millionths(sure.margin),
            })
            .collect(),
        prices: prices.iter().map(|price| at_price(weighed, *price)).collect(),
        efforts: to_millionths(efforts),
        pieces_to_pay,
    }
}

/// The columns of [`weigh_rows`].
pub const WEIGH_COLUMNS: &str = "price,income,fees,margin,margin-percent,per-hour\n";

/// What it comes to at some prices, as comma-separated values (RFC 4180): figures alone, so nothing is ever quoted.
pub fn weigh_rows(weighed: &Weighed<'_>, prices: &[Decimal]) -> String {
    let mut rows = String::new();
    let known = |figure: Option<Decimal>| figure.map(|figure| figure.to_string()).unwrap_or_default();
    for price in prices {
        let at = at_price(weighed, *price);
        let (percent, per_hour) = (known(at.margin_percent), known(at.per_hour));
        let _ = writeln!(rows, "{},{},{},{},{percent},{per_hour}", at.price, at.income, at.fees, at.margin);
    }
    rows
}
