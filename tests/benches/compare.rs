//! A growing number of varied designs, compared and checked, the whole program on one core, beside bare parsing of the same
//! files; and a sweep of prices.
//!
//! Not in criterion's harness: what counts is the ratio of the two, measured in turn in one run, and the memory of a process.

#![allow(clippy::unwrap_used, reason = "a benchmark stops at the first surprise")]
#![allow(clippy::print_stdout, reason = "its figures are its result")]

use std::fs;
use std::hint::black_box;
use std::path::Path;
use std::process::{Command, Stdio};
use std::thread;
use std::time::{Duration, Instant};

use reeve_reading::{Diagnostics, SourceText, read};
use reeve_shop::Choice;
use reeve_shop::files::design_file;
use reeve_tests::{TestShop, files_below, reeve};

const SIZES: [usize; 3] = [1_000, 10_000, 100_000];
const ROUNDS: usize = 3;

/// The starter shop with its designs copied under other names: other counts of knots, other prices.
fn shop_of(designs: usize) -> TestShop {
    let shop = TestShop::starter();
    let texts: Vec<String> =
        files_below(&shop.path("shop/designs")).iter().map(|path| fs::read_to_string(path).unwrap()).collect();
    for (at, text) in texts.iter().cycle().take(designs - texts.len()).enumerate() {
        shop.write(&format!("shop/designs/copy-{at}.toml"), varied(text, at));
    }
    shop
}

/// The same design with each count of knots and each price a little otherwise.
fn varied(text: &str, at: usize) -> String {
    let line = |(nth, line): (usize, &str)| {
        let more = (at * 7 + nth * 3) % 5;
        let times = line.strip_prefix("times = ").and_then(|times| times.parse::<usize>().ok());
        let price = line.strip_prefix("price = \"").and_then(|price| price.strip_suffix(".00\""));
        match (times, price) {
            (Some(times), _) => format!("times = {}\n", times + more),
            (_, Some(price)) => format!("price = \"{price}.{more}0\"\n"),
            _ => format!("{line}\n"),
        }
    };
    format!("# {at}\n") + &text.lines().enumerate().map(line).collect::<String>()
}

/// Reads every file and does something with its text, on one core.
fn reading(shop: &TestShop, each: impl Fn(&str)) -> Duration {
    let paths = files_below(&shop.path("shop/designs"));
    let start = Instant::now();
    for path in &paths {
        each(&fs::read_to_string(path).unwrap());
    }
    start.elapsed()
}

/// TOML alone: what stands where, and nothing of what it means.
fn bare(text: &str) {
    black_box(toml::de::DeTable::parse(text)).unwrap();
}

/// Into the type that a comparison starts from.
fn typed(text: &str) {
    let desk = Diagnostics::new(SourceText::new("design", text));
    black_box(read(&desk, |t| design_file(t, &Choice::default()))).unwrap();
}

/// A whole run on one core: its time, and the most memory that it held, in megabytes.
fn run(shop: &Path, words: &[&str]) -> (Duration, u64) {
    let start = Instant::now();
    let mut run = Command::new(reeve());
    run.args(words).arg("--shop").arg(shop);
    let mut child = run.env("RAYON_NUM_THREADS", "1").stdout(Stdio::null()).spawn().unwrap();
    let status = format!("/proc/{}/status", child.id());
    let mut most = 0;
    while child.try_wait().unwrap().is_none() {
        let text = fs::read_to_string(&status).unwrap_or_default();
        let line = text.lines().find_map(|line| line.strip_prefix("VmHWM:"));
        most = line.and_then(|line| line.trim_end_matches("kB").trim().parse().ok()).unwrap_or(most);
        thread::sleep(Duration::from_millis(1));
    }
    (start.elapsed(), most / 1000)
}

fn median(times: impl Iterator<Item = Duration>) -> Duration {
    let mut times: Vec<Duration> = times.collect();
    times.sort_unstable();
    times[times.len() / 2]
}

fn main() {
    for designs in SIZES {
        let shop = shop_of(designs);
        let parsed = median((0..ROUNDS).map(|_| reading(&shop, bare)));
        println!("{designs:>6} designs: bare parsing            {parsed:>9.1?}");
        let told = |what: &str, took: Duration, held: Option<u64>| {
            let times = took.as_secs_f64() / parsed.as_secs_f64();
            let held = held.map(|held| format!(", {held} MB")).unwrap_or_default();
            println!("{designs:>6} designs: {what:<23} {took:>9.1?}, {times:.2} times{held}");
        };
        told("into types", median((0..ROUNDS).map(|_| reading(&shop, typed))), None);
        let folder = shop.path("shop");
        let (took, held) = run(&folder, &["compare", "--as", "csv"]);
        told("compared first", took, Some(held));
        let again: Vec<(Duration, u64)> = (0..ROUNDS).map(|_| run(&folder, &["compare", "--as", "csv"])).collect();
        told("compared again", median(again.iter().map(|(took, _)| *took)), again.iter().map(|(_, held)| *held).max());
        let checks: Vec<(Duration, u64)> = (0..ROUNDS).map(|_| run(&folder, &["check"])).collect();
        told("checked", median(checks.iter().map(|(took, _)| *took)), checks.iter().map(|(_, held)| *held).max());
    }
    let shop = TestShop::starter();
    let sweep = ["weigh", "curlew-hanger", "--prices", "0.01..10000.00/0.01", "--as", "csv"];
    let (took, held) = run(&shop.path("shop"), &sweep);
    println!("a million prices of one design: {took:.1?}, {held} MB");
}
