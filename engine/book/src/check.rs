//! Whether the book holds together.

use std::collections::BTreeMap;

use crate::entering::{Client, Figures, json, state};
use crate::marks::{Kind, fill};
use crate::opening::Book;
use crate::state::State;
use crate::trouble::Trouble;

/// Something that does not hold.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Finding {
    /// The commission's number or file, or nothing where it is the whole book.
    pub name: String,
    /// What does not hold.
    pub what: String,
}

/// A commission for the check: its number or file, its client forgotten or not.
type Named = BTreeMap<i64, String>;

impl Book {
    /// Looks through the whole book. `judge` reckons a quote's document anew and says what is wrong with it.
    ///
    /// # Errors
    /// [`Trouble`] when the book can't be read at all.
    pub fn check(&self, judge: impl Fn(&str, &Figures) -> Option<String>) -> Result<Vec<Finding>, Trouble> {
        // One look at all tables: what is entered meanwhile is in none of them.
        let _look = self.db.unchecked_transaction().map_err(self.refused())?;
        let mut found = self.whole_file()?;
        let names = self.names()?;
        found.extend(self.numbers()?);
        found.extend(self.moves(&names)?);
        found.extend(self.quotes(&names, judge)?);
        found.extend(self.pages(&names)?);
        Ok(found)
    }

    fn whole_file(&self) -> Result<Vec<Finding>, Trouble> {
        let refused = self.refused();
        let mut asked = self.db.prepare("PRAGMA integrity_check").map_err(&refused)?;
        let told = asked.query_map([], |row| row.get::<_, String>(0)).map_err(&refused)?;
        let told: Vec<String> = told.collect::<Result<_, _>>().map_err(&refused)?;
        let mut found: Vec<Finding> = told.into_iter().filter(|told| told != "ok").map(whole).collect();
        let strays = "SELECT count(*) FROM pragma_foreign_key_check";
        if self.ask::<i64>(strays)? > 0 {
            found.push(whole("something belongs to what is not there".to_owned()));
        }
        Ok(found)
    }

    fn names(&self) -> Result<Named, Trouble> {
        let refused = self.refused();
        let mut asked = self.db.prepare("SELECT id, coalesce(number, reference) FROM commission").map_err(&refused)?;
        let rows = asked.query_map([], |row| Ok((row.get(0)?, row.get(1)?))).map_err(&refused)?;
        rows.collect::<Result<_, _>>().map_err(&refused)
    }

    /// Numbers run from 1 in each year without a gap, and every one has a quote.
    fn numbers(&self) -> Result<Vec<Finding>, Trouble> {
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

    /// Every step from one state to the next is one that can be taken.
    fn moves(&self, names: &Named) -> Result<Vec<Finding>, Trouble> {
        let refused = self.refused();
        let mut asked =
            self.db.prepare("SELECT commission, state FROM happening ORDER BY commission, id").map_err(&refused)?;
        let all = asked.query_map([], |row| Ok((row.get::<_, i64>(0)?, state(row, 1)?))).map_err(&refused)?;
        let mut found = Vec::new();
        let mut last: Option<(i64, State)> = None;
        for step in all {
            let (id, to) = step.map_err(&refused)?;
            let from = last.filter(|(before, _)| *before == id).map(|(_, from)| from);
            if !can_follow(from, to) {
                let from = from.map_or("nothing".to_owned(), |from| from.to_string());
                found.push(of(names, id, format!("it went from {from} to {to}")));
            }
            last = Some((id, to));
        }
        Ok(found)
    }

    /// Revisions follow on one another, and every document still says what it comes to.
    fn quotes(&self, names: &Named, judge: impl Fn(&str, &Figures) -> Option<String>) -> Result<Vec<Finding>, Trouble> {
        let refused = self.refused();
        let all = "SELECT entry.commission, entry.revision, entry.figures, \
                   (SELECT text FROM page WHERE page.entry = entry.id AND name = 'quote.json'), \
                   (SELECT count(*) FROM entry AS other WHERE other.commission = entry.commission \
                    AND other.revision < entry.revision) FROM entry ORDER BY entry.commission, entry.revision";
        let mut asked = self.db.prepare(all).map_err(&refused)?;
        let read = |row: &rusqlite::Row<'_>| {
            Ok((
                row.get::<_, i64>(0)?,
                row.get::<_, i64>(1)?,
                json::<Figures>(row, 2)?,
                row.get(3)?,
                row.get::<_, i64>(4)?,
            ))
        };
        let mut found = Vec::new();
        for entry in asked.query_map([], read).map_err(&refused)? {
            let (id, revision, figures, quote, before): (_, _, _, Option<String>, _) = entry.map_err(&refused)?;
            if revision != before {
                found.push(of(names, id, format!("revision {revision} follows on {before} others")));
            }
            let wrong = match quote {
                None => Some("its document is missing".to_owned()),
                Some(quote) => judge(&quote, &figures),
            };
            found.extend(wrong.map(|wrong| of(names, id, format!("revision {revision}: {wrong}"))));
        }
        Ok(found)
    }

    /// Every quote has its pages, and they can be filled in.
    fn pages(&self, names: &Named) -> Result<Vec<Finding>, Trouble> {
        let refused = self.refused();
        let all = "SELECT entry.commission, entry.revision, page.name, page.text, client.name, client.address FROM entry \
                   LEFT JOIN page ON page.entry = entry.id AND page.name != 'quote.json' \
                   JOIN client ON client.id = entry.client";
        let mut asked = self.db.prepare(all).map_err(&refused)?;
        let mut rows = asked.query([]).map_err(&refused)?;
        let mut found = Vec::new();
        while let Some(row) = rows.next().map_err(&refused)? {
            let wrong = page_fault(row).map_err(&refused)?;
            let (id, revision): (i64, i64) = (row.get(0).map_err(&refused)?, row.get(1).map_err(&refused)?);
            found.extend(wrong.map(|wrong| of(names, id, format!("revision {revision}: {wrong}"))));
        }
        Ok(found)
    }
}

fn page_fault(row: &rusqlite::Row<'_>) -> rusqlite::Result<Option<String>> {
    let name: Option<String> = row.get(2)?;
    let Some(name) = name else { return Ok(Some("its pages are missing".to_owned())) };
    let client = Client { name: row.get(4)?, address: json(row, 5)? };
    let filled = fill(&row.get::<_, String>(3)?, Kind::of(&name), &client);
    Ok(if filled.trim().is_empty() { Some(format!("{name} is empty")) } else { None })
}

fn can_follow(from: Option<State>, to: State) -> bool {
    match (from, to) {
        (None, State::Enquiry | State::Quoted) => true,
        (None, _) => false,
        (Some(from), State::Quoted) => from.can_be_quoted(),
        (Some(from), to) => from.moves().contains(&to),
    }
}

fn whole(what: String) -> Finding {
    Finding { name: String::new(), what }
}

fn of(names: &Named, id: i64, what: String) -> Finding {
    Finding { name: names.get(&id).cloned().unwrap_or_default(), what }
}
