//! The whole book as text: JSON Lines, for safe keeping and for other programs.
//!
//! The first line says what it is and its form. Every further line is one row: `{"in": "payment", "id": 4, "amount": "120.00", …}`,
//! `in` naming the table, the other names its columns as in the schema. Rows stand in the order in which they can be
//! read in again. What is personal stands in the rows of `client` alone.

use std::io::{BufRead, Write};

use rusqlite::types::{Value as Cell, ValueRef};
use rusqlite::{Row, Transaction, params_from_iter};
use serde_json::{Map, Value, json};

use crate::opening::Book;
use crate::schema::newest;
use crate::trouble::Trouble;

/// What tells the text from others.
const WHAT: &str = "reeve order book";

/// The tables, those that others refer to first, with their columns.
const TABLES: &[(&str, &[&str])] = &[
    ("client", &["id", "name", "address", "forgotten"]),
    ("commission", &["id", "reference", "title", "client", "year", "running", "number"]),
    (
        "entry",
        &[
            "id",
            "commission",
            "revision",
            "client",
            "day",
            "valid_until",
            "figures",
            "program",
            "catalogue",
            "changes",
            "maker_changes",
        ],
    ),
    ("page", &["entry", "name", "text"]),
    ("happening", &["id", "commission", "state", "day", "note"]),
    ("payment", &["id", "commission", "day", "amount", "note"]),
    ("work", &["id", "commission", "day", "step", "minutes", "note"]),
    ("cord_used", &["id", "commission", "day", "cord", "metres"]),
    ("bought", &["id", "commission", "day", "amount", "what"]),
    ("timer", &["one", "commission", "step", "started"]),
];

impl Book {
    /// Writes everything as JSON Lines.
    ///
    /// # Errors
    /// [`Trouble`] when the book can't be read or the text can't be written.
    pub fn export(&self, to: &mut impl Write) -> Result<usize, Trouble> {
        let refused = self.refused();
        let unwritten = |error| Trouble::File(self.path.clone(), error);
        // One reading of all tables: what is entered meanwhile is in none of them.
        let read = self.db.unchecked_transaction().map_err(&refused)?;
        writeln!(to, "{}", json!({ "book": WHAT, "form": newest() })).map_err(unwritten)?;
        let mut count = 0;
        for (table, columns) in TABLES {
            let all = format!(
                "SELECT {} FROM {table} ORDER BY {}",
                columns.join(", "),
                columns[..columns.len().min(2)].join(", ")
            );
            let mut asked = read.prepare(&all).map_err(&refused)?;
            let mut rows = asked.query([]).map_err(&refused)?;
            while let Some(row) = rows.next().map_err(&refused)? {
                writeln!(to, "{}", line(table, columns, row).map_err(&refused)?).map_err(unwritten)?;
                count += 1;
            }
        }
        Ok(count)
    }

    /// Reads everything from JSON Lines into an empty book; all of it or nothing.
    ///
    /// # Errors
    /// [`Trouble`] when the book is not empty, or a line is not what [`Book::export`] writes.
    pub fn import(&mut self, from: impl BufRead) -> Result<usize, Trouble> {
        if self.ask::<i64>("SELECT count(*) FROM commission")? > 0 {
            return Err(Trouble::NotEmpty(self.path.clone()));
        }
        let refused = self.refused();
        let write = self.write()?;
        let mut count = 0;
        for (at, text) in from.lines().enumerate() {
            let wrong = |why: String| Trouble::Line(at + 1, why);
            let text = text.map_err(|error| wrong(error.to_string()))?;
            let value: Value = serde_json::from_str(&text).map_err(|error| wrong(error.to_string()))?;
            if at == 0 {
                head(&value).map_err(wrong)?;
                continue;
            }
            read_in(&write, &value).map_err(wrong)?;
            count += 1;
        }
        if count == 0 {
            return Err(Trouble::Line(1, "the text ends before anything was said".to_owned()));
        }
        write.commit().map_err(&refused)?;
        Ok(count)
    }
}

fn line(table: &str, columns: &[&str], row: &Row<'_>) -> rusqlite::Result<Value> {
    let mut fields = Map::new();
    fields.insert("in".to_owned(), Value::from(table));
    for (at, column) in columns.iter().enumerate() {
        let value = match row.get_ref(at)? {
            ValueRef::Integer(number) => Value::from(number),
            ValueRef::Real(number) => Value::from(number),
            ValueRef::Text(text) => Value::from(String::from_utf8_lossy(text).into_owned()),
            ValueRef::Null | ValueRef::Blob(_) => Value::Null,
        };
        fields.insert((*column).to_owned(), value);
    }
    Ok(Value::Object(fields))
}

fn head(value: &Value) -> Result<(), String> {
    if value["book"] != WHAT {
        return Err("it is not the text of an order book".to_owned());
    }
    match value["form"].as_i64() {
        Some(form) if form <= newest() => Ok(()),
        Some(form) => Err(format!("it is of form {form}, and this program knows up to form {}", newest())),
        None => Err("it says no form".to_owned()),
    }
}

fn read_in(write: &Transaction<'_>, value: &Value) -> Result<(), String> {
    let fields = value.as_object().ok_or("it is not an object")?;
    let table = fields.get("in").and_then(Value::as_str).ok_or("it does not say where it goes: `in` is missing")?;
    let (table, columns) = TABLES.iter().find(|(known, _)| *known == table).ok_or(format!("`{table}` is not known"))?;
    if let Some(stray) = fields.keys().find(|key| *key != "in" && !columns.contains(&key.as_str())) {
        return Err(format!("`{table}` has no `{stray}`"));
    }
    let cells: Vec<Cell> = columns.iter().map(|column| cell(fields.get(*column))).collect();
    let places: Vec<String> = (1..=columns.len()).map(|at| format!("?{at}")).collect();
    let add = format!("INSERT INTO {table} ({}) VALUES ({})", columns.join(", "), places.join(", "));
    write.execute(&add, params_from_iter(cells)).map(|_| ()).map_err(|error| match error {
        rusqlite::Error::SqliteFailure(_, Some(why)) => why,
        other => other.to_string(),
    })
}

fn cell(value: Option<&Value>) -> Cell {
    match value {
        Some(Value::Number(number)) => match (number.as_i64(), number.as_f64()) {
            (Some(whole), _) => Cell::Integer(whole),
            (None, Some(real)) => Cell::Real(real),
            (None, None) => Cell::Null,
        },
        Some(Value::String(text)) => Cell::Text(text.clone()),
        _ => Cell::Null,
    }
}
