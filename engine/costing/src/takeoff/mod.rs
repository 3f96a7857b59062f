//! The take-off: everything one piece needs, worked out from its steps.
//!
//! Two passes over the steps. The first finds what every step takes from every leg, so that the length of
//! each leg is known; the second walks the same steps with what still hangs below, for the time.

mod cutting;
mod draft;
mod hanging;
mod layout;
mod order;
#[cfg(test)]
#[allow(clippy::disallowed_methods, reason = "a test reckons and writes by the standard library")]
#[allow(clippy::unwrap_used, clippy::panic, reason = "a test may stop at the first surprise")]
mod tests;

use std::sync::Arc;

use reeve_catalogue::Settled;
use reeve_measure::{Length, Mass, Time, count as as_count};
use rust_decimal::Decimal;

use crate::basis::Basis;
use crate::hand::{Estimate, TakeUpSource};
use crate::learning_curve::Practised;
use crate::piece::{Piece, SetId};
use crate::risk::Spread;
use crate::store::{Cord, Fitting, Many};
use cutting::{cut_list, leg_lines, legs_of};
use draft::{Draft, check_room, draft};
use hanging::{check_hanging, without_tail};
pub(crate) use order::add_fitting;
use order::{chores, fittings, step_lines};

/// Everything one piece needs.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TakeOff {
    /// The cut list, in order of the design.
    pub cords: Vec<CutLine>,
    /// Each leg set and how long its legs are.
    pub legs: Vec<LegLine>,
    /// The working order.
    pub steps: Vec<StepLine>,
    /// Cutting, trimming, packing and the tasks of the design.
    pub chores: Vec<Chore>,
    /// Fittings and beads, each with how many.
    pub fittings: Vec<Many<Fitting>>,
    /// Mass of the finished piece.
    pub weight: Mass,
    /// What the maker should look at.
    pub remarks: Vec<PieceFault>,
}

/// Cords cut alike.
#[derive(Debug, Clone, PartialEq)]
pub struct CutLine {
    /// The word the design uses.
    pub group: String,
    /// Of what.
    pub cord: Arc<Cord>,
    /// How many.
    pub count: u64,
    /// Length of each before allowance and rounding.
    pub net: Length,
    /// How much of that is cut off flush, and not in the finished piece.
    pub wasted: Length,
    /// Length to cut each, in whole millimetres.
    pub cut_mm: u64,
    /// Where to fold each, measured from the end of `fold_from`; `None` for a single cord.
    pub fold: Option<Fold>,
}

/// Where a cord is folded.
#[derive(Debug, Clone, PartialEq)]
pub struct Fold {
    /// Distance from the end.
    pub at: Length,
    /// The leg set that this end becomes; `None` when folded in the middle.
    pub from: Option<String>,
}

/// A leg set and how long its legs are, without allowance.
#[derive(Debug, Clone, PartialEq)]
pub struct LegLine {
    /// The word the design uses.
    pub set: String,
    /// How many legs.
    pub count: u64,
    /// Length of each.
    pub length: Length,
}

/// A step of the making.
#[derive(Debug, Clone, PartialEq)]
pub struct StepLine {
    /// As written on the bench sheet.
    pub title: String,
    /// What is done, with counts.
    pub doing: Doing,
    /// A remark for the bench.
    pub note: Option<String>,
    /// Standard time of the whole step, piece by piece: the mean, where it is doubted. Time that the maker states herself
    /// does not follow practice.
    pub time: Practised,
    /// Standard deviation of its time the first time.
    pub strays: Time,
    /// What of it the maker's pace scales; nothing where she says herself how long the step takes.
    pub paced: Option<Paced>,
}

/// What of a step the maker's pace scales: the first time, allowances in, at the catalogue's pace.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Paced {
    /// What of its knots does not depend on length.
    pub base: Time,
    /// What pulling takes.
    pub pull: Time,
    /// The factor on the time of its knots beside the pace, as a logarithm; nothing where it ties none.
    pub own_time: Option<Estimate>,
    /// Threading, trimming and combing.
    pub handling: Time,
}

/// What a step does, with counts.
#[derive(Debug, Clone, PartialEq)]
pub enum Doing {
    /// Ties knots.
    Knots(KnotLine),
    /// Leaves so much bare on so many legs.
    Bare(Length, u64),
    /// Leaves so much hanging of so many legs.
    Tail(Length, u64),
    /// Threads so many of a bead.
    Beads(Arc<Fitting>, u64),
    /// Lets cords join the work.
    LayIn,
}

/// Knots of one step.
#[derive(Debug, Clone, PartialEq)]
pub struct KnotLine {
    /// The knot's title.
    pub knot: String,
    /// The knot's name.
    pub name: String,
    /// The name of the cord that ties it.
    pub cord: String,
    /// How many in all.
    pub count: u64,
    /// Columns side by side.
    pub columns: u64,
    /// How often in each column, or on each leg.
    pub times: u64,
    /// What its parameters come to, defaults included.
    pub parameters: Vec<Settled>,
    /// Length of one working leg that one knot takes.
    pub take_up: Length,
    /// How far one knot carries the work.
    pub rise: Length,
    /// Where the take-up comes from.
    pub source: TakeUpSource,
}

/// Work that is not tying.
#[derive(Debug, Clone, PartialEq)]
pub struct Chore {
    /// What.
    pub kind: ChoreKind,
    /// The titles of the parts within parts that it is done for, the outermost first; none for the piece itself.
    pub parts: Vec<String>,
    /// Standard time: for one piece, or for the whole batch if `once`. The mean, where it is doubted.
    pub time: Time,
    /// Its standard deviation.
    pub strays: Time,
    /// Whether it is done once for all pieces of the design.
    pub once: bool,
    /// What it uses up, each time.
    pub cost: Decimal,
}

/// What a chore is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ChoreKind {
    /// Laying out what is needed.
    LayOut,
    /// Setting the marks that the cords of a group are cut to.
    SetMarks,
    /// Measuring and cutting the cords.
    MeasureAndCut,
    /// A task of the design, in its own words: what a client would call finishing.
    Task(String),
    /// Packing a piece; a part is packed with the piece it belongs to.
    Pack,
}

impl ChoreKind {
    /// Whether it is laying out or cutting, which is part of the making.
    pub fn is_handling(&self) -> bool {
        matches!(self, Self::LayOut | Self::SetMarks | Self::MeasureAndCut)
    }
}

/// Why a piece can't be made so.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PieceFault {
    /// Where in the design.
    pub spot: DesignPlace,
    /// What is wrong, with the values.
    pub title: String,
    /// The limit, or what is needed.
    pub label: String,
    /// What to write instead.
    pub help: String,
}

/// A place in a design.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DesignPlace {
    /// A key of the step of this index.
    Step(usize, &'static str),
    /// A value among the parameters of the step of this index.
    Parameter(usize, usize),
    /// A key of the cord group of this index.
    Cord(usize, &'static str),
}

impl PieceFault {
    pub(crate) fn at(
        spot: DesignPlace,
        title: impl Into<String>,
        label: impl Into<String>,
        help: impl Into<String>,
    ) -> Self {
        Self { spot, title: title.into(), label: label.into(), help: help.into() }
    }
}

/// Works out everything one piece needs, parts included.
///
/// # Errors
/// Every fault of the piece, each with its place in the design.
pub fn take_off(piece: &Piece, basis: &Basis) -> Result<TakeOff, Vec<PieceFault>> {
    let mut faults = check_hanging(piece);
    let mut drafts = Vec::new();
    for (at, step) in piece.steps.iter().enumerate() {
        match draft(piece, at, step, basis) {
            Ok(draft) => drafts.push(draft),
            Err(fault) => faults.push(fault),
        }
    }
    if faults.is_empty() {
        faults.extend(check_room(piece, &drafts));
    }
    if !faults.is_empty() {
        return Err(faults);
    }
    assemble(piece, drafts, basis)
}

fn assemble(piece: &Piece, drafts: Vec<Draft>, basis: &Basis) -> Result<TakeOff, Vec<PieceFault>> {
    let legs = legs_of(piece, &drafts, &basis.rates.bench);
    let cords = cut_list(piece, &legs, &basis.rates.bench)?;
    let chores = chores(piece, basis);
    let mut whole = TakeOff {
        legs: leg_lines(piece, &legs.lengths),
        steps: step_lines(piece, drafts, &legs.lengths, basis),
        fittings: fittings(piece),
        weight: Mass::ZERO,
        remarks: without_tail(piece),
        cords,
        chores,
    };
    whole.weight = whole
        .cords
        .iter()
        .map(|line| line.cord.density.mass_of(line.net - line.wasted) * as_count(line.count))
        .sum::<Mass>()
        + whole.fittings.iter().map(|(fitting, count)| fitting.weight * f64::from(*count)).sum();
    for part in &piece.parts {
        // A part that can't be made is told of in its own design.
        whole.add(&part.name, &part.piece.title, u64::from(part.count), take_off(&part.piece, basis)?);
    }
    Ok(whole)
}

impl TakeOff {
    /// Cord used by one piece, cut lengths added up, in millimetres.
    pub fn cut_mm_of(&self, cord: &Cord) -> u64 {
        self.cords.iter().filter(|line| line.cord.name == cord.name).map(|line| line.cut_mm * line.count).sum()
    }

    /// Standard time of so many pieces made as one batch.
    pub fn time_of(&self, pieces: u32) -> Time {
        self.steps_time(pieces) + self.chores.iter().map(|chore| chore.time_of(pieces)).sum()
    }

    /// Standard time of so many pieces, and how far it strays as far as single steps and tasks are doubted.
    ///
    /// Steps know nothing of one another, but a step errs alike in every piece of the row. The maker's pace is not in it:
    /// it is common to all, and laid on the sum of a job.
    pub fn spread_of(&self, pieces: u32) -> Spread {
        let step = |step: &StepLine| {
            let time = step.time.of(u64::from(pieces));
            let times = if step.strays > Time::ZERO { time / step.time.first } else { 0.0 };
            Spread { mean: time, sd: step.strays * times }
        };
        let chore =
            |chore: &Chore| Spread { mean: chore.time, sd: chore.strays }.times(f64::from(chore.rounds(pieces)));
        let all = self.steps.iter().map(step).chain(self.chores.iter().map(chore));
        all.fold(Spread::certain(Time::ZERO), Spread::plus)
    }

    /// Standard time of the steps of so many pieces.
    pub(crate) fn steps_time(&self, pieces: u32) -> Time {
        self.steps.iter().map(|step| step.time.of(u64::from(pieces))).sum()
    }

    /// Standard time of one piece of a row, by its place; what is done once for all is not counted.
    pub fn time_of_nth(&self, piece: u32) -> Time {
        let steps: Time = self.steps.iter().map(|step| step.time.nth(u64::from(piece))).sum();
        steps + self.chores.iter().filter(|chore| !chore.once).map(|chore| chore.time).sum()
    }

    /// What is done once for all pieces, however many: its standard time, and what it uses up.
    pub fn once(&self) -> (Time, Decimal) {
        let once = || self.chores.iter().filter(|chore| chore.once);
        (once().map(|chore| chore.time).sum(), once().map(|chore| chore.cost).sum())
    }

    /// Whether later pieces take less time than the first.
    pub fn is_practised(&self) -> bool {
        self.steps.iter().any(|step| step.time.practice.counts())
    }

    /// Adds so many of a part's needs: cords and legs under the part's name, steps and chores under its title.
    fn add(&mut self, name: &str, part_title: &str, count: u64, part: TakeOff) {
        let factor = as_count(count);
        self.cords.extend(part.cords.into_iter().map(|line| CutLine {
            group: format!("{name}/{}", line.group),
            count: line.count * count,
            ..line
        }));
        self.legs.extend(part.legs.into_iter().map(|line| LegLine {
            set: format!("{name}/{}", line.set),
            count: line.count * count,
            ..line
        }));
        self.steps.extend(part.steps.into_iter().map(|step| step.within(part_title, count)));
        let unpacked = part.chores.into_iter().filter(|chore| chore.kind != ChoreKind::Pack);
        self.chores.extend(unpacked.map(|chore| {
            let times = if chore.once { 1 } else { count };
            Chore {
                parts: std::iter::once(part_title.to_owned()).chain(chore.parts).collect(),
                time: chore.time * as_count(times),
                strays: chore.strays * as_count(times),
                cost: chore.cost * Decimal::from(times),
                ..chore
            }
        }));
        for (fitting, many) in part.fittings {
            let many = many.saturating_mul(u32::try_from(count).unwrap_or(u32::MAX));
            add_fitting(&mut self.fittings, &fitting, many);
        }
        self.weight += part.weight * factor;
    }
}

impl StepLine {
    fn within(self, part: &str, count: u64) -> Self {
        let doing = match self.doing {
            Doing::Knots(line) => {
                Doing::Knots(KnotLine { count: line.count * count, columns: line.columns * count, ..line })
            }
            Doing::Bare(length, legs) => Doing::Bare(length, legs * count),
            Doing::Tail(length, legs) => Doing::Tail(length, legs * count),
            Doing::Beads(bead, beads) => Doing::Beads(bead, beads * count),
            Doing::LayIn => Doing::LayIn,
        };
        let time = Practised { alike: self.time.alike * count, ..self.time };
        Self {
            title: format!("{part}: {}", self.title),
            doing,
            time,
            note: self.note,
            strays: self.strays,
            paced: self.paced,
        }
    }
}

impl Chore {
    /// Standard time for a batch of so many pieces.
    pub fn time_of(&self, pieces: u32) -> Time {
        self.time * f64::from(self.rounds(pieces))
    }

    /// What it uses up for a batch of so many pieces.
    pub fn cost_of(&self, pieces: u32) -> Decimal {
        self.cost * Decimal::from(self.rounds(pieces))
    }

    fn rounds(&self, pieces: u32) -> u32 {
        if self.once { 1 } else { pieces }
    }
}

/// A count and a title in the plural.
pub fn plural(title: &str, count: u64) -> String {
    if count == 1 {
        return format!("1 {title}");
    }
    // "double half hitch on a ring": the noun stands before the first "on" or "of".
    let (noun, rest) =
        [" on ", " of "].iter().find_map(|word| title.find(word)).map_or((title, ""), |at| title.split_at(at));
    let ending = if noun.ends_with("ch") || noun.ends_with('s') { "es" } else { "s" };
    format!("{count} {noun}{ending}{rest}")
}

/// Beads that a step threads: so many on each bundle of legs.
fn count_beads(piece: &Piece, times: u32, legs_each: u32, legs: &[SetId]) -> u64 {
    count_legs(piece, legs) / u64::from(legs_each) * u64::from(times)
}

pub(crate) fn count_legs(piece: &Piece, sets: &[SetId]) -> u64 {
    sets.iter().map(|set| u64::from(piece.sets[*set].count)).sum()
}
