//! A sample taken down: what it adds to the shop's file, and the hands before and after it.

use std::path::PathBuf;

use reeve_costing::hand::{Hand, OddSample};
use reeve_shop::{Added, NewSample, Shop};

use crate::error::OfficeError;

/// A sample taken down. Nothing is written until it is kept.
#[derive(Debug)]
pub struct TakenDown {
    /// The hand without it.
    pub before: Hand,
    /// The pace that the shop states.
    pub pace: f64,
    /// What it adds, and the hand that follows.
    pub added: Added,
}

impl TakenDown {
    /// Takes a sample down.
    ///
    /// # Errors
    /// Every fault of the sample, or of the shop's file as it would be.
    pub fn of(shop: &Shop, sample: &NewSample) -> Result<Self, OfficeError> {
        let basis = shop.basis().ok_or_else(|| OfficeError::input("shop.toml has faults", "mend it first"))?;
        let added = shop.with_sample(sample).map_err(|faults| OfficeError::Input(faults.into()))?;
        Ok(Self { before: basis.hand.clone(), pace: basis.rates.bench.pace, added })
    }

    /// The file that it is written to; nothing for the starter shop, which is inside the program.
    pub fn file(&self) -> Option<PathBuf> {
        self.added.dir.as_ref().map(|dir| dir.join(Added::FILE))
    }

    /// What is odd about it, if it is not counted.
    pub fn odd(&self) -> Option<&OddSample> {
        self.added.hand.odd.iter().find(|odd| odd.at == self.added.at)
    }

    /// Writes it into the shop's file; the shop is held since before it was read.
    ///
    /// # Errors
    /// When the shop is inside the program, or the file can't be written.
    pub fn keep(&self) -> Result<(), OfficeError> {
        let file = self.file().ok_or_else(|| {
            OfficeError::input(
                "the starter shop is inside the program and can't be written to",
                "start a shop with `reeve begin DIR`, or look only, with --only-show",
            )
        })?;
        Ok(reeve_writing::rewrite(&[(file, self.added.text.clone())])?)
    }
}
