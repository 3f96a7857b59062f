//! Money: exact decimals, rounded once and by name.

#![allow(clippy::disallowed_methods, reason = "roundings have their names here")]

use std::str::FromStr;

use iso_currency::IntoEnumIterator;
use reeve_measure::Time;
use rust_decimal::prelude::FromPrimitive;
use rust_decimal::{Decimal, RoundingStrategy};

/// A currency of ISO 4217.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Currency(iso_currency::Currency);

/// Money that is no amount in a whole minor unit, such as a unit with no decimals at all (gold).
const NO_MINOR_UNIT: u32 = 2;

impl Currency {
    /// Finds a currency by its three letters.
    pub fn from_code(code: &str) -> Option<Self> {
        iso_currency::Currency::from_str(code).ok().map(Self)
    }

    /// The three letters of every currency.
    pub fn codes() -> impl Iterator<Item = &'static str> {
        iso_currency::Currency::iter().map(|currency| currency.code())
    }

    /// Its three letters.
    pub fn code(self) -> &'static str {
        self.0.code()
    }

    /// Decimals of its minor unit, from ISO 4217.
    pub fn minor_units(self) -> u32 {
        self.0.exponent().map_or(NO_MINOR_UNIT, u32::from)
    }

    /// The smallest amount that can be paid.
    pub fn smallest(self) -> Decimal {
        Decimal::new(1, self.minor_units())
    }

    /// Rounds to the minor unit, half away from zero, as EN 16931 asks.
    ///
    /// The result always shows as many decimals as the minor unit has.
    pub fn round_half_away(self, amount: Decimal) -> Decimal {
        let mut rounded = amount.round_dp_with_strategy(self.minor_units(), RoundingStrategy::MidpointAwayFromZero);
        rounded.rescale(self.minor_units());
        rounded
    }

    /// Rounds up to a whole number of steps, at least one minor unit each, and then to the minor unit: never below the amount.
    pub fn round_up_to(self, amount: Decimal, step: Decimal) -> Decimal {
        let step = step.max(self.smallest());
        let steps = (amount / step).round_dp_with_strategy(0, RoundingStrategy::ToPositiveInfinity);
        let mut up = (steps * step).round_dp_with_strategy(self.minor_units(), RoundingStrategy::ToPositiveInfinity);
        up.rescale(self.minor_units());
        up
    }
}

/// A percentage as a fraction: 20 becomes 0.2.
pub fn fraction(percent: Decimal) -> Decimal {
    percent / Decimal::ONE_HUNDRED
}

/// Money for bench time at a rate an hour: the one place where a physical quantity meets money.
///
/// The hours are taken to a ten-thousandth, a third of a second, before they meet the rate.
pub fn for_hours(rate: Decimal, time: Time) -> Decimal {
    rate * hours(time)
}

/// A figure to so many decimals, half away from zero: what is told and kept, where the sums themselves go on exactly.
pub fn to_decimals(figure: Decimal, decimals: u32) -> Decimal {
    figure.round_dp_with_strategy(decimals, RoundingStrategy::MidpointAwayFromZero)
}

/// A figure to so many decimals, rounded up: for what must not be told as nothing.
pub fn up_to_decimals(figure: Decimal, decimals: u32) -> Decimal {
    figure.round_dp_with_strategy(decimals, RoundingStrategy::ToPositiveInfinity)
}

/// A figure to a millionth and no longer than it must be: far below any coin, and short enough to read.
pub fn to_millionths(figure: Decimal) -> Decimal {
    to_decimals(figure, 6).normalize()
}

/// A measured number as a decimal of so many decimals, half away from zero; zero for what is no number.
pub fn decimal(number: f64, decimals: u32) -> Decimal {
    to_decimals(Decimal::from_f64(number).unwrap_or_default(), decimals)
}

/// How many times one time is another, to a millionth. The other must not be zero.
pub fn ratio(time: Time, other: Time) -> Decimal {
    decimal(time / other, 6)
}

/// Bench hours as a decimal, to a ten-thousandth. Bounds on the input keep it finite.
pub fn hours(time: Time) -> Decimal {
    const DECIMALS: u32 = 4;
    decimal(time.as_hours(), DECIMALS)
}

/// Shares a rounded amount out by weight so that the rounded shares add up to it exactly.
///
/// Largest remainder: each share is rounded towards zero, then the minor units left over go to the largest
/// remainders, the earlier one first among equals. Weights must not be negative; if all are zero the first
/// takes everything.
pub fn share_out(currency: Currency, amount: Decimal, weights: &[Decimal]) -> Vec<Decimal> {
    let whole: Decimal = weights.iter().sum();
    if whole.is_zero() {
        let first = weights.iter().enumerate().map(|(at, _)| if at == 0 { amount } else { Decimal::ZERO });
        return first.map(|share| currency.round_half_away(share)).collect();
    }
    let units = currency.minor_units();
    let exact: Vec<Decimal> = weights.iter().map(|weight| amount * (weight / whole)).collect();
    let mut shares: Vec<Decimal> =
        exact.iter().map(|share| share.round_dp_with_strategy(units, RoundingStrategy::ToZero)).collect();
    let step = if amount.is_sign_negative() { -currency.smallest() } else { currency.smallest() };
    let mut order: Vec<usize> = (0..weights.len()).collect();
    order.sort_by_key(|at| std::cmp::Reverse((exact[*at] - shares[*at]).abs()));
    let mut left = amount - shares.iter().sum::<Decimal>();
    for at in order.into_iter().cycle() {
        if left.abs() < currency.smallest() {
            break;
        }
        shares[at] += step;
        left -= step;
    }
    shares.into_iter().map(|share| currency.round_half_away(share)).collect()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn money(text: &str) -> Decimal {
        Decimal::from_str(text).unwrap()
    }

    fn currency(code: &str) -> Currency {
        Currency::from_code(code).unwrap()
    }

    #[test]
    fn halves_go_away_from_zero() {
        for (amount, rounded) in [("365.125", "365.13"), ("-1622.835", "-1622.84"), ("0.005", "0.01"), ("2", "2.00")] {
            assert_eq!(currency("EUR").round_half_away(money(amount)).to_string(), rounded);
        }
        assert_eq!(currency("JPY").round_half_away(money("10.5")).to_string(), "11");
        assert_eq!(currency("KWD").round_half_away(money("10.0005")).to_string(), "10.001");
    }

    #[test]
    fn a_price_goes_up_to_its_step() {
        let euro = currency("EUR");
        for (amount, step, rounded) in
            [("83.01", "0.50", "83.50"), ("83.50", "0.50", "83.50"), ("83.001", "0", "83.01")]
        {
            assert_eq!(euro.round_up_to(money(amount), money(step)).to_string(), rounded);
        }
        // A step that is no whole number of yen: 12 x 5.54 = 66.48 is not below 66.18 as 67, but would be as 66.
        assert_eq!(currency("JPY").round_up_to(money("66.18"), money("5.54")).to_string(), "67");
    }

    #[test]
    fn seats_of_1790_by_largest_remainder() {
        // The apportionment of 60 seats by the populations of 1790, as given in the electowiki article on
        // the Hamilton method, revision 9372. One seat stands for one yen here.
        let people = [
            630_560, 475_327, 432_879, 353_523, 331_589, 278_514, 236_841, 206_236, 179_570, 141_822, 85_533, 70_835,
            68_705, 68_446, 55_540,
        ];
        let weights: Vec<Decimal> = people.into_iter().map(Decimal::from).collect();
        let seats = share_out(currency("JPY"), Decimal::from(60), &weights);
        let expected: Vec<Decimal> =
            [11, 8, 7, 6, 6, 5, 4, 3, 3, 2, 1, 1, 1, 1, 1].into_iter().map(Decimal::from).collect();
        assert_eq!(seats, expected);
    }

    proptest! {
        #[test]
        fn shares_add_up_and_stay_within_a_unit(cents in -1_000_000_i64..1_000_000, weights in prop::collection::vec(0_u32..10_000, 1..8)) {
            let euro = currency("EUR");
            let amount = Decimal::new(cents, 2);
            let weights: Vec<Decimal> = weights.into_iter().map(Decimal::from).collect();
            let shares = share_out(euro, amount, &weights);
            prop_assert_eq!(shares.iter().sum::<Decimal>(), amount);
            let whole: Decimal = weights.iter().sum();
            for (share, weight) in shares.iter().zip(&weights) {
                if !whole.is_zero() {
                    prop_assert!((share - amount * weight / whole).abs() < euro.smallest());
                }
            }
        }
    }
}
