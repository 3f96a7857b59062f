//! A month's and a year's sums for the maker's books.

use std::collections::BTreeMap;

use chrono::{Datelike, NaiveDate};
use reeve_book::{Course, State};
use reeve_costing::money::{to_decimals, to_millionths};
use rust_decimal::Decimal;
use serde::Serialize;

use crate::actuals::{QuotedAndActual, finished};

/// The sums of one month, or of all.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct Period {
    /// Year and month, or `all`.
    pub period: String,
    /// Commissions first quoted in it.
    pub quoted_count: u32,
    /// Commissions accepted in it.
    pub won_count: u32,
    /// Commissions declined or called off in it, or whose quote ran out in it.
    pub lost_count: u32,
    /// Those won, in per cent of those decided; nothing where none was.
    pub won_percent: Option<Decimal>,
    /// What was paid in it, refunds taken off.
    pub income: Decimal,
    /// Material of what was finished in it.
    pub material: Decimal,
    /// Bench hours of what was finished in it: as logged, else as quoted.
    pub hours: Decimal,
    /// What an hour of what was finished in it earned; nothing without hours.
    pub per_hour: Option<Decimal>,
    #[serde(skip)]
    earned: Decimal,
}

/// Sums up a book by month, for one year or for all, with the sums of all of them last.
pub fn summary(courses: &[Course], year: Option<i32>, day: NaiveDate) -> Vec<Period> {
    let mut months: BTreeMap<String, Period> = BTreeMap::new();
    let mut add = |on: NaiveDate, change: &dyn Fn(&mut Period)| {
        if year.is_none_or(|year| on.year() == year) && on <= day {
            change(months.entry(on.format("%Y-%m").to_string()).or_default());
        }
    };
    for course in courses {
        if let Some(first) = course.commission.first_issued {
            add(first, &|month| month.quoted_count += 1);
        }
        if let Some((on, won)) = decided(course, day) {
            add(on, &|month| if won { month.won_count += 1 } else { month.lost_count += 1 });
        }
        for payment in &course.payments {
            add(payment.day, &|month| month.income = month.income.saturating_add(payment.amount));
        }
        if let (Some(on), Some(QuotedAndActual { quoted, actual })) = (finished(course), QuotedAndActual::of(course)) {
            let one = actual.unwrap_or(quoted);
            add(on, &|month| {
                month.material = month.material.saturating_add(one.material);
                month.hours = month.hours.saturating_add(one.hours);
                month.earned = month.earned.saturating_add(one.per_hour.unwrap_or_default().saturating_mul(one.hours));
            });
        }
    }
    let mut all = Period { period: "all".to_owned(), ..Period::default() };
    let mut periods: Vec<Period> = Vec::new();
    for (name, mut month) in months {
        all.take(&month);
        month.period = name;
        month.close();
        periods.push(month);
    }
    all.close();
    periods.push(all);
    periods
}

impl Period {
    fn take(&mut self, other: &Self) {
        self.quoted_count += other.quoted_count;
        self.won_count += other.won_count;
        self.lost_count += other.lost_count;
        self.income = self.income.saturating_add(other.income);
        self.material = self.material.saturating_add(other.material);
        self.hours = self.hours.saturating_add(other.hours);
        self.earned = self.earned.saturating_add(other.earned);
    }

    fn close(&mut self) {
        let decided = self.won_count + self.lost_count;
        let share = || Decimal::from(self.won_count) / Decimal::from(decided) * Decimal::ONE_HUNDRED;
        self.won_percent = (decided > 0).then(|| to_decimals(share(), 1).normalize());
        self.per_hour = (!self.hours.is_zero()).then(|| to_millionths(self.earned / self.hours));
        self.material = to_millionths(self.material);
        self.hours = to_decimals(self.hours, 4).normalize();
    }
}

/// When the client decided, the last time, and whether it was won. A quote that ran out is lost on the day after its last.
fn decided(course: &Course, day: NaiveDate) -> Option<(NaiveDate, bool)> {
    let last = |wanted: &[State]| course.happenings.iter().rev().find(|one| wanted.contains(&one.state));
    let state = course.commission.state.on(day, None);
    match state {
        State::Lapsed => {
            let (_, figures) = course.commission.quoted.as_ref()?;
            Some((figures.valid_until.succ_opt()?, false))
        }
        State::Declined | State::Cancelled => last(&[state]).map(|one| (one.day, false)),
        _ if state.is_won() => last(&[State::Accepted]).map(|one| (one.day, true)),
        _ => None,
    }
}
