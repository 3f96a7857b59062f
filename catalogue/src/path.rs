//! A knot's path: the centrelines of its legs as a few points, and the shape that tightening starts from.

use std::f64::consts::{PI, TAU};

use crate::packing::bundle_ratio;
use crate::shape::{Alike, Point, Repeat, Rod, Shape, Start, Strand, Then};

/// The centrelines of a knot's legs as an author draws them: loose, round a core one cord thick.
#[derive(Debug, Clone, PartialEq)]
pub struct Path {
    /// Length of one repeat as drawn, in cord diameters; `None` for a knot that stands alone.
    pub repeats: Option<f64>,
    /// Knots in one repeat.
    pub knots: u32,
    /// How far a repeat is turned as drawn, in degrees; `None` for one that can't turn.
    pub twist: Option<f64>,
    /// The pull along the core while it is tightened, in tensions of one leg.
    pub pull: f64,
    /// What the second half of a repeat is, when only the first is drawn.
    pub second_half: Option<Flip>,
    /// The legs.
    pub legs: Vec<Leg>,
    /// The values of the knot's parameters that it is drawn for.
    pub parameters: Vec<(String, f64)>,
}

/// One leg of a path, or several that are alike.
#[derive(Debug, Clone, PartialEq)]
pub struct Leg {
    /// Its line.
    pub line: LineSource,
    /// The leg that it goes on as in the next repeat, counted from 0; itself if not said. Of legs all round, how many
    /// legs further round.
    pub goes_on_as: Option<usize>,
    /// How many legs of the knot it is: two for a folded cord.
    pub legs: u32,
    /// Whether each working leg of the knot has one like it, evenly round the core.
    pub all_round: bool,
}

/// Where a leg's line comes from.
#[derive(Debug, Clone, PartialEq)]
pub enum LineSource {
    /// Drawn point by point.
    Points(Vec<Point>),
    /// Another leg's line, changed.
    Like {
        /// The other leg, counted from 0.
        leg: usize,
        /// Turned about the core, in degrees.
        turned: f64,
        /// Mirrored.
        flip: Option<Flip>,
    },
}

/// A mirroring or half turn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Flip {
    /// Left and right change places.
    Across,
    /// Front and back change places.
    Through,
    /// Both: half a turn about the core.
    Turned,
}

impl Flip {
    /// Every way with its word.
    pub const WORDS: &'static [(&'static str, Self)] =
        &[("across", Self::Across), ("through", Self::Through), ("turned", Self::Turned)];

    /// As a mirroring left to right, then a turn by so many degrees.
    fn parts(self) -> (bool, f64) {
        match self {
            Self::Across => (true, 0.0),
            Self::Through => (true, 180.0),
            Self::Turned => (false, 180.0),
        }
    }
}

/// A core as tightening starts with it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum StartingCore {
    /// Nothing: the knot is drawn without a core.
    Nothing,
    /// So many legs as thick as the working cord; none is a core left out.
    Legs(u32),
    /// A rod so many cord diameters thick.
    Rod(f64),
}

impl StartingCore {
    /// How thick a rod has the same girth, in cord diameters: what a table of take-up is read by.
    ///
    /// Up to four legs lie with their centres on a polygon of that many sides one diameter long (two lie side by side),
    /// so a cord laid tight round them is pi/n-fold straight; more count as a round bundle of the published ratio, which
    /// is never too thin.
    pub fn thickness(self) -> f64 {
        match self {
            Self::Nothing | Self::Legs(0) => 0.0,
            Self::Legs(1) => 1.0,
            Self::Legs(count @ 2..=MOST_FREE) => 1.0 + f64::from(count) / PI,
            Self::Legs(count) => bundle_ratio(count),
            Self::Rod(diameter) => diameter,
        }
    }

    /// The rods that stand for it. A knot that twists turns about its core, which then must be round.
    fn rods(self, twists: bool) -> Vec<Rod> {
        match self {
            Self::Legs(count @ 2..=MOST_FREE) if !twists => polygon(count),
            _ if self.thickness() == 0.0 => Vec::new(),
            _ => vec![Rod { x: 0.0, z: 0.0, diameter: self.thickness() }],
        }
    }
}

/// Up to so many core legs lie as they will; more are a round bundle.
const MOST_FREE: u32 = 4;

/// Legs with their centres on a polygon of sides one diameter long, flattened a little so that they can settle.
fn polygon(count: u32) -> Vec<Rod> {
    let radius = 0.5 / libm::sin(PI / f64::from(count));
    let at = |k: u32| {
        let (sin, cos) = libm::sincos(TAU * f64::from(k) / f64::from(count));
        Rod { x: radius * cos * 1.02, z: radius * sin * 0.98, diameter: 1.0 }
    };
    (0..count).map(at).collect()
}

impl Path {
    /// Legs of the knot that one of its strands is: two where a folded cord is drawn as one.
    pub fn legs_each(&self) -> u32 {
        self.legs.first().map_or(1, |leg| leg.legs)
    }

    /// The shape that tightening starts from.
    pub fn start(&self, working: u32, round: StartingCore) -> Start {
        let legs = self.legs_of(working);
        let repeat = self.repeats.map(|rise| Repeat { rise, twist: self.twist.unwrap_or_default().to_radians() });
        let thens: Vec<Then> =
            legs.iter().map(|leg| repeat.map_or(Then::Pulled, |_| Then::GoesOnAs(leg.next))).collect();
        let strand = |at: usize| {
            let points = smooth_leg(at, &legs, &thens, repeat);
            Strand { points: points.into_iter().map(|point| widened(point, round)).collect(), then: thens[at] }
        };
        Start {
            shape: Shape {
                strands: (0..legs.len()).map(strand).collect(),
                rods: round.rods(self.twist.is_some()),
                repeat,
            },
            alike: legs.iter().map(|leg| leg.alike).collect(),
            twists: self.twist.is_some(),
            pull: self.pull,
        }
    }

    /// Each leg in one repeat, point by point, the second half and the legs all round included.
    fn legs_of(&self, working: u32) -> Vec<PlacedLeg> {
        let mut legs: Vec<PlacedLeg> = Vec::new();
        for drawn in &self.legs {
            let of = legs.len();
            let many = if drawn.all_round { working } else { 1 };
            let on = drawn.goes_on_as.unwrap_or(if drawn.all_round { 0 } else { of });
            legs.push(match &drawn.line {
                LineSource::Points(points) => {
                    PlacedLeg { points: self.with_second_half(points), alike: None, next: on }
                }
                LineSource::Like { leg, turned, flip } => {
                    let (mirrored, half) = flip.map_or((false, 0.0), Flip::parts);
                    alike(&legs, &Alike { strand: *leg, turned: (turned + half).to_radians(), mirrored }, on)
                }
            });
            for k in 1..many {
                let turned = TAU * f64::from(k) / f64::from(working);
                let next = alike(&legs, &Alike { strand: of, turned, mirrored: false }, on);
                legs.push(next);
            }
            if drawn.all_round {
                let all = many as usize;
                legs[of..].iter_mut().enumerate().for_each(|(k, leg)| leg.next = of + (k + on) % all);
            }
        }
        legs
    }

    fn with_second_half(&self, first: &[Point]) -> Vec<Point> {
        let second = self.second_half.into_iter().flat_map(|flip| {
            let down = self.repeats.unwrap_or_default() / 2.0;
            let (mirrored, turned) = flip.parts();
            let flipped = Alike { strand: 0, turned: turned.to_radians(), mirrored };
            first.iter().map(move |point| {
                let [x, y, z] = flipped.of(*point);
                [x, y + down, z]
            })
        });
        first.iter().copied().chain(second).collect()
    }
}

/// A leg with its line and the leg that it is in the next repeat.
struct PlacedLeg {
    points: Vec<Point>,
    alike: Option<Alike>,
    next: usize,
}

/// A leg that is like an earlier one.
fn alike(legs: &[PlacedLeg], like: &Alike, next: usize) -> PlacedLeg {
    let Some(other) = legs.get(like.strand) else {
        return PlacedLeg { points: Vec::new(), alike: None, next };
    };
    let first = other.alike.map_or(*like, |first| first.then(like));
    PlacedLeg { points: other.points.iter().map(|point| like.of(*point)).collect(), alike: Some(first), next }
}

/// Moves a point out, or in, to make room for a core thicker or thinner than the one cord it is drawn round.
fn widened([x, y, z]: Point, round: StartingCore) -> Point {
    let radius = libm::hypot(x, z);
    let out = match round {
        StartingCore::Nothing => radius,
        // Closer in they would start inside one another.
        StartingCore::Legs(0) => radius * 0.7,
        StartingCore::Legs(_) | StartingCore::Rod(_) => radius + (round.thickness() - 1.0) / 2.0,
    };
    if radius == 0.0 { [x, y, z] } else { [x * out / radius, y, z * out / radius] }
}

/// How far a pulled leg is drawn out beyond its first and last point, in diameters.
const PULLED_OUT: f64 = 4.0;

/// The line of a leg that stands alone, with both ends drawn out straight.
fn pulled_out(line: &[Point]) -> Vec<Point> {
    let [first, second, .., last_but_one, last] = line else { return line.to_vec() };
    let mut out = vec![beyond(*second, *first)];
    out.extend_from_slice(line);
    out.push(beyond(*last_but_one, *last));
    out
}

/// The point straight on from `to`, seen from `from`: along y, or across it.
fn beyond(from: Point, to: Point) -> Point {
    let away = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
    let across = libm::hypot(away[0], away[2]);
    if away[1].abs() >= across {
        return [to[0], to[1] + PULLED_OUT * away[1].signum(), to[2]];
    }
    [to[0] + PULLED_OUT * away[0] / across, to[1], to[2] + PULLED_OUT * away[2] / across]
}

/// The smooth line of one leg: in a repeating knot from what comes before it to what follows.
fn smooth_leg(at: usize, legs: &[PlacedLeg], thens: &[Then], repeat: Option<Repeat>) -> Vec<Point> {
    let line = &legs[at].points;
    match (repeat, thens[at]) {
        (Some(repeat), Then::GoesOnAs(next)) => {
            let before = thens.iter().position(|then| *then == Then::GoesOnAs(at)).unwrap_or(at);
            smooth_on(line, &legs[before].points, &legs[next].points, repeat)
        }
        _ => smooth(&pulled_out(line)),
    }
}

/// Points on the smooth curve through a line (Catmull and Rom's spline), which ends where the line ends.
fn smooth(line: &[Point]) -> Vec<Point> {
    let at = |k: usize| line[k.min(line.len() - 1)];
    let mut points: Vec<Point> =
        (0..line.len() - 1).flat_map(|k| between(at(k.saturating_sub(1)), at(k), at(k + 1), at(k + 2))).collect();
    points.extend(line.last());
    points
}

/// Points on the smooth curve through a line of one repeat, from what comes before it to what follows.
fn smooth_on(line: &[Point], before: &[Point], next: &[Point], repeat: Repeat) -> Vec<Point> {
    let last_before = before.last().map(|point| repeat.image(*point, -1.0));
    let follow = next.iter().take(2).map(|point| repeat.image(*point, 1.0));
    let all: Vec<Point> = last_before.into_iter().chain(line.iter().copied()).chain(follow).collect();
    all.windows(4).flat_map(|w| between(w[0], w[1], w[2], w[3])).collect()
}

/// Points from `from`, included, to `to`, not included.
fn between(before: Point, from: Point, to: Point, after: Point) -> impl Iterator<Item = Point> {
    const PIECES: u32 = 10;
    (0..PIECES).map(move |k| {
        let share = f64::from(k) / f64::from(PIECES);
        let one = |axis: usize| {
            let [a, b, c, d] = [before, from, to, after].map(|point| point[axis]);
            let (slope, bend, twist) = (c - a, 2.0 * a - 5.0 * b + 4.0 * c - d, 3.0 * b - a - 3.0 * c + d);
            b + 0.5 * share * (slope + share * (bend + share * twist))
        };
        [one(0), one(1), one(2)]
    })
}
