//! What is drawn on top of the tones, as far as nothing hides it: the edges of cords and rods, the light gap beside
//! whatever passes over something deeper, and the marks by which the legs are told apart.

use std::f64::consts::{PI, TAU};

use super::grid::{Grid, Segment};
use super::sampling::{Spot, apart, between, flat, steps};
use super::scene::{Bar, Line, RADIUS, Scene};

/// How wide the gap beside a cord is that lies over another, in diameters.
pub(super) const GAP: f64 = 0.13;
/// How much deeper something must lie to be parted by a gap.
const DEEP: f64 = 0.25;
/// A cord hides what lies within its edge by more than this.
const SLACK: f64 = 0.02;
/// An edge is not broken off for less than this; where two cords lie level, now one is nearer and now the other.
const SHORTEST_GAP: f64 = 0.4;
/// What is seen of an edge for less than this is left out.
const SHORTEST: f64 = 0.25;
/// The widest turn between two places of an edge, in radians.
const TURN: f64 = 0.25;
/// How many ways of marking a leg there are.
pub(super) const PATTERNS: usize = 4;

/// What a place belongs to.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Owner {
    /// A line, so far along.
    Cord(usize, f64),
    Bar(usize),
}

/// A place on the surface of a cord or rod, as seen from the front.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Place {
    spot: Spot,
    /// How near to the viewer the centre beneath or beside it lies.
    depth: f64,
    /// How far it stands out before that centre: nothing at an edge, a radius in the middle.
    lift: f64,
    owner: Owner,
}

impl Place {
    fn between(&self, other: &Self, share: f64) -> Self {
        let mix = |a: f64, b: f64| a + (b - a) * share;
        let owner = match (self.owner, other.owner) {
            (Owner::Cord(line, a), Owner::Cord(_, b)) => Owner::Cord(line, mix(a, b)),
            (owner, _) => owner,
        };
        let spot = [mix(self.spot[0], other.spot[0]), mix(self.spot[1], other.spot[1])];
        Self { spot, depth: mix(self.depth, other.depth), lift: self.lift, owner }
    }
}

/// Everything that is drawn over the tones: runs of spots, in diameters.
#[derive(Debug, Default)]
pub(super) struct Edges {
    pub(super) ink: Vec<Vec<Spot>>,
    pub(super) gaps: Vec<Vec<Spot>>,
    pub(super) marks: Vec<Vec<Spot>>,
    /// Where a numeral may stand for each leg.
    pub(super) numerals: Vec<Option<Spot>>,
}

/// Finds what is seen of a scene's edges.
pub(super) fn edges(scene: &Scene, grid: &Grid) -> Edges {
    let sight = Sight { scene, grid };
    let mut edges = Edges { numerals: vec![None; scene.legs()], ..Edges::default() };
    let mut clearest = vec![0.0; scene.legs()];
    for (index, line) in scene.lines.iter().enumerate() {
        let stations = stations(line);
        for side in [-1.0, 1.0] {
            sight.edge(&offset(index, &stations, side * RADIUS), &mut edges.ink);
            sight.gap(&offset(index, &stations, side * (RADIUS + GAP / 2.0)), &mut edges.gaps);
        }
        sight.cut_ends(index, &stations, &mut edges.ink);
        sight.mark(index, &stations, &mut edges.marks);
        for run in runs(&offset(index, &stations, 0.0), |place| !sight.hides(place)) {
            if let Some((clear, spot)) = scene.clearest(&run).filter(|(clear, _)| *clear > clearest[line.leg] + 1e-6) {
                clearest[line.leg] = clear;
                edges.numerals[line.leg] = Some(spot);
            }
        }
    }
    for (index, bar) in scene.bars.iter().enumerate() {
        sight.bar(index, bar, &mut edges);
    }
    edges
}

impl Scene {
    /// The longest part of a run that lies well inside the frame, and its middle.
    fn clearest(&self, run: &[Spot]) -> Option<(f64, Spot)> {
        let edge = if self.goes_on { 2.0 } else { RADIUS };
        let inside = |spot: &&Spot| self.frame[1] + edge < spot[1] && spot[1] < self.frame[3] - edge;
        let run: Vec<&Spot> = run.iter().filter(inside).collect();
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
fn stations(line: &Line) -> Vec<Station> {
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
fn directions(line: &Line) -> Vec<f64> {
    let points = &line.points;
    let last = points.len() - 1;
    let mut angles: Vec<Option<f64>> = Vec::new();
    for at in 0..=last {
        let before = if at == 0 && line.closed { last - 1 } else { at.saturating_sub(1) };
        let after = if at == last && line.closed { 1 } else { (at + 1).min(last) };
        let (dx, dy) = (points[after][0] - points[before][0], points[after][1] - points[before][1]);
        // Where it runs straight at the viewer it keeps the direction it came with.
        angles.push((dx.hypot(dy) > 1e-6).then(|| dx.atan2(-dy)));
    }
    let mut known = angles.iter().flatten().next().copied().unwrap_or_default();
    let keep = |angle: &Option<f64>| {
        known = angle.unwrap_or(known);
        known
    };
    angles.iter().map(keep).collect()
}

/// The places so far to the side of a line's centre.
fn offset(line: usize, stations: &[Station], side: f64) -> Vec<Place> {
    let lift = (RADIUS * RADIUS - side * side).max(0.0).sqrt();
    let place = |station: &Station| Place {
        spot: aside(station, side, 0.0),
        depth: station.centre[2],
        lift,
        owner: Owner::Cord(line, station.arc),
    };
    stations.iter().map(place).collect()
}

/// The spot so far to the side of a station and so far ahead of it.
fn aside(station: &Station, side: f64, ahead: f64) -> Spot {
    let (sin, cos) = station.across.sin_cos();
    [station.centre[0] + cos * side + sin * ahead, station.centre[1] + sin * side - cos * ahead]
}

/// Tells what hides what.
pub(super) struct Sight<'a> {
    pub(super) scene: &'a Scene,
    pub(super) grid: &'a Grid,
}

impl Sight<'_> {
    fn edge(&self, places: &[Place], ink: &mut Vec<Vec<Spot>>) {
        ink.extend(runs(places, |place| !self.hides(place)));
    }

    fn gap(&self, places: &[Place], gaps: &mut Vec<Vec<Spot>>) {
        gaps.extend(runs(places, |place| self.parts(place)));
    }

    /// Whether something stands before a place, or passes so close over it that there is a gap.
    fn hides(&self, place: &Place) -> bool {
        let by_cord = self.grid.about(place.spot).any(|at| {
            let segment = &self.grid.segments[at];
            let (off, depth, arc) = segment.nearest(place.spot);
            match place.owner {
                Owner::Cord(line, own) if self.is_one_bend(line, own, segment.line, arc) => {
                    off < RADIUS - SLACK
                        && depth + (RADIUS * RADIUS - off * off).sqrt() > place.depth + place.lift + 2.0 * SLACK
                }
                owner => covers(off - RADIUS, depth, place.depth, || match owner {
                    Owner::Cord(line, own) => (segment.line, arc) > (line, own),
                    Owner::Bar(_) => true,
                }),
            }
        });
        by_cord
            || self.scene.bars.iter().enumerate().any(|(at, bar)| {
                let off = (place.spot[0] - bar.x).abs();
                place.owner != Owner::Bar(at)
                    && bar.spans(place.spot)
                    && covers(off - bar.radius, bar.z, place.depth, || match place.owner {
                        Owner::Bar(own) => at > own,
                        Owner::Cord(..) => false,
                    })
            })
    }

    /// Whether nothing of a segment's tone is seen.
    pub(super) fn is_buried(&self, segment: &Segment) -> bool {
        let around = (0..12).map(|twelfth| TAU * f64::from(twelfth) / 12.0).map(f64::sin_cos);
        let rim = around.flat_map(|(sin, cos)| [RADIUS, RADIUS / 2.0].map(|far| [far * cos, far * sin]));
        let [x, y, depth] = segment.middle();
        rim.chain([[0.0, 0.0]]).all(|[right, down]| {
            let owner = Owner::Cord(segment.line, segment.arcs.0);
            self.is_covered(&Place { spot: [x + right, y + down], depth, lift: RADIUS, owner })
        })
    }

    /// Whether the tone of something nearer covers a place.
    fn is_covered(&self, place: &Place) -> bool {
        let Owner::Cord(line, own) = place.owner else { return false };
        let by_cord = self.grid.about(place.spot).any(|at| {
            let segment = &self.grid.segments[at];
            let (off, depth, arc) = segment.nearest(place.spot);
            off < RADIUS - SLACK && depth > place.depth + DEEP && !self.is_one_bend(line, own, segment.line, arc)
        });
        by_cord
            || self
                .scene
                .bars
                .iter()
                .any(|bar| (place.spot[0] - bar.x).abs() < bar.radius && bar.z > place.depth && bar.spans(place.spot))
    }

    /// Whether a place just beside an edge parts that edge from something deeper.
    fn parts(&self, place: &Place) -> bool {
        let mut is_backed = false;
        for at in self.grid.about(place.spot) {
            let segment = &self.grid.segments[at];
            let (off, depth, arc) = segment.nearest(place.spot);
            let one_bend =
                matches!(place.owner, Owner::Cord(line, own) if self.is_one_bend(line, own, segment.line, arc));
            if off < RADIUS && (one_bend || depth > place.depth - DEEP) {
                return false;
            }
            is_backed |= off < RADIUS + SLACK && !one_bend;
        }
        for (at, bar) in self.scene.bars.iter().enumerate() {
            let off = (place.spot[0] - bar.x).abs();
            if place.owner == Owner::Bar(at) || off > bar.radius || !bar.spans(place.spot) {
                continue;
            }
            if bar.z > place.depth - DEEP {
                return false;
            }
            is_backed = true;
        }
        is_backed
    }

    fn is_one_bend(&self, line: usize, own: f64, other: usize, arc: f64) -> bool {
        line == other && self.scene.lines[line].one_bend(own, arc)
    }

    /// A line straight across each cut end.
    fn cut_ends(&self, line: usize, stations: &[Station], ink: &mut Vec<Vec<Spot>>) {
        let cut = self.scene.lines[line].cut;
        let ends = [stations.first().filter(|_| cut.0), stations.last().filter(|_| cut.1)];
        for station in ends.into_iter().flatten() {
            let across = [-RADIUS, -RADIUS / 2.0, 0.0, RADIUS / 2.0, RADIUS];
            let places = across.map(|side| offset(line, &[*station], side)[0]);
            self.edge(&places, ink);
        }
    }

    /// What tells a leg from the others: nothing, a line, ticks, two lines.
    fn mark(&self, line: usize, stations: &[Station], marks: &mut Vec<Vec<Spot>>) {
        match self.scene.lines[line].leg % PATTERNS {
            1 => self.edge(&offset(line, stations, 0.0), marks),
            2 => self.ticks(line, stations, marks),
            3 => [-0.15, 0.15].iter().for_each(|side| self.edge(&offset(line, stations, *side), marks)),
            _ => {}
        }
    }

    fn ticks(&self, line: usize, stations: &[Station], marks: &mut Vec<Vec<Spot>>) {
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
                Place { spot: aside(station, HALF.0 * end, HALF.1 * end), ..place }
            });
            if tick.iter().all(|place| !self.hides(place)) {
                marks.push(vec![tick[0].spot, tick[2].spot]);
            }
        }
    }

    fn bar(&self, index: usize, bar: &Bar, edges: &mut Edges) {
        let (top, bottom) = bar.span;
        let count = steps(bottom - top, 0.1);
        let down = |side: f64| -> Vec<Place> {
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
            let across: Vec<Place> = (0..=count).map(|step| bar_place(index, bar, [x(step), y])).collect();
            self.edge(&across, &mut edges.ink);
        }
    }
}

fn bar_place(index: usize, bar: &Bar, spot: Spot) -> Place {
    Place { spot, depth: bar.z, lift: 0.0, owner: Owner::Bar(index) }
}

impl Bar {
    fn spans(&self, spot: Spot) -> bool {
        self.span.0 <= spot[1] && spot[1] <= self.span.1
    }
}

/// Whether something whose edge is so far off and whose centre is so deep covers a place, or the gap beside it does.
///
/// Two that do not cut into one another lie one before the other as their centres do. At the same depth one of the two
/// has to give way.
fn covers(past_edge: f64, depth: f64, place_depth: f64, wins_a_tie: impl Fn() -> bool) -> bool {
    let ahead = depth - place_depth;
    ahead > DEEP && past_edge < GAP || past_edge < -SLACK && (ahead > 1e-9 || ahead > -1e-9 && wins_a_tie())
}

/// The runs of places that are seen, with their ends found between two places.
fn runs(places: &[Place], seen: impl Fn(&Place) -> bool) -> Vec<Vec<Spot>> {
    let mut flags: Vec<bool> = places.iter().map(&seen).collect();
    without_short(&mut flags, places, false, SHORTEST_GAP);
    without_short(&mut flags, places, true, SHORTEST);
    let mut runs: Vec<Vec<Spot>> = Vec::new();
    let mut open = false;
    for (at, place) in places.iter().enumerate() {
        if at > 0 && flags[at] != flags[at - 1] {
            let (inside, outside) = if flags[at] { (at, at - 1) } else { (at - 1, at) };
            let end = turning_point(&places[inside], &places[outside], &seen).spot;
            if flags[at] {
                runs.push(vec![end]);
                open = true;
            } else if let Some(run) = runs.last_mut() {
                run.push(end);
                open = false;
            }
        }
        if flags[at] {
            if !open {
                runs.push(Vec::new());
                open = true;
            }
            runs.last_mut().into_iter().for_each(|run| run.push(place.spot));
        }
    }
    joined(runs, places)
}

/// Where, between a place that is seen and one that is not, the sight is lost.
fn turning_point(inside: &Place, outside: &Place, seen: &impl Fn(&Place) -> bool) -> Place {
    let (mut least, mut most) = (0.0, 1.0);
    for _ in 0..5 {
        let share = f64::midpoint(least, most);
        if seen(&inside.between(outside, share)) { least = share } else { most = share }
    }
    inside.between(outside, least)
}

/// Turns over whatever stretch of a flag is shorter than a length, but for stretches at the ends.
fn without_short(flags: &mut [bool], places: &[Place], flag: bool, shortest: f64) {
    let mut start = None;
    for at in 1..flags.len() {
        if flags[at] == flags[at - 1] {
            continue;
        }
        if flags[at] == flag {
            start = Some(at);
        } else if let Some(from) = start.take() {
            let stretch = &places[from - 1..=at];
            if stretch.windows(2).map(|pair| apart(pair[0].spot, pair[1].spot)).sum::<f64>() < shortest {
                flags[from..at].fill(!flag);
            }
        }
    }
}

/// The last run of a closed edge goes on as its first.
fn joined(mut runs: Vec<Vec<Spot>>, places: &[Place]) -> Vec<Vec<Spot>> {
    if let ([first, .., last], [start, .., end]) = (places, runs.as_slice())
        && apart(first.spot, last.spot) < 1e-9
        && start.first().is_some_and(|spot| apart(*spot, first.spot) < 1e-9)
        && end.last().is_some_and(|spot| apart(*spot, first.spot) < 1e-9)
    {
        let start = runs.remove(0);
        if let Some(end) = runs.last_mut() {
            end.extend(start.into_iter().skip(1));
        }
    }
    // Shorter than a line is wide, it would be a dot.
    runs.retain(|run| run.len() > 1 && run.windows(2).map(|pair| apart(pair[0], pair[1])).sum::<f64>() > 0.06);
    runs
}

/// The spots of some points of a line.
pub(super) fn spots(line: &Line, (from, to): (usize, usize)) -> Vec<Spot> {
    line.points[from..=to].iter().map(|point| flat(*point)).collect()
}
