//! What is drawn of a shape: its cords over as many repeats as show the pattern, its rods, and the frame.

use reeve_catalogue::shape::{Point, Shape};

use super::sampling::{apart, arcs, flat};

/// The radius of a cord, in diameters.
pub(super) const RADIUS: f64 = 0.5;
/// The room round the drawing.
pub(super) const ROOM: f64 = 0.35;
/// Two parts of one cord nearer than this along it are one bend; half a turn about another cord is as long.
const BEND: f64 = 1.57;
/// A stretch of a cord.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct CordLine {
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

impl CordLine {
    pub(super) fn of(points: Vec<Point>, closed: bool, leg: usize, cut: (bool, bool)) -> Self {
        let arcs = arcs(&points);
        Self { points, arcs, closed, leg, cut }
    }

    /// How long it is.
    pub(super) fn length(&self) -> f64 {
        self.arcs.last().copied().unwrap_or_default()
    }

    /// Whether its first or its last point is a cut that is seen from the side, as a line across.
    pub(super) fn is_cut_across(&self, at_last: bool) -> bool {
        let is_cut = if at_last { self.cut.1 } else { self.cut.0 };
        is_cut && !self.is_end_on(at_last)
    }

    /// Whether it runs so straight at the viewer at one end that its end is seen as a disc.
    pub(super) fn is_end_on(&self, at_last: bool) -> bool {
        let within = |arc: &f64| if at_last { self.length() - arc < RADIUS } else { *arc < RADIUS };
        let end = if at_last { self.points.last() } else { self.points.first() };
        let near = self.points.iter().zip(&self.arcs).filter(|(_, arc)| within(arc)).map(|(point, _)| flat(*point));
        end.is_some_and(|end| near.map(|spot| apart(spot, flat(*end))).fold(0.0, f64::max) < RADIUS / 2.0)
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
    pub(super) lines: Vec<CordLine>,
    pub(super) bars: Vec<Bar>,
    /// Left, top, right and bottom of what is seen, before it is turned.
    pub(super) frame: [f64; 4],
    /// Whether the work goes on above and below.
    pub(super) goes_on: bool,
    pub(super) lie: Lie,
}

impl Scene {
    /// How many working legs are told apart.
    pub(super) fn legs(&self) -> usize {
        self.lines.iter().map(|line| line.leg + 1).max().unwrap_or_default()
    }
}

pub(super) fn bars(shape: &Shape, span: (f64, f64)) -> Vec<Bar> {
    shape
        .rods
        .iter()
        .map(|rod| Bar { x: rod.x, z: rod.z, radius: rod.diameter / 2.0, span, is_fitting: false })
        .collect()
}

/// A frame that is wide enough; its top and bottom are still to be set.
pub(super) fn sides(lines: &[CordLine], bars: &[Bar]) -> [f64; 4] {
    let cords = lines.iter().flat_map(|line| &line.points).map(|point| (point[0] - RADIUS, point[0] + RADIUS));
    let all = cords.chain(bars.iter().map(|bar| (bar.x - bar.radius, bar.x + bar.radius)));
    let (left, right) =
        all.fold((f64::INFINITY, f64::NEG_INFINITY), |(left, right), (a, b)| (left.min(a), right.max(b)));
    if left <= right { [left - ROOM, 0.0, right + ROOM, 1.0] } else { [0.0, 0.0, 1.0, 1.0] }
}
