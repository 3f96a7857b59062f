//! Values that may be worked out: a sum over the measures of a design in place of a figure, a text with sums in braces,
//! three figures in place of one.

use reeve_measure::{Bound, Length, bound};
use rust_decimal::prelude::ToPrimitive;
use serde_json::{Value, json};

use crate::arithmetic::{self, SumError};
use crate::figure::Figure;
use crate::kinds::{Cell, Count, Kind, Lengths, Number, NumberOrLength, Text};
use crate::table::{Table, planned, read_table};

impl Cell<'_> {
    /// Refuses a sum at the spot in it that is wrong.
    fn refuse_within<T>(&self, text: &str, slip: SumError) -> Option<T> {
        // A text with escapes in it stands otherwise in the file than it reads.
        if slip.unknown && self.desk.measures().incomplete {
            return None;
        }
        let at = self.desk.source().text.get(self.span.clone()).and_then(|typed| typed.find(text));
        let spot = at.map(|at| self.span.start + at + slip.span.start..self.span.start + at + slip.span.end);
        self.desk.refuse(spot.unwrap_or_else(|| self.span.clone()), slip.title, slip.label, slip.help);
        None
    }

    /// Refuses what a sum comes to.
    fn wrong_sum<T>(&self, figure: Figure, limit: &str, help: &str) -> Option<T> {
        self.refuse(format!("`{}` comes to {figure}", self.value.as_str().unwrap_or_default()), limit, help)
    }
}

/// A kind of value that a sum may come to.
pub trait Reckonable: Kind {
    /// The value that a sum came to; refused when it is none of this kind.
    fn of(&self, figure: Figure, cell: &Cell<'_>) -> Option<Self::Out>;
}

impl Reckonable for Count {
    fn of(&self, figure: Figure, cell: &Cell<'_>) -> Option<u32> {
        let Figure::Number(number) = figure else { return cell.wrong_sum(figure, "a whole number is needed", "") };
        let Some(whole) = arithmetic::whole(number) else {
            let help = "round it down with floor(...) or up with ceil(...)";
            return cell.wrong_sum(figure, "a whole number is needed", help);
        };
        let within = whole.to_u32().filter(|_| self.0.holds(whole));
        within.or_else(|| cell.wrong_sum(figure, &self.0.to_string(), ""))
    }
}

impl Reckonable for Number {
    fn of(&self, figure: Figure, cell: &Cell<'_>) -> Option<f64> {
        let Figure::Number(number) = figure else { return cell.wrong_sum(figure, "a plain number is needed", "") };
        if self.0.holds(number) { Some(number) } else { cell.wrong_sum(figure, &self.0.to_string(), "") }
    }
}

impl Reckonable for Lengths {
    fn of(&self, figure: Figure, cell: &Cell<'_>) -> Option<Length> {
        let Figure::Length(length) = figure else {
            return cell.wrong_sum(figure, "a length is needed", "multiply it by a length, for example by 1 cm");
        };
        if self.0.holds(length.as_mm()) { Some(length) } else { cell.wrong_sum(figure, &self.0.to_string(), "") }
    }
}

impl Reckonable for NumberOrLength {
    fn of(&self, figure: Figure, cell: &Cell<'_>) -> Option<Figure> {
        match figure {
            Figure::Number(_) => Number(bound::PARAMETER).of(figure, cell).map(Figure::Number),
            Figure::Length(_) => Lengths(bound::PARAMETER_LENGTH).of(figure, cell).map(Figure::Length),
        }
    }
}

/// A figure, or a sum over the measures of the design in quotes.
#[derive(Debug, Clone, Copy)]
pub struct Reckoned<K>(pub K);

impl<K: Reckonable> Kind for Reckoned<K> {
    type Out = K::Out;

    fn read(&self, cell: &Cell<'_>) -> Option<K::Out> {
        let measures = cell.desk.measures();
        let Some(text) = cell.value.as_str().filter(|text| arithmetic::is_sum(text, &measures)) else {
            return self.0.read(cell);
        };
        match arithmetic::reckon(text, &measures) {
            Ok(figure) => self.0.of(figure, cell),
            Err(slip) => cell.refuse_within(text, slip),
        }
    }

    fn schema(&self) -> Value {
        json!({ "anyOf": [self.0.schema(), { "type": "string", "pattern": "[a-z+*/(-]" }] })
    }
}

/// A text whose sums have been worked out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Filled {
    /// The text.
    pub text: String,
    /// Whether there were any: whether it follows the measures.
    pub follows: bool,
}

/// Words, in which sums over the measures of the design may stand in braces.
#[derive(Debug, Clone, Copy)]
pub struct FilledText;

impl Kind for FilledText {
    type Out = Filled;

    fn read(&self, cell: &Cell<'_>) -> Option<Filled> {
        let text = Text.read(cell)?;
        let filled = arithmetic::fill(&text, &cell.desk.measures());
        match filled {
            Ok(filled) => Some(Filled { follows: filled != text, text: filled }),
            Err(slip) => cell.refuse_within(&text, slip),
        }
    }

    fn schema(&self) -> Value {
        Text.schema()
    }
}

/// Three figures of one thing: the least and the most that it comes to, and what it mostly comes to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LowLikelyHigh {
    /// The least.
    pub low: f64,
    /// What it mostly is.
    pub likely: f64,
    /// The most.
    pub high: f64,
}

/// A number, or `{ low = 8, likely = 12, high = 20 }`; each within the bound.
#[derive(Debug, Clone, Copy)]
pub struct OneOrThree(pub Bound);

impl Kind for OneOrThree {
    type Out = LowLikelyHigh;

    fn read(&self, cell: &Cell<'_>) -> Option<LowLikelyHigh> {
        let Some(table) = cell.value.as_table() else {
            let one = Reckoned(Number(self.0)).read(cell)?;
            return Some(LowLikelyHigh { low: one, likely: one, high: one });
        };
        let three = read_table(table, cell.span.clone(), cell.desk, |t| self.three(t))?.value;
        if three.low <= three.likely && three.likely <= three.high {
            return Some(three);
        }
        let title = format!("{}, {} and {} do not rise", three.low, three.likely, three.high);
        cell.refuse(title, "low, likely and high", "the least first, the most last")
    }

    fn schema(&self) -> Value {
        json!({ "anyOf": [Reckoned(Number(self.0)).schema(), planned(|t| self.three(t))] })
    }
}

impl OneOrThree {
    fn three(self, t: &mut Table<'_>) -> Option<LowLikelyHigh> {
        let one = Reckoned(Number(self.0));
        let low = t.need("low", &one, "When all goes well.");
        let likely = t.need("likely", &one, "What it mostly takes.");
        let high = t.need("high", &one, "When it goes badly.");
        Some(LowLikelyHigh { low: low?.value, likely: likely?.value, high: high?.value })
    }
}
