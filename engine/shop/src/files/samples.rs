//! `knots/samples.toml`: knots tied for trial and measured, as typed.

use chrono::NaiveDate;
use reeve_costing::hand::TimedWork;
use reeve_measure::{Length, Time, bound};
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

/// Everything in `knots/samples.toml`, as typed.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TypedSamples {
    /// Knots tied for trial.
    pub samples: Vec<Placed<TypedSample>>,
    /// Steps of finished work, as the order book's minutes left them.
    pub works: Vec<TimedWork>,
}

/// Reads `knots/samples.toml`.
pub fn samples_file(t: &mut Table<'_>) -> Option<TypedSamples> {
    let works = t.tables("work", "A step of finished work: `reeve book learn --yes` writes it.", work);
    let samples = t.tables("sample", "A knot tied a few times for trial, and measured.", sample);
    let most = bound::SAMPLES;
    if let Some(last) = samples.last()
        && !most.holds(samples.iter().map(|_| 1.0).sum())
    {
        let title = format!("there are {} samples", samples.len());
        t.refuse_at(last.span.clone(), title, most.to_string(), "take out the oldest");
        return None;
    }
    Some(TypedSamples { samples, works: works.into_iter().map(|work| work.value).collect() })
}

fn work(t: &mut Table<'_>) -> Option<TimedWork> {
    const MINUTES: Number = Number(bound::WORK_MINUTES);
    let of = t.need("of", &Text, "Number and step.");
    let base = t.need("base", &MINUTES, "Minutes that the catalogue expects, without pulling.");
    let pull = t.need("pull", &MINUTES, "Minutes that the catalogue expects for pulling.");
    let took = t.need("minutes", &MINUTES, "Minutes that it took.");
    Some(TimedWork {
        of: of?.value,
        base: Time::minutes(base?.value),
        pull: Time::minutes(pull?.value),
        took: Time::minutes(took?.value),
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
