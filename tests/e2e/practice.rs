//! Practice: many alike, in times, costs and documents.

use reeve_tests::{DEMO_DAY, TestShop};
use serde_json::Value;

/// The starter shop with these lines under `[bench.practice]`.
fn shop(practice: &str) -> TestShop {
    let place = TestShop::starter();
    place.replace("shop/shop.toml", "[bench.cutting]", &format!("[bench.practice]\n{practice}\n[bench.cutting]"));
    place
}

fn json(place: &TestShop, words: &[&str]) -> Value {
    serde_json::from_str(&place.run(&[words, &["--shop", "shop", "--as", "json"]].concat()).done()).unwrap()
}

fn takeoff(place: &TestShop) -> Value {
    json(place, &["takeoff", "curlew-hanger"])
}

#[test]
fn many_alike_take_less_and_say_so() {
    let plain = TestShop::starter();
    let quick = shop("model = \"unit\"\nrate = \"85 %\"\n");
    let costing = |place: &TestShop| place.run(&["costing", "reading-room", "--shop", "shop", "--on", DEMO_DAY]).done();
    assert!(!costing(&plain).contains("The first takes") && costing(&plain).contains("none counted"));
    let told = costing(&quick);
    assert!(told.contains("The first takes") && told.contains("85 % of a piece, to piece 100"), "{told}");
    assert!(told.lines().all(|line| line.chars().count() <= 80), "{told}");
    // The first piece is as the take-off says; the tenth of a row is quicker, without what is done once.
    let (before, after) = (takeoff(&plain), takeoff(&quick));
    assert_eq!(before["seconds"], after["seconds"]);
    let tenth = |told: &Value| told["tenth_seconds"].as_f64().unwrap();
    assert!(tenth(&after) < 0.8 * tenth(&before), "{} {}", tenth(&after), tenth(&before));
    let text = quick.run(&["takeoff", "curlew-hanger", "--shop", "shop"]).done();
    assert!(text.contains("The tenth of a row takes"), "{text}");
}

#[test]
fn what_was_made_before_counts() {
    let place = shop("model = \"cumulative-average\"\nrate = \"90 %\"\nsteady = 40\n");
    let first = takeoff(&place)["seconds"].as_f64().unwrap();
    place.replace("shop/designs/curlew-hanger.toml", "[piece]\n", "[piece]\nmade = 12\n");
    let thirteenth = takeoff(&place)["seconds"].as_f64().unwrap();
    place.replace("shop/designs/curlew-hanger.toml", "made = 12", "made = 40");
    let steady = takeoff(&place)["seconds"].as_f64().unwrap();
    place.replace("shop/designs/curlew-hanger.toml", "made = 40", "made = 4000");
    assert!(first > thirteenth && thirteenth > steady, "{first} {thirteenth} {steady}");
    assert!((takeoff(&place)["seconds"].as_f64().unwrap() - steady).abs() < 0.11);
}

#[test]
fn a_rate_of_a_hundred_changes_nothing() {
    let (plain, same) = (TestShop::starter(), shop("model = \"unit\"\nrate = \"100 %\"\n"));
    let costing = |place: &TestShop| json(place, &["costing", "reading-room", "--on", DEMO_DAY]);
    assert_eq!(costing(&plain), costing(&same));
    assert_eq!(takeoff(&plain), takeoff(&same));
}
