//! What of a quote's hours the maker's pace scales: what finished work is held against when it is learnt from.

use std::collections::BTreeMap;

use reeve_book::{PacedFigures, StepFigures};
use reeve_costing::basis::Basis;
use reeve_costing::money::decimal;
use reeve_costing::pricing::{Priced, PricedItem};
use reeve_costing::takeoff::{ChoreKind, Doing, Paced, StepLine};
use reeve_measure::Time;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// Minutes of knots and handling, at the catalogue's pace.
#[derive(Debug, Default)]
struct Expected {
    handling: f64,
    /// By the knot's name.
    knots: BTreeMap<String, KnotMinutes>,
}

/// Minutes of one knot, without its own factor, and that factor.
#[derive(Debug, Default, Clone, Copy)]
struct KnotMinutes {
    base: f64,
    pull: f64,
    times: f64,
    sd: f64,
}

impl Expected {
    /// Adds what a step expects, multiplied by `times`.
    fn add(&mut self, step: &StepLine, paced: &Paced, times: f64) {
        let minutes = |time: Time| time.as_s() * times / 60.0;
        self.handling += minutes(paced.handling);
        if let (Doing::Knots(line), Some(own)) = (&step.doing, paced.own_time) {
            let knots = self.knots.entry(line.name.clone()).or_default();
            knots.base += minutes(paced.base);
            knots.pull += minutes(paced.pull);
            (knots.times, knots.sd) = (libm::exp(own.mean), own.sd);
        }
    }

    /// The only knot, where nothing but that is done.
    fn only_knot(&self) -> Option<(&String, &KnotMinutes)> {
        self.knots.first_key_value().filter(|_| self.knots.len() == 1 && self.handling <= 0.0)
    }

    /// What does not depend on length and what pulling takes, each knot with its own factor, and how doubtful they are
    /// together: the doubts of different knots are added by squares.
    fn as_it_stands(&self) -> (f64, f64, f64) {
        let sum = |of: fn(&KnotMinutes) -> f64| self.knots.values().map(of).sum::<f64>();
        let (base, pull) =
            (self.handling + sum(|knots| knots.base * knots.times), sum(|knots| knots.pull * knots.times));
        let squares = sum(|knots| square((knots.base + knots.pull) * knots.times * knots.sd));
        (base, pull, if base + pull > 0.0 { squares.sqrt() / (base + pull) } else { 0.0 })
    }

    /// What is kept of a step; of a single knot without its own factor, which is learnt from it.
    fn of_step(&self, step: String) -> StepFigures {
        if let Some((knot, KnotMinutes { base, pull, .. })) = self.only_knot() {
            let (base, pull) = (hundredth(*base), hundredth(*pull));
            return StepFigures { step, base, pull, knot: Some(knot.clone()), doubt: Decimal::ZERO };
        }
        let (base, pull, doubt) = self.as_it_stands();
        StepFigures { step, base: hundredth(base), pull: hundredth(pull), knot: None, doubt: places(doubt, 4) }
    }
}

/// What the pace scales of each step and of the whole, all pieces together; steps of one name are one.
pub(crate) fn figures(priced: &Priced, basis: &Basis) -> (Vec<StepFigures>, PacedFigures) {
    let mut steps: Vec<(String, Expected)> = Vec::new();
    let mut whole = Expected::default();
    let mut minutes_paced = 0.0;
    for PricedItem { item, cost, .. } in &priced.items {
        let pieces = item.quantity;
        for step in cost.take_off.steps.iter().filter(|step| step.time.first > Time::ZERO) {
            let Some(paced) = &step.paced else { continue };
            let time = step.time.of(u64::from(pieces));
            minutes_paced += time.as_s() / 60.0;
            let times = time / step.time.first;
            let at = steps.iter().position(|(title, _)| *title == step.title).unwrap_or_else(|| {
                steps.push((step.title.clone(), Expected::default()));
                steps.len() - 1
            });
            steps[at].1.add(step, paced, times);
            whole.add(step, paced, times);
        }
        let handling = cost.take_off.chores.iter().filter(|chore| !matches!(chore.kind, ChoreKind::Task(_)));
        let handling = handling.map(|chore| chore.time_of(pieces)).sum::<Time>().as_s() / 60.0;
        minutes_paced += handling;
        whole.handling += handling / basis.pace_and_pull().0;
    }
    let (base, pull, doubt) = whole.as_it_stands();
    let in_all = priced.outcome.cost.hours.to_f64().unwrap_or_default() * 60.0;
    let paced = PacedFigures {
        base: hundredth(base),
        pull: hundredth(pull),
        doubt: places(doubt, 4),
        stated: hundredth((in_all - minutes_paced).max(0.0)),
    };
    (steps.into_iter().map(|(title, expected)| expected.of_step(title)).collect(), paced)
}

fn square(number: f64) -> f64 {
    number * number
}

fn hundredth(minutes: f64) -> Decimal {
    places(minutes, 2)
}

fn places(figure: f64, places: u32) -> Decimal {
    decimal(figure, places).normalize()
}
