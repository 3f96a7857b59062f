//! Ten thousand designs compared, the whole program, beside parsing the same files into the same types; and a sweep of prices.
//!
//! Not in criterion's harness: what counts is the ratio of the two, measured in turn in one run, and the memory of a process.

#![allow(clippy::unwrap_used, reason = "a benchmark stops at the first surprise")]
#![allow(clippy::print_stdout, reason = "its figures are its result")]

use std::fs;
use std::hint::black_box;
use std::process::{Command, Stdio};
use std::sync::Arc;
use std::thread;
use std::time::{Duration, Instant};

use reeve_costing::single_piece::SinglePiece;
use reeve_reading::{Diagnostics, SourceText, read};
use reeve_shop::files::design_file;
use reeve_shop::{Admissions, Choice, Folder, Shop};
use reeve_tests::{TestShop, files_below, host, reeve};
use rust_decimal::Decimal;

const DESIGNS: usize = 10_000;
const ROUNDS: usize = 9;
const PRICES: i64 = 1_000_000;

/// The starter shop with its designs copied under other names, each with a remark of its own.
fn large_shop() -> TestShop {
    let shop = TestShop::starter();
    let designs = files_below(&shop.path("shop/designs"));
    let texts: Vec<String> = designs.iter().map(|path| fs::read_to_string(path).unwrap()).collect();
    for (at, text) in texts.iter().cycle().take(DESIGNS - texts.len()).enumerate() {
        shop.write(&format!("shop/designs/copy-{at}.toml"), format!("# {at}\n{text}"));
    }
    shop
}

/// Reads every file and parses it into the type that the comparison starts from, on one core.
fn parse(shop: &TestShop) -> Duration {
    let paths = files_below(&shop.path("shop/designs"));
    let start = Instant::now();
    for path in &paths {
        let text = fs::read_to_string(path).unwrap();
        let desk = Diagnostics::new(SourceText::new("design", text));
        black_box(read(&desk, |t| design_file(t, &Choice::default()))).unwrap();
    }
    start.elapsed()
}

/// A whole run on so many cores: its time, and the most memory that it held, in kilobytes.
fn compare(shop: &TestShop, cores: &str) -> (Duration, u64) {
    let start = Instant::now();
    let mut run = Command::new(reeve());
    run.args(["compare", "--as", "csv", "--shop"]).arg(shop.path("shop"));
    let mut child = run.env("RAYON_NUM_THREADS", cores).stdout(Stdio::null()).spawn().unwrap();
    let status = format!("/proc/{}/status", child.id());
    let mut most = 0;
    while child.try_wait().unwrap().is_none() {
        let text = fs::read_to_string(&status).unwrap_or_default();
        let line = text.lines().find_map(|line| line.strip_prefix("VmHWM:"));
        most = line.and_then(|line| line.trim_end_matches("kB").trim().parse().ok()).unwrap_or(most);
        thread::sleep(Duration::from_millis(2));
    }
    (start.elapsed(), most)
}

/// What a design earns at a million prices, one after the other.
fn sweep() -> Duration {
    let shop = Shop::open(Folder::Starter, host(), Admissions::default()).value;
    let found = shop.sizes("curlew-hanger", &Choice::default(), true).value.remove(0);
    let rates = shop.rates().unwrap();
    let start = Instant::now();
    let alone = SinglePiece::of(&Arc::clone(&found.take_off), shop.basis().unwrap()).unwrap();
    let gained = (0..PRICES).filter(|cents| {
        let outcome = alone.sold_at(Decimal::new(*cents, 2), rates);
        black_box(outcome).margin > Decimal::ZERO
    });
    assert!(gained.count() > 0);
    start.elapsed()
}

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort_unstable();
    times[times.len() / 2]
}

fn main() {
    let shop = large_shop();
    let (mut parsed, mut all, mut one, mut most) = (Vec::new(), Vec::new(), Vec::new(), 0);
    for _ in 0..ROUNDS {
        parsed.push(parse(&shop));
        let (time, held) = compare(&shop, "0");
        all.push(time);
        most = most.max(held);
        one.push(compare(&shop, "1").0);
    }
    let (parsed, all, one) = (median(parsed), median(all), median(one));
    let ratio = |time: Duration| time.as_secs_f64() / parsed.as_secs_f64();
    println!("{DESIGNS} designs parsed into the same types, one core: {parsed:.3?}");
    println!("compared, the whole program, all cores: {all:.3?}, {:.2} times as long", ratio(all));
    println!("compared, the whole program, one core:  {one:.3?}, {:.2} times as long", ratio(one));
    println!("the most memory held: {} MB", most / 1000);
    println!("{PRICES} prices of one design: {:.3?}", median((0..ROUNDS).map(|_| sweep()).collect()));
}
