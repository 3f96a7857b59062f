//! Reads a knot's path: the centrelines of its legs, point by point.

use reeve_measure::bound;
use reeve_reading::{Count, Flag, List, Number, OneOf, Placed, Table};

use crate::path::{Flip, Leg, LineSource, Path};
use crate::shape::{PULL, Point};

const POINT: List<Number> = List(Number(bound::PATH_POINT));

/// Reads the `[path]` table of a knot file.
pub(super) fn path(t: &mut Table<'_>) -> Option<Path> {
    let before = t.fault_count();
    let repeats =
        t.maybe("repeats", &Number(bound::REPEAT), "Length of one repeat, in cord diameters; none: it stands alone.");
    let knots = t.maybe("knots", &Count(bound::ROLE_LEGS), "Knots in one repeat; 1 if not said.");
    let twist = t.maybe("twist", &Number(bound::TURN), "How far a repeat is turned, in degrees, to start with.");
    let pull = t.maybe("pull", &Number(bound::PULL), "Pull along the core, in tensions of one leg; 1 if not said.");
    let second =
        t.maybe("second-half", &OneOf { words: Flip::WORDS }, "What the second half is, when the first is drawn.");
    let parameters = t.pairs("parameters", &Number(bound::PARAMETER), "The values of parameters that it is drawn for.");
    let legs = t.tables("leg", "The centreline of one leg, loose, round a core one cord thick.", leg);
    if let (None, Some(key)) = (&repeats, ["knots", "twist", "pull", "second-half"].iter().find(|key| t.has(key))) {
        let help = "say how long one repeat is: repeats = 6";
        t.refuse_together(t.place(key).unwrap_or_default(), format!("`{key}` is for a path that repeats"), "", help);
        return None;
    }
    let path = Path {
        repeats: repeats.map(|repeats| repeats.value),
        knots: knots.map_or(1, |knots| knots.value.max(1)),
        twist: twist.map(|twist| twist.value),
        pull: pull.map_or(PULL, |pull| pull.value),
        second_half: second.map(|second| second.value),
        legs: legs.iter().map(|leg| leg.value.clone()).collect(),
        parameters: parameters.into_iter().map(|(name, value)| (name.value, value.value)).collect(),
    };
    // A leg that could not be read is told already: what the others come to says nothing.
    (t.fault_count() == before && check_legs(t, &legs)).then_some(path)
}

fn leg(t: &mut Table<'_>) -> Option<Leg> {
    let points = t.maybe("points", &List(POINT), "Points in cord diameters: [across, down, towards the viewer].");
    let like = t.maybe("like", &Count(bound::ROLE_LEGS), "The leg, counted from 1, that this one is like.");
    let turned = t.maybe("turned", &Number(bound::TURN), "Turned about the core, in degrees, from right to front.");
    let mirrored = t.maybe(
        "mirrored",
        &OneOf { words: Flip::WORDS },
        "`across`: left and right change places; `through`: front and back; `turned`: both.",
    );
    let on = t.maybe(
        "goes-on-as",
        &Count(bound::ROLE_LEGS),
        "The leg, counted from 1, that it is in the next repeat; all round: 1 itself, 2 the next.",
    );
    let legs = t.maybe("legs", &Count(bound::ROLE_LEGS), "Legs of the knot that it is: 2 for a folded cord.");
    let round = t.maybe("all-round", &Flag, "Whether each working leg has one like it, evenly round the core.");
    let line = match (points, like) {
        (Some(points), None) => points_line(t, &points),
        (None, Some(like)) => Some(LineSource::Like {
            // Nought is told below as a leg that is not there.
            leg: (like.value as usize).wrapping_sub(1),
            turned: turned.map_or(0.0, |turned| turned.value),
            flip: mirrored.map(|mirrored| mirrored.value),
        }),
        _ => {
            t.refuse(
                "a leg of a path needs `points` or `like`",
                "one of the two",
                "draw it as points = [[x, y, z], …], or say like = 1, turned = 180",
            );
            None
        }
    };
    Some(Leg {
        line: line?,
        goes_on_as: on.map(|on| (on.value as usize).wrapping_sub(1)),
        legs: legs.map_or(1, |legs| legs.value.max(1)),
        all_round: round.is_some_and(|round| round.value),
    })
}

fn points_line(t: &Table<'_>, points: &Placed<Vec<Placed<Vec<Placed<f64>>>>>) -> Option<LineSource> {
    let point = |typed: &Placed<Vec<Placed<f64>>>| -> Option<Point> {
        let [x, y, z] = typed.value.as_slice() else {
            let title = format!("a point of {} numbers", typed.value.len());
            t.refuse_at(
                typed.span.clone(),
                title,
                "three are needed",
                "write it as [across, down, towards the viewer]",
            );
            return None;
        };
        Some([x.value, y.value, z.value])
    };
    let read: Vec<Point> = points.value.iter().filter_map(point).collect();
    if read.len() < points.value.len() {
        return None;
    }
    if read.len() < 3 {
        let title = format!("a line of {} points", read.len());
        t.refuse_at(points.span.clone(), title, "three at least", "draw where the leg comes in, turns and goes out");
        return None;
    }
    Some(LineSource::Points(read))
}

/// Legs may only be like earlier ones, and go on as legs that are there, each as another.
fn check_legs(t: &Table<'_>, legs: &[Placed<Leg>]) -> bool {
    if legs.is_empty() {
        t.refuse("a path without a leg", "at least one ties", "add [[path.leg]] with points = [[x, y, z], …]");
        return false;
    }
    let mut sound = true;
    let mut met: Vec<usize> = Vec::new();
    for (at, leg) in legs.iter().enumerate() {
        if let LineSource::Like { leg: like, .. } = leg.value.line
            && like >= at
        {
            let title = format!("leg {} of the path is like a leg that is not drawn before it", at + 1);
            t.refuse_at(leg.span.clone(), title, "", "put the leg that has points first, and count from 1");
            sound = false;
        }
        if leg.value.all_round {
            continue;
        }
        let on = leg.value.goes_on_as.unwrap_or(at);
        if on >= legs.len() || met.contains(&on) {
            let title = format!("leg {} of the path goes on as a leg that is not there or is taken", at + 1);
            t.refuse_at(leg.span.clone(), title, "", format!("from 1 to {}, each once", legs.len()));
            sound = false;
        }
        met.push(on);
    }
    sound
}
