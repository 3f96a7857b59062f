//! A design taken off, with the cord to buy for one piece of it.

use reeve_costing::cost::{CordBought, buy_cords};
use reeve_reading::Fault;
use reeve_shop::FoundDesign;

use crate::error::OfficeError;

/// A design, and what is bought for one piece of it.
#[derive(Debug)]
pub struct TakenOff {
    /// The design.
    pub found: FoundDesign,
    /// The cord.
    pub cords: Vec<CordBought>,
}

impl TakenOff {
    /// Buys for one piece.
    ///
    /// # Errors
    /// When a cord can't be bought.
    pub fn of(found: FoundDesign) -> Result<Self, OfficeError> {
        let cords = buy_cords(&[(&found.take_off, 1)]).map_err(|error| Fault::of(&error))?;
        Ok(Self { found, cords })
    }
}
