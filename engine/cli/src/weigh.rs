//! `reeve weigh`: one design, and what its price rests on.

use std::sync::Arc;

use clap::Args as ClapArgs;
use rayon::prelude::*;
use reeve_costing::rates::{PriceRule, Rates};
use reeve_costing::single_piece::SinglePiece;
use reeve_costing::takeoff::TakeOff;
use reeve_costing::whatif::{Changed, effects};
use reeve_pages::Form;
use reeve_pages::compare::TENTH;
use reeve_pages::weigh::{WEIGH_COLUMNS, Weighed, weigh_json, weigh_rows};
use reeve_shop::arguments::{read_amount, read_changes, read_prices, worded};
use reeve_shop::{FoundDesign, Shop};
use rust_decimal::Decimal;

use crate::commands::chosen;
use crate::compare::unpriced;
use crate::failure::{Failure, print_faults};
use crate::forms::{ChoiceArgs, TableForm, WhichShop};
use crate::layout::PageLayout;
use crate::opening::open;
use crate::output::print;
use crate::sample_views::demo;
use crate::sheets::{PageMaker, json};

#[derive(Debug, ClapArgs)]
pub(crate) struct WeighArgs {
    /// The design: its file's name without .toml, or a path
    design: Option<String>,
    #[command(flatten)]
    chosen: ChoiceArgs,
    /// The price it is weighed at; what buyers pay if not given, or else the price by the shop's aim
    #[arg(long, value_name = "AMOUNT")]
    price: Option<String>,
    /// An input otherwise than in the shop, such as wage=+10%; may be given several times
    #[arg(long = "what-if", value_name = "INPUT=CHANGE", allow_hyphen_values = true)]
    changes: Vec<String>,
    /// The prices to tell what it comes to at, such as 80..140 or 80..140/2.50
    #[arg(long, value_name = "FROM..TO[/STEP]")]
    prices: Option<String>,
    #[command(flatten)]
    shop: WhichShop,
    /// What it is written as; csv holds the prices alone
    #[arg(long = "as", value_enum, default_value_t = TableForm::Text, value_name = "FORM")]
    form: TableForm,
}

/// Confidences told, in per cent.
const CONFIDENCES: [i64; 4] = [50, 80, 90, 95];
/// Prices in one sweep.
const MOST_PRICES: u64 = 1_000_000;
/// Prices on a page.
const MOST_SHOWN: u64 = 200;

/// A design on the scales: costed by itself, with the inputs that are changed.
struct Scales {
    desk: PageMaker,
    found: FoundDesign,
    changed: Changed,
    alone: SinglePiece,
    what_if: Vec<String>,
}

pub(crate) fn run(asked: &WeighArgs) -> Result<(), Failure> {
    print(&page(&Scales::of(asked)?, asked)?)
}

/// A design of the starter shop on the scales, with inputs changed and not, with a price of its own and not.
pub(crate) fn sample(mut layout: PageLayout) -> Result<PageLayout, Failure> {
    for (design, changes) in [(reeve_shop::DEMO_DESIGN, vec![]), ("tideline-panel", vec!["wage=+10%".to_owned()])] {
        let mut asked = WeighArgs {
            design: Some(design.to_owned()),
            chosen: ChoiceArgs::default(),
            price: None,
            changes,
            prices: None,
            shop: demo(),
            form: TableForm::Text,
        };
        let mut shop = open(&asked.shop)?;
        let desk = PageMaker::by(layout, &shop)?;
        let scales = Scales::with(&mut shop, desk, &asked)?;
        page(&scales, &asked)?;
        asked.form = TableForm::Html;
        page(&scales, &asked)?;
        layout = scales.desk.into_layout();
    }
    Ok(layout)
}

fn page(scales: &Scales, asked: &WeighArgs) -> Result<String, Failure> {
    let title = scales.found.piece.title.as_str();
    let no = |fault| Failure::Input(vec![unpriced(title, &fault)]);
    let given = asked.price.as_deref().map(read_amount).transpose()?;
    let market = given.or(scales.found.market.price);
    let price = market.unwrap_or(scales.alone.price.unit);
    let Changed { piece, made, rates } = &scales.changed;
    let sure = CONFIDENCES.iter().map(|percent| sure_price(made, rates, *percent));
    let weighed = Weighed {
        design: &scales.found.name,
        title,
        price,
        is_market: market.is_some(),
        weekly: scales.found.market.weekly,
        effects: &effects(piece, made, rates, price, TENTH).map_err(no)?,
        sure: &sure.collect::<Result<Vec<_>, _>>().map_err(no)?,
        prices: &prices(asked, &scales.alone, price)?,
        efforts: &scales.found.efforts,
        changes: &scales.what_if,
        rates,
        alone: &scales.alone,
    };
    match asked.form {
        TableForm::Text => scales.desk.weigh(&weighed, Form::Text),
        TableForm::Html => scales.desk.weigh(&weighed, Form::Html),
        TableForm::Json => json(&weigh_json(&weighed)),
        TableForm::Csv => Ok(csv(&weighed)),
    }
}

impl Scales {
    fn of(asked: &WeighArgs) -> Result<Self, Failure> {
        let mut shop = open(&asked.shop)?;
        let desk = PageMaker::new(&mut shop)?;
        Self::with(&mut shop, desk, asked)
    }

    fn with(shop: &mut Shop, desk: PageMaker, asked: &WeighArgs) -> Result<Self, Failure> {
        let known = shop.designs();
        let word = chosen(asked.design.as_deref(), asked.shop.demo, reeve_shop::DEMO_DESIGN, "design", &known)?;
        let changes = read_changes(&asked.changes, &shop.cord_names(), desk.rates())?;
        let found = shop.design(word, &asked.chosen.choice()?);
        let faults = shop.take_faults();
        let Some(found) = found else { return Err(Failure::Input(faults)) };
        print_faults(&faults);
        let no = |fault| Failure::Input(vec![unpriced(&found.piece.title, &fault)]);
        let changed = Changed::of(&found.piece, &found.take_off, desk.rates(), &changes).map_err(no)?;
        let alone = SinglePiece::of(&changed.made, &changed.rates).map_err(no)?;
        Ok(Self { desk, found, changed, alone, what_if: changes.iter().map(worded).collect() })
    }
}

/// Every price on a line, worked out on all cores.
fn csv(weighed: &Weighed<'_>) -> String {
    const AT_ONCE: usize = 10_000;
    let rows: Vec<String> = weighed.prices.par_chunks(AT_ONCE).map(|prices| weigh_rows(weighed, prices)).collect();
    WEIGH_COLUMNS.to_owned() + &rows.concat()
}

/// A confidence, and the price that the aim asks for the hours that suffice with it.
fn sure_price(
    made: &Arc<TakeOff>,
    rates: &Rates,
    percent: i64,
) -> Result<(Decimal, Decimal), reeve_costing::pricing::PriceFault> {
    let confidence = Decimal::from(percent);
    let price = PriceRule { confidence: Some(confidence), ..rates.price.clone() };
    let rates = Rates { price, ..rates.clone() };
    Ok((confidence, SinglePiece::of(made, &rates)?.price.unit))
}

/// The prices asked for, or some round the price weighed: seven from the lowest that pays the wage.
fn prices(asked: &WeighArgs, alone: &SinglePiece, price: Decimal) -> Result<Vec<Decimal>, Failure> {
    let Some(word) = &asked.prices else { return Ok(around(alone.lowest, price)) };
    Ok(read_prices(word, if asked.form == TableForm::Csv { MOST_PRICES } else { MOST_SHOWN })?)
}

/// The lowest price, the price weighed, and others at even distances to either side, rounded to whole units.
fn around(lowest: Decimal, price: Decimal) -> Vec<Decimal> {
    let step = (price / Decimal::from(20)).round().max(Decimal::ONE);
    let mut all: Vec<Decimal> = (-3_i64..=3).map(|nth| price + step * Decimal::from(nth)).collect();
    all.push(lowest);
    all.retain(|price| *price > Decimal::ZERO);
    all.sort_unstable();
    all.dedup();
    all
}
