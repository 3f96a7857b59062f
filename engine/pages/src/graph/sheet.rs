//! What all charts share: the sheet, its words and how much room they take.

use unicode_width::UnicodeWidthChar;

use crate::drawing::{escaped, tenth};

/// A place on the sheet, in units, from its upper left corner.
pub(super) type SheetPoint = [f64; 2];

/// Width of the sheet, in units: about as many pixels as a phone has to spare.
pub(super) const WIDE: f64 = 340.0;
/// Size of the letters, in units, where the sheet is shown at its narrowest. `graph.css` never sets them larger.
const LETTER: f64 = 12.0;
/// Height of a bar.
pub(super) const BAR: f64 = 11.0;
/// From the top of a row to the baseline of its label, and to its bar.
pub(super) const BASELINE: f64 = 10.5;
pub(super) const BAR_TOP: f64 = 15.0;
/// From the top of a row to that of the next.
pub(super) const ROW: f64 = 37.0;

/// Which end of a text stands at its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Anchor {
    Start,
    Middle,
    End,
}

impl Anchor {
    fn class(self) -> &'static str {
        match self {
            Self::Start => "",
            Self::Middle => " class=\"middle\"",
            Self::End => " class=\"end\"",
        }
    }
}

/// A number that can be drawn.
pub(super) fn sound(value: f64) -> f64 {
    if value.is_finite() { value } else { 0.0 }
}

/// A text, cut to the room there is for it.
pub(super) fn text(anchor: Anchor, [x, y]: SheetPoint, words: &str, room: f64) -> String {
    format!("<text{} x=\"{}\" y=\"{}\">{}</text>\n", anchor.class(), tenth(x), tenth(y), escaped(&cut(words, room)))
}

/// A straight line.
pub(super) fn line(class: &str, [x1, y1]: SheetPoint, [x2, y2]: SheetPoint) -> String {
    format!("<path class=\"{class}\" d=\"M{} {}L{} {}\"/>\n", tenth(x1), tenth(y1), tenth(x2), tenth(y2))
}

/// A bar from one x to another, rounded so that bars that meet share an edge; with words for who points at it.
pub(super) fn bar(fill: &str, (from, to): (f64, f64), top: f64, words: &str) -> String {
    let [from, to] = [from, to].map(|x| (x * 10.0).round() / 10.0);
    let (x, y, width, height) = (tenth(from), tenth(top), tenth(to - from), tenth(BAR));
    let place = format!("x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\"");
    if words.is_empty() {
        format!("<rect {fill} {place}/>\n")
    } else {
        format!("<rect {fill} {place}><title>{}</title></rect>\n", escaped(words))
    }
}

/// One drawing of a chart.
pub(super) fn drawing(title: &str, height: f64, inside: &str) -> String {
    format!(
        "<svg role=\"img\" viewBox=\"0 0 {} {}\"><title>{}</title>\n{inside}</svg>\n",
        tenth(WIDE),
        tenth(height),
        escaped(title)
    )
}

/// A chart on the page. Each row is a drawing of its own, so that no page of paper breaks through one.
pub(super) fn figure(title: &str, inside: &str) -> String {
    let label = escaped(title).replace('"', "&quot;");
    format!("<figure class=\"graph\" aria-label=\"{label}\">\n{inside}</figure>\n")
}

/// How wide words are at most, in units, in the widest of the page's typefaces.
pub(super) fn width(words: &str) -> f64 {
    words.chars().map(char_width).sum::<f64>() * LETTER
}

/// How wide a character is, in sizes of the letters: measured on the widest of the usual book faces.
fn char_width(c: char) -> f64 {
    match c {
        ' ' | '\u{a0}' | 'i' | 'j' | 'l' | '.' | ',' | ':' | ';' | '\'' | '|' => 0.33,
        'f' | 't' | 'r' | 'I' | 'J' | '(' | ')' | '-' | '!' | '[' | ']' | '"' => 0.48,
        'm' | 'w' | '%' | '@' | 'M' | 'W' | '—' | '…' => 1.03,
        'a'..='z' | '0'..='9' => 0.65,
        _ if c.width() == Some(0) => 0.0,
        _ if c.width() == Some(2) => 1.1,
        _ if c.is_lowercase() => 0.7,
        _ => 0.86,
    }
}

/// Words as far as there is room for them, with an ellipsis where they are cut.
pub(super) fn cut(words: &str, room: f64) -> String {
    if width(words) <= room {
        return words.to_owned();
    }
    let mut left = room - width("…");
    let fits = |c: &char| {
        left -= char_width(*c) * LETTER;
        left >= 0.0
    };
    let kept: String = words.chars().take_while(fits).collect();
    format!("{}…", kept.trim_end())
}
