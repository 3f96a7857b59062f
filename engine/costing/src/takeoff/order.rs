//! The working order with its times, the chores beside it and the fittings.

use std::sync::Arc;

use reeve_measure::{Length, Time, count as as_count};
use rust_decimal::Decimal;

use super::draft::{Draft, Pull};
use super::{Chore, ChoreKind, Doing, KnotLine, Paced, StepLine, count_beads, count_legs};
use crate::basis::Basis;
use crate::learning_curve::{LearningCurve, Practised};
use crate::piece::{Piece, Step, Work};
use crate::risk::Spread;
use crate::run::Run;
use crate::store::{Fitting, Many};

pub(super) fn step_lines(piece: &Piece, drafts: Vec<Draft>, lengths: &[Length], basis: &Basis) -> Vec<StepLine> {
    let mut hanging = lengths.to_vec();
    let bench = &basis.rates.bench;
    let (pace, pull) = basis.pace_and_pull();
    let mut lines = Vec::new();
    for (step, draft) in piece.steps.iter().zip(drafts) {
        let own_time = draft.own_time.map_or(1.0, |own| libm::exp(own.mean));
        let tied_at = |pace: f64, pull: f64| -> Time {
            let run = |(of, run): &(Pull, Run)| {
                let hanging = below(piece, of, &hanging);
                Run { hanging, base: run.base * pace, pull: run.pull * pull, ..*run }.time()
            };
            bench.as_given(draft.runs.iter().map(run).sum())
        };
        let tying = tied_at(pace * own_time, pull * own_time);
        let paced = Paced {
            base: tied_at(1.0, 0.0),
            pull: tied_at(0.0, 1.0),
            own_time: draft.own_time,
            handling: bench.as_given(draft.handling),
        };
        for (set, length) in &draft.takes {
            hanging[*set] = hanging[*set] - *length;
        }
        let reckoned = Spread::certain(tying + basis.at_pace(draft.handling));
        let first = step.time.map_or(reckoned, |own| bench.spread_as_given(own));
        let own = step.time.is_some();
        // Minutes that the maker states are what it takes her now: neither pieces made before nor those of a row take off.
        let (before, practice) = if own { (0, LearningCurve::NONE) } else { (u64::from(piece.made), bench.practice) };
        lines.push(StepLine {
            title: step.title.clone(),
            strays: first.sd,
            paced: (!own).then_some(paced),
            time: Practised { first: first.mean, alike: 1, before, practice },
            doing: doing(piece, step, draft.knots),
            note: step.note.clone(),
        });
    }
    lines
}

fn below(piece: &Piece, pull: &Pull, hanging: &[Length]) -> Length {
    match pull {
        Pull::Set(set) => hanging[*set],
        Pull::Mean(pool) => {
            let all: Length = pool.iter().map(|set| hanging[*set] * f64::from(piece.sets[*set].count)).sum();
            all / as_count(count_legs(piece, pool))
        }
    }
}

fn doing(piece: &Piece, step: &Step, knots: Option<KnotLine>) -> Doing {
    match &step.work {
        Work::Tie(_) => knots.map_or(Doing::LayIn, Doing::Knots),
        Work::Bare { length, legs } => Doing::Bare(*length, count_legs(piece, legs)),
        Work::Tail { length, legs, .. } => Doing::Tail(*length, count_legs(piece, legs)),
        Work::Thread { bead, times, legs_each, legs } => {
            let beads = count_beads(piece, *times, *legs_each, legs);
            Doing::Beads(Arc::clone(&piece.fittings[*bead].many.0), beads)
        }
        Work::LayIn => Doing::LayIn,
    }
}

pub(super) fn chores(piece: &Piece, basis: &Basis) -> Vec<Chore> {
    let bench = &basis.rates.bench;
    let handling = &bench.handling;
    let cords: u64 = piece.groups.iter().map(|group| u64::from(group.count)).sum();
    let groups: u64 = piece.groups.iter().map(|_| 1).sum();
    let chore = |kind, time: Time, once| Chore {
        kind,
        parts: Vec::new(),
        time: basis.at_pace(time),
        strays: Time::ZERO,
        once,
        cost: Decimal::ZERO,
    };
    let mut chores = vec![
        chore(ChoreKind::LayOut, handling.set_up, true),
        chore(ChoreKind::SetMarks, handling.marks * as_count(groups), true),
        chore(ChoreKind::MeasureAndCut, handling.cut * as_count(cords), false),
    ];
    chores.extend(piece.tasks.iter().map(|task| {
        let time = bench.spread_as_given(task.time);
        Chore {
            kind: ChoreKind::Task(task.title.clone()),
            parts: Vec::new(),
            time: time.mean,
            strays: time.sd,
            once: task.once,
            cost: task.cost,
        }
    }));
    chores.push(chore(ChoreKind::Pack, handling.pack, false));
    chores.retain(|chore| chore.time > Time::ZERO || !chore.cost.is_zero());
    chores
}

/// Fittings of the piece; beads are counted by the steps that thread them.
pub(super) fn fittings(piece: &Piece) -> Vec<Many<Fitting>> {
    let mut all = Vec::new();
    for named in &piece.fittings {
        if named.many.0.bead.is_none() {
            add_fitting(&mut all, &named.many.0, named.many.1);
        }
    }
    for step in &piece.steps {
        if let Work::Thread { bead, times, legs_each, legs } = &step.work {
            let beads = count_beads(piece, *times, *legs_each, legs);
            add_fitting(&mut all, &piece.fittings[*bead].many.0, u32::try_from(beads).unwrap_or(u32::MAX));
        }
    }
    all
}

pub(crate) fn add_fitting(all: &mut Vec<Many<Fitting>>, fitting: &Arc<Fitting>, count: u32) {
    match all.iter_mut().find(|(known, _)| known.name == fitting.name) {
        Some((_, many)) => *many = many.saturating_add(count),
        None => all.push((Arc::clone(fitting), count)),
    }
}
