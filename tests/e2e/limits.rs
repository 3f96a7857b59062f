//! No room: every command that writes does all of it, or says which file and why, exits 1 and leaves nothing half made.
//!
//! A limit on how large a file may grow stands for a full disk. The signal that comes with it is the program's to bear.
#![cfg(unix)]

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::LazyLock;

use reeve_tests::{Ran, TestShop, reeve};

/// Blocks of 512 bytes, as `ulimit -f` counts them.
const LIMITS: [u32; 8] = [0, 2, 8, 24, 100, 200, 600, 100_000];

/// Everything in a folder, hidden or not: files with their bytes, folders without.
type All = BTreeMap<PathBuf, Option<Vec<u8>>>;

fn all(folder: &Path) -> All {
    let mut found = All::new();
    let mut waiting = vec![folder.to_owned()];
    while let Some(at) = waiting.pop() {
        for entry in fs::read_dir(&at).unwrap() {
            let path = entry.unwrap().path();
            let bytes = if path.is_dir() { None } else { Some(fs::read(&path).unwrap()) };
            if bytes.is_none() {
                waiting.push(path.clone());
            }
            found.insert(path.strip_prefix(folder).unwrap().to_owned(), bytes);
        }
    }
    found
}

fn run_limited(place: &TestShop, words: &[&str], blocks: u32) -> Ran {
    let mut sh = Command::new("sh");
    sh.args(["-c", "ulimit -f $1; shift; exec \"$0\" \"$@\""]).arg(reeve()).arg(blocks.to_string()).args(words);
    let output = sh.current_dir(place.path(".")).stdin(Stdio::null()).output().unwrap();
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).unwrap();
    Ran { code: output.status.code(), out: text(output.stdout), err: text(output.stderr) }
}

const DAY: [&str; 4] = ["--on", "2026-12-12", "--shop", "shop"];

/// A shop with a book that has finished work.
fn worked() -> TestShop {
    static ONCE: LazyLock<TestShop> = LazyLock::new(at_work);
    let place = TestShop::none();
    for (path, bytes) in ONCE.tree() {
        place.write(path.to_str().unwrap(), bytes);
    }
    place
}

fn at_work() -> TestShop {
    let place = TestShop::starter();
    let book = |words: &[&str]| place.run(&[&["book"], words, &DAY].concat()).done();
    book(&["issue", "--ahead", "reading-room"]);
    book(&["mark", "--ahead", "2026-001", "accepted"]);
    book(&["mark", "--ahead", "2026-001", "on-bench"]);
    book(&["log", "--ahead", "2026-001", "--minutes", "430", "--step", "Six arms"]);
    book(&["mark", "--ahead", "2026-001", "finished"]);
    book(&["export", "book.jsonl"]);
    place
}

fn read_in() -> TestShop {
    let place = TestShop::starter();
    place.write("book.jsonl", worked().read("book.jsonl"));
    place
}

/// What writes: its words, the shop it is run in, and a word of each message.
type Case = (&'static [&'static str], fn() -> TestShop, &'static str);

const CASES: &[Case] = &[
    (&["begin", "new/shop"], TestShop::none, "new/shop"),
    (&["knots", "begin", "lib"], TestShop::none, "lib"),
    (
        &["quote", "reading-room", "--shop", "shop", "--on", "2026-12-12", "--out", "to/send", "--own", "mine"],
        TestShop::starter,
        "",
    ),
    (&["knots", "chart", "--out", "wall/chart.html"], TestShop::none, "wall/chart.html"),
    (
        &[
            "knots",
            "sample",
            "--cord",
            "cotton-4-ecru",
            "--knot",
            "square",
            "--tied",
            "20",
            "--before",
            "200 cm",
            "--after",
            "80 cm",
            "--made",
            "28.5 cm",
            "--minutes",
            "6",
            "--shop",
            "shop",
        ],
        TestShop::starter,
        "shop/knots/samples.toml",
    ),
    (
        &["book", "enquire", "thwickling", "--ahead", "--on", "2026-12-12", "--shop", "shop"],
        TestShop::starter,
        "shop/book.sqlite",
    ),
    (
        &["book", "issue", "reading-room", "--ahead", "--on", "2026-12-12", "--shop", "shop"],
        TestShop::starter,
        "shop/book.sqlite",
    ),
    (
        &[
            "book",
            "issue",
            "thwickling",
            "--ahead",
            "--on",
            "2026-12-12",
            "--shop",
            "shop",
            "--out",
            "sent",
            "--own",
            "mine",
        ],
        worked,
        "",
    ),
    (&["book", "export", "new/copy.jsonl", "--shop", "shop"], worked, "new/copy.jsonl"),
    (&["book", "backup", "new/copy.sqlite", "--shop", "shop"], worked, "new/copy.sqlite"),
    (&["book", "import", "book.jsonl", "--shop", "shop"], read_in, "shop/book.sqlite"),
    (&["book", "learn", "--yes", "--on", "2026-12-12", "--shop", "shop"], worked, "shop/knots/samples.toml"),
];

#[test]
fn every_command_that_writes_does_all_of_it_or_nothing() {
    for (words, shop, told) in CASES {
        let (whole, mut refused, mut done) = (shop(), 0, 0);
        whole.run(words).done();
        let whole: Vec<PathBuf> = all(&whole.path(".")).into_keys().collect();
        for blocks in LIMITS {
            let place = shop();
            let before = all(&place.path("."));
            let ran = run_limited(&place, words, blocks);
            if before.contains_key(Path::new("shop/book.sqlite")) {
                // Where the database could not even begin its journal, an empty one stays until the book is opened again.
                place.run(&["book", "list", "--shop", "shop"]).done();
            }
            let after = all(&place.path("."));
            match ran.code {
                Some(0) => {
                    done += 1;
                    assert_eq!(after.into_keys().collect::<Vec<_>>(), whole, "{words:?} within {blocks}");
                    if place.path("shop/book.sqlite").exists() {
                        place.run(&["book", "check", "--shop", "shop"]).done();
                    }
                }
                Some(1) => {
                    refused += 1;
                    let changed: Vec<_> = after
                        .iter()
                        .filter(|(path, bytes)| before.get(*path) != Some(bytes))
                        .map(|(path, _)| path)
                        .chain(before.keys().filter(|path| !after.contains_key(*path)))
                        .collect();
                    assert!(changed.is_empty(), "{words:?} within {blocks}: {changed:?}\n{}", ran.err);
                    let error = ran.err.lines().find(|line| line.starts_with("error: ")).unwrap_or_default();
                    // With hardly any room the book can't even be opened: the database keeps a journal beside it.
                    let right = error.contains(told) || (blocks < 100 && error.contains("shop/book.sqlite"));
                    assert!(right && !ran.err.contains(".reeve-"), "{words:?} within {blocks}: {}", ran.err);
                }
                other => panic!("{words:?} within {blocks}: {other:?}\n{}", ran.err),
            }
        }
        assert!(refused > 0 && done > 0, "{words:?}: {refused} refused, {done} done");
    }
}

#[test]
fn a_result_that_cannot_be_printed_is_told_whatever_the_messages_go_to() {
    let place = TestShop::none();
    let sh = "ulimit -f 0; exec \"$0\" quote --demo >page.txt 2>messages.txt";
    let ran = Command::new("sh").args(["-c", sh]).arg(reeve()).current_dir(place.path(".")).status().unwrap();
    assert_eq!(ran.code(), Some(1));
}
