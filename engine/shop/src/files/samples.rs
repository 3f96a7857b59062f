//! `knots/samples.toml`: knots tied for trial and measured, as typed.

use std::collections::BTreeSet;

use chrono::NaiveDate;
use reeve_measure::{Bound, Length, bound};
use reeve_reading::{Count, Day, Lengths, Name, Number, NumberOrLength, Placed, Table, Text};

use super::design::Chosen;

/// A sample as typed: names are still only names.
#[derive(Debug, Clone, PartialEq)]
pub struct TypedSample {
    /// The cord's name in the store.
    pub cord: Placed<String>,
    /// The knot's name or other name.
    pub knot: Placed<String>,
    /// Knots tied, one after the other.
    pub tied: u32,
    /// Core legs.
    pub core: Option<Placed<u32>>,
    /// Thickness of a rod or ring in their place.
    pub rod: Option<Placed<Length>>,
    /// Working legs in one knot.
    pub working: Option<Placed<u32>>,
    /// Parameters of the knot.
    pub parameters: Chosen,
    /// One working leg before tying.
    pub before: Placed<Length>,
    /// The same leg after tying.
    pub after: Placed<Length>,
    /// Length made along the core.
    pub made: Placed<Length>,
    /// Minutes that it took.
    pub minutes: Option<Placed<f64>>,
    /// When.
    pub on: Option<NaiveDate>,
    /// A remark.
    pub note: Option<String>,
}

/// Finished work as typed, or one step of it. Times are in minutes.
#[derive(Debug, Clone, PartialEq)]
pub struct TypedWork {
    /// The commission's number.
    pub number: String,
    /// Which step.
    pub step: Option<String>,
    /// The last day on which it was worked at.
    pub on: Option<NaiveDate>,
    /// The only knot that was tied.
    pub knot: Option<Placed<String>>,
    /// What does not depend on length, at the catalogue's pace.
    pub base: f64,
    /// What pulling takes, at the catalogue's pace.
    pub pull: f64,
    /// How doubtful the two are together.
    pub doubt: f64,
    /// What it took.
    pub minutes: f64,
}

/// Everything in `knots/samples.toml`, as typed.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TypedSamples {
    /// Knots tied for trial.
    pub samples: Vec<Placed<TypedSample>>,
    /// Finished works and steps of them, as the order book's minutes left them.
    pub works: Vec<TypedWork>,
}

/// Reads `knots/samples.toml`.
pub fn samples_file(t: &mut Table<'_>) -> Option<TypedSamples> {
    let works =
        t.tables("work", "Finished work, or a step of it: `reeve book learn --yes` writes it and keeps it up.", work);
    let samples = t.tables("sample", "A knot tied a few times for trial, and measured.", sample);
    let few = holds(t, &samples, "samples", bound::SAMPLES) && holds(t, &works, "works", bound::WORKS);
    (few && each_once(t, &works))
        .then(|| TypedSamples { samples, works: works.into_iter().map(|work| work.value).collect() })
}

fn holds<T>(t: &Table<'_>, all: &[Placed<T>], of: &str, most: Bound) -> bool {
    let Some(last) = all.last().filter(|_| !most.holds(all.iter().map(|_| 1.0).sum())) else { return true };
    t.refuse_at(last.span.clone(), format!("there are {} {of}", all.len()), most.to_string(), "take out the oldest");
    false
}

/// The same work twice would count for two.
fn each_once(t: &Table<'_>, works: &[Placed<TypedWork>]) -> bool {
    let mut known = BTreeSet::new();
    let twice = works.iter().find(|work| !known.insert((work.number.as_str(), work.step.as_deref())));
    if let Some(work) = twice {
        let step = work.step.as_ref().map_or_else(String::new, |step| format!(", step `{step}`,"));
        let title = format!("the work `{}`{step} stands here twice", work.number);
        t.refuse_at(work.span.clone(), title, "a work is learnt from once", "take out one of the two");
    }
    twice.is_none()
}

fn work(t: &mut Table<'_>) -> Option<TypedWork> {
    const MINUTES: Number = Number(bound::WORK_MINUTES);
    let number = t.need("number", &Text, "The commission's number in the order book: the same work is known by it.");
    let step = t.maybe("step", &Text, "The step; the whole of the work if not said.");
    let on = t.maybe("on", &Day, "The last day on which it was worked at.");
    let knot = t.maybe("knot", &Text, "The knot, where only one was tied: its own time is learnt from it.");
    let base = t.need("base", &MINUTES, "Minutes that the catalogue expects of knots and handling, without pulling.");
    let pull = t.need("pull", &MINUTES, "Minutes that the catalogue expects for pulling.");
    let doubt = t.maybe(
        "doubt",
        &Number(bound::WORK_DOUBT),
        "How doubtful the two are together, as a logarithm: 0.2 is about a fifth either way. None if not said.",
    );
    let minutes = t.need("minutes", &MINUTES, "Minutes that it took, without those that you had stated yourself.");
    Some(TypedWork {
        number: number?.value,
        step: step.map(|step| step.value),
        on: on.map(|day| day.value),
        knot,
        base: base?.value,
        pull: pull?.value,
        doubt: doubt.map_or(0.0, |doubt| doubt.value),
        minutes: minutes?.value,
    })
}

fn sample(t: &mut Table<'_>) -> Option<TypedSample> {
    const LENGTH: Lengths = Lengths(bound::SAMPLE_LENGTH);
    let cord = t.need("cord", &Name, "The cord, by its name in the store. Core legs are of the same cord.");
    let knot = t.need("knot", &Text, "The knot, by its name or another name the trade uses.");
    let tied = t.need("tied", &Count(bound::TIMES), "How many were tied, one after the other.");
    let core = t.maybe(
        "core",
        &Count(bound::ROLE_LEGS),
        "Legs that they were tied round; two, or as near to two as the knot allows, if not said.",
    );
    let rod = t.maybe("rod", &Lengths(bound::SECTION), "In place of core legs: thickness of a round rod or ring.");
    let working = t.maybe(
        "working",
        &Count(bound::ROLE_LEGS),
        "Working legs in one knot, where that may differ; the fewest that the knot takes if not said.",
    );
    let parameters = t.pairs("parameters", &NumberOrLength, "Figures of the knot, where it has any.");
    let before = t.need("before", &LENGTH, "Length of one working leg before the first knot.");
    let after = t.need("after", &LENGTH, "Length of what is left of the same leg below the last knot.");
    let made = t.need("made", &LENGTH, "Length made: from the top of the first knot to the foot of the last.");
    let minutes = t.maybe("minutes", &Number(bound::SAMPLE_MINUTES), "Minutes that tying them took.");
    let on = t.maybe("on", &Day, "When they were tied.");
    let note = t.maybe("note", &Text, "A remark.");
    if let (Some(_), Some(rod)) = (&core, &rod) {
        let title = "a knot is tied round legs or on a rod, not both";
        t.refuse_at(rod.span.clone(), title, "", "take out `core` or `rod`");
        return None;
    }
    Some(TypedSample {
        cord: cord?,
        knot: knot?,
        tied: tied?.value,
        core,
        rod,
        working,
        parameters,
        before: before?,
        after: after?,
        made: made?,
        minutes,
        on: on.map(|day| day.value),
        note: note.map(|note| note.value),
    })
}
