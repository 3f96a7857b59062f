//! Scarce bench hours: which whole pieces bring the most in the hours there are.
//!
//! Where one thing is short, here the bench hour, what counts is not what a piece brings but what it brings for each
//! hour (the constrained resource of managerial-accounting textbooks). Pieces are whole, so that order alone may leave
//! hours idle: the mix is an integer programme, solved by branch and bound. What is set up once for all pieces of an offer
//! is charged once if any are made: the fixed charge of such programmes, a number that is none or one.

mod seed;

use std::cmp::Reverse;
use std::fmt;

use microlp::{ComparisonOp, OptimizationDirection, Problem, SolveOptions, Variable};
use reeve_measure::Remedied;
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
    /// What one brings in, less fees, material and other direct cost; may be zero or less. Without what is done once.
    pub contribution: Decimal,
    /// Bench hours of one; zero, or less, for what takes no bench time. Without what is done once.
    pub hours: Decimal,
    /// What is done once, however many are made.
    pub once: Once,
    /// The most that can be sold in the time looked at; `None` without such a bound.
    pub demand: Option<u32>,
}

/// What is done once for all pieces of an offer, if any are made.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Once {
    /// Bench hours: laying out, setting marks; 0 or more.
    pub hours: Decimal,
    /// What it uses up; 0 or more.
    pub cost: Decimal,
}

impl Offer {
    /// Contribution of one bench hour when one is made by itself; `None` without bench hours, or past what can be reckoned.
    pub fn per_hour(&self) -> Option<Decimal> {
        self.rate_of(1)
    }

    /// Contribution of one bench hour when so many are made.
    fn rate_of(&self, pieces: u32) -> Option<Decimal> {
        if self.takes_time() { self.brings(pieces)?.checked_div(self.takes(pieces)?) } else { None }
    }

    /// What so many bring; what is done once counts once, and not if none is made.
    fn brings(&self, pieces: u32) -> Option<Decimal> {
        let once = if pieces == 0 { Decimal::ZERO } else { self.once.cost };
        self.contribution.checked_mul(pieces.into())?.checked_sub(once)
    }

    /// Bench hours of so many.
    fn takes(&self, pieces: u32) -> Option<Decimal> {
        let once = if pieces == 0 { Decimal::ZERO } else { self.once.hours };
        self.hours.max(Decimal::ZERO).checked_mul(pieces.into())?.checked_add(once)
    }

    fn takes_time(&self) -> bool {
        self.hours > Decimal::ZERO || self.once.hours > Decimal::ZERO
    }

    fn pays(&self) -> bool {
        self.contribution > Decimal::ZERO
    }

    /// The most of it that so many hours and the demand allow. `at` is its index.
    fn most_in(&self, hours: Decimal, at: usize) -> Result<u32, MixError> {
        let left = hours.checked_sub(self.once.hours).ok_or(MixError::TooMuch)?;
        if left < Decimal::ZERO {
            return Ok(0);
        }
        if self.hours <= Decimal::ZERO {
            return self.demand.ok_or(MixError::NoBound(at));
        }
        let fit = left.checked_div(self.hours).ok_or(MixError::TooMuch)?.floor();
        let most = self.demand.map_or(fit, |demand| fit.min(demand.into()));
        // The solver counts in whole numbers with a sign.
        most.to_i32().and_then(|most| u32::try_from(most).ok()).ok_or(MixError::TooMuch)
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
    /// The gain of the linear relaxation, which may make parts of a piece, and then does a like part of what is done once for
    /// all that find a buyer. With one constraint its optimum is to fill the hours in the order of what an hour of all of
    /// them brings, so the gain is what stands in that order at the hour after the last.
    pub another_hour: Decimal,
    /// Whether no mix can bring more. If not, the search was given up, and a slightly better one may exist.
    ///
    /// Proven as a rule. It may not be when many offers bring almost the same for each hour; then, too, what is found
    /// came within 1 % of the relaxation's optimum wherever it was tried.
    pub proven: bool,
}

/// Why there is no mix.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum MixError {
    /// So many offers, and no more than [`MOST_OFFERS`] are weighed.
    TooMany(usize),
    /// The offer of this index pays, takes no bench time and has no demand: there is no end to it.
    NoBound(usize),
    /// Pieces, hours or money add up past what can be reckoned.
    TooMuch,
    /// The solver gave no sound answer; in its words.
    Solver(String),
}

impl fmt::Display for MixError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooMany(offers) => write!(f, "{offers} offers are too many: at most {MOST_OFFERS} are weighed"),
            Self::NoBound(at) => write!(f, "offer {} takes no bench time and has no demand to bound it", at + 1),
            Self::TooMuch => write!(f, "the pieces, hours or money add up past what can be reckoned"),
            Self::Solver(said) => write!(f, "no mix was found: {said}"),
        }
    }
}

impl std::error::Error for MixError {}

impl Remedied for MixError {
    fn remedy(&self) -> String {
        "name the designs to choose from".to_owned()
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
/// [`MixError`] for too many offers, an offer without bound, figures that are too large, or a failure of the solver.
pub fn best_mix(offers: &[Offer], hours: Decimal) -> Result<Mix, MixError> {
    if offers.len() > MOST_OFFERS {
        return Err(MixError::TooMany(offers.len()));
    }
    let hours = hours.max(Decimal::ZERO);
    let mut pieces = free_of_time(offers)?;
    let programme = Programme::new(offers, hours)?;
    let (counts, proven) = programme.solved()?;
    for (choice, count) in programme.choices.iter().zip(counts) {
        pieces[choice.at] = count;
    }
    let (contribution, taken) = totals(offers, &pieces)?;
    let in_demand = offers.iter().zip(&pieces).all(|(offer, made)| offer.demand.is_none_or(|most| *made <= most));
    if taken > hours || !in_demand {
        return Err(MixError::Solver("its pieces exceed the hours or the demand".to_owned()));
    }
    Ok(Mix { pieces, contribution, hours: taken, another_hour: another_hour(offers, &ranked(offers)?, hours), proven })
}

/// An offer by its index, with what it brings an hour.
struct Ranked {
    at: usize,
    per_hour: Decimal,
}

/// Offers that pay and take bench time, those that bring the most an hour first, the earlier first among equals: of an hour
/// of all that find a buyer, so that what is done once is shared by them; without an end to them it weighs nothing.
fn ranked(offers: &[Offer]) -> Result<Vec<Ranked>, MixError> {
    let worth = offers.iter().enumerate().filter(|(_, offer)| offer.pays() && offer.takes_time());
    let ranked = worth.filter(|(_, offer)| offer.demand != Some(0)).map(|(at, offer)| {
        let per_hour = match offer.demand {
            Some(demand) => offer.rate_of(demand),
            None if offer.hours > Decimal::ZERO => offer.contribution.checked_div(offer.hours),
            None => return Err(MixError::NoBound(at)),
        };
        Ok(Ranked { at, per_hour: per_hour.ok_or(MixError::TooMuch)? })
    });
    let mut ranked: Vec<Ranked> = ranked.collect::<Result<_, _>>()?;
    ranked.retain(|ranked| ranked.per_hour > Decimal::ZERO);
    ranked.sort_by_key(|ranked| Reverse(ranked.per_hour));
    Ok(ranked)
}

/// All that can be sold of what pays and takes no bench time; none of the others.
fn free_of_time(offers: &[Offer]) -> Result<Vec<u32>, MixError> {
    let made = offers.iter().enumerate().map(|(at, offer)| {
        if !offer.pays() || offer.takes_time() {
            return Ok(0);
        }
        let most = offer.demand.ok_or(MixError::NoBound(at))?;
        let brought = offer.brings(most).ok_or(MixError::TooMuch)?;
        Ok(if brought > Decimal::ZERO { most } else { 0 })
    });
    made.collect()
}

/// Contribution and hours of so many pieces of each offer.
fn totals(offers: &[Offer], pieces: &[u32]) -> Result<(Decimal, Decimal), MixError> {
    let mut made = offers.iter().zip(pieces);
    let sums = made.try_fold((Decimal::ZERO, Decimal::ZERO), |(contribution, hours), (offer, count)| {
        Some((contribution.checked_add(offer.brings(*count)?)?, hours.checked_add(offer.takes(*count)?)?))
    });
    sums.ok_or(MixError::TooMuch)
}

/// What stands between the last hour and the one after it when hours are filled in order of rank.
fn another_hour(offers: &[Offer], ranked: &[Ranked], hours: Decimal) -> Decimal {
    let end = hours.saturating_add(Decimal::ONE);
    let mut filled = Decimal::ZERO;
    let mut gain = Decimal::ZERO;
    for Ranked { at, per_hour } in ranked {
        let wanted = offers[*at].demand.map_or(Some(Decimal::MAX), |demand| offers[*at].takes(demand));
        let wanted = wanted.unwrap_or(Decimal::MAX);
        let up_to = filled.saturating_add(wanted).min(end);
        gain += (up_to - filled.max(hours)).max(Decimal::ZERO) * per_hour;
        filled = up_to;
    }
    gain
}

/// The integer programme: the most contribution, the hours its one constraint on all.
struct Programme {
    choices: Vec<OfferInUnits>,
    /// Hours there are, in the unit of the choices' hours.
    hours: f64,
}

/// An offer of which at least one fits into the hours. Money in whole units, that of all choices; hours likewise.
struct OfferInUnits {
    /// Its index.
    at: usize,
    contribution: f64,
    hours: f64,
    once_cost: f64,
    once_hours: f64,
    /// The most that hours and demand allow.
    most: u32,
}

impl Programme {
    fn new(offers: &[Offer], hours: Decimal) -> Result<Self, MixError> {
        let mut fitting = Vec::new();
        for (at, offer) in offers.iter().enumerate().filter(|(_, offer)| offer.pays() && offer.takes_time()) {
            let most = offer.most_in(hours, at)?;
            if most > 0 {
                fitting.push((at, most, offer.rate_of(most).ok_or(MixError::TooMuch)?));
            }
        }
        // What is set up for more than it can bring is never made.
        fitting.retain(|(_, _, rate)| *rate > Decimal::ZERO);
        fitting.sort_by_key(|(_, _, rate)| Reverse(*rate));
        let of = |figure: fn(&Offer) -> Decimal| fitting.iter().map(move |(at, ..)| figure(&offers[*at]));
        let money = of(|offer| offer.contribution).chain(of(|offer| offer.once.cost)).collect();
        let time = of(|offer| offer.hours.max(Decimal::ZERO)).chain(of(|offer| offer.once.hours)).collect();
        let (money, _) = WholeUnit::of(money, RoundingStrategy::MidpointAwayFromZero)?;
        let (time, unit) = WholeUnit::of(time, RoundingStrategy::ToPositiveInfinity)?;
        let choice = |(nth, (at, most, _)): (usize, &(usize, u32, Decimal))| OfferInUnits {
            at: *at,
            contribution: money[nth],
            hours: time[nth],
            once_cost: money[fitting.len() + nth],
            once_hours: time[fitting.len() + nth],
            most: *most,
        };
        Ok(Self { choices: fitting.iter().enumerate().map(choice).collect(), hours: unit.whole_in(hours)? })
    }

    /// How many of each choice, and whether that is proven to be the best.
    fn solved(&self) -> Result<(Vec<u32>, bool), MixError> {
        if self.choices.is_empty() {
            return Ok((Vec::new(), true));
        }
        let begin = seed(&self.choices, self.hours);
        let mut problem = Problem::new(OptimizationDirection::Maximize);
        let (mut counts, mut hours, mut warm) = (Vec::new(), Vec::new(), Vec::new());
        for (choice, begin) in self.choices.iter().zip(begin) {
            let most = i32::try_from(choice.most).map_err(|_| MixError::TooMuch)?;
            let count = problem.add_integer_var(choice.contribution, (0, most));
            hours.push((count, choice.hours));
            warm.push((count, begin));
            if choice.once_cost > 0.0 || choice.once_hours > 0.0 {
                // None or one: no piece is made without it.
                let set_up = problem.add_integer_var(-choice.once_cost, (0, 1));
                hours.push((set_up, choice.once_hours));
                warm.push((set_up, begin.min(1.0)));
                problem.add_constraint([(count, 1.0), (set_up, -f64::from(choice.most))], ComparisonOp::Le, 0.0);
            }
            counts.push(count);
        }
        problem.add_constraint(hours.as_slice(), ComparisonOp::Le, self.hours);
        let outcome = problem.solve_with(options(warm)).map_err(|error| MixError::Solver(error.to_string()))?;
        let proven = outcome.is_optimal();
        let solution = outcome.solution().ok_or_else(|| MixError::Solver("it was given up too early".to_owned()))?;
        let whole = counts.iter().map(|count| solution.var_value(*count).round().to_u32().ok_or(MixError::TooMuch));
        Ok((whole.collect::<Result<_, _>>()?, proven))
    }
}

/// No gap to the best is let through: contributions are whole units, and half of one is far above these tolerances.
fn options(begin: Vec<(Variable, f64)>) -> SolveOptions {
    let mut options = SolveOptions::default();
    options.node_limit = Some(MOST_NODES);
    options.mip_gap = 0.0;
    options.warm_start = Some(begin);
    options.tolerances.feasibility = 1e-9;
    options.tolerances.prune_epsilon = 1e-12;
    options
}

/// What figures are whole multiples of.
///
/// In whole units the solver's sums are free of rounding, it knows that two mixes differ by one unit or not at all, and
/// money in pence is the same programme as money in pounds.
struct WholeUnit(Decimal);

impl WholeUnit {
    /// The greatest unit of the figures, each taken to the digits kept, and the figures in it.
    #[allow(clippy::disallowed_methods, reason = "digits that a sum can hold, not a figure that anyone reads")]
    fn of(figures: Vec<Decimal>, rounding: RoundingStrategy) -> Result<(Vec<f64>, Self), MixError> {
        let greatest = figures.iter().copied().fold(Decimal::ZERO, Decimal::max);
        let places = greatest.round_sf(DIGITS).ok_or(MixError::TooMuch)?.scale();
        let taken = figures.into_iter().map(|figure| figure.round_dp_with_strategy(places, rounding));
        let taken: Vec<Decimal> = taken.collect();
        let unit = Self(taken.iter().copied().fold(Decimal::ZERO, common));
        let whole = taken.iter().map(|figure| unit.whole_in(*figure)).collect::<Result<_, _>>()?;
        Ok((whole, unit))
    }

    /// How many whole units are in a figure; any number are none of no unit.
    fn whole_in(&self, figure: Decimal) -> Result<f64, MixError> {
        if self.0.is_zero() {
            return Ok(0.0);
        }
        figure.checked_div(self.0).and_then(|units| units.floor().to_f64()).ok_or(MixError::TooMuch)
    }
}

/// The greatest common measure of two figures, by Euclid.
fn common(a: Decimal, b: Decimal) -> Decimal {
    if b.is_zero() { a } else { common(b, a % b) }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests;
