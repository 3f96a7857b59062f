//! What rope weighs, against tables of those who make it.

use reeve_costing::store::{FIBRES, estimated_density};
use reeve_measure::{Length, LinearDensity, Mass};

use crate::within;

/// Cordage Institute CI 1308-96, manila, three-strand: diameter in inches, pounds per 100 feet, and the same in
/// grams a metre (computed: 1 lb per 100 ft is 453.59237 g / 30.48 m).
const MANILA: &[(f64, f64, f64)] = &[
    (1.0 / 4.0, 1.82, 27.084_6),
    (5.0 / 16.0, 2.64, 39.287_5),
    (3.0 / 8.0, 3.79, 56.401_4),
    (7.0 / 16.0, 4.87, 72.473_6),
    (1.0 / 2.0, 6.96, 103.576),
];

/// Inches, pounds a foot: Engineering Toolbox, "Nylon Rope - Strength".
const NYLON: &[(f64, f64)] = &[(3.0 / 8.0, 0.036), (1.0 / 2.0, 0.063), (3.0 / 4.0, 0.143), (1.0, 0.253)];

/// Inches, pounds per 100 feet: a rope maker's table of three-strand polypropylene.
const POLYPROPYLENE: &[(f64, f64)] = &[(3.0 / 8.0, 2.80), (1.0 / 2.0, 4.70), (5.0 / 8.0, 7.50)];

/// How far an estimate may be off a weighed rope. A rough estimate is what it is called.
const ESTIMATE_WITHIN: f64 = 0.08;

fn per_feet(pounds: f64, feet: f64) -> LinearDensity {
    LinearDensity::g_per_m(Mass::pounds(pounds).as_g() / Length::feet(feet).as_m())
}

fn fibre(name: &str) -> f64 {
    FIBRES.iter().find(|(known, _)| *known == name).unwrap().1
}

#[test]
fn pounds_per_100_feet_become_grams_a_metre() {
    for (inches, pounds, g_per_m) in MANILA {
        within(1e-5, per_feet(*pounds, 100.0).as_g_per_m(), *g_per_m, &format!("manila, {inches} in"));
    }
}

#[test]
fn rope_weighs_as_the_square_of_its_diameter() {
    // The standard calls its diameters approximate: 8 % round the mean of all rows, as the rows themselves scatter by 7 %.
    let by_square = |(inches, pounds, _): &(f64, f64, f64)| pounds / (inches * inches);
    let rows = reeve_measure::count(MANILA.len() as u64);
    let mean = MANILA.iter().map(by_square).sum::<f64>() / rows;
    for row in MANILA {
        within(0.08, by_square(row), mean, &format!("manila, {} in, by the square", row.0));
    }
}

#[test]
fn the_estimate_grows_from_row_to_row_as_the_standard_does() {
    let estimate = |inches: f64| estimated_density(Length::inches(inches), fibre("cotton")).as_g_per_m();
    let (inches, pounds, _) = MANILA[0];
    for (thicker, heavier, _) in &MANILA[1..] {
        let growth = estimate(*thicker) / estimate(inches);
        within(0.15, growth, heavier / pounds, &format!("growth from {inches} to {thicker} in"));
    }
}

#[test]
fn the_estimate_for_nylon_is_near_the_table() {
    for (inches, pounds) in NYLON {
        let ours = estimated_density(Length::inches(*inches), fibre("nylon")).as_g_per_m();
        within(ESTIMATE_WITHIN, ours, per_feet(*pounds, 1.0).as_g_per_m(), &format!("nylon, {inches} in"));
    }
}

#[test]
fn the_estimate_for_polypropylene_is_near_the_table() {
    for (inches, pounds) in POLYPROPYLENE {
        let ours = estimated_density(Length::inches(*inches), fibre("polypropylene")).as_g_per_m();
        within(ESTIMATE_WITHIN, ours, per_feet(*pounds, 100.0).as_g_per_m(), &format!("polypropylene, {inches} in"));
    }
}

#[test]
fn fibres_are_as_dense_as_published() {
    // Morton and Hearle, Physical Properties of Textile Fibres, Table 5.1, g/cm3 at 65 % relative humidity.
    let published = [
        ("cotton", 1.52),
        ("viscose", 1.49),
        ("wool", 1.31),
        ("silk", 1.34),
        ("nylon", 1.14),
        ("polyester", 1.39),
        ("acrylic", 1.19),
        ("polyethylene", 0.95),
        ("polypropylene", 0.91),
    ];
    assert_eq!(FIBRES.len(), published.len());
    for (name, density) in published {
        within(1e-12, fibre(name), density, name);
    }
}
