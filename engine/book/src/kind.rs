//! What a column of the book can hold, and nothing else: read alike from the database and from text that is read in.

use std::fmt;

use chrono::{NaiveDate, NaiveDateTime};
use rusqlite::Row;
use rusqlite::types::{Type, ValueRef};
use rust_decimal::Decimal;
use serde::Serialize;
use serde::de::DeserializeOwned;

use crate::records::{PacedFigures, QuoteFigures};
use crate::state::State;

/// The most money of one figure or one entry, either way.
pub const MOST_MONEY: i64 = 1_000_000_000;
/// The most minutes of one entry.
pub const MOST_MINUTES: f64 = 100_000.0;
/// The most cord of one entry, in metres.
pub const MOST_METRES: f64 = 1_000_000.0;
/// The years that a day of the book can be in.
pub(crate) const YEARS: std::ops::RangeInclusive<i32> = 2000..=2199;

/// The most bench hours of a quote, and the fewest that are more than none.
const MOST_HOURS: i64 = 10_000_000;
const LEAST_HOURS: Decimal = Decimal::from_parts(1, 0, 0, false, 6);
/// The most that minutes are in doubt, as a logarithm: far beyond any that the sums make.
const MOST_DOUBT: i64 = 10;
/// How the start of the timer is kept.
pub(crate) const MOMENT: &str = "%Y-%m-%dT%H:%M:%S";

/// What a column holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum ColumnKind {
    /// The number of a row, from 1.
    Id,
    /// A whole number from 0.
    Count,
    /// A year.
    Year,
    /// What was typed.
    Text,
    /// A name: what was typed, and not nothing.
    Name,
    /// A day, `2027-01-31`.
    Day,
    /// A day and a time, `2027-01-31T09:30:00`.
    Moment,
    /// An amount in the shop's currency.
    Money,
    /// Minutes.
    Minutes,
    /// Metres.
    Metres,
    /// The word of a state.
    State,
    /// Lines of text, as JSON.
    Lines,
    /// The figures of a quote, as JSON.
    Figures,
    /// So many letters of 0 to 9 and a to f.
    Hex(usize),
    /// One of a few words.
    Word(&'static [&'static str]),
}

impl ColumnKind {
    /// Says what is wrong with a value.
    pub(crate) fn judge(self, value: ValueRef<'_>) -> Result<(), String> {
        match (self, value) {
            (Self::Id, ValueRef::Integer(number)) if number > 0 => Ok(()),
            (Self::Count, ValueRef::Integer(number)) if number >= 0 => Ok(()),
            (Self::Year, ValueRef::Integer(year)) if YEARS.contains(&i32::try_from(year).unwrap_or_default()) => Ok(()),
            (Self::Minutes, ValueRef::Real(number)) => minutes(number).map(|_| ()),
            (Self::Metres, ValueRef::Real(number)) => metres(number).map(|_| ()),
            (Self::Minutes | Self::Metres | Self::Id | Self::Count | Self::Year, other) => {
                Err(format!("`{}` is not {self}", shown(other)))
            }
            (_, ValueRef::Text(bytes)) => {
                let text = std::str::from_utf8(bytes).map_err(|_| "it is not text".to_owned())?;
                self.judge_text(text)
            }
            (_, other) => Err(format!("`{}` is not {self}", shown(other))),
        }
    }

    fn judge_text(self, text: &str) -> Result<(), String> {
        let no = || Err(format!("`{}` is not {self}", short(text)));
        match self {
            Self::Day => day(text).map(|_| ()),
            Self::Moment => moment(text).map(|_| ()),
            Self::Money => money(text).map(|_| ()),
            Self::State => state(text).map(|_| ()),
            Self::Lines => from_json::<Vec<String>>(text).map(|_| ()),
            Self::Figures => figures(text).map(|_| ()),
            Self::Name if text.is_empty() => Err("it is empty".to_owned()),
            Self::Hex(length) if text.len() != length || !text.bytes().all(is_hex) => no(),
            Self::Word(words) if !words.contains(&text) => no(),
            _ => Ok(()),
        }
    }

    /// Whether it is a number that may have decimals.
    pub(crate) fn is_real(self) -> bool {
        matches!(self, Self::Minutes | Self::Metres)
    }
}

impl fmt::Display for ColumnKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Id => f.write_str("a whole number from 1"),
            Self::Count => f.write_str("a whole number from 0"),
            Self::Year => write!(f, "a year from {} to {}", YEARS.start(), YEARS.end()),
            Self::Text | Self::Name => f.write_str("text"),
            Self::Day => f.write_str("a day"),
            Self::Moment => f.write_str("a day and a time"),
            Self::Money => f.write_str("an amount"),
            Self::Minutes => f.write_str("minutes"),
            Self::Metres => f.write_str("metres"),
            Self::State => f.write_str("a state"),
            Self::Lines => f.write_str("lines of text"),
            Self::Figures => f.write_str("the figures of a quote"),
            Self::Hex(length) => write!(f, "{length} letters of 0 to 9 and a to f"),
            Self::Word(words) => write!(f, "one of {}", words.join(", ")),
        }
    }
}

fn is_hex(byte: u8) -> bool {
    byte.is_ascii_digit() || (b'a'..=b'f').contains(&byte)
}

fn shown(value: ValueRef<'_>) -> String {
    match value {
        ValueRef::Null => "nothing".to_owned(),
        ValueRef::Integer(number) => number.to_string(),
        ValueRef::Real(number) => number.to_string(),
        ValueRef::Text(bytes) => short(&String::from_utf8_lossy(bytes)),
        ValueRef::Blob(_) => "bytes".to_owned(),
    }
}

/// The beginning of a text, for a message.
fn short(text: &str) -> String {
    const MOST: usize = 40;
    let mut short: String = text.chars().take(MOST).collect();
    if short.len() < text.len() {
        short.push('…');
    }
    short
}

/// A day as the book writes it, `2027-01-31`: read by place, for a long list has tens of thousands of them.
pub(crate) fn day(text: &str) -> Result<NaiveDate, String> {
    let bytes = text.as_bytes();
    let written = bytes.len() == 10
        && bytes
            .iter()
            .enumerate()
            .all(|(at, byte)| if at == 4 || at == 7 { *byte == b'-' } else { byte.is_ascii_digit() });
    let number = |from: usize, to: usize| text.get(from..to).and_then(|digits| digits.parse::<u32>().ok());
    let found = match (number(0, 4), number(5, 7), number(8, 10)) {
        (Some(year), Some(month), Some(day)) if written => NaiveDate::from_ymd_opt(year.cast_signed(), month, day),
        _ => None,
    };
    let found = found.ok_or_else(|| format!("`{}` is not a day", short(text)))?;
    possible(found)
}

/// A day that an entry can have.
pub(crate) fn possible(day: NaiveDate) -> Result<NaiveDate, String> {
    use chrono::Datelike;
    if YEARS.contains(&day.year()) {
        return Ok(day);
    }
    Err(format!("{day} can't be: days of the book are of the years {} to {}", YEARS.start(), YEARS.end()))
}

fn moment(text: &str) -> Result<NaiveDateTime, String> {
    let found = NaiveDateTime::parse_from_str(text, MOMENT).ok();
    let found = found.filter(|moment| moment.format(MOMENT).to_string() == text);
    let found = found.ok_or_else(|| format!("`{}` is not a day and a time", short(text)))?;
    possible(found.date()).map(|_| found)
}

/// An amount as the book writes it.
fn money(text: &str) -> Result<Decimal, String> {
    let found = text.parse::<Decimal>().ok().filter(|amount| amount.to_string() == text);
    within_money(found.ok_or_else(|| format!("`{}` is not an amount", short(text)))?)
}

/// An amount within what one entry can have.
pub(crate) fn within_money(amount: Decimal) -> Result<Decimal, String> {
    if amount.abs() <= Decimal::from(MOST_MONEY) {
        return Ok(amount);
    }
    Err(format!("{amount} can't be: at most {MOST_MONEY}, either way"))
}

pub(crate) fn minutes(number: f64) -> Result<f64, String> {
    if (0.0..=MOST_MINUTES).contains(&number) {
        return Ok(number);
    }
    Err(format!("{number} minutes can't be: from 0 to {MOST_MINUTES}"))
}

pub(crate) fn metres(number: f64) -> Result<f64, String> {
    if (0.0..=MOST_METRES).contains(&number) {
        return Ok(number);
    }
    Err(format!("{number} metres can't be: from 0 to {MOST_METRES}"))
}

fn state(text: &str) -> Result<State, String> {
    // A quote lapses by the date alone; that is never entered.
    let found = State::of_word(text).filter(|state| *state != State::Lapsed);
    found.ok_or_else(|| format!("`{}` is not a state", short(text)))
}

/// The figures of a quote, each within its bounds.
pub(crate) fn figures(text: &str) -> Result<QuoteFigures, String> {
    let figures: QuoteFigures = from_json(text)?;
    judge_figures(&figures)?;
    Ok(figures)
}

/// Says which figure of a quote can't be.
pub(crate) fn judge_figures(figures: &QuoteFigures) -> Result<(), String> {
    let QuoteFigures {
        currency,
        net,
        gross,
        deposit,
        paid,
        pace,
        hours,
        sure_hours,
        confidence,
        material,
        cord_cost,
        labour,
        cost,
        fees,
        margin,
        cord,
        steps,
        paced,
        valid_until,
        promised,
        needed_by,
    } = figures;
    if currency.len() != 3 || !currency.bytes().all(|byte| byte.is_ascii_uppercase()) {
        return Err(format!("currency: `{}` is not three letters of ISO 4217", short(currency)));
    }
    let amounts = [
        ("net", net),
        ("gross", gross),
        ("deposit", deposit),
        ("paid", paid),
        ("material", material),
        ("cord_cost", cord_cost),
        ("labour", labour),
        ("cost", cost),
        ("fees", fees),
        ("margin", margin),
    ];
    for (name, amount) in amounts {
        within_money(*amount).map_err(|why| format!("{name}: {why}"))?;
    }
    let up_to = |name: &str, number: &Decimal, most: i64| {
        let fits = *number >= Decimal::ZERO && *number <= Decimal::from(most);
        if fits { Ok(()) } else { Err(format!("{name}: {number} can't be: from 0 to {most}")) }
    };
    up_to("pace", pace, 1000)?;
    up_to("confidence", confidence, 100)?;
    for (name, number) in [("hours", hours), ("sure_hours", sure_hours)] {
        up_to(name, number, MOST_HOURS)?;
        if !number.is_zero() && *number < LEAST_HOURS {
            return Err(format!("{name}: {number} can't be: none, or at least {LEAST_HOURS}"));
        }
    }
    cord.iter().try_for_each(|(_, metres)| up_to("cord", metres, MOST_MONEY))?;
    let minutes = steps.iter().flat_map(|step| [&step.base, &step.pull]);
    minutes.into_iter().try_for_each(|minutes| up_to("steps", minutes, MOST_MONEY))?;
    steps.iter().try_for_each(|step| up_to("steps", &step.doubt, MOST_DOUBT))?;
    if let Some(PacedFigures { base, pull, doubt, stated }) = paced {
        [base, pull, stated].into_iter().try_for_each(|minutes| up_to("paced", minutes, MOST_MONEY))?;
        up_to("paced", doubt, MOST_DOUBT)?;
    }
    let days = [("valid_until", Some(valid_until)), ("promised", promised.as_ref()), ("needed_by", needed_by.as_ref())];
    for (name, day) in days {
        day.map_or(Ok(()), |day| possible(*day).map(|_| ()).map_err(|why| format!("{name}: {why}")))?;
    }
    Ok(())
}

/// A sum that can't run over; it can't with entries within their bounds, unless there are billions of them.
pub(crate) fn sum(amounts: impl IntoIterator<Item = Decimal>) -> rusqlite::Result<Decimal> {
    let over = || odd("the sum of its amounts can't be told".to_owned());
    amounts.into_iter().try_fold(Decimal::ZERO, |sum, amount| sum.checked_add(amount).ok_or_else(over))
}

/// Something kept that can't be what the book wrote, in words.
#[derive(Debug)]
pub(crate) struct ImpossibleError(pub(crate) String);

impl fmt::Display for ImpossibleError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for ImpossibleError {}

/// A value that the book wrote and can't read back.
pub(crate) fn odd(why: String) -> rusqlite::Error {
    rusqlite::Error::FromSqlConversionFailure(0, Type::Text, Box::new(ImpossibleError(why)))
}

/// A value of text, read; a fault names its column.
fn read<T>(row: &Row<'_>, column: usize, of: impl Fn(&str) -> Result<T, String>) -> rusqlite::Result<T> {
    let value = row.get_ref(column)?;
    let found = value.as_str().map_err(|_| format!("`{}` is not text", shown(value))).and_then(of);
    found.map_err(|why| odd(format!("{}: {why}", named(row, column))))
}

fn named<'a>(row: &'a Row<'_>, column: usize) -> &'a str {
    row.as_ref().column_name(column).unwrap_or("a column")
}

pub(crate) fn money_in(row: &Row<'_>, column: usize) -> rusqlite::Result<Decimal> {
    read(row, column, money)
}

pub(crate) fn day_in(row: &Row<'_>, column: usize) -> rusqlite::Result<NaiveDate> {
    read(row, column, day)
}

pub(crate) fn moment_in(row: &Row<'_>, column: usize) -> rusqlite::Result<NaiveDateTime> {
    read(row, column, moment)
}

pub(crate) fn state_in(row: &Row<'_>, column: usize) -> rusqlite::Result<State> {
    read(row, column, state)
}

pub(crate) fn figures_in(row: &Row<'_>, column: usize) -> rusqlite::Result<QuoteFigures> {
    read(row, column, figures)
}

pub(crate) fn lines_in(row: &Row<'_>, column: usize) -> rusqlite::Result<Vec<String>> {
    read(row, column, from_json)
}

pub(crate) fn minutes_in(row: &Row<'_>, column: usize) -> rusqlite::Result<f64> {
    minutes(row.get(column)?).map_err(|why| odd(format!("{}: {why}", named(row, column))))
}

pub(crate) fn metres_in(row: &Row<'_>, column: usize) -> rusqlite::Result<f64> {
    metres(row.get(column)?).map_err(|why| odd(format!("{}: {why}", named(row, column))))
}

/// A value as text of JSON.
pub(crate) fn to_json<T: Serialize>(value: &T) -> rusqlite::Result<String> {
    serde_json::to_string(value).map_err(|error| rusqlite::Error::ToSqlConversionFailure(Box::new(error)))
}

fn from_json<T: DeserializeOwned>(text: &str) -> Result<T, String> {
    serde_json::from_str(text).map_err(|error| error.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn refused(kind: ColumnKind, value: ValueRef<'_>, told: &str) {
        let said = kind.judge(value).err().unwrap_or_default();
        assert!(said.contains(told), "{told}: {said}");
    }

    #[test]
    fn what_can_be_is_read() {
        for (kind, text) in [
            (ColumnKind::Day, "2027-02-28"),
            (ColumnKind::Money, "-120.50"),
            (ColumnKind::Money, "1000000000"),
            (ColumnKind::State, "on-bench"),
            (ColumnKind::Moment, "2027-02-28T23:59:59"),
            (ColumnKind::Lines, "[\"a\"]"),
            (ColumnKind::Text, ""),
            (ColumnKind::Hex(4), "00af"),
            (ColumnKind::Word(&["one"]), "one"),
        ] {
            assert_eq!(kind.judge(ValueRef::Text(text.as_bytes())), Ok(()), "{text}");
        }
        assert_eq!(ColumnKind::Minutes.judge(ValueRef::Real(0.5)), Ok(()));
        assert_eq!(ColumnKind::Year.judge(ValueRef::Integer(2027)), Ok(()));
    }

    #[test]
    fn what_can_not_be_is_refused() {
        for (kind, text, told) in [
            (ColumnKind::Day, "2027-02-31", "is not a day"),
            (ColumnKind::Day, "9999-01-01", "2000 to 2199"),
            (ColumnKind::Day, "0001-01-01", "2000 to 2199"),
            (ColumnKind::Day, "2027-2-03", "is not a day"),
            (ColumnKind::Day, "+027-02-03", "is not a day"),
            (ColumnKind::Money, "NaN", "is not an amount"),
            (ColumnKind::Money, "1_000", "is not an amount"),
            (ColumnKind::Money, "1e3", "is not an amount"),
            (ColumnKind::Money, "79228162514264337593543950335", "can't be"),
            (ColumnKind::Money, "-1000000000.01", "can't be"),
            (ColumnKind::State, "sold", "is not a state"),
            (ColumnKind::State, "lapsed", "is not a state"),
            (ColumnKind::Moment, "2027-02-31T09:00:00", "is not a day and a time"),
            (ColumnKind::Lines, "[1]", "string"),
            (ColumnKind::Name, "", "empty"),
            (ColumnKind::Hex(4), "00AF", "letters of 0 to 9"),
            (ColumnKind::Word(&["one", "two"]), "three", "one of one, two"),
            (ColumnKind::Minutes, "5", "is not minutes"),
        ] {
            refused(kind, ValueRef::Text(text.as_bytes()), told);
        }
        for number in [-5.0, -0.1, f64::NAN, f64::INFINITY, f64::MAX, 100_001.0] {
            refused(ColumnKind::Minutes, ValueRef::Real(number), "minutes can't be");
        }
        refused(ColumnKind::Metres, ValueRef::Real(-1.0), "metres can't be");
        refused(ColumnKind::Money, ValueRef::Null, "`nothing` is not an amount");
        refused(ColumnKind::Text, ValueRef::Blob(b"x"), "`bytes` is not text");
        refused(ColumnKind::Text, ValueRef::Text(b"\xff"), "not text");
        refused(ColumnKind::Id, ValueRef::Integer(0), "from 1");
        refused(ColumnKind::Year, ValueRef::Integer(9999), "2000 to 2199");
    }
}
