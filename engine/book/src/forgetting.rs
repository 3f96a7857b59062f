//! Forgetting a client: the one door to what is never edited otherwise.
//!
//! Their name and address are blanked where they stand, in the table of clients; and what the maker typed of them elsewhere
//! (a first name in a note, a street in a step) is looked for in every text of the book and blanked too. Each row that was
//! changed is sealed again. What may be meant otherwise is left alone and told.

use std::collections::{BTreeMap, BTreeSet};

use chrono::NaiveDate;
use rusqlite::{Connection, Transaction, params};

use crate::act::Act;
use crate::entering::{known_table, possible_day};
use crate::error::BookError;
use crate::kind::lines_in;
use crate::marks::{FORGOTTEN, Markup};
use crate::opening::Book;
use crate::personal::{SearchTerm, Sureness, held, parts, plain_text, terms, without};
use crate::records::BookedClient;
use crate::seal::seal;

/// Whom to forget, and what the maker says of words that could not be decided.
pub struct Forget<'a> {
    /// The client's name, or the number of one of their commissions.
    pub whom: &'a str,
    /// Words that are to be blanked as well.
    pub also: &'a [String],
    /// The maker's own name and address: what stands there is not the client's alone.
    pub maker: &'a str,
    /// Whether a word, in small letters, is a usual one of the trade.
    pub is_usual: &'a dyn Fn(&str) -> bool,
    /// The day.
    pub day: NaiveDate,
    /// Whether it is to be done, or only looked at.
    pub really: bool,
}

/// What was forgotten.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Forgotten {
    /// In how many commissions.
    pub commissions: usize,
    /// Where something was blanked beside the name and address themselves, in order.
    pub blanked: Vec<TextPlace>,
    /// What was found and left alone.
    pub undecided: Vec<Undecided>,
}

/// A word that was found and may be meant otherwise.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Undecided {
    /// The word.
    pub word: String,
    /// Why it was left alone.
    pub why: &'static str,
    /// Where it stands.
    pub places: Vec<TextPlace>,
}

/// A place in the book.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TextPlace {
    /// The commission's number, or its file's stem.
    pub commission: String,
    /// The text: `note`, `quote.html`.
    pub text: String,
}

const USUAL: &str = "it is a usual word";
const ANOTHERS: &str = "it is in another client's name or address, or in yours";
const SHORT: &str = "it is short and may be anything";
const OF_OTHERS: &str = "it stands in another client's commission";
const FILE: &str = "it is in the name of the commission's file";

/// The texts that a maker types into, with what they are called; how each is written follows from its name.
const TEXTS: &[(&str, &str, &str)] = &[
    ("commission", "title", "title"),
    ("commission", "reference", "file"),
    ("entry", "figures", "figures"),
    ("entry", "changes", "changes"),
    ("entry", "maker_changes", "changes"),
    ("page", "text", "page"),
    ("happening", "note", "note"),
    ("payment", "note", "note"),
    ("work", "step", "step"),
    ("work", "note", "note"),
    ("cord_used", "cord", "cord"),
    ("bought", "what", "what was bought"),
    ("timer", "step", "step of the timer"),
    ("undoing", "why", "why it was undone"),
];

/// A text of the book, and where it stands.
struct FoundText {
    table: &'static str,
    column: &'static str,
    called: &'static str,
    key: String,
    commission: i64,
    kind: Markup,
    text: String,
}

/// Whose commissions they are, and what is looked for.
struct Sought {
    clients: Vec<i64>,
    commissions: BTreeSet<i64>,
    terms: Vec<SearchTerm>,
    /// Terms that are said to be blanked.
    also: Vec<SearchTerm>,
    /// What other clients and the maker are called, and where they live.
    others: String,
}

impl Book {
    /// Blanks a client's name and address, and what was typed of them, in the whole book; numbers and sums stay.
    ///
    /// # Errors
    /// [`BookError`] when nobody in the book is called so.
    pub fn forget(&mut self, forget: &Forget<'_>) -> Result<Forgotten, BookError> {
        possible_day(forget.day)?;
        let refused = self.refused();
        let write = self.write()?;
        let sought = sought(&write, forget).map_err(&refused)?;
        let Some(sought) = sought else {
            // The name is not repeated: messages may be kept.
            let why = "no client in the book is called so".to_owned();
            let remedy = "write the name as it stands in the commission, or one of its numbers";
            return Err(BookError::Wrong(why, remedy.to_owned()));
        };
        let guards = take_down_guards(&write).map_err(&refused)?;
        let mut told = blank_texts(&write, forget, &sought).map_err(&refused)?;
        blank_clients(&write, &sought, forget.day).map_err(&refused)?;
        guards.iter().try_for_each(|guard| write.execute_batch(guard)).map_err(&refused)?;
        told.commissions = sought.commissions.len();
        if !forget.really {
            return Ok(told);
        }
        write.commit().map_err(&refused)?;
        // What was overwritten must not stay readable in free pages or in the journal.
        self.db
            .execute_batch("PRAGMA wal_checkpoint(TRUNCATE); VACUUM; PRAGMA wal_checkpoint(TRUNCATE);")
            .map_err(&refused)?;
        Ok(told)
    }
}

/// Takes down what refuses edits, within this one change, and gives back how to put it up again.
fn take_down_guards(write: &Transaction<'_>) -> rusqlite::Result<Vec<String>> {
    let ending = "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' AND name LIKE '%\\_stays' ESCAPE '\\' \
                  AND tbl_name NOT IN ('seal', 'commission')";
    let mut asked = write.prepare(ending)?;
    let guards: Vec<(String, String)> =
        asked.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?.collect::<Result<_, _>>()?;
    for (name, _) in &guards {
        write.execute_batch(&format!("DROP TRIGGER {name}"))?;
    }
    Ok(guards.into_iter().map(|(_, sql)| sql).collect())
}

/// A client of the book, by their id.
type ClientIds = (i64, BookedClient, bool);

fn clients(db: &Connection) -> rusqlite::Result<Vec<ClientIds>> {
    let mut asked = db.prepare("SELECT id, name, address, forgotten IS NOT NULL FROM client ORDER BY id")?;
    let read = |row: &rusqlite::Row<'_>| {
        Ok((row.get(0)?, BookedClient { name: row.get(1)?, address: lines_in(row, 2)? }, row.get(3)?))
    };
    asked.query_map([], read)?.collect()
}

/// Every client that a commission ever had.
fn pairs(db: &Connection) -> rusqlite::Result<Vec<(i64, i64)>> {
    let mut asked = db.prepare("SELECT id, client FROM commission UNION SELECT commission, client FROM entry")?;
    asked.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?.collect()
}

fn sought(db: &Connection, forget: &Forget<'_>) -> rusqlite::Result<Option<Sought>> {
    let (all, pairs) = (clients(db)?, pairs(db)?);
    let small = plain_text;
    let named = |whom: &str| -> BTreeSet<i64> {
        let theirs = all.iter().filter(|(_, client, forgotten)| !forgotten && small(&client.name) == small(whom));
        let ids: BTreeSet<i64> = theirs.map(|(id, ..)| *id).collect();
        pairs.iter().filter(|(_, client)| ids.contains(client)).map(|(commission, _)| *commission).collect()
    };
    let mut commissions = named(forget.whom);
    if commissions.is_empty() {
        let by_number = "SELECT id, (SELECT name FROM client WHERE client.id = client AND forgotten IS NULL) \
                         FROM commission WHERE number = ?1";
        let mut asked = db.prepare(by_number)?;
        let mut rows = asked.query([forget.whom])?;
        let Some(row) = rows.next()? else { return Ok(None) };
        let name: Option<String> = row.get(1)?;
        commissions = name.map(|name| named(&name)).unwrap_or_default();
        commissions.insert(row.get(0)?);
    }
    // Under every name and address that their commissions ever had.
    let ids: BTreeSet<i64> =
        pairs.iter().filter(|(commission, _)| commissions.contains(commission)).map(|(_, client)| *client).collect();
    let (theirs, others): (Vec<ClientIds>, Vec<ClientIds>) =
        all.into_iter().filter(|(.., forgotten)| !forgotten).partition(|(id, ..)| ids.contains(id));
    let mut looked_for: Vec<SearchTerm> = theirs.iter().flat_map(|(_, client, _)| terms(client)).collect();
    looked_for.sort_by_key(|term| std::cmp::Reverse((term.sureness == Sureness::Whole, term.words.len())));
    looked_for.dedup();
    let others = others.iter().map(|(_, client, _)| format!("{}\n{}", client.name, client.address.join("\n")));
    Ok(Some(Sought {
        clients: theirs.iter().map(|(id, ..)| *id).collect(),
        commissions,
        terms: looked_for,
        also: forget.also.iter().map(|word| SearchTerm::new(word, Sureness::Whole)).collect(),
        others: others.chain([forget.maker.to_owned()]).collect::<Vec<_>>().join("\n"),
    }))
}

fn blank_clients(write: &Transaction<'_>, sought: &Sought, day: NaiveDate) -> rusqlite::Result<()> {
    for id in &sought.clients {
        let blank = "UPDATE client SET name = ?2, address = '[]', forgotten = ?3 WHERE id = ?1";
        write.execute(blank, params![id, FORGOTTEN, day.to_string()])?;
        seal(write, Act::Forgotten, known_table("client")?, &id.to_string())?;
    }
    Ok(())
}

fn blank_texts(write: &Transaction<'_>, forget: &Forget<'_>, sought: &Sought) -> rusqlite::Result<Forgotten> {
    let names = names(write)?;
    let typed_by_others = typed_by_others(write, sought)?;
    let is_usual = |word: &str| (forget.is_usual)(word) || typed_by_others.contains(word);
    let mut told = ForgettingReport { names: &names, blanked: Vec::new(), undecided: BTreeMap::new() };
    let mut changed: BTreeSet<(&'static str, String)> = BTreeSet::new();
    for_each_text(write, |found| {
        let judged = Judged::of(&found, sought, &is_usual);
        for (term, why) in &judged.left {
            told.leave(&found, term, why);
        }
        let text = if found.column == "reference" {
            // It finds the commission where there is no number yet, so it is another one.
            (!judged.blank.is_empty()).then(|| format!("forgotten-{}", found.commission))
        } else {
            without(&found.text, found.kind, &judged.blank)
        };
        let Some(text) = text else { return Ok(()) };
        told.blank(&found);
        update(write, &found, &text)?;
        changed.insert((found.table, found.key));
        Ok(())
    })?;
    for (table, key) in &changed {
        seal(write, Act::Forgotten, known_table(table)?, key)?;
    }
    Ok(told.end())
}

/// What is to become of the terms that a text holds.
struct Judged<'a> {
    blank: Vec<&'a SearchTerm>,
    left: Vec<(&'a SearchTerm, &'static str)>,
}

impl<'a> Judged<'a> {
    fn of(found: &FoundText, sought: &'a Sought, is_usual: &dyn Fn(&str) -> bool) -> Self {
        let theirs = sought.commissions.contains(&found.commission);
        let mut judged = Self { blank: Vec::new(), left: Vec::new() };
        for term in held(&found.text, found.kind, sought.also.iter().chain(&sought.terms)) {
            let said = sought.also.iter().any(|also| also.words == term.words);
            let anothers = sought.is_anothers(term);
            let usual = (said || term.sureness == Sureness::Part) && is_usual(&term.words);
            let why = match (theirs, said) {
                (true, true) => None,
                (false, true) if !anothers && !usual => None,
                _ if anothers => Some(ANOTHERS),
                _ if usual => Some(USUAL),
                (true, _) if found.column == "reference" => Some(FILE),
                (_, _) if term.sureness == Sureness::Whole => None,
                (true, _) if term.is_short() => Some(SHORT),
                (true, _) => None,
                (false, _) => Some(OF_OTHERS),
            };
            // Usual words of other commissions are nobody's.
            let nobodys = !theirs && matches!(why, Some(USUAL | ANOTHERS));
            match why {
                None => judged.blank.push(term),
                Some(why) if !nobodys && !judged.left.iter().any(|(left, _)| left.words == term.words) => {
                    judged.left.push((term, why));
                }
                Some(_) => {}
            }
        }
        judged
    }
}

impl Sought {
    /// Whether the maker, or another client who is not forgotten, is called so or lives there.
    fn is_anothers(&self, term: &SearchTerm) -> bool {
        !held(&self.others, Markup::Text, std::iter::once(term)).is_empty()
    }
}

/// What is told of it in the end.
struct ForgettingReport<'a> {
    names: &'a BTreeMap<i64, String>,
    blanked: Vec<TextPlace>,
    undecided: BTreeMap<(String, &'static str), Vec<TextPlace>>,
}

impl ForgettingReport<'_> {
    fn place(&self, found: &FoundText) -> TextPlace {
        let of_page = if found.table == "page" { found.key.split_once('/').map(|(_, name)| name) } else { None };
        let commission = self.names.get(&found.commission).cloned().unwrap_or_default();
        TextPlace { commission, text: of_page.unwrap_or(found.called).to_owned() }
    }

    fn blank(&mut self, found: &FoundText) {
        let place = self.place(found);
        if !self.blanked.contains(&place) {
            self.blanked.push(place);
        }
    }

    fn leave(&mut self, found: &FoundText, term: &SearchTerm, why: &'static str) {
        let place = self.place(found);
        let places = self.undecided.entry((term.words.clone(), why)).or_default();
        if !places.contains(&place) {
            places.push(place);
        }
    }

    fn end(self) -> Forgotten {
        let undecided = self.undecided.into_iter().map(|((word, why), places)| Undecided { word, why, places });
        Forgotten { commissions: 0, blanked: self.blanked, undecided: undecided.collect() }
    }
}

/// What a commission is called: its number, or its file's stem.
fn names(db: &Connection) -> rusqlite::Result<BTreeMap<i64, String>> {
    let mut asked = db.prepare("SELECT id, coalesce(number, reference) FROM commission")?;
    asked.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?.collect()
}

/// Words in small letters that the maker typed for other clients: they are usual ones. Pages are not read for it.
fn typed_by_others(db: &Connection, sought: &Sought) -> rusqlite::Result<BTreeSet<String>> {
    let mut words = BTreeSet::new();
    for_each_text(db, |found| {
        if found.kind == Markup::Text && found.table != "page" && !sought.commissions.contains(&found.commission) {
            let of = parts(&found.text).filter(|word| word.chars().all(char::is_lowercase));
            words.extend(of.map(plain_text));
        }
        Ok(())
    })?;
    Ok(words)
}

/// Reads every text of the book that may hold what was typed.
fn for_each_text(db: &Connection, mut each: impl FnMut(FoundText) -> rusqlite::Result<()>) -> rusqlite::Result<()> {
    for (table, column, called) in TEXTS {
        let (key, commission) = match *table {
            "commission" => ("id", "id"),
            "page" => ("entry || '/' || name", "(SELECT commission FROM entry WHERE entry.id = page.entry)"),
            "timer" => ("one", "commission"),
            _ => ("id", "commission"),
        };
        let keys = format!("SELECT CAST({key} AS TEXT), {commission} FROM {table} WHERE {column} IS NOT NULL");
        let mut asked = db.prepare(&keys)?;
        // Keys first: the rows may be changed while their texts are read.
        let keys: Vec<(String, i64)> =
            asked.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?.collect::<Result<_, _>>()?;
        let mut text = db.prepare(&format!("SELECT {column} FROM {table} WHERE {}", known_table(table)?.of_key()))?;
        for (key, commission) in keys {
            let kind = match *table {
                "page" => Markup::of(&key),
                "entry" => Markup::Json,
                _ => Markup::Text,
            };
            let text = text.query_row([&key], |row| row.get(0))?;
            each(FoundText { table, column, called, key, commission, kind, text })?;
        }
    }
    Ok(())
}

fn update(write: &Transaction<'_>, found: &FoundText, text: &str) -> rusqlite::Result<()> {
    let (table, column) = (found.table, found.column);
    let update = format!("UPDATE {table} SET {column} = ?2 WHERE {}", known_table(table)?.of_key());
    write.execute(&update, params![found.key, text]).map(|_| ())
}
