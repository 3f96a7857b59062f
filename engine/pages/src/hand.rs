//! The maker's hand in words and figures: what samples say, and what one more of them changes.

use reeve_catalogue::{Note, TyingError};
use reeve_costing::hand::{
    Estimate, Hand, KnotTimeHand, OddSample, PACE_SD, PULL_SD, PaceHand, Sample, SampleFigure, TakeUpSource, spread,
};
use reeve_costing::takeoff::plural;
use reeve_measure::Length;
use serde::Serialize;

use crate::figures::{FORM, thousandth};
use crate::knots::source_words;
use crate::phrases::say;
use crate::quote::Row;
use crate::words::Words;

/// The hand in finished words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct HandPage {
    summary: String,
    /// The give of a soft cord, beside which those of the maker's are read.
    soft_give: String,
    cords: Vec<Row>,
    knots: Vec<Row>,
    pace: Vec<Row>,
    odd: Vec<String>,
}

/// A sample and what it changes, in finished words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SamplePage {
    /// What was or would be done, and in which file.
    heading: String,
    /// The lines added to the file.
    lines: String,
    changes: Vec<HandChange>,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct HandChange {
    text: String,
    before: String,
    after: String,
}

/// The give of a very soft cord; common practice, no source.
const SOFT_GIVE: f64 = 0.2;

/// Words the hand. Each odd sample comes with its place.
pub fn hand_page(hand: &Hand, odd: &[(&str, &OddSample)], words: &Words) -> HandPage {
    HandPage {
        summary: summary(hand, words),
        soft_give: words.figure(SOFT_GIVE),
        cords: hand
            .cords
            .iter()
            .map(|known| Row {
                text: known.cord.name.clone(),
                detail: say!(
                    words,
                    "hand-cord-from",
                    samples = say!(words, "hand-samples", count = known.samples),
                    give = words.decimal(known.cord.stated_give(), 3)
                ),
                amount: either(known.give, 3, words),
            })
            .collect(),
        knots: hand
            .knots
            .iter()
            .map(|known| Row {
                text: say!(words, "hand-knot-in", knot = known.knot.title.as_str(), cord = known.cord.name.as_str()),
                detail: say!(words, "hand-samples", count = known.samples),
                amount: say!(
                    words,
                    "hand-factors",
                    take_up = factor(known.take_up, words),
                    rise = factor(known.rise, words)
                ),
            })
            .collect(),
        pace: hand
            .pace
            .iter()
            .flat_map(|pace| pace_rows(pace, words))
            .chain(hand.times.iter().map(|known| time_row(known, words)))
            .collect(),
        odd: odd.iter().map(|(place, odd)| format!("{place}: {}", odd_words(odd, words))).collect(),
    }
}

fn summary(hand: &Hand, words: &Words) -> String {
    if hand.given == 0 && hand.pace.is_none() {
        return say!(words, "hand-none");
    }
    if hand.given == 0 {
        return say!(words, "hand-works-alone");
    }
    let samples = say!(words, "hand-samples", count = hand.given);
    match hand.odd.iter().filter(|odd| odd.figure != SampleFigure::Time).count() {
        0 => say!(words, "hand-from", samples = samples),
        left_out => say!(words, "hand-from-some", samples = samples, count = left_out),
    }
}

/// What times come from: `2 timed samples`, `1 timed sample and 3 records of finished work`.
pub(crate) fn timed_words(samples: usize, works: usize, words: &Words) -> String {
    let of_samples = || say!(words, "hand-timed-samples", count = samples);
    let of_works = || say!(words, "hand-works", count = works);
    match (samples, works) {
        (0, 0) => String::new(),
        (_, 0) => of_samples(),
        (0, _) => of_works(),
        _ => say!(words, "hand-samples-and-works", samples = of_samples(), works = of_works()),
    }
}

fn pace_rows(pace: &PaceHand, words: &Words) -> Vec<Row> {
    let row = |text: String, figure: Estimate| Row {
        text,
        detail: timed_words(pace.samples, pace.works, words),
        amount: either(figure, 2, words),
    };
    vec![row(say!(words, "hand-pace"), pace.pace), row(say!(words, "hand-pull"), pace.pull)]
}

/// The time of one knot beside the pace.
fn time_row(known: &KnotTimeHand, words: &Words) -> Row {
    Row {
        text: say!(words, "hand-knot-time", knot = known.knot.title.as_str()),
        detail: timed_words(known.samples, known.works, words),
        amount: either(times(known.time), 2, words),
    }
}

/// What is odd about a sample, and what is done about it.
pub fn odd_words(odd: &OddSample, words: &Words) -> String {
    let OddSample { sample, expected, got, .. } = odd;
    // Titles are their authors' words, in English.
    let knots = plural(&sample.knot.title, 2).trim_start_matches("2 ").to_owned();
    let (cord, got, expected) = (sample.cord.name.as_str(), words.decimal(*got, 1), words.decimal(*expected, 1));
    match odd.figure {
        SampleFigure::TakeUp => {
            say!(words, "hand-odd-take-up", knots = knots, cord = cord, got = got, expected = expected)
        }
        SampleFigure::Rise => say!(words, "hand-odd-rise", knots = knots, cord = cord, got = got, expected = expected),
        SampleFigure::Time => say!(words, "hand-odd-time", knots = knots, cord = cord, got = got, expected = expected),
    }
}

/// A sample as it is laid into its file.
#[derive(Debug, Clone, Copy)]
pub struct SampleAdded<'a> {
    /// The file.
    pub file: &'a str,
    /// Whether it is written there, or only shown.
    pub is_written: bool,
    /// The lines added.
    pub lines: &'a str,
    /// The sample.
    pub sample: &'a Sample,
}

/// Words what a sample changes of the hand: before, and after; `pace` is what the shop states.
///
/// # Errors
/// A [`TyingError`] when its knot can't be tied so.
pub fn sample_page(
    added: SampleAdded<'_>,
    (before, after): (&Hand, &Hand),
    pace: f64,
    words: &Words,
) -> Result<SamplePage, TyingError> {
    let sample = added.sample;
    let change = |text: String, worded: &dyn Fn(&Hand) -> String| HandChange {
        text,
        before: worded(before),
        after: worded(after),
    };
    let tied = |hand: &Hand| hand.tie(&sample.cord, &sample.knot, &sample.setting(sample.cord.stated_give()));
    let (was, is) = (tied(before)?, tied(after)?);
    let row = |text: String, before: String, after: String| HandChange { text, before, after };
    let length = |length: Length, doubt: Length| length_words(length, doubt, words);
    let title = sample.knot.title.as_str();
    let mut changes = vec![
        change(say!(words, "sample-give", cord = sample.cord.name.as_str()), &|hand| {
            either(hand.give_of(&sample.cord), 3, words)
        }),
        change(say!(words, "sample-take-up", knot = title), &|hand| factor(factors(hand, sample).0, words)),
        change(say!(words, "sample-rise", knot = title), &|hand| factor(factors(hand, sample).1, words)),
        row(
            say!(words, "sample-one-takes"),
            length(was.taken.working, was.doubt.working),
            length(is.taken.working, is.doubt.working),
        ),
        row(
            say!(words, "sample-one-rises"),
            length(was.taken.rise, was.doubt.rise),
            length(is.taken.rise, is.doubt.rise),
        ),
        row(say!(words, "sample-source"), take_up_source(was.source, words), take_up_source(is.source, words)),
    ];
    if sample.time.is_some() {
        changes
            .push(change(say!(words, "sample-time", knot = title), &|hand| factor(hand.time_of(&sample.knot), words)));
        changes.push(change(say!(words, "sample-pace"), &|hand| either(paces(hand, pace).0, 2, words)));
        changes.push(change(say!(words, "sample-pull"), &|hand| either(paces(hand, pace).1, 2, words)));
    }
    let heading = if added.is_written {
        say!(words, "sample-added", file = added.file)
    } else {
        say!(words, "sample-shown", file = added.file)
    };
    Ok(SamplePage { heading, lines: added.lines.to_owned(), changes })
}

fn take_up_source(source: TakeUpSource, words: &Words) -> String {
    match source {
        TakeUpSource::Catalogue(source) => source_words(source, words),
        TakeUpSource::YourSample => say!(words, "source-your-sample"),
        TakeUpSource::YourHand => say!(words, "sample-your-hand"),
    }
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
fn either(figure: Estimate, decimals: u32, words: &Words) -> String {
    format!("{} ± {}", words.decimal(figure.mean, decimals), words.decimal(figure.sd, decimals))
}

/// A factor from its logarithm.
fn factor(logarithm: Estimate, words: &Words) -> String {
    either(times(logarithm), 3, words)
}

fn times(logarithm: Estimate) -> Estimate {
    let mean = libm::exp(logarithm.mean);
    Estimate { mean, sd: mean * logarithm.sd }
}

fn length_words(length: Length, sd: Length, words: &Words) -> String {
    if sd <= Length::ZERO {
        return words.millimetres(length, 1);
    }
    let (mean, sd) = (words.decimal(length.as_mm(), 1), words.decimal(sd.as_mm(), 1));
    say!(words, "millimetres", figure = format!("{mean} ± {sd}"))
}

/// What a shop's samples say, for other programs.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
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
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
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
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
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
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
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
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
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
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
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
