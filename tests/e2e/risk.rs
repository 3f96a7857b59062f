//! How sure the hours are: three points, the pace that strays, a price for hours that suffice.

use reeve_tests::{DEMO_DAY, TestShop};
use serde_json::Value;

fn json(place: &TestShop, words: &[&str]) -> Value {
    serde_json::from_str(&place.run(&[words, &["--shop", "shop", "--as", "json"]].concat()).done()).unwrap()
}

fn costing(place: &TestShop, words: &[&str]) -> Value {
    json(place, &[&["costing", "reading-room", "--on", DEMO_DAY], words].concat())
}

fn decimal(value: &Value) -> f64 {
    value.as_str().unwrap().parse().unwrap()
}

#[test]
fn a_price_can_be_for_hours_that_suffice() {
    let place = TestShop::starter();
    let usual = costing(&place, &[]);
    assert_eq!((&usual["sure"]["confidence"], &usual["sure"]["priced"]), (&"80".into(), &false.into()));
    let hours = decimal(&usual["cost"]["hours"]);
    assert!(decimal(&usual["sure"]["hours"]) > hours);
    let sure = costing(&place, &["--confidence", "90%"]);
    assert_eq!((&sure["sure"]["confidence"], &sure["sure"]["priced"]), (&"90".into(), &true.into()));
    assert!((decimal(&sure["cost"]["hours"]) - hours).abs() < 1e-9, "what is expected stays");
    assert!(decimal(&sure["sure"]["hours"]) > decimal(&usual["sure"]["hours"]));
    assert!(decimal(&sure["income"]) > decimal(&usual["income"]));
    // Half of all jobs take longer than expected: at 50 % nothing is added.
    assert_eq!(costing(&place, &["--confidence", "50"])["income"], usual["income"]);
    // The shop's rule, and the commission's over it.
    place.replace("shop/shop.toml", "[price]\n", "[price]\nconfidence = \"90 %\"\n");
    assert_eq!(costing(&place, &[])["income"], sure["income"]);
    place.replace("shop/commissions/reading-room.toml", "[commission]\n", "[commission]\nconfidence = \"50 %\"\n");
    assert_eq!(costing(&place, &[])["income"], usual["income"]);
    let sheet = place.run(&["costing", "reading-room", "--confidence", "80%", "--shop", "shop"]).done();
    assert!(sheet.contains("SUFFICE 80 % OF THE TIME") && sheet.contains("worked out for these hours"), "{sheet}");
    for word in ["100%", "20", "sure"] {
        let said = place.run(&["quote", "reading-room", "--confidence", word, "--shop", "shop"]).refused();
        assert!(said.contains("is not a confidence") && said.contains("from 50 to 99"), "{said}");
    }
}

/// A task of three points is expected to take (low + 4 likely + high) / 6.
#[test]
fn three_points_come_to_their_mean() {
    let place = TestShop::starter();
    let seconds = |place: &TestShop| json(place, &["takeoff", "bay-leaf"])["seconds"].as_f64().unwrap();
    place.replace("shop/designs/bay-leaf.toml", "minutes = 4", "minutes = 5");
    let five = seconds(&place);
    place.replace("shop/designs/bay-leaf.toml", "minutes = 5", "minutes = { low = 2, likely = 4, high = 12 }");
    assert!((seconds(&place) - five).abs() < 0.2, "{} {five}", seconds(&place));
}

#[test]
fn doubt_of_a_step_and_of_the_pace_both_count() {
    let place = TestShop::starter();
    let sure = |place: &TestShop| {
        let told = json(place, &["weigh", "bay-leaf"]);
        decimal(&told["sure"][1]["hours"]) / decimal(&told["hours"])
    };
    place.replace("shop/shop.toml", "pace-spread = \"12 %\"", "pace-spread = \"0 %\"");
    assert!((sure(&place) - 1.0).abs() < 1e-9, "nothing is doubted");
    let tip = "name = \"Close the tip\"\n";
    place.replace("shop/designs/bay-leaf.toml", tip, &format!("{tip}minutes = {{ low = 1, likely = 2, high = 15 }}\n"));
    let step = sure(&place);
    assert!(step > 1.0);
    place.replace("shop/shop.toml", "pace-spread = \"0 %\"", "pace-spread = \"12 %\"");
    assert!(sure(&place) > step);
    // Nobody says how far it strays: as far as a pace is doubted before any sample.
    let stated = sure(&place);
    place.replace("shop/shop.toml", "pace-spread = \"12 %\"", "");
    assert!(sure(&place) > stated);
}
