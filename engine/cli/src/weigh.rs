//! `reeve weigh`: one design, and what its price rests on.

use reeve_costing::whatif::Change;
use reeve_office::Scales;
use reeve_pages::printed::Format;
use reeve_pages::results::WeighResult;
use reeve_reading::Fault;
use reeve_shop::arguments::{read_amount, read_changes, read_prices};
use reeve_shop::{Answer, Shop};

use crate::design_args::WeighArgs;
use crate::failure::{Failure, print_faults};
use crate::forms::{ChoiceArgs, WhichShop, chosen};
use crate::layout::PageLayout;
use crate::opening::open;
use crate::sheets::PageMaker;

/// Prices in one sweep.
const MOST_PRICES: u64 = 1_000_000;
/// Prices on a page.
const MOST_SHOWN: u64 = 200;

/// A design on the scales, and what its pages are made with.
struct OnScales {
    desk: PageMaker,
    scales: Scales,
    what_if: Vec<Change>,
}

pub(crate) fn run(asked: &WeighArgs) -> Result<(), Failure> {
    let Answer { value: shop, mut faults } = open(&asked.shop)?;
    let desk = PageMaker::new(&shop, &mut faults)?;
    let OnScales { desk, scales, what_if } = OnScales::with(&shop, faults, desk, asked)?;
    let weighed = scales.weigh(asked.price.as_deref().map(read_amount).transpose()?)?;
    let most = if asked.format == Format::Csv { MOST_PRICES } else { MOST_SHOWN };
    let prices = match &asked.prices {
        Some(word) => read_prices(word, most)?,
        None => weighed.prices_around(),
    };
    let result = WeighResult { weighed: &weighed, prices: &prices, changes: &what_if, words: desk.words() };
    desk.emit(&result, asked.format)
}

/// A design of the starter shop on the scales, with inputs changed and not, with a price of its own and not.
pub(crate) fn sample(mut layout: PageLayout) -> Result<PageLayout, Failure> {
    for (design, changes) in [(reeve_shop::DEMO_DESIGN, vec![]), ("tideline-panel", vec!["wage=+10%".to_owned()])] {
        let asked = WeighArgs {
            design: Some(design.to_owned()),
            chosen: ChoiceArgs::default(),
            price: None,
            changes,
            prices: None,
            shop: WhichShop::starter(),
            format: Format::Text,
        };
        let shop = open(&asked.shop)?.value;
        let desk = PageMaker::by(layout, &shop)?;
        let OnScales { desk, scales, what_if } = OnScales::with(&shop, Vec::new(), desk, &asked)?;
        let weighed = scales.weigh(None)?;
        let prices = weighed.prices_around();
        let result = WeighResult { weighed: &weighed, prices: &prices, changes: &what_if, words: desk.words() };
        desk.both_pages(&result)?;
        layout = desk.into_layout();
    }
    Ok(layout)
}

impl OnScales {
    fn with(shop: &Shop, mut faults: Vec<Fault>, desk: PageMaker, asked: &WeighArgs) -> Result<Self, Failure> {
        let known = shop.designs().noted(&mut faults);
        let word = chosen(asked.design.as_deref(), asked.shop.demo, reeve_shop::DEMO_DESIGN, "design", &known)?;
        let changes = read_changes(&asked.changes, &shop.cord_names(), desk.rates())?;
        let found = shop.design(word, &asked.chosen.choice()?).noted(&mut faults);
        let Some(found) = found else { return Err(Failure::Input(faults.into())) };
        print_faults(&faults.into());
        let scales = Scales::of(found, desk.basis(), &changes)?;
        Ok(Self { desk, scales, what_if: changes })
    }
}
