//! What changes do to a sum, as bars to both sides of a middle line.

use super::fills::{Fills, SLANTED, SOLID};
use super::sheet::{Anchor, BAR, BAR_TOP, BASELINE, ROW, WIDE, bar, drawing, figure, line, sound, text};

const MIDDLE: f64 = WIDE / 2.0;
/// The longest bar: half the sheet, but for half an outline.
const LONGEST: f64 = MIDDLE - 0.5;
/// Between the middle line and the words.
const GAP: f64 = 6.0;

/// What a change does.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Effect {
    /// What is changed, and how.
    pub label: String,
    /// What is gained by it, or lost if below zero.
    pub change: f64,
    /// The same in words.
    pub words: String,
}

/// Draws a bar for each row, all to one scale: what is lost to the left, hatched, and what is gained to the right,
/// solid. The words of each stand on the other side of the middle line, where no bar is.
pub fn effects(title: &str, rows: &[Effect]) -> String {
    let most = rows.iter().map(|row| sound(row.change).abs()).fold(0.0, f64::max);
    let fills = Fills::of("effects", title);
    let mut patterns = fills.patterns([SLANTED]);
    let mut inside = String::new();
    for row in rows {
        let share = if most > 0.0 { sound(row.change) / most } else { 0.0 };
        // The first drawing holds the pattern of all.
        let drawn = std::mem::take(&mut patterns) + &drawn(row, &fills, share);
        inside.push_str(&drawing(&format!("{}: {}", row.label, row.words), ROW, &drawn));
    }
    figure(title, &inside)
}

fn drawn(row: &Effect, fills: &Fills, share: f64) -> String {
    let mut svg = text(Anchor::Start, [0.0, BASELINE], &row.label, WIDE);
    let end = MIDDLE + share * LONGEST;
    if share < 0.0 {
        svg.push_str(&bar(&fills.fill(SLANTED), (end, MIDDLE), BAR_TOP, ""));
    } else if share > 0.0 {
        svg.push_str(&bar(&fills.fill(SOLID), (MIDDLE, end), BAR_TOP, ""));
    }
    svg.push_str(&line("tick", [MIDDLE, BAR_TOP - 2.5], [MIDDLE, BAR_TOP + BAR + 2.5]));
    let (anchor, x) = if share > 0.0 { (Anchor::End, MIDDLE - GAP) } else { (Anchor::Start, MIDDLE + GAP) };
    svg + &text(anchor, [x, BAR_TOP + 9.4], &row.words, MIDDLE - GAP)
}
