//! What the program makes of all that the process of a library may say: figures that can be, or what is wrong with it.

use std::sync::Arc;

use reeve_catalogue::{Catalogue, Compute};
use reeve_host::{Described, DescribedKnot, DescribedParameter, Library, LibraryError, Probed, knot_text, probe_both};
use reeve_measure::Remedied;
use reeve_reading::{SourceText, seen};

use crate::{Target, holds as must};

pub(super) const TARGET: Target = Target { name: "wire", holds, seeds, longest: 4_000, runs: 1_000 };

const NAME: &str = "tried";

fn holds(bytes: &[u8]) {
    let library = || Library::that_said(NAME, bytes);
    match library().describe() {
        Ok(described) => asked(&described, &library),
        Err(trouble) => of_trouble(&trouble),
    }
    match probe_both(&library(), &library()) {
        Ok(probed) => of_probed(&probed),
        Err(trouble) => of_trouble(&trouble),
    }
}

/// Every knot that it describes, worked out by what it says next.
fn asked(described: &Described, library: &dyn Fn() -> Library) {
    for knot in &described.knots {
        let mut catalogue = Catalogue::default();
        must::of_faults(&catalogue.add(&SourceText::new("knot.toml", knot_text(NAME, knot))));
        let by: Arc<dyn Compute> = Arc::new(library());
        catalogue.join_library(NAME, &by);
        catalogue.iter().for_each(|knot| must::of_knot(knot));
    }
}

/// Words go to a terminal by the one door for them.
fn told(words: &str) {
    must::shown(&seen(words));
}

fn of_trouble(trouble: &LibraryError) {
    for words in [trouble.to_string(), trouble.remedy_of(NAME), trouble.remedy()] {
        told(&words);
    }
}

fn of_probed(probed: &Probed) {
    told(&probed.described.name);
    told(&probed.described.version);
    probed.guards.iter().chain(probed.findings.iter().map(|finding| &finding.words)).for_each(|words| told(words));
    probed.findings.iter().filter_map(|finding| finding.knot.as_ref()).for_each(|words| told(words));
    probed.knots.iter().for_each(|(knot, _)| told(&knot.title));
}

fn seeds() -> Vec<Vec<u8>> {
    let held = frame(&(0_u8, ["a list of calls"].as_slice()));
    let unguarded = frame(&(1_u8, LibraryError::Failed("nothing holds it".to_owned())));
    let ready = [held.clone(), frame(&(0_u8, described()))].concat();
    let trouble = [held, frame(&(1_u8, LibraryError::Failed("out of cord".to_owned())))].concat();
    // An answer that was the same both times: its status, the parameter to blame, figures and words.
    let answer = |status: u32, parameter: u32, figures: [f64; 5], words: &str| {
        frame(&([(0_u8, status, parameter, figures, words)].as_slice(), 1000_u64))
    };
    let done = |figures: [f64; 5]| answer(0, u32::MAX, figures, "");
    let refused = answer(1, 0, [0.0; 5], "too few leads");
    let failed = answer(2, u32::MAX, [0.0; 5], "\u{1b}[2Jno");
    let differing = frame(&([(1_u8, "a rise of 1 and of 2")].as_slice(), 1000_u64));
    let answers: Vec<u8> = (1..40_u32).flat_map(|at| done([f64::from(at), 0.0, 4.0, 12.5, 3.0])).collect();
    vec![
        [ready.clone(), answers].concat(),
        [ready.clone(), done([120.0, 0.0, f64::NAN, 1.0, 1.0])].concat(),
        [ready.clone(), refused, failed, differing].concat(),
        ready,
        trouble,
        unguarded,
    ]
}

/// One message: its length in four bytes, the lowest first, and what it says. A variant of an enum begins with its number.
fn frame(message: &impl serde::Serialize) -> Vec<u8> {
    let bytes = postcard::to_stdvec(message).unwrap();
    [u32::try_from(bytes.len()).unwrap().to_le_bytes().to_vec(), bytes].concat()
}

fn described() -> Described {
    let parameter = DescribedParameter {
        name: "leads".to_owned(),
        about: "How many leads.".to_owned(),
        unit: 0,
        whole: true,
        grows: true,
        least: 3.0,
        most: 25.0,
        usual: 5.0,
    };
    let knot = DescribedKnot {
        name: "turks-head".to_owned(),
        title: "Turk's head".to_owned(),
        also: vec!["running turk's head".to_owned()],
        kind: 1,
        summary: "A woven ring.".to_owned(),
        on_fitting: true,
        joins: false,
        core_grows: true,
        give_shrinks: true,
        working: (1, 2),
        core: (0, 8),
        take_up_source: 0,
        take_up_note: "counted".to_owned(),
        time_source: 1,
        time_note: "timed".to_owned(),
        pull_s_per_m: 8.0,
        cautions: Vec::new(),
        parameters: vec![parameter],
    };
    Described { name: NAME.to_owned(), version: "1.0".to_owned(), contract: (1, 0), knots: vec![knot] }
}
