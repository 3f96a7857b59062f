//! The store's files: what reads well prices every commission of the shop, or says why it can't be priced.

use reeve_reading::Table;
use reeve_shop::files::{cords_file, fittings_file};

use super::{file, text};
use crate::Target;
use crate::shop::{is_sound, with_file};

pub(super) const CORDS: Target = Target { name: "cords", holds: cords, seeds: cords_seeds, longest: 6_000, runs: 800 };
pub(super) const FITTINGS: Target =
    Target { name: "fittings", holds: fittings, seeds: fittings_seeds, longest: 6_000, runs: 1_200 };

fn cords(bytes: &[u8]) {
    holds("store/cords.toml", bytes, cords_file);
}

fn fittings(bytes: &[u8]) {
    holds("store/fittings.toml", bytes, fittings_file);
}

fn holds<T>(path: &str, bytes: &[u8], reader: fn(&mut Table<'_>) -> Option<T>) {
    let Some(text) = text(bytes) else { return };
    if !is_sound(path, text, reader) {
        return;
    }
    with_file(path, text, |place| {
        let opened = place.open();
        for stem in opened.value.commissions().value {
            place.order(&opened, &stem, text);
        }
    });
}

fn cords_seeds() -> Vec<Vec<u8>> {
    ["engine/shop/starter/store/cords.toml", "tests/faults/shop/store/cords.toml"].map(file).into()
}

fn fittings_seeds() -> Vec<Vec<u8>> {
    ["engine/shop/starter/store/fittings.toml", "tests/faults/shop/store/fittings.toml"].map(file).into()
}
