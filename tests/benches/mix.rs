//! What to make of scarce hours: the search against a table of every minute, which is exact as well.

use std::hint::black_box;

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use reeve_costing::mix::{Offer, Once, best_mix};
use rust_decimal::Decimal;

/// A week of 27 bench hours, in minutes.
const MINUTES: usize = 27 * 60;

/// Pence, minutes and demand of varied offers, the same ones every time.
fn varied(count: usize) -> Vec<(i64, usize, usize)> {
    let one = |at: usize| {
        let minutes = 20 + at * 7_919 % 581;
        let pence = minutes * (18 + at * 104_729 % 47) + at * 31 % 97;
        (i64::try_from(pence).unwrap_or(i64::MAX), minutes, 1 + at % 4)
    };
    (1..=count).map(one).collect()
}

fn offers(varied: &[(i64, usize, usize)]) -> Vec<Offer> {
    let one = |&(pence, minutes, demand): &(i64, usize, usize)| Offer {
        contribution: Decimal::new(pence, 2),
        hours: Decimal::from(minutes),
        once: Once::default(),
        demand: u32::try_from(demand).ok(),
    };
    varied.iter().map(one).collect()
}

/// Exact dynamic programming over the minutes.
fn by_table(varied: &[(i64, usize, usize)]) -> i64 {
    let mut best = vec![0_i64; MINUTES + 1];
    for &(pence, minutes, demand) in varied {
        for _ in 0..demand {
            for left in (minutes..=MINUTES).rev() {
                best[left] = best[left].max(best[left - minutes] + pence);
            }
        }
    }
    best[MINUTES]
}

fn mixes(bench: &mut Criterion) {
    let mut group = bench.benchmark_group("mix");
    for count in [100, 1_000, 10_000] {
        let varied = varied(count);
        let offers = offers(&varied);
        let found = best_mix(&offers, Decimal::from(MINUTES)).ok();
        assert!(found.is_some_and(|mix| mix.proven && mix.contribution == Decimal::new(by_table(&varied), 2)));
        group.bench_with_input(BenchmarkId::new("search", count), &offers, |bench, offers| {
            bench.iter(|| best_mix(black_box(offers), Decimal::from(MINUTES)));
        });
        group.bench_with_input(BenchmarkId::new("table", count), &varied, |bench, varied| {
            bench.iter(|| by_table(black_box(varied)));
        });
    }
    group.finish();
}

criterion_group!(benches, mixes);
criterion_main!(benches);
