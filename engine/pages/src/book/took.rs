//! What was quoted beside what it really took.

use reeve_book::Course;
use reeve_costing::money::{decimal, to_decimals};
use reeve_costing::rates::Rates;
use reeve_office::{AllActuals, JobFigures, QuotedAndActual};
use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::Serialize;

use super::FORM;
use super::table::{BookPage, TextTable, figures, words as text};
use crate::words::Words;

/// Words what finished work took, all together.
pub fn all_actuals_page(all: Option<&AllActuals>, title: &str, rates: &Rates, words: &Words) -> BookPage {
    let mut page = BookPage::new("What it really took", title, rates);
    let mut table = beside("No finished work has anything logged.");
    if let Some(all) = all {
        page.fact("Finished works", all.count.to_string());
        fill_in(&mut table, &all.quoted, Some(&all.actual), words);
    }
    page.tables.push(table);
    page
}

fn beside(empty: &'static str) -> TextTable {
    TextTable::new("", &[text("", 32), figures("Quoted", 16), figures("Really", 16), figures("Difference", 16)], empty)
}

fn fill_in(table: &mut TextTable, quoted: &JobFigures, actual: Option<&JobFigures>, words: &Words) {
    for FigureLine { heading, worded, of } in LINES {
        let actual = actual.map(of);
        let difference = actual.map(|actual| worded(words, actual - of(quoted))).unwrap_or_default();
        let actual = actual.map(|actual| worded(words, actual)).unwrap_or_default();
        table.row(vec![(*heading).to_owned(), worded(words, of(quoted)), actual, difference], "");
    }
}

/// Words what it took.
pub fn actuals_page(course: &Course, rates: &Rates, words: &Words) -> BookPage {
    let mut page = BookPage::new("What it really took", &course.commission.title, rates);
    page.fact("Number", course.commission.name());
    page.fact("Client", course.commission.client.name.clone());
    page.fact("Stands", course.commission.state.to_string());
    let mut table = beside("No quote was issued.");
    if let Some(QuotedAndActual { quoted, actual }) = QuotedAndActual::of(course) {
        fill_in(&mut table, &quoted, actual.as_ref(), words);
        if !course.commission.state.is_made() && actual.is_some() {
            page.remarks.push("It is not finished: this is what is logged so far.".to_owned());
        }
        if actual.is_none() {
            page.after.push("Nothing is logged yet: `reeve book log`, or `start` and `stop`.".to_owned());
        }
    }
    page.tables.push(table);
    let mut steps =
        TextTable::new("What was logged", &[text("Day", 12), text("Step", 44), figures("Time", 24)], "Nothing yet.");
    for line in &course.took.work {
        let step = line.step.clone().unwrap_or_else(|| "the whole".to_owned());
        let time = words.hours(decimal(line.minutes / 60.0, 2));
        steps.row(vec![line.day.to_string(), step, time], line.note.clone().unwrap_or_default());
    }
    page.tables.push(steps);
    page
}

/// A figure of the table: its heading, how it is worded and where it stands.
struct FigureLine {
    heading: &'static str,
    worded: fn(&Words, Decimal) -> String,
    of: fn(&JobFigures) -> Decimal,
}

const fn money(heading: &'static str, of: fn(&JobFigures) -> Decimal) -> FigureLine {
    FigureLine { heading, worded: |words, amount| words.rounded(amount), of }
}

const LINES: &[FigureLine] = &[
    FigureLine { heading: "Bench hours", worded: |words, hours| words.hours(hours), of: |one| one.hours },
    FigureLine {
        heading: "Cord",
        worded: |words, metres| format!("{}\u{a0}m", words.number(to_decimals(metres, 1))),
        of: |one| one.cord_m,
    },
    money("Material", |one| one.material),
    money("Cost", |one| one.cost),
    money("Margin", |one| one.margin),
    money("A bench hour earns", |one| one.per_hour.unwrap_or_default()),
];

/// What it took, for other programs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct TookJson {
    /// Version of this form.
    pub form: u32,
    /// Its number, or `all`.
    pub number: String,
    /// As quoted; nothing without a quote.
    pub quoted: Option<JobFigures>,
    /// As it was; nothing where nothing was logged.
    pub really: Option<JobFigures>,
    /// How many works are added up; 1 for one.
    pub works_count: u32,
}

/// What finished work took, all together, for other programs.
pub fn all_actuals_json(all: Option<&AllActuals>) -> TookJson {
    let works_count = all.map_or(0, |all| all.count);
    let (quoted, really) = (all.map(|all| all.quoted.clone()), all.map(|all| all.actual.clone()));
    TookJson { form: FORM, number: "all".to_owned(), quoted, really, works_count }
}

/// What it took, for other programs.
pub fn actuals_json(course: &Course) -> TookJson {
    let (quoted, really) = QuotedAndActual::of(course).map_or((None, None), |one| (Some(one.quoted), one.actual));
    TookJson { form: FORM, number: course.commission.name().to_owned(), quoted, really, works_count: 1 }
}
