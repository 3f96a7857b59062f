//! Offers as the search for a mix sees them: whole units of money and of hours, so that its sums are exact.

use std::cmp::{Ordering, Reverse};

use rust_decimal::prelude::ToPrimitive;
use rust_decimal::{Decimal, RoundingStrategy};

use super::{MixError, Offer};

/// Digits to which the greatest figure is taken before it is counted in whole units.
const DIGITS: u32 = 9;

/// The greatest sum of units that the search is let meet. It adds and takes away a few of them, in 64 bits.
const MOST_UNITS: i64 = i64::MAX / 8;

/// An offer of which at least one fits into the hours, and of which the most that fit bring something.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Choice {
    /// What one brings, in units of money, above zero. Without what is done once.
    pub(super) contribution: i64,
    /// What one takes, in units of hours, 0 or more. Without what is done once.
    pub(super) hours: i64,
    /// What is done once uses up so many units of money, 0 or more.
    pub(super) once_cost: i64,
    /// It takes so many units of hours, 0 or more.
    pub(super) once_hours: i64,
    /// The most pieces that hours and demand allow, 1 or more.
    pub(super) most: u32,
}

impl Choice {
    /// Units of hours that so many pieces take.
    pub(super) fn takes(&self, count: u32) -> i64 {
        if count == 0 { 0 } else { i64::from(count) * self.hours + self.once_hours }
    }

    /// Units of money that so many pieces bring.
    pub(super) fn brings(&self, count: u32) -> i64 {
        if count == 0 { 0 } else { i64::from(count) * self.contribution - self.once_cost }
    }

    /// The most pieces that so many units of hours hold, what is done once among them.
    pub(super) fn most_in(&self, hours: i64) -> u32 {
        match (hours < self.once_hours, self.hours) {
            (true, _) => 0,
            (false, 0) => self.most,
            (false, each) => ((hours - self.once_hours) / each).to_u32().map_or(self.most, |fit| fit.min(self.most)),
        }
    }

    /// What an hour brings when the most are made, as a fraction: what is done once is then shared by as many as can be, so
    /// that no fewer pieces bring more for what they take.
    pub(super) fn rate(&self) -> Rate {
        Rate { brings: self.brings(self.most), takes: self.takes(self.most) }
    }

    /// The better rate first; among equals by their figures, so that the order in which offers came says nothing.
    fn by_rank(&self, other: &Self) -> Ordering {
        let figures = |choice: &Self| {
            Reverse((choice.hours, choice.contribution, choice.once_hours, choice.once_cost, choice.most))
        };
        other.rate().by_size(self.rate()).then_with(|| figures(self).cmp(&figures(other)))
    }
}

/// Units of money for units of hours.
#[derive(Debug, Clone, Copy)]
pub(super) struct Rate {
    pub(super) brings: i64,
    pub(super) takes: i64,
}

impl Rate {
    /// No hours bring anything.
    pub(super) const NOTHING: Self = Self { brings: 0, takes: 1 };

    /// Whether so many hours bring less at this rate.
    pub(super) fn brings_less_than(self, brings: i64, takes: i64) -> bool {
        i128::from(self.brings) * i128::from(takes) < i128::from(brings) * i128::from(self.takes)
    }

    fn by_size(self, other: Self) -> Ordering {
        (i128::from(self.brings) * i128::from(other.takes)).cmp(&(i128::from(other.brings) * i128::from(self.takes)))
    }
}

/// The integer programme: the most contribution, the hours its one constraint.
pub(super) struct Programme {
    /// The choices by rank, and at the same place the indices of the offers.
    pub(super) choices: Vec<Choice>,
    pub(super) offers: Vec<usize>,
    /// Hours there are, in units of hours.
    pub(super) hours: i64,
}

impl Programme {
    /// The programme of the offers that pay and take time, in these hours, 0 or more.
    pub(super) fn new(offers: &[Offer], hours: Decimal) -> Result<Self, MixError> {
        let mut fitting = Vec::new();
        for (at, offer) in offers.iter().enumerate().filter(|(_, offer)| offer.pays() && offer.takes_time()) {
            let most = offer.most_in(hours, at)?;
            if most > 0 {
                fitting.push((at, most, offer));
            }
        }
        let of = |figure: fn(&Offer) -> Decimal| fitting.iter().map(move |(.., offer)| figure(offer));
        let money = Units::of(
            of(|offer| offer.contribution).chain(of(|offer| offer.once.cost)),
            RoundingStrategy::MidpointAwayFromZero,
        )?;
        let time = Units::of(
            of(|offer| offer.hours.max(Decimal::ZERO)).chain(of(|offer| offer.once.hours)),
            RoundingStrategy::ToPositiveInfinity,
        )?;
        let hours = time.whole_in(hours)?;
        let mut ranked = Vec::new();
        for (nth, (at, most, _)) in fitting.iter().enumerate() {
            let choice = Choice {
                contribution: money.figures[nth],
                hours: time.figures[nth],
                once_cost: money.figures[fitting.len() + nth],
                once_hours: time.figures[fitting.len() + nth],
                most: *most,
            };
            // Hours were taken upwards, so that one piece fewer may fit.
            let choice = Choice { most: choice.most_in(hours), ..choice };
            choice.contribution.checked_mul(choice.most.into()).ok_or(MixError::TooMuch)?;
            // What is set up for more than it can bring is never made.
            if choice.brings(choice.most) > 0 {
                ranked.push((choice, *at));
            }
        }
        ranked.sort_by(|(a, _), (b, _)| a.by_rank(b));
        let (choices, offers) = ranked.into_iter().unzip();
        let programme = Self { choices, offers, hours };
        if programme.is_small_enough() { Ok(programme) } else { Err(MixError::TooMuch) }
    }

    /// Whether no sum of the search grows past what it reckons with: it never holds more than thrice the hours.
    fn is_small_enough(&self) -> bool {
        let Some(best) = self.choices.first() else { return true };
        let Rate { brings, takes } = best.rate();
        let most = i128::from(self.hours) * i128::from(brings) / i128::from(takes);
        self.hours <= MOST_UNITS && most <= i128::from(MOST_UNITS)
    }
}

/// Figures in whole multiples of the greatest unit that they have in common.
///
/// In whole units sums are free of rounding, two mixes differ by one unit or not at all, and money in pence is the same
/// programme as money in pounds.
struct Units {
    figures: Vec<i64>,
    /// What one unit is; zero if all figures are.
    one: Decimal,
}

impl Units {
    /// The figures, each 0 or more, taken to the digits kept.
    #[allow(clippy::disallowed_methods, reason = "digits that a sum can hold, not a figure that anyone reads")]
    fn of(figures: impl Iterator<Item = Decimal> + Clone, rounding: RoundingStrategy) -> Result<Self, MixError> {
        let greatest = figures.clone().max().unwrap_or_default();
        let places = greatest.round_sf(DIGITS).ok_or(MixError::TooMuch)?.scale();
        let taken: Vec<Decimal> = figures.map(|figure| figure.round_dp_with_strategy(places, rounding)).collect();
        let one = taken.iter().copied().fold(Decimal::ZERO, common);
        let mut units = Self { figures: Vec::new(), one };
        units.figures = taken.iter().map(|figure| units.whole_in(*figure)).collect::<Result<_, _>>()?;
        Ok(units)
    }

    /// How many whole units are in a figure; any number are none of no unit.
    fn whole_in(&self, figure: Decimal) -> Result<i64, MixError> {
        if self.one.is_zero() {
            return Ok(0);
        }
        figure.checked_div(self.one).and_then(|units| units.floor().to_i64()).ok_or(MixError::TooMuch)
    }
}

/// The greatest common measure of two figures, by Euclid.
fn common(a: Decimal, b: Decimal) -> Decimal {
    if b.is_zero() { a } else { common(b, a % b) }
}
