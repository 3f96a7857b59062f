//! The whole book as text: JSON Lines, for safe keeping and for other programs.
//!
//! The first line says what it is, its form, how many seals it has and the last one's link. Every further line is one row:
//! `{"in": "payment", "id": 4, "amount": "120.00", …}`, `in` naming the table, the other names its columns as in the schema.
//! Rows stand in the order in which they can be read in again, the seals last. What is personal stands in the rows of
//! `client` alone.

use std::collections::HashMap;
use std::io::{BufRead, Write};

use rusqlite::types::{Value as Cell, ValueRef};
use rusqlite::{Row, Transaction, params_from_iter};
use serde_json::{Map, Value, json};

use crate::error::BookError;
use crate::opening::Book;
use crate::schema::{SEALED_SINCE, newest};
use crate::seal::{Chain, Seal, Seals, last, seal_found, set_last, values};
use crate::table::{BookTable, SEALS, TABLES};

/// What tells the text from others.
const WHAT: &str = "reeve order book";

/// What was read in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ReadIn {
    /// How many lines.
    pub lines: usize,
    /// Whether the text was of a form without seals, so that nothing could be held against them.
    pub without_seals: bool,
}

impl Book {
    /// Writes everything as JSON Lines.
    ///
    /// # Errors
    /// [`BookError`] when the book can't be read or the text can't be written.
    pub fn export(&self, to: &mut impl Write) -> Result<usize, BookError> {
        let refused = self.refused();
        let unwritten = |error| BookError::File(self.path.clone(), error);
        // One reading of all tables: what is entered meanwhile is in none of them.
        let read = self.db.unchecked_transaction().map_err(&refused)?;
        let seals = last(&read).map_err(&refused)?;
        let head = json!({ "book": WHAT, "form": newest(), "seals": seals.count, "link": seals.link });
        writeln!(to, "{head}").map_err(unwritten)?;
        let mut count = 0;
        for table in TABLES.iter().chain([&SEALS]) {
            let mut asked = read.prepare(&table.all()).map_err(&refused)?;
            let mut rows = asked.query([]).map_err(&refused)?;
            while let Some(row) = rows.next().map_err(&refused)? {
                writeln!(to, "{}", line(table, row).map_err(&refused)?).map_err(unwritten)?;
                count += 1;
            }
        }
        Ok(count)
    }

    /// Reads everything from JSON Lines into an empty book; all of it or nothing. Every row is held against its seal.
    ///
    /// # Errors
    /// [`BookError`] when the book is not empty, or a line is not what [`Book::export`] wrote: the line, and its field.
    pub fn import(&mut self, from: impl BufRead) -> Result<ReadIn, BookError> {
        if self.ask::<i64>("SELECT count(*) FROM commission")? > 0 {
            return Err(BookError::NotEmpty(self.path.clone()));
        }
        let refused = self.refused();
        let write = self.write()?;
        let mut reading = Reading::default();
        for (at, text) in (1..).zip(from.lines()) {
            let wrong = |why: String| BookError::Line(at, why);
            let text = text.map_err(|error| wrong(error.to_string()))?;
            let value: Value = serde_json::from_str(&text).map_err(|error| wrong(error.to_string()))?;
            reading.take(&write, at, &value).map_err(wrong)?;
        }
        let read = reading.end(&write)?;
        write.commit().map_err(&refused)?;
        Ok(read)
    }
}

fn line(table: &BookTable, row: &Row<'_>) -> rusqlite::Result<Value> {
    let mut fields = Map::new();
    fields.insert("in".to_owned(), Value::from(table.name));
    for (at, column) in table.columns.iter().enumerate() {
        let value = match row.get_ref(at)? {
            ValueRef::Integer(number) => Value::from(number),
            ValueRef::Real(number) => Value::from(number),
            ValueRef::Text(text) => Value::from(String::from_utf8_lossy(text).into_owned()),
            ValueRef::Null | ValueRef::Blob(_) => Value::Null,
        };
        fields.insert(column.name.to_owned(), value);
    }
    Ok(Value::Object(fields))
}

/// A text on its way into the book.
#[derive(Default)]
struct Reading {
    form: i64,
    /// What the first line says of the seals.
    told: Seals,
    chain: Chain,
    /// Where each row stands, by table and key.
    rows: HashMap<(&'static str, String), usize>,
    lines: usize,
}

impl Reading {
    fn take(&mut self, write: &Transaction<'_>, at: usize, value: &Value) -> Result<(), String> {
        self.lines = at;
        if at == 1 {
            return self.head(value);
        }
        let fields = value.as_object().ok_or("it is not an object")?;
        let name = fields.get("in").and_then(Value::as_str).ok_or("it does not say where it goes: `in` is missing")?;
        let sealed = self.form >= SEALED_SINCE;
        let known = TABLES.iter().chain(sealed.then_some(&SEALS)).find(|table| table.name == name);
        let table = known.ok_or(format!("`{name}` is not known"))?;
        let cells = cells(table, fields)?;
        read_in(write, table, &cells)?;
        let value = |at: usize| cells.get(at).map_or(ValueRef::Null, ValueRef::from);
        if table.name == SEALS.name {
            return self.take_seal(write, &cells);
        }
        self.rows.insert((table.name, table.key(value)), at);
        Ok(())
    }

    fn head(&mut self, value: &Value) -> Result<(), String> {
        if value["book"] != WHAT {
            return Err("it is not the text of an order book".to_owned());
        }
        self.form = match value["form"].as_i64() {
            Some(form) if (1..=newest()).contains(&form) => form,
            Some(form) => return Err(format!("it is of form {form}, and this program knows up to form {}", newest())),
            None => return Err("it says no form".to_owned()),
        };
        if self.form >= SEALED_SINCE {
            let link = value["link"].as_str().ok_or("link: it is missing")?.to_owned();
            self.told = Seals { count: value["seals"].as_u64().ok_or("seals: it is missing")?, link };
        }
        Ok(())
    }

    fn take_seal(&mut self, write: &Transaction<'_>, cells: &[Cell]) -> Result<(), String> {
        let text = |at: usize| match cells.get(at) {
            Some(Cell::Text(text)) => Some(text.clone()),
            _ => None,
        };
        let nth = if let Some(Cell::Integer(nth)) = cells.first() { *nth } else { 0 };
        let word = |at| text(at).unwrap_or_default();
        let seal =
            Seal { nth, act: word(1), what: word(2), key: word(3), salt: text(4), digest: text(5), link: word(6) };
        let (nth, link) = (seal.nth, seal.link.clone());
        self.chain.take(seal)?;
        set_last(write, nth, &link).map_err(|error| error.to_string())
    }

    /// Holds every row against its seal.
    fn end(mut self, write: &Transaction<'_>) -> Result<ReadIn, BookError> {
        let wrong = |error: rusqlite::Error| BookError::Damaged(error.to_string());
        if self.lines < 2 && self.told.count == 0 {
            return Err(BookError::Line(1, "the text ends before anything was said".to_owned()));
        }
        let read = ReadIn { lines: self.lines - 1, without_seals: self.form < SEALED_SINCE };
        if read.without_seals {
            seal_found(write).map_err(wrong)?;
            return Ok(read);
        }
        for table in TABLES {
            let mut asked = write.prepare(&table.all()).map_err(wrong)?;
            let mut rows = asked.query([]).map_err(wrong)?;
            while let Some(row) = rows.next().map_err(wrong)? {
                let met = self.chain.meet(table, values(row));
                let line = || self.rows.get(&(table.name, table.key(values(row)))).copied().unwrap_or(self.lines);
                met.map_err(|why| BookError::Line(line(), why))?;
            }
        }
        if let Some(seal) = self.chain.missed().min_by_key(|seal| seal.nth) {
            let why = format!("{} {} is missing: seal {} is of it", seal.what, seal.key, seal.nth);
            return Err(BookError::Line(self.lines, why));
        }
        if *self.chain.last() != self.told {
            let why = format!(
                "the text ends with seal {}, and its first line says {}: something was cut off",
                self.chain.last().word(),
                self.told.word()
            );
            return Err(BookError::Line(self.lines, why));
        }
        Ok(read)
    }
}

/// The values of a line, each one that its column can hold.
fn cells(table: &BookTable, fields: &Map<String, Value>) -> Result<Vec<Cell>, String> {
    let known = |key: &str| key == "in" || table.columns.iter().any(|column| column.name == key);
    if let Some(stray) = fields.keys().find(|key| !known(key)) {
        return Err(format!("`{}` has no `{stray}`", table.name));
    }
    let read = |column: &crate::table::TableColumn| {
        let cell = cell(fields.get(column.name), column.is_real()).map_err(|why| format!("{}: {why}", column.name))?;
        column.judge(ValueRef::from(&cell)).map(|()| cell)
    };
    table.columns.iter().map(read).collect()
}

fn cell(value: Option<&Value>, real: bool) -> Result<Cell, String> {
    Ok(match value {
        None | Some(Value::Null) => Cell::Null,
        Some(Value::String(text)) => Cell::Text(text.clone()),
        Some(Value::Number(number)) => match (number.as_i64(), number.as_f64()) {
            (Some(whole), _) if !real => Cell::Integer(whole),
            (_, Some(number)) => Cell::Real(number),
            _ => return Err(format!("`{number}` is too large a number")),
        },
        Some(other) => return Err(format!("`{other}` is neither text nor a number")),
    })
}

fn read_in(write: &Transaction<'_>, table: &BookTable, cells: &[Cell]) -> Result<(), String> {
    let places: Vec<String> = (1..=cells.len()).map(|at| format!("?{at}")).collect();
    let add = format!("INSERT INTO {} ({}) VALUES ({})", table.name, table.names(), places.join(", "));
    let added = write.prepare_cached(&add).and_then(|mut add| add.execute(params_from_iter(cells)));
    added.map(|_| ()).map_err(|error| match error {
        rusqlite::Error::SqliteFailure(_, Some(why)) => match why.split_once(" constraint failed") {
            Some(("UNIQUE", of)) => format!("it stands twice{}", of.replace(": ", ": by ")),
            Some(("FOREIGN KEY", _)) => "it belongs to a row that is not there".to_owned(),
            _ => why,
        },
        other => other.to_string(),
    })
}
