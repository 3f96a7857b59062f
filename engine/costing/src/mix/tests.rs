//! The textbook's case, every small mix tried, larger ones by a table of hours, and the relaxation by its dual.

use proptest::prelude::*;
use rust_decimal::prelude::ToPrimitive;

use super::*;

/// An offer of a contribution in cents and of hundredths of an hour.
fn offer(cents: i64, hundredths: i64, demand: Option<u32>) -> Offer {
    Offer { contribution: Decimal::new(cents, 2), hours: Decimal::new(hundredths, 2), once: Once::default(), demand }
}

fn whole(number: i64) -> Decimal {
    Decimal::from(number)
}

/// 2 h bring 208 and 4 h bring 316: 104 and 79 an hour (managerial-accounting textbook).
fn textbook(first: Option<u32>, second: Option<u32>) -> [Offer; 2] {
    [offer(20_800, 200, first), offer(31_600, 400, second)]
}

#[test]
fn the_textbook_ranks_by_the_hour() {
    let [first, second] = textbook(None, None);
    assert_eq!((first.per_hour(), second.per_hour()), (Some(whole(104)), Some(whole(79))));
    // 408 hours: the first alone brings 42,432, the second alone 32,232 (the same textbook).
    let mix = best_mix(&[first, second], whole(408)).unwrap();
    assert_eq!((mix.pieces, mix.contribution, mix.hours), (vec![204, 0], whole(42_432), whole(408)));
    assert_eq!((mix.another_hour, mix.proven), (whole(104), true));
    let alone = best_mix(&[second], whole(408)).unwrap();
    assert_eq!((alone.pieces, alone.contribution), (vec![102], whole(32_232)));
}

#[test]
fn what_demand_leaves_goes_to_the_next() {
    // By hand: 150 of the first take 300 h; 27 of the second take the other 108 h.
    let mix = best_mix(&textbook(Some(150), None), whole(408)).unwrap();
    assert_eq!((mix.pieces, mix.contribution), (vec![150, 27], whole(150 * 208 + 27 * 316)));
    assert_eq!((mix.hours, mix.another_hour), (whole(408), whole(79)));
    // All that can be sold is made: another hour brings nothing.
    let mix = best_mix(&textbook(Some(150), Some(20)), whole(408)).unwrap();
    assert_eq!((mix.pieces, mix.hours, mix.another_hour), (vec![150, 20], whole(380), Decimal::ZERO));
    // The hour after the last lies in both: half of one, half of the other.
    let mix = best_mix(&textbook(Some(150), None), Decimal::new(2_995, 1)).unwrap();
    assert_eq!(mix.another_hour, Decimal::new(915, 1));
}

#[test]
fn whole_pieces_need_not_follow_the_rank() {
    // By hand: in 10 h, one of 6 h at 11 an hour leaves 4 h idle; two of 5 h at 10 an hour bring 100.
    let mix = best_mix(&[offer(6_600, 600, None), offer(5_000, 500, None)], whole(10)).unwrap();
    assert_eq!((mix.pieces, mix.contribution, mix.another_hour), (vec![0, 2], whole(100), whole(11)));
}

#[test]
fn what_does_not_pay_is_never_made_and_what_takes_no_time_always() {
    let offers = [offer(-500, 100, None), offer(0, 0, None), offer(300, 0, Some(7)), offer(900, 200, Some(1))];
    let mix = best_mix(&offers, whole(8)).unwrap();
    assert_eq!((mix.pieces, mix.contribution, mix.hours), (vec![0, 0, 7, 1], whole(30), whole(2)));
    for hours in [0, -3] {
        assert_eq!(best_mix(&offers, whole(hours)).unwrap().pieces, [0, 0, 7, 0]);
    }
    assert_eq!(offers[2].per_hour(), None);
    let nothing = best_mix(&[], whole(8)).unwrap();
    assert!(nothing.pieces.is_empty() && nothing.proven);
}

#[test]
fn what_cannot_be_reckoned_is_refused() {
    let endless = [offer(900, 200, None), offer(300, 0, None)];
    assert_eq!(best_mix(&endless, whole(8)), Err(MixError::NoBound(1)));
    let many = vec![endless[0]; MOST_OFFERS + 1];
    assert_eq!(best_mix(&many, whole(8)), Err(MixError::TooMany(MOST_OFFERS + 1)));
    assert_eq!(best_mix(&endless[..1], Decimal::MAX), Err(MixError::TooMuch));
    let dear = Offer { contribution: Decimal::MAX, hours: Decimal::ONE, once: Once::default(), demand: None };
    assert_eq!(best_mix(&[dear], whole(8)), Err(MixError::TooMuch));
    let short = Offer { hours: Decimal::new(1, 28), ..dear };
    assert_eq!(best_mix(&[short], whole(8)), Err(MixError::TooMuch));
}

#[test]
fn figures_without_end_keep_within_the_hours() {
    let third = |number| whole(number) / whole(3);
    // By hand: six of a third of an hour at 33.33... bring 200 and beat two of 0.7 h at 70 with one of the others.
    let money = Offer { contribution: third(100), hours: Decimal::new(33, 2), once: Once::default(), demand: None };
    let mix = best_mix(&[money, offer(7000, 70, None)], whole(2)).unwrap();
    assert_eq!((mix.pieces, mix.contribution), (vec![6, 0], third(100) * whole(6)));
    // 0.333... h upwards in its ninth digit fits five times into 2 h.
    let time = Offer { contribution: whole(30), hours: third(1), once: Once::default(), demand: None };
    let mix = best_mix(&[time], whole(2)).unwrap();
    assert_eq!((mix.pieces, mix.hours), (vec![5], third(1) * whole(5)));
}

#[test]
fn what_is_set_up_once_is_charged_once_for_each_design_made() {
    // By hand: in 10 h, of pieces of 2 h that bring 20 each and 1 h to set up, four fit and take 9 h; charged each time
    // there would be three.
    let set_up = |hours: i64, cost: i64| Once { hours: whole(hours), cost: whole(cost) };
    let one = Offer { once: set_up(1, 5), ..offer(2_000, 200, None) };
    let mix = best_mix(&[one], whole(10)).unwrap();
    assert_eq!((mix.pieces, mix.hours, mix.contribution, mix.proven), (vec![4], whole(9), whole(75), true));
    // One alone: 15 in 3 h.
    assert_eq!(one.per_hour(), Some(whole(5)));
    // Two designs alike: eight of one need one setting up, four of each would need two, and 17 h hold only seven then.
    let pair = [Offer { demand: Some(8), ..one }, Offer { demand: Some(8), ..one }];
    let mix = best_mix(&pair, whole(17)).unwrap();
    assert_eq!((mix.pieces.iter().max(), mix.hours, mix.contribution), (Some(&8), whole(17), whole(155)));
    // What costs more to set up than all its buyers bring is not begun, however much one brings.
    let dear = Offer { once: set_up(0, 50), ..offer(2_000, 100, Some(2)) };
    let mix = best_mix(&[dear, offer(100, 100, Some(3))], whole(10)).unwrap();
    assert_eq!((mix.pieces, mix.contribution, mix.another_hour), (vec![0, 3], whole(3), Decimal::ZERO));
    // It takes no more time than its setting up.
    let quick = Offer { once: set_up(2, 0), ..offer(300, 0, Some(5)) };
    let mix = best_mix(&[quick], whole(2)).unwrap();
    assert_eq!((mix.pieces, mix.hours), (vec![5], whole(2)));
    assert_eq!(best_mix(&[quick], whole(1)).unwrap().pieces, [0]);
    assert_eq!(best_mix(&[Offer { demand: None, ..quick }], whole(2)), Err(MixError::NoBound(0)));
}

/// Offers that are worth almost the same an hour: what is hardest to prove.
fn alike(count: usize) -> Vec<Offer> {
    let hours = (1..=count as u64).map(|at| at * 7_919 % 19_501 + 500);
    let offer = |hours| Offer {
        contribution: Decimal::new(hours / 4 + 500, 2),
        hours: Decimal::new(hours * 10, 4),
        once: Once::default(),
        demand: Some(9),
    };
    hours.map(|hours| offer(hours.cast_signed())).collect()
}

#[test]
fn the_hardest_offers_come_near_what_parts_of_pieces_would_bring_and_always_the_same_way() {
    let once = Once { hours: Decimal::new(16, 2), cost: Decimal::new(5, 2) };
    for count in [100, MOST_OFFERS] {
        let plain = alike(count);
        let set_up: Vec<Offer> = plain.iter().map(|offer| Offer { once, ..*offer }).collect();
        for offers in [plain, set_up] {
            let mix = best_mix(&offers, whole(1_607)).unwrap();
            assert_eq!(mix, best_mix(&offers, whole(1_607)).unwrap());
            let most = relaxed(&offers, whole(1_607));
            let brought = mix.contribution.to_f64().unwrap();
            assert!(brought > 0.999 * most && brought <= most + 1e-6, "{brought} {most}");
        }
    }
}

/// All bring 1 an hour, and their hours are multiples of three units but for one that hardly pays: no mix fills hours that are
/// one unit more than such a multiple, and to prove it every sum would have to be tried.
#[test]
fn what_is_not_proven_is_said() {
    let three = |at: i64| {
        let hundredths = 3 * (1_000_000 + at * 7_919_317 % 1_000_003);
        offer(hundredths, hundredths, Some(1))
    };
    let offers: Vec<Offer> = (1..=60).map(three).chain([offer(1, 4, Some(1))]).collect();
    let hours = Decimal::new(3 * 45_000_000 + 1, 2);
    let mix = best_mix(&offers, hours).unwrap();
    assert!(!mix.proven && mix.contribution <= hours - Decimal::new(1, 2), "{mix:?}");
    assert!(mix.contribution >= hours * Decimal::new(999, 3), "{mix:?}");
}

/// The best contribution in pence within so many minutes, by a table of every minute: exact dynamic programming.
fn by_table(offers: &[(i64, usize, usize, i64, usize)], minutes: usize) -> i64 {
    let mut best = vec![0_i64; minutes + 1];
    for &(pence, each, once, cost, demand) in offers {
        let before = best.clone();
        for (left, best) in best.iter_mut().enumerate() {
            for count in (1..=demand).take_while(|count| once + count * each <= left) {
                *best = (*best).max(before[left - once - count * each] + i64::try_from(count).unwrap() * pence - cost);
            }
        }
    }
    best[minutes]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, ..ProptestConfig::default() })]

    #[test]
    fn many_offers_bring_what_a_table_of_all_minutes_finds(
        offers in prop::collection::vec((100_i64..9_000, 20_usize..600, 0_usize..60, 0_i64..900, 1_usize..4), 100..300),
        minutes in 0_usize..2_400,
    ) {
        let minutes_of = |minutes: usize| Decimal::from(minutes);
        let asked = offers.iter().map(|&(pence, each, once, cost, demand)| Offer {
            contribution: Decimal::new(pence, 2),
            hours: minutes_of(each),
            once: Once { hours: minutes_of(once), cost: Decimal::new(cost, 2) },
            demand: u32::try_from(demand).ok(),
        });
        let mix = best_mix(&asked.collect::<Vec<_>>(), minutes_of(minutes)).unwrap();
        prop_assert!(mix.proven);
        prop_assert_eq!(mix.contribution, Decimal::new(by_table(&offers, minutes), 2));
    }
}

#[test]
fn offers_of_one_rate_leave_hardly_an_hour_idle() {
    // 2.50 an hour but for a rounding: the best of each hour first would leave up to two hours of 408 idle.
    let hours = (52..60).map(|at| at * 7_919 % 19_501 + 500);
    let offer = |hours| Offer {
        contribution: Decimal::new(hours * 5 / 2, 3),
        hours: Decimal::new(hours, 3),
        once: Once::default(),
        demand: None,
    };
    let offers: Vec<Offer> = hours.map(offer).collect();
    for hours in [160, 408, 1_607] {
        let mix = best_mix(&offers, whole(hours)).unwrap();
        assert!(whole(hours) - mix.hours <= Decimal::new(5, 2), "{hours} {mix:?}");
    }
}

fn offers(most: usize) -> impl Strategy<Value = Vec<Offer>> {
    let one = (-500_i64..6_000, 100_i64..700, prop::option::of(0_u32..6));
    let one = one.prop_map(|(cents, hundredths, demand)| offer(cents, hundredths, demand));
    // A rate for all makes mixes that bring the same.
    let same = (100_i64..700, prop::option::of(0_u32..6));
    let same = same.prop_map(|(hundredths, demand)| offer(hundredths * 25, hundredths, demand));
    // With something that is done once for all of them, or nothing.
    let once = prop_oneof![Just((0, 0)), (0_i64..300, 0_i64..2_000)];
    let once =
        once.prop_map(|(hundredths, cents)| Once { hours: Decimal::new(hundredths, 2), cost: Decimal::new(cents, 2) });
    let offer = (prop_oneof![one, same], once).prop_map(|(offer, once)| Offer { once, ..offer });
    prop::collection::vec(offer, 0..=most)
}

/// The best contribution of every mix there is.
fn tried(offers: &[Offer], hours: Decimal) -> Decimal {
    let Some((first, rest)) = offers.split_first() else { return Decimal::ZERO };
    let mut best = tried(rest, hours);
    for count in 1..=first.demand.unwrap_or(u32::MAX) {
        let left = hours - first.once.hours - Decimal::from(count) * first.hours;
        if left < Decimal::ZERO {
            break;
        }
        best = best.max(Decimal::from(count) * first.contribution - first.once.cost + tried(rest, left));
    }
    best
}

/// The optimum when parts of a piece may be made, and as large a part of what is done once as of all that find a buyer: that
/// of its dual, the least price of an hour at which the hours and what all offers bring above that price are worth.
fn relaxed(offers: &[Offer], hours: Decimal) -> f64 {
    let number = |figure: Decimal| figure.to_f64().unwrap();
    let (mut endless, mut bounded): (f64, Vec<(f64, f64)>) = (0.0, Vec::new());
    for offer in offers.iter().filter(|offer| offer.demand != Some(0)) {
        match offer.demand.map(f64::from) {
            None => endless = endless.max(number(offer.contribution) / number(offer.hours)),
            Some(all) => bounded.push((
                all * number(offer.contribution) - number(offer.once.cost),
                all * number(offer.hours) + number(offer.once.hours),
            )),
        }
    }
    let worth = |price: f64| {
        let above: f64 = bounded.iter().map(|(brings, takes)| (brings - price * takes).max(0.0)).sum();
        price * number(hours) + above
    };
    // It is a polygon, lowest in one of its corners.
    let corners = bounded.iter().map(|(brings, takes)| brings / takes).filter(|price| *price > endless);
    // With many offers each corner would cost a sum over all: the slope changes sign once, so the lowest is found by halves.
    let mut corners: Vec<f64> = corners.chain([endless]).collect();
    corners.sort_by(f64::total_cmp);
    let (mut low, mut high) = (0, corners.len() - 1);
    while low < high {
        let middle = usize::midpoint(low, high);
        if worth(corners[middle]) <= worth(corners[middle + 1]) { high = middle } else { low = middle + 1 }
    }
    worth(corners[low])
}

proptest! {
    #[test]
    fn no_small_mix_beats_it(offers in offers(4), hours in 0_i64..1_000) {
        let hours = Decimal::new(hours, 2);
        let mix = best_mix(&offers, hours).unwrap();
        prop_assert!(mix.proven && mix.hours <= hours);
        prop_assert_eq!(mix.contribution, tried(&offers, hours));
    }

    #[test]
    fn money_in_other_units_leaves_the_pieces(offers in offers(12), hours in 0_i64..9_000) {
        let hours = Decimal::new(hours, 2);
        let tenfold: Vec<Offer> =
            offers.iter().map(|offer| Offer {
                contribution: offer.contribution * whole(10),
                once: Once { cost: offer.once.cost * whole(10), ..offer.once },
                ..*offer
            }).collect();
        let (mix, dear) = (best_mix(&offers, hours).unwrap(), best_mix(&tenfold, hours).unwrap());
        prop_assert_eq!(mix.pieces, dear.pieces);
        prop_assert_eq!(mix.contribution * whole(10), dear.contribution);
    }

    #[test]
    fn another_hour_never_costs_and_falls(offers in offers(8), hours in 0_i64..9_000, more in 0_i64..3_000) {
        let at = |hours| best_mix(&offers, Decimal::new(hours, 2)).unwrap().another_hour;
        let (sooner, later) = (at(hours), at(hours + more));
        // A division is rounded in its twenty-eighth digit.
        prop_assert!(later >= Decimal::ZERO && later <= sooner + Decimal::new(1, 20));
    }

    #[test]
    fn another_hour_is_what_parts_of_pieces_would_bring_in_it(offers in offers(8), hours in 0_i64..9_000) {
        let hours = Decimal::new(hours, 2);
        let gain = relaxed(&offers, hours + Decimal::ONE) - relaxed(&offers, hours);
        let mix = best_mix(&offers, hours).unwrap();
        prop_assert!((mix.another_hour.to_f64().unwrap() - gain).abs() < 1e-6);
        prop_assert!(mix.contribution.to_f64().unwrap() <= relaxed(&offers, hours) + 1e-6);
    }
}
