//! Where a commission stands, and where it can go from there.

use std::fmt;

use chrono::NaiveDate;

/// Where a commission stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum State {
    /// Asked about, and not quoted yet.
    Enquiry,
    /// Quoted, and the client may accept.
    Quoted,
    /// Quoted, and the last day of the quote has passed. Never entered: it follows from the date.
    Lapsed,
    /// The client said yes.
    Accepted,
    /// The client said no.
    Declined,
    /// Being made.
    OnBench,
    /// Made.
    Finished,
    /// With the client.
    Delivered,
    /// With the client, and nothing is owed.
    Paid,
    /// Called off.
    Cancelled,
}

impl State {
    /// Every state with its word.
    pub const WORDS: &'static [(&'static str, Self)] = &[
        ("enquiry", Self::Enquiry),
        ("quoted", Self::Quoted),
        ("lapsed", Self::Lapsed),
        ("accepted", Self::Accepted),
        ("declined", Self::Declined),
        ("on-bench", Self::OnBench),
        ("finished", Self::Finished),
        ("delivered", Self::Delivered),
        ("paid", Self::Paid),
        ("cancelled", Self::Cancelled),
    ];

    /// The state of a word.
    pub fn of_word(word: &str) -> Option<Self> {
        Self::WORDS.iter().find(|(known, _)| *known == word).map(|(_, state)| *state)
    }

    /// The word of the state.
    pub fn word(self) -> &'static str {
        Self::WORDS.iter().find(|(_, state)| *state == self).map_or("", |(word, _)| word)
    }

    /// Where the maker can mark it to stand next; a quote is entered by issuing it.
    pub fn moves(self) -> &'static [Self] {
        match self {
            Self::Enquiry => &[Self::Cancelled],
            Self::Quoted => &[Self::Accepted, Self::Declined, Self::Cancelled],
            Self::Lapsed => &[Self::Declined, Self::Cancelled],
            Self::Accepted => &[Self::OnBench, Self::Cancelled],
            Self::OnBench => &[Self::Finished, Self::Cancelled],
            Self::Finished => &[Self::Delivered, Self::Cancelled],
            Self::Delivered => &[Self::Paid],
            Self::Declined | Self::Paid | Self::Cancelled => &[],
        }
    }

    /// Whether a quote, or a further revision of it, can be issued.
    pub fn can_be_quoted(self) -> bool {
        matches!(self, Self::Enquiry | Self::Quoted | Self::Lapsed | Self::Accepted | Self::Declined)
    }

    /// Whether it is agreed and not made yet.
    pub fn is_to_be_made(self) -> bool {
        matches!(self, Self::Accepted | Self::OnBench)
    }

    /// Whether it is made.
    pub fn is_made(self) -> bool {
        matches!(self, Self::Finished | Self::Delivered | Self::Paid)
    }

    /// Whether the client said yes, whatever became of it.
    pub fn is_won(self) -> bool {
        matches!(self, Self::Accepted | Self::OnBench | Self::Finished | Self::Delivered | Self::Paid)
    }

    /// The same on a day: a quote past its last day has lapsed.
    #[must_use]
    pub fn on(self, day: NaiveDate, valid_until: Option<NaiveDate>) -> Self {
        match (self, valid_until) {
            (Self::Quoted, Some(last)) if day > last => Self::Lapsed,
            _ => self,
        }
    }
}

impl fmt::Display for State {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::OnBench => "on the bench",
            other => other.word(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_state_has_a_word_of_its_own() {
        for (word, state) in State::WORDS {
            assert_eq!((State::of_word(word), state.word()), (Some(*state), *word));
        }
        assert_eq!(State::of_word("sold"), None);
    }

    #[test]
    fn what_can_be_done_where_it_stands() {
        // Quoted anew, to be made, made, won.
        let table = [
            (State::Enquiry, [true, false, false, false]),
            (State::Quoted, [true, false, false, false]),
            (State::Lapsed, [true, false, false, false]),
            (State::Accepted, [true, true, false, true]),
            (State::Declined, [true, false, false, false]),
            (State::OnBench, [false, true, false, true]),
            (State::Finished, [false, false, true, true]),
            (State::Delivered, [false, false, true, true]),
            (State::Paid, [false, false, true, true]),
            (State::Cancelled, [false, false, false, false]),
        ];
        assert_eq!(table.len(), State::WORDS.len());
        for (state, expected) in table {
            let found = [state.can_be_quoted(), state.is_to_be_made(), state.is_made(), state.is_won()];
            assert_eq!(found, expected, "{state}");
        }
        assert_eq!(
            (State::OnBench.to_string(), State::Paid.to_string()),
            ("on the bench".to_owned(), "paid".to_owned())
        );
    }

    #[test]
    fn lapsed_follows_from_the_date_and_is_never_moved_to() {
        for (_, state) in State::WORDS {
            assert!(!state.moves().contains(&State::Lapsed) && !state.moves().contains(&State::Quoted));
        }
        let day = |day| NaiveDate::from_ymd_opt(2027, 1, day);
        let on = |today| State::Quoted.on(day(today).unwrap_or_default(), day(10));
        assert_eq!((on(10), on(11)), (State::Quoted, State::Lapsed));
        assert_eq!(State::Accepted.on(NaiveDate::MAX, day(10)), State::Accepted);
    }
}
