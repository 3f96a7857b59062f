//! `reeve compare`: designs beside one another.

use std::io::IsTerminal;
use std::path::Path;

use clap::Args as ClapArgs;
use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use rayon::prelude::*;
use reeve_costing::pricing::PriceFault;
use reeve_costing::rates::Rates;
use reeve_costing::takeoff::plural;
use reeve_costing::whatif::{Change, Changed, Effect, effects, with_changes};
use reeve_pages::Form;
use reeve_pages::compare::{
    Comparison, Condition, DesignRow, TENTH, column_words, compare_csv, compare_json, design_row, sort_rows,
};
use reeve_reading::{Fault, nearest};
use reeve_shop::arguments::{GivenPrice, read_changes, read_given_price, worded};
use reeve_shop::{Choice, FoundDesign, Shop};

use crate::failure::{Failure, print_faults, say};
use crate::forms::{ChoiceArgs, TableForm, WhichShop};
use crate::layout::PageLayout;
use crate::opening::open;
use crate::output::print;
use crate::sample_views::demo;
use crate::sheets::{PageMaker, csv, json};

/// Which designs, and as what they are compared.
#[derive(Debug, ClapArgs)]
pub(crate) struct Which {
    /// The designs; all of the shop if none is named
    designs: Vec<String>,
    #[command(flatten)]
    chosen: ChoiceArgs,
    /// What buyers pay for a design, or for a size of it, in place of what its file says
    #[arg(long = "price", value_name = "DESIGN[:SIZE]=AMOUNT")]
    prices: Vec<String>,
    /// An input otherwise than in the shop, such as wage=+10%; may be given several times
    #[arg(long = "what-if", value_name = "INPUT=CHANGE", allow_hyphen_values = true)]
    changes: Vec<String>,
    #[command(flatten)]
    shop: WhichShop,
}

#[derive(Debug, ClapArgs)]
pub(crate) struct CompareArgs {
    #[command(flatten)]
    pub(crate) which: Which,
    /// The column it is sorted by, the greatest first
    #[arg(long, value_parser = clap::builder::PossibleValuesParser::new(column_words()), hide_possible_values = true, default_value = "per-hour", value_name = "COLUMN")]
    sort: String,
    /// Show only such rows: a column, a sign and a figure, such as hours<3; may be given several times
    #[arg(long = "where", value_name = "CONDITION")]
    conditions: Vec<String>,
    /// What it is written as
    #[arg(long = "as", value_enum, default_value_t = TableForm::Text, value_name = "FORM")]
    form: TableForm,
}

/// What is compared, and what its pages are made with.
pub(crate) struct Compared {
    pub(crate) desk: PageMaker,
    words: Vec<String>,
    pub(crate) what_if: Vec<String>,
    bench: Bench,
}

/// Where rows are made, on all cores.
struct Bench {
    shop: Shop,
    rates: Rates,
    choice: Choice,
    /// Whether the designs were named one by one.
    named: bool,
    given: Vec<GivenPrice>,
    changes: Vec<Change>,
}

/// The rows, and how many designs were left out.
pub(crate) struct Rows {
    pub(crate) rows: Vec<DesignRow>,
    left_out: usize,
}

/// More charts than this nobody looks at.
const MOST_DRAWN: usize = 40;

pub(crate) fn run(asked: &CompareArgs) -> Result<(), Failure> {
    let conditions = read_conditions(&asked.conditions)?;
    let compared = Compared::open(&asked.which)?;
    let mut found = compared.rows(|row| conditions.iter().all(|condition| condition.holds(row)))?;
    sort_rows(&mut found.rows, &asked.sort);
    let page = compared.page(&found.rows, &asked.sort, asked.form)?;
    print(&page)?;
    found.end()
}

/// A comparison of two designs of the starter shop, changed as little and as much as can be.
pub(crate) fn sample(mut layout: PageLayout) -> Result<PageLayout, Failure> {
    for changes in [&[][..], &["wage=+10%".to_owned()]] {
        let compared = Compared::sample(layout, changes)?;
        let found = compared.rows(|_| true)?;
        for form in [TableForm::Text, TableForm::Html] {
            compared.page(&found.rows, "per-hour", form)?;
            compared.page(&[], "per-hour", form)?;
        }
        layout = compared.desk.into_layout();
    }
    Ok(layout)
}

impl Rows {
    /// Tells whether something was left out.
    pub(crate) fn end(&self) -> Result<(), Failure> {
        match self.left_out {
            0 => Ok(()),
            left_out => {
                say(&format!("look: {} left out for the faults above", plural("design", left_out as u64)));
                Err(Failure::Partly)
            }
        }
    }
}

impl Compared {
    pub(crate) fn open(which: &Which) -> Result<Self, Failure> {
        let mut shop = open(&which.shop)?;
        let desk = PageMaker::new(&mut shop)?;
        Self::with(shop, desk, which)
    }

    fn with(mut shop: Shop, desk: PageMaker, which: &Which) -> Result<Self, Failure> {
        let words = if which.designs.is_empty() { shop.designs().to_vec() } else { which.designs.clone() };
        // What is wrong with the shop stops it; what is wrong with a design leaves out that design.
        print_faults(&shop.take_faults());
        let given = which.prices.iter().map(|word| read_given_price(word)).collect::<Result<Vec<_>, _>>()?;
        let changes = read_changes(&which.changes, &shop.cord_names(), desk.rates())?;
        let what_if = changes.iter().map(worded).collect();
        let rates = desk.rates().clone();
        let (choice, named) = (which.chosen.choice()?, !which.designs.is_empty());
        let bench = Bench { shop, rates, choice, named, given, changes };
        Ok(Self { desk, words, what_if, bench })
    }

    /// Of designs of the starter shop, with some inputs changed.
    pub(crate) fn sample(layout: PageLayout, changes: &[String]) -> Result<Self, Failure> {
        let which = Which {
            designs: ["curlew-hanger", "bay-leaf"].map(str::to_owned).to_vec(),
            chosen: ChoiceArgs::default(),
            prices: Vec::new(),
            changes: changes.to_vec(),
            shop: demo(),
        };
        let shop = open(&which.shop)?;
        let desk = PageMaker::by(layout, &shop)?;
        Self::with(shop, desk, &which)
    }

    /// The rows that are wanted, on all cores, in the order of the designs.
    pub(crate) fn rows(&self, wanted: impl Fn(&DesignRow) -> bool + Sync) -> Result<Rows, Failure> {
        let bar = progress(self.words.len());
        let bench = &self.bench;
        let each = |word: &String| {
            let found = bench.rows_of(word);
            bar.inc(1);
            found
        };
        let all: Vec<(Vec<DesignRow>, Vec<Fault>)> = self.words.par_iter().map(each).collect();
        bar.finish_and_clear();
        let left_out = all.iter().filter(|(_, faults)| faults.iter().any(Fault::is_error)).count();
        let (rows, faults): (Vec<_>, Vec<_>) = all.into_iter().unzip();
        let (mut rows, faults) = (rows.concat(), once_each(faults.concat()));
        if rows.is_empty() && !faults.is_empty() {
            return Err(Failure::Input(faults));
        }
        if rows.is_empty() && !self.bench.choice.is_usual() {
            let title = format!("no design of the shop can be had so: {}", self.bench.choice);
            return Err(Failure::input(title, "`reeve takeoff DESIGN` says what can be chosen of it"));
        }
        self.check_given(&rows)?;
        print_faults(&faults);
        rows.retain(&wanted);
        Ok(Rows { rows, left_out })
    }

    fn page(&self, rows: &[DesignRow], key: &str, form: TableForm) -> Result<String, Failure> {
        let shown = Comparison { rows, effects: &[], key, changes: &self.what_if, drawn: false };
        match form {
            TableForm::Text => self.desk.compare(&shown, Form::Text),
            TableForm::Html => {
                let effects = self.effects(rows)?;
                self.desk.compare(&Comparison { effects: &effects, drawn: true, ..shown }, Form::Html)
            }
            TableForm::Json => json(&compare_json(rows, self.desk.rates())),
            TableForm::Csv => csv(compare_csv(rows)),
        }
    }

    /// What each input moves, of the rows that are drawn.
    fn effects(&self, rows: &[DesignRow]) -> Result<Vec<Vec<Effect>>, Failure> {
        let effects = |row: &DesignRow| {
            let effects = self.bench.effects(self.word_of(row), row);
            effects.map_err(|fault| Failure::Input(vec![fault]))
        };
        rows.iter().take(MOST_DRAWN).map(effects).collect()
    }

    /// The word that a row's design was named by: its stem, or a path.
    fn word_of<'a>(&'a self, row: &'a DesignRow) -> &'a str {
        let is_its = |word: &&String| Path::new(word).file_stem().is_some_and(|stem| *stem == *row.design);
        self.words.iter().find(is_its).map_or(&row.design, |word| word)
    }

    /// A price given for what is not compared is a slip.
    fn check_given(&self, rows: &[DesignRow]) -> Result<(), Failure> {
        for given in &self.bench.given {
            let known = || rows.iter().map(|row| row.design.as_str()).chain(self.words.iter().map(String::as_str));
            if !known().any(|name| name == given.design) {
                let near = nearest(&given.design, known()).map(|near| format!("did you mean `{near}`?"));
                let title = format!("`{}` is not among the designs compared", given.design);
                return Err(Failure::input(title, near.unwrap_or_default()));
            }
            let sizes: Vec<&DesignRow> = rows.iter().filter(|row| row.design == given.design).collect();
            if !sizes.is_empty() && !sizes.iter().any(|row| row.size == given.size) {
                let known: Vec<String> = sizes.iter().filter_map(|row| row.size.clone()).collect();
                let title = format!("`{}` is not compared in that size", given.design);
                return Err(Failure::input(title, format!("sizes compared: {}", known.join(", "))));
            }
        }
        Ok(())
    }
}

impl Bench {
    /// The rows of a design: as it stands and in all its sizes, or as chosen.
    fn rows_of(&self, word: &str) -> (Vec<DesignRow>, Vec<Fault>) {
        let (found, mut faults) = self.shop.sizes(word, &self.choice, self.named);
        let mut rows = Vec::new();
        for found in &found {
            match self.row(found) {
                Ok(row) => rows.push(row),
                Err(fault) => faults.push(fault),
            }
        }
        (rows, faults)
    }

    fn row(&self, found: &FoundDesign) -> Result<DesignRow, Fault> {
        let (alone, rates) = with_changes(&found.piece, &found.take_off, &self.rates, &self.changes)
            .map_err(|fault| unpriced(&found.piece.title, &fault))?;
        let given = self.given.iter().find(|given| given.design == found.name && given.size == found.choice.size);
        let market = given.map(|given| given.price).or(found.market.price);
        Ok(design_row(
            (&found.name, found.choice.word(), &found.piece.title),
            &alone,
            (market, found.market.weekly),
            &rates,
        ))
    }

    /// What each input moves of a design that was found before.
    fn effects(&self, word: &str, row: &DesignRow) -> Result<Vec<Effect>, Fault> {
        let (found, _) = self.shop.sizes(word, &self.choice, self.named);
        let Some(found) = found.into_iter().find(|found| found.piece.title == row.title) else { return Ok(Vec::new()) };
        let no = |fault| unpriced(&row.title, &fault);
        let Changed { piece, made, rates } =
            Changed::of(&found.piece, &found.take_off, &self.rates, &self.changes).map_err(no)?;
        effects(&piece, &made, &rates, row.asked(), TENTH).map_err(no)
    }
}

pub(crate) fn unpriced(title: &str, fault: &PriceFault) -> Fault {
    Fault::without_place(format!("{title} can't be priced: {fault}"), "look for a slip in its quantities and prices")
}

/// A part's faults are told by every design that holds it.
fn once_each(faults: Vec<Fault>) -> Vec<Fault> {
    let mut told: Vec<Fault> = Vec::new();
    for fault in faults {
        if !told.contains(&fault) {
            told.push(fault);
        }
    }
    told
}

fn read_conditions(words: &[String]) -> Result<Vec<Condition>, Failure> {
    let read = |word: &String| {
        word.parse::<Condition>().map_err(|no| {
            let columns = column_words().collect::<Vec<_>>().join(", ");
            Failure::input(
                no.to_string(),
                format!("a column, a sign and a figure, such as hours<3; columns: {columns}"),
            )
        })
    };
    words.iter().map(read).collect()
}

fn progress(steps: usize) -> ProgressBar {
    let target =
        if std::io::stderr().is_terminal() { ProgressDrawTarget::stderr() } else { ProgressDrawTarget::hidden() };
    let style = ProgressStyle::with_template("comparing {wide_bar} {pos} of {len}, {eta} left");
    let bar = ProgressBar::with_draw_target(Some(steps as u64), target);
    style.map_or(bar.clone(), |style| bar.with_style(style))
}
