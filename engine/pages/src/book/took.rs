//! What was quoted beside what it really took.

use reeve_book::Course;
use reeve_costing::money::{decimal, to_decimals};
use reeve_costing::rates::Rates;
use reeve_office::{AllActuals, JobFigures, QuotedAndActual};
use rust_decimal::Decimal;
use serde::Serialize;

use super::table::{BookPage, TextTable, figures, text};
use super::{FORM, state_words};
use crate::phrases::say;
use crate::words::Words;

/// Words what finished work took, all together.
pub fn all_actuals_page(all: Option<&AllActuals>, title: &str, rates: &Rates, words: &Words) -> BookPage {
    let mut page = BookPage::new(say!(words, "took"), title, rates);
    let mut table = beside(say!(words, "took-none-finished"), words);
    if let Some(all) = all {
        page.fact(say!(words, "took-works"), words.count(u64::from(all.count)));
        fill_in(&mut table, &all.quoted, Some(&all.actual), words);
    }
    page.tables.push(table);
    page
}

fn beside(empty: String, words: &Words) -> TextTable {
    let columns = vec![
        text(String::new(), 32),
        figures(say!(words, "took-quoted"), 16),
        figures(say!(words, "took-really"), 16),
        figures(say!(words, "took-difference"), 16),
    ];
    TextTable::new(String::new(), columns, empty)
}

fn fill_in(table: &mut TextTable, quoted: &JobFigures, actual: Option<&JobFigures>, words: &Words) {
    for FigureLine { heading, worded, of } in figure_lines(words) {
        let actual = actual.map(of);
        let difference = actual.map(|actual| worded(words, actual - of(quoted))).unwrap_or_default();
        let actual = actual.map(|actual| worded(words, actual)).unwrap_or_default();
        table.row(vec![heading, worded(words, of(quoted)), actual, difference], "");
    }
}

/// Words what it took.
pub fn actuals_page(course: &Course, rates: &Rates, words: &Words) -> BookPage {
    let mut page = BookPage::new(say!(words, "took"), &course.commission.title, rates);
    page.fact(say!(words, "book-number"), course.commission.name());
    page.fact(say!(words, "book-client"), course.commission.client.name.clone());
    page.fact(say!(words, "book-stands"), state_words(course.commission.state, words));
    let mut table = beside(say!(words, "took-no-quote"), words);
    if let Some(QuotedAndActual { quoted, actual }) = QuotedAndActual::of(course) {
        fill_in(&mut table, &quoted, actual.as_ref(), words);
        if !course.commission.state.is_made() && actual.is_some() {
            page.remarks.push(say!(words, "took-not-finished"));
        }
        if actual.is_none() {
            page.after.push(say!(words, "took-nothing-logged"));
        }
    }
    page.tables.push(table);
    let columns = vec![
        text(say!(words, "took-day"), 12),
        text(say!(words, "took-step"), 44),
        figures(say!(words, "took-time"), 24),
    ];
    let mut steps = TextTable::new(say!(words, "took-logged"), columns, say!(words, "took-nothing-yet"));
    for line in &course.took.work {
        let step = line.step.clone().unwrap_or_else(|| say!(words, "took-whole"));
        let time = words.hours(decimal(line.minutes / 60.0, 2));
        steps.row(vec![line.day.to_string(), step, time], line.note.clone().unwrap_or_default());
    }
    page.tables.push(steps);
    page
}

/// A figure of the table: its heading, how it is worded and where it stands.
struct FigureLine {
    heading: String,
    worded: fn(&Words, Decimal) -> String,
    of: fn(&JobFigures) -> Decimal,
}

fn figure_lines(words: &Words) -> [FigureLine; 6] {
    let line = |heading, worded, of| FigureLine { heading, worded, of };
    let money = |heading, of| FigureLine { heading, worded: |words, amount| words.rounded(amount), of };
    [
        line(say!(words, "took-hours"), Words::hours, |one| one.hours),
        line(say!(words, "took-cord"), |words, metres| words.metres(to_decimals(metres, 1)), |one| one.cord_m),
        money(say!(words, "took-material"), |one| one.material),
        money(say!(words, "took-cost"), |one| one.cost),
        money(say!(words, "took-margin"), |one| one.margin),
        money(say!(words, "took-per-hour"), |one| one.per_hour.unwrap_or_default()),
    ]
}

/// What it took, for other programs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
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
