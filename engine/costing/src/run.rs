//! The time of a run of knots on legs that get shorter.

use reeve_measure::{Length, Time};

/// A run of one knot on legs that get shorter with each.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Run {
    /// Knots in the run, one after the other.
    pub knots: u32,
    /// Time of one that does not depend on length.
    pub base: Time,
    /// Seconds for each metre hanging, each draw.
    pub pull: f64,
    /// Legs drawn times draws, in one knot.
    pub draws: f64,
    /// Leg hanging before the first knot.
    pub hanging: Length,
    /// Leg that each knot takes.
    pub take_up: Length,
}

impl Run {
    /// Time of the whole run: the sum of base + pull x draws x what still hangs below each knot.
    ///
    /// What hangs below the k-th knot is `hanging - k x take_up`, so the sum is arithmetic.
    pub fn time(&self) -> Time {
        let knots = f64::from(self.knots);
        let hanging_below = self.hanging.as_m() * knots - self.take_up.as_m() * knots * (knots + 1.0) / 2.0;
        self.base * knots + Time::s(self.pull * self.draws * hanging_below.max(0.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn close(time: Time, seconds: f64) {
        assert!((time.as_s() - seconds).abs() < 1e-9, "{} s", time.as_s());
    }

    #[test]
    fn a_run_is_the_sum_of_its_knots() {
        let run = Run {
            knots: 3,
            base: Time::s(10.0),
            pull: 2.0,
            draws: 4.0,
            hanging: Length::m(1.0),
            take_up: Length::m(0.2),
        };
        // 3 x 10 + 8 x (0.8 + 0.6 + 0.4)
        close(run.time(), 30.0 + 8.0 * 1.8);
    }
}
