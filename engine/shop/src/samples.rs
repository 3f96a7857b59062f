//! Samples: from what was typed to what the maker's hand is worked out from.

use std::ops::Range;
use std::sync::Arc;

use reeve_catalogue::{Core, GIVE_RANGE, Knot, KnotKind, Taken, TyingError, with_article};
use reeve_costing::hand::{Sample, TimedWork, spread};
use reeve_costing::store::Cord;
use reeve_measure::{Length, Time, bound};
use reeve_reading::{Diagnostics, Fault, Placed, SourceText, read};

use crate::files::{TypedSample, TypedWork, samples_file};
use crate::resolve::{Names, chosen};

/// A knot never takes less of a leg than this share of what the catalogue expects of the softest cord, unless that is a
/// guess.
const LEAST_TAKE_UP: f64 = 0.75;
/// Beyond so many times what the catalogue expects, or below that part of it, a figure is a slip.
const SLIP: f64 = 3.0;

/// The samples of a shop.
#[derive(Debug, Clone, Default)]
pub(crate) struct Samples {
    /// Those that could be read.
    pub(crate) all: Vec<Sample>,
    /// File and line of each.
    pub(crate) places: Vec<String>,
    /// Finished works, and steps of them.
    pub(crate) works: Vec<TimedWork>,
}

/// Reads the samples of a file, and every fault of it.
pub(crate) fn read_samples(source: &Arc<SourceText>, names: &Names<'_>) -> (Samples, Vec<Fault>) {
    let desk = Diagnostics::new(Arc::clone(source));
    let typed = read(&desk, samples_file).unwrap_or_default();
    let works = typed.works.into_iter().filter_map(|work| resolve_work(work, names, &desk)).collect();
    let mut samples = Samples { works, ..Samples::default() };
    let ends: Vec<usize> = source.text.match_indices('\n').map(|(at, _)| at).collect();
    for one in &typed.samples {
        if let Some(sample) = resolve(one, names, &desk) {
            let line = ends.partition_point(|end| *end < one.span.start) + 1;
            samples.all.push(sample);
            samples.places.push(format!("{}:{line}", source.path));
        }
    }
    (samples, desk.into_faults())
}

fn resolve_work(typed: TypedWork, names: &Names<'_>, desk: &Diagnostics) -> Option<TimedWork> {
    let knot = match &typed.knot {
        Some(knot) => Some(names.knot(knot, desk)?),
        None => None,
    };
    Some(TimedWork {
        number: typed.number,
        step: typed.step,
        on: typed.on,
        knot,
        base: Time::minutes(typed.base),
        pull: Time::minutes(typed.pull),
        doubt: typed.doubt,
        took: Time::minutes(typed.minutes),
    })
}

fn resolve(typed: &TypedSample, names: &Names<'_>, desk: &Diagnostics) -> Option<Sample> {
    let (cord, knot) = (names.cord(&typed.cord, desk), names.knot(&typed.knot, desk));
    let (cord, knot) = (cord?, knot?);
    let sample = Sample {
        tied: typed.tied,
        working: typed.working.as_ref().map_or(knot.working.legs.0, |legs| legs.value),
        core: core_of(typed, &cord, &knot),
        parameters: chosen(&knot, &typed.parameters, desk)?,
        before: typed.before.value,
        after: typed.after.value,
        made: typed.made.value,
        time: typed.minutes.as_ref().map(|minutes| Time::minutes(minutes.value)),
        on: typed.on,
        note: typed.note.clone(),
        cord,
        knot,
    };
    let judge = Judge { typed, sample: &sample, desk };
    let (hardest, softest) = judge.expected()?;
    let lengths = judge.take_up(hardest.working.max(softest.working), hardest.working.min(softest.working));
    let sound = lengths.and_then(|()| judge.rise(hardest.rise.max(softest.rise), hardest.rise.min(softest.rise)));
    let timed = judge.time();
    sound.and(timed).map(|()| sample)
}

fn core_of(typed: &TypedSample, cord: &Cord, knot: &Knot) -> Core {
    let legs = |count| Core::Legs { count, diameter: cord.diameter };
    match (&typed.rod, &typed.core) {
        (Some(rod), _) => Core::Rod(rod.value),
        (None, Some(core)) => legs(core.value),
        (None, None) => legs(knot.core.usual_legs()),
    }
}

/// A sample held against what its knot can take.
struct Judge<'a> {
    typed: &'a TypedSample,
    sample: &'a Sample,
    desk: &'a Diagnostics,
}

impl Judge<'_> {
    fn refuse<T>(&self, place: Range<usize>, title: String, label: String, help: &str) -> Option<T> {
        self.desk.refuse(place, title, label, help);
        None
    }

    /// What the catalogue expects of the hardest and of the softest cord.
    fn expected(&self) -> Option<(Taken, Taken)> {
        let at = |give: f64| self.sample.knot.taken(&self.sample.setting(give));
        match at(GIVE_RANGE.0).and_then(|hardest| at(GIVE_RANGE.1).map(|softest| (hardest, softest))) {
            Ok(both) => Some(both),
            // A library that fails stops what asks for its knots, not every command of the shop.
            Err(TyingError::Library { remedy, library, words, .. }) => {
                let title = format!("a sample is not counted: the library `{library}` {words}");
                self.desk.warn(self.typed.knot.span.clone(), title, "this knot can't be worked out now", remedy);
                None
            }
            Err(misfit) => {
                let (place, help) = self.mending(&misfit);
                self.refuse(place, misfit.to_string(), String::new(), help)
            }
        }
    }

    /// Where to look, and what to change.
    fn mending(&self, misfit: &TyingError) -> (Range<usize>, &'static str) {
        let typed = self.typed;
        let or_knot = |place: Option<Range<usize>>| place.unwrap_or_else(|| typed.knot.span.clone());
        let of_legs = |legs: &Option<Placed<u32>>| or_knot(legs.as_ref().map(|legs| legs.span.clone()));
        match misfit {
            TyingError::CoreLegs { .. } => (of_legs(&typed.core), "change `core`"),
            TyingError::NotOnFitting(_) => {
                (or_knot(typed.rod.as_ref().map(|rod| rod.span.clone())), "say `core` in its place")
            }
            TyingError::NeedsFitting(_) => (of_legs(&typed.core), "say its thickness, for example rod = \"25 mm\""),
            TyingError::WorkingLegs { .. } => (of_legs(&typed.working), "change `working`"),
            TyingError::BeyondTable { .. } => {
                (or_knot(typed.rod.as_ref().map(|rod| rod.span.clone())), "change `core` or `rod`")
            }
            TyingError::Refused { parameter, .. } => {
                let of = |name: &String| typed.parameters.iter().find(|(typed, _)| typed.value == *name);
                let place = parameter.as_ref().and_then(of).map(|(_, value)| value.span.clone());
                (or_knot(place), "a sample is held against what its knot can take; change how it was tied")
            }
            _ => (typed.knot.span.clone(), "a sample is held against what its knot can take; mend the knot first"),
        }
    }

    fn knot(&self) -> String {
        with_article(&self.sample.knot.title)
    }

    /// Whether a leg can have taken so much, given the most and the least that is expected.
    fn take_up(&self, most: Length, least: Length) -> Option<()> {
        const HELP: &str = "check `tied`, `before` and `after`, and their units";
        let (sample, place) = (self.sample, self.typed.after.span.clone());
        if sample.after >= sample.before {
            let title = format!("a leg of {} was {} after tying", cm(sample.before), cm(sample.after));
            let label = "tying takes some of the leg".to_owned();
            return self.refuse(place, title, label, "perhaps `before` and `after` changed places");
        }
        let gone = sample.before - sample.after;
        let along = matches!(sample.knot.kind, KnotKind::Sennit | KnotKind::Wrap | KnotKind::Single);
        if along && gone < sample.made {
            let title = format!("{} were made of {} of leg", cm(sample.made), cm(gone));
            let label = "a leg takes at least the length that it makes".to_owned();
            return self.refuse(self.typed.made.span.clone(), title, label, "check `before`, `after` and `made`");
        }
        let took = sample.take_up();
        let title = format!("each knot took {} of leg", mm(took));
        if spread(sample.knot.working.note.source).guess {
            if took >= least / SLIP && took <= most * SLIP {
                return Some(());
            }
            let (least, most) = (mm(least), mm(most));
            let guessed = if least == most { least } else { format!("{least} to {most}") };
            let label =
                format!("its file guesses {guessed}; {SLIP} times as much or as little is a slip, here or there");
            return self.refuse(
                place,
                title,
                label,
                "check `tied`, `before` and `after`, or guess better in the knot's file",
            );
        }
        if took < least * LEAST_TAKE_UP {
            let label = format!(
                "even in the softest cord {} takes {} at the very least",
                self.knot(),
                mm(least * LEAST_TAKE_UP)
            );
            return self.refuse(place, title, label, HELP);
        }
        if took > most * SLIP {
            let label = format!("the catalogue expects {} at most; more than {SLIP} times that is a slip", mm(most));
            return self.refuse(place, title, label, HELP);
        }
        Some(())
    }

    /// Whether the work can have risen so far.
    fn rise(&self, most: Length, least: Length) -> Option<()> {
        let rose = self.sample.rise();
        if rose <= most * SLIP && rose >= least / SLIP {
            return Some(());
        }
        let title = format!("each knot made {}", mm(rose));
        let (least, most) = (mm(least), mm(most));
        let expected = if least == most { least } else { format!("{least} to {most}") };
        let label = format!("the catalogue expects {expected}; {SLIP} times as much or as little is a slip");
        self.refuse(self.typed.made.span.clone(), title, label, "check `tied` and `made`, and its unit")
    }

    fn time(&self) -> Option<()> {
        let (Some(minutes), Some(time)) = (&self.typed.minutes, self.sample.time) else { return Some(()) };
        let each = time.as_s() / f64::from(self.sample.tied);
        if bound::SAMPLE_KNOT_SECONDS.holds(each) {
            return Some(());
        }
        let label = bound::SAMPLE_KNOT_SECONDS.to_string();
        self.refuse(
            minutes.span.clone(),
            format!("each knot took {} s", (each * 100.0).round() / 100.0),
            label,
            "check `tied` and `minutes`",
        )
    }
}

fn mm(length: Length) -> String {
    format!("{:.1} mm", length.as_mm())
}

fn cm(length: Length) -> String {
    format!("{:.1} cm", length.as_cm())
}
