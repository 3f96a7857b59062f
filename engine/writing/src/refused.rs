//! What the system refused.

use std::fmt;
use std::io::{self, ErrorKind};
use std::path::{Path, PathBuf};

/// A file or folder that can't be written, and why. Nothing was left behind.
#[derive(Debug)]
pub struct WritingError {
    /// What was to be written, as the maker calls it.
    pub at: PathBuf,
    /// The system's reason.
    pub error: io::Error,
}

impl WritingError {
    /// The system's refusal of a place.
    pub fn new(at: &Path, error: io::Error) -> Self {
        Self { at: at.to_owned(), error }
    }

    /// For `map_err`.
    pub(crate) fn at(at: &Path) -> impl Fn(io::Error) -> Self + use<> {
        let at = at.to_owned();
        move |error| Self::new(&at, error)
    }
}

/// What to do about a refusal of the system, where there is something to say.
fn remedy(kind: ErrorKind) -> Option<&'static str> {
    match kind {
        ErrorKind::StorageFull | ErrorKind::QuotaExceeded => Some("make room on the disk; nothing was changed"),
        ErrorKind::FileTooLarge => {
            Some("files may not grow so large here (`ulimit -f` says how large); nothing was changed")
        }
        ErrorKind::TimedOut => Some("it is being changed by another run: try again"),
        _ => None,
    }
}

impl fmt::Display for WritingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} can't be written: {}", self.at.display(), self.error)?;
        remedy(self.error.kind()).map_or(Ok(()), |remedy| write!(f, "; {remedy}"))
    }
}

impl std::error::Error for WritingError {}
