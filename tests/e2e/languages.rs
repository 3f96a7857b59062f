//! Figures in the shop's language: where the comma parts decimals, no figure of a page has a point.

use reeve_tests::{DEMO_DAY, TestShop};

/// Words that hold a figure with a point before its decimals; three digits behind a point are thousands.
fn pointed(page: &str) -> Vec<&str> {
    let is_pointed = |word: &&str| {
        word.match_indices('.').any(|(at, _)| {
            let (before, after) = (&word[..at], &word[at + 1..]);
            let digits = after.chars().take_while(char::is_ascii_digit).count();
            before.ends_with(|c: char| c.is_ascii_digit()) && digits > 0 && digits != 3
        })
    };
    page.split_whitespace().filter(is_pointed).collect()
}

#[test]
fn where_the_comma_parts_decimals_no_page_has_a_point() {
    assert_eq!(pointed("5.5 % of 1.383,16 and 3,2 m"), ["5.5"]);
    for language in ["fr-FR", "de-AT", "nb"] {
        let place = TestShop::starter();
        place.replace("shop/shop.toml", "language = \"en\"", &format!("language = \"{language}\""));
        place.replace("shop/shop.toml", "rate = \"20 %\"", "rate = \"5.5 %\"");
        for words in [
            &["quote", "reading-room", "--on", DEMO_DAY][..],
            &["quote", "thwickling", "--on", DEMO_DAY],
            &["costing", "reading-room", "--on", DEMO_DAY],
            &["bench", "reading-room", "--on", DEMO_DAY],
            &["takeoff", "tideline-panel"],
            &["compare"],
            &["weigh", "tideline-panel"],
            &["mix", "--hours", "30"],
        ] {
            let page = place.run(&[words, &["--shop", "shop"]].concat()).done();
            assert_eq!(pointed(&page), Vec::<&str>::new(), "{language}: {words:?}\n{page}");
        }
    }
}
