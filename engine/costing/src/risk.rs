//! How sure the hours are: spread of single estimates, of their sum, and the time that suffices with some confidence.
//!
//! Estimates of three points are turned into mean and standard deviation as in project planning (PERT: D. G. Malcolm and
//! others, Operations Research 7, 1959; from memory). Sums of several are taken as normal.

use reeve_measure::Time;

/// The confidences that are told apart lie this far from none and from certainty: the normal curve has no end.
const NEAREST_TO_SURE: f64 = 1e-6;

/// What something takes, estimated at three points: `low` <= `likely` <= `high`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ThreePoint {
    /// If all goes well.
    pub low: Time,
    /// Most often.
    pub likely: Time,
    /// If much goes wrong.
    pub high: Time,
}

impl ThreePoint {
    /// A time that is not doubted.
    pub const fn certain(time: Time) -> Self {
        Self { low: time, likely: time, high: time }
    }

    /// Mean (low + 4 likely + high) / 6, standard deviation (high - low) / 6.
    pub fn spread(&self) -> Spread {
        Spread { mean: (self.low + self.likely * 4.0 + self.high) / 6.0, sd: (self.high - self.low) / 6.0 }
    }
}

/// What something takes on average, and how far it strays from that.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread {
    /// The average, 0 or more.
    pub mean: Time,
    /// The standard deviation, 0 or more.
    pub sd: Time,
}

impl Spread {
    /// A time that never strays.
    pub const fn certain(time: Time) -> Self {
        Self { mean: time, sd: Time::ZERO }
    }

    /// One after the other, neither knowing of the other: means add, and so do variances.
    #[must_use]
    pub fn plus(self, other: Self) -> Self {
        Self { mean: self.mean + other.mean, sd: by_squares(self.sd, other.sd) }
    }

    /// The same thing done so many times, 0 or more: it errs alike each time, so the deviation grows as the mean does.
    #[must_use]
    pub fn times(self, count: f64) -> Self {
        Self { mean: self.mean * count, sd: self.sd * count }
    }

    /// The work at the pace of the day, 1 on average with this standard deviation, 0 or more.
    ///
    /// The maker's pace is common to all steps, so it is laid on their sum and not on each. The time is the product of
    /// pace P and steps S, independent of each other: Var PS = Var S + sd² (Var S + mean²), exact.
    #[must_use]
    pub fn with_pace(self, sd: f64) -> Self {
        let strays = by_squares(self.sd, self.mean) * sd;
        Self { mean: self.mean, sd: by_squares(self.sd, strays) }
    }

    /// The time that covers the job at this confidence, by the normal curve; never below zero.
    ///
    /// The confidence lies above 0 and below 1, 0.8 being four times in five; it is kept a millionth away from both.
    pub fn at(&self, confidence: f64) -> Time {
        let confidence = confidence.clamp(NEAREST_TO_SURE, 1.0 - NEAREST_TO_SURE);
        (self.mean + self.sd * deviations(confidence)).max(Time::ZERO)
    }

    /// How likely it takes no longer than this, 0 to 1.
    pub fn confidence_of(&self, time: Time) -> f64 {
        if self.sd <= Time::ZERO {
            return if time >= self.mean { 1.0 } else { 0.0 };
        }
        likelihood((time - self.mean) / self.sd)
    }
}

/// How likely what is normal comes out at most so many standard deviations above its mean.
fn likelihood(deviations: f64) -> f64 {
    libm::erfc(-deviations * std::f64::consts::FRAC_1_SQRT_2) / 2.0
}

/// Within how many standard deviations above its mean what is normal stays so likely: halved until nothing is between.
fn deviations(likely: f64) -> f64 {
    const HALVINGS: usize = 60;
    // Beyond what is a millionth away from certain.
    let (mut low, mut high) = (-5.0, 5.0);
    for _ in 0..HALVINGS {
        let between = f64::midpoint(low, high);
        if likelihood(between) < likely { low = between } else { high = between }
    }
    f64::midpoint(low, high)
}

/// The root of the sum of squares.
fn by_squares(a: Time, b: Time) -> Time {
    Time::s(libm::hypot(a.as_s(), b.as_s()))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use proptest::test_runner::{RngAlgorithm, TestRng};
    use statrs::distribution::{ContinuousCDF, Normal};

    use super::*;

    fn three(low: f64, likely: f64, high: f64) -> Spread {
        ThreePoint { low: Time::hours(low), likely: Time::hours(likely), high: Time::hours(high) }.spread()
    }

    fn hours(mean: f64, sd: f64) -> Spread {
        Spread { mean: Time::hours(mean), sd: Time::hours(sd) }
    }

    fn sum(spreads: &[Spread]) -> Spread {
        spreads.iter().copied().fold(Spread::certain(Time::ZERO), Spread::plus)
    }

    fn close(found: f64, expected: f64, by: f64) {
        assert!((found - expected).abs() <= by, "{found} and not {expected}");
    }

    #[test]
    fn a_path_of_activities_is_the_published_one() {
        // Course SCM 304, UNC Greensboro, 6.3.1: A 6, 7, 14; C 2, 3, 4; E 5, 5.5, 9; G 4, 6, 8: mean 23, deviation 1.667.
        let path = sum(&[three(6.0, 7.0, 14.0), three(2.0, 3.0, 4.0), three(5.0, 5.5, 9.0), three(4.0, 6.0, 8.0)]);
        close(path.mean.as_hours(), 23.0, 1e-9);
        close(path.sd.as_hours(), 1.667, 0.0005);
        // Computed from the same: 23 + 0.8416 x 1.667, the factor being the normal curve's at 80 %.
        close(path.at(0.8).as_hours(), 24.40, 0.005);
        close(path.confidence_of(Time::hours(24.40)), 0.8, 0.001);
    }

    #[test]
    fn points_of_the_normal_curve_are_the_tabled_ones() {
        // Tables of the standard normal distribution (from memory): 1.2816, 1.6449 and 2.3263 at 90, 95 and 99 %.
        for (confidence, deviations) in [(0.5, 0.0), (0.9, 1.2816), (0.95, 1.6449), (0.99, 2.3263)] {
            close(hours(10.0, 1.0).at(confidence).as_hours(), 10.0 + deviations, 0.000_06);
        }
    }

    #[test]
    fn what_is_certain_stays_so() {
        let certain = Spread::certain(Time::hours(3.0));
        for confidence in [0.0, 0.2, 0.99, 1.0] {
            assert_eq!(certain.at(confidence), Time::hours(3.0));
        }
        close(certain.confidence_of(Time::hours(2.9)), 0.0, 0.0);
        close(certain.confidence_of(Time::hours(3.0)), 1.0, 0.0);
        assert_eq!(certain.plus(certain).times(2.0), Spread::certain(Time::hours(12.0)));
        close(certain.with_pace(0.1).sd.as_hours(), 0.3, 1e-12);
    }

    #[test]
    fn no_time_is_below_nothing_or_without_end() {
        assert_eq!(hours(1.0, 2.0).at(0.0), Time::ZERO);
        assert!(hours(1.0, 2.0).at(1.0) < Time::hours(11.0));
    }

    #[test]
    fn pace_and_steps_stray_together() {
        // By hand: 1² + 0.5² (1² + 2²) = 2.25 = 1.5².
        let paced = hours(2.0, 1.0).with_pace(0.5);
        close(paced.mean.as_hours(), 2.0, 0.0);
        close(paced.sd.as_hours(), 1.5, 1e-12);
    }

    /// Times drawn at random, from a seed that stays the same.
    struct Drawing(TestRng);

    impl Drawing {
        fn new() -> Self {
            Self(TestRng::from_seed(RngAlgorithm::XorShift, b"a pace and steps"))
        }

        /// Between 0 and 1, neither of them.
        fn even(&mut self) -> f64 {
            (f64::from(self.0.next_u32()) + 0.5) / (f64::from(u32::MAX) + 1.0)
        }

        /// A beta distribution with both parameters 4 between two hours, as the fourth of seven even numbers: its standard
        /// deviation is a sixth of the range, as the three-point estimate has it, and it is not normal.
        fn step(&mut self, (low, high): (f64, f64)) -> f64 {
            let mut seven: [f64; 7] = std::array::from_fn(|_| self.even());
            low + (high - low) * *seven.select_nth_unstable_by(3, f64::total_cmp).1
        }

        /// An even distribution with mean 1 and this standard deviation, a range of its root of 12.
        fn pace(&mut self, sd: f64) -> f64 {
            1.0 + sd * 12.0_f64.sqrt() * (self.even() - 0.5)
        }

        /// A normal distribution with mean 1 and this standard deviation.
        fn normal_pace(&mut self, sd: f64) -> f64 {
            1.0 + sd * deviations(self.even())
        }
    }

    /// The library's own way to both is another one.
    #[test]
    fn the_normal_curve_is_that_of_a_general_library() {
        let normal = Normal::standard();
        for nth in 1..1000 {
            let likely = f64::from(nth) / 1000.0;
            assert!((deviations(likely) - normal.inverse_cdf(likely)).abs() < 1e-12, "{likely}");
            let at = f64::from(nth - 500) / 100.0;
            assert!((likelihood(at) - normal.cdf(at)).abs() < 1e-10, "{at}");
        }
        for sure in [NEAREST_TO_SURE, 1.0 - NEAREST_TO_SURE] {
            assert!((deviations(sure) - normal.inverse_cdf(sure)).abs() < 1e-9, "{sure}");
        }
    }

    /// Mean, standard deviation and 80 % point of what was drawn.
    fn described(mut drawn: Vec<f64>) -> (f64, f64, f64) {
        let count = reeve_measure::count(drawn.len() as u64);
        let mean = drawn.iter().sum::<f64>() / count;
        let sd = (drawn.iter().map(|time| (time - mean) * (time - mean)).sum::<f64>() / count).sqrt();
        let at = drawn.len() / 5 * 4;
        (mean, sd, *drawn.select_nth_unstable_by(at, f64::total_cmp).1)
    }

    #[test]
    fn drawn_at_random_it_comes_out_as_reckoned() {
        const DRAWS: usize = 200_000;
        const STEPS: [(f64, f64); 3] = [(1.0, 4.0), (0.5, 3.5), (2.0, 6.0)];
        const PACE: f64 = 0.15;
        let reckoned = sum(&STEPS.map(|(low, high)| three(low, f64::midpoint(low, high), high))).with_pace(PACE);
        let mut drawing = Drawing::new();
        for pace in [Drawing::pace, Drawing::normal_pace] {
            let mut draw = || pace(&mut drawing, PACE) * STEPS.map(|step| drawing.step(step)).iter().sum::<f64>();
            let (mean, sd, suffices) = described((0..DRAWS).map(|_| draw()).collect());
            // Mean and deviation hold whatever the pace's distribution; drawing errs by 0.04 % and 0.2 %, and four times
            // that is let through. The 80 % point takes the product for normal, which it is not quite.
            close(mean, reckoned.mean.as_hours(), 0.0016 * mean);
            close(sd, reckoned.sd.as_hours(), 0.008 * sd);
            close(suffices, reckoned.at(0.8).as_hours(), 0.01 * suffices);
        }
    }

    fn spreads() -> impl Strategy<Value = Spread> {
        (0.01..40.0_f64, 0.0..0.5_f64).prop_map(|(mean, share)| hours(mean, mean * share))
    }

    proptest! {
        #[test]
        fn more_confidence_never_takes_less_time(spread in spreads(), a in 0.0..1.0_f64, b in 0.0..1.0_f64) {
            prop_assert!(spread.at(a.min(b)) <= spread.at(a.max(b)));
        }

        #[test]
        fn a_time_has_the_confidence_it_was_asked_with(spread in spreads(), confidence in 0.05..0.999_f64) {
            // Below a twentieth the widest of these would end at zero.
            prop_assert!((spread.with_pace(0.01).confidence_of(spread.with_pace(0.01).at(confidence)) - confidence).abs() < 1e-9);
        }

        #[test]
        fn a_common_pace_strays_further_than_one_for_each_step(
            steps in prop::collection::vec(spreads(), 2..8), pace in 0.01..0.5_f64
        ) {
            let common = sum(&steps).with_pace(pace);
            let apart = sum(&steps.iter().map(|step| step.with_pace(pace)).collect::<Vec<_>>());
            prop_assert!((common.mean - apart.mean).as_s().abs() < 1e-6);
            prop_assert!(common.sd > apart.sd);
        }

        #[test]
        fn the_same_again_strays_further_than_another_of_its_kind(spread in spreads()) {
            prop_assert!(spread.times(2.0).sd >= spread.plus(spread).sd);
        }
    }
}
