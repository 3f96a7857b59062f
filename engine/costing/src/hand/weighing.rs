//! How evidence weighs: by its source, once for each work, in whatever order, and how much work that is.

use std::cell::Cell;
use std::sync::Arc;

use proptest::prelude::*;
use reeve_catalogue::{Source, USUAL_GIVE};
use reeve_measure::{Length, Time};

use super::cords::fit_cord;
use super::evidence::{Curves, Evidence};
use super::odd::{Fitted, set_aside};
use super::pace::{Timed, fit_pace};
use super::*;
use crate::sample::{cord, knot};

/// What moves of other knots count as next to nothing, as a share: what a guess may do to them at most.
const HARDLY: f64 = 0.02;

/// A knot as the square knot is, by another name, with all its figures from one sort of source.
fn sourced(name: &str, source: Source) -> Arc<Knot> {
    let mut own = Knot::clone(&knot("square"));
    own.name = name.to_owned();
    own.working.note.source = source;
    own.time.note.source = source;
    own.rise.iter_mut().for_each(|rise| rise.note.source = source);
    Arc::new(own)
}

/// Ten knots that took, rose and lasted so many times what their file says.
fn tried(knot: &Arc<Knot>, take_up: f64, rise: f64, time: Option<f64>) -> Sample {
    let mut sample = Sample {
        cord: cord(),
        knot: Arc::clone(knot),
        tied: 10,
        working: 2,
        core: Core::Legs { count: 2, diameter: cord().diameter },
        parameters: Vec::new(),
        before: Length::cm(400.0),
        after: Length::ZERO,
        made: Length::ZERO,
        time: None,
        on: None,
        note: None,
    };
    let taken = knot.taken(&sample.setting(USUAL_GIVE)).unwrap();
    sample.after = sample.before - taken.working * (10.0 * take_up);
    sample.made = taken.rise * (10.0 * rise);
    sample.time = time.map(|times| {
        let timed = Timed::of(0, &Sample { time: Some(Time::s(1.0)), ..sample.clone() }).unwrap();
        Time::s((timed.base + timed.pull) * times)
    });
    sample
}

/// Lengths and seconds of one knot, as they are priced: what pulls one metre is counted with what does not depend on it.
fn figures(hand: &Hand, knot: &Arc<Knot>, shop: f64) -> [f64; 3] {
    let sample = tried(knot, 1.0, 1.0, None);
    let taken = hand.tie(&sample.cord, knot, &sample.setting(USUAL_GIVE)).unwrap().taken;
    let (pace, pull) = hand.pace.map_or((shop, shop), |pace| (pace.pace.mean, pace.pull.mean));
    let seconds = (taken.base.as_s() * pace + knot.time.pull * taken.draws * pull) * libm::exp(hand.time_of(knot).mean);
    [taken.working.as_mm(), taken.rise.as_mm(), seconds]
}

fn moved(before: [f64; 3], after: [f64; 3]) -> [f64; 3] {
    [0, 1, 2].map(|at| libm::log(after[at] / before[at]))
}

fn close(a: f64, b: f64, by: f64) {
    assert!((a - b).abs() <= by, "{a} is not {b}");
}

#[test]
fn a_time_that_was_guessed_wrong_is_the_knots_own_affair() {
    // Ten seconds guessed, and three samples of twenty-four.
    let (own, other) = (sourced("own", Source::FromMemory), knot("half"));
    let samples = [(); 3].map(|()| tried(&own, 1.0, 1.0, Some(1.1 * 2.4)));
    let hand = Hand::of(&samples, 1.1);
    assert!(hand.odd.is_empty());
    let pace = hand.pace.unwrap();
    close(libm::log(pace.pace.mean / 1.1), 0.0, GUESS_MOVES);
    close(libm::log(pace.pull.mean / 1.1), 0.0, GUESS_MOVES);
    let plain = Hand::default();
    close(moved(figures(&plain, &own, 1.1), figures(&hand, &own, 1.1))[2], libm::log(2.4), 0.05);
    close(moved(figures(&plain, &other, 1.1), figures(&hand, &other, 1.1))[2], 0.0, HARDLY);
    // How far hours stray is next to unmoved as well.
    close(pace.pace.sd / pace.pace.mean, PACE_SD, PACE_SD * 0.04);
}

#[test]
fn two_samples_alike_are_believed_against_a_guess() {
    let own = sourced("own", Source::FromMemory);
    for many in [2, 3] {
        let samples = vec![tried(&own, 1.5, 0.7, Some(2.0)); many];
        let hand = Hand::of(&samples, 1.0);
        assert!(hand.odd.is_empty(), "{:?}", hand.odd);
        let [take_up, rise, time] = moved(figures(&Hand::default(), &own, 1.0), figures(&hand, &own, 1.0));
        close(take_up, libm::log(1.5), 0.05);
        close(rise, libm::log(0.7), 0.05);
        close(time, libm::log(2.0), 0.1);
    }
}

#[test]
fn one_sample_moves_a_guess_nearly_all_the_way_and_a_measured_figure_less_than_half() {
    let moves = |source: Source| {
        let own = sourced("own", source);
        let hand = Hand::of(&[tried(&own, 1.08, 1.08, Some(1.2))], 1.0);
        assert!(hand.odd.is_empty());
        let knot = &hand.knots[0];
        let (length, time) = (libm::log(1.08), libm::log(1.2));
        [knot.take_up.mean / length, knot.rise.mean / length, hand.times[0].time.mean / time]
    };
    for firm in [Source::Geometry, Source::Published, Source::YourSample] {
        assert!(moves(firm).iter().all(|share| *share > 0.0 && *share < 0.5), "{firm:?} {:?}", moves(firm));
    }
    let usual = moves(Source::CommonPractice);
    assert!(usual[..2].iter().all(|share| *share > 0.5 && *share < 0.9) && usual[2] > 0.3, "{usual:?}");
    let guessed = moves(Source::FromMemory);
    assert!(guessed.iter().all(|share| *share > 0.85 && *share < 1.0), "{guessed:?}");
}

#[test]
fn samples_against_measured_figures_say_of_what_is_shared() {
    let shared = |source: Source| {
        let samples: Vec<Sample> =
            ["a", "b", "c"].map(|name| tried(&sourced(name, source), 0.96, 0.96, Some(1.3))).to_vec();
        let hand = Hand::of(&samples, 1.0);
        // Their legs are long: it is pulling that takes the time.
        (hand.cords[0].firm, hand.pace.unwrap().pull.mean)
    };
    let (firm, pull) = shared(Source::Published);
    assert!(firm == 3 && pull > 1.15, "{firm} {pull}");
    let (firm, pull) = shared(Source::FromMemory);
    assert!(firm == 0 && pull > 1.02 && pull < 1.05, "{firm} {pull}");
}

#[test]
fn an_odd_sample_of_a_guess_lies_further_off_than_one_of_geometry() {
    let odd = |source: Source, times: f64| Hand::of(&[tried(&sourced("own", source), times, 1.0, None)], 1.0).odd.len();
    assert_eq!((odd(Source::Geometry, 1.4), odd(Source::CommonPractice, 1.4), odd(Source::FromMemory, 1.4)), (1, 0, 0));
    assert_eq!((odd(Source::CommonPractice, 1.7), odd(Source::FromMemory, 2.8)), (1, 0));
    assert_eq!(odd(Source::FromMemory, 4.0), 1);
}

/// Finished work of so many minutes, a fifth of them pulling, that went at this pace.
fn work(number: &str, minutes: f64, pace: f64) -> TimedWork {
    TimedWork {
        number: number.to_owned(),
        step: None,
        on: None,
        knot: None,
        base: Time::minutes(minutes * 0.8),
        pull: Time::minutes(minutes * 0.2),
        doubt: 0.2,
        took: Time::minutes(minutes * pace),
    }
}

#[test]
fn a_makers_pace_is_found_again_in_her_finished_work() {
    let works: Vec<TimedWork> = (1..=40).map(|at| work(&format!("{at}"), 40.0 * f64::from(at), 1.4)).collect();
    let pace = |many: usize| Hand::with_works(&[], &works[..many], 1.0).pace.unwrap();
    let errors: Vec<f64> = [1, 4, 40].iter().map(|many| (pace(*many).pace.mean - 1.4).abs()).collect();
    assert!(errors[0] < 0.3 && errors[1] < 0.13 && errors[2] < 0.04, "{errors:?}");
    assert!(errors.is_sorted_by(|a, b| a > b));
    assert_eq!((pace(4).works, pace(4).samples), (4, 0));
    assert!(pace(40).pace.sd < pace(4).pace.sd && pace(4).pace.sd < pace(1).pace.sd);
}

#[test]
fn a_step_of_one_guessed_knot_teaches_that_knot() {
    let own = sourced("own", Source::FromMemory);
    let step =
        TimedWork { step: Some("Tie".to_owned()), knot: Some(Arc::clone(&own)), doubt: 0.0, ..work("1", 100.0, 2.4) };
    let hand = Hand::with_works(&[], &[step], 1.0);
    assert_eq!((hand.times[0].works, hand.times[0].samples), (1, 0));
    close(hand.times[0].time.mean, libm::log(2.4), 0.1);
    close(libm::log(hand.pace.unwrap().pace.mean), 0.0, GUESS_MOVES);
}

#[test]
fn an_odd_work_is_told_by_its_place() {
    let works = [work("1", 100.0, 1.1), work("2", 300.0, 9.0), work("3", 200.0, 1.0)];
    let hand = Hand::with_works(&[], &works, 1.0);
    assert_eq!((hand.odd_works, hand.pace.unwrap().works), (vec![1], 2));
}

/// What the sums say of all but one is what fitting all but that one says.
#[test]
fn one_left_out_by_its_sums_is_one_left_out_by_fitting_anew() {
    let (square, half, own) = (knot("square"), knot("half"), sourced("own", Source::FromMemory));
    let tries = [(&square, 1.03, 1.3), (&square, 0.97, 1.1), (&half, 1.05, 0.9), (&own, 1.4, 2.0), (&own, 1.5, 1.7)];
    let mut samples: Vec<Sample> = tries.map(|(knot, length, time)| tried(knot, length, length, Some(time))).to_vec();
    samples.iter_mut().zip([50.0, 400.0, 90.0, 60.0, 300.0]).for_each(|(sample, cm)| {
        sample.before += Length::cm(cm);
        sample.after += Length::cm(cm);
    });
    let mut curves = Curves::default();
    let mut lengths: Vec<Evidence> =
        samples.iter().enumerate().filter_map(|(at, sample)| Evidence::of(at, sample, &mut curves)).collect();
    lengths.sort_by(Evidence::order);
    let mut times: Vec<Timed> = samples.iter().enumerate().filter_map(|(at, sample)| Timed::of(at, sample)).collect();
    times.push(Timed::of_work(9, &work("1", 100.0, 1.2)).unwrap());
    times.sort_by(Timed::order);
    compare(&lengths, |kept| fit_cord(USUAL_GIVE, kept), 0.02);
    compare(&times, |kept| fit_pace(1.1, kept), 0.02);
}

fn compare<'a, T, F: Fitted<T>>(all: &'a [T], fit: impl Fn(&[&'a T]) -> F, by: f64) {
    let whole = fit(&all.iter().collect::<Vec<_>>());
    for at in 0..all.len() {
        let others: Vec<&T> = all.iter().enumerate().filter(|(other, _)| *other != at).map(|(_, one)| one).collect();
        let (quick, anew) = (whole.of_counted(at), fit(&others).of_other(&all[at]));
        close(quick.deviations, anew.deviations, by);
        close(quick.expected / anew.expected, 1.0, by);
        assert_eq!(quick.figure, anew.figure);
    }
}

/// Ten times the samples take a few fits more, not ten times as many.
#[test]
fn contradicting_samples_are_parted_in_few_fits() {
    let square = knot("square");
    let fits = |many: u32| {
        let samples: Vec<Sample> = (0..many)
            .map(|at| {
                tried(
                    &square,
                    0.75 + 0.06 * f64::from(at % 13),
                    0.8 + 0.05 * f64::from(at % 11),
                    Some(0.4 + 0.1 * f64::from(at % 37)),
                )
            })
            .collect();
        let mut curves = Curves::default();
        let all: Vec<Evidence> =
            samples.iter().enumerate().filter_map(|(at, sample)| Evidence::of(at, sample, &mut curves)).collect();
        let count = Cell::new(0_usize);
        let (kept, odd) = set_aside(&all, |kept| {
            count.set(count.get() + kept.len());
            fit_cord(USUAL_GIVE, kept)
        });
        assert_eq!(kept.len() + odd.len(), samples.len());
        assert!(!odd.is_empty() && !kept.is_empty(), "{} kept of {many}", kept.len());
        count.get() / samples.len()
    };
    // Samples fitted for each sample given: the sum of a falling row, whatever their number.
    for many in [60, 300, 1500] {
        let each = fits(many);
        assert!(each < 40, "{many} samples: each was fitted {each} times");
    }
}

proptest! {
    /// However often it was sampled, and however far it lies off, a knot whose own figures were guesses moves no other
    /// knot by more than a fiftieth in length or time.
    #[test]
    fn a_guess_moves_no_other_knot(
        times in (0.34..3.0_f64, 0.34..3.0_f64, 0.1..10.0_f64),
        many in 1_usize..12,
        others in prop::collection::vec((0.93..1.07_f64, prop::option::of(0.8..1.3_f64)), 0..5),
        works in prop::collection::vec(0.7..1.5_f64, 0..4),
    ) {
        let (square, half, own) = (knot("square"), knot("half"), sourced("own", Source::FromMemory));
        let mut samples: Vec<Sample> =
            others.iter().map(|(length, time)| tried(&square, *length, *length, *time)).collect();
        let works: Vec<TimedWork> =
            works.iter().enumerate().map(|(at, pace)| work(&at.to_string(), 100.0, *pace)).collect();
        let before = Hand::with_works(&samples, &works, 1.1);
        samples.extend(vec![tried(&own, times.0, times.1, Some(times.2)); many]);
        let after = Hand::with_works(&samples, &works, 1.1);
        // Whatever was odd of the others stays so, or this is about something else.
        let odd = |hand: &Hand| hand.odd.iter().map(|odd| odd.at).filter(|at| *at < others.len()).collect::<Vec<_>>();
        prop_assume!(odd(&before) == odd(&after) && before.odd_works == after.odd_works);
        for other in [&square, &half] {
            let moved = moved(figures(&before, other, 1.1), figures(&after, other, 1.1));
            prop_assert!(moved.iter().all(|by| by.abs() <= HARDLY), "{} {moved:?}", other.name);
        }
    }

    #[test]
    fn the_order_of_works_does_not_matter(
        paces in prop::collection::vec((20.0..400.0_f64, 0.5..2.5_f64), 1..12), turn in 0_usize..12,
    ) {
        let works: Vec<TimedWork> =
            paces.iter().enumerate().map(|(at, (minutes, pace))| work(&at.to_string(), *minutes, *pace)).collect();
        let mut turned = works.clone();
        turned.rotate_left(turn % works.len());
        turned.reverse();
        let (one, other) = (Hand::with_works(&[], &works, 1.0), Hand::with_works(&[], &turned, 1.0));
        prop_assert_eq!(one.pace, other.pace);
        prop_assert_eq!(one.odd_works.len(), other.odd_works.len());
    }
}
