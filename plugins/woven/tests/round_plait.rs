//! The round plait by its laws, and what it refuses.

#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
#![allow(clippy::disallowed_methods, reason = "a test reckons by the standard library")]

use reeve_kit::{Core, Knot, Refusal, Setting, Taken};
use woven::RoundPlait;

fn plaited(cord: f64, rod: f64, give: f64, legs: u32, angle: f64) -> Result<Taken, Refusal> {
    let values = [angle];
    let mut setting = Setting::of::<RoundPlait>(cord, &values);
    (setting.working, setting.give) = (legs, give);
    if rod > 0.0 {
        (setting.core, setting.core_mm) = (Core::Rod(rod), rod);
    }
    RoundPlait::take(&setting)
}

fn taken(cord: f64, rod: f64, give: f64, legs: u32, angle: f64) -> Taken {
    plaited(cord, rod, give, legs, angle).unwrap()
}

/// Rods, legs and angles.
fn spread() -> impl Iterator<Item = (f64, u32, f64)> {
    let rods = [0.0, 2.0, 5.0, 12.0, 40.0, 150.0];
    rods.into_iter().flat_map(|rod| {
        (2..=12)
            .flat_map(move |half| [20.0, 35.0, 45.0, 60.0, 70.0].into_iter().map(move |angle| (rod, 2 * half, angle)))
    })
}

#[test]
fn lengths_scale_with_the_setting_to_the_last_bit() {
    for (rod, legs, angle) in spread() {
        let (one, two) = (taken(3.0, rod, 0.07, legs, angle), taken(6.0, 2.0 * rod, 0.07, legs, angle));
        assert_eq!((2.0 * one.working_mm).to_bits(), two.working_mm.to_bits());
        assert_eq!((2.0 * one.rise_mm).to_bits(), two.rise_mm.to_bits());
    }
}

#[test]
fn a_harder_cord_and_a_thicker_core_never_take_less() {
    for (rod, legs, angle) in spread() {
        let usual = taken(3.0, rod, 0.1, legs, angle).working_mm;
        assert!(taken(3.0, rod, 0.05, legs, angle).working_mm >= usual, "{rod} mm, {legs} legs, {angle} degrees");
        assert!(taken(3.0, rod + 1.0, 0.1, legs, angle).working_mm >= usual, "{rod} mm, {legs} legs, {angle} degrees");
    }
}

#[test]
fn thin_cords_on_a_thick_core_are_plain_helices() {
    for angle in [20.0, 45.0, 70.0_f64] {
        let taken = taken(0.1, 200.0, 0.0, 8, angle);
        let helix = taken.rise_mm / angle.to_radians().cos();
        assert!((taken.working_mm / helix - 1.0).abs() < 1e-4, "{angle}");
    }
}

#[test]
fn legs_as_close_as_they_go_take_a_fifth_more_than_their_helices() {
    // At 45 degrees legs cross squarely: 20.92 % more, Peirce's jammed cloth.
    let taken = taken(2.0, 0.0, 0.0, 12, 45.0);
    let part = taken.working_mm / taken.rise_mm * 45.0_f64.to_radians().cos();
    assert!((part - 1.2092).abs() < 0.000_1, "{part}");
}

#[test]
fn a_core_that_is_thinner_than_the_hollow_changes_nothing() {
    assert_eq!(taken(4.0, 0.0, 0.0, 16, 45.0), taken(4.0, 10.0, 0.0, 16, 45.0));
    assert!(taken(4.0, 40.0, 0.0, 16, 45.0).working_mm > taken(4.0, 0.0, 0.0, 16, 45.0).working_mm);
}

#[test]
fn four_legs_without_a_core_touch_in_the_middle() {
    // Two inner legs face each other: the middle of the weave is one cord away from the middle of the plait. At 45 degrees
    // legs drop as far as they go round, so two picks of four legs drop once round.
    let taken = taken(1.0, 0.0, 0.0, 4, 45.0);
    assert!((2.0 * taken.rise_mm - 2.0 * std::f64::consts::PI).abs() < 1e-12);
}

#[test]
fn an_odd_number_of_legs_is_refused_with_its_neighbours() {
    let words = |legs: u32| plaited(2.0, 0.0, 0.0, legs, 45.0).unwrap_err().words;
    assert_eq!(words(7), "7 legs can't be halved: a round plait has as many to the right as to the left. Take 6 or 8");
    assert!(words(23).ends_with("Take 22 or 24"), "{}", words(23));
}
