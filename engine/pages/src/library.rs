//! A library of computed knots: what it declares, and what a probe of it found.

use std::time::Duration;

use reeve_catalogue::Knot;
use reeve_costing::takeoff::plural;
use serde::Serialize;

use crate::knots::KnotWords;

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
pub fn library_page(declared: &LibraryView<'_>) -> LibraryPage {
    let count = |what: &str, count: usize| plural(what, u64::try_from(count).unwrap_or(u64::MAX));
    LibraryPage {
        name: declared.name.to_owned(),
        version: declared.version.to_owned(),
        digest: declared.digest.to_owned(),
        knots: declared.knots.iter().map(|knot| declared_knot(knot)).collect(),
        guards: declared.guards.join("; "),
        probe: format!(
            "{}, each twice in each of two processes: every answer the same, within the contract, and by the laws that the \
             knots declare. {} refused. The slowest took less than {}.",
            count("question", declared.asked),
            count("setting", declared.refused),
            at_most(declared.slowest)
        ),
    }
}

/// A time rounded up to 1, 10 or 100 of a unit, so that it is nearly always the same.
fn at_most(time: Duration) -> &'static str {
    let steps =
        [(10, "10 microseconds"), (100, "100 microseconds"), (1000, "1 millisecond"), (10_000, "10 milliseconds")];
    steps.iter().find(|(most, _)| time.as_micros() < *most).map_or("100 milliseconds", |(_, words)| words)
}

fn declared_knot(knot: &Knot) -> DeclaredKnot {
    let note = |what: &str, note: &reeve_catalogue::Note| format!("{what}: {}. {}", note.source.word(), note.words);
    DeclaredKnot {
        words: KnotWords::of(knot),
        notes: vec![note("Take-up", &knot.working.note), note("Time", &knot.time.note)],
    }
}
