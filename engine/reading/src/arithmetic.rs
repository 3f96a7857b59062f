//! Arithmetic over the measures of a design: `knots * 2 + 4`, `drop / 2 - 3 cm`, `floor(drop / 35 mm)`.
//!
//! Figures are plain numbers or lengths, and the rules of the two are kept: lengths are added to lengths, a length
//! times a number is a length, a length by a length is a number. There are no loops and no names but the measures and
//! five functions, so working one out always ends.

use std::ops::Range;

use reeve_measure::Length;
use winnow::ascii::{digit1, space0};
use winnow::combinator::{Infix, Prefix, alt, delimited, dispatch, expression, fail, opt, peek, separated, terminated};
use winnow::error::ContextError;
use winnow::prelude::*;
use winnow::stream::LocatingSlice;
use winnow::token::{any, one_of, take_while};

use crate::figure::{Figure, LENGTH_UNITS};
use crate::nearest::nearest;

/// The measures that sums may name.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Measures {
    /// Each with its name.
    pub known: Vec<(String, Figure)>,
    /// Whether some could not be read: a name may be unknown then without being misspelt.
    pub incomplete: bool,
}

/// Longer than any sum a maker writes; it bounds how deep brackets can stand in one another.
const LONGEST: usize = 200;
/// Less than any difference that was meant; more than what sums of decimals lose.
const NOTHING: f64 = 1e-9;

/// No figure of a piece is greater; from here on hundredths get lost, and products of such figures end in no figure at all.
const MOST: f64 = 1e12;

/// What is wrong with a sum, and where in its text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct SumError {
    pub(crate) span: Range<usize>,
    pub(crate) title: String,
    pub(crate) label: String,
    pub(crate) help: String,
    /// Whether a measure is named that is not known.
    pub(crate) unknown: bool,
}

impl SumError {
    fn at(span: &Range<usize>, title: impl Into<String>, label: impl Into<String>, help: impl Into<String>) -> Self {
        Self { span: span.clone(), title: title.into(), label: label.into(), help: help.into(), unknown: false }
    }
}

/// Functions, with how many figures each takes.
const FUNCTIONS: &[(&str, Function)] = &[
    ("floor", Function::Floor),
    ("ceil", Function::Ceil),
    ("round", Function::Round),
    ("min", Function::Min),
    ("max", Function::Max),
];

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Function {
    Floor,
    Ceil,
    Round,
    Min,
    Max,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Op {
    Add,
    Subtract,
    Multiply,
    Divide,
}

#[derive(Debug, Clone)]
struct Node {
    term: Term,
    span: Range<usize>,
}

#[derive(Debug, Clone)]
enum Term {
    Figure(Figure),
    Measure(String),
    Negative(Box<Node>),
    Pair(Op, Box<(Node, Node)>),
    Call(String, Vec<Node>),
}

/// Whether a text is a sum and not a plain figure with its unit.
pub(crate) fn is_sum(text: &str, measures: &Measures) -> bool {
    let text = text.trim();
    let named =
        text.starts_with(|c: char| c.is_ascii_lowercase()) && (measures.incomplete || !measures.known.is_empty());
    named || text.contains(['+', '*', '/', '(']) || text.get(1..).is_some_and(|rest| rest.contains('-'))
}

/// Whether a measure can be called so: a small letter, then small letters, digits and `_`; no unit and no function.
pub fn is_measure_name(text: &str) -> bool {
    let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_';
    let taken = LENGTH_UNITS.iter().any(|(unit, _)| *unit == text) || FUNCTIONS.iter().any(|(name, _)| *name == text);
    text.starts_with(|c: char| c.is_ascii_lowercase()) && text.chars().all(plain) && text.len() <= 30 && !taken
}

/// Works a sum out.
pub(crate) fn reckon(text: &str, measures: &Measures) -> Result<Figure, SumError> {
    if text.len() > LONGEST {
        let title = format!("a sum of {} characters", text.len());
        return Err(SumError::at(&(0..text.len()), title, format!("at most {LONGEST}"), "split it over two measures"));
    }
    let node =
        terminated(sum, space0).parse(LocatingSlice::new(text)).map_err(|error| unreadable(text, error.offset()))?;
    worth(&node, measures)
}

fn unreadable(text: &str, at: usize) -> SumError {
    let rest = text.get(at..).unwrap_or_default();
    let (start, word) = (at + rest.len() - rest.trim_start().len(), rest.trim());
    let title = format!("`{text}` can't be worked out");
    let help = "figures, measures, + - * / and brackets, for example \"drop / 2 - 3 cm\"";
    match word.chars().next() {
        Some(first) => SumError::at(&(start..start + first.len_utf8()), title, "not understood from here on", help),
        None => SumError::at(&(0..text.len()), title, "something is missing at its end", help),
    }
}

type TokenInput<'a> = LocatingSlice<&'a str>;

fn sum(input: &mut TokenInput<'_>) -> Result<Node, ContextError> {
    let negative = dispatch! {any;
        '-' => Prefix(9, |_: &mut _, a: Node| {
            let span = a.span.start.saturating_sub(1)..a.span.end;
            Ok(Node { term: Term::Negative(Box::new(a)), span })
        }),
        _ => fail,
    };
    let pairs = dispatch! {any;
        '+' => Infix::Left(5, |_: &mut _, a, b| Ok(pair(Op::Add, a, b))),
        '-' => Infix::Left(5, |_: &mut _, a, b| Ok(pair(Op::Subtract, a, b))),
        '*' => Infix::Left(7, |_: &mut _, a, b| Ok(pair(Op::Multiply, a, b))),
        '/' => Infix::Left(7, |_: &mut _, a, b| Ok(pair(Op::Divide, a, b))),
        _ => fail,
    };
    expression(delimited(space0, operand, space0)).prefix(negative).infix(pairs).parse_next(input)
}

fn pair(op: Op, a: Node, b: Node) -> Node {
    let span = a.span.start..b.span.end;
    Node { term: Term::Pair(op, Box::new((a, b))), span }
}

fn operand(input: &mut TokenInput<'_>) -> Result<Node, ContextError> {
    let (term, span) = alt((figure, named, bracketed)).with_span().parse_next(input)?;
    Ok(Node { term, span })
}

fn bracketed(input: &mut TokenInput<'_>) -> Result<Term, ContextError> {
    delimited('(', sum, ')').map(|node: Node| node.term).parse_next(input)
}

/// A number, with a unit if it is a length: `12`, `3.5 cm`.
fn figure(input: &mut TokenInput<'_>) -> Result<Term, ContextError> {
    let number = (digit1, opt(('.', digit1))).take().try_map(str::parse::<f64>).parse_next(input)?;
    let unit = take_while(1.., |c: char| c.is_ascii_lowercase())
        .verify_map(|word: &str| LENGTH_UNITS.iter().find(|(unit, _)| *unit == word).map(|(_, factor)| *factor));
    let unit: Option<f64> = opt((space0, unit).map(|(_, factor)| factor)).parse_next(input)?;
    Ok(Term::Figure(unit.map_or(Figure::Number(number), |factor| Figure::Length(Length::mm(number * factor)))))
}

/// A measure, or a function with its figures in brackets.
fn named(input: &mut TokenInput<'_>) -> Result<Term, ContextError> {
    let word = (one_of('a'..='z'), take_while(0.., |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_'));
    let word = word.take().map(str::to_owned).parse_next(input)?;
    let called: Option<char> = opt(peek((space0, '(').map(|(_, bracket)| bracket))).parse_next(input)?;
    if called.is_none() {
        return Ok(Term::Measure(word));
    }
    let figures = separated(1.., sum, ',');
    (space0, '(', figures, ')').map(|(_, _, figures, _)| Term::Call(word.clone(), figures)).parse_next(input)
}

/// What it comes to; every part of it is a figure that can be.
fn worth(node: &Node, measures: &Measures) -> Result<Figure, SumError> {
    let figure = reckoned(node, measures)?;
    if figure.plain().abs() <= MOST {
        return Ok(figure);
    }
    let help = "look for a slip, such as two measures multiplied that were meant to be added";
    Err(SumError::at(&node.span, "this comes to more than any piece needs", format!("at most {MOST}"), help))
}

fn reckoned(node: &Node, measures: &Measures) -> Result<Figure, SumError> {
    match &node.term {
        Term::Figure(figure) => Ok(*figure),
        Term::Measure(name) => measure(name, &node.span, measures),
        Term::Negative(of) => worth(of, measures).map(|figure| figure.times(-1.0)),
        Term::Pair(op, both) => {
            let (a, b) = (worth(&both.0, measures)?, worth(&both.1, measures)?);
            together(*op, a, b, &node.span)
        }
        Term::Call(name, figures) => call(name, figures, &node.span, measures),
    }
}

fn measure(name: &str, span: &Range<usize>, measures: &Measures) -> Result<Figure, SumError> {
    if let Some((_, figure)) = measures.known.iter().find(|(known, _)| known == name) {
        return Ok(*figure);
    }
    let known: Vec<&str> = measures.known.iter().map(|(name, _)| name.as_str()).collect();
    let near = nearest(name, known.iter().copied()).map(|near| format!("did you mean `{near}`?"));
    let help = if known.is_empty() {
        "the design has no [measures]".to_owned()
    } else {
        format!("measures of this design: {}", known.join(", "))
    };
    let slip = SumError::at(span, format!("no measure is called `{name}`"), near.unwrap_or_default(), help);
    Err(SumError { unknown: true, ..slip })
}

fn together(op: Op, a: Figure, b: Figure, span: &Range<usize>) -> Result<Figure, SumError> {
    use Figure::{Length, Number};
    let mixed = |verb: &str| {
        let title = format!("{a} and {b} can't be {verb}");
        SumError::at(span, title, "a length and a plain number", "give both a unit, or neither")
    };
    match (op, a, b) {
        (Op::Add, Number(a), Number(b)) => Ok(Number(a + b)),
        (Op::Add, Length(a), Length(b)) => Ok(Length(a + b)),
        (Op::Add, ..) => Err(mixed("added")),
        (Op::Subtract, Number(a), Number(b)) => Ok(Number(a - b)),
        (Op::Subtract, Length(a), Length(b)) => Ok(Length(a - b)),
        (Op::Subtract, ..) => Err(mixed("subtracted")),
        (Op::Multiply, figure, Number(by)) | (Op::Multiply, Number(by), figure) => Ok(figure.times(by)),
        (Op::Multiply, ..) => {
            Err(SumError::at(span, format!("{a} times {b} is an area"), "one of the two must be a plain number", ""))
        }
        (Op::Divide, _, b) if b.plain().abs() < NOTHING => {
            Err(SumError::at(span, format!("{a} can't be divided by {b}"), "nothing goes into it", ""))
        }
        (Op::Divide, figure, Number(by)) => Ok(figure.times(1.0 / by)),
        (Op::Divide, Length(a), Length(b)) => Ok(Number(a.as_mm() / b.as_mm())),
        (Op::Divide, Number(_), Length(_)) => {
            Err(SumError::at(span, format!("{a} can't be divided by {b}"), "a plain number by a length", ""))
        }
    }
}

fn call(name: &str, figures: &[Node], span: &Range<usize>, measures: &Measures) -> Result<Figure, SumError> {
    let names = || FUNCTIONS.iter().map(|(name, _)| *name);
    let Some((_, function)) = FUNCTIONS.iter().find(|(known, _)| *known == name) else {
        let near = nearest(name, names()).map(|near| format!("did you mean `{near}`?"));
        let help = format!("functions: {}", names().collect::<Vec<_>>().join(", "));
        let place = span.start..span.start + name.len();
        return Err(SumError::at(&place, format!("no function is called `{name}`"), near.unwrap_or_default(), help));
    };
    let worths = figures.iter().map(|figure| worth(figure, measures)).collect::<Result<Vec<_>, _>>()?;
    match (function, worths.as_slice()) {
        (Function::Floor, [Figure::Number(number)]) => Ok(Figure::Number((number + NOTHING).floor())),
        (Function::Ceil, [Figure::Number(number)]) => Ok(Figure::Number((number - NOTHING).ceil())),
        (Function::Round, [Figure::Number(number)]) => Ok(Figure::Number((number + NOTHING).round())),
        (Function::Min | Function::Max, [first, others @ ..]) if others.iter().all(|other| other.is_like(first)) => {
            let least = *function == Function::Min;
            let better = |a: Figure, b: &Figure| if (b.plain() < a.plain()) == least { *b } else { a };
            Ok(others.iter().fold(*first, better))
        }
        (Function::Min | Function::Max, _) => {
            Err(SumError::at(span, format!("`{name}` is given lengths and plain numbers"), "all of one sort", ""))
        }
        _ => {
            let help = "divide a length by a length first, for example floor(drop / 35 mm)";
            Err(SumError::at(span, format!("`{name}` takes one plain number"), "", help))
        }
    }
}

/// A whole number within a hair, as sums of decimals come out.
pub(crate) fn whole(number: f64) -> Option<f64> {
    let nearest = number.round();
    ((number - nearest).abs() < NOTHING).then_some(nearest)
}

/// A text with each sum in braces worked out: `about {drop + 12 cm} long`.
pub(crate) fn fill(text: &str, measures: &Measures) -> Result<String, SumError> {
    let mut filled = String::new();
    let mut at = 0;
    while let Some(open) = text[at..].find('{').map(|found| at + found) {
        let Some(close) = text[open..].find('}').map(|found| open + found) else {
            return Err(SumError::at(
                &(open..open + 1),
                "a brace is not closed",
                "",
                "write a measure between { and }",
            ));
        };
        let inner = open + 1..close;
        let shift =
            |slip: SumError| SumError { span: slip.span.start + inner.start..slip.span.end + inner.start, ..slip };
        let figure = reckon(&text[inner.clone()], measures).map_err(shift)?;
        filled.push_str(&text[at..open]);
        filled.push_str(&figure.to_string());
        at = close + 1;
    }
    filled.push_str(&text[at..]);
    Ok(filled)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn measures() -> Measures {
        let known = [("knots", Figure::Number(12.0)), ("drop", Figure::Length(Length::cm(95.0)))];
        Measures { known: known.map(|(name, figure)| (name.to_owned(), figure)).to_vec(), incomplete: false }
    }

    fn shown(text: &str) -> String {
        match reckon(text, &measures()) {
            Ok(figure) => figure.to_string(),
            Err(slip) => format!("{}: {}", &text[slip.span.clone()], slip.title),
        }
    }

    #[test]
    fn sums_are_worked_out() {
        for (text, worth) in [
            ("knots + 2", "14"),
            ("2 + 3 * 4", "14"),
            ("(2 + 3) * 4", "20"),
            ("10 - 3 - 2", "5"),
            ("-3 + knots", "9"),
            ("24 / 4 / 2", "3"),
            ("drop / 2 - 3 cm", "44.5 cm"),
            ("drop/2-3cm", "44.5 cm"),
            ("2 * drop", "190 cm"),
            ("floor(drop / 35 mm)", "27"),
            ("ceil(drop / 35 mm)", "28"),
            ("round( 7 / 2 )", "4"),
            ("max(drop, 1 m, 12 in)", "100 cm"),
            ("min(knots, 5)", "5"),
            ("1.05 m / 35 mm", "30"),
            ("1 in / 2", "12.7 mm"),
        ] {
            assert_eq!(shown(text), worth, "{text}");
        }
    }

    #[test]
    fn slips_are_told_at_their_spot() {
        for (text, told) in [
            ("knots + knto", "knto: no measure is called `knto`"),
            ("2 + (drop + knots) * 2", "(drop + knots): 95 cm and 12 can't be added"),
            ("drop * drop", "drop * drop: 95 cm times 95 cm is an area"),
            ("knots / (3 - 3)", "knots / (3 - 3): 12 can't be divided by 0"),
            ("knots / drop", "knots / drop: 12 can't be divided by 95 cm"),
            ("flor(knots)", "flor: no function is called `flor`"),
            ("floor(drop)", "floor(drop): `floor` takes one plain number"),
            ("min(drop, 2)", "min(drop, 2): `min` is given lengths and plain numbers"),
            ("2 + knots * 99999999999", "knots * 99999999999: this comes to more than any piece needs"),
            ("knots ? 2", "?: `knots ? 2` can't be worked out"),
            ("knots + ", "knots + : `knots + ` can't be worked out"),
        ] {
            assert_eq!(shown(text), told, "{text}");
        }
    }

    #[test]
    fn a_sum_never_comes_to_what_is_no_figure() {
        // Beyond the greatest number there is, and beyond what can be worded in hundredths.
        let (power, near) = (["w"; 90].join("*"), ["w"; 61].join("*"));
        let measures = Measures { known: vec![("w".to_owned(), Figure::Number(1e5))], incomplete: false };
        for text in
            [power.clone(), format!("-{power}"), format!("0 * ({power})"), format!("{near} * 900"), "9".repeat(200)]
        {
            assert!(reckon(&text, &measures).is_err(), "{text}");
            assert!(fill(&format!("{{{text}}}"), &measures).is_err(), "{text}");
        }
    }

    #[test]
    fn texts_are_filled() {
        assert_eq!(fill("about {drop + 12 cm} long", &measures()).unwrap(), "about 107 cm long");
        assert_eq!(fill("no braces", &measures()).unwrap(), "no braces");
        let slip = fill("about {dorp} long", &measures()).unwrap_err();
        assert_eq!(slip.span, 7..11);
        assert!(fill("about {drop", &measures()).is_err());
    }

    proptest! {
        #[test]
        fn no_text_panics(text in "\\PC{0,60}") {
            let _ = reckon(&text, &measures());
            let _ = fill(&text, &measures());
        }

        #[test]
        fn no_sum_panics(text in "[a-z0-9+*/(), .{}-]{0,120}") {
            if let Err(slip) = reckon(&text, &measures()) {
                prop_assert!(text.get(slip.span).is_some());
            }
            let _ = fill(&text, &measures());
        }

        #[test]
        fn sums_are_those_of_arithmetic(a in 1_u32..999, b in 1_u32..999, c in 1_u32..99) {
            let found = reckon(&format!("{a} + {b} * ({c} - 1) / 2 - {a}"), &Measures::default()).unwrap();
            let expected = f64::from(b) * f64::from(c - 1) / 2.0;
            prop_assert!((found.plain() - expected).abs() < 1e-9);
        }
    }
}
