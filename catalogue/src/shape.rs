//! The centrelines of a knot, as they start or as they lie when it is tight.
//!
//! Lengths are in cord diameters: x across the work, y along the core and down the work, z towards the viewer.

/// A point of a centreline.
pub type Point = [f64; 3];

/// The centrelines of a knot's legs and the things they are tied round.
#[derive(Debug, Clone, PartialEq)]
pub struct Shape {
    /// The legs that tie, one cord diameter thick.
    pub strands: Vec<Strand>,
    /// The core: straight, along y.
    pub rods: Vec<Rod>,
    /// How the knot repeats along its core; `None` for one that stands alone.
    pub repeat: Option<Repeat>,
}

/// The centreline of one leg, in one repeat or in all.
#[derive(Debug, Clone, PartialEq)]
pub struct Strand {
    /// From where it comes in to where it goes out. In a repeating knot the last point lies before the
    /// first point of the strand it goes on as, one repeat further.
    pub points: Vec<Point>,
    /// What follows its last point.
    pub then: Then,
}

/// What follows the last point of a strand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Then {
    /// Its own first point: a closed curve.
    Closes,
    /// Nothing: it is pulled away, straight on.
    Pulled,
    /// In the next repeat it goes on as this strand.
    GoesOnAs(usize),
}

/// The pull along the core of a repeating knot where its path says nothing else: the tension of one working leg.
///
/// A sennit is tied on legs that are held taut. Without it the rise comes out 2 to 4 % smaller at the usual give.
pub const PULL: f64 = 1.0;

/// A shape as tightening starts with it, and what stays alike in it.
#[derive(Debug, Clone, PartialEq)]
pub struct Start {
    /// The loose shape.
    pub shape: Shape,
    /// For each strand the one it is like, if it is to stay so: pulled on evenly, a knot does not capsize.
    pub alike: Vec<Option<Alike>>,
    /// Whether the twist of a repeat is free to change.
    pub twists: bool,
    /// The pull along the core of a repeating knot, in tensions of one leg.
    pub pull: f64,
}

impl From<Shape> for Start {
    fn from(shape: Shape) -> Self {
        Self { alike: vec![None; shape.strands.len()], shape, twists: false, pull: PULL }
    }
}

/// One strand is another one mirrored or turned about the core.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Alike {
    /// The other strand, which is like no other.
    pub strand: usize,
    /// Turned, in radians, from x towards z, after mirroring.
    pub turned: f64,
    /// Whether left and right change places first.
    pub mirrored: bool,
}

impl Alike {
    /// Where a point, or a direction, of the other strand lies on this one.
    pub fn of(&self, [x, y, z]: Point) -> Point {
        turn([if self.mirrored { -x } else { x }, y, z], self.turned)
    }

    /// What is like this strand is like the other one so.
    #[must_use]
    pub fn then(&self, next: &Self) -> Self {
        let turned = if next.mirrored { -self.turned } else { self.turned };
        Self { strand: self.strand, turned: turned + next.turned, mirrored: self.mirrored != next.mirrored }
    }
}

/// Turns a point about y, from x towards z.
pub fn turn([x, y, z]: Point, angle: f64) -> Point {
    let (sin, cos) = libm::sincos(angle);
    [cos * x - sin * z, y, sin * x + cos * z]
}

/// A straight leg or fitting that the knot is tied round.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rod {
    /// Where it stands, across.
    pub x: f64,
    /// Where it stands, towards the viewer.
    pub z: f64,
    /// How thick it is, in cord diameters.
    pub diameter: f64,
}

/// How a knot repeats: the next repeat is this one, turned about y and moved down along it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Repeat {
    /// How far down, in cord diameters: the rise.
    pub rise: f64,
    /// How far turned, in radians: from x towards z.
    pub twist: f64,
}

impl Repeat {
    /// Where a point lies so many repeats further down.
    pub fn image(&self, point: Point, repeats: f64) -> Point {
        let [x, y, z] = turn(point, self.twist * repeats);
        [x, y + self.rise * repeats, z]
    }
}
