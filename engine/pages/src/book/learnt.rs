//! What finished work teaches, in words for the terminal.

use std::fmt::Write;

use reeve_costing::basis::Basis;
use reeve_costing::hand::{Hand, TimedWork};
use reeve_measure::Time;
use reeve_office::{LeftOut, Lesson};

/// Why a work is not counted.
pub fn left_out_words(why: &LeftOut) -> String {
    match why {
        LeftOut::Slip { of, times } => {
            format!("{of} is not counted: it took {times:.2} times what was expected, which looks like a slip")
        }
        LeftOut::Stated { number, took, stated } => format!(
            "{number} is not counted: it took {took:.0} minutes, and {stated:.0} of them you had stated yourself, which leaves \
             none for knots and handling"
        ),
    }
}

/// What every work says, and what it makes of the hand at a bench, line by line.
pub fn lesson_words(lesson: &Lesson, basis: &Basis) -> String {
    let mut told = String::new();
    for one in &lesson.told {
        let (work, now) = (&one.work, in_minutes(one.work.took));
        let in_place = one.was.map_or_else(String::new, |was| format!(" in place of {}", in_minutes(was)));
        let what = if work.step.is_none() { " for knots and handling" } else { "" };
        let _ = writeln!(told, "{}: {now} minutes{what}{in_place}.", work.of());
    }
    for work in &lesson.gone {
        let _ = writeln!(told, "{}: no longer learnt from: the book does not bear it out.", work.of());
    }
    tell_hand(&mut told, &lesson.after.hand, basis);
    told
}

/// Works that are kept and not counted.
pub fn odd_work_words(lesson: &Lesson) -> Vec<String> {
    let odd = lesson.after.hand.odd_works.iter().map(|at| &lesson.after.works[*at]);
    odd.map(|work: &TimedWork| format!("{} is kept, but not counted until others bear it out", work.of())).collect()
}

fn tell_hand(told: &mut String, after: &Hand, basis: &Basis) {
    let paces = |hand: &Hand| {
        let stated = || format!("{:.2}", basis.rates.bench.pace);
        hand.pace.map_or_else(stated, |pace| {
            format!("{:.2}, and {:.2} for pulling what hangs", pace.pace.mean, pace.pull.mean)
        })
    };
    let (now, was) = (paces(after), paces(&basis.hand));
    let in_place = if now == was { String::new() } else { format!(", in place of {was}") };
    let _ = writeln!(told, "Your pace is {now}{in_place}.");
    for known in &after.times {
        let times = |hand: &Hand| format!("{:.2}", libm::exp(hand.time_of(&known.knot).mean));
        let (now, was) = (times(after), times(&basis.hand));
        if now != was {
            let title = &known.knot.title;
            let _ =
                writeln!(told, "Of each {title}, {now} times the catalogue's time at that pace, in place of {was}.");
        }
    }
}

fn in_minutes(time: Time) -> String {
    format!("{:.0}", time.as_minutes())
}
