//! Shapes to try drawings on: by formulas, but for one that was tightened.

use std::f64::consts::{PI, TAU};

use reeve_catalogue::shape::{Point, Repeat, Rod, Shape, Strand, Then};

/// Points of a curve at a share, from 0 to 1, of its way.
fn curve(count: u32, at: impl Fn(f64) -> Point) -> Vec<Point> {
    (0..=count).map(|step| at(f64::from(step) / f64::from(count))).collect()
}

/// A closed trefoil.
pub(crate) fn trefoil() -> Shape {
    let mut points = curve(180, |share| {
        let t = TAU * share;
        [
            1.5 * (libm::sin(t) + 2.0 * libm::sin(2.0 * t)),
            1.5 * (libm::cos(t) - 2.0 * libm::cos(2.0 * t)),
            -0.9 * libm::sin(3.0 * t),
        ]
    });
    points.pop();
    Shape { strands: vec![Strand { points, then: Then::Closes }], rods: Vec::new(), repeat: None }
}

/// A smooth way through a few points.
fn through(points: &[Point]) -> Vec<Point> {
    let mut way = points.to_vec();
    for _ in 0..4 {
        // Chaikin's corner cutting, with the ends kept.
        let mut cut = vec![way[0]];
        for pair in way.windows(2) {
            let at = |share: f64| [0, 1, 2].map(|axis| pair[0][axis] + (pair[1][axis] - pair[0][axis]) * share);
            cut.extend([at(0.25), at(0.75)]);
        }
        cut.push(way[way.len() - 1]);
        way = cut;
    }
    way
}

/// A square knot round two core legs, as the catalogue tightens it: every fourth point of one leg. The other leg is the
/// same, turned half round.
pub(crate) fn square() -> Shape {
    let first: [Point; 20] = [
        [-2.18, 1.33, -0.62],
        [-1.99, 2.07, -0.5],
        [-1.47, 2.4, -0.04],
        [-1.08, 2.29, 0.63],
        [-0.4, 2.07, 0.93],
        [0.36, 1.84, 0.94],
        [1.05, 1.61, 0.67],
        [1.45, 1.49, 0.0],
        [1.98, 1.8, -0.46],
        [2.19, 2.54, -0.59],
        [2.18, 3.33, -0.59],
        [1.88, 4.02, -0.39],
        [1.36, 4.21, 0.14],
        [0.93, 4.04, 0.77],
        [0.2, 3.82, 0.95],
        [-0.56, 3.59, 0.91],
        [-1.18, 3.36, 0.5],
        [-1.58, 3.32, -0.17],
        [-2.07, 3.77, -0.55],
        [-2.18, 4.54, -0.62],
    ];
    let turned = first.map(|[x, y, z]| [-x, y, -z]);
    let strand = |(points, next): (&[Point], usize)| Strand { points: points.to_vec(), then: Then::GoesOnAs(next) };
    Shape {
        strands: [(&first[..], 0), (&turned[..], 1)].map(strand).to_vec(),
        rods: [-0.45, 0.45].map(|x| Rod { x, z: 0.0, diameter: 1.0 }).to_vec(),
        repeat: Some(Repeat { rise: 3.615, twist: 0.0 }),
    }
}

/// Five turns round a thick rod, with ends that hang.
pub(crate) fn wrapped_rod() -> Shape {
    let (radius, turns) = (2.5, 5.0);
    let mut points = curve(40, |share| [-9.0 + 9.0 * share, -0.3, -radius]);
    points.pop();
    points.extend(curve(400, |share| {
        let angle = -PI / 2.0 + TAU * (turns * share);
        [radius * libm::cos(angle), turns * 1.05 * share, radius * libm::sin(angle)]
    }));
    points.extend(curve(40, |share| [-9.0 * share, turns * 1.05 + 0.3, -radius]).into_iter().skip(1));
    Shape {
        strands: vec![Strand { points, then: Then::Pulled }],
        rods: vec![Rod { x: 0.0, z: 0.0, diameter: 4.0 }],
        repeat: None,
    }
}

/// An overhand knot whose ends are pulled up and down.
pub(crate) fn overhand() -> Shape {
    let way = [
        [-0.6, -9.0, 0.0],
        [-0.6, -3.0, 0.0],
        [-0.6, -1.4, 0.3],
        [1.2, -0.2, 0.9],
        [1.5, 1.2, 0.2],
        [0.0, 1.9, -0.7],
        [-1.5, 1.2, -0.3],
        [-1.4, -0.2, 0.8],
        [-0.1, -0.9, 0.9],
        [0.7, -0.9, -0.6],
        [0.2, 0.6, -1.1],
        [0.3, 1.6, 0.5],
        [0.6, 3.2, 0.3],
        [0.6, 9.0, 0.0],
    ];
    Shape { strands: vec![Strand { points: through(&way), then: Then::Pulled }], rods: Vec::new(), repeat: None }
}

/// Four legs laid round one another, as a crown sennit tied one way only grows: in each repeat every leg takes the
/// place of its neighbour, and the whole turns a little further.
pub(crate) fn crown() -> Shape {
    const TWIST: f64 = 0.35;
    let leg = |quarter: f64| {
        let points = curve(24, |share| {
            let angle = PI / 2.0 * quarter + (PI / 2.0 + TWIST) * share;
            [0.9 * libm::cos(angle), 1.9 * share, 0.9 * libm::sin(angle)]
        });
        points[..24].to_vec()
    };
    let strand = |(quarter, next)| Strand { points: leg(quarter), then: Then::GoesOnAs(next) };
    Shape {
        strands: [(0.0, 1), (1.0, 2), (2.0, 3), (3.0, 0)].map(strand).to_vec(),
        rods: Vec::new(),
        repeat: Some(Repeat { rise: 1.9, twist: TWIST }),
    }
}

/// A row of half hitches: each leg comes from behind, turns once round the leader and leaves below.
pub(crate) fn hitches() -> Shape {
    let mut points = curve(30, |share| [-6.0 + 6.0 * share, 0.0, -1.0]);
    points.pop();
    points.extend(curve(60, |share| {
        let angle = -PI / 2.0 + TAU * share;
        [libm::cos(angle), 1.05 * share, libm::sin(angle)]
    }));
    points.extend(curve(30, |share| [6.0 * share, 1.05, -1.0]).into_iter().skip(1));
    Shape {
        strands: vec![Strand { points, then: Then::Pulled }],
        rods: vec![Rod { x: 0.0, z: 0.0, diameter: 1.0 }],
        repeat: Some(Repeat { rise: 2.1, twist: 0.0 }),
    }
}

/// Every shape, with a name.
pub(crate) fn all() -> Vec<(&'static str, Shape, bool)> {
    vec![
        ("trefoil", trefoil(), false),
        ("square", square(), false),
        ("wrapped-rod", wrapped_rod(), true),
        ("overhand", overhand(), false),
        ("crown", crown(), false),
        ("hitches", hitches(), true),
    ]
}
