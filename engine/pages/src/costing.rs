//! The maker's own costing sheet: never for the client.

use reeve_costing::basis::Basis;
use reeve_costing::cost::{Cost, ItemCost};
use reeve_costing::hand::{Hand, PaceHand, TakeUpSource};
use reeve_costing::learning_curve::{LearningCurve, Model};
use reeve_costing::money::{decimal, to_decimals};
use reeve_costing::price::fees_on;
use reeve_costing::pricing::{AtConfidence, ItemPrice, Priced, PricedItem};
use reeve_costing::quote::QuoteLine;
use reeve_costing::rates::{Aim, Overhead, Rates};
use reeve_costing::takeoff::{Doing, KnotLine};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde::Serialize;

use crate::hand::timed_words;
use crate::phrases::say;
use crate::quote::{Letterhead, Row, Sum};
use crate::remarks::remark_words;
use crate::words::Words;

/// The costing of a commission in finished words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct CostingPage {
    head: Letterhead,
    reference: String,
    client: String,
    date: String,
    remarks: Vec<String>,
    outcome: Vec<Sum>,
    sure: SureSheet,
    items: Vec<ItemSheet>,
    lines: Vec<LineRow>,
    whole: Vec<Sum>,
    rates: Vec<Row>,
    hand: Vec<String>,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct SureSheet {
    title: String,
    rows: Vec<Sum>,
    priced: String,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct ItemSheet {
    title: String,
    quantity: String,
    hours: String,
    practised: String,
    cost: Vec<CostRow>,
    price: Vec<Row>,
}

/// A cost for all pieces and for one.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct CostRow {
    text: String,
    all: String,
    one: String,
    strong: bool,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct LineRow {
    text: String,
    cost: String,
    amount: String,
}

/// Words a costing.
pub fn costing_page(priced: &Priced, basis: &Basis, words: &Words) -> CostingPage {
    let rates = &basis.rates;
    let quote = &priced.quote;
    CostingPage {
        head: Letterhead::new(rates, &quote.title),
        reference: quote.reference.clone(),
        client: quote.client.name.clone(),
        date: words.date(quote.date),
        remarks: priced.remarks.iter().map(|remark| remark_words(remark, words)).collect(),
        outcome: outcome(priced, rates, words),
        sure: sure(&priced.sure, words),
        items: priced.items_and_lines().map(|(item, line)| item_sheet(item, line, rates, words)).collect(),
        lines: priced
            .given_lines()
            .map(|(line, cost)| LineRow {
                text: line.text.clone(),
                cost: words.rounded(cost.total()),
                amount: words.money(line.amount),
            })
            .collect(),
        whole: whole(&priced.outcome.cost, words),
        rates: rate_rows(basis, words),
        hand: hand_words(priced, &basis.hand, words),
    }
}

fn outcome(priced: &Priced, rates: &Rates, words: &Words) -> Vec<Sum> {
    let outcome = &priced.outcome;
    let row = |text: String, amount: String, strong| Sum { text, amount, strong };
    let mut rows = vec![row(say!(words, "costing-income"), words.rounded(outcome.income), false)];
    rows.extend(rates.fees.iter().map(|fee| {
        let taken = fees_on(std::slice::from_ref(fee), priced.quote.totals.net, priced.quote.totals.gross);
        row(fee.name.clone(), words.rounded(-taken), false)
    }));
    rows.push(row(say!(words, "costing-cost"), words.rounded(-outcome.cost.total()), false));
    rows.push(row(say!(words, "costing-margin"), words.rounded(outcome.margin), true));
    if let Some(percent) = outcome.margin_percent {
        rows.push(row(say!(words, "costing-margin-percent"), words.percent(to_decimals(percent, 1)), true));
    }
    rows.push(row(say!(words, "costing-hours"), words.hours(outcome.cost.hours), false));
    if let Some(earned) = outcome.per_hour {
        rows.push(row(say!(words, "costing-per-hour"), words.rounded(earned), true));
    }
    rows
}

/// The hours that cover the job at a confidence, and what remains if it takes them all.
fn sure(sure: &AtConfidence, words: &Words) -> SureSheet {
    let percent = words.percent(sure.confidence.normalize());
    let row = |text: String, amount: String| Sum { text, amount, strong: false };
    let mut rows = vec![
        row(say!(words, "costing-hours"), words.hours(sure.outcome.cost.hours)),
        row(say!(words, "costing-cost"), words.rounded(-sure.outcome.cost.total())),
        row(say!(words, "costing-margin"), words.rounded(sure.outcome.margin)),
    ];
    rows.extend(sure.outcome.per_hour.map(|earned| row(say!(words, "costing-per-hour"), words.rounded(earned))));
    let priced = if sure.is_priced {
        say!(words, "costing-priced-for-these")
    } else {
        say!(words, "costing-priced-for-expected")
    };
    SureSheet { title: say!(words, "costing-sure", percent = percent), rows, priced }
}

fn cost_parts(cost: &Cost, words: &Words) -> Vec<(String, Decimal)> {
    vec![
        (say!(words, "costing-cord"), cost.cord),
        (say!(words, "costing-fittings"), cost.fittings),
        (say!(words, "costing-making"), cost.making),
        (say!(words, "costing-finishing"), cost.finishing),
        (say!(words, "costing-other"), cost.other),
        (say!(words, "costing-overhead"), cost.overhead),
    ]
}

fn whole(cost: &Cost, words: &Words) -> Vec<Sum> {
    let row = |(text, amount): (String, Decimal), strong| Sum { text, amount: words.rounded(amount), strong };
    let mut rows: Vec<Sum> = cost_parts(cost, words).into_iter().map(|part| row(part, false)).collect();
    rows.push(row((say!(words, "costing-cost"), cost.total()), true));
    rows
}

fn item_sheet(
    PricedItem { cost: item, price, .. }: &PricedItem,
    line: &QuoteLine,
    rates: &Rates,
    words: &Words,
) -> ItemSheet {
    let pieces = line.quantity;
    let row = |(text, amount): (String, Decimal), strong| CostRow {
        text,
        all: words.rounded(amount),
        one: words.rounded(amount / pieces),
        strong,
    };
    let mut cost: Vec<CostRow> = cost_parts(&item.cost, words)
        .into_iter()
        .filter(|(_, amount)| !amount.is_zero())
        .map(|part| row(part, false))
        .collect();
    cost.push(row((say!(words, "costing-cost"), item.cost.total()), true));
    ItemSheet {
        title: line.text.clone(),
        quantity: words.number(pieces),
        hours: words.hours(item.cost.hours),
        practised: practised(item, pieces, words),
        cost,
        price: price_rows(price, line.amount, rates, words),
    }
}

/// What the first and the last of several take, where practice shortens the work.
fn practised(item: &ItemCost, pieces: Decimal, words: &Words) -> String {
    let last = pieces.to_u32().filter(|pieces| *pieces > 1 && item.take_off.is_practised());
    last.map_or_else(String::new, |last| {
        let time = |nth| words.time(item.take_off.time_of_nth(nth));
        say!(words, "costing-practised", first = time(1), last = time(last))
    })
}

fn price_rows(price: &ItemPrice, amount: Decimal, rates: &Rates, words: &Words) -> Vec<Row> {
    let steps = &price.steps;
    let mut rows = vec![Row::new(say!(words, "costing-aim-is", aim = aim(rates, words)), words.rounded(steps.aimed))];
    if price.given {
        rows.push(Row::new(say!(words, "costing-price-agreed"), words.price(steps.unit)));
    } else {
        if !steps.quantity_break.is_zero() {
            rows.push(Row::new(say!(words, "costing-quantity-break"), words.percent(-steps.quantity_break)));
        }
        if steps.at_minimum {
            rows.push(Row::new(say!(words, "costing-at-minimum"), words.money(rates.price.minimum)));
        }
        rows.push(Row::new(say!(words, "costing-price-of-one"), words.price(steps.unit)));
    }
    rows.push(Row::new(say!(words, "costing-price-of-all"), words.money(amount)));
    rows
}

fn aim(rates: &Rates, words: &Words) -> String {
    match rates.price.aim {
        Aim::Margin(percent) => say!(words, "costing-aim-margin", percent = words.percent(percent)),
        Aim::Markup(percent) => say!(words, "costing-aim-markup", percent = words.percent(percent)),
        Aim::PerHour(amount) => say!(words, "costing-aim-per-hour", amount = words.price(amount)),
    }
}

/// A share in per cent, to a hundredth.
fn percent_of(share: f64) -> Decimal {
    decimal(share * 100.0, 2).normalize()
}

fn practice_row(practice: &LearningCurve, words: &Words) -> Row {
    if !practice.counts() {
        return Row::new(say!(words, "costing-practice"), say!(words, "costing-practice-none"));
    }
    let (percent, steady) = (words.percent(percent_of(practice.rate)), practice.steady);
    let leaves = match practice.model {
        Model::Unit => say!(words, "costing-practice-of-a-piece", percent = percent, steady = steady),
        Model::CumulativeAverage => say!(words, "costing-practice-of-average", percent = percent, steady = steady),
    };
    Row::new(say!(words, "costing-practice-leaves"), leaves)
}

fn rate_rows(basis: &Basis, words: &Words) -> Vec<Row> {
    let rates = &basis.rates;
    let overhead = match rates.overhead {
        Overhead::PerHour(rate) => say!(words, "costing-overhead-per-hour", amount = words.rounded(rate)),
        Overhead::OfLabour(percent) => say!(words, "costing-overhead-of-labour", percent = words.percent(percent)),
        Overhead::OfPrimeCost(percent) => {
            say!(words, "costing-overhead-of-prime-cost", percent = words.percent(percent))
        }
    };
    let mut rows = vec![
        Row::new(say!(words, "costing-wage"), words.price(rates.wage)),
        Row::new(say!(words, "costing-overhead"), overhead),
        Row::new(say!(words, "costing-aim"), aim(rates, words)),
        Row::new(say!(words, "costing-pace"), words.decimal(rates.bench.pace, 2)),
        Row::new(say!(words, "costing-pace-strays"), words.percent(percent_of(basis.pace_strays()))),
        Row::new(say!(words, "costing-allowances"), words.percent(rates.bench.allowances_in_all())),
        practice_row(&rates.bench.practice, words),
        Row::new(say!(words, "costing-cutting-allowance"), words.percent(rates.bench.cutting_allowance)),
    ];
    rows.extend(rates.fees.iter().map(|fee| {
        let (rate, fixed) = (words.percent(fee.rate), words.money(fee.fixed));
        Row::new(fee.name.clone(), say!(words, "costing-fee", rate = rate, fixed = fixed))
    }));
    rows
}

/// What samples say in place of the catalogue and of the shop's pace.
fn hand_words(priced: &Priced, hand: &Hand, words: &Words) -> Vec<String> {
    let mut all = Vec::new();
    if let Some(PaceHand { pace, pull, samples, works }) = hand.pace {
        let (pace, pull) = (words.decimal(pace.mean, 2), words.decimal(pull.mean, 2));
        let timed = timed_words(samples, works, words);
        all.push(say!(words, "costing-hand-pace", pace = pace, pull = pull, from = timed));
    }
    let steps = || priced.items.iter().flat_map(|item| &item.cost.take_off.steps);
    let is_tied = |name: &str| steps().any(|step| matches!(&step.doing, Doing::Knots(line) if line.name == name));
    for known in hand.times.iter().filter(|known| is_tied(&known.knot.name)) {
        let times = words.decimal(libm::exp(known.time.mean), 2);
        all.push(say!(words, "costing-hand-time", knot = known.knot.title.as_str(), times = times));
    }
    for step in steps() {
        if let Doing::Knots(line) = &step.doing
            && let Some(told) = own_take_up(line, words)
        {
            // A knot of many steps is told once, unless it is tied round something else.
            if !all.contains(&told) {
                all.push(told);
            }
        }
    }
    all
}

/// What a knot takes up by a sample, or by the hand that samples show; nothing where the catalogue says it.
fn own_take_up(line: &KnotLine, words: &Words) -> Option<String> {
    let (knot, take_up, cord) = (line.knot.as_str(), words.length(line.take_up), line.cord.as_str());
    match line.source {
        TakeUpSource::Catalogue(_) => None,
        TakeUpSource::YourSample => {
            Some(say!(words, "costing-take-up-by-sample", knot = knot, length = take_up, cord = cord))
        }
        TakeUpSource::YourHand => {
            Some(say!(words, "costing-take-up-by-hand", knot = knot, length = take_up, cord = cord))
        }
    }
}
