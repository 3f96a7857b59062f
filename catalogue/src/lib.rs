//! Knot types, and the geometry that turns them into lengths.
//!
//! A [`Knot`] says, role by role, what a leg's centreline does: so many turns round something,
//! a straight run across, a run along the knot's own rise. Put into a [`Setting`] (cord
//! thickness, core, parameters) it yields a [`Taken`]: the leg that each role eats, and the rise.
//!
//! Nothing here opens a file or reads a clock: the knots of the catalogue are embedded, a shop's
//! own come in as text.

mod bytes;
mod catalogue;
mod computed;
mod embedded;
pub mod geometry;
mod knot;
mod packing;
mod parameter;
pub mod path;
mod reader;
mod setting;
pub mod shape;
pub mod table;
#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests;
pub mod tighten;
mod tying_error;
mod unit;

pub use catalogue::{Catalogue, TIGHTENED, shape_name, table_name};
pub use computed::{Compute, Computed, Question, Unknown};
pub use knot::{
    CORE_ROLE, Coefficient, CoreRule, KindRow, Knot, KnotKind, KnotTime, Lies, Move, Note, Rise, Role, Round, Runs,
    Source, SubKnot, WORKING_ROLE,
};
pub use packing::bundle_ratio;
pub use parameter::{Parameter, Settled};
pub use reader::{knot_file, shape_text, table_text};
pub use setting::{Core, GIVE_RANGE, Setting, Taken, USUAL_GIVE};
pub use tying_error::{TyingError, with_article};
pub use unit::ParameterUnit;
