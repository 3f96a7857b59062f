//! Edges cut into the runs that are seen.

use super::sampling::{PlanePoint, apart};
use super::sight::{Sight, SurfacePoint};

/// An edge is not broken off for less than this; where two cords lie level, now one is nearer and now the other.
const SHORTEST_GAP: f64 = 0.4;
/// What is seen of an edge for less than this is left out.
const SHORTEST: f64 = 0.35;

/// How far apart two edges may break off where their cords change places; one line joins them.
const BRIDGE: f64 = 0.5;

/// A run of an edge that is seen.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct SeenRun {
    pub(super) spots: Vec<PlanePoint>,
    /// Just past its first and its last spot, where something hides it there.
    lost: [Option<SurfacePoint>; 2],
}

/// The runs of places that are seen, with their ends found between two places.
pub(super) fn runs(places: &[SurfacePoint], seen: impl Fn(&SurfacePoint) -> bool) -> Vec<SeenRun> {
    let mut flags: Vec<bool> = places.iter().map(&seen).collect();
    without_short(&mut flags, places, false, SHORTEST_GAP);
    without_short(&mut flags, places, true, SHORTEST);
    let mut runs = Vec::new();
    let mut from = 0;
    while let Some(first) = (from..places.len()).find(|at| flags[*at]) {
        let end = (first..places.len()).find(|at| !flags[*at]).unwrap_or(places.len());
        let before = first.checked_sub(1).map(|out| turning_point(&places[first], &places[out], &seen));
        let after = places.get(end).map(|out| turning_point(&places[end - 1], out, &seen));
        let spots = before.iter().chain(&places[first..end]).chain(&after).map(|place| place.spot).collect();
        runs.push(SeenRun { spots, lost: [before, after] });
        from = end;
    }
    joined(runs, places)
}

/// Lines from edge to edge where two cords that lie level change places, one edge breaking off beside the other.
pub(super) fn bridges(runs: &[SeenRun], sight: &Sight<'_>) -> Vec<Vec<PlanePoint>> {
    let mut ends: Vec<(usize, PlanePoint)> = Vec::new();
    for (index, run) in runs.iter().enumerate() {
        for (place, spot) in run.lost.iter().zip([run.spots.first(), run.spots.last()]) {
            if let (Some(place), Some(spot)) = (place, spot)
                && sight.is_level(place)
            {
                ends.push((index, *spot));
            }
        }
    }
    let mut pairs = Vec::new();
    for (at, (run, spot)) in ends.iter().enumerate() {
        let others = ends.iter().enumerate().skip(at + 1).filter(|(_, (other, _))| run != other);
        pairs.extend(others.map(|(other, (_, far))| (apart(*spot, *far), at, other)));
    }
    pairs.retain(|(far, ..)| *far < BRIDGE);
    pairs.sort_by(|a, b| a.0.total_cmp(&b.0).then((a.1, a.2).cmp(&(b.1, b.2))));
    let mut is_joined = vec![false; ends.len()];
    let mut bridges = Vec::new();
    for (_, a, b) in pairs {
        if !is_joined[a] && !is_joined[b] {
            (is_joined[a], is_joined[b]) = (true, true);
            bridges.push(vec![ends[a].1, ends[b].1]);
        }
    }
    bridges
}

/// Where, between a place that is seen and one that is not, the sight is lost.
fn turning_point(inside: &SurfacePoint, outside: &SurfacePoint, seen: &impl Fn(&SurfacePoint) -> bool) -> SurfacePoint {
    let (mut least, mut most) = (0.0, 1.0);
    for _ in 0..5 {
        let share = f64::midpoint(least, most);
        if seen(&inside.between(outside, share)) { least = share } else { most = share }
    }
    inside.between(outside, least)
}

/// Turns over whatever stretch of a flag is shorter than a length, but for stretches at the ends.
fn without_short(flags: &mut [bool], places: &[SurfacePoint], flag: bool, shortest: f64) {
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
fn joined(mut runs: Vec<SeenRun>, places: &[SurfacePoint]) -> Vec<SeenRun> {
    if let ([first, .., last], [start, .., end]) = (places, runs.as_slice())
        && apart(first.spot, last.spot) < 1e-9
        && start.lost[0].is_none()
        && end.lost[1].is_none()
    {
        let start = runs.remove(0);
        if let Some(end) = runs.last_mut() {
            end.spots.extend(start.spots.into_iter().skip(1));
            end.lost[1] = start.lost[1];
        }
    }
    // Shorter than a line is wide, it would be a dot.
    let length = |run: &SeenRun| run.spots.windows(2).map(|pair| apart(pair[0], pair[1])).sum::<f64>();
    runs.retain(|run| length(run) > 0.06);
    runs
}
