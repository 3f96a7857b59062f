//! From a commission's cost to its quote and to what really remains.

mod quoting;
#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::panic, reason = "a test may stop at the first surprise")]
mod tests;

use std::fmt;

use chrono::{Days, NaiveDate};
use reeve_measure::Remedied;
use rust_decimal::Decimal;
use serde::Serialize;

use crate::basis::Basis;
use crate::commission::{Commission, Item};
use crate::cost::{CordBought, Cost, CostError, ItemCost, JobCost, JobNeeds, cost_job};
use crate::money::{fraction, to_decimals};
use crate::price::{Burden, OutOfReach, PriceSteps, bounded, fee_rate, fees_on, price_for};
use crate::quote::{Quote, QuoteLine};
use crate::rates::{Aim, Rates, TaxScheme};
use crate::totals::{Sums, TaxClass, add_up};
use quoting::{quote, quote_lines, whole_amounts};

/// A commission, costed and priced: for the maker's eyes.
#[derive(Debug, Clone, PartialEq)]
pub struct Priced {
    /// Each item, from what is asked to its price.
    pub items: Vec<PricedItem>,
    /// What each line with a given price costs.
    pub lines: Vec<Cost>,
    /// What all of it needs.
    pub needs: JobNeeds,
    /// What remains of it, in the hours expected.
    pub outcome: Outcome,
    /// What remains in the hours that cover the job at a confidence.
    pub sure: AtConfidence,
    /// What the maker should look at before sending the quote.
    pub remarks: Vec<Remark>,
    /// What the client reads.
    pub quote: Quote,
}

/// Something that the maker should look at before she sends a quote.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Remark {
    /// It is promised for later than the client needs it.
    PromisedTooLate {
        /// The day promised.
        promised: NaiveDate,
        /// The day by which the client needs it.
        needed: NaiveDate,
    },
    /// Less is left than the shop aims at, in per cent of the income.
    BelowAim {
        /// What the shop aims at.
        aim: Decimal,
        /// What remains, to a tenth.
        left: Decimal,
    },
    /// It brings in less than it costs.
    Loses,
    /// An hour at the bench earns less than the wage.
    EarnsLess,
    /// The weight of a cord is a rough estimate.
    WeightEstimated {
        /// The cord's title.
        cord: String,
    },
    /// The search for the cheapest put-ups of a cord was cut short.
    MaybeCheaper {
        /// The cord's title.
        cord: String,
    },
    /// More was paid than it comes to.
    Overpaid {
        /// What goes back to the client.
        amount: Decimal,
    },
}

/// An item of a commission: what is asked, what that needs and costs, and what it is sold for.
#[derive(Debug, Clone, PartialEq)]
pub struct PricedItem {
    /// What is asked.
    pub item: Item,
    /// What all its pieces need and cost.
    pub cost: ItemCost,
    /// How the price of one came about.
    pub price: ItemPrice,
}

impl Priced {
    /// Each item with its line as the client reads it, which holds no cost and so stands in the quote.
    pub fn items_and_lines(&self) -> impl Iterator<Item = (&PricedItem, &QuoteLine)> {
        self.items.iter().zip(&self.quote.lines)
    }

    /// The lines with a given price as the client reads them, each with what it costs.
    pub fn given_lines(&self) -> impl Iterator<Item = (&QuoteLine, &Cost)> {
        self.quote.lines.iter().skip(self.items.len()).zip(&self.lines)
    }

    /// Counts what was paid so far in what the client reads, and tells the maker if it is more than is asked.
    pub fn settle(&mut self, paid: Decimal) {
        self.quote.settle(paid);
        self.remarks.retain(|remark| !matches!(remark, Remark::Overpaid { .. }));
        self.remark_on_payment();
    }

    fn remark_on_payment(&mut self) {
        let due = self.quote.totals.due;
        if due < Decimal::ZERO {
            self.remarks.push(Remark::Overpaid { amount: -due });
        }
    }
}

/// What remains of a commission in the hours that cover it at a confidence.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AtConfidence {
    /// In per cent.
    pub confidence: Decimal,
    /// Whether the prices were worked out for these hours.
    pub is_priced: bool,
    /// What remains.
    pub outcome: Outcome,
}

/// The confidence that a maker is told of where nobody says another: four times in five the hours suffice.
pub const USUAL_CONFIDENCE: Decimal = Decimal::from_parts(80, 0, 0, false, 0);

/// How an item's price came about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ItemPrice {
    /// The steps of the price, with tax under tax-inclusive prices.
    pub steps: PriceSteps,
    /// Whether the price was given and not computed.
    pub given: bool,
}

/// What remains of a commission after cost and fees.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Outcome {
    /// What comes in without tax.
    pub income: Decimal,
    /// Fees of selling.
    pub fees: Decimal,
    /// Everything it costs.
    pub cost: Cost,
    /// What remains.
    pub margin: Decimal,
    /// The same in per cent of the income; `None` without income.
    pub margin_percent: Option<Decimal>,
    /// What a bench hour earns: the margin and the labour, by hours; `None` without hours.
    pub per_hour: Option<Decimal>,
}

impl Outcome {
    /// What remains of what comes in: without tax, and with it.
    pub(crate) fn of(cost: Cost, rates: &Rates, net: Decimal, gross: Decimal) -> Self {
        let fees = fees_on(&rates.fees, net, gross);
        let margin = net - fees - cost.total();
        let percent = (!net.is_zero()).then(|| margin / net * Decimal::ONE_HUNDRED);
        let per_hour = (!cost.hours.is_zero()).then(|| (margin + cost.labour()) / cost.hours);
        Self { income: net, fees, cost, margin, margin_percent: percent, per_hour }
    }

    /// What comes in less all that would not be spent if it were not made: fees, material and other direct costs.
    ///
    /// The maker's own hours and the overhead are there whatever is made in them.
    pub fn contribution(&self) -> Decimal {
        self.income - self.fees - self.cost.material() - self.cost.other
    }

    /// The same by hours: what ranks designs when hours are scarce. `None` without hours.
    pub fn contribution_per_hour(&self) -> Option<Decimal> {
        (!self.cost.hours.is_zero()).then(|| self.contribution() / self.cost.hours)
    }
}

/// Why a commission can't be priced.
#[derive(Debug, Clone, PartialEq)]
pub enum PriceError {
    /// It can't be costed.
    Cost(CostError),
    /// The aim can't be reached.
    OutOfReach(OutOfReach),
    /// The last day of validity is past the calendar.
    Date,
}

impl fmt::Display for PriceError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Cost(fault) => write!(f, "{fault}"),
            Self::OutOfReach(reach) => write!(
                f,
                "a margin of {} % and fees of {} % leave nothing of any price",
                reach.margin.normalize(),
                to_decimals(reach.fees, 2).normalize()
            ),
            Self::Date => f.write_str("the quote's last day lies past the calendar"),
        }
    }
}

impl std::error::Error for PriceError {}

impl Remedied for PriceError {
    fn remedy(&self) -> String {
        match self {
            Self::Cost(error) => error.remedy(),
            Self::OutOfReach(_) => "aim at a smaller margin in shop.toml, or give a price".to_owned(),
            Self::Date => "choose an earlier --on or fewer valid-days".to_owned(),
        }
    }
}

/// Costs and prices a commission as of a day.
///
/// # Errors
/// [`PriceError`] when it can't be costed or the shop's aim can't be reached.
pub fn price_commission(commission: &Commission, basis: &Basis, today: NaiveDate) -> Result<Priced, PriceError> {
    let rates = &basis.rates;
    let job = cost_job(commission, basis).map_err(PriceError::Cost)?;
    let asked = commission.confidence.or(rates.price.confidence);
    let total = job.total();
    let JobCost { items: costs, lines: line_costs, needs } = job;
    let times = asked.map(|confidence| needs.times_at(confidence));
    let items = price_items(commission, costs, times, rates)?;
    let lines = quote_lines(commission, rates, &items);
    let (allowances, charges) = whole_amounts(commission, rates, &lines);
    let sums = Sums {
        lines: lines.iter().map(|(_, amount)| *amount).collect(),
        allowances: allowances.iter().map(|named| named.amount).collect(),
        charges: charges.iter().map(|named| named.amount).collect(),
        paid: commission.paid,
    };
    let (totals, taxes) = add_up(&sums, rates.tax.scheme, rates.currency);
    let outcome = Outcome::of(total, rates, totals.net, totals.gross);
    let confidence = asked.unwrap_or(USUAL_CONFIDENCE);
    let longer = total.taking(needs.times_at(confidence), rates);
    let sure = AtConfidence {
        confidence,
        is_priced: asked.is_some(),
        outcome: Outcome::of(longer, rates, totals.net, totals.gross),
    };
    let valid_until = today.checked_add_days(Days::new(u64::from(rates.terms.valid_days))).ok_or(PriceError::Date)?;
    let lines = lines.into_iter().map(|(line, _)| line).collect();
    let quote = quote(commission, rates, (today, valid_until), lines, (&allowances, &charges), (totals, &taxes));
    let remarks = remarks(commission, rates, &needs.cords, &outcome);
    let mut priced = Priced { items, lines: line_costs, needs, outcome, sure, remarks, quote };
    priced.remark_on_payment();
    Ok(priced)
}

/// What a price without tax is multiplied by to be shown.
pub(crate) fn as_shown(rates: &Rates, tax: Decimal) -> Decimal {
    match rates.tax.scheme {
        TaxScheme::Inclusive => Decimal::ONE + fraction(tax),
        TaxScheme::Net | TaxScheme::NotRegistered => Decimal::ONE,
    }
}

pub(crate) fn burden(cost: &Cost, fixed_fees: Decimal, rates: &Rates, tax: Decimal) -> Burden {
    Burden {
        cost: cost.total(),
        labour: cost.labour(),
        hours: cost.hours,
        fixed_fees,
        fee_rate: fee_rate(&rates.fees, tax),
    }
}

/// Prices every item: for the expected hours, or where a confidence is asked for those times its factor.
fn price_items(
    commission: &Commission,
    costs: Vec<ItemCost>,
    times: Option<Decimal>,
    rates: &Rates,
) -> Result<Vec<PricedItem>, PriceError> {
    let fixed: Decimal = rates.fees.iter().map(|fee| fee.fixed).sum();
    let whole: Decimal = costs.iter().map(|item| item.cost.total()).sum();
    let priced = |(item, cost): (&Item, ItemCost)| {
        let share = if whole.is_zero() { Decimal::ZERO } else { fixed * cost.cost.total() / whole };
        let sure = times.map_or(cost.cost, |times| cost.cost.taking(times, rates));
        let price = price_item(item, &sure, share, rates)?;
        Ok(PricedItem { item: item.clone(), cost, price })
    };
    commission.items.iter().zip(costs).map(priced).collect()
}

fn price_item(item: &Item, cost: &Cost, fixed_fees: Decimal, rates: &Rates) -> Result<ItemPrice, PriceError> {
    let pieces = Decimal::from(item.quantity);
    let tax = item.tax.percent();
    let burden = burden(cost, fixed_fees, rates, tax);
    let aimed = price_for(rates.price.aim, &burden).map_err(PriceError::OutOfReach)? / pieces * as_shown(rates, tax);
    let mut steps = bounded(&rates.price, rates.currency, aimed, item.quantity);
    if let Some(price) = item.price {
        steps = PriceSteps { aimed, quantity_break: Decimal::ZERO, at_minimum: false, unit: price };
    }
    Ok(ItemPrice { steps, given: item.price.is_some() })
}

fn remarks(commission: &Commission, rates: &Rates, cords: &[CordBought], outcome: &Outcome) -> Vec<Remark> {
    let mut remarks = Vec::new();
    if let (Some(promised), Some(needed)) = (commission.promised, commission.needed_by)
        && promised > needed
    {
        remarks.push(Remark::PromisedTooLate { promised, needed });
    }
    if let (Aim::Margin(aim), Some(left)) = (rates.price.aim, outcome.margin_percent)
        && left < aim - Decimal::ONE
        && outcome.margin >= Decimal::ZERO
    {
        remarks.push(Remark::BelowAim { aim: aim.normalize(), left: to_decimals(left, 1).normalize() });
    }
    if outcome.margin < Decimal::ZERO {
        remarks.push(Remark::Loses);
    }
    if outcome.per_hour.is_some_and(|earned| earned < rates.wage) {
        remarks.push(Remark::EarnsLess);
    }
    for bought in cords {
        let cord = || bought.cord.full_title();
        remarks.extend(bought.cord.density_estimated.then(|| Remark::WeightEstimated { cord: cord() }));
        remarks.extend((!bought.proven).then(|| Remark::MaybeCheaper { cord: cord() }));
    }
    remarks
}

/// How the shop's own pieces are taxed.
pub fn own_tax(rates: &Rates) -> TaxClass {
    match rates.tax.scheme {
        TaxScheme::NotRegistered => TaxClass::Untaxed,
        TaxScheme::Net | TaxScheme::Inclusive => TaxClass::Rate(rates.tax.rate),
    }
}
