//! What is on the bench, what is next, when each will be done and whether each promise holds.

use chrono::NaiveDate;
use reeve_costing::calendar::{Calendar, Passing, days_in_all};
use reeve_costing::money::{to_decimals, up_to_decimals};
use reeve_costing::rates::Rates;
use reeve_costing::takeoff::plural;
use reeve_office::{Deadline, Queue, QueuedWork, WhenReady};
use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::Serialize;

use super::FORM;
use super::table::{BookPage, TextTable, figures, words as text};
use crate::words::Words;

/// Days that pass beside the bench, in words: "3 days for drying, 2 for post".
fn passing_words(passing: &[Passing]) -> String {
    let part = |part: &Passing| format!("{} for {}", part.days, part.what);
    passing.iter().map(part).collect::<Vec<_>>().join(", ")
}

/// When a commission can be ready, in words: the day, and the days asked or promised that can't be kept.
pub fn ready_words(when: &WhenReady, calendar: &Calendar) -> Vec<String> {
    let day = when.on.map(|day| format!("It can honestly be ready by {day}{}.", beside(when, calendar)));
    let missed = when.missed.iter().map(|one| {
        let what = match one.kind {
            Deadline::NeededBy => "The client needs it by",
            Deadline::Promised => "It is promised for",
        };
        let late = one.missed.days.map_or_else(String::new, |days| format!("{} too late, ", plural("day", days)));
        // Up: a promise that is missed by a minute is not missed by nothing.
        let short = up_to_decimals(one.missed.hours, 1).normalize();
        format!("{what} {}: {late}{short} bench hours short.", one.day)
    });
    day.into_iter().chain(missed).collect()
}

/// What the day it is ready counts besides its own hours.
fn beside(when: &WhenReady, calendar: &Calendar) -> String {
    let behind = match when.behind {
        0 => String::new(),
        works => format!(", behind {works} accepted before"),
    };
    let after = if calendar.after.is_empty() {
        String::new()
    } else {
        format!("; after the last, {}", passing_words(&calendar.after))
    };
    format!("{behind} (days before the first knot: {}{after})", passing_words(&calendar.lead))
}

/// What the days of a queue count, for the foot of its page.
fn counted(calendar: &Calendar) -> String {
    let lead = format!("Days from the yes to the first knot: {}.", passing_words(&calendar.lead));
    let after = if calendar.after.is_empty() {
        "None are counted from the last knot until the client has it (`after-days` in shop.toml).".to_owned()
    } else {
        format!("From the last knot until the client has it: {}.", passing_words(&calendar.after))
    };
    format!("{lead} {after}")
}

/// Words a queue.
pub fn queue_page(queue: &Queue, rates: &Rates, words: &Words) -> BookPage {
    let mut page = BookPage::new("On the bench and next", "", rates);
    page.fact("From", words.date(queue.day));
    page.fact("Hours a week", words.hours(queue.weekly));
    page.fact("Hours waiting", words.hours(queue.hours()));
    let columns = [
        text("Number", 14),
        text("Stands", 14),
        figures("Hours left", 12),
        figures("Ready", 13),
        figures("Promised", 13),
        figures("Holds", 14),
    ];
    let mut table = TextTable::new("", &columns, "Nothing is waiting.");
    for QueuedWork { commission: one, waiting, ready } in &queue.works {
        let day = |day: Option<NaiveDate>| day.map(|day| day.to_string());
        let holds = match waiting.promised {
            None => String::new(),
            Some(_) => ready.missed.map_or_else(|| "yes".to_owned(), |missed| late_words(missed.days)),
        };
        table.row(
            vec![
                one.name().to_owned(),
                one.state.to_string(),
                words.hours(waiting.hours()),
                day(ready.on).unwrap_or_else(|| "never".to_owned()),
                day(waiting.promised).unwrap_or_default(),
                holds,
            ],
            format!("{}: {}", one.client.name, one.title),
        );
    }
    page.tables.push(table);
    page.after.push(
        "Hours left are those that suffice with the confidence of the quote, less the hours logged. One piece of work \
         is finished before the next begins."
            .to_owned(),
    );
    page.after.push(counted(&rates.calendar));
    page
}

fn late_words(days: Option<u64>) -> String {
    match days {
        Some(1) => "1 day late".to_owned(),
        Some(days) => format!("{days} days late"),
        None => "no".to_owned(),
    }
}

/// The queue, for other programs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct QueueJson {
    /// Version of this form.
    pub form: u32,
    /// The day it begins.
    pub day: NaiveDate,
    /// Bench hours of a week.
    pub weekly_hours: Decimal,
    /// Days from the yes to the first knot, in all.
    pub lead_days: u64,
    /// Days from the last knot until the client has it, in all.
    pub after_days: u64,
    /// Each commission, in order of the work.
    pub works: Vec<WaitingJson>,
}

/// A commission that waits.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct WaitingJson {
    /// Its number.
    pub number: String,
    /// Where it stands.
    pub state: &'static str,
    /// Bench hours left.
    pub hours_left: Decimal,
    /// The day on which it can be with the client; nothing beyond ten years.
    pub ready: Option<NaiveDate>,
    /// When it is promised.
    pub promised: Option<NaiveDate>,
    /// Whether the promise holds; nothing where there is none.
    pub holds: Option<bool>,
    /// Bench hours by which the promise is missed.
    pub hours_short: Decimal,
}

/// The queue, for other programs.
pub fn queue_json(queue: &Queue, rates: &Rates) -> QueueJson {
    QueueJson {
        form: FORM,
        day: queue.day,
        weekly_hours: queue.weekly,
        lead_days: days_in_all(&rates.calendar.lead),
        after_days: days_in_all(&rates.calendar.after),
        works: queue
            .works
            .iter()
            .map(|QueuedWork { commission: one, waiting, ready }| WaitingJson {
                number: one.name().to_owned(),
                state: one.state.word(),
                hours_left: waiting.hours().normalize(),
                ready: ready.on,
                promised: waiting.promised,
                holds: waiting.promised.map(|_| ready.missed.is_none()),
                hours_short: ready.missed.map_or(Decimal::ZERO, |missed| to_decimals(missed.hours, 4).normalize()),
            })
            .collect(),
    }
}
