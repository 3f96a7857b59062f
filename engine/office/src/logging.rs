//! What work is logged at: steps that the quote has, and others, which nothing is learnt from.

use chrono::NaiveDate;
use reeve_book::Book;
use reeve_reading::nearest;

/// A step that the quote does not have: work at it is logged as well, but nothing is learnt from it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UnknownStep {
    /// As typed.
    pub step: String,
    /// The step that was perhaps meant.
    pub near: Option<String>,
    /// The steps of the quote.
    pub known: Vec<String>,
}

/// Whether a step is unknown to the quote of a commission; nothing where the book does not say.
pub fn unknown_step(book: &Book, word: &str, step: &str, day: NaiveDate) -> Option<UnknownStep> {
    let whole = book.whole(word, day).ok()?;
    let (_, figures) = whole.course.commission.quoted?;
    let known: Vec<String> = figures.steps.into_iter().map(|step| step.step).collect();
    if known.iter().any(|known| known == step) {
        return None;
    }
    let near = nearest(step, known.iter().map(String::as_str)).map(str::to_owned);
    Some(UnknownStep { step: step.to_owned(), near, known })
}
