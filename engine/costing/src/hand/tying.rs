//! What one knot takes in a maker's hand.

use reeve_catalogue::{GIVE_RANGE, Knot, Setting, Source, Taken, TyingError};
use reeve_measure::{Length, Time};

use super::{Estimate, FACTOR_SD, Hand};
use crate::store::Cord;

/// What one knot takes in this hand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tied {
    /// What it takes.
    pub taken: Taken,
    /// How uncertain the same lengths are: their standard deviations. Nothing where the figure is the catalogue's own:
    /// for that the shop's cutting allowance stands.
    pub doubt: Taken,
    /// Where the take-up comes from.
    pub source: TakeUpSource,
}

/// Where a take-up comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TakeUpSource {
    /// The catalogue, with its own source.
    Catalogue(Source),
    /// A sample of this knot in this cord measured it.
    YourSample,
    /// Samples of other knots in this cord changed the catalogue's figure.
    YourHand,
}

impl TakeUpSource {
    /// The word that documents for other programs have for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Catalogue(source) => source.word(),
            Self::YourSample => "your sample",
            Self::YourHand => "your hand",
        }
    }
}

impl Hand {
    /// What one knot takes in a cord of the store, in this hand. The give of the setting is the cord's.
    ///
    /// # Errors
    /// A [`TyingError`] when the knot can't be tied so.
    pub fn tie(&self, cord: &Cord, knot: &Knot, setting: &Setting<'_>) -> Result<Tied, TyingError> {
        let at = |give: f64| knot.taken(&Setting { give, ..setting.clone() });
        self.tie_by(cord, &knot.name, knot.working.note.source, at)
    }

    /// The same from what the catalogue says at a give.
    pub(super) fn tie_by(
        &self,
        cord: &Cord,
        knot: &str,
        source: Source,
        at: impl Fn(f64) -> Result<Taken, TyingError>,
    ) -> Result<Tied, TyingError> {
        let give = self.give_of(cord);
        let plain = at(give.mean)?;
        let own = self.knots.iter().find(|known| known.cord.name == cord.name && known.knot.name == knot);
        // Samples against a guess say of their own knot alone.
        let says = self.cords.iter().any(|known| known.cord.name == cord.name && known.firm > 0);
        if own.is_none() && !says {
            return Ok(Tied { taken: plain, doubt: NOTHING, source: TakeUpSource::Catalogue(source) });
        }
        let slopes = slopes_at(give.mean, at)?;
        let (source, factors) = match own {
            Some(own) => (TakeUpSource::YourSample, [own.take_up, own.rise]),
            None if slopes.iter().any(|slope| slope.abs() > 1e-9) => (TakeUpSource::YourHand, [UNMEASURED; 2]),
            None => return Ok(Tied { taken: plain, doubt: NOTHING, source: TakeUpSource::Catalogue(source) }),
        };
        let taken = scaled(&plain, factors.map(|factor| libm::exp(factor.mean)));
        // Give and factor share their samples, so that one errs low where the other errs high: adding them as if they
        // were independent errs on the safe side.
        let spread = |at: usize| libm::hypot(factors[at].sd, slopes[at] * give.sd);
        let doubt = Taken { base: Time::ZERO, ..scaled(&taken, [spread(0), spread(1)]) };
        Ok(Tied { taken, doubt, source })
    }
}

const NOTHING: Taken =
    Taken { working: Length::ZERO, core: Length::ZERO, rise: Length::ZERO, base: Time::ZERO, draws: 0.0 };

/// The logarithm of the factor of a knot that no sample has measured. Whatever the catalogue's source: for what it says the
/// shop's cutting allowance stands, as in a cord without samples.
const UNMEASURED: Estimate = Estimate { mean: 0.0, sd: FACTOR_SD };

/// Take-up multiplied by its factor; rise, and the core that runs along it, by theirs.
fn scaled(taken: &Taken, [take_up, rise]: [f64; 2]) -> Taken {
    Taken { working: taken.working * take_up, core: taken.core * rise, rise: taken.rise * rise, ..*taken }
}

/// How fast the logarithms of take-up and rise change with give.
fn slopes_at(give: f64, at: impl Fn(f64) -> Result<Taken, TyingError>) -> Result<[f64; 2], TyingError> {
    const STEP: f64 = 0.005;
    let (low, high) = ((give - STEP).max(GIVE_RANGE.0), (give + STEP).min(GIVE_RANGE.1));
    let (below, above) = (at(low)?, at(high)?);
    let slope = |below: Length, above: Length| {
        if below > Length::ZERO && above > Length::ZERO { libm::log(above / below) / (high - low) } else { 0.0 }
    };
    Ok([slope(below.working, above.working), slope(below.rise, above.rise)])
}
