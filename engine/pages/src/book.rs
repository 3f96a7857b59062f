//! Pages of the order book: the list, one commission whole, what is on the bench, what it took, a month's and a year's sums.

mod changes;
mod entered;
mod learnt;
mod list;
mod queue;
mod summary;
mod table;
mod took;
mod whole;

use reeve_book::State;

use crate::phrases::say;
use crate::words::Words;

pub use changes::{cost_change_words, quote_change_words};
pub use entered::{Entered, entered_words};
pub use learnt::{left_out_words, lesson_words, odd_work_words};
pub use list::{ListJson, list_csv, list_json, list_page};
pub use queue::{QueueJson, queue_json, queue_page, ready_words};
pub use summary::{SummaryJson, summary_csv, summary_json, summary_page};
pub use table::BookPage;
pub use took::{TookJson, actuals_json, actuals_page, all_actuals_json, all_actuals_page};
pub use whole::{WholeJson, history_json, history_page, logged_words};

/// Where a commission stands.
fn state_words(state: State, words: &Words) -> String {
    match state {
        State::Enquiry => say!(words, "state-enquiry"),
        State::Quoted => say!(words, "state-quoted"),
        State::Lapsed => say!(words, "state-lapsed"),
        State::Accepted => say!(words, "state-accepted"),
        State::Declined => say!(words, "state-declined"),
        State::OnBench => say!(words, "state-on-bench"),
        State::Finished => say!(words, "state-finished"),
        State::Delivered => say!(words, "state-delivered"),
        State::Paid => say!(words, "state-paid"),
        State::Cancelled => say!(words, "state-cancelled"),
    }
}

/// The form of the book's documents; raised when a field changes its meaning or goes.
const FORM: u32 = 1;
