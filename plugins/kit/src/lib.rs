//! What a library of computed knots needs.
//!
//! Some knots can't be told as a list of moves: what a Turk's head takes follows from its leads and bights by a computation.
//! Such a knot is a Rust type that says what it is ([`Knot::ABOUT`]) and works out what one of it takes ([`Knot::take`]);
//! [`library!`] makes a library of it that `reeve knots admit` takes into a shop.
//!
//! ```
//! use reeve_kit::{About, Kind, Knot, Note, Parameter, Refusal, Setting, Source, Taken};
//!
//! /// So many turns, laid side by side.
//! struct Seizing;
//!
//! impl Knot for Seizing {
//!     const ABOUT: About = About {
//!         name: "seizing",
//!         title: "seizing",
//!         kind: Kind::Wrap,
//!         summary: "Turns laid side by side round a bundle.",
//!         core: (2, 24),
//!         joins: true,
//!         parameters: &[Parameter { whole: true, grows: true, ..Parameter::number("turns", "Turns.", 2.0, 60.0, 8.0) }],
//!         take_up: Note { source: Source::Geometry, words: "A turn is pi times core and cord." },
//!         time: Note { source: Source::FromMemory, words: "Four seconds a turn." },
//!         pull_s_per_m: 1.0,
//!         ..About::PLAIN
//!     };
//!
//!     fn take(setting: &Setting<'_>) -> Result<Taken, Refusal> {
//!         let turns = setting.parameter("turns");
//!         let turn = std::f64::consts::PI * (setting.core_mm + setting.cord_mm);
//!         let rise_mm = turns * setting.cord_mm;
//!         Ok(Taken { working_mm: turns * turn, core_mm: rise_mm, rise_mm, base_s: 4.0 * turns, draws: turns })
//!     }
//! }
//!
//! reeve_kit::library!("seizings": Seizing);
//! # fn main() {}
//! ```
//!
//! The crate's type must be `cdylib`. A panic is caught inside the library and told as its fault, so it must be built with
//! `panic = "unwind"`, which is the default. `reeve_knots.h` beside this crate is the same contract for C.

pub mod abi;
mod crossing;
mod knot;

#[doc(hidden)]
pub use crossing::{Declared, Entry, answer, declared};
pub use knot::{About, Core, Kind, Knot, Note, Parameter, Refusal, Setting, Source, Taken, Unit};

/// Makes a library of some knots: its name, and the types that are its knots.
///
/// `library!("woven": TurksHead, RoundPlait);` Its version is the crate's.
#[macro_export]
macro_rules! library {
    ($name:literal : $($knot:ty),+ $(,)?) => {
        const _: () = {
            assert!(
                cfg!(panic = "unwind"),
                "a library of knots must be built with panic = \"unwind\": with abort, a panic can't be caught",
            );
            static KNOTS: &[$crate::Entry] = &[$($crate::Entry::of::<$knot>()),+];
            static DECLARED: $crate::Declared = $crate::Declared::new();

            extern "C" fn knot(place: u32) -> *const $crate::abi::Knot {
                $crate::declared(&DECLARED, KNOTS, place)
            }

            unsafe extern "C" fn take(
                place: u32,
                setting: *const $crate::abi::Setting,
                taken: *mut $crate::abi::Taken,
            ) -> u32 {
                // SAFETY: the contract says what both point at.
                unsafe { $crate::answer(KNOTS, place, setting, taken) }
            }

            /// The table.
            #[unsafe(no_mangle)]
            #[allow(non_upper_case_globals, reason = "the contract names it")]
            pub static reeve_knots: $crate::Table = $crate::Table($crate::abi::Library {
                magic: $crate::abi::MAGIC,
                major: $crate::abi::MAJOR,
                minor: $crate::abi::MINOR,
                size: $crate::abi::size_of_u32::<$crate::abi::Library>(),
                #[allow(clippy::cast_possible_truncation, reason = "a library has a few knots")]
                knot_count: KNOTS.len() as u32,
                name: $crate::abi::Text::of($name),
                version: $crate::abi::Text::of(env!("CARGO_PKG_VERSION")),
                knot: Some(knot),
                take: Some(take),
            });
        };
    };
}

/// The exported table: pointers into constants, so that any thread may read it.
#[doc(hidden)]
#[repr(transparent)]
#[derive(Debug)]
pub struct Table(pub abi::Library);

#[allow(unsafe_code, reason = "the table points at constants only")]
// SAFETY: nothing in it is ever written.
unsafe impl Sync for Table {}
