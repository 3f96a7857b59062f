//! The knots of the catalogue, in words and figures.

use reeve_catalogue::{
    CORE_ROLE, Coefficient, Core, Knot, KnotKind, Move, Note, Parameter, ParameterUnit, Role, Round, Setting, Source,
    Taken, WORKING_ROLE,
};
use reeve_measure::Length;
use serde::Serialize;

use crate::figures::{hundredth, tenth};
use crate::phrases::say;
use crate::words::Words;

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
    kind: String,
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
    kind: String,
    summary: String,
    tied: String,
    parameters: Vec<String>,
    cautions: Vec<String>,
}

impl KnotWords {
    pub(crate) fn of(knot: &Knot, words: &Words) -> Self {
        Self {
            name: knot.name.clone(),
            title: knot.title.clone(),
            also: knot.also.join(", "),
            kind: kind_words(knot.kind, words),
            summary: knot.summary.clone(),
            tied: tied(knot, words),
            parameters: knot.parameters.iter().map(|parameter| parameter_words(parameter, words)).collect(),
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
    source: String,
    note: String,
}

/// A knot, shown in one setting, for other programs.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
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
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
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

/// What a kind of knots is called.
pub(crate) fn kind_words(kind: KnotKind, words: &Words) -> String {
    match kind {
        KnotKind::Sennit => say!(words, "kind-sennit"),
        KnotKind::Row => say!(words, "kind-row"),
        KnotKind::Mounting => say!(words, "kind-mounting"),
        KnotKind::Wrap => say!(words, "kind-wrap"),
        KnotKind::Single => say!(words, "kind-single"),
    }
}

/// Where a figure comes from.
pub(crate) fn source_words(source: Source, words: &Words) -> String {
    match source {
        Source::Geometry => say!(words, "source-geometry"),
        Source::Published => say!(words, "source-published"),
        Source::CommonPractice => say!(words, "source-common-practice"),
        Source::FromMemory => say!(words, "source-from-memory"),
        Source::YourSample => say!(words, "source-your-sample"),
    }
}

/// Words a list of knots.
pub fn knots_page(knots: &[&Knot], words: &Words) -> Vec<KnotListing> {
    let line = |knot: &&Knot| {
        let also = (!knot.also.is_empty()).then(|| say!(words, "knots-also", names = knot.also.join(", ")));
        let by = knot.computed.as_ref().map(|by| say!(words, "knots-by", library = by.library.as_str()));
        let parts = [knot.title.clone()].into_iter().chain(also).chain(by);
        KnotListing {
            name: knot.name.clone(),
            kind: kind_words(knot.kind, words),
            words: parts.collect::<Vec<_>>().join("; "),
        }
    };
    knots.iter().map(line).collect()
}

/// A list of knots for other programs: what does not depend on a setting.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
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
pub fn lacks(knot: &Knot, words: &Words) -> Vec<String> {
    let path = match &knot.path {
        None if knot.computed.is_some() => None,
        None => Some(say!(words, "lacks-path")),
        Some(_) if knot.is_drawn() && knot.table.is_none() => {
            Some(say!(words, "lacks-tightening", knot = knot.name.as_str()))
        }
        Some(_) => None,
    };
    let remembered = |note: &Note| note.source == Source::FromMemory;
    let rise = knot.rise.as_ref().is_some_and(|rise| remembered(&rise.note));
    let measured = [
        remembered(&knot.working.note).then(|| say!(words, "lacks-take-up")),
        rise.then(|| say!(words, "lacks-rise")),
        remembered(&knot.time.note).then(|| say!(words, "lacks-time")),
    ];
    path.into_iter().chain(measured.into_iter().flatten()).collect()
}

/// Words a knot in one setting.
pub fn knot_page(knot: &Knot, setting: &Setting<'_>, taken: &Taken, words: &Words) -> KnotPage {
    let figure = |(text, length): (String, Length)| FigureView {
        text,
        mm: words.millimetres(length, 1),
        diameters: say!(words, "diameters", figure = words.decimal(length / setting.cord, 2)),
    };
    KnotPage {
        words: KnotWords::of(knot, words),
        setting: setting_words(setting, words),
        figures: lengths(setting, taken, words).into_iter().map(figure).collect(),
        parts: parts(knot, taken, words),
        library: knot.computed.as_ref().map(|computed| computed.library.clone()),
        drawn: knot.path.is_some(),
    }
}

/// A parameter, its range and what it is if nobody says.
fn parameter_words(parameter: &Parameter, words: &Words) -> String {
    let figure = |figure: f64| words.figure(figure);
    let unit = |figure: String| match parameter.unit {
        ParameterUnit::Number => figure,
        ParameterUnit::Length => say!(words, "millimetres", figure = figure),
        ParameterUnit::Degrees => say!(words, "knot-degrees", figure = figure),
        ParameterUnit::Diameters => say!(words, "diameters", figure = figure),
    };
    say!(
        words,
        "knot-parameter",
        name = parameter.name.as_str(),
        about = parameter.about.as_str(),
        least = figure(parameter.least),
        most = unit(figure(parameter.most)),
        default = unit(figure(parameter.default))
    )
}

/// What each role takes in one knot, and its rise.
pub(crate) fn lengths(setting: &Setting<'_>, taken: &Taken, words: &Words) -> Vec<(String, Length)> {
    let core = matches!(setting.core, Core::Legs { count: 1.., .. });
    let core = core.then(|| (say!(words, "knot-core-leg-takes"), taken.core));
    let working = (say!(words, "knot-working-leg-takes"), taken.working);
    [working].into_iter().chain(core).chain([(say!(words, "knot-rises"), taken.rise)]).collect()
}

fn parts(knot: &Knot, taken: &Taken, words: &Words) -> Vec<KnotPart> {
    let part = |text: String, moves: Vec<String>, note: &Note| KnotPart {
        text,
        moves,
        source: source_words(note.source, words),
        note: note.words.clone(),
    };
    let role = |text: String, role: &Role| {
        part(text, role.moves.iter().map(|step| move_words(step, words)).collect(), &role.note)
    };
    let computed = knot.computed.is_some();
    let working = if computed { say!(words, "knot-takes") } else { say!(words, "knot-working-leg-does") };
    let mut parts = vec![role(working, &knot.working)];
    if knot.core.legs.1 > 0 && !computed {
        parts.push(role(say!(words, "knot-core-leg-does"), &knot.carried));
    }
    if let Some(rise) = &knot.rise {
        parts.push(part(say!(words, "knot-rise"), Vec::new(), &rise.note));
    }
    let base = words.figure(tenth(taken.base.as_s()));
    let time = say!(words, "knot-time-is", base = base, pull = words.figure(knot.time.pull), count = draws(taken));
    parts.push(part(say!(words, "knot-time"), vec![time], &knot.time.note));
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

fn move_words(step: &Move, words: &Words) -> String {
    let amount = |amount: &Coefficient| {
        let factor = words.figure(amount.factor);
        match &amount.each {
            Some(name) => say!(words, "move-for-each", factor = factor, name = name.as_str()),
            None => factor,
        }
    };
    match step {
        Move::Across(diameters) => say!(words, "move-across", amount = amount(diameters)),
        Move::Along(rises) => say!(words, "move-along", amount = amount(rises)),
        Move::Knots(part) => {
            say!(words, "move-knots", knot = part.knot.clone(), times = part.times.to_string())
        }
        Move::Round { thing, turns, pitch } => {
            let (thing, turns) = (round_words(*thing, words), amount(turns));
            if *pitch > 0.0 {
                say!(words, "move-round-climbing", thing = thing, turns = turns, pitch = words.figure(*pitch))
            } else {
                say!(words, "move-round", thing = thing, turns = turns)
            }
        }
    }
}

fn round_words(thing: Round, words: &Words) -> String {
    match thing {
        Round::Core { with: 0 } => say!(words, "round-core"),
        Round::Core { with } => say!(words, "round-core-with", count = with),
        Round::Legs(1) => say!(words, "round-leg"),
        Round::Legs(count) => say!(words, "round-bundle", count = count),
    }
}

/// The legs that it is tied with: so many of the working ones, and round what.
pub(crate) fn tied(knot: &Knot, words: &Words) -> String {
    let (least, most) = knot.working.legs;
    let working = if least == most {
        say!(words, "working-legs", count = most)
    } else {
        say!(words, "working-legs-range", least = least, count = most)
    };
    let core = |(least, most): (u32, u32)| {
        if least == most {
            say!(words, "core-legs", count = most)
        } else {
            say!(words, "core-legs-range", least = least, count = most)
        }
    };
    match (knot.core.legs, knot.core.fitting) {
        ((0, 0), false) => say!(words, "tied-round-nothing", legs = working),
        ((0, 0), true) => say!(words, "tied-on-fitting", legs = working),
        (legs, false) => say!(words, "tied-round", legs = working, core = core(legs)),
        (legs, true) => say!(words, "tied-round-or-on-fitting", legs = working, core = core(legs)),
    }
}

pub(crate) fn setting_words(setting: &Setting<'_>, words: &Words) -> String {
    let (cord, give) = (words.thickness(setting.cord), words.figure(setting.give));
    let legs = say!(words, "working-legs", count = setting.working);
    match setting.core {
        Core::Legs { count: 0, .. } => say!(words, "setting", cord = cord, give = give, legs = legs),
        Core::Legs { count, .. } => {
            let core = say!(words, "core-legs", count = count);
            say!(words, "setting-round", cord = cord, give = give, legs = legs, core = core)
        }
        Core::Rod(rod) => {
            say!(words, "setting-on-rod", cord = cord, give = give, legs = legs, rod = words.thickness(rod))
        }
        Core::Bar(a, b) => {
            let (a, b) = (words.figure(a.as_mm()), words.thickness(b));
            say!(words, "setting-on-bar", cord = cord, give = give, legs = legs, a = a, b = b)
        }
    }
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
