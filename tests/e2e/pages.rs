//! Every page of the demo, kept as it was last looked at; and what holds for all pages.

use reeve_tests::{DEMO_DAY, TestShop, check_kept, kept_names, snapshots};
use serde_json::Value;

/// Each page: its command, and the commission or design where it is not the demo's own.
const PAGES: &[(&str, &[&str])] = &[
    ("quote", &["quote"]),
    ("costing", &["costing"]),
    ("bench", &["bench"]),
    ("takeoff", &["takeoff"]),
    ("quote-thwickling", &["quote", "thwickling"]),
    ("costing-thwickling", &["costing", "thwickling"]),
    ("bench-thwickling", &["bench", "thwickling"]),
    ("takeoff-garland", &["takeoff", "halyard-garland"]),
];

/// The pages that have a form for other programs.
const DOCUMENTS: &[&str] = &["quote", "costing", "bench", "takeoff"];

/// A form of a page, and the ending of its file.
type Ending = (&'static str, &'static str);

/// A page of no single day, its command and its forms.
type Table = (&'static str, &'static [&'static str], &'static [Ending]);

const TABLES: &[Table] = &[
    ("compare", &["compare"], &[("text", "txt"), ("html", "html"), ("json", "json"), ("csv", "csv")]),
    ("compare-priced", &["compare", "curlew-hanger", "bay-leaf", "--price", "bay-leaf=31.50"], &[("text", "txt")]),
    ("compare-what-if", &["compare", "curlew-hanger", "--what-if", "wage=+10%", "--sort", "hours"], &[("text", "txt")]),
    ("weigh", &["weigh", "tideline-panel"], &[("text", "txt"), ("html", "html"), ("json", "json")]),
    ("mix", &["mix"], &[("text", "txt"), ("html", "html"), ("json", "json")]),
    ("takeoff-long", &["takeoff", "--size", "long"], &[("text", "txt")]),
    ("knots", &["knots", "list"], &[("text", "txt"), ("json", "json")]),
    ("knot-square", &["knots", "show", "square"], &[("text", "txt"), ("html", "html"), ("json", "json")]),
    ("knot-wrap", &["knots", "show", "gathering-wrap", "--core", "24", "--set", "turns=12"], &[("text", "txt")]),
];

fn page(words: &[&str], form: &str) -> String {
    let mut all = words.to_vec();
    all.extend(["--demo", "--on", DEMO_DAY, "--as", form]);
    TestShop::none().run(&all).done()
}

fn table(words: &[&str], form: &str) -> String {
    let mut all = words.to_vec();
    all.extend(["--demo", "--as", form]);
    TestShop::none().run(&all).done()
}

fn chart() -> String {
    TestShop::none().run(&["knots", "chart", "--demo"]).done()
}

/// Every page as text, with its name.
fn texts() -> Vec<(&'static str, String)> {
    let pages = PAGES.iter().map(|(name, words)| (*name, page(words, "text")));
    pages.chain(TABLES.iter().map(|(name, words, _)| (*name, table(words, "text")))).collect()
}

/// Every page as HTML, with its name.
fn htmls() -> Vec<(&'static str, String)> {
    let pages = PAGES.iter().map(|(name, words)| (*name, page(words, "html")));
    let of = |words: &[&str]| table(words, "html");
    let tables = [("compare", of(&["compare"])), ("weigh", of(&["weigh"])), ("mix", of(&["mix"]))];
    let tables = tables.into_iter().chain([("knot", of(&["knots", "show", "crown"]))]);
    pages.chain(tables).chain([("chart", chart())]).collect()
}

#[test]
fn text_pages_are_as_kept() {
    for (name, words) in PAGES {
        check_kept(&snapshots().join(format!("pages/{name}.txt")), &page(words, "text"));
    }
}

#[test]
fn html_pages_are_as_kept() {
    for (name, words) in PAGES {
        check_kept(&snapshots().join(format!("pages/{name}.html")), &page(words, "html"));
    }
}

#[test]
fn documents_are_as_kept() {
    for name in DOCUMENTS {
        check_kept(&snapshots().join(format!("pages/{name}.json")), &page(&[name], "json"));
    }
}

#[test]
fn tables_are_as_kept() {
    for (name, words, forms) in TABLES {
        for (form, ending) in *forms {
            check_kept(&snapshots().join(format!("pages/{name}.{ending}")), &table(words, form));
        }
    }
}

#[test]
fn the_chart_is_as_kept() {
    check_kept(&snapshots().join("pages/chart.html"), &chart());
}

#[test]
fn nothing_is_kept_that_is_not_compared() {
    let mut names: Vec<String> =
        PAGES.iter().flat_map(|(name, _)| [format!("{name}.txt"), format!("{name}.html")]).collect();
    names.extend(DOCUMENTS.iter().map(|name| format!("{name}.json")));
    names.push("chart.html".to_owned());
    for (name, _, forms) in TABLES {
        names.extend(forms.iter().map(|(_, ending)| format!("{name}.{ending}")));
    }
    let strays: Vec<String> =
        kept_names(&snapshots().join("pages")).into_iter().filter(|name| !names.contains(name)).collect();
    assert!(strays.is_empty(), "kept, but of no page: {strays:?}");
}

#[test]
fn a_page_is_the_same_bytes_every_time() {
    for (_, words) in PAGES {
        for form in ["text", "html"] {
            assert_eq!(page(words, form), page(words, form), "{words:?} as {form}");
        }
    }
}

#[test]
fn text_pages_keep_to_80_columns() {
    let mut wide = Vec::new();
    for (name, page) in texts() {
        let lines = page.lines().filter(|line| line.chars().count() > 80);
        wide.extend(lines.map(|line| format!("{name}: {line}")));
    }
    assert!(wide.is_empty(), "{}", wide.join("\n"));
}

#[test]
fn text_pages_have_no_tabs_no_trailing_blanks_and_one_end() {
    for (name, page) in texts() {
        assert!(page.ends_with('\n') && !page.ends_with("\n\n"), "{name}");
        assert!(!page.contains(['\t', '\r', '\u{a0}']), "{name}");
        assert!(page.lines().all(|line| line.trim_end() == line), "{name}");
    }
}

#[test]
fn html_pages_stand_alone() {
    for (name, page) in htmls() {
        assert!(page.to_lowercase().starts_with("<!doctype html>"), "{name}");
        assert!(page.contains("<html lang=\"en\""), "{name}");
        // A pattern of the page's own is named like a place elsewhere.
        let page = page.replace("url(#", "");
        for reach in ["<script", "http://", "https://", "<link", "@import", "url(", "<img", "<iframe"] {
            assert!(!page.contains(reach), "{name} holds {reach}");
        }
    }
}

#[test]
fn html_pages_open_and_close_every_element() {
    for (name, page) in htmls() {
        for element in ["html", "head", "body", "style", "table", "thead", "tbody", "tr", "th", "td", "ul", "section"] {
            let opened = page.matches(&format!("<{element}>")).count() + page.matches(&format!("<{element} ")).count();
            assert_eq!(opened, page.matches(&format!("</{element}>")).count(), "{element} in {name}");
        }
    }
}

/// Every page of a commission, a design or the book, and the words that print it.
const PRIVATE: &[&[&str]] = &[
    &["costing", "reading-room"],
    &["bench", "reading-room"],
    &["takeoff", "curlew-hanger"],
    &["compare"],
    &["weigh", "tideline-panel"],
    &["mix"],
    &["book", "list"],
    &["book", "show", "2026-001"],
    &["book", "queue"],
    &["book", "took", "2026-001"],
    &["book", "took"],
    &["book", "summary"],
];

#[test]
fn every_page_of_the_makers_says_whose_eyes_it_is_for_and_the_clients_page_does_not() {
    let place = TestShop::starter();
    let shop = ["--shop", "shop", "--on", DEMO_DAY];
    place.run(&[&["book", "issue", "reading-room", "--ahead"][..], &shop].concat()).done();
    let warnings = |words: &[&str], form: &str| {
        // What is of no single day is asked without one.
        let day = if ["compare", "weigh", "mix"].contains(&words[0]) { &shop[..2] } else { &shop };
        let page = place.run(&[words, day, &["--as", form]].concat()).done();
        page.to_lowercase().replace("&#39;", "'").matches("the maker's eyes only").count()
    };
    for form in ["text", "html"] {
        for words in PRIVATE {
            assert_eq!(warnings(words, form), 1, "{words:?} as {form}");
        }
        assert_eq!(warnings(&["quote", "reading-room"], form), 0, "{form}");
    }
    let kept = |page: &str| place.run(&[&["book", "show", "2026-001", "--page", page][..], &shop].concat()).done();
    for page in ["costing.html", "costing.txt", "bench.html", "bench.txt"] {
        assert!(kept(page).to_lowercase().contains("eyes only"), "{page}");
    }
    assert!(!kept("quote.html").contains("eyes only") && !kept("quote.txt").to_lowercase().contains("eyes only"));
}

#[test]
fn the_quote_in_every_form_says_the_same_total() {
    let document: Value = serde_json::from_str(&page(&["quote"], "json")).unwrap();
    let gross = document["totals"]["gross"].as_str().unwrap();
    for form in ["text", "html"] {
        let plain = page(&["quote"], form).replace(',', "");
        assert!(plain.contains(&format!("€{gross}")), "{gross} in {form}");
    }
}

#[test]
fn names_are_escaped_in_html_and_plain_in_text() {
    let place = TestShop::starter();
    place.replace("shop/commissions/reading-room.toml", "Gannetry Row Reading Room", "Reed & <b>Sons</b>");
    let words = |form| ["quote", "reading-room", "--shop", "shop", "--as", form];
    let html = place.run(&words("html")).done();
    assert!(html.contains("Reed &amp; &lt;b&gt;Sons&lt;/b&gt;") && !html.contains("<b>Sons"));
    assert!(place.run(&words("text")).done().contains("Reed & <b>Sons</b>"));
}
