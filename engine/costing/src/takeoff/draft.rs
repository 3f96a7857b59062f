//! What each step takes from each leg.

use reeve_catalogue::{Core, KnotKind, Runs, Setting, Taken, TyingError, bundle_ratio, with_article};
use reeve_measure::{Length, Time, count as as_count};

use super::layout::{Layout, lay_out};
use super::{DesignPlace, KnotLine, PieceFault, count_beads, count_legs, plural};
use crate::basis::Basis;
use crate::hand::{Estimate, Hand, Tied};
use crate::piece::{FittingId, Piece, SetId, Step, TailEnd, Tie, Work};
use crate::rates::Handling;
use crate::run::Run;
use crate::store::{Bead, Cord, Section};

/// What one step takes from each leg, and what it says of its time.
#[derive(Debug, Default)]
pub(super) struct Draft {
    pub(super) takes: Vec<(SetId, Length)>,
    /// Of what is taken, what is cut off flush.
    pub(super) wasted: Vec<(SetId, Length)>,
    pub(super) runs: Vec<(Pull, Run)>,
    pub(super) knots: Option<KnotLine>,
    pub(super) handling: Time,
    /// The factor on the time of its knots beside the pace, as a logarithm.
    pub(super) own_time: Option<Estimate>,
    pub(super) doubt: Option<Doubt>,
}

/// How uncertain the knots of a step leave the legs that they take.
#[derive(Debug)]
pub(super) struct Doubt {
    /// The cord and the knot: what is unknown of the two is the same in every one of their knots.
    pub(super) of: (String, String),
    /// Standard deviation of what is taken from each leg.
    pub(super) legs: Vec<(SetId, Length)>,
}

/// Whose hanging length a run is pulled against.
#[derive(Debug)]
pub(super) enum Pull {
    /// The legs of one set.
    Set(SetId),
    /// The mean of several sets that change places.
    Mean(Vec<SetId>),
}

pub(super) fn draft(piece: &Piece, at: usize, step: &Step, basis: &Basis) -> Result<Draft, PieceFault> {
    match &step.work {
        Work::Tie(tie) => draft_tie(piece, at, step, tie, &basis.hand),
        Work::Bare { length, legs } => Ok(Draft { takes: each(legs, *length), ..Draft::default() }),
        Work::Tail { length, legs, end } => Ok(draft_tail(piece, *length, legs, *end, &basis.rates.bench.handling)),
        Work::Thread { bead, times, legs_each, legs } => {
            let bead = bead_of(piece, at, *bead, *legs_each, legs)?;
            let handling = basis.rates.bench.handling.bead * as_count(beads(piece, at, *times, *legs_each, legs)?);
            Ok(Draft { takes: each(legs, bead.length * f64::from(*times)), handling, ..Draft::default() })
        }
        Work::LayIn => Ok(Draft::default()),
    }
}

fn draft_tail(piece: &Piece, length: Length, legs: &[SetId], end: TailEnd, handling: &Handling) -> Draft {
    let one = match end {
        TailEnd::Combed => handling.trim + handling.comb,
        TailEnd::Plain | TailEnd::Flush => handling.trim,
    };
    let takes = each(legs, length);
    let wasted = if end == TailEnd::Flush { takes.clone() } else { Vec::new() };
    Draft { takes, wasted, handling: one * as_count(count_legs(piece, legs)), ..Draft::default() }
}

fn each(sets: &[SetId], length: Length) -> Vec<(SetId, Length)> {
    sets.iter().map(|set| (*set, length)).collect()
}

fn thickest(piece: &Piece, sets: &[SetId]) -> Length {
    sets.iter().map(|set| diameter(piece, *set)).fold(Length::ZERO, Length::max)
}

/// The thickest cord of some sets, of which there is one at least; of equals the first.
fn thickest_cord<'p>(piece: &'p Piece, sets: &[SetId]) -> &'p Cord {
    let thicker = |a: &'p Cord, b: &'p Cord| if b.diameter > a.diameter { b } else { a };
    sets.iter().map(|set| cord_of(piece, *set)).fold(cord_of(piece, sets[0]), thicker)
}

fn diameter(piece: &Piece, set: SetId) -> Length {
    cord_of(piece, set).diameter
}

fn cord_of(piece: &Piece, set: SetId) -> &Cord {
    &piece.groups[piece.sets[set].group].cord
}

fn bead_of(piece: &Piece, at: usize, bead: FittingId, legs_each: u32, legs: &[SetId]) -> Result<Bead, PieceFault> {
    let fitting = &piece.fittings[bead].many.0;
    let Some(bead) = fitting.bead else {
        let title = format!("`{}` has no hole to thread", fitting.name);
        return Err(PieceFault::at(
            DesignPlace::Step(at, "thread"),
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
            DesignPlace::Step(at, "thread"),
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
        return Err(PieceFault::at(DesignPlace::Step(at, "legs"), title, "", "change `legs-each` or the sets"));
    }
    Ok(count_beads(piece, times, legs_each, legs))
}

fn draft_tie(piece: &Piece, at: usize, step: &Step, tie: &Tie, hand: &Hand) -> Result<Draft, PieceFault> {
    check_folded(piece, at, step, tie)?;
    let layout = lay_out(piece, at, tie)?;
    let core = match tie.on {
        Some(fitting) => core_of_fitting(piece, at, fitting)?,
        None => Core::Legs { count: layout.core_each, diameter: thickest(piece, &tie.core) },
    };
    let cord = thickest_cord(piece, &tie.working);
    let setting = Setting {
        cord: cord.diameter,
        working: layout.working_each,
        core,
        give: cord.stated_give(),
        parameters: &tie.parameters,
    };
    let tied = hand.tie(cord, &tie.knot, &setting).map_err(|misfit| {
        let (spot, help) = mending(&misfit, at, tie);
        PieceFault::at(spot, misfit.to_string(), "", help)
    })?;
    let taken = &tied.taken;
    let mut takes = takes_of(piece, tie, &layout, taken);
    let mut doubt = takes_of(piece, tie, &layout, &tied.doubt);
    let (past, past_doubt) = passing(tie, core, &setting, &tied);
    takes.extend(each(&step.alongside, past * f64::from(tie.times)));
    doubt.extend(each(&step.alongside, past_doubt * f64::from(tie.times)));
    let knots = KnotLine {
        knot: tie.knot.title.clone(),
        name: tie.knot.name.clone(),
        cord: cord.name.clone(),
        count: layout.knots,
        columns: layout.columns,
        times: u64::from(tie.times),
        parameters: tie.knot.settled(&setting),
        take_up: taken.working,
        rise: taken.rise,
        source: tied.source,
    };
    Ok(Draft {
        takes,
        runs: runs_of(piece, tie, &layout, taken),
        knots: Some(knots),
        own_time: Some(hand.time_of(&tie.knot)),
        doubt: Some(Doubt { of: (cord.name.clone(), tie.knot.name.clone()), legs: doubt }),
        ..Draft::default()
    })
}

/// The place to look at, and what to change.
fn mending(misfit: &TyingError, at: usize, tie: &Tie) -> (DesignPlace, String) {
    if let TyingError::Refused { parameter, .. } = misfit {
        let named = |name: &String| tie.parameters.iter().position(|(chosen, _)| chosen == name);
        let key = if tie.on.is_some() { "on" } else { "knot" };
        let spot = match parameter {
            Some(name) => named(name).map_or(DesignPlace::Step(at, "knot"), |nth| DesignPlace::Parameter(at, nth)),
            None => DesignPlace::Step(at, key),
        };
        return (spot, misfit.parameter_help().unwrap_or_else(|| "tie it otherwise, or another knot".to_owned()));
    }
    if let TyingError::Library { remedy, .. } = misfit {
        return (DesignPlace::Step(at, "knot"), remedy.clone());
    }
    let (key, help) = key_of(misfit, tie);
    (DesignPlace::Step(at, key), help.to_owned())
}

/// The key to look at, and what to change, where the catalogue itself knows.
fn key_of(misfit: &TyingError, tie: &Tie) -> (&'static str, &'static str) {
    match misfit {
        TyingError::CoreLegs { .. } if tie.shared.is_some_and(|shared| shared.core_legs.is_some()) => {
            ("core-legs", "change `core-legs`")
        }
        TyingError::CoreLegs { given: 0, .. } => ("core", "name the sets that it is tied round in `core`"),
        TyingError::CoreLegs { .. } => ("core", "change `core`, `columns` or the number of cords"),
        TyingError::NotOnFitting(_) => ("on", "name leg sets in `core` instead"),
        TyingError::NeedsFitting(_) => ("knot", "name a fitting in `on`"),
        TyingError::WorkingLegs { .. } => ("working", "change `working`, `columns` or the number of cords"),
        TyingError::MissingPart { .. } => ("knot", "mend the knot's file, or tie another knot"),
        TyingError::NotTightened { .. } => ("knot", "tighten it, or tie another knot"),
        TyingError::BeyondTable { .. } if tie.on.is_some() => ("on", "take a thinner fitting, or a thicker cord"),
        TyingError::BeyondTable { .. } => ("core", "take fewer core legs, or thinner ones"),
        _ => ("parameters", "take out what the knot does not have, and keep within its ranges"),
    }
}

fn core_thickness(core: Core) -> Length {
    match core {
        Core::Legs { count, diameter } => diameter * bundle_ratio(count),
        Core::Rod(diameter) => diameter,
        Core::Bar(a, b) => a.max(b),
    }
}

fn core_of_fitting(piece: &Piece, at: usize, fitting: FittingId) -> Result<Core, PieceFault> {
    let fitting = &piece.fittings[fitting].many.0;
    fitting.section.map(Section::as_core).ok_or_else(|| {
        let title = format!("nothing can be tied on `{}`", fitting.name);
        PieceFault::at(
            DesignPlace::Step(at, "on"),
            title,
            "it has no section",
            "give it `section` in store/fittings.toml",
        )
    })
}

/// A knot that hangs a cord by its fold needs cords that are folded.
fn check_folded(piece: &Piece, at: usize, step: &Step, tie: &Tie) -> Result<(), PieceFault> {
    let by_fold = tie.knot.kind == KnotKind::Mounting && tie.knot.working.legs == (2, 2);
    let single = step.hang.iter().find(|group| !piece.groups[**group].folded);
    match single {
        Some(group) if by_fold => Err(PieceFault::at(
            DesignPlace::Step(at, "hang"),
            format!(
                "{} hangs a cord by its fold, and the cords of `{}` are not folded",
                with_article(&tie.knot.title),
                piece.groups[*group].name
            ),
            "",
            "write folded = true at the cord group, or hang them with another knot",
        )),
        _ => Ok(()),
    }
}

/// How far legs run that pass one knot beside it, and how uncertain that is.
fn passing(tie: &Tie, core: Core, setting: &Setting<'_>, tied: &Tied) -> (Length, Length) {
    match tie.knot.core.runs {
        Runs::Down => (tied.taken.rise, tied.doubt.rise),
        // What runs past a row passes its ridge: the leader and a turn of cord above and below it.
        Runs::Across => (core_thickness(core) + setting.cord * 2.0, Length::ZERO),
    }
}

/// What the knots of a step take from each leg that they tie or are tied round, when one takes so much.
fn takes_of(piece: &Piece, tie: &Tie, layout: &Layout, taken: &Taken) -> Vec<(SetId, Length)> {
    let times = f64::from(tie.times);
    if tie.shared.is_some() {
        return each(&layout.pool, share(piece, layout, taken) * times);
    }
    let mut takes = each(&tie.working, taken.working * times);
    takes.extend(each(&tie.core, taken.core * (times * as_count(layout.knots_on_core))));
    takes
}

/// Legs change places: what all of them take is shared evenly.
fn share(piece: &Piece, layout: &Layout, taken: &Taken) -> Length {
    let tied = taken.working * f64::from(layout.working_each) + taken.core * f64::from(layout.core_each);
    (tied * as_count(layout.columns) + taken.rise * as_count(layout.idle)) / as_count(count_legs(piece, &layout.pool))
}

/// The runs of a step, each with whose hanging legs it pulls.
fn runs_of(piece: &Piece, tie: &Tie, layout: &Layout, taken: &Taken) -> Vec<(Pull, Run)> {
    let columns = as_count(layout.columns);
    let draws = taken.draws;
    let mut runs = if tie.shared.is_some() {
        let drawn = columns * f64::from(layout.working_each) * draws;
        vec![(Pull::Mean(layout.pool.clone()), run(tie, drawn, share(piece, layout, taken)))]
    } else if tie.knot.together {
        // Tied as one bundle, and drawn through as one.
        vec![(Pull::Mean(tie.working.clone()), run(tie, columns * draws, taken.working))]
    } else {
        let drawn = |set: &SetId| f64::from(piece.sets[*set].count) * draws;
        tie.working.iter().map(|set| (Pull::Set(*set), run(tie, drawn(set), taken.working))).collect()
    };
    // The time that does not depend on length belongs to the knot, not to each set: it goes with the first.
    if let Some((_, first)) = runs.first_mut() {
        first.base = taken.base * (as_count(layout.knots) / f64::from(tie.times));
    }
    runs
}

fn run(tie: &Tie, draws: f64, take_up: Length) -> Run {
    Run { knots: tie.times, base: Time::ZERO, pull: tie.knot.time.pull, draws, hanging: Length::ZERO, take_up }
}

/// Knots on a fitting must find room on it.
pub(super) fn check_room(piece: &Piece, drafts: &[Draft]) -> Vec<PieceFault> {
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
                DesignPlace::Step(at, "on"),
                title,
                label,
                "take a larger fitting, thinner cord or fewer cords",
            ));
        }
    }
    faults
}
