//! One design weighed, in finished words.

use reeve_costing::money::to_decimals;
use reeve_costing::pricing::Outcome;
use reeve_costing::single_piece::{Effort, cost_of_efforts};
use reeve_costing::whatif::{By, Change, Effect, Input};
use reeve_office::Weighed;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde::Serialize;

use crate::graph;
use crate::phrases::say;
use crate::quote::{Letterhead, Row, Sum};
use crate::words::Words;

/// What an input is called on a page.
fn input_words(input: &Input, words: &Words) -> String {
    match input {
        Input::Cord(_) => say!(words, "input-cord"),
        Input::Wage => say!(words, "input-wage"),
        Input::Overhead => say!(words, "input-overhead"),
        Input::Fees => say!(words, "input-fees"),
        Input::Pace => say!(words, "input-pace"),
    }
}

/// A change in words: `wage +10 %`, `pace 1.2`.
pub(crate) fn change_words(change: &Change, words: &Words) -> String {
    let input = match &change.input {
        Input::Cord(None) => say!(words, "changed-cord"),
        Input::Cord(Some(cord)) => say!(words, "changed-cord-of", cord = cord.as_str()),
        Input::Wage => say!(words, "changed-wage"),
        Input::Overhead => say!(words, "changed-overhead"),
        Input::Fees => say!(words, "changed-fees"),
        Input::Pace => say!(words, "changed-pace"),
    };
    match change.by {
        By::Percent(percent) if percent < Decimal::ZERO => {
            say!(words, "changed-lower", input = input, percent = words.exact_percent(percent))
        }
        By::Percent(percent) => say!(words, "changed-higher", input = input, percent = words.exact_percent(percent)),
        By::To(value) => say!(words, "changed-to", input = input, value = words.number(value)),
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
    text: String,
    amount: String,
    share: String,
    bar: String,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct EffectRow {
    text: String,
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
pub fn weigh_page(weighed: &Weighed<'_>, prices: &[Decimal], changes: &[Change], words: &Words) -> WeighPage {
    let sold = weighed.sold();
    let (found, rates) = (&weighed.scales.found, &weighed.scales.changed.basis.rates);
    WeighPage {
        head: Letterhead::new(rates, &found.piece.title),
        design: found.name.clone(),
        changes: changes.iter().map(|change| change_words(change, words)).collect(),
        at: if weighed.is_market {
            say!(words, "weigh-at-market", price = words.price(weighed.price))
        } else {
            say!(words, "weigh-at-aim", price = words.price(weighed.price))
        },
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
            &say!(words, "weigh-made-of"),
            &price_kinds(words),
            &[price_stack(&found.piece.title, sold.income, parts(&sold), words)],
        ),
        effects: graph::effects(&say!(words, "weigh-moves"), &effect_bars(&weighed.effects, words)),
    }
}

/// What a price is made of, in the order of the bars.
pub(crate) fn price_kinds(words: &Words) -> [String; 5] {
    [
        say!(words, "price-material"),
        say!(words, "price-labour"),
        say!(words, "price-overhead"),
        say!(words, "price-fees"),
        say!(words, "price-margin"),
    ]
}

fn parts(sold: &Outcome) -> [Decimal; 5] {
    let cost = &sold.cost;
    [cost.material() + cost.other, cost.labour(), cost.overhead, sold.fees, sold.margin]
}

/// A bar of what a price is made of, by [`price_kinds`]; a margin below zero shows where the price ends.
pub(crate) fn price_stack(title: &str, income: Decimal, parts: [Decimal; 5], words: &Words) -> graph::Stack {
    let [.., margin] = parts;
    graph::Stack {
        label: title.to_owned(),
        parts: parts.iter().map(|part| part.to_f64().unwrap_or_default().max(0.0)).collect(),
        total: words.rounded(income),
        tick: say!(words, "price-tick"),
        beyond: (margin < Decimal::ZERO).then(|| income.to_f64().unwrap_or_default()),
        words: price_kinds(words)
            .iter()
            .zip(parts)
            .map(|(kind, part)| format!("{kind} {}", words.rounded(part)))
            .collect(),
    }
}

pub(crate) fn effect_bars(effects: &[Effect], words: &Words) -> Vec<graph::EffectBar> {
    let bar = |effect: &Effect| graph::EffectBar {
        label: input_words(&effect.input, words),
        changes: [effect.higher, effect.lower].map(|change| change.to_f64().unwrap_or_default()),
        words: say!(words, "weigh-either", higher = words.rounded(effect.higher), lower = words.rounded(effect.lower)),
    };
    effects.iter().map(bar).collect()
}

fn share(part: Decimal, whole: Decimal) -> f64 {
    if whole <= Decimal::ZERO { 0.0 } else { (part / whole).to_f64().unwrap_or_default() }
}

fn made_of(sold: &Outcome, words: &Words) -> Vec<PricePart> {
    let part = |(text, amount): (String, Decimal)| PricePart {
        text,
        amount: words.rounded(amount),
        share: if sold.income.is_zero() {
            String::new()
        } else {
            words.percent_in_column(amount / sold.income * Decimal::ONE_HUNDRED)
        },
        bar: graph::bar(share(amount, sold.income), BAR),
    };
    price_kinds(words).into_iter().zip(parts(sold)).map(part).collect()
}

fn remains(weighed: &Weighed<'_>, sold: &Outcome, words: &Words) -> Vec<Sum> {
    let row = |text: String, amount: String, strong| Sum { text, amount, strong };
    let mut rows = vec![
        row(say!(words, "weigh-lowest"), words.price(weighed.scales.alone.lowest), false),
        row(say!(words, "weigh-by-aim"), words.price(weighed.scales.alone.price.unit), false),
        row(say!(words, "weigh-income"), words.rounded(sold.income), false),
        row(say!(words, "weigh-margin-after-fees"), words.rounded(sold.margin), true),
    ];
    rows.extend(
        sold.margin_percent
            .map(|percent| row(say!(words, "weigh-margin-percent"), words.percent(to_decimals(percent, 1)), false)),
    );
    rows.push(row(say!(words, "weigh-hours"), words.hours(sold.cost.hours), false));
    rows.extend(sold.per_hour.map(|earned| row(say!(words, "weigh-per-hour"), words.rounded(earned), true)));
    rows.extend(
        sold.contribution_per_hour()
            .map(|brought| row(say!(words, "weigh-contributes"), words.rounded(brought), false)),
    );
    rows
}

fn moves(effects: &[Effect], words: &Words) -> Vec<EffectRow> {
    let most = effects.iter().map(|effect| effect.higher.abs()).max().unwrap_or_default();
    let row = |effect: &Effect| EffectRow {
        text: input_words(&effect.input, words),
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
    let Some(pieces) = pieces else { return say!(words, "weigh-never-pays", cost = cost) };
    let whole = |number: Decimal| number.to_u64().unwrap_or(u64::MAX);
    match weighed.scales.found.market.weekly {
        None => say!(words, "weigh-pays", cost = cost, pieces = whole(pieces)),
        Some(weekly) => {
            let weeks = whole((pieces / Decimal::from(weekly)).ceil());
            say!(words, "weigh-pays-in-weeks", cost = cost, pieces = whole(pieces), weeks = weeks, weekly = weekly)
        }
    }
}
