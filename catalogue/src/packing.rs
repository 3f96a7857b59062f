//! How thick a round bundle of equal cords is: the densest packing of circles in a circle.

/// The diameter of the round bundle that `count` equal cords make, in cord diameters.
///
/// 1 to 13 and 19 are proven, 14 to 18 the best known (Kravitz, Mathematics Magazine 40, 1967;
/// Graham, Lubachevsky, Nurmela and Östergård, Discrete Mathematics 181, 1998, 139-154; of 12 and 14 to 17 the decimals after
/// the third are from memory). From 20 on an upper bound by real packings, so that no bundle of the best shape is thicker: a
/// ring of cords about a smaller bundle, or the nearest points of a hexagonal lattice; up to 91 worked out once and kept here.
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

/// Bundles with a ring of cords about a smaller bundle, from 20 cords on; past 91 the lattice is as good. A test works
/// them out anew.
#[rustfmt::skip]
static RINGED: [f64; 72] = [
    5.178_581_468_860_377_5, 5.304_764_870_962_487, 5.493_959_207_434_934, 5.613_125_929_752_753,
    5.809_734_344_744_132, 5.813_025_6, 5.923_804_400_163_087, 6.029_602,
    6.125_830_895_483_013, 6.236_067_977_499_79, 6.291_502_622_129_181, 6.291_502_622_129_181,
    6.521_357, 6.615_426, 6.758_770_483_143_634, 6.792_034,
    6.863_703_305_156_273, 6.863_703_305_156_273, 7.075_533_820_974_26, 7.178_581_468_860_377_5,
    7.304_764_870_962_487, 7.392_453_221_499_662, 7.429_100_507_328_637, 7.613_125_929_752_753,
    7.709_506_139_808_398, 7.809_734_344_744_132, 7.813_025_6, 7.923_804_400_163_087,
    8.0, 8.029_602, 8.125_830_895_483_013, 8.211_102_550_927_98,
    8.211_102_550_927_98, 8.211_102_550_927_98, 8.211_102_550_927_98, 8.211_102_550_927_98,
    8.615_426, 8.661_297_575_540_39, 8.758_770_483_143_634, 8.792_034_000_000_001,
    8.863_703_305_156_273, 8.863_703_305_156_273, 8.978_729_755_559_476, 9.075_533_820_974_261,
    9.178_581_468_860_378, 9.296_229_810_558_755, 9.304_764_870_962_487, 9.326_663_997_864_53,
    9.326_663_997_864_53, 9.326_663_997_864_53, 9.613_790_148_477_909, 9.709_506_139_808_397,
    9.717_797_887_081_348, 9.717_797_887_081_348, 9.888_194_417_315_589, 9.931_404_270_380_506,
    10.0, 10.029_602, 10.125_830_895_483_013, 10.165_151_389_911_68,
    10.165_151_389_911_68, 10.165_151_389_911_68, 10.165_151_389_911_68, 10.165_151_389_911_68,
    10.165_151_389_911_68, 10.165_151_389_911_68, 10.615_426, 10.643_650_760_992_955,
    10.643_650_760_992_955, 10.792_034_000_000_001, 10.848_857_801_796_104, 10.848_857_801_796_104,
];

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
            libm::hypot(across, f64::from(row) * height - y)
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

    /// Bundles with a ring of cords about a smaller bundle, from 20 cords on, worked out anew.
    fn ringed() -> Vec<f64> {
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
    }

    /// A bundle of some ratio with a ring of so many cords about it, each touching the next or the bundle.
    fn ringed_ratio(inner: f64, ring: u32) -> f64 {
        let beside_each_other = 0.5 / libm::sin(std::f64::consts::PI / f64::from(ring));
        let about_the_bundle = f64::midpoint(inner, 1.0);
        1.0 + 2.0 * beside_each_other.max(about_the_bundle)
    }

    #[test]
    fn the_ratios_kept_are_those_worked_out() {
        let kept: Vec<f64> = (RINGED_FROM..=RINGED_UP_TO).map(bundle_ratio).collect();
        assert_eq!(kept.len(), RINGED.len());
        for (at, (kept, made)) in kept.iter().zip(ringed()).enumerate() {
            assert!((kept - made).abs() < 1e-12, "{}: {kept} is kept, {made} is worked out", at + 20);
        }
    }

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
