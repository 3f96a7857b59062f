//! Scarce bench hours: which whole pieces bring the most in the hours there are.
//!
//! Where one thing is short, here the bench hour, what counts is not what a piece brings but what it brings for each
//! hour (the constrained resource of managerial-accounting textbooks). Pieces are whole, so that order alone may leave
//! hours idle: the mix is a knapsack problem, solved exactly in whole units of money and time. What is set up once for all
//! pieces of an offer is charged once if any are made: the fixed charge of such problems.

mod choice;
mod search;

use std::cmp::Reverse;
use std::fmt;

use reeve_measure::Remedied;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use choice::Programme;

/// The most offers that are weighed against each other: as many as there may be designs in a shop.
pub const MOST_OFFERS: usize = 10_000;

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
        // The search counts in whole numbers with a sign.
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
}

impl fmt::Display for MixError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooMany(offers) => write!(f, "{offers} offers are too many: at most {MOST_OFFERS} are weighed"),
            Self::NoBound(at) => write!(f, "offer {} takes no bench time and has no demand to bound it", at + 1),
            Self::TooMuch => write!(f, "the pieces, hours or money add up past what can be reckoned"),
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
/// [`MixError`] for too many offers, an offer without bound, or figures that are too large.
pub fn best_mix(offers: &[Offer], hours: Decimal) -> Result<Mix, MixError> {
    if offers.len() > MOST_OFFERS {
        return Err(MixError::TooMany(offers.len()));
    }
    let hours = hours.max(Decimal::ZERO);
    let mut pieces = free_of_time(offers)?;
    let programme = Programme::new(offers, hours)?;
    let found = search::best(&programme.choices, programme.hours);
    for (at, count) in programme.offers.iter().zip(found.counts) {
        pieces[*at] = count;
    }
    let (contribution, taken) = totals(offers, &pieces)?;
    let proven = found.gap == 0;
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

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests;
