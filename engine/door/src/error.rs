//! Why a file is not read.

use std::fmt;
use std::io;

use reeve_measure::Remedied;

/// Why a file is not read. Each is written so that it follows the file's name.
#[derive(Debug)]
pub enum OpenError {
    /// Nothing stands there.
    Missing,
    /// It is something else, which is named.
    NotAFile(&'static str),
    /// It has more bytes than these.
    TooLong(u64),
    /// It is not UTF-8.
    NotText,
    /// The system refuses.
    System(io::Error),
}

impl fmt::Display for OpenError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Missing => write!(f, "is not there"),
            Self::NotAFile(sort) => write!(f, "is {sort} and not a file"),
            Self::TooLong(most) => write!(f, "has more than {most} bytes"),
            Self::NotText => write!(f, "is not text in UTF-8"),
            Self::System(error) => write!(f, "can't be read: {error}"),
        }
    }
}

impl std::error::Error for OpenError {}

impl Remedied for OpenError {
    fn remedy(&self) -> String {
        match self {
            Self::Missing => "see whether its name is right",
            Self::NotAFile(_) => "name a file",
            Self::TooLong(_) => "take a shorter one",
            Self::NotText => "save it as plain text, UTF-8",
            Self::System(_) => "see whether you may read it",
        }
        .to_owned()
    }
}

impl From<io::Error> for OpenError {
    fn from(error: io::Error) -> Self {
        if error.kind() == io::ErrorKind::NotFound { Self::Missing } else { Self::System(error) }
    }
}

impl From<OpenError> for io::Error {
    fn from(closed: OpenError) -> Self {
        match closed {
            OpenError::System(error) => error,
            OpenError::Missing => Self::from(io::ErrorKind::NotFound),
            other => Self::other(other),
        }
    }
}
