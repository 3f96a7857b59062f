//! The short straight pieces of all cords, found by place.

use super::sampling::{PlanePoint, apart, between, flat, nearest_share};
use super::scene::{CordLine, Scene};
use reeve_catalogue::shape::Point;

/// A short straight piece of a cord's centreline.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Segment {
    pub(super) a: Point,
    pub(super) b: Point,
    /// Which line it is of.
    pub(super) line: usize,
    /// How far along that line it begins and ends.
    pub(super) arcs: (f64, f64),
}

impl Segment {
    pub(super) fn middle(&self) -> Point {
        between(self.a, self.b, 0.5)
    }

    /// Where it comes nearest to a spot: how far off, how deep, and how far along its line.
    pub(super) fn nearest(&self, spot: PlanePoint) -> (f64, f64, f64) {
        let share = nearest_share(spot, flat(self.a), flat(self.b));
        let at = between(self.a, self.b, share);
        (apart(spot, flat(at)), at[2], self.arcs.0 + (self.arcs.1 - self.arcs.0) * share)
    }
}

/// The segments of a scene, line by line, and the squares of the plane that they lie in.
pub(super) struct Grid {
    pub(super) segments: Vec<Segment>,
    corner: PlanePoint,
    columns: usize,
    squares: Vec<Vec<usize>>,
}

impl Grid {
    pub(super) fn of(scene: &Scene) -> Self {
        let segments: Vec<Segment> = (0..scene.lines.len()).flat_map(|line| segments_of(scene, line)).collect();
        let middles = || segments.iter().map(Segment::middle);
        let corner = [0, 1].map(|axis| middles().map(|at| at[axis]).fold(f64::INFINITY, f64::min));
        let far = [0, 1].map(|axis| middles().map(|at| at[axis]).fold(f64::NEG_INFINITY, f64::max));
        let (columns, rows) = (cell(far[0] - corner[0]) + 1, cell(far[1] - corner[1]) + 1);
        let mut grid = Self { segments: Vec::new(), corner, columns, squares: vec![Vec::new(); columns * rows] };
        for (index, segment) in segments.iter().enumerate() {
            let middle = segment.middle();
            let at = cell(middle[1] - corner[1]) * columns + cell(middle[0] - corner[0]);
            grid.squares[at].push(index);
        }
        grid.segments = segments;
        grid
    }

    /// The segments whose middle lies within 1.2 diameters of a spot, and some more.
    pub(super) fn about(&self, spot: PlanePoint) -> impl Iterator<Item = usize> {
        // One square is one diameter wide.
        let near = |axis: usize| {
            let away = spot[axis] - self.corner[axis];
            (cell(away - 1.2), cell(away + 1.2))
        };
        let ((left, right), (top, bottom)) = (near(0), near(1));
        let rows = (top..=bottom).map_while(move |row| {
            let start = row * self.columns;
            let end = start + self.columns;
            (end <= self.squares.len()).then(|| &self.squares[(start + left).min(end)..(start + right + 1).min(end)])
        });
        rows.flatten().flatten().copied()
    }
}

fn segments_of(scene: &Scene, line: usize) -> impl Iterator<Item = Segment> {
    let CordLine { points, arcs, .. } = &scene.lines[line];
    let pairs = points.windows(2).zip(arcs.windows(2));
    pairs.map(move |(points, arcs)| Segment { a: points[0], b: points[1], line, arcs: (arcs[0], arcs[1]) })
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a cast from a float holds to the type's range, and what lies left of the grid belongs to its first square"
)]
fn cell(away: f64) -> usize {
    away.clamp(0.0, 4000.0) as usize
}
