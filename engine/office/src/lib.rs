//! What the business does with a shop and its book: designs compared, weighed and mixed, quotes issued, work queued, reckoned
//! and learnt from.
//!
//! Answers are typed. Nothing here is worded for a page or printed, and no clock is read: days are handed in.

mod comparing;
mod error;
mod row;
mod week;
mod weighing;

pub use comparing::{Comparing, Question, Rows, TENTH};
pub use error::OfficeError;
pub use row::{DesignRow, Earned, Offered};
pub use week::{Demand, Week, weekly_hours};
pub use weighing::{Scales, SurePrice, Weighed};
