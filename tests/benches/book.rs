//! A growing book: what the program takes with none, ten thousand and a hundred thousand commissions in it, twenty of them to be
//! made; the whole program started anew.
//!
//! Not in criterion's harness: it is a whole run that a maker waits for.

#![allow(clippy::unwrap_used, reason = "a benchmark stops at the first surprise")]
#![allow(clippy::print_stdout, reason = "its figures are its result")]

use std::fmt::Write;
use std::time::{Duration, Instant};

use reeve_tests::TestShop;
use serde_json::{Value, json};

const SIZES: [usize; 3] = [0, 10_000, 100_000];
const ROUNDS: usize = 9;
/// So many are agreed and not made yet, whatever the size.
const TO_BE_MADE: usize = 20;
/// A page of a quote is some times as long; pages are not read by what is timed.
const PAGE: usize = 2_000;
/// How a commission goes that is not to be made any more.
const ENDS: [&[&str]; 5] = [
    &["quoted"],
    &["quoted", "declined"],
    &["quoted", "accepted", "on-bench", "finished", "delivered", "paid"],
    &["quoted", "accepted", "cancelled"],
    &["quoted", "accepted", "on-bench", "finished"],
];

/// The text of a book of so many commissions.
fn text(commissions: usize) -> String {
    let figures = json!({
        "currency": "EUR", "net": "20.00", "gross": "24.00", "deposit": "9.60", "paid": "0", "pace": "1.1", "hours": "0.42",
        "sure_hours": "0.46", "confidence": "80", "material": "1.20", "cord_cost": "0.80", "labour": "10.10",
        "cost": "14.45", "fees": "1.20", "margin": "4.35", "cord": [["cotton-3-ecru", "2.4"]],
        "valid_until": "2027-12-24", "promised": null, "needed_by": null
    })
    .to_string();
    let mut text = json!({ "book": "reeve order book", "form": 2 }).to_string() + "\n";
    let mut row = |value: Value| writeln!(text, "{value}").unwrap();
    let day = |id: usize| format!("2026-{:02}-11", id % 12 + 1);
    let all = || 1..=commissions;
    all().for_each(|id| row(json!({ "in": "client", "id": id, "name": format!("Client {id}"), "address": "[]" })));
    for id in all() {
        let number = format!("2026-{id:03}");
        row(json!({ "in": "commission", "id": id, "reference": format!("order-{id}"), "title": "Fobs", "client": id,
            "year": 2026, "running": id, "number": number }));
    }
    for id in all() {
        row(
            json!({ "in": "entry", "id": id, "commission": id, "revision": 0, "client": id, "day": day(id), "valid_until": "2027-12-24",
            "figures": figures, "program": "0", "catalogue": "0", "changes": "[]", "maker_changes": "[]" }),
        );
    }
    for id in all() {
        row(json!({ "in": "page", "entry": id, "name": "quote.json", "text": "{}" }));
        row(json!({ "in": "page", "entry": id, "name": "quote.html", "text": "x".repeat(PAGE) }));
    }
    let mut happened = 0;
    for id in all() {
        let waits = id % (commissions / TO_BE_MADE) == 0;
        for state in if waits { &["quoted", "accepted"] } else { ENDS[id % ENDS.len()] } {
            happened += 1;
            row(json!({ "in": "happening", "id": happened, "commission": id, "state": state, "day": day(id) }));
        }
    }
    all().for_each(|id| row(json!({ "in": "payment", "id": id, "commission": id, "day": day(id), "amount": "9.60" })));
    all().for_each(|id| row(json!({ "in": "work", "id": id, "commission": id, "day": day(id), "minutes": 25.0 })));
    text
}

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort_unstable();
    times[times.len() / 2]
}

/// Takes back what was issued, so that each round enters the same.
fn median_of(shop: &TestShop, words: &[&str]) -> Duration {
    let book = shop.path("shop/book.sqlite");
    let kept = std::fs::read(&book).unwrap();
    let round = |_| {
        let start = Instant::now();
        shop.run(&[words, &["--on", "2027-01-01", "--shop", "shop"]].concat()).done();
        let took = start.elapsed();
        if words.contains(&"issue") {
            std::fs::write(&book, &kept).unwrap();
        }
        took
    };
    median((0..ROUNDS).map(round).collect())
}

fn main() {
    let commands: [&[&str]; 6] = [
        &["quote", "reading-room"],
        &["book", "issue", "thwickling", "--ahead"],
        &["book", "queue"],
        &["book", "list"],
        &["book", "show", "thwickling"],
        &["book", "summary"],
    ];
    let mut before: Option<Vec<Duration>> = None;
    for size in SIZES {
        let shop = TestShop::starter();
        if size > 0 {
            shop.write("book.jsonl", text(size));
            shop.run(&["book", "import", "book.jsonl", "--shop", "shop"]).done();
        }
        shop.run(&["book", "enquire", "thwickling", "--on", "2026-12-31", "--ahead", "--shop", "shop"]).done();
        let took: Vec<Duration> = commands.iter().map(|words| median_of(&shop, words)).collect();
        let none = before.get_or_insert_with(|| took.clone());
        for ((words, took), none) in commands.iter().zip(&took).zip(none) {
            let words = words.join(" ");
            println!(
                "{size:>6} commissions: {words:<34} {took:>9.1?}, {:+.1?} ms",
                (took.as_secs_f64() - none.as_secs_f64()) * 1e3
            );
        }
    }
}
