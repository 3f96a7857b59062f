//! How a shop, a design, a commission and a day are named.

use reeve_tests::{DEMO_DAY, TestShop, run};
use serde_json::Value;

const FILE: &str = "shop/commissions/reading-room.toml";

fn quote(place: &TestShop, words: &[&str]) -> String {
    let mut all = vec!["quote"];
    all.extend(words);
    all.extend(["--on", DEMO_DAY]);
    place.run(&all).done()
}

#[test]
fn a_shop_is_found_from_its_folder_a_folder_inside_it_and_the_current_one() {
    let place = TestShop::starter();
    let named = quote(&place, &["reading-room", "--shop", "shop"]);
    for inside in ["shop/", "./shop", "shop/designs", "shop/store"] {
        assert_eq!(quote(&place, &["reading-room", "--shop", inside]), named, "{inside}");
    }
    for folder in ["shop", "shop/commissions"] {
        let there = run(&place.path(folder), &["quote", "reading-room", "--on", DEMO_DAY]).done();
        assert_eq!(there, named, "{folder}");
    }
}

#[test]
fn the_nearest_shop_above_is_taken() {
    let place = TestShop::starter();
    place.run(&["begin", "shop/archive/old"]).done();
    place.replace("shop/archive/old/shop.toml", "Tallowby Knotted Work", "The old shop");
    assert!(quote(&place, &["reading-room", "--shop", "shop/archive/old/designs"]).starts_with("The old shop\n"));
    assert!(quote(&place, &["reading-room", "--shop", "shop/archive"]).starts_with("Tallowby Knotted Work\n"));
}

#[test]
fn a_commission_is_named_by_its_stem_or_its_path() {
    let place = TestShop::starter();
    let named = quote(&place, &["reading-room", "--shop", "shop"]);
    let absolute = place.path(FILE);
    for path in [FILE, "./shop/commissions/reading-room.toml", absolute.to_str().unwrap()] {
        assert_eq!(quote(&place, &[path, "--shop", "shop"]), named, "{path}");
    }
    let inside = run(&place.path("shop/commissions"), &["quote", "reading-room.toml", "--on", DEMO_DAY]).done();
    assert_eq!(inside, named);
}

#[test]
fn a_commission_may_lie_outside_the_shop() {
    let place = TestShop::starter();
    place.write("inbox/enquiry.toml", place.read(FILE));
    let there = quote(&place, &["inbox/enquiry.toml", "--shop", "shop"]);
    // The reference is the file's name; all else is the same.
    let here = quote(&place, &["reading-room", "--shop", "shop"]);
    assert_eq!(there, here.replace("Reference     reading-room", "Reference     enquiry"));
}

#[test]
fn a_design_is_named_by_its_stem_or_its_path() {
    let place = TestShop::starter();
    let named = place.run(&["takeoff", "bay-leaf", "--shop", "shop"]).done();
    assert_eq!(place.run(&["takeoff", "shop/designs/bay-leaf.toml", "--shop", "shop"]).done(), named);
    place.write("try/bay-leaf.toml", place.read("shop/designs/bay-leaf.toml"));
    assert_eq!(place.run(&["takeoff", "try/bay-leaf.toml", "--shop", "shop"]).done(), named);
}

#[test]
fn a_quote_counts_its_days_from_the_day_given() {
    // The starter shop's quotes stay open for 30 days.
    let place = TestShop::none();
    for (on, until) in [("2026-11-25", "2026-12-25"), ("2028-02-01", "2028-03-02"), ("2027-02-01", "2027-03-03")] {
        let page = place.run(&["quote", "--demo", "--as", "json", "--on", on]).done();
        let quote: Value = serde_json::from_str(&page).unwrap();
        assert_eq!((&quote["date"], &quote["valid_until"]), (&Value::from(on), &Value::from(until)));
    }
}

#[test]
fn without_a_day_the_quote_is_of_today() {
    let days = || chrono::Local::now().date_naive().to_string();
    let before = days();
    let page = TestShop::none().run(&["quote", "--demo", "--as", "json"]).done();
    let quote: Value = serde_json::from_str(&page).unwrap();
    // Midnight may fall between.
    assert!([before, days()].contains(&quote["date"].as_str().unwrap().to_owned()));
}

#[test]
fn the_demo_takes_another_commission_or_design_by_name() {
    let place = TestShop::none();
    assert!(place.run(&["quote", "thwickling", "--demo"]).done().contains("A spiral hanger for a birthday"));
    assert!(place.run(&["takeoff", "fender-fob", "--demo"]).done().contains("Fender key fob"));
}
