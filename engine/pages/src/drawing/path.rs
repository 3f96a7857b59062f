//! Runs of spots as SVG path data: few cubic curves, few digits.

use super::sampling::{PlanePoint, apart, nearest_share};

/// Units of the drawing in one diameter.
pub(super) const UNITS: f64 = 10.0;
/// How far, in units, a curve may stray from the spots it stands for.
const STRAY: f64 = 0.15;
/// How much of a run, in units, one curve may stand for.
const LONGEST: f64 = 40.0;

/// Writes runs of spots, in units, as the data of one path.
pub(super) fn data(runs: &[Vec<PlanePoint>]) -> String {
    let mut pen = Pen::default();
    for run in runs {
        pen.draw(run);
    }
    pen.text
}

/// A number as short as it can be written to a tenth.
pub(crate) fn tenth(value: f64) -> String {
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
    at: PlanePoint,
    /// The command that needs not be said again.
    command: Option<char>,
    /// Whether the number before has a point; `None` right after a command.
    had_point: Option<bool>,
}

impl Pen {
    fn draw(&mut self, run: &[PlanePoint]) {
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

    fn relative(&mut self, command: char, spots: &[PlanePoint]) {
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
        self.had_point = None;
    }

    /// A sign parts two numbers, and so does a point where the first has one already.
    fn number(&mut self, value: f64) {
        let text = tenth(value);
        let is_parted = match self.had_point {
            None => true,
            Some(had_point) => text.starts_with('-') || had_point && text.starts_with('.'),
        };
        if !is_parted {
            self.text.push(' ');
        }
        self.text.push_str(&text);
        self.had_point = Some(text.contains('.'));
    }
}

fn arcs(run: &[PlanePoint]) -> Vec<f64> {
    let mut sum = 0.0;
    let mut arcs = vec![0.0];
    for pair in run.windows(2) {
        sum += apart(pair[0], pair[1]);
        arcs.push(sum);
    }
    arcs
}

/// The direction at each spot: that of the circle through it and its neighbours.
fn tangents(run: &[PlanePoint], is_closed: bool) -> Vec<PlanePoint> {
    let last = run.len() - 1;
    let way = |from: usize, to: usize| {
        let length = apart(run[from], run[to]).max(1e-9);
        ([(run[to][0] - run[from][0]) / length, (run[to][1] - run[from][1]) / length], length)
    };
    let middle = |before: usize, at: usize, after: usize| {
        let ((a, long), (b, far)) = (way(before, at), way(at, after));
        let sum = [a[0] * far + b[0] * long, a[1] * far + b[1] * long];
        let size = libm::hypot(sum[0], sum[1]);
        if size < 1e-9 { b } else { [sum[0] / size, sum[1] / size] }
    };
    // At an end the circle is as steep against the last chord as at its other side.
    let mirrored = |tangent: PlanePoint, chord: PlanePoint| {
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
fn furthest(
    run: &[PlanePoint],
    tangents: &[PlanePoint],
    arcs: &[f64],
    from: usize,
) -> (usize, Option<[PlanePoint; 2]>) {
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

/// Whether all spots lie on the way from the first to the last; a way out and back does not.
fn is_straight(run: &[PlanePoint]) -> bool {
    let [first, .., last] = run else { return true };
    let off = |spot: &PlanePoint| {
        let share = nearest_share(*spot, *first, *last);
        apart(*spot, [0, 1].map(|axis| first[axis] + (last[axis] - first[axis]) * share))
    };
    run.iter().all(|spot| off(spot) < STRAY / 2.0)
}

fn handles(run: &[PlanePoint], tangents: &[PlanePoint], arcs: &[f64], (from, to): (usize, usize)) -> [PlanePoint; 2] {
    let third = (arcs[to] - arcs[from]) / 3.0;
    let (a, b) = (tangents[from], tangents[to]);
    [[run[from][0] + a[0] * third, run[from][1] + a[1] * third], [run[to][0] - b[0] * third, run[to][1] - b[1] * third]]
}

fn follows(run: &[PlanePoint], arcs: &[f64], (from, to): (usize, usize), [a, b]: [PlanePoint; 2]) -> bool {
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

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use super::*;

    /// The spots that a path runs through, read back from its data as SVG 2 has it: commands M, c, l and z.
    fn read(data: &str) -> Vec<PlanePoint> {
        let (mut numbers, mut spots, mut from) = (Vec::new(), Vec::<PlanePoint>::new(), [0.0, 0.0]);
        let mut command = String::new();
        for token in tokens(data) {
            match token.parse::<f64>() {
                Ok(number) => numbers.push(number),
                Err(_) => command = token,
            }
            let wanted = if command == "c" { 6 } else { 2 };
            if numbers.len() < wanted {
                continue;
            }
            let hull: Vec<PlanePoint> = numbers.chunks(2).map(|step| [from[0] + step[0], from[1] + step[1]]).collect();
            if let [first, second, to] = hull.as_slice() {
                spots.extend((1..100).map(|step| on(&[from, *first, *second, *to], f64::from(step) / 100.0)));
            }
            from = hull[hull.len() - 1];
            spots.push(from);
            numbers.clear();
        }
        spots
    }

    /// A place on a cubic curve.
    fn on(hull: &[PlanePoint; 4], share: f64) -> PlanePoint {
        let rest = 1.0 - share;
        let weights =
            [rest * rest * rest, 3.0 * rest * rest * share, 3.0 * rest * share * share, share * share * share];
        [0, 1].map(|axis| hull.iter().zip(weights).map(|(spot, weight)| spot[axis] * weight).sum())
    }

    fn tokens(data: &str) -> Vec<String> {
        let mut tokens: Vec<String> = Vec::new();
        for c in data.chars() {
            let joins = match (c, tokens.last()) {
                ('0'..='9', Some(last)) => last.parse::<f64>().is_ok() || last.ends_with(['-', '.']),
                ('.', Some(last)) => (last.parse::<f64>().is_ok() || last == "-") && !last.contains('.'),
                _ => false,
            };
            match tokens.last_mut() {
                Some(last) if joins => last.push(c),
                _ => tokens.push(c.to_string()),
            }
        }
        tokens.retain(|token| token != " ");
        tokens
    }

    #[test]
    fn numbers_are_as_short_as_they_can_be() {
        let told: Vec<String> = [0.0, -0.04, 0.25, -0.5, 3.0, -12.34].map(tenth).to_vec();
        assert_eq!(told, ["0", "0", ".2", "-.5", "3", "-12.3"]);
        assert_eq!(data(&[vec![[0.5, 0.5], [1.0, 1.2]]]), "M.5.5l.5.7");
        assert_eq!(data(&[vec![[1.0, 0.5], [2.0, 0.5]]]), "M1 .5l1 0");
    }

    #[test]
    fn a_written_path_keeps_to_its_spots() {
        let curve = |step: u32| {
            let t = f64::from(step) / 40.0;
            [20.0 * libm::cos(2.0 * t) + 9.0 * t, 31.0 * libm::sin(3.0 * t)]
        };
        let run: Vec<PlanePoint> = (0..200).map(curve).collect();
        let text = data(std::slice::from_ref(&run));
        let back = read(&text);
        for spot in &run {
            // Rounding to a tenth takes its share.
            let near = back.windows(2).map(|pair| {
                let share = nearest_share(*spot, pair[0], pair[1]);
                apart(*spot, [0, 1].map(|axis| pair[0][axis] + (pair[1][axis] - pair[0][axis]) * share))
            });
            let near = near.fold(f64::INFINITY, f64::min);
            assert!(near < STRAY + 0.1, "{spot:?} is {near} off");
        }
        assert!(text.len() < run.len() * 6, "{} bytes for {} spots", text.len(), run.len());
    }

    #[test]
    fn straight_lines_stay_straight() {
        let run: Vec<PlanePoint> = (0..50).map(|step| [f64::from(step), 7.0]).collect();
        assert_eq!(data(&[run]), "M0 7l49 0");
    }
}
