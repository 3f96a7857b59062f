//! Samples that the others don't bear out.

use super::{ODD, OddSample, Sample, SampleFigure};

/// How far a sample lies from what the others lead to expect.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Surprise {
    /// In standard deviations, either way.
    pub(super) deviations: f64,
    pub(super) figure: SampleFigure,
    pub(super) expected: f64,
    pub(super) got: f64,
}

impl Surprise {
    pub(super) fn odd(self, at: usize, samples: &[Sample]) -> OddSample {
        OddSample { at, sample: samples[at].clone(), figure: self.figure, expected: self.expected, got: self.got }
    }
}

/// What some samples say, and what they lead to expect of one.
pub(super) trait Fitted<T> {
    /// Of one of them, as if it had not been counted.
    fn of_counted(&self, at: usize) -> Surprise;
    /// Of one that is not among them.
    fn of_other(&self, one: &T) -> Surprise;
}

/// At most this part of those that are counted is taken out before the rest is judged anew; one at least.
const AT_ONCE: usize = 10;
/// How often those taken out are looked at again.
const SECOND_LOOKS: usize = 3;

/// Parts the odd ones from the rest: the worst are taken out first, for they may have made others look odd. Whoever then
/// turns out to be borne out after all is taken back.
///
/// Each fit judges all of them at once, and takes out a part of them, so that fits are as many as the logarithm of the
/// samples, and not as many as the samples. The order of those that are kept stays. The odd ones come with what those
/// that were kept lead to expect.
pub(super) fn set_aside<'a, T, F: Fitted<T>>(
    all: &'a [T],
    fit: impl Fn(&[&'a T]) -> F,
) -> (Vec<&'a T>, Vec<(&'a T, Surprise)>) {
    let mut counted = vec![true; all.len()];
    for _ in 0..SECOND_LOOKS {
        take_out(all, &mut counted, &fit);
        if !take_back(all, &mut counted, &fit) {
            break;
        }
    }
    take_out(all, &mut counted, &fit);
    let (kept, _) = chosen(all, &counted);
    if kept.len() == all.len() {
        return (kept, Vec::new());
    }
    let fitted = fit(&kept);
    let left_out = all.iter().zip(&counted).filter(|(_, counted)| !**counted);
    let odd = left_out.map(|(one, _)| (one, fitted.of_other(one))).collect();
    (kept, odd)
}

/// Those that are counted, and their places.
fn chosen<'a, T>(all: &'a [T], counted: &[bool]) -> (Vec<&'a T>, Vec<usize>) {
    all.iter().enumerate().filter(|(at, _)| counted[*at]).map(|(at, one)| (one, at)).unzip()
}

fn take_out<'a, T, F: Fitted<T>>(all: &'a [T], counted: &mut [bool], fit: impl Fn(&[&'a T]) -> F) {
    loop {
        let (kept, places) = chosen(all, counted);
        let fitted = fit(&kept);
        let judged = places.iter().enumerate().map(|(at, place)| (fitted.of_counted(at).deviations, *place));
        let mut odd: Vec<(f64, usize)> = judged.filter(|(deviations, _)| *deviations > ODD).collect();
        if odd.is_empty() {
            return;
        }
        odd.sort_by(|(far, at), (other, place)| other.total_cmp(far).then(at.cmp(place)));
        for (_, place) in odd.iter().take((kept.len() / AT_ONCE).max(1)) {
            counted[*place] = false;
        }
    }
}

/// Whether any was taken back.
fn take_back<'a, T, F: Fitted<T>>(all: &'a [T], counted: &mut [bool], fit: impl Fn(&[&'a T]) -> F) -> bool {
    if counted.iter().all(|counted| *counted) {
        return false;
    }
    let fitted = fit(&chosen(all, counted).0);
    let mut any = false;
    for (one, counted) in all.iter().zip(counted).filter(|(_, counted)| !**counted) {
        *counted = fitted.of_other(one).deviations <= ODD;
        any |= *counted;
    }
    any
}
