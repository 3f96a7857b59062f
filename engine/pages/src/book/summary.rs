//! A month's and a year's sums for the maker's books.

use reeve_costing::rates::Rates;
use reeve_office::Period;
use rust_decimal::Decimal;
use serde::Serialize;

use super::FORM;
use super::table::{BookPage, TextTable, figures, text};
use crate::phrases::say;
use crate::spreadsheet::Spreadsheet;
use crate::words::Words;

/// Words a summary.
pub fn summary_page(periods: &[Period], title: &str, rates: &Rates, words: &Words) -> BookPage {
    let mut page = BookPage::new(say!(words, "summary"), title, rates);
    let columns = vec![
        text(say!(words, "summary-month"), 9),
        figures(say!(words, "summary-quoted"), 7),
        figures(say!(words, "summary-won"), 5),
        figures(say!(words, "summary-lost"), 6),
        figures(say!(words, "summary-share-won"), 11),
        figures(say!(words, "summary-income"), 13),
        figures(say!(words, "summary-material"), 11),
        figures(say!(words, "summary-hours"), 8),
        figures(say!(words, "summary-per-hour"), 10),
    ];
    let mut table = TextTable::new(String::new(), columns, say!(words, "summary-empty"));
    for period in periods {
        let is_all = period.period == "all";
        let count = |count: u32| words.count(u64::from(count));
        let cells = vec![
            if is_all { say!(words, "summary-all") } else { period.period.clone() },
            count(period.quoted_count),
            count(period.won_count),
            count(period.lost_count),
            period.won_percent.map(|percent| words.percent(percent)).unwrap_or_default(),
            words.rounded(period.income),
            words.rounded(period.material),
            words.fixed(period.hours, 1),
            period.per_hour.map(|earned| words.rounded(earned)).unwrap_or_default(),
        ];
        if is_all { table.strong(cells) } else { table.row(cells, "") }
    }
    page.tables.push(table);
    page.after.push(say!(words, "summary-note"));
    page
}

/// A summary, for other programs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct SummaryJson {
    /// Version of this form.
    pub form: u32,
    /// Three letters of ISO 4217.
    pub currency: String,
    /// Each month in which something happened, then all together.
    pub periods: Vec<Period>,
}

/// A summary, for other programs.
pub fn summary_json(periods: &[Period], rates: &Rates) -> SummaryJson {
    SummaryJson { form: FORM, currency: rates.currency.code().to_owned(), periods: periods.to_vec() }
}

/// A summary as comma-separated values (RFC 4180).
///
/// # Errors
/// When the values can't be written, which a table in memory never does.
pub fn summary_csv(periods: &[Period]) -> Result<String, csv::Error> {
    let mut table = Spreadsheet::new([
        "period",
        "quoted",
        "won",
        "lost",
        "won-percent",
        "income",
        "material",
        "hours",
        "per-hour",
    ])?;
    let or_none = |figure: Option<Decimal>| figure.map(|figure| figure.to_string()).unwrap_or_default();
    for period in periods {
        table.row([
            period.period.clone(),
            period.quoted_count.to_string(),
            period.won_count.to_string(),
            period.lost_count.to_string(),
            or_none(period.won_percent),
            period.income.to_string(),
            period.material.to_string(),
            period.hours.to_string(),
            or_none(period.per_hour),
        ])?;
    }
    table.text()
}
