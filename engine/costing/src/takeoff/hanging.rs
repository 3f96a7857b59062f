//! Whether every leg has joined the work before a step uses it, and ends in a tail.

use super::{DesignPlace, PieceFault};
use crate::piece::{Piece, SetId, Step, Work};

/// Every group is hung once, and before a step uses its legs.
pub(super) fn check_hanging(piece: &Piece) -> Vec<PieceFault> {
    let mut hung = vec![false; piece.groups.len()];
    let mut faults = Vec::new();
    for (at, step) in piece.steps.iter().enumerate() {
        for group in &step.hang {
            if std::mem::replace(&mut hung[*group], true) {
                let title = format!("the cords of `{}` are hung a second time", piece.groups[*group].name);
                faults.push(PieceFault::at(DesignPlace::Step(at, "hang"), title, "once is enough", ""));
            }
        }
        faults.extend(not_hung(piece, at, step, &mut hung));
    }
    let never = hung.iter().enumerate().filter(|(_, hung)| !**hung);
    faults.extend(never.map(|(at, _)| {
        PieceFault::at(
            DesignPlace::Cord(at, "group"),
            format!("the cords of `{}` never join the work", piece.groups[at].name),
            "no step hangs or uses them",
            "name the group in the `hang` of a step, or take it out",
        )
    }));
    faults
}

/// The first use of each group that has not joined; it counts as hung from there, so that one slip is one fault.
fn not_hung(piece: &Piece, at: usize, step: &Step, hung: &mut [bool]) -> Vec<PieceFault> {
    if let Work::Tie(tie) = &step.work
        && tie.knot.working.joins
    {
        tie.working.iter().for_each(|set| hung[piece.sets[*set].group] = true);
    }
    let mut faults = Vec::new();
    for (key, set) in used_sets(step) {
        let group = piece.sets[set].group;
        if !std::mem::replace(&mut hung[group], true) {
            faults.push(PieceFault::at(
                DesignPlace::Step(at, key),
                format!("`{}` is not hung yet", piece.sets[set].name),
                "this step needs its legs",
                format!("name `{}` in the `hang` of this step or an earlier one", piece.groups[group].name),
            ));
        }
    }
    faults
}

/// Groups with legs that no step leaves a tail on: they would end in their last knot.
pub(super) fn without_tail(piece: &Piece) -> Vec<PieceFault> {
    let tailed = |set: SetId| {
        piece.steps.iter().any(|step| matches!(&step.work, Work::Tail { legs, .. } if legs.contains(&set)))
    };
    let bare_ended = piece.sets.iter().enumerate().filter(|(at, _)| !tailed(*at));
    bare_ended
        .map(|(_, set)| {
            PieceFault::at(
                DesignPlace::Cord(set.group, "group"),
                format!("the legs of `{}` have no tail", set.name),
                "nothing is left below their last step to tie or trim with",
                "add a step with `tail` and these legs; flush = true for ends that are cut off",
            )
        })
        .collect()
}

/// The sets that a step names, with the key each is named under.
fn used_sets(step: &Step) -> Vec<(&'static str, SetId)> {
    let named = |key, sets: &[SetId]| sets.iter().map(move |set| (key, *set)).collect::<Vec<_>>();
    let mut used = named("alongside", &step.alongside);
    match &step.work {
        Work::Tie(tie) => {
            used.extend(named("working", &tie.working));
            used.extend(named("core", &tie.core));
        }
        Work::Bare { legs, .. } | Work::Tail { legs, .. } | Work::Thread { legs, .. } => {
            used.extend(named("legs", legs));
        }
        Work::LayIn => {}
    }
    used
}
