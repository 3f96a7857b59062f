//! Seals: every row carries a digest made when it was entered, and every seal one of the seal before, so that a row
//! altered, taken out or put in between is noticed.
//!
//! A row that was rightly changed (a commission that got its number, a client forgotten) is sealed again; its last seal
//! counts. A seal's salt keeps what is personal from being guessed from a digest, and is wiped when the seal no longer counts.
//!
//! There is no secret in it: whoever rewrites all seals is not noticed by the book alone. A seal that was written down
//! elsewhere ([`Seals::word`]) tells.

use std::collections::HashMap;
use std::fmt::Write;

use rusqlite::types::ValueRef;
use rusqlite::{Connection, OptionalExtension, Row, params};
use sha2::{Digest, Sha256};

use crate::act::Act;
use crate::kind::{ImpossibleError, odd};
use crate::table::{BookTable, SEALS, TABLES};

/// What is digested of a row, and of a seal: their first versions.
const OF_A_ROW: &[u8] = b"reeve book row 1";
const OF_A_SEAL: &[u8] = b"reeve book seal 1";

/// How many seals there are, and the last one's link.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Seals {
    /// How many.
    pub count: u64,
    /// What hangs on all of them: 64 letters of 0 to 9 and a to f; nothing without any.
    pub link: String,
}

impl Seals {
    const SHOWN: usize = 16;

    /// Short enough to write down: `57-3f2a9c0b11d24e68`.
    pub fn word(&self) -> String {
        format!("{}-{}", self.count, self.link.get(..Self::SHOWN).unwrap_or(&self.link))
    }

    /// From the word; `None` if it is none.
    pub fn of_word(word: &str) -> Option<Self> {
        let (count, link) = word.trim().split_once('-')?;
        let fits = (8..=64).contains(&link.len()) && link.bytes().all(|byte| byte.is_ascii_hexdigit());
        fits.then(|| Some(Self { count: count.parse().ok()?, link: link.to_lowercase() })).flatten()
    }
}

/// A seal as it stands.
#[derive(Debug, Clone)]
pub(crate) struct Seal {
    pub(crate) nth: i64,
    pub(crate) act: String,
    pub(crate) what: String,
    pub(crate) key: String,
    /// Nothing if it no longer counts.
    pub(crate) salt: Option<String>,
    /// Nothing if the row was taken out.
    pub(crate) digest: Option<String>,
    pub(crate) link: String,
}

impl Seal {
    /// From a row of [`SEALS`].
    pub(crate) fn read(row: &Row<'_>) -> rusqlite::Result<Self> {
        Ok(Self {
            nth: row.get(0)?,
            act: row.get(1)?,
            what: row.get(2)?,
            key: row.get(3)?,
            salt: row.get(4)?,
            digest: row.get(5)?,
            link: row.get(6)?,
        })
    }

    /// The link that it must have behind another.
    pub(crate) fn linked(&self, before: &str) -> String {
        let mut bytes = SealBytes::new(OF_A_SEAL);
        bytes.part(before.as_bytes());
        bytes.part(&self.nth.to_be_bytes());
        for word in [&self.act, &self.what, &self.key, self.digest.as_deref().unwrap_or_default()] {
            bytes.part(word.as_bytes());
        }
        bytes.digest()
    }
}

/// Bytes to be digested: parts with their lengths before them, so that no two parts can be taken for others.
struct SealBytes(Sha256);

impl SealBytes {
    fn new(of: &[u8]) -> Self {
        let mut bytes = Self(Sha256::new());
        bytes.part(of);
        bytes
    }

    fn part(&mut self, part: &[u8]) {
        self.0.update((part.len() as u64).to_be_bytes());
        self.0.update(part);
    }

    fn digest(self) -> String {
        self.0.finalize().iter().fold(String::with_capacity(64), |mut hex, byte| {
            let _ = write!(hex, "{byte:02x}");
            hex
        })
    }
}

/// The digest of a row: of its salt, its table, and the name, kind and bytes of each column that holds something. Empty ones
/// are left out, so that a column that a later form adds changes no digest.
pub(crate) fn digest<'a>(salt: &str, table: &BookTable, value: impl Fn(usize) -> ValueRef<'a>) -> String {
    let mut bytes = SealBytes::new(OF_A_ROW);
    bytes.part(salt.as_bytes());
    bytes.part(table.name.as_bytes());
    for (at, column) in table.columns.iter().enumerate() {
        let mut held = |kind: &[u8], value: &[u8]| {
            bytes.part(column.name.as_bytes());
            bytes.part(kind);
            bytes.part(value);
        };
        match value(at) {
            ValueRef::Null => {}
            ValueRef::Integer(number) => held(b"whole", &number.to_be_bytes()),
            ValueRef::Real(number) => held(b"real", &number.to_bits().to_be_bytes()),
            ValueRef::Text(text) => held(b"text", text),
            ValueRef::Blob(blob) => held(b"blob", blob),
        }
    }
    bytes.digest()
}

/// The values of a row.
pub(crate) fn values<'a>(row: &'a Row<'_>) -> impl Fn(usize) -> ValueRef<'a> {
    |at| row.get_ref(at).unwrap_or(ValueRef::Null)
}

/// Seals a row as it stands now; its seals before no longer count.
///
/// What can't be is not sealed, and so not entered.
pub(crate) fn seal(db: &Connection, act: Act, table: &BookTable, key: &str) -> rusqlite::Result<()> {
    let salt: String = db.query_row("SELECT lower(hex(randomblob(16)))", [], |row| row.get(0))?;
    let read = |row: &Row<'_>| {
        let value = values(row);
        for (at, column) in table.columns.iter().enumerate() {
            column.judge(value(at)).map_err(|why| refuse(format!("{} {key}: {why}", table.name)))?;
        }
        Ok(digest(&salt, table, value))
    };
    let digest = db.query_row(&table.one(), [key], read).optional()?;
    add(db, act, table.name, key, digest.map(|digest| (salt.as_str(), digest)))
}

fn refuse(why: String) -> rusqlite::Error {
    rusqlite::Error::ToSqlConversionFailure(Box::new(ImpossibleError(why)))
}

/// Adds a seal behind the last.
fn add(db: &Connection, act: Act, what: &str, key: &str, sealed: Option<(&str, String)>) -> rusqlite::Result<()> {
    let before = last(db)?;
    let nth = i64::try_from(before.count).ok().and_then(|count| count.checked_add(1));
    let nth = nth.ok_or_else(|| odd("the count of seals can't be".to_owned()))?;
    let (salt, digest) = sealed.map_or((None, None), |(salt, digest)| (Some(salt.to_owned()), Some(digest)));
    let mut seal = Seal {
        nth,
        act: act.word().to_owned(),
        what: what.to_owned(),
        key: key.to_owned(),
        salt,
        digest,
        link: String::new(),
    };
    seal.link = seal.linked(&before.link);
    let wipe = "UPDATE seal SET salt = NULL WHERE what = ?1 AND key = ?2 AND salt IS NOT NULL";
    db.prepare_cached(wipe)?.execute([what, key])?;
    let insert = "INSERT INTO seal (nth, act, what, key, salt, digest, link) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";
    let Seal { nth, act, what, key, salt, digest, link } = seal;
    db.prepare_cached(insert)?.execute(params![nth, act, what, key, salt, digest, link])?;
    set_last(db, nth, &link)
}

/// Notes which seal is the last.
pub(crate) fn set_last(db: &Connection, count: i64, link: &str) -> rusqlite::Result<()> {
    db.prepare_cached("UPDATE sealed SET count = ?1, link = ?2")?.execute(params![count, link]).map(|_| ())
}

/// Which seal is the last, as noted.
pub(crate) fn last(db: &Connection) -> rusqlite::Result<Seals> {
    let noted = db.query_row("SELECT count, link FROM sealed", [], |row| Ok((row.get::<_, i64>(0)?, row.get(1)?)));
    let (count, link) = noted.optional()?.ok_or_else(|| odd("which seal is the last is not noted".to_owned()))?;
    let count = u64::try_from(count).map_err(|_| odd("the count of seals can't be".to_owned()))?;
    Ok(Seals { count, link })
}

/// Seals every row as it stands, whatever it holds: of a book that had no seals. Says how many.
pub(crate) fn seal_found(db: &Connection) -> rusqlite::Result<u64> {
    for table in TABLES {
        let mut asked = db.prepare(&table.all())?;
        let mut rows = asked.query([])?;
        while let Some(row) = rows.next()? {
            let salt: String =
                db.prepare_cached("SELECT lower(hex(randomblob(16)))")?.query_row([], |row| row.get(0))?;
            let digest = digest(&salt, table, values(row));
            add(db, Act::Found, table.name, &table.key(values(row)), Some((&salt, digest)))?;
        }
    }
    last(db).map(|seals| seals.count)
}

/// The seals that count, and what does not hold among the seals themselves.
#[derive(Debug, Default)]
pub(crate) struct Chain {
    /// By table and key.
    counts: HashMap<(String, String), Seal>,
    last: Seals,
}

impl Chain {
    /// Takes the next seal; says what is wrong with it.
    pub(crate) fn take(&mut self, seal: Seal) -> Result<(), String> {
        let due = self.last.count + 1;
        let (nth, fits) = (seal.nth, u64::try_from(seal.nth).is_ok_and(|nth| nth == due));
        let linked = seal.linked(&self.last.link) == seal.link;
        let ended = seal.digest.is_none() == (seal.act == Act::Ended.word());
        self.last = Seals { count: u64::try_from(nth).unwrap_or(due), link: seal.link.clone() };
        let salted = seal.salt.is_none() || seal.digest.is_some();
        let before = self.counts.insert((seal.what.clone(), seal.key.clone()), seal);
        if !fits {
            return Err(format!("seal {nth} follows where seal {due} is due: some were taken out or put in"));
        }
        if !linked {
            return Err(format!("seal {nth} is not the one that was made: it or one before it was altered"));
        }
        if !ended || !salted || before.is_some_and(|before| before.salt.is_some()) {
            return Err(format!("seal {nth} can't stand as it does"));
        }
        Ok(())
    }

    /// Takes out the seal of a row that is there; says what is wrong with the row.
    pub(crate) fn meet<'a>(&mut self, table: &BookTable, value: impl Fn(usize) -> ValueRef<'a>) -> Result<(), String> {
        let key = table.key(&value);
        match self.counts.remove(&(table.name.to_owned(), key)) {
            None => Err("it was never entered: it has no seal".to_owned()),
            Some(seal) => match (&seal.salt, &seal.digest) {
                (_, None) => Err("it was taken out, and put in again".to_owned()),
                (Some(salt), Some(known)) if digest(salt, table, value) == *known => Ok(()),
                _ => Err("it was altered: it is not what was sealed".to_owned()),
            },
        }
    }

    /// Seals whose rows were not met.
    pub(crate) fn missed(&self) -> impl Iterator<Item = &Seal> {
        self.counts.values().filter(|seal| seal.digest.is_some())
    }

    /// The last seal so far.
    pub(crate) fn last(&self) -> &Seals {
        &self.last
    }
}

/// Asks for all seals, in order.
pub(crate) fn all_seals() -> String {
    SEALS.all()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn acts_have_their_words() {
        let all = [Act::Entered, Act::Changed, Act::Forgotten, Act::Ended, Act::Found];
        assert_eq!(all.map(Act::word), crate::act::ACTS);
    }

    #[test]
    fn a_seal_is_written_down_and_read() {
        let seals = Seals { count: 57, link: "0123456789abcdef".repeat(4) };
        assert_eq!(seals.word(), "57-0123456789abcdef");
        let read = Seals::of_word("57-0123456789ABCDEF");
        assert_eq!(read, Some(Seals { count: 57, link: "0123456789abcdef".to_owned() }));
        assert_eq!(
            [Seals::of_word("57"), Seals::of_word("x-0123456789abcdef"), Seals::of_word("57-xyz")],
            [None, None, None]
        );
    }

    /// The bytes are a promise: a book that was sealed must be found sound by every later program.
    #[test]
    fn digests_are_over_the_bytes_that_are_promised() {
        let payment = crate::table::table("payment").map(|table| {
            let values = [
                ValueRef::Integer(1),
                ValueRef::Integer(2),
                ValueRef::Text(b"2027-01-31"),
                ValueRef::Text(b"9.00"),
                ValueRef::Null,
            ];
            digest("00", table, move |at| values[at])
        });
        let mut bytes = Vec::new();
        let mut part = |part: &[u8]| {
            bytes.extend_from_slice(&(part.len() as u64).to_be_bytes());
            bytes.extend_from_slice(part);
        };
        part(b"reeve book row 1");
        part(b"00");
        part(b"payment");
        for (name, kind, value) in [
            (&b"id"[..], &b"whole"[..], &1_i64.to_be_bytes()[..]),
            (b"commission", b"whole", &2_i64.to_be_bytes()),
            (b"day", b"text", b"2027-01-31"),
            (b"amount", b"text", b"9.00"),
        ] {
            part(name);
            part(kind);
            part(value);
        }
        let told = Sha256::digest(&bytes).iter().map(|byte| format!("{byte:02x}")).collect::<Vec<_>>().concat();
        assert_eq!(payment, Some(told));
    }
}
