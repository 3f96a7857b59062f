//! What is on the bench, what is next, when each will be done and whether each promise holds.

use chrono::NaiveDate;
use reeve_book::{BookedCommission, State};
use reeve_costing::calendar::{Calendar, Passing, Ready, Waiting, days_in_all, in_hours, lay, minutes_left};
use reeve_costing::rates::Rates;
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use schemars::JsonSchema;
use serde::Serialize;

use super::FORM;
use super::table::{BookPage, TextTable, figures, words as text};
use crate::words::Words;

/// Accepted work in its order, laid on the days from a day on.
#[derive(Debug, Clone, PartialEq)]
pub struct Queue {
    /// The day it begins.
    pub day: NaiveDate,
    /// Bench hours of a week.
    pub weekly: Decimal,
    /// Each commission with its hours left and when it will be done: what is on the bench first, then by acceptance.
    pub works: Vec<(BookedCommission, Waiting, Ready)>,
}

impl Queue {
    /// Bench hours that wait in all, to a ten-thousandth.
    pub fn hours(&self) -> Decimal {
        in_hours(self.works.iter().map(|(_, waiting, _)| waiting.minutes).sum())
    }

    /// When one more commission is ready that waits behind all of them, of so many bench hours and promised for a day.
    pub fn ready_behind(&self, hours: Decimal, promised: Option<NaiveDate>, rates: &Rates) -> Option<Ready> {
        let begin = Some(rates.calendar.begin(self.day));
        let last = Waiting { minutes: minutes_left(hours, Decimal::ZERO), begin, promised };
        let all: Vec<Waiting> = self.works.iter().map(|(_, waiting, _)| waiting.clone()).chain([last]).collect();
        lay(&rates.calendar, self.weekly, self.day, &all).pop()
    }
}

/// Lays the accepted work of a book on the days.
pub fn queue(commissions: &[BookedCommission], day: NaiveDate, weekly: Decimal, rates: &Rates) -> Queue {
    let mut works: Vec<&BookedCommission> = commissions.iter().filter(|one| one.state.is_to_be_made()).collect();
    works.sort_by_key(|one| (one.state != State::OnBench, one.accepted));
    let waiting: Vec<Waiting> = works.iter().map(|one| waiting(one, &rates.calendar)).collect();
    let laid = lay(&rates.calendar, weekly, day, &waiting);
    let works = works.into_iter().cloned().zip(waiting).zip(laid);
    Queue { day, weekly, works: works.map(|((one, waiting), ready)| (one, waiting, ready)).collect() }
}

/// The time that suffices less that logged.
fn waiting(one: &BookedCommission, calendar: &Calendar) -> Waiting {
    let done = Decimal::from_f64(one.minutes).unwrap_or_default().round_dp(6);
    let figures = one.quoted.as_ref().map(|(_, figures)| figures);
    let asked = figures.map_or(Decimal::ZERO, |figures| figures.sure_hours);
    let not_begun = one.state != State::OnBench && one.minutes <= 0.0;
    Waiting {
        minutes: minutes_left(asked, done),
        begin: one.accepted.filter(|_| not_begun).map(|day| calendar.begin(day)),
        promised: figures.and_then(|figures| figures.promised),
    }
}

/// Days that pass beside the bench, in words: "3 days for drying, 2 for post".
pub fn passing_words(passing: &[Passing]) -> String {
    let part = |part: &Passing| format!("{} for {}", part.days, part.what);
    passing.iter().map(part).collect::<Vec<_>>().join(", ")
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
    page.fact("Hours waiting", words.hours(queue.hours().round_dp(2)));
    let columns = [
        text("Number", 14),
        text("Stands", 14),
        figures("Hours left", 12),
        figures("Ready", 13),
        figures("Promised", 13),
        figures("Holds", 14),
    ];
    let mut table = TextTable::new("", &columns, "Nothing is waiting.");
    for (one, waiting, ready) in &queue.works {
        let day = |day: Option<NaiveDate>| day.map(|day| day.to_string());
        let holds = match waiting.promised {
            None => String::new(),
            Some(_) => ready.missed.map_or_else(|| "yes".to_owned(), |missed| late_words(missed.days)),
        };
        table.row(
            vec![
                one.name().to_owned(),
                one.state.to_string(),
                words.hours(waiting.hours().round_dp(2)),
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
            .map(|(one, waiting, ready)| WaitingJson {
                number: one.name().to_owned(),
                state: one.state.word(),
                hours_left: waiting.hours().normalize(),
                ready: ready.on,
                promised: waiting.promised,
                holds: waiting.promised.map(|_| ready.missed.is_none()),
                hours_short: ready.missed.map_or(Decimal::ZERO, |missed| missed.hours.round_dp(4).normalize()),
            })
            .collect(),
    }
}
