//! A comparison in finished words.

use reeve_costing::rates::Rates;
use reeve_costing::takeoff::plural;
use reeve_costing::whatif::Effect;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde::Serialize;

use super::columns::{COLUMNS, Column, Sort};
use super::{DesignRow, Earned};
use crate::quote::Head;
use crate::words::Words;

/// What a comparison shows.
#[derive(Debug, Clone, Copy)]
pub struct Comparison<'a> {
    /// Each design in each size, in order.
    pub rows: &'a [DesignRow],
    /// What each input moves, of as many rows as have it drawn; the change is [`super::TENTH`].
    pub effects: &'a [Vec<Effect>],
    /// The column it is sorted by.
    pub key: &'a str,
    /// What is otherwise than in the shop, in words.
    pub changes: &'a [String],
    /// Whether charts are drawn.
    pub drawn: bool,
}

/// Designs beside one another in finished words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ComparePage {
    head: Head,
    sorted: String,
    count: String,
    changes: Vec<String>,
    any_market: bool,
    rows: Vec<CompareRow>,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct CompareRow {
    title: String,
    cells: Vec<Cell>,
    hours: String,
    cost: String,
    at_aim: AtPrice,
    at_market: Option<AtPrice>,
}

/// What it comes to at a price.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct AtPrice {
    price: String,
    margin: String,
    percent: String,
    per_hour: String,
    /// A length from 0 to 100 for what an hour earns, the best design's being 100.
    bar: u32,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct Cell {
    heading: &'static str,
    figure: String,
}

/// Words a comparison.
pub fn compare_page(shown: &Comparison<'_>, rates: &Rates, words: &Words) -> ComparePage {
    let rows = shown.rows;
    let sold = rows.iter().flat_map(|row| [Some(&row.sold), row.market_sold.as_ref()]).flatten();
    let best = sold.map(|sold| sold.per_hour).max().unwrap_or_default();
    ComparePage {
        head: Head::new(rates, "Designs beside one another"),
        sorted: Column::find(shown.key).map_or("", |column| column.heading).to_lowercase(),
        count: plural("row", rows.len() as u64),
        changes: shown.changes.to_vec(),
        any_market: rows.iter().any(|row| row.market.is_some()),
        rows: rows.iter().map(|row| compare_row(row, best, words)).collect(),
    }
}

fn compare_row(row: &DesignRow, best: Decimal, words: &Words) -> CompareRow {
    let figures = COLUMNS.iter().filter(|column| column.sort != Sort::Text);
    let cell = |column: &'static Column| Some(Cell { heading: column.heading, figure: column.worded(row, words)? });
    CompareRow {
        title: row.title.clone(),
        cells: figures.filter_map(cell).collect(),
        hours: words.fixed(row.hours, 2),
        cost: words.rounded(row.cost),
        at_aim: at_price(row.price, &row.sold, best, words),
        at_market: row.market.zip(row.market_sold).map(|(price, sold)| at_price(price, &sold, best, words)),
    }
}

fn at_price(price: Decimal, sold: &Earned, best: Decimal, words: &Words) -> AtPrice {
    AtPrice {
        price: words.price(price),
        margin: words.rounded(sold.margin),
        percent: words.percent_in_column(sold.margin_percent),
        per_hour: words.rounded(sold.per_hour),
        bar: bar(sold.per_hour, best),
    }
}

fn bar(figure: Decimal, best: Decimal) -> u32 {
    if best <= Decimal::ZERO {
        return 0;
    }
    (figure.max(Decimal::ZERO) / best * Decimal::ONE_HUNDRED).round_dp(0).to_u32().unwrap_or_default()
}
