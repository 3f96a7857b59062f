//! What is typed behind an option: prices, measures, changes. Read where files are read, so that one limit stands in one place.

mod change;
mod figures;

pub use change::{check_cord, read_changes};
pub use figures::{
    GivenPrice, read_amount, read_confidence, read_demand, read_given_price, read_hours, read_measure, read_prices,
};
