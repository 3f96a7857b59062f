//! The monkey's fist as a knot: what it is, and what it refuses.

use reeve_kit::{About, Knot, Note, Parameter, Refusal, Setting, Source, Taken};

use crate::ball::Fist;

/// A ball of three sets of turns, tied in the end of a cord.
#[derive(Debug)]
pub struct MonkeysFist;

const PASSES: (f64, f64) = (2.0, 9.0);
/// Seconds for one turn with its share of drawing all up; from memory.
const TURN_S: f64 = 20.0;
/// Seconds for each metre drawn through; from memory.
const PULL_S_PER_M: f64 = 1.5;

impl Knot for MonkeysFist {
    const ABOUT: About = About {
        name: "monkeys-fist",
        title: "monkey's fist",
        also: &["monkey fist"],
        give_shrinks: true,
        summary: "Three sets of turns about a ball: the second round the first, the third through the first and round the \
                  second; then all are drawn up. Ends to work with are not counted.",
        parameters: &[
            Parameter {
                whole: true,
                grows: true,
                ..Parameter::number("passes", "Turns of each of the three sets.", PASSES.0, PASSES.1, 3.0)
            },
            Parameter::length(
                "ball",
                "Thickness of the ball inside; 0 for the largest that the turns just cover.",
                0.0,
                300.0,
                0.0,
            ),
        ],
        cautions: &[
            "A monkey's fist about a hard ball can hurt when it is swung or thrown: take a soft or hollow ball for anything \
             that is handled.",
            "In some places a weighted knot on a cord counts as a weapon: local rules come first.",
            "Cords and small parts can strangle or choke: keep it out of the reach of small children.",
        ],
        take_up: Note {
            source: Source::Geometry,
            words: "Each turn an ellipse, under one set and over the other, smaller to the sides of its set. Pawson, Knot Craft, \
                    2nd ed. 2009, p. 83, allows three to four tenths more, with ends to work with.",
        },
        time: Note {
            source: Source::FromMemory,
            words: "Twenty seconds for each turn, drawing up included, and a second and a half for each metre drawn through. \
                    Remembered, not timed.",
        },
        pull_s_per_m: PULL_S_PER_M,
        ..About::PLAIN
    };

    fn take(setting: &Setting<'_>) -> Result<Taken, Refusal> {
        let fist = fist(setting);
        fits(&fist)?;
        let working_mm = fist.cord();
        let draws = 3.0 * fist.passes;
        // Each turn draws through what is left of the cord: half of it on the whole.
        let base_s = draws * (TURN_S + PULL_S_PER_M * working_mm / 2.0 / 1000.0);
        Ok(Taken { working_mm, core_mm: 0.0, rise_mm: fist.outside(), base_s, draws })
    }
}

fn fist(setting: &Setting<'_>) -> Fist {
    let (passes, cord) = (setting.parameter("passes"), setting.cord_mm);
    let rise = cord * (1.0 - setting.give);
    let asked = setting.parameter("ball");
    let ball = if asked > 0.0 { asked } else { Fist::ball_of(Fist::covered_shell(passes * cord), cord, rise) };
    Fist { passes, cord, rise, ball }
}

/// The turns must find room on the ball, and cover it but for small gaps.
fn fits(fist: &Fist) -> Result<(), Refusal> {
    let (ball, passes, width, shell) = (fist.ball, fist.passes, fist.width(), fist.shell());
    let ball_of = |shell: f64| Fist::ball_of(shell, fist.cord, fist.rise);
    // Figures that are told are rounded to the side on which they are taken.
    if shell < Fist::least_shell(width) {
        let most = (shell / Fist::least_shell(fist.cord)).floor();
        let least = (ball_of(Fist::least_shell(width)) * 10.0).ceil() / 10.0;
        let fewer = if most >= PASSES.0 { format!("at most {most} passes") } else { "a thinner cord".to_owned() };
        return Err(Refusal::of(
            "ball",
            format!(
                "a ball of {ball:.1} mm is too small for {passes} passes of this cord, which need {least:.1} mm at least. Take a \
                 larger ball, {fewer}, or 0 for the largest that is covered"
            ),
        ));
    }
    if shell > Fist::most_shell(width) {
        let least = (shell / Fist::most_shell(fist.cord)).ceil();
        let most = (ball_of(Fist::most_shell(width)) * 10.0).floor() / 10.0;
        let more = if least <= PASSES.1 { format!("at least {least} passes") } else { "a thicker cord".to_owned() };
        return Err(Refusal::of(
            "ball",
            format!(
                "a ball of {ball:.1} mm shows through {passes} passes of this cord, which cover {most:.1} mm at most. Take a \
                 smaller ball, {more}, or 0 for the largest that is covered"
            ),
        ));
    }
    Ok(())
}
