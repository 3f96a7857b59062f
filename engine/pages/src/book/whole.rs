//! One commission with all that the book knows of it.

use chrono::NaiveDate;
use reeve_book::{History, IssuedQuote, Logged, LoggedLine};
use reeve_costing::money::decimal;
use reeve_costing::rates::Rates;
use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::Serialize;

use super::FORM;
use super::list::ListedJson;
use super::table::{BookPage, TextTable, figures, words as text};
use crate::words::Words;

/// Words a commission.
pub fn history_page(whole: &History, rates: &Rates, words: &Words) -> BookPage {
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
            format!("{} expected, {} suffice", words.hours(figures.hours), words.hours(figures.sure_hours)),
        );
        page.fact("Valid until", words.date(figures.valid_until));
        if let Some(promised) = figures.promised {
            page.fact("Promised", words.date(promised));
        }
    }
    page.tables.push(quotes(&whole.entries, words));
    page.tables.push(lines(&whole.lines, words));
    page
}

fn quotes(entries: &[IssuedQuote], words: &Words) -> TextTable {
    let columns =
        [text("Quote", 14), text("Day", 12), figures("Gross", 18), figures("Margin", 18), figures("Hours", 18)];
    let mut table = TextTable::new("Quotes", &columns, "None was issued.");
    for entry in entries {
        let figures = &entry.figures;
        let cells = vec![
            if entry.revision == 0 { "first".to_owned() } else { format!("revision {}", entry.revision) },
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
    let columns = [text("No.", 5), text("Day", 12), text("What was entered", 63)];
    let mut table = TextTable::new("Entries", &columns, "Nothing.");
    for line in lines {
        let note = line.note.clone().unwrap_or_default();
        let undone = if line.undone.is_some() { "undone: " } else { "" };
        let what = format!("{undone}{}", logged_words(&line.what, words));
        let cells = vec![line.number.to_string(), line.day.to_string(), what];
        match &line.undone {
            None => table.row(cells, note),
            Some(undone) => {
                let why = format!("Undone on {}: {}", undone.day, undone.why);
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
        Logged::Marked(state) => state.to_string(),
        Logged::Paid(amount) if amount.is_sign_negative() => format!("paid back {}", words.money(-*amount)),
        Logged::Paid(amount) => format!("paid {}", words.money(*amount)),
        Logged::Worked(minutes, step) => {
            let at = step.as_ref().map(|step| format!(", {step}")).unwrap_or_default();
            format!("{} minutes{at}", number(*minutes, 2))
        }
        Logged::Cord(cord, metres) => format!("{}\u{a0}m of {cord}", number(*metres, 3)),
        Logged::Bought(what, amount) => format!("bought for {}: {what}", words.money(*amount)),
    }
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
    /// What happened to it, in order; what was undone is not there.
    pub happenings: Vec<HappeningJson>,
    /// Payments that stand, in order.
    pub payments: Vec<PaymentJson>,
    /// Everything that was entered, in order, with what was undone.
    pub entries: Vec<EntryJson>,
}

/// What was entered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
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
