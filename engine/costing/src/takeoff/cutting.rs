//! How long every cord is cut, and where it is folded.

use std::sync::Arc;

use reeve_measure::{Length, bound, count as as_count};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use super::draft::Draft;
use super::{CutLine, Fold, LegLine, PieceFault, Spot};
use crate::money::fraction;
use crate::piece::{CordGroup, LegSet, Piece, SetId};
use crate::rates::Bench;

/// What the steps take from each leg, and how much of that is cut off flush.
pub(super) fn leg_lengths(piece: &Piece, drafts: &[Draft]) -> (Vec<Length>, Vec<Length>) {
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

pub(super) fn cut_list(
    piece: &Piece,
    lengths: &[Length],
    wasted: &[Length],
    bench: &Bench,
) -> Result<Vec<CutLine>, Vec<PieceFault>> {
    let lines: Vec<_> = piece
        .groups
        .iter()
        .enumerate()
        .map(|(at, group)| {
            cut_line(piece, at, group, lengths, bench).map(|line| CutLine { wasted: both(group, wasted), ..line })
        })
        .collect();
    let faults: Vec<_> = lines.iter().filter_map(|line| line.as_ref().err().cloned()).collect();
    if faults.is_empty() { Ok(lines.into_iter().flatten().collect()) } else { Err(faults) }
}

fn cut_line(
    piece: &Piece,
    at: usize,
    group: &CordGroup,
    lengths: &[Length],
    bench: &Bench,
) -> Result<CutLine, PieceFault> {
    let net = both(group, lengths);
    let allowance = 1.0 + fraction(bench.cutting_allowance).to_f64().unwrap_or_default();
    let cut = (net * allowance).rounded_up_to(bench.cutting_step);
    if !bound::CUT_LENGTH.holds(cut.as_mm()) {
        let title = format!("each cord of `{}` comes to {:.2} m", group.name, cut.as_m());
        return Err(PieceFault::at(
            Spot::Cord(at, "group"),
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
            Spot::Cord(at, "of"),
            title,
            label,
            "a cord is cut in one length: take another put-up, or split the group",
        ));
    }
    let fold = group.folded.then(|| fold(piece, group, lengths[group.legs.0], net, cut));
    Ok(CutLine {
        group: group.name.clone(),
        cord: Arc::clone(&group.cord),
        count: u64::from(group.count),
        net,
        wasted: Length::ZERO,
        cut_mm,
        fold,
    })
}

/// Both legs of a folded cord, or the one of a single cord.
fn both(group: &CordGroup, lengths: &[Length]) -> Length {
    if group.folded { lengths[group.legs.0] + lengths[group.legs.1] } else { lengths[group.legs.0] }
}

/// Allowance and rounding are shared between the legs as their lengths are.
fn fold(piece: &Piece, group: &CordGroup, first: Length, net: Length, cut: Length) -> Fold {
    if group.legs.0 == group.legs.1 || net <= Length::ZERO {
        return Fold { at: cut / 2.0, from: None };
    }
    Fold { at: cut * (first / net), from: Some(piece.sets[group.legs.0].name.clone()) }
}

fn whole_mm(length: Length) -> u64 {
    Decimal::try_from(length.as_mm())
        .ok()
        .map(|mm| mm.round_dp(3).ceil())
        .and_then(|mm| mm.to_u64())
        .unwrap_or(u64::MAX)
}
