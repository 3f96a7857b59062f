//! The columns of a comparison: what each is called, holds and is sorted and chosen by.

use std::cmp::Ordering;
use std::fmt;
use std::str::FromStr;

use reeve_measure::Remedied;
use reeve_office::DesignRow;
use rust_decimal::Decimal;

use crate::phrases::say;
use crate::spreadsheet::Spreadsheet;
use crate::words::Words;

/// How a column's figures are worded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Sort {
    Text,
    Money,
    Metres,
    Grams,
    Hours,
    Count,
    Percent,
}

/// A column: the word it is called by, its heading, how it is worded and what it holds.
pub(super) struct Column {
    pub(super) key: &'static str,
    pub(super) heading: fn(&Words) -> String,
    pub(super) sort: Sort,
    figure: fn(&DesignRow) -> Option<Decimal>,
}

const fn column(
    key: &'static str,
    heading: fn(&Words) -> String,
    sort: Sort,
    figure: fn(&DesignRow) -> Option<Decimal>,
) -> Column {
    Column { key, heading, sort, figure }
}

/// Every column, in order; the list from which page, table, help, sorting and choosing derive.
pub(super) const COLUMNS: &[Column] = &[
    column("design", |words| say!(words, "column-design"), Sort::Text, |_| None),
    column("size", |words| say!(words, "column-size"), Sort::Text, |_| None),
    column("cord", |words| say!(words, "column-cord"), Sort::Metres, |row| Some(row.cord_m)),
    column("put-ups", |words| say!(words, "column-put-ups"), Sort::Count, |row| Some(row.put_ups)),
    column("weight", |words| say!(words, "column-weight"), Sort::Grams, |row| Some(row.weight_g)),
    column("hours", |words| say!(words, "column-hours"), Sort::Hours, |row| Some(row.hours)),
    column("material", |words| say!(words, "column-material"), Sort::Money, |row| Some(row.material)),
    column("labour", |words| say!(words, "column-labour"), Sort::Money, |row| Some(row.labour)),
    column("overhead", |words| say!(words, "column-overhead"), Sort::Money, |row| Some(row.overhead)),
    column("cost", |words| say!(words, "column-cost"), Sort::Money, |row| Some(row.cost)),
    column("lowest", |words| say!(words, "column-lowest"), Sort::Money, |row| Some(row.lowest_price)),
    column("price", |words| say!(words, "column-price"), Sort::Money, |row| Some(row.price)),
    column("before-fees", |words| say!(words, "column-before-fees"), Sort::Money, |row| Some(row.sold.before_fees)),
    column("fees", |words| say!(words, "column-fees"), Sort::Money, |row| Some(row.sold.fees)),
    column("margin", |words| say!(words, "column-margin"), Sort::Money, |row| Some(row.sold.margin)),
    column(
        "margin-percent",
        |words| say!(words, "column-margin-percent"),
        Sort::Percent,
        |row| Some(row.sold.margin_percent),
    ),
    column("per-hour", |words| say!(words, "column-per-hour"), Sort::Money, |row| Some(row.sold.per_hour)),
    column(
        "contribution",
        |words| say!(words, "column-contribution"),
        Sort::Money,
        |row| Some(row.earned().contribution_per_hour),
    ),
    column("market", |words| say!(words, "column-market"), Sort::Money, |row| row.market),
    column(
        "market-margin",
        |words| say!(words, "column-market-margin"),
        Sort::Money,
        |row| row.market_sold.map(|sold| sold.margin),
    ),
    column(
        "market-percent",
        |words| say!(words, "column-market-percent"),
        Sort::Percent,
        |row| row.market_sold.map(|sold| sold.margin_percent),
    ),
    column(
        "market-per-hour",
        |words| say!(words, "column-market-per-hour"),
        Sort::Money,
        |row| row.market_sold.map(|sold| sold.per_hour),
    ),
    column("weekly", |words| say!(words, "column-weekly"), Sort::Count, |row| row.weekly.map(Decimal::from)),
];

impl Column {
    pub(super) fn find(key: &str) -> Option<&'static Self> {
        COLUMNS.iter().find(|column| column.key == key)
    }

    /// What it holds of a row, in words; nothing where the row has none.
    pub(super) fn worded(&self, row: &DesignRow, words: &Words) -> Option<String> {
        if self.sort == Sort::Text {
            return self.text(row).map(str::to_owned);
        }
        let figure = (self.figure)(row)?;
        Some(match self.sort {
            Sort::Text => String::new(),
            Sort::Money => words.rounded(figure),
            Sort::Metres => words.metres(figure),
            Sort::Grams => say!(words, "grams", figure = words.number(figure)),
            Sort::Hours => words.hours(figure),
            Sort::Count => words.number(figure),
            Sort::Percent => words.percent_in_column(figure),
        })
    }

    fn text<'a>(&self, row: &'a DesignRow) -> Option<&'a str> {
        if self.key == "design" { Some(&row.design) } else { row.size.as_deref() }
    }
}

/// The words of all columns.
pub fn column_words() -> impl Iterator<Item = &'static str> {
    COLUMNS.iter().map(|column| column.key)
}

/// Sorts rows by a column: words from a to z, figures from the greatest down, none last; equal ones by design and size.
pub fn sort_rows(rows: &mut [DesignRow], key: &str) {
    let column = Column::find(key);
    rows.sort_by(|a, b| {
        let by = column.map_or(Ordering::Equal, |column| match column.sort {
            Sort::Text => column.text(a).cmp(&column.text(b)),
            _ => (column.figure)(b).cmp(&(column.figure)(a)),
        });
        by.then_with(|| (&a.design, &a.size).cmp(&(&b.design, &b.size)))
    });
}

/// What a row must be like to be shown: `hours<3`, `per-hour>=30`, `design=curlew-hanger`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Condition {
    key: &'static str,
    wanted: Wanted,
}

#[derive(Debug, Clone, PartialEq, Eq)]
enum Wanted {
    Word(String),
    /// The orders of figure and limit that are wanted.
    Figure(&'static [Ordering], Decimal),
}

/// Why a word is no condition.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ConditionError(String);

impl fmt::Display for ConditionError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for ConditionError {}

impl Remedied for ConditionError {
    fn remedy(&self) -> String {
        let columns = column_words().collect::<Vec<_>>().join(", ");
        format!("a column, a sign and a figure, such as hours<3; columns: {columns}")
    }
}

/// The signs, longer ones first.
const SIGNS: &[(&str, &[Ordering])] = &[
    ("<=", &[Ordering::Less, Ordering::Equal]),
    (">=", &[Ordering::Greater, Ordering::Equal]),
    ("<", &[Ordering::Less]),
    (">", &[Ordering::Greater]),
    ("=", &[Ordering::Equal]),
];

impl FromStr for Condition {
    type Err = ConditionError;

    fn from_str(word: &str) -> Result<Self, ConditionError> {
        let no = |why: String| ConditionError(format!("`{word}` {why}"));
        let cut = |(sign, orders): &(&'static str, &'static [Ordering])| {
            word.split_once(sign).map(|(key, limit)| (key.trim(), *orders, limit.trim()))
        };
        let Some((key, orders, limit)) = SIGNS.iter().find_map(cut) else {
            return Err(no("has no <, <=, =, >= or >".to_owned()));
        };
        let column = Column::find(key).ok_or_else(|| no(format!("names no column `{key}`")))?;
        let wanted = match column.sort {
            Sort::Text if orders == [Ordering::Equal] => Wanted::Word(limit.to_owned()),
            Sort::Text => return Err(no(format!("compares words: write {key}={limit}"))),
            _ => {
                let figure = limit.trim_end_matches('%').trim().parse();
                Wanted::Figure(orders, figure.map_err(|_| no(format!("has no figure after {key}")))?)
            }
        };
        Ok(Self { key: column.key, wanted })
    }
}

impl Condition {
    /// Whether a row is wanted; one that has no such figure is not.
    pub fn holds(&self, row: &DesignRow) -> bool {
        let Some(column) = Column::find(self.key) else { return false };
        match &self.wanted {
            Wanted::Word(word) => column.text(row).unwrap_or_default() == word,
            Wanted::Figure(orders, limit) => {
                (column.figure)(row).is_some_and(|figure| orders.contains(&figure.cmp(limit)))
            }
        }
    }
}

/// Designs beside one another as comma-separated values (RFC 4180), plain figures beneath the columns' words.
///
/// # Errors
/// When the values can't be written, which a table in memory never does.
pub fn compare_csv(rows: &[DesignRow]) -> Result<String, csv::Error> {
    let mut table = Spreadsheet::new(column_words())?;
    for row in rows {
        table.row(COLUMNS.iter().map(|column| match column.sort {
            Sort::Text => column.text(row).unwrap_or_default().to_owned(),
            _ => (column.figure)(row).map(|figure| figure.to_string()).unwrap_or_default(),
        }))?;
    }
    table.text()
}
