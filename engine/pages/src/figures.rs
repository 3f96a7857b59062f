//! Figures as they stand in documents for other programs.

use rust_decimal::Decimal;

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

/// An exact cost to six decimals: far below any coin, and short enough to read.
pub(crate) fn cents(amount: Decimal) -> Decimal {
    amount.round_dp(6).normalize()
}

/// The text of a table for a spreadsheet.
///
/// # Errors
/// What kept its last rows from being written.
pub(crate) fn csv_text(table: csv::Writer<Vec<u8>>) -> Result<String, csv::Error> {
    let bytes = table.into_inner().map_err(csv::IntoInnerError::into_error)?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}
