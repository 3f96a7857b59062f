//! One file a reader.

mod arguments;
mod commission;
mod cords;
mod design;
mod faults;
mod import;
mod knot;
mod record;
mod samples;
mod shop;
mod sums;
mod tables;
mod templates;
mod tightened;
mod wire;

use std::fs;
use std::path::{Path, PathBuf};

use crate::Target;

/// Every target.
pub const TARGETS: &[Target] = &[
    arguments::TARGET,
    commission::TARGET,
    cords::CORDS,
    cords::FITTINGS,
    design::TARGET,
    faults::TARGET,
    import::TARGET,
    knot::TARGET,
    record::TARGET,
    samples::TARGET,
    shop::TARGET,
    sums::TARGET,
    tables::TARGET,
    templates::TARGET,
    tightened::TARGET,
    wire::TARGET,
];

/// What makes of the bytes of a file a text, as the program does: what is not UTF-8 is refused before any reader sees it.
fn text(bytes: &[u8]) -> Option<&str> {
    std::str::from_utf8(bytes).ok()
}

/// A path of the repository.
fn repository(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(path)
}

/// A file of the repository.
fn file(path: &str) -> Vec<u8> {
    fs::read(repository(path)).unwrap()
}

/// The files of a folder of the repository whose names end so, in order.
fn files(folder: &str, ending: &str) -> Vec<Vec<u8>> {
    let entries = fs::read_dir(repository(folder)).unwrap();
    let mut paths: Vec<PathBuf> = entries.map(|entry| entry.unwrap().path()).collect();
    paths.retain(|path| path.to_string_lossy().ends_with(ending));
    paths.sort_unstable();
    paths.into_iter().map(|path| fs::read(path).unwrap()).collect()
}
