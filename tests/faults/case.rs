//! A case: what is put into the shop, what is run, and how the answer is judged.

use std::fs;

use reeve_tests::{Ran, TestShop, root};

use crate::messages::{Module, compare, head};

/// Marks the place in a text that the message must point at; it is taken out of the file.
const MARK: char = '§';

/// One fault, or several, and the command that meets them.
pub(crate) struct Case {
    /// The name of the kept message.
    pub(crate) name: &'static str,
    /// What is changed.
    pub(crate) edits: &'static [Edit],
    /// The command.
    pub(crate) words: &'static [&'static str],
}

/// A change of a file of the shop.
pub(crate) enum Edit {
    /// In this file, these words in the place of those.
    Swap(&'static str, &'static str, &'static str),
    /// This file, made anew of these words.
    New(&'static str, &'static str),
    /// Without this file.
    Gone(&'static str),
}

pub(crate) use Edit::{Gone, New, Swap};

/// Reads the whole shop.
pub(crate) const CHECK: &[&str] = &["check", "--shop", "shop"];
/// Quotes the shop's one commission, into a folder.
pub(crate) const QUOTE: &[&str] = &["quote", "order", "--shop", "shop", "--out", "out"];

/// The small shop without faults.
pub(crate) fn shop() -> TestShop {
    TestShop::copy_of(&root().join("tests/faults/shop"))
}

/// Runs every case of a table of a module, and stops with all that differ.
#[track_caller]
pub(crate) fn check_all(module: &Module, cases: &[Case]) {
    let wrong: Vec<String> = cases.iter().filter_map(|case| check(module, case).err()).collect();
    assert!(wrong.is_empty(), "{} of {} cases:\n\n{}", wrong.len(), cases.len(), wrong.join("\n\n"));
}

fn check(module: &Module, case: &Case) -> Result<(), String> {
    let shop = shop();
    case.edits.iter().for_each(|edit| apply(&shop, edit));
    let places = unmark(&shop);
    judge(&shop, (module, case.name, case.edits), case.words, &places)
}

/// Runs a command that must refuse its input, and judges what it says and leaves behind.
pub(crate) fn judge(
    shop: &TestShop,
    (module, name, edits): (&Module, &str, &[Edit]),
    words: &[&str],
    places: &[String],
) -> Result<(), String> {
    let before = shop.tree();
    let ran = shop.run(words);
    let mut wrong = refusal(&ran);
    wrong.extend(pointing(&ran.err, places));
    wrong.extend(wording(&ran.err));
    if shop.tree() != before {
        wrong.push("something was written".to_owned());
    }
    wrong.extend(compare(module, name, &head(name, edits, words), &ran.err).err());
    if wrong.is_empty() { Ok(()) } else { Err(format!("{name}: {}\n{}", wrong.join("; "), ran.err)) }
}

fn refusal(ran: &Ran) -> Vec<String> {
    let mut wrong = Vec::new();
    if ran.code != Some(2) {
        wrong.push(format!("exit code {:?} and not 2", ran.code));
    }
    if !ran.out.is_empty() {
        wrong.push("a result was printed".to_owned());
    }
    if ran.err.contains("panicked") {
        wrong.push("it panicked".to_owned());
    }
    wrong
}

/// Every place is pointed at, and no error is told without one of them, or twice.
fn pointing(said: &str, places: &[String]) -> Vec<String> {
    let mut pointed: Vec<&str> = said.lines().filter_map(|line| line.trim_start().strip_prefix("--> ")).collect();
    pointed.sort_unstable();
    let mut places: Vec<&str> = places.iter().map(String::as_str).collect();
    places.sort_unstable();
    if pointed == places { Vec::new() } else { vec![format!("it points at {pointed:?} and not at {places:?}")] }
}

/// Every error says more than what is wrong: the limit beside the place, or what to do. And it is written with care.
fn wording(said: &str) -> Vec<String> {
    let mut wrong: Vec<String> = said
        .split("\n\n")
        .filter(|block| block.starts_with("error: ") && !says_more(block))
        .map(|block| format!("neither limit nor remedy: {}", block.lines().next().unwrap_or_default()))
        .collect();
    wrong.extend(said.lines().filter(|line| line.ends_with(' ')).map(|line| format!("it breaks off: {line:?}")));
    let words: Vec<&str> = said.split_whitespace().collect();
    let articles = words.windows(2).filter(|pair| pair[0] == "a" && pair[1].starts_with(['a', 'e', 'i', 'o']));
    wrong.extend(articles.map(|pair| format!("it says {}", pair.join(" "))));
    wrong
}

fn says_more(block: &str) -> bool {
    // What the parser of TOML or of the command line finds it words itself: what was expected is in the title.
    let words_itself = ["error: this is not TOML", "error: invalid value", "error: unrecognized"];
    let beside = |line: &str| line.rsplit_once("^ ").is_some_and(|(_, label)| !label.trim().is_empty());
    words_itself.iter().any(|title| block.starts_with(title)) || block.contains("= help: ") || block.lines().any(beside)
}

fn apply(shop: &TestShop, edit: &Edit) {
    match edit {
        Swap(file, from, to) => {
            let below = format!("shop/{file}");
            assert_eq!(shop.read(&below).matches(from).count(), 1, "{file} holds {from:?} not once");
            shop.replace(&below, from, to);
        }
        New(file, text) => shop.write(&format!("shop/{file}"), text),
        Gone(file) => fs::remove_file(shop.path(&format!("shop/{file}"))).unwrap(),
    }
}

/// Takes the marks out of every file; yields their places as the program writes them.
fn unmark(shop: &TestShop) -> Vec<String> {
    let mut places = Vec::new();
    for path in shop.tree().into_keys() {
        let file = path.to_str().unwrap();
        let marked = shop.read(file);
        if marked.contains(MARK) {
            places.extend(marked.match_indices(MARK).map(|(at, _)| format!("{file}:{}", place(&marked[..at]))));
            shop.write(file, marked.replace(MARK, ""));
        }
    }
    places
}

/// Line and column, from one, of what follows a text.
fn place(before: &str) -> String {
    let before = before.replace(MARK, "");
    let line = before.matches('\n').count() + 1;
    let column = before.rsplit('\n').next().unwrap().chars().count() + 1;
    format!("{line}:{column}")
}
