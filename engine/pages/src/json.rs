//! JSON of the take-off, the bench sheet and the costing. Amounts are decimal strings; lengths, times and masses are numbers with
//! their unit in the name.

use chrono::NaiveDate;
use reeve_catalogue::Settled;
use reeve_costing::cost::{CordBought, Cost};
use reeve_costing::money::{to_decimals, to_millionths};
use reeve_costing::pricing::{Priced, PricedItem, Remark};
use reeve_costing::takeoff::{CutLine, Doing, TakeOff};
use reeve_measure::Length;
use rust_decimal::Decimal;
use serde::Serialize;

use crate::figures::{FORM, tenth, thousandth};

/// Everything one piece needs.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct TakeOffJson {
    /// Version of this form.
    pub form: u32,
    /// The design's file stem.
    pub design: String,
    /// What one piece takes.
    #[serde(flatten)]
    pub work: WorkJson,
    /// Cord to buy for one piece, at least cost.
    pub purchases: Vec<PurchaseJson>,
}

/// What one piece takes.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct WorkJson {
    /// The piece's title.
    pub title: String,
    /// The cut list.
    pub cords: Vec<CordJson>,
    /// Leg sets.
    pub legs: Vec<LegJson>,
    /// The steps that tie knots, in working order.
    pub knots: Vec<StepKnotsJson>,
    /// Fittings and beads.
    pub fittings: Vec<FittingJson>,
    /// Mass of the finished piece, in grams.
    pub weight_g: f64,
    /// Standard time of one piece made alone, in seconds.
    pub seconds: f64,
    /// Standard time of the tenth of a row, without what is done once for all: practice shortens it, where the shop says so.
    pub tenth_seconds: f64,
}

/// What is cut, tied and bought for a commission.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct BenchJson {
    /// Version of this form.
    pub form: u32,
    /// The commission's file stem.
    pub reference: String,
    /// What it is called.
    pub title: String,
    /// The day it is promised for, if one is.
    pub promised: Option<NaiveDate>,
    /// Each item, in order.
    pub items: Vec<BenchItemJson>,
    /// Cord to buy for all of it, at least cost.
    pub purchases: Vec<PurchaseJson>,
    /// Bench hours for all of it.
    pub hours: Decimal,
}

/// Pieces that are made alike.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct BenchItemJson {
    /// The design's file stem.
    pub design: String,
    /// How many.
    pub pieces: u32,
    /// What one of them takes.
    #[serde(flatten)]
    pub work: WorkJson,
}

/// Cords cut alike.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct CordJson {
    /// The word the design uses.
    pub group: String,
    /// The cord's name in the store.
    pub cord: String,
    /// How many.
    pub count: u64,
    /// Length to cut each, in millimetres.
    pub cut_mm: u64,
    /// Where to fold each, in millimetres from its first end; null for a single cord.
    pub fold_mm: Option<f64>,
    /// The leg set that the first end becomes, when the two legs differ.
    pub fold_from: Option<String>,
}

/// A leg set.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct LegJson {
    /// The word the design uses.
    pub set: String,
    /// How many legs.
    pub count: u64,
    /// Length of each without allowance, in millimetres.
    pub length_mm: f64,
}

/// Knots of one step.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct StepKnotsJson {
    /// The step's title.
    pub step: String,
    /// The knot's name in the catalogue.
    pub knot: String,
    /// How many in all.
    pub count: u64,
    /// What its parameters are, defaults included; then those of the knots that it is made of.
    pub parameters: Vec<ParameterJson>,
    /// Length of one working leg that one knot takes, in millimetres.
    pub take_up_mm: f64,
    /// How far one knot carries the work, in millimetres.
    pub rise_mm: f64,
    /// Standard time of the step, in seconds.
    pub seconds: f64,
    /// Where the take-up comes from.
    pub source: String,
}

/// What a parameter of a knot is.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct ParameterJson {
    /// Its name.
    pub name: String,
    /// Its value, in its unit.
    pub value: f64,
    /// `number`, `mm`, `degrees` or `diameters`.
    pub unit: String,
    /// How long it is, in millimetres; null where it is no length.
    pub length_mm: Option<f64>,
    /// The title of the knot within the knot that it belongs to; null for one of its own.
    pub part: Option<String>,
}

/// A fitting or bead.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct FittingJson {
    /// Its name in the store.
    pub fitting: String,
    /// How many.
    pub count: u32,
}

/// Cord to buy.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct PurchaseJson {
    /// The cord's name in the store.
    pub cord: String,
    /// Put-ups to buy.
    pub put_ups: Vec<PutUpJson>,
    /// What they cost.
    pub price: Decimal,
    /// What the work is charged.
    pub charged: Decimal,
    /// Cord on them, in millimetres.
    pub bought_mm: f64,
    /// Cord cut from them, in millimetres.
    pub cut_mm: f64,
    /// Cord left over, in millimetres.
    pub left_mm: f64,
    /// Whether the choice is proven the cheapest.
    pub proven: bool,
}

/// Put-ups of one form.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct PutUpJson {
    /// As the supplier calls it.
    pub title: String,
    /// Cord on one, in millimetres.
    pub length_mm: u64,
    /// How many to buy.
    pub count: u64,
    /// What one costs.
    pub price: Decimal,
}

/// The take-off of one piece.
pub fn takeoff_json(design: &str, title: &str, take_off: &TakeOff, cords: &[CordBought]) -> TakeOffJson {
    TakeOffJson {
        form: FORM,
        design: design.to_owned(),
        work: work(title, take_off),
        purchases: cords.iter().map(purchase).collect(),
    }
}

/// The bench sheet of a commission.
pub fn bench_json(priced: &Priced) -> BenchJson {
    let items = priced.items.iter().map(|PricedItem { item, cost, .. }| BenchItemJson {
        design: item.design.clone(),
        pieces: item.quantity,
        work: work(&item.piece.title, &cost.take_off),
    });
    BenchJson {
        form: FORM,
        reference: priced.quote.reference.clone(),
        title: priced.quote.title.clone(),
        promised: priced.quote.promised,
        items: items.collect(),
        purchases: priced.needs.cords.iter().map(purchase).collect(),
        hours: priced.outcome.cost.hours,
    }
}

fn work(title: &str, take_off: &TakeOff) -> WorkJson {
    WorkJson {
        title: title.to_owned(),
        cords: take_off.cords.iter().map(cord).collect(),
        legs: take_off
            .legs
            .iter()
            .map(|line| LegJson { set: line.set.clone(), count: line.count, length_mm: tenth(line.length.as_mm()) })
            .collect(),
        knots: knots(take_off),
        fittings: take_off
            .fittings
            .iter()
            .map(|(fitting, count)| FittingJson { fitting: fitting.name.clone(), count: *count })
            .collect(),
        weight_g: tenth(take_off.weight.as_g()),
        seconds: tenth(take_off.time_of(1).as_s()),
        tenth_seconds: tenth(take_off.time_of_nth(10).as_s()),
    }
}

fn cord(line: &CutLine) -> CordJson {
    CordJson {
        group: line.group.clone(),
        cord: line.cord.name.clone(),
        count: line.count,
        cut_mm: line.cut_mm,
        fold_mm: line.fold.as_ref().map(|fold| tenth(fold.at.as_mm())),
        fold_from: line.fold.as_ref().and_then(|fold| fold.from.clone()),
    }
}

fn knots(take_off: &TakeOff) -> Vec<StepKnotsJson> {
    let knots = take_off.steps.iter().filter_map(|step| match &step.doing {
        Doing::Knots(line) => Some((step, line)),
        _ => None,
    });
    knots
        .map(|(step, line)| StepKnotsJson {
            step: step.title.clone(),
            knot: line.name.clone(),
            count: line.count,
            parameters: line.parameters.iter().map(parameter).collect(),
            take_up_mm: tenth(line.take_up.as_mm()),
            rise_mm: tenth(line.rise.as_mm()),
            seconds: tenth(step.time.of(1).as_s()),
            source: line.source.word().to_owned(),
        })
        .collect()
}

fn parameter(settled: &Settled) -> ParameterJson {
    ParameterJson {
        name: settled.name.clone(),
        value: thousandth(settled.value),
        unit: settled.unit.word().to_owned(),
        length_mm: settled.length.map(|length| tenth(length.as_mm())),
        part: settled.part.clone(),
    }
}

fn purchase(bought: &CordBought) -> PurchaseJson {
    let mm = |length: Length| tenth(length.as_mm());
    PurchaseJson {
        cord: bought.cord.name.clone(),
        put_ups: bought
            .put_ups
            .iter()
            .map(|(put_up, count)| PutUpJson {
                title: put_up.title.clone(),
                length_mm: put_up.length_mm,
                count: *count,
                price: put_up.price,
            })
            .collect(),
        price: bought.price,
        charged: to_millionths(bought.charged),
        bought_mm: mm(bought.bought),
        cut_mm: mm(bought.cut),
        left_mm: mm(bought.bought - bought.cut),
        proven: bought.proven,
    }
}

/// A commission, costed: for the maker's eyes.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct CostingJson {
    /// Version of this form.
    pub form: u32,
    /// The commission's file stem.
    pub reference: String,
    /// Three letters of ISO 4217.
    pub currency: String,
    /// Each item, in order.
    pub items: Vec<ItemJson>,
    /// Each line with a price given, in order.
    pub lines: Vec<CostJson>,
    /// Cord to buy for all of it.
    pub purchases: Vec<PurchaseJson>,
    /// What comes in, without tax.
    pub income: Decimal,
    /// Fees of selling.
    pub fees: Decimal,
    /// Everything it costs.
    pub cost: CostJson,
    /// What remains.
    pub margin: Decimal,
    /// The same in per cent of the income.
    pub margin_percent: Option<Decimal>,
    /// What a bench hour earns.
    pub earned_per_hour: Option<Decimal>,
    /// The hours that cover the job at a confidence, and what remains if it takes them all.
    pub sure: SureJson,
    /// What to look at before the quote is sent.
    pub remarks: Vec<Remark>,
}

/// What an item costs and how its price came about.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct ItemJson {
    /// What the client reads.
    pub text: String,
    /// How many.
    pub quantity: Decimal,
    /// What all of them cost.
    pub cost: CostJson,
    /// Price of one that the aim asks.
    pub aimed: Decimal,
    /// Price of one.
    pub unit_price: Decimal,
    /// Whether that price was agreed and not computed.
    pub agreed: bool,
}

/// A cost, unrounded but for the last of six decimals.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct CostJson {
    /// Cord.
    pub cord: Decimal,
    /// Rings, dowels, beads.
    pub fittings: Decimal,
    /// Labour of tying and handling.
    pub making: Decimal,
    /// Labour of tasks and packing.
    pub finishing: Decimal,
    /// Used up and bought in.
    pub other: Decimal,
    /// Overhead.
    pub overhead: Decimal,
    /// All of it.
    pub total: Decimal,
    /// Bench hours.
    pub hours: Decimal,
}

/// The hours that cover the job at a confidence, and what remains if it takes them all.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct SureJson {
    /// The confidence that they cover the job, in per cent.
    pub confidence: Decimal,
    /// Whether prices were worked out for these hours.
    pub priced: bool,
    /// Bench hours.
    pub hours: Decimal,
    /// Everything it costs.
    pub cost: Decimal,
    /// What remains.
    pub margin: Decimal,
    /// What a bench hour earns; nothing without hours.
    pub earned_per_hour: Option<Decimal>,
}

/// The costing of a commission.
pub fn costing_json(priced: &Priced) -> CostingJson {
    let quote = &priced.quote;
    CostingJson {
        form: FORM,
        reference: quote.reference.clone(),
        currency: quote.currency.clone(),
        items: priced
            .items_and_lines()
            .map(|(item, line)| ItemJson {
                text: line.text.clone(),
                quantity: line.quantity,
                cost: cost(&item.cost.cost),
                aimed: to_millionths(item.price.steps.aimed),
                unit_price: item.price.steps.unit,
                agreed: item.price.given,
            })
            .collect(),
        lines: priced.lines.iter().map(cost).collect(),
        purchases: priced.needs.cords.iter().map(purchase).collect(),
        income: priced.outcome.income,
        fees: to_millionths(priced.outcome.fees),
        cost: cost(&priced.outcome.cost),
        margin: to_millionths(priced.outcome.margin),
        margin_percent: priced.outcome.margin_percent.map(to_millionths),
        earned_per_hour: priced.outcome.per_hour.map(to_millionths),
        sure: SureJson {
            confidence: priced.sure.confidence.normalize(),
            priced: priced.sure.is_priced,
            hours: to_decimals(priced.sure.outcome.cost.hours, 4).normalize(),
            cost: to_millionths(priced.sure.outcome.cost.total()),
            margin: to_millionths(priced.sure.outcome.margin),
            earned_per_hour: priced.sure.outcome.per_hour.map(to_millionths),
        },
        remarks: priced.remarks.clone(),
    }
}

fn cost(cost: &Cost) -> CostJson {
    CostJson {
        cord: to_millionths(cost.cord),
        fittings: to_millionths(cost.fittings),
        making: to_millionths(cost.making),
        finishing: to_millionths(cost.finishing),
        other: to_millionths(cost.other),
        overhead: to_millionths(cost.overhead),
        total: to_millionths(cost.total()),
        hours: cost.hours,
    }
}
