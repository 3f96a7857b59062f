//! A knot file, of moves or with a path: it takes finite lengths wherever it can be tied.

use reeve_catalogue::{Catalogue, Setting, USUAL_GIVE};
use reeve_measure::Length;
use reeve_pages::Words;
use reeve_pages::knots::knot_page;
use reeve_reading::{Fault, SourceText};

use super::{files, text};
use crate::{Target, holds as must};

pub(super) const TARGET: Target = Target { name: "knot", holds, seeds, longest: 5_000, runs: 2_000 };

thread_local! {
    static CATALOGUE: Catalogue = Catalogue::embedded();
    static WORDS: Words = Words::of_shop(None).unwrap();
}

fn holds(bytes: &[u8]) {
    let Some(text) = text(bytes) else { return };
    let source = SourceText::new("knots/tried.toml", text);
    let mut alone = Catalogue::default();
    let faults = alone.add(&source);
    must::of_faults(&faults);
    let Some(read) = alone.iter().next().cloned() else {
        return assert!(faults.iter().any(Fault::is_error), "no knot was read, and nothing says why");
    };
    let mut catalogue = CATALOGUE.with(Clone::clone);
    catalogue.put(read.clone());
    must::of_faults(&catalogue.join_parts());
    let Some(knot) = catalogue.find(&read.name) else { panic!("`{}` is not found by its own name", read.name) };
    must::of_knot(knot);
    if let Some(path) = &knot.path {
        assert_eq!(path.mark().len(), path.mark().trim().len());
    }
    let cord = Length::mm(4.0);
    let setting =
        Setting { cord, working: knot.working.legs.0, core: knot.usual_core(cord), give: USUAL_GIVE, parameters: &[] };
    if let Ok(taken) = knot.taken(&setting) {
        let page = WORDS.with(|words| serde_json::to_string(&knot_page(knot, &setting, &taken, words)).unwrap());
        must::figures_of(&page, text);
    }
}

fn seeds() -> Vec<Vec<u8>> {
    [
        files("catalogue/knots", ".toml"),
        files("engine/shop/starter/knots", ".toml"),
        files("tests/faults/shop/knots", ".toml"),
    ]
    .concat()
}
