//! Turns about the core: of the repeats of a knot, and of strands that are like one another.

use glam::DVec3;
use reeve_measure::count;

use super::tubes::Tubes;
use crate::shape::Alike;

/// A turn about y, from x towards z, with its sine and cosine worked out once.
#[derive(Debug, Clone, Copy)]
struct Turn {
    sin: f64,
    cos: f64,
}

impl Turn {
    fn by(angle: f64) -> Self {
        let (sin, cos) = libm::sincos(angle);
        Self { sin, cos }
    }

    fn forth(self, v: DVec3) -> DVec3 {
        DVec3::new(self.cos * v.x - self.sin * v.z, v.y, self.sin * v.x + self.cos * v.z)
    }

    fn back(self, v: DVec3) -> DVec3 {
        Self { sin: -self.sin, cos: self.cos }.forth(v)
    }
}

/// Where the repeats of a knot lie in one state: each turned about the core and moved down along it.
#[derive(Debug, Default)]
pub(super) struct Turns(Vec<(Turn, f64)>);

impl Turns {
    /// The repeats from 0 (the knot itself) to `furthest`.
    pub(super) fn of(tubes: &Tubes, furthest: usize) -> Self {
        let repeat = |repeats: usize| {
            let times = count(repeats as u64);
            (Turn::by(tubes.twist() * times), tubes.rise() * times)
        };
        Self((0..=furthest).map(repeat).collect())
    }

    /// Where a node lies so many repeats further down.
    pub(super) fn image(&self, v: DVec3, repeats: usize) -> DVec3 {
        let (turn, down) = self.0[repeats];
        turn.forth(v) + DVec3::Y * down
    }

    /// A push on an image as a push on the node itself.
    pub(super) fn back(&self, push: DVec3, repeats: usize) -> DVec3 {
        self.0[repeats].0.back(push)
    }

    /// How an image moves with the angle that it is turned by.
    pub(super) fn turning(&self, v: DVec3, repeats: usize) -> DVec3 {
        let Turn { sin, cos } = self.0[repeats].0;
        DVec3::new(-sin * v.x - cos * v.z, 0.0, cos * v.x - sin * v.z)
    }
}

/// A strand that is like another one.
#[derive(Debug, Clone, Copy)]
pub(super) struct Follower {
    /// Its first node.
    pub(super) first: usize,
    turn: Turn,
    mirrored: bool,
}

impl Follower {
    /// The strand whose first node this is.
    pub(super) fn of(first: usize, alike: &Alike) -> Self {
        Self { first, turn: Turn::by(alike.turned), mirrored: alike.mirrored }
    }

    /// Where a direction of the other strand lies on this one.
    pub(super) fn forth(&self, v: DVec3) -> DVec3 {
        self.turn.forth(self.across(v))
    }

    /// Where a direction of this strand lies on the other.
    pub(super) fn back(&self, v: DVec3) -> DVec3 {
        self.across(self.turn.back(v))
    }

    fn across(&self, v: DVec3) -> DVec3 {
        if self.mirrored { DVec3::new(-v.x, v.y, v.z) } else { v }
    }
}
