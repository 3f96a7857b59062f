//! Shops at the ends of what their files may say: whatever comes of them, no figure is told as infinite or as no number.

use proptest::prelude::*;
use reeve_measure::{Bound, bound};
use reeve_shop::Answer;
use reeve_tests::TestShop;

use crate::cases;
use crate::pages::{client_pages, makers_pages};

/// A figure at an end of its bound, or near it.
fn ends(bound: Bound) -> impl Strategy<Value = f64> {
    let Bound { least, most, .. } = bound;
    prop_oneof![Just(least), Just(most), Just(least + (most - least) / 1e6), Just(f64::midpoint(least, most))]
}

/// Values put in the place of those of the starter shop, as they are written.
fn swaps() -> impl Strategy<Value = Vec<(&'static str, &'static str, String)>> {
    let shop = (
        ends(bound::PACE),
        ends(bound::MONEY),
        ends(bound::MARGIN),
        ends(bound::CORD_DIAMETER),
        ends(bound::LINEAR_DENSITY),
    );
    let design =
        (ends(bound::STEP_LENGTH), ends(bound::TASK_MINUTES), ends(bound::PIECES), ends(bound::PARAMETER_LENGTH));
    (shop, design).prop_map(|((pace, wage, margin, thick, weight), (bare, minutes, pieces, measure))| {
        vec![
            ("shop.toml", "pace", format!("{pace:.6}")),
            ("shop.toml", "wage", format!("\"{:.2}\"", wage.abs())),
            ("shop.toml", "margin", format!("\"{margin:.2} %\"")),
            ("store/cords.toml", "diameter", format!("\"{thick:.4} mm\"")),
            ("store/cords.toml", "weight", format!("\"{weight:.4} g/m\"")),
            ("designs/curlew-hanger.toml", "bare", format!("\"{bare:.2} mm\"")),
            ("designs/curlew-hanger.toml", "minutes", format!("{minutes:.2}")),
            ("designs/curlew-hanger.toml", "measures", format!("{{ length = \"{measure:.2} mm\" }}")),
            ("commissions/reading-room.toml", "quantity", format!("{pieces:.0}")),
        ]
    })
}

/// Writes a value in the place of every value of a key.
fn set(text: &str, key: &str, value: &str) -> String {
    let line = |line: &str| match line.split_once('=') {
        Some((name, _)) if name.trim() == key => format!("{key} = {value}\n"),
        _ => format!("{line}\n"),
    };
    text.lines().map(line).collect()
}

/// The words for what is no figure, standing alone.
fn told_as_no_figure(text: &str) -> Option<&str> {
    let words = || text.split(|c: char| !c.is_alphanumeric());
    words().find(|word| ["inf", "Inf", "infinity", "Infinity", "nan", "NaN", "∞"].contains(word))
}

proptest! {
    #![proptest_config(cases(64))]

    #[test]
    fn no_figure_is_told_as_infinite(swaps in swaps(), chosen in proptest::collection::vec(any::<bool>(), 9)) {
        let place = TestShop::starter();
        for ((file, key, value), _) in swaps.iter().zip(&chosen).filter(|(_, chosen)| **chosen) {
            let file = format!("shop/{file}");
            place.write(&file, set(&place.read(&file), key, value));
        }
        let Answer { value: shop, mut faults } = place.open();
        let order = shop.order("reading-room", &reeve_shop::Wish::default(), crate::day()).noted(&mut faults);
        let design = shop.design("curlew-hanger", &reeve_shop::Choice::default()).noted(&mut faults);
        let mut said: Vec<String> = faults.iter().map(|fault| fault.render(false)).collect();
        if let Some(order) = &order {
            said.extend(client_pages(&shop, order));
            said.extend(makers_pages(&shop, order));
        }
        prop_assert!(order.is_some() || !said.is_empty());
        prop_assert!(design.is_some() || !said.is_empty());
        for text in said {
            prop_assert!(told_as_no_figure(&text).is_none() && !text.contains('∞'), "{swaps:?}\n{text}");
        }
    }
}
