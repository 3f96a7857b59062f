//! Which commissions of the book are looked for.

use chrono::{Datelike, NaiveDate};
use reeve_book::{Book, BookError, BookedCommission, State};

/// Which commissions are looked for; all of them by default.
#[derive(Debug, Clone, Default)]
pub struct Looked {
    /// Where they stand: any of these, or anywhere if none is named.
    pub stands: Vec<State>,
    /// Letters of the client's name, large or small.
    pub client: Option<String>,
    /// The year they were first entered in.
    pub year: Option<i32>,
}

impl Looked {
    /// Those of a book as they stand on a day, in the order they were entered.
    ///
    /// # Errors
    /// When the book can't be read.
    pub fn find(&self, book: &Book, day: NaiveDate) -> Result<Vec<BookedCommission>, BookError> {
        let letters = self.client.as_ref().map(|client| client.to_lowercase());
        let mut all = book.list(day)?;
        all.retain(|one| {
            (self.stands.is_empty() || self.stands.contains(&one.state))
                && letters.as_ref().is_none_or(|letters| one.client.name.to_lowercase().contains(letters))
                && self.year.is_none_or(|year| one.begun.year() == year)
        });
        Ok(all)
    }
}
