//! What is drawn on top of the tones, as far as nothing hides it: the edges of cords and rods, the light gap beside
//! whatever passes over something deeper, and the marks by which the legs are told apart.

use std::f64::consts::{PI, TAU};

use super::grid::Grid;
use super::runs::{SeenRun, bridges, runs};
use super::sampling::{PlanePoint, apart, between, flat, steps};
use super::scene::{Bar, CordLine, RADIUS, Scene};
use super::sight::{GAP, Owner, Sight, SurfacePoint};

/// The widest turn between two places of an edge, in radians.
const TURN: f64 = 0.25;
/// How many ways of marking a leg there are.
pub(super) const PATTERNS: usize = 4;

/// Everything that is drawn over the tones: runs of spots, in diameters.
#[derive(Debug, Default)]
pub(super) struct Edges {
    pub(super) ink: Vec<Vec<PlanePoint>>,
    pub(super) gaps: Vec<Vec<PlanePoint>>,
    pub(super) marks: Vec<Vec<PlanePoint>>,
    /// Where a numeral may stand for each leg.
    pub(super) numerals: Vec<Option<PlanePoint>>,
}

/// Finds what is seen of a scene's edges.
pub(super) fn edges(scene: &Scene, grid: &Grid) -> Edges {
    let sight = Sight { scene, grid };
    let mut edges = Edges { numerals: vec![None; scene.legs()], ..Edges::default() };
    let mut clearest = vec![0.0; scene.legs()];
    let mut contours: Vec<SeenRun> = Vec::new();
    for (index, line) in scene.lines.iter().enumerate() {
        let stations = stations(line);
        for side in [-1.0, 1.0] {
            contours.extend(runs(&offset(index, &stations, side * RADIUS), |place| !sight.hides(place)));
            sight.gap(&offset(index, &stations, side * (RADIUS + GAP / 2.0)), &mut edges.gaps);
        }
        sight.cut_ends(index, &stations, &mut edges.ink);
        sight.mark(index, &stations, &mut edges.marks);
        for run in runs(&offset(index, &stations, 0.0), |place| !sight.hides(place)) {
            if let Some((clear, spot)) =
                scene.clearest(&run.spots).filter(|(clear, _)| *clear > clearest[line.leg] + 1e-6)
            {
                clearest[line.leg] = clear;
                edges.numerals[line.leg] = Some(spot);
            }
        }
    }
    for (index, bar) in scene.bars.iter().enumerate() {
        sight.bar(index, bar, &mut edges);
    }
    edges.ink.extend(bridges(&contours, &sight));
    edges.ink.extend(contours.into_iter().map(|run| run.spots));
    edges
}

impl Scene {
    /// The longest part of a run that lies well inside the frame, and its middle.
    fn clearest(&self, run: &[PlanePoint]) -> Option<(f64, PlanePoint)> {
        let edge = if self.goes_on { 2.0 } else { RADIUS };
        let inside = |spot: &&PlanePoint| self.frame[1] + edge < spot[1] && spot[1] < self.frame[3] - edge;
        let run: Vec<&PlanePoint> = run.iter().filter(inside).collect();
        let lengths: Vec<f64> = run.windows(2).map(|pair| apart(*pair[0], *pair[1])).collect();
        let half = lengths.iter().sum::<f64>() / 2.0;
        let mut passed = 0.0;
        let at = lengths.iter().position(|length| {
            passed += length;
            passed >= half
        })?;
        Some((half * 2.0, *run[at]))
    }
}

/// A place along the centre of a line: where, how deep, how far along, and which way across points.
#[derive(Debug, Clone, Copy)]
struct Station {
    centre: [f64; 3],
    arc: f64,
    across: f64,
}

/// Stations close enough that an edge turns little from one to the next.
fn stations(line: &CordLine) -> Vec<Station> {
    let across = directions(line);
    let mut stations = Vec::new();
    for at in 1..line.points.len() {
        let turn = (across[at] - across[at - 1] + PI).rem_euclid(TAU) - PI;
        let count = steps(turn.abs(), TURN);
        for step in 0..count {
            let share = f64::from(step) / f64::from(count);
            let arc = line.arcs[at - 1] + (line.arcs[at] - line.arcs[at - 1]) * share;
            let centre = between(line.points[at - 1], line.points[at], share);
            stations.push(Station { centre, arc, across: across[at - 1] + turn * share });
        }
    }
    let last = line.points.len() - 1;
    stations.push(Station { centre: line.points[last], arc: line.arcs[last], across: across[last] });
    stations
}

/// The angle that points to the left of the way at each point of a line, as it is seen.
fn directions(line: &CordLine) -> Vec<f64> {
    let points = &line.points;
    let last = points.len() - 1;
    let mut angles: Vec<Option<f64>> = Vec::new();
    for at in 0..=last {
        let before = if at == 0 && line.closed { last - 1 } else { at.saturating_sub(1) };
        let after = if at == last && line.closed { 1 } else { (at + 1).min(last) };
        let (dx, dy) = (points[after][0] - points[before][0], points[after][1] - points[before][1]);
        // Where it runs straight at the viewer it keeps the direction it came with.
        angles.push((libm::hypot(dx, dy) > 1e-6).then(|| libm::atan2(dx, -dy)));
    }
    let mut known = angles.iter().flatten().next().copied().unwrap_or_default();
    let keep = |angle: &Option<f64>| {
        known = angle.unwrap_or(known);
        known
    };
    angles.iter().map(keep).collect()
}

/// The places so far to the side of a line's centre.
fn offset(line: usize, stations: &[Station], side: f64) -> Vec<SurfacePoint> {
    let lift = (RADIUS * RADIUS - side * side).max(0.0).sqrt();
    let place = |station: &Station| SurfacePoint {
        spot: aside(station, side, 0.0),
        depth: station.centre[2],
        lift,
        owner: Owner::Cord(line, station.arc),
    };
    stations.iter().map(place).collect()
}

/// The spot so far to the side of a station and so far ahead of it.
fn aside(station: &Station, side: f64, ahead: f64) -> PlanePoint {
    let (sin, cos) = libm::sincos(station.across);
    [station.centre[0] + cos * side + sin * ahead, station.centre[1] + sin * side - cos * ahead]
}

impl Sight<'_> {
    fn edge(&self, places: &[SurfacePoint], ink: &mut Vec<Vec<PlanePoint>>) {
        ink.extend(runs(places, |place| !self.hides(place)).into_iter().map(|run| run.spots));
    }

    fn gap(&self, places: &[SurfacePoint], gaps: &mut Vec<Vec<PlanePoint>>) {
        gaps.extend(runs(places, |place| self.parts(place)).into_iter().map(|run| run.spots));
    }

    /// A line straight across each cut end, or round one that points at the viewer.
    fn cut_ends(&self, line: usize, stations: &[Station], ink: &mut Vec<Vec<PlanePoint>>) {
        let whole = &self.scene.lines[line];
        let ends = [(false, whole.cut.0, stations.first()), (true, whole.cut.1, stations.last())];
        for (at_last, is_cut, station) in ends {
            let Some(station) = station.filter(|_| is_cut) else { continue };
            let side = |side: f64| offset(line, &[*station], side)[0];
            if whole.is_end_on(at_last) {
                let turned = |step: u32| Station { across: TAU * f64::from(step) / 24.0, ..*station };
                let round: Vec<SurfacePoint> = (0..=24).map(|step| offset(line, &[turned(step)], RADIUS)[0]).collect();
                self.edge(&round, ink);
            } else {
                self.edge(&[-1.0, -0.5, 0.0, 0.5, 1.0].map(|share| side(share * RADIUS)), ink);
            }
        }
    }

    /// What tells a leg from the others: nothing, a line, ticks, two lines.
    fn mark(&self, line: usize, stations: &[Station], marks: &mut Vec<Vec<PlanePoint>>) {
        match self.scene.lines[line].leg % PATTERNS {
            1 => self.edge(&offset(line, stations, 0.0), marks),
            2 => self.ticks(line, stations, marks),
            3 => [-0.15, 0.15].iter().for_each(|side| self.edge(&offset(line, stations, *side), marks)),
            _ => {}
        }
    }

    fn ticks(&self, line: usize, stations: &[Station], marks: &mut Vec<Vec<PlanePoint>>) {
        const EVERY: f64 = 0.5;
        const HALF: (f64, f64) = (0.2, 0.14);
        let mut next = EVERY / 2.0;
        for station in stations {
            if station.arc < next {
                continue;
            }
            next += EVERY;
            let tick = [-1.0, 0.0, 1.0].map(|end: f64| {
                let place = offset(line, &[*station], HALF.0 * end)[0];
                SurfacePoint { spot: aside(station, HALF.0 * end, HALF.1 * end), ..place }
            });
            if tick.iter().all(|place| !self.hides(place)) {
                marks.push(vec![tick[0].spot, tick[2].spot]);
            }
        }
    }

    fn bar(&self, index: usize, bar: &Bar, edges: &mut Edges) {
        let (top, bottom) = bar.span;
        let count = steps(bottom - top, 0.1);
        let down = |side: f64| -> Vec<SurfacePoint> {
            let y = |step: u32| top + (bottom - top) * f64::from(step) / f64::from(count);
            (0..=count).map(|step| bar_place(index, bar, [bar.x + side, y(step)])).collect()
        };
        for side in [-1.0, 1.0] {
            self.edge(&down(side * bar.radius), &mut edges.ink);
            self.gap(&down(side * (bar.radius + GAP / 2.0)), &mut edges.gaps);
        }
        if self.scene.goes_on {
            return;
        }
        for y in [top, bottom] {
            let count = steps(bar.radius * 2.0, 0.1);
            let x = |step: u32| bar.x - bar.radius + bar.radius * 2.0 * f64::from(step) / f64::from(count);
            let across: Vec<SurfacePoint> = (0..=count).map(|step| bar_place(index, bar, [x(step), y])).collect();
            self.edge(&across, &mut edges.ink);
        }
    }
}

fn bar_place(index: usize, bar: &Bar, spot: PlanePoint) -> SurfacePoint {
    SurfacePoint { spot, depth: bar.z, lift: 0.0, owner: Owner::Bar(index) }
}

/// The spots of some points of a line.
pub(super) fn spots(line: &CordLine, (from, to): (usize, usize)) -> Vec<PlanePoint> {
    line.points[from..=to].iter().map(|point| flat(*point)).collect()
}
