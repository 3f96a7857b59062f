//! What must hold of everything that comes out, whoever read it.

use reeve_catalogue::{Core, GIVE_RANGE, Knot, Setting, Taken, USUAL_GIVE};
use reeve_measure::{Bound, Length};
use reeve_reading::Fault;

/// Faults beyond this are not looked at: they are made alike.
const LOOKED_AT: usize = 12;

/// Any number, or none.
pub(crate) const ANY: Bound = Bound { what: "a number", least: f64::NEG_INFINITY, most: f64::INFINITY, unit: "" };

/// Every fault says something, stands inside its file, and can be shown.
pub(crate) fn of_faults(faults: &[Fault]) {
    for fault in faults.iter().take(LOOKED_AT) {
        assert!(!fault.title.trim().is_empty(), "a fault without words: {fault:?}");
        if let Some((source, span)) = &fault.place {
            assert!(span.start <= span.end && span.end <= source.text.len(), "{span:?} lies outside: {}", fault.title);
            assert!(fault.line_and_column().is_some(), "{span:?} is no place: {}", fault.title);
        }
        // What it may not hold is tried by the target `faults`.
        fault.render(false);
    }
}

/// A text that goes to a terminal holds nothing that the terminal would obey.
///
/// A line may end in a carriage return and a line feed, and tabs may stand in it.
pub(crate) fn shown(text: &str) {
    let bad = text.replace("\r\n", "\n").chars().find(|c| is_order(*c));
    assert!(bad.is_none(), "{bad:?} reaches the terminal in {text:?}");
}

/// Control characters, and those that turn the order of what follows (Unicode 16, UAX 9, section 2).
pub(crate) fn is_order(c: char) -> bool {
    (c.is_control() && c != '\n' && c != '\t')
        || matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{200e}' | '\u{200f}' | '\u{61c}')
}

/// A page tells no figure that is none, unless the maker wrote such a word herself.
pub(crate) fn figures_of(page: &str, typed: &str) {
    let words = |text: &str| -> Vec<String> {
        let words = text.split(|c: char| !c.is_alphanumeric());
        words.map(str::to_lowercase).filter(|word| word == "nan" || word == "inf").collect()
    };
    if words(typed).is_empty() {
        assert!(words(page).is_empty(), "a figure that is none stands on a page:\n{page}");
    }
}

/// A knot takes finite lengths of nothing or more in whatever setting it can be tied, and says why where it can't.
pub(crate) fn of_knot(knot: &Knot) {
    let cord = Length::mm(4.0);
    let usual = knot.usual_core(cord);
    let rod = Core::Rod(Length::mm(25.0));
    let bar = Core::Bar(Length::mm(20.0), Length::mm(5.0));
    let legs = |count| Core::Legs { count, diameter: cord };
    for core in [usual, rod, bar, legs(knot.core.legs.0), legs(knot.core.legs.1)] {
        for working in [knot.working.legs.0, knot.working.legs.1] {
            for give in [0.0, USUAL_GIVE, GIVE_RANGE.1] {
                let setting = Setting { cord, working, core, give, parameters: &[] };
                match knot.taken(&setting) {
                    Ok(taken) => of_taken(&taken, &setting, knot),
                    Err(misfit) => assert!(!misfit.to_string().is_empty()),
                }
            }
        }
    }
}

pub(crate) fn of_taken(taken: &Taken, setting: &Setting<'_>, knot: &Knot) {
    let figures = [taken.working.as_mm(), taken.core.as_mm(), taken.rise.as_mm(), taken.base.as_s(), taken.draws];
    for figure in figures {
        assert!(figure.is_finite() && figure >= 0.0, "{} takes {taken:?} in {setting:?}", knot.name);
    }
}
