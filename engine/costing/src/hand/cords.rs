//! The give of a cord and the factors of its knots, from the samples tied in it.

use reeve_catalogue::{GIVE_RANGE, USUAL_GIVE};

use super::evidence::{CurvePoint, Evidence};
use super::group::{Push, Seen, Trust, WeightedSums};
use super::odd::{Fitted, Surprise};
use super::{Estimate, GIVE_SD, SampleFigure, square};

/// What the samples of one cord say.
#[derive(Debug, Clone)]
pub(super) struct CordFit<'a> {
    evidence: Vec<&'a Evidence>,
    spot: CurvePoint,
    pub(super) give: Estimate,
    pub(super) knots: Vec<KnotFit<'a>>,
    /// The place of each sample's knot.
    of_knot: Vec<usize>,
    /// What all of them and the store's word say of the give, at the best one.
    push: Push,
}

/// What the samples of one knot in that cord say.
#[derive(Debug, Clone)]
pub(super) struct KnotFit<'a> {
    pub(super) knot: &'a str,
    /// The place of its first sample.
    pub(super) first: usize,
    pub(super) samples: usize,
    trust: [Trust; 2],
    sums: [WeightedSums; 2],
}

impl KnotFit<'_> {
    /// Logarithms of the factors on take-up and rise: what give leaves unexplained, shrunk towards nothing.
    pub(super) fn factors(&self) -> [Estimate; 2] {
        [0, 1].map(|figure| self.sums[figure].factor(self.trust[figure].sd(), [0.0; 2]))
    }

    /// Whether they are held against a take-up that is more than a guess.
    pub(super) fn is_firm(&self) -> bool {
        matches!(self.trust[0], Trust::Firm(_))
    }

    fn push(&self) -> Push {
        both().map(|figure| self.sums[figure].push(&self.trust[figure])).fold(Push::default(), plus)
    }
}

fn both() -> impl Iterator<Item = usize> {
    0..2
}

fn plus(one: Push, other: Push) -> Push {
    one.plus(other, 1.0)
}

/// Fits a cord. The evidence is in order of knots.
pub(super) fn fit_cord<'a>(stated: f64, evidence: &[&'a Evidence]) -> CordFit<'a> {
    let mean = least(|give| misfit(stated, evidence, give));
    let spot = CurvePoint::of(mean);
    let mut knots: Vec<KnotFit<'a>> = Vec::new();
    let mut of_knot = Vec::new();
    for group in knots_of(evidence) {
        of_knot.extend(group.iter().map(|_| knots.len()));
        knots.push(KnotFit {
            knot: &group[0].knot,
            first: group.iter().map(|one| one.at).min().unwrap_or_default(),
            samples: group.len(),
            trust: group[0].trust,
            sums: [0, 1].map(|figure| sums(group, figure, spot)),
        });
    }
    let push = knots.iter().map(KnotFit::push).fold(held_before(stated, mean), plus);
    // With the catalogue taken as straight near the best give what is known is never negative.
    let give = Estimate { mean, sd: push.known.aa.sqrt().recip() };
    CordFit { evidence: evidence.to_vec(), spot, give, knots, of_knot, push }
}

/// What the store's word says of the give. The second figure is there for the form of the sums, and stays where it is.
fn held_before(stated: f64, give: f64) -> Push {
    let weight = square(GIVE_SD).recip();
    let mut before = Push { pull: [weight * (stated - give), 0.0], ..Push::default() };
    (before.known.aa, before.known.bb) = (weight, 1.0);
    before
}

fn knots_of<'e, 'a>(evidence: &'e [&'a Evidence]) -> impl Iterator<Item = &'e [&'a Evidence]> {
    evidence.chunk_by(|a, b| a.knot == b.knot)
}

fn sums(group: &[&Evidence], figure: usize, spot: CurvePoint) -> WeightedSums {
    WeightedSums::of(group.iter().map(|one| one.seen(figure, spot)))
}

/// Twice the negative logarithm of how likely a give is, but for a constant.
fn misfit(stated: f64, evidence: &[&Evidence], give: f64) -> f64 {
    let spot = CurvePoint::of(give);
    let of_knot = |group: &[&Evidence]| -> f64 {
        both().map(|figure| sums(group, figure, spot).misfit(&group[0].trust[figure])).sum()
    };
    square((give - stated) / GIVE_SD) + knots_of(evidence).map(of_knot).sum::<f64>()
}

impl Fitted<Evidence> for CordFit<'_> {
    /// The others' give follows from the sums without this one, with the catalogue taken as straight near the best give.
    fn of_counted(&self, at: usize) -> Surprise {
        let (one, knot) = (self.evidence[at], &self.knots[self.of_knot[at]]);
        let seen = [0, 1].map(|figure| one.seen(figure, self.spot));
        let mut others = knot.clone();
        for figure in both() {
            others.sums[figure] = others.sums[figure].without(seen[figure]);
        }
        let push = self.push.plus(knot.push(), -1.0).plus(others.push(), 1.0);
        let give = self.give.mean + push.pull[0] / push.known.aa;
        let moved = give.clamp(GIVE_RANGE.0, GIVE_RANGE.1) - self.give.mean;
        surprise(one, seen, &others, moved, push.known.aa)
    }

    fn of_other(&self, one: &Evidence) -> Surprise {
        let seen = [0, 1].map(|figure| one.seen(figure, self.spot));
        let unknown = KnotFit {
            knot: &one.knot,
            first: one.at,
            samples: 0,
            trust: one.trust,
            sums: [WeightedSums::default(); 2],
        };
        let alike = self.knots.binary_search_by(|knot| knot.knot.cmp(&one.knot)).map(|at| &self.knots[at]);
        surprise(one, seen, alike.unwrap_or(&unknown), 0.0, self.push.known.aa)
    }
}

/// How far a sample lies from what others of its knot lead to expect, once the give has moved on by so much.
fn surprise(one: &Evidence, seen: [Seen; 2], others: &KnotFit<'_>, moved: f64, known: f64) -> Surprise {
    let of = |figure: usize, name: SampleFigure| {
        let Seen { left, slope: [slope, _], variance } = seen[figure];
        let factor = others.sums[figure].factor(others.trust[figure].sd(), [moved, 0.0]);
        let off = left - slope * moved - factor.mean;
        let deviations = off.abs() / (variance + square(factor.sd) + slope * slope / known).sqrt();
        let got = one.observed[figure];
        Surprise { deviations, figure: name, expected: libm::exp(got - off), got: libm::exp(got) }
    };
    let (take_up, rise) = (of(0, SampleFigure::TakeUp), of(1, SampleFigure::Rise));
    if rise.deviations > take_up.deviations { rise } else { take_up }
}

/// The give at which a function is least: the best of an even grid, then golden sections on either side of it.
fn least(of: impl Fn(f64) -> f64) -> f64 {
    const STEPS: u32 = 20;
    const SECTIONS: u32 = 30;
    let (low, high) = GIVE_RANGE;
    let step = (high - low) / f64::from(STEPS);
    let best = best_of((0..=STEPS).map(|at| low + f64::from(at) * step), &of);
    let (mut low, mut high) = ((best - step).max(low), (best + step).min(high));
    let golden = (5.0_f64.sqrt() - 1.0) / 2.0;
    for _ in 0..SECTIONS {
        let (left, right) = (high - golden * (high - low), low + golden * (high - low));
        if of(left) <= of(right) { high = right } else { low = left }
    }
    // The sections only come close to the ends, and to a grid point that is best already.
    best_of([low, best, high].into_iter(), &of)
}

/// The one at which a function is least; the usual give of none.
fn best_of(gives: impl Iterator<Item = f64>, of: impl Fn(f64) -> f64) -> f64 {
    let judged = gives.map(|give| (give, of(give)));
    judged.min_by(|(_, some), (_, other)| some.total_cmp(other)).map_or(USUAL_GIVE, |(give, _)| give)
}
