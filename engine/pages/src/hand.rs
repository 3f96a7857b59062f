//! The maker's hand in words and figures: what samples say, and what one more of them changes.

use reeve_catalogue::{Misfit, Note};
use reeve_costing::hand::{
    Estimate, Hand, KnotTimeHand, OddSample, PACE_SD, PULL_SD, PaceHand, Sample, SampleFigure, spread,
};
use reeve_costing::takeoff::plural;
use reeve_measure::Length;
use schemars::JsonSchema;
use serde::Serialize;

use crate::figures::{FORM, thousandth};
use crate::quote::Row;

/// The hand in finished words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct HandPage {
    summary: String,
    cords: Vec<Row>,
    knots: Vec<Row>,
    pace: Vec<Row>,
    odd: Vec<String>,
}

/// A sample and what it changes, in finished words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SamplePage {
    /// What was or would be done, and in which file.
    pub heading: String,
    /// The lines added to the file.
    pub lines: String,
    changes: Vec<HandChange>,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct HandChange {
    text: String,
    before: String,
    after: String,
}

/// Words the hand. Each odd sample comes with its place.
pub fn hand_page(hand: &Hand, odd: &[(&str, &OddSample)]) -> HandPage {
    let from = |samples: usize| plural("sample", many(samples));
    HandPage {
        summary: summary(hand),
        cords: hand
            .cords
            .iter()
            .map(|known| Row {
                text: known.cord.name.clone(),
                detail: format!("{}; stated {:.3}", from(known.samples), known.cord.stated_give()),
                amount: either(known.give, 3),
            })
            .collect(),
        knots: hand
            .knots
            .iter()
            .map(|known| Row {
                text: format!("{} in {}", known.knot.title, known.cord.name),
                detail: from(known.samples),
                amount: format!("take-up x {}, rise x {}", factor(known.take_up), factor(known.rise)),
            })
            .collect(),
        pace: hand.pace.iter().flat_map(pace_rows).chain(hand.times.iter().map(time_row)).collect(),
        odd: odd.iter().map(|(place, odd)| format!("{place}: {}", odd_words(odd))).collect(),
    }
}

fn summary(hand: &Hand) -> String {
    if hand.given == 0 && hand.pace.is_none() {
        return "No samples yet: every figure is the catalogue's, and the shop's pace is that of shop.toml.".to_owned();
    }
    if hand.given == 0 {
        return "No samples yet: but finished work was timed. Behind each figure stands its standard deviation."
            .to_owned();
    }
    let left_out = hand.odd.iter().filter(|odd| odd.figure != SampleFigure::Time).count();
    let counted = if left_out == 0 { String::new() } else { format!(", {left_out} of them not counted") };
    format!("From {}{counted}. Behind each figure stands its standard deviation.", plural("sample", many(hand.given)))
}

/// What times come from: `2 timed samples`, `1 timed sample and 3 records of finished work`.
pub(crate) fn timed_words(samples: usize, works: usize) -> String {
    let samples = (samples > 0).then(|| plural("timed sample", many(samples)));
    let works = (works > 0).then(|| plural("record of finished work", many(works)));
    samples.into_iter().chain(works).collect::<Vec<_>>().join(" and ")
}

fn pace_rows(pace: &PaceHand) -> Vec<Row> {
    let row = |text: &str, figure: Estimate| Row {
        text: text.to_owned(),
        detail: timed_words(pace.samples, pace.works),
        amount: either(figure, 2),
    };
    vec![row("Pace, of what does not depend on length", pace.pace), row("Pull, for what hangs", pace.pull)]
}

/// The time of one knot beside the pace.
fn time_row(known: &KnotTimeHand) -> Row {
    Row {
        text: format!("Of each {}, times that", known.knot.title),
        detail: timed_words(known.samples, known.works),
        amount: either(times(known.time), 2),
    }
}

/// What is odd about a sample, and what is done about it.
pub fn odd_words(odd: &OddSample) -> String {
    let (did, unit, of, left_out) = match odd.figure {
        SampleFigure::TakeUp => ("took", "mm", " of leg", "it is"),
        SampleFigure::Rise => ("made", "mm", "", "it is"),
        SampleFigure::Time => ("took", "s", "", "its time is"),
    };
    let OddSample { sample, expected, got, .. } = odd;
    format!(
        "the {} in {} {did} {got:.1} {unit}{of} each, where {expected:.1} {unit} are expected: {left_out} not counted until \
         other samples bear it out",
        plural(&sample.knot.title, 2).trim_start_matches("2 "),
        sample.cord.name
    )
}

/// Words what a sample changes.
///
/// # Errors
/// A [`Misfit`] when its knot can't be tied so.
pub fn sample_page(
    heading: String,
    lines: String,
    sample: &Sample,
    hands: (&Hand, &Hand),
    pace: f64,
) -> Result<SamplePage, Misfit> {
    let (before, after) = hands;
    let change =
        |text: String, words: &dyn Fn(&Hand) -> String| HandChange { text, before: words(before), after: words(after) };
    let tied = |hand: &Hand| hand.tie(&sample.cord, &sample.knot, &sample.setting(sample.cord.stated_give()));
    let (was, is) = (tied(before)?, tied(after)?);
    let row = |text: String, before: String, after: String| HandChange { text, before, after };
    let title = &sample.knot.title;
    let mut changes = vec![
        change(format!("Give of {}", sample.cord.name), &|hand| either(hand.give_of(&sample.cord), 3)),
        change(format!("{title}, factor on take-up"), &|hand| factor(factors(hand, sample).0)),
        change(format!("{title}, factor on rise"), &|hand| factor(factors(hand, sample).1)),
        row(
            "One takes of a leg".to_owned(),
            length(was.taken.working, was.doubt.working),
            length(is.taken.working, is.doubt.working),
        ),
        row("One rises".to_owned(), length(was.taken.rise, was.doubt.rise), length(is.taken.rise, is.doubt.rise)),
        row("Source of the take-up".to_owned(), was.source.word().to_owned(), is.source.word().to_owned()),
    ];
    if sample.time.is_some() {
        changes.push(change(format!("{title}, factor on time"), &|hand| factor(hand.time_of(&sample.knot))));
        changes.push(change("Pace".to_owned(), &|hand| either(paces(hand, pace).0, 2)));
        changes.push(change("Pull of what hangs".to_owned(), &|hand| either(paces(hand, pace).1, 2)));
    }
    Ok(SamplePage { heading, lines, changes })
}

/// The factors of a sample's knot, as they are held.
fn factors(hand: &Hand, sample: &Sample) -> (Estimate, Estimate) {
    let own =
        hand.knots.iter().find(|known| known.cord.name == sample.cord.name && known.knot.name == sample.knot.name);
    let of = |note: &Note| Estimate { mean: 0.0, sd: spread(note.source).length };
    let (working, rise) = (&sample.knot.working.note, sample.knot.rise.as_ref().map(|rise| &rise.note));
    own.map_or((of(working), of(rise.unwrap_or(working))), |own| (own.take_up, own.rise))
}

/// Pace and pull, as they are held.
fn paces(hand: &Hand, shop: f64) -> (Estimate, Estimate) {
    let stated = |sd: f64| Estimate { mean: shop, sd: sd * shop };
    hand.pace.map_or((stated(PACE_SD), stated(PULL_SD)), |pace| (pace.pace, pace.pull))
}

/// A figure and its standard deviation, with so many decimals.
fn either(figure: Estimate, decimals: usize) -> String {
    format!("{:.decimals$} ± {:.decimals$}", figure.mean, figure.sd)
}

/// A factor from its logarithm.
fn factor(logarithm: Estimate) -> String {
    either(times(logarithm), 3)
}

fn times(logarithm: Estimate) -> Estimate {
    let mean = libm::exp(logarithm.mean);
    Estimate { mean, sd: mean * logarithm.sd }
}

fn length(length: Length, sd: Length) -> String {
    let doubt = if sd > Length::ZERO { format!(" ± {:.1}", sd.as_mm()) } else { String::new() };
    format!("{:.1}{doubt} mm", length.as_mm())
}

fn many(samples: usize) -> u64 {
    u64::try_from(samples).unwrap_or(u64::MAX)
}

/// What a shop's samples say, for other programs.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct HandJson {
    /// Version of this form.
    pub form: u32,
    /// Samples given.
    pub samples: usize,
    /// Cords that were sampled.
    pub cords: Vec<CordHandJson>,
    /// Knots that were sampled.
    pub knots: Vec<KnotHandJson>,
    /// Knots that were timed.
    pub times: Vec<KnotTimeHandJson>,
    /// Pace and pull; null without a timed sample or work.
    pub pace: Option<PaceHandJson>,
    /// Samples that are not counted, or whose time is not.
    pub odd: Vec<OddJson>,
}

/// What the samples say of one cord.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct CordHandJson {
    /// The cord's name in the store.
    pub cord: String,
    /// Its give before any sample.
    pub stated: f64,
    /// Its give.
    pub give: f64,
    /// Standard deviation of that.
    pub give_sd: f64,
    /// Samples counted.
    pub samples: usize,
}

/// What the samples say of one knot in one cord.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct KnotHandJson {
    /// The cord's name in the store.
    pub cord: String,
    /// The knot's name in the catalogue.
    pub knot: String,
    /// What the catalogue's take-up at the cord's give is multiplied by.
    pub take_up: f64,
    /// Standard deviation of that.
    pub take_up_sd: f64,
    /// What the catalogue's rise at the cord's give is multiplied by.
    pub rise: f64,
    /// Standard deviation of that.
    pub rise_sd: f64,
    /// Samples counted.
    pub samples: usize,
}

/// What samples and finished work say of the time of one knot.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct KnotTimeHandJson {
    /// The knot's name in the catalogue.
    pub knot: String,
    /// What the catalogue's time is multiplied by, beside pace and pull.
    pub time: f64,
    /// Standard deviation of that.
    pub time_sd: f64,
    /// Timed samples counted.
    pub samples: usize,
    /// Steps of finished work counted.
    pub works_count: usize,
}

/// What the timed samples say.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct PaceHandJson {
    /// What the catalogue's time that does not depend on length, and handling, are multiplied by.
    pub pace: f64,
    /// Standard deviation of that.
    pub pace_sd: f64,
    /// What the catalogue's time of pulling is multiplied by.
    pub pull: f64,
    /// Standard deviation of that.
    pub pull_sd: f64,
    /// Timed samples counted.
    pub samples: usize,
    /// Finished works counted, and steps of them.
    pub works_count: usize,
}

/// A sample that is not counted, or whose time is not.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct OddJson {
    /// Its file and line.
    pub place: String,
    /// The cord's name in the store.
    pub cord: String,
    /// The knot's name in the catalogue.
    pub knot: String,
    /// What is odd: `take-up`, `rise` or `time`.
    pub figure: String,
    /// What was expected of one knot: millimetres, or seconds for `time`.
    pub expected: f64,
    /// What the sample says, in the same unit.
    pub got: f64,
}

/// The hand for other programs. Each odd sample comes with its place.
pub fn hand_json(hand: &Hand, odd: &[(&str, &OddSample)]) -> HandJson {
    HandJson {
        form: FORM,
        samples: hand.given,
        cords: hand
            .cords
            .iter()
            .map(|known| CordHandJson {
                cord: known.cord.name.clone(),
                stated: known.cord.stated_give(),
                give: thousandth(known.give.mean),
                give_sd: thousandth(known.give.sd),
                samples: known.samples,
            })
            .collect(),
        knots: hand
            .knots
            .iter()
            .map(|known| {
                let (take_up, rise) = (times(known.take_up), times(known.rise));
                KnotHandJson {
                    cord: known.cord.name.clone(),
                    knot: known.knot.name.clone(),
                    take_up: thousandth(take_up.mean),
                    take_up_sd: thousandth(take_up.sd),
                    rise: thousandth(rise.mean),
                    rise_sd: thousandth(rise.sd),
                    samples: known.samples,
                }
            })
            .collect(),
        times: hand
            .times
            .iter()
            .map(|known| {
                let time = times(known.time);
                KnotTimeHandJson {
                    knot: known.knot.name.clone(),
                    time: thousandth(time.mean),
                    time_sd: thousandth(time.sd),
                    samples: known.samples,
                    works_count: known.works,
                }
            })
            .collect(),
        pace: hand.pace.map(|pace| PaceHandJson {
            pace: thousandth(pace.pace.mean),
            pace_sd: thousandth(pace.pace.sd),
            pull: thousandth(pace.pull.mean),
            pull_sd: thousandth(pace.pull.sd),
            samples: pace.samples,
            works_count: pace.works,
        }),
        odd: odd.iter().map(|(place, odd)| odd_json(place, odd)).collect(),
    }
}

fn odd_json(place: &str, odd: &OddSample) -> OddJson {
    let figure = match odd.figure {
        SampleFigure::TakeUp => "take-up",
        SampleFigure::Rise => "rise",
        SampleFigure::Time => "time",
    };
    OddJson {
        place: place.to_owned(),
        cord: odd.sample.cord.name.clone(),
        knot: odd.sample.knot.name.clone(),
        figure: figure.to_owned(),
        expected: thousandth(odd.expected),
        got: thousandth(odd.got),
    }
}
