//! What is on the bench, what is next, when each will be done and whether each promise holds.

use chrono::NaiveDate;
use reeve_costing::calendar::{Calendar, Missed, Passing, days_in_all};
use reeve_costing::money::{to_decimals, up_to_decimals};
use reeve_costing::rates::Rates;
use reeve_office::{Deadline, Queue, QueuedWork, WhenReady};
use rust_decimal::Decimal;
use serde::Serialize;

use super::table::{BookPage, TextTable, figures, text};
use super::{FORM, state_words};
use crate::phrases::say;
use crate::words::Words;

/// Days that pass beside the bench, in words: "3 for drying, 2 for post".
fn passing_words(passing: &[Passing], words: &Words) -> String {
    let part = |part: &Passing| say!(words, "queue-passing", days = part.days, what = part.what.as_str());
    passing.iter().map(part).collect::<Vec<_>>().join(", ")
}

/// When a commission can be ready, in words: the day, and the days asked or promised that can't be kept.
pub fn ready_words(when: &WhenReady, calendar: &Calendar, words: &Words) -> Vec<String> {
    let day = when.on.map(|day| ready_on(day, when, calendar, words));
    let missed = when.missed.iter().map(|one| {
        let (day, missed) = (words.date(one.day), missed_words(&one.missed, words));
        match one.kind {
            Deadline::NeededBy => say!(words, "ready-needed-by", day = day, missed = missed),
            Deadline::Promised => say!(words, "ready-promised", day = day, missed = missed),
        }
    });
    day.into_iter().chain(missed).collect()
}

/// The day it is ready, with what that counts besides its own hours.
fn ready_on(day: NaiveDate, when: &WhenReady, calendar: &Calendar, words: &Words) -> String {
    let (day, behind, lead) = (words.date(day), when.behind, passing_words(&calendar.lead, words));
    if calendar.after.is_empty() {
        return say!(words, "ready-on", day = day, behind = behind, lead = lead);
    }
    let after = passing_words(&calendar.after, words);
    say!(words, "ready-on-and-after", day = day, behind = behind, lead = lead, after = after)
}

/// By how much a day is missed.
fn missed_words(missed: &Missed, words: &Words) -> String {
    // Up: a promise that is missed by a minute is not missed by nothing.
    let hours = words.number(up_to_decimals(missed.hours, 1));
    match missed.days {
        Some(days) => say!(words, "ready-late", count = days, hours = hours),
        None => say!(words, "ready-short", hours = hours),
    }
}

/// What the days of a queue count, for the foot of its page.
fn counted(calendar: &Calendar, words: &Words) -> String {
    let lead = say!(words, "queue-lead", days = passing_words(&calendar.lead, words));
    let after = if calendar.after.is_empty() {
        say!(words, "queue-no-after")
    } else {
        say!(words, "queue-after", days = passing_words(&calendar.after, words))
    };
    format!("{lead} {after}")
}

/// Words a queue.
pub fn queue_page(queue: &Queue, rates: &Rates, words: &Words) -> BookPage {
    let mut page = BookPage::new(say!(words, "queue"), "", rates);
    page.fact(say!(words, "queue-from"), words.date(queue.day));
    page.fact(say!(words, "queue-weekly"), words.hours(queue.weekly));
    page.fact(say!(words, "queue-waiting"), words.hours(queue.hours()));
    let columns = vec![
        text(say!(words, "book-number"), 14),
        text(say!(words, "book-stands"), 14),
        figures(say!(words, "queue-hours-left"), 12),
        figures(say!(words, "queue-ready"), 13),
        figures(say!(words, "queue-promised"), 13),
        figures(say!(words, "queue-holds"), 14),
    ];
    let mut table = TextTable::new(String::new(), columns, say!(words, "queue-empty"));
    for QueuedWork { commission: one, waiting, ready } in &queue.works {
        let day = |day: Option<NaiveDate>| day.map(|day| day.to_string());
        let holds = match waiting.promised {
            None => String::new(),
            Some(_) => {
                ready.missed.map_or_else(|| say!(words, "queue-holds-yes"), |missed| late_words(missed.days, words))
            }
        };
        table.row(
            vec![
                one.name().to_owned(),
                state_words(one.state, words),
                words.hours(waiting.hours()),
                day(ready.on).unwrap_or_else(|| say!(words, "queue-never")),
                day(waiting.promised).unwrap_or_default(),
                holds,
            ],
            format!("{}: {}", one.client.name, one.title),
        );
    }
    page.tables.push(table);
    page.after.push(say!(words, "queue-note"));
    page.after.push(counted(&rates.calendar, words));
    page
}

fn late_words(days: Option<u64>, words: &Words) -> String {
    match days {
        Some(days) => say!(words, "queue-late", count = days),
        None => say!(words, "queue-holds-no"),
    }
}

/// The queue, for other programs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
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
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
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
