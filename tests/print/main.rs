//! The pages, printed and shown in a real browser: `REEVE_BROWSER` names it; without it there is nothing to look with.
//!
//! Needs `pdftotext` beside the browser.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use reeve_tests::{DEMO_DAY, run};
use serde_json::Value;
use tempfile::TempDir;

/// The pages of the demo, and the most sheets that each may take.
const PAGES: &[(&str, usize)] = &[
    ("quote", 2),
    ("costing", 4),
    ("bench", 6),
    ("chart", 10),
    ("compare", 10),
    ("weigh", 3),
    ("mix", 2),
    ("book", 1),
    ("queue", 1),
    ("summary", 1),
    ("whole", 2),
];

/// Widths of a phone, a tablet and a desk, in CSS pixels.
const WIDTHS: &[u32] = &[360, 768, 1280];

/// Paper, by the names of CSS Paged Media.
const PAPER: &[&str] = &["A4", "letter"];

/// The demo's pages in a folder, and the browser to look at them with.
struct Pages {
    browser: String,
    folder: TempDir,
}

impl Pages {
    fn new() -> Option<Self> {
        let browser = std::env::var("REEVE_BROWSER").ok()?;
        let folder = tempfile::tempdir().unwrap();
        run(folder.path(), &["quote", "--demo", "--on", DEMO_DAY, "--out", "sent", "--own", "own"]).done();
        for page in [
            "sent/reading-room/reading-room-quote",
            "own/reading-room/reading-room-costing",
            "own/reading-room/reading-room-bench",
        ] {
            let (from, short) = (folder.path().join(page).with_extension("html"), page.rsplit('-').next().unwrap());
            fs::copy(from, folder.path().join(short).with_extension("html")).unwrap();
        }
        let chart = run(folder.path(), &["knots", "chart", "--demo", "--out", "chart.html"]);
        assert_eq!(chart.code, Some(0), "{}", chart.err);
        run(folder.path(), &["knots", "show", "crown", "--demo", "--as", "html", "--out", "knot.html"]);
        run(folder.path(), &["begin", "shop"]).done();
        run(folder.path(), &["book", "issue", "reading-room", "--on", DEMO_DAY, "--ahead", "--shop", "shop"]).done();
        run(folder.path(), &["book", "mark", "2026-001", "accepted", "--on", DEMO_DAY, "--ahead", "--shop", "shop"])
            .done();
        for (page, words) in [("book", "list"), ("queue", "queue"), ("summary", "summary")] {
            let html = run(folder.path(), &["book", words, "--as", "html", "--on", DEMO_DAY, "--shop", "shop"]).done();
            fs::write(folder.path().join(page).with_extension("html"), html).unwrap();
        }
        let whole =
            run(folder.path(), &["book", "show", "2026-001", "--as", "html", "--on", DEMO_DAY, "--shop", "shop"]);
        fs::write(folder.path().join("whole.html"), whole.done()).unwrap();
        for page in ["compare", "weigh", "mix"] {
            let html = run(folder.path(), &[page, "--demo", "--as", "html"]).done();
            fs::write(folder.path().join(page).with_extension("html"), html).unwrap();
        }
        Some(Self { browser, folder })
    }

    fn read(&self, name: &str) -> String {
        fs::read_to_string(self.folder.path().join(name)).unwrap()
    }

    fn write(&self, name: &str, text: &str) -> PathBuf {
        let at = self.folder.path().join(name);
        fs::write(&at, text).unwrap();
        at
    }

    /// Runs the browser without a window, with a profile of its own.
    fn browse(&self, words: &[&str], page: &Path) -> String {
        let profile = tempfile::tempdir().unwrap();
        let output = Command::new(&self.browser)
            .args(["--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking"])
            .args(["--disable-component-update", "--disable-sync", "--disable-quic", "--virtual-time-budget=3000"])
            .arg(format!("--user-data-dir={}", profile.path().display()))
            .args(words)
            .arg(format!("file://{}", page.display()))
            .output()
            .unwrap();
        assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
        String::from_utf8(output.stdout).unwrap()
    }

    /// The text of each sheet of a page printed on some paper.
    fn printed(&self, page: &str, paper: &str) -> Vec<String> {
        let sized = self
            .read(&format!("{page}.html"))
            .replace("</head>", &format!("<style>@page {{ size: {paper} }}</style></head>"));
        let at = self.write(&format!("{page}-{paper}.html"), &sized);
        let pdf = at.with_extension("pdf");
        self.browse(&["--no-pdf-header-footer", &format!("--print-to-pdf={}", pdf.display())], &at);
        let output = Command::new("pdftotext").args(["-layout"]).arg(&pdf).arg("-").output().unwrap();
        let text = String::from_utf8(output.stdout).unwrap();
        text.trim_end_matches('\u{c}').split('\u{c}').map(str::to_owned).collect()
    }

    /// How far the page's content reaches past its right edge at a width, in CSS pixels.
    fn overflow(&self, page: &str, width: u32) -> i64 {
        const MEASURE: &str =
            "<script>parent.postMessage(document.documentElement.scrollWidth - innerWidth, '*')</script></body>";
        let inner = format!("{page}-measured.html");
        self.write(&inner, &self.read(&format!("{page}.html")).replace("</body>", MEASURE));
        let outer = format!(
            "<!doctype html><iframe src=\"{inner}\" width=\"{width}\" height=\"900\" style=\"border:0\"></iframe><p id=\"far\"></p>\
             <script>addEventListener('message', e => {{ far.textContent = 'far ' + e.data + ' far' }})</script>"
        );
        let at = self.write(&format!("{page}-{width}.html"), &outer);
        let shown = self.browse(&["--dump-dom"], &at);
        let far = shown.split("far ").nth(1).unwrap_or_else(|| panic!("the page did not answer: {shown}"));
        far.split_whitespace().next().unwrap().parse().unwrap()
    }
}

#[test]
fn pages_print_on_few_sheets_of_either_paper() {
    let Some(pages) = Pages::new() else { return };
    for paper in PAPER {
        for (page, most) in PAGES {
            let sheets = pages.printed(page, paper);
            assert!(sheets.len() <= *most, "{page} takes {} sheets of {paper}", sheets.len());
            assert!(sheets.iter().all(|sheet| !sheet.trim().is_empty()), "{page} has an empty sheet of {paper}");
        }
    }
}

#[test]
fn a_line_is_printed_beside_its_amount_and_the_totals_together() {
    let Some(pages) = Pages::new() else { return };
    let quote: Value = serde_json::from_str(&pages.read("sent/reading-room/reading-room-quote.json")).unwrap();
    for paper in PAPER {
        let sheets = pages.printed("quote", paper);
        let sheet_of = |words: &str| sheets.iter().position(|sheet| sheet.contains(words));
        for line in quote["lines"].as_array().unwrap() {
            // The start of the text, since a long one is broken over lines of print.
            let text: String = line["text"].as_str().unwrap().chars().take(24).collect();
            let amount = line["amount"].as_str().unwrap();
            let sheet = sheet_of(&text).unwrap_or_else(|| panic!("{text} is not printed"));
            assert!(sheets[sheet].contains(amount), "{text} and {amount} are on different sheets of {paper}");
        }
        let gross = quote["totals"]["gross"].as_str().unwrap();
        let (sums, total) = (sheet_of("Sum of the lines"), sheet_of(&with_thousands(gross)));
        assert!(sums.is_some() && sums == total, "the totals are parted on {paper}: {sums:?}, {total:?}");
    }
}

/// An amount over a thousand as the pages write it.
fn with_thousands(amount: &str) -> String {
    let (head, tail) = amount.split_at(amount.find('.').unwrap().saturating_sub(3));
    if head.is_empty() { tail.to_owned() } else { format!("{head},{tail}") }
}

#[test]
fn no_card_of_the_chart_is_parted_and_every_sheet_is_headed() {
    let Some(pages) = Pages::new() else { return };
    let cards = pages.read("chart.html").matches("<article").count();
    for paper in PAPER {
        let sheets = pages.printed("chart", paper);
        let count = |sheet: &str, words: &[&str]| words.iter().map(|word| sheet.matches(word).count()).sum::<usize>();
        let mut seen = 0;
        for sheet in &sheets {
            // A card begins with its kind, below its names, and ends with its sources.
            let begun = count(sheet, &["mounting: ", "sennit: ", "row: ", "wrap: ", "single: "]);
            assert_eq!(begun, count(sheet, &["Sources:"]), "a card is parted on {paper}:\n{sheet}");
            assert!(sheet.contains("Knot chart"), "a sheet of {paper} has no heading:\n{sheet}");
            seen += begun;
        }
        assert_eq!(seen, cards, "{paper}");
    }
}

#[test]
fn nothing_reaches_past_the_edge_of_a_phone_or_a_desk() {
    let Some(pages) = Pages::new() else { return };
    for page in PAGES.iter().map(|(page, _)| *page).chain(["knot"]) {
        for width in WIDTHS {
            let far = pages.overflow(page, *width);
            assert!(far <= 0, "{page} reaches {far} px past the edge at {width} px");
        }
    }
}
