//! `shop.toml`: what reads well prices every commission of the shop, or says why it can't be priced.

use reeve_shop::files::shop_file;

use super::{file, text};
use crate::Target;
use crate::shop::{is_sound, with_file};

pub(super) const TARGET: Target = Target { name: "shop", holds, seeds, longest: 6_000, runs: 2_000 };

fn holds(bytes: &[u8]) {
    let Some(text) = text(bytes) else { return };
    if !is_sound("shop.toml", text, shop_file) {
        return;
    }
    with_file("shop.toml", text, |place| {
        let opened = place.open();
        for stem in opened.value.commissions().value {
            place.order(&opened, &stem, text);
        }
    });
}

fn seeds() -> Vec<Vec<u8>> {
    ["engine/shop/starter/shop.toml", "tests/faults/shop/shop.toml", "tests/published/shop/shop.toml"].map(file).into()
}
