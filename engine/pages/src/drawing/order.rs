//! In which order the cords and rods are painted, so that what lies over is painted later.

use super::grid::{Grid, Segment};
use super::sampling::{apart, between, flat, nearest_share};
use super::scene::{RADIUS, Scene};
use super::sight::Sight;

/// Two cords that overlap by less than this only touch.
const TOUCH: f64 = 0.04;
/// Two cords at nearly the same depth can't overlap by more than their give.
const GIVE: f64 = 0.15;
/// Depths that differ by less are nearly the same.
const LEVEL: f64 = 0.25;

/// Something painted in one stroke.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stroke {
    /// A stretch of a line.
    Cord {
        /// Which line.
        line: usize,
        /// The first and the last of its points.
        points: (usize, usize),
    },
    /// A whole rod.
    Bar(usize),
}

/// The pieces of a scene from the back to the front.
///
/// What nothing of is seen is left out. Every segment has to wait for those beneath it. Of what waits for nothing the longest stretch is painted first, so
/// that a cord is cut in few places.
pub(super) fn pieces(scene: &Scene, grid: &Grid) -> Vec<Stroke> {
    let mut queue = PaintQueue::of(scene, grid);
    let mut pieces = Vec::new();
    while let Some(next) = queue.next() {
        queue.paint(next);
        pieces.push(queue.piece(next));
    }
    pieces
}

/// A stretch of nodes, the last not included.
type Stretch = (usize, usize);

/// What is still to be painted: the segments of all lines one after another, then the rods.
struct PaintQueue {
    /// How many unpainted nodes lie beneath each.
    waits: Vec<u32>,
    /// Those that lie over each.
    above: Vec<Vec<usize>>,
    /// What is painted, or need not be.
    painted: Vec<bool>,
    /// The nodes of each line.
    lines: Vec<Stretch>,
    cords: usize,
}

impl PaintQueue {
    fn of(scene: &Scene, grid: &Grid) -> Self {
        let cords = grid.segments.len();
        let count = cords + scene.bars.len();
        let mut first = 0;
        let mut lines = Vec::new();
        for line in &scene.lines {
            lines.push((first, first + line.points.len() - 1));
            first += line.points.len() - 1;
        }
        let mut queue =
            Self { waits: vec![0; count], above: vec![Vec::new(); count], painted: vec![false; count], lines, cords };
        let sight = Sight { scene, grid };
        for (node, segment) in grid.segments.iter().enumerate() {
            queue.painted[node] = sight.is_buried(segment);
        }
        let depth = |node: usize| match node.checked_sub(cords) {
            None => grid.segments[node].middle()[2],
            Some(bar) => scene.bars[bar].z,
        };
        for (a, b) in overlaps(scene, grid) {
            // Two at the same depth do not overlap in space, or hardly; any order will do that is kept to.
            let a_is_under = depth(a).total_cmp(&depth(b)).then(a.cmp(&b)).is_lt();
            let (under, over) = if a_is_under { (a, b) } else { (b, a) };
            if queue.painted[under] {
                continue;
            }
            queue.above[under].push(over);
            queue.waits[over] += 1;
        }
        queue
    }

    fn is_ready(&self, node: usize) -> bool {
        !self.painted[node] && self.waits[node] == 0
    }

    /// A rod that waits for nothing, or the longest such stretch of a line.
    fn next(&self) -> Option<Stretch> {
        if let Some(bar) = (self.cords..self.waits.len()).find(|node| self.is_ready(*node)) {
            return Some((bar, bar + 1));
        }
        let mut longest: Option<Stretch> = None;
        for (from, to) in &self.lines {
            let mut start = *from;
            for node in *from..=*to {
                if node == *to || !self.is_ready(node) {
                    if node - start > longest.map_or(0, |(from, to)| to - from) {
                        longest = Some((start, node));
                    }
                    start = node + 1;
                }
            }
        }
        longest
    }

    fn paint(&mut self, (from, to): Stretch) {
        for node in from..to {
            self.painted[node] = true;
            for over in std::mem::take(&mut self.above[node]) {
                self.waits[over] -= 1;
            }
        }
    }

    fn piece(&self, (from, to): Stretch) -> Stroke {
        if from >= self.cords {
            return Stroke::Bar(from - self.cords);
        }
        let line = self.lines.iter().position(|(first, last)| (*first..*last).contains(&from)).unwrap_or_default();
        let first = self.lines[line].0;
        Stroke::Cord { line, points: (from - first, to - first) }
    }
}

/// Pairs of nodes whose order is seen.
fn overlaps(scene: &Scene, grid: &Grid) -> Vec<(usize, usize)> {
    let mut pairs = Vec::new();
    let cords = grid.segments.len();
    for (index, segment) in grid.segments.iter().enumerate() {
        let over = |other: &usize| *other > index && is_order_seen(scene, segment, &grid.segments[*other]);
        pairs.extend(grid.about(flat(segment.middle()), 2.0 * RADIUS).filter(over).map(|other| (index, other)));
        for (at, bar) in scene.bars.iter().enumerate() {
            if (segment.middle()[0] - bar.x).abs() < bar.radius + RADIUS - TOUCH {
                pairs.push((index, cords + at));
            }
        }
    }
    for (a, bar) in scene.bars.iter().enumerate() {
        let behind = scene.bars.iter().enumerate().skip(a + 1);
        let close = behind.filter(|(_, other)| (bar.x - other.x).abs() < bar.radius + other.radius - TOUCH);
        pairs.extend(close.map(|(b, _)| (cords + a, cords + b)));
    }
    pairs
}

/// Whether it is seen which of two segments is painted first. A bend is one thing; and of one leg, which has one
/// tone, only what crosses is put in order.
fn is_order_seen(scene: &Scene, a: &Segment, b: &Segment) -> bool {
    let off = gap_between(a, b);
    let is_level = (a.middle()[2] - b.middle()[2]).abs() < LEVEL;
    let (line, other) = (&scene.lines[a.line], &scene.lines[b.line]);
    let reach = match (is_level, line.leg == other.leg) {
        (false, false) => 2.0 * RADIUS - TOUCH,
        (true, false) => 2.0 * RADIUS - GIVE,
        (_, true) => RADIUS,
    };
    off < reach && !(a.line == b.line && line.one_bend(a.arcs.0, b.arcs.0))
}

/// How far the centrelines of two segments are apart on the sheet, but for a crossing, which is nearer still.
fn gap_between(a: &Segment, b: &Segment) -> f64 {
    let from = |a: &Segment, b: &Segment| {
        let middle = flat(a.middle());
        let share = nearest_share(middle, flat(b.a), flat(b.b));
        apart(middle, flat(between(b.a, b.b, share)))
    };
    from(a, b).min(from(b, a))
}
