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

/// Whether the figures of a line are a page's: not those of its style or drawings, nor of a file's line that is shown.
fn has_figures_of_a_page(page: &str, line: &str) -> bool {
    let is_html = page.starts_with("<!doctype html>");
    !line.contains(" = ") && (!is_html || line.contains("class=\"figure\"") || line.contains("class=\"fine\""))
}

/// Pages and lines on which figures stand, in the order in which the book comes to hold what they show.
const SAID: &[&[&str]] = &[
    &["quote", "reading-room", "--on", DEMO_DAY],
    &["quote", "thwickling", "--on", DEMO_DAY],
    &["costing", "reading-room", "--on", DEMO_DAY],
    &["bench", "reading-room", "--on", DEMO_DAY],
    &["takeoff", "tideline-panel"],
    &["compare"],
    &["compare", "--what-if", "wage=+2.5%"],
    &["weigh", "tideline-panel"],
    &["mix", "--hours", "30"],
    &["knots", "show", "square"],
    &["knots", "show", "gathering-wrap"],
    &["knots", "chart"],
    &["knots", "hand"],
    &[
        "knots",
        "sample",
        "--cord",
        "cotton-4-ecru",
        "--knot",
        "square",
        "--tied",
        "20",
        "--core",
        "2",
        "--before",
        "150 cm",
        "--after",
        "30 cm",
        "--made",
        "28 cm",
        "--minutes",
        "6",
    ],
    &["knots", "hand"],
    &["book", "issue", "reading-room", "--ahead", "--on", DEMO_DAY],
    &["book", "pay", "2026-001", "40.50", "--on", DEMO_DAY],
    &["book", "mark", "2026-001", "accepted", "--on", DEMO_DAY],
    &["book", "log", "2026-001", "--minutes", "95.5", "--cord", "cotton-4-ecru=42.5", "--on", DEMO_DAY],
    &["book", "list", "--on", DEMO_DAY],
    &["book", "queue", "--on", DEMO_DAY],
    &["book", "show", "2026-001", "--on", DEMO_DAY],
    &["book", "took", "2026-001", "--on", DEMO_DAY],
    &["book", "summary", "--on", DEMO_DAY],
];

#[test]
fn where_the_comma_parts_decimals_no_page_has_a_point() {
    assert_eq!(pointed("5.5 % of 1.383,16 and 3,2 m"), ["5.5"]);
    for language in ["fr-FR", "de-AT", "nb"] {
        let place = TestShop::starter();
        place.replace("shop/shop.toml", "language = \"en\"", &format!("language = \"{language}\""));
        place.replace("shop/shop.toml", "rate = \"20 %\"", "rate = \"5.5 %\"");
        for words in SAID {
            let page = place.run(&[words, &["--shop", "shop"][..]].concat()).done();
            let page = page.lines().filter(|line| has_figures_of_a_page(&page, line)).collect::<Vec<_>>().join("\n");
            assert_eq!(pointed(&page), Vec::<&str>::new(), "{language}: {words:?}\n{page}");
        }
    }
}
