//! What each command does.

use std::path::{Path, PathBuf};

use chrono::NaiveDate;
use reeve_book::BOOK_FILE;
use reeve_office::TakenOff;
use reeve_pages::plain;
use reeve_pages::printed::{Format, json};
use reeve_pages::remarks::remark_words;
use reeve_pages::results::{BenchResult, CostingResult, QuoteResult, TakeOffResult};
use reeve_reading::FaultTally;
use reeve_shop::{Answer, Folder, Order};

use crate::args::{Args, Command};
use crate::failure::{Failure, print_faults, say};
use crate::forms::{ChoiceArgs, ShopArgs, Wished, chosen};
use crate::issuing::{settled_by, when_ready_by};
use crate::opening::{folder_failure, open, shop_root, today};
use crate::output::print;
use crate::own_templates::judge;
use crate::papers::{Papers, file_name};
use crate::reference::{MANUAL, SHELLS};
use crate::sheets::{PageMaker, own_templates};
use crate::shell::as_typed;
use crate::{book, compare, knots, mix, samples, weigh};

pub(crate) fn run(args: Args) -> Result<(), Failure> {
    match args.command {
        Command::Begin { dir } => begin(&dir),
        Command::Check { place } => check(&place),
        Command::Takeoff { design, chosen, place, form } => takeoff(design.as_deref(), &chosen, &place, form.format),
        Command::Costing { commission, wished, place, form } => {
            costing(&order(commission.as_deref(), &wished, &place)?, form.format)
        }
        Command::Bench { commission, wished, place, form } => {
            bench(&order(commission.as_deref(), &wished, &place)?, form.format)
        }
        Command::Quote { commission, wished, place, form, papers } => {
            papers.judge(shop_root(&place.shop).as_deref())?;
            quote(&order(commission.as_deref(), &wished, &place)?, form.format, &papers)
        }
        Command::Compare(asked) => compare::run(&asked),
        Command::Weigh(asked) => weigh::run(&asked),
        Command::Mix(asked) => mix::run(&asked),
        Command::Book(command) => book::run(command),
        Command::Knots(command) => knots::run(command),
        Command::Schema { kind } => schema(&kind),
        Command::Completions { shell } => completions(&shell),
        Command::Man => print(MANUAL),
    }
}

fn begin(dir: &Path) -> Result<(), Failure> {
    let written = Folder::begin(dir).map_err(|fault| folder_failure(&fault))?;
    let shown = as_typed(dir);
    print(&format!(
        "A starter shop of {} files stands in {}. Its maker, clients and figures are invented:\n\
         change them to your own, shop.toml first. Then try:\n\n  \
         reeve check --shop {shown}\n  \
         reeve takeoff {} --shop {shown}\n  \
         reeve quote {} --shop {shown} --out {shown}/to-send\n",
        written.len(),
        dir.display(),
        reeve_shop::DEMO_DESIGN,
        reeve_shop::DEMO_COMMISSION,
    ))
}

fn check(place: &ShopArgs) -> Result<(), Failure> {
    let Answer { value: shop, mut faults } = open(&place.shop)?;
    let mut told = FaultTally::from(std::mem::take(&mut faults));
    shop.check(today(place), &mut told);
    let (designs, commissions) = (shop.designs().value.len(), shop.commissions().value.len());
    let libraries = shop.libraries().iter().filter(|library| library.is_admitted()).count();
    let own = own_templates(&shop, &mut faults);
    told.extend(faults);
    told.extend(judge(&own)?);
    if told.errors() > 0 {
        return Err(Failure::Input(told));
    }
    print_faults(&told);
    samples::name_odd(&shop)?;
    let read = match libraries {
        0 => format!("{designs} designs and {commissions} commissions"),
        1 => format!("{designs} designs, {commissions} commissions and 1 library of knots"),
        many => format!("{designs} designs, {commissions} commissions and {many} libraries of knots"),
    };
    print(&format!("{read}: no faults\n"))
}

fn takeoff(design: Option<&str>, which: &ChoiceArgs, place: &ShopArgs, format: Format) -> Result<(), Failure> {
    let Answer { value: shop, mut faults } = open(&place.shop)?;
    let known = shop.designs().noted(&mut faults);
    let word = chosen(design, place.shop.demo, reeve_shop::DEMO_DESIGN, "design", &known)?;
    let found = shop.design(word, &which.choice()?).noted(&mut faults);
    let desk = PageMaker::new(&shop, &mut faults)?;
    let Some(found) = found else { return Err(Failure::Input(faults.into())) };
    print_faults(&faults.into());
    desk.emit(&TakeOffResult { taken: &TakenOff::of(found)?, by: desk.wording() }, format)
}

fn costing(Ordered { order, desk, .. }: &Ordered, format: Format) -> Result<(), Failure> {
    desk.emit(&CostingResult { priced: &order.priced, by: desk.wording() }, format)
}

fn bench(Ordered { order, desk, .. }: &Ordered, format: Format) -> Result<(), Failure> {
    desk.emit(&BenchResult { priced: &order.priced, by: desk.wording() }, format)
}

fn quote(Ordered { order, desk, day, book }: &Ordered, format: Format, papers: &Papers) -> Result<(), Failure> {
    let order = &book.as_deref().map_or_else(|| order.clone(), |book| settled_by(book, order, *day));
    let page = desk.printed(&QuoteResult { quote: &order.priced.quote, by: desk.wording() }, format)?;
    papers.stage(&file_name(&order.commission.reference), &desk.papers(order, papers.asked_for())?)?.put()?;
    let ahead = book.as_deref().map(|book| when_ready_by(book, order, desk, *day)).unwrap_or_default();
    let remarks = order.priced.remarks.iter().map(|remark| plain(&remark_words(remark, desk.words())));
    for remark in remarks.chain(ahead) {
        say(&format!("look: {remark}"));
    }
    print(&page)
}

fn schema(kind: &str) -> Result<(), Failure> {
    if let Some((_, text)) = reeve_pages::SCHEMAS.iter().find(|(name, _)| *name == kind) {
        return print(text);
    }
    let found = reeve_shop::schemas().into_iter().find(|(name, _)| *name == kind);
    let (_, schema) = found.ok_or_else(|| Failure::input(format!("no schema is called {kind}"), ""))?;
    print(&json(&schema)?)
}

fn completions(shell: &str) -> Result<(), Failure> {
    let found = SHELLS.iter().find(|(name, ..)| *name == shell);
    let (.., text) = found.ok_or_else(|| Failure::input(format!("no completions are here for {shell}"), ""))?;
    print(text)
}

/// A commission with its price, what its pages are made with, the day, and where the shop's book stands.
struct Ordered {
    order: Order,
    desk: PageMaker,
    day: NaiveDate,
    book: Option<PathBuf>,
}

fn order(commission: Option<&str>, wish: &Wished, place: &ShopArgs) -> Result<Ordered, Failure> {
    let Answer { value: shop, mut faults } = open(&place.shop)?;
    let known = shop.commissions().noted(&mut faults);
    let word = chosen(commission, place.shop.demo, reeve_shop::DEMO_COMMISSION, "commission", &known)?;
    let order = shop.order(word, &wish.wish()?, today(place)).noted(&mut faults);
    let desk = PageMaker::new(&shop, &mut faults)?;
    let Some(order) = order else { return Err(Failure::Input(faults.into())) };
    print_faults(&faults.into());
    Ok(Ordered { order, desk, day: today(place), book: shop.book_folder().map(|folder| folder.join(BOOK_FILE)) })
}
