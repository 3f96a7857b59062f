//! How far a figure of a knot is to be trusted, by the sort of source that its file states.
//!
//! The spreads are judgement, not measurement; each has its reason beside it.

use reeve_catalogue::{Knot, Source};

use super::group::Trust;
use super::{FACTOR_SD, PACE_SD, PULL_SD, TIMING_SD};

/// What a knot's own factor may come to before any sample: standard deviations of its logarithm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FactorSpread {
    /// On take-up and rise.
    pub length: f64,
    /// On time.
    pub time: f64,
    /// Whether the figure is a guess: then samples against it say next to nothing of what knots share.
    pub guess: bool,
}

/// The spread of a figure by its source.
#[expect(clippy::match_same_arms, reason = "each source has a reason of its own")]
pub const fn spread(source: Source) -> FactorSpread {
    match source {
        // Closed forms and tightened paths come within some 5 % of knots that were measured. No time follows from
        // geometry alone; one that claims to is trusted as a published one.
        Source::Geometry => FactorSpread { length: FACTOR_SD, time: TIMING_SD, guess: false },
        // Somebody measured it and put a name to it, on other cord and by another hand.
        Source::Published => FactorSpread { length: FACTOR_SD, time: TIMING_SD, guess: false },
        // Rules of thumb are rounded to be safe: "four times the length" stands for anything from three and a half to
        // four and a half. Times that makers tell each other differ more.
        Source::CommonPractice => FactorSpread { length: 0.12, time: 0.3, guess: false },
        // A length from memory is off by half as easily as not, and few know their time of one knot within a half.
        Source::FromMemory => FactorSpread { length: 0.4, time: 0.5, guess: true },
        // Measured by the maker before it went into the knot's file: as good as one piece of hers agrees with the next.
        Source::YourSample => FactorSpread { length: FACTOR_SD, time: TIMING_SD, guess: false },
    }
}

/// However far off it is, and however often it was sampled, one knot with a guessed time moves pace and pull by no more
/// than this, as a logarithm.
pub const GUESS_MOVES: f64 = 0.015;

/// What is to be trusted of a knot's take-up and of its rise.
pub(super) fn of_lengths(knot: &Knot) -> [Trust; 2] {
    let rise = knot.rise.as_ref().map_or(&knot.working.note, |rise| &rise.note);
    [knot.working.note.source, rise.source].map(|source| {
        let FactorSpread { length, guess, .. } = spread(source);
        // A give reaches so little way that a tenth of a guess never moves it by more than a thousandth.
        if guess { Trust::Guess { sd: length, most: [f64::INFINITY; 2] } } else { Trust::Firm(length) }
    })
}

/// What is to be trusted of a knot's time.
pub(super) fn of_time(knot: &Knot) -> Trust {
    let FactorSpread { time, guess, .. } = spread(knot.time.note.source);
    if guess { Trust::Guess { sd: time, most: MOST } } else { Trust::Firm(time) }
}

/// Pulls at pace and pull that move neither by more than [`GUESS_MOVES`], whatever else holds them.
const MOST: [f64; 2] = [GUESS_MOVES / (PACE_SD * PACE_SD), GUESS_MOVES / (PULL_SD * PULL_SD)];
