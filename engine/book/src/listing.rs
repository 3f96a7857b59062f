//! What stands in the book, read.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use rusqlite::{OptionalExtension, Row};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use crate::entering::{Client, Figures, date, decimal, json, state};
use crate::marks::{Kind, fill};
use crate::opening::Book;
use crate::state::State;
use crate::trouble::Trouble;
use crate::work::Took;

/// A commission as it stands.
#[derive(Debug, Clone, PartialEq)]
pub struct Commission {
    /// Its file's stem.
    pub reference: String,
    /// What it is about.
    pub title: String,
    /// Who asked.
    pub client: Client,
    /// Its number; `None` for an enquiry.
    pub number: Option<String>,
    /// Where it stands on the day of the list.
    pub state: State,
    /// The day of the last that happened.
    pub since: NaiveDate,
    /// The day it was first entered.
    pub begun: NaiveDate,
    /// The revision of its last quote, and what that comes to.
    pub quoted: Option<(u32, Figures)>,
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

impl Commission {
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
pub struct Entry {
    /// 0 for the first.
    pub revision: u32,
    /// When.
    pub day: NaiveDate,
    /// What it came to.
    pub figures: Figures,
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
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Happening {
    /// Where it then stood.
    pub state: State,
    /// When.
    pub day: NaiveDate,
    /// A remark.
    pub note: Option<String>,
}

/// A payment, or a refund below zero.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
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
    pub commission: Commission,
    /// What happened to it, in order.
    pub happenings: Vec<Happening>,
    /// Payments, in order.
    pub payments: Vec<Payment>,
    /// What it really took.
    pub took: Took,
}

/// A commission with all that the book knows of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Whole {
    /// How it went.
    pub course: Course,
    /// Its quotes, the first one first.
    pub entries: Vec<Entry>,
}

/// One row a commission: itself, its client, the last that happened, the first, the last quote, sums.
const LIST: &str = "
SELECT commission.id, commission.reference, commission.title, client.name, client.address, commission.number,
    last.state, last.day, first.day, entry.revision, entry.figures,
    (SELECT min(day) FROM entry WHERE entry.commission = commission.id),
    (SELECT day FROM happening WHERE commission = commission.id AND state = 'accepted' ORDER BY id DESC LIMIT 1),
    (SELECT group_concat(amount, ' ') FROM payment WHERE payment.commission = commission.id),
    (SELECT total(minutes) FROM work WHERE work.commission = commission.id)
FROM commission
JOIN client ON client.id = commission.client
JOIN happening AS last ON last.id = (SELECT max(id) FROM happening WHERE happening.commission = commission.id)
JOIN happening AS first ON first.id = (SELECT min(id) FROM happening WHERE happening.commission = commission.id)
LEFT JOIN entry ON entry.commission = commission.id
    AND entry.revision = (SELECT max(revision) FROM entry WHERE entry.commission = commission.id)
";

impl Book {
    /// Every commission as it stands on a day, in the order they were entered.
    ///
    /// # Errors
    /// [`Trouble`] when the book can't be read.
    pub fn list(&self, day: NaiveDate) -> Result<Vec<Commission>, Trouble> {
        let refused = self.refused();
        let mut asked = self.db.prepare(&format!("{LIST} ORDER BY commission.id")).map_err(&refused)?;
        let rows = asked.query_map([], |row| commission(row, day)).map_err(&refused)?;
        rows.collect::<Result<_, _>>().map_err(&refused)
    }

    /// One commission, by its number or its file's stem, with all that is known of it.
    ///
    /// # Errors
    /// [`Trouble`] when there is none.
    pub fn whole(&self, word: &str, day: NaiveDate) -> Result<Whole, Trouble> {
        let id = self.find(word, day)?.id;
        let refused = self.refused();
        let one = format!("{LIST} WHERE commission.id = ?1");
        let commission = self.db.query_row(&one, [id], |row| commission(row, day)).map_err(&refused)?;
        let mut of_it = self.courses_of(vec![commission], "WHERE commission = ?1", &[&id])?;
        let course = of_it.pop().ok_or_else(|| Trouble::Unknown(word.to_owned(), Vec::new()))?;
        Ok(Whole { course, entries: self.entries(id).map_err(&refused)? })
    }

    /// How every commission went, in the order they were entered.
    ///
    /// # Errors
    /// [`Trouble`] when the book can't be read.
    pub fn courses(&self, day: NaiveDate) -> Result<Vec<Course>, Trouble> {
        self.courses_of(self.list(day)?, "", &[])
    }

    /// What happened, was paid and was taken, read in one go for all commissions.
    fn courses_of(
        &self,
        commissions: Vec<Commission>,
        which: &str,
        of: &[&dyn rusqlite::ToSql],
    ) -> Result<Vec<Course>, Trouble> {
        let refused = self.refused();
        let mut happenings = self
            .grouped(&format!("SELECT commission, state, day, note FROM happening {which} ORDER BY id"), of, |row| {
                Ok(Happening { state: state(row, 1)?, day: date(row, 2)?, note: row.get(3)? })
            })
            .map_err(&refused)?;
        let mut payments = self
            .grouped(&format!("SELECT commission, day, amount, note FROM payment {which} ORDER BY id"), of, |row| {
                Ok(Payment { day: date(row, 1)?, amount: decimal(row, 2)?, note: row.get(3)? })
            })
            .map_err(&refused)?;
        let mut took = self.took(which, of).map_err(&refused)?;
        let course = |commission: Commission| {
            let id = commission.id;
            Course {
                happenings: happenings.remove(&id).unwrap_or_default(),
                payments: payments.remove(&id).unwrap_or_default(),
                took: took.remove(&id).unwrap_or_default(),
                commission,
            }
        };
        Ok(commissions.into_iter().map(course).collect())
    }

    /// A page or document of a quote as it was issued, filled in; of the last revision if none is named.
    ///
    /// # Errors
    /// [`Trouble`] when there is no such quote or page.
    pub fn page(&self, word: &str, revision: Option<u32>, name: &str, day: NaiveDate) -> Result<String, Trouble> {
        let known = self.find(word, day)?;
        let refused = self.refused();
        let kept = "SELECT page.text, client.name, client.address FROM page \
                    JOIN entry ON entry.id = page.entry JOIN commission ON commission.id = entry.commission \
                    JOIN client ON client.id = commission.client \
                    WHERE entry.commission = ?1 AND page.name = ?3 AND (entry.revision = ?2 OR ?2 IS NULL) \
                    ORDER BY entry.revision DESC LIMIT 1";
        let read = |row: &Row<'_>| {
            let client = Client { name: row.get(1)?, address: json(row, 2)? };
            Ok(fill(&row.get::<_, String>(0)?, Kind::of(name), &client))
        };
        let found = self.db.query_row(kept, rusqlite::params![known.id, revision, name], read);
        found.optional().map_err(&refused)?.ok_or_else(|| {
            let why = match revision {
                Some(revision) => format!("`{word}` has no {name} of revision {revision}"),
                None => format!("`{word}` has no {name}: no quote was issued"),
            };
            Trouble::Wrong(why, "`reeve book show` says what there is".to_owned())
        })
    }

    fn entries(&self, id: i64) -> rusqlite::Result<Vec<Entry>> {
        let all = "SELECT revision, day, figures, program, catalogue, changes, maker_changes, \
                   (SELECT group_concat(name, ' ') FROM page WHERE page.entry = entry.id) \
                   FROM entry WHERE commission = ?1 ORDER BY revision";
        let mut asked = self.db.prepare(all)?;
        let entries = asked.query_map([id], |row| {
            let names: Option<String> = row.get(7)?;
            Ok(Entry {
                revision: row.get(0)?,
                day: date(row, 1)?,
                figures: json(row, 2)?,
                program: row.get(3)?,
                catalogue: row.get(4)?,
                changes: json(row, 5)?,
                maker_changes: json(row, 6)?,
                pages: names.unwrap_or_default().split(' ').map(str::to_owned).collect(),
            })
        })?;
        entries.collect()
    }

    /// Rows by their commission, which is the first column.
    pub(crate) fn grouped<T>(
        &self,
        question: &str,
        of: &[&dyn rusqlite::ToSql],
        mut read: impl FnMut(&Row<'_>) -> rusqlite::Result<T>,
    ) -> rusqlite::Result<BTreeMap<i64, Vec<T>>> {
        let mut asked = self.db.prepare(question)?;
        let mut rows = asked.query(of)?;
        let mut all: BTreeMap<i64, Vec<T>> = BTreeMap::new();
        while let Some(row) = rows.next()? {
            all.entry(row.get(0)?).or_default().push(read(row)?);
        }
        Ok(all)
    }
}

fn commission(row: &Row<'_>, day: NaiveDate) -> rusqlite::Result<Commission> {
    let client = Client { name: row.get(3)?, address: json(row, 4)? };
    let title: String = row.get(2)?;
    let revision: Option<u32> = row.get(9)?;
    let quoted: Option<(u32, Figures)> =
        revision.map(|revision| Ok::<_, rusqlite::Error>((revision, json(row, 10)?))).transpose()?;
    let valid_until = quoted.as_ref().map(|(_, figures)| figures.valid_until);
    let paid: Option<String> = row.get(13)?;
    let paid = paid.unwrap_or_default();
    let amounts = paid.split(' ').filter(|amount| !amount.is_empty());
    Ok(Commission {
        id: row.get(0)?,
        reference: row.get(1)?,
        title: fill(&title, Kind::Text, &client),
        client,
        number: row.get(5)?,
        state: state(row, 6)?.on(day, valid_until),
        since: date(row, 7)?,
        begun: date(row, 8)?,
        first_issued: row.get::<_, Option<String>>(11)?.and_then(|day| day.parse().ok()),
        accepted: row.get::<_, Option<String>>(12)?.and_then(|day| day.parse().ok()),
        quoted,
        paid: amounts.filter_map(|amount| amount.parse::<Decimal>().ok()).sum(),
        minutes: row.get(14)?,
    })
}
