//! The section of a plain weave: one cord over and under the cords that cross it.
//!
//! F. T. Peirce, "The Geometry of Cloth Structure", Journal of the Textile Institute 28, 1937, T45: a thread lies on the
//! threads that it crosses in arcs and runs straight between them. Read in a restatement, "Fabric Geometry" at
//! business.vsnl.com/balasubramanian/YarnCloth.html.
//!
//! All lengths are in millimetres, or all in any other unit; angles in radians.

/// How close a square weave of round cords packs, in rises: the square root of 3.
///
/// There the cord lies on one neighbour until it lies on the next (Peirce's jammed cloth).
pub fn closest(rise: f64) -> f64 {
    3.0_f64.sqrt() * rise
}

/// The length of a cord from one crossing to the next, where it goes from over to under.
///
/// `spacing` is how far the crossing cords stand apart, at least [`closest`] of `rise`; `rise` is how far the middles of two
/// cords stand apart where they cross, which is a diameter, less what they sink into each other. So the cord bends about a
/// crossing cord by a radius of one rise, and it has one rise to climb between two of them.
pub fn over_under(spacing: f64, rise: f64) -> f64 {
    let apart = across(spacing, rise);
    // At the closest the straight part is nothing, and rounding must not make it less.
    let straight = (apart * apart - 4.0 * rise * rise).max(0.0).sqrt();
    let turned = libm::asin((2.0 * rise / apart).min(1.0)) - libm::atan(rise / spacing);
    2.0 * rise * turned + straight
}

/// One mesh of a weave whose cords cross askew, perhaps several side by side as one ribbon.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mesh {
    /// From the middle of a ribbon to the middle of the next one alike, square to both.
    pub spacing: f64,
    /// Of that, what is flat: the width of a ribbon less one cord.
    pub flat: f64,
    /// How far the middles of two cords stand apart where they cross.
    pub rise: f64,
    /// The angle at which a cord meets those that it crosses; a quarter of a turn is square.
    pub crossing: f64,
}

impl Mesh {
    /// The length of a cord through one mesh, from crossing to crossing.
    ///
    /// Seen along the cords that it crosses, the cord has the section of [`over_under`]; the sheet on which it lies is bent
    /// along those cords alone, so it rolls out flat, and there a tight cord is a straight line.
    pub fn length(&self) -> f64 {
        let section = self.flat + over_under(self.spacing - self.flat, self.rise);
        let along = self.spacing * libm::cos(self.crossing) / libm::sin(self.crossing);
        across(section, along)
    }
}

/// The long side of a right-angled triangle. Square roots are the same to the last bit on every machine.
pub(crate) fn across(a: f64, b: f64) -> f64 {
    (a * a + b * b).sqrt()
}
