//! A gathering wrap of a given length.

use reeve_kit::{About, Core, Kind, Knot, Note, Refusal, Setting, Source, Taken};

use crate::bundle::ratio;
use crate::turns::{LENGTH, in_one_piece, turn, turns};

/// A cord wound round a bundle and its own loop, for so much of the bundle.
#[derive(Debug)]
pub struct GatheringWrapByLength;

/// Legs of the wrap's own loop that lie under the turns.
const OWN: u32 = 2;

impl Knot for GatheringWrapByLength {
    const ABOUT: About = About {
        name: "gathering-wrap-by-length",
        title: "gathering wrap of a given length",
        also: &["wrapping knot by length", "gathering knot by length"],
        kind: Kind::Wrap,
        summary: "A separate cord is laid along the bundle as a loop, wound round bundle and loop for so much of its length, \
                  and its end drawn under the turns.",
        core: (2, 64),
        joins: true,
        core_grows: true,
        give_shrinks: true,
        parameters: &[LENGTH],
        take_up: Note {
            source: Source::Geometry,
            words: "As many turns as cords lie side by side in the length, three at least, each a helix round the bundle and \
                    the loop's two legs that climbs one cord and sinks in by its give; and the loop itself, down and up.",
        },
        time: Note {
            source: Source::FromMemory,
            words: "Nine seconds a turn with laying in and drawing under, as for a gathering wrap. Remembered, not timed.",
        },
        ..About::PLAIN
    };

    fn take(setting: &Setting<'_>) -> Result<Taken, Refusal> {
        let (turns, cord) = (turns(setting, 3.0), setting.cord_mm);
        let rise_mm = turns * cord;
        let wound = turns * turn(bundle(setting), cord, setting.give * cord);
        Ok(Taken {
            working_mm: in_one_piece(wound + f64::from(OWN) * rise_mm)?,
            core_mm: rise_mm,
            rise_mm,
            base_s: 9.0 * turns,
            draws: 1.0,
        })
    }
}

/// The thickness of the bundle with the loop in it. The thicker of both cords stands for all, so that a mixed bundle is
/// never taken too thin.
fn bundle(setting: &Setting<'_>) -> f64 {
    match setting.core {
        Core::Legs { count, mm } => mm.max(setting.cord_mm) * ratio(count + OWN),
        Core::Rod(_) | Core::Bar(..) => setting.core_mm,
    }
}
