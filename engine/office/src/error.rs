//! Why the office can't do what was asked.

use std::fmt;

use reeve_book::BookError;
use reeve_measure::Remedied;
use reeve_reading::{Fault, FaultTally};
use reeve_writing::WritingError;

/// Why the office can't do what was asked. Nothing was entered or written.
#[derive(Debug)]
pub enum OfficeError {
    /// What was asked, or the shop, has faults: at least one.
    Input(FaultTally),
    /// The order book refuses.
    Book(BookError),
    /// The system lets something not be written.
    Writing(WritingError),
}

impl OfficeError {
    /// A fault of what was asked, which has no place in a file.
    pub(crate) fn input(title: impl Into<String>, help: impl Into<String>) -> Self {
        Fault::without_place(title, help).into()
    }
}

impl fmt::Display for OfficeError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Input(faults) => f.write_str(faults.first().map_or("it has faults", |fault| fault.title.as_str())),
            Self::Book(error) => write!(f, "{error}"),
            Self::Writing(error) => write!(f, "{error}"),
        }
    }
}

impl std::error::Error for OfficeError {}

impl Remedied for OfficeError {
    fn remedy(&self) -> String {
        match self {
            Self::Input(faults) => faults.first().map(|fault| fault.help.clone()).unwrap_or_default(),
            Self::Book(error) => error.remedy(),
            Self::Writing(error) => error.remedy(),
        }
    }
}

impl From<Fault> for OfficeError {
    fn from(fault: Fault) -> Self {
        Self::Input(vec![fault].into())
    }
}

impl From<BookError> for OfficeError {
    fn from(error: BookError) -> Self {
        Self::Book(error)
    }
}

impl From<WritingError> for OfficeError {
    fn from(error: WritingError) -> Self {
        Self::Writing(error)
    }
}
