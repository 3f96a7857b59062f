//! Figures of a knot that a design may choose.

use reeve_measure::Length;
use reeve_reading::Figure;

use crate::tying_error::TyingError;
use crate::unit::ParameterUnit;

/// A figure that a design may choose.
#[derive(Debug, Clone, PartialEq)]
pub struct Parameter {
    /// Its name.
    pub name: String,
    /// Lowest allowed.
    pub least: f64,
    /// Highest allowed.
    pub most: f64,
    /// Taken when the design is silent.
    pub default: f64,
    /// What it is.
    pub about: String,
    /// What it is measured in.
    pub unit: ParameterUnit,
    /// Whether only whole numbers are taken.
    pub whole: bool,
}

/// What a parameter comes to in one place: as the design chose it, or its default.
#[derive(Debug, Clone, PartialEq)]
pub struct Settled {
    /// The title of the knot it belongs to, where that is one that the knot is made of.
    pub part: Option<String>,
    /// Its name.
    pub name: String,
    /// As the knot counts it: a length in millimetres.
    pub value: f64,
    /// What it is measured in.
    pub unit: ParameterUnit,
    /// How long it is, where it is measured along a cord.
    pub length: Option<Length>,
}

impl Parameter {
    /// Whether it can have a value.
    pub(crate) fn check(&self, given: f64) -> Result<(), TyingError> {
        if !(self.least..=self.most).contains(&given) {
            let range = (self.least, self.most);
            return Err(TyingError::ParameterRange { name: self.name.clone(), given, range, unit: self.unit });
        }
        if self.whole && given.fract() != 0.0 {
            return Err(TyingError::ParameterNotWhole { name: self.name.clone(), given });
        }
        Ok(())
    }

    /// The value that a figure gives it: a length in millimetres, anything else as it is.
    pub(crate) fn value(&self, figure: Figure) -> Result<f64, TyingError> {
        let name = || self.name.clone();
        let value = match (self.unit, figure) {
            (ParameterUnit::Length, Figure::Length(length)) => length.as_mm(),
            (ParameterUnit::Number | ParameterUnit::Degrees | ParameterUnit::Diameters, Figure::Number(number)) => {
                number
            }
            (ParameterUnit::Length, Figure::Number(given)) => {
                return Err(TyingError::ParameterUnit { name: name(), given });
            }
            (unit, Figure::Length(given)) => return Err(TyingError::ParameterNoLength { name: name(), given, unit }),
        };
        self.check(value).map(|()| value)
    }
}
