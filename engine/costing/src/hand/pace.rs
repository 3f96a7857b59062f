//! Pace and pull, and the time factors of knots, from timed samples and from finished work.

use std::cmp::Ordering;

use reeve_catalogue::USUAL_GIVE;
use reeve_measure::Time;

use super::evidence::by_figures;
use super::group::{Push, Seen, Trust, WeightedSums, dot};
use super::odd::{Fitted, Surprise};
use super::trust::of_time;
use super::{Estimate, PACE_SD, PULL_SD, Sample, SampleFigure, TIMING_MIN, TIMING_SD, TimedWork, square};
use crate::run::Run;

/// What one timed sample, or one finished work, says. Times are in seconds.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Timed {
    /// Its place among the samples and works.
    pub(super) at: usize,
    /// The knot that was tied; nothing of a work of several.
    pub(super) knot: Option<String>,
    /// How far the catalogue's time is to be trusted.
    pub(super) trust: Trust,
    /// Knots tied.
    pub(super) knots: f64,
    /// What does not depend on length, at the catalogue's pace.
    pub(super) base: f64,
    /// What pulling takes, at the catalogue's pace.
    pub(super) pull: f64,
    /// How doubtful the two are together, as a logarithm, beside the knot's own factor.
    pub(super) doubt: f64,
    /// What it took.
    pub(super) took: f64,
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
        let knots = f64::from(sample.tied);
        let (knot, trust) = (Some(knot.name.clone()), of_time(knot));
        Self { at, knot, trust, knots, base, pull, doubt: 0.0, took }.if_any()
    }

    /// What finished work says; nothing when what was expected of it takes no time.
    pub(super) fn of_work(at: usize, work: &TimedWork) -> Option<Self> {
        let (base, pull, took) = (work.base.as_s(), work.pull.as_s(), work.took.as_s());
        let trust = work.knot.as_ref().map_or(Trust::Firm(0.0), |knot| of_time(knot));
        let knot = work.knot.as_ref().map(|knot| knot.name.clone());
        Self { at, knot, trust, knots: 1.0, base, pull, doubt: work.doubt, took }.if_any()
    }

    fn if_any(self) -> Option<Self> {
        (self.base + self.pull > 0.0 && self.took > 0.0).then_some(self)
    }

    /// By knot, then by what it says: sums in this order come out the same whatever the order of the file.
    pub(super) fn order(&self, other: &Self) -> Ordering {
        let figures = |one: &Self| [one.base, one.pull, one.took, one.knots, one.doubt];
        self.knot.cmp(&other.knot).then_with(|| by_figures(&figures(self), &figures(other)))
    }

    /// What it says at some logarithms of pace and pull. The variance is round what the shop's pace leads to expect: known
    /// before the sample is, so that quick samples don't weigh more than slow ones.
    fn seen(&self, shop: f64, [pace, pull]: [f64; 2]) -> Seen {
        let (paced, pulled) = (self.base * libm::exp(pace), self.pull * libm::exp(pull));
        let reading = Time::minutes(TIMING_MIN).as_s() / (shop * (self.base + self.pull));
        Seen {
            left: libm::log(self.took) - libm::log(paced + pulled),
            slope: [paced / (paced + pulled), pulled / (paced + pulled)],
            variance: square(TIMING_SD) + square(reading) + square(self.doubt),
        }
    }

    fn is_of_one_knot_with(&self, other: &Self) -> bool {
        self.knot.is_some() && self.knot == other.knot
    }
}

/// Pace and pull, and what is left of each knot.
#[derive(Debug, Clone)]
pub(super) struct PaceFit<'a> {
    evidence: Vec<&'a Timed>,
    shop: f64,
    /// Logarithms of pace and pull.
    best: [f64; 2],
    groups: Vec<TimeFit<'a>>,
    /// The place of each one's group.
    of_group: Vec<usize>,
    /// What all of them and the shop's word say of pace and pull, at the best ones.
    push: Push,
}

/// What is left of one knot, or of one work of several.
#[derive(Debug, Clone)]
pub(super) struct TimeFit<'a> {
    pub(super) knot: Option<&'a str>,
    /// The places of its samples and works.
    pub(super) places: Vec<usize>,
    trust: Trust,
    sums: WeightedSums,
}

impl TimeFit<'_> {
    /// Logarithm of the factor on the knot's time: what pace leaves unexplained, shrunk towards nothing.
    pub(super) fn factor(&self) -> Estimate {
        self.sums.factor(self.trust.sd(), [0.0; 2])
    }
}

/// Fits pace and pull, by steps of Gauss and Newton from the shop's. The evidence is in order of knots.
pub(super) fn fit_pace<'a>(shop: f64, evidence: &[&'a Timed]) -> PaceFit<'a> {
    const STEPS: u32 = 60;
    const CLOSE: f64 = 1e-12;
    // Far from the best, what is straight near by may lead too far.
    const FARTHEST: f64 = 0.5;
    let start = [libm::log(shop); 2];
    let mut best = start;
    for _ in 0..STEPS {
        let push = groups_at(shop, best, evidence)
            .fold(held_before(start, best), |sum, (group, trust)| sum.plus(group.push(trust), 1.0));
        let step = push.known.inverse().of(push.pull).map(|step| step.clamp(-FARTHEST, FARTHEST));
        best = [best[0] + step[0], best[1] + step[1]];
        if step[0].abs() < CLOSE && step[1].abs() < CLOSE {
            break;
        }
    }
    PaceFit::at(shop, start, best, evidence)
}

/// What the shop's word says of pace and pull.
fn held_before(start: [f64; 2], at: [f64; 2]) -> Push {
    let weight = [square(PACE_SD).recip(), square(PULL_SD).recip()];
    let mut before =
        Push { pull: [0, 1].map(|figure| weight[figure] * (start[figure] - at[figure])), ..Push::default() };
    (before.known.aa, before.known.bb) = (weight[0], weight[1]);
    before
}

fn groups_of<'e, 'a>(evidence: &'e [&'a Timed]) -> impl Iterator<Item = &'e [&'a Timed]> {
    evidence.chunk_by(|a, b| a.is_of_one_knot_with(b))
}

fn groups_at<'e>(shop: f64, best: [f64; 2], evidence: &'e [&Timed]) -> impl Iterator<Item = (WeightedSums, &'e Trust)> {
    groups_of(evidence)
        .map(move |group| (WeightedSums::of(group.iter().map(|one| one.seen(shop, best))), &group[0].trust))
}

impl<'a> PaceFit<'a> {
    fn at(shop: f64, start: [f64; 2], best: [f64; 2], evidence: &[&'a Timed]) -> Self {
        let mut of_group = Vec::new();
        let mut groups = Vec::new();
        let mut push = held_before(start, best);
        for (group, (sums, trust)) in groups_of(evidence).zip(groups_at(shop, best, evidence)) {
            of_group.extend(group.iter().map(|_| groups.len()));
            push = push.plus(sums.push(trust), 1.0);
            let places = group.iter().map(|one| one.at).collect();
            groups.push(TimeFit { knot: group[0].knot.as_deref(), places, trust: *trust, sums });
        }
        Self { evidence: evidence.to_vec(), shop, best, groups, of_group, push }
    }

    /// On the time that does not depend on length, and on that of pulling.
    pub(super) fn pace_and_pull(&self) -> (Estimate, Estimate) {
        let variance = self.push.known.inverse();
        let estimate = |logarithm: f64, variance: f64| {
            let mean = libm::exp(logarithm);
            Estimate { mean, sd: mean * variance.sqrt() }
        };
        (estimate(self.best[0], variance.aa), estimate(self.best[1], variance.bb))
    }

    /// What is left of each knot that was timed by itself.
    pub(super) fn knots(&self) -> impl Iterator<Item = (&'a str, &TimeFit<'a>)> {
        self.groups.iter().filter_map(|group| group.knot.map(|knot| (knot, group)))
    }

    fn surprise(&self, one: &Timed, (sums, trust): (&WeightedSums, &Trust), push: &Push, moved: [f64; 2]) -> Surprise {
        let seen = one.seen(self.shop, self.best);
        let factor = sums.factor(trust.sd(), moved);
        let off = seen.left - dot(seen.slope, moved) - factor.mean;
        let variance = seen.variance + square(factor.sd) + push.known.inverse().along(seen.slope);
        let deviations = off.abs() / variance.sqrt();
        Surprise {
            deviations,
            figure: SampleFigure::Time,
            expected: libm::exp(libm::log(one.took) - off) / one.knots,
            got: one.took / one.knots,
        }
    }
}

impl Fitted<Timed> for PaceFit<'_> {
    /// The others' pace follows from the sums without this one, with times taken as straight near the best pace.
    fn of_counted(&self, at: usize) -> Surprise {
        let (one, group) = (self.evidence[at], &self.groups[self.of_group[at]]);
        let others = group.sums.without(one.seen(self.shop, self.best));
        let push = self.push.plus(group.sums.push(&group.trust), -1.0).plus(others.push(&group.trust), 1.0);
        let moved = push.known.inverse().of(push.pull);
        self.surprise(one, (&others, &group.trust), &push, moved)
    }

    fn of_other(&self, one: &Timed) -> Surprise {
        let alike = self.groups.iter().find(|group| group.knot.is_some() && group.knot == one.knot.as_deref());
        let sums = alike.map_or_else(WeightedSums::default, |group| group.sums);
        self.surprise(one, (&sums, &one.trust), &self.push, [0.0; 2])
    }
}
