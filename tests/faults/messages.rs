//! The kept messages: one file for each module of cases, in which every case stands above the message that it gets.

use std::fmt::Write;
use std::fs;
use std::path::PathBuf;
use std::sync::{Mutex, PoisonError};

use reeve_tests::{compare_texts, regenerates, snapshots};

use crate::case::Edit;

/// What a case's part of the file begins with.
const HEAD: &str = "======== ";

/// What a module's cases are told by: names in the order in which they stand in its file.
pub(crate) struct Module {
    /// The module, and the name of its file.
    pub(crate) name: &'static str,
    /// The names of its cases.
    pub(crate) cases: Vec<&'static str>,
}

/// A case as it stands above its message: its name, what is changed, and the command.
pub(crate) fn head(name: &str, edits: &[Edit], words: &[&str]) -> String {
    let mut head = format!("{HEAD}{name}\n");
    for edit in edits {
        let (file, was, now) = match edit {
            Edit::Swap(file, was, now) => (file, *was, *now),
            Edit::New(file, now) => (file, "", *now),
            Edit::Gone(file) => {
                let _ = writeln!(head, "{file}: taken away");
                continue;
            }
        };
        let _ = writeln!(head, "{file}:");
        for (sign, line) in was.lines().map(|line| ('-', line)).chain(now.lines().map(|line| ('+', line))) {
            let _ = writeln!(head, "{}", format!("  {sign} {line}").trim_end());
        }
    }
    let _ = writeln!(head, "$ reeve {}\n", words.join(" "));
    head
}

fn file(module: &str) -> PathBuf {
    snapshots().join(format!("faults/{module}.txt"))
}

/// The parts of a module's file, each with its name.
fn kept(module: &str) -> Vec<(String, String)> {
    // A checkout may have changed the ends of lines.
    let text = fs::read_to_string(file(module)).unwrap_or_default().replace("\r\n", "\n");
    let name = |part: &str| part.lines().next().unwrap_or_default().trim_start_matches(HEAD).to_owned();
    let starts = text.match_indices(HEAD).map(|(at, _)| at).filter(|at| *at == 0 || text[..*at].ends_with('\n'));
    let starts: Vec<usize> = starts.collect();
    let ends = starts.iter().skip(1).copied().chain([text.len()]);
    starts.iter().zip(ends).map(|(from, to)| (name(&text[*from..to]), text[*from..to].to_owned())).collect()
}

/// Compares a case and its message with what is kept; the error shows their difference.
pub(crate) fn compare(module: &Module, name: &str, head: &str, message: &str) -> Result<(), String> {
    let part = format!("{head}{}\n\n", message.trim_end());
    if regenerates() {
        write(module, name, part);
        return Ok(());
    }
    let kept = kept(module.name).into_iter().find(|(known, _)| known == name).map(|(_, text)| text).unwrap_or_default();
    compare_texts(&format!("{} in {}", name, file(module.name).display()), &part, &kept)
}

/// Tests run side by side, and several write into one file.
static WRITING: Mutex<()> = Mutex::new(());

/// Puts a part into its place in the module's file; others stay as they are, and parts of no case go.
fn write(module: &Module, name: &str, part: String) {
    let _alone = WRITING.lock().unwrap_or_else(PoisonError::into_inner);
    let mut parts = kept(module.name);
    parts.retain(|(known, _)| known != name && module.cases.contains(&known.as_str()));
    parts.push((name.to_owned(), part));
    parts.sort_by_key(|(known, _)| module.cases.iter().position(|case| case == known));
    let text: String = parts.into_iter().map(|(_, text)| text).collect();
    if fs::read_to_string(file(module.name)).is_ok_and(|kept| kept == text) {
        return;
    }
    fs::create_dir_all(snapshots().join("faults")).unwrap();
    fs::write(file(module.name), text).unwrap();
}

/// What is kept of no case, and in another order than the cases have.
pub(crate) fn strays(modules: &[Module]) -> Vec<String> {
    let mut wrong = Vec::new();
    for module in modules {
        let kept: Vec<String> = kept(module.name).into_iter().map(|(name, _)| name).collect();
        let known = kept.iter().filter(|name| module.cases.contains(&name.as_str())).map(String::as_str);
        let in_order = module.cases.iter().copied().filter(|case| kept.iter().any(|name| name == case));
        if !known.eq(in_order) {
            wrong.push(format!("{}: the cases stand in another order", module.name));
        }
        wrong.extend(kept.iter().filter(|name| !module.cases.contains(&name.as_str())).cloned());
    }
    let files = reeve_tests::kept_names(&snapshots().join("faults"));
    wrong
        .extend(files.into_iter().filter(|file| !modules.iter().any(|module| *file == format!("{}.txt", module.name))));
    wrong
}
