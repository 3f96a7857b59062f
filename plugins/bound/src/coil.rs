//! A coil of a given length.

use reeve_kit::{About, Core, Kind, Knot, Note, Refusal, Setting, Source, Taken};

use crate::turns::{LENGTH, in_one_piece, turn, turns};

/// A cord wound turn by turn, for so much of the core.
#[derive(Debug)]
pub struct CoilByLength;

impl Knot for CoilByLength {
    const ABOUT: About = About {
        name: "coil-by-length",
        title: "coil of a given length",
        also: &["winding by length", "serving by length"],
        kind: Kind::Wrap,
        summary: "A leg or a cord of its own is wound turn by turn round the core until so much of it is covered. Its ends are \
                  held by the knots before and after.",
        core: (1, 64),
        on_fitting: true,
        joins: true,
        core_grows: true,
        give_shrinks: true,
        parameters: &[LENGTH],
        take_up: Note {
            source: Source::Geometry,
            words: "As many turns as cords lie side by side in the length, each a helix that climbs one cord; round legs it \
                    sinks in by its give, a fitting gives nothing.",
        },
        time: Note {
            source: Source::FromMemory,
            words: "Three seconds a turn, as for a winding. Remembered, not timed.",
        },
        pull_s_per_m: 0.3,
        ..About::PLAIN
    };

    fn take(setting: &Setting<'_>) -> Result<Taken, Refusal> {
        let (turns, cord) = (turns(setting, 1.0), setting.cord_mm);
        let sinks = if matches!(setting.core, Core::Legs { .. }) { setting.give * cord } else { 0.0 };
        let rise_mm = turns * cord;
        Ok(Taken {
            working_mm: in_one_piece(turns * turn(thing(setting), cord, sinks))?,
            core_mm: rise_mm,
            rise_mm,
            base_s: 3.0 * turns,
            draws: 1.0,
        })
    }
}

/// The thickness of what it is wound round: legs lie as a round bundle.
fn thing(setting: &Setting<'_>) -> f64 {
    match setting.core {
        Core::Legs { count, mm } => mm * crate::bundle::ratio(count),
        Core::Rod(_) | Core::Bar(..) => setting.core_mm,
    }
}
