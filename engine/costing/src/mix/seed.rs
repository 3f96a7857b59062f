//! A good mix for the solver to begin with.
//!
//! A maker who prices all her work for the same hour has offers that bring almost the same for each. Any mix that fills
//! the hours is then about the best, many do, and a solver that goes by the most promising part of a piece finds them
//! late. To go down to whole mixes one after the other finds them soon, and leaves the solver to prove it.

use super::Choice;

/// Partial mixes looked at.
const MOST_STEPS: u32 = 100_000;

/// The best mix that a bounded search finds, depth first: of the best of each hour as many as fit, then fewer.
pub(super) fn seed(choices: &[Choice], hours: f64) -> Vec<f64> {
    let none = vec![0.0; choices.len()];
    let mut search = Search { choices, counts: none.clone(), best: none, most: 0.0, steps: MOST_STEPS };
    search.fill(0, hours, 0.0);
    search.best
}

struct Search<'a> {
    choices: &'a [Choice],
    counts: Vec<f64>,
    best: Vec<f64>,
    /// What the best brings.
    most: f64,
    /// Steps left to go.
    steps: u32,
}

impl Search<'_> {
    /// Fills the hours left with the choices from here on, the ones before bringing so much.
    fn fill(&mut self, at: usize, left: f64, brought: f64) {
        if brought > self.most {
            self.most = brought;
            self.best.clone_from(&self.counts);
        }
        let Some(choice) = self.choices.get(at) else { return };
        let mut count = (left / choice.hours).floor().min(choice.most.into());
        while count >= 0.0 && self.steps > 0 {
            self.steps -= 1;
            let left = left - count * choice.hours;
            let brought = brought + count * choice.contribution;
            if self.at_best(at + 1, left, brought) <= self.most {
                break;
            }
            self.counts[at] = count;
            self.fill(at + 1, left, brought);
            count -= 1.0;
        }
        self.counts[at] = 0.0;
    }

    /// More than this can't come of it: whole units, the hours left all at the rate of the next choice.
    fn at_best(&self, next: usize, left: f64, brought: f64) -> f64 {
        let rest = self.choices.get(next).map_or(0.0, |choice| left * choice.contribution / choice.hours);
        brought + rest.floor()
    }
}
