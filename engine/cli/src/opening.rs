//! Opens the shop that a command is about, and tells the day.

use std::path::Path;

use chrono::{Local, NaiveDate, NaiveDateTime};
use reeve_host::Program;
use reeve_shop::{Folder, FolderFault, Shop};

use crate::failure::Failure;
use crate::forms::{Place, WhichShop};

/// Opens the shop named, or the one that the current folder belongs to.
pub(crate) fn open(shop: &WhichShop) -> Result<Shop, Failure> {
    let program = program()?;
    if shop.demo {
        return Ok(Shop::open(Folder::Starter, program));
    }
    let at = shop.folder.as_deref().unwrap_or(Path::new("."));
    Folder::find(at).map(|folder| Shop::open(folder, program)).map_err(|fault| folder_failure(&fault))
}

/// The program that is started for libraries of knots: this one.
pub(crate) fn program() -> Result<Program, Failure> {
    Program::this().map_err(|error| Failure::System(format!("the system does not tell where this program is: {error}")))
}

/// The day that a command works as of.
pub(crate) fn today(place: &Place) -> NaiveDate {
    day(place.on)
}

/// A day, or today.
pub(crate) fn day(on: Option<NaiveDate>) -> NaiveDate {
    on.unwrap_or_else(|| now().date())
}

/// The only place where the clock is read: by the clock of the place.
pub(crate) fn now() -> NaiveDateTime {
    Local::now().naive_local()
}

pub(crate) fn folder_failure(fault: &FolderFault) -> Failure {
    match fault {
        FolderFault::NotAShop(_) => Failure::input(
            fault.to_string(),
            "name a shop with --shop DIR, start one with `reeve begin DIR`, or try --demo",
        ),
        FolderFault::NotEmpty(_) => {
            Failure::input(fault.to_string(), "nothing was written; name a folder that does not exist yet")
        }
        FolderFault::Io(..) => Failure::System(fault.to_string()),
    }
}
