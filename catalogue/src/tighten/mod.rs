//! Tightening: what a knot takes, computed from its centrelines.
//!
//! Cords are tubes one diameter thick. The working legs are under unit tension, so their length is their energy; where
//! two tubes are closer than touching, a contact energy pushes them apart ([`contact`]). A repeating knot has a free
//! rise (and, if it twists, a free twist), held open by a pull along the core ([`crate::shape::PULL`]). The least energy
//! is found by L-BFGS from a loose start, with a contact that is made stiffer step by step: a soft cord first, the hard
//! limit last.
//!
//! The hard limit is the ideal knot, whose length is published for closed knots; a softer cord is a lower ratio of
//! contact stiffness to tension, named by one number, its give.

mod cells;
pub mod contact;
mod energy;
mod measured;
mod memory;
mod pairs;
mod relax;
#[cfg(test)]
#[allow(clippy::disallowed_methods, reason = "a test reckons and writes by the standard library")]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
#[allow(clippy::cast_precision_loss, reason = "counts of a few hundred")]
mod tests;
mod tubes;
mod turns;
mod whole;

use std::fmt;

pub use measured::Measured;
pub use relax::Budget;
pub use whole::{Case, cases, drawn, drawn_case, row};

use reeve_measure::Remedied;

use crate::shape::{Shape, Start};
use relax::relax;
use tubes::Tubes;

/// The gives at which a knot is tightened, from hard to soft. Zero is the hard limit, drawn out from the next two.
pub const GIVES: [f64; 7] = [0.0, 0.01, 0.02, 0.05, 0.1, 0.15, 0.2];

/// What a tight knot takes at each of [`GIVES`].
pub type Tight = [Measured; GIVES.len()];

/// Why a path can't be tightened.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TightenError {
    /// A leg ends up straight: as drawn, nothing holds it.
    ComesUndone,
    /// Its legs are too long to be one knot.
    TooLong,
    /// The search broke down: a start with cords that run through one another, or a number that is none.
    Lost,
}

impl fmt::Display for TightenError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::ComesUndone => "it comes undone when it is pulled tight: nothing holds it",
            Self::TooLong => "its legs are more than 600 cords long, as drawn: that is not one knot",
            Self::Lost => "it can't be pulled tight from where it starts: cords run through one another",
        })
    }
}

impl std::error::Error for TightenError {}

impl Remedied for TightenError {
    fn remedy(&self) -> String {
        "look at the points of its path: `reeve knots show` draws it once it holds".to_owned()
    }
}

/// Tightens a shape over all of [`GIVES`].
///
/// # Errors
/// A [`TightenError`] when the path is not a knot, or starts with cords inside one another.
pub fn tighten(start: &Start, effort: &Budget) -> Result<Tight, TightenError> {
    let soft_first = GIVES.iter().skip(1).rev();
    let mut tubes = settle(start, effort)?;
    let mut at = Vec::with_capacity(GIVES.len());
    for give in soft_first {
        tubes = relax(tubes, *give, effort)?;
        at.push(tubes.measured()?);
    }
    at.push(hard_limit(&at));
    at.reverse();
    at.try_into().map_err(|_| TightenError::Lost)
}

/// Tightens a shape at one give alone.
///
/// # Errors
/// As [`tighten`].
pub fn tighten_at(start: &Start, give: f64, effort: &Budget) -> Result<(Measured, Shape), TightenError> {
    let tubes = relax(settle(start, effort)?, give, effort)?;
    Ok((tubes.measured()?, tubes.shape()))
}

/// From the loose start to a snug knot, in coarse pieces first.
fn settle(start: &Start, effort: &Budget) -> Result<Tubes, TightenError> {
    // Hard enough that no loop pulls through, soft enough to come in quickly.
    const SNUG: f64 = 0.04;
    // The work grows with the square of the length.
    const LONGEST: f64 = 600.0;
    let loose = Tubes::new(start);
    if loose.length() > LONGEST {
        return Err(TightenError::TooLong);
    }
    Ok(relax(loose, SNUG, &Budget { spacing: effort.spacing * 2.0, ..*effort })?.nudged())
}

/// The line through the two stiffest, drawn out to a cord that does not give at all.
fn hard_limit(softer: &[Measured]) -> Measured {
    let [.., second, first] = softer else { return Measured::default() };
    first.drawn_out_from(second, GIVES[1], GIVES[2])
}
