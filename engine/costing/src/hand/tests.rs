//! The laws of the model, on knots made up of a formula and on those of the catalogue.

use std::sync::Arc;

use proptest::prelude::*;
use reeve_catalogue::{Catalogue, Core, GIVE_RANGE, Source, Taken, USUAL_GIVE};
use reeve_measure::{Length, Time};

use super::cords::{CordFit, fit_cord};
use super::evidence::{Evidence, curve};
use super::group::Trust;
use super::odd::Fitted;
use super::pace::{Timed, fit_pace};
use super::*;
use crate::sample::{cord, knot};

/// What one knot takes and rises in a cord of some give, when every length shrinks as its cords' centres come closer.
fn soft(give: f64) -> Taken {
    formula(60.0 * (1.0 - give), 14.0 * (1.0 - give))
}

/// The same whatever the give.
fn stiff(_: f64) -> Taken {
    formula(60.0, 14.0)
}

fn formula(working: f64, rise: f64) -> Taken {
    let rise = Length::mm(rise);
    Taken { working: Length::mm(working), core: rise, rise, base: Time::s(9.0), draws: 1.0 }
}

/// Ten knots that took and rose so many times what a formula expects of a usual cord.
fn seen(name: &str, times: (f64, f64), expected: fn(f64) -> Taken) -> Evidence {
    seen_at(USUAL_GIVE, name, times, expected)
}

/// The same, of a cord of some give.
fn seen_at(give: f64, name: &str, times: (f64, f64), expected: fn(f64) -> Taken) -> Evidence {
    let taken = expected(give);
    let one = (taken.working * times.0, taken.rise * times.1);
    evidence(name, one, (one.0 * 10.0, one.1 * 10.0), expected)
}

/// What one knot took and rose, and what was measured for it.
fn evidence(name: &str, one: (Length, Length), measured: (Length, Length), expected: fn(f64) -> Taken) -> Evidence {
    let curve = curve(|give| Some(expected(give))).unwrap();
    Evidence::new(0, name, one, measured, [Trust::Firm(FACTOR_SD); 2], curve).unwrap()
}

fn fit(evidence: &[Evidence]) -> CordFit<'_> {
    fit_cord(USUAL_GIVE, &evidence.iter().collect::<Vec<_>>())
}

fn close(a: f64, b: f64, by: f64) {
    assert!((a - b).abs() <= by, "{a} is not {b}");
}

#[test]
fn without_samples_a_cord_is_as_stated() {
    let fit = fit(&[]);
    close(fit.give.mean, USUAL_GIVE, 1e-6);
    close(fit.give.sd, GIVE_SD, 1e-12);
    assert!(fit.knots.is_empty());
}

#[test]
fn a_sample_as_expected_moves_nothing_and_narrows_everything() {
    let seen = [seen("k", (1.0, 1.0), soft)];
    let fit = fit(&seen);
    close(fit.give.mean, USUAL_GIVE, 1e-5);
    assert!(fit.give.sd < GIVE_SD);
    for factor in fit.knots[0].factors() {
        close(factor.mean, 0.0, 1e-5);
        assert!(factor.sd < FACTOR_SD);
    }
}

#[test]
fn one_sample_moves_give_and_factor_less_than_half_way() {
    // A cord of give 0.14 in truth, and a knot that takes a tenth more than the formula.
    let give = fit(&[seen_at(0.14, "k", (1.0, 1.0), soft)]).give.mean;
    assert!(give > USUAL_GIVE && give < 0.12, "{give}");
    let factors = fit(&[seen("k", (1.1, 0.9), stiff)]).knots[0].factors();
    assert!(factors[0].mean > 0.0 && factors[0].mean < 1.1_f64.ln() / 2.0, "{factors:?}");
    assert!(factors[1].mean < 0.0 && factors[1].mean > 0.9_f64.ln() / 2.0, "{factors:?}");
}

#[test]
fn many_samples_win_over_what_was_held_before() {
    // Many knots of one soft cord: what they share is the give.
    let names: Vec<String> = (0..40).map(|at| format!("k{at:02}")).collect();
    let shared: Vec<Evidence> = names.iter().map(|name| seen_at(0.17, name, (1.0, 1.0), soft)).collect();
    close(fit(&shared).give.mean, 0.17, 0.006);
    // Many samples of one knot that gives nothing: what they share is the factor.
    let alike: Vec<Evidence> = (0..200).map(|_| seen("k", (1.2, 1.0), stiff)).collect();
    let factor = fit(&alike).knots[0].factors()[0];
    close(factor.mean, 1.2_f64.ln(), 0.003);
    assert!(factor.sd < 0.005, "{factor:?}");
}

#[test]
fn one_knot_improves_the_other_knots_of_its_cord() {
    let sampled = fit(&[seen_at(0.17, "k", (1.0, 1.0), soft)]).give;
    // Another knot in the same cord: the truth is what it takes at 0.17.
    let (truth, before, after) = (soft(0.17), soft(USUAL_GIVE), soft(sampled.mean));
    let [truth, before, after] = [truth, before, after].map(|taken| taken.working.as_mm());
    assert!((after - truth).abs() < (before - truth).abs() * 0.9, "{before} {after} {truth}");
}

#[test]
fn the_give_keeps_within_its_range() {
    let hard: Vec<Evidence> = (0..30).map(|at| seen(&format!("k{at:02}"), (1.3, 1.3), soft)).collect();
    close(fit(&hard).give.mean, GIVE_RANGE.0, 1e-9);
    let soft: Vec<Evidence> = (0..30).map(|at| seen(&format!("k{at:02}"), (0.7, 0.7), soft)).collect();
    close(fit(&soft).give.mean, GIVE_RANGE.1, 1e-9);
}

#[test]
fn a_short_sample_says_less_than_a_long_one() {
    let taken = stiff(0.1);
    let one = |knots: f64| {
        let (leg, made) = (taken.working * 1.1, taken.rise * 1.1);
        let measured = (leg * knots, made * knots);
        fit(&[evidence("k", (leg, made), measured, stiff)]).knots[0].factors()[0].mean
    };
    assert!(one(1.0) < one(10.0) * 0.8, "{} {}", one(1.0), one(10.0));
}

/// A square knot sample in the sums' own cord: ten knots that took a multiple of what the catalogue expects.
fn square(take_up: f64, rise: f64, minutes: Option<f64>) -> Sample {
    let mut sample = Sample {
        cord: cord(),
        knot: knot("square"),
        tied: 10,
        working: 2,
        core: Core::Legs { count: 2, diameter: cord().diameter },
        parameters: Vec::new(),
        before: Length::cm(150.0),
        after: Length::ZERO,
        made: Length::ZERO,
        time: minutes.map(Time::minutes),
        on: None,
        note: None,
    };
    let taken = sample.knot.taken(&sample.setting(USUAL_GIVE)).unwrap();
    sample.after = sample.before - taken.working * (10.0 * take_up);
    sample.made = taken.rise * (10.0 * rise);
    sample
}

fn tied(hand: &Hand) -> Tied {
    let sample = square(1.0, 1.0, None);
    hand.tie(&sample.cord, &sample.knot, &sample.setting(USUAL_GIVE)).unwrap()
}

#[test]
fn without_samples_a_knot_takes_what_the_catalogue_says_and_nothing_is_doubted() {
    let sample = square(1.0, 1.0, None);
    let tied = tied(&Hand::default());
    assert_eq!(tied.taken, sample.knot.taken(&sample.setting(USUAL_GIVE)).unwrap());
    assert_eq!((tied.doubt.working, tied.source), (Length::ZERO, TakeUpSource::Catalogue(Source::Geometry)));
}

#[test]
fn a_sampled_knot_takes_what_the_sample_says_in_part_and_names_it() {
    let (plain, mine) = (tied(&Hand::default()), tied(&Hand::of(&[square(1.1, 1.05, None)], 1.0)));
    let moved = (mine.taken.working / plain.taken.working, mine.taken.rise / plain.taken.rise);
    assert!(moved.0 > 1.04 && moved.0 < 1.05 && moved.1 > 1.02 && moved.1 < 1.025, "{moved:?}");
    close(mine.taken.core / plain.taken.core, moved.1, 1e-12);
    assert_eq!(mine.source, TakeUpSource::YourSample);
    let doubt = mine.doubt.working / mine.taken.working;
    assert!(doubt > 0.03 && doubt < FACTOR_SD, "{doubt}");
}

#[test]
fn other_cords_and_knots_that_give_nothing_are_left_alone() {
    let hand = Hand::of(&[square(1.1, 1.1, None)], 1.0);
    let sample = square(1.0, 1.0, None);
    let other = Cord { name: "other".to_owned(), ..Cord::clone(&sample.cord) };
    let tied = hand.tie(&other, &sample.knot, &sample.setting(USUAL_GIVE)).unwrap();
    assert_eq!(tied, self::tied(&Hand::default()));
}

#[test]
fn a_knot_that_profits_from_others_of_its_cord_says_so_and_is_doubted_more() {
    let give = Estimate { mean: 0.14, sd: 0.03 };
    let hand = Hand { cords: vec![CordHand { cord: cord(), give, samples: 2, firm: 2 }], ..Hand::default() };
    let tied =
        |expected: fn(f64) -> Taken| hand.tie_by(&cord(), "k", Source::Geometry, |give| Ok(expected(give))).unwrap();
    let by_hand = tied(soft);
    assert_eq!((by_hand.taken, by_hand.source), (soft(0.14), TakeUpSource::YourHand));
    // Every length shrinks by d ln(1 - g) for a change of give.
    let doubt = FACTOR_SD.hypot(0.03 / (1.0 - 0.14));
    close(by_hand.doubt.working / by_hand.taken.working, doubt, 1e-5);
    close(by_hand.doubt.rise / by_hand.taken.rise, doubt, 1e-5);
    // One that gives nothing is the catalogue's still, and the shop's allowance stands for it.
    assert_eq!(
        (tied(stiff).doubt.working, tied(stiff).source),
        (Length::ZERO, TakeUpSource::Catalogue(Source::Geometry))
    );
}

#[test]
fn a_cord_without_samples_gives_as_the_store_says() {
    let stated = Cord { give: Some(0.05), ..Cord::clone(&cord()) };
    let tied = Hand::default().tie_by(&stated, "k", Source::Geometry, |give| Ok(soft(give))).unwrap();
    assert_eq!((tied.taken, tied.doubt.working), (soft(0.05), Length::ZERO));
}

#[test]
fn an_odd_sample_is_named_and_not_counted() {
    let samples = [square(1.02, 1.0, None), square(1.6, 1.0, None), square(0.99, 1.01, None)];
    let hand = Hand::of(&samples, 1.0);
    assert_eq!((hand.odd.len(), hand.odd[0].at, hand.odd[0].figure), (1, 1, SampleFigure::TakeUp));
    let (expected, got) = (hand.odd[0].expected, hand.odd[0].got);
    close(got / expected, 1.6, 0.03);
    assert_eq!(hand.knots, Hand::of(&[samples[0].clone(), samples[2].clone()], 1.0).knots);
}

#[test]
fn odd_samples_that_bear_each_other_out_are_counted() {
    let odd = square(1.4, 1.3, None);
    assert_eq!(Hand::of(std::slice::from_ref(&odd), 1.0).odd.len(), 1);
    let hand = Hand::of(&[odd.clone(), odd.clone(), odd.clone(), odd], 1.0);
    assert!(hand.odd.is_empty());
    close(hand.knots[0].take_up.mean, 1.4_f64.ln() * 4.0 / 5.0, 0.01);
}

/// Work of several knots with so much of each sort of time, made at this pace and pull.
fn timed(base: f64, pull: f64, (a, b): (f64, f64)) -> Timed {
    let took = a * base + b * pull;
    Timed { at: 0, knot: None, trust: Trust::Firm(0.0), knots: 10.0, base, pull, doubt: 0.0, took }
}

fn pace_and_pull(shop: f64, runs: &[Timed]) -> (Estimate, Estimate) {
    fit_pace(shop, &runs.iter().collect::<Vec<_>>()).pace_and_pull()
}

#[test]
fn pace_and_pull_are_found_again_in_made_up_times() {
    let runs: Vec<Timed> =
        (1..60).map(|at| timed(40.0 * f64::from(at), 2400.0 - 40.0 * f64::from(at), (1.3, 0.7))).collect();
    let (pace, pull) = pace_and_pull(1.0, &runs);
    close(pace.mean, 1.3, 0.05);
    close(pull.mean, 0.7, 0.05);
}

#[test]
fn without_timed_samples_the_pace_is_the_shops() {
    let (pace, pull) = pace_and_pull(1.2, &[]);
    close(pace.mean, 1.2, 1e-12);
    close(pace.sd, 0.3, 1e-12);
    close(pull.mean, 1.2, 1e-12);
    assert_eq!(Hand::of(&[square(1.0, 1.0, None)], 1.2).pace, None);
}

#[test]
fn a_sample_at_the_shops_pace_leaves_it_there() {
    // Nothing is counted twice: at a pace of 1.2 a sample that took 1.2 times the catalogue's time says 1.2 again.
    let mut sample = square(1.0, 1.0, Some(1.0));
    let catalogue = Timed::of(0, &sample).unwrap();
    sample.time = Some(Time::s((catalogue.base + catalogue.pull) * 1.2));
    let pace = Hand::of(&[sample], 1.2).pace.unwrap();
    close(pace.pace.mean, 1.2, 1e-9);
    close(pace.pull.mean, 1.2, 1e-9);
    assert!(pace.pace.sd < 0.3 && pace.pull.sd < 0.6);
}

#[test]
fn a_slow_sample_takes_longer_knot_by_knot_as_the_take_off_does() {
    // Ten square knots: 9 s each, and 1.5 s for each metre hanging below, two legs drawn twice.
    let sample = square(1.0, 1.0, Some(4.0));
    let take_up = sample.take_up().as_m();
    let hanging: f64 = (1..=10).map(|knot| 1.5 - take_up * f64::from(knot)).sum();
    let timed = Timed::of(0, &sample).unwrap();
    close(timed.base, 90.0, 1e-9);
    close(timed.pull, 1.5 * 4.0 * hanging, 1e-9);
}

#[test]
fn an_odd_time_is_left_out_and_the_lengths_are_counted() {
    let samples = [square(1.0, 1.0, Some(2.6)), square(1.0, 1.0, Some(2.8)), square(1.0, 1.0, Some(28.0))];
    let hand = Hand::of(&samples, 1.0);
    assert_eq!((hand.odd.len(), hand.odd[0].at, hand.odd[0].figure), (1, 2, SampleFigure::Time));
    assert_eq!((hand.pace.unwrap().samples, hand.knots[0].samples), (2, 3));
}

#[test]
fn a_tightened_knot_learns_the_same_in_any_order() {
    let drawn = Catalogue::embedded().find("square").cloned().unwrap();
    let sample = |take_up: f64, rise: f64| {
        let plain = square(1.0, 1.0, None);
        let taken = drawn.taken(&plain.setting(USUAL_GIVE)).unwrap();
        Sample {
            knot: Arc::clone(&drawn),
            after: plain.before - taken.working * (10.0 * take_up),
            made: taken.rise * (10.0 * rise),
            ..plain
        }
    };
    let (one, two, three) = (sample(0.92, 0.95), sample(1.03, 1.0), sample(0.97, 1.02));
    let here = Hand::of(&[one.clone(), two.clone(), three.clone()], 1.0);
    let there = Hand::of(&[three, one, two], 1.0);
    close(here.cords[0].give.mean, there.cords[0].give.mean, 1e-5);
    close(here.knots[0].take_up.mean, there.knots[0].take_up.mean, 1e-4);
}

proptest! {
    #[test]
    fn fits_are_finite_and_within_their_ranges(
        seen in prop::collection::vec((0_u32..3, 0.3..3.0_f64, 0.3..3.0_f64, any::<bool>()), 0..12),
        stated in 0.0..=0.2_f64,
    ) {
        let mut evidence: Vec<Evidence> = seen
            .iter()
            .map(|(name, take_up, rise, is_soft)| {
                self::seen(&format!("k{name}"), (*take_up, *rise), if *is_soft { soft } else { stiff })
            })
            .collect();
        evidence.sort_by(|a, b| a.knot.cmp(&b.knot));
        let fit = fit_cord(stated, &evidence.iter().collect::<Vec<_>>());
        prop_assert!(fit.give.mean >= GIVE_RANGE.0 && fit.give.mean <= GIVE_RANGE.1);
        prop_assert!(fit.give.sd > 0.0 && fit.give.sd <= GIVE_SD + 1e-12);
        for factor in fit.knots.iter().flat_map(KnotFit::factors) {
            prop_assert!(factor.mean.is_finite() && factor.sd > 0.0 && factor.sd < FACTOR_SD);
        }
    }

    #[test]
    fn one_sample_never_swings_a_knot_further_than_it_lies_off(take_up in 0.7..1.4_f64, rise in 0.7..1.4_f64, is_soft: bool) {
        let formula: fn(f64) -> Taken = if is_soft { soft } else { stiff };
        let seen = [seen("k", (take_up, rise), formula)];
        let fit = fit(&seen);
        let (before, after) = (formula(USUAL_GIVE), formula(fit.give.mean));
        let swung = ((after.working / before.working).ln() + fit.knots[0].factors()[0].mean)
            .hypot((after.rise / before.rise).ln() + fit.knots[0].factors()[1].mean);
        prop_assert!(swung <= take_up.ln().hypot(rise.ln()) + 1e-6);
    }

    #[test]
    fn the_more_a_sample_took_the_more_its_knot_takes(less in 0.7..1.3_f64, more in 0.01..0.3_f64, others in 0_usize..4) {
        let taken = |take_up: f64| {
            let mut evidence: Vec<Evidence> = (0..others).map(|_| seen("k", (1.0, 1.0), soft)).collect();
            evidence.push(seen("k", (take_up, 1.0), soft));
            let fit = fit(&evidence);
            soft(fit.give.mean).working.as_mm() * fit.knots[0].factors()[0].mean.exp()
        };
        prop_assert!(taken(less + more) > taken(less));
    }

    #[test]
    fn the_order_of_samples_does_not_matter(
        samples in prop::collection::vec((0.8..1.3_f64, 0.8..1.3_f64, prop::option::of(1.5..6.0_f64)), 1..7),
        turn in 0_usize..7,
    ) {
        let samples: Vec<Sample> = samples.into_iter().map(|(take_up, rise, time)| square(take_up, rise, time)).collect();
        let mut turned = samples.clone();
        turned.rotate_left(turn % samples.len());
        turned.reverse();
        let (one, other) = (Hand::of(&samples, 1.1), Hand::of(&turned, 1.1));
        prop_assert_eq!(one.odd.len(), other.odd.len());
        let (one_tied, other_tied) = (tied(&one), tied(&other));
        // To the last bit: sums are made in an order of their own.
        prop_assert_eq!(one_tied, other_tied);
        prop_assert_eq!((one.pace, one.times), (other.pace, other.times));
    }

    #[test]
    fn a_quick_bench_is_never_less_than_nothing(times in prop::collection::vec((0.0..500.0_f64, 1.0..500.0_f64, 0.1..900.0_f64), 1..9)) {
        let runs: Vec<Timed> = times.iter().map(|(base, pull, took)| Timed { took: *took, ..timed(*base, *pull, (1.0, 1.0)) }).collect();
        let (pace, pull) = pace_and_pull(1.0, &runs);
        prop_assert!(pace.mean > 0.0 && pull.mean > 0.0 && pace.mean.is_finite() && pull.mean.is_finite());
        prop_assert!(pace.sd <= pace.mean * PACE_SD + 1e-12 && pull.sd <= pull.mean * PULL_SD + 1e-12);
    }

    #[test]
    fn a_surprise_grows_with_how_far_a_sample_lies_off(off in 0.01..0.5_f64, more in 0.01..0.5_f64) {
        let near = fit(&[]).of_other(&seen("k", (off.exp(), 1.0), soft));
        let far = fit(&[]).of_other(&seen("k", ((off + more).exp(), 1.0), soft));
        prop_assert!(far.deviations > near.deviations);
    }
}
