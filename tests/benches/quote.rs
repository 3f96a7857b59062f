//! How long a quote takes from text to page, and how long reading takes, each beside parsing the same bytes with toml alone.

#![allow(clippy::unwrap_used, reason = "a benchmark stops at the first surprise")]
#![allow(missing_docs, reason = "the macros of the harness write functions of their own")]

use std::fs;
use std::hint::black_box;
use std::time::Duration;

use chrono::NaiveDate;
use criterion::{Criterion, criterion_group, criterion_main};
use reeve_costing::pricing::price_commission;
use reeve_pages::{Form, Words, lay_out};
use reeve_shop::{Admissions, Choice, DEMO_COMMISSION, Folder, Order, Shop};
use reeve_tests::{TestShop, files_below, host, root};
use toml::de::DeTable;

/// Designs in the large shop.
const DESIGNS: usize = 1000;

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

/// Every file read on that way: the catalogue, rates, store, own knots, the commission and the designs it names.
fn texts_of_the_quote() -> Vec<String> {
    let starter = root().join("engine/shop/starter");
    let mut paths = files_below(&root().join("catalogue/knots"));
    paths.extend(files_below(&starter.join("knots")));
    paths.extend(files_below(&starter.join("store")));
    let (_, order) = demo();
    paths.extend(order.commission.items.iter().map(|item| starter.join(format!("designs/{}.toml", item.design))));
    paths.extend([starter.join("shop.toml"), starter.join(format!("commissions/{DEMO_COMMISSION}.toml"))]);
    paths.iter().map(|path| fs::read_to_string(path).unwrap()).collect()
}

/// Parses texts with toml alone, as far as the spanned tree that the readers start from.
fn parse(texts: &[String]) -> usize {
    texts.iter().map(|text| DeTable::parse(black_box(text)).unwrap().get_ref().len()).sum()
}

/// The starter shop with its designs copied under other names until there are a thousand.
fn large_shop() -> TestShop {
    let shop = TestShop::starter();
    let designs = files_below(&shop.path("shop/designs"));
    let texts: Vec<String> = designs.iter().map(|path| fs::read_to_string(path).unwrap()).collect();
    for (at, text) in texts.iter().cycle().take(DESIGNS - texts.len()).enumerate() {
        shop.write(&format!("shop/designs/copy-{at}.toml"), text);
    }
    shop
}

/// Opens the large shop and reads every design, with its take-off.
fn read_all(shop: &TestShop) -> usize {
    let shop = shop.open().value;
    let designs = shop.designs().value;
    assert_eq!(designs.len(), DESIGNS);
    designs.iter().filter(|name| shop.design(name, &Choice::default()).value.is_some()).count()
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

fn reading(bench: &mut Criterion) {
    let shop = large_shop();
    bench.bench_function("reading 1,000 designs", |b| {
        b.iter(|| assert_eq!(read_all(&shop), DESIGNS));
    });
    let designs = files_below(&shop.path("shop/designs"));
    let texts: Vec<String> = designs.iter().map(|path| fs::read_to_string(path).unwrap()).collect();
    bench.bench_function("the same 1,000 parsed by toml alone", |b| b.iter(|| parse(&texts)));
}

criterion_group! {
    name = benches;
    config = Criterion::default()
        .sample_size(20)
        .warm_up_time(Duration::from_millis(500))
        .measurement_time(Duration::from_secs(2))
        .without_plots();
    targets = quoting, reading
}
criterion_main!(benches);
