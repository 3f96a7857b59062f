//! A shop's own templates.

use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use reeve_tests::{TestShop, reeve};

const QUOTE: [&str; 4] = ["quote", "reading-room", "--shop", "shop"];

#[test]
fn a_template_of_the_shop_takes_the_built_in_ones_place() {
    let place = TestShop::starter();
    place.write("shop/templates/quote.txt", "Dear {{ client | first }},\n{{ head.title }}.\n");
    assert_eq!(
        place.run(&QUOTE).done(),
        "Dear Gannetry Row Reading Room,\nSix plant hangers and a wall panel for the reading room.\n"
    );
    // Only that page is another one.
    let html = ["quote", "reading-room", "--shop", "shop", "--as", "html"];
    assert!(place.run(&html).done().contains("</html>"));
}

#[test]
fn a_template_of_the_shop_is_used_inside_the_built_in_ones() {
    let place = TestShop::starter();
    place.write("shop/templates/style.css", "body { color: rebeccapurple }\n");
    for command in ["quote", "costing", "bench"] {
        let page = place.run(&[command, "reading-room", "--shop", "shop", "--as", "html"]).done();
        assert!(page.contains("body { color: rebeccapurple }"), "{command}");
    }
}

#[test]
fn templates_may_include_others_of_the_shop() {
    let place = TestShop::starter();
    place.write("shop/templates/quote.txt", "{% include 'greeting.txt' %} {{ reference }}\n");
    place.write("shop/templates/greeting.txt", "Good day.");
    assert_eq!(place.run(&QUOTE).done(), "Good day. reading-room\n");
}

#[test]
fn the_demo_does_not_look_at_templates_around_it() {
    let place = TestShop::starter();
    place.write("shop/templates/quote.txt", "mine\n");
    assert_ne!(reeve_tests::run(&place.path("shop"), &["quote", "--demo"]).done(), "mine\n");
}

#[test]
fn a_template_that_fails_is_told_with_file_line_and_reason_and_nothing_is_written() {
    for (text, place_in_it, reason) in [
        ("Dear {{ client | first }},\n{{ head.titel }}\n", "quote.txt:2:", "titel"),
        ("ä {{ client | first }} {{ head.titel }}\n", "quote.txt:1:32", "titel"),
        ("one\ntwo\n{{ reference | }}\n", "quote.txt:3:", ""),
        ("{% if promised %}\nno end\n", "quote.txt:", ""),
        ("{{ reference | backwards }}\n", "quote.txt:1:16", "backwards"),
        ("\n{% include 'nowhere.txt' %}\n", "quote.txt:2:", "nowhere.txt"),
    ] {
        let shop = TestShop::starter();
        shop.write("shop/templates/quote.txt", text);
        let before = shop.tree();
        let said = shop.run(&["quote", "reading-room", "--shop", "shop", "--out", "out"]).refused();
        for words in ["shop/templates/", place_in_it, reason] {
            assert!(said.contains(words), "{text}: {said}");
        }
        assert_eq!(shop.tree(), before, "{text}");
    }
}

#[test]
fn check_reads_the_templates_too() {
    let place = TestShop::starter();
    place.write("shop/templates/costing.html", "<p>\n{{ reference | backwards }}\n");
    let said = place.run(&["check", "--shop", "shop"]).refused();
    assert!(said.contains("shop/templates/costing.html:2:"), "{said}");
}

#[test]
fn a_template_that_fails_stops_only_the_pages_it_makes() {
    let place = TestShop::starter();
    place.write("shop/templates/costing.txt", "{{ nothing.of.the.kind }}\n");
    place.run(&QUOTE).done();
    place.run(&["costing", "reading-room", "--shop", "shop"]).refused();
}

/// What a template that goes wrong is told of: its place, and words.
type Told = (&'static str, &'static [&'static str]);

/// Templates that would never end, or take all the memory there is.
const TOO_MUCH: &[(&str, Told)] = &[
    (
        "Dear,\n{% for a in range(end=100000) %}\n{% for b in range(end=100000) %}{% endfor %}{% endfor %}",
        ("quote.txt:3:", &["still not done"]),
    ),
    (
        "{% set s = 'ab' %}\n{% for a in range(end=100) %}\n  {% set_global s = s ~ s %}\n{% endfor %}",
        ("quote.txt:3:3", &["memory"]),
    ),
    (
        "{% set s = [1] %}{% for a in range(end=100) %}\n{%- set_global s = [...s, ...s] %}{% endfor %}",
        ("quote.txt:2:1", &["memory"]),
    ),
    (
        "\n{% set s = 'a' | times(n=1000) %}{% for a in range(end=9) %}{% set_global s = s | replace(from='a', to=s) %}{% endfor %}",
        ("quote.txt:2:", &["memory"]),
    ),
    (
        "\n\n{% set n = [1 for a in range(end=100000) if [b for b in range(end=100000) if false]] %}",
        ("quote.txt:3:1", &["still not done after 3 seconds"]),
    ),
    (
        "{% for a in range(end=100000) %}\n{% for b in range(end=1000) %}{{ 'x' | times(n=1000) }}{% endfor %}{% endfor %}",
        ("quote.txt:2:", &["64 million characters"]),
    ),
    (
        "{% component deep(n) %}\n{{<deep n={n} />}}{{<deep n={n} />}}{% endcomponent deep %}{{<deep n={1} />}}",
        ("quote.txt:2:", &["recursion"]),
    ),
    (
        "{% set v = [] %}{% for b in range(end=10) %}{% for a in range(end=100000) %}{% set_global v = [v] %}{% endfor %}{% endfor %}\n{{ v | str | length }}",
        ("quote.txt:", &[]),
    ),
    ("one\n{% include 'quote.txt' %}", ("quote.txt:2:1", &["nclude"])),
];

/// Runs the program with little memory and time; yields its code and what it said.
fn run_bounded(place: &TestShop, words: &[&str]) -> (Option<i32>, String) {
    // Kilobytes of memory and seconds of the processor's time, as POSIX's shell counts them.
    const BOUNDS: &str = "ulimit -v 2000000; ulimit -t 60; exec \"$@\"";
    let mut command = Command::new("sh");
    command.args(["-c", BOUNDS, "sh"]).arg(reeve()).args(words).current_dir(place.path(""));
    command.stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::piped());
    let ended = command.spawn().unwrap().wait_with_output().unwrap();
    (ended.status.code(), String::from_utf8(ended.stderr).unwrap())
}

/// Each page may take some seconds: many that do would hold up a check for minutes.
#[test]
fn check_stops_at_the_third_page_that_takes_too_much() {
    let place = TestShop::starter();
    for name in ["quote.txt", "costing.txt", "bench.txt", "takeoff.txt", "mix.txt"] {
        place.write(
            &format!("shop/templates/{name}"),
            "{% for a in range(end=100000) %}{% for b in range(end=1000) %}{% endfor %}{% endfor %}",
        );
    }
    let (code, said) = run_bounded(&place, &["check", "--shop", "shop"]);
    assert_eq!(code, Some(2), "{said}");
    assert_eq!(said.matches("this template takes too much").count(), 3, "{said}");
    assert!(said.contains("further pages of templates/ were not looked at"), "{said}");
}

#[test]
fn a_template_that_takes_too_much_is_ended_and_told_at_its_place() {
    for (text, (spot, words)) in TOO_MUCH {
        let place = TestShop::starter();
        place.write("shop/templates/quote.txt", text);
        let before = place.tree();
        let begun = Instant::now();
        let (code, said) = run_bounded(&place, &[&QUOTE[..], &["--out", "out"]].concat());
        assert_eq!(code, Some(2), "{text}: {said}");
        assert!(said.contains(&format!("shop/templates/{spot}")), "{text}: {said}");
        assert!(words.iter().all(|word| said.contains(word)), "{text}: {said}");
        // It ends by itself: by the processor's time that it took, or by the program's patience of two minutes.
        assert!(begun.elapsed() < Duration::from_secs(150), "{text}: {:?}", begun.elapsed());
        assert_eq!(place.tree(), before, "{text}");
    }
}

#[test]
fn check_tells_every_fault_of_every_template_at_its_place_in_one_run() {
    let place = TestShop::starter();
    place.write(
        "shop/templates/quote.html",
        "<p>{{ head.titel }}\n{% if promised %}{{ promised | upper }} {{ promissed }}{% endif %}\n{% if not promised %}{{ never }}{% endif %}",
    );
    place.write("shop/templates/work.txt", "{% for step in work.steps %}\n{{ step.nunber }}{% endfor %}");
    place.write(
        "shop/templates/book.txt",
        "{% for table in tables %}{% for row in table.rows %}{{ row.cell }}{% endfor %}{% endfor %}",
    );
    place.write("shop/templates/costing.txt", "\n{{ reference | backwards }}");
    place.write(
        "shop/templates/mix.html",
        "{% for a in range(end=100000) %}{% for a in range(end=100000) %}{% endfor %}{% endfor %}",
    );
    place.write("shop/templates/qoute.txt", "Dear {{ client }}");
    let (code, said) = run_bounded(&place, &["check", "--shop", "shop"]);
    assert_eq!(code, Some(2), "{said}");
    for words in [
        "quote.html:1:12",
        "titel",
        "quote.html:2:44",
        "promissed",
        "quote.html:3:25",
        "never",
        "work.txt:2:",
        "nunber",
        "book.txt:1:",
        "costing.txt:2:16",
        "backwards",
        "mix.html:1:",
        "still not done",
        "qoute.txt:1:1",
        "did you mean `quote.txt`?",
    ] {
        assert!(said.contains(words), "{words}: {said}");
    }
    assert_eq!(said.matches("nunber }}").count(), 1, "a part of two pages is told of once: {said}");
}

#[test]
fn the_programs_own_templates_as_a_shops_own_pass_and_change_no_page() {
    let (plain, own) = (TestShop::starter(), TestShop::starter());
    // The page of a library that is not admitted yet belongs to no shop.
    for (name, text) in reeve_pages::BUILT_IN.iter().filter(|(name, _)| *name != "library.txt") {
        own.write(&format!("shop/templates/{name}"), text);
    }
    own.run(&["check", "--shop", "shop"]).done();
    for words in [
        &["quote", "reading-room"][..],
        &["costing", "thwickling"],
        &["bench", "reading-room"],
        &["takeoff", "halyard-garland"],
        &["compare", "curlew-hanger", "bay-leaf"],
        &["weigh", "bay-leaf"],
        &["mix", "curlew-hanger", "bay-leaf"],
        &["knots", "show", "square"],
    ] {
        for form in ["text", "html"] {
            let words = [words, &["--shop", "shop", "--as", form]].concat();
            assert_eq!(own.run(&words).done(), plain.run(&words).done(), "{words:?}");
        }
    }
}
