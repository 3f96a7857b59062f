//! What the business does with a shop and its book: designs compared, weighed and mixed, quotes issued, work queued, reckoned
//! and learnt from.
//!
//! Answers are typed. Nothing here is worded for a page or printed, and no clock is read: days are handed in.

mod actuals;
mod changes;
mod comparing;
mod error;
mod expected;
mod issuing;
mod kept;
mod learning;
mod libraries;
mod listing;
mod logging;
mod queue;
mod row;
mod sampling;
mod summary;
mod takeoff;
mod week;
mod weighing;

pub use actuals::{AllActuals, JobFigures, QuotedAndActual};
pub use changes::{Changes, CostChange, QuoteChange, Replaced};
pub use comparing::{CompareQuestion, Comparing, Rows, TENTH};
pub use error::OfficeError;
pub use issuing::{Issuing, Numbered, Worded, recheck, settled};
pub use kept::RowShelf;
pub use learning::{LeftOut, Lesson, TaughtWork};
pub use libraries::{GoodLibrary, dismiss, word_folder};
pub use listing::Looked;
pub use logging::{UnknownStep, unknown_step};
pub use queue::{Deadline, MissedDay, Queue, QueuedWork, WhenReady, when_ready};
pub use row::{DesignRow, Earned, Offered};
pub use sampling::TakenDown;
pub use summary::{Period, summary};
pub use takeoff::TakenOff;
pub use week::{Demand, Week, WeekDesign, weekly_hours};
pub use weighing::{Scales, SurePrice, Weighed};
