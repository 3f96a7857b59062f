//! How long a quote takes from text to page beside parsing the same bytes with toml alone; and the whole program, printing its
//! quote, beside the program saying its version.

#![allow(clippy::unwrap_used, reason = "a benchmark stops at the first surprise")]
#![allow(missing_docs, reason = "the macros of the harness write functions of their own")]

use std::collections::BTreeSet;
use std::fs;
use std::hint::black_box;
use std::process::{Command, Output};
use std::time::Duration;

use chrono::NaiveDate;
use criterion::{Criterion, criterion_group, criterion_main};
use reeve_costing::piece::{Piece, Work};
use reeve_costing::pricing::price_commission;
use reeve_pages::{Form, Words, lay_out};
use reeve_shop::{Admissions, DEMO_COMMISSION, Folder, Order, Shop};
use reeve_tests::{files_below, host, reeve, root};
use toml::de::DeTable;

fn day() -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 11, 25).unwrap()
}

/// The starter shop, opened, and its commission priced.
fn demo() -> (Shop, Order) {
    let shop = Shop::open(Folder::Starter, host(), Admissions::default()).value;
    let order = shop.order(DEMO_COMMISSION, &reeve_shop::Wish::default(), day()).value.unwrap();
    (shop, order)
}

/// The whole way: open the shop, price the commission, lay the quote out as text and as HTML.
fn quote_from_text_to_page() -> [String; 2] {
    let (shop, order) = demo();
    let own: Vec<_> = shop.templates().value.into_iter().map(reeve_pages::OwnTemplate::from).collect();
    let rates = shop.rates().unwrap();
    let words = Words::new(rates).unwrap();
    let templates = reeve_pages::load(&own, words.phrases()).unwrap();
    let view = reeve_pages::quote::quote_page(&order.priced.quote, rates, &words);
    [Form::Text, Form::Html].map(|form| lay_out(&templates, "quote", form, &view).unwrap())
}

/// Every file read on that way: rates, store, own knots, the commission, the designs it names, and the knots that these name.
fn texts_of_the_quote() -> Vec<String> {
    let (starter, catalogue) = (root().join("engine/shop/starter"), root().join("catalogue/knots"));
    let (_, order) = demo();
    let mut names = BTreeSet::new();
    order.commission.items.iter().for_each(|item| knots_of(&item.piece, &mut names));
    let knots = names.iter().flat_map(|name| {
        [catalogue.join(format!("{name}.toml")), catalogue.join("tightened").join(format!("{name}.toml"))]
    });
    let mut paths: Vec<_> = knots.filter(|path| path.exists()).collect();
    paths.extend(files_below(&starter.join("knots")));
    paths.extend(files_below(&starter.join("store")));
    paths.extend(order.commission.items.iter().map(|item| starter.join(format!("designs/{}.toml", item.design))));
    paths.extend([starter.join("shop.toml"), starter.join(format!("commissions/{DEMO_COMMISSION}.toml"))]);
    paths.iter().map(|path| fs::read_to_string(path).unwrap()).collect()
}

/// Parses texts with toml alone, as far as the spanned tree that the readers start from.
fn parse(texts: &[String]) -> usize {
    texts.iter().map(|text| DeTable::parse(black_box(text)).unwrap().get_ref().len()).sum()
}

/// The knots that a piece and its parts are tied of.
fn knots_of(piece: &Piece, names: &mut BTreeSet<String>) {
    for step in &piece.steps {
        if let Work::Tie(tie) = &step.work {
            names.insert(tie.knot.name.clone());
        }
    }
    piece.parts.iter().for_each(|part| knots_of(&part.piece, names));
}

/// A whole run of the program.
fn run(words: &[&str]) -> Output {
    Command::new(reeve()).args(words).output().unwrap()
}

fn quoting(bench: &mut Criterion) {
    bench.bench_function("quote from text to page", |b| b.iter(quote_from_text_to_page));
    let texts = texts_of_the_quote();
    bench.bench_function("the same texts parsed by toml alone", |b| b.iter(|| parse(&texts)));
    let (shop, order) = demo();
    let basis = shop.basis().unwrap();
    bench.bench_function("the quote's sums alone", |b| {
        b.iter(|| price_commission(black_box(&order.commission), basis, day()).unwrap());
    });
}

/// What a maker waits for: the program started, and its page printed.
fn running(bench: &mut Criterion) {
    bench.bench_function("reeve --version", |b| b.iter(|| run(&["--version"])));
    bench.bench_function("reeve quote --demo", |b| b.iter(|| run(&["quote", "--demo"])));
}

criterion_group! {
    name = benches;
    config = Criterion::default()
        .sample_size(50)
        .warm_up_time(Duration::from_millis(500))
        .measurement_time(Duration::from_secs(2))
        .without_plots();
    targets = quoting, running
}
criterion_main!(benches);
