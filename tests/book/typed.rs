//! Every row is read as what it is, from text and from the database; and days are possible ones.

use chrono::{Days, Local};
use reeve_book::Book;
use serde_json::json;

use crate::workshop::Workshop;

fn exported(shop: &Workshop) -> String {
    shop.book(&["export", "book.jsonl"], "2026-11-28").done();
    std::fs::read_to_string(shop.shop.path("book.jsonl")).unwrap()
}

fn shop() -> Workshop {
    let shop = Workshop::with_orders(1);
    shop.book(&["issue", "order-0"], "2026-11-25").done();
    shop.book(&["pay", "2026-001", "9.00"], "2026-11-26").done();
    let log = ["log", "2026-001", "--minutes", "5", "--cord", "cotton-3-ecru=2", "--bought", "Ring=1.00"];
    shop.book(&log, "2026-11-27").done();
    shop
}

/// Whether or not the text has seals, each value is judged by its own line and field, and nothing is entered.
#[test]
fn an_import_names_line_and_field_of_what_cannot_be() {
    let shop = shop();
    let text = exported(&shop);
    let line_of = |part: &str| text.lines().position(|line| line.contains(part)).unwrap() + 1;
    for (part, other, field) in [
        ("\"amount\":\"9.00\"", "\"amount\":\"NaN\"", "amount: `NaN` is not an amount"),
        (
            "\"amount\":\"9.00\"",
            "\"amount\":\"79228162514264337593543950335\"",
            "amount: 79228162514264337593543950335 can't be",
        ),
        ("\"amount\":\"9.00\"", "\"amount\":9.00", "amount: `9` is not an amount"),
        ("\"amount\":\"9.00\"", "\"amount\":\"9_0.00\"", "amount: `9_0.00` is not an amount"),
        ("\"amount\":\"1.00\"", "\"amount\":\"-1000000000.01\"", "amount: -1000000000.01 can't be"),
        ("\"day\":\"2026-11-26\"", "\"day\":\"2027-02-31\"", "day: `2027-02-31` is not a day"),
        ("\"day\":\"2026-11-26\"", "\"day\":\"9999-01-01\"", "day: 9999-01-01 can't be"),
        ("\"day\":\"2026-11-26\"", "\"day\":\"0001-01-01\"", "day: 0001-01-01 can't be"),
        ("\"day\":\"2026-11-26\"", "\"day\":\"26-11-2026\"", "day: `26-11-2026` is not a day"),
        ("\"state\":\"quoted\"", "\"state\":\"sold\"", "state: `sold` is not a state"),
        ("\"state\":\"quoted\"", "\"state\":\"lapsed\"", "state: `lapsed` is not a state"),
        ("\"minutes\":5.0", "\"minutes\":-5", "minutes: -5 minutes can't be"),
        ("\"minutes\":5.0", "\"minutes\":1e300", "minutes can't be"),
        ("\"minutes\":5.0", "\"minutes\":1e999", "number out of range"),
        ("\"minutes\":5.0", "\"minutes\":\"inf\"", "minutes: `inf` is not minutes"),
        ("\"minutes\":5.0", "\"minutes\":null", "minutes: it is missing"),
        ("\"metres\":2.0", "\"metres\":-2.0", "metres: -2 metres can't be"),
        ("\"year\":2026", "\"year\":20260", "year: `20260` is not a year"),
        ("\"running\":1", "\"running\":1.5", "running: `1.5` is not a whole number"),
        (
            "gross\\\":\\\"24.00",
            "gross\\\":\\\"79228162514264337593543950335",
            "figures: gross: 79228162514264337593543950335 can't be",
        ),
        ("hours\\\":\\\"", "hours\\\":\\\"-", "figures: hours: -"),
        ("currency\\\":\\\"EUR", "currency\\\":\\\"euro", "figures: currency: `euro`"),
        ("valid_until\\\":\\\"2026", "valid_until\\\":\\\"9999", "figures: valid_until: 9999"),
        ("\"changes\":\"[]\"", "\"changes\":\"[1]\"", "changes: "),
        ("\"address\":\"[", "\"address\":\"", "address: "),
        ("\"program\":\"", "\"program\":true,\"catalogue\":\"", "program: `true` is neither text nor a number"),
    ] {
        let broken = Workshop::new();
        let altered = text.replacen(part, other, 1);
        assert_ne!(altered, text, "{part}");
        broken.shop.write("broken.jsonl", altered);
        let said = broken.book(&["import", "broken.jsonl"], "2026-11-28").refused();
        let line = format!("line {}: ", line_of(part));
        assert!(said.contains(&line) && said.contains(field), "{other}: {said}");
        // Not even an empty book was begun.
        assert!(!broken.shop.path("shop/book.sqlite").exists(), "{other}: a book is there");
    }
}

/// What stands in the database is read no otherwise than what is read in.
#[test]
fn a_view_refuses_what_cannot_be_and_check_names_the_row() {
    for (change, told) in [
        ("UPDATE payment SET amount = 'NaN'", "payment 1: amount: `NaN` is not an amount"),
        (
            "UPDATE payment SET amount = '79228162514264337593543950335'",
            "payment 1: amount: 7922816251426433759354395033",
        ),
        ("UPDATE payment SET day = '2027-02-31'", "payment 1: day: `2027-02-31`"),
        ("UPDATE happening SET state = 'sold'", "happening 1: state: `sold`"),
        ("UPDATE work SET minutes = -5", "work 1: minutes: -5 minutes can't be"),
        ("UPDATE work SET minutes = 9e999", "work 1: minutes: inf minutes can't be"),
        ("UPDATE cord_used SET metres = 1e300", "cord_used 1: metres: "),
        ("UPDATE bought SET amount = '1e5'", "bought 1: amount: `1e5`"),
        ("UPDATE entry SET figures = '{}'", "entry 1: figures: missing field"),
    ] {
        let shop = shop();
        // The queue reads what is to be made, and nothing else.
        shop.book(&["mark", "2026-001", "accepted"], "2026-11-27").done();
        crate::sealed::tamper(&shop, change);
        let said = shop.book(&["check"], "2026-11-28").refused();
        assert!(said.contains(told) && said.contains("2026-001: "), "{told}: {said}");
        for view in [&["list"][..], &["show", "2026-001"], &["summary"], &["queue"], &["took"], &["learn"]] {
            let ran = shop.book(view, "2026-11-28");
            assert!(ran.code == Some(2) && !ran.err.contains("panicked"), "{change}: {view:?}: {}", ran.err);
        }
    }
}

/// The greatest figures that can be entered, many times: no view runs over.
#[test]
fn no_view_runs_over() {
    let shop = shop();
    let text = exported(&shop).replacen("\"form\":4", "\"form\":2", 1);
    let rows = text.lines().filter(|line| !line.contains("\"in\":\"seal\"") && !line.contains("\"in\":\"timer\""));
    let mut text = rows.collect::<Vec<_>>().join("\n");
    let most = "1000000000";
    for figure in ["net", "gross", "deposit", "paid", "material", "cord_cost", "labour", "cost", "fees", "margin"] {
        text = replaced_figure(&text, figure, if figure == "margin" { "-1000000000" } else { most });
    }
    text = replaced_figure(&text, "hours", "0.000001");
    text = replaced_figure(&text, "sure_hours", "10000000");
    let mut rows = vec![text];
    let mut row = |value: serde_json::Value| rows.push(value.to_string());
    for id in 2..400 {
        let of = |table: &str, amount: &str| json!({ "in": table, "id": id, "commission": 1, "day": "2026-11-26", "amount": amount });
        row(of("payment", most));
        let mut bought = of("bought", &format!("-{most}"));
        bought["what"] = "x".into();
        row(bought);
        row(json!({ "in": "work", "id": id, "commission": 1, "day": "2026-11-26", "minutes": 100_000 }));
        row(
            json!({ "in": "cord_used", "id": id, "commission": 1, "day": "2026-11-26", "cord": "cotton-3-ecru", "metres": 1_000_000 }),
        );
    }
    for (id, state) in (2..).zip(["accepted", "on-bench", "finished"]) {
        row(json!({ "in": "happening", "id": id, "commission": 1, "day": "2026-11-27", "state": state }));
    }
    let text = rows.join("\n");
    let other = Workshop::new();
    other.shop.write("most.jsonl", text);
    other.book(&["import", "most.jsonl"], "2026-11-28").done();
    for view in
        [&["list"][..], &["show", "2026-001"], &["summary"], &["queue"], &["took"], &["took", "2026-001"], &["learn"]]
    {
        let ran = other.book(view, "2026-11-28");
        assert!(matches!(ran.code, Some(0 | 2)) && !ran.err.contains("panicked"), "{view:?}: {}", ran.err);
    }
    assert!(
        other.book(&["show", "2026-001"], "2026-11-28").done().contains("398,000,000,009.00"),
        "all payments count"
    );
}

/// A text with another value of one of a quote's figures.
fn replaced_figure(text: &str, figure: &str, value: &str) -> String {
    let key = format!("\\\"{figure}\\\":\\\"");
    let start = text.find(&key).unwrap_or_else(|| panic!("{figure}")) + key.len();
    let end = start + text[start..].find("\\\"").unwrap();
    format!("{}{value}{}", &text[..start], &text[end..])
}

#[test]
fn days_are_possible_ones() {
    let shop = Workshop::with_orders(2);
    shop.book(&["enquire", "order-0"], "2020-11-20").done();
    let refused = |words: &[&str], on: &str, told: &str| {
        let said = shop.book(words, on).refused();
        assert!(said.contains(told), "{told}: {said}");
    };
    refused(&["issue", "order-0"], "2020-11-19", "it is before 2020-11-20, since when it is enquiry");
    shop.book(&["issue", "order-0"], "2020-11-25").done();
    refused(&["mark", "2020-001", "accepted"], "2020-11-24", "it is before 2020-11-25, since when it is quoted");
    shop.book(&["mark", "2020-001", "accepted"], "2020-11-26").done();
    for words in [&["pay", "2020-001", "1.00"][..], &["log", "2020-001", "--minutes", "5"]] {
        refused(words, "2020-11-19", "it is before 2020-11-20, when it was first asked about");
        refused(words, "9999-01-01", "days of the book are of the years 2000 to 2199");
        refused(words, "0001-01-01", "days of the book are of the years 2000 to 2199");
        // A deposit may be entered late.
        shop.book(words, "2020-11-20").done();
    }
    refused(&["enquire", "order-1"], "9999-12-31", "2000 to 2199");
    refused(&["issue", "order-1"], "2199-12-31", "valid_until");
    shop.sound();
    // After today only on a word. The clock is the machine's, so the days are reckoned from it.
    let today = Local::now().date_naive();
    let run =
        |words: &[&str], on: String| shop.shop.run(&[&["book"], words, &["--on", &on, "--shop", "shop"]].concat());
    let later = (today + Days::new(3)).to_string();
    for words in [
        &["pay", "2020-001", "1.00"][..],
        &["log", "2020-001", "--minutes", "5"],
        &["mark", "2020-001", "on-bench"],
        &["enquire", "order-1"],
        &["issue", "order-1"],
        &["undo", "2020-001", "4", "--why", "a slip"],
    ] {
        let said = run(words, later.clone()).refused();
        assert!(said.contains(&format!("{later} is after today")) && said.contains("--ahead"), "{said}");
    }
    run(&["list"], later.clone()).done();
    run(&["pay", "2020-001", "1.00"], today.to_string()).done();
    run(&["pay", "2020-001", "2.00", "--ahead"], later).done();
    shop.sound();
}

/// A library that is asked directly refuses what the command line would.
#[test]
fn the_book_itself_refuses_what_cannot_be() {
    let shop = shop();
    let mut book = Book::open(&shop.shop.path("shop/book.sqlite"), false).unwrap().book;
    let day = |text: &str| text.parse().unwrap();
    let most = rust_decimal::Decimal::MAX;
    assert!(book.pay("2026-001", most, day("2026-11-27"), None).is_err());
    assert!(book.pay("2026-001", rust_decimal::Decimal::ONE, day("9999-01-01"), None).is_err());
    let line = |minutes| reeve_book::WorkLine { day: day("2026-11-27"), step: None, minutes, note: None };
    for minutes in [-5.0, f64::NAN, f64::INFINITY, 1e300] {
        let took = reeve_book::Actuals { work: vec![line(minutes)], ..Default::default() };
        assert!(book.log("2026-001", &took, day("2026-11-27")).is_err());
    }
    assert!(book.check(|_, _| None).unwrap().is_empty());
}
