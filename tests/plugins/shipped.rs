//! The libraries that come with the program: built, probed over their whole range, admitted and used.

use reeve_tests::{DEMO_DAY, TestShop, root, shipped};
use serde_json::Value;

use crate::workshop::compile;

/// The starter shop with every shipped library beside it and in it.
fn shop() -> TestShop {
    let place = TestShop::starter();
    for file in ["libwoven.so", "libbound.so", "libmonkeys_fist.so"] {
        std::fs::copy(shipped().join(file), place.path(file)).unwrap();
    }
    let flags = ["-O2", "-ffp-contract=off"];
    compile(
        &root().join("plugins/ring-cover-c/ring_cover.c"),
        &flags,
        &["-shared", "-fPIC"],
        &place.path("libring_cover.so"),
    );
    for file in ["libwoven.so", "libbound.so", "libmonkeys_fist.so", "libring_cover.so"] {
        place.run(&["knots", "admit", file, "--yes", "--shop", "shop"]).done();
    }
    place
}

fn shown(place: &TestShop, words: &[&str]) -> Value {
    let fixed = ["--shop", "shop", "--give", "hard", "--as", "json"];
    serde_json::from_str(&place.run(&[&["knots", "show"], words, &fixed].concat()).done()).unwrap()
}

fn take_up(shown: &Value) -> f64 {
    shown["roles"][0]["take_up_mm"].as_f64().unwrap()
}

#[test]
fn every_shipped_library_passes_the_probe_and_serves_a_shop() {
    let place = shop();
    let said = place.run(&["check", "--shop", "shop"]).done();
    assert!(said.contains("4 libraries of knots"), "{said}");
    let listed = place.run(&["knots", "list", "--shop", "shop"]).done();
    for knot in
        ["turks-head", "round-plait", "gathering-wrap-by-length", "coil-by-length", "monkeys-fist", "ring-cover"]
    {
        assert!(listed.contains(knot), "{knot}: {listed}");
    }
    // Turk's heads of one cord, by the rule of the common divisor; a ring must be large enough for its bights.
    for (set, words) in
        [("leads=4,bights=6", "2 cords, and a turk's head is one"), ("leads=3,bights=40", "too many for the girth")]
    {
        let parameters: Vec<&str> = set.split(',').flat_map(|one| ["--set", one]).collect();
        let words_given = [&["knots", "show", "turks-head", "--rod", "30", "--shop", "shop"][..], &parameters].concat();
        let said = place.run(&words_given).refused();
        assert!(said.contains(words), "{said}");
    }
    // Des Pawson, Knot Craft, 2nd ed. 2009, p. 83: 3.5 m of 4 mm line cover a ball of 36 mm with 7 passes, ends to work with
    // included.
    let fist = shown(&place, &["monkeys-fist", "--cord", "4", "--set", "passes=7", "--set", "ball=36mm"]);
    assert!((0.6..1.0).contains(&(take_up(&fist) / 3500.0)), "{fist}");
    // By length and by turns are one geometry: 10 turns of 4 mm are 40 mm.
    let by_length = shown(&place, &["gathering-wrap-by-length", "--core", "8", "--set", "length=4cm"]);
    let by_turns = shown(&place, &["gathering-wrap", "--core", "8", "--set", "turns=10"]);
    assert!((take_up(&by_length) / take_up(&by_turns) - 1.0).abs() < 1e-3, "{by_length} {by_turns}");
}

#[test]
fn a_design_with_shipped_knots_is_quoted_with_their_cautions() {
    let place = shop();
    let design = "[piece]\nname = \"Light pull\"\npurpose = \"decoration\"\n\n\
                  [[cord]]\ngroup = \"pull\"\nof = \"cotton-4-ecru\"\ncount = 1\n\n\
                  [[step]]\nhang = [\"pull\"]\n\n[[step]]\nbare = \"60 cm\"\nlegs = [\"pull\"]\n\n\
                  [[step]]\nknot = \"monkey's fist\"\nworking = [\"pull\"]\n\n\
                  [step.parameters]\npasses = 5\nball = \"24 mm\"\n\n\
                  [[step]]\ntail = \"4 cm\"\nlegs = [\"pull\"]\nflush = true\n";
    place.write("shop/designs/light-pull.toml", design);
    let commission = "[commission]\ntitle = \"A light pull\"\nclient = \"A client\"\nasked = 2026-11-02\n\n\
                      [[item]]\ndesign = \"light-pull\"\n";
    place.write("shop/commissions/pull.toml", commission);
    let page = place.run(&["takeoff", "light-pull", "--shop", "shop"]).done();
    assert!(page.contains("Monkey's fist"), "{page}");
    // What to tie is told of a library's knots as of any.
    let told = page.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(told.contains("1 monkey's fist: passes 5, ball 2.4 cm"), "{page}");
    let quote = place.run(&["quote", "pull", "--shop", "shop", "--on", DEMO_DAY]).done();
    let words: Vec<&str> = quote.split_whitespace().collect();
    assert!(words.join(" ").contains("can hurt when it is swung or thrown"), "{quote}");
    // A slip in the nested table is told at its line.
    place.replace("shop/designs/light-pull.toml", "passes = 5", "passes = 9");
    let said = place.run(&["takeoff", "light-pull", "--shop", "shop"]).refused();
    assert!(said.contains("shop/designs/light-pull.toml:") && said.contains("passes"), "{said}");
}
