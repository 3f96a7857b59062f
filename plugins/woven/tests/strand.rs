//! The rule of the common divisor and the number of crossings, by walking along the cord.

#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use std::collections::BTreeMap;

use reeve_kit::{Knot, Setting};
use woven::TurksHead;

/// A cord's way over the rolled-out knot: rows from edge to edge, places round it in halves of a bight's width.
struct Walk {
    /// Places of crossings in the order the cord comes to them.
    crossings: Vec<(u32, u32)>,
    /// Bights of the lower edge that it turns round.
    bights: Vec<u32>,
}

/// Walks up from a bight of the lower edge until it is there again.
fn walk(leads: u32, bights: u32, from: u32) -> Walk {
    let mut walked = Walk { crossings: Vec::new(), bights: Vec::new() };
    let (mut place, mut row, mut up) = (from, 0, true);
    loop {
        if row == 0 {
            walked.bights.push(place);
        }
        place = (place + 1) % (2 * bights);
        row = if up { row + 1 } else { row - 1 };
        match row {
            0 if place == from => return walked,
            0 => up = true,
            edge if edge == leads => up = false,
            _ => walked.crossings.push((place, row)),
        }
    }
}

/// Every cord of the knot.
fn cords(leads: u32, bights: u32) -> Vec<Walk> {
    let mut left: Vec<u32> = (0..bights).map(|bight| 2 * bight).collect();
    let mut cords = Vec::new();
    while let Some(from) = left.first().copied() {
        let cord = walk(leads, bights, from);
        left.retain(|bight| !cord.bights.contains(bight));
        cords.push(cord);
    }
    cords
}

fn every_knot() -> impl Iterator<Item = (u32, u32)> {
    (2..=17).flat_map(|leads| (2..=64).map(move |bights| (leads, bights)))
}

#[test]
fn one_cord_is_tied_and_several_are_refused_with_their_number() {
    for (leads, bights) in every_knot() {
        let values = [f64::from(leads), f64::from(bights), 1.0, 0.0];
        let answer = TurksHead::take(&Setting::of::<TurksHead>(1.0, &values).on_rod(100.0));
        match cords(leads, bights).len() {
            1 => assert!(answer.is_ok(), "{leads} leads, {bights} bights: {answer:?}"),
            several => {
                let words = answer.unwrap_err().words;
                assert!(words.contains(&format!("takes {several} cords")), "{leads} leads, {bights} bights: {words}");
            }
        }
    }
}

#[test]
fn two_cords_meet_at_each_of_one_crossing_fewer_than_leads_times_bights() {
    for (leads, bights) in every_knot() {
        let mut met: BTreeMap<(u32, u32), u32> = BTreeMap::new();
        for crossing in cords(leads, bights).iter().flat_map(|cord| &cord.crossings) {
            *met.entry(*crossing).or_default() += 1;
        }
        assert_eq!(u32::try_from(met.len()).unwrap(), (leads - 1) * bights);
        assert!(met.values().all(|legs| *legs == 2));
    }
}

#[test]
fn over_and_under_in_turn_fits_at_every_crossing() {
    // So every second passage is a tuck: as many as there are crossings.
    for (leads, bights) in every_knot() {
        let cords = cords(leads, bights);
        let [cord] = cords.as_slice() else { continue };
        let mut over: BTreeMap<(u32, u32), usize> = BTreeMap::new();
        for (passed, crossing) in cord.crossings.iter().enumerate() {
            *over.entry(*crossing).or_default() += passed % 2;
        }
        assert!(over.values().all(|over| *over == 1), "{leads} leads, {bights} bights");
    }
}
