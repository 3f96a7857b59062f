//! A figure: a plain number, or a length with its unit.

use std::fmt;

use reeve_measure::Length;

/// A unit's name and the factor that takes it to the quantity's base unit.
pub(crate) type Unit = (&'static str, f64);
pub(crate) const LENGTH_UNITS: &[Unit] = &[("mm", 1.0), ("cm", 10.0), ("m", 1000.0), ("in", 25.4), ("ft", 304.8)];

/// A figure of a knot: a plain number, or a length with its unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Figure {
    /// A plain number.
    Number(f64),
    /// A length.
    Length(Length),
}

impl Figure {
    /// Reads a figure from a word such as `12` or `8cm`.
    pub fn parse(word: &str) -> Option<Self> {
        let (number, unit) = split_unit(word);
        let number = plain_number(number)?;
        if unit.is_empty() {
            return Some(Self::Number(number)).filter(Self::is_finite);
        }
        let factor = LENGTH_UNITS.iter().find(|(name, _)| *name == unit).map(|(_, factor)| *factor);
        factor.map(|factor| Self::Length(Length::mm(number * factor))).filter(Self::is_finite)
    }
}

/// The digits of a text and the unit behind them.
pub(crate) fn split_unit(text: &str) -> (&str, &str) {
    let text = text.trim();
    let at = text.find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '+'))).unwrap_or(text.len());
    let (number, unit) = text.split_at(at);
    (number.trim(), unit.trim())
}

/// Digits with at most one point and a sign; no exponent, infinity or NaN, which `f64` would take.
pub(crate) fn plain_number(text: &str) -> Option<f64> {
    let digits = text.strip_prefix('-').unwrap_or(text);
    let plain = !digits.is_empty() && digits.chars().all(|c| c.is_ascii_digit() || c == '.');
    if plain { text.parse().ok() } else { None }
}

impl Figure {
    pub(crate) fn times(self, by: f64) -> Self {
        match self {
            Self::Number(number) => Self::Number(number * by),
            Self::Length(length) => Self::Length(length * by),
        }
    }

    /// Whether it is a figure at all: a number too large for a computer's is none.
    pub(crate) fn is_finite(&self) -> bool {
        self.plain().is_finite()
    }

    /// The number, or the millimetres.
    pub(crate) fn plain(self) -> f64 {
        match self {
            Self::Number(number) => number,
            Self::Length(length) => length.as_mm(),
        }
    }

    /// Whether both are numbers or both are lengths.
    pub fn is_like(&self, other: &Self) -> bool {
        matches!((self, other), (Self::Number(_), Self::Number(_)) | (Self::Length(_), Self::Length(_)))
    }
}

/// As a maker writes it: `12`, `9.5 cm`, `4 mm`.
impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let trimmed = |value: f64| (value * 100.0).round() / 100.0;
        match self {
            Self::Number(number) => write!(f, "{}", trimmed(*number)),
            Self::Length(length) if length.as_mm().abs() < 20.0 => write!(f, "{} mm", trimmed(length.as_mm())),
            Self::Length(length) => write!(f, "{} cm", trimmed(length.as_cm())),
        }
    }
}
