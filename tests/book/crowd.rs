//! Many at once.

use std::sync::Barrier;
use std::thread;

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
