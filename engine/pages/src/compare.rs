//! Designs beside one another: what each needs, costs, brings in and earns.

use std::cmp::Ordering;

use reeve_costing::pricing::Alone;
use reeve_costing::rates::Rates;
use reeve_measure::count;
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use schemars::JsonSchema;
use serde::Serialize;

use crate::figures::{FORM, cents};
use crate::quote::Head;
use crate::words::Words;

/// A design, and what one of it comes to alone. Amounts are decimal strings in the shop's currency, without tax
/// but for the two prices, which stand as the shop shows them.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct DesignRow {
    /// The design's file stem.
    pub design: String,
    /// As written on pages.
    pub title: String,
    /// Cord cut, in metres.
    pub cord_m: Decimal,
    /// Put-ups bought for one alone.
    pub put_ups: Decimal,
    /// Mass of the finished piece, in grams.
    pub weight_g: Decimal,
    /// Bench hours.
    pub hours: Decimal,
    /// Cord, rings, dowels, beads and what tasks use up.
    pub material: Decimal,
    /// Labour.
    pub labour: Decimal,
    /// Overhead.
    pub overhead: Decimal,
    /// Everything it costs.
    pub cost: Decimal,
    /// Price of one: by the shop's aim, or as given.
    pub price: Decimal,
    /// The lowest price that still pays the wage.
    pub lowest_price: Decimal,
    /// Fees of selling one.
    pub fees: Decimal,
    /// What remains after cost and fees.
    pub margin: Decimal,
    /// The same in per cent of the price without tax.
    pub margin_percent: Decimal,
    /// What a bench hour earns: the margin and the labour, by hours.
    pub per_hour: Decimal,
    /// Whether the price was given.
    pub price_given: bool,
}

/// Designs beside one another, for other programs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct CompareJson {
    /// Version of this form.
    pub form: u32,
    /// Three letters of ISO 4217.
    pub currency: String,
    /// Each design.
    pub designs: Vec<DesignRow>,
}

/// How a column's figures are worded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Sort {
    Text,
    Money,
    Metres,
    Grams,
    Hours,
    Count,
    Percent,
}

/// A column: the word it is sorted by, its heading, how it is worded and what it holds.
struct Column {
    key: &'static str,
    heading: &'static str,
    sort: Sort,
    figure: fn(&DesignRow) -> Decimal,
}

const fn column(key: &'static str, heading: &'static str, sort: Sort, figure: fn(&DesignRow) -> Decimal) -> Column {
    Column { key, heading, sort, figure }
}

/// Every column, in order; the list from which page, table, help and sorting derive.
const COLUMNS: &[Column] = &[
    column("design", "Design", Sort::Text, |_| Decimal::ZERO),
    column("cord", "Cord", Sort::Metres, |row| row.cord_m),
    column("put-ups", "Put-ups", Sort::Count, |row| row.put_ups),
    column("weight", "Weight", Sort::Grams, |row| row.weight_g),
    column("hours", "Hours", Sort::Hours, |row| row.hours),
    column("material", "Material", Sort::Money, |row| row.material),
    column("labour", "Labour", Sort::Money, |row| row.labour),
    column("overhead", "Overhead", Sort::Money, |row| row.overhead),
    column("cost", "Cost", Sort::Money, |row| row.cost),
    column("lowest", "Lowest price", Sort::Money, |row| row.lowest_price),
    column("price", "Price", Sort::Money, |row| row.price),
    column("fees", "Fees", Sort::Money, |row| row.fees),
    column("margin", "Margin", Sort::Money, |row| row.margin),
    column("margin-percent", "Margin, %", Sort::Percent, |row| row.margin_percent),
    column("per-hour", "Earnings an hour", Sort::Money, |row| row.per_hour),
];

/// The words that a comparison can be sorted by.
pub fn sort_words() -> impl Iterator<Item = &'static str> {
    COLUMNS.iter().map(|column| column.key)
}

/// One design's row.
pub fn design_row(design: &str, title: &str, alone: &Alone) -> DesignRow {
    let outcome = &alone.outcome;
    let cord_mm: u64 =
        alone.job.items.iter().flat_map(|item| &item.take_off.cords).map(|line| line.cut_mm * line.count).sum();
    let grams: f64 = alone.job.items.iter().map(|item| item.take_off.weight.as_g()).sum();
    let put_ups: u64 = alone.job.cords.iter().flat_map(|bought| &bought.put_ups).map(|(_, count)| *count).sum();
    DesignRow {
        design: design.to_owned(),
        title: title.to_owned(),
        cord_m: Decimal::from_f64(count(cord_mm) / 1000.0).unwrap_or_default().round_dp(2),
        put_ups: Decimal::from(put_ups),
        weight_g: Decimal::from_f64(grams).unwrap_or_default().round_dp(0),
        hours: outcome.cost.hours,
        material: cents(outcome.cost.material() + outcome.cost.other),
        labour: cents(outcome.cost.labour()),
        overhead: cents(outcome.cost.overhead),
        cost: cents(outcome.cost.total()),
        price: alone.price.steps.unit,
        lowest_price: alone.lowest,
        fees: cents(outcome.fees),
        margin: cents(outcome.margin),
        margin_percent: cents(outcome.margin_percent.unwrap_or_default()),
        per_hour: cents(outcome.per_hour.unwrap_or_default()),
        price_given: alone.price.given,
    }
}

/// Sorts rows by a column: words from a to z, figures from the greatest down; equal ones by design.
pub fn sort_rows(rows: &mut [DesignRow], key: &str) {
    let column = COLUMNS.iter().find(|column| column.key == key);
    rows.sort_by(|a, b| {
        let by_figure = column.map_or(Ordering::Equal, |column| (column.figure)(b).cmp(&(column.figure)(a)));
        by_figure.then_with(|| a.design.cmp(&b.design))
    });
}

/// Designs beside one another, for other programs.
pub fn compare_json(rows: &[DesignRow], rates: &Rates) -> CompareJson {
    CompareJson { form: FORM, currency: rates.currency.code().to_owned(), designs: rows.to_vec() }
}

/// Designs beside one another as comma-separated values (RFC 4180), plain figures beneath the columns' words.
///
/// # Errors
/// When the values can't be written, which a table in memory never does.
pub fn compare_csv(rows: &[DesignRow]) -> Result<String, csv::Error> {
    let mut table = csv::Writer::from_writer(Vec::new());
    table.write_record(sort_words())?;
    for row in rows {
        table.write_record(COLUMNS.iter().map(|column| match column.sort {
            Sort::Text => row.design.clone(),
            _ => (column.figure)(row).to_string(),
        }))?;
    }
    let bytes = table.into_inner().map_err(csv::IntoInnerError::into_error)?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

/// Designs beside one another in finished words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ComparePage {
    head: Head,
    sorted: String,
    rows: Vec<CompareRow>,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct CompareRow {
    title: String,
    cells: Vec<Cell>,
    hours: String,
    cost: String,
    price: String,
    margin: String,
    margin_percent: String,
    per_hour: String,
    /// A length from 0 to 100 for what an hour earns, the best design's being 100.
    bar: u32,
    given: bool,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct Cell {
    heading: &'static str,
    figure: String,
}

/// Words a comparison.
pub fn compare_page(rows: &[DesignRow], key: &str, rates: &Rates, words: &Words) -> ComparePage {
    let best = rows.iter().map(|row| row.per_hour).max().unwrap_or_default();
    let figures = || COLUMNS.iter().filter(|column| column.sort != Sort::Text);
    let heading = COLUMNS.iter().find(|column| column.key == key).map_or("", |column| column.heading);
    ComparePage {
        head: Head::new(rates, "Designs beside one another"),
        sorted: heading.to_lowercase(),
        rows: rows
            .iter()
            .map(|row| CompareRow {
                title: row.title.clone(),
                cells: figures()
                    .map(|column| Cell { heading: column.heading, figure: worded(column, row, words) })
                    .collect(),
                hours: words.fixed(row.hours, 2),
                cost: words.rounded(row.cost),
                price: words.price(row.price),
                margin: words.rounded(row.margin),
                margin_percent: words.percent_in_column(row.margin_percent),
                per_hour: words.rounded(row.per_hour),
                bar: bar(row.per_hour, best),
                given: row.price_given,
            })
            .collect(),
    }
}

fn worded(column: &Column, row: &DesignRow, words: &Words) -> String {
    let figure = (column.figure)(row);
    match column.sort {
        Sort::Text => row.title.clone(),
        Sort::Money => words.rounded(figure),
        Sort::Metres => format!("{}\u{a0}m", words.number(figure)),
        Sort::Grams => format!("{}\u{a0}g", words.number(figure)),
        Sort::Hours => words.hours(figure),
        Sort::Count => words.number(figure),
        Sort::Percent => words.percent_in_column(figure),
    }
}

fn bar(figure: Decimal, best: Decimal) -> u32 {
    use rust_decimal::prelude::ToPrimitive;
    if best <= Decimal::ZERO {
        return 0;
    }
    (figure.max(Decimal::ZERO) / best * Decimal::ONE_HUNDRED).round_dp(0).to_u32().unwrap_or_default()
}
