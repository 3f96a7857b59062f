//! Bars of letters, for text pages.

use reeve_measure::count;

/// A bar that fills a share, from 0 to 1, of a width in characters.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between nothing and a width of characters")]
pub fn bar(share: f64, width: usize) -> String {
    let share = if share.is_nan() { 0.0 } else { share.clamp(0.0, 1.0) };
    "#".repeat((share * count(width as u64)).round() as usize)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bar_fills_its_share() {
        assert_eq!(bar(0.5, 10), "#####");
        assert_eq!(bar(0.25, 10), "###");
        assert_eq!([bar(-1.0, 4), bar(2.0, 4), bar(f64::NAN, 4)], ["", "####", ""]);
    }
}
