//! How long tightening takes: a square-knot sennit round two core legs, over every give, on one core.

#![allow(
    clippy::unwrap_used,
    missing_docs,
    reason = "a benchmark stops at the first surprise; criterion writes its own items"
)]

use criterion::{Criterion, criterion_group, criterion_main};
use reeve_catalogue::Catalogue;
use reeve_catalogue::path::StartingCore;
use reeve_catalogue::tighten::{Budget, Case, row, tighten_at};

fn tightening(bench: &mut Criterion) {
    let catalogue = Catalogue::embedded();
    let path = catalogue.find("square").unwrap().path.clone().unwrap();
    let case = Case { working: 2, round: StartingCore::Legs(2) };
    let mut group = bench.benchmark_group("a two-leg sennit");
    group.sample_size(10);
    group.bench_function("at one give", |bench| {
        bench.iter(|| tighten_at(&path.start(case.working, case.round), 0.1, &Budget::default()).unwrap());
    });
    group.bench_function("at every give of its table", |bench| {
        bench.iter(|| row(&path, case, &Budget::default()).unwrap());
    });
    group.finish();
}

criterion_group!(benches, tightening);
criterion_main!(benches);
