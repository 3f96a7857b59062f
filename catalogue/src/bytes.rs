//! Knots and paths as bytes, for marks and digests.
//!
//! Each field stands in a fixed order, with its length or its kind in front of it. So two things have the same bytes only
//! if they are the same, and the bytes don't change with a name in the program, a folder or a version of the compiler.
//! A further field, or another order, is a new form: raise [`FORM`].

use crate::catalogue::Catalogue;
use crate::knot::{Coefficient, CoreRule, Knot, KnotTime, Lies, Move, Note, Rise, Role, Round, Runs, Source, SubKnot};
use crate::parameter::Parameter;
use crate::path::{Flip, Leg, LineSource, Path};
use crate::table::{TighteningRow, TighteningTable};
use crate::unit::ParameterUnit;

/// The form that the bytes are written in.
const FORM: u8 = 1;

/// Bytes, field by field.
struct Bytes(Vec<u8>);

impl Bytes {
    /// Begins with what it is the bytes of, and their form.
    fn of(what: &str) -> Self {
        let mut bytes = Self(Vec::new());
        bytes.text(what);
        bytes.0.push(FORM);
        bytes
    }

    fn count(&mut self, count: usize) {
        self.0.extend((count as u64).to_le_bytes());
    }

    fn number(&mut self, number: u32) {
        self.0.extend(number.to_le_bytes());
    }

    /// The bits of IEEE 754 double precision; the two zeros are one figure.
    fn figure(&mut self, figure: f64) {
        let figure = if figure == 0.0 { 0.0 } else { figure };
        self.0.extend(figure.to_bits().to_le_bytes());
    }

    fn yes(&mut self, yes: bool) {
        self.0.push(u8::from(yes));
    }

    fn text(&mut self, text: &str) {
        self.count(text.len());
        self.0.extend(text.as_bytes());
    }

    /// The word that a kind is written as in files.
    fn word<T: Copy + PartialEq>(&mut self, words: &[(&str, T)], kind: T) {
        let word = words.iter().find(|(_, known)| *known == kind).map_or("", |(word, _)| word);
        self.text(word);
    }

    fn maybe<T>(&mut self, thing: Option<&T>, write: impl FnOnce(&mut Self, &T)) {
        self.yes(thing.is_some());
        if let Some(thing) = thing {
            write(self, thing);
        }
    }

    fn list<T>(&mut self, things: &[T], mut write: impl FnMut(&mut Self, &T)) {
        self.count(things.len());
        for thing in things {
            write(self, thing);
        }
    }
}

impl Path {
    /// A mark of everything that is drawn: two paths with the same mark tighten alike.
    ///
    /// The 64-bit Fowler-Noll-Vo hash (FNV-1a) of the path's bytes, as sixteen hexadecimal digits.
    pub fn mark(&self) -> String {
        let mut bytes = Bytes::of("path");
        path(&mut bytes, self);
        let hash = bytes
            .0
            .iter()
            .fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| (hash ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3));
        format!("{hash:016x}")
    }
}

impl Catalogue {
    /// Every knot with all that is known of it, as bytes: two catalogues with the same bytes work out the same.
    ///
    /// Of a knot that a library works out, the library's name alone is in them, not what the library does.
    pub fn bytes(&self) -> Vec<u8> {
        let mut bytes = Bytes::of("catalogue");
        let knots: Vec<_> = self.iter().collect();
        bytes.list(&knots, |to, one| knot(to, one));
        bytes.0
    }
}

// Each of these takes its thing apart in full, so that a field more does not compile before it has its place.

fn path(to: &mut Bytes, path: &Path) {
    let Path { repeats, knots, twist, pull, second_half, legs, parameters } = path;
    to.maybe(repeats.as_ref(), |to, rise| to.figure(*rise));
    to.number(*knots);
    to.maybe(twist.as_ref(), |to, twist| to.figure(*twist));
    to.figure(*pull);
    to.maybe(second_half.as_ref(), |to, flip| to.word(Flip::WORDS, *flip));
    to.list(legs, leg);
    to.list(parameters, |to, (name, value)| {
        to.text(name);
        to.figure(*value);
    });
}

fn leg(to: &mut Bytes, leg: &Leg) {
    let Leg { line, goes_on_as, legs, all_round } = leg;
    match line {
        LineSource::Points(points) => {
            to.text("points");
            to.list(points, |to, point| point.iter().for_each(|figure| to.figure(*figure)));
        }
        LineSource::Like { leg, turned, flip } => {
            to.text("like");
            to.count(*leg);
            to.figure(*turned);
            to.maybe(flip.as_ref(), |to, flip| to.word(Flip::WORDS, *flip));
        }
    }
    to.maybe(goes_on_as.as_ref(), |to, leg| to.count(*leg));
    to.number(*legs);
    to.yes(*all_round);
}

fn knot(to: &mut Bytes, one: &Knot) {
    let Knot {
        name,
        title,
        also,
        kind,
        summary,
        core,
        together,
        working,
        carried,
        rise,
        time,
        parameters,
        path: drawn,
        table,
        parts,
        computed,
        cautions,
    } = one;
    to.text(name);
    to.text(title);
    to.list(also, |to, word| to.text(word));
    to.text(kind.word());
    to.text(summary);
    core_rule(to, core);
    to.yes(*together);
    role(to, working);
    role(to, carried);
    to.maybe(rise.as_ref(), rise_of);
    knot_time(to, time);
    to.list(parameters, parameter);
    to.maybe(drawn.as_ref(), path);
    to.maybe(table.as_deref(), table_of);
    to.list(parts, |to, part| to.text(&part.name));
    to.maybe(computed.as_ref(), |to, computed| to.text(&computed.library));
    to.list(cautions, |to, caution| to.text(caution));
}

fn core_rule(to: &mut Bytes, core: &CoreRule) {
    let CoreRule { legs, fitting, lies, runs } = core;
    range(to, *legs);
    to.yes(*fitting);
    to.word(Lies::WORDS, *lies);
    to.word(Runs::WORDS, *runs);
}

fn role(to: &mut Bytes, role: &Role) {
    let Role { legs, draws, joins, moves, note: reason } = role;
    range(to, *legs);
    to.figure(*draws);
    to.yes(*joins);
    to.list(moves, move_of);
    note(to, reason);
}

fn move_of(to: &mut Bytes, one: &Move) {
    match one {
        Move::Round { thing, turns, pitch } => {
            to.text("round");
            match thing {
                Round::Core { with } => {
                    to.text("core");
                    to.number(*with);
                }
                Round::Legs(count) => {
                    to.text("legs");
                    to.number(*count);
                }
            }
            amount(to, turns);
            to.figure(*pitch);
        }
        Move::Across(diameters) => {
            to.text("across");
            amount(to, diameters);
        }
        Move::Along(rises) => {
            to.text("along");
            amount(to, rises);
        }
        Move::Knots(named) => {
            to.text("knots");
            part(to, named);
        }
    }
}

fn rise_of(to: &mut Bytes, rise: &Rise) {
    let Rise { diameters, part: other, slant, note: reason } = rise;
    amount(to, diameters);
    to.maybe(other.as_ref(), part);
    to.maybe(slant.as_ref(), |to, name| to.text(name));
    note(to, reason);
}

fn knot_time(to: &mut Bytes, time: &KnotTime) {
    let KnotTime { base, pull, note: reason } = time;
    amount(to, base);
    to.figure(*pull);
    note(to, reason);
}

fn parameter(to: &mut Bytes, parameter: &Parameter) {
    let Parameter { name, least, most, default, about, unit, whole } = parameter;
    to.text(name);
    for figure in [least, most, default] {
        to.figure(*figure);
    }
    to.text(about);
    to.word(ParameterUnit::WORDS, *unit);
    to.yes(*whole);
}

fn table_of(to: &mut Bytes, table: &TighteningTable) {
    let TighteningTable { knot, mark, rows } = table;
    to.text(knot);
    to.text(mark);
    to.list(rows, |to, row| {
        let TighteningRow { working, core, take_up, rise } = row;
        to.number(*working);
        to.figure(*core);
        take_up.iter().chain(rise).for_each(|figure| to.figure(*figure));
    });
}

fn part(to: &mut Bytes, part: &SubKnot) {
    let SubKnot { knot, times } = part;
    to.text(knot);
    to.figure(*times);
}

fn amount(to: &mut Bytes, amount: &Coefficient) {
    let Coefficient { factor, each } = amount;
    to.figure(*factor);
    to.maybe(each.as_ref(), |to, name| to.text(name));
}

fn note(to: &mut Bytes, note: &Note) {
    let Note { source, words } = note;
    to.word(Source::WORDS, *source);
    to.text(words);
}

fn range(to: &mut Bytes, (least, most): (u32, u32)) {
    to.number(least);
    to.number(most);
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use super::*;

    fn drawn() -> Path {
        Path {
            repeats: Some(4.0),
            knots: 1,
            twist: None,
            pull: 1.0,
            second_half: Some(Flip::Across),
            legs: vec![Leg {
                line: LineSource::Points(vec![[0.0, 1.0, 2.0], [3.0, 4.0, 5.0]]),
                goes_on_as: None,
                legs: 1,
                all_round: false,
            }],
            parameters: vec![("turns".to_owned(), 3.0)],
        }
    }

    /// Written out by hand from the rule above, so that no change of the program moves the marks of makers' own tables.
    #[test]
    fn a_paths_mark_is_that_of_bytes_written_out_by_hand() {
        let mut hand = Vec::new();
        let figure = |hand: &mut Vec<u8>, figure: f64| hand.extend(figure.to_le_bytes());
        let text = |hand: &mut Vec<u8>, text: &str| {
            hand.extend((text.len() as u64).to_le_bytes());
            hand.extend(text.as_bytes());
        };
        text(&mut hand, "path");
        hand.push(1);
        hand.push(1);
        figure(&mut hand, 4.0);
        hand.extend(1_u32.to_le_bytes());
        hand.push(0);
        figure(&mut hand, 1.0);
        hand.push(1);
        text(&mut hand, "across");
        hand.extend(1_u64.to_le_bytes());
        text(&mut hand, "points");
        hand.extend(2_u64.to_le_bytes());
        for value in 0..6_u32 {
            figure(&mut hand, f64::from(value));
        }
        hand.push(0);
        hand.extend(1_u32.to_le_bytes());
        hand.push(0);
        hand.extend(1_u64.to_le_bytes());
        text(&mut hand, "turns");
        figure(&mut hand, 3.0);
        let mut bytes = Bytes::of("path");
        path(&mut bytes, &drawn());
        assert_eq!(bytes.0, hand);
    }

    #[test]
    fn whatever_is_drawn_otherwise_has_another_mark() {
        let changes: [fn(&mut Path); 12] = [
            |path| path.repeats = None,
            |path| path.repeats = Some(4.1),
            |path| path.knots = 2,
            |path| path.twist = Some(0.0),
            |path| path.pull = 0.66,
            |path| path.second_half = None,
            |path| path.second_half = Some(Flip::Through),
            |path| path.legs[0].goes_on_as = Some(0),
            |path| path.legs[0].legs = 2,
            |path| path.legs[0].all_round = true,
            |path| path.legs[0].line = LineSource::Like { leg: 0, turned: 90.0, flip: None },
            |path| path.parameters.clear(),
        ];
        let mut marks: Vec<String> = changes
            .iter()
            .map(|change| {
                let mut path = drawn();
                change(&mut path);
                path.mark()
            })
            .collect();
        marks.push(drawn().mark());
        marks.sort();
        let many = marks.len();
        marks.dedup();
        assert_eq!(marks.len(), many);
    }

    #[test]
    fn the_two_zeros_are_one_figure() {
        let mut path = drawn();
        path.legs[0].line = LineSource::Points(vec![[-0.0, 1.0, 2.0], [3.0, 4.0, 5.0]]);
        assert_eq!(path.mark(), drawn().mark());
    }

    #[test]
    fn a_catalogue_has_the_same_bytes_wherever_it_was_read_from() {
        let text = include_str!("../knots/square.toml");
        let read = |folder: &str| {
            let mut catalogue = Catalogue::default();
            let faults = catalogue.add(&reeve_reading::SourceText::new(format!("{folder}/square.toml"), text));
            assert!(faults.is_empty(), "{faults:?}");
            catalogue.bytes()
        };
        assert_eq!(read("here"), read("/somewhere/else"));
        let whole = Catalogue::embedded();
        assert_ne!(whole.bytes(), read("here"));
    }
}
