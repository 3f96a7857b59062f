//! A quote with a knot that a library works out beside the same quote with a knot of moves: the whole program, started anew.

#![allow(missing_docs, reason = "the benchmark's own macros make public items")]
#![allow(clippy::unwrap_used, reason = "a benchmark stops at the first surprise")]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use reeve_tests::{TestShop, root, shipped};

/// The small shop of the faults, with a tassel in its commission, bound by a knot.
fn shop(knot: &str, parameters: &str) -> TestShop {
    let shop = TestShop::copy_of(&root().join("tests/faults/shop"));
    shop.replace("shop/designs/tassel.toml", "knot = \"gathering-wrap\"", &format!("knot = \"{knot}\""));
    shop.replace("shop/designs/tassel.toml", "{ turns = 6 }", &format!("{{ {parameters} }}"));
    shop.replace("shop/commissions/order.toml", "[[line]]", "[[item]]\ndesign = \"tassel\"\n\n[[line]]");
    shop
}

fn quotes(c: &mut Criterion) {
    let moves = shop("gathering-wrap", "turns = 6");
    let library = shop("gathering-wrap-by-length", "length = \"24 mm\"");
    let file = shipped().join("libbound.so");
    library.run(&["knots", "admit", file.to_str().unwrap(), "--yes", "--shop", "shop"]).done();
    let quote = ["quote", "order", "--shop", "shop", "--on", "2027-01-12"];
    let mut group = c.benchmark_group("a quote, the whole program");
    group.bench_function("with a knot of moves", |b| b.iter(|| black_box(moves.run(&quote).done())));
    group.bench_function("with a knot of a library", |b| b.iter(|| black_box(library.run(&quote).done())));
    group.finish();
}

criterion_group!(benches, quotes);
criterion_main!(benches);
