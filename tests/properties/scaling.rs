//! Lengths grow as the cord does.

use proptest::prelude::*;
use reeve_costing::takeoff::{Doing, TakeOff};
use reeve_measure::Length;
use reeve_shop::Answer;
use reeve_tests::TestShop;

use crate::cases;
use crate::random::{Design, designs};

/// What one piece of a design needs, all its lengths so many times as long.
fn take_off(design: &Design, scale: f64) -> TakeOff {
    let shop = TestShop::none();
    shop.write("shop/shop.toml", RATES);
    shop.write("shop/store/cords.toml", design.cord(0, scale));
    shop.write("shop/store/fittings.toml", design.fittings(0, scale));
    shop.write("shop/designs/design-0.toml", design.text(0, scale));
    let Answer { value: open, mut faults } = shop.open();
    let found = open.design("design-0", &reeve_shop::Choice::default()).noted(&mut faults);
    let faults: Vec<String> = faults.iter().map(|fault| fault.render(false)).collect();
    TakeOff::clone(&found.unwrap_or_else(|| panic!("{}", faults.join("\n"))).take_off)
}

/// The least a shop needs.
pub(crate) const RATES: &str = r#"
    shop = { name = "Scales", currency = "EUR" }
    tax = { prices = "not-registered" }
    pay = { wage = "20.00" }
    overhead = { of-labour = "10 %" }
    bench = { cutting = { allowance = "5 %", step = "1 mm" } }
    price = { margin = "10 %" }
    terms = { valid-days = 30 }
"#;

/// Take-up and rise of the knots, step by step.
fn knots(take_off: &TakeOff) -> Vec<(String, Length, Length)> {
    let lines = take_off.steps.iter().filter_map(|step| match &step.doing {
        Doing::Knots(line) => Some((line.name.clone(), line.take_up, line.rise)),
        _ => None,
    });
    lines.collect()
}

fn legs(take_off: &TakeOff) -> Vec<(String, Length)> {
    take_off.legs.iter().map(|line| (line.set.clone(), line.length)).collect()
}

/// Whether one length is so many times the other, to a ten-millionth: lengths are typed to a tenth of a micrometre.
fn times(long: Length, short: Length, factor: f64) -> bool {
    (long / short / factor - 1.0).abs() < 1e-6
}

proptest! {
    #![proptest_config(cases(64))]

    #[test]
    fn twice_the_cord_and_fittings_take_twice_the_leg_in_every_knot(design in designs()) {
        let (thin, thick) = (knots(&take_off(&design, 1.0)), knots(&take_off(&design, 2.0)));
        prop_assert_eq!(thin.len(), thick.len());
        for ((name, thin_leg, thin_rise), (_, thick_leg, thick_rise)) in thin.iter().zip(&thick) {
            prop_assert!(times(*thick_leg, *thin_leg, 2.0), "take-up of {}", name);
            prop_assert!(times(*thick_rise, *thin_rise, 2.0), "rise of {}", name);
        }
    }

    #[test]
    fn a_piece_twice_as_large_in_all_has_legs_twice_as_long(design in designs()) {
        for ((set, short), (_, long)) in legs(&take_off(&design, 1.0)).iter().zip(&legs(&take_off(&design, 2.0))) {
            prop_assert!(times(*long, *short, 2.0), "legs of {}", set);
        }
    }

    #[test]
    fn more_knots_never_take_less_leg(design in designs()) {
        let more = Design { times: design.times + 1, ..design.clone() };
        for ((set, short), (_, long)) in legs(&take_off(&design, 1.0)).iter().zip(&legs(&take_off(&more, 1.0))) {
            prop_assert!(long >= short, "legs of {}", set);
        }
    }

    #[test]
    fn a_cut_is_no_shorter_than_its_legs_and_its_fold_lies_within(design in designs()) {
        let take_off = take_off(&design, 1.0);
        for line in &take_off.cords {
            let cut = reeve_measure::count(line.cut_mm);
            prop_assert!(cut >= line.net.as_mm(), "{}", line.group);
            // 5 % on top, and up to one step more.
            prop_assert!(cut <= line.net.as_mm() * 1.05 + 1.001, "{}", line.group);
            if let Some(fold) = &line.fold {
                prop_assert!(fold.at > Length::ZERO && fold.at.as_mm() < cut, "{}", line.group);
            }
        }
    }

    #[test]
    fn a_fold_gives_either_leg_its_length(design in designs()) {
        let take_off = take_off(&design, 1.0);
        let line = &take_off.cords[0];
        let fold = line.fold.as_ref().unwrap();
        let first = fold.from.as_deref().unwrap_or("worker");
        let length = |set: &str| legs(&take_off).into_iter().find(|(name, _)| name == set).unwrap().1;
        let other = if first == "worker" { "filler" } else { "worker" };
        let rest = Length::mm(reeve_measure::count(line.cut_mm)) - fold.at;
        prop_assert!(fold.at >= length(first) * (1.0 - 1e-9) && rest >= length(other) * (1.0 - 1e-9));
    }

    #[test]
    fn more_pieces_never_take_less_time(design in designs(), pieces in 1_u32..50) {
        let take_off = take_off(&design, 1.0);
        prop_assert!(take_off.time_of(pieces + 1) >= take_off.time_of(pieces));
        prop_assert!(take_off.time_of(1).as_s() > 0.0);
    }
}
