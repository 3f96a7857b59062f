//! The maker's hand: what her samples say of her cords, her knots and her pace.
//!
//! Every figure is a shrunk estimate: a normal belief held before any sample, moved by each sample as far as the sample
//! is to be trusted, so that a few samples can't swing a price. The spreads below are judgement, not measurement.
//!
//! 1. **Give of a cord** `g`, before: normal round the store's word with [`GIVE_SD`], within [`reeve_catalogue::GIVE_RANGE`]. A sample
//!    observes the logarithms of take-up and rise, each with [`TYING_SD`] (nobody ties two pieces alike) and the reading
//!    error of its lengths ([`READING_MM`]). Its own knot's factors are integrated out, so that what a knot alone does
//!    is not laid to the cord. The best `g` is searched for; its spread comes from the curvature there. So one sample
//!    improves every other knot in that cord.
//! 2. **Factors of a knot in a cord**, on take-up and on rise: what give does not explain. Before: `ln f` normal round 0
//!    with [`FACTOR_SD`]. It equals [`TYING_SD`]: one sample weighs as much as the catalogue, and moves a factor just
//!    less than half way. What a core leg eats follows the rise.
//! 3. **Pace and pull**: minutes observe `a x base + b x pull x draws x metres hanging` (see [`crate::labour::Run`]) with
//!    a spread of [`TIMING_SD`] and [`TIMING_MIN`]. Before: `a` and `b` normal round the shop's pace with [`PACE_SD`] and
//!    [`PULL_SD`] of it. Samples are timed at the bench, so they estimate the rating itself: where there are any, `a` and
//!    `b` stand in place of the shop's pace for knots; handling keeps the shop's pace.
//! 4. **Odd samples**: one that lies more than [`ODD`] standard deviations from what the catalogue and all other samples
//!    lead to expect is not counted, the worst first, until none is left. It counts again once others bear it out.

mod cords;
mod evidence;
mod odd;
mod pace;
#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests;
mod tying;

use std::sync::Arc;

use chrono::NaiveDate;
use reeve_catalogue::{Core, Knot, Setting};
use reeve_measure::{Length, Time};

use crate::store::Cord;
use cords::{CordFit, fit_cord, surprise};
use evidence::Evidence;
use odd::set_aside;
use pace::{Timed, fit_pace};
pub use tying::{Tied, YOUR_HAND, YOUR_SAMPLE};

/// Spread of a cord's give round the store's word, before any sample.
pub const GIVE_SD: f64 = 0.04;
/// Spread of a knot's factors round 1, before any sample, as a logarithm.
pub const FACTOR_SD: f64 = 0.05;
/// Spread of one maker's take-up and rise from piece to piece, as a logarithm.
pub const TYING_SD: f64 = 0.05;
/// Reading error of one measured length, in millimetres.
pub const READING_MM: f64 = 3.0;
/// Spread of the pace round the shop's, before any timed sample, as a share of it.
pub const PACE_SD: f64 = 0.25;
/// Spread of the pull round the shop's pace, before any timed sample, as a share of it.
pub const PULL_SD: f64 = 0.5;
/// Spread of a sample's time, as a share of what is expected.
pub const TIMING_SD: f64 = 0.15;
/// Reading error of a sample's time, in minutes.
pub const TIMING_MIN: f64 = 0.2;
/// Standard deviations beyond which a sample is odd.
pub const ODD: f64 = 3.0;
/// Standard deviations that cover 95 in 100 to one side.
pub const COVER: f64 = 1.645;

/// A knot tied a few times for trial and measured, with working and core legs of one cord.
#[derive(Debug, Clone, PartialEq)]
pub struct Sample {
    /// The cord.
    pub cord: Arc<Cord>,
    /// The knot.
    pub knot: Arc<Knot>,
    /// Knots tied, one after the other.
    pub tied: u32,
    /// Working legs in one knot.
    pub working: u32,
    /// What it was tied round.
    pub core: Core,
    /// Parameters of the knot.
    pub parameters: Vec<(String, f64)>,
    /// One working leg before tying.
    pub before: Length,
    /// The same leg after tying.
    pub after: Length,
    /// Length made along the core.
    pub made: Length,
    /// How long it took.
    pub time: Option<Time>,
    /// When it was tied.
    pub on: Option<NaiveDate>,
    /// A remark.
    pub note: Option<String>,
}

impl Sample {
    /// Leg that each knot took.
    pub fn take_up(&self) -> Length {
        (self.before - self.after) / f64::from(self.tied)
    }

    /// How far each knot carried the work.
    pub fn rise(&self) -> Length {
        self.made / f64::from(self.tied)
    }

    /// Where and with what it was tied, in a cord of this give.
    pub fn setting(&self, give: f64) -> Setting<'_> {
        let cord = self.cord.diameter;
        Setting { cord, working: self.working, core: self.core, give, parameters: &self.parameters }
    }
}

/// The pace that whole pieces of work say, round the shop's: each is trusted as a timed sample is, and the shop's as far as
/// it is before any sample.
pub fn pace_learnt(shop: f64, works: &[f64]) -> Estimate {
    let precision = |sd: f64| 1.0 / (sd * shop).powi(2);
    let (before, each) = (precision(PACE_SD), precision(TIMING_SD));
    let weight = before + works.iter().map(|_| each).sum::<f64>();
    let mean = (before * shop + works.iter().map(|pace| each * pace).sum::<f64>()) / weight;
    Estimate { mean, sd: (1.0 / weight).sqrt() }
}

/// A step of finished work that was timed: what the catalogue expects of its knots, allowances in, and what it took.
#[derive(Debug, Clone, PartialEq)]
pub struct TimedWork {
    /// Whose step, in words: number and step.
    pub of: String,
    /// What does not depend on length, at the catalogue's pace.
    pub base: Time,
    /// What pulling takes, at the catalogue's pace.
    pub pull: Time,
    /// What it took.
    pub took: Time,
}

/// A figure and its standard deviation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Estimate {
    /// The figure.
    pub mean: f64,
    /// Its standard deviation.
    pub sd: f64,
}

/// What the samples say of one cord.
#[derive(Debug, Clone, PartialEq)]
pub struct CordHand {
    /// The cord.
    pub cord: Arc<Cord>,
    /// Its give.
    pub give: Estimate,
    /// Samples counted.
    pub samples: usize,
}

/// What the samples say of one knot in one cord.
#[derive(Debug, Clone, PartialEq)]
pub struct KnotHand {
    /// The cord.
    pub cord: Arc<Cord>,
    /// The knot.
    pub knot: Arc<Knot>,
    /// Logarithm of the factor on take-up.
    pub take_up: Estimate,
    /// Logarithm of the factor on the rise.
    pub rise: Estimate,
    /// Samples counted.
    pub samples: usize,
}

/// What the timed samples say.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PaceHand {
    /// On the time that does not depend on length.
    pub pace: Estimate,
    /// On the time of pulling what hangs.
    pub pull: Estimate,
    /// Timed samples counted.
    pub samples: usize,
    /// Timed steps of finished work counted.
    pub works: usize,
}

/// A figure of a sample.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Figure {
    /// Leg that each knot took.
    TakeUp,
    /// How far each knot carried the work.
    Rise,
    /// Time of each knot.
    Time,
}

/// A sample that is not counted, or whose time is not.
#[derive(Debug, Clone, PartialEq)]
pub struct Odd {
    /// Its place among the samples.
    pub at: usize,
    /// The sample.
    pub sample: Sample,
    /// What is odd about it.
    pub figure: Figure,
    /// What all the others lead to expect, for one knot: millimetres or seconds.
    pub expected: f64,
    /// What it says, in the same unit.
    pub got: f64,
}

/// The maker's hand. Without samples it leaves every figure as the catalogue and the shop have it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Hand {
    /// Cords that were sampled, in order of name.
    pub cords: Vec<CordHand>,
    /// Knots that were sampled, in order of cord and name.
    pub knots: Vec<KnotHand>,
    /// Pace and pull; `None` without a timed sample.
    pub pace: Option<PaceHand>,
    /// Samples that are not counted, in their order.
    pub odd: Vec<Odd>,
    /// Steps of finished work that are not counted, by their places.
    pub odd_works: Vec<usize>,
    /// Samples given.
    pub given: usize,
}

impl Hand {
    /// What the samples say, at a shop's pace.
    ///
    /// A sample whose knot can't be tied so says nothing; readers refuse it.
    pub fn of(samples: &[Sample], pace: f64) -> Self {
        Self::with_works(samples, &[], pace)
    }

    /// The same with steps of finished work: each is trusted in its time as a sample is.
    pub fn with_works(samples: &[Sample], works: &[TimedWork], pace: f64) -> Self {
        let mut hand = Self { given: samples.len(), ..Self::default() };
        let mut cords: Vec<&Arc<Cord>> = samples.iter().map(|sample| &sample.cord).collect();
        cords.sort_unstable_by(|a, b| a.name.cmp(&b.name));
        cords.dedup_by(|a, b| a.name == b.name);
        for cord in cords {
            hand.add_cord(cord, samples);
        }
        hand.add_pace(samples, works, pace);
        hand.odd.sort_by_key(|odd| odd.at);
        hand
    }

    fn add_cord(&mut self, cord: &Arc<Cord>, samples: &[Sample]) {
        let of_cord = |(at, sample): (usize, &Sample)| {
            (sample.cord.name == cord.name).then(|| Evidence::of(at, sample)).flatten()
        };
        let mut all: Vec<Evidence> = samples.iter().enumerate().filter_map(of_cord).collect();
        all.sort_by(|a, b| a.knot.cmp(&b.knot));
        let stated = cord.stated_give();
        let (kept, odd) = set_aside(all, |others, one| surprise(stated, others, one));
        self.odd.extend(odd.into_iter().map(|(one, found)| found.odd(one.at, samples)));
        if kept.is_empty() {
            return;
        }
        let CordFit { give, knots } = fit_cord(stated, &kept.iter().collect::<Vec<_>>());
        self.cords.push(CordHand { cord: Arc::clone(cord), give, samples: kept.len() });
        self.knots.extend(knots.into_iter().map(|fit| KnotHand {
            cord: Arc::clone(cord),
            knot: Arc::clone(&samples[fit.first].knot),
            take_up: fit.factors[0],
            rise: fit.factors[1],
            samples: fit.samples,
        }));
    }

    /// The minutes of a sample whose lengths are odd are left out with it.
    fn add_pace(&mut self, samples: &[Sample], works: &[TimedWork], shop: f64) {
        let counted = |at: &usize| !self.odd.iter().any(|odd| odd.at == *at);
        let timed = (0..samples.len()).filter(counted).filter_map(|at| Timed::of(at, &samples[at]));
        // Works stand behind the samples.
        let first = samples.len();
        let worked = works.iter().enumerate().filter_map(|(at, work)| Timed::of_work(first + at, work));
        let (kept, odd) = set_aside(timed.chain(worked).collect(), |others, one| pace::surprise(shop, others, one));
        for (one, found) in odd {
            match one.at.checked_sub(first) {
                Some(work) => self.odd_works.push(work),
                None => self.odd.push(found.odd(one.at, samples)),
            }
        }
        if !kept.is_empty() {
            let fit = fit_pace(shop, &kept.iter().collect::<Vec<_>>());
            let of_works = kept.iter().filter(|one| one.at >= first).count();
            self.pace =
                Some(PaceHand { pace: fit.pace, pull: fit.pull, samples: kept.len() - of_works, works: of_works });
        }
    }

    /// The give of a cord: from its samples, else as stated, with the spread that is held before any sample.
    pub fn give_of(&self, cord: &Cord) -> Estimate {
        let sampled = self.cords.iter().find(|known| known.cord.name == cord.name);
        sampled.map_or(Estimate { mean: cord.stated_give(), sd: GIVE_SD }, |known| known.give)
    }
}
