//! What goes into the book: enquiries, quotes, what happened, payments.

use chrono::{Datelike, NaiveDate};
use rusqlite::{OptionalExtension, Transaction, params};
use rust_decimal::Decimal;

use crate::act::Act;
use crate::error::BookError;
use crate::kind::{
    day_in, figures_in, judge_figures, lines_in, money_in, possible, state_in, sum, to_json, within_money,
};
use crate::marks::mark;
use crate::opening::Book;
use crate::records::{Before, BookedClient, Enquiry, NumberPattern, Origin, QuoteNumber, Snapshot};
use crate::seal::seal;
use crate::state::State;
use crate::table::{BookTable, standing, table};

/// A commission found by its number or by its file.
pub(crate) struct KnownCommission {
    pub(crate) id: i64,
    pub(crate) number: Option<String>,
    pub(crate) state: State,
    pub(crate) valid_until: Option<NaiveDate>,
}

impl Enquiry {
    fn marked_note(&self) -> Option<String> {
        self.note.as_deref().map(|note| mark(note, &self.client))
    }
}

impl Book {
    /// Enters an enquiry.
    ///
    /// # Errors
    /// [`BookError`] when the same file is in the book already and not at an end.
    pub fn enquire(&mut self, asked: &Enquiry) -> Result<(), BookError> {
        possible_day(asked.day)?;
        let refused = self.refused();
        let write = self.write()?;
        if let Some(known) = open_commission(&write, &asked.reference, asked.day).map_err(&refused)? {
            let why = format!("`{}` is in the book already, as {}", asked.reference, known.state);
            return Err(BookError::Wrong(why, "`reeve book list` shows it".to_owned()));
        }
        let id = add_commission(&write, asked).map_err(&refused)?;
        happen(&write, id, State::Enquiry, asked.day, asked.marked_note().as_deref()).map_err(&refused)?;
        write.commit().map_err(&refused)
    }

    /// Issues a quote: gives it the next number of its year, or the next revision of its own, and keeps it as it is.
    ///
    /// `made` makes the pages once the number is known; nobody else can take a number meanwhile.
    ///
    /// # Errors
    /// What `made` refuses, and [`BookError`] when the commission can't be quoted where it stands or can't be written.
    pub fn issue<E: From<BookError>>(
        &mut self,
        asked: &Enquiry,
        pattern: &NumberPattern,
        origin: &Origin,
        made: impl FnOnce(&QuoteNumber, Option<&Before>) -> Result<Snapshot, E>,
    ) -> Result<QuoteNumber, E> {
        possible_day(asked.day)?;
        let refused = self.refused();
        let write = self.write()?;
        let found = open_commission(&write, &asked.reference, asked.day).map_err(&refused)?;
        if let Some(known) = &found
            && !known.state.can_be_quoted()
        {
            let number = known.number.clone().unwrap_or_else(|| asked.reference.clone());
            return Err(BookError::Move { number, from: known.state, to: State::Quoted }.into());
        }
        if let Some(known) = &found {
            in_order(&write, known.id, asked.day).map_err(&refused)??;
        }
        let id = match &found {
            Some(known) => known.id,
            None => add_commission(&write, asked).map_err(&refused)?,
        };
        let client = client_of(&write, id, asked).map_err(&refused)?;
        let lapsed = found.as_ref().is_some_and(|known| known.state == State::Lapsed);
        let before = last_entry(&write, id).map_err(&refused)?;
        let paid = paid(&write, id).map_err(&refused)?;
        let before = before.map(|(revision, before)| (revision, Before { lapsed, paid, ..before }));
        let number = match found.and_then(|known| known.number) {
            Some(number) => number,
            None => give_number(&write, id, asked.day, pattern).map_err(&refused)?,
        };
        let revision = before.as_ref().map_or(0, |(revision, _)| revision + 1);
        let number = QuoteNumber { number, revision };
        let snapshot = made(&number, before.as_ref().map(|(_, before)| before))?;
        judge_figures(&snapshot.figures).map_err(|why| cannot(format!("the quote can't be entered: {why}")))?;
        keep(&write, (id, client), &number, asked, origin, &snapshot).map_err(&refused)?;
        happen(&write, id, State::Quoted, asked.day, asked.marked_note().as_deref()).map_err(&refused)?;
        if revision == 0 && !snapshot.figures.paid.is_zero() {
            pay(&write, id, asked.day, snapshot.figures.paid, Some("paid before the quote")).map_err(&refused)?;
        }
        write.commit().map_err(&refused)?;
        Ok(number)
    }

    /// Marks where a commission stands now.
    ///
    /// # Errors
    /// [`BookError`] when it can't go there from where it stands, with what is possible instead; or on a day before the last.
    pub fn mark(&mut self, word: &str, to: State, day: NaiveDate, note: Option<&str>) -> Result<State, BookError> {
        let known = self.find(word, day)?;
        let refused = self.refused();
        let write = self.write()?;
        // It may have moved, or something have been paid, since it was looked up.
        let due = due(&write, known.id).map_err(&refused)?;
        let from = state_of(&write, known.id).map_err(&refused)?.on(day, known.valid_until);
        let number = known.number.unwrap_or_else(|| word.to_owned());
        if !from.moves().contains(&to) {
            return Err(BookError::Move { number, from, to });
        }
        if to == State::Paid && due > Decimal::ZERO {
            return Err(BookError::Owed(number, due.to_string()));
        }
        in_order(&write, known.id, day).map_err(&refused)??;
        let note = marked_note(&write, known.id, note).map_err(&refused)?;
        happen(&write, known.id, to, day, note.as_deref()).map_err(&refused)?;
        write.commit().map_err(&refused)?;
        Ok(from)
    }

    /// Enters a payment, or a refund if it is below zero; says what is then owed.
    ///
    /// # Errors
    /// [`BookError`] when there is no quote to pay, or the day or the amount can't be.
    pub fn pay(
        &mut self,
        word: &str,
        amount: Decimal,
        day: NaiveDate,
        note: Option<&str>,
    ) -> Result<Decimal, BookError> {
        let known = self.find(word, day)?;
        if known.number.is_none() {
            let why = format!("`{word}` has no quote yet, so nothing is owed");
            return Err(BookError::Wrong(why, "issue the quote first".to_owned()));
        }
        within_money(amount).map_err(cannot)?;
        let refused = self.refused();
        let write = self.write()?;
        since_enquiry(&write, known.id, day).map_err(&refused)??;
        let note = marked_note(&write, known.id, note).map_err(&refused)?;
        pay(&write, known.id, day, amount, note.as_deref()).map_err(&refused)?;
        let due = due(&write, known.id).map_err(&refused)?;
        write.commit().map_err(&refused)?;
        Ok(due)
    }

    /// What was paid so far of the commission that stands under a file, and its number; `None` where none was quoted yet.
    ///
    /// # Errors
    /// [`BookError`] when the book can't be read.
    pub fn paid_for(&self, reference: &str, day: NaiveDate) -> Result<Option<(String, Decimal)>, BookError> {
        let refused = self.refused();
        let known = open_commission(&self.db, reference, day).map_err(&refused)?;
        let Some((id, number)) = known.and_then(|known| Some((known.id, known.number?))) else { return Ok(None) };
        Ok(Some((number, paid(&self.db, id).map_err(&refused)?)))
    }

    /// A commission by its number, or by its file where that is not at an end.
    pub(crate) fn find(&self, word: &str, day: NaiveDate) -> Result<KnownCommission, BookError> {
        let refused = self.refused();
        let by_number = "SELECT id FROM commission WHERE number = ?1";
        let id: Option<i64> = self.db.query_row(by_number, [word], |row| row.get(0)).optional().map_err(&refused)?;
        let found = match id {
            Some(id) => Some(known(&self.db, id, day).map_err(&refused)?),
            None => last_commission(&self.db, word, day).map_err(&refused)?,
        };
        match found {
            Some(known) => Ok(known),
            None => Err(BookError::Unknown(word.to_owned(), self.some_names()?)),
        }
    }

    /// The newest few, for a message.
    fn some_names(&self) -> Result<Vec<String>, BookError> {
        let newest = "SELECT coalesce(number, reference) FROM commission ORDER BY id DESC LIMIT 8";
        let refused = self.refused();
        let mut asked = self.db.prepare(newest).map_err(&refused)?;
        let names = asked.query_map([], |row| row.get(0)).map_err(&refused)?;
        names.collect::<Result<_, _>>().map_err(&refused)
    }
}

fn cannot(why: String) -> BookError {
    BookError::Wrong(why, "nothing was entered".to_owned())
}

/// Refuses a day that no entry can have.
pub(crate) fn possible_day(day: NaiveDate) -> Result<(), BookError> {
    possible(day).map(|_| ()).map_err(|why| BookError::Wrong(why, "say the day with --on YYYY-MM-DD".to_owned()))
}

/// Refuses a day before the commission was first entered.
pub(crate) fn since_enquiry(
    db: &rusqlite::Connection,
    id: i64,
    day: NaiveDate,
) -> rusqlite::Result<Result<(), BookError>> {
    let first = "SELECT day, state FROM happening WHERE commission = ?1 ORDER BY id LIMIT 1";
    let (begun, state) = db.query_row(first, [id], |row| Ok((day_in(row, 0)?, state_in(row, 1)?)))?;
    let what = if state == State::Enquiry { "asked about" } else { "quoted" };
    Ok(not_before(day, begun, &format!("when it was first {what}")))
}

/// Refuses a day before the last that happened to the commission.
fn in_order(db: &rusqlite::Connection, id: i64, day: NaiveDate) -> rusqlite::Result<Result<(), BookError>> {
    let last =
        format!("SELECT day, state FROM {} WHERE commission = ?1 ORDER BY id DESC LIMIT 1", standing("happening"));
    let (last, state) = db.query_row(&last, [id], |row| Ok((day_in(row, 0)?, state_in(row, 1)?)))?;
    Ok(not_before(day, last, &format!("since when it is {state}")))
}

fn not_before(day: NaiveDate, least: NaiveDate, when: &str) -> Result<(), BookError> {
    possible_day(day)?;
    if day >= least {
        return Ok(());
    }
    let remedy = "say the day with --on; a slip in an earlier entry is undone with `reeve book undo`";
    Err(BookError::Wrong(format!("{day} can't be: it is before {least}, {when}"), remedy.to_owned()))
}

/// A remark with marks in place of the client of a commission.
pub(crate) fn marked_note(db: &rusqlite::Connection, id: i64, note: Option<&str>) -> rusqlite::Result<Option<String>> {
    let Some(note) = note else { return Ok(None) };
    let of = "SELECT client.name, client.address FROM client JOIN commission ON commission.client = client.id \
              WHERE commission.id = ?1";
    let client = db.query_row(of, [id], |row| Ok(BookedClient { name: row.get(0)?, address: lines_in(row, 1)? }))?;
    Ok(Some(mark(note, &client)))
}

/// What is owed of a commission: what its last quote comes to less all payments that stand.
pub(crate) fn due(db: &rusqlite::Connection, id: i64) -> rusqlite::Result<Decimal> {
    let gross = last_entry(db, id)?.map_or(Decimal::ZERO, |(_, before)| before.figures.gross);
    sum([gross, -paid(db, id)?])
}

/// What was paid of a commission, by the payments that stand.
fn paid(db: &rusqlite::Connection, id: i64) -> rusqlite::Result<Decimal> {
    let mut asked = db.prepare(&format!("SELECT amount FROM {} WHERE commission = ?1", standing("payment")))?;
    let amounts = asked.query_map([id], |row| money_in(row, 0))?.collect::<rusqlite::Result<Vec<_>>>()?;
    sum(amounts)
}

/// The client of a commission as the file has it now. A quote keeps the one that it was sent to.
fn client_of(write: &Transaction<'_>, id: i64, asked: &Enquiry) -> rusqlite::Result<i64> {
    let of = "SELECT client.id, client.name, client.address FROM client JOIN commission ON commission.client = client.id \
              WHERE commission.id = ?1";
    let read =
        |row: &rusqlite::Row<'_>| Ok((row.get(0)?, BookedClient { name: row.get(1)?, address: lines_in(row, 2)? }));
    let (known, client): (i64, BookedClient) = write.query_row(of, [id], read)?;
    let now = if client == asked.client { known } else { add_client(write, &asked.client)? };
    let title = mark(&asked.title, &asked.client);
    let changed = "UPDATE commission SET client = ?2, title = ?3 WHERE id = ?1 AND (client != ?2 OR title != ?3)";
    if write.execute(changed, params![id, now, title])? > 0 {
        seal(write, Act::Changed, known_table("commission")?, &id.to_string())?;
    }
    Ok(now)
}

fn add_client(write: &Transaction<'_>, client: &BookedClient) -> rusqlite::Result<i64> {
    let address = serde_json::Value::from(client.address.clone()).to_string();
    write.execute("INSERT INTO client (name, address) VALUES (?1, ?2)", params![client.name, address])?;
    entered(write, "client")
}

fn add_commission(write: &Transaction<'_>, asked: &Enquiry) -> rusqlite::Result<i64> {
    let title = mark(&asked.title, &asked.client);
    let client = add_client(write, &asked.client)?;
    let add = "INSERT INTO commission (reference, title, client) VALUES (?1, ?2, ?3)";
    write.execute(add, params![asked.reference, title, client])?;
    entered(write, "commission")
}

/// The next number of the year, without a gap: nobody else writes meanwhile, and a number is kept only with its quote.
fn give_number(write: &Transaction<'_>, id: i64, day: NaiveDate, pattern: &NumberPattern) -> rusqlite::Result<String> {
    let year = day.year();
    let next = "SELECT coalesce(max(running), 0) + 1 FROM commission WHERE year = ?1";
    let running: i64 = write.query_row(next, [year], |row| row.get(0))?;
    let number = pattern.written(year, running);
    let give = "UPDATE commission SET year = ?2, running = ?3, number = ?4 WHERE id = ?1";
    write.execute(give, params![id, year, running, number])?;
    seal(write, Act::Changed, known_table("commission")?, &id.to_string())?;
    Ok(number)
}

fn keep(
    write: &Transaction<'_>,
    (id, client): (i64, i64),
    number: &QuoteNumber,
    asked: &Enquiry,
    origin: &Origin,
    snapshot: &Snapshot,
) -> rusqlite::Result<()> {
    let figures = &snapshot.figures;
    let lines = |lines: &[String]| serde_json::Value::from(lines.to_vec()).to_string();
    let add = "INSERT INTO entry \
               (commission, revision, client, day, valid_until, figures, program, catalogue, changes, maker_changes) \
               VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)";
    write.execute(
        add,
        params![
            id,
            number.revision,
            client,
            asked.day.to_string(),
            figures.valid_until.to_string(),
            to_json(figures)?,
            origin.program,
            origin.catalogue,
            lines(&snapshot.changes),
            lines(&snapshot.maker_changes),
        ],
    )?;
    let entry = entered(write, "entry")?;
    let mut add = write.prepare("INSERT INTO page (entry, name, text) VALUES (?1, ?2, ?3)")?;
    for (name, text) in &snapshot.pages {
        add.execute(params![entry, name, text])?;
        seal(write, Act::Entered, known_table("page")?, &format!("{entry}/{name}"))?;
    }
    Ok(())
}

pub(crate) fn happen(
    write: &Transaction<'_>,
    id: i64,
    state: State,
    day: NaiveDate,
    note: Option<&str>,
) -> rusqlite::Result<()> {
    let add = "INSERT INTO happening (commission, state, day, note) VALUES (?1, ?2, ?3, ?4)";
    write.execute(add, params![id, state.word(), day.to_string(), note])?;
    entered(write, "happening").map(|_| ())
}

fn pay(write: &Transaction<'_>, id: i64, day: NaiveDate, amount: Decimal, note: Option<&str>) -> rusqlite::Result<()> {
    let add = "INSERT INTO payment (commission, day, amount, note) VALUES (?1, ?2, ?3, ?4)";
    write.execute(add, params![id, day.to_string(), amount.to_string(), note])?;
    entered(write, "payment").map(|_| ())
}

/// Seals the row that was entered last, and tells its number.
pub(crate) fn entered(write: &Transaction<'_>, what: &str) -> rusqlite::Result<i64> {
    let id = write.last_insert_rowid();
    seal(write, Act::Entered, known_table(what)?, &id.to_string())?;
    Ok(id)
}

/// A table that is there.
pub(crate) fn known_table(name: &str) -> rusqlite::Result<&'static BookTable> {
    table(name).ok_or(rusqlite::Error::InvalidQuery)
}

/// The last commission of a file, if it is not at an end: a file that is used again begins another one.
fn open_commission(
    db: &rusqlite::Connection,
    reference: &str,
    day: NaiveDate,
) -> rusqlite::Result<Option<KnownCommission>> {
    let found = last_commission(db, reference, day)?;
    Ok(found.filter(|known| !matches!(known.state, State::Paid | State::Cancelled)))
}

fn last_commission(
    db: &rusqlite::Connection,
    reference: &str,
    day: NaiveDate,
) -> rusqlite::Result<Option<KnownCommission>> {
    let last = "SELECT id FROM commission WHERE reference = ?1 ORDER BY id DESC LIMIT 1";
    let id: Option<i64> = db.query_row(last, [reference], |row| row.get(0)).optional()?;
    id.map(|id| known(db, id, day)).transpose()
}

fn known(db: &rusqlite::Connection, id: i64, day: NaiveDate) -> rusqlite::Result<KnownCommission> {
    let number = db.query_row("SELECT number FROM commission WHERE id = ?1", [id], |row| row.get(0))?;
    let last = "SELECT valid_until FROM entry WHERE commission = ?1 ORDER BY revision DESC LIMIT 1";
    let valid_until: Option<NaiveDate> = db.query_row(last, [id], |row| day_in(row, 0)).optional()?;
    let state = state_of(db, id)?.on(day, valid_until);
    Ok(KnownCommission { id, number, state, valid_until })
}

/// Where a commission stands, whatever the day.
pub(crate) fn state_of(db: &rusqlite::Connection, id: i64) -> rusqlite::Result<State> {
    let last = format!("SELECT state FROM {} WHERE commission = ?1 ORDER BY id DESC LIMIT 1", standing("happening"));
    db.query_row(&last, [id], |row| state_in(row, 0))
}

/// The last quote of a commission, and its revision.
fn last_entry(db: &rusqlite::Connection, id: i64) -> rusqlite::Result<Option<(u32, Before)>> {
    let last = "SELECT entry.revision, entry.figures, page.text FROM entry \
                JOIN page ON page.entry = entry.id AND page.name = 'quote.json' \
                WHERE entry.commission = ?1 ORDER BY entry.revision DESC LIMIT 1";
    let read = |row: &rusqlite::Row<'_>| {
        let (figures, quote) = (figures_in(row, 1)?, row.get(2)?);
        Ok((row.get(0)?, Before { figures, quote, lapsed: false, paid: Decimal::ZERO }))
    };
    db.query_row(last, [id], read).optional()
}
