//! A commission from cost to quote, against sums done by hand.

use std::str::FromStr;
use std::sync::Arc;

use chrono::NaiveDate;
use proptest::prelude::*;
use reeve_measure::Time;
use rust_decimal::Decimal;

use super::{Outcome, Priced, Remark, price_commission};
use crate::commission::{Client, Commission, Discount, DiscountSize, FixedLine, Item};
use crate::cost::Cost;
use crate::learning_curve::{LearningCurve, Model};
use crate::piece::Task;
use crate::quote::Quote;
use crate::rates::{Aim, Fee, FeeBase, Rates, TaxScheme};
use crate::risk::ThreePoint;
use crate::sample::{basis, hang, piece, rates, tail};
use crate::single_piece::{SinglePiece, pieces_to_pay};
use crate::takeoff::take_off;
use crate::totals::TaxClass;

fn money(text: &str) -> Decimal {
    Decimal::from_str(text).unwrap()
}

fn day() -> NaiveDate {
    NaiveDate::from_ymd_opt(2027, 1, 12).unwrap()
}

/// A piece with an hour's task, for so many pieces.
fn item(quantity: u32) -> Item {
    let mut piece = piece(2, vec![hang(0, &[0, 1]), tail(20.0, &[0, 1])]);
    piece.tasks = vec![Task {
        title: "wire".to_owned(),
        time: ThreePoint::certain(Time::hours(1.0)),
        once: false,
        cost: money("1.50"),
    }];
    let tax = TaxClass::Rate(Decimal::from(20));
    Item { design: "piece".to_owned(), piece: Arc::new(piece), quantity, text: None, price: None, tax }
}

fn line(price: &str, tax: TaxClass) -> FixedLine {
    FixedLine {
        text: "article".to_owned(),
        quantity: Decimal::ONE,
        unit_price: money(price),
        tax,
        cost: Decimal::ZERO,
        time: Time::ZERO,
    }
}

fn commission(items: Vec<Item>, lines: Vec<FixedLine>) -> Commission {
    Commission {
        reference: "test".to_owned(),
        title: "Test".to_owned(),
        client: Client { name: String::new(), address: Vec::new() },
        asked: None,
        needed_by: None,
        promised: None,
        items,
        lines,
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

fn priced(commission: &Commission, rates: &Rates) -> Priced {
    price_commission(commission, &basis(rates.clone()), day()).unwrap()
}

#[test]
fn cost_is_material_labour_overhead_and_what_is_used_up() {
    let priced = priced(&commission(vec![item(1)], Vec::new()), &rates(TaxScheme::Net));
    let cost = &priced.items[0].cost.cost;
    // Task 1 h, packing 0.1 h and two lark's heads; 20.00 and 10.00 an hour.
    assert_eq!(cost.finishing, money("22.0000"));
    assert_eq!(cost.overhead, cost.hours * Decimal::from(10));
    assert_eq!((cost.fittings, cost.other), (Decimal::from(2), money("1.50")));
    // Two cords at 20.00 for 100 m.
    let metres = Decimal::from(priced.items[0].cost.take_off.cords[0].cut_mm * 2) / Decimal::from(1000);
    assert_eq!(cost.cord, metres * money("0.2"));
    // A quarter of the price is left over, rounded up by less than a cent.
    let over = priced.outcome.margin - priced.outcome.income * money("0.25");
    assert!(over >= Decimal::ZERO && over < money("0.01"));
}

#[test]
fn prices_with_tax_hold_the_same_margin() {
    let net = priced(&commission(vec![item(1)], Vec::new()), &rates(TaxScheme::Net));
    let with = priced(&commission(vec![item(1)], Vec::new()), &rates(TaxScheme::Inclusive));
    assert!((with.quote.totals.gross - net.quote.totals.gross).abs() <= money("0.02"));
    assert_eq!(with.quote.totals.lines, with.quote.totals.gross);
    assert_eq!(with.quote.totals.net + with.quote.totals.tax, with.quote.totals.gross);
    assert!(with.outcome.margin >= with.outcome.income * money("0.25") - money("0.01"));
}

#[test]
fn fees_are_carried_by_the_price() {
    let mut with_fees = rates(TaxScheme::Net);
    with_fees.fees = vec![
        Fee { name: "card".to_owned(), rate: Decimal::from(2), fixed: money("0.30"), on: FeeBase::Gross },
        Fee { name: "listing".to_owned(), rate: Decimal::from(5), fixed: Decimal::ZERO, on: FeeBase::Net },
    ];
    let priced = priced(&commission(vec![item(2), item(1)], Vec::new()), &with_fees);
    let over = priced.outcome.margin - priced.outcome.income * money("0.25");
    assert!(over >= Decimal::ZERO && over < money("0.04"), "{over}");
}

#[test]
fn a_quantity_break_comes_off_the_price_of_one() {
    let single = priced(&commission(vec![item(1)], Vec::new()), &rates(TaxScheme::Net));
    let three = priced(&commission(vec![item(3)], Vec::new()), &rates(TaxScheme::Net));
    let (one, broken) = (single.items[0].price.steps.aimed, three.items[0].price.steps);
    assert_eq!(broken.quantity_break, Decimal::from(10));
    assert!((broken.unit - one * money("0.9")).abs() <= money("0.02"));
}

#[test]
fn the_minimum_and_the_step_lift_a_price() {
    let mut lifted = rates(TaxScheme::Net);
    (lifted.price.minimum, lifted.price.step) = (money("99.10"), money("0.50"));
    let priced = priced(&commission(vec![item(1)], Vec::new()), &lifted);
    assert!(priced.items[0].price.steps.at_minimum);
    assert_eq!(priced.quote.lines[0].unit_price, money("99.50"));
}

#[test]
fn a_discount_is_parted_by_tax_rate_and_rush_falls_on_the_pieces() {
    let reduced = TaxClass::Rate(Decimal::from(9));
    let mut asked = commission(vec![item(1)], vec![line("50.00", reduced), line("10.00", TaxClass::Exempt)]);
    asked.items[0].price = Some(money("100.00"));
    asked.discount = Some(Discount { text: "Kindness".to_owned(), size: DiscountSize::Percent(Decimal::from(10)) });
    asked.rush = true;
    let quote = priced(&asked, &rates(TaxScheme::Net)).quote;
    let amounts: Vec<(String, &str)> =
        quote.allowances.iter().map(|a| (a.amount.to_string(), a.tax_rate.as_deref().unwrap())).collect();
    assert_eq!(amounts, [("10.00".to_owned(), "20"), ("5.00".to_owned(), "9"), ("1.00".to_owned(), "exempt")]);
    assert_eq!((quote.charges.len(), quote.charges[0].amount), (1, money("50.00")));
    // 20 % on 100 - 10 + 50, 9 % on 45.
    let taxes: Vec<String> = quote.taxes.iter().map(|tax| tax.tax.to_string()).collect();
    assert_eq!(taxes, ["28.00", "4.05", "0.00"]);
    // 160 of lines, 16 off, 50 on, and the tax.
    assert_eq!(quote.totals.gross, money("226.05"));
}

#[test]
fn an_amount_off_is_spread_to_the_cent() {
    let third = TaxClass::Rate(Decimal::from(9));
    let mut asked = commission(Vec::new(), vec![line("10.00", own()), line("20.00", third)]);
    asked.discount = Some(Discount { text: "Off".to_owned(), size: DiscountSize::Amount(money("1.00")) });
    let quote = priced(&asked, &rates(TaxScheme::Net)).quote;
    let amounts: Vec<String> = quote.allowances.iter().map(|a| a.amount.to_string()).collect();
    assert_eq!(amounts, ["0.33", "0.67"]);
}

#[test]
fn a_credit_at_another_rate_lowers_a_percentage_off_and_is_not_put_on() {
    // 100.00 at 20 %, a credit of 30.00 at 9 %: 10 % of the 70.00 come off, all of it at 20 %.
    let reduced = TaxClass::Rate(Decimal::from(9));
    let mut asked = commission(Vec::new(), vec![line("100.00", own()), line("-30.00", reduced)]);
    asked.discount = Some(Discount { text: "Off".to_owned(), size: DiscountSize::Percent(Decimal::from(10)) });
    let off = |asked: &Commission| -> Vec<String> {
        let quote = priced(asked, &rates(TaxScheme::Net)).quote;
        assert_eq!(quote.recheck(), None);
        quote.allowances.iter().map(|a| format!("{} at {}", a.amount, a.tax_rate.as_deref().unwrap())).collect()
    };
    assert_eq!(off(&asked), ["7.00 at 20"]);
    // The credit takes more than all else: nothing comes off.
    asked.lines[1].unit_price = money("-130.00");
    assert_eq!(off(&asked), Vec::<String>::new());
    // At one rate the credit is of the same sum, as before.
    asked.lines[1] = line("-30.00", own());
    assert_eq!(off(&asked), ["7.00 at 20"]);
}

proptest! {
    /// Whatever the lines, a percentage off is never below zero, is the percentage of the whole to half a unit a rate, and
    /// comes off nothing that is itself below zero.
    #[test]
    fn a_percentage_off_is_what_it_says(
        amounts in prop::collection::vec((-20_000_i64..60_000, 0_u8..3), 1..6), percent in 1_i64..100
    ) {
        let class = |rate: u8| [own(), TaxClass::Rate(Decimal::from(9)), TaxClass::Exempt][usize::from(rate)];
        let lines = amounts.iter().map(|(cents, rate)| line(&Decimal::new(*cents, 2).to_string(), class(*rate)));
        let mut asked = commission(Vec::new(), lines.collect());
        let size = DiscountSize::Percent(Decimal::from(percent));
        asked.discount = Some(Discount { text: "Off".to_owned(), size });
        let quote = priced(&asked, &rates(TaxScheme::Net)).quote;
        let sum_at = |rate: u8| -> i64 { amounts.iter().filter(|line| line.1 == rate).map(|line| line.0).sum() };
        let mut off = Decimal::ZERO;
        for allowance in &quote.allowances {
            prop_assert!(allowance.amount > Decimal::ZERO, "{:?}", quote.allowances);
            let rate = (0..3).find(|rate| class(*rate).word() == allowance.tax_rate).unwrap();
            prop_assert!(sum_at(rate) > 0, "{:?}", quote.allowances);
            off += allowance.amount;
        }
        let whole = Decimal::new((0..3).map(sum_at).sum::<i64>().max(0), 2);
        prop_assert!((off - whole * Decimal::new(percent, 2)).abs() <= Decimal::new(15, 3), "{} of {}", off, whole);
    }
}

#[test]
fn minutes_that_the_maker_states_do_not_follow_practice() {
    let mut practised = rates(TaxScheme::Net);
    practised.bench.practice = LearningCurve { model: Model::Unit, rate: 0.8, steady: 1000 };
    let minutes = |made: u32, own: bool, pieces: u32| {
        let mut piece = piece(2, vec![hang(0, &[0, 1]), tail(20.0, &[0, 1])]);
        piece.made = made;
        piece.steps[0].time = own.then(|| ThreePoint::certain(Time::minutes(10.0)));
        take_off(&piece, &basis(practised.clone())).unwrap().steps_time(pieces).as_minutes()
    };
    // By hand: ten minutes each, whatever was made before and however many are in a row.
    for made in [0, 1, 12, 300] {
        assert!((minutes(made, true, 1) - 10.0).abs() < 1e-9, "{made}");
        assert!((minutes(made, true, 6) - 60.0).abs() < 1e-9, "{made}");
    }
    let is_practised = |own: bool| {
        let mut piece = piece(1, vec![hang(0, &[0, 1])]);
        piece.steps[0].time = own.then(|| ThreePoint::certain(Time::minutes(10.0)));
        take_off(&piece, &basis(practised.clone())).unwrap().is_practised()
    };
    assert!(!is_practised(true) && is_practised(false));
    // What the catalogue says is of a first one, and follows: the second takes 80 % of it.
    assert!((minutes(1, false, 1) / minutes(0, false, 1) - 0.8).abs() < 1e-9);
}

fn own() -> TaxClass {
    TaxClass::Rate(Decimal::from(20))
}

#[test]
fn deposit_and_balance_add_up_to_what_is_due() {
    let mut asked = commission(Vec::new(), vec![line("100.01", own())]);
    let whole = |asked: &Commission| priced(asked, &rates(TaxScheme::Net)).quote;
    let amounts = |asked: &Commission| -> Vec<String> {
        whole(asked).schedule.iter().map(|part| part.amount.to_string()).collect()
    };
    // Gross 120.01; 40 % of it 48.004.
    assert_eq!(amounts(&asked), ["48.00", "72.01"]);
    asked.paid = money("30.00");
    assert_eq!(amounts(&asked), ["18.00", "72.01"]);
    asked.paid = money("60.00");
    assert_eq!(amounts(&asked), ["60.01"]);
    asked.deposit = Some(Decimal::ONE_HUNDRED);
    asked.paid = Decimal::ZERO;
    assert_eq!(amounts(&asked), ["120.01"]);
    assert_eq!(whole(&asked).valid_until, NaiveDate::from_ymd_opt(2027, 2, 11).unwrap());
}

#[test]
fn without_registration_there_is_no_tax() {
    let mut asked = commission(vec![item(1)], Vec::new());
    asked.items[0].tax = TaxClass::Untaxed;
    let quote = priced(&asked, &rates(TaxScheme::NotRegistered)).quote;
    assert!(quote.taxes.is_empty());
    assert_eq!((quote.totals.net, quote.totals.tax), (quote.totals.gross, money("0.00")));
    assert_eq!(quote.lines[0].tax_rate, None);
}

#[test]
fn the_maker_is_told_what_to_look_at() {
    let mut asked = commission(vec![item(1)], Vec::new());
    asked.items[0].price = Some(Decimal::ONE);
    asked.needed_by = NaiveDate::from_ymd_opt(2027, 2, 1);
    asked.promised = NaiveDate::from_ymd_opt(2027, 2, 2);
    let remarks = priced(&asked, &rates(TaxScheme::Net)).remarks;
    let (promised, needed) = (asked.promised.unwrap(), asked.needed_by.unwrap());
    assert_eq!(remarks, [Remark::PromisedTooLate { promised, needed }, Remark::Loses, Remark::EarnsLess]);
    // Two more than the aim are left: nothing to say. Two less: the aim is missed, to a tenth.
    let left = |price: &str| {
        asked.promised = None;
        asked.items[0].price = Some(money(price));
        priced(&asked, &rates(TaxScheme::Net)).remarks
    };
    let [above, below] = ["60.00", "48.00"].map(left);
    assert!(above.is_empty(), "{above:?}");
    assert!(matches!(below[..], [Remark::BelowAim { aim, .. }] if aim == Decimal::from(25)), "{below:?}");
}

#[test]
fn a_design_alone_comes_to_what_its_commission_would() {
    let mut with_fees = rates(TaxScheme::Net);
    with_fees.fees =
        vec![Fee { name: "card".to_owned(), rate: Decimal::from(2), fixed: money("0.30"), on: FeeBase::Gross }];
    let ordered = priced(&commission(vec![item(1)], Vec::new()), &with_fees);
    let alone = alone(&with_fees);
    assert_eq!(alone.sold(&with_fees), ordered.outcome);
    assert_eq!(alone.price.unit, ordered.quote.lines[0].unit_price);
    // At the lowest price nothing is left over, and an hour earns the wage and no less.
    let lowest = alone.sold_at(alone.lowest, &with_fees);
    assert!(lowest.margin >= Decimal::ZERO && lowest.margin < money("0.02"), "{}", lowest.margin);
    assert!(lowest.per_hour.unwrap() >= with_fees.wage);
}

fn alone(rates: &Rates) -> SinglePiece {
    SinglePiece::of(&Arc::new(take_off(&item(1).piece, &basis(rates.clone())).unwrap()), &basis(rates.clone())).unwrap()
}

#[test]
fn at_a_given_price_a_dearer_design_never_leaves_more() {
    let margin = |wage: i64| {
        let mut dearer = rates(TaxScheme::Net);
        dearer.wage = Decimal::from(wage);
        alone(&dearer).sold_at(money("80.00"), &dearer).margin
    };
    assert!(margin(21) < margin(20));
}

#[test]
fn what_is_kept_to_the_day_and_paid_to_the_cent_needs_no_remark() {
    let mut asked = commission(vec![item(1)], Vec::new());
    (asked.promised, asked.needed_by) = (Some(day()), Some(day()));
    let mut one = priced(&asked, &rates(TaxScheme::Net));
    let kinds = |priced: &Priced| {
        let of_payment = |remark: &&Remark| matches!(remark, Remark::Overpaid { .. } | Remark::PromisedTooLate { .. });
        priced.remarks.iter().filter(of_payment).cloned().collect::<Vec<_>>()
    };
    let gross = one.quote.totals.gross;
    one.settle(gross);
    assert_eq!(kinds(&one), []);
    one.settle(gross + Decimal::ONE);
    // Told again, not told twice; and other remarks stay.
    one.settle(gross + Decimal::TWO);
    assert_eq!(kinds(&one), [Remark::Overpaid { amount: Decimal::TWO }]);
    asked.needed_by = day().pred_opt();
    assert!(matches!(kinds(&priced(&asked, &rates(TaxScheme::Net)))[..], [Remark::PromisedTooLate { .. }]));
    let before = one.remarks.len();
    one.settle(Decimal::ZERO);
    assert_eq!(one.remarks.len(), before - 1);
}

#[test]
fn remarks_begin_beyond_their_bounds_and_not_at_them() {
    let shop = rates(TaxScheme::Net);
    let Aim::Margin(aim) = shop.price.aim else { panic!("the shop aims at a margin") };
    let asked = commission(vec![item(1)], Vec::new());
    let kept = priced(&asked, &shop).outcome;
    let told = |margin: Decimal, percent: Decimal, per_hour: Decimal| {
        let outcome = Outcome { margin, margin_percent: Some(percent), per_hour: Some(per_hour), ..kept };
        super::remarks(&asked, &shop, &[], &outcome)
    };
    let (at, beyond) = (aim - Decimal::ONE, aim - money("1.2"));
    assert_eq!(told(Decimal::TEN, at, shop.wage), []);
    assert_eq!(told(Decimal::TEN, beyond, shop.wage), [Remark::BelowAim { aim, left: beyond }]);
    assert_eq!(told(Decimal::ZERO, at, shop.wage - money("0.01")), [Remark::EarnsLess]);
    // What loses is not told to miss its aim as well.
    assert_eq!(told(money("-0.01"), beyond, shop.wage), [Remark::Loses]);
}

#[test]
fn a_document_that_was_changed_does_not_add_up() {
    let mut itemised = rates(TaxScheme::Net);
    itemised.price.itemised = true;
    let sound = priced(&commission(vec![item(2)], vec![line("7.00", own())]), &itemised).quote;
    assert_eq!(sound.recheck(), None);
    let changed = |change: &dyn Fn(&mut Quote)| {
        let mut quote = sound.clone();
        change(&mut quote);
        quote.recheck().unwrap_or_default()
    };
    let parts = changed(&|quote| quote.lines[0].parts[0].amount += Decimal::ONE);
    assert!(parts.starts_with("the parts of a line"), "{parts}");
    let totals = changed(&|quote| quote.totals.gross += Decimal::ONE);
    assert!(totals.starts_with("its totals come to"), "{totals}");
    let schedule = changed(&|quote| quote.schedule[0].amount += Decimal::ONE);
    assert!(schedule.starts_with("what is to be paid"), "{schedule}");
    let currency = changed(&|quote| quote.currency = "XXZ".to_owned());
    assert_eq!(currency, "no currency is called XXZ");
}

#[test]
fn work_done_once_is_paid_by_what_is_left_after_fees_and_cost() {
    let mut shop = rates(TaxScheme::Inclusive);
    shop.fees = vec![Fee { name: "card".to_owned(), rate: Decimal::TEN, fixed: Decimal::ZERO, on: FeeBase::Gross }];
    let alone = alone(&shop);
    let sold = alone.sold(&shop);
    let efforts = Cost { other: sold.margin * money("2.5"), ..Cost::default() };
    assert_eq!(pieces_to_pay(&efforts, &sold), Some(Decimal::from(3)));
    // The lowest price is told as prices are shown: with tax, where they are inclusive.
    let net = net_of(&alone, &shop);
    assert!((alone.lowest - net * money("1.2")).abs() <= money("0.01"), "{} and {net}", alone.lowest);
}

/// The net price at which nothing is left over, by the sums of the textbook: cost over what fees leave of it.
fn net_of(alone: &SinglePiece, shop: &Rates) -> Decimal {
    let fee = shop.fees[0].rate * money("1.2") / Decimal::ONE_HUNDRED;
    alone.cost.total() / (Decimal::ONE - fee)
}
