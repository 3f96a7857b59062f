//! Lengths of a cord's centreline when it is laid tight round something.
//!
//! A tight cord of diameter d runs with its centreline d/2 outside the thing wrapped, so one turn
//! is the perimeter of the parallel curve at that distance: for a convex thing its own perimeter
//! plus pi d (Steiner's formula for parallel curves).

use std::f64::consts::PI;

use reeve_measure::Length;

/// One turn of a cord round a thing of round section: pi (D + d).
pub fn turn_round(thing: Length, cord: Length) -> Length {
    (thing + cord) * PI
}

/// One turn of a cord round equal cords that lie flat in a row: 2 (n - 1) c + pi (c + d).
///
/// `count` cords of diameter `each`; none gives no turn at all.
pub fn turn_round_row(count: u32, each: Length, cord: Length) -> Length {
    if count == 0 {
        return Length::ZERO;
    }
    each * (2.0 * f64::from(count - 1)) + turn_round(each, cord)
}

/// One turn of a cord round a rectangular section a x b: 2 (a + b) + pi d.
pub fn turn_round_rectangle(a: Length, b: Length, cord: Length) -> Length {
    (a + b) * 2.0 + cord * PI
}

/// One turn that also climbs: the helix sqrt(turn^2 + pitch^2).
pub fn climbing(turn: Length, pitch: Length) -> Length {
    Length::mm(libm::hypot(turn.as_mm(), pitch.as_mm()))
}

/// A lower bound for what a tight overhand knot takes from a long cord, in cord diameters: pi.
///
/// A knotted line with straight ends curves by at least 2 pi in all: a knotted closed curve by more than 4 pi (Milnor,
/// Annals of Mathematics 52, 1950, stated from memory), of which the far arc that closes a long line takes 2 pi. The
/// centreline of a tube can't curve more than 2 for each diameter of length.
pub const OVERHAND_AT_LEAST: f64 = PI;

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(value: f64) -> Length {
        Length::mm(value)
    }

    #[test]
    fn one_cord_is_wrapped_alike_as_a_row_a_bundle_and_a_rod() {
        let row = turn_round_row(1, mm(4.0), mm(4.0));
        assert!((row / turn_round(mm(4.0), mm(4.0)) - 1.0).abs() < 1e-12);
        assert!((row.as_mm() - 8.0 * PI).abs() < 1e-12);
    }

    #[test]
    fn two_cords_in_a_row_take_two_diameters_more() {
        let more = turn_round_row(2, mm(4.0), mm(4.0)) - turn_round_row(1, mm(4.0), mm(4.0));
        assert!((more.as_mm() - 8.0).abs() < 1e-12);
    }

    #[test]
    fn a_thin_rectangle_is_twice_its_width_and_the_cord_round() {
        let turn = turn_round_rectangle(mm(20.0), Length::ZERO, mm(2.0));
        assert!((turn.as_mm() - (40.0 + 2.0 * PI)).abs() < 1e-12);
    }

    #[test]
    fn a_flat_helix_is_a_circle_and_a_steep_one_its_pitch() {
        assert!((climbing(mm(30.0), mm(40.0)).as_mm() - 50.0).abs() < 1e-12);
        assert!((climbing(mm(30.0), Length::ZERO).as_mm() - 30.0).abs() < 1e-12);
    }
}
