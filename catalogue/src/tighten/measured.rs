//! What a tight knot takes: lengths read off its centrelines.

use glam::{DVec3, Vec3Swizzles as _};
use reeve_measure::count;

use super::TightenError;
use super::tubes::{NodeRange, Post, Tubes};
use crate::shape::Then;

/// What a tight knot takes, in cord diameters, in one repeat or in all.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Measured {
    /// Length of all its centrelines.
    pub length: f64,
    /// Length of leg that it eats: of the strand that eats most, or of the mean of strands that change places.
    pub take_up: f64,
    /// How far it carries the work along its core.
    pub rise: f64,
    /// Length that is gone when all strands are taken as straight: nothing is left of it when a knot comes undone.
    pub held: f64,
}

impl Measured {
    fn of(tubes: &Tubes) -> Self {
        let lengths: Vec<f64> = tubes.runs.iter().map(|run| length(&tubes.line(run))).collect();
        let rise = if tubes.repeat.is_some() { tubes.rise() } else { height(tubes) };
        let takes: Vec<f64> = tubes.runs.iter().zip(&lengths).map(|(run, l)| taken(tubes, run, *l, rise)).collect();
        let whole: f64 = lengths.iter().sum();
        let straight: f64 = tubes.runs.iter().map(|run| straight(tubes, run)).sum();
        Self { length: whole, take_up: most_of_cycles(tubes, &takes), rise, held: whole - straight }
    }

    /// The same drawn out to a give of zero, from itself at give `near` and another at give `far`.
    pub(super) fn drawn_out_from(&self, other: &Self, near: f64, far: f64) -> Self {
        let out = |a: f64, b: f64| a + (a - b) * near / (far - near);
        Self {
            length: out(self.length, other.length),
            take_up: out(self.take_up, other.take_up),
            rise: out(self.rise, other.rise),
            held: out(self.held, other.held),
        }
    }
}

impl Tubes {
    /// Length of all the centrelines.
    pub(super) fn length(&self) -> f64 {
        self.runs.iter().map(|run| length(&self.line(run))).sum()
    }

    /// What the knot takes as it lies, if it is still a knot: whole, and held.
    pub(super) fn measured(&self) -> Result<Measured, TightenError> {
        if self.nodes.iter().any(|node| !node.is_finite()) {
            return Err(TightenError::Lost);
        }
        let measured = Measured::of(self);
        if self.comes_undone(&measured) { Err(TightenError::ComesUndone) } else { Ok(measured) }
    }

    fn comes_undone(&self, measured: &Measured) -> bool {
        let pulled = |run: &&NodeRange| run.then == Then::Pulled;
        // Legs pulled round a corner are held by the corner, however little the knot takes besides.
        if self.runs.iter().filter(pulled).any(|run| run.away[0].dot(run.away[1]).abs() < 0.9) {
            return false;
        }
        // Legs pulled across, such as those on a ring, are measured from its middle; the others from end to end.
        let across = self.runs.iter().filter(pulled).any(|run| run.away[0].y == 0.0);
        let held = if across { measured.take_up } else { measured.held };
        held <= 0.02 * measured.length
    }
}

fn length(line: &[DVec3]) -> f64 {
    line.windows(2).map(|pair| pair[0].distance(pair[1])).sum()
}

/// The two ends of a pulled strand, each with the way it is pulled.
fn ends(tubes: &Tubes, run: &NodeRange) -> [(DVec3, DVec3); 2] {
    let [up, down] = run.away;
    [(tubes.nodes[run.first], up), (tubes.nodes[run.first + run.count - 1], down)]
}

/// The length of leg that a strand would have if it ran straight.
fn straight(tubes: &Tubes, run: &NodeRange) -> f64 {
    match run.then {
        Then::Closes => 0.0,
        Then::GoesOnAs(_) => tubes.rise(),
        Then::Pulled => ends(tubes, run).iter().map(|(end, away)| end.dot(*away)).sum(),
    }
}

/// What one strand eats: its length, less what lies straight outside the knot. A strand that comes in above and
/// goes out below also covers the rise.
fn taken(tubes: &Tubes, run: &NodeRange, length: f64, rise: f64) -> f64 {
    let Then::Pulled = run.then else { return length };
    let passes = run.away[0].y * run.away[1].y < 0.0;
    length - straight(tubes, run) + if passes { rise } else { 0.0 }
}

/// Strands that go on as one another share what they eat; of several such rounds the largest counts.
fn most_of_cycles(tubes: &Tubes, takes: &[f64]) -> f64 {
    (0..takes.len()).map(|start| mean_of_cycle(tubes, takes, start)).fold(0.0, f64::max)
}

fn mean_of_cycle(tubes: &Tubes, takes: &[f64], start: usize) -> f64 {
    let (mut at, mut sum, mut met) = (start, 0.0, 0);
    loop {
        sum += takes[at];
        met += 1;
        at = match tubes.runs[at].then {
            Then::GoesOnAs(next) if next != start && met < takes.len() => next,
            _ => return sum / count(met as u64),
        };
    }
}

/// How high a knot that stands alone is: from the top of its uppermost cord to the bottom of its lowest, between
/// the first and the last place of each strand where it touches something.
fn height(tubes: &Tubes) -> f64 {
    let (mut top, mut bottom) = (f64::INFINITY, f64::NEG_INFINITY);
    for run in &tubes.runs {
        for node in knotted(tubes, run) {
            let along = tubes.along(node).y;
            let half = 0.5 * (1.0 - along * along).max(0.0).sqrt();
            top = top.min(tubes.nodes[node].y - half);
            bottom = bottom.max(tubes.nodes[node].y + half);
        }
    }
    (bottom - top).max(0.0)
}

/// The nodes of a strand from the first to the last that touch another tube.
fn knotted(tubes: &Tubes, run: &NodeRange) -> std::ops::Range<usize> {
    let all = run.first..run.first + run.count;
    let touching = |node: &usize| touches(tubes, *node);
    let first = all.clone().find(touching);
    let last = all.rev().find(touching);
    match (first, last) {
        (Some(first), Some(last)) => first..last + 1,
        _ => 0..0,
    }
}

/// Whether a node touches something that it does not merely run beside.
fn touches(tubes: &Tubes, node: usize) -> bool {
    // Soft cords touch a little before they press.
    const TOUCHING: f64 = 1.01;
    // Neighbours along the same leg are always near.
    const APART: f64 = 2.0;
    // The cosine from which on two cords run beside one another.
    const BESIDE: f64 = 0.95;
    let (at, along) = (tubes.nodes[node], tubes.along(node));
    let of = &tubes.runs[tubes.run_of(node)];
    let same = of.first..of.first + of.count;
    let spacing = tubes.nodes[of.first].distance(tubes.nodes[of.first + 1]);
    let near = |other: usize| {
        let apart = if same.contains(&other) { count(other.abs_diff(node) as u64) * spacing } else { APART };
        apart >= APART
            && tubes.nodes[other].distance_squared(at) < TOUCHING * TOUCHING
            && tubes.along(other).dot(along).abs() < BESIDE
    };
    let on_post =
        |post: &Post| along.y.abs() < BESIDE && post.at.distance(at.xz()) < f64::midpoint(TOUCHING, post.diameter);
    (0..tubes.nodes.len()).any(near) || tubes.posts.iter().any(on_post)
}
