//! The maker's own costing sheet: never for the client.

use reeve_costing::cost::{Cost, ItemCost};
use reeve_costing::hand::{PaceHand, YOUR_HAND, YOUR_SAMPLE};
use reeve_costing::learning_curve::{LearningCurve, Model};
use reeve_costing::money::{decimal, to_decimals};
use reeve_costing::price::fees_on;
use reeve_costing::pricing::{AtConfidence, ItemPrice, Priced, PricedItem};
use reeve_costing::quote::QuoteLine;
use reeve_costing::rates::{Aim, Overhead, Rates};
use reeve_costing::takeoff::Doing;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde::Serialize;

use crate::hand::timed_words;
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
pub fn costing_page(priced: &Priced, rates: &Rates, words: &Words) -> CostingPage {
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
        rates: rate_rows(rates, words),
        hand: hand_words(priced, rates, words),
    }
}

fn outcome(priced: &Priced, rates: &Rates, words: &Words) -> Vec<Sum> {
    let outcome = &priced.outcome;
    let row = |text: &str, amount: String, strong| Sum { text: text.to_owned(), amount, strong };
    let mut rows = vec![row("Comes in, without tax", words.rounded(outcome.income), false)];
    rows.extend(rates.fees.iter().map(|fee| {
        let taken = fees_on(std::slice::from_ref(fee), priced.quote.totals.net, priced.quote.totals.gross);
        row(&fee.name, words.rounded(-taken), false)
    }));
    rows.push(row("Cost", words.rounded(-outcome.cost.total()), false));
    rows.push(row("Margin", words.rounded(outcome.margin), true));
    if let Some(percent) = outcome.margin_percent {
        rows.push(row("Margin on what comes in", words.percent(to_decimals(percent, 1)), true));
    }
    rows.push(row("Bench hours", words.hours(outcome.cost.hours), false));
    if let Some(earned) = outcome.per_hour {
        rows.push(row("A bench hour earns", words.rounded(earned), true));
    }
    rows
}

/// The hours that suffice with some confidence, and what remains if it takes them all.
fn sure(sure: &AtConfidence, words: &Words) -> SureSheet {
    let percent = words.percent(sure.confidence.normalize());
    let row = |text: &str, amount: String| Sum { text: text.to_owned(), amount, strong: false };
    let mut rows = vec![
        row("Bench hours", words.hours(sure.outcome.cost.hours)),
        row("Cost", words.rounded(-sure.outcome.cost.total())),
        row("Margin", words.rounded(sure.outcome.margin)),
    ];
    rows.extend(sure.outcome.per_hour.map(|earned| row("A bench hour earns", words.rounded(earned))));
    let priced = if sure.is_priced {
        "The prices are worked out for these hours"
    } else {
        "The prices are worked out for the hours expected"
    };
    SureSheet {
        title: format!("If it takes the hours that suffice {percent} of the time"),
        rows,
        priced: format!("{priced}."),
    }
}

fn cost_parts(cost: &Cost) -> Vec<(&'static str, Decimal)> {
    vec![
        ("Cord", cost.cord),
        ("Rings, dowels and beads", cost.fittings),
        ("Labour: making", cost.making),
        ("Labour: finishing and packing", cost.finishing),
        ("Used up and bought in", cost.other),
        ("Overhead", cost.overhead),
    ]
}

fn whole(cost: &Cost, words: &Words) -> Vec<Sum> {
    let row =
        |(text, amount): (&str, Decimal), strong| Sum { text: text.to_owned(), amount: words.rounded(amount), strong };
    let mut rows: Vec<Sum> = cost_parts(cost).into_iter().map(|part| row(part, false)).collect();
    rows.push(row(("Cost", cost.total()), true));
    rows
}

fn item_sheet(
    PricedItem { cost: item, price, .. }: &PricedItem,
    line: &QuoteLine,
    rates: &Rates,
    words: &Words,
) -> ItemSheet {
    let pieces = line.quantity;
    let row = |(text, amount): (&str, Decimal), strong| CostRow {
        text: text.to_owned(),
        all: words.rounded(amount),
        one: words.rounded(amount / pieces),
        strong,
    };
    let mut cost: Vec<CostRow> = cost_parts(&item.cost)
        .into_iter()
        .filter(|(_, amount)| !amount.is_zero())
        .map(|part| row(part, false))
        .collect();
    cost.push(row(("Cost", item.cost.total()), true));
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
        format!("The first takes {}, the last {}, apart from what is done once.", time(1), time(last))
    })
}

fn price_rows(price: &ItemPrice, amount: Decimal, rates: &Rates, words: &Words) -> Vec<Row> {
    let steps = &price.steps;
    let mut rows = vec![Row::new(format!("Aim: {}", aim(rates, words)), words.rounded(steps.aimed))];
    if price.given {
        rows.push(Row::new("Price agreed, in its place", words.price(steps.unit)));
    } else {
        if !steps.quantity_break.is_zero() {
            rows.push(Row::new("For the number of pieces", format!("−{}", words.percent(steps.quantity_break))));
        }
        if steps.at_minimum {
            rows.push(Row::new("Lifted to the minimum", words.money(rates.price.minimum)));
        }
        rows.push(Row::new("Price of one", words.price(steps.unit)));
    }
    rows.push(Row::new("All of them", words.money(amount)));
    rows
}

fn aim(rates: &Rates, words: &Words) -> String {
    match rates.price.aim {
        Aim::Margin(percent) => format!("{} of the price left over", words.percent(percent)),
        Aim::Markup(percent) => format!("{} on top of cost", words.percent(percent)),
        Aim::PerHour(amount) => format!("{} earned by a bench hour", words.price(amount)),
    }
}

/// A share in per cent, to a hundredth.
fn percent_of(share: f64) -> Decimal {
    decimal(share * 100.0, 2).normalize()
}

fn practice_row(practice: &LearningCurve, words: &Words) -> Row {
    if !practice.counts() {
        return Row::new("Practice", "none counted");
    }
    let of = match practice.model {
        Model::Unit => "a piece",
        Model::CumulativeAverage => "the average",
    };
    let leaves = format!("{} of {of}, to piece {}", words.percent(percent_of(practice.rate)), practice.steady);
    Row::new("Practice: a doubling of the pieces leaves", leaves)
}

fn rate_rows(rates: &Rates, words: &Words) -> Vec<Row> {
    let overhead = match rates.overhead {
        Overhead::PerHour(rate) => format!("{} a bench hour", words.rounded(rate)),
        Overhead::OfLabour(percent) => format!("{} of labour", words.percent(percent)),
        Overhead::OfPrimeCost(percent) => format!("{} of prime cost", words.percent(percent)),
    };
    let mut rows = vec![
        Row::new("Wage of a bench hour", words.price(rates.wage)),
        Row::new("Overhead", overhead),
        Row::new("Aim", aim(rates, words)),
        Row::new("Pace against the catalogue", words.decimal(rates.bench.pace, 2)),
        Row::new("It strays from job to job by", words.percent(percent_of(rates.bench.pace_strays()))),
        Row::new("Relaxation allowances, in all", words.percent(rates.bench.allowances_in_all())),
        practice_row(&rates.bench.practice, words),
        Row::new("Cutting allowance", words.percent(rates.bench.cutting_allowance)),
    ];
    rows.extend(rates.fees.iter().map(|fee| {
        Row::new(fee.name.clone(), format!("{} and {} an order", words.percent(fee.rate), words.money(fee.fixed)))
    }));
    rows
}

/// What samples say in place of the catalogue and of the shop's pace.
fn hand_words(priced: &Priced, rates: &Rates, words: &Words) -> Vec<String> {
    let mut all = Vec::new();
    if let Some(PaceHand { pace, pull, samples, works }) = rates.bench.hand.pace {
        let (pace, pull) = (words.decimal(pace.mean, 2), words.decimal(pull.mean, 2));
        let timed = timed_words(samples, works);
        all.push(format!("Pace {pace}, and {pull} for pulling what hangs: from {timed}."));
    }
    let steps = || priced.items.iter().flat_map(|item| &item.cost.take_off.steps);
    let is_tied = |name: &str| steps().any(|step| matches!(&step.doing, Doing::Knots(line) if line.name == name));
    for known in rates.bench.hand.times.iter().filter(|known| is_tied(&known.knot.name)) {
        let times = words.decimal(libm::exp(known.time.mean), 2);
        all.push(format!("Of each {}, {times} times the catalogue's time at that pace.", known.knot.title));
    }
    for step in steps() {
        if let Doing::Knots(line) = &step.doing
            && [YOUR_SAMPLE, YOUR_HAND].contains(&line.source)
        {
            let take_up = words.length(line.take_up);
            let told = format!("One {} takes {take_up} of {}: {}.", line.knot, line.cord, line.source);
            // A knot of many steps is told once, unless it is tied round something else.
            if !all.contains(&told) {
                all.push(told);
            }
        }
    }
    all
}
