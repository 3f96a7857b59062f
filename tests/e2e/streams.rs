//! Exit codes, and what goes to standard output and what to standard error.

use std::process::Stdio;

use reeve_tests::{TestShop, run_reading};

/// Commands that do what they are asked.
const DONE: &[&[&str]] = &[
    &["begin", "new"],
    &["check", "--demo"],
    &["takeoff", "--demo"],
    &["takeoff", "--demo", "--as", "html"],
    &["takeoff", "--demo", "--as", "json"],
    &["costing", "--demo"],
    &["costing", "--demo", "--as", "html"],
    &["costing", "--demo", "--as", "json"],
    &["bench", "--demo"],
    &["bench", "--demo", "--as", "html"],
    &["bench", "--demo", "--as", "json"],
    &["quote", "--demo"],
    &["quote", "--demo", "--as", "html"],
    &["quote", "--demo", "--as", "json"],
    &["compare", "--demo"],
    &["compare", "--demo", "--as", "html"],
    &["compare", "--demo", "--as", "json"],
    &["compare", "--demo", "--as", "csv"],
    &["weigh", "--demo"],
    &["weigh", "--demo", "--as", "html"],
    &["weigh", "--demo", "--as", "csv"],
    &["mix", "--demo"],
    &["mix", "--demo", "--as", "json"],
    &["book", "--help"],
    &["knots", "list"],
    &["knots", "list", "--as", "json"],
    &["knots", "show", "square"],
    &["knots", "show", "square", "--as", "json"],
    &["knots", "show", "square", "--as", "html"],
    &["knots", "chart"],
    &["knots", "chart", "--kind", "row", "--demo"],
    &["knots", "hand", "--demo"],
    &["knots", "hand", "--demo", "--as", "json"],
    &["schema", "design"],
    &["completions", "bash"],
    &["man"],
    &["help"],
    &["--help"],
    &["--version"],
    &["quote", "--help"],
];

/// Command lines that are wrong, and words of the answer.
const WRONG: &[(&[&str], &str)] = &[
    (&[], "Usage: reeve"),
    (&["price"], "unrecognized subcommand"),
    (&["qoute", "--demo"], "quote"),
    (&["quote", "--dmeo"], "--demo"),
    (&["quote", "--demo", "--as", "pdf"], "html"),
    (&["bench", "--demo", "--as", "csv"], "html"),
    (&["quote", "--demo", "--on", "tomorrow"], "--on"),
    (&["quote", "--demo", "--on", "2026-02-30"], "--on"),
    (&["quote", "--demo", "--shop", "shop"], "--shop"),
    (&["quote", "--shop", "shop"], "reading-room, thwickling"),
    (&["takeoff", "--shop", "shop"], "curlew-hanger"),
    (&["schema", "desing"], "design"),
    (&["schema"], "<KIND>"),
    (&["knots"], "Usage: reeve knots"),
    (&["knots", "shwo"], "show"),
    (&["knots", "chart", "--kind", "rwo"], "row"),
    (&["knots", "chart", "--cord", "0"], "--cord 0"),
    (&["knots", "chart", "--out", ".."], "chart.html"),
    (&["knots", "show", "square", "--as", "pdf"], "svg"),
    (&["compare", "--demo", "--sort", "margni"], "margin"),
    (&["completions", "csh"], "bash"),
    (&["begin"], "<DIR>"),
];

/// Whether nothing is said but what the maker should look at.
fn only_remarks(said: &str) -> bool {
    said.lines().all(|line| line.starts_with("look: "))
}

#[test]
fn what_is_done_exits_0_with_the_result_alone() {
    for words in DONE {
        let ran = TestShop::none().run(words);
        assert!(only_remarks(&ran.err), "{words:?}: {}", ran.err);
        assert!(!ran.done().trim().is_empty(), "{words:?}");
    }
}

#[test]
fn a_wrong_command_line_exits_2_with_a_message_alone() {
    let place = TestShop::starter();
    for (words, answer) in WRONG {
        let said = place.run(words).refused();
        assert!(said.contains(answer), "{words:?}: {said}");
    }
}

#[test]
fn remarks_go_to_standard_error_and_the_page_to_standard_output() {
    let place = TestShop::starter();
    let file = "shop/commissions/reading-room.toml";
    let page = place.run(&["quote", "reading-room", "--shop", "shop"]).done();
    place.replace(file, "needed-by = 2027-02-26", "needed-by = 2027-02-12");
    let ran = place.run(&["quote", "reading-room", "--shop", "shop"]);
    assert!(
        ran.err.contains("Promised for 19 February 2027") && ran.err.contains("by 12 February 2027"),
        "{}",
        ran.err
    );
    assert_eq!(ran.done(), page);
}

#[test]
fn no_colour_codes_reach_a_pipe() {
    let place = TestShop::starter();
    place.write("shop/designs/broken.toml", "[piece\n");
    for words in
        [&["check", "--shop", "shop"][..], &["quote", "--dmeo"], &["quote", "--help"], &["quote", "--demo"], &[]]
    {
        let ran = place.run(words);
        assert!(!ran.out.contains('\u{1b}') && !ran.err.contains('\u{1b}'), "{words:?}");
    }
}

#[test]
fn a_reader_that_has_had_enough_is_no_failure() {
    let place = TestShop::none();
    for words in [&["quote", "--demo"][..], &["quote", "--demo", "--as", "html"], &["completions", "zsh"], &["man"]] {
        let (reader, writer) = std::io::pipe().unwrap();
        drop(reader);
        let ran = run_reading(&place.path("."), words, Stdio::from(writer));
        assert!(ran.code == Some(0) && only_remarks(&ran.err), "{words:?}: {:?}, {}", ran.code, ran.err);
    }
}

#[cfg(target_os = "linux")]
#[test]
fn a_full_disk_is_the_systems_refusal() {
    // The device that is always full.
    let full = std::fs::File::options().write(true).open("/dev/full").unwrap();
    let ran = run_reading(&TestShop::none().path("."), &["quote", "--demo"], Stdio::from(full));
    assert_eq!(ran.code, Some(1), "{}", ran.err);
    assert!(ran.err.lines().any(|line| line.starts_with("error: standard output")), "{}", ran.err);
}

#[test]
fn money_without_a_sign_of_its_own_is_worded_without_noise() {
    for currency in ["CLF", "XAU", "UYW", "KWD", "JPY", "ZWG"] {
        let place = TestShop::starter();
        place.replace("shop/shop.toml", "currency = \"EUR\"", &format!("currency = \"{currency}\""));
        let ran = place.run(&["quote", "reading-room", "--shop", "shop"]);
        assert!(only_remarks(&ran.err), "{currency}: {}", ran.err);
        ran.done();
    }
}

#[test]
fn a_folder_that_is_not_there_is_told_by_its_name() {
    let ran = TestShop::none().run(&["check", "--shop", "nowhere"]);
    assert!(matches!(ran.code, Some(1 | 2)), "{}", ran.err);
    assert!(ran.out.is_empty() && ran.err.contains("nowhere"), "{}", ran.err);
}
