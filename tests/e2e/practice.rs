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

/// What is set up once is shared by all pieces: the more of them, the less each takes.
#[test]
fn marks_are_set_once_for_all_pieces() {
    let place = TestShop::starter();
    let hours = |place: &TestShop| {
        json(place, &["costing", "reading-room", "--on", DEMO_DAY])["items"][0]["cost"]["hours"]
            .as_str()
            .unwrap()
            .to_owned()
    };
    let hours = |place: &TestShop| hours(place).parse::<f64>().unwrap();
    let before = hours(&place);
    place.replace("shop/shop.toml", "cut = 25", "marks = 360\ncut = 25");
    let groups = takeoff(&place)["cords"].as_array().unwrap().len();
    // Six minutes a group at a pace of 1.1 and with 11 % of rest, once for the six hangers of the order.
    let more = hours(&place) - before;
    let once = 0.1 * 1.1 * 1.11 * f64::from(u32::try_from(groups).unwrap());
    assert!((more - once).abs() < 0.001, "{more} and not {once}");
    let page = place.run(&["bench", "reading-room", "--shop", "shop", "--on", DEMO_DAY]).done();
    assert!(page.contains("Set the marks to cut to") && page.contains("once for all"), "{page}");
}
