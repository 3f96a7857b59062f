//! The order book: what was asked, quoted, accepted, paid and made, in one `SQLite` file of the shop.
//!
//! Nothing entered is ever edited: a quote that changes is a new entry that supersedes the one before, and where a
//! commission stands is the last of what happened to it. The database itself refuses updates and deletions there.
//!
//! What is personal stands in one table: pages and documents are kept with marks in place of the client's name and
//! address ([`marks`]), which are filled in when they are shown. So forgetting a client is one change in one place.
//!
//! This crate is the only user of `SQLite`, and opens no file but the book and its backups.

mod act;
mod check;
mod dump;
mod entering;
mod error;
mod forgetting;
mod kind;
mod listing;
pub mod marks;
mod opening;
mod personal;
mod records;
mod schema;
mod seal;
mod state;
mod table;
mod undoing;
mod work;

pub use check::CheckFinding;
pub use dump::ReadIn;
pub use error::BookError;
pub use forgetting::{Forget, Forgotten, TextPlace, Undecided};
pub use kind::{MOST_METRES, MOST_MINUTES, MOST_MONEY};
pub use listing::{BookedCommission, Course, Event, History, IssuedQuote, Payment};
pub use opening::{BOOK_FILE, Book, BroughtUp, Opened};
pub use records::{
    Before, BookedClient, Enquiry, NumberPattern, Origin, PacedFigures, QuoteFigures, QuoteNumber, Snapshot,
    StepFigures,
};
pub use seal::Seals;
pub use state::State;
pub use undoing::{Logged, LoggedLine, Undone};
pub use work::{Actuals, Bought, CordUsed, Timer, WorkLine};
