//! What is drawn of a shape: its cords over as many repeats as show the pattern, its rods, and the frame.

use reeve_catalogue::shape::{Point, Repeat, Shape, Strand, Then};

use super::DrawOptions;
use super::sampling::{along, arcs, dot, minus, size, smooth, unit};

/// The radius of a cord, in diameters.
pub(super) const RADIUS: f64 = 0.5;
/// How far a pulled end is shown beyond its knot, in diameters.
const TAIL: f64 = 2.5;
/// How far a rod stands out above and below a knot that stands alone.
const ROD_OUT: f64 = 1.4;
/// The least height of a repeating knot that shows its pattern, and the most that a sheet has room for.
const HEIGHT: (f64, f64) = (8.0, 14.0);
/// How far the work is seen to go on at either end of a repeating knot.
const GOES_ON: f64 = 0.9;
/// The room round the drawing.
const ROOM: f64 = 0.35;
/// Two parts of one cord nearer than this along it are one bend; half a turn about another cord is as long.
const BEND: f64 = 1.57;
/// An end is straight as far as it keeps within this angle, in radians.
const STRAIGHT: f64 = 0.07;

/// A stretch of a cord.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Line {
    /// Along its centre; the last is the first again when it is closed.
    pub(super) points: Vec<Point>,
    /// How far along it each point lies.
    pub(super) arcs: Vec<f64>,
    /// Whether it closes.
    pub(super) closed: bool,
    /// Which of the working legs it belongs to, counted from 0.
    pub(super) leg: usize,
    /// Whether its first and its last point are cut ends.
    pub(super) cut: (bool, bool),
}

impl Line {
    fn of(points: Vec<Point>, closed: bool, leg: usize, cut: (bool, bool)) -> Self {
        let arcs = arcs(&points);
        Self { points, arcs, closed, leg, cut }
    }

    /// How long it is.
    pub(super) fn length(&self) -> f64 {
        self.arcs.last().copied().unwrap_or_default()
    }

    /// Whether two places along it belong to one bend.
    pub(super) fn one_bend(&self, a: f64, b: f64) -> bool {
        let far = (a - b).abs();
        far < BEND || self.closed && self.length() - far < BEND
    }
}

/// A rod as far as it is seen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Bar {
    pub(super) x: f64,
    pub(super) z: f64,
    pub(super) radius: f64,
    /// Where it begins and ends, down.
    pub(super) span: (f64, f64),
    /// Whether it is no cord.
    pub(super) is_fitting: bool,
}

/// A box in space: its least and its greatest corner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Extent(pub(super) Point, pub(super) Point);

impl Extent {
    fn of<'a>(points: impl Iterator<Item = &'a Point>) -> Self {
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

/// Which way the drawing lies on the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Lie {
    /// The core runs down.
    Down,
    /// The core runs to the right; what pointed right points up.
    Right,
    /// The core runs to the left; what pointed right points down.
    Left,
}

/// What is drawn.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Scene {
    pub(super) lines: Vec<Line>,
    pub(super) bars: Vec<Bar>,
    /// Left, top, right and bottom of what is seen, before it is turned.
    pub(super) frame: [f64; 4],
    /// Whether the work goes on above and below.
    pub(super) goes_on: bool,
    pub(super) lie: Lie,
}

impl Scene {
    /// What is drawn of a shape.
    pub(super) fn of(shape: &Shape, options: &DrawOptions<'_>) -> Self {
        let upright = upright(shape);
        let shape = upright.as_ref().unwrap_or(shape);
        let body = body(shape);
        let strands: Vec<Strand> = (0..shape.strands.len()).map(|at| pulled(shape, at, body)).collect();
        let mut scene = match &shape.repeat {
            Some(repeat) if repeat.rise > 1e-3 => repeating(shape, &strands, repeat),
            _ => alone(shape, &strands, body),
        };
        if options.across {
            scene.lie = lie_across(shape);
        }
        scene.bars.iter_mut().for_each(|bar| bar.is_fitting = options.on_fitting);
        scene
    }

    /// How many working legs are told apart.
    pub(super) fn legs(&self) -> usize {
        self.lines.iter().map(|line| line.leg + 1).max().unwrap_or_default()
    }
}

/// A knot tied in one cord and round nothing may lie as it likes: it is shown with its ends one above the other, and
/// from where it is widest.
fn upright(shape: &Shape) -> Option<Shape> {
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
    let (sin, cos) = widest(&from_above).sin_cos();
    let points = seen.map(|[x, y, z]| [cos * x + sin * z, y, cos * z - sin * x]).collect();
    Some(Shape { strands: vec![Strand { points, then: Then::Pulled }], ..shape.clone() })
}

/// The angle, within a quarter turn, at which points spread most; nought where they spread alike.
fn widest(points: &[[f64; 2]]) -> f64 {
    let mean =
        |of: &dyn Fn(&[f64; 2]) -> f64| points.iter().map(of).sum::<f64>() / points.iter().map(|_| 1.0).sum::<f64>();
    let (x, z) = (mean(&|point| point[0]), mean(&|point| point[1]));
    let (wide, deep) = (mean(&|point| (point[0] - x).powi(2)), mean(&|point| (point[1] - z).powi(2)));
    let (difference, mixed) = (wide - deep, 2.0 * mean(&|point| (point[0] - x) * (point[1] - z)));
    if difference.hypot(mixed) < 0.05 * (wide + deep) { 0.0 } else { mixed.atan2(difference) / 2.0 }
}

/// The side on which most ends hang comes to lie below.
fn lie_across(shape: &Shape) -> Lie {
    let ends = (0..shape.strands.len()).flat_map(|at| ends(shape, at));
    let right: f64 = ends.map(|(from, to)| to[0] - from[0]).sum();
    if right > 0.0 { Lie::Left } else { Lie::Right }
}

/// The last step of each end of a strand that is pulled away.
fn ends(shape: &Shape, at: usize) -> Vec<(Point, Point)> {
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
fn is_first(shape: &Shape, at: usize) -> bool {
    shape.strands[at].then != Then::Closes && !shape.strands.iter().any(|other| other.then == Then::GoesOnAs(at))
}

/// Where the knot itself is: everything but straight ends; everything where nothing bends.
fn body(shape: &Shape) -> Extent {
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
fn pulled(shape: &Shape, at: usize, body: Extent) -> Strand {
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

fn alone(shape: &Shape, strands: &[Strand], body: Extent) -> Scene {
    let line = |(at, strand): (usize, &Strand)| {
        let closed = strand.then == Then::Closes;
        let cut = (is_first(shape, at), strand.then == Then::Pulled);
        Line::of(smooth(&strand.points, closed), closed, at, cut)
    };
    let lines: Vec<Line> = strands.iter().enumerate().map(line).filter(|line| line.points.len() > 1).collect();
    let middle = if body.0[1].is_finite() { (body.0[1], body.1[1]) } else { (0.0, 0.0) };
    let span = (middle.0 - RADIUS - ROD_OUT, middle.1 + RADIUS + ROD_OUT);
    let bars = bars(shape, span);
    let mut frame = sides(&lines, &bars);
    let downs = lines.iter().flat_map(|line| &line.points).map(|point| point[1]);
    let (top, bottom) = downs.fold((f64::INFINITY, f64::NEG_INFINITY), |(top, bottom), y| (top.min(y), bottom.max(y)));
    let (top, bottom) = if bars.is_empty() { (top, bottom) } else { (top.min(span.0), bottom.max(span.1)) };
    (frame[1], frame[3]) = if top <= bottom { (top - RADIUS - ROOM, bottom + RADIUS + ROOM) } else { (0.0, 1.0) };
    Scene { lines, bars, frame, goes_on: false, lie: Lie::Down }
}

fn bars(shape: &Shape, span: (f64, f64)) -> Vec<Bar> {
    shape
        .rods
        .iter()
        .map(|rod| Bar { x: rod.x, z: rod.z, radius: rod.diameter / 2.0, span, is_fitting: false })
        .collect()
}

/// A frame that is wide enough; its top and bottom are still to be set.
fn sides(lines: &[Line], bars: &[Bar]) -> [f64; 4] {
    let cords = lines.iter().flat_map(|line| &line.points).map(|point| (point[0] - RADIUS, point[0] + RADIUS));
    let all = cords.chain(bars.iter().map(|bar| (bar.x - bar.radius, bar.x + bar.radius)));
    let (left, right) =
        all.fold((f64::INFINITY, f64::NEG_INFINITY), |(left, right), (a, b)| (left.min(a), right.max(b)));
    if left <= right { [left - ROOM, 0.0, right + ROOM, 1.0] } else { [0.0, 0.0, 1.0, 1.0] }
}

fn repeating(shape: &Shape, strands: &[Strand], repeat: &Repeat) -> Scene {
    let shown = repeats_shown(repeat.rise);
    let top = seam(strands);
    let (from, to) = (top - GOES_ON, top + shown * repeat.rise + GOES_ON);
    // A repeat may reach far above and below its own rise.
    let reach = Extent::of(strands.iter().flat_map(|strand| &strand.points));
    let (first, last) = if strands.is_empty() { (0.0, 0.0) } else { (from - reach.1[1], to - reach.0[1]) };
    let (first, last) = ((first / repeat.rise).floor() - 1.0, (last / repeat.rise).ceil() + 1.0);
    let chains = Chains { shape, strands, repeat, first, last };
    let window = (from - RADIUS, to + RADIUS);
    let lines: Vec<Line> = chains.all().into_iter().flat_map(|line| within(line, window)).collect();
    let bars = bars(shape, (from - RADIUS, to + RADIUS));
    let mut frame = sides(&lines, &bars);
    (frame[1], frame[3]) = (from, to);
    Scene { lines, bars, frame, goes_on: true, lie: Lie::Down }
}

/// How many repeats show the pattern.
fn repeats_shown(rise: f64) -> f64 {
    let wanted = (HEIGHT.0 / rise).ceil().max(2.0);
    if wanted * rise > HEIGHT.1 { (HEIGHT.1 / rise).floor().max(2.0) } else { wanted }
}

/// Where one repeat begins: on the whole where its legs come in.
fn seam(strands: &[Strand]) -> f64 {
    let going_on = strands.iter().filter(|strand| matches!(strand.then, Then::GoesOnAs(_)));
    let tops: Vec<f64> = going_on.filter_map(|strand| strand.points.first()).map(|point| point[1]).collect();
    if tops.is_empty() {
        let all = strands.iter().flat_map(|strand| &strand.points).map(|point| point[1]);
        let least = all.fold(f64::INFINITY, f64::min);
        return if least.is_finite() { least } else { 0.0 };
    }
    tops.iter().sum::<f64>() / tops.iter().map(|_| 1.0).sum::<f64>()
}

/// Follows each leg through the repeats.
struct Chains<'a> {
    shape: &'a Shape,
    strands: &'a [Strand],
    repeat: &'a Repeat,
    first: f64,
    last: f64,
}

impl Chains<'_> {
    fn all(&self) -> Vec<Line> {
        let mut lines = Vec::new();
        let mut repeat = self.first;
        while repeat <= self.last {
            for at in 0..self.strands.len() {
                let comes_in = is_first(self.shape, at) || self.strands[at].then == Then::Closes;
                if comes_in || repeat <= self.first {
                    lines.extend(self.follow(at, repeat));
                }
            }
            repeat += 1.0;
        }
        lines
    }

    /// The leg that begins as a strand of a repeat, as far as it goes.
    fn follow(&self, start: usize, from: f64) -> Option<Line> {
        let (mut at, mut repeat, mut leg) = (start, from, start);
        let mut points: Vec<Point> = Vec::new();
        loop {
            let strand = self.strands.get(at)?;
            points.extend(strand.points.iter().map(|point| self.repeat.image(*point, repeat)));
            if repeat.abs() < 0.5 {
                leg = at;
            }
            match strand.then {
                Then::GoesOnAs(next) if repeat < self.last => (at, repeat) = (next, repeat + 1.0),
                _ => break,
            }
        }
        let closed = self.strands[at].then == Then::Closes;
        let cut = (is_first(self.shape, start), self.strands[at].then == Then::Pulled);
        let points = smooth(&points, closed);
        (points.len() > 1).then(|| Line::of(points, closed, leg, cut))
    }
}

/// The stretches of a line that are seen in a window.
fn within(line: Line, (from, to): (f64, f64)) -> Vec<Line> {
    let seen = |point: &Point| from <= point[1] && point[1] <= to;
    if line.points.iter().all(seen) {
        return vec![line];
    }
    let mut stretches = Vec::new();
    let mut start = None;
    for at in 0..=line.points.len() {
        let inside = line.points.get(at).is_some_and(seen);
        match (start, inside) {
            (None, true) => start = Some(at),
            (Some(first), false) => {
                let cut = (first == 0 && line.cut.0, at == line.points.len() && line.cut.1);
                stretches.push(Line::of(line.points[first..at].to_vec(), false, line.leg, cut));
                start = None;
            }
            _ => {}
        }
    }
    stretches.retain(|line| line.points.len() > 1);
    stretches
}
