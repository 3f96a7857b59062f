//! What changes do to a sum, as bars to both sides of a middle line.

use super::fills::{Fills, SLANTED, SOLID};
use super::sheet::{Anchor, BAR, BAR_TOP, BASELINE, ROW, WIDE, bar, drawing, figure, line, sound, text, width};

const MIDDLE: f64 = WIDE / 2.0;
/// The longest bar: half the sheet, but for half an outline.
const LONGEST: f64 = MIDDLE - 0.5;
/// Between a label and the words at the other end of its line.
const GAP: f64 = 8.0;

/// What a change does, and what its opposite does.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct EffectBar {
    /// What is changed.
    pub label: String,
    /// What is gained by the change and by its opposite, or lost if below zero.
    pub changes: [f64; 2],
    /// The same in words.
    pub words: String,
}

/// Draws a bar or two for each row, all to one scale: what is lost to the left, hatched, and what is gained to the right,
/// solid. The words stand at the end of the label's line.
pub fn effects(title: &str, rows: &[EffectBar]) -> String {
    let most = rows.iter().flat_map(|row| row.changes).map(|change| sound(change).abs()).fold(0.0, f64::max);
    let fills = Fills::of("effects", title);
    let mut patterns = fills.patterns([SLANTED]);
    let mut inside = String::new();
    for row in rows {
        let share = |change: f64| if most > 0.0 { sound(change) / most } else { 0.0 };
        // The first drawing holds the pattern of all.
        let drawn = std::mem::take(&mut patterns) + &drawn(row, &fills, row.changes.map(share));
        inside.push_str(&drawing(&format!("{}: {}", row.label, row.words), ROW, &drawn));
    }
    figure(title, &inside)
}

fn drawn(row: &EffectBar, fills: &Fills, shares: [f64; 2]) -> String {
    let room = (WIDE - width(&row.words) - GAP).max(0.0);
    let mut svg = text(Anchor::Start, [0.0, BASELINE], &row.label, room);
    svg.push_str(&text(Anchor::End, [WIDE, BASELINE], &row.words, WIDE));
    for share in shares {
        let end = MIDDLE + share * LONGEST;
        if share < 0.0 {
            svg.push_str(&bar(&fills.fill(SLANTED), (end, MIDDLE), BAR_TOP, ""));
        } else if share > 0.0 {
            svg.push_str(&bar(&fills.fill(SOLID), (MIDDLE, end), BAR_TOP, ""));
        }
    }
    svg + &line("tick", [MIDDLE, BAR_TOP - 2.5], [MIDDLE, BAR_TOP + BAR + 2.5])
}
