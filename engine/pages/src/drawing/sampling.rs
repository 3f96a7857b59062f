//! Curves through the points of a centreline: spacing, lengths, directions.

use reeve_catalogue::shape::Point;

/// A place in the plane of the drawing.
pub(super) type PlanePoint = [f64; 2];

/// The widest spacing of the points that a drawing is made from, in diameters: the ends of hidden edges fall between
/// two of them, and each piece is painted at the depth of its middle.
pub(super) const SPACING: f64 = 0.12;

pub(super) fn minus(a: Point, b: Point) -> Point {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

pub(super) fn along(a: Point, direction: Point, by: f64) -> Point {
    [a[0] + direction[0] * by, a[1] + direction[1] * by, a[2] + direction[2] * by]
}

pub(super) fn between(a: Point, b: Point, share: f64) -> Point {
    along(a, minus(b, a), share)
}

pub(super) fn dot(a: Point, b: Point) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

pub(super) fn size(a: Point) -> f64 {
    dot(a, a).sqrt()
}

/// The direction of a vector; `None` for one without length.
pub(super) fn unit(a: Point) -> Option<Point> {
    let long = size(a);
    (long > 1e-9).then(|| [a[0] / long, a[1] / long, a[2] / long])
}

pub(super) fn flat(point: Point) -> PlanePoint {
    [point[0], point[1]]
}

pub(super) fn apart(a: PlanePoint, b: PlanePoint) -> f64 {
    let (x, y) = (a[0] - b[0], a[1] - b[1]);
    (x * x + y * y).sqrt()
}

/// The share, from 0 to 1, at which a segment comes nearest to a spot.
pub(super) fn nearest_share(spot: PlanePoint, a: PlanePoint, b: PlanePoint) -> f64 {
    let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
    let long = dx * dx + dy * dy;
    if long < 1e-18 {
        return 0.0;
    }
    (((spot[0] - a[0]) * dx + (spot[1] - a[1]) * dy) / long).clamp(0.0, 1.0)
}

/// How many steps of at most `step` make up a length; at least one.
pub(super) fn steps(length: f64, step: f64) -> u32 {
    let mut count = 1_u32;
    while f64::from(count) * step < length && count < 10_000 {
        count += 1;
    }
    count
}

/// A smooth curve through points, no two of its own further apart than [`SPACING`].
///
/// A closed one ends where it began.
pub(super) fn smooth(points: &[Point], closed: bool) -> Vec<Point> {
    let mut points: Vec<Point> = points.to_vec();
    points.dedup_by(|a, b| size(minus(*a, *b)) < 1e-9);
    if closed && points.len() > 2 {
        if size(minus(points[0], points[points.len() - 1])) > 1e-9 {
            points.push(points[0]);
        }
    } else if points.len() < 2 {
        return points;
    }
    let mut curve = vec![points[0]];
    for at in 1..points.len() {
        let hull = neighbours(&points, at, closed);
        let count = steps(size(minus(hull[2], hull[1])), SPACING);
        curve.extend((1..=count).map(|step| through(&hull, f64::from(step) / f64::from(count))));
    }
    curve
}

/// The two ends of a span and the point on either side of it.
fn neighbours(points: &[Point], at: usize, closed: bool) -> [Point; 4] {
    let last = points.len() - 1;
    let (a, b) = (points[at - 1], points[at]);
    let before = match at {
        1 if closed => points[last - 1],
        1 => along(a, minus(a, b), 1.0),
        _ => points[at - 2],
    };
    let after = match at {
        _ if at < last => points[at + 1],
        _ if closed => points[1],
        _ => along(b, minus(b, a), 1.0),
    };
    [before, a, b, after]
}

/// The cubic of Catmull and Rom between the middle two of four points.
fn through(hull: &[Point; 4], share: f64) -> Point {
    let (second, third) = (share * share, share * share * share);
    let weights = [
        second - 0.5 * (share + third),
        1.0 - 2.5 * second + 1.5 * third,
        0.5 * share + 2.0 * second - 1.5 * third,
        0.5 * (third - second),
    ];
    let axis = |axis: usize| hull.iter().zip(weights).map(|(point, weight)| point[axis] * weight).sum();
    [axis(0), axis(1), axis(2)]
}

/// How far along a curve each of its points lies.
pub(super) fn arcs(points: &[Point]) -> Vec<f64> {
    let mut sum = 0.0;
    let mut arcs = vec![0.0];
    for pair in points.windows(2) {
        sum += size(minus(pair[1], pair[0]));
        arcs.push(sum);
    }
    arcs
}
