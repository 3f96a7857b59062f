//! When work can be ready: bench hours laid on the days of a calendar.

use chrono::{Datelike, Days, NaiveDate, Weekday};
use rust_decimal::Decimal;

/// Days at the bench, and days off.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Calendar {
    /// Days of the week at the bench; at least one.
    pub days: Vec<Weekday>,
    /// Days off: first and last of each stretch.
    pub off: Vec<(NaiveDate, NaiveDate)>,
}

impl Default for Calendar {
    /// Monday to Friday, without a holiday.
    fn default() -> Self {
        let days = vec![Weekday::Mon, Weekday::Tue, Weekday::Wed, Weekday::Thu, Weekday::Fri];
        Self { days, off: Vec::new() }
    }
}

/// Nobody waits longer; it ends a search where holidays never do.
const MOST_DAYS: u64 = 3660;

impl Calendar {
    /// Whether a day is one at the bench.
    pub fn is_at_bench(&self, day: NaiveDate) -> bool {
        self.days.contains(&day.weekday()) && !self.off.iter().any(|(from, to)| (*from..=*to).contains(&day))
    }

    /// The day on which so many bench hours are done, begun on a day, at so many hours a week spread evenly over the days
    /// at the bench. `None` beyond ten years.
    pub fn done(&self, from: NaiveDate, hours: Decimal, weekly: Decimal) -> Option<NaiveDate> {
        days_from(from)
            .scan(hours, |left, day| {
                *left -= self.hours_on(day, weekly);
                Some((day, *left))
            })
            .find(|(day, left)| *left <= Decimal::ZERO && (self.is_at_bench(*day) || hours <= Decimal::ZERO))
            .map(|(day, _)| day)
    }

    /// Bench hours from one day to another, both counted.
    pub fn hours_between(&self, from: NaiveDate, to: NaiveDate, weekly: Decimal) -> Decimal {
        days_from(from).take_while(|day| *day <= to).map(|day| self.hours_on(day, weekly)).sum()
    }

    fn hours_on(&self, day: NaiveDate, weekly: Decimal) -> Decimal {
        if self.is_at_bench(day) { weekly / Decimal::from(self.days.len().max(1)) } else { Decimal::ZERO }
    }
}

fn days_from(from: NaiveDate) -> impl Iterator<Item = NaiveDate> {
    (0..MOST_DAYS).map_while(move |days| from.checked_add_days(Days::new(days)))
}

/// Work that waits, in its order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Waiting {
    /// Bench hours left.
    pub hours: Decimal,
    /// The day it is promised for.
    pub promised: Option<NaiveDate>,
}

/// When work will be done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ready {
    /// Its last day at the bench; `None` beyond ten years.
    pub on: Option<NaiveDate>,
    /// Bench hours by which the promise is missed; zero if it holds or there is none.
    pub short: Decimal,
}

/// Lays work on the days, one after the other from a day on.
pub fn lay(calendar: &Calendar, weekly: Decimal, from: NaiveDate, waiting: &[Waiting]) -> Vec<Ready> {
    let mut before = Decimal::ZERO;
    let ready = |work: &Waiting| {
        before += work.hours;
        let short = work
            .promised
            .map_or(Decimal::ZERO, |day| (before - calendar.hours_between(from, day, weekly)).max(Decimal::ZERO));
        Ready { on: calendar.done(from, before, weekly), short }
    };
    waiting.iter().map(ready).collect()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn day(month: u32, day: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(2027, month, day).unwrap()
    }

    fn tuesdays_to_fridays() -> Calendar {
        Calendar {
            days: vec![Weekday::Tue, Weekday::Wed, Weekday::Thu, Weekday::Fri],
            off: vec![(day(3, 10), day(3, 16))],
        }
    }

    #[test]
    fn hours_are_laid_on_days_at_the_bench() {
        // 24 hours a week are six a day. 1 March 2027 is a Monday (ISO 8601).
        let (calendar, weekly) = (tuesdays_to_fridays(), Decimal::from(24));
        let done = |hours: i64| calendar.done(day(3, 1), Decimal::from(hours), weekly).unwrap();
        assert_eq!(done(6), day(3, 2));
        assert_eq!(done(7), day(3, 3));
        assert_eq!(done(24), day(3, 5));
        // The Tuesday after, and then a week off: the Wednesday after that.
        assert_eq!((done(30), done(31)), (day(3, 9), day(3, 17)));
        assert_eq!(calendar.hours_between(day(3, 1), day(3, 17), weekly), Decimal::from(36));
    }

    #[test]
    fn what_comes_later_waits_for_what_comes_first() {
        let work = |hours: i64, promised| Waiting { hours: Decimal::from(hours), promised };
        let waiting = [work(12, Some(day(3, 3))), work(12, Some(day(3, 4))), work(6, None)];
        let laid = lay(&tuesdays_to_fridays(), Decimal::from(24), day(3, 1), &waiting);
        assert_eq!(laid[0], Ready { on: Some(day(3, 3)), short: Decimal::ZERO });
        assert_eq!(laid[1], Ready { on: Some(day(3, 5)), short: Decimal::from(6) });
        assert_eq!(laid[2], Ready { on: Some(day(3, 9)), short: Decimal::ZERO });
    }

    #[test]
    fn a_holiday_without_end_is_no_loop() {
        let calendar = Calendar { off: vec![(NaiveDate::MIN, NaiveDate::MAX)], ..Calendar::default() };
        assert_eq!(calendar.done(day(3, 1), Decimal::ONE, Decimal::from(24)), None);
        assert_eq!(calendar.done(NaiveDate::MAX, Decimal::ONE, Decimal::from(24)), None);
    }

    proptest! {
        #[test]
        fn the_day_it_is_done_is_the_first_with_hours_enough(hours in 1_u32..400, weekly in 1_u32..60, start in 0_u64..200) {
            let (calendar, from) = (tuesdays_to_fridays(), day(1, 1) + Days::new(start));
            let (hours, weekly) = (Decimal::from(hours), Decimal::from(weekly));
            let done = calendar.done(from, hours, weekly).unwrap();
            prop_assert!(calendar.is_at_bench(done));
            prop_assert!(calendar.hours_between(from, done, weekly) >= hours);
            let before = done - Days::new(1);
            prop_assert!(before < from || calendar.hours_between(from, before, weekly) < hours);
        }
    }
}
