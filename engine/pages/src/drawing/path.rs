//! Runs of spots as SVG path data: few cubic curves, few digits.

use super::sampling::{Spot, apart};

/// Units of the drawing in one diameter.
pub(super) const UNITS: f64 = 10.0;
/// How far, in units, a curve may stray from the spots it stands for.
const STRAY: f64 = 0.15;
/// How much of a run, in units, one curve may stand for.
const LONGEST: f64 = 40.0;

/// Writes runs of spots, in units, as the data of one path.
pub(super) fn data(runs: &[Vec<Spot>]) -> String {
    let mut pen = Pen::default();
    for run in runs {
        pen.draw(run);
    }
    pen.text
}

/// A number as short as it can be written to a tenth.
pub(super) fn tenth(value: f64) -> String {
    let text = format!("{value:.1}");
    let text = text.strip_suffix(".0").unwrap_or(&text);
    match text {
        "-0" => "0".to_owned(),
        _ if text.starts_with("0.") => text[1..].to_owned(),
        _ if text.starts_with("-0.") => format!("-{}", &text[2..]),
        _ => text.to_owned(),
    }
}

#[derive(Default)]
struct Pen {
    text: String,
    /// Where it stands, as it was written.
    at: Spot,
    /// The command that needs not be said again.
    command: Option<char>,
    /// Whether a number that begins with a point would run into the one before.
    parted: bool,
}

impl Pen {
    fn draw(&mut self, run: &[Spot]) {
        let [first, .., last] = run else { return };
        self.command('M');
        self.number(first[0]);
        self.number(first[1]);
        self.at = first.map(|value| (value * 10.0).round() / 10.0);
        let is_closed = apart(*first, *last) < 1e-9 && run.len() > 3;
        let tangents = tangents(run, is_closed);
        let arcs = arcs(run);
        let mut from = 0;
        while from + 1 < run.len() {
            let (to, curve) = furthest(run, &tangents, &arcs, from);
            match curve {
                Some([a, b]) => self.relative('c', &[a, b, run[to]]),
                None => self.relative('l', &[run[to]]),
            }
            from = to;
        }
        if is_closed {
            self.command('z');
        }
    }

    fn relative(&mut self, command: char, spots: &[Spot]) {
        if self.command != Some(command) {
            self.command(command);
        }
        let from = self.at;
        for spot in spots {
            self.at = [0, 1].map(|axis| {
                let step = ((spot[axis] - from[axis]) * 10.0).round() / 10.0;
                self.number(step);
                from[axis] + step
            });
        }
    }

    fn command(&mut self, command: char) {
        self.text.push(command);
        self.command = Some(command);
        self.parted = true;
    }

    fn number(&mut self, value: f64) {
        let text = tenth(value);
        let holds_point = text.contains('.');
        let joins = self.parted || text.starts_with('-');
        // After a number with a point of its own, a point begins the next.
        let ends_in_fraction = self.text.rsplit(|c: char| !c.is_ascii_digit() && c != '.').next();
        let point_parts = text.starts_with('.') && ends_in_fraction.is_some_and(|number| number.contains('.'));
        if !joins && !point_parts {
            self.text.push(' ');
        }
        self.text.push_str(&text);
        self.parted = false;
        let _ = holds_point;
    }
}

fn arcs(run: &[Spot]) -> Vec<f64> {
    let mut sum = 0.0;
    let mut arcs = vec![0.0];
    for pair in run.windows(2) {
        sum += apart(pair[0], pair[1]);
        arcs.push(sum);
    }
    arcs
}

/// The direction at each spot: that of the circle through it and its neighbours.
fn tangents(run: &[Spot], is_closed: bool) -> Vec<Spot> {
    let last = run.len() - 1;
    let way = |from: usize, to: usize| {
        let length = apart(run[from], run[to]).max(1e-9);
        ([(run[to][0] - run[from][0]) / length, (run[to][1] - run[from][1]) / length], length)
    };
    let middle = |before: usize, at: usize, after: usize| {
        let ((a, long), (b, far)) = (way(before, at), way(at, after));
        let sum = [a[0] * far + b[0] * long, a[1] * far + b[1] * long];
        let size = sum[0].hypot(sum[1]);
        if size < 1e-9 { b } else { [sum[0] / size, sum[1] / size] }
    };
    // At an end the circle is as steep against the last chord as at its other side.
    let mirrored = |tangent: Spot, chord: Spot| {
        let twice = 2.0 * (tangent[0] * chord[0] + tangent[1] * chord[1]);
        [twice * chord[0] - tangent[0], twice * chord[1] - tangent[1]]
    };
    let tangent = |at: usize| match at {
        _ if is_closed && (at == 0 || at == last) => middle(last - 1, 0, 1),
        _ if last == 1 => way(0, 1).0,
        0 => mirrored(middle(0, 1, 2), way(0, 1).0),
        _ if at == last => mirrored(middle(last - 2, last - 1, last), way(last - 1, last).0),
        _ => middle(at - 1, at, at + 1),
    };
    (0..=last).map(tangent).collect()
}

/// The furthest spot that one curve or straight line reaches, and the handles of the curve.
fn furthest(run: &[Spot], tangents: &[Spot], arcs: &[f64], from: usize) -> (usize, Option<[Spot; 2]>) {
    let mut best = (from + 1, None);
    for to in from + 1..run.len() {
        let straight = is_straight(&run[from..=to]);
        let handles = handles(run, tangents, arcs, (from, to));
        if straight {
            best = (to, None);
        } else if arcs[to] - arcs[from] <= LONGEST && follows(run, arcs, (from, to), handles) {
            best = (to, Some(handles));
        } else {
            break;
        }
    }
    best
}

fn is_straight(run: &[Spot]) -> bool {
    let [first, .., last] = run else { return true };
    let length = apart(*first, *last);
    let off = |spot: &Spot| {
        let cross = (last[0] - first[0]) * (spot[1] - first[1]) - (last[1] - first[1]) * (spot[0] - first[0]);
        if length < 1e-9 { apart(*spot, *first) } else { cross.abs() / length }
    };
    run.iter().all(|spot| off(spot) < STRAY / 2.0)
}

fn handles(run: &[Spot], tangents: &[Spot], arcs: &[f64], (from, to): (usize, usize)) -> [Spot; 2] {
    let third = (arcs[to] - arcs[from]) / 3.0;
    let (a, b) = (tangents[from], tangents[to]);
    [[run[from][0] + a[0] * third, run[from][1] + a[1] * third], [run[to][0] - b[0] * third, run[to][1] - b[1] * third]]
}

fn follows(run: &[Spot], arcs: &[f64], (from, to): (usize, usize), [a, b]: [Spot; 2]) -> bool {
    let length = (arcs[to] - arcs[from]).max(1e-9);
    (from + 1..to).all(|at| {
        let t = (arcs[at] - arcs[from]) / length;
        let s = 1.0 - t;
        let weights = [s * s * s, 3.0 * s * s * t, 3.0 * s * t * t, t * t * t];
        let on = [0, 1].map(|axis| {
            let hull = [run[from][axis], a[axis], b[axis], run[to][axis]];
            hull.iter().zip(weights).map(|(value, weight)| value * weight).sum()
        });
        apart(on, run[at]) < STRAY
    })
}
