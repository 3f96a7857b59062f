//! Figures as they stand in documents for other programs.

/// The form of these documents; raised when a field changes its meaning or goes.
pub(crate) const FORM: u32 = 1;

/// A figure to a tenth of its unit: finer than any bench, and the same bytes on every machine.
pub(crate) fn tenth(value: f64) -> f64 {
    (value * 10.0).round() / 10.0
}

/// A ratio to a hundredth.
pub(crate) fn hundredth(value: f64) -> f64 {
    (value * 100.0).round() / 100.0
}

/// A ratio to a thousandth.
pub(crate) fn thousandth(value: f64) -> f64 {
    (value * 1000.0).round() / 1000.0
}
