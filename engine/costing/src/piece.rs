//! A piece, resolved: every name has become the thing it names.

use std::sync::Arc;

use reeve_catalogue::Knot;
use reeve_measure::Length;
use rust_decimal::Decimal;

use crate::caution::Purpose;
use crate::risk::ThreePoint;
use crate::store::{Cord, Fitting, Many};

/// One thing to be made, described step by step. The default is nothing at all.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Piece {
    /// As written on pages.
    pub title: String,
    /// A sentence for the client.
    pub about: Option<String>,
    /// What it is for; chooses the cautions.
    pub purpose: Purpose,
    /// How many were made before: practice goes on from there.
    pub made: u32,
    /// Finished size in words, for the client.
    pub finished: Option<String>,
    /// Cords cut alike.
    pub groups: Vec<CordGroup>,
    /// Leg sets, in order of their groups.
    pub sets: Vec<LegSet>,
    /// Fittings, each with how many there are.
    pub fittings: Vec<NamedFitting>,
    /// The making, in order.
    pub steps: Vec<Step>,
    /// Work that is not tying.
    pub tasks: Vec<Task>,
    /// Pieces it is put together from.
    pub parts: Vec<Part>,
}

impl Piece {
    /// Whether another piece is made in the same way, whatever it is called.
    pub fn is_made_as(&self, other: &Self) -> bool {
        (&self.groups, &self.fittings, &self.steps) == (&other.groups, &other.fittings, &other.steps)
            && (&self.tasks, &self.parts) == (&other.tasks, &other.parts)
    }

    /// The same piece, parts included, of other cords.
    #[must_use]
    pub fn with_cords(&self, cord: &impl Fn(&Arc<Cord>) -> Arc<Cord>) -> Self {
        let mut piece = self.clone();
        for group in &mut piece.groups {
            group.cord = cord(&group.cord);
        }
        for part in &mut piece.parts {
            part.piece = Arc::new(part.piece.with_cords(cord));
        }
        piece
    }
}

/// A piece within a piece.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// The word it is called by.
    pub name: String,
    /// How many.
    pub count: u32,
    /// The piece.
    pub piece: Arc<Piece>,
}

/// Cords cut alike.
#[derive(Debug, Clone, PartialEq)]
pub struct CordGroup {
    /// The word steps use.
    pub name: String,
    /// Of what.
    pub cord: Arc<Cord>,
    /// How many.
    pub count: u32,
    /// Whether each is folded into two legs.
    pub folded: bool,
    /// The set of the first leg of each cord, and of the second: the same when folded evenly.
    pub legs: (SetId, SetId),
}

/// Index of a leg set in its piece.
pub type SetId = usize;
/// Index of a cord group in its piece.
pub type GroupId = usize;
/// Index of a fitting in its piece.
pub type FittingId = usize;

/// Legs that are used alike.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LegSet {
    /// The word steps use.
    pub name: String,
    /// Whose legs.
    pub group: GroupId,
    /// How many.
    pub count: u32,
}

/// A fitting under the name the piece gives it.
#[derive(Debug, Clone, PartialEq)]
pub struct NamedFitting {
    /// The word steps use.
    pub name: String,
    /// The thing, and how many.
    pub many: Many<Fitting>,
}

/// One stage of the making.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// As written on the bench sheet.
    pub title: String,
    /// Cord groups that join the work here.
    pub hang: Vec<GroupId>,
    /// Sets that run alongside the knots without being tied.
    pub alongside: Vec<SetId>,
    /// What is done.
    pub work: Work,
    /// A remark for the bench.
    pub note: Option<String>,
    /// How long all of it takes in one piece, where the maker says so in place of what its knots come to.
    pub time: Option<ThreePoint>,
}

/// What a step does.
#[derive(Debug, Clone, PartialEq)]
pub enum Work {
    /// Ties a knot.
    Tie(Tie),
    /// Leaves legs bare.
    Bare {
        /// How long.
        length: Length,
        /// Which.
        legs: Vec<SetId>,
    },
    /// Leaves the ends of legs hanging: the fringe.
    Tail {
        /// How long after trimming.
        length: Length,
        /// Which.
        legs: Vec<SetId>,
        /// How they end.
        end: TailEnd,
    },
    /// Threads beads.
    Thread {
        /// The bead.
        bead: FittingId,
        /// How often on each leg or bundle of legs.
        times: u32,
        /// Legs through each bead.
        legs_each: u32,
        /// Which.
        legs: Vec<SetId>,
    },
    /// Only lets cords join the work.
    LayIn,
}

/// How a tail ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TailEnd {
    /// Trimmed.
    Plain,
    /// Combed out and trimmed.
    Combed,
    /// Drawn under and cut off: cut with the cord, but not in the finished piece.
    Flush,
}

/// A knot, repeated.
#[derive(Debug, Clone, PartialEq)]
pub struct Tie {
    /// The knot.
    pub knot: Arc<Knot>,
    /// How often in each column, or on each working leg of a row.
    pub times: u32,
    /// Columns side by side; worked out from the legs when not said.
    pub columns: Option<u32>,
    /// Sets that tie.
    pub working: Vec<SetId>,
    /// Sets that are tied round.
    pub core: Vec<SetId>,
    /// A fitting that is tied round instead.
    pub on: Option<FittingId>,
    /// Working and core legs change places: the take-up is shared evenly, and so many legs are core in a column.
    pub shared: Option<Shared>,
    /// Parameters of the knot.
    pub parameters: Vec<(String, f64)>,
}

/// Legs that change places.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Shared {
    /// Core legs in each column; worked out from the legs when not said.
    pub core_legs: Option<u32>,
}

/// Work that is not tying: dyeing, combing out, wiring.
#[derive(Debug, Clone, PartialEq)]
pub struct Task {
    /// As written on the bench sheet.
    pub title: String,
    /// How long, for one piece or for the whole batch; the maker's own figure, so pace does not touch it.
    pub time: ThreePoint,
    /// Whether it is done once for all pieces of the design.
    pub once: bool,
    /// What it uses up, each time.
    pub cost: Decimal,
}
