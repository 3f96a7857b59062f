//! `reeve book learn`: pace and hand from what finished work really took, on the maker's word alone.
//!
//! What the book says of a commission stands in `knots/samples.toml` under the commission's number, and is brought up to
//! what the book says now: however often it is learnt from, a work counts once. Minutes at steps are evidence of those
//! steps; where any minutes are without a step, all of them are of the whole.

use std::fmt::Write;

use reeve_book::{Course, PacedFigures, QuoteFigures, StepFigures};
use reeve_costing::hand::{Hand, TIMING_SD, TimedWork};
use reeve_measure::Time;
use reeve_shop::{Added, Learnt, Relearnt};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use crate::book::Place;
use crate::failure::{Failure, say};
use crate::output::{print, print_done, rewrite};

/// Beyond so many times what was expected, or below that part of it, minutes are a slip.
const SLIP: f64 = 3.0;

pub(crate) fn learn(yes: bool, place: &Place) -> Result<(), Failure> {
    let mut learnt = Learnt::default();
    for course in place.book()?.courses(place.day)? {
        let Some(number) = &course.commission.number else { continue };
        learnt.numbers.push(number.clone());
        let made = course.commission.state.is_made();
        if let Some((_, figures)) = course.commission.quoted.as_ref().filter(|_| made) {
            Work { number, course: &course, figures, place }.learn(&mut learnt.works);
        }
    }
    if learnt.works.is_empty() && place.shop.works().is_empty() {
        return Err(Failure::input(
            "no finished work has minutes that could be learnt from",
            "log them with `reeve book log`, and mark the work finished",
        ));
    }
    let after = place.shop.with_learnt(&learnt).map_err(Failure::Input)?;
    name_odd(&after);
    let mut told = tell(&after, place);
    if !after.changes {
        told.push_str("Nothing new: it stands in knots/samples.toml already.\n");
    } else if yes {
        let dir = after.dir.as_deref().unwrap_or(&place.folder);
        rewrite(&[(dir.join(Added::FILE), after.text.clone())])?;
        told.push_str("It stands in knots/samples.toml now.\n");
        print_done(&told);
        return Ok(());
    } else {
        told.push_str("Nothing was written. With --yes it is.\n");
    }
    print(&told)
}

/// A finished work.
struct Work<'a> {
    number: &'a str,
    course: &'a Course,
    figures: &'a QuoteFigures,
    place: &'a Place,
}

impl Work<'_> {
    fn learn(&self, works: &mut Vec<TimedWork>) {
        let lines = &self.course.took.work;
        if lines.iter().any(|line| line.step.is_none()) {
            works.extend(self.figures.paced.as_ref().and_then(|paced| self.whole(paced)));
        } else {
            works.extend(self.figures.steps.iter().filter_map(|step| self.step(step)));
        }
    }

    /// The whole of it, less what the maker had stated herself: that is no evidence of her pace, and strays beside it.
    fn whole(&self, paced: &PacedFigures) -> Option<TimedWork> {
        let stated = minutes(paced.stated);
        let in_all = self.course.took.minutes();
        let expected = self.at_pace(paced.base, paced.pull);
        if in_all <= 0.0 || expected <= 0.0 || !within(self.number, in_all / (expected + stated)) {
            return None;
        }
        if in_all <= stated {
            say(&format!(
                "look: {} is not counted: it took {in_all:.0} minutes, and {stated:.0} of them you had stated yourself, which leaves \
                 none for knots and handling",
                self.number
            ));
            return None;
        }
        let doubt = minutes(paced.doubt).hypot(TIMING_SD * stated / expected);
        let work = self.work(None, (paced.base, paced.pull), in_all - stated);
        Some(TimedWork { doubt, ..work })
    }

    fn step(&self, step: &StepFigures) -> Option<TimedWork> {
        let lines = self.course.took.work.iter().filter(|line| line.step.as_ref() == Some(&step.step));
        let took: f64 = lines.map(|line| line.minutes).sum();
        let expected = self.at_pace(step.base, step.pull);
        let work = self.work(Some(&step.step), (step.base, step.pull), took);
        if took <= 0.0 || expected <= 0.0 || !within(&work.of(), took / expected) {
            return None;
        }
        let knot = step.knot.as_ref().and_then(|knot| self.place.shop.catalogue().find(knot)).cloned();
        Some(TimedWork { doubt: minutes(step.doubt), knot, ..work })
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

/// What every work says, and what it makes of the hand.
fn tell(after: &Relearnt, place: &Place) -> String {
    let mut told = String::new();
    for work in &after.works {
        let known = place.shop.works().iter().find(|known| known.is_of(&work.number, work.step.as_deref()));
        let now = in_minutes(work);
        let was = known.map(in_minutes).filter(|was| *was != now);
        let in_place = was.map_or_else(String::new, |was| format!(" in place of {was}"));
        if known.is_none() || !in_place.is_empty() {
            let what = if work.step.is_none() { " for knots and handling" } else { "" };
            let _ = writeln!(told, "{}: {now} minutes{what}{in_place}.", work.of());
        }
    }
    let gone = |work: &&TimedWork| !after.works.iter().any(|other| other.is_of(&work.number, work.step.as_deref()));
    for work in place.shop.works().iter().filter(gone) {
        let _ = writeln!(told, "{}: no longer learnt from: the book does not bear it out.", work.of());
    }
    let rates = place.desk.rates();
    let paces = |hand: &Hand| {
        let stated = || format!("{:.2}", rates.bench.pace);
        hand.pace.map_or_else(stated, |pace| {
            format!("{:.2}, and {:.2} for pulling what hangs", pace.pace.mean, pace.pull.mean)
        })
    };
    let before = &rates.bench.hand;
    let (now, was) = (paces(&after.hand), paces(before));
    let _ = if now == was {
        writeln!(told, "Your pace is {now}.")
    } else {
        writeln!(told, "Your pace is {now}, in place of {was}.")
    };
    for known in &after.hand.times {
        let times = |hand: &Hand| format!("{:.2}", hand.time_of(&known.knot).mean.exp());
        let (now, was) = (times(&after.hand), times(before));
        if now != was {
            let title = &known.knot.title;
            let _ =
                writeln!(told, "Of each {title}, {now} times the catalogue's time at that pace, in place of {was}.");
        }
    }
    told
}

fn in_minutes(work: &TimedWork) -> String {
    format!("{:.0}", work.took.as_s() / 60.0)
}

fn name_odd(after: &Relearnt) {
    for at in &after.hand.odd_works {
        say(&format!("look: {} is kept, but not counted until others bear it out", after.works[*at].of()));
    }
}

fn minutes(minutes: Decimal) -> f64 {
    minutes.to_f64().unwrap_or_default()
}

/// Whether it took about what could be expected; what did not is told.
fn within(of: &str, times: f64) -> bool {
    let within = (1.0 / SLIP..=SLIP).contains(&times);
    if !within {
        say(&format!("look: {of} is not counted: it took {times:.2} times what was expected, which looks like a slip"));
    }
    within
}
