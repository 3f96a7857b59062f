//! The way round an ellipse.

use std::f64::consts::PI;

/// The perimeter of an ellipse by its semi-axes, in the same unit.
///
/// A complete elliptic integral of the second kind, by the arithmetic-geometric mean of the axes (Abramowitz and Stegun,
/// Handbook of Mathematical Functions, 17.6, from memory; checked against a sum of chords). It has twice as many right digits
/// after each step, so that a few are enough.
pub fn perimeter(a: f64, b: f64) -> f64 {
    let (mut mean, mut geometric) = (a.max(b), a.min(b));
    let mut sum = mean * mean;
    let mut weight = 0.5;
    for _ in 0..8 {
        sum -= weight * (mean * mean - geometric * geometric);
        weight *= 2.0;
        let next = f64::midpoint(mean, geometric);
        geometric = (mean * geometric).sqrt();
        mean = next;
    }
    2.0 * PI * sum / mean
}
