//! A library of knots of my own.

use std::f64::consts::PI;

use reeve_kit::{About, Kind, Knot, Note, Parameter, Refusal, Setting, Source, Taken};

/// Turns laid side by side round a bundle of legs, as far as a length that the design says.
struct FlatSeizing;

impl Knot for FlatSeizing {
    const ABOUT: About = About {
        name: "flat-seizing",
        title: "flat seizing",
        also: &["flat binding"],
        kind: Kind::Wrap,
        summary: "Turns laid side by side round a bundle, its end drawn under them.",
        working: (1, 1),
        core: (2, 24),
        joins: true,
        core_grows: true,
        give_shrinks: true,
        parameters: &[Parameter {
            grows: true,
            ..Parameter::length("length", "How much of the bundle is covered.", 5.0, 500.0, 30.0)
        }],
        take_up: Note {
            source: Source::Geometry,
            words: "As many turns as lie side by side on the length, each pi times core and cord, and the end under them.",
        },
        time: Note { source: Source::FromMemory, words: "Four seconds a turn. Not timed yet." },
        pull_s_per_m: 1.0,
        ..About::PLAIN
    };

    fn take(setting: &Setting<'_>) -> Result<Taken, Refusal> {
        let cord = setting.cord_mm;
        let length = setting.parameter("length");
        let turns = (length / cord).round();
        if turns < 2.0 {
            let least = 2.0 * cord;
            return Err(Refusal::of("length", format!("{length} mm have no room for two turns of this cord; {least} mm have")));
        }
        // A cord that gives lies closer to what it is wound round.
        let turn = PI * (setting.core_mm + cord * (1.0 - setting.give));
        let rise_mm = turns * cord;
        Ok(Taken {
            working_mm: turns * turn.hypot(cord) + rise_mm,
            core_mm: rise_mm,
            rise_mm,
            base_s: 4.0 * turns,
            draws: turns,
        })
    }
}

reeve_kit::library!("my-knots": FlatSeizing);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ten_turns_of_a_hard_cord_are_ten_circumferences_and_the_end() {
        let taken = FlatSeizing::take(&Setting::of::<FlatSeizing>(4.0, &[40.0]).on_rod(8.0)).unwrap();
        let turn = (PI * 12.0).hypot(4.0);
        assert!((taken.working_mm - (10.0 * turn + 40.0)).abs() < 1e-9, "{taken:?}");
    }
}
