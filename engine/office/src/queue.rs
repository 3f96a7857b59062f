//! What is on the bench, what is next, when each will be done and whether each promise holds.

use chrono::NaiveDate;
use reeve_book::{Book, BookError, BookedCommission, State};
use reeve_costing::calendar::{Calendar, Missed, Ready, Waiting, in_hours, lay, minutes_left};
use reeve_costing::money::decimal;
use reeve_costing::rates::Rates;
use reeve_shop::Order;
use rust_decimal::Decimal;

/// Accepted work in its order, laid on the days from a day on.
#[derive(Debug, Clone, PartialEq)]
pub struct Queue {
    /// The day it begins.
    pub day: NaiveDate,
    /// Bench hours of a week.
    pub weekly: Decimal,
    /// What is on the bench first, then by acceptance.
    pub works: Vec<QueuedWork>,
}

/// A commission that is to be made.
#[derive(Debug, Clone, PartialEq)]
pub struct QueuedWork {
    /// The commission.
    pub commission: BookedCommission,
    /// What is left of it.
    pub waiting: Waiting,
    /// When it will be done.
    pub ready: Ready,
}

impl Queue {
    /// Lays the accepted work of a book on the days.
    pub fn of(commissions: &[BookedCommission], day: NaiveDate, weekly: Decimal, rates: &Rates) -> Self {
        let mut works: Vec<&BookedCommission> = commissions.iter().filter(|one| one.state.is_to_be_made()).collect();
        works.sort_by_key(|one| (one.state != State::OnBench, one.accepted));
        let waiting: Vec<Waiting> = works.iter().map(|one| waiting(one, &rates.calendar)).collect();
        let laid = lay(&rates.calendar, weekly, day, &waiting);
        let queued = |((commission, waiting), ready): ((&BookedCommission, Waiting), Ready)| QueuedWork {
            commission: commission.clone(),
            waiting,
            ready,
        };
        Self { day, weekly, works: works.into_iter().zip(waiting).zip(laid).map(queued).collect() }
    }

    /// Bench hours that wait in all, to a ten-thousandth.
    pub fn hours(&self) -> Decimal {
        in_hours(self.works.iter().map(|work| work.waiting.minutes).sum())
    }

    /// When one more commission is ready that waits behind all of them, of so many bench hours and promised for a day.
    pub fn ready_behind(&self, hours: Decimal, promised: Option<NaiveDate>, rates: &Rates) -> Option<Ready> {
        let begin = Some(rates.calendar.begin(self.day));
        let last = Waiting { minutes: minutes_left(hours, Decimal::ZERO), begin, promised };
        let all: Vec<Waiting> = self.works.iter().map(|work| work.waiting.clone()).chain([last]).collect();
        lay(&rates.calendar, self.weekly, self.day, &all).pop()
    }
}

/// The time that suffices less that logged.
fn waiting(one: &BookedCommission, calendar: &Calendar) -> Waiting {
    let done = decimal(one.minutes, 6);
    let figures = one.quoted.as_ref().map(|(_, figures)| figures);
    let asked = figures.map_or(Decimal::ZERO, |figures| figures.sure_hours);
    let not_begun = one.state != State::OnBench && one.minutes <= 0.0;
    Waiting {
        minutes: minutes_left(asked, done),
        begin: one.accepted.filter(|_| not_begun).map(|day| calendar.begin(day)),
        promised: figures.and_then(|figures| figures.promised),
    }
}

/// When a commission can be ready behind all that waits.
#[derive(Debug, Clone, PartialEq)]
pub struct WhenReady {
    /// The day; `None` beyond ten years.
    pub on: Option<NaiveDate>,
    /// How many were accepted before.
    pub behind: usize,
    /// Days that can't be kept.
    pub missed: Vec<MissedDay>,
}

/// A day that can't be kept.
#[derive(Debug, Clone, PartialEq)]
pub struct MissedDay {
    /// Who named it.
    pub kind: Deadline,
    /// The day.
    pub day: NaiveDate,
    /// By how much it is missed.
    pub missed: Missed,
}

/// Who named a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Deadline {
    /// The client needs it by then.
    NeededBy,
    /// The maker promised it for then.
    Promised,
}

/// When an order can be ready, behind what waits in the book; `None` where the shop does not say its bench hours of a week.
///
/// # Errors
/// When the book can't be read.
pub fn when_ready(book: &Book, order: &Order, rates: &Rates, day: NaiveDate) -> Result<Option<WhenReady>, BookError> {
    let Some(weekly) = rates.weekly_hours else { return Ok(None) };
    let (commission, hours) = (&order.commission, order.priced.sure.outcome.cost.hours);
    let mut others = book.to_be_made(day)?;
    others.retain(|one| one.reference != commission.reference);
    let queue = Queue::of(&others, day, weekly, rates);
    let ready = |promised| queue.ready_behind(hours, promised, rates);
    let missed =
        |(kind, day): (Deadline, Option<NaiveDate>)| Some(MissedDay { kind, day: day?, missed: ready(day)?.missed? });
    let days = [(Deadline::NeededBy, commission.needed_by), (Deadline::Promised, commission.promised)];
    Ok(Some(WhenReady {
        on: ready(None).and_then(|ready| ready.on),
        behind: queue.works.len(),
        missed: days.into_iter().filter_map(missed).collect(),
    }))
}
