//! `reeve book learn`: pace and hand from what finished work really took, on the maker's word alone.
//!
//! Minutes at a step whose knots the quote knows are evidence for pace and pull of knots, as those of a timed sample are.
//! Minutes without a step are of the whole, and evidence for the shop's pace. Each is trusted as a sample is.

use std::fmt::Write;
use std::path::PathBuf;

use reeve_book::{Course, Figures};
use reeve_costing::hand::{Hand, TimedWork, pace_learnt};
use reeve_costing::takeoff::plural;
use reeve_measure::Time;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use crate::book::Place;
use crate::failure::{Failure, say};
use crate::output::{print, rewrite};

/// Beyond so many times what was expected, or below that part of it, minutes are a slip.
const SLIP: f64 = 3.0;

/// What finished work says.
#[derive(Default)]
struct Learnt {
    /// Paces, each of a whole work.
    paces: Vec<f64>,
    /// Steps that were not learnt from before.
    works: Vec<TimedWork>,
}

pub(crate) fn learn(yes: bool, place: &Place) -> Result<(), Failure> {
    let mut learnt = Learnt::default();
    for course in place.book()?.courses(place.day)? {
        let made = course.commission.state.is_made();
        if let Some((_, figures)) = course.commission.quoted.as_ref().filter(|_| made) {
            learnt.add(&course, figures, place.shop.works());
        }
    }
    if learnt.paces.is_empty() && learnt.works.is_empty() {
        return Err(Failure::input(
            "no finished work has minutes that could be learnt from, and were not yet",
            "log them with `reeve book log`, and mark the work finished",
        ));
    }
    // Both files or neither.
    let mut files = Vec::new();
    let mut told = learnt.tell_pace(place, yes, &mut files)?;
    told.push_str(&learnt.tell_hand(place, yes, &mut files)?);
    rewrite(&files)?;
    told.push_str(if yes { "" } else { "Nothing was written. With --yes it is.\n" });
    print(&told)
}

impl Learnt {
    fn add(&mut self, course: &Course, figures: &Figures, known: &[TimedWork]) {
        let name = course.commission.name();
        let at = |step: &str| -> f64 {
            let lines = course.took.work.iter().filter(|line| line.step.as_deref() == Some(step));
            lines.map(|line| line.minutes).sum()
        };
        let mut by_step = false;
        for step in &figures.steps {
            let minutes = at(&step.step);
            let (base, pull) = (time(step.base), time(step.pull));
            if minutes <= 0.0 {
                continue;
            }
            by_step = true;
            let of = format!("{name}, {}", step.step);
            let work = TimedWork { of, base, pull, took: Time::minutes(minutes) };
            // At the pace of the quote.
            let expected = (base + pull) * figures.pace.to_f64().unwrap_or(1.0);
            if within(&work.of, work.took / expected) && !known.iter().any(|other| other.of == work.of) {
                self.works.push(work);
            }
        }
        let expected = figures.hours.to_f64().filter(|hours| *hours > 0.0 && !by_step && course.took.minutes() > 0.0);
        if let (Some(expected), Some(pace)) = (expected, figures.pace.to_f64()) {
            let times = course.took.minutes() / 60.0 / expected;
            if within(name, times) {
                self.paces.push(pace * times);
            }
        }
    }

    /// The shop's pace, from works as a whole.
    fn tell_pace(&self, place: &Place, yes: bool, files: &mut Vec<(PathBuf, String)>) -> Result<String, Failure> {
        if self.paces.is_empty() {
            return Ok(String::new());
        }
        let before = place.desk.rates().bench.pace;
        let pace = (pace_learnt(before, &self.paces).mean * 100.0).round() / 100.0;
        let works = plural("finished work", self.paces.len() as u64);
        if yes {
            let text = place.shop.with_pace(pace).map_err(Failure::Input)?;
            files.push((place.folder.join("shop.toml"), text));
        }
        let stands = if yes { "It stands in shop.toml now.\n" } else { "" };
        Ok(format!("{works} as a whole: your pace is {pace} in place of {before}.\n{stands}"))
    }

    /// Pace and pull of knots, from steps.
    fn tell_hand(&self, place: &Place, yes: bool, files: &mut Vec<(PathBuf, String)>) -> Result<String, Failure> {
        if self.works.is_empty() {
            return Ok(String::new());
        }
        let words = |hand: Option<&Hand>| {
            let pace = hand.and_then(|hand| hand.pace);
            let shop = place.desk.rates().bench.pace;
            pace.map_or(format!("{shop:.2}"), |pace| {
                format!("{:.2}, and {:.2} for pulling what hangs", pace.pace.mean, pace.pull.mean)
            })
        };
        let after = place.shop.hand_with(&self.works);
        let known = place.shop.works().len();
        for odd in after.iter().flat_map(|hand| &hand.odd_works).filter_map(|at| at.checked_sub(known)) {
            say(&format!("look: {} is kept, but not counted until others bear it out", self.works[odd].of));
        }
        let mut told = String::new();
        for work in &self.works {
            let _ = writeln!(told, "{}: {:.0} minutes.", work.of, work.took.as_s() / 60.0);
        }
        let now = words(Some(&place.desk.rates().bench.hand));
        let _ = writeln!(told, "Your pace of knots is {} in place of {now}.", words(after.as_ref()));
        if yes {
            let (folder, text) = place.shop.with_works(&self.works).map_err(Failure::Input)?;
            files.push((folder.unwrap_or_else(|| place.folder.clone()).join(reeve_shop::Added::FILE), text));
            told.push_str("It stands in knots/samples.toml now.\n");
        }
        Ok(told)
    }
}

fn time(minutes: Decimal) -> Time {
    Time::minutes(minutes.to_f64().unwrap_or_default())
}

/// Whether it took about what could be expected; what did not is told.
fn within(of: &str, times: f64) -> bool {
    let within = (1.0 / SLIP..=SLIP).contains(&times);
    if !within {
        say(&format!("look: {of} is not counted: it took {times:.2} times what was expected, which looks like a slip"));
    }
    within
}
