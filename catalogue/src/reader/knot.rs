//! Reads one knot type from the text of its file.

use reeve_measure::bound;
use reeve_reading::{Count, Flag, List, Name, Number, OneOf, Placed, Table, Text};

use crate::computed::Computed;
use crate::knot::{
    CORE_ROLE, Coefficient, CoreRule, Knot, KnotKind, KnotTime, Lies, Move, Note, Rise, Role, Round, Runs, Source,
    SubKnot, WORKING_ROLE,
};
use crate::parameter::Parameter;
use crate::unit::ParameterUnit;

/// Reads a knot file. Faults are laid on the table's desk.
pub fn knot_file(t: &mut Table<'_>) -> Option<Knot> {
    let head = t.need_table("knot", "The knot's names and use.", head);
    let core = t.table("core", "What it is tied round; left out for a knot without a core.", core_rule);
    let roles = t.tables("role", "What the legs of one role do in one knot: one for `working`, one for `core`.", role);
    let path =
        t.table("path", "The centrelines of its legs, from which take-up and rise are computed.", super::path::path);
    let rise = t.table("rise", "How far one knot carries the work along its core; with moves.", rise);
    let computed = t.table("computed", "The library that works it out, in place of moves and path.", |t| {
        t.need("library", &Name, "The word it is admitted by.").map(|name| name.value)
    });
    let time = t.need_table("time", "How long one knot takes.", |t| time(t, computed.is_some()));
    let parameters = t.tables("parameter", "A figure that a design may choose.", parameter);
    let working = find_role(t, &roles, WORKING_ROLE);
    let carried = roles.iter().find(|role| role.0 == CORE_ROLE).map_or_else(straight_core, |role| role.1.clone());
    let (head, time) = (head?.value, time?.value);
    let knot = Knot {
        name: head.name,
        title: head.title,
        also: head.also,
        kind: head.kind,
        summary: head.summary,
        together: head.together,
        core: core.map_or(NO_CORE, |core| core.value),
        working: working?,
        carried,
        rise: rise.map(|rise| rise.value),
        time,
        parameters: parameters.into_iter().map(|parameter| parameter.value).collect(),
        path: path.map(|path| path.value),
        table: None,
        parts: Vec::new(),
        computed: computed.map(|computed| Computed::by(computed.value)),
        cautions: head.cautions,
    };
    (check_names_of_parameters(t, &knot) && check_ways(t, &knot) && check_path(t, &knot)).then_some(knot)
}

/// A knot takes what its moves and rise say, or what its path comes to: the one or the other must be whole.
fn check_ways(t: &Table<'_>, knot: &Knot) -> bool {
    if knot.computed.is_some() {
        return check_computed(t, knot);
    }
    match (knot.working.moves.is_empty(), &knot.rise, &knot.path) {
        (true, None, Some(_)) | (false, Some(_), _) => return true,
        (true, _, None) => t.refuse_together(
            t.place("role").unwrap_or_default(),
            "nothing says what this knot takes",
            "",
            "give the working role moves = [{ round = \"core\", turns = 1 }], or draw the knot under [path]",
        ),
        (true, Some(_), Some(_)) => t.refuse_together(
            t.place("rise").unwrap_or_default(),
            "the rise follows from the path",
            "",
            "leave [rise] out, or give the working role moves as well",
        ),
        (false, None, _) => t.refuse_together(
            0..0,
            "`rise` is missing",
            "how far does one knot carry the work?",
            "add [rise] with diameters = 2, source and note",
        ),
    }
    false
}

/// What a library works out can't be told a second time by the file.
fn check_computed(t: &Table<'_>, knot: &Knot) -> bool {
    let told = [("rise", knot.rise.is_some()), ("path", knot.path.is_some()), ("role", !knot.working.moves.is_empty())];
    let told = told.iter().find(|(_, told)| *told).map(|(key, _)| *key);
    if let Some(key) = told {
        t.refuse_together(
            t.place(key).unwrap_or_default(),
            "the library works out what this knot takes",
            "",
            "leave out moves, [rise] and [path], or take out [computed]",
        );
    }
    told.is_none()
}

/// The legs of a path must be the working legs of the knot, and its parameters must be the knot's.
fn check_path(t: &Table<'_>, knot: &Knot) -> bool {
    let Some(path) = &knot.path else { return true };
    let at = || t.place("path").unwrap_or_default();
    let drawn: u32 = path.legs.iter().map(|leg| leg.legs).sum();
    let all_round = path.legs.iter().any(|leg| leg.all_round);
    let bundled = knot.together && drawn == 1;
    let (least, most) = knot.working.legs;
    // A path that is only there to draw the knot by may show any number that it is tied with.
    let shown = !knot.working.moves.is_empty() && (least..=most).contains(&drawn);
    let fits = all_round || bundled || shown || (least, most) == (drawn, drawn);
    if !fits {
        let tied = if least == most { least.to_string() } else { format!("{least} to {most}") };
        let label = format!("the path draws {drawn}, the working role has {tied}");
        t.refuse_together(at(), "the legs drawn are not the working legs", label, "draw each, or say all-round = true");
    }
    let unknown = path.parameters.iter().find(|(name, _)| !knot.parameters.iter().any(|p| p.name == *name));
    if let Some((name, _)) = unknown {
        t.refuse_together(
            at(),
            format!("the path is drawn for `{name}`, which the knot does not have"),
            "",
            "take it out of `parameters`, or add a [[parameter]]",
        );
    }
    fits && unknown.is_none()
}

const NO_CORE: CoreRule = CoreRule { legs: (0, 0), fitting: false, lies: Lies::Snug, runs: Runs::Down };

/// Core legs that do nothing but run straight through the knot.
fn straight_core() -> Role {
    Role {
        legs: (0, 0),
        draws: 0.0,
        joins: false,
        moves: vec![Move::Along(Coefficient { factor: 1.0, each: None })],
        note: Note { source: Source::Geometry, words: "The core runs straight through the knot.".to_owned() },
    }
}

struct KnotHead {
    name: String,
    title: String,
    also: Vec<String>,
    kind: KnotKind,
    summary: String,
    together: bool,
    cautions: Vec<String>,
}

fn head(t: &mut Table<'_>) -> Option<KnotHead> {
    let name = t.need("name", &Name, "The word that designs use.");
    let title = t.need("title", &Text, "The name as written on pages, small letters, in the singular.");
    let also = t.maybe("also", &List(Text), "Other names the trade uses.");
    let kind = t.need("kind", &OneOf { words: KnotKind::WORDS }, "How it is used.");
    let summary = t.need("summary", &Text, "How it is tied, in a sentence or two.");
    let together = t.maybe("together", &Flag, "Whether several legs are tied together as one thick cord.");
    let cautions = t.maybe("cautions", &List(Text), "Sentences that a quote with this knot shows.");
    let words = |list: Option<Placed<Vec<Placed<String>>>>| {
        list.map(|list| list.value.into_iter().map(|word| word.value).collect()).unwrap_or_default()
    };
    Some(KnotHead {
        name: name?.value,
        title: title?.value,
        also: words(also),
        kind: kind?.value,
        summary: summary?.value,
        together: together.is_some_and(|together| together.value),
        cautions: words(cautions),
    })
}

fn core_rule(t: &mut Table<'_>) -> Option<CoreRule> {
    let legs = range(t, "legs", "Fewest and most core legs in a column, as [1, 8]; [0, 0] for none.");
    let fitting = t.maybe("fitting", &Flag, "Whether it can be tied on a ring, dowel or other fitting.");
    let lies = t.maybe("lies", &OneOf { words: Lies::WORDS }, "How several core legs lie; `snug` if not said.");
    let runs = t.maybe(
        "runs",
        &OneOf { words: Runs::WORDS },
        "`down`: each column has its own core (the default); `across`: a row shares one.",
    );
    Some(CoreRule {
        legs: legs?,
        fitting: fitting.is_some_and(|fitting| fitting.value),
        lies: lies.map_or(Lies::Snug, |lies| lies.value),
        runs: runs.map_or(Runs::Down, |runs| runs.value),
    })
}

/// Two whole numbers, fewest and most.
fn range(t: &mut Table<'_>, key: &'static str, about: &str) -> Option<(u32, u32)> {
    let pair = t.need(key, &RANGE, about)?;
    as_range(t, key, pair)
}

const RANGE: List<Count> = List(Count(bound::ROLE_LEGS));

fn as_range(t: &Table<'_>, key: &str, pair: Placed<Vec<Placed<u32>>>) -> Option<(u32, u32)> {
    match pair.value.as_slice() {
        [least, most] if least.value <= most.value => Some((least.value, most.value)),
        _ => {
            t.refuse_at(
                pair.span,
                format!("`{key}` is not a range"),
                "two numbers, the fewest first",
                format!("write {key} = [1, 8]"),
            );
            None
        }
    }
}

fn role(t: &mut Table<'_>) -> Option<(String, Role)> {
    const ROLES: &[(&str, &str)] = &[(WORKING_ROLE, WORKING_ROLE), (CORE_ROLE, CORE_ROLE)];
    let name = t.need("role", &OneOf { words: ROLES }, "`working` or `core`.");
    let legs = t.maybe("legs", &RANGE, "Of `working`: fewest and most legs in one knot, as [2, 2].");
    let legs = match (legs, &name) {
        (Some(legs), _) => as_range(t, "legs", legs),
        (None, Some(name)) if name.value == WORKING_ROLE && !t.has("legs") => {
            t.refuse("`legs` is missing", "how many legs tie in one knot?", "for example legs = [2, 2]");
            None
        }
        // The core's legs are counted under [core].
        (None, _) => Some((0, 0)),
    };
    let draws = t.maybe("draws", &Number(bound::MOVE), "How often each leg is drawn through; 1 if not said.");
    let joins = t.maybe("joins", &Flag, "Whether its cord may join the work with this knot, not hung before.");
    let moves = t.tables("moves", "What the leg's centreline does, one after the other.", movement);
    let note = note(t);
    if moves.is_empty() && name.as_ref().is_some_and(|name| name.value == CORE_ROLE) {
        t.refuse("this role has no moves", "a core runs along at least", "for example moves = [{ along = 1 }]");
        return None;
    }
    Some((
        name?.value.to_owned(),
        Role {
            legs: legs?,
            draws: draws.map_or(1.0, |draws| draws.value),
            joins: joins.is_some_and(|joins| joins.value),
            moves: moves.into_iter().map(|step| step.value).collect(),
            note: note?,
        },
    ))
}

#[derive(Clone, Copy)]
enum Thing {
    Core,
    Leg,
    Legs,
}

fn movement(t: &mut Table<'_>) -> Option<Move> {
    const THINGS: &[(&str, Thing)] = &[("core", Thing::Core), ("leg", Thing::Leg), ("legs", Thing::Legs)];
    let round = t.maybe(
        "round",
        &OneOf { words: THINGS },
        "What it goes round: the `core`, another `leg`, or a bundle of `legs`.",
    );
    let turns = t.maybe("turns", &Number(bound::MOVE), "How many turns.");
    let pitch = t.maybe("pitch", &Number(bound::MOVE), "How far one turn climbs, in cord diameters.");
    let with = t.maybe("with", &Count(bound::ROLE_LEGS), "Legs of the working cord laid in beside the core.");
    let of = t.maybe("of", &Count(bound::ROLE_LEGS), "How many legs the bundle has.");
    let across = t.maybe("across", &Number(bound::MOVE), "A straight run, in cord diameters.");
    let along = t.maybe("along", &Number(bound::MOVE), "A run along the knot's rise, in rises.");
    let knot = t.maybe("knot", &Name, "Another knot: the leg takes what it takes there, so many `times`.");
    let times = t.maybe("times", &Number(bound::MOVE), "How many of the other knot; 1 if not said.");
    let each = t.maybe("each", &Name, "A parameter that the number is multiplied by.").map(|each| each.value);
    if let (Some(knot), None, None, None) = (&knot, &round, &across, &along) {
        return Some(Move::Knots(SubKnot { knot: knot.value.clone(), times: times.map_or(1.0, |times| times.value) }));
    }
    let amount = |number: Placed<f64>| Coefficient { factor: number.value, each: each.clone() };
    match (round, across, along) {
        (Some(round), None, None) => {
            let Some(turns) = turns else {
                t.refuse(
                    "a move round something needs `turns`",
                    "how many?",
                    "for example { round = \"core\", turns = 1 }",
                );
                return None;
            };
            let thing = match round.value {
                Thing::Core => Round::Core { with: with.map_or(0, |with| with.value) },
                Thing::Leg => Round::Legs(1),
                Thing::Legs => Round::Legs(of.map_or(1, |of| of.value)),
            };
            Some(Move::Round { thing, turns: amount(turns), pitch: pitch.map_or(0.0, |pitch| pitch.value) })
        }
        (None, Some(across), None) => Some(Move::Across(amount(across))),
        (None, None, Some(along)) => Some(Move::Along(amount(along))),
        _ => {
            t.refuse(
                "a move is one of four",
                "`round` with `turns`, `across`, `along`, or `knot` with `times`",
                "write several moves one after the other",
            );
            None
        }
    }
}

fn rise(t: &mut Table<'_>) -> Option<Rise> {
    let factor = t.maybe("diameters", &Number(bound::MOVE), "The rise of one knot, in cord diameters.");
    let knot = t.maybe("knot", &Name, "Another knot: as many of its rises as `times` says.");
    let times = t.maybe("times", &Number(bound::MOVE), "How many rises of the other knot; 1 if not said.");
    let each = t.maybe("each", &Name, "A parameter that it is multiplied by.");
    let slant = t.maybe("slant", &Name, "A parameter in degrees; the rise is divided by its cosine.");
    let note = note(t);
    if factor.is_none() && knot.is_none() {
        t.refuse("a rise needs `diameters`", "or another `knot` and how many `times`", "for example diameters = 2");
        return None;
    }
    Some(Rise {
        diameters: Coefficient { factor: factor.map_or(0.0, |factor| factor.value), each: each.map(|each| each.value) },
        part: knot.map(|knot| SubKnot { knot: knot.value, times: times.map_or(1.0, |times| times.value) }),
        slant: slant.map(|slant| slant.value),
        note: note?,
    })
}

fn time(t: &mut Table<'_>, computed: bool) -> Option<KnotTime> {
    let base = t.maybe(
        "base",
        &Number(bound::KNOT_SECONDS),
        "Seconds of one knot that do not depend on length; left out where a library works it out.",
    );
    let each = t.maybe("each", &Name, "A parameter that the base is multiplied by.");
    let pull = t.need("pull", &Number(bound::KNOT_SECONDS), "Seconds for each metre of leg hanging below, each draw.");
    let note = note(t);
    if base.is_none() && !computed && !t.has("base") {
        t.refuse("`base` is missing", "how many seconds does one knot take?", "for example base = 9");
        return None;
    }
    Some(KnotTime {
        base: Coefficient { factor: base.map_or(0.0, |base| base.value), each: each.map(|each| each.value) },
        pull: pull?.value,
        note: note?,
    })
}

fn note(t: &mut Table<'_>) -> Option<Note> {
    let source = t.need("source", &OneOf { words: Source::WORDS }, "Where the figures come from.");
    let words = t.need("note", &Text, "The reasoning, or the work and page.");
    Some(Note { source: source?.value, words: words?.value })
}

fn parameter(t: &mut Table<'_>) -> Option<Parameter> {
    let name = t.need("name", &Name, "The word that designs use.");
    let least = t.need("least", &Number(bound::PARAMETER), "Lowest value allowed.");
    let most = t.need("most", &Number(bound::PARAMETER), "Highest value allowed.");
    let default = t.need("default", &Number(bound::PARAMETER), "Taken when a design is silent.");
    let about = t.need("about", &Text, "What it is.");
    let unit = t.maybe("unit", &OneOf { words: ParameterUnit::WORDS }, "What it is measured in; `number` if not said.");
    let whole = t.maybe("whole", &Flag, "Whether only whole numbers are taken.");
    let (least, most, default) = (least?, most?, default?);
    if !(least.value <= default.value && default.value <= most.value) {
        t.refuse_at(
            default.span,
            format!("the default {} is out of its own range", default.value),
            format!("from {} to {}", least.value, most.value),
            "",
        );
        return None;
    }
    Some(Parameter {
        name: name?.value,
        least: least.value,
        most: most.value,
        default: default.value,
        about: about?.value,
        unit: unit.map_or(ParameterUnit::Number, |unit| unit.value),
        whole: whole.is_some_and(|whole| whole.value),
    })
}

fn find_role(t: &Table<'_>, roles: &[Placed<(String, Role)>], name: &str) -> Option<Role> {
    let mut found = roles.iter().filter(|role| role.0 == name);
    let role = found.next();
    if let Some(second) = found.next() {
        t.refuse_at(second.span.clone(), format!("role `{name}` is described twice"), "once is enough", "");
        return None;
    }
    if role.is_none() {
        t.refuse_together(0..0, "no role ties this knot", "", "add a [[role]] with role = \"working\" and its moves");
    }
    role.map(|role| role.1.clone())
}

/// Every `each` and `slant` must name a parameter of the knot.
fn check_names_of_parameters(t: &Table<'_>, knot: &Knot) -> bool {
    let amounts =
        [&knot.working, &knot.carried].into_iter().flat_map(|role| &role.moves).filter_map(|step| match step {
            Move::Round { turns, .. } => Some(turns),
            Move::Across(amount) | Move::Along(amount) => Some(amount),
            Move::Knots(_) => None,
        });
    let rise = knot.rise.as_ref();
    let rises = rise.map(|rise| &rise.diameters);
    let named = amounts.chain(rises).chain([&knot.time.base]).filter_map(|amount| amount.each.as_ref());
    let unknown = named
        .chain(rise.and_then(|rise| rise.slant.as_ref()))
        .find(|name| !knot.parameters.iter().any(|p| p.name == **name));
    if let Some(name) = unknown {
        t.refuse_together(
            0..0,
            format!("no [[parameter]] of this knot is called `{name}`"),
            "",
            format!("add [[parameter]] with name = \"{name}\""),
        );
    }
    unknown.is_none()
}
