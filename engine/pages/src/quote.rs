//! The client's quote.

use reeve_costing::caution::MADE_TO_ORDER;
use reeve_costing::quote::{AmountKind, PartKind, Prices, Quote, QuoteAmount, QuoteLine};
use reeve_costing::rates::Rates;
use reeve_costing::schedule::InstalmentKind;
use rust_decimal::Decimal;
use serde::Serialize;

use crate::words::Words;

/// The quote in finished words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct QuotePage {
    head: Letterhead,
    reference: String,
    changes: Vec<String>,
    date: String,
    valid_until: String,
    promised: Option<String>,
    client: Vec<String>,
    taxed: bool,
    tax_sentence: String,
    lines: Vec<LineView>,
    sums: Vec<Sum>,
    schedule: Vec<Row>,
    /// What is paid of it already, in a sentence.
    settled: Option<String>,
    terms: Vec<String>,
    care: Vec<String>,
    cautions: Vec<String>,
    note: Option<String>,
}

/// The letterhead and title that every page has.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub(crate) struct Letterhead {
    language: String,
    accent: String,
    maker: String,
    tagline: Option<String>,
    address: Vec<String>,
    contact: Vec<String>,
    /// The address on one line, for text.
    address_line: String,
    /// How to reach the maker, on one line.
    contact_line: String,
    tax_number: Option<String>,
    title: String,
}

impl Letterhead {
    pub(crate) fn new(rates: &Rates, title: &str) -> Self {
        Self {
            language: rates.maker.language.clone(),
            accent: rates.maker.accent.clone(),
            maker: rates.maker.name.clone(),
            tagline: rates.maker.tagline.clone(),
            address: rates.maker.address.clone(),
            contact: rates.maker.contact.clone(),
            address_line: rates.maker.address.join(", "),
            contact_line: rates.maker.contact.join(", "),
            tax_number: rates.tax.number.clone(),
            title: title.to_owned(),
        }
    }
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct LineView {
    text: String,
    about: Option<String>,
    quantity: String,
    unit_price: String,
    amount: String,
    tax: String,
    parts: Vec<Row>,
}

/// Words and a figure.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub(crate) struct Row {
    pub(crate) text: String,
    pub(crate) detail: String,
    pub(crate) amount: String,
}

impl Row {
    pub(crate) fn new(text: impl Into<String>, amount: impl Into<String>) -> Self {
        Self { text: text.into(), detail: String::new(), amount: amount.into() }
    }
}

/// A row of the totals.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub(crate) struct Sum {
    pub(crate) text: String,
    pub(crate) amount: String,
    /// Whether it is a total that the eye should find.
    pub(crate) strong: bool,
}

/// Words a quote.
pub fn quote_page(quote: &Quote, rates: &Rates, words: &Words) -> QuotePage {
    let made_to_order = quote.made_to_order.then_some(MADE_TO_ORDER);
    QuotePage {
        head: Letterhead::new(rates, &quote.title),
        reference: quote.reference.clone(),
        changes: quote.changes.clone(),
        date: words.date(quote.date),
        valid_until: words.date(quote.valid_until),
        promised: quote.promised.map(|day| words.date(day)),
        client: std::iter::once(&quote.client.name).chain(&quote.client.address).cloned().collect(),
        taxed: quote.prices != Prices::Untaxed,
        tax_sentence: tax_sentence(quote),
        lines: quote.lines.iter().map(|line| worded(line, words)).collect(),
        sums: sums(quote, words),
        schedule: quote
            .schedule
            .iter()
            .map(|part| Row {
                text: instalment_text(part.kind, quote, words),
                detail: when(part.kind).to_owned(),
                // What is paid back is below zero for who pays; in words it is an amount.
                amount: words.money(part.amount.abs()),
            })
            .collect(),
        settled: settled(quote, words),
        terms: quote.terms.iter().map(String::as_str).chain(made_to_order).map(str::to_owned).collect(),
        care: quote.care.clone(),
        cautions: quote.cautions.clone(),
        note: quote.note.clone(),
    }
}

fn worded(line: &QuoteLine, words: &Words) -> LineView {
    LineView {
        text: line.text.clone(),
        about: about(line),
        quantity: words.number(line.quantity),
        unit_price: words.price(line.unit_price),
        amount: words.money(line.amount),
        tax: line.tax_rate.as_deref().map(|rate| tax_word(rate, words)).unwrap_or_default(),
        parts: line.parts.iter().map(|part| Row::new(part_text(part.kind), words.money(part.amount))).collect(),
    }
}

/// What a line says of its piece, and how large that comes out.
fn about(line: &QuoteLine) -> Option<String> {
    let finished = line.finished.as_ref().map(|finished| format!("Finished size: {finished}."));
    match (&line.about, finished) {
        (Some(about), Some(finished)) => Some(format!("{about} {finished}")),
        (about, finished) => about.clone().or(finished),
    }
}

fn part_text(kind: PartKind) -> &'static str {
    match kind {
        PartKind::Cord => "Cord",
        PartKind::Fittings => "Rings, dowels and beads",
        PartKind::Making => "Making",
        PartKind::Finishing => "Finishing and packing",
    }
}

fn instalment_text(kind: InstalmentKind, quote: &Quote, words: &Words) -> String {
    let percent = words.exact_percent(quote.deposit.percent);
    match kind {
        InstalmentKind::Deposit if quote.totals.paid > Decimal::ZERO => format!("Rest of the deposit of {percent}"),
        InstalmentKind::Deposit => format!("Deposit, {percent}"),
        InstalmentKind::Balance => "Balance".to_owned(),
        InstalmentKind::Payment => "Payment".to_owned(),
        InstalmentKind::Refund => "Paid back to you".to_owned(),
    }
}

/// When it falls due.
fn when(kind: InstalmentKind) -> &'static str {
    match kind {
        InstalmentKind::Deposit | InstalmentKind::Refund => "on acceptance",
        InstalmentKind::Balance | InstalmentKind::Payment => "before delivery",
    }
}

/// Why an amount is taken off or put on the whole.
fn amount_text(amount: &QuoteAmount, words: &Words) -> String {
    let own = match amount.kind {
        AmountKind::Rush => "Work out of turn",
        AmountKind::Discount | AmountKind::Named => amount.text.as_deref().unwrap_or_default(),
    };
    amount.percent.map_or_else(|| own.to_owned(), |percent| format!("{own}, {}", words.exact_percent(percent)))
}

/// A tax rate as the document has it, in the language's own figures.
fn tax_word(rate: &str, words: &Words) -> String {
    rate.parse().map_or_else(|_| rate.to_owned(), |rate| words.exact_percent(rate))
}

fn tax_sentence(quote: &Quote) -> String {
    let prices = match quote.prices {
        Prices::Net => "Line amounts are without tax.",
        Prices::Inclusive => "All amounts include tax.",
        Prices::Untaxed => "No tax is charged.",
    };
    match &quote.maker.tax_note {
        Some(note) => format!("{prices} {note}"),
        None => prices.to_owned(),
    }
}

fn sums(quote: &Quote, words: &Words) -> Vec<Sum> {
    let totals = &quote.totals;
    let row = |text: String, amount, strong| Sum { text, amount: words.money(amount), strong };
    let several = !quote.allowances.is_empty() || !quote.charges.is_empty();
    let mut sums = Vec::new();
    if several {
        sums.push(row("Sum of the lines".to_owned(), totals.lines, false));
    }
    let named = |amount: &QuoteAmount| with_rate(amount, quote, words);
    sums.extend(quote.allowances.iter().map(|amount| row(named(amount), -amount.amount, false)));
    sums.extend(quote.charges.iter().map(|amount| row(named(amount), amount.amount, false)));
    sums.extend(tax_sums(quote, words));
    let total = if quote.prices == Prices::Inclusive { "Total, tax included" } else { "Total" };
    sums.push(row(total.to_owned(), totals.gross, true));
    if !totals.paid.is_zero() {
        sums.push(row("Paid".to_owned(), -totals.paid, false));
        if totals.due < Decimal::ZERO {
            sums.push(row("Paid back to you".to_owned(), -totals.due, true));
        } else {
            sums.push(row("Due".to_owned(), totals.due, true));
        }
    }
    sums
}

/// How far what is asked is paid: all, more than all, the deposit, or a part of it.
fn settled(quote: &Quote, words: &Words) -> Option<String> {
    let (totals, deposit) = (&quote.totals, &quote.deposit);
    if totals.paid <= Decimal::ZERO {
        return None;
    }
    let (paid, asked) = (words.money(totals.paid), words.money(deposit.amount));
    Some(if totals.due < Decimal::ZERO {
        format!("{paid} is paid: {} more than all of it comes to. That is paid back to you.", words.money(-totals.due))
    } else if totals.due.is_zero() {
        "All of it is paid: nothing is left to pay.".to_owned()
    } else if deposit.amount.is_zero() {
        format!("{paid} is paid.")
    } else if totals.paid < deposit.amount {
        format!("Of the deposit of {asked}, {paid} is paid.")
    } else {
        format!("{paid} is paid, and with it the deposit of {asked}.")
    })
}

/// The rate is named where amounts of several rates are taken off or put on.
fn with_rate(amount: &QuoteAmount, quote: &Quote, words: &Words) -> String {
    let text = amount_text(amount, words);
    match &amount.tax_rate {
        Some(rate) if quote.taxes.len() > 1 => format!("{text} (taxed {})", tax_word(rate, words)),
        _ => text,
    }
}

fn tax_sums(quote: &Quote, words: &Words) -> Vec<Sum> {
    if quote.prices == Prices::Untaxed {
        return Vec::new();
    }
    let net = Sum { text: "Without tax".to_owned(), amount: words.money(quote.totals.net), strong: false };
    let taxes = quote.taxes.iter().map(|tax| {
        let base = words.money(tax.base);
        let text = if tax.rate == "exempt" {
            format!("Exempt from tax: {base}")
        } else {
            format!("Tax {} on {base}", tax_word(&tax.rate, words))
        };
        Sum { text, amount: words.money(tax.tax), strong: false }
    });
    std::iter::once(net).chain(taxes).collect()
}
