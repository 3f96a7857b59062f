//! One commission with all that the book knows of it.

use chrono::NaiveDate;
use reeve_book::{Entry, Happening, Payment, Whole};
use reeve_costing::rates::Rates;
use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::Serialize;

use super::FORM;
use super::list::ListedJson;
use super::table::{BookPage, Table, figures, words as text};
use crate::words::Words;

/// Words a commission.
pub fn whole_page(whole: &Whole, rates: &Rates, words: &Words) -> BookPage {
    let one = &whole.course.commission;
    let mut page = BookPage::new("Commission", &one.title, rates);
    page.fact("Number", one.name());
    page.fact(
        "Client",
        std::iter::once(&one.client.name).chain(&one.client.address).cloned().collect::<Vec<_>>().join(", "),
    );
    page.fact("Stands", format!("{}, since {}", one.state, words.date(one.since)));
    page.fact("File", one.reference.clone());
    if let Some((_, figures)) = &one.quoted {
        page.fact("Quoted", words.money(figures.gross));
        if !figures.deposit.is_zero() {
            page.fact("Deposit asked", words.money(figures.deposit));
        }
        page.fact("Paid", words.money(rates.currency.round_half_away(one.paid)));
        let due = rates.currency.round_half_away(one.due());
        let (what, due) = if due < Decimal::ZERO { ("Goes back to the client", -due) } else { ("Owed", due) };
        page.fact(what, words.money(due));
        page.fact(
            "Hours",
            format!(
                "{} expected, {} suffice",
                words.hours(figures.hours.round_dp(2)),
                words.hours(figures.sure_hours.round_dp(2))
            ),
        );
        page.fact("Valid until", words.date(figures.valid_until));
        if let Some(promised) = figures.promised {
            page.fact("Promised", words.date(promised));
        }
    }
    page.tables.push(quotes(&whole.entries, words));
    page.tables.push(happenings(&whole.course.happenings));
    page.tables.push(payments(&whole.course.payments, words));
    page
}

fn quotes(entries: &[Entry], words: &Words) -> Table {
    let columns =
        [text("Quote", 14), text("Day", 12), figures("Gross", 18), figures("Margin", 18), figures("Hours", 18)];
    let mut table = Table::new("Quotes", &columns, "None was issued.");
    for entry in entries {
        let figures = &entry.figures;
        let cells = vec![
            if entry.revision == 0 { "first".to_owned() } else { format!("revision {}", entry.revision) },
            entry.day.to_string(),
            words.money(figures.gross),
            words.rounded(figures.margin),
            words.hours(figures.hours.round_dp(2)),
        ];
        let changes: Vec<&str> = entry.changes.iter().chain(&entry.maker_changes).map(String::as_str).collect();
        table.row(cells, changes.join(" "));
    }
    table
}

fn happenings(happenings: &[Happening]) -> Table {
    let mut table = Table::new("What happened", &[text("Day", 12), text("Then it stood", 68)], "Nothing.");
    for one in happenings {
        table.row(vec![one.day.to_string(), one.state.to_string()], one.note.clone().unwrap_or_default());
    }
    table
}

fn payments(payments: &[Payment], words: &Words) -> Table {
    let mut table = Table::new("Payments", &[text("Day", 12), figures("Amount", 18)], "None yet.");
    for one in payments {
        table.row(vec![one.day.to_string(), words.money(one.amount)], one.note.clone().unwrap_or_default());
    }
    table
}

/// A commission, for other programs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct WholeJson {
    /// Version of this form.
    pub form: u32,
    /// As it stands.
    pub commission: ListedJson,
    /// Its quotes, the first one first.
    pub quotes: Vec<QuotedJson>,
    /// What happened to it, in order.
    pub happenings: Vec<HappeningJson>,
    /// Payments, in order.
    pub payments: Vec<PaymentJson>,
}

/// A quote that was issued.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct QuotedJson {
    /// 0 for the first.
    pub revision: u32,
    /// When.
    pub day: NaiveDate,
    /// What it came to, with tax.
    pub gross: Decimal,
    /// What remains of it.
    pub margin: Decimal,
    /// Bench hours expected.
    pub hours: Decimal,
    /// What changed against the one before, for the client.
    pub changes: Vec<String>,
    /// The same for the maker.
    pub maker_changes: Vec<String>,
    /// The program's version that made it.
    pub program: String,
    /// What tells that program's knots from others.
    pub catalogue: String,
    /// Its pages and documents, by the names that `--page` takes.
    pub pages: Vec<String>,
}

/// Something that happened.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct HappeningJson {
    /// Where it then stood.
    pub state: &'static str,
    /// When.
    pub day: NaiveDate,
    /// A remark.
    pub note: Option<String>,
}

/// A payment, or a refund below zero.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct PaymentJson {
    /// When.
    pub day: NaiveDate,
    /// How much.
    pub amount: Decimal,
    /// A remark.
    pub note: Option<String>,
}

/// A commission, for other programs.
pub fn whole_json(whole: &Whole) -> WholeJson {
    let quote = |entry: &Entry| QuotedJson {
        revision: entry.revision,
        day: entry.day,
        gross: entry.figures.gross,
        margin: entry.figures.margin,
        hours: entry.figures.hours,
        changes: entry.changes.clone(),
        maker_changes: entry.maker_changes.clone(),
        program: entry.program.clone(),
        catalogue: entry.catalogue.clone(),
        pages: entry.pages.clone(),
    };
    WholeJson {
        form: FORM,
        commission: ListedJson::of(&whole.course.commission),
        quotes: whole.entries.iter().map(quote).collect(),
        happenings: whole
            .course
            .happenings
            .iter()
            .map(|one| HappeningJson { state: one.state.word(), day: one.day, note: one.note.clone() })
            .collect(),
        payments: whole
            .course
            .payments
            .iter()
            .map(|one| PaymentJson { day: one.day, amount: one.amount, note: one.note.clone() })
            .collect(),
    }
}
