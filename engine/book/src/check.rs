//! Whether the book holds together.

use std::collections::BTreeMap;

use rusqlite::types::ValueRef;
use rusqlite::{Connection, OptionalExtension, Row};

use crate::error::BookError;
use crate::kind::figures;
use crate::opening::Book;
use crate::records::QuoteFigures;
use crate::schema::FORMS;
use crate::seal::{Chain, Seal, Seals, all_seals, last, values};
use crate::state::State;
use crate::table::{BookTable, TABLES, standing};

/// Something that does not hold.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CheckFinding {
    /// The commission's number or file, or nothing where it is the whole book.
    pub name: String,
    /// What does not hold.
    pub what: String,
}

/// Commissions by their ids: number or file.
type IdNames = BTreeMap<i64, String>;

impl Book {
    /// Looks through the whole book. `judge` reckons a quote's document anew and says what is wrong with it.
    ///
    /// # Errors
    /// [`BookError`] when the book can't be read at all.
    pub fn check(&self, judge: impl Fn(&str, &QuoteFigures) -> Option<String>) -> Result<Vec<CheckFinding>, BookError> {
        // One look at all tables: what is entered meanwhile is in none of them.
        let _look = self.db.unchecked_transaction().map_err(self.refused())?;
        let mut found = self.whole_file()?;
        let names = self.names()?;
        found.extend(self.rows(&names)?);
        found.extend(self.numbers()?);
        found.extend(self.moves(&names)?);
        found.extend(self.quotes(&names, judge)?);
        found.extend(self.undoings(&names)?);
        found.extend(self.to_make(&names)?);
        Ok(found)
    }

    /// How many seals there are, and the last one's link: to be written down elsewhere.
    ///
    /// # Errors
    /// [`BookError`] when the book can't be read.
    pub fn seals(&self) -> Result<Seals, BookError> {
        last(&self.db).map_err(self.refused())
    }

    /// Whether the book still begins with all that was in it when a seal was written down. Only worth something once
    /// [`Book::check`] found the seals in order.
    ///
    /// # Errors
    /// [`BookError`] when the book can't be read.
    pub fn begins_with(&self, known: &Seals) -> Result<bool, BookError> {
        let nth = i64::try_from(known.count).unwrap_or(i64::MAX);
        let asked = self.db.query_row("SELECT link FROM seal WHERE nth = ?1", [nth], |row| row.get::<_, String>(0));
        let link = asked.optional().map_err(self.refused())?;
        Ok(link.is_some_and(|link| link.starts_with(&known.link)))
    }

    fn whole_file(&self) -> Result<Vec<CheckFinding>, BookError> {
        let refused = self.refused();
        let mut asked = self.db.prepare("PRAGMA integrity_check").map_err(&refused)?;
        let told = asked.query_map([], |row| row.get::<_, String>(0)).map_err(&refused)?;
        let told: Vec<String> = told.collect::<Result<_, _>>().map_err(&refused)?;
        let mut found: Vec<CheckFinding> = told.into_iter().filter(|told| told != "ok").map(whole).collect();
        let strays = "SELECT count(*) FROM pragma_foreign_key_check";
        if self.ask::<i64>(strays)? > 0 {
            found.push(whole("something belongs to what is not there".to_owned()));
        }
        if schema(&self.db).map_err(&refused)? != as_made().map_err(&refused)? {
            found.push(whole("its tables or what guards them are not as the program made them".to_owned()));
        }
        Ok(found)
    }

    fn names(&self) -> Result<IdNames, BookError> {
        let refused = self.refused();
        let mut asked = self.db.prepare("SELECT id, coalesce(number, reference) FROM commission").map_err(&refused)?;
        let rows = asked.query_map([], |row| Ok((row.get(0)?, row.get(1)?))).map_err(&refused)?;
        rows.collect::<Result<_, _>>().map_err(&refused)
    }

    /// Every row holds what it can hold, and is what was sealed; none is missing.
    fn rows(&self, names: &IdNames) -> Result<Vec<CheckFinding>, BookError> {
        let refused = self.refused();
        let (mut chain, mut found) = self.chain().map_err(&refused)?;
        let mut asked = self.db.prepare("SELECT id, commission FROM entry").map_err(&refused)?;
        let pairs = asked.query_map([], |row| Ok((row.get(0)?, row.get(1)?))).map_err(&refused)?;
        let entries: BTreeMap<i64, i64> = pairs.collect::<Result<_, _>>().map_err(&refused)?;
        for table in TABLES {
            let mut asked = self.db.prepare(&table.all()).map_err(&refused)?;
            let mut rows = asked.query([]).map_err(&refused)?;
            while let Some(row) = rows.next().map_err(&refused)? {
                let wrong = row_fault(table, row).into_iter().chain(chain.meet(table, values(row)).err());
                for wrong in wrong {
                    let name = commission_of(table, row, &entries).and_then(|id| names.get(&id)).cloned();
                    let what = format!("{} {}: {wrong}", table.name, table.key(values(row)));
                    found.push(CheckFinding { name: name.unwrap_or_default(), what });
                }
            }
        }
        let mut missed: Vec<&Seal> = chain.missed().collect();
        missed.sort_unstable_by_key(|seal| seal.nth);
        let gone = |seal: &Seal| whole(format!("{} {} is missing: seal {} is of it", seal.what, seal.key, seal.nth));
        found.extend(missed.into_iter().map(gone));
        Ok(found)
    }

    /// The seals, and what does not hold among them.
    fn chain(&self) -> rusqlite::Result<(Chain, Vec<CheckFinding>)> {
        let (mut chain, mut found) = (Chain::default(), Vec::new());
        let mut asked = self.db.prepare(&all_seals())?;
        let mut rows = asked.query([])?;
        while let Some(row) = rows.next()? {
            found.extend(chain.take(Seal::read(row)?).err().map(whole));
        }
        let noted = last(&self.db);
        if !noted.as_ref().is_ok_and(|noted| noted == chain.last()) {
            let noted = noted.map_or("not noted".to_owned(), |noted| noted.word());
            let there = chain.last().word();
            found.push(whole(format!(
                "the last seal should be {noted}, and is {there}: entries were cut off or put in"
            )));
        }
        Ok((chain, found))
    }

    /// Numbers run from 1 in each year without a gap, and every one has a quote.
    fn numbers(&self) -> Result<Vec<CheckFinding>, BookError> {
        let refused = self.refused();
        let gaps =
            "SELECT year, count(*), min(running), max(running) FROM commission WHERE year IS NOT NULL GROUP BY year";
        let mut asked = self.db.prepare(gaps).map_err(&refused)?;
        let years = asked.query_map([], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?)));
        let mut found = Vec::new();
        for year in years.map_err(&refused)? {
            let (year, count, least, most): (i64, i64, i64, i64) = year.map_err(&refused)?;
            if least != 1 || most != count {
                found.push(whole(format!("the numbers of {year} have a gap: {count} of them, from {least} to {most}")));
            }
        }
        let bare = "SELECT count(*) FROM commission WHERE (number IS NULL) = \
                    EXISTS (SELECT 1 FROM entry WHERE entry.commission = commission.id)";
        if self.ask::<i64>(bare)? > 0 {
            found.push(whole("a number has no quote, or a quote no number".to_owned()));
        }
        Ok(found)
    }

    /// Every commission began, and every step from one state to the next is one that can be taken.
    fn moves(&self, names: &IdNames) -> Result<Vec<CheckFinding>, BookError> {
        let refused = self.refused();
        let steps = format!("SELECT commission, state FROM {} ORDER BY commission, id", standing("happening"));
        let mut asked = self.db.prepare(&steps).map_err(&refused)?;
        let all = asked.query_map([], |row| Ok((row.get::<_, i64>(0)?, row.get::<_, String>(1)?))).map_err(&refused)?;
        let mut found = Vec::new();
        let mut last: Option<(i64, State)> = None;
        for step in all {
            let (id, to) = step.map_err(&refused)?;
            // What is no state is told of as a row.
            let Some(to) = State::of_word(&to) else { continue };
            let from = last.filter(|(before, _)| *before == id).map(|(_, from)| from);
            if !can_follow(from, to) {
                let from = from.map_or("nothing".to_owned(), |from| from.to_string());
                found.push(of(names, id, format!("it went from {from} to {to}")));
            }
            last = Some((id, to));
        }
        let still = format!(
            "SELECT id FROM commission WHERE id NOT IN (SELECT commission FROM {}) ORDER BY id",
            standing("happening")
        );
        let mut asked = self.db.prepare(&still).map_err(&refused)?;
        let ids = asked.query_map([], |row| row.get(0)).map_err(&refused)?;
        for id in ids {
            found.push(of(names, id.map_err(&refused)?, "nothing ever happened to it".to_owned()));
        }
        Ok(found)
    }

    /// What the book keeps of what is to be made follows from what happened.
    fn to_make(&self, names: &IdNames) -> Result<Vec<CheckFinding>, BookError> {
        let refused = self.refused();
        let both = "SELECT stands.commission, state, to_be_made.commission IS NOT NULL FROM stands \
                    LEFT JOIN to_be_made ON to_be_made.commission = stands.commission ORDER BY stands.commission";
        let mut asked = self.db.prepare(both).map_err(&refused)?;
        let rows = asked.query_map([], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?))).map_err(&refused)?;
        let mut found = Vec::new();
        for row in rows {
            let (id, state, listed): (i64, Option<String>, bool) = row.map_err(&refused)?;
            // What is no state is told of as a row.
            let Some(state) = state.and_then(|word| State::of_word(&word)) else { continue };
            if listed != state.is_to_be_made() {
                let is = if listed { "is" } else { "is not" };
                found.push(of(names, id, format!("it is {state}, and {is} among what is to be made")));
            }
        }
        Ok(found)
    }

    /// Revisions follow on one another, and every document still says what it comes to.
    fn quotes(
        &self,
        names: &IdNames,
        judge: impl Fn(&str, &QuoteFigures) -> Option<String>,
    ) -> Result<Vec<CheckFinding>, BookError> {
        let refused = self.refused();
        let all = "SELECT entry.commission, entry.revision, entry.figures, \
                   (SELECT text FROM page WHERE page.entry = entry.id AND name = 'quote.json'), \
                   (SELECT count(*) FROM entry AS other WHERE other.commission = entry.commission \
                    AND other.revision < entry.revision), valid_until FROM entry ORDER BY entry.commission, entry.revision";
        let mut asked = self.db.prepare(all).map_err(&refused)?;
        let mut rows = asked.query([]).map_err(&refused)?;
        let mut found = Vec::new();
        while let Some(row) = rows.next().map_err(&refused)? {
            let (id, revision, before): (i64, i64, i64) = ids(row).map_err(&refused)?;
            if revision != before {
                found.push(of(names, id, format!("revision {revision} follows on {before} others")));
            }
            let wrong = quote_fault(row, &judge).map_err(&refused)?;
            found.extend(wrong.map(|wrong| of(names, id, format!("revision {revision}: {wrong}"))));
        }
        Ok(found)
    }

    /// Every entry that undoes another names one of the same commission.
    fn undoings(&self, names: &IdNames) -> Result<Vec<CheckFinding>, BookError> {
        let refused = self.refused();
        let mut found = Vec::new();
        for table in crate::table::UNDONE {
            let lost = format!(
                "SELECT commission, id FROM undoing WHERE what = '{table}' AND NOT EXISTS \
                 (SELECT 1 FROM {table} AS one WHERE one.id = undoing.entry AND one.commission = undoing.commission)"
            );
            let mut asked = self.db.prepare(&lost).map_err(&refused)?;
            let pairs = asked.query_map([], |row| Ok((row.get(0)?, row.get(1)?))).map_err(&refused)?;
            for pair in pairs {
                let (id, undoing): (i64, i64) = pair.map_err(&refused)?;
                found.push(of(names, id, format!("undoing {undoing}: it undoes what is not there")));
            }
        }
        Ok(found)
    }
}

/// What a database is made of.
fn schema(db: &Connection) -> rusqlite::Result<Vec<(String, String, Option<String>)>> {
    let made =
        "SELECT type, name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY type, name";
    let mut asked = db.prepare(made)?;
    asked.query_map([], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))?.collect()
}

/// The same of a new book.
fn as_made() -> rusqlite::Result<Vec<(String, String, Option<String>)>> {
    let new = Connection::open_in_memory()?;
    FORMS.iter().try_for_each(|step| new.execute_batch(step))?;
    schema(&new)
}

/// What a row holds that it can't.
fn row_fault(table: &BookTable, row: &Row<'_>) -> Option<String> {
    let value = values(row);
    let odd = table.columns.iter().enumerate().find_map(|(at, column)| column.judge(value(at)).err());
    let blank = |at| matches!(value(at), ValueRef::Text(text) if text.trim_ascii().is_empty());
    odd.or_else(|| (table.name == "page" && blank(2)).then(|| "it is empty".to_owned()))
}

/// The commission that a row is of.
fn commission_of(table: &BookTable, row: &Row<'_>, entries: &BTreeMap<i64, i64>) -> Option<i64> {
    match table.name {
        "client" => None,
        "commission" => row.get(0).ok(),
        "page" => entries.get(&row.get(0).ok()?).copied(),
        _ => row.get(1).ok(),
    }
}

/// Commission, revision, and how many revisions stand before it.
fn ids(row: &Row<'_>) -> rusqlite::Result<(i64, i64, i64)> {
    Ok((row.get(0)?, row.get(1)?, row.get(4)?))
}

fn quote_fault(
    row: &Row<'_>,
    judge: impl Fn(&str, &QuoteFigures) -> Option<String>,
) -> rusqlite::Result<Option<String>> {
    let (kept, document): (String, Option<String>) = (row.get(2)?, row.get(3)?);
    // Figures that can't be read are told of as a row.
    let Ok(figures) = figures(&kept) else { return Ok(None) };
    if figures.valid_until.to_string() != row.get::<_, String>(5)? {
        return Ok(Some("its last day is not that of its figures".to_owned()));
    }
    Ok(document.map_or(Some("its document is missing".to_owned()), |document| judge(&document, &figures)))
}

fn can_follow(from: Option<State>, to: State) -> bool {
    match (from, to) {
        (None, State::Enquiry | State::Quoted) => true,
        (None, _) => false,
        (Some(from), State::Quoted) => from.can_be_quoted(),
        (Some(from), to) => from.moves().contains(&to),
    }
}

fn whole(what: String) -> CheckFinding {
    CheckFinding { name: String::new(), what }
}

fn of(names: &IdNames, id: i64, what: String) -> CheckFinding {
    CheckFinding { name: names.get(&id).cloned().unwrap_or_default(), what }
}
