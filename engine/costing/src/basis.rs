//! What a piece is reckoned by: the shop's rates, and beside them the hand that its samples and finished work show.

use reeve_measure::Time;

use crate::hand::{Hand, PACE_SD};
use crate::labour::standard_time;
use crate::rates::Rates;

/// Rates and hand.
#[derive(Debug, Clone, PartialEq)]
pub struct Basis {
    /// What shop.toml states.
    pub rates: Rates,
    /// What samples and finished work say.
    pub hand: Hand,
}

impl Basis {
    /// The standard time of handling: pace and allowances.
    pub fn at_pace(&self, time: Time) -> Time {
        standard_time(time, self.pace_and_pull().0, self.rates.bench.allowances_in_all())
    }

    /// What the catalogue's times are multiplied by: what does not depend on length, handling included, and what pulling
    /// takes.
    ///
    /// Samples are timed at this bench and work is done at it, so they measure the same rating that the shop's pace states.
    /// Where there are any they stand in its place, and never on top of it.
    pub fn pace_and_pull(&self) -> (f64, f64) {
        let stated = self.rates.bench.pace;
        self.hand.pace.map_or((stated, stated), |hand| (hand.pace.mean, hand.pull.mean))
    }

    /// How far the maker's pace strays, as a share of it: as the shop says, else as the samples leave it, else as far as
    /// a pace is doubted before any sample.
    pub fn pace_strays(&self) -> f64 {
        let sampled = self.hand.pace.map(|hand| hand.pace.sd / hand.pace.mean);
        self.rates.bench.pace_spread.or(sampled).unwrap_or(PACE_SD)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::hand::{Estimate, PaceHand};
    use crate::sample::plain;

    fn sampled() -> Basis {
        let (pace, pull) = (Estimate { mean: 1.6, sd: 0.4 }, Estimate { mean: 0.5, sd: 0.1 });
        let hand = Hand { pace: Some(PaceHand { pace, pull, samples: 3, works: 0 }), ..Hand::default() };
        Basis { hand, ..plain() }
    }

    #[test]
    fn the_pace_strays_as_the_shop_says_else_as_samples_leave_it_else_as_before_any() {
        let mut said = sampled();
        said.rates.bench.pace_spread = Some(0.07);
        let strays = [said, sampled(), plain()].map(|basis| basis.pace_strays());
        for (found, expected) in strays.into_iter().zip([0.07, 0.4 / 1.6, PACE_SD]) {
            assert!((found - expected).abs() < 1e-12, "{found} and not {expected}");
        }
    }

    #[test]
    fn handling_takes_the_sampled_pace_in_place_of_the_stated_one() {
        let mut stated = plain();
        stated.rates.bench.pace = 1.25;
        let minute = Time::minutes(1.0);
        assert!((stated.at_pace(minute).as_s() - 75.0).abs() < 1e-9);
        assert!((sampled().at_pace(minute).as_s() - 96.0).abs() < 1e-9);
    }
}
