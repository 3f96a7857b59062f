//! Typed reading of TOML that keeps the place of every value and reports every fault.
//!
//! A reader is a function over a [`Table`] that asks for its keys one by one. The same function
//! serves twice: over a parsed file it yields values and faults, over a plan it yields the JSON
//! Schema of that file. So a key, its kind, its limits and its help exist once.
//!
//! Nothing here opens a file: text comes in as a [`SourceText`].

mod arithmetic;
mod diagnostics;
mod excerpt;
mod fault;
mod figure;
mod kinds;
mod nearest;
mod reckoned;
mod seen;
mod table;
mod tally;

pub use arithmetic::{Measures, is_measure_name};
pub use diagnostics::{Diagnostics, FAULTS_SHOWN, Placed};
pub use fault::{Fault, Severity, SourceText};
pub use figure::Figure;
pub use kinds::{
    Cell, Count, Day, Flag, Kind, Lengths, List, Money, Name, Number, NumberOrLength, OneOf, Percent, Quantity, Text,
    Weight, WeightPerLength, is_name,
};
pub use nearest::nearest;
pub use reckoned::{Filled, FilledText, LowLikelyHigh, OneOrThree, Reckonable, Reckoned};
pub use seen::{is_unseen, seen, unseen_in};
pub use table::{Parsed, Table, read, read_parsed, schema};
pub use tally::FaultTally;
