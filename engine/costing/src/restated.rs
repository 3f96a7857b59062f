//! The cost of a piece said a second time, in closed form, over random pieces: what is cut, what takes time, what is
//! bought, and how overhead goes with all of it.
//!
//! The piece is laid in, threaded and trimmed, so that every second comes from handling or a task and can be summed here.
//! What knots take is held by the take-off's own tests.

use std::f64::consts::PI;
use std::sync::Arc;

use chrono::NaiveDate;
use proptest::prelude::*;
use reeve_measure::{Length, Mass, Time};
use rust_decimal::Decimal;
use rust_decimal::prelude::{FromPrimitive, ToPrimitive};

use crate::commission::{Client, Commission, FixedLine, Item};
use crate::cost::{Cost, JobCost, cost_made};
use crate::piece::{NamedFitting, Part, Piece, Step, TailEnd, Task, Tie, Work};
use crate::pricing::{Remark, price_commission};
use crate::rates::{Aim, Bench, Fee, FeeBase, Handling, Overhead, Rates, TaxScheme};
use crate::risk::ThreePoint;
use crate::sample::{basis, bench, hang, piece, plain, rates, step, tail, tie};
use crate::single_piece::{Effort, SinglePiece, cost_of_efforts, pieces_to_pay};
use crate::store::{Bead, Fitting, Section};
use crate::takeoff::{ChoreKind, Doing, TakeOff, take_off};
use crate::totals::TaxClass;

/// What is random of a piece and of the shop.
#[derive(Debug, Clone)]
struct Plan {
    cords: u32,
    tail_cm: u32,
    end: TailEnd,
    /// Bundles of two legs or of one, and beads on each.
    legs_each: u32,
    beads: u32,
    /// Minutes of a task for each piece, and of one for the batch.
    each: u32,
    once: u32,
    /// How many of itself stand in the piece as parts.
    parts: u32,
    pieces: u32,
    pace: f64,
    relaxation: u32,
    allowance: u32,
    step_mm: u32,
    overhead: Overhead,
}

fn overheads() -> impl Strategy<Value = Overhead> {
    prop_oneof![
        (1_i64..40).prop_map(|rate| Overhead::PerHour(Decimal::from(rate))),
        (1_i64..200).prop_map(|percent| Overhead::OfLabour(Decimal::from(percent))),
        (1_i64..200).prop_map(|percent| Overhead::OfPrimeCost(Decimal::from(percent))),
    ]
}

fn plans() -> impl Strategy<Value = Plan> {
    let ends = prop_oneof![Just(TailEnd::Plain), Just(TailEnd::Combed), Just(TailEnd::Flush)];
    let made = (1_u32..20, 1_u32..90, ends, 1_u32..3, 0_u32..4, 0_u32..90, 0_u32..90, 0_u32..4, 1_u32..9);
    let shop = (0.5_f64..2.0, 0_u32..40, 0_u32..30, 1_u32..120, overheads());
    (made, shop).prop_map(
        |(
            (cords, tail_cm, end, legs_each, beads, each, once, parts, pieces),
            (pace, relaxation, allowance, step_mm, overhead),
        )| Plan {
            cords,
            tail_cm,
            end,
            legs_each,
            beads,
            each,
            once,
            parts,
            pieces,
            pace,
            relaxation,
            allowance,
            step_mm,
            overhead,
        },
    )
}

/// Seconds of handling, all different, so that none can stand in for another.
const HANDLING: [f64; 7] = [601.0, 47.0, 13.0, 29.0, 7.0, 53.0, 307.0];
/// What a bead costs, covers and weighs.
const BEAD: (i64, f64, f64) = (3, 11.0, 2.5);

fn shop(plan: &Plan) -> Rates {
    let [set_up, marks, cut, bead, trim, comb, pack] = HANDLING.map(Time::s);
    let mut shop = rates(TaxScheme::Net);
    shop.overhead = plan.overhead;
    shop.bench = Bench {
        pace: plan.pace,
        allowances: vec![("rest".to_owned(), Decimal::from(plan.relaxation))],
        handling: Handling { set_up, marks, cut, bead, trim, comb, pack },
        cutting_allowance: Decimal::from(plan.allowance),
        cutting_step: Length::mm(f64::from(plan.step_mm)),
        ..bench()
    };
    shop
}

fn bead() -> NamedFitting {
    let bead = Fitting {
        name: "bead".to_owned(),
        title: "bead".to_owned(),
        section: None,
        room: None,
        bead: Some(Bead { bore: Length::mm(40.0), length: Length::mm(BEAD.1) }),
        weight: Mass::g(BEAD.2),
        price: Decimal::from(BEAD.0),
    };
    NamedFitting { name: "bead".to_owned(), many: (Arc::new(bead), 1) }
}

fn task(title: &str, minutes: u32, once: bool, cost: i64) -> Task {
    let time = ThreePoint::certain(Time::minutes(f64::from(minutes)));
    Task { title: title.to_owned(), time, once, cost: Decimal::from(cost) }
}

/// One design alone, its tasks at 2.00 a piece and 5.00 a batch.
fn alone(plan: &Plan) -> Piece {
    let mut lay_in = step(Work::LayIn);
    lay_in.hang = vec![0];
    let ends = Work::Tail { length: Length::cm(f64::from(plan.tail_cm)), legs: vec![0, 1], end: plan.end };
    let thread = Work::Thread { bead: 1, times: plan.beads, legs_each: plan.legs_each, legs: vec![0, 1] };
    let mut made = piece(plan.cords, vec![lay_in, step(thread), step(ends)]);
    made.fittings.push(bead());
    made.tasks = vec![task("each", plan.each, false, 2), task("once", plan.once, true, 5)];
    made
}

/// The design with so many of itself as parts.
fn whole(plan: &Plan) -> Piece {
    let mut whole = alone(plan);
    if plan.parts > 0 {
        whole.parts = vec![Part { name: "small".to_owned(), count: plan.parts, piece: Arc::new(alone(plan)) }];
    }
    whole
}

/// How many pieces of the design one whole has, and how many times the design is set up.
fn copies(plan: &Plan) -> (f64, f64) {
    (f64::from(plan.parts + 1), if plan.parts > 0 { 2.0 } else { 1.0 })
}

fn bundles(plan: &Plan) -> f64 {
    f64::from(2 * plan.cords / plan.legs_each)
}

/// Seconds of making and finishing for all pieces, each design set up once.
fn seconds(plan: &Plan) -> (f64, f64) {
    let [set_up, marks, cut, bead, trim, comb, pack] = HANDLING;
    let (copies, designs) = copies(plan);
    let (cords, pieces) = (f64::from(plan.cords), f64::from(plan.pieces));
    let rested = 1.0 + f64::from(plan.relaxation) / 100.0;
    let ends = if plan.end == TailEnd::Combed { trim + comb } else { trim };
    let one = cords * cut + bundles(plan) * f64::from(plan.beads) * bead + 2.0 * cords * ends;
    let making = plan.pace * rested * (designs * (set_up + marks) + pieces * copies * one);
    // The maker's own minutes take no pace; a part is packed with the whole.
    let (each, once) = (f64::from(plan.each) * 60.0, f64::from(plan.once) * 60.0);
    let finishing = rested * (designs * once + pieces * copies * each) + plan.pace * rested * pieces * pack;
    (making, finishing)
}

/// Millimetres of each cord before and after allowance and rounding.
fn cut_mm(plan: &Plan) -> (f64, f64) {
    let net = 2.0 * (f64::from(plan.tail_cm) * 10.0 + f64::from(plan.beads) * BEAD.1);
    (net, net * (1.0 + f64::from(plan.allowance) / 100.0))
}

fn job(plan: &Plan, shop: &Rates) -> (TakeOff, JobCost) {
    let taken = take_off(&whole(plan), &basis(shop.clone())).unwrap();
    (taken.clone(), cost_made(&[(Arc::new(taken), plan.pieces)], &[], &basis(shop.clone())).unwrap())
}

fn near(found: f64, expected: f64) -> Result<(), TestCaseError> {
    prop_assert!((found - expected).abs() <= 1e-9 * expected.abs().max(1.0), "{found} and not {expected}");
    Ok(())
}

/// Hours meet money to a ten-thousandth, so a sum of making and finishing may be out by as much, three times as long at most,
/// at 20.00 an hour and as much overhead as a plan has.
fn same_money(found: Decimal, expected: f64) -> Result<(), TestCaseError> {
    let found = found.to_f64().unwrap();
    prop_assert!((found - expected).abs() <= 0.0003 * 40.0, "{found} and not {expected}");
    Ok(())
}

/// Overhead on labour, hours and other direct costs.
fn overhead(plan: &Plan, labour: f64, hours: f64, other: f64) -> f64 {
    let figure = |figure: Decimal| figure.to_f64().unwrap();
    match plan.overhead {
        Overhead::PerHour(rate) => figure(rate) * hours,
        Overhead::OfLabour(percent) => figure(percent) / 100.0 * labour,
        Overhead::OfPrimeCost(percent) => figure(percent) / 100.0 * (labour + other),
    }
}

/// All that a cost holds, from the plan alone. A wage of 20.00, a reel of 100 m at 20.00, a ring at 2.00.
fn held(plan: &Plan, cost: &Cost, cut: f64, times: f64) -> Result<(), TestCaseError> {
    let (copies, designs) = copies(plan);
    let pieces = f64::from(plan.pieces);
    let (making, finishing) = seconds(plan);
    let (making, finishing) = (making / 3600.0 * 20.0 * times, finishing / 3600.0 * 20.0 * times);
    let cord = pieces * copies * f64::from(plan.cords) * cut / 100_000.0 * 20.0;
    let beads = bundles(plan) * f64::from(plan.beads);
    let fittings = pieces * copies * (2.0 + beads * BEAD.0.to_f64().unwrap());
    let other = designs * 5.0 + pieces * copies * 2.0;
    let hours = (making + finishing) / 20.0;
    same_money(cost.making, making)?;
    same_money(cost.finishing, finishing)?;
    same_money(cost.cord, cord)?;
    same_money(cost.fittings, fittings)?;
    same_money(cost.other, other)?;
    same_money(cost.hours, hours)?;
    same_money(cost.overhead, overhead(plan, making + finishing, hours, cord + fittings + other))
}

proptest! {
    #[test]
    fn the_cost_is_what_is_cut_threaded_trimmed_and_done(plan in plans()) {
        let shop = shop(&plan);
        let (taken, job) = job(&plan, &shop);
        let cut = taken.cords[0].cut_mm.to_f64().unwrap();
        held(&plan, &job.items[0].cost, cut, 1.0)?;
        let (making, finishing) = seconds(&plan);
        near(job.needs.time.mean.as_s(), making + finishing)?;
        near(job.items[0].time.as_s(), making + finishing)?;
        near(taken.time_of(plan.pieces).as_s(), making + finishing)?;
    }

    #[test]
    fn a_cord_is_cut_in_whole_steps_and_no_step_too_long(plan in plans()) {
        let taken = take_off(&alone(&plan), &basis(shop(&plan))).unwrap();
        let (net, spared) = cut_mm(&plan);
        let (cut, step) = (taken.cords[0].cut_mm, u64::from(plan.step_mm));
        near(taken.cords[0].net.as_mm(), net)?;
        prop_assert_eq!(cut % step, 0);
        let cut = cut.to_f64().unwrap();
        prop_assert!(cut >= spared - 1e-3 && cut < spared + f64::from(plan.step_mm) + 1e-3, "{} for {}", cut, spared);
    }

    #[test]
    fn beads_are_counted_a_bundle(plan in plans()) {
        let taken = take_off(&alone(&plan), &basis(shop(&plan))).unwrap();
        let beads = u64::from(2 * plan.cords / plan.legs_each * plan.beads);
        let Doing::Beads(_, told) = &taken.steps[1].doing else { panic!("the second step threads") };
        prop_assert_eq!(*told, beads);
        let bought = taken.fittings.iter().find(|(fitting, _)| fitting.name == "bead");
        prop_assert_eq!(bought.map_or(0, |(_, count)| u64::from(*count)), beads);
        let hanging = if plan.end == TailEnd::Flush { 0.0 } else { f64::from(plan.tail_cm) * 10.0 };
        let cord_m = 2.0 * f64::from(plan.cords) * (hanging + f64::from(plan.beads) * BEAD.1) / 1000.0;
        near(taken.weight.as_g(), cord_m * 8.0 + 10.0 + beads.to_f64().unwrap() * BEAD.2)?;
    }

    #[test]
    fn longer_hours_carry_their_overhead(plan in plans(), percent in 100_u32..300) {
        let shop = shop(&plan);
        let (taken, job) = job(&plan, &shop);
        let times = f64::from(percent) / 100.0;
        let longer = job.total().taking(Decimal::from_f64(times).unwrap(), &shop);
        held(&plan, &longer, taken.cords[0].cut_mm.to_f64().unwrap(), times)?;
    }

    #[test]
    fn what_is_once_is_told_apart_from_what_is_each(plan in plans()) {
        let shop = shop(&plan);
        let taken = take_off(&whole(&plan), &basis(shop.clone())).unwrap();
        let (_, designs) = copies(&plan);
        let rested = 1.0 + f64::from(plan.relaxation) / 100.0;
        let once = plan.pace * rested * designs * (HANDLING[0] + HANDLING[1])
            + rested * designs * f64::from(plan.once) * 60.0;
        let (time, cost) = taken.once();
        near(time.as_s(), once)?;
        same_money(cost, designs * 5.0)?;
        // No practice here: every piece takes as long as the first.
        near(taken.time_of_nth(plan.pieces).as_s(), taken.time_of(2).as_s() - taken.time_of(1).as_s())?;
    }
}

/// A lark's head on a rod of 5 mm in cord of 4 mm covers the rod as the take-off says; so many fittings have as much room.
#[test]
fn several_fittings_have_room_together() {
    let heads = |rings: u32, cords: u32| {
        let mut piece = piece(cords, vec![hang(0, &[0, 1]), tail(20.0, &[0, 1])]);
        piece.fittings[0].many.1 = rings;
        take_off(&piece, &plain())
    };
    let one = heads(1, 1).unwrap();
    let Doing::Knots(head) = &one.steps[0].doing else { panic!("the first step ties") };
    // The ring is 50 mm inside.
    let fit = (50.0 * PI / head.rise.as_mm()).floor().to_u32().unwrap();
    assert!(heads(1, fit).is_ok() && heads(1, fit + 1).is_err());
    assert!(heads(3, 3 * fit).is_ok() && heads(2, 2 * fit + 2).is_err());
}

/// Legs that run past a row pass its ridge: the leader and a turn of cord above and below; times the rows.
#[test]
fn legs_alongside_pass_the_ridge_of_a_row() {
    let row = |times: u32| {
        let tie = Tie { times, columns: Some(1), on: Some(0), ..tie("double-half-hitch-on-ring", &[0], &[]) };
        let beside = Step { alongside: vec![1], ..step(Work::Tie(tie)) };
        let mut made = piece(1, vec![hang(0, &[0, 1]), beside, tail(5.0, &[0, 1])]);
        made.fittings[0].many.0 = Arc::new(Fitting {
            section: Some(Section::Round(Length::mm(9.0))),
            room: None,
            ..(*made.fittings[0].many.0).clone()
        });
        take_off(&made, &plain()).unwrap().legs[1].length.as_mm()
    };
    // A leader of 9 mm and twice 4 mm of cord.
    assert!((row(2) - row(1) - 17.0).abs() < 1e-9, "{}", row(2) - row(1));
}

/// A commission of one line of a plan.
fn ordered(plan: &Plan) -> Commission {
    let line = Item {
        design: "whole".to_owned(),
        piece: Arc::new(whole(plan)),
        quantity: plan.pieces,
        text: None,
        price: None,
        tax: TaxClass::Rate(Decimal::from(20)),
    };
    Commission {
        reference: "test".to_owned(),
        title: "Test".to_owned(),
        client: Client { name: String::new(), address: Vec::new() },
        asked: None,
        needed_by: None,
        promised: None,
        items: vec![line],
        lines: Vec::new(),
        rush: false,
        confidence: None,
        discount: None,
        allowances: Vec::new(),
        charges: Vec::new(),
        deposit: None,
        paid: Decimal::ZERO,
        note: None,
    }
}

fn day() -> NaiveDate {
    NaiveDate::from_ymd_opt(2027, 1, 12).unwrap()
}

proptest! {
    /// Overhead goes with labour, so making and finishing carry it as their labour is; the rest of a line is as it costs.
    #[test]
    fn the_parts_of_a_line_are_as_what_they_pay_for(plan in plans()) {
        let shop = shop(&plan);
        let priced = price_commission(&ordered(&plan), &basis(shop), day()).unwrap();
        let cost = priced.items[0].cost.cost;
        let line = &priced.quote.lines[0];
        let amount = priced.quote.totals.lines;
        let (making, finishing) = (cost.making / cost.labour(), cost.finishing / cost.labour());
        let weights = [
            cost.cord,
            cost.fittings,
            cost.making + cost.overhead * making,
            cost.finishing + cost.other + cost.overhead * finishing,
        ];
        let whole: Decimal = weights.iter().sum();
        prop_assert!((whole - cost.total()).abs() < Decimal::new(1, 9));
        // Cord, fittings, making and finishing all cost something here, so all four are told.
        prop_assert_eq!(line.parts.len(), weights.len());
        for (part, weight) in line.parts.iter().zip(weights) {
            let share = amount * weight / whole;
            prop_assert!((part.amount - share).abs() < Decimal::new(1, 2), "{} and not {}", part.amount, share);
        }
    }

    /// The price for a confidence leaves what the shop aims at when the hours come to that, overhead on them included.
    #[test]
    fn a_price_for_a_confidence_leaves_the_aim_in_those_hours(plan in plans(), percent in 55_i64..99) {
        let mut shop = shop(&plan);
        shop.bench.pace_spread = Some(0.2);
        // A break would come off the aim.
        shop.price.breaks = Vec::new();
        let mut asked = ordered(&plan);
        asked.confidence = Some(Decimal::from(percent));
        let priced = price_commission(&asked, &basis(shop.clone()), day()).unwrap();
        let (sure, cost) = (priced.sure.outcome, priced.outcome.cost);
        let times = priced.needs.times_at(Decimal::from(percent));
        prop_assert!(times > Decimal::ONE && priced.sure.is_priced);
        let expected = overhead(
            &plan,
            (cost.labour() * times).to_f64().unwrap(),
            (cost.hours * times).to_f64().unwrap(),
            (cost.material() + cost.other).to_f64().unwrap(),
        );
        same_money(sure.cost.overhead, expected)?;
        prop_assert_eq!(sure.cost.labour(), cost.labour() * times);
        // A quarter of the price is left, rounded up to a cent for each piece.
        let over = sure.margin - sure.income * Decimal::new(25, 2);
        prop_assert!(over >= Decimal::new(-1, 9) && over < Decimal::new(1, 2) * Decimal::from(plan.pieces), "{}", over);
        prop_assert!(priced.outcome.margin > sure.margin);
    }
}

proptest! {
    #[test]
    fn what_is_bought_is_enough_and_no_more(plan in plans()) {
        let shop = shop(&plan);
        let (taken, job) = job(&plan, &shop);
        let (copies, _) = copies(&plan);
        let cords = u64::from(plan.cords * plan.pieces) * copies.to_u64().unwrap();
        let cut = taken.cords[0].cut_mm;
        // Cords of one length fill reels of 100 m one after the other.
        let reels = cords.div_ceil(100_000 / cut);
        let [bought] = &job.needs.cords[..] else { panic!("there is one cord") };
        near(bought.cut.as_mm(), (cords * cut).to_f64().unwrap())?;
        near(bought.bought.as_mm(), (reels * 100_000).to_f64().unwrap())?;
        prop_assert_eq!(bought.price, Decimal::from(reels * 20));
        prop_assert_eq!(bought.put_ups.iter().map(|(_, count)| *count).collect::<Vec<_>>(), [reels]);
        let of = |name: &str| job.needs.fittings.iter().find(|(known, _)| known.name == name).map_or(0, |many| many.1);
        let whole = plan.pieces * (plan.parts + 1);
        prop_assert_eq!(of("ring"), whole);
        prop_assert_eq!(of("bead"), whole * (2 * plan.cords / plan.legs_each) * plan.beads);
    }

    #[test]
    fn what_remains_is_what_comes_in_less_what_goes_out(plan in plans(), price in 1_i64..90_000, paid in 0_i64..900_000) {
        let mut shop = shop(&plan);
        shop.price.breaks = Vec::new();
        shop.fees = vec![Fee { name: "card".to_owned(), rate: Decimal::from(2), fixed: Decimal::ONE, on: FeeBase::Net }];
        let mut asked = ordered(&plan);
        asked.items[0].price = Some(Decimal::new(price, 2));
        let mut priced = price_commission(&asked, &basis(shop.clone()), day()).unwrap();
        let outcome = priced.outcome;
        let income = Decimal::new(price, 2) * Decimal::from(plan.pieces);
        let fees = income * Decimal::new(2, 2) + Decimal::ONE;
        prop_assert_eq!((outcome.income, outcome.fees), (income, fees));
        prop_assert_eq!(outcome.margin, income - fees - outcome.cost.total());
        let [percent, per_hour, contributed] = [
            outcome.margin / income * Decimal::ONE_HUNDRED,
            (outcome.margin + outcome.cost.labour()) / outcome.cost.hours,
            (income - fees - outcome.cost.cord - outcome.cost.fittings - outcome.cost.other) / outcome.cost.hours,
        ];
        prop_assert_eq!((outcome.margin_percent, outcome.per_hour), (Some(percent), Some(per_hour)));
        prop_assert_eq!(outcome.contribution_per_hour(), Some(contributed));
        // Tax of 20 % is added; what was paid comes off, and what is too much is told.
        let paid = Decimal::new(paid, 2);
        priced.settle(paid);
        let due = priced.quote.totals.gross - paid;
        prop_assert_eq!((priced.quote.totals.paid, priced.quote.totals.due), (paid, due));
        prop_assert_eq!(priced.quote.recheck(), None);
        let told = priced.remarks.iter().filter(|remark| matches!(remark, Remark::Overpaid { amount } if *amount == -due));
        prop_assert_eq!(told.count(), usize::from(due < Decimal::ZERO));
    }

    #[test]
    fn efforts_are_paid_for_by_whole_pieces(plan in plans(), minutes in 1_u32..5_000, spent in 0_i64..50_000) {
        let mut shop = shop(&plan);
        shop.price.aim = Aim::Margin(Decimal::from(20));
        let alone = SinglePiece::of(&Arc::new(take_off(&alone(&plan), &basis(shop.clone())).unwrap()), &basis(shop.clone())).unwrap();
        let effort = Effort {
            title: "drafting".to_owned(),
            time: Time::minutes(f64::from(minutes)),
            cost: Decimal::new(spent, 2),
        };
        let cost = cost_of_efforts(&[effort.clone(), effort], &shop);
        let (hours, other) = (f64::from(minutes) / 30.0, spent.to_f64().unwrap() / 50.0);
        same_money(cost.hours, hours)?;
        same_money(cost.total(), hours * 20.0 + other + overhead(&plan, hours * 20.0, hours, other))?;
        let sold = alone.sold(&shop);
        prop_assert!(sold.margin > Decimal::ZERO);
        prop_assert_eq!(pieces_to_pay(&cost, &sold), Some((cost.total() / sold.margin).ceil()));
        let given_away = alone.sold_at(Decimal::new(1, 2), &shop);
        prop_assert_eq!(pieces_to_pay(&cost, &given_away), None);
        // Of one, what is done once: setting up, the batch's task and what that uses up.
        let rested = 1.0 + f64::from(plan.relaxation) / 100.0;
        let once = plan.pace * rested * (HANDLING[0] + HANDLING[1]) + rested * f64::from(plan.once) * 60.0;
        same_money(alone.once().hours, once / 3600.0)?;
        prop_assert_eq!(alone.once().cost, Decimal::from(5));
    }

    #[test]
    fn a_line_with_a_given_price_carries_its_own_cost(plan in plans(), spent in 0_i64..9_000, minutes in 0_u32..900) {
        let shop = shop(&plan);
        let mut asked = ordered(&plan);
        asked.lines = vec![FixedLine {
            text: "delivery".to_owned(),
            quantity: Decimal::TWO,
            unit_price: Decimal::new(1250, 2),
            tax: TaxClass::Exempt,
            cost: Decimal::new(spent, 2),
            time: Time::minutes(f64::from(minutes)),
        }];
        let priced = price_commission(&asked, &basis(shop.clone()), day()).unwrap();
        let [(line, cost)] = priced.given_lines().collect::<Vec<_>>()[..] else { panic!("there is one line") };
        prop_assert_eq!((line.amount, line.quantity), (Decimal::from(25), Decimal::TWO));
        let (hours, other) = (f64::from(minutes) / 60.0, spent.to_f64().unwrap() / 100.0);
        prop_assert_eq!(cost.other, Decimal::new(spent, 2));
        same_money(cost.making, hours * 20.0)?;
        same_money(cost.hours, hours)?;
        same_money(cost.overhead, overhead(&plan, hours * 20.0, hours, other))?;
    }

    #[test]
    fn a_part_counts_as_often_as_it_is_there(plan in plans().prop_filter("parts", |plan| plan.parts > 1)) {
        let taken = take_off(&whole(&plan), &basis(shop(&plan))).unwrap();
        let parts = u64::from(plan.parts);
        let (own, of_part) = taken.steps.split_at(3);
        for (own, part) in own.iter().zip(of_part) {
            prop_assert_eq!(&part.title, &format!("piece: {}", own.title));
            match (&own.doing, &part.doing) {
                (Doing::LayIn, Doing::LayIn) => {}
                (Doing::Beads(_, own), Doing::Beads(_, part)) => prop_assert_eq!(*part, own * parts),
                (Doing::Tail(_, own), Doing::Tail(_, part)) => prop_assert_eq!(*part, own * parts),
                other => prop_assert!(false, "{:?}", other),
            }
        }
        let legs: Vec<_> = taken.legs.iter().map(|line| (line.set.as_str(), line.count)).collect();
        let cords = u64::from(plan.cords);
        let expected = [("worker", cords), ("filler", cords), ("small/worker", cords * parts), ("small/filler", cords * parts)];
        prop_assert_eq!(legs, expected);
        prop_assert_eq!((taken.cords[1].group.as_str(), taken.cords[1].count), ("small/arms", cords * parts));
        // A mass of its own for every part.
        let one = take_off(&alone(&plan), &basis(shop(&plan))).unwrap();
        near(taken.weight.as_g(), one.weight.as_g() * f64::from(plan.parts + 1))?;
        let of_part: Vec<_> = taken.chores.iter().filter(|chore| chore.parts == ["piece"]).map(|chore| &chore.kind).collect();
        let (cut, packed) = (of_part.contains(&&ChoreKind::MeasureAndCut), of_part.contains(&&ChoreKind::Pack));
        prop_assert!(cut && !packed, "{:?}", of_part);
    }
}

/// Knots of a part count as often as the part is there, side by side; how often in each column stays.
#[test]
fn knots_of_parts_are_counted() {
    let square = Tie { times: 5, columns: Some(2), ..tie("square", &[0], &[1]) };
    let bare = Work::Bare { length: Length::cm(5.0), legs: vec![0] };
    let steps = vec![hang(0, &[0, 1]), step(Work::Tie(square)), step(bare), tail(20.0, &[0, 1])];
    let mut made = piece(4, steps);
    made.parts = vec![Part { name: "small".to_owned(), count: 3, piece: Arc::new(made.clone()) }];
    let taken = take_off(&made, &plain()).unwrap();
    let counts = |at: usize| match &taken.steps[at].doing {
        Doing::Knots(line) => (line.count, line.columns, line.times),
        other => panic!("{other:?}"),
    };
    assert_eq!((counts(1), counts(5)), ((10, 2, 5), (30, 6, 5)));
    let bare =
        |at: usize| matches!(taken.steps[at].doing, Doing::Bare(_, legs) if legs == if at == 2 { 4 } else { 12 });
    assert!(bare(2) && bare(6));
}

/// What is left bare is of the legs that it is left on, and of no other.
#[test]
fn a_bare_length_is_in_its_own_legs() {
    let legs = |bare: Option<f64>| {
        let bare = bare.map(|cm| step(Work::Bare { length: Length::cm(cm), legs: vec![0] }));
        let steps = [hang(0, &[0, 1])].into_iter().chain(bare).chain([tail(20.0, &[0, 1])]);
        let taken = take_off(&piece(4, steps.collect()), &plain()).unwrap();
        [0, 1].map(|at| taken.legs[at].length.as_mm())
    };
    let (without, with) = (legs(None), legs(Some(7.5)));
    assert!((with[0] - without[0] - 75.0).abs() < 1e-9 && (with[1] - without[1]).abs() < 1e-9, "{without:?} {with:?}");
}

/// A bead takes a bundle that just fits its hole. Two legs side by side are twice as wide as one: published packings.
#[test]
fn a_bundle_that_just_fits_is_threaded() {
    let threaded = |bore: f64| {
        let thread = Work::Thread { bead: 1, times: 1, legs_each: 2, legs: vec![0, 1] };
        let mut made = piece(2, vec![hang(0, &[0, 1]), step(thread), tail(20.0, &[0, 1])]);
        let mut bead = bead();
        let fitting = Arc::make_mut(&mut bead.many.0);
        fitting.bead = Some(Bead { bore: Length::mm(bore), length: Length::mm(5.0) });
        made.fittings.push(bead);
        take_off(&made, &plain()).is_ok()
    };
    assert!(threaded(8.0) && threaded(9.0) && !threaded(7.9));
}

/// The leader of a row runs along every knot of it, as often as the row is tied.
#[test]
fn a_leader_runs_along_all_knots_of_its_rows() {
    let leader = |times: u32, cords: u32| {
        let row = Tie { times, columns: Some(1), ..tie("double-half-hitch", &[0], &[1]) };
        let made = piece(cords, vec![hang(0, &[0, 1]), step(Work::Tie(row)), tail(5.0, &[0, 1])]);
        take_off(&made, &plain()).unwrap().legs[1].length.as_mm()
    };
    // Each hitch takes 2.4 diameters of 4 mm of its leader, as the catalogue says.
    assert!((leader(3, 1) - leader(1, 1) - 2.0 * 2.4 * 4.0).abs() < 1e-9);
    assert!((leader(2, 4) - leader(1, 4) - 4.0 * 2.4 * 4.0).abs() < 0.5, "{} {}", leader(2, 4), leader(1, 4));
}
