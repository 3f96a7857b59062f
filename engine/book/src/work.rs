//! What it really took: minutes, cord, what was bought; and a plain timer.

use std::collections::BTreeMap;

use chrono::{NaiveDate, NaiveDateTime};
use rusqlite::{OptionalExtension, params};
use rust_decimal::Decimal;

use crate::act::Act;
use crate::entering::{entered, known_table, marked_note, since_enquiry, state_of};
use crate::error::BookError;
use crate::kind::{MOMENT, day_in, metres, metres_in, minutes, minutes_in, moment_in, money_in, within_money};
use crate::listing::WhichCommissions;
use crate::marks::{Markup, fill};
use crate::opening::Book;
use crate::records::BookedClient;
use crate::seal::seal;
use crate::state::State;
use crate::table::standing;

/// Minutes at the bench.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkLine {
    /// When.
    pub day: NaiveDate,
    /// At which step, if said.
    pub step: Option<String>,
    /// How long.
    pub minutes: f64,
    /// A remark.
    pub note: Option<String>,
}

/// Cord that was cut.
#[derive(Debug, Clone, PartialEq)]
pub struct CordUsed {
    /// When.
    pub day: NaiveDate,
    /// The cord's name in the store.
    pub cord: String,
    /// How much, in metres.
    pub metres: f64,
}

/// Something bought for a commission.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bought {
    /// When.
    pub day: NaiveDate,
    /// What it cost.
    pub amount: Decimal,
    /// What it was.
    pub what: String,
}

/// What a commission really took.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Actuals {
    /// Minutes, in order.
    pub work: Vec<WorkLine>,
    /// Cord, in order.
    pub cord: Vec<CordUsed>,
    /// What was bought, in order.
    pub bought: Vec<Bought>,
}

impl Actuals {
    /// All minutes.
    pub fn minutes(&self) -> f64 {
        self.work.iter().map(|line| line.minutes).sum()
    }

    fn days(&self) -> impl Iterator<Item = NaiveDate> {
        let days = self.work.iter().map(|line| line.day).chain(self.cord.iter().map(|line| line.day));
        days.chain(self.bought.iter().map(|line| line.day))
    }

    /// Says which figure can't be.
    fn judge(&self) -> Result<(), BookError> {
        let work = self.work.iter().map(|line| minutes(line.minutes).map(|_| ()));
        let cord = self.cord.iter().map(|line| metres(line.metres).map(|_| ()));
        let bought = self.bought.iter().map(|line| within_money(line.amount).map(|_| ()));
        let all: Result<(), String> = work.chain(cord).chain(bought).collect();
        all.map_err(|why| BookError::Wrong(why, "nothing was entered".to_owned()))
    }

    /// With the client's name filled in where remarks have its mark.
    pub(crate) fn filled(mut self, client: &BookedClient) -> Self {
        let notes = self.work.iter_mut().filter_map(|line| line.note.as_mut());
        for text in notes.chain(self.bought.iter_mut().map(|line| &mut line.what)) {
            *text = fill(text, Markup::Text, client);
        }
        self
    }

    /// Everything bought.
    pub fn bought_in_all(&self) -> Decimal {
        self.bought.iter().map(|bought| bought.amount).sum()
    }
}

/// The timer, running.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Timer {
    /// The commission's number, or its file's stem.
    pub name: String,
    /// At which step, if said.
    pub step: Option<String>,
    /// Since when, by the clock of the place.
    pub started: NaiveDateTime,
}

impl Book {
    /// Enters minutes, cord or what was bought.
    ///
    /// # Errors
    /// [`BookError`] when no commission is called so, when it was called off or declined, or a day or a figure can't be.
    pub fn log(&mut self, word: &str, took: &Actuals, day: NaiveDate) -> Result<(), BookError> {
        let id = self.find(word, day)?.id;
        took.judge()?;
        let refused = self.refused();
        let write = self.write()?;
        at_work(&write, id, word).map_err(&refused)??;
        for day in took.days() {
            since_enquiry(&write, id, day).map_err(&refused)??;
        }
        for line in &took.work {
            let add = "INSERT INTO work (commission, day, step, minutes, note) VALUES (?1, ?2, ?3, ?4, ?5)";
            let note = marked_note(&write, id, line.note.as_deref()).map_err(&refused)?;
            write.execute(add, params![id, line.day.to_string(), line.step, line.minutes, note]).map_err(&refused)?;
            entered(&write, "work").map_err(&refused)?;
        }
        for line in &took.cord {
            let add = "INSERT INTO cord_used (commission, day, cord, metres) VALUES (?1, ?2, ?3, ?4)";
            write.execute(add, params![id, line.day.to_string(), line.cord, line.metres]).map_err(&refused)?;
            entered(&write, "cord_used").map_err(&refused)?;
        }
        for line in &took.bought {
            let add = "INSERT INTO bought (commission, day, amount, what) VALUES (?1, ?2, ?3, ?4)";
            let what = marked_note(&write, id, Some(&line.what)).map_err(&refused)?;
            write.execute(add, params![id, line.day.to_string(), line.amount.to_string(), what]).map_err(&refused)?;
            entered(&write, "bought").map_err(&refused)?;
        }
        write.commit().map_err(&refused)
    }

    /// Starts the timer; it runs on through whatever becomes of the program.
    ///
    /// # Errors
    /// [`BookError`] when it runs already, no commission is called so, or it was called off or declined.
    pub fn start(&mut self, word: &str, step: Option<&str>, now: NaiveDateTime) -> Result<(), BookError> {
        let id = self.find(word, now.date())?.id;
        if let Some(timer) = self.timer()? {
            let why = format!("the timer runs already, for {} since {}", timer.name, timer.started.format("%H:%M"));
            return Err(BookError::Wrong(
                why,
                "enter its minutes with `reeve book stop`, or drop it with `reeve book stop --drop`".to_owned(),
            ));
        }
        let refused = self.refused();
        let write = self.write()?;
        at_work(&write, id, word).map_err(&refused)??;
        since_enquiry(&write, id, now.date()).map_err(&refused)??;
        let start = "INSERT INTO timer (one, commission, step, started) VALUES (1, ?1, ?2, ?3)";
        write.execute(start, params![id, step, now.format(MOMENT).to_string()]).map_err(&refused)?;
        entered(&write, "timer").map_err(&refused)?;
        write.commit().map_err(&refused)
    }

    /// Stops the timer and enters its minutes, to the nearest one; of a timer that ran for none nothing is entered.
    ///
    /// # Errors
    /// [`BookError`] when it does not run, ran for longer than can be, or the clock has gone back behind its start; or when
    /// the commission was called off meanwhile.
    pub fn stop(&mut self, now: NaiveDateTime, note: Option<&str>) -> Result<(Timer, f64), BookError> {
        let wrong = |why: &str, remedy: &str| BookError::Wrong(why.to_owned(), remedy.to_owned());
        let timer = self.timer()?.ok_or_else(|| wrong("the timer does not run", "start it with `reeve book start`"))?;
        let seconds = (now - timer.started).num_seconds();
        if seconds < 0 {
            return Err(wrong(
                "the clock stands before the timer's start",
                "set the clock right, or drop the timer with --drop and log the minutes yourself",
            ));
        }
        let minutes = minutes((f64::from(u32::try_from(seconds).unwrap_or(u32::MAX)) / 60.0).round())
            .map_err(|why| wrong(&why, "drop the timer with --drop and log the minutes yourself"))?;
        let refused = self.refused();
        let write = self.write()?;
        let of = "SELECT commission FROM timer";
        let id: i64 = write.query_row(of, [], |row| row.get(0)).map_err(&refused)?;
        at_work(&write, id, &timer.name).map_err(&refused)??;
        // A work of no minutes would count as one that took no time.
        if minutes > 0.0 {
            let note = marked_note(&write, id, note).map_err(&refused)?;
            let add = "INSERT INTO work (commission, day, step, minutes, note) \
                       SELECT commission, ?1, step, ?2, ?3 FROM timer";
            write.execute(add, params![timer.started.date().to_string(), minutes, note]).map_err(&refused)?;
            entered(&write, "work").map_err(&refused)?;
        }
        end_timer(&write).map_err(&refused)?;
        write.commit().map_err(&refused)?;
        Ok((timer, minutes))
    }

    /// Drops the timer; nothing is entered.
    ///
    /// # Errors
    /// [`BookError`] when the book can't be written.
    pub fn drop_timer(&mut self) -> Result<Option<Timer>, BookError> {
        let timer = self.timer()?;
        let refused = self.refused();
        let write = self.write()?;
        end_timer(&write).map_err(&refused)?;
        write.commit().map_err(&refused)?;
        Ok(timer)
    }

    /// The timer, if it runs.
    ///
    /// # Errors
    /// [`BookError`] when the book can't be read.
    pub fn timer(&self) -> Result<Option<Timer>, BookError> {
        let running = "SELECT coalesce(commission.number, commission.reference), timer.step, timer.started FROM timer \
                       JOIN commission ON commission.id = timer.commission";
        let read =
            |row: &rusqlite::Row<'_>| Ok(Timer { name: row.get(0)?, step: row.get(1)?, started: moment_in(row, 2)? });
        self.db.query_row(running, [], read).optional().map_err(self.refused())
    }

    /// What commissions took, by their ids. What was undone is not counted.
    pub(crate) fn took(&self, which: WhichCommissions) -> rusqlite::Result<BTreeMap<i64, Actuals>> {
        let mut all: BTreeMap<i64, Actuals> = BTreeMap::new();
        let rows = |columns: &str, table| format!("commission, {columns} FROM {}", standing(table));
        let work = self.grouped(&rows("day, step, minutes, note", "work"), which, "id", |row| {
            Ok(WorkLine { day: day_in(row, 1)?, step: row.get(2)?, minutes: minutes_in(row, 3)?, note: row.get(4)? })
        })?;
        let cord = self.grouped(&rows("day, cord, metres", "cord_used"), which, "id", |row| {
            Ok(CordUsed { day: day_in(row, 1)?, cord: row.get(2)?, metres: metres_in(row, 3)? })
        })?;
        let bought = self.grouped(&rows("day, amount, what", "bought"), which, "id", |row| {
            Ok(Bought { day: day_in(row, 1)?, amount: money_in(row, 2)?, what: row.get(3)? })
        })?;
        for (id, lines) in work {
            all.entry(id).or_default().work = lines;
        }
        for (id, lines) in cord {
            all.entry(id).or_default().cord = lines;
        }
        for (id, lines) in bought {
            all.entry(id).or_default().bought = lines;
        }
        Ok(all)
    }
}

/// Refuses work on what was called off or declined.
fn at_work(db: &rusqlite::Connection, id: i64, name: &str) -> rusqlite::Result<Result<(), BookError>> {
    let state = state_of(db, id)?;
    if !matches!(state, State::Cancelled | State::Declined) {
        return Ok(Ok(()));
    }
    let remedy = format!("if it was marked {state} by mistake, undo that first: `reeve book undo`");
    Ok(Err(BookError::Wrong(format!("{name} is {state}: nothing is logged for it any more"), remedy)))
}

fn end_timer(write: &rusqlite::Transaction<'_>) -> rusqlite::Result<()> {
    if write.execute("DELETE FROM timer", [])? > 0 {
        seal(write, Act::Ended, known_table("timer")?, "1")?;
    }
    Ok(())
}
