//! The law of contact between two cords, and what "give" means.
//!
//! Two points of two centrelines closer than touching, at distance r < 1, push with the potential x^2 / 2, where
//! x = (1 - r) / (2 r - 1): at first touch it rises as the square of how far they sink in, and it has no end at half a
//! diameter, for a cord has only so much air in it. It is summed over both centrelines and times a stiffness.

use std::sync::LazyLock;

use reeve_measure::count;

/// Where the law is carried on by its tangent, in diameters: a loose start may have cords closer than they can be.
const CLOSEST: f64 = 0.6;

/// The contact stiffness, in tensions per diameter, of a cord with this give.
///
/// Give is the share of its diameter by which a cord sinks into a like, straight cord that it is wound round under unit
/// tension. There the turn's radius is 1 - give, so the tension presses with 1 / (1 - give) on each diameter of length,
/// and the law above, summed along the straight cord, must press back as much.
pub fn stiffness(give: f64) -> f64 {
    let radius = 1.0 - give;
    -1.0 / (radius * summed(radius).1)
}

/// The potential at distance r from a point, and its slope.
pub(super) fn point(r: f64) -> (f64, f64) {
    if r >= 1.0 {
        return (0.0, 0.0);
    }
    let near = r.max(CLOSEST);
    let open = 2.0 * near - 1.0;
    let per_open = 1.0 / open;
    let x = (1.0 - near) * per_open;
    let slope = -x * per_open * per_open;
    (0.5 * x * x + slope * (r - near), slope)
}

/// Places of the table in one diameter.
const PLACES: f64 = 500.0;

/// The potential at a distance from a straight line and its slope, place by place from [`CLOSEST`] to 1.
///
/// What comes closer is summed anew.
static LINE: LazyLock<Vec<(f64, f64)>> = LazyLock::new(|| {
    let places = (0_u32..).map(|place| CLOSEST + f64::from(place) / PLACES);
    places.take_while(|r| *r <= 1.0).map(summed).collect()
});

/// The potential at distance r < 1 from a straight line, for each unit of length, and its slope: [`point`] summed along
/// the line where it is closer than 1.
///
/// Between two places of the table it is the cubic that meets the potential and its slope at both; the slope is that
/// cubic's own.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "what lies before the table is summed anew")]
pub(super) fn line(r: f64) -> (f64, f64) {
    let from = (r - CLOSEST) * PLACES;
    let place = from as usize;
    let (false, Some([(low, rising), (high, falling)])) = (from < 0.0, LINE.get(place..place + 2)) else {
        return summed(r);
    };
    let t = from - count(place as u64);
    let (rising, falling) = (rising / PLACES, falling / PLACES);
    // Powers of t in the cubic.
    let third = 2.0 * (low - high) + rising + falling;
    let second = 3.0 * (high - low) - 2.0 * rising - falling;
    (low + t * (rising + t * (second + t * third)), PLACES * (rising + t * (2.0 * second + t * 3.0 * third)))
}

/// What [`line()`] tells, summed anew.
fn summed(r: f64) -> (f64, f64) {
    // Gauss and Legendre's rule with six places on each half of the line, from its middle to where it is out of reach.
    const RULE: [(f64, f64); 6] = [
        (0.033_765_242_898_423_99, 0.085_662_246_189_585_17),
        (0.169_395_306_766_867_74, 0.180_380_786_524_069_3),
        (0.380_690_406_958_401_55, 0.233_956_967_286_345_52),
        (0.619_309_593_041_598_5, 0.233_956_967_286_345_52),
        (0.830_604_693_233_132_3, 0.180_380_786_524_069_3),
        (0.966_234_757_101_576, 0.085_662_246_189_585_17),
    ];
    let reach = (1.0 - r * r).max(0.0).sqrt();
    RULE.iter().fold((0.0, 0.0), |(energy, slope), (place, weight)| {
        let along = reach * place;
        let away = (r * r + along * along).sqrt();
        let (here, rising) = point(away);
        let share = 2.0 * weight * reach;
        (energy + share * here, slope + share * rising * r / away.max(f64::MIN_POSITIVE))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_line_is_the_sum_of_its_points() {
        for r in [0.7_f64, 0.8, 0.9, 0.99] {
            let step = 1e-4_f64;
            let sum: f64 = (-10_000..10_000)
                .map(|k| f64::from(k) * step + step / 2.0)
                .map(|t| libm::hypot(r, t))
                .filter(|r| *r < 1.0)
                .map(|r| point(r).0 * step)
                .sum();
            assert!((sum / line(r).0 - 1.0).abs() < 2e-4, "{r}: {sum} {}", line(r).0);
        }
    }

    #[test]
    fn the_table_tells_what_is_summed() {
        for r in (0..10_000).map(|k| 0.55 + f64::from(k) * 4.5e-5) {
            let ((energy, slope), (summed, rising)) = (line(r), summed(r));
            for (tabled, summed) in [(energy, summed), (slope, rising)] {
                assert!((tabled - summed).abs() < 5e-5 * (1.0 + summed.abs()), "{r}: {tabled} {summed}");
            }
        }
    }

    #[test]
    fn a_slope_is_the_difference_of_two_neighbours() {
        for r in [0.7_f64, 0.8, 0.9, 0.99] {
            let step = 1e-6;
            for law in [point, line] {
                let slope = (law(r + step).0 - law(r - step).0) / (2.0 * step);
                assert!((slope / law(r).1 - 1.0).abs() < 1e-3, "{r}");
            }
        }
    }

    #[test]
    fn a_harder_cord_is_stiffer() {
        assert!(stiffness(0.01) > stiffness(0.1) && stiffness(0.1) > stiffness(0.2));
    }
}
