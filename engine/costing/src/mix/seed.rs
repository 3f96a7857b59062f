//! A good mix for the solver to begin with.
//!
//! A maker who prices all her work for the same hour has offers that bring almost the same for each. Any mix that fills
//! the hours is then about the best, many do, and a solver that goes by the most promising part of a piece finds them
//! late. To go down to whole mixes one after the other finds them soon, and leaves the solver to prove it.

use super::OfferInUnits;

/// Partial mixes looked at.
const MOST_STEPS: u32 = 100_000;

/// The best mix that a bounded search finds, depth first: of the best of each hour as many as fit, then fewer.
pub(super) fn seed(choices: &[OfferInUnits], hours: f64) -> Vec<f64> {
    let none = vec![0.0; choices.len()];
    let mut search = SeedSearch { choices, counts: none.clone(), best: none, most: 0.0, steps: MOST_STEPS };
    search.fill(0, hours, 0.0);
    search.best
}

struct SeedSearch<'a> {
    choices: &'a [OfferInUnits],
    counts: Vec<f64>,
    best: Vec<f64>,
    /// What the best brings.
    most: f64,
    /// Steps left to go.
    steps: u32,
}

impl SeedSearch<'_> {
    /// Fills the hours left with the choices from here on, the ones before bringing so much.
    fn fill(&mut self, at: usize, left: f64, brought: f64) {
        if brought > self.most {
            self.most = brought;
            self.best.clone_from(&self.counts);
        }
        let Some(choice) = self.choices.get(at) else { return };
        let mut count = choice.most_in(left);
        while count >= 0.0 && self.steps > 0 {
            self.steps -= 1;
            let left = left - choice.takes(count);
            let brought = brought + choice.brings(count);
            if self.at_best(at + 1, left, brought) <= self.most {
                break;
            }
            self.counts[at] = count;
            self.fill(at + 1, left, brought);
            count -= 1.0;
        }
        self.counts[at] = 0.0;
    }

    /// More than this can't come of it: whole units, the hours left all at the rate of the next choice made as often as it
    /// can be, as the choices stand in the order of that.
    fn at_best(&self, next: usize, left: f64, brought: f64) -> f64 {
        let rest = self.choices.get(next).map_or(0.0, |choice| {
            let most = f64::from(choice.most);
            left * choice.brings(most) / choice.takes(most)
        });
        brought + rest.floor()
    }
}

impl OfferInUnits {
    /// The most that so many hours allow, what is done once among them.
    fn most_in(&self, hours: f64) -> f64 {
        let left = hours - self.once_hours;
        let most = f64::from(self.most);
        match (left < 0.0, self.hours > 0.0) {
            (true, _) => 0.0,
            (false, true) => (left / self.hours).floor().min(most),
            (false, false) => most,
        }
    }

    fn takes(&self, count: f64) -> f64 {
        if count > 0.0 { count * self.hours + self.once_hours } else { 0.0 }
    }

    fn brings(&self, count: f64) -> f64 {
        if count > 0.0 { count * self.contribution - self.once_cost } else { 0.0 }
    }
}
