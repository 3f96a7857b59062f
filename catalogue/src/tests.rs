//! The catalogue as a whole: every file reads, and the laws of geometry hold for every knot.

use std::sync::{Arc, OnceLock};

use include_dir::File;
use proptest::prelude::*;
use reeve_measure::{Length, Time};
use reeve_reading::{Fault, Figure, SourceText};

use crate::catalogue::{TIGHTENED, table_name};
use crate::embedded::KNOTS;
use crate::geometry::OVERHAND_AT_LEAST;
use crate::tighten::GIVES;
use crate::{Catalogue, Compute, Core, Knot, Question, Setting, Taken, TyingError, USUAL_GIVE, Unknown};

fn catalogue() -> &'static Catalogue {
    // Properties ask for it again and again.
    static KNOTS: OnceLock<Catalogue> = OnceLock::new();
    KNOTS.get_or_init(Catalogue::embedded)
}

/// The program's knot files, as if a shop had brought them: read at once, with what tightening left and all their faults.
fn read_at_once() -> (Catalogue, Vec<Fault>) {
    let source = |file: &File<'_>| SourceText::new(file.path().display().to_string(), file.contents_utf8().unwrap());
    let mut catalogue = Catalogue::default();
    let mut faults: Vec<Fault> = KNOTS.files().flat_map(|file| catalogue.add(&source(file))).collect();
    let drawn: Vec<_> = catalogue.iter().filter(|knot| knot.is_drawn()).map(|knot| table_name(&knot.name)).collect();
    for table in drawn {
        let file = KNOTS.get_file(format!("{TIGHTENED}/{table}")).unwrap();
        faults.extend(catalogue.add_table(&source(file)));
    }
    faults.extend(catalogue.join_parts());
    (catalogue, faults)
}

#[test]
fn every_embedded_file_reads_is_called_like_its_knot_and_has_the_table_of_its_path() {
    let (at_once, faults) = read_at_once();
    let faults: Vec<_> = faults.iter().map(|fault| fault.render(false)).collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    let (at_once, one_by_one): (Vec<_>, Vec<_>) = (at_once.iter().collect(), catalogue().iter().collect());
    assert_eq!(at_once, one_by_one);
    assert_eq!(at_once.len(), KNOTS.files().count());
    for knot in at_once {
        assert!(KNOTS.get_file(table_name(&knot.name)).is_some(), "{}", knot.name);
        assert!(knot.computed.is_none(), "{}: libraries come with shops", knot.name);
    }
}

#[test]
fn a_knot_of_a_shop_stands_in_for_the_programs_and_those_made_of_it_are_made_of_the_shops() {
    let mut catalogue = Catalogue::embedded();
    let composite = catalogue.iter().find(|knot| !knot.is_whole()).unwrap().clone();
    let part = composite.parts[0].clone();
    assert!(Arc::ptr_eq(catalogue.find(&part.name).unwrap(), &part), "read once");
    let mut own = Knot::clone(&part);
    own.title = "another".to_owned();
    catalogue.put(Arc::new(own));
    assert_eq!(catalogue.iter().count(), KNOTS.files().count());
    assert!(catalogue.join_parts().is_empty());
    for knot in [catalogue.find(&part.name).unwrap(), &catalogue.find(&composite.name).unwrap().parts[0]] {
        assert_eq!(knot.title, "another");
    }
    // A knot that is made of others is no part.
    let mut made_of_others = Knot::clone(&composite);
    made_of_others.name.clone_from(&part.name);
    catalogue.put(Arc::new(made_of_others));
    assert!(!catalogue.join_parts().is_empty());
}

fn mm(value: f64) -> Length {
    Length::mm(value)
}

/// Tied with its fewest working legs round so many core legs (kept within its range), or a rod.
fn tied(knot: &Knot, cord: f64, core: u32) -> Taken {
    let core = match knot.core.legs {
        (0, 0) if knot.core.fitting => Core::Rod(mm(cord * 3.0)),
        (least, most) => Core::Legs { count: core.clamp(least, most), diameter: mm(cord) },
    };
    let setting = Setting { cord: mm(cord), working: knot.working.legs.0, core, give: USUAL_GIVE, parameters: &[] };
    knot.taken(&setting).unwrap()
}

#[test]
fn every_word_finds_one_knot() {
    let catalogue = catalogue();
    assert!(catalogue.iter().count() >= 36);
    let mut words: Vec<&str> = catalogue
        .iter()
        .flat_map(|knot| std::iter::once(knot.name.as_str()).chain(knot.also.iter().map(String::as_str)))
        .collect();
    let all = words.len();
    words.sort_unstable();
    words.dedup();
    assert_eq!(words.len(), all, "two knots share a word");
    for word in words {
        assert!(catalogue.find(word).is_some(), "{word}");
    }
}

#[test]
fn the_trades_other_names_find_the_knot() {
    let catalogue = catalogue();
    for (word, name) in [
        ("cow hitch", "larks-head"),
        ("cow-hitch", "larks-head"),
        ("clove hitch", "double-half-hitch"),
        ("spiral-knot", "half"),
        ("barrel knot", "coil"),
        ("lark's head", "larks-head"),
    ] {
        assert_eq!(catalogue.find(word).map(|knot| knot.name.as_str()), Some(name), "{word}");
    }
}

/// In a cord of this give, round so many core legs as thick as the cord; in cord diameters.
fn at_give(knot: &Knot, core: u32, give: f64) -> Taken {
    let core = Core::Legs { count: core.clamp(knot.core.legs.0, knot.core.legs.1), diameter: mm(1.0) };
    knot.taken(&Setting { cord: mm(1.0), working: knot.working.legs.0, core, give, parameters: &[] }).unwrap()
}

#[test]
fn a_square_knot_sennit_takes_four_to_five_times_its_length() {
    // Common practice, no source: working legs are cut 4 to 5 times the finished length.
    let square = catalogue().find("square").cloned().unwrap();
    for give in GIVES {
        let taken = at_give(&square, 2, give);
        let ratio = taken.working / taken.rise;
        assert!((4.0..=5.0).contains(&ratio), "give {give}: {ratio}");
        assert!((taken.core / taken.rise - 1.0).abs() < 1e-12);
    }
}

#[test]
fn twenty_half_knots_make_about_the_length_of_ten_square_knots() {
    // Common practice, no source: "about" is taken as a tenth.
    let catalogue = catalogue();
    let (square, half) = (catalogue.find("square").unwrap(), catalogue.find("half").unwrap());
    for give in GIVES {
        let (square, half) = (at_give(square, 2, give), at_give(half, 2, give));
        let ratio = half.rise * 20.0 / (square.rise * 10.0);
        assert!((ratio - 1.0).abs() < 0.1, "give {give}: {ratio}");
    }
}

#[test]
fn ten_square_knots_in_3_mm_cord_leave_a_fringe_of_an_80_cm_leg() {
    // Common practice, no source: 10 square knots and the hitches that fasten their four legs to a ring
    // leave a fringe when each working leg is cut 80 cm.
    let catalogue = catalogue();
    let square = tied(catalogue.find("square").unwrap(), 3.0, 2);
    let mounting = catalogue.find("larks-head").unwrap();
    let ring = Setting { cord: mm(3.0), working: 2, core: Core::Rod(mm(5.0)), give: USUAL_GIVE, parameters: &[] };
    let used = square.working * 10.0 + mounting.taken(&ring).unwrap().working;
    let fringe = Length::cm(80.0) - used;
    assert!(fringe.as_cm() > 10.0 && fringe.as_cm() < 50.0, "{} cm", fringe.as_cm());
}

#[test]
fn a_button_knot_keeps_under_the_published_bound() {
    // Merry, The Marlinspike Sailor's Arts and Crafts, 2013, p. 74: 72 in of 1 mm cord, doubled, make
    // 16 to 17 knots: at most 108 diameters a knot for both legs, some 10.5 diameters apart.
    let button = catalogue().find("button").cloned().unwrap();
    for give in GIVES {
        let taken = at_give(&button, 0, give);
        assert!(taken.working.as_mm() * 2.0 < 108.0, "give {give}");
        assert!(taken.rise.as_mm() < 10.5, "give {give}");
    }
}

#[test]
fn an_overhand_and_a_figure_eight_keep_within_their_bounds() {
    // Upper: the closed ideal knots, 16.3729 (Gilbert's table of ideal knots) and 21.0444 (Ashton, Cantarella,
    // Piatek and Rawdon, Experimental Mathematics 20, 2011, from memory). Lower: OVERHAND_AT_LEAST.
    let catalogue = catalogue();
    for give in GIVES {
        let takes = |name: &str| at_give(catalogue.find(name).unwrap(), 0, give).working.as_mm();
        let (overhand, eight) = (takes("overhand"), takes("figure-eight"));
        assert!(overhand > OVERHAND_AT_LEAST && overhand < 16.3729, "give {give}: {overhand}");
        assert!(eight > overhand && eight < 21.0444, "give {give}: {eight}");
    }
}

#[test]
fn a_harder_cord_never_takes_less() {
    for knot in catalogue().iter().filter(|knot| knot.core.legs != (0, 0) || !knot.core.fitting) {
        for (harder, softer) in GIVES.iter().zip(&GIVES[1..]) {
            let (harder, softer) = (at_give(knot, 2, *harder), at_give(knot, 2, *softer));
            assert!(harder.working >= softer.working * (1.0 - 1e-12), "{}", knot.name);
        }
    }
}

#[test]
fn every_drawn_knot_has_a_table_and_every_path_a_shape() {
    let catalogue = catalogue();
    for knot in catalogue.iter().filter(|knot| knot.path.is_some()) {
        let (shape, faults) = catalogue.shape(knot);
        assert!(faults.is_empty() && shape.is_some(), "{}: `reeve knots tighten --every --into …`", knot.name);
        assert!(!knot.is_drawn() || knot.table.is_some(), "{}", knot.name);
    }
}

#[test]
fn every_knot_takes_more_than_it_rises_and_carries_its_core_along() {
    for knot in catalogue().iter() {
        let taken = tied(knot, 4.0, 2);
        assert!(taken.working >= taken.rise, "{}", knot.name);
        assert!(taken.core >= taken.rise * (1.0 - 1e-12), "{}", knot.name);
        assert!(taken.rise > Length::ZERO && taken.base.as_s() > 0.0, "{}", knot.name);
    }
}

#[test]
fn a_knot_says_what_it_needs_and_what_it_was_given() {
    let catalogue = catalogue();
    let message = |name: &str, working, core, parameters: &[(String, f64)]| {
        let setting = Setting { cord: mm(4.0), working, core, give: USUAL_GIVE, parameters };
        catalogue.find(name).unwrap().taken(&setting).unwrap_err().to_string()
    };
    let legs = |count| Core::Legs { count, diameter: mm(4.0) };
    assert_eq!(
        message("square", 2, legs(25), &[]),
        "a square knot is tied round 0 to 24 core legs in each column, and was given 25"
    );
    assert_eq!(
        message("square", 3, legs(2), &[]),
        "a square knot is tied with 2 working legs in each column, and was given 3"
    );
    assert_eq!(message("square", 2, Core::Rod(mm(9.0)), &[]), "a square knot can't be tied on a fitting");
    assert_eq!(
        message("double-half-hitch-on-ring", 1, legs(0), &[]),
        "a double half hitch on a ring needs a fitting to be tied on"
    );
    assert_eq!(
        message("gathering-wrap", 1, legs(8), &[("turns".to_owned(), 2.0)]),
        "`turns` must be from 3 to 120, and was given 2"
    );
    assert_eq!(
        message("gathering-wrap", 1, legs(8), &[("rounds".to_owned(), 2.0)]),
        "a gathering wrap has no parameter `rounds`; it has turns"
    );
    assert!(matches!(
        catalogue.find("overhand").unwrap().taken(&Setting {
            cord: mm(4.0),
            working: 1,
            core: legs(1),
            give: USUAL_GIVE,
            parameters: &[]
        }),
        Err(TyingError::CoreLegs { range: (0, 0), .. })
    ));
}

proptest! {
    #[test]
    fn twice_the_cord_takes_twice_the_leg(cord in 0.5..20.0_f64, core in 0_u32..12) {
        for knot in catalogue().iter() {
            let (thin, thick) = (tied(knot, cord, core), tied(knot, cord * 2.0, core));
            for (thin, thick) in [(thin.working, thick.working), (thin.core, thick.core), (thin.rise, thick.rise)] {
                prop_assert!((thick / thin - 2.0).abs() < 1e-9, "{}", knot.name);
            }
        }
    }

    #[test]
    fn more_core_legs_never_take_less(core in 0_u32..60) {
        for knot in catalogue().iter() {
            prop_assert!(tied(knot, 4.0, core + 1).working >= tied(knot, 4.0, core).working, "{}", knot.name);
        }
    }

    #[test]
    fn no_text_panics_the_knot_reader(text in "\\PC{0,200}") {
        let mut catalogue = Catalogue::default();
        catalogue.add(&SourceText::new("knots/x.toml", text));
    }
}

/// A library that takes what it is asked, added up, and refuses a first value of 13.
#[derive(Debug)]
struct Adding;

impl Compute for Adding {
    fn take(&self, asked: &Question<'_>) -> Result<Taken, Unknown> {
        if asked.values[0].to_bits() == 13.0_f64.to_bits() {
            return Err(Unknown::Refused { parameter: Some(0), words: "thirteen is too many".to_owned() });
        }
        if asked.setting.give > 0.15 {
            return Err(Unknown::Trouble { words: "sank".to_owned(), remedy: "lift it".to_owned() });
        }
        let working = mm(asked.values.iter().sum()) + asked.core;
        Ok(Taken { working, core: mm(0.0), rise: mm(1.0), base: Time::s(2.0), draws: 3.0 })
    }
}

const ADDING: &str = "[knot]\nname = \"adding\"\ntitle = \"adding knot\"\nkind = \"wrap\"\nsummary = \"It adds up.\"\n\
    [core]\nlegs = [1, 4]\nfitting = true\n[computed]\nlibrary = \"sums\"\n\
    [[role]]\nrole = \"working\"\nlegs = [1, 1]\nsource = \"geometry\"\nnote = \"It adds up.\"\n\
    [time]\npull = 1\nsource = \"from memory\"\nnote = \"It adds up.\"\n\
    [[parameter]]\nname = \"turns\"\nleast = 1\nmost = 20\ndefault = 7\nwhole = true\nabout = \"Turns.\"\n\
    [[parameter]]\nname = \"length\"\nleast = 0\nmost = 500\ndefault = 100\nunit = \"mm\"\nabout = \"Length.\"\n";

#[test]
fn a_library_is_asked_with_every_value_and_the_core_as_a_rod() {
    let mut catalogue = Catalogue::default();
    assert!(catalogue.add(&SourceText::new("adding.toml", ADDING)).is_empty());
    let told = |catalogue: &Catalogue, give, parameters: &[(String, f64)]| {
        let setting = Setting { cord: mm(4.0), working: 1, core: Core::Rod(mm(30.0)), give, parameters };
        catalogue.find("adding").unwrap().taken(&setting).map_err(|misfit| misfit.to_string())
    };
    let missing = told(&catalogue, 0.1, &[]).unwrap_err();
    assert!(missing.contains("an adding knot") && missing.contains("`sums` is not admitted"), "{missing}");
    catalogue.join_library("sums", &(Arc::new(Adding) as Arc<dyn Compute>));
    let turns = |value| [("turns".to_owned(), value)];
    let usual = told(&catalogue, 0.1, &[]).unwrap();
    assert!((usual.working.as_mm() - 137.0).abs() < 1e-9 && usual.draws > 2.9, "{usual:?}");
    assert!((told(&catalogue, 0.1, &turns(3.0)).unwrap().working.as_mm() - 133.0).abs() < 1e-9);
    // What the knot itself does not allow never reaches the library.
    assert!(told(&catalogue, 0.1, &turns(21.0)).unwrap_err().contains("from 1 to 20"));
    assert!(told(&catalogue, 0.1, &turns(2.5)).unwrap_err().contains("a whole number"));
    assert!(told(&catalogue, 0.1, &turns(13.0)).unwrap_err().contains("can't be tied so: thirteen is too many"));
    assert!(told(&catalogue, 0.2, &[]).unwrap_err().contains("its library `sums` sank"));
}

#[test]
fn a_parameter_takes_the_figure_of_its_unit() {
    let mut catalogue = Catalogue::default();
    catalogue.add(&SourceText::new("adding.toml", ADDING));
    let knot = catalogue.find("adding").unwrap();
    assert_eq!(knot.chosen("length", Figure::Length(mm(80.0))), Ok(80.0));
    assert_eq!(knot.chosen("turns", Figure::Number(8.0)), Ok(8.0));
    let refused = |name, figure| knot.chosen(name, figure).unwrap_err();
    for (misfit, words, help) in [
        (refused("length", Figure::Number(80.0)), "without a unit", "write \"80 mm\""),
        (refused("turns", Figure::Length(mm(8.0))), "a plain number", "without a unit"),
        (refused("length", Figure::Length(mm(501.0))), "from 0 to 500 mm", "within that range"),
        (refused("trns", Figure::Number(8.0)), "no parameter `trns`; it has turns, length", "one that the knot has"),
    ] {
        assert!(misfit.to_string().contains(words), "{misfit}");
        assert!(misfit.parameter_help().unwrap().contains(help), "{misfit}");
    }
}
