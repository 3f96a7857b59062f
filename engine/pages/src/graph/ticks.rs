//! Round numbers along an axis.

use reeve_measure::count;

/// How many steps there are at least and at most between ticks.
const STEPS: (f64, f64) = (3.0, 6.0);
/// Numbers are taken as they are up to this size, and told apart down to this share of it.
const LARGEST: f64 = 1e12;
const FINEST: f64 = 1e-6;

/// Round numbers that cover a range: 4 to 7 multiples of 1, 2 or 5 times a power of ten, rising.
///
/// A range of one number is widened to reach zero, or from zero to one. Numbers are held within a million million.
pub fn ticks(least: f64, most: f64) -> Vec<f64> {
    let (least, most) = widened(least, most);
    let mut power = 0;
    // The coarsest power of ten that is too fine, and then the first step that is not.
    while (most - least) / scaled(1.0, power) <= STEPS.1 {
        power -= 1;
    }
    while (most - least) / scaled(1.0, power + 1) > STEPS.1 {
        power += 1;
    }
    for (digit, power) in [(2.0, power), (5.0, power), (1.0, power + 1), (2.0, power + 1)] {
        // A hair's breadth less, or a number such as 0.3 would be just beyond three steps of 0.1.
        let first = (least / scaled(digit, power) + FINEST).floor();
        let last = (most / scaled(digit, power) - FINEST).ceil().max(first + STEPS.0);
        if last - first <= STEPS.1 {
            let steps = (0..7).map(|step| first + count(step)).take_while(|step| *step <= last);
            return steps.map(|step| scaled(step * digit, power)).collect();
        }
    }
    Vec::new()
}

fn widened(least: f64, most: f64) -> (f64, f64) {
    let within = |value: f64| if value.is_nan() { 0.0 } else { value.clamp(-LARGEST, LARGEST) };
    let (least, most) = (within(least.min(most)), within(most.max(least)));
    let size = least.abs().max(most.abs());
    if size < FINEST {
        (0.0, 1.0)
    } else if most - least < size * FINEST {
        (least.min(0.0), most.max(0.0))
    } else {
        (least, most)
    }
}

/// A number times a power of ten, as near as can be: dividing by an exact power beats multiplying by a rounded one.
fn scaled(number: f64, power: i32) -> f64 {
    let ten = (0..power.abs()).fold(1.0, |ten, _| ten * 10.0);
    if power < 0 { number / ten } else { number * ten }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn ranges_get_round_numbers() {
        assert_eq!(ticks(0.0, 1.0), [0.0, 0.2, 0.4, 0.6, 0.8, 1.0]);
        assert_eq!(ticks(0.3, 0.6), [0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6]);
        assert_eq!(ticks(-12.0, 31.0), [-20.0, -10.0, 0.0, 10.0, 20.0, 30.0, 40.0]);
        assert_eq!(ticks(1.0, 14.0), [0.0, 5.0, 10.0, 15.0]);
        assert_eq!(ticks(0.0, 30.0), [0.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0]);
    }

    #[test]
    fn one_number_or_none_is_a_range_too() {
        assert_eq!(ticks(0.0, 0.0), [0.0, 0.2, 0.4, 0.6, 0.8, 1.0]);
        assert_eq!(ticks(8.0, 8.0), [0.0, 2.0, 4.0, 6.0, 8.0]);
        assert_eq!(ticks(-8.0, -8.0), [-8.0, -6.0, -4.0, -2.0, 0.0]);
        assert_eq!(ticks(f64::NAN, f64::NAN), ticks(0.0, 0.0));
        assert_eq!(ticks(5.0, 1.0), ticks(1.0, 5.0));
        assert!(ticks(f64::NEG_INFINITY, f64::INFINITY).len() >= 4);
    }

    proptest! {
        #[test]
        fn ticks_are_few_even_and_round_and_cover(a in -1e4_f64..1e4, span in 1e-2_f64..1e5, shrink in 0..6_i32) {
            let small = libm::pow(10.0, f64::from(-shrink));
            let (least, most) = (a * small, (a + span) * small);
            let ticks = ticks(least, most);
            prop_assert!((4..=7).contains(&ticks.len()), "{ticks:?}");
            let step = ticks[1] - ticks[0];
            let slack = step * 1e-5;
            prop_assert!(ticks[0] <= least + slack && ticks[ticks.len() - 1] >= most - slack, "{ticks:?}");
            let written = format!("{step:e}");
            let mantissa: f64 = written.split('e').next().and_then(|digits| digits.parse().ok()).unwrap_or_default();
            prop_assert!([1.0, 2.0, 5.0, 10.0].iter().any(|round| (mantissa - round).abs() < 1e-5), "{step}");
            for pair in ticks.windows(2) {
                prop_assert!((pair[1] - pair[0] - step).abs() < slack);
            }
            for tick in &ticks {
                prop_assert!((tick / step - (tick / step).round()).abs() < 1e-4, "{tick} by {step}");
            }
        }
    }
}
