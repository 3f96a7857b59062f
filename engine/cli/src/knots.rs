//! `reeve knots`: list, show, chart, check; tightening and samples have modules of their own.

use std::path::Path;

use reeve_catalogue::{Knot, USUAL_GIVE};
use reeve_pages::chart::Charted;
use reeve_pages::knots::lacks;
use reeve_pages::printed::Format;
use reeve_pages::results::{DrawingResult, KnotResult, KnotsResult, TightResult};
use reeve_reading::Fault;

use crate::failure::{Failure, print_faults};
use crate::forms::WhichShop;
use crate::knot_args::KnotsCommand;
use crate::layout::PageLayout;
use crate::libraries;
use crate::output::print;
use crate::samples;
use crate::sheets::words_of;
use crate::shelf::{Shelf, TiedWith, knot_of_file, read_parameters, setting};
use crate::tighten;

pub(crate) fn run(command: KnotsCommand) -> Result<(), Failure> {
    match command {
        KnotsCommand::List { word, kind, shop, format } => list(word.as_deref(), kind.as_deref(), &shop, format),
        KnotsCommand::Show { knot, cord, core, rod, working, give, parameters, shop, format, into } => {
            let tied = TiedWith { cord, core, rod, working, give, parameters: read_parameters(&parameters)? };
            into.print_or_write(show(&knot, &tied, &shop, format)?)
        }
        KnotsCommand::Chart { kind, cord, shop, into } => into.print_or_write(chart(kind.as_deref(), cord, &shop)?),
        KnotsCommand::Tighten(asked) => tighten::run(&asked),
        KnotsCommand::Sample(sample) => samples::add(&sample),
        KnotsCommand::Hand { shop, format } => samples::hand(&shop, format),
        KnotsCommand::Check { file } => check(&file),
        KnotsCommand::Admit { file, yes, guards, shop } => libraries::admit(&file, yes, guards.needed(), &shop),
        KnotsCommand::Dismiss { library, shop } => libraries::dismiss(&library, &shop),
        KnotsCommand::Probe { file, guards } => libraries::probe(&file, guards.needed()),
        KnotsCommand::Begin { dir } => libraries::begin(&dir),
    }
}

fn list(word: Option<&str>, kind: Option<&str>, shop: &WhichShop, format: Format) -> Result<(), Failure> {
    let shelf = Shelf::open(shop)?;
    let with_word = |knot: &&Knot| word.is_none_or(|word| knot.speaks_of(word));
    let found: Vec<&Knot> = shelf.of_kind(kind).filter(with_word).collect();
    if found.is_empty() {
        return Err(nothing_found());
    }
    print(&shelf.printed(&KnotsResult { knots: &found, words: shelf.words() }, format)?)
}

/// Pages of knots of the starter shop: some with parameters, notes and drawing, some without.
pub(crate) fn sample(layout: PageLayout) -> Result<PageLayout, Failure> {
    let shelf = Shelf::sample(layout)?;
    let knots: Vec<&Knot> = ["square", "gathering-wrap", "collared-square", "button", "half-hitch"]
        .iter()
        .filter_map(|word| shelf.find(word).ok())
        .collect();
    shelf.printed(&KnotsResult { knots: &knots, words: shelf.words() }, Format::Text)?;
    let mut charted = Vec::new();
    for knot in knots {
        let setting = setting(knot, &usual(SAMPLE_CORD), &[])?;
        let Ok(taken) = knot.taken(&setting) else { continue };
        let shown = Charted { knot, setting: setting.clone(), shape: shelf.shape(knot)? };
        let result =
            KnotResult { charted: &shown, taken: &taken, sheet: shelf.sheet(&knot.title), words: shelf.words() };
        for format in [Format::Text, Format::Html] {
            shelf.printed(&result, format)?;
        }
        if let Some(row) = knot.table.as_ref().and_then(|table| table.rows.first()) {
            shelf.printed(&TightResult { knot, setting: &setting, row, words: shelf.words() }, Format::Text)?;
        }
        charted.push(shown);
    }
    shelf.chart(SAMPLE_CORD, &charted)?;
    shelf.style()?;
    drop(charted);
    Ok(shelf.into_layout())
}

/// The thickness of a sample's cord, in millimetres.
const SAMPLE_CORD: f64 = 4.0;

/// In a cord of so many millimetres, and else as usual.
fn usual(cord: f64) -> TiedWith {
    TiedWith { cord, core: None, rod: None, working: None, give: USUAL_GIVE, parameters: Vec::new() }
}

fn nothing_found() -> Failure {
    Failure::input("no knot answers to that", "`reeve knots list` shows them all")
}

fn show(word: &str, tied: &TiedWith, shop: &WhichShop, format: Format) -> Result<String, Failure> {
    let shelf = Shelf::open(shop)?;
    let knot = shelf.find(word)?;
    if format == Format::Svg {
        let drawing = DrawingResult { knot, shape: shelf.shape_to_draw(knot)?, style: shelf.style()? };
        return shelf.printed(&drawing, format);
    }
    let chosen = tied.chosen(knot)?;
    let setting = setting(knot, tied, &chosen)?;
    let taken = knot.taken(&setting).map_err(|misfit| Failure::from(Fault::of(&misfit)))?;
    let shape = if format == Format::Html { shelf.shape(knot)? } else { None };
    let charted = Charted { knot, setting, shape };
    shelf.printed(
        &KnotResult { charted: &charted, taken: &taken, sheet: shelf.sheet(&knot.title), words: shelf.words() },
        format,
    )
}

fn chart(kind: Option<&str>, cord: f64, shop: &WhichShop) -> Result<String, Failure> {
    let shelf = Shelf::open(shop)?;
    let tied = usual(cord);
    let charted = |knot| Ok(Charted { knot, setting: setting(knot, &tied, &[])?, shape: shelf.shape(knot)? });
    let knots = shelf.of_kind(kind).map(charted).collect::<Result<Vec<_>, Failure>>()?;
    if knots.is_empty() {
        return Err(nothing_found());
    }
    shelf.chart(cord, &knots)
}

fn check(file: &Path) -> Result<(), Failure> {
    let (knot, remarks) = knot_of_file(file)?;
    print_faults(&remarks.into());
    let words = words_of(None)?;
    let lacks: Vec<String> = lacks(&knot, &words).iter().map(|lack| format!("it still lacks {lack}\n")).collect();
    print(&format!("{}: no faults\n{}", knot.title, lacks.concat()))
}
