//! What can be wrong with a library, in words, and what to do about it.

use reeve_measure::Remedied;
use std::fmt::{self, Write};

use serde::{Deserialize, Serialize};

/// What is wrong with a library. Its words follow the library's name.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum LibraryError {
    /// The file is not there or can't be read: why, in words that follow its name.
    Unreadable(String),
    /// Its file is not the one that was admitted.
    Changed {
        /// SHA-256 of the file that was admitted.
        admitted: String,
        /// SHA-256 of the file as it is.
        found: String,
    },
    /// The system can't load it.
    NotALibrary(String),
    /// It does not export the table.
    NoTable,
    /// The table does not begin as it should.
    NotOurs,
    /// It keeps another version of the contract.
    OtherContract {
        /// The major version it keeps.
        major: u32,
        /// The major version that the program keeps.
        ours: u32,
    },
    /// The table is shorter than the contract says.
    Short {
        /// What is too short.
        what: String,
        /// Its size.
        size: u32,
        /// The least it must be.
        least: u32,
    },
    /// What it says of itself is not as the contract asks.
    Description(String),
    /// It does not have a knot that was asked for.
    NoSuchKnot(String),
    /// It says that it failed.
    Failed(String),
    /// A figure that can't be.
    Nonsense {
        /// Which.
        what: String,
        /// What it said.
        value: String,
        /// The range that the contract allows.
        range: String,
    },
    /// A status that the contract does not know.
    Status(u32),
    /// It answered one question in two ways.
    TwoAnswers(String),
    /// Its process ended.
    Ended(String),
    /// Its process closed the pipe or wrote into it.
    Pipe,
    /// It did not answer in time.
    Slow {
        /// How long it was waited for, in seconds.
        seconds: u64,
    },
    /// The process could not be started.
    NoProcess(String),
    /// The system does not hold it back: what would have to hold and does not.
    Unguarded(Vec<String>),
}

/// The most characters that are said of a trouble.
const MOST_WORDS: usize = 2000;

/// What a library may have had a hand in is said without what would steer a terminal, and not without end.
impl fmt::Display for LibraryError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.words().chars().filter(|c| !c.is_control()).take(MOST_WORDS).try_for_each(|c| f.write_char(c))
    }
}

impl LibraryError {
    fn words(&self) -> String {
        match self {
            Self::Unreadable(why) => why.clone(),
            Self::Changed { admitted, found } => {
                format!("is not the file that was admitted: its SHA-256 was {admitted} and is {found}")
            }
            Self::NotALibrary(why) => format!("is not a library that can be loaded: {why}"),
            Self::NoTable => format!("exports no table `{}`", reeve_kit::abi::SYMBOL),
            Self::NotOurs => "exports a table that does not begin with the mark of the contract".to_owned(),
            Self::OtherContract { major, ours } => {
                format!("keeps version {major} of the contract, and this program keeps version {ours}")
            }
            Self::Short { what, size, least } => {
                format!("has {what} of {size} bytes, and the contract asks for {least} at least")
            }
            Self::Description(what) => format!("describes itself wrongly: {what}"),
            Self::NoSuchKnot(knot) => format!("has no knot `{knot}`"),
            Self::Failed(words) if words.is_empty() => "failed, and says no more".to_owned(),
            Self::Failed(words) => format!("failed: {words}"),
            Self::Nonsense { what, value, range } => format!("answered {what} of {value}, which must be {range}"),
            Self::Status(status) => format!("answered with the status {status}, which means nothing"),
            Self::TwoAnswers(what) => format!("gave two answers to one question: {what}"),
            Self::Ended(how) => format!("ended its process: {how}"),
            Self::Pipe => "closed or disturbed the pipe that it is asked through".to_owned(),
            Self::Slow { seconds } => format!("did not answer within {seconds} s"),
            Self::NoProcess(why) => format!("could not be given a process: {why}"),
            Self::Unguarded(lacks) => {
                format!("was not loaded: the system does not hold it back. What is missing: {}", lacks.join("; "))
            }
        }
    }

    /// What the maker can do about a library that she admitted.
    pub fn remedy_of(&self, library: &str) -> String {
        match self {
            Self::Unreadable(_) | Self::Changed { .. } => format!(
                "if you meant to change it, `reeve knots admit` takes it in again; `reeve knots dismiss {library}` takes it out"
            ),
            Self::OtherContract { .. } | Self::NoProcess(_) | Self::Unguarded(_) => self.remedy(),
            _ => format!("tell its author; `reeve knots dismiss {library}` takes it out of the shop"),
        }
    }
}

impl std::error::Error for LibraryError {}

impl Remedied for LibraryError {
    /// What the maker can do about a library that is not admitted.
    fn remedy(&self) -> String {
        let remedy = match self {
            Self::OtherContract { .. } => "ask its author for one that was built for this version of the program",
            Self::NotALibrary(_) | Self::NoTable | Self::NotOurs => {
                "name a library of knots for this system; `reeve knots begin DIR` starts one"
            }
            Self::Unguarded(_) => {
                "a Linux that offers these holds it back; if you trust its author as yourself, `reeve knots admit FILE --unguarded` \
                 takes it in all the same, and then it can do whatever you can"
            }
            Self::NoProcess(_) => "the system refused; free some memory and try again",
            _ => "its author must mend it; it was not taken in, and nothing was written",
        };
        remedy.to_owned()
    }
}
