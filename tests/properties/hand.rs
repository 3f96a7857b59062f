//! Samples of every sort: what they make of a take-off.

use std::fmt::Write;

use proptest::prelude::*;
use reeve_catalogue::{Catalogue, Core, Setting, Taken, USUAL_GIVE};
use reeve_costing::takeoff::{Doing, TakeOff};
use reeve_measure::Length;
use reeve_shop::Answer;
use reeve_tests::TestShop;

use crate::cases;
use crate::random::{Design, designs};

/// A sample: how many were tied, and what each took and rose against the catalogue.
#[derive(Debug, Clone)]
struct Tried {
    knot: &'static str,
    tied: u32,
    take_up: f64,
    rise: f64,
    /// Seconds of each knot.
    seconds: Option<f64>,
}

fn tried() -> impl Strategy<Value = Tried> {
    let knot = prop_oneof![Just("square"), Just("half"), Just("alternating-half-hitches")];
    (knot, 3_u32..30, 1.0..2.8_f64, 1.0..1.5_f64, prop::option::of(1.0..200.0_f64))
        .prop_map(|(knot, tied, take_up, rise, seconds)| Tried { knot, tied, take_up, rise, seconds })
}

/// What one takes in a cord, round two core legs.
fn expected(knot: &str, cord: Length) -> Taken {
    let core = Core::Legs { count: 2, diameter: cord };
    let catalogue = Catalogue::embedded();
    let knot = catalogue.find(knot).unwrap();
    let setting = Setting { cord, working: knot.working.legs.0, core, give: USUAL_GIVE, parameters: &[] };
    knot.taken(&setting).unwrap()
}

fn text(samples: &[Tried], cord: &str, diameter: f64) -> String {
    let mut text = String::new();
    for one in samples {
        let taken = expected(one.knot, Length::mm(diameter));
        let tied = f64::from(one.tied);
        let gone = taken.working.as_mm() * one.take_up * tied;
        let made = (taken.rise.as_mm() * one.rise * tied).max(1.0);
        let Tried { knot, tied, .. } = one;
        write!(text, "[[sample]]\ncord = \"{cord}\"\nknot = \"{knot}\"\ntied = {tied}\ncore = 2\n").unwrap();
        write!(text, "before = \"{:.4} mm\"\nafter = \"100 mm\"\nmade = \"{made:.4} mm\"\n", gone + 100.0).unwrap();
        if let Some(seconds) = one.seconds {
            writeln!(text, "minutes = {:.4}", seconds * f64::from(*tied) / 60.0).unwrap();
        }
    }
    text
}

/// What one piece of a design needs in a shop with these samples.
fn take_off(design: &Design, samples: &[Tried]) -> TakeOff {
    let shop = TestShop::none();
    shop.write("shop/shop.toml", crate::scaling::RATES);
    let cords = design.cord(0, 1.0);
    let cord = cords.lines().find_map(|line| line.strip_prefix("name = \"")).unwrap().trim_end_matches('"').to_owned();
    shop.write("shop/knots/samples.toml", text(samples, &cord, design.diameter));
    shop.write("shop/store/cords.toml", cords);
    shop.write("shop/store/fittings.toml", design.fittings(0, 1.0));
    shop.write("shop/designs/design-0.toml", design.text(0, 1.0));
    let Answer { value: open, mut faults } = shop.open();
    let found = open.design("design-0", &reeve_shop::Choice::default()).noted(&mut faults);
    let faults: Vec<String> = faults.iter().map(|fault| fault.render(false)).collect();
    TakeOff::clone(&found.unwrap_or_else(|| panic!("{}", faults.join("\n"))).take_off)
}

fn take_ups(take_off: &TakeOff) -> Vec<Length> {
    let lines = take_off.steps.iter().filter_map(|step| match &step.doing {
        Doing::Knots(line) => Some(line.take_up),
        _ => None,
    });
    lines.collect()
}

proptest! {
    #![proptest_config(cases(64))]

    #[test]
    fn whatever_the_samples_a_cord_is_cut_long_enough(design in designs(), samples in prop::collection::vec(tried(), 0..6)) {
        let (plain, sampled) = (take_off(&design, &[]), take_off(&design, &samples));
        for line in &sampled.cords {
            let cut = reeve_measure::count(line.cut_mm);
            // 5 % is the shop's allowance. What samples leave open is never more than an eighth of what knots take.
            prop_assert!(cut >= line.net.as_mm() * 1.05 - 0.001 && cut <= line.net.as_mm() * 1.125 + 1.001, "{}", line.group);
        }
        for step in &sampled.steps {
            prop_assert!(step.time.of(1).as_s().is_finite() && step.time.of(1).as_s() >= 0.0);
        }
        // Where no sample took or rose less than the catalogue says, no knot comes to take less.
        for (plain, sampled) in take_ups(&plain).iter().zip(take_ups(&sampled)) {
            prop_assert!(sampled >= *plain * 0.999_999, "{plain:?} {sampled:?}");
        }
    }
}
