//! The monkey's fist: three sets of turns about a ball, square to each other.
//!
//! [`ball`] has the geometry, [`ellipse`] the way round a turn.

pub mod ball;
pub mod ellipse;
mod monkeys_fist;

pub use monkeys_fist::MonkeysFist;

reeve_kit::library!("monkeys-fist": MonkeysFist);
