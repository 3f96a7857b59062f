//! What is typed behind options, and what then comes of it: changed inputs price a design in finite figures, or say why not.

use std::sync::Arc;

use reeve_costing::single_piece::SinglePiece;
use reeve_costing::whatif::{Change, Changed, effects};
use reeve_office::TENTH;
use reeve_reading::Fault;
use reeve_shop::arguments as read;
use reeve_shop::{Admissions, Choice, Folder, FoundDesign, Shop};
use rust_decimal::Decimal;

use crate::shop::no_program;
use crate::{Target, holds as must};

pub(super) const TARGET: Target = Target { name: "arguments", holds, seeds, longest: 300, runs: 3_000 };

thread_local! {
    static SHOP: Arc<(Shop, FoundDesign)> = {
        let shop = Shop::open(Folder::Starter, no_program(), Admissions::default()).value;
        let found = shop.sizes("curlew-hanger", &Choice::default(), true).value.remove(0);
        Arc::new((shop, found))
    };
}

/// One argument a line; each is read as every one that it might be.
fn holds(bytes: &[u8]) {
    let Some(text) = super::text(bytes) else { return };
    let words: Vec<String> = text.lines().take(6).map(str::to_owned).collect();
    let opened = SHOP.with(Arc::clone);
    let (shop, found) = &*opened;
    for word in &words {
        each(word, shop, found);
    }
    let basis = shop.basis().unwrap();
    if let Some(changes) = told(read::read_changes(&words, &shop.cord_names(), &basis.rates)) {
        changed(&changes, found, basis);
    }
}

fn each(word: &str, shop: &Shop, found: &FoundDesign) {
    if let Some(measure) = told(read::read_measure(word)) {
        let choice = Choice { size: None, measures: vec![measure] };
        must::of_faults(&shop.sizes(&found.name, &choice, true).faults);
    }
    if let Some(percent) = told(read::read_confidence(word)) {
        assert!(percent >= Decimal::ZERO && percent < Decimal::ONE_HUNDRED);
    }
    if let Some(given) = told(read::read_given_price(word)) {
        assert!(given.price > Decimal::ZERO);
    }
    if let Some(hours) = told(read::read_hours(word)) {
        assert!(hours > Decimal::ZERO && hours <= Decimal::from(168));
    }
    if let Some(prices) = told(read::read_prices(word, 200)) {
        assert!(!prices.is_empty() && prices.len() <= 200);
        assert!(prices.is_sorted() && prices.iter().all(|price| *price > Decimal::ZERO));
    }
    told(read::read_demand(word));
    told(read::read_amount(word));
}

/// Prices the design with the inputs changed, and tells what each input moves then.
fn changed(changes: &[Change], found: &FoundDesign, basis: &reeve_costing::basis::Basis) {
    let priced = Changed::of(&found.piece, &found.take_off, basis, changes);
    let Changed { piece, made, basis } = match priced {
        Ok(changed) => changed,
        Err(fault) => return assert!(!fault.to_string().is_empty()),
    };
    match SinglePiece::of(&made, &basis) {
        Ok(alone) => {
            alone.sold_at(alone.price.unit, &basis.rates);
            let _ = effects(&piece, &made, &basis, alone.price.unit, TENTH);
        }
        Err(fault) => assert!(!fault.to_string().is_empty()),
    }
}

/// What was read; a fault has words.
fn told<T>(read: Result<T, Fault>) -> Option<T> {
    read.map_err(|fault| must::of_faults(&[fault])).ok()
}

fn seeds() -> Vec<Vec<u8>> {
    let lines = [
        "wage=+10%\noverhead=-5%\nfees=4%\npace=1.2\ncord=+8%",
        "cord:cotton-4-ecru=0.12",
        "drop=120cm\nknots=16",
        "80..140/2.50\n80%\n30",
        "curlew-hanger:long=110.00",
        "curlew-hanger=3",
    ];
    lines.map(|line| line.as_bytes().to_vec()).into()
}
