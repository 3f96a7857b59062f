//! Opens the shop that a command is about, and tells the day.

use std::path::{Path, PathBuf};

use chrono::{Local, NaiveDate, NaiveDateTime};
use etcetera::BaseStrategy;
use reeve_host::{Program, digest_of};
use reeve_office::RowShelf;
use reeve_reading::Fault;
use reeve_shop::{Admissions, Answer, Folder, FolderError, Shop, real_path};
use reeve_writing::Hold;

use crate::failure::Failure;
use crate::forms::{ShopArgs, WhichShop};
use crate::output::hold_folder;

/// Opens the shop named, or the one that the current folder belongs to, with what is wrong with it.
pub(crate) fn open(shop: &WhichShop) -> Result<Answer<Shop>, Failure> {
    let program = program()?;
    if shop.demo {
        return Ok(Shop::open(Folder::Starter, program, Admissions::default()));
    }
    let at = shop.folder.as_deref().unwrap_or(Path::new("."));
    let folder = Folder::find(at).map_err(|fault| folder_failure(&fault))?;
    Ok(Shop::open(folder, program, Admissions::read(own_folder())))
}

/// The folder that the system keeps for what this program knows of its user, outside every shop (XDG Base Directory
/// Specification; on Windows the user's application data). `None` where the system names none.
fn own_folder() -> Option<PathBuf> {
    reeve_folder(|system| system.data_dir())
}

/// This program's own in a folder of the system's.
fn reeve_folder(which: impl FnOnce(&dyn BaseStrategy) -> PathBuf) -> Option<PathBuf> {
    let folder = which(&etcetera::choose_base_strategy().ok()?);
    // A folder that is named from where one stands may be another's.
    folder.is_absolute().then(|| folder.join("reeve"))
}

/// Where rows of a shop's designs are kept, outside the shop and only to save time; `None` where the system names no folder, or
/// for the starter shop inside the program.
pub(crate) fn row_shelf(shop: &Shop) -> Option<RowShelf> {
    let root = real_path(&shop.book_folder()?);
    let folder = reeve_folder(|system| system.cache_dir())?;
    let name = format!("rows-{}", digest_of(root.as_os_str().as_encoded_bytes()).get(..16)?);
    // Two programs of one version may still reckon otherwise, while one of them is being written.
    let file = std::fs::metadata(std::env::current_exe().ok()?).ok()?;
    let made = file.modified().ok()?.duration_since(std::time::UNIX_EPOCH).ok()?;
    let program = format!("{} {} {}", env!("CARGO_PKG_VERSION"), file.len(), made.as_nanos());
    Some(RowShelf { at: folder.join(name), program })
}

/// Holds the shop that a command changes, before its files are read; the starter shop can't be changed.
pub(crate) fn hold(shop: &WhichShop) -> Result<Option<Hold>, Failure> {
    shop_root(shop).map(|root| hold_folder(&root)).transpose()
}

/// The folder of the shop named, or of the one that the current folder belongs to, if there is one.
pub(crate) fn shop_root(shop: &WhichShop) -> Option<PathBuf> {
    if shop.demo {
        return None;
    }
    match Folder::find(shop.folder.as_deref().unwrap_or(Path::new("."))) {
        Ok(Folder::Disk(root)) => Some(root),
        _ => None,
    }
}

/// The program that is started for libraries of knots: this one.
pub(crate) fn program() -> Result<Program, Failure> {
    Program::this().map_err(|error| Failure::System(format!("the system does not tell where this program is: {error}")))
}

/// The day that a command works as of.
pub(crate) fn today(place: &ShopArgs) -> NaiveDate {
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

pub(crate) fn folder_failure(error: &FolderError) -> Failure {
    match error {
        FolderError::NotAShop(_) | FolderError::NotEmpty(_) => Fault::of(error).into(),
        FolderError::Io(..) | FolderError::Unwritten(_) => Failure::system(error),
    }
}
