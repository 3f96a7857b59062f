//! What is on the bench, what is next, when each will be done and whether each promise holds.

use chrono::NaiveDate;
use reeve_book::{Commission, State};
use reeve_costing::calendar::{Ready, Waiting, lay};
use reeve_costing::rates::Rates;
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use schemars::JsonSchema;
use serde::Serialize;

use super::FORM;
use super::table::{BookPage, Table, figures, words as text};
use crate::words::Words;

/// Accepted work in its order, laid on the days from a day on.
#[derive(Debug, Clone, PartialEq)]
pub struct Queue {
    /// The day it begins.
    pub day: NaiveDate,
    /// Bench hours of a week.
    pub weekly: Decimal,
    /// Each commission with its hours left and when it will be done: what is on the bench first, then by acceptance.
    pub works: Vec<(Commission, Waiting, Ready)>,
}

impl Queue {
    /// Bench hours that wait in all.
    pub fn hours(&self) -> Decimal {
        self.works.iter().map(|(_, waiting, _)| waiting.hours).sum()
    }
}

/// Lays the accepted work of a book on the days.
pub fn queue(commissions: &[Commission], day: NaiveDate, weekly: Decimal, rates: &Rates) -> Queue {
    let mut works: Vec<&Commission> = commissions.iter().filter(|one| one.state.is_to_be_made()).collect();
    works.sort_by_key(|one| (one.state != State::OnBench, one.accepted));
    let waiting: Vec<Waiting> = works.iter().map(|one| waiting(one)).collect();
    let laid = lay(&rates.calendar, weekly, day, &waiting);
    let works = works.into_iter().cloned().zip(waiting).zip(laid);
    Queue { day, weekly, works: works.map(|((one, waiting), ready)| (one, waiting, ready)).collect() }
}

/// The hours that suffice less those logged.
fn waiting(one: &Commission) -> Waiting {
    let done = Decimal::from_f64(one.minutes / 60.0).unwrap_or_default().round_dp(4);
    let figures = one.quoted.as_ref().map(|(_, figures)| figures);
    Waiting {
        hours: (figures.map_or(Decimal::ZERO, |figures| figures.sure_hours) - done).max(Decimal::ZERO),
        promised: figures.and_then(|figures| figures.promised),
    }
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
    let mut table = Table::new("", &columns, "Nothing is waiting.");
    for (one, waiting, ready) in &queue.works {
        let day = |day: Option<NaiveDate>| day.map(|day| day.to_string());
        let holds = match waiting.promised {
            None => String::new(),
            Some(_) if ready.short.is_zero() => "yes".to_owned(),
            Some(_) => format!("{} short", words.hours(ready.short.round_dp(1))),
        };
        table.row(
            vec![
                one.name().to_owned(),
                one.state.to_string(),
                words.hours(waiting.hours.round_dp(2)),
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
    page
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
    /// Its last day at the bench; nothing beyond ten years.
    pub ready: Option<NaiveDate>,
    /// When it is promised.
    pub promised: Option<NaiveDate>,
    /// Bench hours by which the promise is missed.
    pub hours_short: Decimal,
}

/// The queue, for other programs.
pub fn queue_json(queue: &Queue) -> QueueJson {
    QueueJson {
        form: FORM,
        day: queue.day,
        weekly_hours: queue.weekly,
        works: queue
            .works
            .iter()
            .map(|(one, waiting, ready)| WaitingJson {
                number: one.name().to_owned(),
                state: one.state.word(),
                hours_left: waiting.hours.normalize(),
                ready: ready.on,
                promised: waiting.promised,
                hours_short: ready.short.round_dp(4).normalize(),
            })
            .collect(),
    }
}
