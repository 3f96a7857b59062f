//! Numerals beside dots, moved apart where dots lie close together.

use super::sheet::SheetPoint;

/// Radius of a dot.
pub(super) const DOT: f64 = 3.2;
/// Rings that a numeral is tried on: how far the first is from the dot, and each from the one before, and how many.
const RINGS: (f64, f64, u32) = (4.6, 4.0, 24);
/// The ways to go, in order of preference: aslant first, and level last, for a level line looks like a minus.
const WAYS: [SheetPoint; 16] = [
    [0.71, -0.71],
    [-0.71, -0.71],
    [0.71, 0.71],
    [-0.71, 0.71],
    [0.0, -1.0],
    [0.0, 1.0],
    [0.38, -0.92],
    [-0.38, -0.92],
    [0.38, 0.92],
    [-0.38, 0.92],
    [0.92, -0.38],
    [-0.92, -0.38],
    [0.92, 0.38],
    [-0.92, 0.38],
    [1.0, 0.0],
    [-1.0, 0.0],
];
/// How near a numeral is to its dot where no line need lead to it.
const NEAR: f64 = 5.5;
/// How much further away any other dot must be then.
const DOUBT: f64 = 2.5;
/// Dots nearer than this to one another are at one place.
const SAME: f64 = 1.0;
/// How many numbers, or runs of numbers, stand together.
const TOGETHER: usize = 4;

/// Where a numeral stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stands {
    pub(super) centre: SheetPoint,
    /// Half its width and height.
    pub(super) half: SheetPoint,
    /// From where to where a line leads from the dot to it, if it needs one.
    pub(super) leader: Option<(SheetPoint, SheetPoint)>,
}

impl Stands {
    fn beside(dot: SheetPoint, half: SheetPoint, [across, down]: SheetPoint, away: f64) -> Self {
        let aside = |way: f64, half: f64| away * way + half * (way * 1.42).clamp(-1.0, 1.0);
        let centre = [dot[0] + aside(across, half[0]), dot[1] + aside(down, half[1])];
        let mut numeral = Self { centre, half, leader: None };
        if numeral.distance(dot) > NEAR {
            numeral.leader = Some((dot, numeral.nearest(dot)));
        }
        numeral
    }

    /// The place in it that is nearest to another.
    fn nearest(&self, to: SheetPoint) -> SheetPoint {
        [0, 1].map(|axis| to[axis].clamp(self.centre[axis] - self.half[axis], self.centre[axis] + self.half[axis]))
    }

    fn distance(&self, to: SheetPoint) -> f64 {
        apart(self.nearest(to), to)
    }

    fn covers(&self, other: &Self) -> bool {
        (0..2).all(|axis| (self.centre[axis] - other.centre[axis]).abs() < self.half[axis] + other.half[axis])
    }

    fn is_within(&self, [left, top, right, bottom]: [f64; 4]) -> bool {
        let [x, y] = self.centre;
        let [wide, high] = self.half;
        x - wide >= left && y - high >= top && x + wide <= right && y + high <= bottom
    }

    /// Whether another's line runs through it.
    fn is_crossed(&self, other: &Self) -> bool {
        let Some((from, to)) = other.leader else { return false };
        let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
        for axis in 0..2 {
            let (away, step) = (self.centre[axis] - from[axis], to[axis] - from[axis]);
            // A level or an upright line is next to level or upright: its shares are then far out, to the right side.
            let step = if step.abs() < 1e-9 { 1e-9 } else { step };
            let (a, b) = ((away - self.half[axis]) / step, (away + self.half[axis]) / step);
            (enters, leaves) = (enters.max(a.min(b)), leaves.min(a.max(b)));
        }
        enters < leaves
    }

    fn is_free(&self, dots: &[SheetPoint], others: &[Self]) -> bool {
        dots.iter().all(|dot| self.distance(*dot) > DOT + 0.4) && !others.iter().any(|other| self.covers(other))
    }

    /// Whether it is its dot's beyond doubt: its line runs through no other dot, and without a line no other is as
    /// near; nor does any line run through a numeral that it doesn't lead to.
    fn is_clear(&self, dot: SheetPoint, dots: &[SheetPoint], others: &[Self]) -> bool {
        let own = self.distance(dot);
        let heart = |dot: SheetPoint| Self { centre: dot, half: [DOT / 2.0; 2], leader: None };
        let is_told = dots.iter().filter(|other| !is_same(**other, dot)).all(|other| match self.leader {
            Some(_) => !heart(*other).is_crossed(self),
            None => self.distance(*other) > own + DOUBT,
        });
        is_told && !others.iter().any(|other| self.is_crossed(other) || other.is_crossed(self))
    }
}

fn apart(a: SheetPoint, b: SheetPoint) -> f64 {
    let (x, y) = (a[0] - b[0], a[1] - b[1]);
    (x * x + y * y).sqrt()
}

fn is_same(a: SheetPoint, b: SheetPoint) -> bool {
    apart(a, b) < SAME
}

/// The numbers of the dots, from one on in their order, in words: those of dots at one place stand together.
pub(super) fn numbered(dots: &[SheetPoint]) -> Vec<(SheetPoint, String)> {
    let mut places: Vec<(SheetPoint, Vec<usize>)> = Vec::new();
    for (at, dot) in dots.iter().enumerate() {
        match places.iter_mut().find(|(place, _)| is_same(*place, *dot)) {
            Some((_, together)) => together.push(at),
            None => places.push((*dot, vec![at])),
        }
    }
    places.iter().flat_map(|(place, together)| in_words(together).into_iter().map(|words| (*place, words))).collect()
}

fn in_words(together: &[usize]) -> Vec<String> {
    let runs = together.chunk_by(|before, after| before + 1 == *after);
    let words: Vec<String> = runs.filter_map(run_words).collect();
    words.chunks(TOGETHER).map(|words| words.join(", ")).collect()
}

fn run_words(run: &[usize]) -> Option<String> {
    let (first, last) = (run.first()? + 1, run.last()? + 1);
    Some(match run.len() {
        1 => first.to_string(),
        2 => format!("{first}, {last}"),
        _ => format!("{first}–{last}"),
    })
}

/// Places numerals of some half sizes beside their dots, within a frame (left, top, right, bottom), in their order.
///
/// Each takes the nearest free place: clear of all dots and of the numerals before it, and if possible of their
/// lines. Where so many crowd that none is free, it stands at its dot over what is there.
pub(super) fn placed(numerals: &[(SheetPoint, SheetPoint)], frame: [f64; 4]) -> Vec<Stands> {
    let dots: Vec<SheetPoint> = numerals.iter().map(|(dot, _)| *dot).collect();
    let mut all: Vec<Stands> = Vec::new();
    for (dot, half) in numerals {
        let mut free = tried(*dot, *half).filter(|it| it.is_within(frame) && it.is_free(&dots, &all));
        let first = free.next();
        let clear = first.into_iter().chain(free).find(|it| it.is_clear(*dot, &dots, &all));
        let crowded = || Stands::beside(*dot, *half, WAYS[0], RINGS.0);
        all.push(clear.or(first).unwrap_or_else(crowded));
    }
    all
}

fn tried(dot: SheetPoint, half: SheetPoint) -> impl Iterator<Item = Stands> {
    let (first, step, count) = RINGS;
    (0..count).flat_map(move |ring| {
        let away = first + step * f64::from(ring);
        WAYS.into_iter().map(move |way| Stands::beside(dot, half, way, away))
    })
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    const FRAME: [f64; 4] = [40.0, 15.0, 335.0, 240.0];

    fn all(dots: &[SheetPoint]) -> Vec<Stands> {
        let numerals: Vec<(SheetPoint, SheetPoint)> = dots.iter().map(|dot| (*dot, [8.0, 5.0])).collect();
        placed(&numerals, FRAME)
    }

    #[test]
    fn a_lone_numeral_stands_at_its_dot() {
        let numerals = all(&[[100.0, 100.0]]);
        assert!(numerals[0].leader.is_none());
        assert!(numerals[0].centre[0] > 100.0 && numerals[0].centre[1] < 100.0);
    }

    #[test]
    fn numerals_at_one_place_fan_out_and_lines_lead_to_them() {
        let dots = [[180.0, 120.0]; 8];
        let numerals = all(&dots);
        assert_eq!(numerals.iter().filter(|numeral| numeral.leader.is_some()).count(), 4);
        for (at, numeral) in numerals.iter().enumerate() {
            let rest = [&numerals[..at], &numerals[at + 1..]].concat();
            assert!(numeral.is_clear(dots[at], &dots, &rest), "{}", at + 1);
        }
    }

    #[test]
    fn numbers_at_one_place_stand_together() {
        let (here, there) = ([10.0, 10.0], [50.0, 10.0]);
        let words = |dots: &[SheetPoint]| numbered(dots).into_iter().map(|(_, words)| words).collect::<Vec<_>>();
        assert_eq!(words(&[here, there]), ["1", "2"]);
        assert_eq!(words(&[here, there, here]), ["1, 3", "2"]);
        assert_eq!(words(&[here, here, there, here, here, here]), ["1, 2, 4–6", "3"]);
        let every_other: Vec<SheetPoint> = (0..12).map(|at| if at % 2 == 0 { here } else { there }).collect();
        assert_eq!(words(&every_other), ["1, 3, 5, 7", "9, 11", "2, 4, 6, 8", "10, 12"]);
    }

    proptest! {
        #[test]
        fn numerals_cover_no_dot_and_no_other(
            dots in prop::collection::vec((45.0_f64..330.0, 20.0_f64..235.0), 1..25),
            crowd in 0.1_f64..1.0,
        ) {
            let closer = |(x, y): &(f64, f64)| [185.0 + (x - 185.0) * crowd, 125.0 + (y - 125.0) * crowd];
            let dots: Vec<SheetPoint> = dots.iter().map(closer).collect();
            let numerals = all(&dots);
            for (at, numeral) in numerals.iter().enumerate() {
                prop_assert!(numeral.is_within(FRAME));
                prop_assert!(numeral.is_free(&dots, &numerals[..at]), "{}", at + 1);
            }
            prop_assert_eq!(numerals, all(&dots));
        }
    }
}
