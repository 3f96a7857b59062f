//! How long every cord is cut, and where it is folded.

use std::sync::Arc;

use reeve_measure::{Length, bound, count as as_count};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use super::draft::{Doubt, Draft};
use super::{CutLine, DesignPlace, Fold, LegLine, PieceFault};
use crate::hand::COVER;
use crate::money::{fraction, to_decimals};
use crate::piece::{CordGroup, LegSet, Piece, SetId};
use crate::rates::Bench;

/// How the legs of a piece are cut: net, and what is added for safety.
pub(super) struct Legs {
    /// What the steps take from each leg.
    pub(super) lengths: Vec<Length>,
    /// Of that, what is cut off flush.
    pub(super) wasted: Vec<Length>,
    /// What is cut on top for each leg.
    pub(super) spare: Vec<Length>,
}

/// The legs of a piece, with what is cut on top: the shop's allowance, or 95 in 100 of what the samples leave open if that
/// is more.
pub(super) fn legs_of(piece: &Piece, drafts: &[Draft], bench: &Bench) -> Legs {
    let (lengths, wasted) = leg_lengths(piece, drafts);
    let share = fraction(bench.cutting_allowance).to_f64().unwrap_or_default();
    let spare = |(length, sd): (&Length, Length)| (*length * share).max(sd * COVER);
    let spare = lengths.iter().zip(leg_doubts(piece, drafts)).map(spare).collect();
    Legs { lengths, wasted, spare }
}

/// Standard deviation of each leg.
///
/// What is unknown of a knot in a cord is the same in all of its knots, so it adds up over them; what is unknown of
/// different ones is not, so their squares add up.
fn leg_doubts(piece: &Piece, drafts: &[Draft]) -> Vec<Length> {
    let mut doubts: Vec<&Doubt> = drafts.iter().filter_map(|draft| draft.doubt.as_ref()).collect();
    doubts.sort_by(|a, b| a.of.cmp(&b.of));
    let mut squares = vec![0.0; piece.sets.len()];
    for alike in doubts.chunk_by(|a, b| a.of == b.of) {
        let mut sums = vec![Length::ZERO; piece.sets.len()];
        alike.iter().flat_map(|doubt| &doubt.legs).for_each(|(set, sd)| sums[*set] += *sd);
        squares.iter_mut().zip(&sums).for_each(|(square, sum)| *square += sum.as_mm() * sum.as_mm());
    }
    squares.into_iter().map(|square: f64| Length::mm(square.sqrt())).collect()
}

/// What the steps take from each leg, and how much of that is cut off flush.
fn leg_lengths(piece: &Piece, drafts: &[Draft]) -> (Vec<Length>, Vec<Length>) {
    let sum = |takes: &mut dyn Iterator<Item = &(SetId, Length)>| {
        let mut lengths = vec![Length::ZERO; piece.sets.len()];
        takes.for_each(|(set, length)| lengths[*set] += *length);
        lengths
    };
    (sum(&mut drafts.iter().flat_map(|draft| &draft.takes)), sum(&mut drafts.iter().flat_map(|draft| &draft.wasted)))
}

pub(super) fn leg_lines(piece: &Piece, lengths: &[Length]) -> Vec<LegLine> {
    let line = |(set, length): (&LegSet, &Length)| LegLine {
        set: set.name.clone(),
        count: u64::from(set.count),
        length: *length,
    };
    piece.sets.iter().zip(lengths).map(line).collect()
}

pub(super) fn cut_list(piece: &Piece, legs: &Legs, bench: &Bench) -> Result<Vec<CutLine>, Vec<PieceFault>> {
    let lines: Vec<_> =
        piece.groups.iter().enumerate().map(|(at, group)| cut_line(piece, at, group, legs, bench)).collect();
    let faults: Vec<_> = lines.iter().filter_map(|line| line.as_ref().err().cloned()).collect();
    if faults.is_empty() { Ok(lines.into_iter().flatten().collect()) } else { Err(faults) }
}

fn cut_line(piece: &Piece, at: usize, group: &CordGroup, legs: &Legs, bench: &Bench) -> Result<CutLine, PieceFault> {
    let net = both(group, &legs.lengths);
    let cut = (net + both(group, &legs.spare)).rounded_up_to(bench.cutting_step);
    if !bound::CUT_LENGTH.holds(cut.as_mm()) {
        let title = format!("each cord of `{}` comes to {:.2} m", group.name, cut.as_m());
        return Err(PieceFault::at(
            DesignPlace::Cord(at, "group"),
            title,
            bound::CUT_LENGTH.to_string(),
            "check the repeats and lengths of its steps",
        ));
    }
    let longest = group.cord.put_ups.iter().map(|put_up| put_up.length_mm).max().unwrap_or_default();
    let cut_mm = whole_mm(cut);
    if cut_mm > longest {
        let title = format!("each cord of `{}` comes to {:.2} m", group.name, cut.as_m());
        let label =
            format!("the longest put-up of `{}` has {:.2} m", group.cord.name, Length::mm(as_count(longest)).as_m());
        return Err(PieceFault::at(
            DesignPlace::Cord(at, "of"),
            title,
            label,
            "a cord is cut in one length: take another put-up, or split the group",
        ));
    }
    let fold = group.folded.then(|| fold(piece, group, legs, cut));
    Ok(CutLine {
        group: group.name.clone(),
        cord: Arc::clone(&group.cord),
        count: u64::from(group.count),
        net,
        wasted: both(group, &legs.wasted),
        cut_mm,
        fold,
    })
}

/// Both legs of a folded cord, or the one of a single cord.
fn both(group: &CordGroup, lengths: &[Length]) -> Length {
    if group.folded { lengths[group.legs.0] + lengths[group.legs.1] } else { lengths[group.legs.0] }
}

/// Each leg gets what it takes and what is cut on top for it; rounding is shared as these are.
fn fold(piece: &Piece, group: &CordGroup, legs: &Legs, cut: Length) -> Fold {
    let (first, second) = group.legs;
    let with_spare = |set: SetId| legs.lengths[set] + legs.spare[set];
    let whole = with_spare(first) + with_spare(second);
    if first == second || whole <= Length::ZERO {
        return Fold { at: cut / 2.0, from: None };
    }
    Fold { at: cut * (with_spare(first) / whole), from: Some(piece.sets[first].name.clone()) }
}

fn whole_mm(length: Length) -> u64 {
    Decimal::try_from(length.as_mm())
        .ok()
        .map(|mm| to_decimals(mm, 3).ceil())
        .and_then(|mm| mm.to_u64())
        .unwrap_or(u64::MAX)
}
