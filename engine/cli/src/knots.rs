//! `reeve knots`: list, show, check; samples have a module of their own.

use std::path::Path;

use reeve_catalogue::{Catalogue, Core, Knot, Setting, USUAL_GIVE};
use reeve_measure::{Length, bound};
use reeve_pages::knots::{KnotJson, KnotPage, KnotsPage, knot_json, knot_page, knots_json, knots_page};
use reeve_pages::{Form, lay_out};
use reeve_reading::{Fault, nearest};
use reeve_shop::{Folder, read_knot};

use crate::args::{DataForm, Knots, WhichShop};
use crate::failure::{Failure, print_faults};
use crate::opening::open;
use crate::output::print;
use crate::samples;
use crate::sheets::{json, template_failure};

pub(crate) fn run(command: Knots) -> Result<(), Failure> {
    match command {
        Knots::List { word, kind, shop, form } => list(word.as_deref(), kind.as_deref(), &shop, form),
        Knots::Show { knot, cord, core, rod, working, parameters, shop, form } => {
            let tied = Tied { cord, core, rod, working, parameters: read_parameters(&parameters)? };
            show(&knot, &tied, &shop, form)
        }
        Knots::Sample(sample) => samples::add(&sample),
        Knots::Hand { shop, form } => samples::hand(&shop, form),
        Knots::Check { file } => check(&file),
    }
}

fn list(word: Option<&str>, kind: Option<&str>, shop: &WhichShop, form: DataForm) -> Result<(), Failure> {
    let catalogue = catalogue(shop)?;
    let of_kind = |knot: &Knot| kind.is_none_or(|kind| knot.kind.word() == kind);
    let with_word = |knot: &Knot| word.is_none_or(|word| knot.speaks_of(word));
    let found: Vec<&Knot> =
        catalogue.iter().map(AsRef::as_ref).filter(|knot| of_kind(knot) && with_word(knot)).collect();
    if found.is_empty() {
        return Err(Failure::input("no knot answers to that", "`reeve knots list` shows them all"));
    }
    match form {
        DataForm::Text => print(&page("knots", &KnotsPage { knots: knots_page(&found) })?),
        DataForm::Json => print(&json(&knots_json(&found))?),
    }
}

/// Where and with what a knot is shown.
struct Tied {
    cord: f64,
    core: Option<u32>,
    rod: Option<f64>,
    working: Option<u32>,
    parameters: Vec<(String, f64)>,
}

fn show(word: &str, tied: &Tied, shop: &WhichShop, form: DataForm) -> Result<(), Failure> {
    let catalogue = catalogue(shop)?;
    let Some(knot) = catalogue.find(word) else {
        let near = nearest(word, catalogue.words()).map(|near| format!("did you mean `{near}`?"));
        return Err(Failure::input(
            format!("no knot is called `{word}`"),
            near.unwrap_or_else(|| "`reeve knots list` shows them all".to_owned()),
        ));
    };
    let setting = setting(knot, tied)?;
    let taken = knot
        .taken(&setting)
        .map_err(|misfit| Failure::input(misfit.to_string(), "change --core, --rod, --working or --set"))?;
    match form {
        DataForm::Text => {
            let view: KnotPage = knot_page(knot, &setting, &taken);
            print(&page("knot", &view)?)
        }
        DataForm::Json => {
            let shown: KnotJson = knot_json(knot, &setting, &taken);
            print(&json(&shown)?)
        }
    }
}

/// The setting asked for; what is not said is what the knot is usually tied round.
fn setting<'a>(knot: &Knot, tied: &'a Tied) -> Result<Setting<'a>, Failure> {
    let cord = thickness("--cord", tied.cord, &bound::CORD_DIAMETER)?;
    let core = match (tied.rod, tied.core) {
        (Some(rod), _) => Core::Rod(thickness("--rod", rod, &bound::SECTION)?),
        (None, Some(count)) => Core::Legs { count, diameter: cord },
        // A rod five cords thick stands for a ring or dowel.
        (None, None) if knot.core.legs == (0, 0) && knot.core.fitting => Core::Rod(cord * 5.0),
        (None, None) => Core::Legs { count: knot.core.usual_legs(), diameter: cord },
    };
    let working = tied.working.unwrap_or(knot.working.legs.0);
    Ok(Setting { cord, working, core, give: USUAL_GIVE, parameters: &tied.parameters })
}

fn thickness(option: &str, mm: f64, bound: &reeve_measure::Bound) -> Result<Length, Failure> {
    if bound.holds(mm) {
        return Ok(Length::mm(mm));
    }
    Err(Failure::input(format!("{option} {mm} is out of range"), bound.to_string()))
}

pub(crate) fn read_parameters(words: &[String]) -> Result<Vec<(String, f64)>, Failure> {
    let read = |word: &String| {
        let (name, number) = word.split_once('=')?;
        let number: f64 = number.trim().parse().ok().filter(|number: &f64| number.is_finite())?;
        Some((name.trim().to_owned(), number))
    };
    let parameter = |word| {
        read(word).ok_or_else(|| Failure::input(format!("`{word}` is not a parameter"), "for example --set turns=12"))
    };
    words.iter().map(parameter).collect()
}

fn check(file: &Path) -> Result<(), Failure> {
    let (knot, faults) = read_knot(file);
    match knot {
        Some(knot) if !faults.iter().any(Fault::is_error) => {
            print_faults(&faults);
            print(&format!("{}: no faults\n", knot.title))
        }
        _ => Err(Failure::Input(faults)),
    }
}

/// The knots of a shop, or the program's own alone where there is no shop and none was named.
fn catalogue(shop: &WhichShop) -> Result<Catalogue, Failure> {
    let nowhere = shop.folder.is_none() && !shop.demo && Folder::find(Path::new(".")).is_err();
    if nowhere {
        return Ok(Catalogue::embedded().0);
    }
    let mut shop = open(shop)?;
    if shop.is_stopped() {
        return Err(Failure::Input(shop.take_faults()));
    }
    Ok(shop.catalogue().clone())
}

pub(crate) fn page(name: &str, view: &impl serde::Serialize) -> Result<String, Failure> {
    let templates = reeve_pages::load(&[]).map_err(|fault| template_failure(&fault))?;
    lay_out(&templates, name, Form::Text, view).map_err(|fault| template_failure(&fault))
}
