//! The short straight pieces of all cords, found by place.

use super::sampling::{PlanePoint, apart, between, flat, nearest_share};
use super::scene::{CordLine, Scene};
use reeve_catalogue::shape::Point;

/// How wide a square of the plane is, in diameters.
const SQUARE: f64 = 0.5;

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
    rows: usize,
    /// Where the segments of each square begin, and of one square more.
    starts: Vec<usize>,
    /// The middles of the segments, square by square, and which segment each is of.
    middles: Vec<(PlanePoint, usize)>,
    /// Half the length of the longest segment.
    half: f64,
}

impl Grid {
    pub(super) fn of(scene: &Scene) -> Self {
        let segments: Vec<Segment> = (0..scene.lines.len()).flat_map(|line| segments_of(scene, line)).collect();
        let mut middles: Vec<(PlanePoint, usize)> =
            segments.iter().map(|segment| flat(segment.middle())).zip(0..).collect();
        let corner = [0, 1].map(|axis| middles.iter().map(|(at, _)| at[axis]).fold(f64::INFINITY, f64::min));
        let far = [0, 1].map(|axis| middles.iter().map(|(at, _)| at[axis]).fold(f64::NEG_INFINITY, f64::max));
        let (columns, rows) = (square(far[0] - corner[0]) + 1, square(far[1] - corner[1]) + 1);
        let number = |at: PlanePoint| square(at[1] - corner[1]) * columns + square(at[0] - corner[0]);
        middles.sort_by_cached_key(|(at, _)| number(*at));
        let mut starts = vec![0; columns * rows + 1];
        for (at, _) in &middles {
            starts[number(*at) + 1] += 1;
        }
        for at in 1..starts.len() {
            starts[at] += starts[at - 1];
        }
        let half = segments.iter().map(|segment| apart(flat(segment.a), flat(segment.b)) / 2.0).fold(0.0, f64::max);
        Self { segments, corner, columns, rows, starts, middles, half }
    }

    /// The segments that come within so many diameters of a spot, and a few more.
    pub(super) fn about(&self, spot: PlanePoint, reach: f64) -> impl Iterator<Item = usize> {
        let reach = reach + self.half;
        let near = |axis: usize| {
            let away = spot[axis] - self.corner[axis];
            (square(away - reach), square(away + reach))
        };
        let ((left, right), (top, bottom)) = (near(0), near(1));
        let rows = (top..=bottom).take_while(|row| *row < self.rows).map(move |row| {
            let first = row * self.columns;
            let [from, to] = [left, right + 1].map(|column| self.starts[first + column.min(self.columns)]);
            &self.middles[from..to]
        });
        let is_near = move |at: PlanePoint| {
            let (x, y) = (at[0] - spot[0], at[1] - spot[1]);
            x * x + y * y <= reach * reach
        };
        rows.flatten().filter(move |(at, _)| is_near(*at)).map(|(_, segment)| *segment)
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
fn square(away: f64) -> usize {
    (away / SQUARE).clamp(0.0, 4000.0) as usize
}
