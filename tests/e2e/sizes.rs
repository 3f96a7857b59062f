//! Sizes: measures of a design, sums over them, and who may choose.

use reeve_tests::{DEMO_DAY, TestShop};
use serde_json::Value;

fn json(place: &TestShop, words: &[&str]) -> Value {
    serde_json::from_str(&place.run(&[words, &["--shop", "shop", "--as", "json"]].concat()).done()).unwrap()
}

/// Knots tied by a step of the curlew hanger.
fn knots(told: &Value, step: &str) -> u64 {
    let steps = told["knots"].as_array().unwrap();
    steps.iter().find(|line| line["step"] == step).unwrap()["count"].as_u64().unwrap()
}

fn quote(place: &TestShop, words: &[&str]) -> Value {
    json(place, &[&["quote", "reading-room", "--on", DEMO_DAY], words].concat())
}

#[test]
fn a_size_and_a_measure_change_what_sums_name() {
    let place = TestShop::starter();
    let arms = |words: &[&str]| knots(&json(&place, &[&["takeoff", "curlew-hanger"], words].concat()), "Six arms");
    // (length - 70 cm) / 14.4 mm, rounded, in each of six columns.
    assert_eq!(arms(&[]), 28 * 6);
    assert_eq!(arms(&["--size", "short"]), 10 * 6);
    assert_eq!(arms(&["--size", "long"]), 49 * 6);
    assert_eq!(arms(&["--measure", "length=120cm"]), 35 * 6);
    assert_eq!(arms(&["--size", "long", "--measure", "length=1.2 m"]), 35 * 6);
    let page = place.run(&["takeoff", "curlew-hanger", "--measure", "length=120cm", "--shop", "shop"]).done();
    assert!(page.contains("Curlew plant hanger, length 120 cm"), "{page}");
    assert!(page.contains("about 120 cm long, for a pot"), "{page}");
    assert!(page.contains("short, long"), "what can be chosen is said: {page}");
}

#[test]
fn a_commission_says_which_and_the_command_line_stands_over_it() {
    let place = TestShop::starter();
    let item = "[[item]]\ndesign = \"curlew-hanger\"\nmeasures = { length = \"120 cm\" }\n";
    let text = std::fs::read_to_string(place.path("shop/commissions/reading-room.toml")).unwrap();
    place.write("shop/commissions/reading-room.toml", format!("{text}\n{item}"));
    let lines = |told: &Value| -> Vec<String> {
        told["lines"].as_array().unwrap().iter().map(|line| line["text"].as_str().unwrap().to_owned()).collect()
    };
    let told = lines(&quote(&place, &[]));
    assert!(told.contains(&"Curlew plant hanger, length 120 cm".to_owned()), "{told:?}");
    let told = lines(&quote(&place, &["--size", "long", "--measure", "length=130cm"]));
    assert!(told.contains(&"Curlew plant hanger, long, length 130 cm".to_owned()), "{told:?}");
    // Every item whose design has such a size is meant, and no other.
    let net = |words: &[&str]| quote(&place, words)["totals"]["net"].as_str().unwrap().parse::<f64>().unwrap();
    assert!(net(&["--size", "short"]) < net(&[]) && net(&[]) < net(&["--size", "long"]));
    let said = place.run(&["quote", "reading-room", "--size", "huge", "--shop", "shop"]).refused();
    assert!(said.contains("no design of this commission has a size `huge`"), "{said}");
    let said = place.run(&["quote", "reading-room", "--measure", "girth=3", "--shop", "shop"]).refused();
    assert!(said.contains("no design of this commission has a measure `girth`"), "{said}");
}

#[test]
fn a_part_may_be_of_a_size_and_follow_its_whole() {
    let place = TestShop::starter();
    let pair = "[piece]\nname = \"Two hangers\"\npurpose = \"plant-hanger\"\n\n[measures]\ndrop = \"100 cm\"\n\n\
                [[part]]\ndesign = \"curlew-hanger\"\ncount = 1\nsize = \"short\"\n\n\
                [[part]]\ndesign = \"curlew-hanger\"\ncount = 1\nmeasures = { length = \"drop + 10 cm\" }\n";
    place.write("shop/designs/pair.toml", pair);
    let seconds = |words: &[&str]| json(&place, &[&["takeoff"], words].concat())["seconds"].as_f64().unwrap();
    let (pair, short, usual) =
        (seconds(&["pair"]), seconds(&["curlew-hanger", "--size", "short"]), seconds(&["curlew-hanger"]));
    // The pair is laid out as well, and its parts are packed with it.
    assert!((pair / (short + usual) - 1.0).abs() < 0.03, "{pair} {short} {usual}");
    assert!(seconds(&["pair", "--measure", "drop=150cm"]) > pair);
}

#[test]
fn a_finished_size_that_does_not_follow_is_left_out() {
    let place = TestShop::starter();
    place.replace("shop/designs/curlew-hanger.toml", "about {length} long", "about 110 cm long");
    let page = place.run(&["takeoff", "curlew-hanger", "--size", "long", "--shop", "shop"]);
    assert_eq!(page.code, Some(0));
    assert!(!page.out.contains("about 110 cm") && page.err.contains("the finished size is left out"), "{}", page.err);
    place.replace(
        "shop/designs/curlew-hanger.toml",
        "name = \"long\"",
        "name = \"long\"\nfinished = \"floor to ceiling\"",
    );
    let page = place.run(&["takeoff", "curlew-hanger", "--size", "long", "--shop", "shop"]);
    assert!(page.out.contains("floor to ceiling") && page.err.is_empty(), "{}", page.err);
    let usual = place.run(&["takeoff", "curlew-hanger", "--shop", "shop"]);
    assert!(usual.out.contains("about 110 cm long") && usual.err.is_empty(), "{}", usual.err);
}

#[test]
fn every_size_is_checked() {
    let place = TestShop::starter();
    place.replace("shop/designs/curlew-hanger.toml", "length = \"85 cm\"", "length = \"60 cm\"");
    let said = place.run(&["check", "--shop", "shop"]).refused();
    assert!(said.contains("comes to -7 (short)") && said.contains("curlew-hanger.toml:"), "{said}");
    // The other sizes are compared all the same.
    let ran = place.run(&["compare", "curlew-hanger", "--shop", "shop", "--as", "csv"]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.out.contains("curlew-hanger,long,") && !ran.out.contains("curlew-hanger,short,"), "{}", ran.out);
}
