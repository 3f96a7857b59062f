//! How long tightening and drawing take: a square-knot sennit round two core legs, at one give and over every give; every
//! table and shape of the catalogue, all on one core; and the chart of the catalogue, the whole program.

#![allow(
    clippy::unwrap_used,
    missing_docs,
    reason = "a benchmark stops at the first surprise; criterion writes its own items"
)]

use std::hint::black_box;
use std::process::{Command, Stdio};

use criterion::{Criterion, criterion_group, criterion_main};
use reeve_catalogue::Catalogue;
use reeve_catalogue::path::StartingCore;
use reeve_catalogue::tighten::{Budget, Case, cases, drawn, drawn_case, row, tighten_at};
use reeve_tests::reeve;

fn tightening(bench: &mut Criterion) {
    let catalogue = Catalogue::embedded();
    let path = catalogue.find("square").unwrap().path.clone().unwrap();
    let case = Case { working: 2, round: StartingCore::Legs(2) };
    let effort = Budget::default();
    let mut group = bench.benchmark_group("tightening");
    group.sample_size(10);
    group.bench_function("a two-leg sennit at one give", |bench| {
        bench.iter(|| tighten_at(&path.start(case.working, case.round), 0.1, &effort).unwrap());
    });
    group.bench_function("a two-leg sennit at every give of its table", |bench| {
        bench.iter(|| row(&path, case, &effort).unwrap());
    });
    group.bench_function("the whole catalogue", |bench| {
        bench.iter(|| {
            for knot in catalogue.iter() {
                let Some(path) = &knot.path else { continue };
                for case in cases(knot) {
                    black_box(row(path, case, &effort).unwrap());
                }
                black_box(drawn(path, drawn_case(knot), &effort).unwrap());
            }
        });
    });
    group.finish();
}

fn drawing(bench: &mut Criterion) {
    bench.bench_function("the chart of the catalogue", |bench| {
        bench.iter(|| {
            let run = Command::new(reeve()).args(["knots", "chart", "--demo"]).stdout(Stdio::null()).status();
            assert!(run.unwrap().success());
        });
    });
}

criterion_group!(benches, tightening, drawing);
criterion_main!(benches);
