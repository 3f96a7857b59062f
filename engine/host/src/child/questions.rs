//! One question, asked twice.

use std::time::Instant;

use reeve_kit::abi;

use super::load::Loaded;
use crate::wire::{TakenFigures, Told, WireQuestion};

/// The answer, and how long the faster of two took, in nanoseconds.
pub(super) fn answer(loaded: &Loaded, asked: &WireQuestion) -> (Told, u64) {
    let (first, first_ns) = timed(loaded, asked);
    let (second, second_ns) = timed(loaded, asked);
    let told = if first.same_as(&second) {
        Told::Same {
            status: first.status,
            parameter: first.taken.parameter,
            figures: first.figures(),
            words: String::from_utf8_lossy(first.taken.said()).into_owned(),
        }
    } else {
        Told::Differing(first.beside(&second))
    };
    (told, first_ns.min(second_ns))
}

fn timed(loaded: &Loaded, asked: &WireQuestion) -> (Raw, u64) {
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
    fn figures(&self) -> TakenFigures {
        let taken = &self.taken;
        TakenFigures {
            working_mm: taken.working_mm,
            core_mm: taken.core_mm,
            rise_mm: taken.rise_mm,
            base_s: taken.base_s,
            draws: taken.draws,
        }
    }

    fn same_as(&self, other: &Self) -> bool {
        let bits = |raw: &Self| raw.figures().named().map(|(_, value)| value.to_bits());
        self.status == other.status
            && self.taken.parameter == other.taken.parameter
            && self.taken.said() == other.taken.said()
            && bits(self) == bits(other)
    }

    /// The first figure in which two answers differ.
    fn beside(&self, other: &Self) -> String {
        let pairs = self.figures().named().into_iter().zip(other.figures().named());
        let differing = pairs.into_iter().find(|((_, one), (_, two))| one.to_bits() != two.to_bits());
        differing.map_or_else(
            || format!("the status {} and the status {}", self.status, other.status),
            |((what, one), (_, two))| format!("{what} of {one:?} and of {two:?}"),
        )
    }
}
