//! What a knot takes as tightening found it: a small table over core and give.

use crate::path::StartingCore;
use crate::tighten::{GIVES, Tight};

/// Figures at each of [`GIVES`], in cord diameters, for one knot.
pub type ByGive = [f64; GIVES.len()];

/// What a knot takes, over its number of working legs, its core and the give of its cord.
#[derive(Debug, Clone, PartialEq)]
pub struct TighteningTable {
    /// The knot's name.
    pub knot: String,
    /// The mark of the path that was tightened: a table whose path has changed since is stale.
    pub mark: String,
    /// Rows, from few working legs to many, and from a thin core to a thick one.
    pub rows: Vec<TighteningRow>,
}

/// What a knot takes round one core.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TighteningRow {
    /// Working legs in one knot.
    pub working: u32,
    /// The core, as thick as a rod of the same girth, in cord diameters.
    pub core: f64,
    /// Length of each working leg that one knot eats.
    pub take_up: ByGive,
    /// How far one knot carries the work along its core.
    pub rise: ByGive,
}

/// What one knot takes, in cord diameters.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct KnotFigures {
    /// Length of each working leg that it eats.
    pub take_up: f64,
    /// How far it carries the work along its core.
    pub rise: f64,
}

/// A core may be so many times as thick as the thickest of the table. Beyond the table each diameter more adds as much
/// as the last did: a turn grows by pi diameters a diameter, whatever it goes round.
const BEYOND: f64 = 4.0;

impl TighteningRow {
    /// A row from what tightening measured, for one of the knots of a repeat and one of the legs of a strand.
    pub fn new(working: u32, round: StartingCore, tight: &Tight, knots: u32, legs: u32) -> Self {
        let knots = f64::from(knots.max(1));
        Self {
            working,
            core: round.thickness(),
            take_up: tight.map(|measured| measured.take_up / knots / f64::from(legs.max(1))),
            rise: tight.map(|measured| measured.rise / knots),
        }
    }

    /// What one knot takes in a cord of this give, read along a straight line between gives.
    pub fn at(&self, give: f64) -> KnotFigures {
        KnotFigures { take_up: at_give(&self.take_up, give), rise: at_give(&self.rise, give) }
    }
}

impl TighteningTable {
    /// What one knot takes round a core of this thickness (in cord diameters), with a cord of this give.
    ///
    /// Between rows and gives it is read along a straight line. `None` for another number of working legs, or a core
    /// thicker than the table speaks for.
    pub fn at(&self, working: u32, core: f64, give: f64) -> Option<KnotFigures> {
        let rows: Vec<&TighteningRow> = self.rows.iter().filter(|row| row.working == working).collect();
        let (first, last) = (rows.first()?, rows.last()?);
        if rows.len() == 1 || core <= first.core {
            return Some(first.at(give));
        }
        if core > last.core * BEYOND {
            return None;
        }
        let after = rows.partition_point(|row| row.core <= core).clamp(1, rows.len() - 1);
        let (thin, thick) = (rows[after - 1], rows[after]);
        let share = (core - thin.core) / (thick.core - thin.core);
        let (a, b) = (thin.at(give), thick.at(give));
        Some(KnotFigures { take_up: between(a.take_up, b.take_up, share), rise: between(a.rise, b.rise, share) })
    }
}

fn between(a: f64, b: f64, share: f64) -> f64 {
    a + (b - a) * share
}

fn at_give(figures: &ByGive, give: f64) -> f64 {
    let give = give.clamp(GIVES[0], GIVES[GIVES.len() - 1]);
    let after = GIVES.partition_point(|known| *known <= give).clamp(1, GIVES.len() - 1);
    let share = (give - GIVES[after - 1]) / (GIVES[after] - GIVES[after - 1]);
    between(figures[after - 1], figures[after], share)
}
