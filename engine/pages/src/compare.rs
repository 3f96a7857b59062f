//! Designs beside one another: what each needs, costs, brings in and earns.

mod columns;
mod page;

use reeve_costing::rates::Rates;
use reeve_office::DesignRow;
use serde::Serialize;

pub use columns::{Condition, column_words, compare_csv, sort_rows};
pub use page::{ComparePage, Comparison, compare_page};

/// The form of a comparison for other programs; raised when a field changes its meaning or goes.
const FORM: u32 = 2;

/// Designs beside one another, for other programs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct CompareJson {
    /// Version of this form.
    pub form: u32,
    /// Three letters of ISO 4217.
    pub currency: String,
    /// Each design.
    pub designs: Vec<DesignRow>,
}

/// Designs beside one another, for other programs.
pub fn compare_json(rows: &[DesignRow], rates: &Rates) -> CompareJson {
    CompareJson { form: FORM, currency: rates.currency.code().to_owned(), designs: rows.to_vec() }
}
