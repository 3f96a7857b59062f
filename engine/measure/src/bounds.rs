//! The bounds table: what a sensible number is, and how to say so.
//!
//! One row a figure. The readers test against it and write their message from it, so a
//! limit and the text that explains it can't drift apart.

use std::fmt;

/// Lowest and highest value of one figure, in the unit it is shown in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bound {
    /// What the figure is, as a maker says it.
    pub what: &'static str,
    /// The lowest value allowed.
    pub least: f64,
    /// The highest value allowed.
    pub most: f64,
    /// The unit both are in; empty for a plain number.
    pub unit: &'static str,
}

impl Bound {
    const fn new(what: &'static str, least: f64, most: f64, unit: &'static str) -> Self {
        Self { what, least, most, unit }
    }

    /// Whether the value, in the bound's own unit, lies within. A value that is not a number does not.
    pub fn holds(&self, value: f64) -> bool {
        value >= self.least && value <= self.most
    }
}

impl fmt::Display for Bound {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let space = if self.unit.is_empty() || self.unit == "%" { "" } else { " " };
        write!(f, "{} must be from {} to {}{space}{}", self.what, self.least, self.most, self.unit)
    }
}

/// The rows. Lengths in the unit named, counts as plain numbers.
pub mod bound {
    use super::Bound;

    /// Thickness of a cord.
    pub const CORD_DIAMETER: Bound = Bound::new("a cord's diameter", 0.2, 60.0, "mm");
    /// Mass of a metre of cord.
    pub const LINEAR_DENSITY: Bound = Bound::new("a cord's weight", 0.02, 3000.0, "g/m");
    /// Length on one put-up.
    pub const PUT_UP_LENGTH: Bound = Bound::new("the length of a put-up", 100.0, 10_000_000.0, "mm");
    /// Weight of one put-up.
    pub const PUT_UP_WEIGHT: Bound = Bound::new("the weight of a put-up", 1.0, 50_000.0, "g");
    /// A side or diameter of a fitting's section.
    pub const SECTION: Bound = Bound::new("a fitting's section", 0.5, 300.0, "mm");
    /// Outer extent of a fitting.
    pub const FITTING_EXTENT: Bound = Bound::new("a fitting's size", 1.0, 10_000.0, "mm");
    /// Weight of a fitting.
    pub const FITTING_WEIGHT: Bound = Bound::new("a fitting's weight", 0.01, 50_000.0, "g");
    /// Cords in one group.
    pub const CORDS: Bound = Bound::new("the number of cords", 1.0, 5000.0, "");
    /// Times a knot is repeated in a column.
    pub const TIMES: Bound = Bound::new("the number of repeats", 1.0, 20_000.0, "");
    /// Columns worked side by side.
    pub const COLUMNS: Bound = Bound::new("the number of columns", 1.0, 5000.0, "");
    /// Fittings, beads and parts of one kind in a piece.
    pub const PARTS: Bound = Bound::new("the number of parts", 1.0, 1000.0, "");
    /// Pieces of one design that find a buyer in a week.
    pub const WEEKLY: Bound = Bound::new("the number sold in a week", 1.0, 10_000.0, "");
    /// Pieces of one design in a commission.
    pub const PIECES: Bound = Bound::new("the number of pieces", 1.0, 10_000.0, "");
    /// All the pieces that the parts of parts of a design add up to.
    pub const PARTS_IN_ALL: Bound = Bound::new("the number of parts in all", 1.0, 100_000.0, "");
    /// Designs that stand in one another as parts of parts.
    pub const PARTS_DEEP: Bound = Bound::new("the depth of parts within parts", 0.0, 32.0, "");
    /// Cord groups, fittings, steps and tasks of a design and of the parts of its parts, each part once however often it
    /// is needed.
    pub const LINES_IN_ALL: Bound = Bound::new("the number of lines of a design with its parts", 1.0, 100_000.0, "");
    /// Measures of one design: each sum is held against all of them.
    pub const MEASURES: Bound = Bound::new("the number of measures", 0.0, 100.0, "");
    /// A length given in a step.
    pub const STEP_LENGTH: Bound = Bound::new("a length in a step", 1.0, 50_000.0, "mm");
    /// One cord, cut.
    pub const CUT_LENGTH: Bound = Bound::new("a cord's cut length", 1.0, 500_000.0, "mm");
    /// Rounding step for cutting.
    pub const CUTTING_STEP: Bound = Bound::new("the cutting step", 1.0, 1000.0, "mm");
    /// Minutes of a task.
    pub const TASK_MINUTES: Bound = Bound::new("the minutes of a task", 0.1, 10_000.0, "min");
    /// Minutes of a step of finished work.
    pub const WORK_MINUTES: Bound = Bound::new("the minutes of a work", 0.0, 100_000.0, "min");
    /// Seconds of one action of handling.
    pub const HANDLING_SECONDS: Bound = Bound::new("a handling time", 0.0, 36_000.0, "s");
    /// Seconds of one knot.
    pub const KNOT_SECONDS: Bound = Bound::new("a knot's time", 0.0, 7200.0, "s");
    /// The maker's pace against the catalogue.
    pub const PACE: Bound = Bound::new("the pace", 0.2, 5.0, "");
    /// How far the pace strays.
    pub const PACE_SPREAD: Bound = Bound::new("the spread of the pace", 0.0, 100.0, "%");
    /// How sure it is that hours suffice: half of all jobs take longer than expected.
    pub const CONFIDENCE: Bound = Bound::new("a confidence", 50.0, 99.0, "%");
    /// The share of time that each doubling of the pieces made leaves.
    pub const PRACTICE_RATE: Bound = Bound::new("a rate of practice", 50.0, 100.0, "%");
    /// The piece from which on practice shortens nothing.
    pub const STEADY_PIECE: Bound = Bound::new("the steady piece", 1.0, 1000.0, "");
    /// Pieces of a design made before.
    pub const MADE_BEFORE: Bound = Bound::new("the number made before", 0.0, 100_000.0, "");
    /// Bench hours in a week.
    pub const WEEKLY_HOURS: Bound = Bound::new("bench hours a week", 0.5, 168.0, "h");
    /// Days that pass beside the bench for one thing.
    pub const PASSING_DAYS: Bound = Bound::new("days that pass beside the bench", 1.0, 365.0, "d");
    /// Bench hours in a year.
    pub const YEARLY_HOURS: Bound = Bound::new("bench hours a year", 1.0, 8784.0, "h");
    /// A share of something, as a percentage.
    pub const SHARE: Bound = Bound::new("a share", 0.0, 100.0, "%");
    /// A margin on the price.
    pub const MARGIN: Bound = Bound::new("a margin on the price", 0.0, 99.0, "%");
    /// A mark-up, surcharge or allowance, as a percentage.
    pub const MARKUP: Bound = Bound::new("a percentage on top", 0.0, 1000.0, "%");
    /// A tax rate.
    pub const TAX_RATE: Bound = Bound::new("a tax rate", 0.0, 100.0, "%");
    /// Days a quote stays open.
    pub const VALID_DAYS: Bound = Bound::new("days of validity", 1.0, 730.0, "d");
    /// An amount of money, either way.
    pub const MONEY: Bound = Bound::new("an amount of money", -1_000_000_000.0, 1_000_000_000.0, "");
    /// A quantity on a line with a given price, either way.
    pub const LINE_QUANTITY: Bound = Bound::new("a quantity", -1_000_000.0, 1_000_000.0, "");
    /// What a whole commission costs; far above any, and far below what a decimal number holds.
    pub const JOB_COST: Bound = Bound::new("what a commission costs", 0.0, 1_000_000_000_000_000.0, "");
    /// A number of a knot's geometry: turns, diameters.
    pub const MOVE: Bound = Bound::new("a move", 0.0, 1000.0, "");
    /// Legs of one role of a knot, or of its core.
    pub const ROLE_LEGS: Bound = Bound::new("a number of legs", 0.0, 500.0, "");
    /// A coordinate of a knot's path.
    pub const PATH_POINT: Bound = Bound::new("a coordinate of a path", -200.0, 200.0, "diameters");
    /// Length of one repeat of a knot's path, or thickness of a rod it goes round.
    pub const REPEAT: Bound = Bound::new("a length along a path", 0.05, 200.0, "diameters");
    /// The pull along the core while a path is tightened.
    pub const PULL: Bound = Bound::new("a pull", 0.0, 20.0, "tensions");
    /// An angle in a knot's path.
    pub const TURN: Bound = Bound::new("a turn", -360.0, 360.0, "degrees");
    /// The share of its diameter by which a cord sinks into a like cord that it is wound round.
    pub const GIVE: Bound = Bound::new("a cord's give", 0.0, 0.2, "");
    /// A length measured at a sample.
    pub const SAMPLE_LENGTH: Bound = Bound::new("a length of a sample", 1.0, 500_000.0, "mm");
    /// Minutes that a sample took.
    pub const SAMPLE_MINUTES: Bound = Bound::new("the minutes of a sample", 0.005, 1_200_000.0, "min");
    /// Seconds that one knot of a sample took.
    pub const SAMPLE_KNOT_SECONDS: Bound = Bound::new("the time of one knot of a sample", 0.3, 3600.0, "s");
    /// Samples in one file: each is judged by all the others of its cord.
    pub const SAMPLES: Bound = Bound::new("the number of samples", 0.0, 10_000.0, "");
    /// Finished works in one file, and steps of them.
    pub const WORKS: Bound = Bound::new("the number of works", 0.0, 10_000.0, "");
    /// How doubtful the time of a work is, as a logarithm.
    pub const WORK_DOUBT: Bound = Bound::new("the doubt of a work", 0.0, 10.0, "");
    /// A parameter of a knot.
    pub const PARAMETER: Bound = Bound::new("a parameter", 0.0, 100_000.0, "");
    /// A parameter of a knot that is a length.
    pub const PARAMETER_LENGTH: Bound = Bound::new("a length of a knot", 0.0, 100_000.0, "mm");
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bound_writes_its_own_limit() {
        assert_eq!(bound::CORD_DIAMETER.to_string(), "a cord's diameter must be from 0.2 to 60 mm");
        assert_eq!(bound::SHARE.to_string(), "a share must be from 0 to 100%");
    }

    #[test]
    fn not_a_number_is_out_of_bounds() {
        assert!(!bound::PACE.holds(f64::NAN));
        assert!(!bound::PACE.holds(f64::INFINITY));
        assert!(bound::PACE.holds(1.0));
    }
}
