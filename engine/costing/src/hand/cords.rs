//! The give of a cord and the factors of its knots, from the samples tied in it.

use reeve_catalogue::GIVE_RANGE;

use super::evidence::Evidence;
use super::{Estimate, FACTOR_SD, Figure, GIVE_SD, Surprise};

/// What the samples of one cord say.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct CordFit {
    pub(super) give: Estimate,
    pub(super) knots: Vec<KnotFit>,
}

/// What the samples of one knot in that cord say.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct KnotFit {
    /// The place of its first sample.
    pub(super) first: usize,
    /// Logarithms of the factors on take-up and rise.
    pub(super) factors: [Estimate; 2],
    pub(super) samples: usize,
}

/// Fits a cord. The evidence is in order of knots.
pub(super) fn fit_cord(stated: f64, evidence: &[&Evidence]) -> CordFit {
    let give = fit_give(stated, evidence);
    let knots = knots_of(evidence).map(|group| KnotFit {
        first: group.iter().map(|one| one.at).min().unwrap_or_default(),
        factors: factors(give.mean, group),
        samples: group.len(),
    });
    CordFit { give, knots: knots.collect() }
}

/// How far a sample lies from what the others lead to expect.
pub(super) fn surprise(stated: f64, others: &[&Evidence], one: &Evidence) -> Surprise {
    let give = fit_give(stated, others);
    let alike: Vec<&Evidence> = others.iter().copied().filter(|other| other.knot == one.knot).collect();
    let factors = factors(give.mean, &alike);
    let (expected, slope) = (one.expected(give.mean), one.slope(give.mean));
    let of = |at: usize, figure: Figure| {
        let expected = expected[at] + factors[at].mean;
        let variance = one.variance[at] + factors[at].sd.powi(2) + (slope[at] * give.sd).powi(2);
        let deviations = (one.observed[at] - expected).abs() / variance.sqrt();
        Surprise { deviations, figure, expected: expected.exp(), got: one.observed[at].exp() }
    };
    let (take_up, rise) = (of(0, Figure::TakeUp), of(1, Figure::Rise));
    if rise.deviations > take_up.deviations { rise } else { take_up }
}

fn knots_of<'e, 'a>(evidence: &'e [&'a Evidence]) -> impl Iterator<Item = &'e [&'a Evidence]> {
    evidence.chunk_by(|a, b| a.knot == b.knot)
}

fn fit_give(stated: f64, evidence: &[&Evidence]) -> Estimate {
    let mean = least(|give| misfit(stated, evidence, give));
    // The curvature of the misfit with the catalogue taken as straight near the best give: it is never negative.
    let bend = GIVE_SD.powi(-2) + unexplained(evidence, |one| one.slope(mean));
    Estimate { mean, sd: bend.sqrt().recip() }
}

/// Twice the negative logarithm of how likely a give is, but for a constant.
fn misfit(stated: f64, evidence: &[&Evidence], give: f64) -> f64 {
    ((give - stated) / GIVE_SD).powi(2) + unexplained(evidence, |one| one.residual(give))
}

/// The square of some figures, weighed, less what each knot's own factor would take up of them.
fn unexplained(evidence: &[&Evidence], figures: impl Fn(&Evidence) -> [f64; 2]) -> f64 {
    let of_knot = |group: &[&Evidence], at: usize| {
        let (mut weight, mut first, mut second) = (FACTOR_SD.powi(-2), 0.0, 0.0);
        for one in group {
            let (figure, variance) = (figures(one)[at], one.variance[at]);
            weight += variance.recip();
            first += figure / variance;
            second += figure * figure / variance;
        }
        second - first * first / weight
    };
    knots_of(evidence).map(|group| of_knot(group, 0) + of_knot(group, 1)).sum()
}

/// What give leaves unexplained of one knot's samples, shrunk towards nothing.
fn factors(give: f64, group: &[&Evidence]) -> [Estimate; 2] {
    let factor = |at: usize| {
        let weight = FACTOR_SD.powi(-2) + group.iter().map(|one| one.variance[at].recip()).sum::<f64>();
        let pulled: f64 = group.iter().map(|one| one.residual(give)[at] / one.variance[at]).sum();
        Estimate { mean: pulled / weight, sd: weight.sqrt().recip() }
    };
    [factor(0), factor(1)]
}

/// The give at which a function is least: the best of an even grid, then golden sections on either side of it.
fn least(of: impl Fn(f64) -> f64) -> f64 {
    const STEPS: u32 = 20;
    const SECTIONS: u32 = 30;
    let (low, high) = GIVE_RANGE;
    let step = (high - low) / f64::from(STEPS);
    let grid = (0..=STEPS).map(|at| low + f64::from(at) * step);
    let best = grid.min_by(|a, b| of(*a).total_cmp(&of(*b))).unwrap_or(low);
    let (mut low, mut high) = ((best - step).max(low), (best + step).min(high));
    let golden = (5.0_f64.sqrt() - 1.0) / 2.0;
    for _ in 0..SECTIONS {
        let (left, right) = (high - golden * (high - low), low + golden * (high - low));
        if of(left) <= of(right) { high = right } else { low = left }
    }
    // The sections only come close to the ends, and to a grid point that is best already.
    [low, best, high].into_iter().min_by(|a, b| of(*a).total_cmp(&of(*b))).unwrap_or(best)
}
