//! The contract as C sees it: the mirror of `reeve_knots.h`, field by field. The header has the words.

use std::ffi::c_char;
use std::fmt;

/// What the table begins with: "reeve", a zero, "kt".
pub const MAGIC: u64 = 0x7265_6576_6500_6b74;
/// Another major version is refused.
pub const MAJOR: u32 = 1;
/// A later minor version is taken.
pub const MINOR: u32 = 0;
/// The name that the table is exported under.
pub const SYMBOL: &str = "reeve_knots";

/// [`Parameter::flags`]: only whole numbers are taken.
pub const WHOLE: u32 = 1;
/// [`Parameter::flags`]: more of it never takes less of a working leg.
pub const GROWS: u32 = 2;
/// [`Knot::flags`]: it can be tied on a fitting.
pub const ON_FITTING: u32 = 1;
/// [`Knot::flags`]: its cord may join the work with it.
pub const JOINS: u32 = 2;
/// [`Knot::flags`]: round a thicker core it never takes less.
pub const CORE_GROWS: u32 = 4;
/// [`Knot::flags`]: a softer cord never takes more.
pub const GIVE_SHRINKS: u32 = 8;

/// [`Setting::core`]: core legs, perhaps none.
pub const LEGS: u32 = 0;
/// [`Setting::core`]: a fitting of round section.
pub const ROD: u32 = 1;
/// [`Setting::core`]: a fitting of rectangular section.
pub const BAR: u32 = 2;

/// The answer holds figures.
pub const DONE: u32 = 0;
/// The knot can't be tied so.
pub const REFUSED: u32 = 1;
/// The library is at fault.
pub const FAILED: u32 = 2;

/// The most bytes of words that an answer may say, the closing zero with them.
pub const WORDS: usize = 256;
/// No parameter is to blame.
pub const NO_PARAMETER: u32 = u32::MAX;

/// Text in UTF-8 of so many bytes.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct Text {
    /// Its first byte.
    pub bytes: *const c_char,
    /// How many bytes.
    pub length: usize,
}

/// A figure that a design may choose.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct Parameter {
    /// Size of this struct, which is also how far the next one of the array is.
    pub size: u32,
    /// 0 a number, 1 millimetres, 2 degrees, 3 cord diameters.
    pub unit: u32,
    /// [`WHOLE`], [`GROWS`].
    pub flags: u32,
    /// Zero.
    pub reserved: u32,
    /// The word designs use.
    pub name: Text,
    /// What it is.
    pub about: Text,
    /// Lowest allowed.
    pub least: f64,
    /// Highest allowed.
    pub most: f64,
    /// Taken when a design is silent.
    pub usual: f64,
}

/// A knot type, as it describes itself.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct Knot {
    /// Size of this struct.
    pub size: u32,
    /// 0 sennit, 1 row, 2 mounting, 3 wrap, 4 single.
    pub kind: u32,
    /// [`ON_FITTING`], [`JOINS`], [`CORE_GROWS`], [`GIVE_SHRINKS`].
    pub flags: u32,
    /// 0 geometry, 1 published, 2 common practice, 3 from memory.
    pub take_up_source: u32,
    /// The same, of the time.
    pub time_source: u32,
    /// Fewest working legs.
    pub working_least: u32,
    /// Most working legs.
    pub working_most: u32,
    /// Fewest core legs.
    pub core_least: u32,
    /// Most core legs.
    pub core_most: u32,
    /// How many other names.
    pub also_count: u32,
    /// How many cautions.
    pub caution_count: u32,
    /// How many parameters.
    pub parameter_count: u32,
    /// The word designs use.
    pub name: Text,
    /// As written on pages.
    pub title: Text,
    /// How it is tied.
    pub summary: Text,
    /// Where take-up and rise come from.
    pub take_up_note: Text,
    /// Where the time comes from.
    pub time_note: Text,
    /// Other names.
    pub also: *const Text,
    /// Cautions.
    pub cautions: *const Text,
    /// Parameters.
    pub parameters: *const Parameter,
    /// Seconds for each metre of hanging leg, each draw.
    pub pull_s_per_m: f64,
}

/// Where and with what a knot is tied.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct Setting {
    /// Size of this struct.
    pub size: u32,
    /// Working legs in one knot.
    pub working: u32,
    /// [`LEGS`], [`ROD`] or [`BAR`].
    pub core: u32,
    /// Core legs.
    pub core_legs: u32,
    /// How many parameters.
    pub parameter_count: u32,
    /// Zero.
    pub reserved: u32,
    /// Thickness of a working leg, in millimetres.
    pub cord_mm: f64,
    /// The give of the cord, from 0.
    pub give: f64,
    /// The core as thick as a round rod of the same girth, in millimetres.
    pub core_mm: f64,
    /// Thickness of a core leg or of the rod, or the first side of the bar, in millimetres.
    pub core_a_mm: f64,
    /// The second side of the bar, in millimetres.
    pub core_b_mm: f64,
    /// The values of the parameters.
    pub parameters: *const f64,
}

/// What one knot takes.
#[repr(C)]
#[derive(Clone, Copy)]
pub struct Taken {
    /// Size of this struct.
    pub size: u32,
    /// The place of the parameter to change, with [`REFUSED`].
    pub parameter: u32,
    /// Length of each working leg, in millimetres.
    pub working_mm: f64,
    /// Length of each core leg, in millimetres.
    pub core_mm: f64,
    /// How far it carries the work, in millimetres.
    pub rise_mm: f64,
    /// Seconds that do not depend on the hanging length.
    pub base_s: f64,
    /// How often each working leg is drawn through.
    pub draws: f64,
    /// Why not, ended by a zero.
    pub words: [u8; WORDS],
}

/// The table that a library exports.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct Library {
    /// [`MAGIC`].
    pub magic: u64,
    /// [`MAJOR`] as it was compiled.
    pub major: u32,
    /// [`MINOR`] as it was compiled.
    pub minor: u32,
    /// Size of this struct.
    pub size: u32,
    /// How many knots.
    pub knot_count: u32,
    /// The word it is admitted by.
    pub name: Text,
    /// Its own version.
    pub version: Text,
    /// The description of a knot, by its place. Null pointers are looked for before the call.
    pub knot: Option<unsafe extern "C" fn(place: u32) -> *const Knot>,
    /// What one knot takes.
    pub take: Option<unsafe extern "C" fn(place: u32, setting: *const Setting, taken: *mut Taken) -> u32>,
}

impl Text {
    /// A text that lives as long as the library.
    pub const fn of(words: &'static str) -> Self {
        Self { bytes: words.as_ptr().cast(), length: words.len() }
    }
}

impl Taken {
    /// An answer before it is given.
    pub const EMPTY: Self = Self {
        size: size_of_u32::<Self>(),
        parameter: NO_PARAMETER,
        working_mm: 0.0,
        core_mm: 0.0,
        rise_mm: 0.0,
        base_s: 0.0,
        draws: 0.0,
        words: [0; WORDS],
    };

    /// The words up to the closing zero, or all of them.
    pub fn said(&self) -> &[u8] {
        self.words.split(|byte| *byte == 0).next().unwrap_or_default()
    }
}

impl fmt::Debug for Taken {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Taken")
            .field("working_mm", &self.working_mm)
            .field("core_mm", &self.core_mm)
            .field("rise_mm", &self.rise_mm)
            .field("base_s", &self.base_s)
            .field("draws", &self.draws)
            .field("said", &String::from_utf8_lossy(self.said()))
            .finish_non_exhaustive()
    }
}

/// The size of a struct as the contract writes it.
#[allow(clippy::cast_possible_truncation, reason = "a struct of the contract has some hundred bytes")]
pub const fn size_of_u32<T>() -> u32 {
    size_of::<T>() as u32
}
