//! Turns laid side by side. Lengths in millimetres.

use std::f64::consts::PI;

use reeve_kit::{Parameter, Refusal, Setting};

/// How long the binding is to be.
pub(crate) const LENGTH: Parameter = Parameter {
    grows: true,
    ..Parameter::length("length", "How long it is, to the nearest whole turn.", 5.0, 2000.0, 40.0)
};

/// The whole number of turns that comes nearest to the length that is asked for, but no fewer than `least`.
pub(crate) fn turns(setting: &Setting<'_>, least: f64) -> f64 {
    (setting.parameter(LENGTH.name) / setting.cord_mm).round().max(least)
}

/// One turn about a round thing, climbing one cord: a helix.
///
/// `sinks` is how far the cord sinks into the thing. Its middle runs half of both thicknesses from the middle of the thing,
/// less that.
pub(crate) fn turn(thing: f64, cord: f64, sinks: f64) -> f64 {
    let round = PI * (thing + cord - 2.0 * sinks);
    (round * round + cord * cord).sqrt()
}

/// The cord of the whole binding, if it can be cut in one piece at all: the program cuts up to half a kilometre.
pub(crate) fn in_one_piece(cord_mm: f64) -> Result<f64, Refusal> {
    Refusal::unless_in_one_piece(cord_mm, Some(LENGTH.name), "Take a shorter length or a thicker cord")
}
