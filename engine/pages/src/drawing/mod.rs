//! Knots drawn from their centrelines.
//!
//! A tube seen straight from the front covers what the discs along its centreline cover, and of two tubes that do not
//! cut into one another the one whose centreline is nearer hides the other. From these two facts follow all three
//! layers of a drawing: the cords' tones, painted from the back to the front (`order`); a light gap beside a cord
//! that passes over another, and the ink along every edge that nothing hides (`edges`).
//!
//! Lengths are in cord diameters up to the last step, where one becomes ten units of the drawing. The same shape
//! gives the same bytes.

mod composing;
mod edges;
mod grid;
mod order;
mod path;
mod repeats;
mod runs;
mod sampling;
mod scene;
#[cfg(test)]
pub(crate) mod shapes;
mod sight;
mod svg;
mod tails;
#[cfg(test)]
#[allow(clippy::disallowed_methods, reason = "a test reckons and writes by the standard library")]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests;

use reeve_catalogue::shape::Shape;
use reeve_catalogue::{Knot, Runs};

pub(crate) use path::tenth;
pub(crate) use svg::escaped;

/// How a knot is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DrawOptions<'a> {
    /// What the drawing is called, for who can't see it.
    pub title: &'a str,
    /// Whether its core runs across the sheet, as a ring, a dowel or the leader of a row does.
    pub across: bool,
    /// Whether its rods are a fitting and not the legs of a core.
    pub on_fitting: bool,
}

impl<'a> DrawOptions<'a> {
    /// How a knot of the catalogue is drawn.
    pub fn of(knot: &'a Knot) -> Self {
        Self { title: &knot.title, across: knot.core.runs == Runs::Across, on_fitting: knot.core.fitting }
    }
}

/// Draws a knot as an `<svg>` element for a page that holds the style `drawing.css`.
pub fn draw(shape: &Shape, options: &DrawOptions<'_>) -> String {
    svg::element(&composing::scene_of(shape, options), options.title, None)
}

/// Draws a knot as a whole SVG file with a style of its own.
pub fn draw_alone(shape: &Shape, options: &DrawOptions<'_>, style: &str) -> String {
    svg::element(&composing::scene_of(shape, options), options.title, Some(style))
}
