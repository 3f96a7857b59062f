//! What can go wrong with a book.

use std::fmt;
use std::path::PathBuf;

use reeve_measure::Remedied;
use reeve_writing::WritingError;
use rusqlite::ErrorCode;

use crate::kind::ImpossibleError;
use crate::state::State;

/// Why an empty file is no book.
pub(crate) const EMPTY: &str = "it is empty";

/// Why the book can't do what was asked. Nothing was changed.
#[derive(Debug)]
pub enum BookError {
    /// There is no book.
    None(PathBuf),
    /// The file is no book.
    NotABook(PathBuf, &'static str),
    /// The book was written by a newer program: its version, and the newest known.
    Newer(PathBuf, i64, i64),
    /// The system or the database refused.
    Refused(PathBuf, rusqlite::Error),
    /// A file beside the book could not be read or written.
    File(PathBuf, std::io::Error),
    /// No commission bears this number or name.
    Unknown(String, Vec<String>),
    /// A commission can't go there from where it stands.
    Move {
        /// Its number, or its name where it has none.
        number: String,
        /// Where it stands.
        from: State,
        /// Where it was to go.
        to: State,
    },
    /// It can't be paid while something is owed: the amount.
    Owed(String, String),
    /// The quote is the one that was issued before.
    Unchanged(String),
    /// A line of a book written out can't be read: its line, and why.
    Line(usize, String),
    /// What is read in must go into an empty book.
    NotEmpty(PathBuf),
    /// Something kept can't be what the book wrote.
    Damaged(String),
    /// Another thing that is asked for in the wrong state, in words, with the remedy.
    Wrong(String, String),
}

impl From<WritingError> for BookError {
    fn from(refused: WritingError) -> Self {
        Self::File(refused.at, refused.error)
    }
}

impl BookError {
    /// What the database answered, in the book's words where it is the book's.
    pub(crate) fn of(path: PathBuf, error: rusqlite::Error) -> Self {
        match error {
            rusqlite::Error::FromSqlConversionFailure(_, _, why) => Self::Damaged(why.to_string()),
            rusqlite::Error::InvalidColumnType(_, column, found) => Self::Damaged(format!("{column} holds {found}")),
            rusqlite::Error::ToSqlConversionFailure(why) if why.is::<ImpossibleError>() => {
                Self::Wrong(format!("this can't be entered: {why}"), "nothing was entered".to_owned())
            }
            error => Self::Refused(path, error),
        }
    }

    /// Whether it is the system's fault and not the input's.
    pub fn is_of_the_system(&self) -> bool {
        matches!(self, Self::Refused(..) | Self::File(..))
    }
}

fn refusal_remedy(error: &rusqlite::Error) -> &'static str {
    match error.sqlite_error_code() {
        Some(ErrorCode::SystemIoFailure) => {
            "the disk is full or failing, or files may not grow so large; the book is as it was before"
        }
        Some(ErrorCode::DiskFull) => "make room on the disk; the book is as it was before",
        Some(ErrorCode::ReadOnly | ErrorCode::CannotOpen | ErrorCode::PermissionDenied) => {
            "the book and its folder must be writable: the database keeps a journal beside it"
        }
        Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => "another program holds the book: try again",
        Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase) => "put back a backup: see `reeve book backup`",
        _ => "nothing was changed",
    }
}

impl fmt::Display for BookError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::None(at) => write!(f, "there is no book at {}", at.display()),
            Self::NotABook(at, why) => write!(f, "{} is not a book: {why}", at.display()),
            Self::Newer(at, found, known) => {
                write!(f, "{} is a book of form {found}, and this program knows up to form {known}", at.display())
            }
            Self::Refused(at, error) => write!(f, "{}: {}", at.display(), plain(error)),
            Self::File(at, error) => write!(f, "{}: {error}", at.display()),
            Self::Unknown(word, _) => write!(f, "no commission in the book is called `{word}`"),
            Self::Move { number, from, to } => write!(f, "{number} is {from} and can't be marked {}", to.word()),
            Self::Owed(number, due) => write!(f, "{number} can't be marked paid: {due} is still owed"),
            Self::Unchanged(number) => write!(f, "nothing has changed since {number} was issued"),
            Self::Line(line, why) => write!(f, "line {line}: {why}"),
            Self::NotEmpty(at) => write!(f, "{} holds commissions already", at.display()),
            Self::Damaged(what) => write!(f, "the book is damaged: {what}"),
            Self::Wrong(what, _) => f.write_str(what),
        }
    }
}

/// A database's words, without statements: a statement may hold what a client is called.
fn plain(error: &rusqlite::Error) -> String {
    match error {
        rusqlite::Error::SqliteFailure(code, message) => message.clone().unwrap_or_else(|| code.to_string()),
        _ => "the database answers what the book does not expect".to_owned(),
    }
}

impl std::error::Error for BookError {}

impl Remedied for BookError {
    fn remedy(&self) -> String {
        match self {
            Self::None(_) => {
                "the first `reeve book issue COMMISSION` or `reeve book enquire COMMISSION` begins it".into()
            }
            Self::NotABook(_, EMPTY) => {
                "put back a backup; if nothing was ever entered, take the file away: the next entry begins a book"
                    .into()
            }
            Self::NotABook(..) => "put back a backup: see `reeve book backup`".into(),
            Self::Damaged(_) => "`reeve book check` says where; put back a backup: see `reeve book backup`".into(),
            Self::Newer(..) => "use the newer program".into(),
            Self::Refused(_, error) => refusal_remedy(error).into(),
            Self::File(..) => String::new(),
            Self::Unknown(_, known) if known.is_empty() => "the book is empty".into(),
            Self::Unknown(_, known) => format!("in the book: {}", known.join(", ")),
            Self::Move { from, .. } => {
                let mut can: Vec<String> =
                    from.moves().iter().map(|state| format!("mark it {}", state.word())).collect();
                let quote = if *from == State::Enquiry { "issue a quote" } else { "issue a quote again" };
                can.extend(from.can_be_quoted().then(|| quote.to_owned()));
                let is_marked = !matches!(from, State::Enquiry | State::Quoted | State::Lapsed);
                can.extend(is_marked.then(|| "undo the last mark with `reeve book undo`".to_owned()));
                if can.is_empty() { "nothing follows on that".into() } else { format!("possible: {}", can.join(", ")) }
            }
            Self::Owed(..) => "enter the payment first, with `reeve book pay`".into(),
            Self::Unchanged(_) => "change the commission first, or show it again with `reeve book show`".into(),
            Self::Line(..) => "only a file that `reeve book export` wrote can be read in".into(),
            Self::NotEmpty(_) => "read it into a shop that has no book yet".into(),
            Self::Wrong(_, remedy) => remedy.clone(),
        }
    }
}
