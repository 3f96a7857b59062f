//! A sample's lengths as the model sees them.

use std::cmp::Ordering;
use std::sync::Arc;

use reeve_catalogue::{GIVE_RANGE, Taken};
use reeve_measure::Length;

use super::group::{Seen, Trust};
use super::{READING_MM, Sample, TYING_SD, square};

/// Points at which what the catalogue expects is worked out; between them it runs straight.
const POINTS: u32 = 41;

/// The logarithms of what the catalogue expects of a knot in its setting, from the hardest cord to the softest. The first
/// figure of each pair is the take-up, the second the rise.
pub(super) type Curve = Arc<Vec<[f64; 2]>>;

/// A curve from what is expected of a give; nothing when a knot can't be tied so.
pub(super) fn curve(expected: impl Fn(f64) -> Option<Taken>) -> Option<Curve> {
    let at_point = |point: u32| {
        let share = f64::from(point) / f64::from(POINTS - 1);
        let taken = expected(GIVE_RANGE.0 + share * (GIVE_RANGE.1 - GIVE_RANGE.0))?;
        finite([libm::log(taken.working.as_mm()), libm::log(taken.rise.as_mm())])
    };
    (0..POINTS).map(at_point).collect::<Option<Vec<_>>>().map(Arc::new)
}

/// Curves already worked out, each with a sample that was tied so: many samples are of one knot in one setting.
#[derive(Debug, Default)]
pub(super) struct Curves<'a> {
    known: Vec<(&'a Sample, Option<Curve>)>,
}

impl<'a> Curves<'a> {
    fn of(&mut self, sample: &'a Sample) -> Option<Curve> {
        let alike = |other: &Sample| {
            other.knot.name == sample.knot.name
                && other.setting(0.0) == sample.setting(0.0)
                && other.cord.name == sample.cord.name
        };
        if let Some((_, curve)) = self.known.iter().find(|(other, _)| alike(other)) {
            return curve.clone();
        }
        let curve = curve(|give| sample.knot.taken(&sample.setting(give)).ok());
        self.known.push((sample, curve.clone()));
        curve
    }
}

/// A place on every curve.
#[derive(Debug, Clone, Copy)]
pub(super) struct CurvePoint {
    /// The point below.
    at: usize,
    /// How far from there to the next.
    share: f64,
}

impl CurvePoint {
    pub(super) fn of(give: f64) -> Self {
        let mut share = (give.clamp(GIVE_RANGE.0, GIVE_RANGE.1) - GIVE_RANGE.0) / step();
        let mut at = 0;
        while share > 1.0 && at + 2 < POINTS as usize {
            share -= 1.0;
            at += 1;
        }
        Self { at, share }
    }
}

fn step() -> f64 {
    (GIVE_RANGE.1 - GIVE_RANGE.0) / f64::from(POINTS - 1)
}

/// What one sample says of its cord and knot. The first figure of each pair is the take-up, the second the rise.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Evidence {
    /// Its place among the samples.
    pub(super) at: usize,
    /// The knot's name.
    pub(super) knot: String,
    /// Logarithm of what one knot took, in millimetres.
    pub(super) observed: [f64; 2],
    /// Variance of that.
    pub(super) variance: [f64; 2],
    /// How far what the catalogue expects is to be trusted.
    pub(super) trust: [Trust; 2],
    curve: Curve,
}

impl Evidence {
    /// What a sample says; nothing when its knot can't be tied so.
    pub(super) fn of<'a>(at: usize, sample: &'a Sample, curves: &mut Curves<'a>) -> Option<Self> {
        let gone = sample.before - sample.after;
        let trust = super::trust::of_lengths(&sample.knot);
        let one = (sample.take_up(), sample.rise());
        Self::new(at, &sample.knot.name, one, (gone, sample.made), trust, curves.of(sample)?)
    }

    /// From what one knot took and rose, the lengths that were measured for it, and what is expected.
    pub(super) fn new(
        at: usize,
        knot: &str,
        (take_up, rise): (Length, Length),
        (gone, made): (Length, Length),
        trust: [Trust; 2],
        curve: Curve,
    ) -> Option<Self> {
        // The leg is measured twice, the work once.
        let variance = |read: f64, length: Length| square(TYING_SD) + square(read * READING_MM / length.as_mm());
        Some(Self {
            at,
            knot: knot.to_owned(),
            observed: finite([libm::log(take_up.as_mm()), libm::log(rise.as_mm())])?,
            variance: finite([variance(2.0_f64.sqrt(), gone), variance(1.0, made)])?,
            trust,
            curve,
        })
    }

    /// By knot, then by what it says: sums in this order come out the same whatever the order of the file.
    pub(super) fn order(&self, other: &Self) -> Ordering {
        let figures = |one: &Self| -> Vec<f64> {
            let ends = [one.curve.first(), one.curve.last()].into_iter().flatten().flatten();
            one.observed.iter().chain(&one.variance).chain(ends).copied().collect()
        };
        self.knot.cmp(&other.knot).then_with(|| by_figures(&figures(self), &figures(other)))
    }

    /// Logarithm of what is expected at a give.
    pub(super) fn expected(&self, spot: CurvePoint) -> [f64; 2] {
        let (below, above) = (self.curve[spot.at], self.curve[spot.at + 1]);
        [0, 1].map(|figure| below[figure] + spot.share * (above[figure] - below[figure]))
    }

    /// How fast that changes with give.
    pub(super) fn slope(&self, spot: CurvePoint) -> [f64; 2] {
        let (below, above) = (self.curve[spot.at], self.curve[spot.at + 1]);
        [0, 1].map(|figure| (above[figure] - below[figure]) / step())
    }

    /// The observation of a figure at a give. The give is all that knots share here: the second shared figure has no part.
    pub(super) fn seen(&self, figure: usize, spot: CurvePoint) -> Seen {
        Seen {
            left: self.observed[figure] - self.expected(spot)[figure],
            slope: [self.slope(spot)[figure], 0.0],
            variance: self.variance[figure],
        }
    }
}

/// One figure after the other, until two differ.
pub(super) fn by_figures(some: &[f64], others: &[f64]) -> Ordering {
    let differ = some.iter().zip(others).map(|(a, b)| a.total_cmp(b)).find(|order| order.is_ne());
    differ.unwrap_or(Ordering::Equal)
}

fn finite(pair: [f64; 2]) -> Option<[f64; 2]> {
    pair.iter().all(|value| value.is_finite()).then_some(pair)
}
