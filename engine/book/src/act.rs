//! Why a row of the book is sealed.

/// Why a row is sealed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Act {
    /// It was entered.
    Entered,
    /// It was rightly changed: a commission issued, a client who moved.
    Changed,
    /// What is personal was taken out of it.
    Forgotten,
    /// It was rightly taken out: the timer stopped.
    Ended,
    /// It stood in a book of a form without seals.
    Found,
}

/// Their words, in order.
pub(crate) const ACTS: &[&str] = &["entered", "changed", "forgotten", "ended", "found"];

impl Act {
    /// Its word.
    pub(crate) fn word(self) -> &'static str {
        match self {
            Self::Entered => "entered",
            Self::Changed => "changed",
            Self::Forgotten => "forgotten",
            Self::Ended => "ended",
            Self::Found => "found",
        }
    }
}
