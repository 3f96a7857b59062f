//! Ends that are pulled away: where the knot itself is, how far its ends are shown, and which way up it hangs.

use reeve_catalogue::shape::{Point, Shape, Strand, Then};

use super::sampling::{along, dot, minus, size, unit};

/// How far a pulled end is shown beyond its knot, in diameters.
const TAIL: f64 = 2.5;
/// An end is straight as far as it keeps within this angle, in radians.
const STRAIGHT: f64 = 0.07;

/// A box in space: its least and its greatest corner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Extent(pub(super) Point, pub(super) Point);

impl Extent {
    pub(super) fn of<'a>(points: impl Iterator<Item = &'a Point>) -> Self {
        let none = Self([f64::INFINITY; 3], [f64::NEG_INFINITY; 3]);
        points.fold(none, |Self(least, most), point| {
            Self([0, 1, 2].map(|at| least[at].min(point[at])), [0, 1, 2].map(|at| most[at].max(point[at])))
        })
    }

    fn wider(self, by: f64) -> Self {
        Self(self.0.map(|least| least - by), self.1.map(|most| most + by))
    }

    fn holds(&self, point: Point) -> bool {
        (0..3).all(|at| self.0[at] <= point[at] && point[at] <= self.1[at])
    }
}

/// A knot tied in one cord and round nothing may lie as it likes: it is shown with its ends one above the other, and
/// from where it is widest.
pub(super) fn upright(shape: &Shape) -> Option<Shape> {
    let [Strand { points, then: Then::Pulled }] = shape.strands.as_slice() else { return None };
    if !shape.rods.is_empty() || shape.repeat.is_some() {
        return None;
    }
    let down = unit(minus(*points.last()?, *points.first()?))?;
    // What pointed right still does, as far as it can.
    let right = unit(along([1.0, 0.0, 0.0], down, -down[0]))?;
    let near = [
        right[1] * down[2] - right[2] * down[1],
        right[2] * down[0] - right[0] * down[2],
        right[0] * down[1] - right[1] * down[0],
    ];
    let seen = points.iter().map(|point| [dot(*point, right), dot(*point, down), dot(*point, near)]);
    let from_above: Vec<[f64; 2]> = seen.clone().map(|[x, _, z]| [x, z]).collect();
    let (sin, cos) = libm::sincos(widest(&from_above));
    let points = seen.map(|[x, y, z]| [cos * x + sin * z, y, cos * z - sin * x]).collect();
    Some(Shape { strands: vec![Strand { points, then: Then::Pulled }], ..shape.clone() })
}

/// The angle, within a quarter turn, at which points spread most; nought where they spread alike.
fn widest(points: &[[f64; 2]]) -> f64 {
    let mean =
        |of: &dyn Fn(&[f64; 2]) -> f64| points.iter().map(of).sum::<f64>() / points.iter().map(|_| 1.0).sum::<f64>();
    let (x, z) = (mean(&|point| point[0]), mean(&|point| point[1]));
    let square = |length: f64| length * length;
    let (wide, deep) = (mean(&|point| square(point[0] - x)), mean(&|point| square(point[1] - z)));
    let (difference, mixed) = (wide - deep, 2.0 * mean(&|point| (point[0] - x) * (point[1] - z)));
    if libm::hypot(difference, mixed) < 0.05 * (wide + deep) { 0.0 } else { libm::atan2(mixed, difference) / 2.0 }
}

/// The last step of each end of a strand that is pulled away.
pub(super) fn ends(shape: &Shape, at: usize) -> Vec<(Point, Point)> {
    let points = shape.strands[at].points.as_slice();
    let mut ends = Vec::new();
    if let [first, second, ..] = points
        && is_first(shape, at)
    {
        ends.push((*second, *first));
    }
    if let [.., before, last] = points
        && shape.strands[at].then == Then::Pulled
    {
        ends.push((*before, *last));
    }
    ends
}

/// Whether a strand comes in from outside and not from another strand or itself.
pub(super) fn is_first(shape: &Shape, at: usize) -> bool {
    shape.strands[at].then != Then::Closes && !shape.strands.iter().any(|other| other.then == Then::GoesOnAs(at))
}

/// Where the knot itself is: everything but straight ends; everything where nothing bends.
pub(super) fn body(shape: &Shape) -> Extent {
    let bent = shape.strands.iter().enumerate().flat_map(|(at, strand)| {
        let points = strand.points.as_slice();
        let from = if is_first(shape, at) { points.len() - straight_from(points.iter().rev()) } else { 0 };
        let to = if strand.then == Then::Pulled { straight_from(points.iter()) } else { points.len() };
        points.get(from..to).unwrap_or_default()
    });
    let body = Extent::of(bent);
    if body.0[0].is_finite() { body } else { Extent::of(shape.strands.iter().flat_map(|strand| &strand.points)) }
}

/// How many of the points come before the straight end.
fn straight_from<'a>(points: impl DoubleEndedIterator<Item = &'a Point> + ExactSizeIterator) -> usize {
    let count = points.len();
    let mut backwards = points.rev();
    let Some(mut last) = backwards.next() else { return 0 };
    let mut direction = None;
    for (passed, point) in backwards.enumerate() {
        let step = unit(minus(*last, *point));
        let bends = match (direction, step) {
            (Some(direction), Some(step)) => size(minus(direction, step)) > STRAIGHT,
            _ => false,
        };
        if bends {
            return count - 1 - passed;
        }
        direction = direction.or(step);
        last = point;
    }
    0
}

/// A strand whose pulled ends reach just so far beyond the knot.
pub(super) fn pulled(shape: &Shape, at: usize, body: Extent) -> Strand {
    let mut strand = shape.strands[at].clone();
    if strand.then == Then::Pulled {
        pull(&mut strand.points, body);
    }
    if is_first(shape, at) {
        strand.points.reverse();
        pull(&mut strand.points, body);
        strand.points.reverse();
    }
    strand
}

fn pull(points: &mut Vec<Point>, body: Extent) {
    let room = body.wider(TAIL);
    let [.., before, last] = points.as_slice() else { return };
    let Some(direction) = unit(minus(*last, *before)) else { return };
    let straight = straight_from(points.iter()).max(1);
    while points.len() > straight && points.last().is_some_and(|last| !room.holds(*last)) {
        points.pop();
    }
    // A knot much longer than its tail is a mistake of the shape, and no reason to go on for ever.
    for _ in 0..200 {
        match points.last() {
            Some(last) if room.holds(*last) => points.push(along(*last, direction, 0.1)),
            _ => break,
        }
    }
}
