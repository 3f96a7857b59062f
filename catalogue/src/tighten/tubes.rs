//! Tubes: the nodes of all centrelines of one knot, and what stands between them.

use std::f64::consts::TAU;

use glam::{DVec2, DVec3};
use reeve_measure::count;

use crate::shape::{Alike, Point, Repeat, Rod, Shape, Start, Strand, Then};

/// One strand's share of the nodes.
#[derive(Debug, Clone, Copy)]
pub(super) struct NodeRange {
    pub(super) first: usize,
    pub(super) count: usize,
    pub(super) then: Then,
    pub(super) alike: Option<Alike>,
    /// Which way each end is pulled: along an axis of its own.
    pub(super) away: [DVec3; 2],
}

/// A straight core leg or fitting.
#[derive(Debug, Clone, Copy)]
pub(super) struct Post {
    pub(super) at: DVec2,
    pub(super) diameter: f64,
}

/// All tubes of one knot.
#[derive(Debug, Clone)]
pub(super) struct Tubes {
    pub(super) nodes: Vec<DVec3>,
    pub(super) runs: Vec<NodeRange>,
    pub(super) posts: Vec<Post>,
    pub(super) repeat: Option<Repeat>,
    /// Whether the twist is free.
    pub(super) twists: bool,
    /// The pull along the core.
    pub(super) pull: f64,
}

impl Tubes {
    pub(super) fn new(start: &Start) -> Self {
        let shape = &start.shape;
        let mut tubes = Self {
            nodes: Vec::new(),
            runs: Vec::new(),
            posts: shape.rods.iter().map(|rod| Post { at: DVec2::new(rod.x, rod.z), diameter: rod.diameter }).collect(),
            repeat: shape.repeat,
            twists: start.twists,
            pull: start.pull,
        };
        for (strand, alike) in shape.strands.iter().zip(&start.alike) {
            let (first, count) = (tubes.nodes.len(), strand.points.len());
            tubes.nodes.extend(strand.points.iter().map(|point| DVec3::from_array(*point)));
            let away = ends(&tubes.nodes[first..]);
            tubes.runs.push(NodeRange { first, count, then: strand.then, alike: *alike, away });
        }
        tubes
    }

    pub(super) fn shape(&self) -> Shape {
        let points =
            |run: &NodeRange| self.nodes[run.first..run.first + run.count].iter().map(DVec3::to_array).collect();
        Shape {
            strands: self.runs.iter().map(|run| Strand { points: points(run), then: run.then }).collect(),
            rods: self.posts.iter().map(|p| Rod { x: p.at.x, z: p.at.y, diameter: p.diameter }).collect(),
            repeat: self.repeat,
        }
    }

    pub(super) fn rise(&self) -> f64 {
        self.repeat.map_or(0.0, |repeat| repeat.rise)
    }

    pub(super) fn twist(&self) -> f64 {
        self.repeat.map_or(0.0, |repeat| repeat.twist)
    }

    /// Where a node lies so many repeats further down.
    pub(super) fn image(&self, v: DVec3, repeats: f64) -> DVec3 {
        self.repeat.map_or(v, |repeat| {
            let at: Point = repeat.image(v.to_array(), repeats);
            DVec3::from_array(at)
        })
    }

    /// The strand that a node belongs to.
    pub(super) fn run_of(&self, node: usize) -> usize {
        self.runs.partition_point(|run| run.first <= node).saturating_sub(1)
    }

    /// The direction of a strand at a node.
    pub(super) fn along(&self, node: usize) -> DVec3 {
        let run = &self.runs[self.run_of(node)];
        let (before, after) = (node.saturating_sub(1).max(run.first), (node + 1).min(run.first + run.count - 1));
        (self.nodes[after] - self.nodes[before]).normalize_or_zero()
    }

    /// The node that follows the last one of a strand, and whether it lies in the next repeat.
    pub(super) fn after(&self, run: &NodeRange) -> Option<(usize, bool)> {
        match run.then {
            Then::Closes => Some((run.first, false)),
            Then::Pulled => None,
            Then::GoesOnAs(next) => Some((self.runs[next].first, true)),
        }
    }

    /// The nodes of a strand, with the one that follows.
    pub(super) fn line(&self, run: &NodeRange) -> Vec<DVec3> {
        let mut line = self.nodes[run.first..run.first + run.count].to_vec();
        line.extend(self.after(run).map(|(node, next)| self.image(self.nodes[node], if next { 1.0 } else { 0.0 })));
        line
    }

    /// The same with every strand bent aside a little, always in the same way: each axis by one wave of its own.
    ///
    /// A knot drawn as symmetrical may lie on a ridge, from which it comes down when a last digit tips it, or not at
    /// all: a flat plait lay 2.7 % too long on one. Strands that are to stay alike are left as they are.
    pub(super) fn nudged(mut self) -> Self {
        const BY: f64 = 0.02;
        // Where the wave of the first strand begins, and how far on that of each next one: shares of a wave that come
        // back to nothing simple, the powers of the root of x^4 + x^3 = 1.
        const ON: DVec3 = DVec3::new(0.819_172_513_396_164_4, 0.671_043_606_703_789_2, 0.549_700_477_901_970_1);
        if self.runs.iter().any(|run| run.alike.is_some()) {
            return self;
        }
        for (strand, run) in self.runs.iter().enumerate() {
            let (first, step) = (ON * count(strand as u64 + 1), 1.0 / count(run.count as u64));
            for (k, node) in self.nodes[run.first..run.first + run.count].iter_mut().enumerate() {
                let waves = first + step * count(k as u64);
                *node += DVec3::from_array(waves.to_array().map(|wave| BY * libm::sin(TAU * wave)));
            }
        }
        self
    }

    /// The same curves, cut into even pieces of about this length; the mean length that came of it.
    pub(super) fn evened(mut self, spacing: f64) -> (Self, f64) {
        let lines: Vec<Vec<DVec3>> = self.runs.iter().map(|run| self.line(run)).collect();
        let (mut length, mut pieces) = (0.0, 0);
        self.nodes.clear();
        for (run, line) in self.runs.iter_mut().zip(lines) {
            let along = along(&line);
            let whole = along.last().copied().unwrap_or_default();
            let cut = pieces_of(whole, spacing);
            run.first = self.nodes.len();
            run.count = if run.then == Then::Pulled { cut + 1 } else { cut };
            let step = whole / count(cut as u64);
            self.nodes.extend((0..run.count).map(|k| at_length(&line, &along, step * count(k as u64))));
            length += whole;
            pieces += cut;
        }
        let mean = length / count(pieces.max(1) as u64);
        (self, mean)
    }
}

/// A shape with points just close enough to draw it by.
pub(super) fn thinned(shape: &Shape) -> Shape {
    const DRAWN_SPACING: f64 = 0.2;
    Tubes::new(&Start::from(shape.clone())).evened(DRAWN_SPACING).0.shape()
}

/// The directions in which a line leaves its two ends: along y, or straight out across it.
fn ends(line: &[DVec3]) -> [DVec3; 2] {
    let [first, second, .., last_but_one, last] = line else { return [DVec3::NEG_Y, DVec3::Y] };
    [axis(*first - *second), axis(*last - *last_but_one)]
}

/// Up or down along y where a direction is nearest to that, else the direction across.
fn axis(direction: DVec3) -> DVec3 {
    let across = DVec3::new(direction.x, 0.0, direction.z);
    if direction.y.abs() >= across.length() { DVec3::Y * direction.y.signum() } else { across.normalize_or_zero() }
}

/// How many pieces a length is cut into.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to a sensible count first")]
fn pieces_of(length: f64, spacing: f64) -> usize {
    (length / spacing).round().clamp(8.0, 20_000.0) as usize
}

/// The length along a line at each of its points.
fn along(line: &[DVec3]) -> Vec<f64> {
    let steps = line.windows(2).scan(0.0, |sum, pair| {
        *sum += pair[0].distance(pair[1]);
        Some(*sum)
    });
    std::iter::once(0.0).chain(steps).collect()
}

/// The point of a line at a length along it.
fn at_length(line: &[DVec3], along: &[f64], length: f64) -> DVec3 {
    let after = along.partition_point(|at| *at <= length).clamp(1, line.len() - 1);
    let (from, to) = (along[after - 1], along[after]);
    let share = if to > from { (length - from) / (to - from) } else { 0.0 };
    line[after - 1].lerp(line[after], share.clamp(0.0, 1.0))
}
