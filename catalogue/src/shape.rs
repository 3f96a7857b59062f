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
    pub fn image(&self, [x, y, z]: Point, repeats: f64) -> Point {
        let (sin, cos) = (self.twist * repeats).sin_cos();
        [cos * x - sin * z, y + self.rise * repeats, sin * x + cos * z]
    }
}
