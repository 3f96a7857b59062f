//! Job costing of a commission: direct material, direct labour, other direct costs, overhead.

use std::fmt;
use std::sync::Arc;

use reeve_measure::{Length, Remedied, Time, bound};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use crate::basis::Basis;
use crate::commission::{Commission, FixedLine};
use crate::money::{for_hours, fraction, hours, ratio, to_decimals};
use crate::purchase::{Cut, PurchaseError, cheapest};
use crate::rates::Rates;
use crate::risk::Spread;
use crate::store::{Charge, Cord, Fitting, Many, PutUp};
use crate::takeoff::{PieceFault, TakeOff, add_fitting, take_off};

/// What some pieces of one design cost, in all.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Cost {
    /// Cord.
    pub cord: Decimal,
    /// Rings, dowels, beads.
    pub fittings: Decimal,
    /// Labour of tying and handling.
    pub making: Decimal,
    /// Labour of the design's tasks and of packing.
    pub finishing: Decimal,
    /// What the tasks use up, and what a line with a given price costs.
    pub other: Decimal,
    /// Overhead.
    pub overhead: Decimal,
    /// Bench hours.
    pub hours: Decimal,
}

impl Cost {
    /// Direct labour.
    pub fn labour(&self) -> Decimal {
        self.making + self.finishing
    }

    /// Direct material.
    pub fn material(&self) -> Decimal {
        self.cord + self.fittings
    }

    /// Everything.
    pub fn total(&self) -> Decimal {
        self.material() + self.labour() + self.other + self.overhead
    }

    /// Both together.
    #[must_use]
    pub fn plus(&self, other: &Self) -> Self {
        Self {
            cord: self.cord + other.cord,
            fittings: self.fittings + other.fittings,
            making: self.making + other.making,
            finishing: self.finishing + other.finishing,
            other: self.other + other.other,
            overhead: self.overhead + other.overhead,
            hours: self.hours + other.hours,
        }
    }

    /// The same work with its hours multiplied by a factor.
    #[must_use]
    pub fn taking(&self, times: Decimal, rates: &Rates) -> Self {
        let longer =
            Self { making: self.making * times, finishing: self.finishing * times, hours: self.hours * times, ..*self };
        longer.with_overhead(rates)
    }

    fn with_overhead(mut self, rates: &Rates) -> Self {
        self.overhead = rates.overhead.on(self.labour(), self.hours, self.material() + self.other);
        self
    }
}

/// One cord, bought for the whole commission.
#[derive(Debug, Clone, PartialEq)]
pub struct CordBought {
    /// The cord.
    pub cord: Arc<Cord>,
    /// Put-ups to buy, each with how many; none of a form is left out.
    pub put_ups: Vec<(PutUp, u64)>,
    /// What they cost.
    pub price: Decimal,
    /// What the commission is charged.
    pub charged: Decimal,
    /// Cord on them.
    pub bought: Length,
    /// Cord cut from them.
    pub cut: Length,
    /// Whether the choice was proven the cheapest.
    pub proven: bool,
}

/// What one item of a commission needs and costs.
#[derive(Debug, Clone, PartialEq)]
pub struct ItemCost {
    /// What one piece needs.
    pub take_off: Arc<TakeOff>,
    /// Bench time of all its pieces.
    pub time: Time,
    /// What all its pieces cost.
    pub cost: Cost,
}

/// What a whole commission needs and costs.
#[derive(Debug, Clone, PartialEq)]
pub struct JobCost {
    /// Each item, in order.
    pub items: Vec<ItemCost>,
    /// Each line with a given price, in order.
    pub lines: Vec<Cost>,
    /// What all of them need together.
    pub needs: JobNeeds,
}

/// What a whole commission needs, whatever it is of.
#[derive(Debug, Clone, PartialEq)]
pub struct JobNeeds {
    /// Cord to buy.
    pub cords: Vec<CordBought>,
    /// Fittings to buy, each with how many.
    pub fittings: Vec<Many<Fitting>>,
    /// Bench time of everything, and how far it strays: single steps, and the maker's pace common to all of them.
    pub time: Spread,
}

/// Why a commission can't be costed.
#[derive(Debug, Clone, PartialEq)]
pub enum CostError {
    /// The design of the item of this index can't be made.
    Piece(usize, Vec<PieceFault>),
    /// No put-ups can be bought for a cord.
    Purchase(String, PurchaseError),
    /// It costs more than can be reckoned.
    TooMuch(Decimal),
}

impl fmt::Display for CostError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Piece(_, faults) => {
                write!(f, "{}", faults.first().map_or("a piece can't be made", |fault| &fault.title))
            }
            Self::Purchase(cord, error) => write!(f, "{cord} can't be bought: {error}"),
            Self::TooMuch(cost) => write!(f, "the commission costs {}", to_decimals(*cost, 2)),
        }
    }
}

impl std::error::Error for CostError {}

impl Remedied for CostError {
    fn remedy(&self) -> String {
        match self {
            Self::Piece(_, faults) => faults.first().map(|fault| fault.help.clone()).unwrap_or_default(),
            Self::Purchase(_, error) => error.remedy(),
            Self::TooMuch(_) => "look for a slip in quantities, minutes, prices or the wage".to_owned(),
        }
    }
}

impl JobCost {
    /// Everything together.
    pub fn total(&self) -> Cost {
        let items = self.items.iter().map(|item| &item.cost);
        items.chain(&self.lines).fold(Cost::default(), |sum, cost| sum.plus(cost))
    }
}

impl JobNeeds {
    /// The factor on the expected hours that covers the job at a confidence given in per cent; 1 or more.
    pub fn times_at(&self, confidence: Decimal) -> Decimal {
        if self.time.mean <= Time::ZERO {
            return Decimal::ONE;
        }
        let sure = self.time.at(fraction(confidence).to_f64().unwrap_or_default());
        ratio(sure, self.time.mean).max(Decimal::ONE)
    }
}

/// Costs a commission.
///
/// # Errors
/// [`CostError`] when a piece can't be made or a cord can't be bought.
pub fn cost_job(commission: &Commission, basis: &Basis) -> Result<JobCost, CostError> {
    let mut made = Vec::new();
    for (at, item) in commission.items.iter().enumerate() {
        let take_off = take_off(&item.piece, basis).map_err(|faults| CostError::Piece(at, faults))?;
        made.push((Arc::new(take_off), item.quantity));
    }
    cost_made(&made, &commission.lines, basis)
}

/// Costs what has been taken off, each for so many pieces, and lines with a price given.
///
/// # Errors
/// [`CostError`] when a cord can't be bought.
pub fn cost_made(made: &[(Arc<TakeOff>, u32)], lines: &[FixedLine], basis: &Basis) -> Result<JobCost, CostError> {
    let rates = &basis.rates;
    let needs: Vec<(&TakeOff, u32)> = made.iter().map(|(take_off, pieces)| (&**take_off, *pieces)).collect();
    let cords = buy_cords(&needs)?;
    let fittings = all_fittings(&needs);
    let item = |(take_off, pieces): &(Arc<TakeOff>, u32)| ItemCost {
        time: take_off.time_of(*pieces),
        cost: item_cost(take_off, *pieces, &cords, rates),
        take_off: Arc::clone(take_off),
    };
    let time = spread(&needs, lines).with_pace(basis.pace_strays());
    let items = made.iter().map(item).collect();
    let lines = lines.iter().map(|line| line_cost(line.cost, line.time, rates)).collect();
    let job = JobCost { items, lines, needs: JobNeeds { cords, fittings, time } };
    let total = job.total().total();
    if total.to_f64().is_some_and(|total| bound::JOB_COST.holds(total)) {
        Ok(job)
    } else {
        Err(CostError::TooMuch(total))
    }
}

/// Time of everything, as far as single steps and tasks are doubted.
fn spread(needs: &[(&TakeOff, u32)], lines: &[FixedLine]) -> Spread {
    let items = needs.iter().map(|(take_off, pieces)| take_off.spread_of(*pieces));
    let lines = lines.iter().map(|line| Spread::certain(line.time));
    items.chain(lines).fold(Spread::certain(Time::ZERO), Spread::plus)
}

/// Buys the cord of some take-offs, each for so many pieces.
///
/// # Errors
/// [`CostError::Purchase`] when a cord can't be bought.
pub fn buy_cords(needs: &[(&TakeOff, u32)]) -> Result<Vec<CordBought>, CostError> {
    let mut cords: Vec<Arc<Cord>> = Vec::new();
    for line in needs.iter().flat_map(|(take_off, _)| &take_off.cords) {
        if !cords.iter().any(|known| known.name == line.cord.name) {
            cords.push(Arc::clone(&line.cord));
        }
    }
    cords.into_iter().map(|cord| buy(cord, needs)).collect()
}

fn buy(cord: Arc<Cord>, needs: &[(&TakeOff, u32)]) -> Result<CordBought, CostError> {
    let lines = needs.iter().flat_map(|(take_off, pieces)| take_off.cords.iter().map(move |line| (line, *pieces)));
    let cuts: Vec<Cut> = lines
        .filter(|(line, _)| line.cord.name == cord.name)
        .map(|(line, pieces)| Cut { length_mm: line.cut_mm, count: line.count * u64::from(pieces) })
        .collect();
    let purchase = cheapest(&cord.put_ups, &cuts).map_err(|error| CostError::Purchase(cord.title.clone(), error))?;
    let charged = match cord.charge {
        Charge::Whole => purchase.cost,
        Charge::Used => part(purchase.cost, purchase.needed_mm, purchase.bought_mm),
    };
    let bought = cord.put_ups.iter().cloned().zip(purchase.counts).filter(|(_, count)| *count > 0).collect();
    Ok(CordBought {
        put_ups: bought,
        price: purchase.cost,
        charged,
        bought: millimetres(purchase.bought_mm),
        cut: millimetres(purchase.needed_mm),
        proven: purchase.proven,
        cord,
    })
}

fn millimetres(mm: u64) -> Length {
    Length::mm(reeve_measure::count(mm))
}

/// So much of an amount as a part is of a whole; nothing of nothing.
fn part(amount: Decimal, part: u64, whole: u64) -> Decimal {
    if whole == 0 {
        return Decimal::ZERO;
    }
    let (part, whole) = (Decimal::from(part), Decimal::from(whole));
    // Exact while it fits; past that the last of 28 digits may be lost, which no coin notices.
    amount.checked_mul(part).map_or_else(|| amount * (part / whole), |product| product / whole)
}

fn all_fittings(needs: &[(&TakeOff, u32)]) -> Vec<Many<Fitting>> {
    let mut all = Vec::new();
    for (take_off, pieces) in needs {
        for (fitting, count) in &take_off.fittings {
            add_fitting(&mut all, fitting, count.saturating_mul(*pieces));
        }
    }
    all
}

/// An item carries each cord by its part of what was cut for the commission.
fn item_cost(take_off: &TakeOff, pieces: u32, cords: &[CordBought], rates: &Rates) -> Cost {
    let cord = cords.iter().map(|bought| {
        let mine = take_off.cut_mm_of(&bought.cord) * u64::from(pieces);
        part(bought.charged, mine, whole_mm(bought.cut))
    });
    let fittings =
        take_off.fittings.iter().map(|(fitting, count)| fitting.price * Decimal::from(*count) * Decimal::from(pieces));
    let (finishing, handling): (Vec<_>, Vec<_>) = take_off.chores.iter().partition(|chore| !chore.kind.is_handling());
    let chore_time = |chores: &[&crate::takeoff::Chore]| chores.iter().map(|chore| chore.time_of(pieces)).sum::<Time>();
    let (making, finishing) = (take_off.steps_time(pieces) + chore_time(&handling), chore_time(&finishing));
    Cost {
        cord: cord.sum(),
        fittings: fittings.sum(),
        making: for_hours(rates.wage, making),
        finishing: for_hours(rates.wage, finishing),
        other: take_off.chores.iter().map(|chore| chore.cost_of(pieces)).sum(),
        overhead: Decimal::ZERO,
        hours: hours(making) + hours(finishing),
    }
    .with_overhead(rates)
}

fn whole_mm(length: Length) -> u64 {
    length.as_mm().round().to_u64().unwrap_or_default()
}

/// What some spending and some hours cost together, overhead included.
pub(crate) fn line_cost(spent: Decimal, time: Time, rates: &Rates) -> Cost {
    Cost { other: spent, making: for_hours(rates.wage, time), hours: hours(time), ..Cost::default() }
        .with_overhead(rates)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rates::Overhead;

    fn money(amount: i64) -> Decimal {
        Decimal::from(amount)
    }

    #[test]
    fn a_part_of_an_amount_is_its_share_of_the_whole_however_large() {
        let huge = Decimal::MAX / money(8);
        for (amount, mine, all, expected) in [
            (money(90), 2, 3, money(60)),
            (money(7), 0, 0, Decimal::ZERO),
            (huge, 3_000, 4_000, huge / money(4) * money(3)),
        ] {
            let found = part(amount, mine, all);
            assert!((found - expected).abs() <= expected / Decimal::from(10_u64.pow(18)), "{found} and not {expected}");
        }
    }

    #[test]
    fn jobs_of_the_textbook() {
        // Overhead 500,000 over 25,000 h: 20.00/h; job of 800 material, 1,200 labour, 100 h: 4,000.
        let Overhead::PerHour(rate) = Overhead::yearly(money(500_000), money(25_000)) else { return };
        assert_eq!(rate, money(20));
        let overhead = Overhead::PerHour(rate);
        assert_eq!(money(800) + money(1200) + overhead.on(money(1200), money(100), money(800)), money(4000));
        // Material 405, 29 h of labour at 23, overhead at 20 an hour: 1,652 (managerial-accounting textbooks, both).
        let labour = for_hours(money(23), Time::hours(29.0));
        let cost = Cost {
            cord: money(405),
            making: labour,
            hours: money(29),
            overhead: overhead.on(labour, money(29), money(405)),
            ..Cost::default()
        };
        assert_eq!(cost.total(), money(1652));
    }

    #[test]
    fn overhead_by_percentage() {
        assert_eq!(Overhead::OfLabour(money(40)).on(money(200), money(9), money(50)), money(80));
        assert_eq!(Overhead::OfPrimeCost(money(10)).on(money(200), money(9), money(50)), money(25));
    }
}
