//! A design with its sums, measures, sizes and parts: it is taken off in every size, alike each time, or says why not.

use reeve_reading::Fault;
use reeve_shop::files::design_file;
use reeve_shop::{Answer, Choice};

use super::{files, text};
use crate::shop::{TRIED, is_sound, with_file};
use crate::{Target, holds as must};

pub(super) const TARGET: Target = Target { name: "design", holds, seeds, longest: 6_000, runs: 400 };

fn holds(bytes: &[u8]) {
    let Some(text) = text(bytes) else { return };
    let path = format!("designs/{TRIED}.toml");
    if !is_sound(&path, text, |t| design_file(t, &Choice::default())) {
        return;
    }
    with_file(&path, text, |place| {
        let shop = place.opened();
        let Answer { value: found, faults } = shop.sizes(TRIED, &Choice::default(), true);
        must::of_faults(&faults);
        assert!(!found.is_empty() || faults.iter().any(Fault::is_error), "no size, and nothing says why");
        let again = shop.sizes(TRIED, &Choice::default(), true).value;
        for (one, other) in found.iter().zip(&again) {
            assert_eq!(one.take_off, other.take_off, "one text is taken off in two ways");
            place.design(shop, one, text);
        }
    });
}

fn seeds() -> Vec<Vec<u8>> {
    [files("engine/shop/starter/designs", ".toml"), files("tests/faults/shop/designs", ".toml")].concat()
}
