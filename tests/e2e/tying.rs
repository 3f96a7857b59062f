//! Bench sheet and take-off say what to tie: each knot with what its parameters are, said or not.

use reeve_tests::TestShop;
use serde_json::{Value, json};

/// A knot with parameters in every unit, one of them with a knot within it that has one of its own.
const CUFF: &str = r#"
[knot]
name = "cuff"
title = "cuff"
kind = "wrap"
summary = "A gathering wrap with a loop on either side."

[core]
legs = [1, 40]

[[role]]
role = "working"
legs = [1, 1]
draws = 1
joins = true
moves = [
    { knot = "gathering-wrap", times = 1 },
    { across = 2, each = "loop" },
]
source = "geometry"
note = "A gathering wrap and two loops."

[rise]
knot = "gathering-wrap"
times = 1
source = "geometry"
note = "That of the wrap."

[time]
base = 60
pull = 1.5
source = "from memory"
note = "Not timed."

[[parameter]]
name = "loop"
least = 1
most = 20
default = 6
unit = "diameters"
about = "Length of one loop."

[[parameter]]
name = "foot"
least = 0
most = 500
default = 45
unit = "mm"
about = "What is left below it."

[[parameter]]
name = "lean"
least = 0
most = 80
default = 30.5
unit = "degrees"
about = "How it leans."

[[parameter]]
name = "rounds"
least = 1
most = 5
default = 2
whole = true
about = "How often."
"#;

/// A bundle that is tied with two of them: once as it comes, once as it is told.
const BUNDLE: &str = r#"
[piece]
name = "Bundle"
purpose = "decoration"

[[cord]]
group = "strands"
of = "cotton-4-ecru"
count = 6

[[cord]]
group = "upper"
of = "cotton-4-ecru"
count = 1

[[cord]]
group = "lower"
of = "cotton-4-ecru"
count = 1

[[step]]
hang = ["strands"]

[[step]]
knot = "cuff"
working = ["upper"]
core = ["strands"]

[[step]]
bare = "10 cm"
legs = ["strands"]

[[step]]
knot = "cuff"
working = ["lower"]
core = ["strands"]
parameters = { loop = 1, foot = "8 mm" }

[[step]]
tail = "6 cm"
legs = ["strands", "upper", "lower"]
"#;

fn shop() -> TestShop {
    let place = TestShop::starter();
    place.write("shop/knots/cuff.toml", CUFF);
    place.write("shop/designs/bundle.toml", BUNDLE);
    place.replace("shop/commissions/thwickling.toml", "[[item]]", "[[item]]\ndesign = \"bundle\"\n\n[[item]]");
    place
}

/// A page without its line ends and the spaces that keep words together.
fn flat(page: &str) -> String {
    page.replace('\u{a0}', " ").split_whitespace().collect::<Vec<_>>().join(" ")
}

const USUAL: &str = "cuff: loop 2.4 cm (6 diameters), foot 4.5 cm, lean 30.5°, rounds 2, gathering wrap turns 10";
const TOLD: &str = "cuff: loop 4 mm (1 diameter), foot 8 mm, lean 30.5°, rounds 2, gathering wrap turns 10";

#[test]
fn every_parameter_stands_on_the_pages_of_the_bench_in_working_order() {
    let place = shop();
    for command in [&["bench", "thwickling"][..], &["takeoff", "bundle"]] {
        for form in ["text", "html"] {
            let page = flat(&place.run(&[command, &["--shop", "shop", "--as", form]].concat()).done());
            let first = page.find(&format!("1 {USUAL}; one takes")).unwrap_or_else(|| panic!("{page}"));
            let second = page.find(&format!("1 {TOLD}; one takes")).unwrap_or_else(|| panic!("{page}"));
            assert!(first < second, "{page}");
            // The count of knots tells the two apart as well.
            assert_eq!((page.matches(USUAL).count(), page.matches(TOLD).count()), (2, 2), "{page}");
        }
    }
}

#[test]
fn every_parameter_stands_in_the_documents_of_the_bench() {
    let place = shop();
    let document = |command: &[&str]| -> Value {
        serde_json::from_str(&place.run(&[command, &["--shop", "shop", "--as", "json"]].concat()).done()).unwrap()
    };
    let bundle = document(&["takeoff", "bundle"]);
    let bench = document(&["bench", "thwickling"]);
    assert_eq!(bench["items"][0]["knots"], bundle["knots"]);
    assert_eq!(bench["items"][0]["design"], "bundle");
    assert_eq!(
        bundle["knots"][1]["parameters"],
        json!([
            { "name": "loop", "value": 1.0, "unit": "diameters", "length_mm": 4.0, "part": null },
            { "name": "foot", "value": 8.0, "unit": "mm", "length_mm": 8.0, "part": null },
            { "name": "lean", "value": 30.5, "unit": "degrees", "length_mm": null, "part": null },
            { "name": "rounds", "value": 2.0, "unit": "number", "length_mm": null, "part": null },
            { "name": "turns", "value": 10.0, "unit": "number", "length_mm": null, "part": "gathering wrap" },
        ])
    );
    assert_eq!(bundle["knots"][0]["parameters"][0]["length_mm"], 24.0);
}

#[test]
fn a_knot_without_parameters_is_told_as_before() {
    let page = flat(&TestShop::none().run(&["takeoff", "--demo"]).done());
    assert!(page.contains("12 lark's heads; one takes"), "{page}");
    assert!(page.contains("1 gathering wrap: turns 10; one takes"), "{page}");
}
