//! A knot over as many repeats as show its pattern, each leg followed from one to the next.

use reeve_catalogue::shape::{Point, Repeat, Shape, Strand, Then};

use super::sampling::smooth;
use super::scene::{CordLine, Lie, RADIUS, Scene, bars, sides};
use super::tails::{Extent, is_first};

/// The least height of a repeating knot that shows its pattern, and the most that a sheet has room for.
const HEIGHT: (f64, f64) = (8.0, 14.0);
/// How far the work is seen to go on at either end of a repeating knot.
const GOES_ON: f64 = 0.9;
/// What is drawn of a knot that repeats.
pub(super) fn repeating(shape: &Shape, strands: &[Strand], repeat: &Repeat) -> Scene {
    let shown = repeats_shown(repeat.rise);
    let top = seam(strands);
    let (from, to) = (top - GOES_ON, top + shown * repeat.rise + GOES_ON);
    // A repeat may reach far above and below its own rise.
    let reach = Extent::of(strands.iter().flat_map(|strand| &strand.points));
    let (first, last) = if strands.is_empty() { (0.0, 0.0) } else { (from - reach.1[1], to - reach.0[1]) };
    let (first, last) = ((first / repeat.rise).floor() - 1.0, (last / repeat.rise).ceil() + 1.0);
    let chains = Chains { shape, strands, repeat, first, last };
    let window = (from - RADIUS, to + RADIUS);
    let lines: Vec<CordLine> = chains.all().into_iter().flat_map(|line| within(line, window)).collect();
    let bars = bars(shape, (from - RADIUS, to + RADIUS));
    let mut frame = sides(&lines, &bars);
    (frame[1], frame[3]) = (from, to);
    Scene { lines, bars, frame, goes_on: true, lie: Lie::Down }
}

/// How many repeats show the pattern: at least two, but no more of a long one than there is room for.
fn repeats_shown(rise: f64) -> f64 {
    let wanted = (HEIGHT.0 / rise).ceil().max(2.0);
    wanted.min((HEIGHT.1 / rise).max(1.0))
}

/// Where one repeat begins: on the whole where its legs come in.
fn seam(strands: &[Strand]) -> f64 {
    let going_on = strands.iter().filter(|strand| matches!(strand.then, Then::GoesOnAs(_)));
    let tops: Vec<f64> = going_on.filter_map(|strand| strand.points.first()).map(|point| point[1]).collect();
    if tops.is_empty() {
        let all = strands.iter().flat_map(|strand| &strand.points).map(|point| point[1]);
        let least = all.fold(f64::INFINITY, f64::min);
        return if least.is_finite() { least } else { 0.0 };
    }
    tops.iter().sum::<f64>() / tops.iter().map(|_| 1.0).sum::<f64>()
}

/// Follows each leg through the repeats.
struct Chains<'a> {
    shape: &'a Shape,
    strands: &'a [Strand],
    repeat: &'a Repeat,
    first: f64,
    last: f64,
}

impl Chains<'_> {
    fn all(&self) -> Vec<CordLine> {
        let mut lines = Vec::new();
        let mut repeat = self.first;
        while repeat <= self.last {
            for at in 0..self.strands.len() {
                let comes_in = is_first(self.shape, at) || self.strands[at].then == Then::Closes;
                if comes_in || repeat <= self.first {
                    lines.extend(self.follow(at, repeat));
                }
            }
            repeat += 1.0;
        }
        lines
    }

    /// The leg that begins as a strand of a repeat, as far as it goes.
    fn follow(&self, start: usize, from: f64) -> Option<CordLine> {
        let (mut at, mut repeat, mut leg) = (start, from, start);
        let mut points: Vec<Point> = Vec::new();
        loop {
            let strand = self.strands.get(at)?;
            points.extend(strand.points.iter().map(|point| self.repeat.image(*point, repeat)));
            if repeat.abs() < 0.5 {
                leg = at;
            }
            match strand.then {
                Then::GoesOnAs(next) if repeat < self.last => (at, repeat) = (next, repeat + 1.0),
                _ => break,
            }
        }
        let closed = self.strands[at].then == Then::Closes;
        let cut = (is_first(self.shape, start), self.strands[at].then == Then::Pulled);
        let points = smooth(&points, closed);
        (points.len() > 1).then(|| CordLine::of(points, closed, leg, cut))
    }
}

/// The stretches of a line that are seen in a window.
fn within(line: CordLine, (from, to): (f64, f64)) -> Vec<CordLine> {
    let seen = |point: &Point| from <= point[1] && point[1] <= to;
    if line.points.iter().all(seen) {
        return vec![line];
    }
    let mut stretches = Vec::new();
    let mut start = None;
    for at in 0..=line.points.len() {
        let inside = line.points.get(at).is_some_and(seen);
        match (start, inside) {
            (None, true) => start = Some(at),
            (Some(first), false) => {
                let cut = (first == 0 && line.cut.0, at == line.points.len() && line.cut.1);
                stretches.push(CordLine::of(line.points[first..at].to_vec(), false, line.leg, cut));
                start = None;
            }
            _ => {}
        }
    }
    stretches.retain(|line| line.points.len() > 1);
    stretches
}
