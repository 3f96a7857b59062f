//! Killed while it writes.

use std::io::Read;
use std::process::{Command, Stdio};
use std::thread;
use std::time::{Duration, Instant};

use reeve_tests::reeve;

use crate::workshop::{Workshop, running};

/// How often a program is killed.
const KILLS: usize = 1000;
/// Commissions that are issued again and again, each time changed.
const ORDERS: usize = 20;

/// Every entry that was acknowledged is there, whenever the program was killed, and numbers have no gap and no double.
#[test]
fn what_was_acknowledged_is_there() {
    let shop = Workshop::with_orders(ORDERS);
    let whole_run = time_of_a_run(&shop);
    let mut revisions = vec![0_usize; ORDERS];
    revisions[0] = entered(&shop, 0);
    let mut acknowledged = 0;
    for kill in 0..KILLS {
        let at = kill % ORDERS;
        shop.order(&format!("order-{at}"), &format!("Client {at}"), u32::try_from(kill + 10).unwrap());
        // From before anything was written to after all was: up to twice the time of a whole run, in steps.
        let wait = whole_run * u32::try_from(kill % 100).unwrap() / 50;
        if let Some(words) = killed_after(&shop, at, wait) {
            acknowledged += 1;
            revisions[at] += 1;
            assert!(words.contains("2026-"), "{words}");
        } else {
            // It may have been written and killed before it could say so.
            revisions[at] = revisions[at].max(entered(&shop, at));
        }
        if kill % 100 == 99 {
            shop.sound();
        }
    }
    assert!(acknowledged > KILLS / 20, "only {acknowledged} came through");
    assert!(acknowledged < KILLS, "none was killed");
    for (at, known) in revisions.into_iter().enumerate() {
        assert_eq!(entered(&shop, at), known, "order-{at}");
    }
    let numbers = shop.numbers();
    let mut sorted = numbers.clone();
    sorted.sort_unstable();
    assert_eq!(sorted, running(2026, numbers.len()));
    shop.sound();
}

/// How long a run takes that nobody kills, at best: the first may wait for the program to be built, others for the machine.
fn time_of_a_run(shop: &Workshop) -> Duration {
    const RUNS: u32 = 7;
    let run = |nth: u32| {
        shop.order("order-0", "Client 0", nth + 1);
        let start = Instant::now();
        shop.book(&["issue", "order-0"], "2026-11-25").done();
        start.elapsed()
    };
    (0..RUNS).map(run).min().unwrap_or_default()
}

/// Issues a quote and kills the program after a while; what it acknowledged, if it came so far.
fn killed_after(shop: &Workshop, at: usize, wait: Duration) -> Option<String> {
    let mut run = Command::new(reeve());
    run.args(["book", "issue", &format!("order-{at}"), "--on", "2026-11-25", "--ahead", "--shop"])
        .arg(shop.shop.path("shop"));
    let mut child = run.stdout(Stdio::null()).stderr(Stdio::piped()).spawn().unwrap();
    thread::sleep(wait);
    child.kill().unwrap();
    child.wait().unwrap();
    let mut said = String::new();
    child.stderr.take().unwrap().read_to_string(&mut said).unwrap();
    said.lines().find(|line| line.starts_with("entered in the book as")).map(str::to_owned)
}

/// How many quotes of a commission are in the book.
fn entered(shop: &Workshop, at: usize) -> usize {
    let ran = shop.book(&["show", &format!("order-{at}"), "--as", "json"], "2026-11-25");
    if ran.code != Some(0) {
        return 0;
    }
    let whole: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    whole["quotes"].as_array().unwrap().len()
}
