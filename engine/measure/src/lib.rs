//! Physical quantities, the bounds they must keep, and what every error says.
//!
//! A quantity is an `f64` behind a type that names its unit at the door:
//! [`Length::mm`] to enter, [`Length::as_mm`] to leave. Nothing here does IO.

mod bounds;
mod quantity;
mod remedied;

pub use bounds::{Bound, bound};
pub use quantity::{Length, LinearDensity, Mass, Time, count};
pub use remedied::Remedied;
