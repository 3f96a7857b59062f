//! The knots of the catalogue, in words and figures.

use reeve_catalogue::{
    CORE_ROLE, Coefficient, Core, Knot, Move, Note, Parameter, Role, Round, Setting, Source, Taken, WORKING_ROLE,
};
use reeve_costing::takeoff::plural;
use reeve_measure::Length;
use schemars::JsonSchema;
use serde::Serialize;

use crate::figures::{hundredth, tenth};

/// A list of knots in finished words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct KnotsPage {
    /// Each knot.
    pub knots: Vec<KnotListing>,
}

/// A knot in a list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct KnotListing {
    name: String,
    kind: &'static str,
    words: String,
}

/// A knot, shown in one setting.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct KnotPage {
    #[serde(flatten)]
    words: KnotWords,
    setting: String,
    figures: Vec<FigureView>,
    parts: Vec<KnotPart>,
    /// The library that works it out.
    library: Option<String>,
    /// Whether there is a path to draw it by.
    drawn: bool,
}

/// What is said of a knot wherever it is tied.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub(crate) struct KnotWords {
    name: String,
    title: String,
    also: String,
    kind: &'static str,
    summary: String,
    tied: String,
    parameters: Vec<String>,
    cautions: Vec<String>,
}

impl KnotWords {
    pub(crate) fn of(knot: &Knot) -> Self {
        Self {
            name: knot.name.clone(),
            title: knot.title.clone(),
            also: knot.also.join(", "),
            kind: knot.kind.word(),
            summary: knot.summary.clone(),
            tied: tied(knot),
            parameters: knot.parameters.iter().map(parameter_words).collect(),
            cautions: knot.cautions.clone(),
        }
    }
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct FigureView {
    text: String,
    mm: String,
    diameters: String,
}

/// A part of the description, with where it comes from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct KnotPart {
    text: String,
    moves: Vec<String>,
    source: &'static str,
    note: String,
}

/// A knot, shown in one setting, for other programs.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct KnotJson {
    /// The word designs use.
    pub name: String,
    /// As written on pages.
    pub title: String,
    /// Other names the trade uses.
    pub also: Vec<String>,
    /// `sennit`, `row`, `mounting`, `wrap` or `single`.
    pub kind: String,
    /// Core legs in one column; null on a rod.
    pub core: Option<u32>,
    /// Thickness of the rod it is tied on, in millimetres; null round legs.
    pub rod_mm: Option<f64>,
    /// The give of the cord: 0 is hard.
    pub give: f64,
    /// Thickness of the cord, in millimetres.
    pub cord_mm: f64,
    /// What each role takes in one knot.
    pub roles: Vec<RoleJson>,
    /// How far one knot carries the work, in millimetres.
    pub rise_mm: f64,
    /// The same in cord diameters.
    pub rise_diameters: f64,
    /// Seconds of one knot that do not depend on length, at the catalogue's pace.
    pub base_seconds: f64,
    /// Seconds for each metre of hanging leg, each time one is drawn through.
    pub pull_seconds: f64,
    /// Where the take-up comes from.
    pub source: String,
    /// The library that works it out; null for a knot of a file.
    pub library: Option<String>,
    /// What a client should be told of it.
    pub cautions: Vec<String>,
}

/// What the legs of one role take in one knot.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RoleJson {
    /// `working` or `core`.
    pub role: String,
    /// Legs of the role in one knot.
    pub legs: u32,
    /// Length of each leg that one knot takes, in millimetres.
    pub take_up_mm: f64,
    /// The same in cord diameters.
    pub take_up_diameters: f64,
}

/// Words a list of knots.
pub fn knots_page(knots: &[&Knot]) -> Vec<KnotListing> {
    let line = |knot: &&Knot| {
        let also = if knot.also.is_empty() { String::new() } else { format!("; also {}", knot.also.join(", ")) };
        let by = knot.computed.as_ref().map(|computed| format!("; by `{}`", computed.library)).unwrap_or_default();
        KnotListing { name: knot.name.clone(), kind: knot.kind.word(), words: format!("{}{also}{by}", knot.title) }
    };
    knots.iter().map(line).collect()
}

/// A list of knots for other programs: what does not depend on a setting.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct KnotNameJson {
    /// The word designs use.
    pub name: String,
    /// As written on pages.
    pub title: String,
    /// Other names the trade uses.
    pub also: Vec<String>,
    /// `sennit`, `row`, `mounting`, `wrap` or `single`.
    pub kind: String,
    /// Where the take-up comes from.
    pub source: String,
    /// The library that works it out; null for a knot of a file.
    pub library: Option<String>,
}

/// A list of knots for other programs.
pub fn knots_json(knots: &[&Knot]) -> Vec<KnotNameJson> {
    let named = |knot: &&Knot| KnotNameJson {
        name: knot.name.clone(),
        title: knot.title.clone(),
        also: knot.also.clone(),
        kind: knot.kind.word().to_owned(),
        source: knot.working.note.source.word().to_owned(),
        library: knot.computed.as_ref().map(|computed| computed.library.clone()),
    };
    knots.iter().map(named).collect()
}

/// What a knot still lacks, each with what to do about it.
pub fn lacks(knot: &Knot) -> Vec<String> {
    let mut lacks = Vec::new();
    match &knot.path {
        None if knot.computed.is_some() => {}
        None => lacks.push("a [path], so nothing draws it".to_owned()),
        Some(_) if knot.is_drawn() && knot.table.is_none() => {
            lacks.push(format!("tightening: `reeve knots tighten {} --keep` finds what it takes", knot.name));
        }
        Some(_) => {}
    }
    let rise = knot.rise.as_ref().map(|rise| ("rise", &rise.note));
    let notes = [("take-up", &knot.working.note)].into_iter().chain(rise).chain([("time", &knot.time.note)]);
    let remembered = notes.filter(|(_, note)| note.source == Source::FromMemory).map(|(what, _)| what);
    lacks.extend(remembered.map(|what| format!("a measured {what}: `reeve knots sample` takes one down")));
    lacks
}

/// Words a knot in one setting.
pub fn knot_page(knot: &Knot, setting: &Setting<'_>, taken: &Taken) -> KnotPage {
    let figure = |text: &str, length: Length| FigureView {
        text: text.to_owned(),
        mm: format!("{:.1} mm", length.as_mm()),
        diameters: format!("{:.2} diameters", length / setting.cord),
    };
    let figures = lengths(setting, taken).into_iter().map(|(text, length)| figure(text, length)).collect();
    KnotPage {
        words: KnotWords::of(knot),
        setting: setting_words(setting),
        figures,
        parts: parts(knot, taken),
        library: knot.computed.as_ref().map(|computed| computed.library.clone()),
        drawn: knot.path.is_some(),
    }
}

/// A parameter, its range and what it is if nobody says.
fn parameter_words(parameter: &Parameter) -> String {
    let unit = parameter.unit.behind();
    let Parameter { name, about, least, most, default, .. } = parameter;
    format!("{name}: {about} From {least} to {most}{unit}, {default}{unit} if not said.")
}

/// What each role takes in one knot, and its rise.
pub(crate) fn lengths(setting: &Setting<'_>, taken: &Taken) -> Vec<(&'static str, Length)> {
    let mut lengths = vec![("A working leg takes", taken.working)];
    if matches!(setting.core, Core::Legs { count: 1.., .. }) {
        lengths.push(("A core leg takes", taken.core));
    }
    lengths.push(("The work rises", taken.rise));
    lengths
}

fn parts(knot: &Knot, taken: &Taken) -> Vec<KnotPart> {
    let part = |text: String, moves: Vec<String>, note: &Note| KnotPart {
        text,
        moves,
        source: note.source.word(),
        note: note.words.clone(),
    };
    let role = |text: &str, role: &Role| part(text.to_owned(), role.moves.iter().map(move_words).collect(), &role.note);
    let working = if knot.computed.is_some() { "What it takes" } else { "What a working leg does" };
    let mut parts = vec![role(working, &knot.working)];
    if knot.core.legs.1 > 0 && knot.computed.is_none() {
        parts.push(role("What a core leg does", &knot.carried));
    }
    if let Some(rise) = &knot.rise {
        parts.push(part("The rise".to_owned(), Vec::new(), &rise.note));
    }
    let time = format!(
        "{} s, and {} s for each metre hanging, each time a leg is drawn through ({} in one knot)",
        tenth(taken.base.as_s()),
        knot.time.pull,
        plural("time", draws(taken))
    );
    parts.push(part("The time".to_owned(), vec![time], &knot.time.note));
    parts
}

/// Draws are small whole numbers in every knot; a half would still be told as the next one up.
fn draws(taken: &Taken) -> u64 {
    let mut whole = 0_u32;
    while f64::from(whole) < taken.draws {
        whole += 1;
    }
    u64::from(whole)
}

fn move_words(step: &Move) -> String {
    let amount = |amount: &Coefficient| match &amount.each {
        Some(name) => format!("{} for each of `{name}`", amount.factor),
        None => amount.factor.to_string(),
    };
    match step {
        Move::Across(diameters) => format!("runs across, diameters: {}", amount(diameters)),
        Move::Along(rises) => format!("runs along, rises: {}", amount(rises)),
        Move::Knots(part) => format!("takes what it takes in `{}`, times: {}", part.knot, part.times),
        Move::Round { thing, turns, pitch } => {
            let thing = match thing {
                Round::Core { with: 0 } => "the core".to_owned(),
                Round::Core { with } => format!("the core and {with} legs of its own"),
                Round::Legs(1) => "another leg".to_owned(),
                Round::Legs(count) => format!("a bundle of {count} legs"),
            };
            let climb = if *pitch > 0.0 { format!(", climbing {pitch} diameters a turn") } else { String::new() };
            format!("goes round {thing}, turns: {}{climb}", amount(turns))
        }
    }
}

pub(crate) fn tied(knot: &Knot) -> String {
    let range = |(least, most): (u32, u32), what: &str| {
        if least == most {
            plural(what, u64::from(most))
        } else {
            format!("{least} to {}", plural(what, u64::from(most)))
        }
    };
    let working = range(knot.working.legs, "working leg");
    let core = match (knot.core.legs, knot.core.fitting) {
        ((0, 0), false) => "round nothing".to_owned(),
        ((0, 0), true) => "on a fitting".to_owned(),
        (legs, false) => format!("round {}", range(legs, "core leg")),
        (legs, true) => format!("round {} or on a fitting", range(legs, "core leg")),
    };
    format!("{working}, {core}")
}

pub(crate) fn setting_words(setting: &Setting<'_>) -> String {
    let round = match setting.core {
        Core::Legs { count: 0, .. } => String::new(),
        Core::Legs { count, .. } => format!(" round {}", plural("core leg", u64::from(count))),
        Core::Rod(rod) => format!(" on a rod of {} mm", rod.as_mm()),
        Core::Bar(a, b) => format!(" on a bar of {} x {} mm", a.as_mm(), b.as_mm()),
    };
    let legs = plural("working leg", u64::from(setting.working));
    format!("In cord of {} mm with a give of {}, {legs}{round}", setting.cord.as_mm(), setting.give)
}

/// A knot in one setting for other programs.
pub fn knot_json(knot: &Knot, setting: &Setting<'_>, taken: &Taken) -> KnotJson {
    let (core, rod_mm) = legs_or_rod(setting);
    KnotJson {
        name: knot.name.clone(),
        title: knot.title.clone(),
        also: knot.also.clone(),
        kind: knot.kind.word().to_owned(),
        core,
        rod_mm,
        give: setting.give,
        cord_mm: setting.cord.as_mm(),
        roles: roles_json(setting, taken.working, taken.core),
        rise_mm: tenth(taken.rise.as_mm()),
        rise_diameters: hundredth(taken.rise / setting.cord),
        base_seconds: tenth(taken.base.as_s()),
        pull_seconds: knot.time.pull,
        source: knot.working.note.source.word().to_owned(),
        library: knot.computed.as_ref().map(|computed| computed.library.clone()),
        cautions: knot.cautions.clone(),
    }
}

/// The core legs of a setting, or the thickness of its rod in millimetres.
pub(crate) fn legs_or_rod(setting: &Setting<'_>) -> (Option<u32>, Option<f64>) {
    match setting.core {
        Core::Legs { count, .. } => (Some(count), None),
        Core::Rod(rod) | Core::Bar(rod, _) => (None, Some(rod.as_mm())),
    }
}

/// What each role takes, where there are legs of it.
pub(crate) fn roles_json(setting: &Setting<'_>, working: Length, core: Length) -> Vec<RoleJson> {
    let role = |role: &str, legs: u32, length: Length| RoleJson {
        role: role.to_owned(),
        legs,
        take_up_mm: tenth(length.as_mm()),
        take_up_diameters: hundredth(length / setting.cord),
    };
    let mut roles = vec![role(WORKING_ROLE, setting.working, working)];
    let core_legs = legs_or_rod(setting).0.filter(|legs| *legs > 0);
    roles.extend(core_legs.map(|legs| role(CORE_ROLE, legs, core)));
    roles
}
