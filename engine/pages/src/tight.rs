//! A knot as tightening found it, in words and for other programs.

use reeve_catalogue::table::{KnotFigures, TighteningRow};
use reeve_catalogue::tighten::GIVES;
use reeve_catalogue::{Knot, Setting};
use serde::Serialize;

use crate::figures::{hundredth, tenth};
use crate::knots::{RoleJson, legs_or_rod, roles_json, setting_words};
use crate::phrases::say;
use crate::words::Words;

/// A knot as tightening found it, in finished words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct TightPage {
    name: String,
    title: String,
    setting: String,
    asked: TightLine,
    lines: Vec<TightLine>,
    /// What to know of figures that don't count.
    remark: String,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct TightLine {
    give: String,
    take_up: String,
    rise: String,
    diameters: String,
}

/// A knot as tightening found it, for other programs.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct TightJson {
    /// The word designs use.
    pub name: String,
    /// Core legs in one column; null on a rod.
    pub core: Option<u32>,
    /// Thickness of the rod it is tied on, in millimetres; null round legs.
    pub rod_mm: Option<f64>,
    /// The give of the cord: 0 is hard.
    pub give: f64,
    /// Thickness of the cord, in millimetres.
    pub cord_mm: f64,
    /// What each role takes in one knot.
    pub roles: Vec<RoleJson>,
    /// How far one knot carries the work, in millimetres.
    pub rise_mm: f64,
    /// The same in cord diameters.
    pub rise_diameters: f64,
    /// Where the figures come from.
    pub source: String,
}

/// Words what tightening a knot in one setting came to.
pub fn tight_page(knot: &Knot, setting: &Setting<'_>, row: &TighteningRow, words: &Words) -> TightPage {
    let unit = knot.unit(setting);
    let line = |give: f64| {
        let KnotFigures { take_up, rise } = row.at(give);
        TightLine {
            give: if give == 0.0 { say!(words, "tight-hard") } else { words.figure(give) },
            take_up: words.millimetres(unit * take_up, 1),
            rise: words.millimetres(unit * rise, 1),
            diameters: say!(
                words,
                "tight-in-diameters",
                take_up = words.decimal(take_up, 2),
                rise = words.decimal(rise, 2)
            ),
        }
    };
    TightPage {
        name: knot.name.clone(),
        title: knot.title.clone(),
        setting: setting_words(setting, words),
        asked: line(setting.give),
        lines: GIVES.iter().map(|give| line(*give)).collect(),
        remark: remark(knot, words),
    }
}

/// Where a knot has moves they count, and its path may show it with other parameters.
fn remark(knot: &Knot, words: &Words) -> String {
    if knot.is_drawn() {
        return String::new();
    }
    let drawn_for = knot.path.iter().flat_map(|path| &path.parameters);
    let drawn_for: Vec<String> = drawn_for.map(|(name, value)| format!("{name} = {}", words.figure(*value))).collect();
    if drawn_for.is_empty() {
        return say!(words, "tight-by-moves");
    }
    say!(words, "tight-by-moves-drawn-for", parameters = drawn_for.join(", "))
}

/// What tightening a knot in one setting came to, for other programs.
pub fn tight_json(knot: &Knot, setting: &Setting<'_>, row: &TighteningRow) -> TightJson {
    let unit = knot.unit(setting);
    let KnotFigures { take_up, rise } = row.at(setting.give);
    let (take_up, rise) = (unit * take_up, unit * rise);
    let (core, rod_mm) = legs_or_rod(setting);
    TightJson {
        name: knot.name.clone(),
        core,
        rod_mm,
        give: setting.give,
        cord_mm: setting.cord.as_mm(),
        roles: roles_json(setting, take_up, rise),
        rise_mm: tenth(rise.as_mm()),
        rise_diameters: hundredth(rise / setting.cord),
        source: "tightened from its path just now".to_owned(),
    }
}
