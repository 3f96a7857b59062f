//! A book of ten thousand commissions: list and summary, the whole program started anew.
//!
//! Not in criterion's harness: it is a whole run that a maker waits for.

#![allow(clippy::unwrap_used, reason = "a benchmark stops at the first surprise")]
#![allow(clippy::print_stdout, reason = "its figures are its result")]

use std::fmt::Write;
use std::time::{Duration, Instant};

use reeve_tests::TestShop;
use serde_json::{Value, json};

const COMMISSIONS: usize = 10_000;
const ROUNDS: usize = 15;
/// A page of a quote is about as long.
const PAGE: usize = 12_000;

/// The text of a book, some half of its commissions finished.
fn text() -> String {
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
    let all = || 1..=COMMISSIONS;
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
        for state in ["quoted", "accepted", "on-bench", "finished", "delivered"].iter().take(id % 5 + 1) {
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

fn main() {
    let shop = TestShop::starter();
    shop.write("book.jsonl", text());
    shop.run(&["book", "import", "book.jsonl", "--shop", "shop"]).done();
    for words in [
        &["list", "--as", "csv"][..],
        &["list", "--as", "text"],
        &["list", "--as", "html"],
        &["summary"],
        &["queue"],
        &["show", "2026-5000"],
        &["check"],
    ] {
        let run = || {
            let start = Instant::now();
            shop.run(&[&["book"], words, &["--on", "2027-01-01", "--shop", "shop"]].concat()).done();
            start.elapsed()
        };
        println!(
            "{COMMISSIONS} commissions, book {}: {:.0?}",
            words.join(" "),
            median((0..ROUNDS).map(|_| run()).collect())
        );
    }
}
