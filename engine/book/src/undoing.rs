//! Entries that undo earlier ones. What is undone stays in the book, with the reason, and counts no more.

use chrono::NaiveDate;
use rusqlite::{OptionalExtension, Row, params};
use rust_decimal::Decimal;

use crate::entering::{entered, marked_note, possible_day, state_of};
use crate::error::BookError;
use crate::kind::{day_in, metres_in, minutes_in, money_in, state_in};
use crate::marks::{Markup, fill};
use crate::opening::Book;
use crate::records::BookedClient;
use crate::state::State;
use crate::table::standing;

/// What was entered.
#[derive(Debug, Clone, PartialEq)]
pub enum Logged {
    /// Where it then stood.
    Marked(State),
    /// A payment, or a refund below zero.
    Paid(Decimal),
    /// Minutes at the bench, and at which step.
    Worked(f64, Option<String>),
    /// A cord, and how many metres of it.
    Cord(String, f64),
    /// Something bought, and for how much.
    Bought(String, Decimal),
}

/// A line of what was entered for a commission.
#[derive(Debug, Clone, PartialEq)]
pub struct LoggedLine {
    /// Its number within the commission, from 1; it never changes.
    pub number: u32,
    /// When.
    pub day: NaiveDate,
    /// What.
    pub what: Logged,
    /// A remark.
    pub note: Option<String>,
    /// When and why it was undone, if it was.
    pub undone: Option<Undone>,
    table: &'static str,
    id: i64,
}

/// That something was undone.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Undone {
    /// When.
    pub day: NaiveDate,
    /// Why.
    pub why: String,
}

/// How the lines of each table are read: its columns are day, what, more and note.
type Reader = fn(&Row<'_>) -> rusqlite::Result<Logged>;

/// The tables whose lines can be undone, with what is read of each.
const LINES: &[(&str, &str, Reader)] = &[
    ("happening", "day, state, NULL, note", |row| Ok(Logged::Marked(state_in(row, 1)?))),
    ("payment", "day, amount, NULL, note", |row| Ok(Logged::Paid(money_in(row, 1)?))),
    ("work", "day, minutes, step, note", |row| Ok(Logged::Worked(minutes_in(row, 1)?, row.get(2)?))),
    ("cord_used", "day, metres, cord, NULL", |row| Ok(Logged::Cord(row.get(2)?, metres_in(row, 1)?))),
    ("bought", "day, amount, what, NULL", |row| Ok(Logged::Bought(row.get(2)?, money_in(row, 1)?))),
];

impl Book {
    /// Undoes what was entered under a number of [`crate::History::lines`]: it stays in the book, and counts no more. Gives the
    /// line back.
    ///
    /// # Errors
    /// [`BookError`] when there is no such entry, when it was undone before, or when others rest on it.
    pub fn undo(&mut self, word: &str, number: u32, why: &str, day: NaiveDate) -> Result<LoggedLine, BookError> {
        let known = self.find(word, day)?;
        possible_day(day)?;
        if why.trim().is_empty() {
            return Err(wrong("nothing says why it is undone", "say it with --why"));
        }
        let refused = self.refused();
        let write = self.write()?;
        let client = client_of(&write, known.id).map_err(&refused)?;
        let lines = lines(&write, known.id, &client).map_err(&refused)?;
        let count = lines.len();
        let found = lines.into_iter().find(|line| line.number == number);
        let line = found.ok_or_else(|| no_line(word, number, count))?;
        can_be_undone(&write, known.id, &line, day).map_err(&refused)??;
        let why = marked_note(&write, known.id, Some(why)).map_err(&refused)?;
        let add = "INSERT INTO undoing (commission, what, entry, day, why) VALUES (?1, ?2, ?3, ?4, ?5)";
        write.execute(add, params![known.id, line.table, line.id, day.to_string(), why]).map_err(&refused)?;
        entered(&write, "undoing").map_err(&refused)?;
        write.commit().map_err(&refused)?;
        Ok(line)
    }

    pub(crate) fn lines(&self, id: i64, client: &BookedClient) -> rusqlite::Result<Vec<LoggedLine>> {
        lines(&self.db, id, client)
    }
}

fn wrong(why: &str, remedy: &str) -> BookError {
    BookError::Wrong(why.to_owned(), remedy.to_owned())
}

fn no_line(word: &str, number: u32, count: usize) -> BookError {
    let why = format!("{word} has no entry {number}: they are numbered from 1 to {count}");
    BookError::Wrong(why, format!("`reeve book show {word}` lists them"))
}

/// What others rest on is not undone before them.
fn can_be_undone(
    db: &rusqlite::Connection,
    id: i64,
    line: &LoggedLine,
    day: NaiveDate,
) -> rusqlite::Result<Result<(), BookError>> {
    let number = line.number;
    let no = |why: String, remedy: &str| Ok(Err(BookError::Wrong(why, remedy.to_owned())));
    if let Some(undone) = &line.undone {
        let why = format!("entry {number} was undone already, on {}: {}", undone.day, undone.why);
        return no(why, "enter anew what is right");
    }
    if matches!(line.what, Logged::Marked(State::Enquiry | State::Quoted)) {
        let why = format!("entry {number} can't be undone: it is how the commission began, or a quote that was sent");
        return no(why, CALLED_OFF);
    }
    if day < line.day {
        return no(format!("{day} can't be: entry {number} is of {}", line.day), "say a day from then on with --on");
    }
    match line.what {
        Logged::Marked(state) => {
            let last = format!("SELECT max(id) FROM {} WHERE commission = ?1", standing("happening"));
            let last: i64 = db.query_row(&last, [id], |row| row.get(0))?;
            if last == line.id {
                return Ok(Ok(()));
            }
            let why = format!("entry {number} can't be undone: more was marked since it was {state}");
            no(why, "undo the last one first")
        }
        Logged::Paid(_) if state_of(db, id)? == State::Paid => {
            no(format!("entry {number} can't be undone: the commission is marked paid"), "undo that first")
        }
        _ => Ok(Ok(())),
    }
}

const CALLED_OFF: &str =
    "a quote is superseded with `reeve book issue`, or called off with `reeve book mark … cancelled`";

fn client_of(db: &rusqlite::Connection, id: i64) -> rusqlite::Result<BookedClient> {
    let of = "SELECT client.name, client.address FROM client JOIN commission ON commission.client = client.id \
              WHERE commission.id = ?1";
    db.query_row(of, [id], |row| Ok(BookedClient { name: row.get(0)?, address: crate::kind::lines_in(row, 1)? }))
}

/// Everything that was entered for a commission, in the order in which it was sealed first.
fn lines(db: &rusqlite::Connection, id: i64, client: &BookedClient) -> rusqlite::Result<Vec<LoggedLine>> {
    let mut all = Vec::new();
    for (table, columns, read) in LINES {
        let ask = format!(
            "SELECT {columns}, id, (SELECT min(nth) FROM seal WHERE what = '{table}' AND key = CAST(id AS TEXT)) \
             FROM {table} WHERE commission = ?1 ORDER BY id"
        );
        let mut asked = db.prepare(&ask)?;
        let mut rows = asked.query([id])?;
        while let Some(row) = rows.next()? {
            let nth: Option<i64> = row.get(5)?;
            let line = LoggedLine {
                number: 0,
                day: day_in(row, 0)?,
                what: filled(read(row)?, client),
                note: row.get::<_, Option<String>>(3)?.map(|note| fill(&note, Markup::Text, client)),
                undone: undone(db, table, row.get(4)?, client)?,
                table,
                id: row.get(4)?,
            };
            all.push((nth.unwrap_or(i64::MAX), line));
        }
    }
    all.sort_by_key(|(nth, _)| *nth);
    Ok((1..).zip(all).map(|(number, (_, line))| LoggedLine { number, ..line }).collect())
}

fn undone(db: &rusqlite::Connection, table: &str, id: i64, client: &BookedClient) -> rusqlite::Result<Option<Undone>> {
    let of = "SELECT day, why FROM undoing WHERE what = ?1 AND entry = ?2";
    let read =
        |row: &Row<'_>| Ok(Undone { day: day_in(row, 0)?, why: fill(&row.get::<_, String>(1)?, Markup::Text, client) });
    db.prepare_cached(of)?.query_row(params![table, id], read).optional()
}

fn filled(what: Logged, client: &BookedClient) -> Logged {
    match what {
        Logged::Bought(what, amount) => Logged::Bought(fill(&what, Markup::Text, client), amount),
        other => other,
    }
}
