//! The author's template: it builds, keeps the contract, and its Rust way catches panics.

use reeve_tests::TestShop;

use crate::workshop::{cargo, compile};

/// A place with the template in `mine/`.
fn begun() -> TestShop {
    let place = TestShop::starter();
    place.run(&["knots", "begin", "mine"]).done();
    place
}

#[test]
fn the_template_builds_passes_the_probe_and_is_admitted() {
    let place = begun();
    let said = place.run(&["knots", "begin", "mine"]).refused();
    assert!(said.contains("not a new or empty folder"), "{said}");
    let mine = place.path("mine");
    for words in [&["test", "--quiet"][..], &["build", "--quiet"]] {
        let (went_well, said) = cargo(&mine, words);
        assert!(went_well && said.is_empty(), "{said}");
    }
    compile(&mine.join("c/my_knots.c"), &["-O2"], &["-shared", "-fPIC"], &mine.join("c/my_knots.so"));
    for (file, knot) in [("mine/target/debug/libmy_knots.so", "flat-seizing"), ("mine/c/my_knots.so", "round-seizing")]
    {
        let page = place.run(&["knots", "probe", file]).done();
        assert!(page.contains(knot), "{page}");
        place.run(&["knots", "admit", file, "--yes", "--shop", "shop"]).done();
    }
    // Both ways are one geometry.
    let shown = |knot: &str| {
        let words = ["knots", "show", knot, "--shop", "shop", "--core", "6", "--set", "length=7cm", "--as", "json"];
        let shown: serde_json::Value = serde_json::from_str(&place.run(&words).done()).unwrap();
        (shown["roles"].clone(), shown["rise_mm"].clone(), shown["base_seconds"].clone())
    };
    assert_eq!(shown("flat-seizing"), shown("round-seizing"));
    place.run(&["check", "--shop", "shop"]).done();
}

#[test]
fn a_panic_is_told_with_its_words_and_abort_is_not_compiled() {
    let place = begun();
    let mine = place.path("mine");
    place.replace(
        "mine/src/lib.rs",
        "let cord = setting.cord_mm;",
        "let cord = setting.cord_mm;\n        assert!(cord < 9.0, \"no cord is {cord} mm thick\");",
    );
    let (built, said) = cargo(&mine, &["build", "--quiet"]);
    assert!(built, "{said}");
    let said = place.run(&["knots", "probe", "mine/target/debug/libmy_knots.so"]).refused();
    assert!(said.contains("`flat-seizing`") && said.contains("`my-knots`"), "{said}");
    assert!(said.contains("it panicked: no cord is 10 mm thick"), "{said}");
    let (built, said) = cargo(&mine, &["build", "--quiet", "--config", "profile.dev.panic=\"abort\""]);
    assert!(!built && said.contains("must be built with panic = \"unwind\""), "{said}");
    // A parameter that was never described is the author's slip, and told as one.
    place.replace("mine/src/lib.rs", "setting.parameter(\"length\")", "setting.parameter(\"lenght\")");
    let (built, said) = cargo(&mine, &["build", "--quiet"]);
    assert!(built, "{said}");
    let said = place.run(&["knots", "probe", "mine/target/debug/libmy_knots.so"]).refused();
    assert!(said.contains("describes every parameter that it asks for"), "{said}");
}
