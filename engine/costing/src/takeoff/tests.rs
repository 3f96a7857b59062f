//! The take-off against sums done by hand.

use std::f64::consts::PI;
use std::sync::Arc;

use reeve_measure::{Length, Time};
use rust_decimal::Decimal;

use super::{ChoreKind, Doing, PieceFault, TakeOff, take_off};
use crate::basis::Basis;
use crate::hand::{COVER, CordHand, Estimate, Hand, KnotHand, KnotTimeHand, PaceHand, TakeUpSource};
use crate::piece::{Part, Shared, Step, TailEnd, Task, Tie, Work};
use crate::risk::ThreePoint;
use crate::sample::{cord, hang, knot, piece, plain, step, tail, tie};

/// A square knot over two legs of 4 mm: a turn round the flat pair and one round the other leg.
const SQUARE: f64 = (2.0 * 4.0 + 2.0 * PI * 4.0) + 2.0 * PI * 4.0;
/// Its rise: the root of 3 diameters for each half, as the catalogue writes it.
const RISE: f64 = 3.4641 * 4.0;
/// A lark's head on a rod of 5 mm: seven eighths of a turn, and half of a bar of 3 diameters.
const HEAD: f64 = 0.875 * PI * (5.0 + 4.0) + 1.5 * 4.0;

fn square(times: u32, columns: u32) -> Tie {
    Tie { times, columns: Some(columns), ..tie("square", &[0], &[1]) }
}

fn taken(cords: u32, steps: Vec<Step>) -> TakeOff {
    take_off(&piece(cords, steps), &plain()).unwrap()
}

fn refused(cords: u32, steps: Vec<Step>) -> Vec<PieceFault> {
    take_off(&piece(cords, steps), &plain()).unwrap_err()
}

fn close(length: Length, mm: f64) {
    assert!((length.as_mm() - mm).abs() < 1e-6, "{} mm is not {mm} mm", length.as_mm());
}

#[test]
fn uneven_legs_are_summed_and_the_fold_is_between_them() {
    let take_off = taken(4, vec![hang(0, &[0, 1]), step(Work::Tie(square(10, 2))), tail(20.0, &[0, 1])]);
    let (worker, filler) = (HEAD + 10.0 * SQUARE + 200.0, HEAD + 10.0 * RISE + 200.0);
    close(take_off.legs[0].length, worker);
    close(take_off.legs[1].length, filler);
    let cut = &take_off.cords[0];
    assert_eq!((cut.count, cut.cut_mm), (4, 1183));
    let fold = cut.fold.as_ref().unwrap();
    assert_eq!(fold.from.as_deref(), Some("worker"));
    close(fold.at, 1183.0 * worker / (worker + filler));
}

#[test]
fn the_finished_piece_weighs_what_is_left_in_it() {
    let mut steps = vec![hang(0, &[0, 1]), tail(20.0, &[0])];
    steps.push(step(Work::Tail { length: Length::cm(30.0), legs: vec![1], end: TailEnd::Flush }));
    let take_off = taken(2, steps);
    // Two cords of two heads and the plain tail at 8 g/m, and the ring; the flush tail is cut but not left.
    let grams = 2.0 * (2.0 * HEAD + 200.0) / 1000.0 * 8.0 + 10.0;
    assert!((take_off.weight.as_g() - grams).abs() < 1e-9);
    close(take_off.cords[0].net, 2.0 * HEAD + 500.0);
}

#[test]
fn legs_that_change_places_share_what_all_of_them_take() {
    let shared = Some(Shared { core_legs: None });
    let tie = Tie { shared, columns: Some(2), times: 3, ..tie("square", &[0, 1], &[0, 1]) };
    let take_off = taken(4, vec![hang(0, &[0, 1]), step(Work::Tie(tie)), tail(5.0, &[0, 1])]);
    let each = (2.0 * SQUARE + 2.0 * RISE) / 4.0 * 3.0;
    close(take_off.legs[0].length, HEAD + each + 50.0);
    close(take_off.legs[1].length, HEAD + each + 50.0);
}

#[test]
fn resting_legs_run_past_the_knots() {
    let shared = Some(Shared { core_legs: Some(2) });
    let tie = Tie { shared, columns: Some(1), ..tie("square", &[0, 1], &[0, 1]) };
    let take_off = taken(4, vec![hang(0, &[0, 1]), step(Work::Tie(tie)), tail(5.0, &[0, 1])]);
    let all = 2.0 * SQUARE + 2.0 * RISE + 4.0 * RISE;
    close(take_off.legs[0].length, HEAD + all / 8.0 + 50.0);
}

#[test]
fn a_row_takes_its_rise_of_the_leader_for_each_leg() {
    // One worker of each of 6 cords over the filler legs in two leaders would not be a row of one leader: take two.
    let tie = Tie { columns: Some(2), ..tie("double-half-hitch", &[0], &[1]) };
    let take_off = taken(2, vec![hang(0, &[0, 1]), step(Work::Tie(tie)), tail(5.0, &[0, 1])]);
    // Each worker: two turns round the leader, climbing a diameter, and two diameters across.
    let hitch = 2.0 * (2.0 * PI * 4.0).hypot(4.0) + 2.0 * 4.0;
    close(take_off.legs[0].length, HEAD + hitch + 50.0);
    close(take_off.legs[1].length, HEAD + 2.4 * 4.0 + 50.0);
}

#[test]
fn legs_alongside_run_as_far_as_the_knots_carry_the_work() {
    let mut past = step(Work::Tie(Tie { times: 5, ..tie("half-hitch", &[0], &[1]) }));
    past.alongside = Vec::new();
    let take_off = taken(1, vec![hang(0, &[0, 1]), past, tail(5.0, &[0, 1])]);
    close(take_off.legs[1].length, HEAD + 5.0 * 1.8 * 4.0 + 50.0);
}

#[test]
fn early_knots_on_long_legs_take_longer() {
    let run = |tail_cm: f64| {
        let take_off = taken(2, vec![hang(0, &[0, 1]), step(Work::Tie(square(10, 1))), tail(tail_cm, &[0, 1])]);
        take_off.steps[1].time.of(1).as_s()
    };
    // Ten knots, two legs drawn twice each, 1.5 s for a metre: 60 s for each metre of tail more.
    assert!((run(120.0) - run(20.0) - 60.0).abs() < 1e-6);
    // Base 9 s a knot; below the k-th knot (10 - k) knots and 20 cm still hang.
    let hanging: f64 = (1..=10).map(|k| (10.0 - f64::from(k)) * SQUARE / 1000.0 + 0.2).sum();
    assert!((run(20.0) - (90.0 + 1.5 * 4.0 * hanging)).abs() < 1e-6);
}

#[test]
fn counts_of_knots_and_places_are_told() {
    let take_off = taken(4, vec![hang(0, &[0, 1]), step(Work::Tie(square(10, 2))), tail(5.0, &[0, 1])]);
    let Doing::Knots(knots) = &take_off.steps[1].doing else { panic!("the step ties") };
    assert_eq!((knots.count, knots.columns, knots.times), (20, 2, 10));
}

#[test]
fn what_does_not_divide_is_refused_with_what_it_needs() {
    let titles = |cords, tie: Tie| -> Vec<String> {
        let steps = vec![hang(0, &[0, 1]), step(Work::Tie(tie)), tail(5.0, &[0, 1])];
        refused(cords, steps).into_iter().map(|fault| fault.title).collect()
    };
    assert_eq!(titles(4, square(1, 3)), ["4 working legs (worker) don't divide over 3 columns"]);
    assert_eq!(titles(4, square(1, 1)), ["1 column of 2 working legs need 2 legs, and the sets given have 4"]);
    assert_eq!(
        titles(4, Tie { columns: None, ..tie("overhand", &[0], &[]) }),
        ["an overhand knot over these legs can be laid out in more than one way"]
    );
    assert_eq!(
        titles(4, Tie { shared: Some(Shared { core_legs: None }), columns: Some(3), ..tie("square", &[0], &[1]) }),
        ["3 columns of 2 working and 0 core legs need 6 legs, and the sets given have 8"]
    );
}

#[test]
fn a_ring_has_only_so_much_room() {
    // 14 heads of 3 diameters of 4 mm are 168 mm; the inner edge of the ring is 157 mm.
    let faults = refused(14, vec![hang(0, &[0, 1]), tail(5.0, &[0, 1])]);
    assert_eq!(faults[0].title, "14 lark's heads on `ring` need 168 mm side by side");
    assert_eq!(faults[0].label, "it has room for 157 mm");
}

#[test]
fn a_leg_must_hang_before_it_ties_and_one_slip_is_one_fault() {
    let titles: Vec<String> = refused(4, vec![step(Work::Tie(square(1, 2))), tail(5.0, &[0, 1])])
        .into_iter()
        .map(|fault| fault.title)
        .collect();
    assert_eq!(titles, ["`worker` is not hung yet"]);
    let never = refused(4, Vec::new());
    assert_eq!(never[0].title, "the cords of `arms` never join the work");
}

#[test]
fn legs_without_a_tail_are_remarked_on() {
    let take_off = taken(4, vec![hang(0, &[0, 1]), tail(5.0, &[0])]);
    assert_eq!(take_off.remarks.len(), 1);
    assert_eq!(take_off.remarks[0].title, "the legs of `filler` have no tail");
}

/// A bench whose samples say of these knots: the factor on take-up, and the spread of both factors.
fn sampled(knots: &[(&str, f64, f64)]) -> Basis {
    let knot_hand = |(name, factor, sd): &(&str, f64, f64)| KnotHand {
        cord: cord(),
        knot: knot(name),
        take_up: Estimate { mean: factor.ln(), sd: *sd },
        rise: Estimate { mean: 0.0, sd: *sd },
        samples: 1,
    };
    let give = Estimate { mean: 0.1, sd: 0.0 };
    let cords = vec![CordHand { cord: cord(), give, samples: knots.len(), firm: knots.len() }];
    Basis { hand: Hand { cords, knots: knots.iter().map(knot_hand).collect(), ..Hand::default() }, ..plain() }
}

fn sennits(times: u32) -> Vec<Step> {
    vec![hang(0, &[0, 1]), step(Work::Tie(square(times, 2))), step(Work::Tie(square(times, 2))), tail(20.0, &[0, 1])]
}

#[test]
fn a_sampled_knot_takes_its_own_leg_and_says_so() {
    let take_off = take_off(&piece(4, sennits(5)), &sampled(&[("square", 1.1, 0.0)])).unwrap();
    close(take_off.legs[0].length, HEAD + 10.0 * SQUARE * 1.1 + 200.0);
    let Doing::Knots(knots) = &take_off.steps[1].doing else { panic!("the step ties") };
    close(knots.take_up, SQUARE * 1.1);
    assert_eq!(knots.source, TakeUpSource::YourSample);
}

#[test]
fn what_samples_leave_open_is_cut_on_top_where_it_is_more_than_the_allowance() {
    let basis = sampled(&[("square", 1.0, 0.04)]);
    let plain = taken(4, sennits(5)).cords[0].clone();
    let line = take_off(&piece(4, sennits(5)), &basis).unwrap().cords[0].clone();
    // All the square knots of a leg err together: twice five of them, on the worker by take-up, on the filler by rise.
    let spare = COVER * 0.04 * (10.0 * SQUARE + 10.0 * RISE);
    close(line.net, plain.net.as_mm());
    assert_eq!(line.cut_mm, mm_up(line.net.as_mm() + spare));
    // An allowance that is more takes its place, and is not added to.
    let mut wide = basis;
    wide.rates.bench.cutting_allowance = 20.into();
    assert_eq!(take_off(&piece(4, sennits(5)), &wide).unwrap().cords[0].cut_mm, mm_up(line.net.as_mm() * 1.2));
}

#[test]
fn what_different_knots_leave_open_is_added_by_squares() {
    let basis = sampled(&[("square", 1.0, 0.04), ("half", 1.0, 0.03)]);
    let half = Tie { times: 10, columns: Some(2), ..tie("half", &[0], &[1]) };
    let steps = vec![hang(0, &[0, 1]), step(Work::Tie(square(10, 2))), step(Work::Tie(half)), tail(20.0, &[0, 1])];
    let line = take_off(&piece(4, steps), &basis).unwrap().cords[0].clone();
    // A half knot takes and rises half of a square knot.
    let of_leg = |leg: f64| COVER * (10.0 * leg * 0.04).hypot(10.0 * leg / 2.0 * 0.03);
    assert_eq!(line.cut_mm, mm_up(line.net.as_mm() + of_leg(SQUARE) + of_leg(RISE)));
}

fn mm_up(mm: f64) -> u64 {
    (0..100_000).find(|whole| reeve_measure::count(*whole) >= mm - 1e-3).unwrap()
}

#[test]
fn what_is_learnt_stands_in_place_of_the_pace_for_knots_and_handling() {
    let estimate = |mean| Estimate { mean, sd: 0.1 };
    let steps = || vec![hang(0, &[0, 1]), step(Work::Tie(square(10, 1))), tail(20.0, &[0, 1])];
    let time = |basis: &Basis| {
        let take_off = take_off(&piece(2, steps()), basis).unwrap();
        (take_off.steps[1].time.of(1).as_s(), take_off.chores[0].time.as_s())
    };
    let pace = Some(PaceHand { pace: estimate(2.0), pull: estimate(0.5), samples: 1, works: 0 });
    let mut slow = plain();
    slow.rates.bench.pace = 1.5;
    let timed = Basis { hand: Hand { pace, ..Hand::default() }, ..slow.clone() };
    let hanging: f64 = (1..=10).map(|k| (10.0 - f64::from(k)) * SQUARE / 1000.0 + 0.2).sum();
    let expected = 2.0 * 90.0 + 0.5 * 6.0 * hanging;
    assert!((time(&slow).0 - 1.5 * (90.0 + 6.0 * hanging)).abs() < 1e-6);
    assert!((time(&timed).0 - expected).abs() < 1e-6);
    assert!((time(&timed).1 / time(&slow).1 - 2.0 / 1.5).abs() < 1e-9);
    // A knot's own time goes on top of the pace, and no other knot or handling knows of it.
    let own = |name: &str| KnotTimeHand { knot: knot(name), time: estimate(1.4_f64.ln()), samples: 1, works: 0 };
    let with = |name: &str| {
        let times = vec![own(name)];
        Basis { hand: Hand { times, pace, ..Hand::default() }, ..slow.clone() }
    };
    assert!((time(&with("square")).0 - expected * 1.4).abs() < 1e-6);
    assert_eq!(time(&with("half")), time(&timed));
    assert!((time(&with("square")).1 - time(&timed).1).abs() < 1e-9);
}

/// A step, and a task of a part, err alike in all that are made: their deviations grow with the number.
#[test]
fn what_is_doubted_is_doubted_as_often_as_it_is_done() {
    let doubt = ThreePoint { low: Time::minutes(6.0), likely: Time::minutes(10.0), high: Time::minutes(20.0) };
    let sd = doubt.spread().sd.as_s();
    let mut made = piece(2, vec![hang(0, &[0, 1]), tail(20.0, &[0, 1])]);
    made.steps[1].time = Some(doubt);
    let alone = take_off(&made, &plain()).unwrap();
    assert!((alone.spread_of(1).sd.as_s() - sd).abs() < 1e-9);
    assert!((alone.spread_of(4).sd.as_s() - 4.0 * sd).abs() < 1e-9);
    let task = |once: bool| Task { title: "dye".to_owned(), time: doubt, once, cost: Decimal::ONE };
    let mut part = piece(2, vec![hang(0, &[0, 1]), tail(20.0, &[0, 1])]);
    part.tasks = vec![task(false), task(true)];
    made.parts = vec![Part { name: "small".to_owned(), count: 3, piece: Arc::new(part) }];
    let taken = take_off(&made, &plain()).unwrap();
    let of_part: Vec<_> = taken.chores.iter().filter(|chore| matches!(chore.kind, ChoreKind::Task(_))).collect();
    let strays: Vec<f64> = of_part.iter().map(|chore| (chore.strays.as_s() / sd).round()).collect();
    assert_eq!((strays, of_part[0].cost, of_part[1].cost), (vec![3.0, 1.0], 3.into(), 1.into()));
}
