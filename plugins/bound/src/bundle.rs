//! How thick a bundle of equal cords is.

/// Diameter of a round bundle of 1, 2, 3, ... equal cords, in cords: the densest packing of circles in a circle.
///
/// The best known as listed by Packomania, "The best known packings of equal circles in a circle", from a secondary copy;
/// up to 13 and 19 they are proven (Graham, Lubachevsky, Nurmela and Östergård, Discrete Mathematics 181, 1998, 139-154).
/// The decimals of 12 and 14 to 17 after the third are from memory.
const RATIOS: [f64; 30] = [
    1.0,
    2.0,
    2.154_700_5,
    2.414_213_6,
    2.701_301_6,
    3.0,
    3.0,
    3.304_764_9,
    3.613_125_9,
    3.813_025_6,
    3.923_804_4,
    4.029_602,
    4.236_068,
    4.328_429,
    4.521_357,
    4.615_426,
    4.792_034,
    4.863_703_3,
    4.863_703_3,
    5.122_320_7,
    5.252_317_5,
    5.439_719,
    5.545_204_2,
    5.651_661_1,
    5.752_824_3,
    5.828_176_5,
    5.906_397_8,
    6.014_938_1,
    6.138_597_9,
    6.197_741_1,
];

/// Diameter of a round bundle of `count` equal cords, in cords; none is no bundle.
///
/// Beyond thirty cords it is taken to fill its circle as well as thirty do.
pub(crate) fn ratio(count: u32) -> f64 {
    let Some(last) = count.checked_sub(1) else { return 0.0 };
    let known = usize::try_from(last).ok().and_then(|at| RATIOS.get(at));
    known.copied().unwrap_or_else(|| RATIOS[29] * (f64::from(count) / 30.0).sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bundles_are_those_of_the_catalogue() {
        // The catalogue holds itself to the published packings. From 20 cords on it has an upper bound, ours is the best
        // known or a rule of thumb.
        for count in 0..=66 {
            let (ours, theirs) = (ratio(count), reeve_catalogue::bundle_ratio(count));
            let part = if count < 20 { 1e-7 } else { 0.035 };
            assert!((ours - theirs).abs() <= part * theirs, "{count} cords: {ours} is not {theirs}");
        }
    }

    #[test]
    fn more_cords_are_never_a_thinner_bundle() {
        assert!((0..=66).all(|count| ratio(count + 1) >= ratio(count)));
    }
}
