//! An answer, held to the contract.

use reeve_kit::abi;

use crate::error::LibraryError;
use crate::wire::{TakenFigures, Told};

/// One answer.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum JudgedAnswer {
    /// Figures, within what the contract allows.
    Done(TakenFigures),
    /// The knot can't be tied so.
    Refused(Option<u32>, String),
    /// The library is at fault.
    Error(LibraryError),
}

/// The highest length and time, and the most draws, that the contract allows.
const MOST: f64 = 1e7;
const MOST_DRAWS: f64 = 1e5;

/// What an answer comes to. A library may have written anything into the pipe.
pub(crate) fn judged(told: Told) -> JudgedAnswer {
    let (status, parameter, figures, words) = match told {
        Told::Same { status, parameter, figures, words } => (status, parameter, figures, words),
        Told::Differing(how) => return JudgedAnswer::Error(LibraryError::TwoAnswers(how)),
    };
    let said: String = words.chars().filter(|c| !c.is_control()).take(abi::WORDS).collect();
    match status {
        abi::DONE => within(figures),
        abi::REFUSED => {
            let parameter = Some(parameter).filter(|at| *at != abi::NO_PARAMETER);
            JudgedAnswer::Refused(parameter, if said.is_empty() { "its library says no more".to_owned() } else { said })
        }
        abi::FAILED => JudgedAnswer::Error(LibraryError::Failed(said)),
        other => JudgedAnswer::Error(LibraryError::Status(other)),
    }
}

fn within(figures: TakenFigures) -> JudgedAnswer {
    let most = [MOST, MOST, MOST, MOST, MOST_DRAWS];
    for ((what, value), most) in figures.named().into_iter().zip(most) {
        if !(0.0..=most).contains(&value) {
            return JudgedAnswer::Error(LibraryError::Nonsense {
                what: what.to_owned(),
                value: format!("{value:?}"),
                range: format!("from 0 to {most}"),
            });
        }
    }
    JudgedAnswer::Done(figures)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(status: u32, working_mm: f64, words: &str) -> Told {
        let figures = TakenFigures { working_mm, core_mm: 0.0, rise_mm: 0.0, base_s: 0.0, draws: 0.0 };
        Told::Same { status, parameter: abi::NO_PARAMETER, figures, words: words.to_owned() }
    }

    /// Whatever a library writes into the pipe itself.
    #[test]
    fn forged_answers_are_held_to_the_contract() {
        for value in [f64::NAN, f64::INFINITY, -1.0, 1e300] {
            assert!(
                matches!(judged(told(abi::DONE, value, "")), JudgedAnswer::Error(LibraryError::Nonsense { .. })),
                "{value}"
            );
        }
        let refused = judged(told(abi::REFUSED, 0.0, &"\u{1b}[2J".repeat(1000)));
        assert!(
            matches!(&refused, JudgedAnswer::Refused(None, words) if words.len() == 256 && !words.contains('\u{1b}'))
        );
        let trouble = LibraryError::TwoAnswers("\u{1b}]0;owned\u{7}".repeat(1000)).to_string();
        assert!(!trouble.chars().any(char::is_control) && trouble.len() < 3000, "{trouble}");
    }
}
