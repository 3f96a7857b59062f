//! Directions of L-BFGS: what the last steps told of how the slope turns.
//!
//! The two loops of Nocedal and Wright, Numerical Optimization, algorithm 7.4. Sums are kept in lanes of a fixed
//! order: a sum of one lane waits for every addition, and took a third of a tightening's time.

use std::collections::VecDeque;

/// One step that is remembered.
#[derive(Debug)]
struct Step {
    /// How far each number moved.
    moved: Vec<f64>,
    /// How the slope changed.
    turned: Vec<f64>,
    /// One over the product of the two.
    inverse: f64,
}

/// The last steps, the newest first.
#[derive(Debug)]
pub(super) struct Memory {
    steps: VecDeque<Step>,
    most: usize,
    /// The share of each step in a direction: kept only so as not to be asked for anew.
    shares: Vec<f64>,
}

impl Memory {
    /// A memory of at most so many steps; at least one.
    pub(super) fn new(most: usize) -> Self {
        Self { steps: VecDeque::with_capacity(most), most: most.max(1), shares: Vec::with_capacity(most) }
    }

    pub(super) fn forget(&mut self) {
        self.steps.clear();
    }

    /// Remembers a step from one place (state and slope) to another; none along which the slope did not rise.
    pub(super) fn learn(&mut self, from: (&[f64], &[f64]), to: (&[f64], &[f64])) {
        const LEAST: f64 = 1e-10;
        let oldest = if self.steps.len() == self.most { self.steps.pop_back() } else { None };
        let mut step = oldest.unwrap_or_else(|| Step { moved: Vec::new(), turned: Vec::new(), inverse: 0.0 });
        difference(&mut step.moved, to.0, from.0);
        difference(&mut step.turned, to.1, from.1);
        let product = dot(&step.moved, &step.turned);
        if product > LEAST {
            step.inverse = 1.0 / product;
            self.steps.push_front(step);
        }
    }

    /// Turns a slope into the direction against which the search goes.
    pub(super) fn turn(&mut self, slope: &mut [f64]) {
        let Some(newest) = self.steps.front() else { return };
        let scale = 1.0 / (newest.inverse * dot(&newest.turned, &newest.turned));
        self.shares.clear();
        for step in &self.steps {
            let share = step.inverse * dot(&step.moved, slope);
            self.shares.push(share);
            add(slope, &step.turned, -share);
        }
        for along in slope.iter_mut() {
            *along *= scale;
        }
        for (step, share) in self.steps.iter().zip(&self.shares).rev() {
            add(slope, &step.moved, share - step.inverse * dot(&step.turned, slope));
        }
    }
}

fn difference(out: &mut Vec<f64>, to: &[f64], from: &[f64]) {
    out.clear();
    out.extend(to.iter().zip(from).map(|(to, from)| to - from));
}

fn add(to: &mut [f64], what: &[f64], times: f64) {
    for (to, what) in to.iter_mut().zip(what) {
        *to += times * what;
    }
}

/// The sum of products of two lists of one length, in eight lanes.
pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    let ((a, last_a), (b, last_b)) = (a.as_chunks::<8>(), b.as_chunks::<8>());
    let mut lanes = [0.0; 8];
    for (a, b) in a.iter().zip(b) {
        for lane in 0..8 {
            lanes[lane] += a[lane] * b[lane];
        }
    }
    let last: f64 = last_a.iter().zip(last_b).map(|(a, b)| a * b).sum();
    lanes.iter().sum::<f64>() + last
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        #[test]
        fn lanes_add_up_to_the_plain_sum(pairs in prop::collection::vec((-9.0..9.0_f64, -9.0..9.0_f64), 0..40)) {
            let (a, b): (Vec<f64>, Vec<f64>) = pairs.iter().copied().unzip();
            let plain: f64 = pairs.iter().map(|(a, b)| a * b).sum();
            prop_assert!((dot(&a, &b) - plain).abs() < 1e-9);
        }

        /// What defines the method: the change of slope of the last step is turned into that step.
        #[test]
        fn the_last_step_is_found_again(
            steps in prop::collection::vec(prop::collection::vec(-2.0..2.0_f64, 11), 1..9),
            bend in prop::collection::vec(0.2..5.0_f64, 11),
        ) {
            let slope = |state: &[f64]| -> Vec<f64> { state.iter().zip(&bend).map(|(at, bend)| at * bend).collect() };
            let mut memory = Memory::new(4);
            let mut here = vec![0.5; 11];
            for step in &steps {
                let there: Vec<f64> = here.iter().zip(step).map(|(at, step)| at + step).collect();
                memory.learn((&here, &slope(&here)), (&there, &slope(&there)));
                here = there;
            }
            let last = &steps[steps.len() - 1];
            let mut turned = slope(last);
            prop_assume!(dot(last, &turned) > 1e-3);
            memory.turn(&mut turned);
            for (found, step) in turned.iter().zip(last) {
                prop_assert!((found - step).abs() < 1e-6, "{found} {step}");
            }
        }
    }
}
