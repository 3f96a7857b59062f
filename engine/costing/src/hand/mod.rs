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
//!    with the spread of the figure's source ([`spread`]). Of a computed or published figure it equals [`TYING_SD`]: one
//!    sample weighs as much as the catalogue, and moves a factor just less than half way. Against a guess one sample is
//!    believed nearly whole. What a core leg eats follows the rise.
//! 3. **Pace, pull and time factors**: the logarithm of minutes observes `ln (a base + b pull) + ln t` with a spread of
//!    [`TIMING_SD`] and [`TIMING_MIN`]; `pull` is of draws times metres hanging (see [`crate::run::Run`]), `t` a knot's own
//!    factor with the spread of its time's source. Before: `a` and `b` normal round the shop's pace with [`PACE_SD`] and
//!    [`PULL_SD`], as logarithms. The shop's pace is where they start, whatever is learnt; `a` and `b` stand in its place for knots and
//!    handling. Finished work observes the same: a step of one knot as a sample of it, a whole work without a factor of its
//!    own, but doubted as far as the times of its knots are.
//! 4. **Guesses**: what a figure from memory leaves unexplained goes into the knot's own factors. Of what it says of give and
//!    pace a tenth counts, and however far off it is, it moves pace and pull by [`GUESS_MOVES`] at most.
//! 5. **Odd samples**: one that lies more than [`ODD`] standard deviations from what the catalogue and all other samples
//!    lead to expect is not counted, the worst first, until none is left. It counts again once others bear it out.

mod cords;
mod evidence;
mod group;
mod odd;
mod pace;
#[cfg(test)]
#[allow(clippy::disallowed_methods, reason = "a test reckons and writes by the standard library")]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests;
mod trust;
mod tying;
#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod weighing;

use std::sync::Arc;

use chrono::NaiveDate;
use reeve_catalogue::{Core, Knot, Setting};
use reeve_measure::{Length, Time};

use crate::store::Cord;
use cords::{KnotFit, fit_cord};
use evidence::{Curves, Evidence};
use odd::set_aside;
use pace::{Timed, fit_pace};
pub use trust::{FactorSpread, GUESS_MOVES, spread};
pub use tying::{TakeUpSource, Tied};

/// Spread of a cord's give round the store's word, before any sample.
pub const GIVE_SD: f64 = 0.04;
/// Spread of a knot's factors round 1, before any sample, as a logarithm, where its figures are computed or published.
pub const FACTOR_SD: f64 = 0.05;
/// Spread of one maker's take-up and rise from piece to piece, as a logarithm.
pub const TYING_SD: f64 = 0.05;
/// Reading error of one measured length, in millimetres.
pub const READING_MM: f64 = 3.0;
/// Spread of the pace round the shop's, before any timed sample, as a logarithm.
pub const PACE_SD: f64 = 0.25;
/// Spread of the pull round the shop's pace, before any timed sample, as a logarithm.
pub const PULL_SD: f64 = 0.5;
/// Spread of a sample's time, as a logarithm.
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

/// Finished work that was timed, or one step of it: what the catalogue expects, allowances in, and what it took.
#[derive(Debug, Clone, PartialEq)]
pub struct TimedWork {
    /// The commission's number: the same work is known again by it.
    pub number: String,
    /// Which step; nothing for the whole of it.
    pub step: Option<String>,
    /// The last day on which it was worked at.
    pub on: Option<NaiveDate>,
    /// The only knot that was tied, if it is of one.
    pub knot: Option<Arc<Knot>>,
    /// What does not depend on length, at the catalogue's pace: knots and handling.
    pub base: Time,
    /// What pulling takes, at the catalogue's pace.
    pub pull: Time,
    /// How doubtful the two are together, as a logarithm, for the knots' times come from doubtful sources; zero for one
    /// knot, whose own factor takes that up.
    pub doubt: f64,
    /// What it took, without what the maker had stated herself.
    pub took: Time,
}

impl TimedWork {
    /// Whose work, in words: number and step.
    pub fn of(&self) -> String {
        self.step.as_ref().map_or_else(|| self.number.clone(), |step| format!("{}, {step}", self.number))
    }

    /// Whether it is the same work, or the same step of it.
    pub fn is_of(&self, number: &str, step: Option<&str>) -> bool {
        self.number == number && self.step.as_deref() == step
    }
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
    /// Those of them whose knot's take-up is more than a guess, and so says something of the cord.
    pub firm: usize,
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

/// What samples and finished work say of the time of one knot, in any cord.
#[derive(Debug, Clone, PartialEq)]
pub struct KnotTimeHand {
    /// The knot.
    pub knot: Arc<Knot>,
    /// Logarithm of the factor on its time, beside the pace.
    pub time: Estimate,
    /// Timed samples counted.
    pub samples: usize,
    /// Steps of finished work counted.
    pub works: usize,
}

/// What the timed samples say.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PaceHand {
    /// On the time that does not depend on length, and on handling.
    pub pace: Estimate,
    /// On the time of pulling what hangs.
    pub pull: Estimate,
    /// Timed samples counted.
    pub samples: usize,
    /// Finished works counted, and steps of them.
    pub works: usize,
}

/// A figure of a sample.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SampleFigure {
    /// Leg that each knot took.
    TakeUp,
    /// How far each knot carried the work.
    Rise,
    /// Time of each knot.
    Time,
}

/// A sample that is not counted, or whose time is not.
#[derive(Debug, Clone, PartialEq)]
pub struct OddSample {
    /// Its place among the samples.
    pub at: usize,
    /// The sample.
    pub sample: Sample,
    /// What is odd about it.
    pub figure: SampleFigure,
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
    /// Knots that were timed, in order of name.
    pub times: Vec<KnotTimeHand>,
    /// Pace and pull; `None` without a timed sample or work.
    pub pace: Option<PaceHand>,
    /// Samples that are not counted, in their order.
    pub odd: Vec<OddSample>,
    /// Finished works, and steps of them, that are not counted, by their places.
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

    /// The same with finished work.
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
        let mut curves = Curves::default();
        let of_cord = samples.iter().enumerate().filter(|(_, sample)| sample.cord.name == cord.name);
        let mut all: Vec<Evidence> = of_cord.filter_map(|(at, sample)| Evidence::of(at, sample, &mut curves)).collect();
        all.sort_by(|a, b| a.order(b).then(a.at.cmp(&b.at)));
        let stated = cord.stated_give();
        let (kept, odd) = set_aside(&all, |kept| fit_cord(stated, kept));
        self.odd.extend(odd.into_iter().map(|(one, found)| found.odd(one.at, samples)));
        if kept.is_empty() {
            return;
        }
        let fit = fit_cord(stated, &kept);
        let firm = fit.knots.iter().filter(|knot| knot.is_firm()).map(|knot| knot.samples).sum();
        self.cords.push(CordHand { cord: Arc::clone(cord), give: fit.give, samples: kept.len(), firm });
        self.knots.extend(fit.knots.iter().map(|fit| knot_hand(cord, fit, samples)));
    }

    /// The minutes of a sample whose lengths are odd are left out with it.
    fn add_pace(&mut self, samples: &[Sample], works: &[TimedWork], shop: f64) {
        let mut counted = vec![true; samples.len()];
        self.odd.iter().for_each(|odd| counted[odd.at] = false);
        let timed = (0..samples.len()).filter(|at| counted[*at]).filter_map(|at| Timed::of(at, &samples[at]));
        // Works stand behind the samples.
        let first = samples.len();
        let worked = works.iter().enumerate().filter_map(|(at, work)| Timed::of_work(first + at, work));
        let mut all: Vec<Timed> = timed.chain(worked).collect();
        all.sort_by(|a, b| a.order(b).then(a.at.cmp(&b.at)));
        let (kept, odd) = set_aside(&all, |kept| fit_pace(shop, kept));
        for (one, found) in odd {
            match one.at.checked_sub(first) {
                Some(work) => self.odd_works.push(work),
                None => self.odd.push(found.odd(one.at, samples)),
            }
        }
        self.odd_works.sort_unstable();
        if kept.is_empty() {
            return;
        }
        let fit = fit_pace(shop, &kept);
        let (pace, pull) = fit.pace_and_pull();
        let of_works = |places: &mut dyn Iterator<Item = usize>| places.filter(|at| *at >= first).count();
        let works_in_all = of_works(&mut kept.iter().map(|one| one.at));
        self.pace = Some(PaceHand { pace, pull, samples: kept.len() - works_in_all, works: works_in_all });
        let knot_of = |at: usize| {
            samples.get(at).map(|sample| &sample.knot).or_else(|| works.get(at.checked_sub(first)?)?.knot.as_ref())
        };
        self.times.extend(fit.knots().filter_map(|(_, group)| {
            let works = of_works(&mut group.places.iter().copied());
            let (knot, samples) = (Arc::clone(knot_of(*group.places.first()?)?), group.places.len() - works);
            Some(KnotTimeHand { knot, time: group.factor(), samples, works })
        }));
    }

    /// The factor on a knot's time beside the pace, as a logarithm; of a knot that nobody timed, as its source leaves it.
    pub fn time_of(&self, knot: &Knot) -> Estimate {
        let timed = self.times.iter().find(|known| known.knot.name == knot.name);
        let untimed = Estimate { mean: 0.0, sd: spread(knot.time.note.source).time };
        timed.map_or(untimed, |known| known.time)
    }

    /// The give of a cord: from its samples, else as stated, with the spread that is held before any sample.
    pub fn give_of(&self, cord: &Cord) -> Estimate {
        let sampled = self.cords.iter().find(|known| known.cord.name == cord.name);
        sampled.map_or(Estimate { mean: cord.stated_give(), sd: GIVE_SD }, |known| known.give)
    }
}

fn knot_hand(cord: &Arc<Cord>, fit: &KnotFit<'_>, samples: &[Sample]) -> KnotHand {
    let [take_up, rise] = fit.factors();
    let knot = Arc::clone(&samples[fit.first].knot);
    KnotHand { cord: Arc::clone(cord), knot, take_up, rise, samples: fit.samples }
}

/// A number times itself: the standard library's powers may differ from machine to machine.
pub(crate) fn square(number: f64) -> f64 {
    number * number
}
