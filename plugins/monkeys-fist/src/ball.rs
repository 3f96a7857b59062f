//! Three bands of turns about a ball. Lengths in millimetres.

use crate::ellipse::perimeter;

/// A ball with three bands of turns about it.
///
/// Each band runs about an axis of its own, square to the others'. At two opposite faces of the ball it lies on the ball and
/// under another band, at the two faces between them it lies over the third. Half of the way between both layers is the
/// middle of the shell.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fist {
    /// Turns of each band, 2 or more.
    pub passes: f64,
    /// Thickness of the cord.
    pub cord: f64,
    /// How far the middles of two cords stand apart where they cross.
    pub rise: f64,
    /// Thickness of the ball inside, which gives nothing.
    pub ball: f64,
}

impl Fist {
    /// How thick a ball is when the middle of the shell is so far from its centre.
    pub fn ball_of(shell: f64, cord: f64, rise: f64) -> f64 {
        2.0 * shell - cord - rise
    }

    /// The shell that three bands of a width just cover: they then meet in the eight corners where all three are equally far.
    ///
    /// Such a corner lies a shell over the square root of 3 from the middle of each band.
    pub fn covered_shell(width: f64) -> f64 {
        width * 3.0_f64.sqrt() / 2.0
    }

    /// The smallest shell on which bands of a width lie side by side: two of them meet half way between their middles.
    pub fn least_shell(width: f64) -> f64 {
        width / 2.0_f64.sqrt()
    }

    /// The largest shell that is taken: a quarter more than is covered.
    ///
    /// At each corner a gap stays whose edges are eight degrees from its middle. Judged, not measured: four passes of 18 mm
    /// rope about a ball of yarn of 115 mm are published as covering it (Pawson, Knot Craft, 2nd ed. 2009, p. 85), which is
    /// a fifth more than is covered.
    pub fn most_shell(width: f64) -> f64 {
        1.25 * Self::covered_shell(width)
    }

    /// How wide a band is.
    pub fn width(&self) -> f64 {
        self.passes * self.cord
    }

    /// How far the middle of the shell is from the centre.
    pub fn shell(&self) -> f64 {
        (self.ball + self.cord + self.rise) / 2.0
    }

    /// How thick the whole is, across two faces.
    pub fn outside(&self) -> f64 {
        self.ball + 2.0 * (self.cord + self.rise)
    }

    /// The cord of the whole knot, without ends to work with.
    ///
    /// A turn in the middle of its band is an ellipse, inside at two faces and outside at the other two. The others lie beside
    /// it on circles of the ball that get smaller, and each steps over by one cord to the next.
    pub fn cord(&self) -> f64 {
        let inside = f64::midpoint(self.ball, self.cord);
        let middle = perimeter(inside, inside + self.rise);
        let turn = |beside: f64| {
            let out = beside * self.cord / self.shell();
            let round = middle * (1.0 - out * out).max(0.0).sqrt();
            (round * round + self.cord * self.cord).sqrt()
        };
        let mut band = 0.0;
        let mut beside = (1.0 - self.passes) / 2.0;
        while beside < self.passes / 2.0 {
            band += turn(beside);
            beside += 1.0;
        }
        3.0 * band
    }
}
