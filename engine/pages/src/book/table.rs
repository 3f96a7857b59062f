//! What all pages of the book are made of: facts, and tables whose columns have a width in text.

use reeve_costing::rates::Rates;
use serde::Serialize;

use crate::quote::{Letterhead, Row};

/// A page of the order book in finished words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct BookPage {
    pub(super) head: Letterhead,
    pub(super) kind: &'static str,
    pub(super) facts: Vec<Row>,
    pub(super) remarks: Vec<String>,
    pub(super) tables: Vec<TextTable>,
    /// Said beneath all tables.
    pub(super) after: Vec<String>,
}

impl BookPage {
    pub(super) fn new(kind: &'static str, title: &str, rates: &Rates) -> Self {
        Self {
            head: Letterhead::new(rates, title),
            kind,
            facts: Vec::new(),
            remarks: Vec::new(),
            tables: Vec::new(),
            after: Vec::new(),
        }
    }

    pub(super) fn fact(&mut self, text: &str, words: impl Into<String>) {
        self.facts.push(Row::new(text, words));
    }
}

/// A table.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub(super) struct TextTable {
    title: &'static str,
    columns: Vec<TextColumn>,
    /// The widths of the columns in text, those of figures below zero.
    widths: String,
    rows: Vec<TableRow>,
    /// Said in place of rows.
    empty: &'static str,
}

/// A column: its heading, its width in text, and whether it holds figures.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub(super) struct TextColumn {
    heading: &'static str,
    width: usize,
    figure: bool,
}

pub(super) const fn words(heading: &'static str, width: usize) -> TextColumn {
    TextColumn { heading, width, figure: false }
}

pub(super) const fn figures(heading: &'static str, width: usize) -> TextColumn {
    TextColumn { heading, width, figure: true }
}

/// A cell for each column. Nothing else: a long list is long enough.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct TableRow {
    cells: Vec<String>,
    below: String,
    strong: bool,
    /// Undone: it stands there, and counts no more.
    struck: bool,
}

impl TextTable {
    pub(super) fn new(title: &'static str, columns: &[TextColumn], empty: &'static str) -> Self {
        let width = |column: &TextColumn| format!("{}{}", if column.figure { "-" } else { "" }, column.width);
        let widths = columns.iter().map(width).collect::<Vec<_>>().join(" ");
        Self { title, columns: columns.to_vec(), widths, rows: Vec::new(), empty }
    }

    /// A row, with words beneath it.
    pub(super) fn row(&mut self, cells: Vec<String>, below: impl Into<String>) {
        self.rows.push(TableRow { cells, below: below.into(), strong: false, struck: false });
        self.empty = "";
    }

    /// A row that was undone: struck out, with the reason beneath it.
    pub(super) fn struck(&mut self, cells: Vec<String>, below: impl Into<String>) {
        self.row(cells, below);
        if let Some(row) = self.rows.last_mut() {
            row.struck = true;
        }
    }

    /// A row that the eye should find.
    pub(super) fn strong(&mut self, cells: Vec<String>) {
        self.row(cells, "");
        if let Some(row) = self.rows.last_mut() {
            row.strong = true;
        }
    }
}
