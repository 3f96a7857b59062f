//! When work is ready: whole weeks of odd hours, and the days beside the bench.

use chrono::NaiveDate;
use serde_json::Value;

use crate::workshop::Workshop;

/// 10 h over three days a week, no days beside the bench but one, hours that are never doubted: a commission of so many
/// minutes, promised for a day and accepted on the Sunday before Monday 7 December 2026.
fn accepted(minutes: u32, promised: &str) -> Workshop {
    let shop = Workshop::new();
    let rates = std::fs::read_to_string(shop.shop.path("shop/shop.toml")).unwrap();
    let (before, _) = rates.split_once("# My days at the bench").unwrap();
    let rates = before
        .replace("weekly-hours = 27", "weekly-hours = 10")
        .replace("pace-spread = \"12 %\"", "pace-spread = \"0 %\"");
    let calendar = "[calendar]\ndays = [\"monday\", \"wednesday\", \"friday\"]\nlead-days = { \"the yes\" = 1 }\n";
    shop.shop.write("shop/shop.toml", format!("{rates}{calendar}"));
    let text = format!(
        "[commission]\ntitle = \"Mending\"\nclient = \"Ada Quay\"\npromised = {promised}\n\n\
         [[line]]\ntext = \"Mending\"\nunit-price = \"400.00\"\nminutes = {minutes}\n"
    );
    shop.shop.write("shop/commissions/mending.toml", text);
    shop.book(&["issue", "mending"], "2026-12-05").done();
    shop.book(&["mark", "2026-001", "accepted"], "2026-12-06").done();
    shop
}

fn row(shop: &Workshop, on: &str) -> Value {
    shop.json(&["queue"], on)["works"][0].clone()
}

fn day(value: &Value) -> NaiveDate {
    value.as_str().unwrap().parse().unwrap()
}

#[test]
fn a_week_of_hours_takes_a_week_and_keeps_its_promise() {
    let shop = accepted(600, "2026-12-11");
    let one = row(&shop, "2026-12-07");
    assert_eq!((&one["ready"], &one["holds"], &one["hours_short"]), (&"2026-12-11".into(), &true.into(), &"0".into()));
    // A third of it is logged to the minute: one day less.
    shop.book(&["log", "2026-001", "--minutes", "200"], "2026-12-07").done();
    assert_eq!(row(&shop, "2026-12-07")["ready"], "2026-12-09");
    // A minute more than the week holds is a minute too much.
    let shop = accepted(601, "2026-12-11");
    let one = row(&shop, "2026-12-07");
    assert_eq!((&one["ready"], &one["holds"]), (&"2026-12-14".into(), &false.into()));
    let page = shop.book(&["queue"], "2026-12-07").done();
    assert!(page.contains("3 days late"), "{page}");
}

/// The row says that a promise holds exactly when it is ready by then.
#[test]
fn ready_and_holds_are_one_thing() {
    for minutes in [200, 400, 600, 601] {
        for promised in ["2026-12-07", "2026-12-09", "2026-12-11", "2026-12-14"] {
            let one = row(&accepted(minutes, promised), "2026-12-07");
            let holds = day(&one["ready"]) <= day(&one["promised"]);
            assert_eq!(one["holds"], holds, "{one}");
            assert_eq!(one["hours_short"] == "0", holds, "{one}");
        }
    }
}

#[test]
fn days_beside_the_bench_are_counted_and_said() {
    let shop = Workshop::new();
    shop.order("fobs", "Ada Quay", 1);
    let told = |shop: &Workshop| {
        let ran = shop.shop.run(&["quote", "fobs", "--on", "2026-11-24", "--shop", "shop"]);
        let line = ran.err.lines().find(|line| line.contains("honestly")).unwrap_or_default();
        line.to_owned()
    };
    shop.book(&["enquire", "fobs"], "2026-11-24").done();
    // From Tuesday 24 November 3 and 2 days before, so at the bench on Tuesday 1 December, Sunday and Monday being none; and
    // 2 days after.
    let line = told(&shop);
    assert!(line.contains("ready by 3 December 2026 "), "{line}");
    for words in ["3 for the deposit to arrive", "2 for cord to come", "after the last, 2 for airing and delivery"] {
        assert!(line.contains(words), "{words}: {line}");
    }
    shop.book(&["issue", "fobs"], "2026-11-24").done();
    shop.book(&["mark", "2026-001", "accepted"], "2026-11-24").done();
    let queue = shop.json(&["queue"], "2026-11-24");
    assert_eq!((&queue["lead_days"], &queue["after_days"]), (&5.into(), &2.into()));
    assert_eq!(queue["works"][0]["ready"], "2026-12-03");
    let page = shop.book(&["queue"], "2026-11-24").done();
    let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(page.contains("first knot: 3 for the deposit to arrive, 2 for cord to come."), "{page}");
    // Once it is on the bench nothing is waited for any more.
    shop.book(&["mark", "2026-001", "on-bench"], "2026-11-24").done();
    assert_eq!(shop.json(&["queue"], "2026-11-24")["works"][0]["ready"], "2026-11-26");
    // A shop that says nothing still begins nothing on the day it is asked.
    let other = Workshop::new();
    other.order("fobs", "Ada Quay", 1);
    let rates = std::fs::read_to_string(other.shop.path("shop/shop.toml")).unwrap();
    let (before, _) = rates.split_once("# Days that pass beside the bench").unwrap();
    other.shop.write("shop/shop.toml", before);
    other.book(&["enquire", "fobs"], "2026-11-24").done();
    let line = told(&other);
    assert!(line.contains("ready by 25 November 2026 (days before the first knot: 1 for the client's yes)"), "{line}");
}
