//! The best whole pieces in the hours, by dynamic programming over a core that grows.
//!
//! If parts of pieces could be made, all of the best choices by rank would be made until the hours are full, and none of the
//! rest. A whole mix that is as good as any hardly differs from that but near the choice at which the hours break off. So
//! the search begins there with one state, all before and none behind, and lets in one choice after the other, behind and
//! before by turns: each state becomes as many as there are counts of that choice. A state is dropped when another takes no
//! more and brings no less, or when it can't beat the best whole mix found even with parts of pieces: hours left over bring
//! at most the rate of the next choice behind, hours too many cost at least the rate of the next one before. When no state
//! is left, or no choice, the best is proven.
//!
//! A core is E. Balas and E. Zemel's (Operations Research 28, 1980), one that grows with a dynamic programme D. Pisinger's
//! (A minimal algorithm for the 0-1 knapsack problem, Operations Research 45, 1997); both from memory.

use super::choice::{Choice, Rate};

/// States that are looked at before the search gives up proving: a bound of work and memory and not of time, so that the
/// same offers give the same mix on every machine.
const MOST_STATES: u32 = 2_000_000;

/// The best that was found.
pub(super) struct Found {
    /// How many of each choice.
    pub(super) counts: Vec<u32>,
    /// Units of money by which another mix may be better at most: 0 if none is.
    pub(super) gap: i64,
}

/// The best counts of choices that stand by rank. Of choices that are alike the first is made most.
pub(super) fn best(choices: &[Choice], hours: i64) -> Found {
    let mut core = Core::new(choices, hours);
    let gap = core.grow();
    let mut counts = core.best_counts();
    let mut at = 0;
    for alike in choices.chunk_by(|a, b| a == b) {
        counts[at..at + alike.len()].sort_unstable_by(|a, b| b.cmp(a));
        at += alike.len();
    }
    Found { counts, gap }
}

/// A mix to begin with: by rank, as many of each as still fit.
fn filled(choices: &[Choice], hours: i64) -> Vec<u32> {
    let mut left = hours;
    let counts = choices.iter().map(|choice| {
        let fit = choice.most_in(left);
        let count = if choice.brings(fit) > 0 { fit } else { 0 };
        left -= choice.takes(count);
        count
    });
    counts.collect()
}

/// Counts of the choices in the core, with all of those before and none of those behind.
#[derive(Clone, Copy)]
struct State {
    /// Units of hours that all of it takes; more than there are if some are yet to be taken away.
    taken: i64,
    /// Units of money that it brings.
    brought: i64,
    /// How many of the choice let in last.
    count: u32,
    /// The last of the steps to it, `None` at the beginning.
    step: Option<u32>,
}

/// A choice that is made otherwise than at the beginning, and the step before it.
#[derive(Clone, Copy)]
struct Step {
    choice: usize,
    count: u32,
    before: Option<u32>,
}

struct Core<'a> {
    choices: &'a [Choice],
    hours: i64,
    /// The choices let in are `first..end`.
    first: usize,
    end: usize,
    /// Choices before this one begin with all, this one and those behind with none.
    broken: usize,
    /// What can still be taken away: units of hours of all choices before `first`.
    removable: i64,
    /// What parts of pieces would bring, with the rate at the break.
    relaxed: Relaxed,
    states: Vec<State>,
    steps: Vec<Step>,
    /// What the best mix brings.
    most: i64,
    /// Its last step, which counts as one of `steps`; `None` for the mix begun with.
    best: Option<Step>,
    /// States that may yet be looked at.
    left: u32,
}

impl<'a> Core<'a> {
    fn new(choices: &'a [Choice], hours: i64) -> Self {
        let (mut taken, mut brought) = (0, 0);
        let all_fit = |choice: &&Choice| {
            let fit = taken + choice.takes(choice.most) <= hours;
            if fit {
                taken += choice.takes(choice.most);
                brought += choice.brings(choice.most);
            }
            fit
        };
        let broken = choices.iter().take_while(all_fit).count();
        let rate = choices.get(broken).map_or(Rate::NOTHING, Choice::rate);
        Self {
            choices,
            hours,
            first: broken,
            end: broken,
            broken,
            removable: taken,
            relaxed: Relaxed::new(rate, brought, hours - taken),
            states: vec![State { taken, brought, count: 0, step: None }],
            steps: Vec::new(),
            most: choices.iter().zip(filled(choices, hours)).map(|(choice, count)| choice.brings(count)).sum(),
            best: None,
            left: MOST_STATES,
        }
    }

    /// Lets in choices until the best is proven, or says by how much it may be beaten when the search gives up.
    fn grow(&mut self) -> i64 {
        let mut behind = true;
        while !self.states.is_empty() && (self.first > 0 || self.end < self.choices.len()) {
            let let_in = if self.first == 0 || behind && self.end < self.choices.len() {
                self.let_in(self.end, self.first, self.end + 1)
            } else {
                self.let_in(self.first - 1, self.first - 1, self.end)
            };
            if !let_in {
                return self.gap();
            }
            behind = !behind;
        }
        0
    }

    /// Makes states of each count of a choice, the core being `first..end` then; `false`, and all as it was, if there are
    /// too many to look at.
    fn let_in(&mut self, at: usize, first: usize, end: usize) -> bool {
        let choice = self.choices[at];
        let begun = if at < self.broken { choice.most } else { 0 };
        let removable = self.removable - choice.takes(begun);
        if self.relaxed.can_beat(self.most, &choice, begun) {
            let outlook = Outlook::new(self.choices, first, end, self.hours, removable);
            let Some(states) = self.with_each_count(at, begun, &outlook) else { return false };
            self.states = states;
            self.keep_undominated(at, begun);
        }
        (self.first, self.end, self.removable) = (first, end, removable);
        true
    }

    /// States of each count of a choice of which there were as many as begun with, if they may beat the best.
    fn with_each_count(&mut self, at: usize, begun: u32, outlook: &Outlook) -> Option<Vec<State>> {
        let choice = self.choices[at];
        // Of what takes no time by itself only all is worth its setting up.
        let least = if choice.hours == 0 { choice.most } else { 1 };
        // Whether too many are the better the more they are: one more brings more than to take away its hours costs.
        let rises = outlook.before.brings_less_than(choice.contribution, choice.hours);
        let mut next = Vec::with_capacity(self.states.len());
        for state in &self.states {
            let (taken, brought) = (state.taken - choice.takes(begun), state.brought - choice.brings(begun));
            let mut is_kept = |count: u32| {
                let state = State {
                    taken: taken + choice.takes(count),
                    brought: brought + choice.brings(count),
                    count,
                    step: state.step,
                };
                let kept = outlook.can_beat(self.most, &state);
                if kept {
                    next.push(state);
                }
                if state.taken <= self.hours && state.brought > self.most {
                    self.most = state.brought;
                    self.best = Some(Step { choice: at, count, before: state.step });
                }
                self.left = self.left.saturating_sub(1);
                kept && self.left > 0
            };
            // What can come of a count rises to the most that fits, and then falls; or rises to its end.
            let fit = choice.most_in(self.hours - taken);
            is_kept(0);
            (least..=fit).rev().all(&mut is_kept);
            if rises {
                (least.max(fit + 1)..=choice.most).rev().all(&mut is_kept);
            } else {
                (least.max(fit + 1)..=choice.most).all(&mut is_kept);
            }
            if self.left == 0 {
                return None;
            }
        }
        Some(next)
    }

    /// Drops states when another takes no more and brings no less, and notes the steps of the others.
    fn keep_undominated(&mut self, at: usize, begun: u32) {
        self.states.sort_by_key(|state| (state.taken, std::cmp::Reverse(state.brought)));
        let mut most = i64::MIN;
        self.states.retain(|state| {
            state.brought > most && {
                most = state.brought;
                true
            }
        });
        for state in self.states.iter_mut().filter(|state| state.count != begun) {
            self.steps.push(Step { choice: at, count: state.count, before: state.step });
            state.step = u32::try_from(self.steps.len() - 1).ok();
        }
    }

    /// Units of money that the states promise at best beyond what the best mix brings.
    fn gap(&self) -> i64 {
        let outlook = Outlook::new(self.choices, self.first, self.end, self.hours, self.removable);
        self.states.iter().map(|state| outlook.at_best(state)).max().map_or(0, |bound| (bound - self.most).max(0))
    }

    fn best_counts(&self) -> Vec<u32> {
        let Some(last) = self.best else { return filled(self.choices, self.hours) };
        let mut counts: Vec<u32> = self.choices.iter().map(|choice| choice.most).collect();
        counts[self.broken..].fill(0);
        let mut step = Some(&last);
        while let Some(Step { choice, count, before }) = step {
            counts[*choice] = *count;
            step = before.and_then(|before| self.steps.get(before as usize));
        }
        counts
    }
}

/// What may come of a state by the choices that are not let in yet.
struct Outlook {
    hours: i64,
    /// The best rate of those behind.
    behind: Rate,
    /// The least rate of those before, and units of hours of all of them.
    before: Rate,
    removable: i64,
}

impl Outlook {
    fn new(choices: &[Choice], first: usize, end: usize, hours: i64, removable: i64) -> Self {
        let before = first.checked_sub(1).and_then(|last| choices.get(last));
        Self {
            hours,
            behind: choices.get(end).map_or(Rate::NOTHING, Choice::rate),
            before: before.map_or(Rate::NOTHING, Choice::rate),
            removable,
        }
    }

    /// The hours left over, or below zero those too many, and the rate that they bring or cost; `None` if they can't be
    /// taken away.
    fn rate(&self, state: &State) -> Option<(i64, Rate)> {
        let spare = self.hours - state.taken;
        let rate = if spare < 0 { self.before } else { self.behind };
        (spare + self.removable >= 0).then_some((spare, rate))
    }

    /// Whether a state may bring a unit more than so many: without a division, as it is asked most often.
    fn can_beat(&self, most: i64, state: &State) -> bool {
        self.rate(state).is_some_and(|(spare, Rate { brings, takes })| {
            i128::from(spare) * i128::from(brings) >= i128::from(most + 1 - state.brought) * i128::from(takes)
        })
    }

    /// The most whole units that a state may bring.
    fn at_best(&self, state: &State) -> i64 {
        self.rate(state).map_or(0, |(spare, Rate { brings, takes })| {
            let rest = (i128::from(spare) * i128::from(brings)).div_euclid(i128::from(takes));
            i64::try_from(rest).map_or(i64::MAX, |rest| state.brought.saturating_add(rest))
        })
    }
}

/// What all hours bring when they are worth the rate at the break, whatever is made: no mix brings more.
struct Relaxed {
    rate: Rate,
    /// In units of money times the hours that the rate is for.
    most: i128,
}

impl Relaxed {
    /// With parts of pieces, the hours that are spare when all before the break are made being worth the rate.
    fn new(rate: Rate, brought: i64, spare: i64) -> Self {
        let most = i128::from(brought) * i128::from(rate.takes) + i128::from(spare) * i128::from(rate.brings);
        Self { rate, most }
    }

    /// Whether another count of a choice than that begun with may bring a unit more than so many.
    fn can_beat(&self, most: i64, choice: &Choice, begun: u32) -> bool {
        // What a count brings beyond its hours' worth; on a straight line but for none.
        let beyond = |count: u32| {
            i128::from(choice.brings(count)) * i128::from(self.rate.takes)
                - i128::from(choice.takes(count)) * i128::from(self.rate.brings)
        };
        let others = [0, 1, choice.most - 1, choice.most].into_iter().filter(|count| *count != begun);
        let gained = others.map(beyond).max().map_or(0, |other| other - beyond(begun));
        self.most + gained >= (i128::from(most) + 1) * i128::from(self.rate.takes)
    }
}
