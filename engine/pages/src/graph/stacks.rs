//! What a whole is made up of, design by design, as bars of parts.

use super::fills::{FILLS, Fills};
use super::sheet::{
    Anchor, BAR, BAR_TOP, BASELINE, ROW, SheetPoint, WIDE, bar, drawing, figure, line, sound, text, width,
};

/// Room at either side of the sheet for half an outline.
const MARGIN: f64 = 0.5;
/// How much higher a row is that bears a mark.
const MARKED: f64 = 11.0;
/// A line of the key, and one of its swatches with the room up to its words.
const KEY_LINE: f64 = 18.0;
const SWATCH: (f64, f64) = (18.0, 23.0);

/// A bar of parts.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Stack {
    /// Whose parts they are.
    pub label: String,
    /// A length for each kind, in the kinds' order; what is below zero counts as zero.
    pub parts: Vec<f64>,
    /// What they come to.
    pub total: String,
    /// Where the price ends, from the start of the bar, if the parts go beyond it.
    pub beyond: Option<f64>,
    /// What the tick there is called.
    pub tick: String,
    /// What a reader who points at a part is told, one for each; or none.
    pub words: Vec<String>,
}

impl Stack {
    fn parts(&self) -> impl Iterator<Item = f64> {
        self.parts.iter().map(|part| sound(*part).max(0.0))
    }

    fn price(&self) -> Option<f64> {
        self.beyond.map(|at| sound(at).max(0.0))
    }

    fn whole(&self) -> f64 {
        self.parts().sum::<f64>().max(self.price().unwrap_or_default())
    }

    fn height(&self) -> f64 {
        if self.beyond.is_some() { ROW + MARKED } else { ROW }
    }
}

/// Draws a bar for each row, all to one scale, and above them a key to their parts, of which six kinds can be told
/// apart.
pub fn stacks(title: &str, kinds: &[String], rows: &[Stack]) -> String {
    let whole = rows.iter().map(Stack::whole).fold(0.0, f64::max);
    let scale = if whole > 0.0 { (WIDE - 2.0 * MARGIN) / whole } else { 0.0 };
    let fills = Fills::of("stacks", title);
    let mut inside = if kinds.is_empty() { String::new() } else { key(title, kinds, &fills) };
    for row in rows {
        let title = format!("{}: {}", row.label, row.total);
        inside.push_str(&drawing(&title, row.height(), &drawn(row, kinds, &fills, scale)));
    }
    figure(title, &inside)
}

/// The key in even columns; its drawing holds the patterns of all.
fn key(title: &str, kinds: &[String], fills: &Fills) -> String {
    let (swatch, indent) = SWATCH;
    let widest = kinds.iter().map(|kind| width(kind)).fold(0.0, f64::max);
    let wide = (indent + widest + 8.0).min(WIDE);
    let mut svg = fills.patterns(0..kinds.len().min(FILLS));
    let [mut x, mut top]: SheetPoint = [MARGIN, 1.0];
    for (fill, kind) in kinds.iter().enumerate() {
        if x > MARGIN && x + wide > WIDE + 8.0 {
            [x, top] = [MARGIN, top + KEY_LINE];
        }
        svg.push_str(&bar(&fills.fill(fill), (x, x + swatch), top, ""));
        svg.push_str(&text(Anchor::Start, [x + indent, top + 9.4], kind, WIDE - x - indent));
        x += wide;
    }
    drawing(title, top + KEY_LINE + 6.0, &svg)
}

fn drawn(row: &Stack, kinds: &[String], fills: &Fills, scale: f64) -> String {
    let room = WIDE - width(&row.total) - 10.0;
    let mut svg = text(Anchor::Start, [0.0, BASELINE], &row.label, room);
    svg.push_str(&text(Anchor::End, [WIDE, BASELINE], &row.total, WIDE));
    svg.push_str(&bar("class=\"track\"", (0.0, WIDE), BAR_TOP, ""));
    let mut from = MARGIN;
    for (at, (part, _)) in row.parts().zip(kinds).enumerate() {
        let to = from + part * scale;
        if to - from >= 0.05 {
            let words = row.words.get(at).map_or("", String::as_str);
            svg.push_str(&bar(&fills.fill(at), (from, to), BAR_TOP, words));
        }
        from = to;
    }
    if let Some(price) = row.price() {
        svg.push_str(&mark(MARGIN + price * scale, BAR_TOP, &row.tick));
    }
    svg
}

/// A tick across the bar, and its word beneath.
fn mark(x: f64, top: f64, word: &str) -> String {
    let ends = ([x, top - 2.5], [x, top + BAR + 2.5]);
    let half = width(word) / 2.0;
    let words = [x.clamp(half, WIDE - half), top + BAR + 12.5];
    line("halo", ends.0, ends.1) + &line("tick", ends.0, ends.1) + &text(Anchor::Middle, words, word, WIDE)
}
