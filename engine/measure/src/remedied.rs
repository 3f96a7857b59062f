//! Errors that say what to do about them.

use std::error::Error;

/// An error of the house. Its words say what is wrong, with the value and the limit; its remedy says what to do.
pub trait Remedied: Error {
    /// What to do: one clause that stands behind the words, without a full stop; empty where nothing can be done.
    fn remedy(&self) -> String;
}
