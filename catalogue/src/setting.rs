//! Where and with what a knot is tied, and what one then takes.

use reeve_measure::{Length, Time, bound};

/// What the knot is tied round in one place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Core {
    /// So many legs of one thickness; none is a knot without a core.
    Legs {
        /// How many.
        count: u32,
        /// Thickness of each.
        diameter: Length,
    },
    /// A fitting of round section.
    Rod(Length),
    /// A fitting of rectangular section.
    Bar(Length, Length),
}

/// Where and with what the knot is tied.
#[derive(Debug, Clone, PartialEq)]
pub struct Setting<'a> {
    /// Thickness of the working legs.
    pub cord: Length,
    /// Working legs in one knot.
    pub working: u32,
    /// What it is tied round.
    pub core: Core,
    /// How much the cord gives, from 0 (hard): the share of its diameter by which it sinks into a like cord
    /// that it is wound round, at the tension of tying.
    pub give: f64,
    /// Parameters chosen; the others take their default.
    pub parameters: &'a [(String, f64)],
}

/// The give of a cord that nobody has measured. From memory: a soft twisted cotton.
pub const USUAL_GIVE: f64 = 0.1;

/// The hardest and the softest cord there is give for.
pub const GIVE_RANGE: (f64, f64) = (bound::GIVE.least, bound::GIVE.most);

/// What one knot takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Taken {
    /// Length of each working leg that it eats.
    pub working: Length,
    /// Length of each core leg that it eats.
    pub core: Length,
    /// How far it carries the work along its core.
    pub rise: Length,
    /// Time that does not depend on the hanging length.
    pub base: Time,
    /// How often each working leg is drawn through.
    pub draws: f64,
}
