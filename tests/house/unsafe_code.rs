//! Where the language's own checks are off.

use std::path::PathBuf;

use reeve_tests::{files_below, root};

/// The files that may hold `unsafe`: what loads libraries and what holds them back, and what they cross the contract by.
const ALLOWED: [&str; 5] = [
    "engine/host/src/child/linux/descriptors.rs",
    "engine/host/src/child/linux/handing.rs",
    "engine/host/src/child/load.rs",
    "plugins/kit/src/crossing.rs",
    "plugins/kit/src/lib.rs",
];

/// The files below some folders that hold some words, of one ending.
fn holding(folders: &[&str], ending: &str, words: &str) -> Vec<String> {
    let files = folders.iter().flat_map(|folder| files_below(&root().join(folder)));
    let held = |path: &PathBuf| path.extension().is_some_and(|found| found == ending) && says(path, words);
    let name = |path: PathBuf| path.strip_prefix(root()).unwrap().to_str().unwrap().replace('\\', "/");
    let mut names: Vec<String> = files.filter(held).map(name).collect();
    names.sort_unstable();
    names
}

fn says(path: &PathBuf, words: &str) -> bool {
    std::fs::read_to_string(path).unwrap().contains(words)
}

#[test]
fn only_the_contract_is_unsafe() {
    assert_eq!(holding(&["catalogue", "engine", "plugins"], "rs", "allow(unsafe_code"), ALLOWED);
}

/// Libraries are loaded by one crate, and by one file of it.
#[test]
fn only_the_host_loads_libraries() {
    let everywhere = ["catalogue", "engine", "plugins", "tests"];
    assert_eq!(holding(&everywhere, "toml", "libloading"), ["engine/host/Cargo.toml"]);
    assert_eq!(holding(&everywhere[..3], "rs", "libloading"), ["engine/host/src/child/load.rs"]);
}
