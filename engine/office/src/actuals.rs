//! What was quoted beside what it really took.

use chrono::{Datelike, NaiveDate};
use reeve_book::{Course, QuoteFigures, State};
use reeve_costing::money::{decimal, to_millionths};
use rust_decimal::Decimal;
use serde::Serialize;

/// What a commission comes to, quoted or as it was.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct JobFigures {
    /// Bench hours.
    pub hours: Decimal,
    /// Cord, in metres.
    pub cord_m: Decimal,
    /// Cord, fittings, what was used up and bought.
    pub material: Decimal,
    /// Everything it costs.
    pub cost: Decimal,
    /// What remains after cost and fees.
    pub margin: Decimal,
    /// What a bench hour earns; nothing without hours.
    pub per_hour: Option<Decimal>,
}

/// A commission as it was quoted and as it was.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct QuotedAndActual {
    /// As quoted.
    pub quoted: JobFigures,
    /// As it was, at the rates of the quote; `None` where nothing was logged.
    pub actual: Option<JobFigures>,
}

/// What finished work of a period was quoted at and took, all together: only what has something logged counts.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AllActuals {
    /// How many works.
    pub count: u32,
    /// As quoted.
    pub quoted: JobFigures,
    /// As it was.
    pub actual: JobFigures,
}

impl JobFigures {
    /// `None` where figures are so far from any work that they can't be reckoned with.
    fn of(figures: &QuoteFigures, hours: Decimal, cord_m: Decimal, material: Decimal) -> Option<Self> {
        let quoted = if figures.hours.is_zero() { Decimal::ONE } else { figures.hours };
        let for_hours = |amount: Decimal| amount.checked_div(quoted)?.checked_mul(hours);
        let labour = for_hours(figures.labour)?;
        let overhead = for_hours(figures.cost - figures.labour - figures.material)?;
        let cost = material.checked_add(labour)?.checked_add(overhead)?;
        let margin = (figures.net - figures.fees).checked_sub(cost)?;
        Some(Self { hours, cord_m, material, cost, margin, per_hour: None }.earning(labour))
    }

    /// With what an hour earns, the margin and the labour, and all of it to a millionth.
    fn earning(self, labour: Decimal) -> Self {
        let earned = self.margin.checked_add(labour).and_then(|earned| earned.checked_div(self.hours));
        Self {
            material: to_millionths(self.material),
            cost: to_millionths(self.cost),
            margin: to_millionths(self.margin),
            per_hour: earned.map(to_millionths),
            ..self
        }
    }

    fn sum(all: &[Self]) -> Self {
        let sum = |of: fn(&Self) -> Decimal| all.iter().map(of).fold(Decimal::ZERO, Decimal::saturating_add);
        let margin = sum(|one| one.margin);
        let earned = sum(|one| one.per_hour.unwrap_or_default().saturating_mul(one.hours));
        let all = Self {
            hours: sum(|one| one.hours),
            cord_m: sum(|one| one.cord_m),
            material: sum(|one| one.material),
            cost: sum(|one| one.cost),
            margin,
            per_hour: None,
        };
        all.earning(earned.saturating_sub(margin))
    }
}

impl QuotedAndActual {
    /// Of one commission; `None` where none was quoted, or figures are so far from any work that they can't be reckoned with.
    pub fn of(course: &Course) -> Option<Self> {
        let (_, figures) = course.commission.quoted.as_ref()?;
        let cord: Decimal = figures.cord.iter().map(|(_, metres)| *metres).sum();
        let quoted = JobFigures::of(figures, figures.hours, cord, figures.material)?;
        Some(Self { quoted, actual: actual(course, figures, cord) })
    }
}

fn actual(course: &Course, figures: &QuoteFigures, cord: Decimal) -> Option<JobFigures> {
    let took = &course.took;
    if took.work.is_empty() && took.cord.is_empty() && took.bought.is_empty() {
        return None;
    }
    let hours = if took.work.is_empty() { figures.hours } else { decimal(took.minutes() / 60.0, 4) };
    // A cord of which nothing was logged went as it was quoted.
    let logged = |name: &str| took.cord.iter().filter(|line| line.cord == name).map(|line| line.metres).sum::<f64>();
    let of_cord = |(name, metres): &(String, Decimal)| {
        let used = logged(name);
        if used > 0.0 { decimal(used, 4) } else { *metres }
    };
    let strays = took.cord.iter().filter(|line| !figures.cord.iter().any(|(name, _)| *name == line.cord));
    let used = figures.cord.iter().map(of_cord).sum::<Decimal>() + decimal(strays.map(|line| line.metres).sum(), 4);
    // Cord costs by length: more of it costs more in proportion.
    let share = used.checked_div(cord).unwrap_or(Decimal::ONE);
    let cord = figures.cord_cost.checked_mul(share)?;
    let material = (figures.material - figures.cord_cost + cord).checked_add(took.bought_in_all())?;
    JobFigures::of(figures, hours, used, material)
}

impl AllActuals {
    /// Of finished work; of one year, or of all. `None` where there is none.
    pub fn of(courses: &[Course], year: Option<i32>) -> Option<Self> {
        let within = |day: NaiveDate| year.is_none_or(|year| day.year() == year);
        let of = |course: &Course| {
            finished(course).filter(|day| within(*day))?;
            let QuotedAndActual { quoted, actual } = QuotedAndActual::of(course)?;
            Some((quoted, actual?))
        };
        let (quoted, actual): (Vec<_>, Vec<_>) = courses.iter().filter_map(of).unzip();
        let count = u32::try_from(quoted.len()).ok().filter(|count| *count > 0)?;
        Some(Self { count, quoted: JobFigures::sum(&quoted), actual: JobFigures::sum(&actual) })
    }
}

/// When a work was finished, the last time; `None` where it is not made.
pub(crate) fn finished(course: &Course) -> Option<NaiveDate> {
    let made = course.commission.state.is_made();
    course.happenings.iter().rev().find(|one| made && one.state == State::Finished).map(|one| one.day)
}
