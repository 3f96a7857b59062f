//! What the system refused.

use std::fmt;
use std::io::{self, ErrorKind};
use std::path::{Path, PathBuf};

use reeve_measure::Remedied;

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

impl Remedied for WritingError {
    /// Nothing where only the system knows.
    fn remedy(&self) -> String {
        match self.error.kind() {
            ErrorKind::StorageFull | ErrorKind::QuotaExceeded => "make room on the disk; nothing was changed",
            ErrorKind::FileTooLarge => {
                "files may not grow so large here (`ulimit -f` says how large); nothing was changed"
            }
            ErrorKind::TimedOut => "it is being changed by another run: try again",
            _ => "",
        }
        .to_owned()
    }
}

impl fmt::Display for WritingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} can't be written: {}", self.at.display(), self.error)
    }
}

impl std::error::Error for WritingError {}
