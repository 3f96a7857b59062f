//! What stands in the book, read.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use rusqlite::{OptionalExtension, Row};
use rust_decimal::Decimal;

use crate::error::BookError;
use crate::kind::{day_in, figures, figures_in, lines_in, money_in, odd, state_in, sum};
use crate::marks::{Markup, fill};
use crate::opening::Book;
use crate::records::{BookedClient, QuoteFigures};
use crate::state::State;
use crate::table::standing;
use crate::undoing::LoggedLine;
use crate::work::Actuals;

/// A commission as it stands.
#[derive(Debug, Clone, PartialEq)]
pub struct BookedCommission {
    /// Its file's stem.
    pub reference: String,
    /// What it is about.
    pub title: String,
    /// Who asked.
    pub client: BookedClient,
    /// Its number; `None` for an enquiry.
    pub number: Option<String>,
    /// Where it stands on the day of the list.
    pub state: State,
    /// The day of the last that happened.
    pub since: NaiveDate,
    /// The day it was first entered.
    pub begun: NaiveDate,
    /// The revision of its last quote, and what that comes to.
    pub quoted: Option<(u32, QuoteFigures)>,
    /// The day the first quote was issued.
    pub first_issued: Option<NaiveDate>,
    /// The day it was accepted.
    pub accepted: Option<NaiveDate>,
    /// What was paid.
    pub paid: Decimal,
    /// Minutes logged.
    pub minutes: f64,
    pub(crate) id: i64,
}

impl BookedCommission {
    /// Its number, or its file's stem.
    pub fn name(&self) -> &str {
        self.number.as_deref().unwrap_or(&self.reference)
    }

    /// What is owed: what the last quote comes to less what was paid.
    pub fn due(&self) -> Decimal {
        self.quoted.as_ref().map_or(Decimal::ZERO, |(_, figures)| figures.gross) - self.paid
    }
}

/// A quote that was issued.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct IssuedQuote {
    /// 0 for the first.
    pub revision: u32,
    /// When.
    pub day: NaiveDate,
    /// What it came to.
    pub figures: QuoteFigures,
    /// The program's version that made it.
    pub program: String,
    /// What tells that program's knots from others.
    pub catalogue: String,
    /// What changed against the one before, for the client.
    pub changes: Vec<String>,
    /// The same for the maker.
    pub maker_changes: Vec<String>,
    /// The names of its pages and documents.
    pub pages: Vec<String>,
}

/// Something that happened to a commission.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Event {
    /// Where it then stood.
    pub state: State,
    /// When.
    pub day: NaiveDate,
    /// A remark.
    pub note: Option<String>,
}

/// A payment, or a refund below zero.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Payment {
    /// When.
    pub day: NaiveDate,
    /// How much.
    pub amount: Decimal,
    /// A remark.
    pub note: Option<String>,
}

/// How a commission went.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// As it stands.
    pub commission: BookedCommission,
    /// What happened to it, in order; what was undone is not there.
    pub happenings: Vec<Event>,
    /// Payments that stand, in order; those undone are not there.
    pub payments: Vec<Payment>,
    /// What it really took; what was undone is not counted.
    pub took: Actuals,
}

/// A commission with all that the book knows of it.
#[derive(Debug, Clone, PartialEq)]
pub struct History {
    /// How it went.
    pub course: Course,
    /// Its quotes, the first one first.
    pub entries: Vec<IssuedQuote>,
    /// Everything that was entered for it, in order, with what was undone.
    pub lines: Vec<LoggedLine>,
}

const NOTHING_HAPPENED: &str = "a commission has nothing that happened to it";

/// Which commissions are read.
#[derive(Debug, Clone, Copy)]
pub(crate) enum WhichCommissions {
    /// Every one.
    All,
    /// Those that are agreed and not made yet.
    ToBeMade,
    /// The one of an id.
    One(i64),
}

impl WhichCommissions {
    /// What holds of them, of the column that holds a commission's id; that id is `?1`.
    fn holds(self, column: &str) -> String {
        match self {
            Self::All => String::new(),
            Self::ToBeMade => format!("WHERE {column} IN (SELECT commission FROM to_be_made)"),
            Self::One(_) => format!("WHERE {column} = ?1"),
        }
    }

    fn id(self) -> Option<i64> {
        if let Self::One(id) = self { Some(id) } else { None }
    }
}

/// A quote as a list needs it: revision, day, figures as they are written.
type Quoted = (u32, NaiveDate, String);

impl Book {
    /// Every commission as it stands on a day, in the order they were entered.
    ///
    /// # Errors
    /// [`BookError`] when the book can't be read.
    pub fn list(&self, day: NaiveDate) -> Result<Vec<BookedCommission>, BookError> {
        Ok(self.courses(day)?.into_iter().map(|course| course.commission).collect())
    }

    /// Those that are agreed and not made yet, as they stand on a day, in the order they were entered. Nothing is read of the
    /// others, however many there are.
    ///
    /// # Errors
    /// [`BookError`] when the book can't be read.
    pub fn to_be_made(&self, day: NaiveDate) -> Result<Vec<BookedCommission>, BookError> {
        let courses = self.courses_of(WhichCommissions::ToBeMade, day).map_err(self.refused())?;
        Ok(courses.into_iter().map(|course| course.commission).collect())
    }

    /// How many commissions there are.
    ///
    /// # Errors
    /// [`BookError`] when the book can't be read.
    pub fn count(&self) -> Result<u64, BookError> {
        Ok(self.ask::<i64>("SELECT count(*) FROM commission")?.unsigned_abs())
    }

    /// How every commission went, in the order they were entered.
    ///
    /// # Errors
    /// [`BookError`] when the book can't be read.
    pub fn courses(&self, day: NaiveDate) -> Result<Vec<Course>, BookError> {
        self.courses_of(WhichCommissions::All, day).map_err(self.refused())
    }

    /// One commission, by its number or its file's stem, with all that is known of it.
    ///
    /// # Errors
    /// [`BookError`] when there is none.
    pub fn whole(&self, word: &str, day: NaiveDate) -> Result<History, BookError> {
        let id = self.find(word, day)?.id;
        let refused = self.refused();
        let course = self.courses_of(WhichCommissions::One(id), day).map_err(&refused)?.pop();
        let course = course.ok_or_else(|| BookError::Unknown(word.to_owned(), Vec::new()))?;
        let lines = self.lines(id, &course.commission.client).map_err(&refused)?;
        Ok(History { course, entries: self.entries(id).map_err(&refused)?, lines })
    }

    /// Reads each table from end to end and puts the rows together here: a question for each commission takes far longer.
    fn courses_of(&self, which: WhichCommissions, day: NaiveDate) -> rusqlite::Result<Vec<Course>> {
        // One look at all tables: what is entered meanwhile is in none of them.
        let _look = self.db.unchecked_transaction()?;
        let rows = |columns: &str, table| format!("commission, {columns} FROM {}", standing(table));
        let mut quotes = self.grouped("commission, revision, day, figures FROM entry", which, "revision", |row| {
            Ok((row.get(1)?, day_in(row, 2)?, row.get(3)?))
        })?;
        let mut happenings = self.grouped(&rows("state, day, note", "happening"), which, "id", |row| {
            Ok(Event { state: state_in(row, 1)?, day: day_in(row, 2)?, note: row.get(3)? })
        })?;
        let mut payments = self.grouped(&rows("day, amount, note", "payment"), which, "id", |row| {
            Ok(Payment { day: day_in(row, 1)?, amount: money_in(row, 2)?, note: row.get(3)? })
        })?;
        let mut took = self.took(which)?;
        let all = format!(
            "SELECT commission.id, reference, title, number, client.name, client.address FROM commission \
             JOIN client ON client.id = commission.client {} ORDER BY commission.id",
            which.holds("commission.id")
        );
        let mut asked = self.db.prepare(&all)?;
        let courses = asked.query_map(rusqlite::params_from_iter(which.id()), |row| {
            let id = row.get(0)?;
            let (happenings, payments) =
                (happenings.remove(&id).unwrap_or_default(), payments.remove(&id).unwrap_or_default());
            let took = took.remove(&id).unwrap_or_default();
            let quotes = quotes.remove(&id).unwrap_or_default();
            let commission = commission(row, &quotes, &happenings, day)?;
            let client = &commission.client;
            let filled = |note: Option<String>| note.map(|note| fill(&note, Markup::Text, client));
            let happenings = happenings.into_iter().map(|one| Event { note: filled(one.note), ..one }).collect();
            let payments: Vec<Payment> =
                payments.into_iter().map(|one| Payment { note: filled(one.note), ..one }).collect();
            let took = took.filled(client);
            let paid = sum(payments.iter().map(|payment| payment.amount))?;
            Ok(Course {
                commission: BookedCommission { paid, minutes: took.minutes(), ..commission },
                happenings,
                payments,
                took,
            })
        })?;
        courses.collect()
    }

    /// A page or document of a quote as it was issued, filled in; of the last revision if none is named.
    ///
    /// # Errors
    /// [`BookError`] when there is no such quote or page.
    pub fn page(&self, word: &str, revision: Option<u32>, name: &str, day: NaiveDate) -> Result<String, BookError> {
        let known = self.find(word, day)?;
        let refused = self.refused();
        let kept = "SELECT page.text, client.name, client.address FROM page \
                    JOIN entry ON entry.id = page.entry JOIN client ON client.id = entry.client \
                    WHERE entry.commission = ?1 AND page.name = ?3 AND (entry.revision = ?2 OR ?2 IS NULL) \
                    ORDER BY entry.revision DESC LIMIT 1";
        let read = |row: &Row<'_>| {
            let client = BookedClient { name: row.get(1)?, address: lines_in(row, 2)? };
            Ok(fill(&row.get::<_, String>(0)?, Markup::of(name), &client))
        };
        let found = self.db.query_row(kept, rusqlite::params![known.id, revision, name], read);
        found.optional().map_err(&refused)?.ok_or_else(|| {
            let why = match (revision, &known.number) {
                (_, None) => format!("`{word}` has no {name}: no quote was issued"),
                (Some(revision), _) => format!("`{word}` has no {name} of revision {revision}"),
                (None, _) => format!("`{word}` has no {name}"),
            };
            BookError::Wrong(
                why,
                "quote, costing and bench are kept as .html and .txt, the first two as .json too".to_owned(),
            )
        })
    }

    fn entries(&self, id: i64) -> rusqlite::Result<Vec<IssuedQuote>> {
        let all = "SELECT revision, day, figures, program, catalogue, changes, maker_changes, \
                   (SELECT group_concat(name, ' ') FROM page WHERE page.entry = entry.id) \
                   FROM entry WHERE commission = ?1 ORDER BY revision";
        let mut asked = self.db.prepare(all)?;
        let entries = asked.query_map([id], |row| {
            let names: Option<String> = row.get(7)?;
            Ok(IssuedQuote {
                revision: row.get(0)?,
                day: day_in(row, 1)?,
                figures: figures_in(row, 2)?,
                program: row.get(3)?,
                catalogue: row.get(4)?,
                changes: lines_in(row, 5)?,
                maker_changes: lines_in(row, 6)?,
                pages: names.unwrap_or_default().split(' ').map(str::to_owned).collect(),
            })
        })?;
        entries.collect()
    }

    /// Rows by their commission, which is the first column.
    pub(crate) fn grouped<T>(
        &self,
        what: &str,
        which: WhichCommissions,
        order: &str,
        mut read: impl FnMut(&Row<'_>) -> rusqlite::Result<T>,
    ) -> rusqlite::Result<BTreeMap<i64, Vec<T>>> {
        let mut asked = self.db.prepare(&format!("SELECT {what} {} ORDER BY {order}", which.holds("commission")))?;
        let mut rows = asked.query(rusqlite::params_from_iter(which.id()))?;
        let mut all: BTreeMap<i64, Vec<T>> = BTreeMap::new();
        while let Some(row) = rows.next()? {
            all.entry(row.get(0)?).or_default().push(read(row)?);
        }
        Ok(all)
    }
}

fn commission(
    row: &Row<'_>,
    quotes: &[Quoted],
    happenings: &[Event],
    day: NaiveDate,
) -> rusqlite::Result<BookedCommission> {
    let client = BookedClient { name: row.get(4)?, address: lines_in(row, 5)? };
    let title: String = row.get(2)?;
    let quoted = quotes.last().map(|(revision, _, text)| {
        figures(text).map(|figures| (*revision, figures)).map_err(|why| odd(format!("figures: {why}")))
    });
    let quoted: Option<(u32, QuoteFigures)> = quoted.transpose()?;
    let valid_until = quoted.as_ref().map(|(_, figures)| figures.valid_until);
    // What is entered always comes with what happened.
    let (first, last) = (happenings.first(), happenings.last());
    let (Some(first), Some(last)) = (first, last) else { return Err(odd(NOTHING_HAPPENED.to_owned())) };
    let accepted = happenings.iter().rev().find(|one| one.state == State::Accepted);
    Ok(BookedCommission {
        id: row.get(0)?,
        reference: row.get(1)?,
        title: fill(&title, Markup::Text, &client),
        client,
        number: row.get(3)?,
        state: last.state.on(day, valid_until),
        since: last.day,
        begun: first.day,
        first_issued: quotes.first().map(|(_, day, _)| *day),
        accepted: accepted.map(|one| one.day),
        quoted,
        paid: Decimal::ZERO,
        minutes: 0.0,
    })
}
