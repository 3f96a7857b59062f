//! Finds the least energy of tubes at one give.

use super::TightenError;
use super::contact::stiffness;
use super::energy::Energy;
use super::memory::{Memory, dot};
use super::tubes::Tubes;

/// How much work a tightening may take.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Budget {
    /// Length of one piece of centreline, in diameters.
    pub spacing: f64,
    /// Steps of one search, at most.
    pub steps: usize,
}

impl Default for Budget {
    fn default() -> Self {
        Self { spacing: 0.12, steps: 1500 }
    }
}

/// The tubes as they lie when nothing gets shorter any more.
///
/// Contact is summed over pieces of one assumed length. The search is repeated until they come out as long as was
/// assumed, and the tubes are cut anew where they come out much shorter or longer.
pub(super) fn relax(tubes: Tubes, give: f64, effort: &Budget) -> Result<Tubes, TightenError> {
    const CUTS: usize = 12;
    let mut tubes = tubes;
    for _ in 0..CUTS {
        let (even, spacing) = tubes.evened(effort.spacing);
        let mut search = Search::of(Energy::new(even, stiffness(give), spacing), spacing);
        let outcome = search.settle(effort.steps);
        tubes = search.energy.into_tubes();
        if tubes.nodes.iter().any(|node| !node.is_finite()) {
            return Err(TightenError::Lost);
        }
        if outcome == Outcome::Settled {
            break;
        }
    }
    Ok(tubes)
}

/// How a search ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Outcome {
    Settled,
    /// The pieces are no longer as long as they were cut.
    CutAnew,
}

/// One place on the way down.
#[derive(Debug, Clone)]
struct Iterate {
    state: Vec<f64>,
    slope: Vec<f64>,
    energy: f64,
    /// The mean length of a piece.
    piece: f64,
}

impl Iterate {
    fn look(&mut self, energy: &mut Energy) {
        self.energy = energy.at(&self.state, &mut self.slope);
        self.piece = energy.piece();
    }
}

/// A search with tubes that were cut once.
struct Search {
    energy: Energy,
    /// How long the pieces were cut.
    cut: f64,
    here: Iterate,
    /// The place that is tried next, and the direction it lies in: kept only so as not to be asked for anew.
    next: Iterate,
    up: Vec<f64>,
    memory: Memory,
}

impl Search {
    fn of(energy: Energy, cut: f64) -> Self {
        const MEMORY: usize = 6;
        let state = energy.state();
        let slope = vec![0.0; state.len()];
        let start = Iterate { state, slope: slope.clone(), energy: 0.0, piece: cut };
        Self { energy, cut, next: start.clone(), here: start, up: slope, memory: Memory::new(MEMORY) }
    }

    /// Goes down, again and again, until the pieces come out as long as was assumed.
    ///
    /// What was learnt of the slope is kept: the energy hardly changes with the assumed length.
    fn settle(&mut self, steps: usize) -> Outcome {
        const ROUNDS: usize = 6;
        const SAME: f64 = 0.002;
        // A longer piece presses more, so that it comes out longer still: by a tenth at most.
        const GOES_ON: f64 = 1.07;
        for _ in 0..ROUNDS {
            self.here.look(&mut self.energy);
            self.descend(steps);
            let (assumed, piece) = (self.energy.spacing(), self.here.piece);
            if (piece / assumed - 1.0).abs() < SAME {
                return Outcome::Settled;
            }
            if self.is_far_from_cut() {
                return Outcome::CutAnew;
            }
            self.energy.assume(assumed + (piece - assumed) * GOES_ON);
        }
        Outcome::Settled
    }

    fn is_far_from_cut(&self) -> bool {
        const FAR: f64 = 0.05;
        (self.here.piece / self.cut - 1.0).abs() > FAR
    }

    /// Goes down until the energy hardly falls any more, by the directions of L-BFGS.
    fn descend(&mut self, steps: usize) {
        // Over so many steps the energy must fall by this share, or the search is done. The larger one serves where the
        // pieces will be cut anew; with one that is larger still the turns of a wrap slide over its loop.
        const WINDOW: usize = 30;
        const WORTH_IT: f64 = 3e-7;
        const WORTH_CUTTING: f64 = 1e-6;
        let mut seen = vec![self.here.energy];
        for _ in 0..steps {
            if !self.step() {
                break;
            }
            seen.push(self.here.energy);
            let worth = if self.is_far_from_cut() { WORTH_CUTTING } else { WORTH_IT };
            let before = seen.len().checked_sub(WINDOW + 1).map(|at| seen[at]);
            if before.is_some_and(|before| before - self.here.energy < worth * self.here.energy.abs()) {
                break;
            }
        }
        self.energy.take(&self.here.state);
    }

    /// Goes one step down; whether there was one.
    fn step(&mut self) -> bool {
        self.up.copy_from_slice(&self.here.slope);
        self.memory.turn(&mut self.up);
        if self.lower() {
            let (from, to) = (&self.next, &self.here);
            self.memory.learn((&from.state, &from.slope), (&to.state, &to.slope));
            return true;
        }
        // A direction that leads nowhere may be the memory's fault: once more from the bare slope.
        self.memory.forget();
        self.up.copy_from_slice(&self.here.slope);
        self.lower()
    }

    /// Goes to a lower place against a direction, by the full step if it is short enough to pass nothing by, else by a
    /// shorter one. The place it came from is `next` then.
    fn lower(&mut self) -> bool {
        // No number moves further than this in one step, in diameters: cords can't jump over one another.
        const FURTHEST: f64 = 0.15;
        // Of the fall that the slope promises at least this must be met (Armijo's condition).
        const PROMISE: f64 = 1e-4;
        const TRIES: usize = 20;
        let fall = dot(&self.here.slope, &self.up);
        let furthest = self.up.iter().fold(0.0_f64, |most, up| most.max(up.abs()));
        if fall <= 0.0 || !furthest.is_finite() {
            return false;
        }
        let mut step = (FURTHEST / furthest).min(1.0);
        for _ in 0..TRIES {
            for ((to, from), up) in self.next.state.iter_mut().zip(&self.here.state).zip(&self.up) {
                *to = from - step * up;
            }
            self.next.look(&mut self.energy);
            if self.next.energy <= self.here.energy - PROMISE * step * fall {
                std::mem::swap(&mut self.here, &mut self.next);
                return true;
            }
            step *= 0.4;
        }
        false
    }
}
