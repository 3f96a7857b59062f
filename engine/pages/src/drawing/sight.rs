//! What stands before what, as seen straight from the front.

use std::f64::consts::TAU;

use super::grid::{Grid, Segment};
use super::sampling::PlanePoint;
use super::scene::{Bar, RADIUS, Scene};

/// How wide the gap beside a cord is that lies over another, in diameters.
pub(super) const GAP: f64 = 0.13;
/// How much deeper something must lie to be parted by a gap.
const DEEP: f64 = 0.25;
/// A cord hides what lies within its edge by more than this.
const SLACK: f64 = 0.02;

/// What a place belongs to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Owner {
    /// A line, so far along.
    Cord(usize, f64),
    Bar(usize),
}

/// A place on the surface of a cord or rod, as seen from the front.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct SurfacePoint {
    pub(super) spot: PlanePoint,
    /// How near to the viewer the centre beneath or beside it lies.
    pub(super) depth: f64,
    /// How far it stands out before that centre: nothing at an edge, a radius in the middle.
    pub(super) lift: f64,
    pub(super) owner: Owner,
}

impl SurfacePoint {
    /// How far before its own depth a ball of the same bend reaches over this place, so far off that ball's centre.
    ///
    /// An edge is hidden by any ball that bulges before it. The middle of a cord that runs towards the viewer lies
    /// under the next ball of itself, and is hidden only where the cord folds over.
    fn before_its_bend(&self, off: f64) -> f64 {
        if self.lift > 0.0 { -RADIUS } else { (RADIUS * RADIUS - off * off).max(0.0).sqrt() }
    }

    pub(super) fn between(&self, other: &Self, share: f64) -> Self {
        let mix = |a: f64, b: f64| a + (b - a) * share;
        let owner = match (self.owner, other.owner) {
            (Owner::Cord(line, a), Owner::Cord(_, b)) => Owner::Cord(line, mix(a, b)),
            (owner, _) => owner,
        };
        let spot = [mix(self.spot[0], other.spot[0]), mix(self.spot[1], other.spot[1])];
        Self { spot, depth: mix(self.depth, other.depth), lift: self.lift, owner }
    }
}

/// Tells what hides what.
pub(super) struct Sight<'a> {
    pub(super) scene: &'a Scene,
    pub(super) grid: &'a Grid,
}

impl Sight<'_> {
    /// Whether something stands before a place, or passes so close over it that there is a gap.
    pub(super) fn hides(&self, place: &SurfacePoint) -> bool {
        let by_cord = self.grid.about(place.spot, RADIUS + GAP).any(|at| {
            let segment = &self.grid.segments[at];
            let (off, depth, arc) = segment.nearest(place.spot);
            match place.owner {
                Owner::Cord(line, own) if self.is_one_bend(line, own, segment.line, arc) => {
                    off < RADIUS - SLACK && depth + place.before_its_bend(off) > place.depth + 2.0 * SLACK
                }
                owner => covers(off - RADIUS, depth, place.depth, || match owner {
                    Owner::Cord(line, own) => (segment.line, arc) > (line, own),
                    Owner::Bar(_) => true,
                }),
            }
        });
        by_cord
            || self.scene.bars.iter().enumerate().any(|(at, bar)| {
                let off = (place.spot[0] - bar.x).abs();
                place.owner != Owner::Bar(at)
                    && bar.spans(place.spot)
                    && covers(off - bar.radius, bar.z, place.depth, || match place.owner {
                        Owner::Bar(own) => at > own,
                        Owner::Cord(..) => false,
                    })
            })
    }

    /// Whether nothing of a segment's tone is seen.
    pub(super) fn is_buried(&self, segment: &Segment) -> bool {
        let around = (0..12).map(|twelfth| TAU * f64::from(twelfth) / 12.0).map(libm::sincos);
        let rim = around.flat_map(|(sin, cos)| [RADIUS, RADIUS / 2.0].map(|far| [far * cos, far * sin]));
        let [x, y, depth] = segment.middle();
        rim.chain([[0.0, 0.0]]).all(|[right, down]| {
            let owner = Owner::Cord(segment.line, segment.arcs.0);
            self.is_covered(&SurfacePoint { spot: [x + right, y + down], depth, lift: RADIUS, owner })
        })
    }

    /// Whether the tone of something nearer covers a place.
    fn is_covered(&self, place: &SurfacePoint) -> bool {
        let Owner::Cord(line, own) = place.owner else { return false };
        let by_cord = self.grid.about(place.spot, RADIUS).any(|at| {
            let segment = &self.grid.segments[at];
            let (off, depth, arc) = segment.nearest(place.spot);
            off < RADIUS - SLACK && depth > place.depth + DEEP && !self.is_one_bend(line, own, segment.line, arc)
        });
        by_cord
            || self
                .scene
                .bars
                .iter()
                .any(|bar| (place.spot[0] - bar.x).abs() < bar.radius && bar.z > place.depth && bar.spans(place.spot))
    }

    /// Whether a place just beside an edge parts that edge from something deeper.
    pub(super) fn parts(&self, place: &SurfacePoint) -> bool {
        let mut is_backed = false;
        for at in self.grid.about(place.spot, RADIUS + SLACK) {
            let segment = &self.grid.segments[at];
            let (off, depth, arc) = segment.nearest(place.spot);
            let one_bend =
                matches!(place.owner, Owner::Cord(line, own) if self.is_one_bend(line, own, segment.line, arc));
            if off < RADIUS && (one_bend || depth > place.depth - DEEP) {
                return false;
            }
            is_backed |= off < RADIUS + SLACK && !one_bend;
        }
        for (at, bar) in self.scene.bars.iter().enumerate() {
            let off = (place.spot[0] - bar.x).abs();
            if place.owner == Owner::Bar(at) || off > bar.radius || !bar.spans(place.spot) {
                continue;
            }
            if bar.z > place.depth - DEEP {
                return false;
            }
            is_backed = true;
        }
        is_backed
    }

    fn is_one_bend(&self, line: usize, own: f64, other: usize, arc: f64) -> bool {
        line == other && self.scene.lines[line].one_bend(own, arc)
    }

    /// Whether a place is lost to a cord that lies level with it: the two change places there, and neither is over.
    pub(super) fn is_level(&self, place: &SurfacePoint) -> bool {
        let Owner::Cord(line, own) = place.owner else { return false };
        self.grid.about(place.spot, RADIUS).any(|at| {
            let segment = &self.grid.segments[at];
            let (off, depth, arc) = segment.nearest(place.spot);
            let is_near = off < RADIUS && (depth - place.depth).abs() < DEEP;
            is_near && !self.is_one_bend(line, own, segment.line, arc)
        })
    }
}

impl Bar {
    fn spans(&self, spot: PlanePoint) -> bool {
        self.span.0 <= spot[1] && spot[1] <= self.span.1
    }
}

/// Whether something whose edge is so far off and whose centre is so deep covers a place, or the gap beside it does.
///
/// Two that do not cut into one another lie one before the other as their centres do. At the same depth one of the two
/// has to give way.
fn covers(past_edge: f64, depth: f64, place_depth: f64, wins_a_tie: impl Fn() -> bool) -> bool {
    let ahead = depth - place_depth;
    ahead > DEEP && past_edge < GAP || past_edge < -SLACK && (ahead > 1e-9 || ahead > -1e-9 && wins_a_tie())
}
