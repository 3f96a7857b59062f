//! The Turk's head.

use reeve_kit::{About, Kind, Knot, Note, Parameter, Refusal, Setting, Source, Taken};

use crate::band::{Band, STEEPEST};

/// A ring plaited of one cord that runs round until it meets its own beginning.
#[derive(Debug)]
pub struct TurksHead;

const LEADS: (u32, u32) = (2, 17);
const BIGHTS: (u32, u32) = (2, 64);
/// Seconds for one tuck with its share of drawing all up; from memory.
const TUCK_S: f64 = 9.0;
/// Seconds for each metre drawn through; from memory.
const PULL_S_PER_M: f64 = 1.5;

/// What to take where a knot would need more cord than one piece has.
const SHORTER: &str = "Take fewer leads, bights or passes, or a shorter length";

impl Knot for TurksHead {
    const ABOUT: About = About {
        name: "turks-head",
        title: "turk's head",
        also: &["turk's head knot", "running turk's head", "woggle"],
        kind: Kind::Wrap,
        summary: "One cord plaits a ring about a rod or bundle, over and under itself, until it meets its beginning; there it \
                  may follow itself round again, side by side. Ends to work with are not counted.",
        core: (1, 64),
        on_fitting: true,
        joins: true,
        give_shrinks: true,
        parameters: &[
            whole("leads", "Cords that make up the plait, counted across it.", LEADS, 3.0),
            whole("bights", "Loops along each edge.", BIGHTS, 5.0),
            whole("passes", "How often the cord goes round: 1 single, 2 doubled, 3 tripled.", (1, 5), 1.0),
            Parameter {
                grows: true,
                ..Parameter::length(
                    "length",
                    "How much of the thing it covers, along it; 0 for as narrow as it goes drawn tight.",
                    0.0,
                    2000.0,
                    0.0,
                )
            },
        ],
        take_up: Note {
            source: Source::Geometry,
            words: "Straight legs between rounded bights on the middle of the weave, over and under by the section of Peirce, \
                    The Geometry of Cloth Structure, J. Text. Inst. 28, 1937, T45, drawn together until the cords touch. One \
                    cord needs leads and bights without a common divisor: Toss, The Complete Rigger's Apprentice, p. 340.",
        },
        time: Note {
            source: Source::FromMemory,
            words: "Nine seconds for each tuck under a lead, drawing up included, and a second and a half for each metre drawn \
                    through. Remembered, not timed.",
        },
        pull_s_per_m: PULL_S_PER_M,
        ..About::PLAIN
    };

    fn take(setting: &Setting<'_>) -> Result<Taken, Refusal> {
        let [leads, bights, passes] = ["leads", "bights", "passes"].map(|name| setting.parameter(name));
        one_cord(count(leads), count(bights))?;
        let band = Band::new((leads, bights, passes), setting.cord_mm, setting.give, setting.core_mm);
        let tight = tight(&band)?;
        let angle = lie(&band, tight, setting.parameter("length"))?;
        // Opened a little, flat-lying legs may win back more at their crossings than they get longer, a part in ten thousand.
        // Nobody should rely on that: a longer knot is never said to take less.
        let cord_mm = band.cord_at(angle).max(band.cord_at(tight));
        let working_mm = Refusal::unless_in_one_piece(cord_mm, None, SHORTER)?;
        let rise_mm = band.covered(angle);
        // Every second crossing is a tuck, and each draws through what is left of the cord: half of it on the whole.
        let draws = passes * (leads - 1.0) * bights;
        let base_s = draws * (TUCK_S + PULL_S_PER_M * working_mm / 2.0 / 1000.0);
        Ok(Taken { working_mm, core_mm: rise_mm, rise_mm, base_s, draws })
    }
}

#[allow(clippy::cast_lossless, reason = "`f64::from` can't be called in a constant")]
const fn whole(name: &'static str, about: &'static str, range: (u32, u32), usual: f64) -> Parameter {
    Parameter { whole: true, grows: true, ..Parameter::number(name, about, range.0 as f64, range.1 as f64, usual) }
}

/// A parameter that is a small whole number.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole numbers up to 64, by the contract")]
fn count(value: f64) -> u32 {
    value as u32
}

/// One cord makes the knot when leads and bights have no common divisor: else there are as many cords as the greatest one.
fn one_cord(leads: u32, bights: u32) -> Result<(), Refusal> {
    let cords = common_divisor(leads, bights);
    if cords == 1 {
        return Ok(());
    }
    let others = |near: u32, range: (u32, u32), with: u32| {
        let fits = |other: &u32| common_divisor(*other, with) == 1;
        let [below, above] = [(range.0..near).rev().find(fits), (near + 1..=range.1).find(fits)];
        below.into_iter().chain(above).map(|other| other.to_string()).collect::<Vec<_>>().join(" or ")
    };
    Err(Refusal::of(
        "bights",
        format!(
            "{leads} leads and {bights} bights can both be divided by {cords}: that takes {cords} cords, and a turk's head is \
             one. Take {} bights with {leads} leads, or {} leads with {bights} bights",
            others(bights, BIGHTS, leads),
            others(leads, LEADS, bights),
        ),
    ))
}

/// The greatest whole number that divides both.
fn common_divisor(a: u32, b: u32) -> u32 {
    if b == 0 { a } else { common_divisor(b, a % b) }
}

/// The angle at which legs lie to the girth when they are as tight as they go.
fn tight(band: &Band) -> Result<f64, Refusal> {
    let sine = band.tight_sine();
    if sine > STEEPEST { Err(crowded(band)) } else { Ok(libm::asin(sine)) }
}

/// The angle at which legs lie to the girth: tight, or so that the band covers a length.
fn lie(band: &Band, tight: f64, length: f64) -> Result<f64, Refusal> {
    let least = band.covered(tight);
    if length == 0.0 {
        Ok(tight)
    } else if length < least {
        Err(Refusal::of(
            "length",
            format!(
                "a length of {length:.1} mm is too short: drawn tight it covers {:.1} mm. Take that or more, 0 for as narrow \
                 as it goes, or fewer leads, bights or passes",
                // Rounded up, so that the figure told is one that is taken.
                (least * 10.0).ceil() / 10.0,
            ),
        ))
    } else {
        Ok(band.angle_for(length))
    }
}

/// The bights don't find room round the thing.
fn crowded(band: &Band) -> Refusal {
    let (leads, most) = (count(band.leads), count(band.most_bights()));
    let fit = (BIGHTS.0..=most.min(BIGHTS.1)).rev().find(|bights| common_divisor(leads, *bights) == 1);
    let room = match fit {
        Some(bights) => format!("{leads} leads find room with {bights} bights at most. Take fewer bights"),
        None => format!("{leads} leads find no room at all. Take fewer leads"),
    };
    let bights = band.bights;
    Refusal::of(
        "bights",
        format!(
            "{bights} bights are too many for the girth of the thing: {room} or passes, a thinner cord or a thicker thing"
        ),
    )
}
