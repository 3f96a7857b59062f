//! Two figures of each design against one another.

use std::fmt::Write;

use reeve_measure::count;

use super::numerals::{DOT, Stands, numbered, placed};
use super::sheet::{Anchor, SheetPoint, WIDE, drawing, figure, line, sound, text, width};
use crate::drawing::{escaped, tenth};

/// Height of the field for few spots, what each adds, and the most it may come to.
const HEIGHT: (f64, f64, f64) = (170.0, 4.0, 360.0);
/// From the top of the sheet to the field, and from the field to the foot of the sheet.
const TOP: f64 = 23.0;
const FOOT: f64 = 37.0;
/// The widest that words beside the upright axis may be.
const BESIDE: f64 = 110.0;
/// Half the height of a numeral.
const HALF: f64 = 5.0;

/// An axis: what is measured along it, and the numbers that are marked, with their words, rising.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Axis {
    /// What is measured, and its unit.
    pub label: String,
    /// The numbers marked, such as those of [`super::ticks`], each with its words.
    pub ticks: Vec<(f64, String)>,
}

/// A design, and where it stands.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Spot {
    /// Its name.
    pub label: String,
    /// Its place along the level axis.
    pub x: f64,
    /// Its place along the upright axis.
    pub y: f64,
}

/// Draws a numbered dot for each spot, hollow where y is below zero, and beneath a list of their names in the same
/// order.
pub fn spots(title: &str, x_axis: &Axis, y_axis: &Axis, spots: &[Spot]) -> String {
    let field = Field::of(x_axis, y_axis, spots);
    let mut inside = field.feet(x_axis) + &field.rules(y_axis);
    inside.push_str(&text(Anchor::Start, [0.0, 10.5], &y_axis.label, WIDE));
    inside.push_str(&text(Anchor::End, [WIDE, field.bottom + 31.0], &x_axis.label, WIDE));
    inside.push_str(&field.dots(spots));
    figure(title, &(drawing(title, field.bottom + FOOT, &inside) + &names(spots)))
}

fn names(spots: &[Spot]) -> String {
    if spots.is_empty() {
        return String::new();
    }
    let mut list = "<ol>\n".to_owned();
    for spot in spots {
        let _ = writeln!(list, "<li>{}</li>", escaped(&spot.label));
    }
    list + "</ol>\n"
}

/// The numbers that an axis spans.
#[derive(Debug, Clone, Copy)]
struct Span {
    least: f64,
    most: f64,
}

impl Span {
    fn of(values: impl Iterator<Item = f64>) -> Self {
        let ends = |(least, most): (f64, f64), value: f64| (least.min(value), most.max(value));
        let (least, most) = values.filter(|value| value.is_finite()).fold((f64::INFINITY, f64::NEG_INFINITY), ends);
        if least < most {
            return Self { least, most };
        }
        let middle = sound(least);
        Self { least: middle - 1.0, most: middle + 1.0 }
    }

    /// A number's share of the way from the least to the most.
    fn share(self, value: f64) -> f64 {
        // Halved, so that not even the largest numbers overflow.
        (value / 2.0 - self.least / 2.0) / (self.most / 2.0 - self.least / 2.0)
    }
}

/// The field that the spots lie in.
struct Field {
    left: f64,
    right: f64,
    bottom: f64,
    x: Span,
    y: Span,
}

impl Field {
    fn of(x_axis: &Axis, y_axis: &Axis, spots: &[Spot]) -> Self {
        let (least, each, most) = HEIGHT;
        let marked = |axis: &Axis| axis.ticks.iter().map(|(value, _)| *value).collect::<Vec<_>>();
        let widest = y_axis.ticks.iter().map(|(_, words)| width(words)).fold(0.0, f64::max).min(BESIDE);
        let last = x_axis.ticks.last().map_or(0.0, |(_, words)| width(words)).min(BESIDE);
        Self {
            left: widest + 7.0,
            right: WIDE - (last / 2.0).max(DOT + 1.0),
            bottom: TOP + (least + each * count(spots.len().saturating_sub(9) as u64)).min(most),
            x: Span::of(marked(x_axis).into_iter().chain(spots.iter().map(|spot| spot.x))),
            y: Span::of(marked(y_axis).into_iter().chain(spots.iter().map(|spot| spot.y))),
        }
    }

    fn x(&self, value: f64) -> f64 {
        self.left + (self.right - self.left) * self.x.share(sound(value)).clamp(0.0, 1.0)
    }

    fn y(&self, value: f64) -> f64 {
        self.bottom - (self.bottom - TOP) * self.y.share(sound(value)).clamp(0.0, 1.0)
    }

    /// A level rule for each number marked, and a stronger one at zero.
    fn rules(&self, axis: &Axis) -> String {
        let rule = |class, y| line(class, [self.left, y], [self.right, y]);
        let mut svg = String::new();
        let mut free = f64::INFINITY;
        for (value, words) in &axis.ticks {
            let y = self.y(*value);
            svg.push_str(&rule("rule", y));
            if y + 13.0 <= free {
                svg.push_str(&text(Anchor::End, [self.left - 7.0, y + 3.6], words, BESIDE));
                free = y;
            }
        }
        if self.y.least <= 0.0 && self.y.most >= 0.0 {
            svg.push_str(&rule("tick", self.y(0.0)));
        }
        svg
    }

    /// A short mark for each number on the level axis, and its words where they don't run into those before.
    fn feet(&self, axis: &Axis) -> String {
        let mut svg = line("rule", [self.left, self.bottom], [self.right, self.bottom]);
        let mut free = 0.0;
        for (value, words) in &axis.ticks {
            let (x, half) = (self.x(*value), width(words).min(BESIDE) / 2.0);
            svg.push_str(&line("foot", [x, self.bottom], [x, self.bottom + 4.0]));
            if x - half >= free && x + half <= WIDE + 0.1 {
                svg.push_str(&text(Anchor::Middle, [x, self.bottom + 15.5], words, BESIDE));
                free = x + half + 6.0;
            }
        }
        svg
    }

    fn dots(&self, spots: &[Spot]) -> String {
        let dots: Vec<SheetPoint> = spots.iter().map(|spot| [self.x(spot.x), self.y(spot.y)]).collect();
        let numerals = numbered(&dots);
        let half = |numeral: &(SheetPoint, String)| (numeral.0, [width(&numeral.1) / 2.0 + 0.8, HALF]);
        let halves: Vec<(SheetPoint, SheetPoint)> = numerals.iter().map(half).collect();
        let placed = placed(&halves, [self.left - 4.0, TOP - 10.0, WIDE, self.bottom]);
        let leader = |stands: &Stands| stands.leader.map(|(from, to)| line("leader", from, to));
        let mut svg: String = placed.iter().filter_map(leader).collect();
        for (at, (spot, dot)) in spots.iter().zip(dots).enumerate() {
            svg.push_str(&circle(spot, dot, &format!("{} {}", at + 1, spot.label)));
        }
        for (stands, (_, words)) in placed.iter().zip(&numerals) {
            let [x, y] = stands.centre;
            svg.push_str(&text(Anchor::Middle, [x, y + 3.6], words, WIDE));
        }
        svg
    }
}

fn circle(spot: &Spot, [x, y]: SheetPoint, words: &str) -> String {
    let class = if spot.y < 0.0 { "piece open" } else { "piece solid" };
    let (x, y, radius, words) = (tenth(x), tenth(y), tenth(DOT), escaped(words));
    format!("<circle class=\"{class}\" cx=\"{x}\" cy=\"{y}\" r=\"{radius}\"><title>{words}</title></circle>\n")
}
