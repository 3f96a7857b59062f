//! Designs beside one another, some of them with faults.

use reeve_tests::TestShop;

const COMPARE: [&str; 5] = ["compare", "--shop", "shop", "--as", "csv"];

/// The lines of a table in order of name: leaving a row out must not change the others.
fn sorted(table: &str) -> Vec<&str> {
    let mut lines: Vec<&str> = table.lines().collect();
    lines.sort_unstable();
    lines
}

#[test]
fn a_design_with_faults_is_left_out_and_told() {
    let place = TestShop::starter();
    let all = place.run(&COMPARE).done();
    place.replace("shop/designs/fender-fob.toml", "figure-eight", "figure-ate");
    place.write("shop/designs/not-toml.toml", "[piece\n");
    let ran = place.run(&COMPARE);
    assert_eq!(ran.code, Some(2), "{}", ran.err);
    let kept: Vec<&str> = all.lines().filter(|line| !line.contains("fender-fob")).collect();
    assert_eq!(sorted(&ran.out), sorted(&kept.join("\n")));
    for words in ["designs/fender-fob.toml:", "designs/not-toml.toml:", "figure-eight", "2 designs left out"] {
        assert!(ran.err.contains(words), "{words}: {}", ran.err);
    }
    let said = place.run(&["compare", "fender-fob", "not-toml", "--shop", "shop"]).refused();
    assert!(said.contains("figure-ate"), "{said}");
    // A shop with faults of its own has nothing to compare.
    place.replace("shop/shop.toml", "wage = \"24.00\"", "wage = 24.00");
    assert!(place.run(&COMPARE).refused().contains("bare number"));
}
