//! Pace and hand from what finished work really took.
//!
//! What the book says of a commission stands in `knots/samples.toml` under the commission's number, and is brought up to
//! what the book says now: however often it is learnt from, a work counts once. Minutes at steps are evidence of those
//! steps; where any minutes are without a step, all of them are of the whole.

use chrono::NaiveDate;
use reeve_book::{Book, Course, PacedFigures, QuoteFigures, StepFigures};
use reeve_costing::hand::{TIMING_SD, TimedWork};
use reeve_measure::Time;
use reeve_shop::{Added, Learnt, Relearnt, Shop};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use crate::error::OfficeError;

/// Minutes that are more than this multiple of what was expected, or less than its inverse, are a slip.
const SLIP: f64 = 3.0;

/// What finished work teaches. Nothing is written yet.
#[derive(Debug)]
pub struct Lesson {
    /// What would stand in the shop's file, and the hand that follows from it.
    pub after: Relearnt,
    /// Works that are new, or of which something else is said than in the file.
    pub told: Vec<TaughtWork>,
    /// Works of the file that the book no longer bears out.
    pub gone: Vec<TimedWork>,
}

/// A work that is learnt from.
#[derive(Debug)]
pub struct TaughtWork {
    /// What the book says.
    pub work: TimedWork,
    /// What it took by the shop's file, where it stands there.
    pub was: Option<Time>,
}

/// Why a work is not counted.
#[derive(Debug, Clone, PartialEq)]
pub enum LeftOut {
    /// It took a multiple of what was expected that looks like a slip.
    Slip {
        /// The work, and its step if it is of one.
        of: String,
        /// The multiple.
        times: f64,
    },
    /// The maker had stated all of the time herself: that is no evidence of her pace.
    Stated {
        /// The work's number.
        number: String,
        /// Minutes that it took.
        took: f64,
        /// Minutes stated.
        stated: f64,
    },
}

impl Lesson {
    /// Writes what it teaches into the shop's file; the shop is held since before it was read.
    ///
    /// # Errors
    /// When the shop is inside the program, or the file can't be written.
    pub fn keep(&self) -> Result<(), OfficeError> {
        let title = "the starter shop is inside the program and can't be written to";
        let dir =
            self.after.dir.as_ref().ok_or_else(|| OfficeError::input(title, "start a shop with `reeve begin DIR`"))?;
        Ok(reeve_writing::rewrite(&[(dir.join(Added::FILE), self.after.text.clone())])?)
    }

    /// Reads what finished work of the book took, up to a day: what it teaches, if it teaches anything, and the works that are
    /// not counted, in the order of the book.
    ///
    /// # Errors
    /// When the book can't be read, or the shop's file can't be changed.
    pub fn of(shop: &Shop, book: &Book, day: NaiveDate) -> Result<(Option<Self>, Vec<LeftOut>), OfficeError> {
        let (mut learnt, mut left_out) = (Learnt::default(), Vec::new());
        for course in book.courses(day)? {
            let Some(number) = &course.commission.number else { continue };
            learnt.numbers.push(number.clone());
            let made = course.commission.state.is_made();
            if let Some((_, figures)) = course.commission.quoted.as_ref().filter(|_| made) {
                let finished = FinishedWork { number, course: &course, figures, shop };
                for work in finished.works() {
                    match work {
                        Ok(work) => learnt.works.push(work),
                        Err(why) => left_out.push(why),
                    }
                }
            }
        }
        if learnt.works.is_empty() && shop.works().is_empty() {
            return Ok((None, left_out));
        }
        let after = shop.with_learnt(&learnt).map_err(|faults| OfficeError::Input(faults.into()))?;
        let of_file =
            |work: &TimedWork| shop.works().iter().find(|known| known.is_of(&work.number, work.step.as_deref()));
        let taught = |work: &TimedWork| TaughtWork { work: work.clone(), was: of_file(work).map(|known| known.took) };
        let is_new = |one: &TaughtWork| one.was.is_none_or(|was| whole_minutes(was) != whole_minutes(one.work.took));
        let told = after.works.iter().map(taught).filter(is_new).collect();
        let stays = |work: &&TimedWork| after.works.iter().any(|other| other.is_of(&work.number, work.step.as_deref()));
        let gone = shop.works().iter().filter(|work| !stays(work)).cloned().collect();
        Ok((Some(Self { after, told, gone }), left_out))
    }
}

/// To the minute, as it is told.
fn whole_minutes(time: Time) -> Option<i64> {
    time.as_minutes().round_ties_even().to_i64()
}

/// A finished work.
struct FinishedWork<'a> {
    number: &'a str,
    course: &'a Course,
    figures: &'a QuoteFigures,
    shop: &'a Shop,
}

impl FinishedWork<'_> {
    fn works(&self) -> Vec<Result<TimedWork, LeftOut>> {
        let found: Vec<Option<Result<TimedWork, LeftOut>>> =
            if self.course.took.work.iter().any(|line| line.step.is_none()) {
                vec![self.figures.paced.as_ref().and_then(|paced| self.whole(paced).transpose())]
            } else {
                self.figures.steps.iter().map(|step| self.step(step).transpose()).collect()
            };
        found.into_iter().flatten().collect()
    }

    /// The whole of it, less what the maker had stated herself: that is no evidence of her pace, and strays beside it.
    fn whole(&self, paced: &PacedFigures) -> Result<Option<TimedWork>, LeftOut> {
        let stated = minutes(paced.stated);
        let took = self.course.took.minutes();
        let expected = self.at_pace(paced.base, paced.pull);
        if took <= 0.0 || expected <= 0.0 {
            return Ok(None);
        }
        within(self.number, took / (expected + stated))?;
        if took <= stated {
            return Err(LeftOut::Stated { number: self.number.to_owned(), took, stated });
        }
        let doubt = libm::hypot(minutes(paced.doubt), TIMING_SD * stated / expected);
        let work = self.work(None, (paced.base, paced.pull), took - stated);
        Ok(Some(TimedWork { doubt, ..work }))
    }

    fn step(&self, step: &StepFigures) -> Result<Option<TimedWork>, LeftOut> {
        let lines = self.course.took.work.iter().filter(|line| line.step.as_ref() == Some(&step.step));
        let took: f64 = lines.map(|line| line.minutes).sum();
        let expected = self.at_pace(step.base, step.pull);
        if took <= 0.0 || expected <= 0.0 {
            return Ok(None);
        }
        let work = self.work(Some(&step.step), (step.base, step.pull), took);
        within(&work.of(), took / expected)?;
        let knot = step.knot.as_ref().and_then(|knot| self.shop.catalogue().find(knot)).cloned();
        Ok(Some(TimedWork { doubt: minutes(step.doubt), knot, ..work }))
    }

    fn work(&self, step: Option<&String>, (base, pull): (Decimal, Decimal), took: f64) -> TimedWork {
        TimedWork {
            number: self.number.to_owned(),
            step: step.cloned(),
            on: self.course.took.work.iter().map(|line| line.day).max(),
            knot: None,
            base: Time::minutes(minutes(base)),
            pull: Time::minutes(minutes(pull)),
            doubt: 0.0,
            took: Time::minutes(took),
        }
    }

    /// What the quote expected of this.
    fn at_pace(&self, base: Decimal, pull: Decimal) -> f64 {
        minutes(base + pull) * self.figures.pace.to_f64().unwrap_or(1.0)
    }
}

fn minutes(minutes: Decimal) -> f64 {
    minutes.to_f64().unwrap_or_default()
}

/// Whether it took about what could be expected.
fn within(of: &str, times: f64) -> Result<(), LeftOut> {
    if (1.0 / SLIP..=SLIP).contains(&times) { Ok(()) } else { Err(LeftOut::Slip { of: of.to_owned(), times }) }
}
