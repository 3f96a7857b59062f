//! One design weighed, in finished words.

use reeve_costing::money::to_decimals;
use reeve_costing::pricing::Outcome;
use reeve_costing::single_piece::{Effort, cost_of_efforts};
use reeve_costing::whatif::{Effect, Input};
use reeve_office::Weighed;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde::Serialize;

use crate::graph;
use crate::quote::{Letterhead, Row, Sum};
use crate::words::Words;

/// What an input is called on a page.
fn input_words(input: &Input) -> &'static str {
    match input {
        Input::Cord(_) => "Price of cord",
        Input::Wage => "Wage",
        Input::Overhead => "Overhead",
        Input::Fees => "Fees",
        Input::Pace => "Pace: time for the same work",
    }
}

/// One design weighed, in finished words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct WeighPage {
    head: Letterhead,
    design: String,
    changes: Vec<String>,
    at: String,
    made_of: Vec<PricePart>,
    remains: Vec<Sum>,
    moves: Vec<EffectRow>,
    sure: Vec<SureRow>,
    prices: Vec<PriceRow>,
    efforts: Vec<Row>,
    pays_back: String,
    stack: String,
    effects: String,
}

/// A part of the price.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct PricePart {
    text: &'static str,
    amount: String,
    share: String,
    bar: String,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct EffectRow {
    text: &'static str,
    higher: String,
    lower: String,
    bar: String,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct SureRow {
    confidence: String,
    hours: String,
    price: String,
    margin: String,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct PriceRow {
    price: String,
    margin: String,
    percent: String,
    per_hour: String,
    is_weighed: bool,
}

/// Width of the bars of text, in characters.
const BAR: usize = 30;
const MOVE_BAR: usize = 20;

/// Words a design weighed, and what it comes to at some prices; `changes` says what is otherwise than in the shop.
pub fn weigh_page(weighed: &Weighed<'_>, prices: &[Decimal], changes: &[String], words: &Words) -> WeighPage {
    let sold = weighed.sold();
    let (found, rates) = (&weighed.scales.found, &weighed.scales.changed.basis.rates);
    WeighPage {
        head: Letterhead::new(rates, &found.piece.title),
        design: found.name.clone(),
        changes: changes.to_vec(),
        at: format!(
            "{}, {}",
            words.price(weighed.price),
            if weighed.is_market { "what buyers pay" } else { "by the shop's aim" }
        ),
        made_of: made_of(&sold, words),
        remains: remains(weighed, &sold, words),
        moves: moves(&weighed.effects, words),
        sure: weighed
            .sure
            .iter()
            .map(|sure| SureRow {
                confidence: words.percent(sure.confidence.normalize()),
                hours: words.hours(sure.hours),
                price: words.price(sure.price),
                margin: words.rounded(sure.margin),
            })
            .collect(),
        prices: prices.iter().map(|price| price_row(weighed, *price, words)).collect(),
        efforts: efforts(weighed, words),
        pays_back: pays_back(weighed, words),
        stack: graph::stacks(
            "What the price is made of",
            &KINDS,
            &[price_stack(&found.piece.title, sold.income, parts(&sold), words)],
        ),
        effects: graph::effects("What moves the margin most", &effect_bars(&weighed.effects, words)),
    }
}

/// What a price is made of, in the order of the bars.
pub(crate) const KINDS: [&str; 5] = ["Material", "Labour", "Overhead", "Fees", "Margin"];

fn parts(sold: &Outcome) -> [Decimal; 5] {
    let cost = &sold.cost;
    [cost.material() + cost.other, cost.labour(), cost.overhead, sold.fees, sold.margin]
}

/// A bar of what a price is made of, by [`KINDS`]; a margin below zero shows where the price ends.
pub(crate) fn price_stack(title: &str, income: Decimal, parts: [Decimal; 5], words: &Words) -> graph::Stack {
    let [.., margin] = parts;
    graph::Stack {
        label: title.to_owned(),
        parts: parts.iter().map(|part| part.to_f64().unwrap_or_default().max(0.0)).collect(),
        total: words.rounded(income),
        beyond: (margin < Decimal::ZERO).then(|| income.to_f64().unwrap_or_default()),
        words: KINDS.iter().zip(parts).map(|(kind, part)| format!("{kind} {}", words.rounded(part))).collect(),
    }
}

pub(crate) fn effect_bars(effects: &[Effect], words: &Words) -> Vec<graph::EffectBar> {
    let bar = |effect: &Effect| graph::EffectBar {
        label: input_words(&effect.input).to_owned(),
        changes: [effect.higher, effect.lower].map(|change| change.to_f64().unwrap_or_default()),
        words: format!("{} or {}", words.rounded(effect.higher), words.rounded(effect.lower)),
    };
    effects.iter().map(bar).collect()
}

fn share(part: Decimal, whole: Decimal) -> f64 {
    if whole <= Decimal::ZERO { 0.0 } else { (part / whole).to_f64().unwrap_or_default() }
}

fn made_of(sold: &Outcome, words: &Words) -> Vec<PricePart> {
    let part = |(text, amount): (&&'static str, Decimal)| PricePart {
        text,
        amount: words.rounded(amount),
        share: if sold.income.is_zero() {
            String::new()
        } else {
            words.percent_in_column(amount / sold.income * Decimal::ONE_HUNDRED)
        },
        bar: graph::bar(share(amount, sold.income), BAR),
    };
    KINDS.iter().zip(parts(sold)).map(part).collect()
}

fn remains(weighed: &Weighed<'_>, sold: &Outcome, words: &Words) -> Vec<Sum> {
    let row = |text: &str, amount: String, strong| Sum { text: text.to_owned(), amount, strong };
    let mut rows = vec![
        row("Lowest price that pays the wage", words.price(weighed.scales.alone.lowest), false),
        row("Price by the shop's aim", words.price(weighed.scales.alone.price.unit), false),
        row("Comes in, without tax", words.rounded(sold.income), false),
        row("Margin after fees", words.rounded(sold.margin), true),
    ];
    rows.extend(
        sold.margin_percent
            .map(|percent| row("Margin on what comes in", words.percent(to_decimals(percent, 1)), false)),
    );
    rows.push(row("Bench hours", words.hours(sold.cost.hours), false));
    rows.extend(sold.per_hour.map(|earned| row("A bench hour earns", words.rounded(earned), true)));
    rows.extend(
        sold.contribution_per_hour().map(|brought| row("A bench hour contributes", words.rounded(brought), false)),
    );
    rows
}

fn moves(effects: &[Effect], words: &Words) -> Vec<EffectRow> {
    let most = effects.iter().map(|effect| effect.higher.abs()).max().unwrap_or_default();
    let row = |effect: &Effect| EffectRow {
        text: input_words(&effect.input),
        higher: words.rounded(effect.higher),
        lower: words.rounded(effect.lower),
        bar: graph::bar(share(effect.higher.abs(), most), MOVE_BAR),
    };
    effects.iter().map(row).collect()
}

fn price_row(weighed: &Weighed<'_>, price: Decimal, words: &Words) -> PriceRow {
    let sold = weighed.scales.sold_at(price);
    PriceRow {
        price: words.price(price),
        margin: words.rounded(sold.margin),
        percent: sold.margin_percent.map(|percent| words.percent_in_column(percent)).unwrap_or_default(),
        per_hour: sold.per_hour.map(|earned| words.rounded(earned)).unwrap_or_default(),
        is_weighed: price == weighed.price,
    }
}

fn efforts(weighed: &Weighed<'_>, words: &Words) -> Vec<Row> {
    let row = |effort: &Effort| {
        let cost = cost_of_efforts(std::slice::from_ref(effort), &weighed.scales.changed.basis.rates).total();
        Row { text: effort.title.clone(), detail: words.time(effort.time), amount: words.rounded(cost) }
    };
    weighed.scales.found.efforts.iter().map(row).collect()
}

fn pays_back(weighed: &Weighed<'_>, words: &Words) -> String {
    let Some((cost, pieces)) = weighed.pays_back() else { return String::new() };
    let cost = words.rounded(cost);
    match pieces {
        None => format!("{cost} in all, and at this price no number of pieces ever pays for it."),
        Some(pieces) => {
            let weeks = weighed.scales.found.market.weekly.map_or_else(String::new, |weekly| {
                let weeks = (pieces / Decimal::from(weekly)).ceil();
                format!(", some {} weeks at {weekly} a week", words.number(weeks))
            });
            format!("{cost} in all: paid for by the margin of {} pieces{weeks}.", words.number(pieces))
        }
    }
}
