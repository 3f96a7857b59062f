//! Opening the book: made, brought to the newest form, or refused.

use std::fs::File;
use std::io::Read;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use reeve_door::OpenError;
use reeve_writing::{Workplace, put_new};
use rusqlite::backup::Backup;
use rusqlite::{Connection, ErrorCode, OpenFlags, Transaction, TransactionBehavior};

use crate::error::{BookError, EMPTY};
use crate::schema::{APPLICATION, FORMS, SEALED_SINCE, newest};
use crate::seal::seal_found;

/// The book's file in the shop's folder.
pub const BOOK_FILE: &str = "book.sqlite";

/// How long one program waits for another that is writing.
const PATIENCE: Duration = Duration::from_secs(20);
/// The first bytes of every `SQLite` file, and where its page size and page count stand (its file format, 1.3).
const MAGIC: &[u8] = b"SQLite format 3\0";
const PAGE_SIZE_AT: usize = 16;
const PAGE_COUNT_AT: usize = 28;

/// The order book of a shop.
#[derive(Debug)]
pub struct Book {
    pub(crate) db: Connection,
    pub(crate) path: PathBuf,
}

/// A book, and the backup that was made before it was brought to a newer form.
#[derive(Debug)]
pub struct Opened {
    /// The book.
    pub book: Book,
    /// What was done if its form was older.
    pub brought_up: Option<BroughtUp>,
}

/// A book of an older form was brought to the newest.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BroughtUp {
    /// Where it stands as it was before.
    pub backup: PathBuf,
    /// How many rows had no seal and were sealed as they stood: what was altered before is not noticed.
    pub sealed: u64,
}

impl Book {
    /// Opens the book, and makes it if it is not there and is to be written.
    ///
    /// # Errors
    /// [`BookError`] when there is none, when the file is no book, is cut short or newer, or when the system refuses. The
    /// file is then as it was.
    pub fn open(path: &Path, make: bool) -> Result<Opened, BookError> {
        match Self::open_kept(path) {
            Err(BookError::None(_)) if make => {
                Self::make(path, |_| Ok::<_, BookError>(()))?;
                Self::open_kept(path)
            }
            opened => opened,
        }
    }

    /// Enters something in the book, and says what was done if its form was older.
    ///
    /// Where there is no book one is begun with the entry, whole and beside its place: nobody sees half of it, and if the
    /// entry fails there is none. Where another run was quicker the entry is made once more, in the book that is there now.
    ///
    /// # Errors
    /// What `work` answers, or [`BookError`] as from [`Book::open`].
    pub fn enter<T, E: From<BookError>>(
        path: &Path,
        mut work: impl FnMut(&mut Self) -> Result<T, E>,
    ) -> Result<(T, Option<BroughtUp>), E> {
        loop {
            match Self::open_kept(path) {
                Err(BookError::None(_)) => {
                    if let Some(done) = Self::make(path, &mut work)? {
                        return Ok((done, None));
                    }
                }
                opened => {
                    let mut opened = opened?;
                    return Ok((work(&mut opened.book)?, opened.brought_up));
                }
            }
        }
    }

    /// Opens a book that is there.
    fn open_kept(path: &Path) -> Result<Opened, BookError> {
        match std::fs::metadata(path) {
            Ok(_) => look_at(path)?,
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => {
                return match std::fs::symlink_metadata(path) {
                    Ok(about) if about.is_symlink() => {
                        Err(BookError::NotABook(path.to_owned(), "it is a link that leads nowhere"))
                    }
                    // Another run has begun it a moment ago.
                    Ok(_) => Self::open_kept(path),
                    Err(_) => Err(BookError::None(path.to_owned())),
                };
            }
            Err(error) => return Err(BookError::File(path.to_owned(), error)),
        }
        // The database opens what it keeps beside the book by itself, and would wait for a pipe for ever.
        for beside in ["-journal", "-wal", "-shm"].map(|ending| with_ending(path, ending)) {
            if std::fs::symlink_metadata(&beside).is_ok_and(|about| !about.is_file()) {
                return Err(BookError::NotABook(beside, "it stands beside the book and is not a file"));
            }
        }
        let refused = |error| BookError::Refused(path.to_owned(), error);
        let mut book = Self::connected(path, path, OpenFlags::empty())?;
        book.judge()?;
        patiently(|| book.prepare()).map_err(refused)?;
        let brought_up = book.bring_up()?;
        Ok(Opened { book, brought_up })
    }

    /// Makes a book with a first entry beside its place and moves it there; nothing if another run was quicker.
    ///
    /// A database that is made in its place is there for a while before it says whose it is.
    fn make<T, E: From<BookError>>(path: &Path, work: impl FnOnce(&mut Self) -> Result<T, E>) -> Result<Option<T>, E> {
        let refused = |error| BookError::File(path.to_owned(), error);
        let place = Workplace::beside(path).map_err(refused)?;
        let at = place.open().map_err(refused)?.join(BOOK_FILE);
        let mut book = Self::connected(&at, path, OpenFlags::SQLITE_OPEN_CREATE)?;
        book.bring_up()?;
        let done = work(&mut book)?;
        book.finish(&at)?;
        match put_new(&at, path) {
            Ok(()) => Ok(Some(done)),
            Err(error) if error.kind() == std::io::ErrorKind::AlreadyExists => Ok(None),
            Err(error) => Err(refused(error).into()),
        }
    }

    /// Opens the database at a place, to be called by another.
    fn connected(at: &Path, called: &Path, more: OpenFlags) -> Result<Self, BookError> {
        let refused = |error| BookError::Refused(called.to_owned(), error);
        let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX | more;
        let db = Connection::open_with_flags(at, flags).map_err(refused)?;
        db.busy_timeout(PATIENCE).map_err(refused)?;
        Ok(Self { db, path: called.to_owned() })
    }

    /// Closes a new book: all of it in its one file, and on the disk.
    #[allow(clippy::disallowed_methods, reason = "the database has written the file; it is only put on the disk")]
    fn finish(self, at: &Path) -> Result<(), BookError> {
        let refused = self.refused();
        self.prepare().map_err(&refused)?;
        self.db.close().map_err(|(_, error)| refused(error))?;
        let unwritten = |error| BookError::File(self.path.clone(), error);
        let file = File::options().write(true).open(at).and_then(|file| file.sync_all());
        file.map_err(unwritten)?;
        match std::fs::symlink_metadata(with_ending(at, "-wal")) {
            Ok(_) => Err(unwritten(std::io::Error::other("its journal could not be moved into it"))),
            Err(_) => Ok(()),
        }
    }

    /// Where the book stands.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Refuses another program's database and a newer book, before anything is written.
    fn judge(&self) -> Result<(), BookError> {
        if self.pragma::<i32>("application_id")? != APPLICATION {
            return Err(BookError::NotABook(self.path.clone(), "it is another program's database"));
        }
        let form: i64 = self.pragma("user_version")?;
        if form > newest() { Err(BookError::Newer(self.path.clone(), form, newest())) } else { Ok(()) }
    }

    fn prepare(&self) -> rusqlite::Result<()> {
        self.db.pragma_update(None, "journal_mode", "WAL")?;
        // An entry that was acknowledged must be there after the power fails.
        self.db.pragma_update(None, "synchronous", "FULL")?;
        self.db.pragma_update(None, "foreign_keys", true)
    }

    /// Brings the book to the newest form in one step, behind a backup if it holds something.
    fn bring_up(&mut self) -> Result<Option<BroughtUp>, BookError> {
        if self.pragma::<i64>("user_version")? == newest() {
            return Ok(None);
        }
        let (path, refused) = (self.path.clone(), self.refused());
        self.db.pragma_update(None, "foreign_keys", true).map_err(&refused)?;
        let write = self.write()?;
        let form: i64 = write.pragma_query_value(None, "user_version", |row| row.get(0)).map_err(&refused)?;
        // Another program may have been quicker.
        if form == newest() {
            return Ok(None);
        }
        let backup = if form > 0 { Some(back_up_before(&path, form)?) } else { None };
        let missing = usize::try_from(form).ok().and_then(|form| FORMS.get(form..)).unwrap_or_default();
        let steps = missing.iter().try_for_each(|step| write.execute_batch(step));
        let sealed =
            steps.and_then(|()| if form < SEALED_SINCE { seal_found(&write) } else { Ok(0) }).map_err(&refused)?;
        write
            .pragma_update(None, "application_id", APPLICATION)
            .and_then(|()| write.pragma_update(None, "user_version", newest()))
            .and_then(|()| write.commit())
            .map_err(&refused)?;
        Ok(backup.map(|backup| BroughtUp { backup, sealed }))
    }

    /// Begins writing; no other program can until it is over.
    pub(crate) fn write(&mut self) -> Result<Transaction<'_>, BookError> {
        let path = self.path.clone();
        self.db.transaction_with_behavior(TransactionBehavior::Immediate).map_err(|error| BookError::of(path, error))
    }

    pub(crate) fn refused(&self) -> impl Fn(rusqlite::Error) -> BookError + use<> {
        let path = self.path.clone();
        move |error| BookError::of(path.clone(), error)
    }

    fn pragma<T: rusqlite::types::FromSql>(&self, name: &str) -> Result<T, BookError> {
        self.db.pragma_query_value(None, name, |row| row.get(0)).map_err(self.refused())
    }

    pub(crate) fn ask<T: rusqlite::types::FromSql>(&self, question: &str) -> Result<T, BookError> {
        self.db.query_row(question, [], |row| row.get(0)).map_err(self.refused())
    }

    /// Writes a whole and consistent copy to a place, to be called by another, while others may go on writing.
    ///
    /// # Errors
    /// [`BookError`] when it can't be written.
    pub fn copy_to(&self, at: &Path, called: &Path) -> Result<(), BookError> {
        copy(&self.db, at).map_err(|error| BookError::Refused(called.to_owned(), error))
    }
}

fn copy(from: &Connection, to: &Path) -> rusqlite::Result<()> {
    const PAGES_AT_ONCE: i32 = 1000;
    let mut target = Connection::open(to)?;
    Backup::new(from, &mut target)?.run_to_completion(PAGES_AT_ONCE, Duration::ZERO, None)
}

/// A copy of the book as it is, beside it, under a name that is not taken.
fn back_up_before(path: &Path, form: i64) -> Result<PathBuf, BookError> {
    const MOST: u32 = 1000;
    let name = |count: u32| {
        let again = if count == 0 { String::new() } else { format!("-{count}") };
        path.with_extension(format!("form-{form}{again}.sqlite"))
    };
    let to = (0..MOST).map(name).find(|name| !name.exists()).unwrap_or_else(|| name(MOST));
    let refused = |error| BookError::Refused(to.clone(), error);
    // A second reader: the first is writing already, so that nobody comes between backup and change.
    let reader = Connection::open_with_flags(path, OpenFlags::SQLITE_OPEN_READ_ONLY).map_err(refused)?;
    reeve_writing::new_file(&to, |at| copy(&reader, at).map_err(refused))?;
    Ok(to)
}

/// Whether a file can be a database at all, and is whole.
fn look_at(path: &Path) -> Result<(), BookError> {
    let no = |why| BookError::NotABook(path.to_owned(), why);
    let refused = |error| BookError::File(path.to_owned(), error);
    let mut file = reeve_door::open(path).map_err(|closed| match closed {
        OpenError::NotAFile(_) => no("it is not a file"),
        other => refused(other.into()),
    })?;
    let about = file.metadata().map_err(refused)?;
    // A book is never seen before it is whole.
    if about.len() == 0 {
        return Err(no(EMPTY));
    }
    let mut head = Vec::new();
    file.by_ref().take(100).read_to_end(&mut head).map_err(refused)?;
    if !head.starts_with(MAGIC) {
        return Err(no("it is not a database"));
    }
    let size =
        head.get(PAGE_SIZE_AT..PAGE_SIZE_AT + 2).map_or(0, |bytes| u64::from(u16::from_be_bytes([bytes[0], bytes[1]])));
    // The largest size does not fit and is written as 1.
    let size = if size == 1 { 65_536 } else { size };
    let count = head.get(PAGE_COUNT_AT..PAGE_COUNT_AT + 4);
    let count = count.map_or(0, |bytes| u64::from(u32::from_be_bytes([bytes[0], bytes[1], bytes[2], bytes[3]])));
    // A program that was stopped while it moved the journal into the book leaves the rest in the journal.
    let journal = std::fs::metadata(with_ending(path, "-wal")).is_ok_and(|about| about.len() > 0);
    if head.len() < 100 || (about.len() < size * count && !journal) { Err(no("its end is missing")) } else { Ok(()) }
}

/// The path of a file that the database keeps beside the book.
fn with_ending(path: &Path, ending: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(ending);
    PathBuf::from(name)
}

/// Tries again while another program holds the file: making a journal can't wait by itself.
fn patiently(step: impl Fn() -> rusqlite::Result<()>) -> rusqlite::Result<()> {
    const PAUSE: Duration = Duration::from_millis(5);
    let start = Instant::now();
    loop {
        match step() {
            Err(error)
                if matches!(error.sqlite_error_code(), Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked))
                    && start.elapsed() < PATIENCE =>
            {
                std::thread::sleep(PAUSE);
            }
            done => return done,
        }
    }
}
