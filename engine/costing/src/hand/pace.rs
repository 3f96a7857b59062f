//! Pace and pull, from the samples that were timed.

use reeve_catalogue::USUAL_GIVE;
use reeve_measure::Time;

use super::odd::Surprise;
use super::{Estimate, Figure, PACE_SD, PULL_SD, Sample, TIMING_MIN, TIMING_SD, TimedWork};
use crate::labour::Run;

/// What one timed sample says. Times are in seconds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Timed {
    /// Its place among the samples.
    pub(super) at: usize,
    /// Knots tied.
    pub(super) knots: f64,
    /// What does not depend on length, at the catalogue's pace.
    pub(super) base: f64,
    /// What pulling takes, at the catalogue's pace.
    pub(super) pull: f64,
    /// What it took.
    pub(super) took: f64,
}

/// Pace and pull with how uncertain they are together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct PaceFit {
    pub(super) pace: Estimate,
    pub(super) pull: Estimate,
    covariance: f64,
}

impl Timed {
    /// What a sample says of pace; nothing when it was not timed or its knot takes no time.
    pub(super) fn of(at: usize, sample: &Sample) -> Option<Self> {
        let took = sample.time?.as_s();
        let knot = &sample.knot;
        // The time of a knot does not depend on give.
        let taken = knot.taken(&sample.setting(USUAL_GIVE)).ok()?;
        let legs = if knot.together { 1.0 } else { f64::from(sample.working) };
        let run = Run {
            knots: sample.tied,
            base: taken.base,
            pull: knot.time.pull,
            draws: legs * taken.draws,
            hanging: sample.before,
            take_up: sample.take_up(),
        };
        let (base, pull) = (Run { pull: 0.0, ..run }.time().as_s(), Run { base: Time::ZERO, ..run }.time().as_s());
        (base + pull > 0.0).then_some(Self { at, knots: f64::from(sample.tied), base, pull, took })
    }

    /// What a step of finished work says; nothing when its knots take no time.
    pub(super) fn of_work(at: usize, work: &TimedWork) -> Option<Self> {
        let (base, pull, took) = (work.base.as_s(), work.pull.as_s(), work.took.as_s());
        (base + pull > 0.0).then_some(Self { at, knots: 1.0, base, pull, took })
    }

    fn expected(&self, pace: f64, pull: f64) -> f64 {
        pace * self.base + pull * self.pull
    }

    /// Variance of the time round what a shop's pace leads to expect: known before the sample is, so that quick samples
    /// don't weigh more than slow ones.
    fn variance(&self, shop: f64) -> f64 {
        (TIMING_SD * self.expected(shop, shop)).powi(2) + Time::minutes(TIMING_MIN).as_s().powi(2)
    }
}

/// Fits pace and pull: the conjugate update of two normal figures. Neither falls below a twentieth.
pub(super) fn fit_pace(shop: f64, timed: &[&Timed]) -> PaceFit {
    const LEAST: f64 = 0.05;
    let (of_pace, of_pull) = ((PACE_SD * shop).powi(-2), (PULL_SD * shop).powi(-2));
    let (mut aa, mut ab, mut bb) = (of_pace, 0.0, of_pull);
    let (mut a, mut b) = (of_pace * shop, of_pull * shop);
    for one in timed {
        let weight = one.variance(shop).recip();
        aa += weight * one.base * one.base;
        ab += weight * one.base * one.pull;
        bb += weight * one.pull * one.pull;
        a += weight * one.base * one.took;
        b += weight * one.pull * one.took;
    }
    let determinant = aa * bb - ab * ab;
    let estimate = |mean: f64, variance: f64| Estimate { mean: mean.max(LEAST), sd: variance.sqrt() };
    PaceFit {
        pace: estimate((bb * a - ab * b) / determinant, bb / determinant),
        pull: estimate((aa * b - ab * a) / determinant, aa / determinant),
        covariance: -ab / determinant,
    }
}

/// How far a sample's time lies from what the others lead to expect.
pub(super) fn surprise(shop: f64, others: &[&Timed], one: &Timed) -> Surprise {
    let fit = fit_pace(shop, others);
    let expected = one.expected(fit.pace.mean, fit.pull.mean);
    let variance = one.variance(shop)
        + (one.base * fit.pace.sd).powi(2)
        + (one.pull * fit.pull.sd).powi(2)
        + 2.0 * one.base * one.pull * fit.covariance;
    let deviations = (one.took - expected).abs() / variance.sqrt();
    Surprise { deviations, figure: Figure::Time, expected: expected / one.knots, got: one.took / one.knots }
}
