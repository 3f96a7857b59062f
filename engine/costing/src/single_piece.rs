//! A design by itself: one piece, made and sold alone. What comparisons are made of.

use std::sync::Arc;

use reeve_measure::Time;
use rust_decimal::Decimal;

use crate::basis::Basis;
use crate::cost::{Cost, JobCost, cost_made, line_cost};
use crate::mix::Once;
use crate::money::hours;
use crate::price::{PriceSteps, bounded, break_even, price_for};
use crate::pricing::{Outcome, PriceError, as_shown, burden, own_tax};
use crate::rates::{Aim, Rates};
use crate::takeoff::TakeOff;
use crate::totals::{Amount, net_and_gross};

/// One piece, costed by itself.
#[derive(Debug, Clone, PartialEq)]
pub struct SinglePiece {
    /// What it needs and costs.
    pub job: JobCost,
    /// The same in all.
    pub cost: Cost,
    /// The price by the shop's aim, as prices are shown.
    pub price: PriceSteps,
    /// The lowest price that still pays the wage: cost and fees, nothing left over. As prices are shown.
    pub lowest: Decimal,
}

impl SinglePiece {
    /// Costs and prices one piece.
    ///
    /// # Errors
    /// [`PriceError`] when it can't be costed or the shop's aim can't be reached.
    pub fn of(take_off: &Arc<TakeOff>, basis: &Basis) -> Result<Self, PriceError> {
        let rates = &basis.rates;
        let job = cost_made(&[(Arc::clone(take_off), 1)], &[], basis).map_err(PriceError::Cost)?;
        let cost = job.total();
        let sure = rates.price.confidence.map_or(cost, |confidence| cost.taking(job.needs.times_at(confidence), rates));
        let price = bounded(&rates.price, rates.currency, price_at(rates.price.aim, &sure, rates)?, 1);
        let bare = price_at(Aim::Margin(Decimal::ZERO), &cost, rates)?;
        Ok(Self { job, cost, price, lowest: rates.currency.round_up_to(bare, Decimal::ZERO) })
    }

    /// Bench hours of what is done once however many are made, and what it uses up: both are in the cost of the one.
    pub fn once(&self) -> Once {
        let once = self.job.items.iter().map(|item| item.take_off.once());
        let (time, cost) = once.fold((Time::ZERO, Decimal::ZERO), |sum, once| (sum.0 + once.0, sum.1 + once.1));
        Once { hours: hours(time).min(self.cost.hours), cost }
    }

    /// What remains when it is sold at a price, as prices are shown.
    pub fn sold_at(&self, price: Decimal, rates: &Rates) -> Outcome {
        let amount = Amount { amount: rates.currency.round_half_away(price), tax: own_tax(rates) };
        let (net, gross) = net_and_gross(amount, rates.tax.scheme, rates.currency);
        Outcome::of(self.cost, rates, net, gross)
    }

    /// What remains when it is sold at the price of the shop's aim.
    pub fn sold(&self, rates: &Rates) -> Outcome {
        self.sold_at(self.price.unit, rates)
    }
}

/// Work done once for a design, before the first is sold: drafting, samples, photographs.
#[derive(Debug, Clone, PartialEq)]
pub struct Effort {
    /// What it was.
    pub title: String,
    /// How long it took: the maker's own figure, so neither pace nor allowances touch it.
    pub time: Time,
    /// What it cost.
    pub cost: Decimal,
}

/// What the work done once for a design costs: what was spent, the hours at the wage, and the overhead of both.
pub fn cost_of_efforts(efforts: &[Effort], rates: &Rates) -> Cost {
    let effort = |effort: &Effort| line_cost(effort.cost, effort.time, rates);
    efforts.iter().map(effort).fold(Cost::default(), |sum, cost| sum.plus(&cost))
}

/// How many pieces pay for the work done once, each with what remains of it; `None` if none ever do.
pub fn pieces_to_pay(efforts: &Cost, sold: &Outcome) -> Option<Decimal> {
    break_even(efforts.total(), sold.income - sold.fees, sold.cost.total())
}

/// The price of one that reaches an aim, unrounded, as prices are shown.
fn price_at(aim: Aim, cost: &Cost, rates: &Rates) -> Result<Decimal, PriceError> {
    let tax = own_tax(rates).percent();
    let fixed = rates.fees.iter().map(|fee| fee.fixed).sum();
    let net = price_for(aim, &burden(cost, fixed, rates, tax)).map_err(PriceError::OutOfReach)?;
    Ok(net * as_shown(rates, tax))
}
