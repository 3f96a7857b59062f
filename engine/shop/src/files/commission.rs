//! `commissions/*.toml`: a client's order or enquiry, as typed.

use std::ops::Range;

use chrono::NaiveDate;
use reeve_costing::commission::{Client, DiscountSize};
use reeve_measure::{Time, bound};
use reeve_reading::{
    Count, Day, Flag, List, Money, Name, Number, NumberOrLength, Percent, Placed, Quantity, Table, Text,
};
use rust_decimal::Decimal;

use super::Chosen;

/// A commission as typed.
#[derive(Debug, Clone, PartialEq)]
pub struct TypedCommission {
    /// What it is about.
    pub title: String,
    /// Who asks.
    pub client: Client,
    /// When it was asked.
    pub asked: Option<NaiveDate>,
    /// When the client needs it.
    pub needed_by: Option<NaiveDate>,
    /// When it is promised.
    pub promised: Option<NaiveDate>,
    /// Pieces to be made.
    pub items: Vec<TypedItem>,
    /// Lines with a price given; the delivery last.
    pub lines: Vec<TypedLine>,
    /// Whether it jumps the queue.
    pub rush: bool,
    /// How sure the hours of its prices are, in per cent.
    pub confidence: Option<Decimal>,
    /// Why, and how much.
    pub discount: Option<(String, DiscountSize)>,
    /// Taken off the whole.
    pub allowances: Vec<TypedAmount>,
    /// Put on the whole.
    pub charges: Vec<TypedAmount>,
    /// Deposit, in per cent.
    pub deposit: Option<Decimal>,
    /// Paid already.
    pub paid: Decimal,
    /// A sentence for the client.
    pub note: Option<String>,
}

/// So many of one design, as typed.
#[derive(Debug, Clone, PartialEq)]
pub struct TypedItem {
    /// The heading's place.
    pub span: Range<usize>,
    /// The design.
    pub design: Placed<String>,
    /// How many.
    pub quantity: u32,
    /// What the client reads.
    pub text: Option<String>,
    /// Price of one, agreed.
    pub price: Option<Decimal>,
    /// How it is taxed, where that differs.
    pub tax: Option<Placed<TypedTax>>,
    /// One of the design's sizes.
    pub size: Option<Placed<String>>,
    /// Measures in place of the design's.
    pub measures: Chosen,
    /// Cords put in place of the design's.
    pub cords: Vec<(Placed<String>, Placed<String>)>,
}

/// How something is taxed, as typed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TypedTax {
    /// At so many per cent.
    Rate(Decimal),
    /// Exempt.
    Exempt,
}

/// A line with a price given, as typed.
#[derive(Debug, Clone, PartialEq)]
pub struct TypedLine {
    /// What the client reads.
    pub text: String,
    /// How many.
    pub quantity: Decimal,
    /// Price of one.
    pub unit_price: Decimal,
    /// How it is taxed, where that differs.
    pub tax: Option<Placed<TypedTax>>,
    /// What the line costs.
    pub cost: Decimal,
    /// Bench time the line takes.
    pub time: Time,
}

/// An amount on the whole, as typed.
#[derive(Debug, Clone, PartialEq)]
pub struct TypedAmount {
    /// Why.
    pub text: String,
    /// How much.
    pub amount: Decimal,
    /// How it is taxed, where that differs.
    pub tax: Option<Placed<TypedTax>>,
}

/// Reads a commission.
pub fn commission_file(t: &mut Table<'_>) -> Option<TypedCommission> {
    let head = t.need_table("commission", "What is asked, by whom and when.", head);
    let items = t.tables("item", "So many of one design.", item);
    let mut lines: Vec<TypedLine> = t
        .tables("line", "A line with a price given: a bought-in article, a credit.", line)
        .into_iter()
        .map(|line| line.value)
        .collect();
    let delivery = t.table("delivery", "How the pieces reach the client, and what that costs.", delivery);
    let discount = t.table("discount", "Taken off all lines.", discount);
    let allowances = t.tables("allowance", "A further amount taken off the whole.", amount);
    let charges = t.tables("charge", "A further amount put on the whole.", amount);
    if items.is_empty() && lines.is_empty() && !t.has("item") && !t.has("line") {
        t.refuse(
            "the commission asks for nothing",
            "at least one [[item]] or [[line]]",
            "add [[item]] with design and quantity",
        );
        return None;
    }
    lines.extend(delivery.map(|delivery| delivery.value));
    let head = head?.value;
    Some(TypedCommission {
        items: items.into_iter().map(|item| item.value).collect(),
        lines,
        discount: discount.map(|discount| discount.value),
        allowances: allowances.into_iter().map(|amount| amount.value).collect(),
        charges: charges.into_iter().map(|amount| amount.value).collect(),
        ..head
    })
}

fn head(t: &mut Table<'_>) -> Option<TypedCommission> {
    let title = t.need("title", &Text, "What it is about, for the head of the quote.");
    let client = t.need("client", &Text, "Who asks.");
    let address = t.maybe("address", &List(Text), "Lines of the client's address.");
    let asked = t.maybe("asked", &Day, "When it was asked.");
    let needed_by = t.maybe("needed-by", &Day, "When the client needs it.");
    let promised = t.maybe("promised", &Day, "When you promise it.");
    for (what, day) in [("promised", &promised), ("needed", &needed_by)] {
        if let (Some(day), Some(asked)) = (day, &asked)
            && day.value < asked.value
        {
            let title = format!("it is {what} for {}, before it was asked", day.value);
            t.refuse_at(day.span.clone(), title, format!("asked on {}", asked.value), "look for a slip in the year");
        }
    }
    let rush = t.maybe("rush", &Flag, "Whether it jumps the queue, at the shop's surcharge.");
    let confidence = t.maybe(
        "confidence",
        &Percent(bound::CONFIDENCE),
        "Prices are for hours that suffice so surely, where that differs from the shop's rule.",
    );
    let deposit = t.maybe("deposit", &Percent(bound::SHARE), "Deposit, where it differs from the shop's terms.");
    let paid = t.maybe("paid", &Money::AMOUNT, "Paid already.");
    let note = t.maybe("note", &Text, "A sentence for the client.");
    Some(TypedCommission {
        title: title?.value,
        client: Client {
            name: client?.value,
            address: address.map(|lines| lines.value.into_iter().map(|line| line.value).collect()).unwrap_or_default(),
        },
        asked: asked.map(|day| day.value),
        needed_by: needed_by.map(|day| day.value),
        promised: promised.map(|day| day.value),
        items: Vec::new(),
        lines: Vec::new(),
        rush: rush.is_some_and(|rush| rush.value),
        confidence: confidence.map(|percent| percent.value),
        discount: None,
        allowances: Vec::new(),
        charges: Vec::new(),
        deposit: deposit.map(|percent| percent.value),
        paid: paid.map_or(Decimal::ZERO, |paid| paid.value),
        note: note.map(|note| note.value),
    })
}

fn item(t: &mut Table<'_>) -> Option<TypedItem> {
    let design = t.need("design", &Name, "A design's file, without .toml.");
    let quantity = t.maybe("quantity", &Count(bound::PIECES), "How many; 1 if not said.");
    let size = t.maybe("size", &Name, "One of the design's sizes.");
    let measures = t.pairs("measures", &NumberOrLength, "Measures in place of the design's: { drop = \"120 cm\" }.");
    let text = t.maybe("text", &Text, "What the client reads, in place of the design's name.");
    let price = t.maybe("price", &Money::AMOUNT, "A price of one that is agreed, in place of the computed one.");
    let tax = tax(t);
    let cords = t.pairs("cords", &Name, "Cords put in place of the design's: { its-cord = \"another-cord\" }.");
    Some(TypedItem {
        span: t.span(),
        design: design?,
        quantity: quantity.map_or(1, |quantity| quantity.value),
        text: text.map(|text| text.value),
        price: price.map(|price| price.value),
        tax,
        size,
        measures,
        cords,
    })
}

/// `tax = "20 %"` or `exempt = true`.
fn tax(t: &mut Table<'_>) -> Option<Placed<TypedTax>> {
    let rate = t.maybe("tax", &Percent(bound::TAX_RATE), "Its tax rate, where it differs from the shop's.");
    let exempt = t.maybe("exempt", &Flag, "Whether it is exempt from tax.");
    match (rate, exempt) {
        (Some(rate), Some(exempt)) if exempt.value => {
            t.refuse_at(rate.span, "it is exempt and has a rate", "one or the other", "take out `tax` or `exempt`");
            None
        }
        (Some(rate), _) => Some(Placed { value: TypedTax::Rate(rate.value), span: rate.span }),
        (None, Some(exempt)) if exempt.value => Some(Placed { value: TypedTax::Exempt, span: exempt.span }),
        (None, _) => None,
    }
}

fn line(t: &mut Table<'_>) -> Option<TypedLine> {
    let text = t.need("text", &Text, "What the client reads.");
    let quantity = t.maybe("quantity", &Quantity, "How many; 1 if not said; negative for a credit.");
    let unit_price = t.need("unit-price", &Money::EITHER_WAY, "Price of one, up to 5 decimals.");
    let tax = tax(t);
    let cost = t.maybe("cost", &Money::AMOUNT, "What the whole line costs you.");
    let minutes = t.maybe("minutes", &Number(bound::TASK_MINUTES), "Bench time the whole line takes.");
    Some(TypedLine {
        text: text?.value,
        quantity: quantity.map_or(Decimal::ONE, |quantity| quantity.value),
        unit_price: unit_price?.value,
        tax,
        cost: cost.map_or(Decimal::ZERO, |cost| cost.value),
        time: minutes.map_or(Time::ZERO, |minutes| Time::minutes(minutes.value)),
    })
}

fn delivery(t: &mut Table<'_>) -> Option<TypedLine> {
    let text = t.need("text", &Text, "What the client reads.");
    let price = t.need("price", &Money::AMOUNT, "What the client pays for it.");
    let tax = tax(t);
    let cost = t.maybe("cost", &Money::AMOUNT, "What it costs you.");
    let minutes = t.maybe("minutes", &Number(bound::TASK_MINUTES), "Your time for it.");
    Some(TypedLine {
        text: text?.value,
        quantity: Decimal::ONE,
        unit_price: price?.value,
        tax,
        cost: cost.map_or(Decimal::ZERO, |cost| cost.value),
        time: minutes.map_or(Time::ZERO, |minutes| Time::minutes(minutes.value)),
    })
}

fn discount(t: &mut Table<'_>) -> Option<(String, DiscountSize)> {
    let text = t.maybe("text", &Text, "Why, for the client; `Discount` if not said.");
    let rate = t.maybe("rate", &Percent(bound::SHARE), "So many per cent of all lines.");
    let amount = t.maybe("amount", &Money::AMOUNT, "In its place: an amount.");
    let size = match (rate, amount) {
        (Some(rate), None) => DiscountSize::Percent(rate.value),
        (None, Some(amount)) => DiscountSize::Amount(amount.value),
        _ => {
            if t.has("rate") == t.has("amount") {
                t.refuse("a discount is a rate or an amount", "one of the two", "for example rate = \"5 %\"");
            }
            return None;
        }
    };
    Some((text.map_or_else(|| "Discount".to_owned(), |text| text.value), size))
}

fn amount(t: &mut Table<'_>) -> Option<TypedAmount> {
    let text = t.need("text", &Text, "Why, for the client.");
    let amount = t.need("amount", &Money::AMOUNT, "How much.");
    let tax = tax(t);
    Some(TypedAmount { text: text?.value, amount: amount?.value, tax })
}
