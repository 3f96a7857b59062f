//! What is drawn of a shape: upright, pulled out, over its repeats or alone.

use reeve_catalogue::shape::{Shape, Strand, Then};

use super::DrawOptions;
use super::repeats::repeating;
use super::sampling::smooth;
use super::scene::{CordLine, Lie, RADIUS, ROOM, Scene, bars, sides};
use super::tails::{Extent, body, ends, is_first, pulled, upright};

/// How far a rod stands out above and below a knot that stands alone.
const ROD_OUT: f64 = 1.4;
/// How far a rod stands out at least beyond the ends of cords.
const ROD_PAST_END: f64 = 0.5;

/// The scene of a shape.
pub(super) fn scene_of(shape: &Shape, options: &DrawOptions<'_>) -> Scene {
    let upright = upright(shape);
    let shape = upright.as_ref().unwrap_or(shape);
    let body = body(shape);
    let strands: Vec<Strand> = (0..shape.strands.len()).map(|at| pulled(shape, at, body)).collect();
    let mut scene = match &shape.repeat {
        Some(repeat) if repeat.rise > 1e-3 => repeating(shape, &strands, repeat),
        _ => alone(shape, &strands, body),
    };
    if options.across {
        scene.lie = lie_across(shape);
    }
    scene.bars.iter_mut().for_each(|bar| bar.is_fitting = options.on_fitting);
    scene
}

/// The side on which most ends hang comes to lie below.
fn lie_across(shape: &Shape) -> Lie {
    let ends = (0..shape.strands.len()).flat_map(|at| ends(shape, at));
    let right: f64 = ends.map(|(from, to)| to[0] - from[0]).sum();
    if right > 0.0 { Lie::Left } else { Lie::Right }
}

fn alone(shape: &Shape, strands: &[Strand], body: Extent) -> Scene {
    let line = |(at, strand): (usize, &Strand)| {
        let closed = strand.then == Then::Closes;
        let cut = (is_first(shape, at), strand.then == Then::Pulled);
        CordLine::of(smooth(&strand.points, closed), closed, at, cut)
    };
    let lines: Vec<CordLine> = strands.iter().enumerate().map(line).filter(|line| line.points.len() > 1).collect();
    let downs = lines.iter().flat_map(|line| &line.points).map(|point| point[1]);
    let (top, bottom) = downs.fold((f64::INFINITY, f64::NEG_INFINITY), |(top, bottom), y| (top.min(y), bottom.max(y)));
    let middle = if body.0[1].is_finite() { (body.0[1], body.1[1]) } else { (0.0, 0.0) };
    let span = (
        (middle.0 - RADIUS - ROD_OUT).min(top - ROD_PAST_END),
        (middle.1 + RADIUS + ROD_OUT).max(bottom + ROD_PAST_END),
    );
    let bars = bars(shape, span);
    let mut frame = sides(&lines, &bars);
    let (top, bottom) = if bars.is_empty() { (top, bottom) } else { (top.min(span.0), bottom.max(span.1)) };
    (frame[1], frame[3]) = if top <= bottom { (top - RADIUS - ROOM, bottom + RADIUS + ROOM) } else { (0.0, 1.0) };
    Scene { lines, bars, frame, goes_on: false, lie: Lie::Down }
}
