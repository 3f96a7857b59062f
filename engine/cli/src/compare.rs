//! `reeve compare`: designs beside one another.

use std::io::IsTerminal;

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use reeve_costing::takeoff::plural;
use reeve_costing::whatif::Change;
use reeve_costing::whatif::Effect;
use reeve_office::{CompareQuestion, Comparing, DesignRow, Rows};
use reeve_pages::compare::{Comparison, Condition, sort_rows};
use reeve_pages::printed::Format;
use reeve_pages::results::CompareResult;
use reeve_reading::Fault;
use reeve_shop::arguments::{read_changes, read_given_price};
use reeve_shop::{Answer, Shop};

use crate::design_args::{CompareArgs, Which};
use crate::failure::{Failure, print_faults, say};
use crate::forms::{ChoiceArgs, WhichShop};
use crate::layout::PageLayout;
use crate::opening::{open, row_shelf};
use crate::sheets::PageMaker;

/// What is compared, and what its pages are made with.
pub(crate) struct Compared {
    pub(crate) desk: PageMaker,
    pub(crate) what_if: Vec<Change>,
    comparing: Comparing,
}

/// More charts than this nobody looks at.
const MOST_DRAWN: usize = 40;

pub(crate) fn run(asked: &CompareArgs) -> Result<(), Failure> {
    let conditions = read_conditions(&asked.conditions)?;
    let compared = Compared::open(&asked.which)?;
    let mut found = compared.rows()?;
    found.rows.retain(|row| conditions.iter().all(|condition| condition.holds(row)));
    sort_rows(&mut found.rows, &asked.sort);
    compared.emit(&found.rows, &asked.sort, asked.format)?;
    end(found.left_out)
}

/// A comparison of two designs of the starter shop, changed as little and as much as can be.
pub(crate) fn sample(mut layout: PageLayout) -> Result<PageLayout, Failure> {
    for changes in [&[][..], &["wage=+10%".to_owned()]] {
        let compared = Compared::sample(layout, changes)?;
        let found = compared.rows()?;
        for rows in [&found.rows[..], &[]] {
            let effects = compared.comparing.effects(rows)?;
            compared.desk.both_pages(&compared.result(rows, &effects, "per-hour"))?;
        }
        layout = compared.desk.into_layout();
    }
    Ok(layout)
}

/// Tells whether designs were left out.
pub(crate) fn end(left_out: usize) -> Result<(), Failure> {
    if left_out == 0 {
        return Ok(());
    }
    say(&format!("look: {} left out for the faults above", plural("design", left_out as u64)));
    Err(Failure::Partly)
}

impl Compared {
    pub(crate) fn open(which: &Which) -> Result<Self, Failure> {
        let Answer { value: shop, mut faults } = open(&which.shop)?;
        let desk = PageMaker::new(&shop, &mut faults)?;
        Self::with(shop, faults, desk, which)
    }

    fn with(shop: Shop, mut faults: Vec<Fault>, desk: PageMaker, which: &Which) -> Result<Self, Failure> {
        let designs = match &which.designs[..] {
            [] => shop.designs().noted(&mut faults).to_vec(),
            named => named.to_vec(),
        };
        // What is wrong with the shop stops it; what is wrong with a design leaves out that design.
        print_faults(&faults.into());
        let question = CompareQuestion {
            designs,
            named: !which.designs.is_empty(),
            prices: which.prices.iter().map(|word| read_given_price(word)).collect::<Result<_, _>>()?,
            changes: read_changes(&which.changes, &shop.cord_names(), desk.rates())?,
            choice: which.chosen.choice()?,
        };
        let what_if = question.changes.clone();
        let shelf = row_shelf(&shop);
        let comparing = Comparing::new(shop, desk.basis().clone(), question, shelf);
        Ok(Self { desk, what_if, comparing })
    }

    /// Of designs of the starter shop, with some inputs changed.
    pub(crate) fn sample(layout: PageLayout, changes: &[String]) -> Result<Self, Failure> {
        let which = Which {
            designs: ["curlew-hanger", "bay-leaf"].map(str::to_owned).to_vec(),
            chosen: ChoiceArgs::default(),
            prices: Vec::new(),
            changes: changes.to_vec(),
            shop: WhichShop::starter(),
        };
        let shop = open(&which.shop)?.value;
        let desk = PageMaker::by(layout, &shop)?;
        Self::with(shop, Vec::new(), desk, &which)
    }

    /// The rows, with their faults told and how far they are shown meanwhile.
    pub(crate) fn rows(&self) -> Result<Rows, Failure> {
        let bar = progress(self.comparing.designs());
        let found = self.comparing.rows(|| bar.inc(1));
        bar.finish_and_clear();
        let found = found?;
        print_faults(&found.faults);
        Ok(found)
    }

    fn emit(&self, rows: &[DesignRow], key: &str, format: Format) -> Result<(), Failure> {
        // Only a page of HTML draws what each input moves, and that takes its time.
        let drawn = if format == Format::Html { rows.len().min(MOST_DRAWN) } else { 0 };
        let effects = self.comparing.effects(&rows[..drawn])?;
        self.desk.emit(&self.result(rows, &effects, key), format)
    }

    fn result<'a>(&'a self, rows: &'a [DesignRow], effects: &'a [Vec<Effect>], key: &'a str) -> CompareResult<'a> {
        let shown = Comparison { rows, effects, key, changes: &self.what_if, drawn: false };
        CompareResult { shown, by: self.desk.wording() }
    }
}

fn read_conditions(words: &[String]) -> Result<Vec<Condition>, Failure> {
    let read = |word: &String| word.parse::<Condition>().map_err(|error| Fault::of(&error).into());
    words.iter().map(read).collect()
}

fn progress(steps: usize) -> ProgressBar {
    let target =
        if std::io::stderr().is_terminal() { ProgressDrawTarget::stderr() } else { ProgressDrawTarget::hidden() };
    let style = ProgressStyle::with_template("comparing {wide_bar} {pos} of {len}, {eta} left");
    let bar = ProgressBar::with_draw_target(Some(steps as u64), target);
    style.map_or(bar.clone(), |style| bar.with_style(style))
}
