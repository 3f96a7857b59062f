//! The client's quote.

use reeve_costing::caution::Caution;
use reeve_costing::quote::{AmountKind, PartKind, Prices, Quote, QuoteAmount, QuoteLine};
use reeve_costing::rates::Rates;
use reeve_costing::schedule::InstalmentKind;
use rust_decimal::Decimal;
use serde::Serialize;

use crate::phrases::say;
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
    let made_to_order = quote.made_to_order.then(|| say!(words, "quote-made-to-order"));
    QuotePage {
        head: Letterhead::new(rates, &quote.title),
        reference: quote.reference.clone(),
        changes: quote.changes.clone(),
        date: words.date(quote.date),
        valid_until: words.date(quote.valid_until),
        promised: quote.promised.map(|day| words.date(day)),
        client: std::iter::once(&quote.client.name).chain(&quote.client.address).cloned().collect(),
        taxed: quote.prices != Prices::Untaxed,
        tax_sentence: tax_sentence(quote, words),
        lines: quote.lines.iter().map(|line| worded(line, words)).collect(),
        sums: sums(quote, words),
        schedule: quote
            .schedule
            .iter()
            .map(|part| Row {
                text: instalment_text(part.kind, quote, words),
                detail: when(part.kind, words),
                // What is paid back is below zero for who pays; in words it is an amount.
                amount: words.money(part.amount.abs()),
            })
            .collect(),
        settled: settled(quote, words),
        terms: quote.terms.iter().cloned().chain(made_to_order).collect(),
        care: quote.care.clone(),
        cautions: quote.cautions.iter().map(|caution| caution_words(caution, words)).collect(),
        note: quote.note.clone(),
    }
}

fn worded(line: &QuoteLine, words: &Words) -> LineView {
    LineView {
        text: line.text.clone(),
        about: about(line, words),
        quantity: words.number(line.quantity),
        unit_price: words.price(line.unit_price),
        amount: words.money(line.amount),
        tax: line.tax_rate.as_deref().map(|rate| tax_word(rate, words)).unwrap_or_default(),
        parts: line.parts.iter().map(|part| Row::new(part_text(part.kind, words), words.money(part.amount))).collect(),
    }
}

/// What a line says of its piece, and how large that comes out.
fn about(line: &QuoteLine, words: &Words) -> Option<String> {
    let finished = line.finished.as_ref().map(|finished| say!(words, "quote-finished", size = finished.as_str()));
    match (&line.about, finished) {
        (Some(about), Some(finished)) => Some(format!("{about} {finished}")),
        (about, finished) => about.clone().or(finished),
    }
}

fn part_text(kind: PartKind, words: &Words) -> String {
    match kind {
        PartKind::Cord => say!(words, "quote-part-cord"),
        PartKind::Fittings => say!(words, "quote-part-fittings"),
        PartKind::Making => say!(words, "quote-part-making"),
        PartKind::Finishing => say!(words, "quote-part-finishing"),
    }
}

fn instalment_text(kind: InstalmentKind, quote: &Quote, words: &Words) -> String {
    let percent = words.exact_percent(quote.deposit.percent);
    match kind {
        InstalmentKind::Deposit if quote.totals.paid > Decimal::ZERO => {
            say!(words, "quote-deposit-rest", percent = percent)
        }
        InstalmentKind::Deposit => say!(words, "quote-deposit", percent = percent),
        InstalmentKind::Balance => say!(words, "quote-balance"),
        InstalmentKind::Payment => say!(words, "quote-instalment"),
        InstalmentKind::Refund => say!(words, "quote-refund"),
    }
}

/// When it falls due.
fn when(kind: InstalmentKind, words: &Words) -> String {
    match kind {
        InstalmentKind::Deposit | InstalmentKind::Refund => say!(words, "quote-on-acceptance"),
        InstalmentKind::Balance | InstalmentKind::Payment => say!(words, "quote-before-delivery"),
    }
}

/// Why an amount is taken off or put on the whole.
fn amount_text(amount: &QuoteAmount, words: &Words) -> String {
    let own = match amount.kind {
        AmountKind::Rush => say!(words, "quote-rush"),
        AmountKind::Discount | AmountKind::Named => amount.text.clone().unwrap_or_default(),
    };
    match amount.percent {
        Some(percent) => say!(words, "quote-with-percent", reason = own, percent = words.exact_percent(percent)),
        None => own,
    }
}

/// What to take care of.
fn caution_words(caution: &Caution, words: &Words) -> String {
    match caution {
        Caution::HangingWeight => say!(words, "caution-hanging-weight"),
        Caution::CordsInReach => say!(words, "caution-cords-in-reach"),
        Caution::AboveCot => say!(words, "caution-above-cot"),
        Caution::NearLamp => say!(words, "caution-near-lamp"),
        Caution::InDoorway => say!(words, "caution-in-doorway"),
        Caution::OfKnot { text } => text.clone(),
    }
}

/// A tax rate as the document has it, in the language's own figures.
fn tax_word(rate: &str, words: &Words) -> String {
    rate.parse().map_or_else(|_| rate.to_owned(), |rate| words.exact_percent(rate))
}

fn tax_sentence(quote: &Quote, words: &Words) -> String {
    let prices = match quote.prices {
        Prices::Net => say!(words, "quote-prices-net"),
        Prices::Inclusive => say!(words, "quote-prices-inclusive"),
        Prices::Untaxed => say!(words, "quote-prices-untaxed"),
    };
    match &quote.maker.tax_note {
        Some(note) => format!("{prices} {note}"),
        None => prices,
    }
}

fn sums(quote: &Quote, words: &Words) -> Vec<Sum> {
    let totals = &quote.totals;
    let row = |text: String, amount, strong| Sum { text, amount: words.money(amount), strong };
    let several = !quote.allowances.is_empty() || !quote.charges.is_empty();
    let mut sums = Vec::new();
    if several {
        sums.push(row(say!(words, "quote-sum-of-lines"), totals.lines, false));
    }
    let named = |amount: &QuoteAmount| with_rate(amount, quote, words);
    sums.extend(quote.allowances.iter().map(|amount| row(named(amount), -amount.amount, false)));
    sums.extend(quote.charges.iter().map(|amount| row(named(amount), amount.amount, false)));
    sums.extend(tax_sums(quote, words));
    let inclusive = quote.prices == Prices::Inclusive;
    let total = if inclusive { say!(words, "quote-total-inclusive") } else { say!(words, "quote-total") };
    sums.push(row(total, totals.gross, true));
    if !totals.paid.is_zero() {
        sums.push(row(say!(words, "quote-paid"), -totals.paid, false));
        if totals.due < Decimal::ZERO {
            sums.push(row(say!(words, "quote-refund"), -totals.due, true));
        } else {
            sums.push(row(say!(words, "quote-due"), totals.due, true));
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
        say!(words, "quote-settled-more", paid = paid, back = words.money(-totals.due))
    } else if totals.due.is_zero() {
        say!(words, "quote-settled-all")
    } else if deposit.amount.is_zero() {
        say!(words, "quote-settled-some", paid = paid)
    } else if totals.paid < deposit.amount {
        say!(words, "quote-settled-part", paid = paid, deposit = asked)
    } else {
        say!(words, "quote-settled-deposit", paid = paid, deposit = asked)
    })
}

/// The rate is named where amounts of several rates are taken off or put on.
fn with_rate(amount: &QuoteAmount, quote: &Quote, words: &Words) -> String {
    let text = amount_text(amount, words);
    match &amount.tax_rate {
        Some(rate) if quote.taxes.len() > 1 => say!(words, "quote-taxed", reason = text, rate = tax_word(rate, words)),
        _ => text,
    }
}

fn tax_sums(quote: &Quote, words: &Words) -> Vec<Sum> {
    if quote.prices == Prices::Untaxed {
        return Vec::new();
    }
    let net = Sum { text: say!(words, "quote-without-tax"), amount: words.money(quote.totals.net), strong: false };
    let taxes = quote.taxes.iter().map(|tax| {
        let base = words.money(tax.base);
        let text = if tax.rate == "exempt" {
            say!(words, "quote-exempt", base = base)
        } else {
            say!(words, "quote-tax-on", rate = tax_word(&tax.rate, words), base = base)
        };
        Sum { text, amount: words.money(tax.tax), strong: false }
    });
    std::iter::once(net).chain(taxes).collect()
}
