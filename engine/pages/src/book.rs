//! Pages of the order book: the list, one commission whole, what is on the bench, what it took, a month's and a year's sums.

mod changes;
mod list;
mod queue;
mod summary;
mod table;
mod took;
mod whole;

pub use changes::{Changed, changed};
pub use list::{ListJson, list_csv, list_json, list_page};
pub use queue::{Queue, QueueJson, passing_words, queue, queue_json, queue_page};
pub use summary::{Period, SummaryJson, summary, summary_csv, summary_json, summary_page};
pub use table::BookPage;
pub use took::{
    Reckoned, TookInAll, TookJson, reckoned, took_in_all, took_in_all_json, took_in_all_page, took_json, took_page,
};
pub use whole::{WholeJson, logged_words, whole_json, whole_page};

/// The form of the book's documents; raised when a field changes its meaning or goes.
const FORM: u32 = 1;
