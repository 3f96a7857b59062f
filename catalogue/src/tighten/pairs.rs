//! Pairs of nodes that may touch, listed seldom and sifted often.

use std::f64::consts::FRAC_PI_2;

use glam::DVec3;

use super::cells::Cells;
use super::tubes::Tubes;
use super::turns::Turns;
use crate::shape::Then;

/// Points of one leg closer along it than this, in diameters, are neighbours and don't push each other.
const NEIGHBOURS: f64 = 0.5;
/// How much further than touching pairs are listed, in diameters.
const LISTED: f64 = 0.25;
/// How much further than touching those are that are looked at in every step.
const SIFTED: f64 = 0.05;

/// Two nodes that may touch, the second so many repeats further down.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pair {
    pub(super) first: usize,
    pub(super) second: usize,
    pub(super) repeats: usize,
    /// The distance at which they touch.
    pub(super) touching: f64,
}

/// How everything lay when pairs were chosen.
#[derive(Debug)]
struct Lay {
    nodes: Vec<DVec3>,
    rise: f64,
    twist: f64,
}

/// The pairs of one knot: all that are near, and of them those that may touch at the next step.
#[derive(Debug)]
pub(super) struct Pairs {
    /// The distance at which two nodes of one leg touch, by the pieces between them, as far as they are neighbours.
    neighbours: Vec<Option<f64>>,
    listed: Vec<Pair>,
    listed_at: Option<Lay>,
    sifted: Vec<Pair>,
    sifted_at: Option<Lay>,
}

impl Pairs {
    /// None yet, of pieces that are assumed to be so long.
    pub(super) fn of(spacing: f64) -> Self {
        Self {
            neighbours: neighbours(spacing),
            listed: Vec::new(),
            listed_at: None,
            sifted: Vec::new(),
            sifted_at: None,
        }
    }

    /// Those that may touch, as they were found last: nearer repeats first.
    pub(super) fn near(&self) -> &[Pair] {
        &self.sifted
    }

    /// How many repeats further down something may touch.
    pub(super) fn furthest(&self) -> usize {
        self.sifted.last().map_or(0, |pair| pair.repeats)
    }

    /// Finds the pairs anew, if something has moved too far since they were found.
    pub(super) fn find(&mut self, tubes: &Tubes) {
        if self.sifted_at.as_ref().is_some_and(|lay| lay.is_within(SIFTED, tubes)) {
            return;
        }
        // A pair that is not listed has to come closer by what is left before it is to be sifted.
        if !self.listed_at.as_ref().is_some_and(|lay| lay.is_within(LISTED - SIFTED, tubes)) {
            self.list(tubes);
        }
        let turns = Turns::of(tubes, self.listed.last().map_or(0, |pair| pair.repeats));
        let near = |pair: &&Pair| {
            let within = pair.touching + SIFTED;
            let other = turns.image(tubes.nodes[pair.second], pair.repeats);
            tubes.nodes[pair.first].distance_squared(other) < within * within
        };
        self.sifted.clear();
        self.sifted.extend(self.listed.iter().filter(near));
        self.sifted_at = Some(Lay::of(tubes));
    }

    fn list(&mut self, tubes: &Tubes) {
        self.listed.clear();
        let furthest = repeats_in_reach(tubes);
        let turns = Turns::of(tubes, furthest);
        for repeats in 0..=furthest {
            self.list_repeat(tubes, &turns, repeats);
        }
        self.listed_at = Some(Lay::of(tubes));
    }

    fn list_repeat(&mut self, tubes: &Tubes, turns: &Turns, repeats: usize) {
        const REACH: f64 = 1.0 + LISTED;
        let images: Vec<DVec3> = tubes.nodes.iter().map(|node| turns.image(*node, repeats)).collect();
        let cells = Cells::of(&images, REACH);
        for (first, node) in tubes.nodes.iter().enumerate() {
            let from = if repeats == 0 { first + 1 } else { 0 };
            for second in cells.near(*node).filter(|second| *second >= from) {
                let squared = node.distance_squared(images[second]);
                if squared < REACH * REACH
                    && let Some(touching) = self.touching(tubes, first, second, repeats)
                    && squared < (touching + LISTED) * (touching + LISTED)
                {
                    self.listed.push(Pair { first, second, repeats, touching });
                }
            }
        }
    }

    /// The distance at which two nodes touch; `None` for neighbours along a leg.
    fn touching(&self, tubes: &Tubes, first: usize, second: usize, repeats: usize) -> Option<f64> {
        let pieces = pieces_between(tubes, first, second, repeats);
        pieces.and_then(|pieces| self.neighbours.get(pieces)).copied().unwrap_or(Some(1.0))
    }
}

impl Lay {
    fn of(tubes: &Tubes) -> Self {
        Self { nodes: tubes.nodes.clone(), rise: tubes.rise(), twist: tubes.twist() }
    }

    /// Whether no two nodes have come closer than they lay by as much as this, in diameters.
    fn is_within(&self, skin: f64, now: &Tubes) -> bool {
        // Two nodes, a rise and a twist may all move at once: each has its share of the skin.
        const NODE: f64 = 0.4;
        const RISE: f64 = 0.1;
        const TWIST: f64 = 0.08;
        let moved = |(a, b): (&DVec3, &DVec3)| a.distance_squared(*b) > (NODE * skin) * (NODE * skin);
        (self.rise - now.rise()).abs() < RISE * skin
            && (self.twist - now.twist()).abs() < TWIST * skin
            && !self.nodes.iter().zip(&now.nodes).any(moved)
    }
}

/// How many repeats further down something can still be touched.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to a sensible count first")]
fn repeats_in_reach(tubes: &Tubes) -> usize {
    let heights = tubes.nodes.iter().map(|node| node.y);
    let (top, bottom) = heights.fold((f64::INFINITY, f64::NEG_INFINITY), |(t, b), y| (t.min(y), b.max(y)));
    let reach = (bottom - top + 1.0 + LISTED) / tubes.rise().abs().max(0.2);
    if tubes.repeat.is_some() { reach.ceil().clamp(1.0, 30.0) as usize } else { 0 }
}

/// Pieces along the leg from one node to another some repeats further down; `None` on different legs.
fn pieces_between(tubes: &Tubes, first: usize, second: usize, repeats: usize) -> Option<usize> {
    let (mut run, goal) = (tubes.run_of(first), tubes.run_of(second));
    let runs = &tubes.runs;
    if repeats == 0 {
        let apart = second.abs_diff(first);
        let round = if runs[run].then == Then::Closes { runs[run].count - apart.min(runs[run].count) } else { apart };
        return (run == goal).then_some(apart.min(round));
    }
    let mut pieces = runs[run].first + runs[run].count - first;
    for repeat in 1..=repeats {
        let Then::GoesOnAs(next) = runs[run].then else { return None };
        run = next;
        if repeat < repeats {
            pieces += runs[run].count;
        }
    }
    (run == goal).then(|| pieces + second - runs[goal].first)
}

/// The distance at which two nodes so many pieces apart along a leg touch, from 0 pieces up to a quarter turn; `None`
/// where they are too near to push each other.
///
/// A tube one diameter thick can't bend tighter than a circle of radius 1/2, so two points a little way apart along it
/// are at least as far from each other as on that circle: sin of the way. From a quarter turn on they are a
/// diameter apart like any others.
fn neighbours(spacing: f64) -> Vec<Option<f64>> {
    let ways = (0..).map(|pieces: u32| f64::from(pieces) * spacing).take_while(|way| *way < FRAC_PI_2);
    ways.map(|way| (way >= NEIGHBOURS).then(|| libm::sin(way))).collect()
}
