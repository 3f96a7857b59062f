//! The laws that answers are held to.

use reeve_catalogue::Knot;

use super::battery::{LawPart, ProbeQuestion};
use crate::described::DescribedKnot;
use crate::judged::JudgedAnswer;
use crate::wire::TakenFigures;

/// Two lengths that differ by no more than this share are alike: sums come out a little different in another order.
const ALIKE: f64 = 1e-9;

/// Every law that is broken, in words, each by the first case that breaks it.
pub(super) fn broken(
    described: &DescribedKnot,
    knot: &Knot,
    cases: &[ProbeQuestion],
    answers: &[JudgedAnswer],
) -> Vec<String> {
    let told = LawReport { knot, cases, answers };
    let mut broken = Vec::new();
    broken.extend(told.usual());
    broken.extend(told.twice());
    if described.core_grows {
        broken.extend(told.first_fall(|part| matches!(part, LawPart::Core(_)), Way::Up, "a thicker core takes less"));
    }
    if described.give_shrinks {
        broken.extend(told.first_fall(
            |part| matches!(part, LawPart::Softer(_)),
            Way::Down,
            "a softer cord takes more",
        ));
    }
    for (at, parameter) in knot.parameters.iter().enumerate() {
        let words = format!("more of `{}` takes less", parameter.name);
        broken.extend(told.first_fall(|part| matches!(part, LawPart::Grows(of, _) if of == at), Way::Up, &words));
    }
    broken
}

#[derive(Clone, Copy)]
enum Way {
    Up,
    Down,
}

struct LawReport<'a> {
    knot: &'a Knot,
    cases: &'a [ProbeQuestion],
    answers: &'a [JudgedAnswer],
}

impl LawReport<'_> {
    fn figures(&self, at: usize) -> Option<&TakenFigures> {
        match self.answers.get(at) {
            Some(JudgedAnswer::Done(figures)) => Some(figures),
            _ => None,
        }
    }

    /// With its usual figures it can be tied somewhere.
    fn usual(&self) -> Option<String> {
        let mut usual = (0..self.cases.len()).filter(|at| self.cases[*at].part == LawPart::Usual);
        let refused = usual.clone().next().filter(|_| !usual.any(|at| self.figures(at).is_some()))?;
        let why = match &self.answers[refused] {
            JudgedAnswer::Refused(_, words) => words.as_str(),
            _ => return None,
        };
        Some(format!("it refuses its usual figures everywhere: {why} ({})", self.cases[refused].words(self.knot)))
    }

    /// Twice the cord, core and lengths takes twice the leg.
    fn twice(&self) -> Option<String> {
        let at = (1..self.cases.len()).filter(|at| self.cases[*at].part == LawPart::Twice).find(|at| {
            let (Some(once), Some(twice)) = (self.figures(at - 1), self.figures(*at)) else { return false };
            !twofold(once, twice)
        })?;
        let (once, twice) = (self.figures(at - 1)?, self.figures(at)?);
        Some(format!(
            "with every length twice as long it takes {} mm and not twice {} mm: {}",
            twice.working_mm,
            once.working_mm,
            self.cases[at - 1].words(self.knot)
        ))
    }

    /// The first place in a run where the take-up goes the wrong way.
    fn first_fall(&self, of: impl Fn(LawPart) -> bool, way: Way, words: &str) -> Option<String> {
        let mut before: Option<(LawPart, f64)> = None;
        for (at, case) in self.cases.iter().enumerate().filter(|(_, case)| of(case.part)) {
            let Some(figures) = self.figures(at) else { continue };
            let now = figures.working_mm;
            if let Some((part, then)) = before
                && part == case.part
                && wrong(then, now, way)
            {
                return Some(format!("{words}: {now} mm after {then} mm, with {}", case.words(self.knot)));
            }
            before = Some((case.part, now));
        }
        None
    }
}

fn wrong(then: f64, now: f64, way: Way) -> bool {
    let slack = then.abs().max(now.abs()) * ALIKE;
    match way {
        Way::Up => now < then - slack,
        Way::Down => now > then + slack,
    }
}

fn twofold(once: &TakenFigures, twice: &TakenFigures) -> bool {
    let pairs = [(once.working_mm, twice.working_mm), (once.core_mm, twice.core_mm), (once.rise_mm, twice.rise_mm)];
    pairs.into_iter().all(|(once, twice)| (once * 2.0 - twice).abs() <= twice.abs().max(1.0) * ALIKE)
}
