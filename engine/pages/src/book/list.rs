//! The commissions of the book, one beneath another.

use chrono::NaiveDate;
use reeve_book::BookedCommission;
use reeve_costing::rates::Rates;
use rust_decimal::Decimal;
use serde::Serialize;

use super::table::{BookPage, TextTable, figures, text};
use super::{FORM, state_words};
use crate::phrases::say;
use crate::spreadsheet::Spreadsheet;
use crate::words::Words;

/// Words a list.
pub fn list_page(commissions: &[BookedCommission], day: NaiveDate, rates: &Rates, words: &Words) -> BookPage {
    let mut page = BookPage::new(say!(words, "list"), "", rates);
    page.fact(say!(words, "list-as-of"), words.date(day));
    let columns = vec![
        text(say!(words, "book-number"), 14),
        text(say!(words, "book-stands"), 14),
        text(say!(words, "list-since"), 12),
        figures(say!(words, "list-quoted"), 20),
        figures(say!(words, "list-owed"), 20),
    ];
    let mut table = TextTable::new(String::new(), columns, say!(words, "list-empty"));
    for one in commissions {
        let gross = one.quoted.as_ref().map(|(_, figures)| words.money(figures.gross)).unwrap_or_default();
        let due = one.due();
        // Money that the client gets back is hers wherever the commission stands.
        let owed = match due {
            due if due < Decimal::ZERO => say!(words, "list-goes-back", amount = words.money(-due)),
            due if due.is_zero() || !one.state.is_won() => String::new(),
            due => words.money(due),
        };
        table.row(
            vec![one.name().to_owned(), state_words(one.state, words), one.since.to_string(), gross, owed],
            format!("{}: {}", one.client.name, one.title),
        );
    }
    page.tables.push(table);
    page
}

/// The list, for other programs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct ListJson {
    /// Version of this form.
    pub form: u32,
    /// The day it is as of.
    pub day: NaiveDate,
    /// Each commission, in the order they were entered.
    pub commissions: Vec<ListedJson>,
}

/// A commission in a list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct ListedJson {
    /// Its number; nothing for an enquiry.
    pub number: Option<String>,
    /// The revision of its last quote.
    pub revision: Option<u32>,
    /// Its file's stem.
    pub reference: String,
    /// What it is about.
    pub title: String,
    /// Who asked.
    pub client: String,
    /// Where it stands.
    pub state: &'static str,
    /// Since when.
    pub since: NaiveDate,
    /// Three letters of ISO 4217.
    pub currency: Option<String>,
    /// What it was quoted at, with tax.
    pub gross: Option<Decimal>,
    /// What was paid.
    pub paid: Decimal,
    /// What is owed: what it was quoted at less what was paid.
    pub due: Decimal,
    /// When it is promised.
    pub promised: Option<NaiveDate>,
    /// Last day of the quote.
    pub valid_until: Option<NaiveDate>,
}

impl ListedJson {
    pub(super) fn of(one: &BookedCommission) -> Self {
        let figures = one.quoted.as_ref().map(|(_, figures)| figures);
        Self {
            number: one.number.clone(),
            revision: one.quoted.as_ref().map(|(revision, _)| *revision),
            reference: one.reference.clone(),
            title: one.title.clone(),
            client: one.client.name.clone(),
            state: one.state.word(),
            since: one.since,
            currency: figures.map(|figures| figures.currency.clone()),
            gross: figures.map(|figures| figures.gross),
            paid: one.paid,
            due: one.due(),
            promised: figures.and_then(|figures| figures.promised),
            valid_until: figures.map(|figures| figures.valid_until),
        }
    }
}

/// The list, for other programs.
pub fn list_json(commissions: &[BookedCommission], day: NaiveDate) -> ListJson {
    ListJson { form: FORM, day, commissions: commissions.iter().map(ListedJson::of).collect() }
}

/// The list as comma-separated values (RFC 4180).
///
/// # Errors
/// When the values can't be written, which a table in memory never does.
pub fn list_csv(commissions: &[BookedCommission]) -> Result<String, csv::Error> {
    let mut table = Spreadsheet::new([
        "number",
        "revision",
        "reference",
        "title",
        "client",
        "state",
        "since",
        "currency",
        "gross",
        "paid",
        "due",
        "promised",
        "valid-until",
    ])?;
    for one in commissions.iter().map(ListedJson::of) {
        let or_none = |word: Option<String>| word.unwrap_or_default();
        table.row([
            or_none(one.number),
            or_none(one.revision.map(|revision| revision.to_string())),
            one.reference,
            one.title,
            one.client,
            one.state.to_owned(),
            one.since.to_string(),
            or_none(one.currency),
            or_none(one.gross.map(|gross| gross.to_string())),
            one.paid.to_string(),
            one.due.to_string(),
            or_none(one.promised.map(|day| day.to_string())),
            or_none(one.valid_until.map(|day| day.to_string())),
        ])?;
    }
    table.text()
}
