//! Rows of knots: where each row begins and ends, flat or round.

use super::PlaceError;

/// Rows of one knot.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KnotRows {
    /// Legs in one knot, if not as its file says.
    pub each: Option<usize>,
    /// Knots side by side in the first row, in the middle; as many as the legs make if not said.
    pub columns: Option<usize>,
    /// Legs left out in the first row.
    pub leave: Leave,
    /// How many places on the first knot of a round begins.
    pub shift: usize,
    /// Whether each row lies half a knot on from the one above.
    pub alternate: bool,
    /// Edges that move half a knot in every row.
    pub narrow: MovingEdges,
    /// Edges that move half a knot out every row.
    pub widen: MovingEdges,
    /// How many rows.
    pub rows: RowsAsked,
    /// Knots under one another in each column.
    pub times: u32,
}

impl Default for KnotRows {
    fn default() -> Self {
        Self {
            each: None,
            columns: None,
            leave: Leave::default(),
            shift: 0,
            alternate: false,
            narrow: MovingEdges::None,
            widen: MovingEdges::None,
            rows: RowsAsked::Count(1),
            times: 1,
        }
    }
}

/// Legs left out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Leave {
    /// At the left edge.
    pub left: usize,
    /// Between two knots.
    pub between: usize,
    /// At the right edge.
    pub right: usize,
}

/// Edges of a field.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum MovingEdges {
    /// Neither.
    #[default]
    None,
    /// The left one.
    Left,
    /// The right one.
    Right,
    /// Both.
    Both,
}

impl MovingEdges {
    fn has_left(self) -> bool {
        matches!(self, Self::Left | Self::Both)
    }

    fn has_right(self) -> bool {
        matches!(self, Self::Right | Self::Both)
    }
}

/// How many rows there are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RowsAsked {
    /// So many.
    Count(u32),
    /// Up to the first that has so many knots.
    Until(usize),
}

/// More than any piece has; a field that never gets so narrow ends there.
const MOST_ROWS: u32 = 10_000;

/// Where the knots of each row begin, counted from 0 among the legs taken; on a round they may run on over the seam.
///
/// # Errors
/// [`PlaceError`] when the legs do not come out, or a row would reach over the edge.
pub fn field_rows(legs: usize, each: usize, is_round: bool, field: &KnotRows) -> Result<Vec<Vec<usize>>, PlaceError> {
    if each == 0 || each > legs {
        return Err(PlaceError::TooFew { legs, each });
    }
    if field.alternate && each % 2 == 1 {
        return Err(PlaceError::OddHalf { each });
    }
    if is_round { round_rows(legs, each, field) } else { FlatRows::of(legs, each, field)?.rows(field) }
}

fn round_rows(legs: usize, each: usize, field: &KnotRows) -> Result<Vec<Vec<usize>>, PlaceError> {
    if field.leave != Leave::default() || field.columns.is_some() {
        return Err(PlaceError::NoEdge { asked: if field.columns.is_some() { "columns" } else { "leave" } });
    }
    if (field.narrow, field.widen) != (MovingEdges::None, MovingEdges::None) {
        return Err(PlaceError::NoEdge { asked: if field.narrow == MovingEdges::None { "widen" } else { "narrow" } });
    }
    let RowsAsked::Count(rows) = field.rows else { return Err(PlaceError::NoEdge { asked: "until" }) };
    if !legs.is_multiple_of(each) {
        return Err(PlaceError::RoundLeftOver { legs, each });
    }
    let row = |nth: u32| {
        let half = if field.alternate && nth % 2 == 1 { each / 2 } else { 0 };
        (0..legs / each).map(|knot| (field.shift + half + knot * each) % legs).collect()
    };
    Ok((0..rows).map(row).collect())
}

/// A flat field: what its first row leaves out.
struct FlatRows {
    legs: usize,
    each: usize,
    leave: Leave,
}

impl FlatRows {
    fn of(legs: usize, each: usize, field: &KnotRows) -> Result<Self, PlaceError> {
        if field.shift > 0 {
            return Err(PlaceError::FlatShift { shift: field.shift });
        }
        let edges_move = (field.narrow, field.widen) != (MovingEdges::None, MovingEdges::None);
        if edges_move && !field.alternate {
            return Err(PlaceError::NotAlternate {
                asked: if field.narrow == MovingEdges::None { "widen" } else { "narrow" },
            });
        }
        let mut leave = field.leave;
        if let Some(columns) = field.columns {
            let taken = columns * each + columns.saturating_sub(1) * leave.between;
            let spare =
                legs.checked_sub(taken).filter(|_| columns > 0).ok_or(PlaceError::TooFew { legs, each: taken })?;
            if spare % 2 == 1 {
                return Err(PlaceError::LeftOver { legs, each, left_over: spare });
            }
            (leave.left, leave.right) = (spare / 2, spare / 2);
        }
        if field.alternate && (leave.left >= each || leave.right >= each) && field.columns.is_none() && !edges_move {
            return Err(PlaceError::FarLeave { leave: leave.left.max(leave.right), each });
        }
        let this = Self { legs, each, leave };
        this.row(leave.left, leave.right)?;
        Ok(this)
    }

    /// The knots of a row that leaves so many legs at either edge.
    fn row(&self, left: usize, right: usize) -> Result<Vec<usize>, PlaceError> {
        let (each, between) = (self.each, self.leave.between);
        let taken = self.legs.checked_sub(left + right).filter(|taken| *taken >= each);
        let taken = taken.ok_or(PlaceError::TooFew { legs: self.legs.saturating_sub(left + right), each })?;
        let left_over = (taken + between) % (each + between);
        if left_over != 0 {
            return Err(PlaceError::LeftOver { legs: taken, each, left_over });
        }
        let knots = (taken + between) / (each + between);
        Ok((0..knots).map(|knot| left + knot * (each + between)).collect())
    }

    fn rows(&self, field: &KnotRows) -> Result<Vec<Vec<usize>>, PlaceError> {
        let most = if let RowsAsked::Count(rows) = field.rows { rows } else { MOST_ROWS };
        let mut rows: Vec<Vec<usize>> = Vec::new();
        for nth in 0..most {
            let narrows = (field.narrow.has_left(), field.narrow.has_right());
            let widens = (field.widen.has_left(), field.widen.has_right());
            let left = self.edge((self.leave.left, narrows.0, widens.0), nth, field.alternate)?;
            let right = self.edge((self.leave.right, narrows.1, widens.1), nth, field.alternate)?;
            rows.push(self.row(left, right)?);
            if let RowsAsked::Until(knots) = field.rows {
                let last = rows.last().map_or(0, Vec::len);
                if last == knots {
                    return Ok(rows);
                }
                if rows.len() > 1 && rows[rows.len() - 2].len() == last && !field.alternate {
                    return Err(PlaceError::NeverSo { knots, first: rows[0].len() });
                }
            }
        }
        match field.rows {
            RowsAsked::Until(knots) => Err(PlaceError::NeverSo { knots, first: rows.first().map_or(0, Vec::len) }),
            RowsAsked::Count(_) => Ok(rows),
        }
    }

    /// Legs left at an edge in a row, counted from 0: as in the first, half a knot on in every other one, or half a knot
    /// further in or out each time.
    fn edge(
        &self,
        (leave, narrows, widens): (usize, bool, bool),
        nth: u32,
        alternate: bool,
    ) -> Result<usize, PlaceError> {
        let half = self.each / 2;
        let rows = usize::try_from(nth).unwrap_or(usize::MAX);
        let moved = half.saturating_mul(rows);
        match (narrows, widens) {
            (true, _) => Ok(leave.saturating_add(moved)),
            (_, true) => {
                leave.checked_sub(moved).ok_or_else(|| PlaceError::OverEdge { row: rows + 1, wants: moved - leave })
            }
            _ if alternate && nth % 2 == 1 => Ok((leave + half) % self.each),
            _ => Ok(leave),
        }
    }
}
