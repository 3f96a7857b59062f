//! Samples that the others don't bear out.

use super::{Figure, ODD, Odd, Sample};

/// How far a sample lies from what the others lead to expect.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Surprise {
    /// In standard deviations, either way.
    pub(super) deviations: f64,
    pub(super) figure: Figure,
    pub(super) expected: f64,
    pub(super) got: f64,
}

impl Surprise {
    pub(super) fn odd(self, at: usize, samples: &[Sample]) -> Odd {
        Odd { at, sample: samples[at].clone(), figure: self.figure, expected: self.expected, got: self.got }
    }
}

/// Parts the odd ones from the rest: the worst is taken out first, for it may have made others look odd.
///
/// The odd ones come with what those that were kept lead to expect.
pub(super) fn set_aside<T>(mut kept: Vec<T>, surprise: impl Fn(&[&T], &T) -> Surprise) -> (Vec<T>, Vec<(T, Surprise)>) {
    let mut odd = Vec::new();
    while let Some(worst) = worst_of(&kept, &surprise) {
        odd.push(kept.remove(worst));
    }
    let all: Vec<&T> = kept.iter().collect();
    let odd = odd.into_iter().map(|one| {
        let found = surprise(&all, &one);
        (one, found)
    });
    let odd = odd.collect();
    (kept, odd)
}

/// The oddest one, if it is odd at all.
fn worst_of<T>(kept: &[T], surprise: impl Fn(&[&T], &T) -> Surprise) -> Option<usize> {
    let deviations = |at: usize| {
        let others: Vec<&T> = kept.iter().enumerate().filter(|(other, _)| *other != at).map(|(_, one)| one).collect();
        surprise(&others, &kept[at]).deviations
    };
    let all = (0..kept.len()).map(|at| (at, deviations(at)));
    all.filter(|(_, deviations)| *deviations > ODD).max_by(|a, b| a.1.total_cmp(&b.1)).map(|(at, _)| at)
}
