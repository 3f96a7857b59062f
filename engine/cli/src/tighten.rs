//! `reeve knots tighten`: what a drawn knot takes, computed from its path.

use std::io::IsTerminal;
use std::path::{Path, PathBuf};

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use rayon::prelude::*;
use reeve_catalogue::path::{Path as KnotPath, StartingCore};
use reeve_catalogue::table::{TighteningRow, TighteningTable};
use reeve_catalogue::tighten::{Budget, Case, TightenError, cases, drawn, drawn_case, row};
use reeve_catalogue::{Catalogue, Knot, Setting, TIGHTENED, shape_name, shape_text, table_name, table_text};
use reeve_measure::Remedied;
use reeve_pages::results::TightResult;
use reeve_shop::Folder;

use crate::failure::Failure;
use crate::forms::WhichShop;
use crate::knot_args::Tighten;
use crate::output::{print, write_files};
use crate::shelf::{Shelf, TiedWith, knot_of_file, setting};

pub(crate) fn run(asked: &Tighten) -> Result<(), Failure> {
    let shelf = Shelf::open(&asked.shop)?;
    let Some(word) = &asked.knot else { return keep_every(&shelf.catalogue, asked) };
    let (knot, file) = read_or_find(&shelf, word)?;
    if asked.keep || asked.into.is_some() {
        let folder = match (&asked.into, file) {
            (Some(into), _) => into.clone(),
            (None, Some(file)) => beside(&file),
            (None, None) => own_folder(&asked.shop, &knot)?,
        };
        return keep(&[&knot], &folder);
    }
    show(&shelf, &knot, asked)
}

/// A word that ends in `.toml` is a file, any other the name of a knot.
fn read_or_find(shelf: &Shelf, word: &str) -> Result<(Knot, Option<PathBuf>), Failure> {
    let file = Path::new(word);
    if file.extension().is_none_or(|ending| ending != "toml") {
        return Ok((shelf.find(word)?.clone(), None));
    }
    let (knot, _) = knot_of_file(file)?;
    Ok((knot.as_ref().clone(), Some(file.to_owned())))
}

fn path_of(knot: &Knot) -> Result<&KnotPath, Failure> {
    knot.path.as_ref().ok_or_else(|| {
        Failure::input(
            format!("`{}` has no path to tighten", knot.name),
            match &knot.computed {
                Some(computed) => format!("the library `{}` works out what it takes", computed.library),
                None => "its moves say what it takes; add a [path] to its file to draw it".to_owned(),
            },
        )
    })
}

fn show(shelf: &Shelf, knot: &Knot, asked: &Tighten) -> Result<(), Failure> {
    let path = path_of(knot)?;
    let tied = TiedWith {
        cord: asked.cord,
        core: asked.core,
        rod: asked.rod,
        working: asked.working,
        give: asked.give,
        parameters: Vec::new(),
    };
    let setting = setting(knot, &tied, &[])?;
    knot.check(&setting).map_err(|misfit| Failure::input(misfit.to_string(), "change --core, --rod or --working"))?;
    let case = case_of(knot, &setting);
    let row = row(path, case, &Budget::default()).map_err(|slip| slipped(knot, case, slip))?;
    if row.take_up[0] <= 0.0 {
        return Err(Failure::input(
            format!("`{}` is drawn by its path, not measured: friction holds it", knot.name),
            format!("`reeve knots show {}` tells what its moves say", knot.name),
        ));
    }
    print(&shelf.printed(&TightResult { knot, setting: &setting, row: &row, words: shelf.words() }, asked.format)?)
}

/// The case to tighten for a setting: a core of other thickness than the cord is a rod of the same girth.
fn case_of(knot: &Knot, setting: &Setting<'_>) -> Case {
    let working = if knot.together { 1 } else { setting.working };
    let round = match setting.core {
        _ if knot.core.legs == (0, 0) && !knot.core.fitting => StartingCore::Nothing,
        reeve_catalogue::Core::Legs { count, .. } => StartingCore::Legs(count),
        _ => StartingCore::Rod(knot.core_thickness(setting)),
    };
    Case { working, round }
}

fn slipped(knot: &Knot, case: Case, slip: TightenError) -> Failure {
    let round = match case.round {
        StartingCore::Nothing => String::new(),
        StartingCore::Legs(count) => format!(" round {count} core legs"),
        StartingCore::Rod(thick) => format!(" round a rod {thick} cords thick"),
    };
    Failure::input(format!("`{}`{round}: {slip}", knot.name), slip.remedy())
}

/// The folder of results beside a knot's own file.
fn beside(file: &Path) -> PathBuf {
    file.parent().unwrap_or(Path::new("")).join(TIGHTENED)
}

/// Where a shop keeps what its own knots come to.
fn own_folder(shop: &WhichShop, knot: &Knot) -> Result<PathBuf, Failure> {
    let from = shop.folder.as_deref().unwrap_or(Path::new("."));
    let embedded = Catalogue::embedded().find(&knot.name).is_some_and(|own| own.path == knot.path);
    match Folder::find(from) {
        Ok(Folder::Disk(root)) if !embedded && !shop.demo => Ok(root.join("knots").join(TIGHTENED)),
        _ => Err(Failure::input(
            format!("`{}` comes with the program and is tightened already", knot.name),
            "say --into DIR to keep what it comes to somewhere else",
        )),
    }
}

fn keep_every(catalogue: &Catalogue, asked: &Tighten) -> Result<(), Failure> {
    let knots: Vec<&Knot> = catalogue.iter().map(AsRef::as_ref).filter(|knot| knot.path.is_some()).collect();
    let Some(into) = &asked.into else {
        return Err(Failure::input("no knot is named", "name one, or say --every --into DIR for all that are drawn"));
    };
    keep(&knots, into)
}

/// Tightens every case of some knots and writes their tables and shapes.
fn keep(knots: &[&Knot], folder: &Path) -> Result<(), Failure> {
    let jobs: Vec<(&Knot, &KnotPath, Case)> =
        knots.iter().map(|knot| path_of(knot).map(|path| jobs_of(knot, path))).collect::<Result<Vec<_>, _>>()?.concat();
    let progress = progress(jobs.len() + knots.len());
    let tighten = |(knot, path, case): &(&Knot, &KnotPath, Case)| {
        let row = row(path, *case, &Budget::default()).map_err(|slip| slipped(knot, *case, slip));
        progress.inc(1);
        row
    };
    let rows: Vec<TighteningRow> = jobs.par_iter().map(tighten).collect::<Result<_, _>>()?;
    let draw = |knot: &&Knot| {
        let (path, case) = (path_of(knot)?, drawn_case(knot));
        let shape = drawn(path, case, &Budget::default()).map_err(|slip| slipped(knot, case, slip))?;
        progress.inc(1);
        Ok((shape_name(&knot.name), shape_text(&knot.name, &path.mark(), &shape)))
    };
    let mut files: Vec<(String, String)> = knots.par_iter().map(draw).collect::<Result<_, Failure>>()?;
    progress.finish_and_clear();
    for knot in knots.iter().filter(|knot| knot.is_drawn()) {
        let own = jobs.iter().zip(&rows).filter(|((of, ..), _)| of.name == knot.name).map(|(_, row)| *row).collect();
        let table = TighteningTable { knot: knot.name.clone(), mark: path_of(knot)?.mark(), rows: own };
        files.push((table_name(&knot.name), table_text(&table)));
    }
    let named: Vec<(&str, String)> = files.iter().map(|(name, text)| (name.as_str(), text.clone())).collect();
    let written = write_files(folder, &named)?;
    let lines: Vec<String> = written.iter().map(|at| format!("{}\n", at.display())).collect();
    print(&lines.concat())
}

fn jobs_of<'a>(knot: &'a Knot, path: &'a KnotPath) -> Vec<(&'a Knot, &'a KnotPath, Case)> {
    cases(knot).into_iter().map(|case| (knot, path, case)).collect()
}

/// A bar on a terminal, nothing elsewhere.
fn progress(steps: usize) -> ProgressBar {
    let target =
        if std::io::stderr().is_terminal() { ProgressDrawTarget::stderr() } else { ProgressDrawTarget::hidden() };
    let style = ProgressStyle::with_template("tightening {wide_bar} {pos} of {len}, {eta} left");
    let bar = ProgressBar::with_draw_target(Some(steps as u64), target);
    style.map_or(bar.clone(), |style| bar.with_style(style))
}
