//! A sample's lengths as the model sees them.

use reeve_catalogue::{GIVE_RANGE, Taken};
use reeve_measure::Length;

use super::{READING_MM, Sample, TYING_SD};

/// Points at which what the catalogue expects is worked out; between them it runs straight.
const POINTS: u32 = 41;

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
    /// Logarithm of what the catalogue expects, from the hardest cord to the softest.
    curve: Vec<[f64; 2]>,
}

impl Evidence {
    /// What a sample says; nothing when its knot can't be tied so.
    pub(super) fn of(at: usize, sample: &Sample) -> Option<Self> {
        let gone = sample.before - sample.after;
        Self::new(at, &sample.knot.name, (sample.take_up(), sample.rise()), (gone, sample.made), |give| {
            sample.knot.taken(&sample.setting(give)).ok()
        })
    }

    /// From what one knot took and rose, the lengths that were measured for it, and what is expected of a give.
    pub(super) fn new(
        at: usize,
        knot: &str,
        (take_up, rise): (Length, Length),
        (gone, made): (Length, Length),
        expected: impl Fn(f64) -> Option<Taken>,
    ) -> Option<Self> {
        let at_point = |point: u32| {
            let share = f64::from(point) / f64::from(POINTS - 1);
            let taken = expected(GIVE_RANGE.0 + share * (GIVE_RANGE.1 - GIVE_RANGE.0))?;
            finite([taken.working.as_mm().ln(), taken.rise.as_mm().ln()])
        };
        // The leg is measured twice, the work once.
        let variance = |read: f64, length: Length| TYING_SD.powi(2) + (read * READING_MM / length.as_mm()).powi(2);
        Some(Self {
            at,
            knot: knot.to_owned(),
            observed: finite([take_up.as_mm().ln(), rise.as_mm().ln()])?,
            variance: finite([variance(2.0_f64.sqrt(), gone), variance(1.0, made)])?,
            curve: (0..POINTS).map(at_point).collect::<Option<Vec<_>>>()?,
        })
    }

    /// Logarithm of what is expected at a give.
    pub(super) fn expected(&self, give: f64) -> [f64; 2] {
        let (below, above, share) = self.around(give);
        [0, 1].map(|figure| below[figure] + share * (above[figure] - below[figure]))
    }

    /// How fast that changes with give.
    pub(super) fn slope(&self, give: f64) -> [f64; 2] {
        let (below, above, _) = self.around(give);
        let step = (GIVE_RANGE.1 - GIVE_RANGE.0) / f64::from(POINTS - 1);
        [0, 1].map(|figure| (above[figure] - below[figure]) / step)
    }

    /// Logarithm of what was observed over what is expected.
    pub(super) fn residual(&self, give: f64) -> [f64; 2] {
        let expected = self.expected(give);
        [0, 1].map(|figure| self.observed[figure] - expected[figure])
    }

    /// The points on either side, and how far from the lower one.
    fn around(&self, give: f64) -> ([f64; 2], [f64; 2], f64) {
        let step = (GIVE_RANGE.1 - GIVE_RANGE.0) / f64::from(POINTS - 1);
        let mut left = (give.clamp(GIVE_RANGE.0, GIVE_RANGE.1) - GIVE_RANGE.0) / step;
        let mut at = 0;
        while left > 1.0 && at + 2 < self.curve.len() {
            left -= 1.0;
            at += 1;
        }
        (self.curve[at], self.curve[at + 1], left)
    }
}

fn finite(pair: [f64; 2]) -> Option<[f64; 2]> {
    pair.iter().all(|value| value.is_finite()).then_some(pair)
}
