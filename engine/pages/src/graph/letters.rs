//! Bars of letters, for text pages.

use reeve_measure::count;

/// A bar that fills a share, from 0 to 1, of a width in characters.
pub fn bar(share: f64, width: usize) -> String {
    "#".repeat(filled(share, width))
}

/// A bar of parts, each in its letter, in a width in characters that stands for the whole.
///
/// The bar ends where the sum of the parts does, rounded to a character, and the parts divide it by largest
/// remainder, the earlier one first among equals. Parts without a letter, or below zero, are left out; parts beyond
/// the whole fill the width.
pub fn stack_bar(parts: &[f64], letters: &[char], whole: f64, width: usize) -> String {
    let part = |part: &f64| if part.is_finite() { part.max(0.0) } else { 0.0 };
    let parts: Vec<f64> = parts.iter().take(letters.len()).map(part).collect();
    let sum: f64 = parts.iter().sum();
    let shares = shared_out(filled(sum / whole, width), &parts, sum);
    letters.iter().zip(shares).flat_map(|(letter, share)| std::iter::repeat_n(*letter, share)).collect()
}

/// Characters by weight, by largest remainder. `costing::money::share_out` does the same with exact amounts of money.
fn shared_out(characters: usize, weights: &[f64], sum: f64) -> Vec<usize> {
    if characters == 0 {
        return vec![0; weights.len()];
    }
    let exact: Vec<f64> = weights.iter().map(|weight| weight / sum * count(characters as u64)).collect();
    let mut shares: Vec<usize> = exact.iter().map(|share| whole(share.floor(), characters)).collect();
    let mut order: Vec<usize> = (0..weights.len()).filter(|at| weights[*at] > 0.0).collect();
    let remainder = |at: usize| exact[at] - exact[at].floor();
    order.sort_by(|a, b| remainder(*b).total_cmp(&remainder(*a)));
    let left = characters.saturating_sub(shares.iter().sum());
    for at in order.into_iter().take(left) {
        shares[at] += 1;
    }
    shares
}

fn filled(share: f64, width: usize) -> usize {
    if share.is_nan() { 0 } else { whole((share.clamp(0.0, 1.0) * count(width as u64)).round(), width) }
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between nothing and a width of characters")]
fn whole(number: f64, most: usize) -> usize {
    number.clamp(0.0, count(most as u64)) as usize
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn a_bar_fills_its_share() {
        assert_eq!(bar(0.5, 10), "#####");
        assert_eq!(bar(0.25, 10), "###");
        assert_eq!([bar(-1.0, 4), bar(2.0, 4), bar(f64::NAN, 4)], ["", "####", ""]);
    }

    #[test]
    fn a_stack_is_told_by_letters() {
        assert_eq!(stack_bar(&[3.0, 6.0, 1.0], &['M', 'L', 'F'], 10.0, 10), "MMMLLLLLLF");
        assert_eq!(stack_bar(&[3.0, 6.0, 1.0], &['M', 'L', 'F'], 20.0, 10), "MMLLL");
        assert_eq!(stack_bar(&[1.0, 1.0, 1.0], &['a', 'b', 'c'], 3.0, 4), "aabc");
        assert_eq!(stack_bar(&[5.0, 15.0], &['a', 'b'], 10.0, 8), "aabbbbbb");
        assert_eq!(stack_bar(&[0.0, 0.0], &['a', 'b'], 0.0, 8), "");
        assert_eq!(stack_bar(&[-2.0, f64::NAN, 2.0], &['a', 'b', 'c'], 4.0, 8), "cccc");
    }

    #[test]
    fn seats_of_1790_by_largest_remainder() {
        // The apportionment of 60 seats by the populations of 1790, as given in the electowiki article on
        // the Hamilton method, revision 9372. One seat stands for one character here.
        let people = [
            630_560.0, 475_327.0, 432_879.0, 353_523.0, 331_589.0, 278_514.0, 236_841.0, 206_236.0, 179_570.0,
            141_822.0, 85_533.0, 70_835.0, 68_705.0, 68_446.0, 55_540.0,
        ];
        let seats = shared_out(60, &people, people.iter().sum());
        assert_eq!(seats, [11, 8, 7, 6, 6, 5, 4, 3, 3, 2, 1, 1, 1, 1, 1]);
    }

    proptest! {
        #[test]
        fn characters_add_up(
            parts in prop::collection::vec(0.0_f64..1e6, 1..6),
            width in 0_usize..200,
            more in 0.0_f64..1e6,
        ) {
            let letters = ['a', 'b', 'c', 'd', 'e'];
            let sum: f64 = parts.iter().sum();
            let text = stack_bar(&parts, &letters, sum + more, width);
            prop_assert_eq!(text.len(), filled(sum / (sum + more), width));
            for (part, letter) in parts.iter().zip(letters) {
                let share = part / sum * count(text.len() as u64);
                prop_assert!((count(text.matches(letter).count() as u64) - share).abs() <= 1.0 + 1e-9);
            }
        }
    }
}
