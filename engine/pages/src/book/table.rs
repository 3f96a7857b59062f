//! What all pages of the book are made of: facts, and tables whose columns have a width in text.

use reeve_costing::rates::Rates;
use serde::Serialize;

use crate::quote::{Letterhead, Row};

/// A page of the order book in finished words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct BookPage {
    pub(super) head: Letterhead,
    pub(super) kind: String,
    pub(super) facts: Vec<Row>,
    pub(super) remarks: Vec<String>,
    pub(super) tables: Vec<TextTable>,
    /// Said beneath all tables.
    pub(super) after: Vec<String>,
}

impl BookPage {
    pub(super) fn new(kind: String, title: &str, rates: &Rates) -> Self {
        Self {
            head: Letterhead::new(rates, title),
            kind,
            facts: Vec::new(),
            remarks: Vec::new(),
            tables: Vec::new(),
            after: Vec::new(),
        }
    }

    pub(super) fn fact(&mut self, text: String, words: impl Into<String>) {
        self.facts.push(Row::new(text, words));
    }
}

/// A table.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub(super) struct TextTable {
    title: String,
    columns: Vec<TextColumn>,
    /// The widths of the columns in text, those of figures below zero.
    widths: String,
    rows: Vec<TableRow>,
    /// Said in place of rows.
    empty: String,
}

/// A column: its heading, its width in text, and whether it holds figures.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub(super) struct TextColumn {
    heading: String,
    width: usize,
    figure: bool,
}

pub(super) fn text(heading: String, width: usize) -> TextColumn {
    TextColumn { heading, width, figure: false }
}

pub(super) fn figures(heading: String, width: usize) -> TextColumn {
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
    pub(super) fn new(title: String, columns: Vec<TextColumn>, empty: String) -> Self {
        let width = |column: &TextColumn| format!("{}{}", if column.figure { "-" } else { "" }, column.width);
        let widths = columns.iter().map(width).collect::<Vec<_>>().join(" ");
        Self { title, columns, widths, rows: Vec::new(), empty }
    }

    /// A row, with words beneath it.
    pub(super) fn row(&mut self, cells: Vec<String>, below: impl Into<String>) {
        self.rows.push(TableRow { cells, below: below.into(), strong: false, struck: false });
        self.empty.clear();
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
