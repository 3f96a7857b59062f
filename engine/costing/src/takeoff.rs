//! The take-off: everything one piece needs, worked out from its steps.
//!
//! Two passes over the steps. The first finds what every step takes from every leg, so that the length of
//! each leg is known; the second walks the same steps with what still hangs below, for the time.

use std::sync::Arc;

use reeve_catalogue::{Kind, Runs, Setting, Taken, bundle_ratio};
use reeve_measure::{Length, Mass, Time, bound, count as as_count};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use crate::labour::Run;
use crate::layout::{Layout, lay_out};
use crate::money::fraction;
use crate::piece::{CordGroup, FittingId, LegSet, Piece, SetId, Step, Tie, Work};
use crate::rates::Bench;
use crate::store::{Bead, Cord, Fitting, Many};

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
    /// Standard time of the whole step.
    pub time: Time,
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
    /// How many in all.
    pub count: u64,
    /// Columns side by side.
    pub columns: u64,
    /// How often in each column, or on each leg.
    pub times: u64,
    /// Length of one working leg that one knot takes.
    pub take_up: Length,
    /// How far one knot carries the work.
    pub rise: Length,
    /// Where the take-up comes from.
    pub source: &'static str,
}

/// Work that is not tying.
#[derive(Debug, Clone, PartialEq)]
pub struct Chore {
    /// What.
    pub title: String,
    /// Standard time: for one piece, or for the whole batch if `once`.
    pub time: Time,
    /// Whether it is done once for all pieces of the design.
    pub once: bool,
    /// What it uses up, each time.
    pub cost: Decimal,
    /// Whether the client would call it finishing rather than making.
    pub finishing: bool,
}

/// Why a piece can't be made so.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PieceFault {
    /// Where in the design.
    pub spot: Spot,
    /// What is wrong, with the values.
    pub title: String,
    /// The limit, or what is needed.
    pub label: String,
    /// What to write instead.
    pub help: String,
}

/// A place in a design.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spot {
    /// A key of the step of this index.
    Step(usize, &'static str),
    /// A key of the cord group of this index.
    Cord(usize, &'static str),
}

impl PieceFault {
    pub(crate) fn at(spot: Spot, title: impl Into<String>, label: impl Into<String>, help: impl Into<String>) -> Self {
        Self { spot, title: title.into(), label: label.into(), help: help.into() }
    }
}

/// What one step takes from each leg, and what it says of its time.
#[derive(Debug, Default)]
struct Draft {
    takes: Vec<(SetId, Length)>,
    runs: Vec<(Pull, Run)>,
    knots: Option<KnotLine>,
    handling: Time,
}

/// Whose hanging length a run is pulled against.
#[derive(Debug)]
enum Pull {
    /// The legs of one set.
    Set(SetId),
    /// The mean of several sets that change places.
    Mean(Vec<SetId>),
}

/// Works out everything one piece needs, parts included.
///
/// # Errors
/// Every fault of the piece, each with its place in the design.
pub fn take_off(piece: &Piece, bench: &Bench) -> Result<TakeOff, Vec<PieceFault>> {
    let mut faults = check_hanging(piece);
    let mut drafts = Vec::new();
    for (at, step) in piece.steps.iter().enumerate() {
        match draft(piece, at, step, bench) {
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
    assemble(piece, drafts, bench)
}

fn assemble(piece: &Piece, drafts: Vec<Draft>, bench: &Bench) -> Result<TakeOff, Vec<PieceFault>> {
    let lengths = leg_lengths(piece, &drafts);
    let cords = cut_list(piece, &lengths, bench)?;
    let chores = chores(piece, bench);
    let mut whole = TakeOff {
        legs: leg_lines(piece, &lengths),
        steps: step_lines(piece, drafts, &lengths, bench),
        fittings: fittings(piece),
        weight: Mass::ZERO,
        cords,
        chores,
    };
    whole.weight =
        whole.cords.iter().map(|line| line.cord.density.mass_of(line.net) * as_count(line.count)).sum::<Mass>()
            + whole.fittings.iter().map(|(fitting, count)| fitting.weight * f64::from(*count)).sum();
    for part in &piece.parts {
        // A part that can't be made is told of in its own design.
        whole.add(&part.name, u64::from(part.count), take_off(&part.piece, bench)?);
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
        let steps: Time = self.steps.iter().map(|step| step.time).sum();
        steps * f64::from(pieces) + self.chores.iter().map(|chore| chore.time_of(pieces)).sum()
    }

    /// Adds so many of a part's needs under the part's name.
    fn add(&mut self, name: &str, count: u64, part: TakeOff) {
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
        self.steps.extend(part.steps.into_iter().map(|step| step.within(name, count)));
        self.chores.extend(part.chores.into_iter().filter(|chore| !chore.is_packing()).map(|chore| {
            let times = if chore.once { 1 } else { count };
            Chore {
                title: format!("{name}: {}", chore.title),
                time: chore.time * as_count(times),
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
    fn within(self, name: &str, count: u64) -> Self {
        let doing = match self.doing {
            Doing::Knots(line) => {
                Doing::Knots(KnotLine { count: line.count * count, columns: line.columns * count, ..line })
            }
            Doing::Bare(length, legs) => Doing::Bare(length, legs * count),
            Doing::Tail(length, legs) => Doing::Tail(length, legs * count),
            Doing::Beads(bead, beads) => Doing::Beads(bead, beads * count),
            Doing::LayIn => Doing::LayIn,
        };
        Self { title: format!("{name}: {}", self.title), doing, time: self.time * as_count(count), note: self.note }
    }
}

const PACKING: &str = "Pack";

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

    /// A part is packed with the piece it belongs to.
    fn is_packing(&self) -> bool {
        self.title == PACKING
    }
}

/// Every set must have been hung before a step uses it, every group hung once.
fn check_hanging(piece: &Piece) -> Vec<PieceFault> {
    let mut hung = vec![false; piece.groups.len()];
    let mut faults = Vec::new();
    for (at, step) in piece.steps.iter().enumerate() {
        for group in &step.hang {
            if std::mem::replace(&mut hung[*group], true) {
                let title = format!("the cords of `{}` are hung a second time", piece.groups[*group].name);
                faults.push(PieceFault::at(Spot::Step(at, "hang"), title, "once is enough", ""));
            }
        }
        faults.extend(not_hung(piece, at, step, &mut hung));
    }
    let never = hung.iter().enumerate().filter(|(_, hung)| !**hung);
    faults.extend(never.map(|(at, _)| {
        let title = format!("the cords of `{}` never join the work", piece.groups[at].name);
        PieceFault::at(
            Spot::Cord(at, "group"),
            title,
            "no step hangs or uses them",
            "name the group in the `hang` of a step, or take it out",
        )
    }));
    faults
}

fn not_hung(piece: &Piece, at: usize, step: &Step, hung: &mut [bool]) -> Vec<PieceFault> {
    if let Work::Tie(tie) = &step.work
        && tie.knot.working.joins
    {
        tie.working.iter().for_each(|set| hung[piece.sets[*set].group] = true);
    }
    let used = used_sets(step);
    let missing = used.into_iter().filter(|(_, set)| !hung[piece.sets[*set].group]);
    missing
        .map(|(key, set)| {
            let title = format!("`{}` is not hung yet", piece.sets[set].name);
            let help = format!("hang the cords of `{}` in an earlier step", piece.groups[piece.sets[set].group].name);
            PieceFault::at(Spot::Step(at, key), title, "this step needs its legs", help)
        })
        .collect()
}

/// The sets that a step names, with the key each is named under.
fn used_sets(step: &Step) -> Vec<(&'static str, SetId)> {
    let named = |key, sets: &[SetId]| sets.iter().map(move |set| (key, *set)).collect::<Vec<_>>();
    let mut used = named("alongside", &step.alongside);
    match &step.work {
        Work::Tie(tie) => {
            used.extend(named("working", &tie.working));
            used.extend(named("core", &tie.core));
        }
        Work::Bare { legs, .. } | Work::Tail { legs, .. } | Work::Thread { legs, .. } => {
            used.extend(named("legs", legs));
        }
        Work::LayIn => {}
    }
    used
}

fn draft(piece: &Piece, at: usize, step: &Step, bench: &Bench) -> Result<Draft, PieceFault> {
    match &step.work {
        Work::Tie(tie) => draft_tie(piece, at, step, tie),
        Work::Bare { length, legs } => Ok(Draft { takes: each(legs, *length), ..Draft::default() }),
        Work::Tail { length, legs, combed } => {
            let one = if *combed { bench.handling.trim + bench.handling.comb } else { bench.handling.trim };
            let handling = one * as_count(count_legs(piece, legs));
            Ok(Draft { takes: each(legs, *length), handling, ..Draft::default() })
        }
        Work::Thread { bead, times, legs_each, legs } => {
            let bead = bead_of(piece, at, *bead, *legs_each, legs)?;
            let handling = bench.handling.bead * as_count(beads(piece, at, *times, *legs_each, legs)?);
            Ok(Draft { takes: each(legs, bead.length * f64::from(*times)), handling, ..Draft::default() })
        }
        Work::LayIn => Ok(Draft::default()),
    }
}

fn each(sets: &[SetId], length: Length) -> Vec<(SetId, Length)> {
    sets.iter().map(|set| (*set, length)).collect()
}

pub(crate) fn count_legs(piece: &Piece, sets: &[SetId]) -> u64 {
    sets.iter().map(|set| u64::from(piece.sets[*set].count)).sum()
}

fn thickest(piece: &Piece, sets: &[SetId]) -> Length {
    sets.iter().map(|set| diameter(piece, *set)).fold(Length::ZERO, Length::max)
}

fn diameter(piece: &Piece, set: SetId) -> Length {
    piece.groups[piece.sets[set].group].cord.diameter
}

fn bead_of(piece: &Piece, at: usize, bead: FittingId, legs_each: u32, legs: &[SetId]) -> Result<Bead, PieceFault> {
    let fitting = &piece.fittings[bead].many.0;
    let Some(bead) = fitting.bead else {
        let title = format!("`{}` has no hole to thread", fitting.name);
        return Err(PieceFault::at(
            Spot::Step(at, "thread"),
            title,
            "",
            "give it `bore` and `length` in store/fittings.toml",
        ));
    };
    let bundle = thickest(piece, legs) * bundle_ratio(legs_each);
    if bundle > bead.bore {
        let title =
            format!("{legs_each} legs of {} mm don't go through `{}`", thickest(piece, legs).as_mm(), fitting.name);
        let label = format!("they need a hole of {:.1} mm, its hole is {} mm", bundle.as_mm(), bead.bore.as_mm());
        return Err(PieceFault::at(
            Spot::Step(at, "thread"),
            title,
            label,
            "take a bead with a larger hole, or fewer legs",
        ));
    }
    Ok(bead)
}

fn beads(piece: &Piece, at: usize, times: u32, legs_each: u32, legs: &[SetId]) -> Result<u64, PieceFault> {
    let count = count_legs(piece, legs);
    if !count.is_multiple_of(u64::from(legs_each)) {
        let title = format!("{count} legs don't divide into bundles of {legs_each} for the beads");
        return Err(PieceFault::at(Spot::Step(at, "legs"), title, "", "change `legs-each` or the sets"));
    }
    Ok(count / u64::from(legs_each) * u64::from(times))
}

fn draft_tie(piece: &Piece, at: usize, step: &Step, tie: &Tie) -> Result<Draft, PieceFault> {
    check_folded(piece, at, step, tie)?;
    let layout = lay_out(piece, at, tie)?;
    let core = match tie.on {
        Some(fitting) => core_of_fitting(piece, at, fitting)?,
        None => reeve_catalogue::Core::Legs { count: layout.core_each, diameter: thickest(piece, &tie.core) },
    };
    let setting = Setting {
        cord: thickest(piece, &tie.working),
        working: layout.working_each,
        core,
        parameters: &tie.parameters,
    };
    let taken = tie.knot.taken(&setting).map_err(|misfit| {
        let key = misfit_key(&misfit);
        PieceFault::at(Spot::Step(at, key), misfit.to_string(), "", "")
    })?;
    let mut draft = if tie.shared.is_some() {
        draft_shared(piece, tie, &layout, &taken)
    } else {
        draft_plain(piece, tie, &layout, &taken)
    };
    let past = match tie.knot.core.runs {
        Runs::Down => taken.rise,
        // What runs past a row passes its ridge: the leader and a turn of cord above and below it.
        Runs::Across => core_thickness(core) + setting.cord * 2.0,
    };
    draft.takes.extend(each(&step.alongside, past * f64::from(tie.times)));
    draft.knots = Some(KnotLine {
        knot: tie.knot.title.clone(),
        name: tie.knot.name.clone(),
        count: layout.knots,
        columns: layout.columns,
        times: u64::from(tie.times),
        take_up: taken.working,
        rise: taken.rise,
        source: tie.knot.working.note.source.word(),
    });
    Ok(draft)
}

fn misfit_key(misfit: &reeve_catalogue::Misfit) -> &'static str {
    use reeve_catalogue::Misfit;
    match misfit {
        Misfit::CoreLegs { .. } => "core",
        Misfit::NotOnFitting(_) => "on",
        Misfit::NeedsFitting(_) => "knot",
        Misfit::WorkingLegs { .. } => "working",
        Misfit::UnknownParameter { .. } | Misfit::ParameterRange { .. } => "parameters",
    }
}

fn core_thickness(core: reeve_catalogue::Core) -> Length {
    match core {
        reeve_catalogue::Core::Legs { count, diameter } => diameter * bundle_ratio(count),
        reeve_catalogue::Core::Rod(diameter) => diameter,
        reeve_catalogue::Core::Bar(a, b) => a.max(b),
    }
}

fn core_of_fitting(piece: &Piece, at: usize, fitting: FittingId) -> Result<reeve_catalogue::Core, PieceFault> {
    let fitting = &piece.fittings[fitting].many.0;
    fitting.section.map(crate::store::Section::as_core).ok_or_else(|| {
        let title = format!("nothing can be tied on `{}`", fitting.name);
        PieceFault::at(Spot::Step(at, "on"), title, "it has no section", "give it `section` in store/fittings.toml")
    })
}

/// A knot that hangs a cord by its fold needs cords that are folded.
fn check_folded(piece: &Piece, at: usize, step: &Step, tie: &Tie) -> Result<(), PieceFault> {
    let by_fold = tie.knot.kind == Kind::Mounting && tie.knot.working.legs == (2, 2);
    let single = step.hang.iter().find(|group| !piece.groups[**group].folded);
    match single {
        Some(group) if by_fold => Err(PieceFault::at(
            Spot::Step(at, "hang"),
            format!(
                "a {} hangs a cord by its fold, and the cords of `{}` are not folded",
                tie.knot.title, piece.groups[*group].name
            ),
            "",
            "write folded = true at the cord group, or hang them with another knot",
        )),
        _ => Ok(()),
    }
}

/// Each leg keeps its own role.
fn draft_plain(piece: &Piece, tie: &Tie, layout: &Layout, taken: &Taken) -> Draft {
    let times = f64::from(tie.times);
    let mut takes = each(&tie.working, taken.working * times);
    takes.extend(each(&tie.core, taken.core * (times * as_count(layout.knots_on_core))));
    let mut runs = if tie.knot.together {
        // Tied as one bundle, and drawn through as one.
        let draws = as_count(layout.columns) * tie.knot.working.draws;
        vec![(Pull::Mean(tie.working.clone()), run(tie, draws, taken.working))]
    } else {
        let drawn = |set: &SetId| f64::from(piece.sets[*set].count) * tie.knot.working.draws;
        tie.working.iter().map(|set| (Pull::Set(*set), run(tie, drawn(set), taken.working))).collect()
    };
    // The time that does not depend on length belongs to the knot, not to each set: it goes with the first.
    if let Some((_, first)) = runs.first_mut() {
        first.base = taken.base * (as_count(layout.knots) / times);
    }
    Draft { takes, runs, ..Draft::default() }
}

/// Legs change places: what all of them take is shared evenly.
fn draft_shared(piece: &Piece, tie: &Tie, layout: &Layout, taken: &Taken) -> Draft {
    let times = f64::from(tie.times);
    let pool = layout.pool.clone();
    let legs = as_count(count_legs(piece, &pool));
    let columns = as_count(layout.columns);
    let tied = taken.working * f64::from(layout.working_each) + taken.core * f64::from(layout.core_each);
    let share = (tied * columns + taken.rise * as_count(layout.idle)) / legs;
    let draws = columns * f64::from(layout.working_each) * tie.knot.working.draws;
    let mut run = run(tie, draws, share);
    run.base = taken.base * columns;
    Draft { takes: each(&pool, share * times), runs: vec![(Pull::Mean(pool), run)], ..Draft::default() }
}

fn run(tie: &Tie, draws: f64, take_up: Length) -> Run {
    Run { knots: tie.times, base: Time::ZERO, pull: tie.knot.time.pull, draws, hanging: Length::ZERO, take_up }
}

/// Knots on a fitting must find room on it.
fn check_room(piece: &Piece, drafts: &[Draft]) -> Vec<PieceFault> {
    let mut used = vec![Length::ZERO; piece.fittings.len()];
    let mut faults = Vec::new();
    for (at, (step, draft)) in piece.steps.iter().zip(drafts).enumerate() {
        let (Work::Tie(Tie { on: Some(on), .. }), Some(knots)) = (&step.work, &draft.knots) else { continue };
        used[*on] += knots.rise * as_count(knots.count);
        let (fitting, count) = &piece.fittings[*on].many;
        let Some(room) = fitting.room.map(|room| room * f64::from(*count)) else { continue };
        if used[*on] > room {
            let title = format!(
                "{} on `{}` need {:.0} mm side by side",
                plural(&knots.knot, knots.count),
                fitting.name,
                used[*on].as_mm()
            );
            let label = format!("it has room for {:.0} mm", room.as_mm());
            faults.push(PieceFault::at(
                Spot::Step(at, "on"),
                title,
                label,
                "take a larger fitting, thinner cord or fewer cords",
            ));
        }
    }
    faults
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

fn leg_lengths(piece: &Piece, drafts: &[Draft]) -> Vec<Length> {
    let mut lengths = vec![Length::ZERO; piece.sets.len()];
    for (set, length) in drafts.iter().flat_map(|draft| &draft.takes) {
        lengths[*set] += *length;
    }
    lengths
}

fn leg_lines(piece: &Piece, lengths: &[Length]) -> Vec<LegLine> {
    let line = |(set, length): (&LegSet, &Length)| LegLine {
        set: set.name.clone(),
        count: u64::from(set.count),
        length: *length,
    };
    piece.sets.iter().zip(lengths).map(line).collect()
}

fn cut_list(piece: &Piece, lengths: &[Length], bench: &Bench) -> Result<Vec<CutLine>, Vec<PieceFault>> {
    let lines: Vec<_> =
        piece.groups.iter().enumerate().map(|(at, group)| cut_line(piece, at, group, lengths, bench)).collect();
    let faults: Vec<_> = lines.iter().filter_map(|line| line.as_ref().err().cloned()).collect();
    if faults.is_empty() { Ok(lines.into_iter().flatten().collect()) } else { Err(faults) }
}

fn cut_line(
    piece: &Piece,
    at: usize,
    group: &CordGroup,
    lengths: &[Length],
    bench: &Bench,
) -> Result<CutLine, PieceFault> {
    let (first, second) = (lengths[group.legs.0], lengths[group.legs.1]);
    let net = if group.folded { first + second } else { first };
    let allowance = 1.0 + fraction(bench.cutting_allowance).to_f64().unwrap_or_default();
    let cut = (net * allowance).rounded_up_to(bench.cutting_step);
    if !bound::CUT_LENGTH.holds(cut.as_mm()) {
        let title = format!("each cord of `{}` comes to {:.2} m", group.name, cut.as_m());
        return Err(PieceFault::at(
            Spot::Cord(at, "group"),
            title,
            bound::CUT_LENGTH.to_string(),
            "check the repeats and lengths of its steps",
        ));
    }
    let longest = group.cord.put_ups.iter().map(|put_up| put_up.length_mm).max().unwrap_or_default();
    let cut_mm = whole_mm(cut);
    if cut_mm > longest {
        let title = format!("each cord of `{}` comes to {:.2} m", group.name, cut.as_m());
        let label =
            format!("the longest put-up of `{}` has {:.2} m", group.cord.name, Length::mm(as_count(longest)).as_m());
        return Err(PieceFault::at(
            Spot::Cord(at, "of"),
            title,
            label,
            "a cord is cut in one length: take another put-up, or split the group",
        ));
    }
    let fold = group.folded.then(|| fold(piece, group, first, net, cut));
    Ok(CutLine {
        group: group.name.clone(),
        cord: Arc::clone(&group.cord),
        count: u64::from(group.count),
        net,
        cut_mm,
        fold,
    })
}

/// Allowance and rounding are shared between the legs as their lengths are.
fn fold(piece: &Piece, group: &CordGroup, first: Length, net: Length, cut: Length) -> Fold {
    if group.legs.0 == group.legs.1 || net <= Length::ZERO {
        return Fold { at: cut / 2.0, from: None };
    }
    Fold { at: cut * (first / net), from: Some(piece.sets[group.legs.0].name.clone()) }
}

fn whole_mm(length: Length) -> u64 {
    Decimal::try_from(length.as_mm())
        .ok()
        .map(|mm| mm.round_dp(3).ceil())
        .and_then(|mm| mm.to_u64())
        .unwrap_or(u64::MAX)
}

fn step_lines(piece: &Piece, drafts: Vec<Draft>, lengths: &[Length], bench: &Bench) -> Vec<StepLine> {
    let mut hanging = lengths.to_vec();
    let mut lines = Vec::new();
    for (step, draft) in piece.steps.iter().zip(drafts) {
        let tying: Time =
            draft.runs.iter().map(|(pull, run)| Run { hanging: below(piece, pull, &hanging), ..*run }.time()).sum();
        for (set, length) in &draft.takes {
            hanging[*set] = hanging[*set] - *length;
        }
        lines.push(StepLine {
            title: step.title.clone(),
            time: bench.at_pace(tying + draft.handling),
            doing: doing(piece, step, draft.knots),
            note: step.note.clone(),
        });
    }
    lines
}

fn below(piece: &Piece, pull: &Pull, hanging: &[Length]) -> Length {
    match pull {
        Pull::Set(set) => hanging[*set],
        Pull::Mean(pool) => {
            let all: Length = pool.iter().map(|set| hanging[*set] * f64::from(piece.sets[*set].count)).sum();
            all / as_count(count_legs(piece, pool))
        }
    }
}

fn doing(piece: &Piece, step: &Step, knots: Option<KnotLine>) -> Doing {
    match &step.work {
        Work::Tie(_) => knots.map_or(Doing::LayIn, Doing::Knots),
        Work::Bare { length, legs } => Doing::Bare(*length, count_legs(piece, legs)),
        Work::Tail { length, legs, .. } => Doing::Tail(*length, count_legs(piece, legs)),
        Work::Thread { bead, times, legs_each, legs } => {
            let beads = count_legs(piece, legs) / u64::from(*legs_each) * u64::from(*times);
            Doing::Beads(Arc::clone(&piece.fittings[*bead].many.0), beads)
        }
        Work::LayIn => Doing::LayIn,
    }
}

fn chores(piece: &Piece, bench: &Bench) -> Vec<Chore> {
    let handling = &bench.handling;
    let cords: u64 = piece.groups.iter().map(|group| u64::from(group.count)).sum();
    let chore = |title: &str, time: Time, once, finishing| Chore {
        title: title.to_owned(),
        time: bench.at_pace(time),
        once,
        cost: Decimal::ZERO,
        finishing,
    };
    let mut chores = vec![
        chore("Lay out", handling.set_up, true, false),
        chore("Measure and cut", handling.cut * as_count(cords), false, false),
    ];
    chores.extend(piece.tasks.iter().map(|task| Chore {
        title: task.title.clone(),
        time: bench.as_given(task.time),
        once: task.once,
        cost: task.cost,
        finishing: true,
    }));
    chores.push(chore(PACKING, handling.pack, false, true));
    chores.retain(|chore| chore.time > Time::ZERO || !chore.cost.is_zero());
    chores
}

/// Fittings of the piece; beads are counted by the steps that thread them.
fn fittings(piece: &Piece) -> Vec<Many<Fitting>> {
    let mut all = Vec::new();
    for named in &piece.fittings {
        if named.many.0.bead.is_none() {
            add_fitting(&mut all, &named.many.0, named.many.1);
        }
    }
    for step in &piece.steps {
        if let Work::Thread { bead, times, legs_each, legs } = &step.work {
            let beads = count_legs(piece, legs) / u64::from(*legs_each) * u64::from(*times);
            add_fitting(&mut all, &piece.fittings[*bead].many.0, u32::try_from(beads).unwrap_or(u32::MAX));
        }
    }
    all
}

pub(crate) fn add_fitting(all: &mut Vec<Many<Fitting>>, fitting: &Arc<Fitting>, count: u32) {
    match all.iter_mut().find(|(known, _)| known.name == fitting.name) {
        Some((_, many)) => *many = many.saturating_add(count),
        None => all.push((Arc::clone(fitting), count)),
    }
}
