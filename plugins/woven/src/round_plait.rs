//! The round plait.

use std::f64::consts::{FRAC_PI_2, PI};

use reeve_kit::{About, Kind, Knot, Note, Parameter, Refusal, Setting, Source, Taken};

use crate::weave::{Mesh, closest};

/// An even number of legs, half winding to the right and half to the left, each over one and under one in turn.
#[derive(Debug)]
pub struct RoundPlait;

impl Knot for RoundPlait {
    const ABOUT: About = About {
        name: "round-plait",
        title: "pick of round plait",
        also: &["round sennit", "round sinnet", "round braid", "coach whipping"],
        kind: Kind::Sennit,
        summary: "Half of the legs wind to the right and half to the left, round a core or hollow, over one and under one in \
                  turn. One pick takes each leg over one and under one.",
        working: (4, 24),
        core: (0, 64),
        on_fitting: true,
        core_grows: true,
        give_shrinks: true,
        parameters: &[Parameter {
            unit: reeve_kit::Unit::Degrees,
            ..Parameter::number("angle", "Angle between the legs and the core, as it is drawn down.", 20.0, 70.0, 45.0)
        }],
        take_up: Note {
            source: Source::Geometry,
            words: "Helices on the middle of the weave, over and under by the section of Peirce, The Geometry of Cloth \
                    Structure, J. Text. Inst. 28, 1937, T45. Legs that find no room round the core at that angle stand off it \
                    as a wider, hollow plait.",
        },
        time: Note {
            source: Source::FromMemory,
            words: "Two and a half seconds for each leg of a pick, and half a second a metre for drawing it down. Remembered, \
                    not timed.",
        },
        pull_s_per_m: 0.5,
        ..About::PLAIN
    };

    fn take(setting: &Setting<'_>) -> Result<Taken, Refusal> {
        let legs = setting.working;
        if !legs.is_multiple_of(2) {
            return Err(Refusal::new(format!(
                "{legs} legs can't be halved: a round plait has as many to the right as to the left. Take {} or {}",
                legs - 1,
                legs + 1,
            )));
        }
        let plait = Plait::new(f64::from(legs), setting);
        let rise_mm = 2.0 * plait.step();
        Ok(Taken {
            working_mm: 2.0 * plait.mesh().length(),
            core_mm: rise_mm,
            rise_mm,
            base_s: 2.5 * f64::from(legs),
            draws: 1.0,
        })
    }
}

/// A round plait as it lies. Lengths in millimetres, the angle between legs and core in radians.
struct Plait {
    legs: f64,
    rise: f64,
    angle: f64,
    girth: f64,
}

impl Plait {
    fn new(legs: f64, setting: &Setting<'_>) -> Self {
        let rise = setting.cord_mm * (1.0 - setting.give);
        let angle = setting.parameter("angle").to_radians();
        let on_core = PI * (setting.core_mm + setting.cord_mm + rise);
        // Half of the legs run side by side the same way round, as close as they go.
        let close = legs / 2.0 * closest(rise) / libm::cos(angle);
        let girth = on_core.max(close).max(hollow(legs, rise));
        Self { legs, rise, angle, girth }
    }

    /// How far down the core a leg comes from one crossing to the next: it meets every leg of the other half twice a turn.
    fn step(&self) -> f64 {
        self.girth / self.legs * libm::cos(self.angle) / libm::sin(self.angle)
    }

    fn mesh(&self) -> Mesh {
        Mesh {
            spacing: 2.0 * self.girth / self.legs * libm::cos(self.angle),
            flat: 0.0,
            rise: self.rise,
            // Measured to the girth, a leg of either half slopes by the rest of a right angle.
            crossing: 2.0 * (FRAC_PI_2 - self.angle),
        }
    }
}

/// The girth at which the inner legs of one height, half of all, touch each other in the middle.
fn hollow(legs: f64, rise: f64) -> f64 {
    let inner = rise / libm::sin(2.0 * PI / legs) / 2.0;
    2.0 * PI * (inner + rise / 2.0)
}
