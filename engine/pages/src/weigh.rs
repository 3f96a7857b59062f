//! One design weighed: what its price is made of, what moves the margin, how sure its hours are, when it pays back.

use reeve_costing::alone::{Alone, Effort, cost_of_efforts, pieces_to_pay};
use reeve_costing::pricing::Outcome;
use reeve_costing::rates::Rates;
use reeve_costing::whatif::{Effect, Input};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use schemars::JsonSchema;
use serde::Serialize;

use crate::compare::TENTH;
use crate::figures::cents;
use crate::graph;
use crate::quote::{Head, Row, Sum};
use crate::words::Words;

/// The form of the document for other programs; raised when a field changes its meaning or goes.
const FORM: u32 = 1;

/// A design, costed by itself, with all that its page tells.
#[derive(Debug)]
pub struct Weighed<'a> {
    /// The design's file stem.
    pub design: &'a str,
    /// As written on pages.
    pub title: &'a str,
    /// What one of it costs.
    pub alone: &'a Alone,
    /// The price it is weighed at, as prices are shown.
    pub price: Decimal,
    /// Whether that is what buyers pay, and not the shop's aim.
    pub is_market: bool,
    /// The most that find a buyer in a week.
    pub weekly: Option<u32>,
    /// What each input moves when it alone is changed by [`TENTH`] per cent.
    pub effects: &'a [Effect],
    /// Confidences in per cent, each with the price that the aim asks for its hours.
    pub sure: &'a [(Decimal, Decimal)],
    /// Prices to tell what it comes to at.
    pub prices: &'a [Decimal],
    /// Work done once for it.
    pub efforts: &'a [Effort],
    /// What is otherwise than in the shop, in words.
    pub changes: &'a [String],
    /// The shop's rates, changed so.
    pub rates: &'a Rates,
}

impl Weighed<'_> {
    fn sold(&self) -> Outcome {
        self.alone.sold_at(self.price, self.rates)
    }

    /// The hours that suffice with a confidence.
    fn hours(&self, confidence: Decimal) -> Decimal {
        self.alone.cost.hours * self.alone.job.times_at(confidence)
    }

    /// What remains at the price weighed if it takes the hours that suffice with a confidence.
    fn margin_at(&self, confidence: Decimal) -> Decimal {
        let longer = self.alone.cost.taking(self.alone.job.times_at(confidence), self.rates);
        self.sold().margin - (longer.total() - self.alone.cost.total())
    }

    /// Pieces that pay for the work done once, where there was any.
    fn pays_back(&self) -> Option<(Decimal, Option<Decimal>)> {
        let efforts = cost_of_efforts(self.efforts, self.rates);
        (!self.efforts.is_empty()).then(|| (efforts.total(), pieces_to_pay(&efforts, &self.sold())))
    }
}

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
    head: Head,
    design: String,
    changes: Vec<String>,
    at: String,
    made_of: Vec<Part>,
    remains: Vec<Sum>,
    moves: Vec<Move>,
    sure: Vec<SureRow>,
    prices: Vec<PriceRow>,
    efforts: Vec<Row>,
    pays_back: String,
    stack: String,
    effects: String,
}

/// A part of the price.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct Part {
    text: &'static str,
    amount: String,
    share: String,
    bar: String,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct Move {
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

/// Words a design weighed.
pub fn weigh_page(weighed: &Weighed<'_>, words: &Words) -> WeighPage {
    let sold = weighed.sold();
    WeighPage {
        head: Head::new(weighed.rates, weighed.title),
        design: weighed.design.to_owned(),
        changes: weighed.changes.to_vec(),
        at: format!(
            "{}, {}",
            words.price(weighed.price),
            if weighed.is_market { "what buyers pay" } else { "by the shop's aim" }
        ),
        made_of: made_of(&sold, words),
        remains: remains(weighed, &sold, words),
        moves: moves(weighed.effects, words),
        sure: weighed
            .sure
            .iter()
            .map(|(confidence, price)| SureRow {
                confidence: words.percent(confidence.normalize()),
                hours: words.hours(weighed.hours(*confidence)),
                price: words.price(*price),
                margin: words.rounded(weighed.margin_at(*confidence)),
            })
            .collect(),
        prices: weighed.prices.iter().map(|price| price_row(weighed, *price, words)).collect(),
        efforts: efforts(weighed, words),
        pays_back: pays_back(weighed, words),
        stack: graph::stacks("What the price is made of", &KINDS, &[stack(weighed.title, &sold, words)]),
        effects: graph::effects("What moves the margin most", &effect_bars(weighed.effects, words)),
    }
}

/// What a price is made of, in the order of the bars.
pub(crate) const KINDS: [&str; 5] = ["Material", "Labour", "Overhead", "Fees", "Margin"];

fn parts(sold: &Outcome) -> [Decimal; 5] {
    let cost = &sold.cost;
    [cost.material() + cost.other, cost.labour(), cost.overhead, sold.fees, sold.margin]
}

/// A bar of what a price is made of; a margin below zero shows where the price ends.
fn stack(title: &str, sold: &Outcome, words: &Words) -> graph::Stack {
    let parts = parts(sold);
    graph::Stack {
        label: title.to_owned(),
        parts: parts.iter().map(|part| part.to_f64().unwrap_or_default().max(0.0)).collect(),
        total: words.rounded(sold.income),
        beyond: (sold.margin < Decimal::ZERO).then(|| sold.income.to_f64().unwrap_or_default()),
        words: KINDS.iter().zip(parts).map(|(kind, part)| format!("{kind} {}", words.rounded(part))).collect(),
    }
}

pub(crate) fn effect_bars(effects: &[Effect], words: &Words) -> Vec<graph::Effect> {
    let bar = |effect: &Effect| graph::Effect {
        label: input_words(&effect.input).to_owned(),
        changes: [effect.higher, effect.lower].map(|change| change.to_f64().unwrap_or_default()),
        words: format!("{} or {}", words.rounded(effect.higher), words.rounded(effect.lower)),
    };
    effects.iter().map(bar).collect()
}

fn share(part: Decimal, whole: Decimal) -> f64 {
    if whole <= Decimal::ZERO { 0.0 } else { (part / whole).to_f64().unwrap_or_default() }
}

fn made_of(sold: &Outcome, words: &Words) -> Vec<Part> {
    let part = |(text, amount): (&&'static str, Decimal)| Part {
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
        row("Lowest price that pays the wage", words.price(weighed.alone.lowest), false),
        row("Price by the shop's aim", words.price(weighed.alone.price.unit), false),
        row("Comes in, without tax", words.rounded(sold.income), false),
        row("Margin after fees", words.rounded(sold.margin), true),
    ];
    rows.extend(
        sold.margin_percent.map(|percent| row("Margin on what comes in", words.percent(percent.round_dp(1)), false)),
    );
    rows.push(row("Bench hours", words.hours(sold.cost.hours), false));
    rows.extend(sold.per_hour.map(|earned| row("A bench hour earns", words.rounded(earned), true)));
    rows.extend(
        sold.contribution_per_hour().map(|brought| row("A bench hour contributes", words.rounded(brought), false)),
    );
    rows
}

fn moves(effects: &[Effect], words: &Words) -> Vec<Move> {
    let most = effects.iter().map(|effect| effect.higher.abs()).max().unwrap_or_default();
    let row = |effect: &Effect| Move {
        text: input_words(&effect.input),
        higher: words.rounded(effect.higher),
        lower: words.rounded(effect.lower),
        bar: graph::bar(share(effect.higher.abs(), most), MOVE_BAR),
    };
    effects.iter().map(row).collect()
}

fn price_row(weighed: &Weighed<'_>, price: Decimal, words: &Words) -> PriceRow {
    let sold = weighed.alone.sold_at(price, weighed.rates);
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
        let cost = cost_of_efforts(std::slice::from_ref(effort), weighed.rates).total();
        Row { text: effort.title.clone(), detail: words.time(effort.time), amount: words.rounded(cost) }
    };
    weighed.efforts.iter().map(row).collect()
}

fn pays_back(weighed: &Weighed<'_>, words: &Words) -> String {
    let Some((cost, pieces)) = weighed.pays_back() else { return String::new() };
    let cost = words.rounded(cost);
    match pieces {
        None => format!("{cost} in all, and at this price no number of pieces ever pays for it."),
        Some(pieces) => {
            let weeks = weighed.weekly.map_or_else(String::new, |weekly| {
                let weeks = (pieces / Decimal::from(weekly)).ceil();
                format!(", some {} weeks at {weekly} a week", words.number(weeks))
            });
            format!("{cost} in all: paid for by the margin of {} pieces{weeks}.", words.number(pieces))
        }
    }
}

/// A design weighed, for other programs. Amounts are decimal strings.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct WeighJson {
    /// Version of this form.
    pub form: u32,
    /// The design's file stem.
    pub design: String,
    /// As written on pages.
    pub title: String,
    /// Three letters of ISO 4217.
    pub currency: String,
    /// What it comes to at the price weighed.
    pub weighed: AtPrice,
    /// Bench hours expected.
    pub hours: Decimal,
    /// The lowest price that still pays the wage.
    pub lowest_price: Decimal,
    /// The price by the shop's aim.
    pub price: Decimal,
    /// What each input moves when it alone is changed by a tenth.
    pub moves: Vec<MoveJson>,
    /// The hours that suffice with some confidences.
    pub sure: Vec<SureHours>,
    /// What it comes to at other prices.
    pub prices: Vec<AtPrice>,
    /// What work done once for the design cost.
    pub efforts: Decimal,
    /// How many pieces pay for it; nothing if none ever do, or if there was none.
    pub pieces_to_pay: Option<Decimal>,
}

/// What a design comes to at a price.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
pub struct AtPrice {
    /// The price, as prices are shown.
    pub price: Decimal,
    /// What comes in, without tax.
    pub income: Decimal,
    /// Fees of selling.
    pub fees: Decimal,
    /// What remains after cost and fees.
    pub margin: Decimal,
    /// The same in per cent of what comes in; nothing without income.
    pub margin_percent: Option<Decimal>,
    /// What a bench hour earns; nothing without hours.
    pub per_hour: Option<Decimal>,
}

/// What an input moves.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct MoveJson {
    /// The word it is called by.
    pub input: &'static str,
    /// By how many per cent it is changed.
    pub percent: Decimal,
    /// What the margin gains, at the same price, when it is higher.
    pub higher: Decimal,
    /// The same when it is lower.
    pub lower: Decimal,
}

/// Hours that suffice with a confidence.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
pub struct SureHours {
    /// In per cent.
    pub confidence: Decimal,
    /// Bench hours.
    pub hours: Decimal,
    /// The price that the aim asks for them.
    pub price: Decimal,
    /// What remains at the price weighed if it takes them all.
    pub margin: Decimal,
}

fn at_price(weighed: &Weighed<'_>, price: Decimal) -> AtPrice {
    let sold = weighed.alone.sold_at(price, weighed.rates);
    AtPrice {
        price,
        income: sold.income,
        fees: cents(sold.fees),
        margin: cents(sold.margin),
        margin_percent: sold.margin_percent.map(cents),
        per_hour: sold.per_hour.map(cents),
    }
}

/// A design weighed, for other programs.
pub fn weigh_json(weighed: &Weighed<'_>) -> WeighJson {
    let word = |input: &Input| Input::WORDS.iter().find(|(_, known)| known == input).map_or("", |(word, _)| *word);
    let (efforts, pieces_to_pay) = weighed.pays_back().unwrap_or_default();
    WeighJson {
        form: FORM,
        design: weighed.design.to_owned(),
        title: weighed.title.to_owned(),
        currency: weighed.rates.currency.code().to_owned(),
        weighed: at_price(weighed, weighed.price),
        hours: weighed.alone.cost.hours,
        lowest_price: weighed.alone.lowest,
        price: weighed.alone.price.unit,
        moves: weighed
            .effects
            .iter()
            .map(|effect| MoveJson {
                input: word(&effect.input),
                percent: TENTH,
                higher: cents(effect.higher),
                lower: cents(effect.lower),
            })
            .collect(),
        sure: weighed
            .sure
            .iter()
            .map(|(confidence, price)| SureHours {
                confidence: *confidence,
                hours: weighed.hours(*confidence).round_dp(4).normalize(),
                price: *price,
                margin: cents(weighed.margin_at(*confidence)),
            })
            .collect(),
        prices: weighed.prices.iter().map(|price| at_price(weighed, *price)).collect(),
        efforts: cents(efforts),
        pieces_to_pay,
    }
}

/// What it comes to at each price, as comma-separated values (RFC 4180).
///
/// # Errors
/// When the values can't be written, which a table in memory never does.
pub fn weigh_csv(weighed: &Weighed<'_>) -> Result<String, csv::Error> {
    let mut table = csv::Writer::from_writer(Vec::new());
    table.write_record(["price", "income", "fees", "margin", "margin-percent", "per-hour"])?;
    for price in weighed.prices {
        let at = at_price(weighed, *price);
        let known = |figure: Option<Decimal>| figure.map(|figure| figure.to_string()).unwrap_or_default();
        table.write_record([
            at.price.to_string(),
            at.income.to_string(),
            at.fees.to_string(),
            at.margin.to_string(),
            known(at.margin_percent),
            known(at.per_hour),
        ])?;
    }
    let bytes = table.into_inner().map_err(csv::IntoInnerError::into_error)?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}
