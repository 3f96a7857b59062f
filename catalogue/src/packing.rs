//! How thick a round bundle of equal cords is: the densest packing of circles in a circle.

use std::sync::LazyLock;

/// The diameter of the round bundle that `count` equal cords make, in cord diameters.
///
/// 1 to 13 and 19 are proven, 14 to 18 the best known (Kravitz, Mathematics Magazine 40, 1967;
/// Graham, Lubachevsky, Nurmela and Östergård, Discrete Mathematics 181, 1998, 139-154; of 12 and 14 to 17 the decimals after
/// the third are from memory). From 20 on an upper bound by real packings, so that no bundle of the best shape is thicker: a
/// ring of cords about a smaller bundle, or the nearest points of a hexagonal lattice.
/// No cord gives a bundle of no thickness.
///
/// ```
/// use reeve_catalogue::bundle_ratio;
/// assert_eq!(bundle_ratio(2), 2.0);
/// assert!((bundle_ratio(7) - 3.0).abs() < 1e-12);
/// ```
pub fn bundle_ratio(count: u32) -> f64 {
    match count {
        0 => 0.0,
        1 => 1.0,
        2 => 2.0,
        3 => 1.0 + 2.0 / 3.0_f64.sqrt(),
        4 => 1.0 + 2.0_f64.sqrt(),
        5 => 1.0 + (2.0 * (1.0 + 1.0 / 5.0_f64.sqrt())).sqrt(),
        6 | 7 => 3.0,
        8 => 1.0 + 1.0 / libm::sin(std::f64::consts::PI / 7.0),
        9 => 1.0 + (2.0 * (2.0 + 2.0_f64.sqrt())).sqrt(),
        10 => 3.813_025_6,
        11 => 1.0 + 1.0 / libm::sin(std::f64::consts::PI / 9.0),
        12 => 4.029_602,
        13 => 2.0 + 5.0_f64.sqrt(),
        14 => 4.328_429,
        15 => 4.521_357,
        16 => 4.615_426,
        17 => 4.792_034,
        18 | 19 => 1.0 + 2.0_f64.sqrt() + 6.0_f64.sqrt(),
        many if many <= RINGED_UP_TO => RINGED.get(index(many - RINGED_FROM)).copied().unwrap_or(f64::INFINITY),
        many => hexagonal_ratio(many),
    }
}

const RINGED_FROM: u32 = 20;
const RINGED_UP_TO: u32 = 91;

/// Bundles with a ring of cords about a smaller bundle, from 20 cords on; past 91 the lattice is as good.
static RINGED: LazyLock<Vec<f64>> = LazyLock::new(|| {
    let mut ratios: Vec<f64> = Vec::new();
    for count in RINGED_FROM..=RINGED_UP_TO {
        let known = |inner: u32| {
            if inner < RINGED_FROM { bundle_ratio(inner) } else { ratios[index(inner - RINGED_FROM)] }
        };
        let ringed = (1..count - 2).map(|inner| ringed_ratio(known(inner), count - inner));
        ratios.push(ringed.fold(hexagonal_ratio(count), f64::min));
    }
    // What holds one cord more holds these as well.
    for at in (1..ratios.len()).rev() {
        ratios[at - 1] = ratios[at - 1].min(ratios[at]);
    }
    ratios
});

/// A bundle of some ratio with a ring of so many cords about it, each touching the next or the bundle.
fn ringed_ratio(inner: f64, ring: u32) -> f64 {
    let beside_each_other = 0.5 / (std::f64::consts::PI / f64::from(ring)).sin();
    let about_the_bundle = f64::midpoint(inner, 1.0);
    1.0 + 2.0 * beside_each_other.max(about_the_bundle)
}

fn index(small: u32) -> usize {
    usize::try_from(small).unwrap_or(usize::MAX)
}

/// Cords in a hexagonal lattice, the `count` nearest to the best of three centres.
fn hexagonal_ratio(count: u32) -> f64 {
    let height = 3.0_f64.sqrt() / 2.0;
    [(0.0, 0.0), (0.5, 0.0), (0.5, height / 3.0)]
        .into_iter()
        .map(|centre| 1.0 + 2.0 * radius_holding(count, centre))
        .fold(f64::INFINITY, f64::min)
}

/// The distance from the centre to the `count`-th nearest lattice point, in cord diameters.
fn radius_holding(count: u32, (x, y): (f64, f64)) -> f64 {
    let height = 3.0_f64.sqrt() / 2.0;
    // A disc of this radius holds well over `count` lattice points of density 2/sqrt(3).
    let reach = f64::from(count).sqrt() + 2.0;
    let rows = whole(reach / height);
    let columns = whole(reach) + rows;
    let mut distances: Vec<f64> = (-rows..=rows)
        .flat_map(|row| (-columns..=columns).map(move |column| (row, column)))
        .map(|(row, column)| {
            let across = f64::from(column) + f64::from(row) / 2.0 - x;
            across.hypot(f64::from(row) * height - y)
        })
        .filter(|distance| *distance <= reach)
        .collect();
    distances.sort_by(f64::total_cmp);
    distances.get(index(count).saturating_sub(1)).copied().unwrap_or(reach)
}

/// A small positive number rounded up to a whole one.
fn whole(number: f64) -> i32 {
    let mut up = 0;
    while f64::from(up) < number {
        up += 1;
    }
    up
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bundle_never_gets_thinner_by_one_cord_more() {
        for count in 0..400 {
            assert!(bundle_ratio(count + 1) >= bundle_ratio(count), "{count}");
        }
    }

    #[test]
    fn no_bundle_is_denser_than_the_plane_allows() {
        // Thue, 1910, from memory: no packing of equal circles covers more than pi / sqrt(12) of the plane.
        let densest = std::f64::consts::PI / 12.0_f64.sqrt();
        for count in 1..400 {
            let ratio = bundle_ratio(count);
            assert!(f64::from(count) / (ratio * ratio) < densest.max(1.0 + f64::EPSILON) || count == 1, "{count}");
        }
    }
}
