//! What was quoted beside what it really took.

use chrono::{Datelike, NaiveDate};
use reeve_book::{Course, QuoteFigures};
use reeve_costing::rates::Rates;
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use schemars::JsonSchema;
use serde::Serialize;

use super::FORM;
use super::summary::finished;
use super::table::{BookPage, TextTable, figures, words as text};
use crate::figures::cents;
use crate::words::Words;

/// A commission, quoted or as it was.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Reckoned {
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

impl Reckoned {
    /// `None` where figures are so far from any work that they can't be reckoned with.
    fn of(figures: &QuoteFigures, hours: Decimal, cord_m: Decimal, material: Decimal) -> Option<Self> {
        let quoted = if figures.hours.is_zero() { Decimal::ONE } else { figures.hours };
        let for_hours = |amount: Decimal| amount.checked_div(quoted)?.checked_mul(hours);
        let labour = for_hours(figures.labour)?;
        let overhead = for_hours(figures.cost - figures.labour - figures.material)?;
        let cost = material.checked_add(labour)?.checked_add(overhead)?;
        let margin = (figures.net - figures.fees).checked_sub(cost)?;
        Some(Self::from(hours, cord_m, material, cost, margin, labour))
    }

    fn from(
        hours: Decimal,
        cord_m: Decimal,
        material: Decimal,
        cost: Decimal,
        margin: Decimal,
        labour: Decimal,
    ) -> Self {
        let per_hour = margin.checked_add(labour).and_then(|earned| earned.checked_div(hours)).map(cents);
        Self { hours, cord_m, material: cents(material), cost: cents(cost), margin: cents(margin), per_hour }
    }

    fn sum(all: &[Self]) -> Self {
        let sum = |of: fn(&Self) -> Decimal| all.iter().map(of).fold(Decimal::ZERO, Decimal::saturating_add);
        let margin = sum(|one| one.margin);
        let earned = sum(|one| one.per_hour.unwrap_or_default().saturating_mul(one.hours));
        let (hours, cord, material, cost) =
            (sum(|one| one.hours), sum(|one| one.cord_m), sum(|one| one.material), sum(|one| one.cost));
        Self::from(hours, cord, material, cost, margin, earned.saturating_sub(margin))
    }
}

/// What a commission was quoted at and what it took, at the rates of the quote; `None` where nothing was logged.
pub fn reckoned(course: &Course) -> Option<(Reckoned, Option<Reckoned>)> {
    let (_, figures) = course.commission.quoted.as_ref()?;
    let cord: Decimal = figures.cord.iter().map(|(_, metres)| *metres).sum();
    let quoted = Reckoned::of(figures, figures.hours, cord, figures.material)?;
    let took = &course.took;
    if took.work.is_empty() && took.cord.is_empty() && took.bought.is_empty() {
        return Some((quoted, None));
    }
    let decimal = |number: f64| Decimal::from_f64(number).unwrap_or_default().round_dp(4);
    let hours = if took.work.is_empty() { figures.hours } else { decimal(took.minutes() / 60.0) };
    // A cord of which nothing was logged went as it was quoted.
    let logged = |name: &str| took.cord.iter().filter(|line| line.cord == name).map(|line| line.metres).sum::<f64>();
    let of_cord = |(name, metres): &(String, Decimal)| {
        let used = logged(name);
        if used > 0.0 { decimal(used) } else { *metres }
    };
    let strays = took.cord.iter().filter(|line| !figures.cord.iter().any(|(name, _)| *name == line.cord));
    let used = figures.cord.iter().map(of_cord).sum::<Decimal>() + decimal(strays.map(|line| line.metres).sum());
    // Cord costs by length: more of it costs more in proportion.
    let share = used.checked_div(cord).unwrap_or(Decimal::ONE);
    let material = figures.cord_cost.checked_mul(share).map(|cord| figures.material - figures.cord_cost + cord);
    let material = material.and_then(|material| material.checked_add(took.bought_in_all()));
    let really = material.and_then(|material| Reckoned::of(figures, hours, used, material));
    Some((quoted, really))
}

/// What finished work of a period was quoted at and took, all together: only what has something logged counts.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct TookInAll {
    /// How many.
    pub count: u32,
    /// As quoted.
    pub quoted: Reckoned,
    /// As it was.
    pub really: Reckoned,
}

/// Adds up what finished work took; of one year, or of all.
pub fn took_in_all(courses: &[Course], year: Option<i32>) -> Option<TookInAll> {
    let within = |day: NaiveDate| year.is_none_or(|year| day.year() == year);
    let of = |course: &Course| {
        finished(course).filter(|day| within(*day))?;
        let (quoted, really) = reckoned(course)?;
        Some((quoted, really?))
    };
    let all: Vec<(Reckoned, Reckoned)> = courses.iter().filter_map(of).collect();
    let count = u32::try_from(all.len()).ok().filter(|count| *count > 0)?;
    let (quoted, really): (Vec<_>, Vec<_>) = all.into_iter().unzip();
    Some(TookInAll { count, quoted: Reckoned::sum(&quoted), really: Reckoned::sum(&really) })
}

/// Words what finished work took, all together.
pub fn took_in_all_page(all: Option<&TookInAll>, title: &str, rates: &Rates, words: &Words) -> BookPage {
    let mut page = BookPage::new("What it really took", title, rates);
    let mut table = beside("No finished work has anything logged.");
    if let Some(all) = all {
        page.fact("Finished works", all.count.to_string());
        fill_in(&mut table, &all.quoted, Some(&all.really), words);
    }
    page.tables.push(table);
    page
}

fn beside(empty: &'static str) -> TextTable {
    TextTable::new("", &[text("", 32), figures("Quoted", 16), figures("Really", 16), figures("Difference", 16)], empty)
}

fn fill_in(table: &mut TextTable, quoted: &Reckoned, really: Option<&Reckoned>, words: &Words) {
    for (what, worded, of) in lines(words) {
        let really = really.map(of);
        let difference = really.map(|really| worded(really - of(quoted)));
        let really = really.map(&worded).unwrap_or_default();
        table.row(vec![what.to_owned(), worded(of(quoted)), really, difference.unwrap_or_default()], "");
    }
}

/// Words what it took.
pub fn took_page(course: &Course, rates: &Rates, words: &Words) -> BookPage {
    let mut page = BookPage::new("What it really took", &course.commission.title, rates);
    page.fact("Number", course.commission.name());
    page.fact("Client", course.commission.client.name.clone());
    page.fact("Stands", course.commission.state.to_string());
    let mut table = beside("No quote was issued.");
    if let Some((quoted, really)) = reckoned(course) {
        fill_in(&mut table, &quoted, really.as_ref(), words);
        if !course.commission.state.is_made() && really.is_some() {
            page.remarks.push("It is not finished: this is what is logged so far.".to_owned());
        }
        if really.is_none() {
            page.after.push("Nothing is logged yet: `reeve book log`, or `start` and `stop`.".to_owned());
        }
    }
    page.tables.push(table);
    let mut steps =
        TextTable::new("What was logged", &[text("Day", 12), text("Step", 44), figures("Time", 24)], "Nothing yet.");
    for line in &course.took.work {
        let step = line.step.clone().unwrap_or_else(|| "the whole".to_owned());
        let time = words.hours(Decimal::from_f64(line.minutes / 60.0).unwrap_or_default().round_dp(2));
        steps.row(vec![line.day.to_string(), step, time], line.note.clone().unwrap_or_default());
    }
    page.tables.push(steps);
    page
}

type Line<'a> = (&'static str, Box<dyn Fn(Decimal) -> String + 'a>, fn(&Reckoned) -> Decimal);

fn lines(words: &Words) -> Vec<Line<'_>> {
    let money = || Box::new(|amount: Decimal| words.rounded(amount)) as Box<dyn Fn(Decimal) -> String>;
    vec![
        ("Bench hours", Box::new(|hours: Decimal| words.hours(hours.round_dp(2))), |one| one.hours),
        ("Cord", Box::new(|metres: Decimal| format!("{}\u{a0}m", words.number(metres.round_dp(1)))), |one| one.cord_m),
        ("Material", money(), |one| one.material),
        ("Cost", money(), |one| one.cost),
        ("Margin", money(), |one| one.margin),
        ("A bench hour earns", money(), |one| one.per_hour.unwrap_or_default()),
    ]
}

/// What it took, for other programs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct TookJson {
    /// Version of this form.
    pub form: u32,
    /// Its number, or `all`.
    pub number: String,
    /// As quoted; nothing without a quote.
    pub quoted: Option<Reckoned>,
    /// As it was; nothing where nothing was logged.
    pub really: Option<Reckoned>,
    /// How many works are added up; 1 for one.
    pub works_count: u32,
}

/// What finished work took, all together, for other programs.
pub fn took_in_all_json(all: Option<TookInAll>) -> TookJson {
    let works_count = all.as_ref().map_or(0, |all| all.count);
    let (quoted, really) = all.map_or((None, None), |all| (Some(all.quoted), Some(all.really)));
    TookJson { form: FORM, number: "all".to_owned(), quoted, really, works_count }
}

/// What it took, for other programs.
pub fn took_json(course: &Course) -> TookJson {
    let (quoted, really) = reckoned(course).map_or((None, None), |(quoted, really)| (Some(quoted), really));
    TookJson { form: FORM, number: course.commission.name().to_owned(), quoted, really, works_count: 1 }
}
