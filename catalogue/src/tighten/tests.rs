use std::f64::consts::{PI, TAU};

use super::energy::Energy;
use super::tubes::Tubes;
use super::*;
use crate::path::{Flip, Leg, Line, Path, Round};
use crate::shape::{Rod, Strand, Then};

fn closed(points: Vec<[f64; 3]>, rods: Vec<Rod>) -> Start {
    Start::from(Shape { strands: vec![Strand { points, then: Then::Closes }], rods, repeat: None })
}

/// A braid word closed to a ring: `1` crosses the first strand over the second, `-1` under it.
fn closed_braid(strands: usize, word: &[i32]) -> Start {
    const STEPS: usize = 12;
    let radius = word.len() as f64 * 2.2 / TAU + strands as f64;
    let mut tracks: Vec<Vec<(f64, f64)>> = vec![Vec::new(); strands];
    let mut order: Vec<usize> = (0..strands).collect();
    for crossing in word {
        let left = crossing.unsigned_abs() as usize - 1;
        for step in 0..STEPS {
            let share = step as f64 / STEPS as f64;
            let (over, lift) =
                ((1.0 - (PI * share).cos()) / 2.0, 0.8 * (PI * share).sin() * f64::from(crossing.signum()));
            for (place, strand) in order.iter().enumerate() {
                let x = place as f64;
                tracks[*strand].push(match place {
                    _ if place == left => (x + over, lift),
                    _ if place == left + 1 => (x - over, -lift),
                    _ => (x, 0.0),
                });
            }
        }
        order.swap(left, left + 1);
    }
    let (mut points, mut strand) = (Vec::new(), 0);
    loop {
        for (step, (x, z)) in tracks[strand].iter().enumerate() {
            let (sin, cos) = (TAU * step as f64 / (word.len() * STEPS) as f64).sin_cos();
            points.push([(radius + 1.6 * x) * cos, 1.6 * z, (radius + 1.6 * x) * sin]);
        }
        strand = order.iter().position(|other| *other == strand).unwrap();
        if strand == 0 {
            return closed(points, Vec::new());
        }
    }
}

#[test]
fn closed_knots_come_to_their_published_length() {
    for (name, strands, word, published) in [
        ("3_1", 2, vec![1, 1, 1], 16.3729),
        ("4_1", 3, vec![1, -2, 1, -2], 21.0444),
        ("5_1", 2, vec![1; 5], 23.6008),
        ("5_2", 3, vec![1, 1, 1, 2, -1, 2], 24.7351),
        ("granny", 3, vec![1, 1, 1, 2, 2, 2], 28.46),
        ("square", 3, vec![1, 1, 1, -2, -2, -2], 28.46),
    ] {
        let now = std::time::Instant::now();
        let tight = tighten(&closed_braid(strands, &word), 0.01, &Effort::default()).unwrap();
        let hard = tight.at[0].length;
        println!(
            "{name}: {hard:.3} {published} {:?} {:?}",
            tight.at.map(|m| (m.length * 100.0).round() / 100.0),
            now.elapsed()
        );
        assert!((hard / published - 1.0).abs() < 0.01, "{name}: {hard}");
    }
}

fn square() -> Path {
    let points = vec![
        [-2.2, 0.0, 0.0],
        [-1.9, 1.0, -0.6],
        [-1.5, 1.9, 0.2],
        [0.0, 1.5, 1.2],
        [1.4, 1.1, 0.2],
        [1.9, 1.1, -0.6],
        [3.0, 1.7, -0.2],
    ];
    let leg = |line| Leg { line, goes_on_as: None, legs: 1, all_round: false };
    Path {
        repeats: Some(6.0),
        knots: 1,
        twist: None,
        pull: crate::shape::PULL,
        second_half: Some(Flip::Across),
        legs: vec![leg(Line::Points(points)), leg(Line::Like { leg: 0, turned: 180.0, flip: None })],
        parameters: vec![],
    }
}

#[test]
fn square_sennits() {
    for round in [
        Round::Legs(0),
        Round::Legs(1),
        Round::Legs(2),
        Round::Legs(3),
        Round::Legs(4),
        Round::Legs(8),
        Round::Legs(16),
        Round::Rod(16.0),
        Round::Rod(32.0),
    ] {
        let now = std::time::Instant::now();
        let tight = tighten(&square().start(2, round), 0.1, &Effort::default()).unwrap();
        println!(
            "{round:?} {:.2} {:?} {:?}",
            round.thickness(),
            tight.at.map(|m| ((m.take_up * 100.0).round() / 100.0, (m.rise * 100.0).round() / 100.0)),
            now.elapsed()
        );
    }
}

#[test]
fn the_slope_is_the_difference_of_two_neighbours() {
    let mut path = square();
    path.twist = Some(30.0);
    let start = path.start(2, Round::Legs(1));
    let mut rods = start.clone();
    rods.shape.rods = vec![Rod { x: -0.45, z: 0.1, diameter: 1.0 }, Rod { x: 0.4, z: 0.0, diameter: 1.0 }];
    let (tubes, spacing) = Tubes::new(&Start { twists: true, ..Start::from(rods.shape) }).evened(0.4);
    let mut energy = Energy::new(tubes, 40.0, spacing);
    let state = energy.state();
    let mut slope = vec![0.0; state.len()];
    energy.at(&state, &mut slope);
    let mut unused = slope.clone();
    for k in 0..state.len() {
        let mut value = |by: f64| {
            let mut moved = state.clone();
            moved[k] += by;
            energy.at(&moved, &mut unused)
        };
        let step = 1e-6;
        let difference = (value(step) - value(-step)) / (2.0 * step);
        assert!((difference - slope[k]).abs() < 1e-4 * (1.0 + difference.abs()), "{k}: {difference} {}", slope[k]);
    }
}

#[test]
fn a_ring_sinks_into_a_straight_cord_by_the_give() {
    let ring = (0..40).map(|k| TAU * f64::from(k) / 40.0).map(|a| [1.2 * a.cos(), 0.0, 1.2 * a.sin()]).collect();
    let start = closed(ring, vec![Rod { x: 0.0, z: 0.0, diameter: 1.0 }]);
    let tight = tighten(&start, 0.1, &Effort { spacing: 0.05, steps: 2000 }).unwrap();
    println!("{:?}", tight.at.map(|m| m.length));
    for (give, measured) in GIVES.iter().zip(tight.at) {
        let radius = measured.length / TAU;
        assert!((radius - (1.0 - give)).abs() < 0.002, "{give}: {radius}");
    }
}
