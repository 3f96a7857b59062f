//! Texts that are kept in the repository and compared with what the program makes today.

use std::fs;
use std::path::{Path, PathBuf};

use snapbox::{Assert, Data};

use crate::program::root;

/// Set to 1, it writes every kept text anew in place of comparing it.
const REGENERATE: &str = "REEVE_REGENERATE";

/// Whether kept texts are written anew.
pub fn regenerates() -> bool {
    std::env::var_os(REGENERATE).is_some_and(|value| value == "1")
}

/// The folder of the tests' own kept texts.
pub fn snapshots() -> PathBuf {
    root().join("tests/snapshots")
}

/// Compares a text with the one kept at a path, and stops with their difference.
#[track_caller]
pub fn check_kept(path: &Path, made: &str) {
    if let Err(difference) = compare_kept(path, made) {
        panic!("{difference}");
    }
}

/// Compares a text with the one kept at a path; the error shows their difference.
pub fn compare_kept(path: &Path, made: &str) -> Result<(), String> {
    if regenerates() {
        write(path, made);
        return Ok(());
    }
    let shown = path.strip_prefix(root()).unwrap_or(path).display();
    let Ok(kept) = fs::read_to_string(path) else {
        return Err(format!("{shown} is not kept yet: look at the text, then set {REGENERATE}=1\n{made}"));
    };
    // A checkout may have changed the ends of lines.
    compare_texts(&shown.to_string(), made, &kept.replace("\r\n", "\n"))
}

/// Compares a text with one that is kept under a name; the error shows their difference.
pub fn compare_texts(shown: &str, made: &str, kept: &str) -> Result<(), String> {
    Assert::new()
        .try_eq(Some(&"made today"), Data::text(made).raw(), Data::text(kept).raw())
        .map_err(|difference| format!("{shown} differs; {REGENERATE}=1 writes it anew\n{difference}"))
}

/// The names of the files kept in a folder, in order.
pub fn kept_names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).into_iter().flatten();
    let mut names: Vec<String> = entries.map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
    names.sort_unstable();
    names
}

/// A file that is the same already keeps its date, so that nothing is built anew for it.
fn write(path: &Path, made: &str) {
    if fs::read_to_string(path).is_ok_and(|kept| kept == made) {
        return;
    }
    fs::create_dir_all(path.parent().unwrap()).unwrap();
    fs::write(path, made).unwrap();
}
