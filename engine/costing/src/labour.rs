//! Labour: standard time, pace and allowances.

use reeve_measure::Time;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use crate::money::fraction;
use crate::rates::Bench;
use crate::risk::{Spread, ThreePoint};

/// Standard time = observed time x rating x (1 + relaxation allowances).
///
/// International Labour Office, Introduction to Work Study. Allowances are a percentage in all.
pub fn standard_time(observed: Time, rating: f64, allowances: Decimal) -> Time {
    observed * rating * (1.0 + fraction(allowances).to_f64().unwrap_or_default())
}

impl Bench {
    /// All relaxation allowances, in per cent.
    pub fn allowances_in_all(&self) -> Decimal {
        self.allowances.iter().map(|(_, percent)| *percent).sum()
    }

    /// The standard time of a figure at three points that is the maker's own: mean and standard deviation.
    pub fn spread_as_given(&self, time: ThreePoint) -> Spread {
        let Spread { mean, sd } = time.spread();
        Spread { mean: self.as_given(mean), sd: self.as_given(sd) }
    }

    /// The standard time of a figure that is the maker's own already: allowances only.
    pub fn as_given(&self, time: Time) -> Time {
        standard_time(time, 1.0, self.allowances_in_all())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn close(time: Time, seconds: f64) {
        assert!((time.as_s() - seconds).abs() < 1e-9, "{} s", time.as_s());
    }

    #[test]
    fn standard_time_of_the_textbook() {
        // Readings 27, 19, 20, 21, 13 s: mean 20 s; rating 1.20: 24 s; allowance 20 %: 28.8 s (textbook example).
        let mean = Time::s([27.0, 19.0, 20.0, 21.0, 13.0].iter().sum::<f64>() / 5.0);
        close(mean, 20.0);
        close(standard_time(mean, 1.20, Decimal::ZERO), 24.0);
        close(standard_time(mean, 1.20, Decimal::from(20)), 28.8);
    }
}
