//! The monkey's fist against published amounts and by its laws.

#![allow(clippy::disallowed_methods, reason = "a test reckons by the standard library")]
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use std::f64::consts::{PI, TAU};

use monkeys_fist::MonkeysFist;
use monkeys_fist::ball::Fist;
use monkeys_fist::ellipse::perimeter;
use reeve_kit::{Knot, Refusal, Setting, Taken};

fn tied(cord: f64, give: f64, passes: f64, ball: f64) -> Result<Taken, Refusal> {
    let values = [passes, ball];
    let mut setting = Setting::of::<MonkeysFist>(cord, &values);
    setting.give = give;
    MonkeysFist::take(&setting)
}

fn cord_of(cord: f64, give: f64, passes: f64, ball: f64) -> Option<f64> {
    tied(cord, give, passes, ball).ok().map(|taken| taken.working_mm)
}

/// Every number of passes with balls that it takes and some that it doesn't.
fn spread() -> impl Iterator<Item = (f64, f64)> {
    (2..=9).flat_map(|passes| (0..60).map(move |ball| (f64::from(passes), f64::from(ball))))
}

#[test]
fn a_wooden_ball_takes_most_of_the_published_line_and_not_more() {
    // Pawson, Des Pawson's Knot Craft, 2nd ed. 2009, p. 83, light pulls: "3.5m of 4mm line will cover a 36mm diam wooden ball
    // with 7 passes", "2m of 4mm line will cover a 24mm diam wooden ball with 5 passes". Both have two ends to work with and
    // to draw up by, so that ours may be less, but neither more nor little.
    for (line, ball, passes) in [(3500.0, 36.0, 7.0), (2000.0, 24.0, 5.0)] {
        for give in [0.0, 0.1] {
            let part = tied(4.0, give, passes, ball).unwrap().working_mm / line;
            assert!((0.6..=1.0).contains(&part), "{ball} mm: {part}");
        }
        // "Will cover": between the shell on which the bands lie side by side and that which they just cover.
        let fist = Fist { passes, cord: 4.0, rise: 4.0, ball };
        assert!(fist.shell() >= Fist::least_shell(fist.width()), "{ball} mm");
        assert!(fist.shell() <= Fist::covered_shell(fist.width()), "{ball} mm");
    }
}

#[test]
fn key_rings_and_door_stops_take_over_half_of_the_published_rope() {
    // The same, p. 85: "1 table tennis ball, 4m of 6mm rope will cover with 5 passes"; lead and yarn of "100-115mm in
    // diameter", "8m of 18mm rope, will cover with 4 passes". Both have a loop in the middle and two tails that are heaved
    // by, so less goes into the turns. A table tennis ball is 40 mm (Laws of Table Tennis, 2.3.1, from memory).
    for (line, cord, ball, passes) in [(4000.0, 6.0, 40.0, 5.0), (8000.0, 18.0, 100.0, 4.0), (8000.0, 18.0, 115.0, 4.0)]
    {
        let part = tied(cord, 0.05, passes, ball).unwrap().working_mm / line;
        assert!((0.5..=0.8).contains(&part), "{ball} mm: {part}");
    }
}

#[test]
fn an_ellipse_is_as_long_as_its_chords() {
    for (a, b) in [(1.0, 1.0), (1.2, 1.0), (3.0, 1.0), (10.0, 1.0)] {
        let at = |step: i32| (f64::from(step) * TAU / 20_000.0).sin_cos();
        let chord = |step: i32| {
            let ((y0, x0), (y1, x1)) = (at(step), at(step + 1));
            (a * (x1 - x0)).hypot(b * (y1 - y0))
        };
        let chords: f64 = (0..20_000).map(chord).sum();
        assert!((perimeter(a, b) / chords - 1.0).abs() < 1e-6, "{a}, {b}");
        assert_eq!(perimeter(a, b).to_bits(), perimeter(b, a).to_bits());
    }
    assert!((perimeter(1.0, 1.0) - TAU).abs() < 1e-15);
}

#[test]
fn on_a_large_ball_each_turn_is_a_circle() {
    // Two thin passes close to the middle of their bands.
    let fist = Fist { passes: 2.0, cord: 0.001, rise: 0.001, ball: 100.0 };
    assert!((fist.cord() / (6.0 * PI * 100.0) - 1.0).abs() < 1e-4);
}

#[test]
fn the_usual_ball_is_covered_to_the_corners() {
    // Each corner is equally far from the middle of all three bands: half a width of a band.
    for passes in 2..=9 {
        let width = 4.0 * f64::from(passes);
        let corner = Fist::covered_shell(width) / 3.0_f64.sqrt();
        assert!((corner - width / 2.0).abs() < 1e-12);
        let fist = tied(4.0, 0.0, f64::from(passes), 0.0).unwrap();
        assert!((fist.rise_mm - (2.0 * Fist::covered_shell(width) + 8.0)).abs() < 1e-9);
    }
}

#[test]
fn lengths_scale_with_the_setting_to_the_last_bit() {
    for (passes, ball) in spread() {
        match (tied(3.1, 0.07, passes, ball), tied(6.2, 0.07, passes, 2.0 * ball)) {
            (Ok(one), Ok(two)) => {
                assert_eq!((2.0 * one.working_mm).to_bits(), two.working_mm.to_bits());
                assert_eq!((2.0 * one.rise_mm).to_bits(), two.rise_mm.to_bits());
            }
            (one, two) => assert_eq!(one.is_err(), two.is_err()),
        }
    }
}

#[test]
fn a_harder_cord_a_larger_ball_and_more_passes_never_take_less() {
    let mut checked = 0;
    for (passes, ball) in spread() {
        let Some(usual) = cord_of(4.0, 0.1, passes, ball) else { continue };
        assert!(cord_of(4.0, 0.05, passes, ball).is_none_or(|more| more >= usual), "{passes} passes on {ball}");
        assert!(cord_of(4.0, 0.1, passes + 1.0, ball).is_none_or(|more| more >= usual), "{passes} passes on {ball}");
        if ball > 0.0 {
            assert!(
                cord_of(4.0, 0.1, passes, ball + 0.5).is_none_or(|more| more >= usual),
                "{passes} passes on {ball}"
            );
        }
        checked += 1;
    }
    assert!(checked > 50, "{checked}");
}

#[test]
fn a_ball_that_is_too_small_is_refused_with_what_would_do() {
    let refusal = tied(4.0, 0.0, 7.0, 24.0).unwrap_err();
    assert_eq!(refusal.parameter, Some("ball"));
    assert_eq!(
        refusal.words,
        "a ball of 24.0 mm is too small for 7 passes of this cord, which need 31.6 mm at least. Take a larger ball, at most 5 \
         passes, or 0 for the largest that is covered"
    );
    tied(4.0, 0.0, 7.0, 31.6).unwrap();
    tied(4.0, 0.0, 7.0, 31.5).unwrap_err();
    tied(4.0, 0.0, 5.0, 24.0).unwrap();
    tied(4.0, 0.0, 6.0, 24.0).unwrap_err();
}

#[test]
fn a_ball_that_shows_through_is_refused_with_what_would_do() {
    let refusal = tied(4.0, 0.0, 3.0, 24.0).unwrap_err();
    assert_eq!(
        refusal.words,
        "a ball of 24.0 mm shows through 3 passes of this cord, which cover 17.9 mm at most. Take a smaller ball, at least 4 \
         passes, or 0 for the largest that is covered"
    );
    tied(4.0, 0.0, 3.0, 17.9).unwrap();
    tied(4.0, 0.0, 3.0, 18.0).unwrap_err();
    tied(4.0, 0.0, 4.0, 24.0).unwrap();
    assert!(tied(1.0, 0.0, 9.0, 300.0).unwrap_err().words.contains("a thicker cord"));
}

#[test]
fn what_is_refused_is_said_in_the_room_there_is() {
    for (passes, ball) in spread() {
        for cord in [0.1, 3.0, 100.0] {
            if let Err(refusal) = tied(cord, 0.0, passes, ball) {
                assert!(refusal.words.len() < reeve_kit::abi::WORDS, "{}", refusal.words);
            }
        }
    }
}
