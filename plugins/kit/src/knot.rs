//! A knot as its author writes it.

use crate::abi;

/// A knot that is worked out.
pub trait Knot {
    /// What it is.
    const ABOUT: About;

    /// What one knot takes in a setting.
    ///
    /// Every number of legs, core and parameter is within the range that [`Knot::ABOUT`] gives. The same setting must give
    /// the same answer, to the last bit. A panic is told as a fault of the library.
    ///
    /// # Errors
    /// A [`Refusal`] when the knot can't be tied so: it says why, and which parameter to change.
    fn take(setting: &Setting<'_>) -> Result<Taken, Refusal>;
}

#[allow(clippy::struct_excessive_bools, reason = "each is a thing of its own, as in the header")]
/// What a knot is. Begin with `..About::PLAIN` for what is not said.
#[derive(Debug, Clone, Copy)]
pub struct About {
    /// The word designs use: small letters, digits and hyphens.
    pub name: &'static str,
    /// As written on pages: small letters, in the singular.
    pub title: &'static str,
    /// Other names the trade uses.
    pub also: &'static [&'static str],
    /// How it is used.
    pub kind: Kind,
    /// How it is tied, in a sentence or two.
    pub summary: &'static str,
    /// Fewest and most working legs in one knot.
    pub working: (u32, u32),
    /// Fewest and most core legs; `(0, 0)` for a knot without core legs.
    pub core: (u32, u32),
    /// Whether it can be tied on a ring, dowel or other fitting.
    pub on_fitting: bool,
    /// Whether its cord may join the work with it, without having been hung before.
    pub joins: bool,
    /// Whether it never takes less round a thicker core, everything else alike. The probe holds the library to that.
    pub core_grows: bool,
    /// Whether a softer cord never takes more, everything else alike. The same.
    pub give_shrinks: bool,
    /// Figures that a design may choose.
    pub parameters: &'static [Parameter],
    /// Sentences that a quote with this knot shows.
    pub cautions: &'static [&'static str],
    /// Where take-up and rise come from.
    pub take_up: Note,
    /// Where the time comes from.
    pub time: Note,
    /// Seconds for each metre of hanging leg, each time it is drawn through.
    pub pull_s_per_m: f64,
}

impl About {
    /// One working leg, no core, nothing else said.
    pub const PLAIN: Self = Self {
        name: "",
        title: "",
        also: &[],
        kind: Kind::Single,
        summary: "",
        working: (1, 1),
        core: (0, 0),
        on_fitting: false,
        joins: false,
        core_grows: false,
        give_shrinks: false,
        parameters: &[],
        cautions: &[],
        take_up: Note { source: Source::Geometry, words: "" },
        time: Note { source: Source::FromMemory, words: "" },
        pull_s_per_m: 0.0,
    };
}

/// How a knot is used.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Repeated down its own core.
    Sennit = 0,
    /// Side by side over a core that all knots of a row share.
    Row = 1,
    /// Fastens cords to a fitting or to a carrying leg.
    Mounting = 2,
    /// Binds a bundle with a cord of its own.
    Wrap = 3,
    /// Tied once: it stops, joins or decorates.
    Single = 4,
}

/// Where a figure comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Source {
    /// Follows by closed forms.
    Geometry = 0,
    /// Stands in a published work, named in the note.
    Published = 1,
    /// Makers agree on it; there is no source to name.
    CommonPractice = 2,
    /// Remembered, not measured.
    FromMemory = 3,
}

/// Where a figure comes from, and why it is what it is.
#[derive(Debug, Clone, Copy)]
pub struct Note {
    /// The sort of source.
    pub source: Source,
    /// The reasoning, or the work and page.
    pub words: &'static str,
}

/// What a parameter is measured in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unit {
    /// A plain number.
    Number = 0,
    /// A length in millimetres; designs write "8 cm".
    Mm = 1,
    /// An angle in degrees.
    Degrees = 2,
    /// A length in diameters of the cord that ties.
    Diameters = 3,
}

/// A figure that a design may choose.
#[derive(Debug, Clone, Copy)]
pub struct Parameter {
    /// The word designs use: small letters, digits and hyphens.
    pub name: &'static str,
    /// What it is, a sentence.
    pub about: &'static str,
    /// What it is measured in.
    pub unit: Unit,
    /// Whether only whole numbers are taken.
    pub whole: bool,
    /// Whether more of it never takes less of a working leg. The probe holds the library to that.
    pub grows: bool,
    /// Lowest allowed.
    pub least: f64,
    /// Highest allowed.
    pub most: f64,
    /// Taken when a design is silent.
    pub usual: f64,
}

impl Parameter {
    /// A plain number, from least to most.
    pub const fn number(name: &'static str, about: &'static str, least: f64, most: f64, usual: f64) -> Self {
        Self { name, about, unit: Unit::Number, whole: false, grows: false, least, most, usual }
    }

    /// A length, from least to most millimetres.
    pub const fn length(name: &'static str, about: &'static str, least: f64, most: f64, usual: f64) -> Self {
        Self { unit: Unit::Mm, ..Self::number(name, about, least, most, usual) }
    }
}

/// Where and with what a knot is tied.
#[derive(Debug, Clone, Copy)]
pub struct Setting<'a> {
    /// Thickness of a working leg, in millimetres.
    pub cord_mm: f64,
    /// How far the cord sinks into a like cord that it is wound round, a share of its thickness: 0 to 0.2.
    pub give: f64,
    /// Working legs in one knot.
    pub working: u32,
    /// What it is tied round.
    pub core: Core,
    /// The core as thick as a round rod of the same girth, in millimetres; 0 for no core.
    pub core_mm: f64,
    /// The parameters of the knot.
    pub(crate) parameters: &'static [Parameter],
    /// Their values.
    pub(crate) values: &'a [f64],
}

/// What a knot is tied round; lengths in millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Core {
    /// So many legs of one thickness, perhaps none.
    Legs {
        /// How many.
        count: u32,
        /// Thickness of each.
        mm: f64,
    },
    /// A fitting of round section.
    Rod(f64),
    /// A fitting of rectangular section.
    Bar(f64, f64),
}

impl<'a> Setting<'a> {
    /// A setting for an author's own tests: no core, no give, one working leg, and values for the parameters of a knot in
    /// their order.
    pub fn of<K: Knot>(cord_mm: f64, values: &'a [f64]) -> Self {
        Self {
            cord_mm,
            give: 0.0,
            working: K::ABOUT.working.0,
            core: Core::Legs { count: 0, mm: 0.0 },
            core_mm: 0.0,
            parameters: K::ABOUT.parameters,
            values,
        }
    }

    /// The same round a rod of so many millimetres.
    #[must_use]
    pub fn on_rod(self, mm: f64) -> Self {
        Self { core: Core::Rod(mm), core_mm: mm, ..self }
    }

    /// The value of a parameter: as the design chose, else the usual one.
    ///
    /// # Panics
    /// When the knot has no such parameter, which is a slip of its author.
    pub fn parameter(&self, name: &str) -> f64 {
        let at = self.parameters.iter().position(|parameter| parameter.name == name);
        let value = at.and_then(|at| self.values.get(at));
        #[allow(clippy::expect_used, reason = "the author's slip, told by the probe as a panic with these words")]
        *value.expect("the knot describes every parameter that it asks for")
    }
}

/// What one knot takes.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Taken {
    /// Length of each working leg that it eats, in millimetres.
    pub working_mm: f64,
    /// Length of each core leg that it eats, in millimetres.
    pub core_mm: f64,
    /// How far it carries the work along its core, in millimetres.
    pub rise_mm: f64,
    /// Seconds that do not depend on what hangs below the knot, drawing its own cord through with them.
    pub base_s: f64,
    /// How often each working leg is drawn through.
    pub draws: f64,
}

/// Why a knot can't be tied so.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Refusal {
    /// The parameter to change, if it is one.
    pub parameter: Option<&'static str>,
    /// What is wrong, with the values, and what would do.
    pub words: String,
}

impl Refusal {
    /// The cord of a whole knot, if it can be cut in one piece at all: the program cuts up to half a kilometre.
    ///
    /// # Errors
    /// A refusal that says how much it would be, and then what to take instead.
    pub fn unless_in_one_piece(cord_mm: f64, parameter: Option<&'static str>, instead: &str) -> Result<f64, Self> {
        const LONGEST_MM: f64 = 500_000.0;
        if cord_mm <= LONGEST_MM {
            return Ok(cord_mm);
        }
        let (takes, most) = (cord_mm / 1000.0, LONGEST_MM / 1000.0);
        let words = format!("it takes {takes:.0} m of cord, and one piece is at most {most:.0} m. {instead}");
        Err(Self { parameter, words })
    }

    /// A parameter is to blame.
    pub fn of(parameter: &'static str, words: impl Into<String>) -> Self {
        Self { parameter: Some(parameter), words: words.into() }
    }

    /// Legs or core are to blame.
    pub fn new(words: impl Into<String>) -> Self {
        Self { parameter: None, words: words.into() }
    }
}

impl Core {
    pub(crate) fn read(setting: &abi::Setting) -> Self {
        match setting.core {
            abi::ROD => Self::Rod(setting.core_a_mm),
            abi::BAR => Self::Bar(setting.core_a_mm, setting.core_b_mm),
            _ => Self::Legs { count: setting.core_legs, mm: setting.core_a_mm },
        }
    }
}
