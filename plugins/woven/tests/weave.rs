//! The section of a plain weave against what is published of it.

#![allow(clippy::disallowed_methods, reason = "a test reckons by the standard library")]

use std::f64::consts::{FRAC_PI_2, FRAC_PI_3, FRAC_PI_4};

use woven::weave::{Mesh, closest, over_under};

/// The crimp of the closest square cloth of round threads: "Fabric Geometry" at
/// business.vsnl.com/balasubramanian/YarnCloth.html, after Peirce, J. Text. Inst. 28, 1937, T45.
const JAMMED_CRIMP: f64 = 0.2092;

#[test]
fn the_closest_square_cloth_has_the_published_crimp() {
    let spacing = closest(1.0);
    let crimp = over_under(spacing, 1.0) / spacing - 1.0;
    assert!((crimp - JAMMED_CRIMP).abs() < 0.000_05, "{crimp}");
}

#[test]
fn there_a_cord_is_all_arcs_of_sixty_degrees() {
    assert!((over_under(closest(1.0), 1.0) - 2.0 * FRAC_PI_3).abs() < 1e-7);
}

#[test]
fn far_apart_a_cord_is_nearly_straight() {
    for spacing in [20.0, 200.0, 2000.0] {
        let more = over_under(spacing, 1.0) - spacing;
        // A straight line that climbs one rise would take 1 / (2 x spacing) more; arcs at both ends take more than that.
        assert!(more > 0.5 / spacing && more < 1.0 / spacing, "{spacing}: {more}");
    }
}

#[test]
fn closer_cords_take_more_of_their_spacing() {
    let part = |spacing: f64| over_under(spacing, 1.0) / spacing;
    let mut spacing = closest(1.0);
    while spacing < 10.0 {
        assert!(part(spacing) > part(spacing + 0.1), "{spacing}");
        spacing += 0.1;
    }
}

#[test]
fn a_square_mesh_is_the_section_itself() {
    let mesh = Mesh { spacing: 3.0, flat: 0.5, rise: 1.0, crossing: FRAC_PI_2 };
    assert!((mesh.length() - 0.5 - over_under(2.5, 1.0)).abs() < 1e-12);
}

#[test]
fn cords_without_thickness_make_a_rhombus() {
    let mesh = Mesh { spacing: 3.0, flat: 0.0, rise: 1e-9, crossing: FRAC_PI_4 };
    assert!((mesh.length() - 3.0 / FRAC_PI_4.sin()).abs() < 1e-6);
}

#[test]
fn a_mesh_is_longer_than_its_flat_side_and_shorter_than_the_way_round_it() {
    for crossing in [0.2, 0.6, 1.0, FRAC_PI_2, 2.0, 2.8] {
        let mesh = Mesh { spacing: 2.0, flat: 0.0, rise: 1.0, crossing };
        let side = mesh.spacing / crossing.sin();
        assert!(mesh.length() > side && mesh.length() < side + 1.0, "{crossing}: {}", mesh.length());
    }
}
