//! Scarce bench hours: which whole pieces bring the most in the hours there are.
//!
//! Where one thing is short, here the bench hour, what counts is not what a piece brings but what it brings for each
//! hour (the constrained resource of managerial-accounting textbooks). Pieces are whole, so that order alone may leave
//! hours idle: the mix is an integer programme, solved by branch and bound.

mod seed;

use std::cmp::Reverse;
use std::fmt;

use microlp::{ComparisonOp, OptimizationDirection, Problem, SolveOptions, Variable};
use rust_decimal::prelude::ToPrimitive;
use rust_decimal::{Decimal, RoundingStrategy};

use seed::seed;

/// The most offers that are weighed against each other.
///
/// So many take the solver less than a second on a usual computer even when it has to give up proving.
pub const MOST_OFFERS: usize = 100;

/// Partial mixes the solver looks at before it gives up proving: a bound of work and not of time, so that the same
/// offers give the same mix on every machine.
const MOST_NODES: u64 = 20_000;

/// Digits to which the greatest figure is taken before the solver, which reckons in binary fractions, gets it.
const DIGITS: u32 = 9;

/// One kind of piece that could be made and sold.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Offer {
    /// What one brings in, less fees, material and other direct cost; may be zero or less.
    pub contribution: Decimal,
    /// Bench hours of one; zero, or less, for what takes no bench time.
    pub hours: Decimal,
    /// The most that can be sold in the time looked at; `None` without such a bound.
    pub demand: Option<u32>,
}

impl Offer {
    /// Contribution of one bench hour; `None` without bench hours, or past what can be reckoned.
    pub fn per_hour(&self) -> Option<Decimal> {
        if self.takes_time() { self.contribution.checked_div(self.hours) } else { None }
    }

    fn takes_time(&self) -> bool {
        self.hours > Decimal::ZERO
    }

    fn pays(&self) -> bool {
        self.contribution > Decimal::ZERO
    }

    /// The most of it that so many hours and the demand allow.
    fn most_in(&self, hours: Decimal) -> Result<i32, MixFault> {
        let fit = hours.checked_div(self.hours).ok_or(MixFault::TooMuch)?.floor();
        let most = self.demand.map_or(fit, |demand| fit.min(demand.into()));
        most.to_i32().ok_or(MixFault::TooMuch)
    }
}

/// What to make, and what it comes to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mix {
    /// How many of each, in the order of the offers.
    pub pieces: Vec<u32>,
    /// What they bring together.
    pub contribution: Decimal,
    /// Bench hours they take together.
    pub hours: Decimal,
    /// What one more hour would bring if a piece could be carried over into the next week: 0 or more.
    ///
    /// The gain of the linear relaxation, which may make parts of a piece. With one constraint its optimum is to fill the
    /// hours in the order of [`Offer::per_hour`], so the gain is what stands in that order at the hour after the last.
    pub another_hour: Decimal,
    /// Whether no mix can bring more. If not, the search was given up, and a slightly better one may exist.
    ///
    /// Proven as a rule. It may not be when many offers bring almost the same for each hour; then, too, what is found
    /// came within 1 % of the relaxation's optimum wherever it was tried.
    pub proven: bool,
}

/// Why there is no mix.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum MixFault {
    /// So many offers, and no more than [`MOST_OFFERS`] are weighed.
    TooMany(usize),
    /// The offer of this index pays, takes no bench time and has no demand: there is no end to it.
    NoBound(usize),
    /// Pieces, hours or money add up past what can be reckoned.
    TooMuch,
    /// The solver gave no sound answer; in its words.
    Solver(String),
}

impl fmt::Display for MixFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooMany(offers) => write!(f, "{offers} offers are too many: at most {MOST_OFFERS} are weighed"),
            Self::NoBound(at) => write!(f, "offer {} takes no bench time and has no demand to bound it", at + 1),
            Self::TooMuch => write!(f, "the pieces, hours or money add up past what can be reckoned"),
            Self::Solver(said) => write!(f, "no mix was found: {said}"),
        }
    }
}

/// Finds the whole pieces that bring the most within the bench hours; hours below zero are none.
///
/// What brings nothing or costs is never made; what pays and takes no bench time is made up to its demand. Among mixes
/// that bring the same, which one is found depends on the offers and their order alone.
///
/// Exact for figures of up to nine digits, counted from the first of the greatest. Longer ones are taken to nine to
/// choose the pieces: contributions to the nearest, hours upwards, by which a piece may be lost that would have filled
/// the hours to the last digit. The totals are always reckoned from the full figures.
///
/// # Errors
/// [`MixFault`] for too many offers, an offer without bound, figures that are too large, or a failure of the solver.
pub fn best_mix(offers: &[Offer], hours: Decimal) -> Result<Mix, MixFault> {
    if offers.len() > MOST_OFFERS {
        return Err(MixFault::TooMany(offers.len()));
    }
    let hours = hours.max(Decimal::ZERO);
    let ranked = ranked(offers)?;
    let mut pieces = free_of_time(offers)?;
    let programme = Programme::new(offers, &ranked, hours)?;
    let (counts, proven) = programme.solved()?;
    for (choice, count) in programme.choices.iter().zip(counts) {
        pieces[choice.at] = count;
    }
    let (contribution, taken) = totals(offers, &pieces)?;
    let in_demand = offers.iter().zip(&pieces).all(|(offer, made)| offer.demand.is_none_or(|most| *made <= most));
    if taken > hours || !in_demand {
        return Err(MixFault::Solver("its pieces exceed the hours or the demand".to_owned()));
    }
    Ok(Mix { pieces, contribution, hours: taken, another_hour: another_hour(offers, &ranked, hours), proven })
}

/// An offer by its index, with what it brings an hour.
struct Ranked {
    at: usize,
    per_hour: Decimal,
}

/// Offers that pay and take bench time, those that bring the most an hour first, the earlier first among equals.
fn ranked(offers: &[Offer]) -> Result<Vec<Ranked>, MixFault> {
    let worth = offers.iter().enumerate().filter(|(_, offer)| offer.pays() && offer.takes_time());
    let ranked = worth.map(|(at, offer)| Some(Ranked { at, per_hour: offer.per_hour()? }));
    let mut ranked: Vec<Ranked> = ranked.collect::<Option<_>>().ok_or(MixFault::TooMuch)?;
    ranked.sort_by_key(|ranked| Reverse(ranked.per_hour));
    Ok(ranked)
}

/// All that can be sold of what pays and takes no bench time; none of the others.
fn free_of_time(offers: &[Offer]) -> Result<Vec<u32>, MixFault> {
    let made = offers.iter().enumerate().map(|(at, offer)| {
        if offer.pays() && !offer.takes_time() { offer.demand.ok_or(MixFault::NoBound(at)) } else { Ok(0) }
    });
    made.collect()
}

/// Contribution and hours of so many pieces of each offer.
fn totals(offers: &[Offer], pieces: &[u32]) -> Result<(Decimal, Decimal), MixFault> {
    let mut made = offers.iter().zip(pieces).map(|(offer, count)| (offer, Decimal::from(*count)));
    let sums = made.try_fold((Decimal::ZERO, Decimal::ZERO), |(contribution, hours), (offer, count)| {
        let contribution = contribution.checked_add(offer.contribution.checked_mul(count)?)?;
        Some((contribution, hours.checked_add(offer.hours.max(Decimal::ZERO).checked_mul(count)?)?))
    });
    sums.ok_or(MixFault::TooMuch)
}

/// What stands between the last hour and the one after it when hours are filled in order of rank.
fn another_hour(offers: &[Offer], ranked: &[Ranked], hours: Decimal) -> Decimal {
    let end = hours.saturating_add(Decimal::ONE);
    let mut filled = Decimal::ZERO;
    let mut gain = Decimal::ZERO;
    for Ranked { at, per_hour } in ranked {
        let wanted = offers[*at].demand.map_or(Decimal::MAX, |demand| offers[*at].hours.saturating_mul(demand.into()));
        let up_to = filled.saturating_add(wanted).min(end);
        gain += (up_to - filled.max(hours)).max(Decimal::ZERO) * per_hour;
        filled = up_to;
    }
    gain
}

/// The integer programme: the most contribution, the hours its one constraint.
struct Programme {
    choices: Vec<Choice>,
    /// Hours there are, in the unit of the choices' hours.
    hours: f64,
}

/// An offer of which at least one fits into the hours.
struct Choice {
    /// Its index.
    at: usize,
    /// In whole units, that of all choices' contributions.
    contribution: f64,
    /// In whole units, that of all choices' hours.
    hours: f64,
    /// The most that hours and demand allow.
    most: i32,
}

impl Programme {
    fn new(offers: &[Offer], ranked: &[Ranked], hours: Decimal) -> Result<Self, MixFault> {
        let fitting = ranked.iter().map(|ranked| Ok((ranked.at, offers[ranked.at].most_in(hours)?)));
        let mut fitting: Vec<(usize, i32)> = fitting.collect::<Result<_, _>>()?;
        fitting.retain(|(_, most)| *most > 0);
        let of = |figure: fn(&Offer) -> Decimal| fitting.iter().map(|(at, _)| figure(&offers[*at])).collect();
        let (contributions, _) = Unit::of(of(|offer| offer.contribution), RoundingStrategy::MidpointAwayFromZero)?;
        let (each, unit) = Unit::of(of(|offer| offer.hours), RoundingStrategy::ToPositiveInfinity)?;
        let figures = contributions.into_iter().zip(each);
        let choices = fitting.iter().zip(figures).map(|((at, most), (contribution, hours))| Choice {
            at: *at,
            contribution,
            hours,
            most: *most,
        });
        Ok(Self { choices: choices.collect(), hours: unit.whole_in(hours)? })
    }

    /// How many of each choice, and whether that is proven to be the best.
    fn solved(&self) -> Result<(Vec<u32>, bool), MixFault> {
        if self.choices.is_empty() {
            return Ok((Vec::new(), true));
        }
        let mut problem = Problem::new(OptimizationDirection::Maximize);
        let counts: Vec<Variable> =
            self.choices.iter().map(|choice| problem.add_integer_var(choice.contribution, (0, choice.most))).collect();
        let hours: Vec<(Variable, f64)> =
            counts.iter().zip(&self.choices).map(|(count, choice)| (*count, choice.hours)).collect();
        problem.add_constraint(hours.as_slice(), ComparisonOp::Le, self.hours);
        let outcome = problem.solve_with(self.options(&counts)).map_err(|error| MixFault::Solver(error.to_string()))?;
        let proven = outcome.is_optimal();
        let solution = outcome.solution().ok_or_else(|| MixFault::Solver("it was given up too early".to_owned()))?;
        let whole = counts.iter().map(|count| solution.var_value(*count).round().to_u32().ok_or(MixFault::TooMuch));
        Ok((whole.collect::<Result<_, _>>()?, proven))
    }

    /// No gap to the best is let through: contributions are whole units, and half of one is far above these tolerances.
    fn options(&self, counts: &[Variable]) -> SolveOptions {
        let mut options = SolveOptions::default();
        options.node_limit = Some(MOST_NODES);
        options.mip_gap = 0.0;
        options.warm_start = Some(counts.iter().copied().zip(seed(&self.choices, self.hours)).collect());
        options.tolerances.feasibility = 1e-9;
        options.tolerances.prune_epsilon = 1e-12;
        options
    }
}

/// What figures are whole multiples of.
///
/// In whole units the solver's sums are free of rounding, it knows that two mixes differ by one unit or not at all, and
/// money in pence is the same programme as money in pounds.
struct Unit(Decimal);

impl Unit {
    /// The greatest unit of the figures, each taken to the digits kept, and the figures in it.
    fn of(figures: Vec<Decimal>, rounding: RoundingStrategy) -> Result<(Vec<f64>, Self), MixFault> {
        let greatest = figures.iter().copied().fold(Decimal::ZERO, Decimal::max);
        let places = greatest.round_sf(DIGITS).ok_or(MixFault::TooMuch)?.scale();
        let taken = figures.into_iter().map(|figure| figure.round_dp_with_strategy(places, rounding));
        let taken: Vec<Decimal> = taken.collect();
        let unit = Self(taken.iter().copied().fold(Decimal::ZERO, common));
        let whole = taken.iter().map(|figure| unit.whole_in(*figure)).collect::<Result<_, _>>()?;
        Ok((whole, unit))
    }

    /// How many whole units are in a figure; any number are none of no unit.
    fn whole_in(&self, figure: Decimal) -> Result<f64, MixFault> {
        if self.0.is_zero() {
            return Ok(0.0);
        }
        figure.checked_div(self.0).and_then(|units| units.floor().to_f64()).ok_or(MixFault::TooMuch)
    }
}

/// The greatest common measure of two figures, by Euclid.
fn common(a: Decimal, b: Decimal) -> Decimal {
    if b.is_zero() { a } else { common(b, a % b) }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests;
