//! The Turk's head by its laws, and what it refuses.

#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
#![allow(clippy::disallowed_methods, reason = "a test reckons by the standard library")]

use std::f64::consts::FRAC_1_SQRT_2;

use reeve_kit::{Core, Knot, Refusal, Setting, Taken};
use woven::TurksHead;
use woven::band::Band;

/// Leads, bights, passes and length, on a rod.
fn tied(cord: f64, rod: f64, give: f64, values: [f64; 4]) -> Result<Taken, Refusal> {
    let mut setting = Setting::of::<TurksHead>(cord, &values).on_rod(rod);
    setting.give = give;
    TurksHead::take(&setting)
}

fn cord_of(cord: f64, rod: f64, give: f64, values: [f64; 4]) -> Option<f64> {
    tied(cord, rod, give, values).ok().map(|taken| taken.working_mm)
}

/// Every knot of a spread of leads, bights, passes and lengths.
fn spread() -> impl Iterator<Item = [f64; 4]> {
    let leads = [2.0, 3.0, 4.0, 5.0, 7.0, 11.0, 17.0];
    let bights = [2.0, 3.0, 4.0, 5.0, 7.0, 8.0, 9.0, 11.0, 13.0, 16.0];
    let of_bights = move |leads| bights.into_iter().map(move |bights| (leads, bights));
    leads.into_iter().flat_map(of_bights).flat_map(|(leads, bights)| {
        [1.0, 2.0, 3.0, 5.0].into_iter().flat_map(move |passes| {
            [0.0, 30.0, 60.0, 150.0, 400.0].into_iter().map(move |length| [leads, bights, passes, length])
        })
    })
}

#[test]
fn lengths_scale_with_the_setting_to_the_last_bit() {
    for values in spread() {
        let [leads, bights, passes, length] = values;
        let one = tied(3.0, 33.3, 0.07, values);
        let two = tied(6.0, 66.6, 0.07, [leads, bights, passes, 2.0 * length]);
        match (one, two) {
            (Ok(one), Ok(two)) => {
                assert_eq!((2.0 * one.working_mm).to_bits(), two.working_mm.to_bits(), "{values:?}");
                assert_eq!((2.0 * one.rise_mm).to_bits(), two.rise_mm.to_bits(), "{values:?}");
            }
            (one, two) => assert_eq!(one.is_err(), two.is_err(), "{values:?}"),
        }
    }
}

#[test]
fn a_harder_cord_never_takes_less() {
    let mut checked = 0;
    for values in spread() {
        for (hard, soft) in [(0.0, 0.01), (0.05, 0.1), (0.1, 0.2)] {
            let both = cord_of(3.0, 40.0, hard, values).zip(cord_of(3.0, 40.0, soft, values));
            if let Some((hard, soft)) = both {
                assert!(hard >= soft, "{values:?}: {hard} < {soft}");
                checked += 1;
            }
        }
    }
    assert!(checked > 1000, "{checked}");
}

#[test]
fn more_of_what_grows_never_takes_less() {
    let mut checked = 0;
    for values in spread() {
        for (at, more) in [(0, 1.0), (0, 2.0), (0, 3.0), (1, 1.0), (1, 2.0), (1, 3.0), (2, 1.0), (3, 25.0)] {
            let mut grown = values;
            grown[at] += more;
            for rod in [20.0, 40.0, 120.0] {
                let both = cord_of(3.0, rod, 0.05, values).zip(cord_of(3.0, rod, 0.05, grown));
                if let Some((less, more)) = both {
                    assert!(more >= less, "on {rod}: {values:?} takes {less}, {grown:?} {more}");
                    checked += 1;
                }
            }
        }
    }
    assert!(checked > 1000, "{checked}");
}

#[test]
fn a_thicker_thing_never_takes_less_while_legs_lie_flatter_than_they_climb() {
    // Steeper than 45 degrees a knot drawn tight gets longer than wide: a thicker thing then lets it draw in.
    for values in spread() {
        let band = Band::new((values[0], values[1], values[2]), 3.0, 0.0, 40.0);
        if band.tight_sine() < FRAC_1_SQRT_2 {
            let both = cord_of(3.0, 40.0, 0.0, values).zip(cord_of(3.0, 41.0, 0.0, values));
            assert!(both.is_none_or(|(thin, thick)| thick >= thin), "{values:?}: {both:?}");
        }
    }
}

#[test]
fn it_covers_the_length_that_is_asked_for() {
    for values in spread().filter(|values| values[3] > 0.0) {
        if let Ok(taken) = tied(3.0, 40.0, 0.05, values) {
            assert!((taken.rise_mm - values[3]).abs() < 1e-9, "{values:?}: {}", taken.rise_mm);
            assert_eq!(taken.rise_mm.to_bits(), taken.core_mm.to_bits());
        }
    }
}

#[test]
fn on_legs_and_on_a_rod_of_their_girth_it_is_the_same() {
    let values = [3.0, 5.0, 2.0, 0.0];
    let mut on_legs = Setting::of::<TurksHead>(2.0, &values);
    on_legs.core = Core::Legs { count: 7, mm: 4.0 };
    on_legs.core_mm = 12.0;
    assert_eq!(TurksHead::take(&on_legs).unwrap(), tied(2.0, 12.0, 0.0, values).unwrap());
}

#[test]
fn leads_and_bights_of_several_cords_are_refused_with_some_that_do() {
    let refusal = tied(2.0, 100.0, 0.0, [6.0, 9.0, 1.0, 0.0]).unwrap_err();
    assert_eq!(refusal.parameter, Some("bights"));
    assert_eq!(
        refusal.words,
        "6 leads and 9 bights can both be divided by 3: that takes 3 cords, and a turk's head is one. Take 7 or 11 bights \
         with 6 leads, or 5 or 7 leads with 9 bights"
    );
    for (leads, bights) in [(6.0, 7.0), (6.0, 11.0), (5.0, 9.0), (7.0, 9.0)] {
        tied(2.0, 100.0, 0.0, [leads, bights, 1.0, 0.0]).unwrap();
    }
}

#[test]
fn too_many_bights_are_refused_with_the_most_that_fit() {
    let refusal = tied(4.0, 15.0, 0.0, [3.0, 5.0, 3.0, 0.0]).unwrap_err();
    assert_eq!(refusal.parameter, Some("bights"));
    assert_eq!(
        refusal.words,
        "5 bights are too many for the girth of the thing: 3 leads find room with 4 bights at most. Take fewer bights or \
         passes, a thinner cord or a thicker thing"
    );
    tied(4.0, 15.0, 0.0, [3.0, 4.0, 3.0, 0.0]).unwrap();
    let refusal = tied(20.0, 4.0, 0.0, [3.0, 5.0, 5.0, 0.0]).unwrap_err();
    assert!(refusal.words.contains("3 leads find no room at all"), "{}", refusal.words);
}

#[test]
fn a_length_that_is_too_short_is_refused_with_the_least() {
    let refusal = tied(3.0, 30.0, 0.0, [3.0, 5.0, 1.0, 10.0]).unwrap_err();
    assert_eq!(refusal.parameter, Some("length"));
    assert!(refusal.words.contains("10.0 mm is too short: drawn tight it covers 11.0 mm"), "{}", refusal.words);
    tied(3.0, 30.0, 0.0, [3.0, 5.0, 1.0, 11.0]).unwrap();
}

#[test]
fn what_is_refused_is_said_in_the_room_there_is() {
    for values in spread() {
        for rod in [1.0, 8.0, 30.0, 100.0] {
            if let Err(refusal) = tied(5.0, rod, 0.0, values) {
                assert!(refusal.words.len() < reeve_kit::abi::WORDS, "{}", refusal.words);
            }
        }
    }
}

#[test]
fn the_angle_is_the_covered_length_turned_round() {
    let band = Band::new((5.0, 7.0, 2.0), 3.0, 0.1, 40.0);
    for angle in [0.2, 0.5, 0.8, 1.1, 1.4] {
        assert!((band.angle_for(band.covered(angle)) - angle).abs() < 1e-12, "{angle}");
    }
}

#[test]
fn opened_a_little_it_never_takes_less_than_tight() {
    // Sixteen leads of five passes on a thick bundle of thin legs: here the weave alone would win some back.
    let band = Band::new((16.0, 9.0, 5.0), 0.1, 0.17, 7.25);
    let tight = band.tight_sine().asin();
    assert!(band.cord_at(tight + 0.001) < band.cord_at(tight));
    let cord = |length| cord_of(0.1, 7.25, 0.17, [16.0, 9.0, 5.0, length]).unwrap();
    let mut length = (band.covered(tight) * 10.0).ceil() / 10.0;
    while length < 8.0 {
        assert!(cord(length) >= cord(0.0) && cord(length + 0.1) >= cord(length), "{length}");
        length += 0.1;
    }
}

#[test]
fn more_than_one_piece_of_cord_is_refused() {
    let refusal = tied(1.0, 250.0, 0.0, [17.0, 64.0, 5.0, 1900.0]).unwrap_err();
    assert!(refusal.words.starts_with("it takes 1216 m of cord, and one piece is at most 500 m."), "{}", refusal.words);
}
