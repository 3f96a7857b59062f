//! Tightening a knot of the catalogue: which cores its table speaks for, row by row, and the shape it is drawn in.

use super::{Budget, TightenError, tighten, tighten_at};
use crate::knot::Knot;
use crate::path::{Path, StartingCore};
use crate::setting::USUAL_GIVE;
use crate::shape::Shape;
use crate::table::TighteningRow;

/// One tightening: so many working legs round something.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Case {
    /// Working legs.
    pub working: u32,
    /// What they go round.
    pub round: StartingCore,
}

/// Numbers of core legs that a table has rows for, within what the knot takes.
const CORE_LEGS: [u32; 7] = [0, 1, 2, 3, 4, 8, 16];
/// A thick rod, the last row: from there on a turn grows as its core does.
const THICK: f64 = 16.0;
/// A thin rod, the first row where there is always a core.
const THIN: f64 = 0.3;
/// A rod as thick as a ring or dowel often is.
const DOWEL: f64 = 4.0;

/// The cases that the table of a knot has a row for, in the order of its rows.
///
/// None for a knot without a path, or with moves: its path is there to draw it by and to be held against them.
pub fn cases(knot: &Knot) -> Vec<Case> {
    if !knot.is_drawn() {
        return Vec::new();
    }
    let rounds = rounds(knot);
    let (least, most) = if knot.together { (1, 1) } else { knot.working.legs };
    let of = |working| rounds.iter().map(move |round| Case { working, round: *round });
    (least..=most).flat_map(of).collect()
}

fn rounds(knot: &Knot) -> Vec<StartingCore> {
    let (least, most) = knot.core.legs;
    match (most, knot.core.fitting) {
        (0, false) => vec![StartingCore::Nothing],
        (0, true) => {
            vec![StartingCore::Rod(THIN), StartingCore::Rod(1.0), StartingCore::Rod(DOWEL), StartingCore::Rod(THICK)]
        }
        _ => {
            let thin = (least > 0).then_some(StartingCore::Rod(THIN));
            let legs = CORE_LEGS.into_iter().filter(|count| (least..=most).contains(count)).map(StartingCore::Legs);
            thin.into_iter().chain(legs).chain([StartingCore::Rod(THICK)]).collect()
        }
    }
}

/// The case that a knot is drawn in: two core legs where it takes them, four working legs where it takes many.
pub fn drawn_case(knot: &Knot) -> Case {
    let round = match (knot.core.legs.1, knot.core.fitting) {
        (0, false) => StartingCore::Nothing,
        (_, true) => StartingCore::Rod(DOWEL),
        _ => StartingCore::Legs(knot.core.usual_legs()),
    };
    let (fewest, most) = if knot.together { (1, 1) } else { knot.working.legs };
    Case { working: if fewest == most { fewest } else { 4.clamp(fewest, most) }, round }
}

/// One row of a knot's table.
///
/// # Errors
/// A [`TightenError`] when the path can't be tightened round this core.
pub fn row(path: &Path, case: Case, effort: &Budget) -> Result<TighteningRow, TightenError> {
    let tight = tighten(&path.start(case.working, case.round), effort)?;
    Ok(TighteningRow::new(case.working, case.round, &tight, path.knots, path.legs_each()))
}

/// The shape of a knot at the usual give, with fewer points than it was tightened with.
///
/// # Errors
/// As [`row`].
pub fn drawn(path: &Path, case: Case, effort: &Budget) -> Result<Shape, TightenError> {
    let start = path.start(case.working, case.round);
    let (_, shape) = tighten_at(&start, USUAL_GIVE, effort)?;
    Ok(super::tubes::thinned(&shape))
}
