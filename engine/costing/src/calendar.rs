//! When work can be ready: bench time laid on the days of a calendar, and the days that pass beside the bench.
//!
//! A week's time is spread evenly over its days at the bench: 10 h over three days are 3 h 20 min, which no decimal holds.
//! So nothing is divided: bench time is counted in minutes times the days of a week at the bench, and is exact.

use crate::money::to_decimals;
use chrono::{Datelike, Days, NaiveDate, Weekday};
use rust_decimal::Decimal;

/// Days at the bench, days off, and days that pass beside the bench.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Calendar {
    /// Days of the week at the bench; at least one, none twice.
    pub days: Vec<Weekday>,
    /// Days off: first and last of each stretch.
    pub off: Vec<(NaiveDate, NaiveDate)>,
    /// What passes from the quote to the first hour at the bench; a day in all at least.
    pub lead: Vec<Passing>,
    /// What passes from the last hour at the bench until the client has it.
    pub after: Vec<Passing>,
}

/// Days of the calendar that pass for something beside the bench.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Passing {
    /// What for, in the maker's words.
    pub what: String,
    /// How many: each day counts, at the bench or not.
    pub days: u32,
}

/// Days of several in all.
pub fn days_in_all(passing: &[Passing]) -> u64 {
    passing.iter().map(|passing| u64::from(passing.days)).sum()
}

impl Default for Calendar {
    /// Monday to Friday, without a holiday, and a day for the client to say yes.
    fn default() -> Self {
        let days = vec![Weekday::Mon, Weekday::Tue, Weekday::Wed, Weekday::Thu, Weekday::Fri];
        Self { days, off: Vec::new(), lead: Self::usual_lead(), after: Vec::new() }
    }
}

/// Nobody waits longer; it ends a search where holidays never do.
const MOST_DAYS: u64 = 3660;

impl Calendar {
    /// What passes before the work begins where the shop does not say: nothing is begun on the day that it is quoted.
    pub fn usual_lead() -> Vec<Passing> {
        vec![Passing { what: "the client's yes".to_owned(), days: 1 }]
    }

    /// Whether a day is one at the bench.
    pub fn is_at_bench(&self, day: NaiveDate) -> bool {
        self.days.contains(&day.weekday()) && !self.off.iter().any(|(from, to)| (*from..=*to).contains(&day))
    }

    /// The first day on which work can be at the bench that is agreed on a day.
    pub fn begin(&self, agreed: NaiveDate) -> NaiveDate {
        agreed.checked_add_days(Days::new(days_in_all(&self.lead))).unwrap_or(NaiveDate::MAX)
    }
}

fn days_from(from: NaiveDate) -> impl Iterator<Item = NaiveDate> {
    (0..MOST_DAYS).map_while(move |days| from.checked_add_days(Days::new(days)))
}

/// Work that waits, in its order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Waiting {
    /// Bench minutes left, 0 or more: whole ones, see [`minutes_left`].
    pub minutes: Decimal,
    /// The first day on which it can be at the bench, if it must wait for something beside it.
    pub begin: Option<NaiveDate>,
    /// The day it is promised for.
    pub promised: Option<NaiveDate>,
}

impl Waiting {
    /// Bench hours left, to a ten-thousandth.
    pub fn hours(&self) -> Decimal {
        in_hours(self.minutes)
    }
}

/// Bench hours as whole minutes, of which so many are done; 0 or more.
///
/// Hours are kept to a ten-thousandth, so 6 h 40 min stand as 6.6667: to the minute that is again what it was, and no job is
/// a day late for a tenth of a second.
pub fn minutes_left(hours: Decimal, done: Decimal) -> Decimal {
    to_decimals(hours * MINUTES - done, 0).max(Decimal::ZERO)
}

/// Minutes as hours, to a ten-thousandth.
pub fn in_hours(minutes: Decimal) -> Decimal {
    to_decimals(minutes / MINUTES, 4)
}

/// Minutes of an hour.
const MINUTES: Decimal = Decimal::from_parts(60, 0, 0, false, 0);

/// When work will be with the client.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ready {
    /// The day; `None` beyond ten years.
    pub on: Option<NaiveDate>,
    /// By how much the promise is missed; `None` if it holds or there is none.
    pub missed: Option<Missed>,
}

/// By how much a promise is missed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Missed {
    /// Days from the promise to the day it is ready, 1 or more; `None` beyond ten years.
    pub days: Option<u64>,
    /// Bench hours from the last day that would have kept it to the end of the work, unrounded: at most what there is to do
    /// until then, and above 0 unless nothing is left to do at the bench.
    pub hours: Decimal,
}

/// The bench from a day on, at so many hours a week.
struct BenchDays<'a> {
    calendar: &'a Calendar,
    from: NaiveDate,
    /// Minutes of a week: what each day at the bench adds, in minutes times days of the week.
    weekly: Decimal,
}

impl BenchDays<'_> {
    /// Bench time that has passed at the end of a day, in minutes times days of the week.
    fn passed(&self, day: NaiveDate) -> Decimal {
        let at_bench =
            days_from(self.from).take_while(|each| *each <= day).filter(|day| self.calendar.is_at_bench(*day));
        self.weekly * Decimal::from(at_bench.count())
    }

    /// The first day at whose end so much bench time has passed.
    fn reached(&self, end: Decimal) -> Option<NaiveDate> {
        let mut passed = Decimal::ZERO;
        days_from(self.from).find(|day| {
            passed += if self.calendar.is_at_bench(*day) { self.weekly } else { Decimal::ZERO };
            passed >= end
        })
    }

    /// Bench time in minutes times days of the week, from minutes.
    fn time(&self, minutes: Decimal) -> Decimal {
        minutes * Decimal::from(self.calendar.days.len().max(1))
    }

    /// When work is ready that ends at so much bench time and can't begin before a day. Up to its end there is so much to do
    /// in all, in the same measure: no more can be short, however long it waits for other things.
    fn ready(&self, end: Decimal, to_do: Decimal, work: &Waiting) -> Ready {
        let after = Days::new(days_in_all(&self.calendar.after));
        let done = self.reached(end).map(|day| work.begin.map_or(day, |begin| day.max(begin)));
        let on = done.and_then(|day| day.checked_add_days(after));
        // One question for both: a promise is missed when the work is ready on a later day.
        let missed = work.promised.filter(|promised| on.is_none_or(|on| on > *promised)).map(|promised| {
            let last = promised.checked_sub_days(after).unwrap_or(NaiveDate::MIN);
            let late = end - self.passed(last);
            let of_a_week = Decimal::from(self.calendar.days.len().max(1));
            Missed {
                days: on.and_then(|on| u64::try_from((on - promised).num_days()).ok()),
                hours: late.clamp(Decimal::ZERO, to_do) / of_a_week / MINUTES,
            }
        });
        Ready { on, missed }
    }
}

/// Lays work on the days, one after the other from a day on, at so many bench hours a week.
pub fn lay(calendar: &Calendar, weekly_hours: Decimal, from: NaiveDate, waiting: &[Waiting]) -> Vec<Ready> {
    let bench = BenchDays { calendar, from, weekly: weekly_hours * MINUTES };
    let (mut end, mut to_do) = (Decimal::ZERO, Decimal::ZERO);
    let ready = |work: &Waiting| {
        // What is done at the bench keeps nothing waiting.
        if let Some(before) = work.begin.and_then(|day| day.pred_opt()).filter(|_| work.minutes > Decimal::ZERO) {
            end = end.max(bench.passed(before));
        }
        end += bench.time(work.minutes);
        to_do += bench.time(work.minutes);
        bench.ready(end, to_do, work)
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
            ..Calendar::default()
        }
    }

    fn passing(days: u32) -> Vec<Passing> {
        vec![Passing { what: "something".to_owned(), days }]
    }

    /// Work of so many minutes, at the bench already.
    fn work(minutes: i64, promised: Option<NaiveDate>) -> Waiting {
        Waiting { minutes: Decimal::from(minutes), begin: None, promised }
    }

    fn hours(hours: i64) -> Decimal {
        Decimal::from(hours)
    }

    #[test]
    fn hours_are_laid_on_days_at_the_bench() {
        // 24 hours a week are six a day. 1 March 2027 is a Monday (ISO 8601).
        let done = |hours: i64| {
            let laid = lay(&tuesdays_to_fridays(), Decimal::from(24), day(3, 1), &[work(hours * 60, None)]);
            laid[0].on.unwrap()
        };
        assert_eq!(done(6), day(3, 2));
        assert_eq!(done(7), day(3, 3));
        assert_eq!(done(24), day(3, 5));
        // The Tuesday after, and then a week off: the Wednesday after that.
        assert_eq!((done(30), done(31)), (day(3, 9), day(3, 17)));
    }

    #[test]
    fn what_comes_later_waits_for_what_comes_first() {
        let waiting = [work(720, Some(day(3, 3))), work(720, Some(day(3, 4))), work(360, None)];
        let laid = lay(&tuesdays_to_fridays(), Decimal::from(24), day(3, 1), &waiting);
        assert_eq!(laid[0], Ready { on: Some(day(3, 3)), missed: None });
        assert_eq!(laid[1].on, Some(day(3, 5)));
        assert_eq!(laid[1].missed, Some(Missed { days: Some(1), hours: hours(6) }));
        assert_eq!(laid[2], Ready { on: Some(day(3, 9)), missed: None });
    }

    #[test]
    fn a_week_of_hours_is_done_in_a_week_whatever_its_days() {
        // 10 h over three days are 3 h 20 min each: done on the third, not a week later, and the promise is kept.
        let calendar = Calendar { days: vec![Weekday::Mon, Weekday::Wed, Weekday::Fri], ..Calendar::default() };
        let laid = lay(&calendar, hours(10), day(3, 1), &[work(600, Some(day(3, 5)))]);
        assert_eq!(laid[0], Ready { on: Some(day(3, 5)), missed: None });
        let laid = lay(&calendar, hours(10), day(3, 1), &[work(601, Some(day(3, 5)))]);
        assert_eq!((laid[0].on, laid[0].missed.unwrap().days), (Some(day(3, 8)), Some(3)));
        // Two days hold 6 h 40 min to the minute, after 3 h 20 min were logged of the ten.
        let laid = lay(&calendar, hours(10), day(3, 1), &[work(600 - 200, None)]);
        assert_eq!(laid[0].on, Some(day(3, 3)));
    }

    #[test]
    fn days_beside_the_bench_count_before_and_after() {
        let calendar = Calendar { lead: passing(3), after: passing(2), ..tuesdays_to_fridays() };
        // Agreed on Monday 1 March: at the bench from Thursday on, 7 h take Thursday and Friday, and two days more.
        let begin = Some(calendar.begin(day(3, 1)));
        let one = Waiting { minutes: Decimal::from(420), begin, promised: Some(day(3, 6)) };
        let ready = lay(&calendar, hours(24), day(3, 1), std::slice::from_ref(&one))[0];
        assert_eq!((begin, ready.on), (Some(day(3, 4)), Some(day(3, 7))));
        // To be with the client on Saturday it must leave the bench on Thursday: 1 h short.
        assert_eq!(ready.missed, Some(Missed { days: Some(1), hours: hours(1) }));
        // Behind 18 h that end on Thursday it waits for nothing: the days before ran meanwhile.
        let behind = lay(&calendar, hours(24), day(3, 1), &[work(1080, None), one.clone()])[1];
        assert_eq!(behind.on, Some(day(3, 11)));
        // With nothing left to do it still is not there before it can be.
        let none = Waiting { minutes: Decimal::ZERO, ..one };
        assert_eq!(lay(&calendar, hours(24), day(3, 1), &[none])[0].on, Some(day(3, 6)));
    }

    #[test]
    fn nothing_is_ready_on_the_day_it_is_quoted() {
        let calendar = Calendar { days: vec![Weekday::Mon, Weekday::Tue], ..Calendar::default() };
        let one = Waiting { minutes: Decimal::ONE, begin: Some(calendar.begin(day(3, 1))), promised: None };
        assert_eq!(lay(&calendar, hours(24), day(3, 1), &[one])[0].on, Some(day(3, 2)));
    }

    #[test]
    fn a_holiday_without_end_is_no_loop() {
        let calendar = Calendar { off: vec![(NaiveDate::MIN, NaiveDate::MAX)], ..Calendar::default() };
        for from in [day(3, 1), NaiveDate::MAX] {
            let laid = lay(&calendar, Decimal::from(24), from, &[work(60, Some(from))]);
            assert_eq!((laid[0].on, laid[0].missed.unwrap()), (None, Missed { days: None, hours: Decimal::ONE }));
        }
        assert_eq!(Calendar::default().begin(NaiveDate::MAX), NaiveDate::MAX);
    }

    /// The same day by day in whole units, of which a minute has as many as a week has days at the bench.
    fn simulated(calendar: &Calendar, weekly_minutes: u64, from: NaiveDate, works: &[(u64, u64)]) -> Vec<NaiveDate> {
        let per_minute = calendar.days.len() as u64;
        let mut works = works.iter().map(|(minutes, begin)| (minutes * per_minute, from + Days::new(*begin)));
        let mut done = Vec::new();
        let mut now = works.next();
        let mut today = from;
        while now.is_some() {
            let mut free = if calendar.is_at_bench(today) { weekly_minutes } else { 0 };
            while let Some((left, begin)) = now.as_mut().filter(|(_, begin)| *begin <= today) {
                let worked = free.min(*left);
                (free, *left) = (free - worked, *left - worked);
                if *left > 0 {
                    break;
                }
                done.push(today.max(*begin));
                now = works.next();
            }
            today = today + Days::new(1);
        }
        done
    }

    fn weeks() -> impl Strategy<Value = Calendar> {
        let all = [Weekday::Mon, Weekday::Tue, Weekday::Wed, Weekday::Thu, Weekday::Fri, Weekday::Sat, Weekday::Sun];
        let days = prop::sample::subsequence(all.to_vec(), 1..=7);
        let off = prop::collection::vec((0_u64..60, 0_u64..9), 0..3);
        (days, off, 1_u32..9, 0_u32..5).prop_map(|(days, off, lead, after)| Calendar {
            days,
            off: off
                .into_iter()
                .map(|(at, long)| (day(1, 1) + Days::new(at), day(1, 1) + Days::new(at + long)))
                .collect(),
            lead: passing(lead),
            after: passing(after),
        })
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(300))]
        /// Random weeks, many of which no decimal divides, and works that end to the minute with a day.
        #[test]
        fn laid_work_is_ready_when_a_simulation_day_by_day_says(
            calendar in weeks(), weekly in (10_u64..1_300).prop_map(|thirds| thirds * 3), start in 0_u64..40,
            works in prop::collection::vec((prop_oneof![1_u64..3_000, (1_u64..9).prop_map(|whole| whole * 10_000)], 0_u64..12), 1..6)
        ) {
            let from = day(1, 1) + Days::new(start);
            let days = calendar.days.len() as u64;
            // Ten thousand stand for a day's share of the week, where that is whole minutes.
            let minutes = |drawn: u64| if drawn < 10_000 { drawn } else { drawn / 10_000 * weekly / days };
            let works: Vec<(u64, u64)> = works.into_iter().map(|(drawn, begin)| (minutes(drawn), begin)).collect();
            let waiting: Vec<Waiting> = works.iter().map(|(minutes, begin)| Waiting {
                minutes: Decimal::from(*minutes), begin: Some(from + Days::new(*begin)), promised: None,
            }).collect();
            let weekly_hours = Decimal::from(weekly) / Decimal::from(60);
            let after = Days::new(days_in_all(&calendar.after));
            let laid = lay(&calendar, weekly_hours, from, &waiting);
            let simulated = simulated(&calendar, weekly, from, &works);
            for ((ready, done), work) in laid.iter().zip(&simulated).zip(&waiting) {
                prop_assert_eq!(ready.on, Some(*done + after), "{:?} {:?}", work, calendar);
            }
        }

        /// The day it is ready keeps a promise, and the day before does not.
        #[test]
        fn a_promise_holds_exactly_from_the_day_it_is_ready(
            calendar in weeks(), weekly in 1_u32..60, minutes in 0_u32..6_000, start in 0_u64..40, off in -40_i64..4
        ) {
            let from = day(1, 1) + Days::new(start);
            let laid = |promised| {
                let one = Waiting { minutes: minutes.into(), begin: Some(calendar.begin(from)), promised };
                lay(&calendar, weekly.into(), from, &[one])[0]
            };
            let on = laid(None).on.unwrap();
            prop_assert!(on > from);
            let promised = on + chrono::TimeDelta::days(off);
            let missed = laid(Some(promised)).missed;
            prop_assert_eq!(missed.is_none(), promised >= on);
            if let Some(Missed { days, hours }) = missed {
                prop_assert_eq!(days, u64::try_from(-off).ok());
                prop_assert!(minutes == 0 || hours > Decimal::ZERO);
                // However late it is, no more is short than there is to do.
                prop_assert!(hours <= Decimal::from(minutes) / MINUTES);
            }
        }
    }
}
