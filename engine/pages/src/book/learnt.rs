//! What finished work teaches, in words for the terminal.

use reeve_costing::basis::Basis;
use reeve_costing::hand::{Hand, TimedWork};
use reeve_measure::Time;
use reeve_office::{LeftOut, Lesson};

use crate::phrases::say;
use crate::words::Words;

/// Why a work is not counted.
pub fn left_out_words(why: &LeftOut, words: &Words) -> String {
    let minutes = |minutes: &f64| words.decimal(*minutes, 0);
    match why {
        LeftOut::Slip { of, times } => {
            say!(words, "learnt-slip", work = of.as_str(), times = words.decimal(*times, 2))
        }
        LeftOut::Stated { number, took, stated } => {
            let (took, stated) = (minutes(took), minutes(stated));
            say!(words, "learnt-stated", work = number.as_str(), minutes = took, stated = stated)
        }
    }
}

/// What every work says, and what it makes of the hand, line by line.
pub fn lesson_words(lesson: &Lesson, basis: &Basis, words: &Words) -> String {
    let told = lesson.told.iter().map(|one| told_words(&one.work, one.was, words));
    let gone = lesson.gone.iter().map(|work| say!(words, "learnt-gone", work = work.of()));
    let hand = hand_lines(&lesson.after.hand, basis, words);
    told.chain(gone).chain(hand).map(|line| line + "\n").collect()
}

fn told_words(work: &TimedWork, was: Option<Time>, words: &Words) -> String {
    let minutes = |time: Time| words.decimal(time.as_minutes(), 0);
    let (of, now, was) = (work.of(), minutes(work.took), was.map(minutes));
    match (&work.step, was) {
        (Some(_), None) => say!(words, "learnt-step", work = of, minutes = now),
        (Some(_), Some(was)) => say!(words, "learnt-step-anew", work = of, minutes = now, was = was),
        (None, None) => say!(words, "learnt-work", work = of, minutes = now),
        (None, Some(was)) => say!(words, "learnt-work-anew", work = of, minutes = now, was = was),
    }
}

/// Works that are kept and not counted.
pub fn odd_work_words(lesson: &Lesson, words: &Words) -> Vec<String> {
    let odd = lesson.after.hand.odd_works.iter().map(|at| &lesson.after.works[*at]);
    odd.map(|work: &TimedWork| say!(words, "learnt-odd", work = work.of())).collect()
}

fn hand_lines(after: &Hand, basis: &Basis, words: &Words) -> Vec<String> {
    let figure = |figure: f64| words.decimal(figure, 2);
    let paces = |hand: &Hand| match hand.pace {
        None => figure(basis.rates.bench.pace),
        Some(known) => {
            say!(words, "learnt-pace-and-pull", pace = figure(known.pace.mean), pull = figure(known.pull.mean))
        }
    };
    let (now, was) = (paces(after), paces(&basis.hand));
    let mut lines = vec![if now == was {
        say!(words, "learnt-pace", pace = now)
    } else {
        say!(words, "learnt-pace-anew", pace = now, was = was)
    }];
    for known in &after.times {
        let times = |hand: &Hand| figure(libm::exp(hand.time_of(&known.knot).mean));
        let (now, was) = (times(after), times(&basis.hand));
        if now != was {
            lines.push(say!(words, "learnt-knot", knot = known.knot.title.as_str(), times = now, was = was));
        }
    }
    lines
}
