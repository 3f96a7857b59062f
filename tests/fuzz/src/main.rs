//! Searches for inputs of which something does not hold. `tests/fuzz/run` builds and starts it.
//!
//! `REEVE_FUZZ` names the target. With `REEVE_FUZZ_LAY` it only writes what a search begins with into that folder,
//! and says how long an input may be, and how many are tried where the search must be the same every time.

#![no_main]
#![allow(clippy::print_stderr, clippy::print_stdout, clippy::expect_used, reason = "a tool of the tests")]

use std::path::PathBuf;
use std::sync::LazyLock;

use libfuzzer_sys::fuzz_target;
use reeve_fuzz::{TARGETS, Target, lay};

static TARGET: LazyLock<&Target> = LazyLock::new(|| {
    let name = std::env::var("REEVE_FUZZ").unwrap_or_default();
    let Some(target) = Target::find(&name) else {
        let known: Vec<&str> = TARGETS.iter().map(|target| target.name).collect();
        eprintln!("REEVE_FUZZ must name one of: {}", known.join(" "));
        std::process::exit(2);
    };
    target
});

fn begin() {
    LazyLock::force(&TARGET);
    if let Some(folder) = std::env::var_os("REEVE_FUZZ_LAY") {
        lay(*TARGET, &PathBuf::from(folder)).expect("the folder can be written");
        println!("{} {}", TARGET.longest, TARGET.runs);
        std::process::exit(0);
    }
}

fuzz_target!(init: begin(), |bytes: &[u8]| (TARGET.holds)(bytes));
