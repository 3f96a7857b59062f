//! What must hold of any bytes at all, reader by reader.
//!
//! A [`Target`] is a function that panics where something does not hold, the texts that a search begins with, and the words
//! that it may put in. It is used twice: `cargo test` tries what is kept (the first texts, and every input that once broke
//! something), and `tests/fuzz/run` searches for more, led by what the compiler's counters say was reached.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a target stops at the first surprise, as a test does")]
#![allow(clippy::missing_panics_doc, reason = "everything here may stop the test that calls it")]

mod bytes;
mod holds;
mod seeds;
mod shop;
mod targets;

use std::path::PathBuf;

pub use seeds::lay;
pub use targets::TARGETS;

/// One reader, and what must hold of whatever it reads.
#[derive(Debug, Clone, Copy)]
pub struct Target {
    /// The word it is named by.
    pub name: &'static str,
    /// Panics where something does not hold.
    pub holds: fn(&[u8]),
    /// What a search begins with.
    pub seeds: fn() -> Vec<Vec<u8>>,
    /// The longest input that is tried.
    pub longest: usize,
    /// How many inputs are tried where the search must be the same every time: some seconds' worth.
    pub runs: usize,
}

impl Target {
    /// The target of a name.
    pub fn find(name: &str) -> Option<&'static Self> {
        TARGETS.iter().find(|target| target.name == name)
    }

    /// Every input that is kept, with its name: what a search begins with, and what once broke something.
    pub fn kept(&self) -> Vec<(String, Vec<u8>)> {
        let seeds = (self.seeds)().into_iter().enumerate().map(|(at, seed)| (format!("seed-{at:03}"), seed));
        let found = std::fs::read_dir(found(self.name)).into_iter().flatten().flatten();
        let mut paths: Vec<PathBuf> = found.map(|entry| entry.path()).collect();
        paths.sort_unstable();
        let name = |path: &PathBuf| path.file_name().unwrap_or_default().to_string_lossy().into_owned();
        seeds.chain(paths.iter().map(|path| (name(path), std::fs::read(path).unwrap()))).collect()
    }
}

/// Where inputs are kept that once broke a target.
fn found(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("found").join(name)
}
