//! What is over and what is under is reckoned here anew, from the curves alone.

use proptest::prelude::*;
use proptest::test_runner::Config;
use reeve_catalogue::Catalogue;
use reeve_catalogue::shape::{Point, Strand, Then};

use super::composing::scene_of;
use super::edges::{Edges, edges};
use super::grid::Grid;
use super::order::{Stroke, pieces};
use super::sampling::{PlanePoint, between, flat, nearest_share};
use super::scene::{CordLine, Lie, Scene};
use super::*;

fn options(across: bool) -> DrawOptions<'static> {
    DrawOptions { title: "a knot", across, on_fitting: false }
}

fn scenes() -> Vec<(&'static str, Scene)> {
    shapes::all().into_iter().map(|(name, shape, across)| (name, scene_of(&shape, &options(across)))).collect()
}

/// Where two segments cross on the sheet: the share of each.
fn crossing(a: (PlanePoint, PlanePoint), b: (PlanePoint, PlanePoint)) -> Option<(f64, f64)> {
    let way = |(from, to): (PlanePoint, PlanePoint)| [to[0] - from[0], to[1] - from[1]];
    let cross = |a: PlanePoint, b: PlanePoint| a[0] * b[1] - a[1] * b[0];
    let (along_a, along_b) = (way(a), way(b));
    let apart = way((a.0, b.0));
    let size = cross(along_a, along_b);
    if size.abs() < 1e-12 {
        return None;
    }
    let (s, t) = (cross(apart, along_b) / size, cross(apart, along_a) / size);
    ((0.0..1.0).contains(&s) && (0.0..1.0).contains(&t)).then_some((s, t))
}

/// A crossing: where, and line and segment of what is under and of what is over.
type Crossing = (PlanePoint, (usize, usize), (usize, usize));

/// Every crossing whose two cords are clearly one over the other.
fn crossings(scene: &Scene) -> Vec<Crossing> {
    let segments = |line: usize| (0..scene.lines[line].points.len() - 1).map(move |at| (line, at));
    let all: Vec<(usize, usize)> = (0..scene.lines.len()).flat_map(segments).collect();
    let points = |(line, at): (usize, usize)| {
        let points = &scene.lines[line].points;
        (points[at], points[at + 1])
    };
    let mut found = Vec::new();
    for (index, a) in all.iter().enumerate() {
        for b in &all[index + 1..] {
            let ((a0, a1), (b0, b1)) = (points(*a), points(*b));
            let line = &scene.lines[a.0];
            if a.0 == b.0 && line.one_bend(line.arcs[a.1], line.arcs[b.1]) {
                continue;
            }
            let Some((s, t)) = crossing((flat(a0), flat(a1)), (flat(b0), flat(b1))) else { continue };
            let (at_a, at_b) = (between(a0, a1, s), between(b0, b1, t));
            if (at_a[2] - at_b[2]).abs() > 0.3 {
                found.push(if at_a[2] < at_b[2] { (flat(at_a), *a, *b) } else { (flat(at_a), *b, *a) });
            }
        }
    }
    found
}

/// When a segment of a line is painted.
fn painted(pieces: &[Stroke], (line, at): (usize, usize)) -> Option<usize> {
    let is_it = |piece: &Stroke| match piece {
        Stroke::Cord { line: of, points: (from, to) } => *of == line && (*from..*to).contains(&at),
        Stroke::Bar(_) => false,
    };
    let times: Vec<usize> = pieces.iter().enumerate().filter(|(_, piece)| is_it(piece)).map(|(time, _)| time).collect();
    assert!(times.len() <= 1, "segment {at} of line {line} is painted {} times", times.len());
    times.first().copied()
}

/// What covers a spot: of each line the nearest of its discs there, and each rod, with its depth.
fn covering(scene: &Scene, spot: PlanePoint, within: f64) -> Vec<(Owner, f64)> {
    let of_line = |(line, CordLine { points, .. }): (usize, &CordLine)| {
        let near = |pair: &[Point]| {
            let at = between(pair[0], pair[1], nearest_share(spot, flat(pair[0]), flat(pair[1])));
            ((at[0] - spot[0]).hypot(at[1] - spot[1]) < within).then_some((Owner::Line(line), at[2]))
        };
        points.windows(2).filter_map(near).collect::<Vec<_>>()
    };
    let cords = scene.lines.iter().enumerate().flat_map(of_line);
    let bars = scene.bars.iter().enumerate();
    let bars = bars.filter(|(_, bar)| (bar.x - spot[0]).abs() < bar.radius - 0.5 + within);
    let bars = bars.filter(|(_, bar)| bar.span.0 < spot[1] && spot[1] < bar.span.1);
    cords.chain(bars.map(|(at, bar)| (Owner::Bar(at), bar.z))).collect()
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Owner {
    Line(usize),
    Bar(usize),
}

/// What is painted last at a spot.
fn topmost(scene: &Scene, pieces: &[Stroke], spot: PlanePoint) -> Option<Owner> {
    let covers = |piece: &&Stroke| match piece {
        Stroke::Bar(at) => {
            let bar = &scene.bars[*at];
            (bar.x - spot[0]).abs() < bar.radius && bar.span.0 < spot[1] && spot[1] < bar.span.1
        }
        Stroke::Cord { line, points: (from, to) } => scene.lines[*line].points[*from..=*to].windows(2).any(|pair| {
            let at = between(pair[0], pair[1], nearest_share(spot, flat(pair[0]), flat(pair[1])));
            (at[0] - spot[0]).hypot(at[1] - spot[1]) < 0.5
        }),
    };
    pieces.iter().rev().find(covers).map(|piece| match piece {
        Stroke::Bar(at) => Owner::Bar(*at),
        Stroke::Cord { line, .. } => Owner::Line(*line),
    })
}

/// How many crossings were looked at; each must be painted from below.
fn check_crossings(name: &str, scene: &Scene) -> usize {
    let pieces = pieces(scene, &Grid::of(scene));
    let crossings = crossings(scene);
    for (spot, under, over) in &crossings {
        // What is wholly hidden is not painted at all.
        let Some(before) = painted(&pieces, *under) else { continue };
        let hidden_too = || covering(scene, *spot, 0.45).len() > 2;
        match painted(&pieces, *over) {
            Some(after) => assert!(before < after, "{name} at {spot:?}: {under:?} is painted over {over:?}"),
            None => assert!(hidden_too(), "{name} at {spot:?}: {over:?} is not painted"),
        }
    }
    crossings.len()
}

/// At every spot the leg that is nearest to the viewer is painted last. Returns how many spots told something.
fn check_spots(name: &str, scene: &Scene, spots: u32) -> usize {
    let pieces = pieces(scene, &Grid::of(scene));
    let [left, top, right, bottom] = scene.frame;
    let mut told = 0;
    for step in 0..spots {
        // Low-discrepancy fractions fill the sheet evenly.
        let share = |by: f64| (f64::from(step) * by).fract();
        let spot = [left + (right - left) * share(0.754_877_666), top + (bottom - top) * share(0.569_840_290)];
        let wide = covering(scene, spot, 0.53);
        let Some(nearest) = covering(scene, spot, 0.44).into_iter().max_by(|a, b| a.1.total_cmp(&b.1)) else {
            continue;
        };
        let leg = |owner: Owner| match owner {
            Owner::Line(line) => Err(scene.lines[line].leg),
            Owner::Bar(at) => Ok(at),
        };
        // Where another leg is as near, or only just covers the spot, either may be seen.
        let rivals = wide.iter().filter(|(owner, depth)| leg(*owner) != leg(nearest.0) && *depth > nearest.1 - 0.35);
        if rivals.count() == 0 {
            let seen = topmost(scene, &pieces, spot);
            assert_eq!(seen.map(leg), Some(leg(nearest.0)), "{name} at {spot:?}");
            told += 1;
        }
    }
    told
}

/// All ink is the edge of a cord or rod, and nothing clearly nearer covers it.
fn check_ink(name: &str, scene: &Scene) {
    let edges = edges(scene, &Grid::of(scene));
    let nearest = |all: Vec<(Owner, f64)>| all.into_iter().map(|(_, depth)| depth).fold(f64::MIN, f64::max);
    // The ends of a run and the lines across cut ends belong to no single edge.
    for spot in edges.ink.iter().filter(|run| run.len() > 6).flat_map(|run| &run[2..run.len() - 2]) {
        let (inner, outer) = (covering(scene, *spot, 0.45), covering(scene, *spot, 0.55));
        let is_end = scene.bars.iter().any(|bar| [bar.span.0, bar.span.1].iter().any(|y| (spot[1] - y).abs() < 0.06));
        let edge: Vec<_> = outer.into_iter().filter(|owner| !inner.contains(owner)).collect();
        assert!(!edge.is_empty() || is_end, "{name}: ink at {spot:?} is the edge of nothing");
        let nearer = nearest(covering(scene, *spot, 0.35)) - nearest(edge);
        assert!(nearer < 0.3 || is_end, "{name}: ink at {spot:?} lies over something nearer by {nearer}");
    }
    assert!(!edges.ink.is_empty(), "{name}");
}

/// Whether some ink passes near a spot.
fn is_inked(edges: &Edges, spot: PlanePoint, near: f64) -> bool {
    let passes = |pair: &[PlanePoint]| {
        let share = nearest_share(spot, pair[0], pair[1]);
        let at = [0, 1].map(|axis| pair[0][axis] + (pair[1][axis] - pair[0][axis]) * share);
        (at[0] - spot[0]).hypot(at[1] - spot[1]) < near
    };
    edges.ink.iter().any(|run| run.windows(2).any(passes))
}

/// At a crossing no edge of the lower cord is drawn, and both edges of the upper are where nothing else hides them.
/// Returns how many edges were looked for.
fn check_cut(name: &str, scene: &Scene) -> usize {
    let edges = edges(scene, &Grid::of(scene));
    let mut looked = 0;
    for (spot, _, (line, at)) in crossings(scene) {
        if covering(scene, spot, 0.6).iter().all(|(owner, _)| matches!(owner, Owner::Line(_))) {
            assert!(!is_inked(&edges, spot, 0.2), "{name}: ink in the middle of the crossing at {spot:?}");
        }
        let [a, b] = [scene.lines[line].points[at], scene.lines[line].points[at + 1]];
        let long = (b[0] - a[0]).hypot(b[1] - a[1]);
        for side in [-0.5, 0.5] {
            let edge = [spot[0] - (b[1] - a[1]) / long * side, spot[1] + (b[0] - a[0]) / long * side];
            let is_free = covering(scene, edge, 0.7).iter().all(|(_, depth)| *depth < a[2] + 0.2);
            if is_free && covering(scene, edge, 0.47).iter().all(|(_, depth)| *depth < a[2] - 0.35) {
                assert!(is_inked(&edges, edge, 0.06), "{name}: no ink beside the crossing at {spot:?}");
                looked += 1;
            }
        }
    }
    looked
}

#[test]
fn no_segment_near_a_spot_is_missed() {
    for (name, scene) in scenes() {
        let grid = Grid::of(&scene);
        let [left, top, right, bottom] = scene.frame;
        for (across, down) in (0..20).flat_map(|across| (0..20).map(move |down| (across, down))) {
            let spot =
                [left + (right - left) * f64::from(across) / 19.0, top + (bottom - top) * f64::from(down) / 19.0];
            for reach in [0.0, 0.52, 1.0] {
                let found: Vec<usize> = grid.about(spot, reach).collect();
                for (at, segment) in grid.segments.iter().enumerate() {
                    assert!(segment.nearest(spot).0 > reach || found.contains(&at), "{name}: {spot:?} {at}");
                }
            }
        }
    }
}

#[test]
fn what_lies_over_is_painted_later() {
    for (name, scene) in scenes() {
        check_crossings(name, &scene);
        assert!(check_spots(name, &scene, 1500) > 100, "{name}");
    }
    assert_eq!(check_crossings("trefoil", &scene_of(&shapes::trefoil(), &options(false))), 3);
}

#[test]
fn ink_is_the_edge_of_something_seen() {
    let mut looked = 0;
    for (name, scene) in scenes() {
        check_ink(name, &scene);
        looked += check_cut(name, &scene);
    }
    assert!(looked > 20, "{looked}");
}

#[test]
fn every_knot_of_the_catalogue_is_drawn_small_and_from_below() {
    let catalogue = Catalogue::embedded();
    let (mut drawn, mut crossings, mut all) = (0, 0, 0);
    for knot in catalogue.iter() {
        let (Some(shape), _) = catalogue.shape(knot) else { continue };
        let scene = scene_of(&shape, &DrawOptions::of(knot));
        crossings += check_crossings(&knot.name, &scene);
        assert!(check_spots(&knot.name, &scene, 150) > 5, "{}", knot.name);
        let size = draw(&shape, &DrawOptions::of(knot)).len();
        assert!(size < 15_000, "{} takes {size} bytes", knot.name);
        (drawn, all) = (drawn + 1, all + size);
    }
    assert!(drawn >= 30 && crossings > 300 && all < 500_000, "{drawn}, {crossings}, {all}");
}

/// A closed curve of three harmonics, a few diameters across.
fn closed(weights: &[f64]) -> Strand {
    let at = |step: u32| {
        let t = std::f64::consts::TAU * f64::from(step) / 160.0;
        let axis = |axis: usize| -> f64 {
            let harmonic = |(n, size): (f64, f64)| {
                let of = axis * 6
                    + if n > 2.5 {
                        4
                    } else if n > 1.5 {
                        2
                    } else {
                        0
                    };
                size * (weights[of] * (n * t).cos() + weights[of + 1] * (n * t).sin())
            };
            [(1.0, 3.0), (2.0, 2.0), (3.0, 1.2)].map(harmonic).iter().sum()
        };
        [axis(0), axis(1), axis(2)]
    };
    Strand { points: (0..160).map(at).collect(), then: Then::Closes }
}

fn config() -> Config {
    let cases = if std::env::var_os("PROPTEST_CASES").is_some() { Config::default().cases } else { 32 };
    Config { cases, failure_persistence: None, ..Config::default() }
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn random_curves_are_painted_from_below(strands in prop::collection::vec(prop::collection::vec(-1.0..1.0_f64, 18), 1..4)) {
        let strands = strands.iter().map(|weights| closed(weights)).collect();
        let shape = Shape { strands, rods: Vec::new(), repeat: None };
        let scene = scene_of(&shape, &options(false));
        check_crossings("random", &scene);
        check_spots("random", &scene, 250);
    }

    #[test]
    fn a_drawing_of_anything_is_well_formed(strand in prop::collection::vec(-1.0..1.0_f64, 18), title in ".{0,20}") {
        let shape = Shape { strands: vec![closed(&strand)], rods: Vec::new(), repeat: None };
        let svg = draw(&shape, &DrawOptions { title: &title, ..options(false) });
        prop_assert_eq!(svg.matches('<').count(), svg.matches('>').count());
        prop_assert!(!svg.contains("NaN") && !svg.contains("inf"));
        prop_assert_eq!(svg.clone(), draw(&shape, &DrawOptions { title: &title, ..options(false) }));
    }
}

#[test]
fn drawings_are_small() {
    for (name, shape, across) in shapes::all() {
        let svg = draw(&shape, &options(across));
        assert!(svg.len() < 15_000, "{name} takes {} bytes", svg.len());
    }
}

#[test]
fn a_drawing_has_a_title_and_stands_alone_when_asked_to() {
    let named = DrawOptions { title: "over & <under>", ..options(false) };
    let (inside, alone) = (draw(&shapes::trefoil(), &named), draw_alone(&shapes::trefoil(), &named, ".knot{}"));
    assert!(inside.starts_with("<svg class=\"knot\" role=\"img\"") && !inside.contains("xmlns"), "{inside}");
    assert!(alone.starts_with("<svg xmlns=\"http://www.w3.org/2000/svg\"") && alone.contains("<style>.knot{}</style>"));
    for svg in [&inside, &alone] {
        assert!(svg.contains("<title>over &amp; &lt;under></title>".replace("r>", "r&gt;").as_str()), "{svg}");
    }
}

/// Whatever a drawing lies on shows through where it fades; and two drawings on one page do not fade one another.
#[test]
fn what_goes_on_fades_into_what_it_lies_on() {
    let mut masks: std::collections::BTreeMap<String, String> = std::collections::BTreeMap::new();
    for (name, shape, across) in shapes::all() {
        let svg = draw(&shape, &options(across));
        let goes_on = scene_of(&shape, &options(across)).goes_on;
        assert_eq!(svg.contains("<mask "), goes_on, "{name}");
        if let Some((_, rest)) = svg.split_once("<linearGradient id=\"") {
            let (id, tone) = rest.split_once('"').unwrap();
            let tone = tone.split_once("</mask>").unwrap().0;
            assert_eq!(masks.entry(id.to_owned()).or_insert_with(|| tone.to_owned()), tone, "{name}");
            let mask = id.strip_suffix("-tone").unwrap();
            assert!(svg.contains(&format!("<g mask=\"url(#{mask})\">")), "{name}");
        }
    }
    assert!(masks.len() >= 3, "{masks:?}");
}

#[test]
fn several_legs_bear_numerals_and_one_does_not() {
    let numerals = |shape: &Shape| draw(shape, &options(false)).matches("class=\"numeral\"").count();
    assert_eq!((numerals(&shapes::crown()), numerals(&shapes::square()), numerals(&shapes::trefoil())), (4, 2, 0));
}

#[test]
fn a_pattern_is_shown_tall_enough_to_be_read() {
    for (rise, least, most) in
        [(0.5, 8.0, 8.0), (1.9, 9.5, 9.5), (6.0, 12.0, 12.0), (9.0, 14.0, 14.0), (16.0, 16.0, 16.0)]
    {
        let repeat = Some(reeve_catalogue::shape::Repeat { rise, twist: 0.0 });
        let scene = scene_of(&Shape { repeat, ..shapes::hitches() }, &options(false));
        let tall = scene.frame[3] - scene.frame[1] - 1.8;
        assert!(least - 1e-9 <= tall && tall <= most + 1e-9, "a rise of {rise} is shown {tall} tall");
    }
}

#[test]
fn pulled_ends_reach_a_little_beyond_the_knot_however_long_or_short_they_are() {
    let height = |shape: &Shape| {
        let frame = scene_of(shape, &options(false)).frame;
        frame[3] - frame[1]
    };
    let long = shapes::overhand();
    let mut short = long.clone();
    short.strands[0].points.retain(|point| point[1].abs() < 4.5);
    assert!((height(&long) - height(&short)).abs() < 0.5, "{} and {}", height(&long), height(&short));
    assert!(height(&long) < 13.0, "{}", height(&long));
}

#[test]
fn ends_hang_down_from_what_runs_across() {
    let scene = scene_of(&shapes::wrapped_rod(), &options(true));
    assert_eq!(scene.lie, Lie::Right);
    let mut turned = shapes::wrapped_rod();
    for strand in &mut turned.strands {
        // Half a turn about the rod.
        strand.points = strand.points.iter().map(|[x, y, z]| [-x, *y, -z]).collect();
    }
    assert_eq!(scene_of(&turned, &options(true)).lie, Lie::Left);
}

#[test]
fn nothing_makes_an_empty_drawing() {
    let shape = Shape { strands: Vec::new(), rods: Vec::new(), repeat: None };
    let svg = draw(&shape, &options(false));
    assert!(svg.contains("</svg>") && !svg.contains("<path") && !svg.contains("inf"), "{svg}");
}
