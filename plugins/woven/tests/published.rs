//! Turk's heads and braids against what others have published, each with its source beside it.

#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
#![allow(clippy::disallowed_methods, reason = "a test reckons by the standard library")]

use std::f64::consts::PI;

use reeve_catalogue as catalogue;
use reeve_kit::{Core, Knot, Setting, Taken};
use reeve_measure::Length;
use woven::{RoundPlait, TurksHead};

fn turks_head(cord: f64, rod: f64, give: f64, values: [f64; 4]) -> Taken {
    let mut setting = Setting::of::<TurksHead>(cord, &values).on_rod(rod);
    setting.give = give;
    TurksHead::take(&setting).unwrap()
}

fn plait(cord: f64, rod: f64, legs: u32, angle: f64) -> Taken {
    let values = [angle];
    let mut setting = Setting::of::<RoundPlait>(cord, &values);
    setting.working = legs;
    if rod > 0.0 {
        (setting.core, setting.core_mm) = (Core::Rod(rod), rod);
    }
    RoundPlait::take(&setting).unwrap()
}

#[test]
fn a_line_without_thickness_is_the_published_hypotenuse() {
    // "A Mathematical Discussion of the Single Line Turk's Head Knot", goldenknots.com/math1.html, 1999: each segment is the
    // hypotenuse over the width and half as many bights as there are leads; a knot of 5 leads and 11 bights has 11 up and
    // 11 down. Its line has no thickness and ours a two-thousandth of the rod's.
    for (leads, bights) in [(5.0, 11.0), (3.0, 4.0), (4.0, 3.0), (17.0, 16.0)] {
        let (rod, width, cord) = (200.0, 300.0, 0.1);
        let share: f64 = PI * rod * (leads / 2.0) / bights;
        let published = 2.0 * bights * share.hypot(width);
        let ours = turks_head(cord, rod, 0.0, [leads, bights, 1.0, width]).working_mm;
        assert!((ours / published - 1.0).abs() < 0.002, "{leads} leads, {bights} bights: {ours} is not {published}");
    }
}

#[test]
fn knots_take_about_one_fifth_more_than_so_many_turns() {
    // Philpott, The Ultimate Book of Decorative Knots, p. 383: leads x circumference x passes x 1.2, found by trial, said of
    // a quintupled knot of 5 leads and 4 bights on the rim of a wheel, and with "a little to spare" to be added. One factor
    // for all knots leaves out bights and the thickness of the cord; over cords from a fifteenth to a tenth of the thing
    // ours runs from just below his to a fifth above.
    let mut factors = Vec::new();
    for (cord, values) in [
        (2.0, [5.0, 4.0, 5.0, 0.0]),
        (2.0, [3.0, 4.0, 3.0, 0.0]),
        (2.0, [3.0, 5.0, 2.0, 0.0]),
        (3.0, [4.0, 5.0, 2.0, 0.0]),
        (3.0, [3.0, 5.0, 3.0, 0.0]),
        (3.0, [7.0, 6.0, 1.0, 0.0]),
    ] {
        for give in [0.0, 0.1] {
            let turns = PI * 30.0 * values[0] * values[2];
            factors.push(turks_head(cord, 30.0, give, values).working_mm / turns);
        }
    }
    assert!(factors.iter().all(|factor| (1.14..=1.44).contains(factor)), "{factors:?}");
    let mean = factors.iter().sum::<f64>() / 12.0;
    assert!((mean / 1.2 - 1.0).abs() < 0.1, "{mean}");
}

#[test]
fn a_tripled_knot_of_four_leads_takes_a_dozen_slack_turns_and_a_bit() {
    // Pawson, Des Pawson's Knot Craft, 2nd ed. 2009, p. 66: for a Turk's head of 4 leads and 5 bights, followed round three
    // times, on the rim of a wheel, in line of 3 mm (p. 64): "a dozen slack turns round the rim and add a bit". He gives no
    // thickness of the rim; these are common ones. Slack and a bit are taken as at most two fifths.
    for rim in [25.0, 30.0, 38.0] {
        let dozen = 12.0 * PI * (rim + 3.0);
        let part = turks_head(3.0, rim, 0.1, [4.0, 5.0, 3.0, 0.0]).working_mm / dozen;
        assert!((1.0..=1.4).contains(&part), "{rim} mm: {part}");
    }
}

#[test]
fn picks_and_angle_of_a_braid_on_a_core_are_the_cable_makers() {
    // "Shield Coverage and Resistance", cmcorporation.com: tan a = 2 pi (D + 2d) P / C, with D under the shield, strands of
    // d, P picks to the unit of length and C carriers. DIFFERENCE: there the mean diameter is D + 2d, to the middle of the
    // outer layer; ours is D + d + the rise, which is the same for a cord that gives nothing.
    for (core, cord, legs, angle) in [(20.0, 2.0, 8, 45.0_f64), (30.0, 1.0, 16, 30.0), (12.0, 1.5, 6, 60.0)] {
        let picks = 1.0 / plait(cord, core, legs, angle).rise_mm;
        let tangent = 2.0 * PI * (core + 2.0 * cord) * picks / f64::from(legs);
        assert!((tangent / angle.to_radians().tan() - 1.0).abs() < 1e-12, "{tangent}");
    }
}

#[test]
fn a_hollow_braid_of_many_legs_covers_as_much_as_the_closest_square_cloth() {
    // The same page: coverage 2 F - F^2 with F = P d / sin a. In a hollow plait legs lie as close as in Peirce's jammed
    // cloth, whose threads cover 1 / sqrt 3 of each direction (business.vsnl.com/balasubramanian/YarnCloth.html: spacing
    // 0.866 x 2 d).
    let fill = 1.0 / plait(1.0, 0.0, 16, 45.0).rise_mm / 45.0_f64.to_radians().sin();
    assert!((fill - 1.0 / (0.866 * 2.0)).abs() < 0.000_1, "{fill}");
    assert!((2.0 * fill - fill * fill - 0.8214).abs() < 0.000_2);
}

#[test]
fn four_legs_are_the_tightened_plait_of_the_catalogue() {
    // Not printed anywhere, but found in another way: the catalogue tightens tubes along the path of its round plait of
    // four. At the same rise ours may be a twelfth longer: there legs cut the corners that here lie on a cylinder.
    let knots = catalogue::Catalogue::embedded();
    let knot = knots.find("four-strand-round-plait").unwrap();
    let core = catalogue::Core::Legs { count: 0, diameter: Length::ZERO };
    let setting = catalogue::Setting { cord: Length::mm(1.0), working: 4, core, give: 0.0, parameters: &[] };
    let taken = knot.taken(&setting).unwrap();
    let (their_cord, their_rise) = (taken.working.as_mm(), taken.rise.as_mm());
    // A round of four legs is two picks. At 41.25 degrees they rise alike.
    let ours = plait(1.0, 0.0, 4, 41.25);
    assert!((2.0 * ours.rise_mm / their_rise - 1.0).abs() < 0.01, "{} is not {their_rise}", 2.0 * ours.rise_mm);
    let part = 2.0 * ours.working_mm / their_cord;
    assert!((1.0..=1.0 + 1.0 / 12.0).contains(&part), "{part}");
}
