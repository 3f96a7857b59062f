//! A knot type, and what it takes in a given setting.

use std::f64::consts::PI;
use std::sync::Arc;

use reeve_measure::{Length, Time};
use reeve_reading::Figure;

use crate::computed::{Computed, Question, Unknown};
use crate::geometry::{climbing, turn_round, turn_round_rectangle, turn_round_row};
use crate::packing::bundle_ratio;
use crate::parameter::{Parameter, Settled};
use crate::path::{self, Path};
use crate::setting::{Core, Setting, Taken};
use crate::table::TighteningTable;
use crate::tying_error::TyingError;
use crate::unit::ParameterUnit;

/// The role of the legs that tie.
pub const WORKING_ROLE: &str = "working";
/// The role of the legs that are tied round.
pub const CORE_ROLE: &str = "core";

/// A knot type: an entry of the catalogue.
#[derive(Debug, Clone, PartialEq)]
pub struct Knot {
    /// The word designs use.
    pub name: String,
    /// The name as written on pages.
    pub title: String,
    /// Other names the trade uses.
    pub also: Vec<String>,
    /// How it is used.
    pub kind: KnotKind,
    /// How it is tied, in a sentence or two.
    pub summary: String,
    /// What it can be tied round.
    pub core: CoreRule,
    /// Whether several legs are tied together as one thick cord.
    pub together: bool,
    /// The legs that tie.
    pub working: Role,
    /// The legs that are tied round.
    pub carried: Role,
    /// How far one knot carries the work along its core; `None` where the path says it.
    pub rise: Option<Rise>,
    /// Time of one knot.
    pub time: KnotTime,
    /// Figures that a design may choose.
    pub parameters: Vec<Parameter>,
    /// The centrelines of its legs.
    pub path: Option<Path>,
    /// What tightening the path came to. It counts where the working role has no moves.
    pub table: Option<Arc<TighteningTable>>,
    /// The knots that it is made of, once the catalogue has found them.
    pub parts: Vec<Arc<Knot>>,
    /// The library that works it out, in place of moves and path.
    pub computed: Option<Computed>,
    /// What a client should be told of it.
    pub cautions: Vec<String>,
}

/// How a knot is used.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum KnotKind {
    /// Repeated down its own core, many columns side by side.
    Sennit,
    /// Tied side by side over a core that all knots of a row share.
    Row,
    /// Fastens cords to a fitting or to a carrying leg.
    Mounting,
    /// Binds a bundle with a cord of its own.
    Wrap,
    /// Tied once in a leg or bundle: it stops, joins or decorates.
    Single,
}

/// A kind, the word it is written as and what it means.
pub type KindRow = (&'static str, KnotKind);

impl KnotKind {
    /// Every kind with its word.
    pub const WORDS: &'static [KindRow] = &[
        ("sennit", Self::Sennit),
        ("row", Self::Row),
        ("mounting", Self::Mounting),
        ("wrap", Self::Wrap),
        ("single", Self::Single),
    ];

    /// The word it is written as.
    pub fn word(self) -> &'static str {
        Self::WORDS.iter().find(|(_, kind)| *kind == self).map_or("", |(word, _)| word)
    }
}

/// Where a figure comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Source {
    /// Follows from the moves by closed forms, or from the path that was pulled tight.
    Geometry,
    /// Stands in a published work, named in the note.
    Published,
    /// Makers agree on it; there is no source to name.
    CommonPractice,
    /// Remembered, not measured: replace it by a sample.
    FromMemory,
    /// Measured by the maker who wrote the knot's file.
    YourSample,
}

impl Source {
    /// Every source with its word.
    pub const WORDS: &'static [(&'static str, Self)] = &[
        ("geometry", Self::Geometry),
        ("published", Self::Published),
        ("common practice", Self::CommonPractice),
        ("from memory", Self::FromMemory),
        ("your sample", Self::YourSample),
    ];

    /// Those that a library can name, by the numbers of the contract; its author's samples are not the maker's.
    pub const OF_LIBRARIES: &'static [(&'static str, Self)] = Self::WORDS.split_at(4).0;

    /// The word it is written as.
    pub fn word(self) -> &'static str {
        Self::WORDS.iter().find(|(_, source)| *source == self).map_or("", |(word, _)| word)
    }
}

/// Where a figure comes from, and why it is what it is.
#[derive(Debug, Clone, PartialEq)]
pub struct Note {
    /// The sort of source.
    pub source: Source,
    /// The reasoning, or the work and page.
    pub words: String,
}

/// What a knot can be tied round.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoreRule {
    /// Fewest and most core legs; `(0, 0)` for a knot without core legs.
    pub legs: (u32, u32),
    /// Whether it can be tied on a fitting.
    pub fitting: bool,
    /// How several core legs lie.
    pub lies: Lies,
    /// Whether each column has a core of its own or a row shares one.
    pub runs: Runs,
}

impl CoreRule {
    /// Core legs when nobody says how many: two if it can take them, else the nearest number that it can.
    pub fn usual_legs(&self) -> u32 {
        2.clamp(self.legs.0, self.legs.1)
    }
}

/// How several core legs lie inside the knot.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lies {
    /// Side by side in a row.
    Flat,
    /// In a round bundle.
    Round,
    /// Whichever of the two lets the knot be shorter: cords shift until it is tight.
    Snug,
}

impl Lies {
    /// Every lie with its word.
    pub const WORDS: &'static [(&'static str, Self)] =
        &[("flat", Self::Flat), ("round", Self::Round), ("snug", Self::Snug)];
}

/// Which way the core runs through the work.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Runs {
    /// Down: each column has its own core.
    Down,
    /// Across: all the knots of a row sit on one core.
    Across,
}

impl Runs {
    /// Every way with its word.
    pub const WORDS: &'static [(&'static str, Self)] = &[("down", Self::Down), ("across", Self::Across)];
}

/// What the legs of one role do in one knot.
#[derive(Debug, Clone, PartialEq)]
pub struct Role {
    /// Fewest and most legs of the role in one knot.
    pub legs: (u32, u32),
    /// How often each leg is drawn through, for the pull time.
    pub draws: f64,
    /// Whether the leg's cord may join the work with this knot, without having been hung before.
    pub joins: bool,
    /// What the centreline does; nothing where the path says it.
    pub moves: Vec<Move>,
    /// Where the moves come from.
    pub note: Note,
}

/// A factor, perhaps times a parameter.
#[derive(Debug, Clone, PartialEq)]
pub struct Coefficient {
    /// The plain factor.
    pub factor: f64,
    /// The parameter it is multiplied by.
    pub each: Option<String>,
}

/// One piece of a leg's centreline.
#[derive(Debug, Clone, PartialEq)]
pub enum Move {
    /// So many turns round something.
    Round {
        /// The thing.
        thing: Round,
        /// How many turns.
        turns: Coefficient,
        /// How far one turn climbs, in cord diameters.
        pitch: f64,
    },
    /// A straight run, in cord diameters.
    Across(Coefficient),
    /// A run along the knot's rise, in rises.
    Along(Coefficient),
    /// What a leg of this role takes in another knot, so many times.
    Knots(SubKnot),
}

/// Another knot that a knot is made of.
#[derive(Debug, Clone, PartialEq)]
pub struct SubKnot {
    /// Its name.
    pub knot: String,
    /// How many of it.
    pub times: f64,
}

/// What a turn goes round.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Round {
    /// The core, with so many of the working cord's own legs laid beside it.
    Core {
        /// Legs of the working cord laid in with the core.
        with: u32,
    },
    /// So many working legs in a round bundle; one is "another leg".
    Legs(u32),
}

/// How far one knot carries the work along its core.
#[derive(Debug, Clone, PartialEq)]
pub struct Rise {
    /// In cord diameters.
    pub diameters: Coefficient,
    /// As many rises of another knot besides.
    pub part: Option<SubKnot>,
    /// Parameter holding the angle, in degrees, by whose cosine the rise is divided.
    pub slant: Option<String>,
    /// Where it comes from.
    pub note: Note,
}

/// Time of one knot: base + pull for each metre of leg hanging below, each time it is drawn through.
#[derive(Debug, Clone, PartialEq)]
pub struct KnotTime {
    /// Time that does not depend on length, in seconds.
    pub base: Coefficient,
    /// Seconds for each metre of hanging leg, each draw.
    pub pull: f64,
    /// Where it comes from.
    pub note: Note,
}

impl Knot {
    /// What one knot takes by the library that works it out.
    fn computed_take(&self, computed: &Computed, setting: &Setting<'_>) -> Result<Taken, TyingError> {
        let values: Vec<f64> =
            self.parameters.iter().map(|parameter| self.parameter(&parameter.name, setting.parameters)).collect();
        let core = setting.cord * self.core_thickness(setting);
        computed.take(&Question { knot: &self.name, setting, core, values: &values }).map_err(|unknown| match unknown {
            Unknown::Trouble { words, remedy } => {
                TyingError::Library { knot: self.title.clone(), library: computed.library.clone(), words, remedy }
            }
            Unknown::Refused { parameter, words } => TyingError::Refused {
                knot: self.title.clone(),
                parameter: parameter.and_then(|at| self.parameters.get(at)).map(|parameter| parameter.name.clone()),
                words,
            },
        })
    }

    /// What one knot takes in a setting.
    ///
    /// Lengths scale with the setting: twice the cord, core and fitting take twice the leg.
    ///
    /// # Errors
    /// A [`TyingError`] when the core, the working legs or a parameter is not one that it can take.
    pub fn taken(&self, setting: &Setting<'_>) -> Result<Taken, TyingError> {
        self.check(setting)?;
        if let Some(computed) = &self.computed {
            return self.computed_take(computed, setting);
        }
        let unit = self.unit(setting);
        let (working, rise) = match &self.rise {
            Some(rise) => {
                let rise = self.rise_of(rise, setting, unit)?;
                (self.along(&self.working, |taken| taken.working, &MovePlace { setting, unit, rise })?, rise)
            }
            None => self.tightened(setting, unit)?,
        };
        Ok(Taken {
            working,
            core: self.along(&self.carried, |taken| taken.core, &MovePlace { setting, unit, rise })?,
            rise,
            base: Time::s(self.amount(&self.time.base, setting)),
            draws: self.working.draws,
        })
    }

    /// Whether take-up and rise are read from the tightened path, not from moves.
    pub fn is_drawn(&self) -> bool {
        self.rise.is_none() && self.computed.is_none()
    }

    /// Whether a library of this name works it out.
    pub fn is_worked_out_by(&self, library: &str) -> bool {
        self.computed.as_ref().is_some_and(|computed| computed.library == library)
    }

    /// Take-up and rise from the tightened path.
    fn tightened(&self, setting: &Setting<'_>, unit: Length) -> Result<(Length, Length), TyingError> {
        let table = self
            .table
            .as_ref()
            .ok_or_else(|| TyingError::NotTightened { knot: self.title.clone(), name: self.name.clone() })?;
        // Legs tied together as one are one thick leg.
        let working = if self.together { 1 } else { setting.working };
        let core = self.core_thickness(setting);
        let figure = table
            .at(working, core, setting.give)
            .ok_or_else(|| TyingError::BeyondTable { knot: self.title.clone(), given: core })?;
        Ok((unit * figure.take_up, unit * figure.rise))
    }

    /// The core as a rod of the same girth, in diameters of the working cord.
    pub fn core_thickness(&self, setting: &Setting<'_>) -> f64 {
        let unit = self.unit(setting);
        match setting.core {
            Core::Legs { count, diameter } => path::StartingCore::Legs(count).thickness() * (diameter / unit),
            Core::Rod(diameter) => diameter / unit,
            // A turn round a rectangle is as long as round a rod of its perimeter.
            Core::Bar(a, b) => (a + b) * 2.0 / PI / unit,
        }
    }

    /// What it is tied round when nobody says: a rod five cords thick, which stands for a ring or dowel, or the usual
    /// number of legs of the same cord.
    pub fn usual_core(&self, cord: Length) -> Core {
        if self.core.legs == (0, 0) && self.core.fitting {
            Core::Rod(cord * 5.0)
        } else {
            Core::Legs { count: self.core.usual_legs(), diameter: cord }
        }
    }

    /// The value a parameter has in a setting: as chosen, else its default.
    pub fn parameter(&self, name: &str, chosen: &[(String, f64)]) -> f64 {
        let given = chosen.iter().find(|(chosen, _)| chosen == name).map(|(_, value)| *value);
        given.or_else(|| self.parameters.iter().find(|p| p.name == name).map(|p| p.default)).unwrap_or(1.0)
    }

    /// What every parameter comes to in a setting, defaults included, then those of the knots that it is made of.
    pub fn settled(&self, setting: &Setting<'_>) -> Vec<Settled> {
        let own = self.parameters.iter().map(|parameter| {
            let value = self.parameter(&parameter.name, setting.parameters);
            let length = match parameter.unit {
                ParameterUnit::Length => Some(Length::mm(value)),
                ParameterUnit::Diameters => Some(self.unit(setting) * value),
                ParameterUnit::Number | ParameterUnit::Degrees => None,
            };
            Settled { part: None, name: parameter.name.clone(), value, unit: parameter.unit, length }
        });
        // A knot within a knot is tied by its defaults.
        let usual = Setting { parameters: &[], ..setting.clone() };
        let of_part = |part: &Arc<Self>| -> Vec<Settled> {
            let named = |one: Settled| Settled { part: one.part.or_else(|| Some(part.title.clone())), ..one };
            part.settled(&usual).into_iter().map(named).collect()
        };
        own.chain(self.parts.iter().flat_map(of_part)).collect()
    }

    /// Whether it is known by this word: its name or one of its other names.
    pub fn answers_to(&self, word: &str) -> bool {
        self.name == word || self.title == word || self.also.iter().any(|also| also == word || as_name(also) == word)
    }

    /// Whether a name or other name has this in it, whatever its capitals.
    pub fn speaks_of(&self, word: &str) -> bool {
        let word = word.to_lowercase();
        let names = [&self.name, &self.title].into_iter().chain(&self.also);
        names.into_iter().any(|name| name.to_lowercase().contains(&word))
    }

    /// Whether it can be tied so at all: core, working legs and parameters are ones that it can take.
    ///
    /// # Errors
    /// A [`TyingError`] when one is not.
    pub fn check(&self, setting: &Setting<'_>) -> Result<(), TyingError> {
        let knot = || self.title.clone();
        match setting.core {
            Core::Legs { .. } if self.core.fitting && self.core.legs == (0, 0) => {
                return Err(TyingError::NeedsFitting(knot()));
            }
            Core::Legs { count, .. } => {
                let (least, most) = self.core.legs;
                if count < least || count > most {
                    return Err(TyingError::CoreLegs { knot: knot(), given: count, range: self.core.legs });
                }
            }
            Core::Rod(_) | Core::Bar(..) if !self.core.fitting => return Err(TyingError::NotOnFitting(knot())),
            Core::Rod(_) | Core::Bar(..) => {}
        }
        let (least, most) = self.working.legs;
        if setting.working < least || setting.working > most {
            return Err(TyingError::WorkingLegs { knot: knot(), given: setting.working, range: self.working.legs });
        }
        setting.parameters.iter().try_for_each(|(name, value)| self.parameter_called(name)?.check(*value))
    }

    /// The value that a parameter is given by a figure, as the knot counts it: a length in millimetres.
    ///
    /// # Errors
    /// A [`TyingError`] when the knot has no such parameter, or it can't have that value.
    pub fn chosen(&self, name: &str, figure: Figure) -> Result<f64, TyingError> {
        self.parameter_called(name)?.value(figure)
    }

    fn parameter_called(&self, name: &str) -> Result<&Parameter, TyingError> {
        self.parameters.iter().find(|parameter| parameter.name == name).ok_or_else(|| {
            let known = self.parameters.iter().map(|p| p.name.clone()).collect();
            TyingError::UnknownParameter { knot: self.title.clone(), name: name.to_owned(), known }
        })
    }

    /// The diameter that "one diameter" means: the cord's, or the bundle's that is tied as one.
    pub fn unit(&self, setting: &Setting<'_>) -> Length {
        if self.together { setting.cord * bundle_ratio(setting.working) } else { setting.cord }
    }

    /// What the moves of one role come to; `of` picks the role's share where they name another knot.
    fn along(&self, role: &Role, of: fn(&Taken) -> Length, place: &MovePlace<'_>) -> Result<Length, TyingError> {
        let length = |step: &Move| match step {
            Move::Knots(part) => Ok(of(&self.taken_by(part, place.setting)?) * part.times),
            _ => Ok(self.length_of(step, place)),
        };
        role.moves.iter().map(length).sum()
    }

    fn rise_of(&self, rise: &Rise, setting: &Setting<'_>, unit: Length) -> Result<Length, TyingError> {
        let own = unit * self.amount(&rise.diameters, setting);
        let others = match &rise.part {
            Some(part) => self.taken_by(part, setting)?.rise * part.times,
            None => Length::ZERO,
        };
        let straight = own + others;
        Ok(match &rise.slant {
            Some(angle) => straight / libm::cos(self.parameter(angle, setting.parameters).to_radians()),
            None => straight,
        })
    }

    /// What one of the knots that this one is made of takes in its place.
    fn taken_by(&self, part: &SubKnot, setting: &Setting<'_>) -> Result<Taken, TyingError> {
        let knot = self.parts.iter().find(|knot| knot.name == part.knot);
        let knot = knot.ok_or_else(|| TyingError::MissingPart { knot: self.title.clone(), part: part.knot.clone() })?;
        knot.taken(&Setting { parameters: &[], ..setting.clone() })
    }

    /// The names of the knots that it says it is made of, in order and each once.
    pub fn part_names(&self) -> Vec<&str> {
        let moves = self.working.moves.iter().chain(&self.carried.moves);
        let in_moves = moves.filter_map(|step| if let Move::Knots(part) = step { Some(part) } else { None });
        let parts = in_moves.chain(self.rise.iter().filter_map(|rise| rise.part.as_ref()));
        let mut names: Vec<&str> = parts.map(|part| part.knot.as_str()).collect();
        names.sort_unstable();
        names.dedup();
        names
    }

    /// Whether it is made of no other knots.
    pub fn is_whole(&self) -> bool {
        self.part_names().is_empty()
    }

    fn amount(&self, amount: &Coefficient, setting: &Setting<'_>) -> f64 {
        amount.factor * amount.each.as_ref().map_or(1.0, |name| self.parameter(name, setting.parameters))
    }

    fn length_of(&self, step: &Move, place: &MovePlace<'_>) -> Length {
        let MovePlace { setting, unit, rise } = *place;
        match step {
            Move::Knots(_) => Length::ZERO,
            Move::Across(diameters) => unit * self.amount(diameters, setting),
            Move::Along(rises) => rise * self.amount(rises, setting),
            Move::Round { thing, turns, pitch } => {
                let turn = match thing {
                    Round::Core { with } => self.turn_round_core(setting, unit, *with),
                    Round::Legs(count) => turn_round(unit * bundle_ratio(*count), unit),
                };
                climbing(turn, unit * *pitch) * self.amount(turns, setting)
            }
        }
    }

    fn turn_round_core(&self, setting: &Setting<'_>, unit: Length, with: u32) -> Length {
        match setting.core {
            Core::Rod(diameter) => turn_round(diameter, unit),
            Core::Bar(a, b) => turn_round_rectangle(a, b, unit),
            Core::Legs { count, diameter } => {
                // Legs laid in beside the core are the working cord's own; the thicker of the two
                // cords stands for all, so that a mixed bundle is never taken too thin.
                let each = if with == 0 { diameter } else { diameter.max(setting.cord) };
                turn_round_legs(count + with, each, unit, self.core.lies)
            }
        }
    }
}

/// Where a leg's moves are measured.
#[derive(Clone, Copy)]
struct MovePlace<'a> {
    setting: &'a Setting<'a>,
    /// What one diameter is.
    unit: Length,
    rise: Length,
}

fn turn_round_legs(count: u32, each: Length, cord: Length, lies: Lies) -> Length {
    let flat = turn_round_row(count, each, cord);
    let round = if count == 0 { Length::ZERO } else { turn_round(each * bundle_ratio(count), cord) };
    match lies {
        Lies::Flat => flat,
        Lies::Round => round,
        Lies::Snug => flat.min(round),
    }
}

/// A title as a name: small letters, digits and hyphens.
fn as_name(title: &str) -> String {
    title
        .to_lowercase()
        .chars()
        .filter(|c| *c != '\'' && *c != '’')
        .map(|c| if c.is_ascii_alphanumeric() { c } else { '-' })
        .collect()
}
