//! One commission with all that the book knows of it.

use chrono::NaiveDate;
use reeve_book::{History, IssuedQuote, Logged, LoggedLine};
use reeve_costing::money::decimal;
use reeve_costing::rates::Rates;
use rust_decimal::Decimal;
use serde::Serialize;

use super::list::ListedJson;
use super::table::{BookPage, TextTable, figures, text};
use super::{FORM, state_words};
use crate::phrases::say;
use crate::words::Words;

/// Words a commission.
pub fn history_page(whole: &History, rates: &Rates, words: &Words) -> BookPage {
    let one = &whole.course.commission;
    let mut page = BookPage::new(say!(words, "whole"), &one.title, rates);
    page.fact(say!(words, "book-number"), one.name());
    page.fact(
        say!(words, "book-client"),
        std::iter::once(&one.client.name).chain(&one.client.address).cloned().collect::<Vec<_>>().join(", "),
    );
    page.fact(
        say!(words, "book-stands"),
        say!(words, "whole-since", state = state_words(one.state, words), day = words.date(one.since)),
    );
    page.fact(say!(words, "whole-file"), one.reference.clone());
    if let Some((_, figures)) = &one.quoted {
        page.fact(say!(words, "whole-quoted"), words.money(figures.gross));
        if !figures.deposit.is_zero() {
            page.fact(say!(words, "whole-deposit"), words.money(figures.deposit));
        }
        page.fact(say!(words, "whole-paid"), words.money(rates.currency.round_half_away(one.paid)));
        let due = rates.currency.round_half_away(one.due());
        let back = due < Decimal::ZERO;
        let what = if back { say!(words, "whole-goes-back") } else { say!(words, "whole-owed") };
        page.fact(what, words.money(due.abs()));
        let (expected, suffice) = (words.hours(figures.hours), words.hours(figures.sure_hours));
        page.fact(
            say!(words, "whole-hours"),
            say!(words, "whole-hours-expected", expected = expected, suffice = suffice),
        );
        page.fact(say!(words, "whole-valid-until"), words.date(figures.valid_until));
        if let Some(promised) = figures.promised {
            page.fact(say!(words, "whole-promised"), words.date(promised));
        }
    }
    page.tables.push(quotes(&whole.entries, words));
    page.tables.push(lines(&whole.lines, words));
    page
}

fn quotes(entries: &[IssuedQuote], words: &Words) -> TextTable {
    let columns = vec![
        text(say!(words, "whole-quote"), 14),
        text(say!(words, "whole-day"), 12),
        figures(say!(words, "whole-gross"), 18),
        figures(say!(words, "whole-margin"), 18),
        figures(say!(words, "whole-hours"), 18),
    ];
    let mut table = TextTable::new(say!(words, "whole-quotes"), columns, say!(words, "whole-no-quotes"));
    for entry in entries {
        let figures = &entry.figures;
        let cells = vec![
            if entry.revision == 0 {
                say!(words, "whole-first")
            } else {
                say!(words, "whole-revision", number = entry.revision)
            },
            entry.day.to_string(),
            words.money(figures.gross),
            words.rounded(figures.margin),
            words.hours(figures.hours),
        ];
        let changes: Vec<&str> = entry.changes.iter().chain(&entry.maker_changes).map(String::as_str).collect();
        table.row(cells, changes.join(" "));
    }
    table
}

fn lines(lines: &[LoggedLine], words: &Words) -> TextTable {
    let columns = vec![
        text(say!(words, "whole-number"), 5),
        text(say!(words, "whole-day"), 12),
        text(say!(words, "whole-entered"), 63),
    ];
    let mut table = TextTable::new(say!(words, "whole-entries"), columns, say!(words, "whole-no-entries"));
    for line in lines {
        let note = line.note.clone().unwrap_or_default();
        let mut what = logged_words(&line.what, words);
        if line.undone.is_some() {
            what = say!(words, "whole-undone", what = what);
        }
        let cells = vec![words.count(u64::from(line.number)), line.day.to_string(), what];
        match &line.undone {
            None => table.row(cells, note),
            Some(undone) => {
                let why = say!(words, "whole-undone-on", day = words.date(undone.day), why = undone.why.as_str());
                table.struck(cells, if note.is_empty() { why } else { format!("{note}. {why}") });
            }
        }
    }
    table
}

/// What was entered, in words: `paid €400.00`, `7.17 h, Six arms`.
pub fn logged_words(what: &Logged, words: &Words) -> String {
    let number = |number: f64, places| words.number(decimal(number, places));
    match what {
        Logged::Marked(state) => state_words(*state, words),
        Logged::Paid(amount) if amount.is_sign_negative() => {
            say!(words, "logged-paid-back", amount = words.money(-*amount))
        }
        Logged::Paid(amount) => say!(words, "logged-paid", amount = words.money(*amount)),
        Logged::Worked(minutes, None) => say!(words, "logged-minutes", minutes = number(*minutes, 2)),
        Logged::Worked(minutes, Some(step)) => {
            say!(words, "logged-minutes-at", minutes = number(*minutes, 2), step = step.as_str())
        }
        Logged::Cord(cord, metres) => {
            say!(words, "logged-cord", length = words.metres(decimal(*metres, 3)), cord = cord.as_str())
        }
        Logged::Bought(what, amount) => {
            say!(words, "logged-bought", amount = words.money(*amount), what = what.as_str())
        }
    }
}

/// A commission, for other programs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct WholeJson {
    /// Version of this form.
    pub form: u32,
    /// As it stands.
    pub commission: ListedJson,
    /// Its quotes, the first one first.
    pub quotes: Vec<QuotedJson>,
    /// What happened to it, in order; what was undone is not there.
    pub happenings: Vec<HappeningJson>,
    /// Payments that stand, in order.
    pub payments: Vec<PaymentJson>,
    /// Everything that was entered, in order, with what was undone.
    pub entries: Vec<EntryJson>,
}

/// What was entered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct EntryJson {
    /// Its number within the commission.
    pub number: u32,
    /// When.
    pub day: NaiveDate,
    /// `mark`, `payment`, `minutes`, `cord` or `bought`.
    pub kind: &'static str,
    /// The state, the amount, the minutes, the metres.
    pub value: String,
    /// The step, the cord, what was bought.
    pub of: Option<String>,
    /// A remark.
    pub note: Option<String>,
    /// When it was undone, if it was.
    pub undone: Option<NaiveDate>,
    /// Why.
    pub why: Option<String>,
}

impl EntryJson {
    fn of(line: &LoggedLine) -> Self {
        let (kind, value, of) = match &line.what {
            Logged::Marked(state) => ("mark", state.word().to_owned(), None),
            Logged::Paid(amount) => ("payment", amount.to_string(), None),
            Logged::Worked(minutes, step) => ("minutes", minutes.to_string(), step.clone()),
            Logged::Cord(cord, metres) => ("cord", metres.to_string(), Some(cord.clone())),
            Logged::Bought(what, amount) => ("bought", amount.to_string(), Some(what.clone())),
        };
        let (undone, why) = line.undone.clone().map(|undone| (undone.day, undone.why)).unzip();
        Self { number: line.number, day: line.day, kind, value, of, note: line.note.clone(), undone, why }
    }
}

/// A quote that was issued.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
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
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct HappeningJson {
    /// Where it then stood.
    pub state: &'static str,
    /// When.
    pub day: NaiveDate,
    /// A remark.
    pub note: Option<String>,
}

/// A payment, or a refund below zero.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct PaymentJson {
    /// When.
    pub day: NaiveDate,
    /// How much.
    pub amount: Decimal,
    /// A remark.
    pub note: Option<String>,
}

/// A commission, for other programs.
pub fn history_json(whole: &History) -> WholeJson {
    let quote = |entry: &IssuedQuote| QuotedJson {
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
        entries: whole.lines.iter().map(EntryJson::of).collect(),
    }
}
