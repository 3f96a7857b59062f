//! Faults of the folder, of files as a whole, and of several files at once.

use std::fs;

use reeve_tests::{DEMO_DAY, TestShop};

use crate::case::{CHECK, Case, Gone, QUOTE, Swap, check_all, judge, shop};
use crate::messages::{Module, compare, head};

pub(crate) const CASES: &[Case] = &[
    Case { name: "shop-file-gone", edits: &[Gone("shop.toml")], words: CHECK },
    Case { name: "cords-file-gone", edits: &[Gone("store/cords.toml")], words: &["takeoff", "leaf", "--shop", "shop"] },
    Case { name: "commission-gone", edits: &[Gone("commissions/order.toml")], words: QUOTE },
    Case { name: "commission-misspelt", edits: &[], words: &["quote", "ordre", "--shop", "shop"] },
    Case { name: "commission-path-gone", edits: &[], words: &["quote", "inbox/order.toml", "--shop", "shop"] },
    Case { name: "design-misspelt", edits: &[], words: &["takeoff", "pendent", "--shop", "shop"] },
    Case { name: "commission-not-named", edits: &[], words: &["quote", "--shop", "shop"] },
    Case { name: "design-not-named", edits: &[], words: &["takeoff", "--shop", "shop"] },
    Case { name: "folder-not-a-shop", edits: &[], words: &["check"] },
    Case { name: "begin-in-a-shop", edits: &[], words: &["begin", "shop"] },
    Case { name: "begin-on-a-file", edits: &[], words: &["begin", "shop/shop.toml"] },
    Case { name: "day-that-is-none", edits: &[], words: &["quote", "order", "--shop", "shop", "--on", "2026-02-30"] },
    Case { name: "command-misspelt", edits: &[], words: &["qoute", "order"] },
    Case { name: "compare-unknown-design", edits: &[], words: &["compare", "pendent", "--shop", "shop"] },
    Case {
        name: "compare-price-of-another",
        edits: &[],
        words: &["compare", "leaf", "--price", "laef=9", "--shop", "shop"],
    },
    Case { name: "compare-price-not-one", edits: &[], words: &["compare", "--price", "leaf=cheap", "--shop", "shop"] },
    Case { name: "compare-price-without-design", edits: &[], words: &["compare", "--price", "9", "--shop", "shop"] },
    Case { name: "compare-price-of-nothing", edits: &[], words: &["compare", "--price", "leaf=0", "--shop", "shop"] },
    Case { name: "knot-not-found", edits: &[], words: &["knots", "show", "sqaure", "--shop", "shop"] },
    Case { name: "knot-none-answers", edits: &[], words: &["knots", "list", "granny", "--shop", "shop"] },
    Case { name: "knot-of-too-many-core-legs", edits: &[], words: &["knots", "show", "square", "--core", "99"] },
    Case { name: "knot-on-a-rod-it-cannot-take", edits: &[], words: &["knots", "show", "square", "--rod", "9"] },
    Case { name: "knot-of-an-absurd-cord", edits: &[], words: &["knots", "show", "square", "--cord", "4000"] },
    Case { name: "knot-of-a-cord-not-a-number", edits: &[], words: &["knots", "show", "square", "--cord", "nan"] },
    Case { name: "knot-with-another-parameter", edits: &[], words: &["knots", "show", "coil", "--set", "rounds=3"] },
    Case {
        name: "knot-file-with-a-fault",
        edits: &[Swap("knots/bow.toml", "kind = \"single\"", "kind = §\"sinlge\"")],
        words: &["knots", "check", "shop/knots/bow.toml"],
    },
    Case { name: "knot-file-gone", edits: &[], words: &["knots", "check", "shop/knots/bwo.toml"] },
];

/// Messages of the tests of this file that are no cases of a table.
pub(crate) const MORE: [&str; 8] = [
    "file-not-utf-8",
    "file-huge",
    "file-is-a-folder",
    "file-empty",
    "money-past-all-reckoning",
    "template-broken",
    "template-not-utf-8",
    "a-fault-in-every-file",
];

pub(crate) fn module() -> Module {
    crate::module("folder", &[CASES], &MORE)
}

#[test]
fn faults_of_the_folder_are_told() {
    check_all(&module(), CASES);
}

#[track_caller]
fn told(place: &TestShop, name: &str, words: &[&str], places: &[&str]) {
    let places: Vec<String> = places.iter().map(|place| (*place).to_owned()).collect();
    if let Err(wrong) = judge(place, (&module(), name, &[]), words, &places) {
        panic!("{wrong}");
    }
}

#[test]
fn a_file_that_is_not_utf_8_is_told() {
    let place = shop();
    place.write("shop/designs/tassel.toml", b"[piece]\nname = \"Gr\xfcn\"\n");
    told(&place, "file-not-utf-8", CHECK, &[]);
}

#[test]
fn a_huge_file_is_told_and_not_read() {
    let place = shop();
    let file = fs::File::create(place.path("shop/designs/tassel.toml")).unwrap();
    // Takes no room on most disks, and would take all memory if it were read.
    file.set_len(64_000_000_000).unwrap();
    let ran = place.run(CHECK);
    file.set_len(0).unwrap();
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""), "{}", ran.err);
    file.set_len(5_000_000).unwrap();
    told(&place, "file-huge", CHECK, &[]);
}

#[test]
fn a_folder_in_the_place_of_a_file_is_told() {
    let place = shop();
    fs::create_dir(place.path("shop/designs/box.toml")).unwrap();
    told(&place, "file-is-a-folder", CHECK, &[]);
}

#[test]
fn an_empty_file_is_told() {
    let place = shop();
    place.write("shop/designs/tassel.toml", "");
    told(&place, "file-empty", CHECK, &["shop/designs/tassel.toml:1:1"]);
}

/// A shop whose one commission comes to more money than a decimal number holds, though every figure keeps to its own
/// bound.
fn beyond_reckoning() -> TestShop {
    let place = shop();
    place.replace("shop/shop.toml", "wage = \"20.00\"", "wage = \"1000000000\"");
    place.replace("shop/shop.toml", "margin = \"20 %\"", "margin = \"97.5999 %\"");
    let overhead = "yearly = \"5000.00\"\nbench-hours = 1000";
    place.replace("shop/shop.toml", overhead, "of-prime-cost = \"1000 %\"");
    let task = "\n[[task]]\nname = \"Wait\"\nminutes = 10000\ncost = \"1000000000\"\n";
    place.write("shop/designs/leaf.toml", place.read("shop/designs/leaf.toml") + &task.repeat(20_000));
    place.replace("shop/designs/garland.toml", "count = 5", "count = 1000");
    place.replace(
        "shop/commissions/order.toml",
        "design = \"pendant\"\nquantity = 3",
        "design = \"garland\"\nquantity = 10000",
    );
    place
}

#[test]
fn money_past_all_reckoning_is_told_and_does_not_panic() {
    let place = beyond_reckoning();
    let before = place.tree();
    let ran = place.run(QUOTE);
    assert!(!ran.err.contains("panicked"), "{}", ran.err);
    assert!(ran.clone().refused().contains("shop/commissions/order.toml"), "{}", ran.err);
    assert!(place.tree() == before, "something was written");
    let name = "money-past-all-reckoning";
    compare(&module(), name, &head(name, &[], QUOTE), &ran.err).unwrap();
}

#[test]
fn a_broken_template_is_told() {
    let place = shop();
    place.write("shop/templates/quote.txt", "Dear {{ client | first }},\n\n{{ refrence }}\n");
    told(
        &place,
        "template-broken",
        &["quote", "order", "--shop", "shop", "--out", "out", "--on", DEMO_DAY],
        &["shop/templates/quote.txt:3:4"],
    );
}

#[test]
fn a_template_that_is_not_utf_8_is_told() {
    let place = shop();
    place.write("shop/templates/quote.txt", b"Gr\xfc\xdfe\n");
    told(&place, "template-not-utf-8", CHECK, &[]);
}

#[test]
fn a_fault_in_every_file_is_told_of_every_file_in_one_check() {
    let place = shop();
    let files: Vec<String> = place.tree().into_keys().map(|path| path.display().to_string()).collect();
    let mut places = Vec::new();
    for file in &files {
        let text = place.read(file);
        let lines = text.lines().count();
        // At the end stands the last table, whatever it is: none of them knows this key.
        place.write(file, text + "stowaway = 1\n");
        places.push(format!("{file}:{}:1", lines + 1));
    }
    place.write("shop/templates/bench.txt", "{{ stowaway | }}\n");
    places.push("shop/templates/bench.txt:1:15".to_owned());
    let ran = place.run(CHECK);
    for at in &places {
        assert!(ran.err.contains(&format!("--> {at}\n")), "{at} is not told of:\n{}", ran.err);
    }
    let ours: Vec<&str> = places.iter().map(String::as_str).collect();
    told(&place, "a-fault-in-every-file", CHECK, &ours);
}
