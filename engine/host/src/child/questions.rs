//! One question, asked twice, and its answer held to the contract.

use std::time::Instant;

use reeve_kit::abi;

use super::load::Loaded;
use crate::trouble::Trouble;
use crate::wire::{Answer, Asked, Figures};

/// The answer, and how long the faster of two took, in nanoseconds.
pub(super) fn answer(loaded: &Loaded, asked: &Asked) -> (Answer, u64) {
    let (first, first_ns) = timed(loaded, asked);
    let (second, second_ns) = timed(loaded, asked);
    let answer = match (first.same_as(&second), first) {
        (true, Raw { status, taken }) => judged(status, &taken),
        (false, first) => Answer::Trouble(Trouble::TwoAnswers(first.beside(&second))),
    };
    (answer, first_ns.min(second_ns))
}

fn timed(loaded: &Loaded, asked: &Asked) -> (Raw, u64) {
    let begun = Instant::now();
    let (status, taken) = loaded.take(asked);
    (Raw { status, taken }, u64::try_from(begun.elapsed().as_nanos()).unwrap_or(u64::MAX))
}

/// An answer as it came.
struct Raw {
    status: u32,
    taken: abi::Taken,
}

impl Raw {
    /// Each figure: what it is, its value, and the most that the contract allows.
    fn figures(&self) -> [(&'static str, f64, f64); 5] {
        let taken = &self.taken;
        [
            ("a length of working leg", taken.working_mm, MOST),
            ("a length of core leg", taken.core_mm, MOST),
            ("a rise", taken.rise_mm, MOST),
            ("a time", taken.base_s, MOST),
            ("a number of draws", taken.draws, MOST_DRAWS),
        ]
    }

    fn same_as(&self, other: &Self) -> bool {
        let bits = |raw: &Self| raw.figures().map(|(_, value, _)| value.to_bits());
        self.status == other.status
            && self.taken.parameter == other.taken.parameter
            && self.taken.said() == other.taken.said()
            && bits(self) == bits(other)
    }

    /// The first figure in which two answers differ.
    fn beside(&self, other: &Self) -> String {
        let pairs = self.figures().into_iter().zip(other.figures());
        let differing = pairs.into_iter().find(|((_, one, _), (_, two, _))| one.to_bits() != two.to_bits());
        differing.map_or_else(
            || format!("the status {} and the status {}", self.status, other.status),
            |((what, one, _), (_, two, _))| format!("{what} of {one:?} and of {two:?}"),
        )
    }
}

/// The highest length and time, and the most draws, that the contract allows.
const MOST: f64 = 1e7;
const MOST_DRAWS: f64 = 1e5;

fn judged(status: u32, taken: &abi::Taken) -> Answer {
    let said = String::from_utf8_lossy(taken.said()).chars().filter(|c| !c.is_control()).collect::<String>();
    match status {
        abi::DONE => figures(&Raw { status, taken: *taken }),
        abi::REFUSED => {
            let parameter = Some(taken.parameter).filter(|at| *at != abi::NO_PARAMETER);
            Answer::Refused(parameter, if said.is_empty() { "its library says no more".to_owned() } else { said })
        }
        abi::FAILED => Answer::Trouble(Trouble::Failed(said)),
        other => Answer::Trouble(Trouble::Status(other)),
    }
}

fn figures(raw: &Raw) -> Answer {
    for (what, value, most) in raw.figures() {
        if !(0.0..=most).contains(&value) {
            return Answer::Trouble(Trouble::Nonsense {
                what: what.to_owned(),
                value: format!("{value:?}"),
                range: format!("from 0 to {most}"),
            });
        }
    }
    let taken = &raw.taken;
    Answer::Done(Figures {
        working_mm: taken.working_mm,
        core_mm: taken.core_mm,
        rise_mm: taken.rise_mm,
        base_s: taken.base_s,
        draws: taken.draws,
    })
}
