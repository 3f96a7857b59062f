//! A library of computed knots: what it declares, and what a probe of it found.

use std::time::Duration;

use reeve_catalogue::{Knot, Note};
use serde::Serialize;

use crate::knots::{KnotWords, source_words};
use crate::phrases::say;
use crate::words::Words;

/// What is shown of a library.
#[derive(Debug)]
pub struct LibraryView<'a> {
    /// The word it is admitted by.
    pub name: &'a str,
    /// Its own version.
    pub version: &'a str,
    /// SHA-256 of its file.
    pub digest: &'a str,
    /// Its knots.
    pub knots: &'a [&'a Knot],
    /// What holds its process back, in words.
    pub guards: &'a [String],
    /// How many questions a probe asked.
    pub asked: usize,
    /// How many of them it refused.
    pub refused: usize,
    /// The slowest answer.
    pub slowest: Duration,
}

/// A library in finished words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct LibraryPage {
    name: String,
    version: String,
    digest: String,
    knots: Vec<DeclaredKnot>,
    guards: String,
    probe: String,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct DeclaredKnot {
    #[serde(flatten)]
    words: KnotWords,
    notes: Vec<String>,
}

/// Words a library that was probed.
pub fn library_page(declared: &LibraryView<'_>, words: &Words) -> LibraryPage {
    LibraryPage {
        name: declared.name.to_owned(),
        version: declared.version.to_owned(),
        digest: declared.digest.to_owned(),
        knots: declared.knots.iter().map(|knot| declared_knot(knot, words)).collect(),
        guards: declared.guards.join("; "),
        probe: say!(
            words,
            "library-probe",
            asked = say!(words, "library-questions", count = declared.asked),
            refused = say!(words, "library-settings", count = declared.refused),
            slowest = at_most(declared.slowest, words)
        ),
    }
}

/// A time rounded up to 1, 10 or 100 of a unit, so that it is nearly always the same.
fn at_most(time: Duration, words: &Words) -> String {
    match time.as_micros() {
        0..10 => say!(words, "library-microseconds", count = 10),
        10..100 => say!(words, "library-microseconds", count = 100),
        100..1000 => say!(words, "library-milliseconds", count = 1),
        1000..10_000 => say!(words, "library-milliseconds", count = 10),
        _ => say!(words, "library-milliseconds", count = 100),
    }
}

fn declared_knot(knot: &Knot, words: &Words) -> DeclaredKnot {
    let (take_up, time) = (&knot.working.note, &knot.time.note);
    let source = |note: &Note| source_words(note.source, words);
    DeclaredKnot {
        words: KnotWords::of(knot, words),
        notes: vec![
            say!(words, "library-take-up", source = source(take_up), note = take_up.words.as_str()),
            say!(words, "library-time", source = source(time), note = time.words.as_str()),
        ],
    }
}
