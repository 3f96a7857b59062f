//! `reeve weigh`: one design, and what its price rests on.

use clap::Args as ClapArgs;
use rayon::prelude::*;
use reeve_office::{Scales, Weighed};
use reeve_pages::Form;
use reeve_pages::weigh::{WEIGH_COLUMNS, weigh_json, weigh_rows};
use reeve_shop::Shop;
use reeve_shop::arguments::{read_amount, read_changes, read_prices, worded};
use rust_decimal::Decimal;

use crate::commands::chosen;
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

/// Prices in one sweep.
const MOST_PRICES: u64 = 1_000_000;
/// Prices on a page.
const MOST_SHOWN: u64 = 200;

/// A design on the scales, and what its pages are made with.
struct OnScales {
    desk: PageMaker,
    scales: Scales,
    what_if: Vec<String>,
}

pub(crate) fn run(asked: &WeighArgs) -> Result<(), Failure> {
    let mut shop = open(&asked.shop)?;
    let desk = PageMaker::new(&mut shop)?;
    print(&page(&OnScales::with(&mut shop, desk, asked)?, asked)?)
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
        let scales = OnScales::with(&mut shop, desk, &asked)?;
        page(&scales, &asked)?;
        asked.form = TableForm::Html;
        page(&scales, &asked)?;
        layout = scales.desk.into_layout();
    }
    Ok(layout)
}

fn page(OnScales { desk, scales, what_if }: &OnScales, asked: &WeighArgs) -> Result<String, Failure> {
    let weighed = scales.weigh(asked.price.as_deref().map(read_amount).transpose()?)?;
    let most = if asked.form == TableForm::Csv { MOST_PRICES } else { MOST_SHOWN };
    let prices = match &asked.prices {
        Some(word) => read_prices(word, most)?,
        None => weighed.prices_around(),
    };
    match asked.form {
        TableForm::Text => desk.weigh(&weighed, (&prices, what_if), Form::Text),
        TableForm::Html => desk.weigh(&weighed, (&prices, what_if), Form::Html),
        TableForm::Json => json(&weigh_json(&weighed, &prices)),
        TableForm::Csv => Ok(csv(&weighed, &prices)),
    }
}

impl OnScales {
    fn with(shop: &mut Shop, desk: PageMaker, asked: &WeighArgs) -> Result<Self, Failure> {
        let known = shop.designs();
        let word = chosen(asked.design.as_deref(), asked.shop.demo, reeve_shop::DEMO_DESIGN, "design", &known)?;
        let changes = read_changes(&asked.changes, &shop.cord_names(), desk.rates())?;
        let found = shop.design(word, &asked.chosen.choice()?);
        let faults = shop.take_faults();
        let Some(found) = found else { return Err(Failure::Input(faults)) };
        print_faults(&faults);
        let scales = Scales::of(found, desk.rates(), &changes)?;
        Ok(Self { desk, scales, what_if: changes.iter().map(worded).collect() })
    }
}

/// Every price on a line, worked out on all cores.
fn csv(weighed: &Weighed<'_>, prices: &[Decimal]) -> String {
    const AT_ONCE: usize = 10_000;
    let rows: Vec<String> = prices.par_chunks(AT_ONCE).map(|prices| weigh_rows(weighed, prices)).collect();
    WEIGH_COLUMNS.to_owned() + &rows.concat()
}
