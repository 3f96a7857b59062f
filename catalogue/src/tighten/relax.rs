//! Finds the least energy of tubes at one give.

use lbfgs::Lbfgs;

use super::TightenError;
use super::contact::stiffness;
use super::energy::Energy;
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
/// Contact is summed over pieces of the length they had at the start, so the search is repeated, cut anew, until the
/// length no longer changes.
pub(super) fn relax(tubes: Tubes, give: f64, effort: &Budget) -> Result<Tubes, TightenError> {
    const ROUNDS: usize = 12;
    const SAME: f64 = 0.001;
    let mut tubes = tubes;
    for _ in 0..ROUNDS {
        let before = tubes.length();
        let (even, spacing) = tubes.evened(effort.spacing);
        let mut energy = Energy::new(even, stiffness(give), spacing);
        descend(&mut energy, effort.steps);
        tubes = energy.into_tubes();
        if tubes.nodes.iter().any(|node| !node.is_finite()) {
            return Err(TightenError::Lost);
        }
        if (tubes.length() / before - 1.0).abs() < SAME {
            break;
        }
    }
    Ok(tubes)
}

/// One place on the way down.
struct Iterate {
    state: Vec<f64>,
    slope: Vec<f64>,
    energy: f64,
}

/// Goes down until the energy hardly falls any more, by the directions of L-BFGS.
fn descend(energy: &mut Energy, steps: usize) {
    // Over so many steps the energy must fall by this share, or the search is done.
    const WINDOW: usize = 30;
    const WORTH_IT: f64 = 1e-6;
    const MEMORY: usize = 12;
    let state = energy.state();
    let mut slope = vec![0.0; state.len()];
    let value = energy.at(&state, &mut slope);
    let mut memory = Lbfgs::<f64>::new(state.len(), MEMORY);
    let mut here = Iterate { state, slope, energy: value };
    let mut seen = vec![value];
    for _ in 0..steps {
        memory.update_hessian(&here.slope, &here.state);
        let mut down = here.slope.clone();
        memory.apply_hessian(&mut down);
        let Some(next) = lower(energy, &here, &down) else {
            // A direction that leads nowhere may be the memory's fault: once more from the bare slope.
            memory.reset();
            let plain = here.slope.clone();
            let Some(next) = lower(energy, &here, &plain) else { break };
            here = next;
            continue;
        };
        here = next;
        seen.push(here.energy);
        let before = seen.len().checked_sub(WINDOW + 1).map(|at| seen[at]);
        if before.is_some_and(|before| before - here.energy < WORTH_IT * here.energy.abs()) {
            break;
        }
    }
    energy.take(&here.state);
}

/// A lower place against a direction: the full step if it is short enough to pass nothing by, else a shorter one.
fn lower(energy: &mut Energy, here: &Iterate, up: &[f64]) -> Option<Iterate> {
    // No number moves further than this in one step, in diameters: cords can't jump over one another.
    const FURTHEST: f64 = 0.15;
    // Of the fall that the slope promises at least this must be met (Armijo's condition).
    const PROMISE: f64 = 1e-4;
    const TRIES: usize = 20;
    let fall: f64 = here.slope.iter().zip(up).map(|(slope, up)| slope * up).sum();
    let furthest = up.iter().fold(0.0_f64, |most, up| most.max(up.abs()));
    if fall <= 0.0 || !furthest.is_finite() {
        return None;
    }
    let mut step = (FURTHEST / furthest).min(1.0);
    let mut place = Iterate { state: here.state.clone(), slope: here.slope.clone(), energy: 0.0 };
    for _ in 0..TRIES {
        for ((to, from), up) in place.state.iter_mut().zip(&here.state).zip(up) {
            *to = from - step * up;
        }
        place.energy = energy.at(&place.state, &mut place.slope);
        if place.energy <= here.energy - PROMISE * step * fall {
            return Some(place);
        }
        step *= 0.4;
    }
    None
}
