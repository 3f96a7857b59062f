//! A commission: it is priced and all its papers are written, or it says why not.

use reeve_shop::files::commission_file;

use super::{files, text};
use crate::Target;
use crate::shop::{TRIED, is_sound, with_file};

pub(super) const TARGET: Target = Target { name: "commission", holds, seeds, longest: 4_000, runs: 400 };

fn holds(bytes: &[u8]) {
    let Some(text) = text(bytes) else { return };
    let path = format!("commissions/{TRIED}.toml");
    if is_sound(&path, text, commission_file) {
        with_file(&path, text, |place| place.order(&place.open(), TRIED, text));
    }
}

fn seeds() -> Vec<Vec<u8>> {
    let folders =
        ["engine/shop/starter/commissions", "tests/faults/shop/commissions", "tests/published/shop/commissions"];
    folders.map(|folder| files(folder, ".toml")).concat()
}
