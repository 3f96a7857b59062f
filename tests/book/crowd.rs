//! Many at once.

use std::sync::Barrier;
use std::thread;

use reeve_book::{BOOK_FILE, Book};

use crate::workshop::{Workshop, running};

#[test]
fn sixteen_issue_at_once() {
    const PROGRAMS: usize = 16;
    let shop = Workshop::with_orders(PROGRAMS * 2);
    // Together they also make the book.
    let start = Barrier::new(PROGRAMS);
    let mut given: Vec<String> = thread::scope(|scope| {
        let runs: Vec<_> = (0..PROGRAMS)
            .map(|at| {
                let (shop, start) = (&shop, &start);
                scope.spawn(move || {
                    start.wait();
                    [at, at + PROGRAMS].map(|order| {
                        let ran = shop.book(&["issue", &format!("order-{order}")], "2026-11-25");
                        assert_eq!(ran.code, Some(0), "{}", ran.err);
                        ran.err.rsplit_once("entered in the book as ").unwrap().1.trim().to_owned()
                    })
                })
            })
            .collect();
        runs.into_iter().flat_map(|run| run.join().unwrap()).collect()
    });
    given.sort_unstable();
    assert_eq!(given, running(2026, PROGRAMS * 2));
    assert_eq!(shop.numbers(), given);
    shop.sound();
}

/// Whoever comes while another makes the book finds none or a whole one.
///
/// The making takes a thousandth of a run of the program, so runs that are started together hardly ever meet in it: here
/// nothing else is done, and often.
#[test]
fn a_book_is_never_seen_half_made() {
    const OPENERS: usize = 16;
    const ROUNDS: usize = 150;
    for round in 0..ROUNDS {
        let folder = tempfile::tempdir().unwrap();
        let (path, start) = (folder.path().join(BOOK_FILE), Barrier::new(OPENERS));
        thread::scope(|scope| {
            for _ in 0..OPENERS {
                scope.spawn(|| {
                    start.wait();
                    let opened = Book::open(&path, true).unwrap_or_else(|trouble| panic!("round {round}: {trouble}"));
                    assert!(opened.brought_up.is_none());
                    assert!(opened.book.check(|_, _| None).unwrap().is_empty());
                });
            }
        });
        let names = std::fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().file_name());
        // An empty journal may stay where the last two closed it in the same moment; the next who opens the book takes it.
        let strays: Vec<_> = names.filter(|name| !name.to_str().unwrap().starts_with(BOOK_FILE)).collect();
        assert!(strays.is_empty(), "{strays:?} were left beside it");
    }
}
