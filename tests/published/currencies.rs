//! Minor units of currencies, against ISO 4217.
//!
//! `iso4217.csv` holds the codes and minor units of ISO 4217, list one, in its state of 2026: with XCG and XAD, and
//! without what was withdrawn up to the first of January.

use std::collections::BTreeMap;

use reeve_costing::money::Currency;
use rust_decimal::Decimal;

/// DIFFERENCES: codes that only one side knows, each with the reason.
const ONLY_PUBLISHED: &[(&str, &str)] = &[];
const ONLY_OURS: &[(&str, &str)] = &[
    ("BGN", "withdrawn when Bulgaria took the euro in 2026; an old price list may still name it"),
    ("CUC", "withdrawn in 2021"),
    ("HRK", "withdrawn when Croatia took the euro in 2023"),
    ("SLL", "replaced by SLE"),
    ("ZWL", "replaced by ZWG"),
];

/// Minor units that are not two, ISO 4217 (the list of the note in the standard's own table).
const NONE: &str = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF";
const THREE: &str = "BHD IQD JOD KWD LYD OMR TND";
const FOUR: &str = "CLF UYW";

fn published() -> BTreeMap<&'static str, Option<u32>> {
    let rows = include_str!("iso4217.csv").lines().skip(1).filter(|row| !row.is_empty());
    rows.map(|row| row.split_once(',').unwrap()).map(|(code, minor)| (code, minor.trim().parse().ok())).collect()
}

#[test]
fn every_currency_has_the_minor_units_of_iso_4217() {
    let published = published();
    for code in Currency::codes() {
        let Some(minor) = published.get(code) else { continue };
        let ours = Currency::from_code(code).unwrap().minor_units();
        // A unit without decimals of its own, such as an ounce of gold, is reckoned to two.
        assert_eq!(ours, minor.unwrap_or(2), "{code}");
    }
}

#[test]
fn codes_known_to_one_side_alone_are_named() {
    let published = published();
    let ours: Vec<&str> = Currency::codes().collect();
    let mut missing: Vec<&str> = published.keys().copied().filter(|code| !ours.contains(code)).collect();
    let mut extra: Vec<&str> = ours.into_iter().filter(|code| !published.contains_key(code)).collect();
    missing.sort_unstable();
    extra.sort_unstable();
    assert_eq!(missing, ONLY_PUBLISHED.iter().map(|(code, _)| *code).collect::<Vec<_>>(), "not known to the program");
    assert_eq!(extra, ONLY_OURS.iter().map(|(code, _)| *code).collect::<Vec<_>>(), "not in the published list");
}

#[test]
fn currencies_that_do_not_have_cents_round_to_what_they_have() {
    for (codes, minor, rounded) in [(NONE, 0, "13"), (THREE, 3, "12.501"), (FOUR, 4, "12.5005")] {
        for code in codes.split(' ') {
            let currency = Currency::from_code(code).unwrap_or_else(|| panic!("{code} is not known"));
            assert_eq!(currency.minor_units(), minor, "{code}");
            let amount: Decimal = "12.50050".parse().unwrap();
            assert_eq!(currency.round_half_away(amount).to_string(), rounded, "{code}");
        }
    }
}
