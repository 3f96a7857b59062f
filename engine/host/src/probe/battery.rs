//! The questions of a probe: deterministic, and over the whole range of what a knot declares.

use reeve_catalogue::{Core, Knot, Parameter, ParameterUnit, Question, Setting};
use reeve_measure::Length;

use crate::described::DescribedKnot;
use crate::library::as_asked;
use crate::wire::WireQuestion;

/// One question, and which law it is a part of.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct ProbeQuestion {
    pub(super) cord: f64,
    pub(super) give: f64,
    pub(super) working: u32,
    pub(super) core: Core,
    pub(super) values: Vec<f64>,
    pub(super) part: LawPart,
}

/// Which law a question is a part of. Questions of one run follow one another, and one thing grows along it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum LawPart {
    /// With the usual figures: it must not all be refused.
    Usual,
    /// One of a run in which a parameter grows.
    Grows(usize, u32),
    /// One of a run in which the core grows.
    Core(u32),
    /// One of a run in which the cord becomes softer.
    Softer(u32),
    /// The one before, with every length twice as long.
    Twice,
    /// Anything at all.
    Any,
}

const CORDS: [f64; 3] = [1.0, 4.0, 10.0];
const GIVES: [f64; 3] = [0.0, 0.1, 0.2];
/// Values of one parameter that are tried one after the other.
const STEPS: u32 = 33;
/// Questions with everything chosen by chance, from a fixed seed.
const CHANCES: u32 = 1500;
/// Corners of the ranges are tried of so many parameters at once.
const MOST_CORNERS: usize = 8;

impl ProbeQuestion {
    /// The question as it is asked.
    pub(super) fn asked(&self, place: u32, knot: &Knot) -> WireQuestion {
        let setting = self.setting();
        let core = setting.cord * knot.core_thickness(&setting);
        as_asked(place, &Question { knot: &knot.name, setting: &setting, core, values: &self.values })
    }

    fn setting(&self) -> Setting<'static> {
        let cord = Length::mm(self.cord);
        Setting { cord, working: self.working, core: self.core, give: self.give, parameters: &[] }
    }

    /// The setting in words, for a finding.
    pub(super) fn words(&self, knot: &Knot) -> String {
        let core = match self.core {
            Core::Legs { count, diameter } => format!("{count} core legs of {} mm", diameter.as_mm()),
            Core::Rod(rod) => format!("a rod of {} mm", rod.as_mm()),
            Core::Bar(a, b) => format!("a bar of {} x {} mm", a.as_mm(), b.as_mm()),
        };
        let named = knot.parameters.iter().zip(&self.values);
        let values: Vec<String> = named.map(|(p, value)| format!(", {} = {value}", p.name)).collect();
        let legs = format!("{} working legs of {} mm, give {}", self.working, self.cord, self.give);
        format!("{legs}, round {core}{}", values.concat())
    }
}

/// Every question of a probe, in order.
pub(super) fn battery(described: &DescribedKnot, knot: &Knot) -> Vec<ProbeQuestion> {
    let usual: Vec<f64> = knot.parameters.iter().map(|parameter| parameter.default).collect();
    let mut maker = LibraryMaker { knot, cases: Vec::new(), runs: 0 };
    for cord in CORDS {
        for working in some_of(knot.working.legs) {
            maker.settings(cord, working, &usual);
        }
    }
    for (at, parameter) in knot.parameters.iter().enumerate() {
        let grows = described.parameters.get(at).is_some_and(|parameter| parameter.grows);
        maker.sweep(at, parameter, grows, &usual);
    }
    maker.corners(&usual);
    maker.chances();
    maker.cases
}

struct LibraryMaker<'a> {
    knot: &'a Knot,
    cases: Vec<ProbeQuestion>,
    runs: u32,
}

impl LibraryMaker<'_> {
    fn run(&mut self) -> u32 {
        self.runs += 1;
        self.runs
    }

    fn put(&mut self, case: ProbeQuestion) {
        let twice = twice(&case, self.knot);
        self.cases.push(case);
        self.cases.extend(twice);
    }

    /// Every core and give, at the usual figures.
    fn settings(&mut self, cord: f64, working: u32, values: &[f64]) {
        let case = |core, give, part| ProbeQuestion { cord, give, working, core, values: values.to_vec(), part };
        let cores = cores(self.knot, cord);
        for core in cores.iter().flatten() {
            self.put(case(*core, 0.05, LawPart::Usual));
        }
        for run in &cores {
            let number = self.run();
            self.cases.extend(run.iter().map(|core| case(*core, 0.1, LawPart::Core(number))));
        }
        for core in cores.iter().flatten() {
            let number = self.run();
            self.cases.extend(GIVES.map(|give| case(*core, give, LawPart::Softer(number))));
        }
    }

    /// One parameter over its whole range.
    fn sweep(&mut self, at: usize, parameter: &Parameter, grows: bool, usual: &[f64]) {
        for working in some_of(self.knot.working.legs) {
            for core in cores(self.knot, 4.0).into_iter().filter_map(|run| run.last().copied()) {
                let number = self.run();
                let part = if grows { LawPart::Grows(at, number) } else { LawPart::Any };
                for value in over(parameter) {
                    let mut values = usual.to_vec();
                    values[at] = value;
                    self.cases.push(ProbeQuestion { cord: 4.0, give: 0.1, working, core, values, part });
                }
            }
        }
    }

    /// The lowest and the highest of every parameter, each with each.
    fn corners(&mut self, usual: &[f64]) {
        let many = self.knot.parameters.len().min(MOST_CORNERS);
        let Some(core) = cores(self.knot, 4.0).first().and_then(|run| run.first().copied()) else { return };
        for corner in 0..1_u32 << many {
            let mut values = usual.to_vec();
            for (at, parameter) in self.knot.parameters.iter().take(many).enumerate() {
                values[at] = if corner >> at & 1 == 0 { parameter.least } else { parameter.most };
            }
            let working = self.knot.working.legs.0;
            self.put(ProbeQuestion { cord: 4.0, give: 0.1, working, core, values, part: LawPart::Any });
        }
    }

    fn chances(&mut self) {
        let mut chance = Chance(0x5eed);
        for _ in 0..CHANCES {
            let cord = CORDS[chance.below(CORDS.len())] * (0.5 + chance.share());
            let cores: Vec<Core> = cores(self.knot, cord).concat();
            let (least, most) = self.knot.working.legs;
            let working = least + chance.whole(most - least);
            let values = self.knot.parameters.iter().map(|parameter| chance.value(parameter)).collect();
            let core = cores[chance.below(cores.len())];
            self.put(ProbeQuestion { cord, give: 0.2 * chance.share(), working, core, values, part: LawPart::Any });
        }
    }
}

/// The same with every length twice as long; nothing where a parameter would leave its range.
fn twice(case: &ProbeQuestion, knot: &Knot) -> Option<ProbeQuestion> {
    let core = match case.core {
        Core::Legs { count, diameter } => Core::Legs { count, diameter: diameter * 2.0 },
        Core::Rod(rod) => Core::Rod(rod * 2.0),
        Core::Bar(a, b) => Core::Bar(a * 2.0, b * 2.0),
    };
    let of = |(parameter, value): (&Parameter, &f64)| {
        let value = if parameter.unit == ParameterUnit::Length { value * 2.0 } else { *value };
        (value <= parameter.most).then_some(value)
    };
    let values = knot.parameters.iter().zip(&case.values).map(of).collect::<Option<Vec<f64>>>()?;
    Some(ProbeQuestion { cord: case.cord * 2.0, core, values, part: LawPart::Twice, ..case.clone() })
}

/// What it can be tied round, in runs from thin to thick; there is always one run with something in it.
fn cores(knot: &Knot, cord: f64) -> Vec<Vec<Core>> {
    let diameter = Length::mm(cord);
    let legs = |count: u32| Core::Legs { count, diameter };
    let mut runs = Vec::new();
    if knot.core.legs != (0, 0) || !knot.core.fitting {
        runs.push(some_of(knot.core.legs).into_iter().map(legs).collect());
    }
    if knot.core.fitting {
        runs.push([1.0, 2.5, 6.0, 20.0].map(|cords| Core::Rod(diameter * cords)).to_vec());
        runs.push([2.0, 8.0].map(|cords| Core::Bar(diameter * cords, diameter * 3.0)).to_vec());
    }
    runs
}

/// Five numbers or fewer from the lowest to the highest.
fn some_of((least, most): (u32, u32)) -> Vec<u32> {
    let span = most.saturating_sub(least);
    let mut some: Vec<u32> = [0, 1, span / 3, span * 2 / 3, span].map(|step| least + step.min(span)).to_vec();
    some.sort_unstable();
    some.dedup();
    some
}

/// Values of a parameter from its lowest to its highest.
fn over(parameter: &Parameter) -> Vec<f64> {
    let span = parameter.most - parameter.least;
    let value = |step: u32| parameter.least + span * f64::from(step) / f64::from(STEPS - 1);
    let mut values: Vec<f64> = (0..STEPS).map(|step| fitted(parameter, value(step))).collect();
    values.dedup();
    values
}

/// A value that the parameter may have.
fn fitted(parameter: &Parameter, value: f64) -> f64 {
    let value = if parameter.whole { value.round() } else { value };
    value.clamp(parameter.least, parameter.most)
}

/// Numbers that look like chance and are the same each time (Steele, Lea, Flood: `SplitMix64`, 2014).
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// From 0 up to but not 1.
    fn share(&mut self) -> f64 {
        f64::from(u32::try_from(self.next() >> 32).unwrap_or(0)) / 4_294_967_296.0
    }

    /// From 0 to `most`.
    fn whole(&mut self, most: u32) -> u32 {
        u32::try_from(self.next() % (u64::from(most) + 1)).unwrap_or(0)
    }

    /// From 0 up to but not `count`, which must not be 0.
    fn below(&mut self, count: usize) -> usize {
        usize::try_from(self.next() % count as u64).unwrap_or(0)
    }

    fn value(&mut self, parameter: &Parameter) -> f64 {
        fitted(parameter, parameter.least + (parameter.most - parameter.least) * self.share())
    }
}
