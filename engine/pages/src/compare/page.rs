//! A comparison in finished words.

use reeve_costing::money::{decimal, to_decimals};
use reeve_costing::rates::Rates;
use reeve_costing::whatif::{Change, Effect};
use reeve_office::{DesignRow, Earned};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde::Serialize;

use super::columns::{COLUMNS, Column, Sort};
use crate::graph;
use crate::phrases::say;
use crate::quote::Letterhead;
use crate::weigh::{change_words, effect_bars, price_kinds, price_stack};
use crate::words::Words;

/// What a comparison shows.
#[derive(Debug, Clone, Copy)]
pub struct Comparison<'a> {
    /// Each design in each size, in order.
    pub rows: &'a [DesignRow],
    /// What each input moves, of as many rows as have it drawn; the change is [`reeve_office::TENTH`].
    pub effects: &'a [Vec<Effect>],
    /// The column it is sorted by.
    pub key: &'a str,
    /// What is otherwise than in the shop.
    pub changes: &'a [Change],
    /// Whether charts are drawn.
    pub drawn: bool,
}

/// Designs beside one another in finished words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ComparePage {
    head: Letterhead,
    sorted: String,
    changes: Vec<String>,
    any_market: bool,
    rows: Vec<CompareRow>,
    /// Charts of the first rows, where they are drawn.
    charts: Option<Charts>,
}

/// A chart under its heading.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct Titled {
    title: String,
    graph: String,
}

/// Charts, as inline SVG.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct Charts {
    stacks: String,
    spots: String,
    effects: Vec<Titled>,
    /// Said where not all rows are drawn.
    remark: String,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct CompareRow {
    title: String,
    cells: Vec<CellView>,
    hours: String,
    cost: String,
    at_aim: PriceView,
    at_market: Option<PriceView>,
}

/// What it comes to at a price.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct PriceView {
    price: String,
    margin: String,
    percent: String,
    per_hour: String,
    /// A length from 0 to 100 for what an hour earns, the best design's being 100.
    bar: u32,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct CellView {
    heading: String,
    figure: String,
}

/// Words a comparison.
pub fn compare_page(shown: &Comparison<'_>, rates: &Rates, words: &Words) -> ComparePage {
    let rows = shown.rows;
    let sold = rows.iter().flat_map(|row| [Some(&row.sold), row.market_sold.as_ref()]).flatten();
    let best = sold.map(|sold| sold.per_hour).max().unwrap_or_default();
    let figures = COLUMNS.iter().filter(|column| column.sort != Sort::Text);
    let figures: Vec<_> = figures.map(|column| (column, (column.heading)(words))).collect();
    ComparePage {
        head: Letterhead::new(rates, &say!(words, "compare-title")),
        sorted: Column::find(shown.key).map(|column| (column.heading)(words)).unwrap_or_default(),
        changes: shown.changes.iter().map(|change| change_words(change, words)).collect(),
        any_market: rows.iter().any(|row| row.market.is_some()),
        rows: rows.iter().map(|row| compare_row(row, &figures, best, words)).collect(),
        charts: shown.drawn.then(|| charts(shown, words)),
    }
}

fn charts(shown: &Comparison<'_>, words: &Words) -> Charts {
    let rows = &shown.rows[..shown.effects.len()];
    let left = shown.rows.len() - rows.len();
    let effects = rows.iter().zip(shown.effects);
    Charts {
        stacks: graph::stacks(
            &say!(words, "compare-stacks"),
            &price_kinds(words),
            &rows.iter().map(|row| stack_of(row, words)).collect::<Vec<_>>(),
        ),
        spots: margin_against_hours(rows, words),
        effects: effects
            .map(|(row, effects)| Titled {
                title: row.title.clone(),
                graph: graph::effects(&row.title, &effect_bars(effects, words)),
            })
            .collect(),
        remark: if left == 0 {
            String::new()
        } else {
            say!(words, "compare-some-drawn", drawn = rows.len(), more = left)
        },
    }
}

fn plain(figure: Decimal) -> f64 {
    figure.to_f64().unwrap_or_default()
}

fn stack_of(row: &DesignRow, words: &Words) -> graph::Stack {
    let sold = row.earned();
    let income = row.cost + sold.fees + sold.margin;
    let parts = [row.material, row.labour, row.overhead, sold.fees, sold.margin];
    price_stack(&row.title, income, parts, words)
}

/// The margin of a bench hour against the hours: what is to the right and above is a long piece that pays.
fn margin_against_hours(rows: &[DesignRow], words: &Words) -> String {
    let an_hour = |row: &DesignRow| if row.hours.is_zero() { Decimal::ZERO } else { row.earned().margin / row.hours };
    let spots: Vec<graph::Spot> = rows
        .iter()
        .map(|row| graph::Spot { label: row.title.clone(), x: plain(row.hours), y: plain(an_hour(row)) })
        .collect();
    let ends = |of: fn(&graph::Spot) -> f64| {
        let all = || spots.iter().map(of);
        graph::ticks(all().fold(0.0, f64::min), all().fold(0.0, f64::max))
    };
    let axis = |label: String, ticks: Vec<f64>, worded: &dyn Fn(Decimal) -> String| graph::Axis {
        label,
        ticks: ticks.into_iter().map(|tick| (tick, worded(decimal(tick, 6)))).collect(),
    };
    let hours = axis(say!(words, "compare-hours"), ends(|spot| spot.x), &|tick| words.number(tick));
    let margin = axis(say!(words, "compare-margin-per-hour"), ends(|spot| spot.y), &|tick| words.price(tick));
    graph::spots(&say!(words, "compare-spots"), &hours, &margin, &spots)
}

fn compare_row(row: &DesignRow, figures: &[(&Column, String)], best: Decimal, words: &Words) -> CompareRow {
    let cell = |(column, heading): &(&Column, String)| {
        Some(CellView { heading: heading.clone(), figure: column.worded(row, words)? })
    };
    CompareRow {
        title: row.title.clone(),
        cells: figures.iter().filter_map(cell).collect(),
        hours: words.fixed(row.hours, 2),
        cost: words.rounded(row.cost),
        at_aim: at_price(row.price, &row.sold, best, words),
        at_market: row.market.zip(row.market_sold).map(|(price, sold)| at_price(price, &sold, best, words)),
    }
}

fn at_price(price: Decimal, sold: &Earned, best: Decimal, words: &Words) -> PriceView {
    PriceView {
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
    to_decimals(figure.max(Decimal::ZERO) / best * Decimal::ONE_HUNDRED, 0).to_u32().unwrap_or_default()
}
