//! A library as it describes itself, and its knots as files of the catalogue.

use std::fmt::Write;

use reeve_catalogue::{KnotKind, ParameterUnit, Source, WORKING_ROLE};
use serde::{Deserialize, Serialize};

use crate::error::LibraryError;

/// A library as it describes itself. Nothing in it has been judged but that it is text, and not too long.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Described {
    /// The word it is admitted by.
    pub name: String,
    /// Its own version.
    pub version: String,
    /// The version of the contract that it keeps.
    pub contract: (u32, u32),
    /// Its knots.
    pub knots: Vec<DescribedKnot>,
}

/// A knot as its library describes it; codes are the contract's.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[allow(
    missing_docs,
    clippy::struct_excessive_bools,
    reason = "each field is one of the contract's, with the same name"
)]
pub struct DescribedKnot {
    pub name: String,
    pub title: String,
    pub also: Vec<String>,
    pub kind: u32,
    pub summary: String,
    pub on_fitting: bool,
    pub joins: bool,
    pub core_grows: bool,
    pub give_shrinks: bool,
    pub working: (u32, u32),
    pub core: (u32, u32),
    pub take_up_source: u32,
    pub take_up_note: String,
    pub time_source: u32,
    pub time_note: String,
    pub pull_s_per_m: f64,
    pub cautions: Vec<String>,
    pub parameters: Vec<DescribedParameter>,
}

/// A parameter as its library describes it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[allow(missing_docs, reason = "each field is one of the contract's, with the same name")]
pub struct DescribedParameter {
    pub name: String,
    pub about: String,
    pub unit: u32,
    pub whole: bool,
    pub grows: bool,
    pub least: f64,
    pub most: f64,
    pub usual: f64,
}

/// The most bytes of a text in a description.
pub(crate) const MOST_TEXT: usize = 2000;
/// The most knots of a library.
pub(crate) const MOST_KNOTS: usize = 64;

impl Described {
    /// The same, if each text in it is a line that can be shown. What came through the pipe may be a library's own writing.
    pub(crate) fn checked(self) -> Result<Self, LibraryError> {
        let wrong = |what: String| Err(LibraryError::Description(what));
        if self.knots.is_empty() || self.knots.len() > MOST_KNOTS {
            return wrong(format!("a number of knots of {}, which must be from 1 to {MOST_KNOTS}", self.knots.len()));
        }
        let own = [("its name".to_owned(), &self.name), ("its version".to_owned(), &self.version)];
        for (what, text) in own.into_iter().chain(self.knots.iter().flat_map(DescribedKnot::texts)) {
            if text.len() > MOST_TEXT {
                return wrong(format!("{what} has {} bytes, and {MOST_TEXT} are allowed", text.len()));
            }
            if text.chars().any(char::is_control) {
                return wrong(format!("{what} holds a control character"));
            }
        }
        Ok(self)
    }
}

impl DescribedKnot {
    /// Every text, and what it is.
    fn texts(&self) -> Vec<(String, &String)> {
        let of = |what: &str| format!("{what} of `{}`", self.name);
        let mut texts = vec![
            ("the name of a knot".to_owned(), &self.name),
            (of("the title"), &self.title),
            (of("the summary"), &self.summary),
            (of("the note on take-up"), &self.take_up_note),
            (of("the note on time"), &self.time_note),
        ];
        texts.extend(self.also.iter().map(|text| (of("another name"), text)));
        texts.extend(self.cautions.iter().map(|text| (of("a caution"), text)));
        texts.extend(self.parameters.iter().flat_map(|parameter| {
            [(of("the name of a parameter"), &parameter.name), (of("what is said of a parameter"), &parameter.about)]
        }));
        texts
    }
}

/// The knot as a file of the catalogue, whose reader then judges it like any other.
pub fn knot_text(library: &str, knot: &DescribedKnot) -> String {
    let mut text = format!(
        "# As the library `{library}` describes it. Written by `reeve knots admit`, and again each time it is admitted.\n"
    );
    let mut line = |words: &str| {
        text.push_str(words);
        text.push('\n');
    };
    line("\n[knot]");
    line(&pair("name", &knot.name));
    line(&pair("title", &knot.title));
    line(&format!("also = {}", list(&knot.also)));
    line(&pair("kind", word(KnotKind::WORDS, knot.kind)));
    line(&pair("summary", &knot.summary));
    line(&format!("cautions = {}", list(&knot.cautions)));
    line(&format!("\n[core]\nlegs = [{}, {}]\nfitting = {}", knot.core.0, knot.core.1, knot.on_fitting));
    line(&format!(
        "runs = \"{}\"",
        if word(KnotKind::WORDS, knot.kind) == KnotKind::Row.word() { "across" } else { "down" }
    ));
    line(&format!("\n[computed]\n{}", pair("library", library)));
    line(&format!("\n[[role]]\nrole = \"{WORKING_ROLE}\"\nlegs = [{}, {}]", knot.working.0, knot.working.1));
    line(&format!("joins = {}", knot.joins));
    line(&pair("source", word(Source::OF_LIBRARIES, knot.take_up_source)));
    line(&pair("note", &knot.take_up_note));
    line(&format!("\n[time]\npull = {}", number(knot.pull_s_per_m)));
    line(&pair("source", word(Source::OF_LIBRARIES, knot.time_source)));
    line(&pair("note", &knot.time_note));
    knot.parameters.iter().for_each(|one| line(&parameter(one)));
    text
}

fn parameter(one: &DescribedParameter) -> String {
    let mut text = format!("\n[[parameter]]\n{}", pair("name", &one.name));
    let figures = [("least", one.least), ("most", one.most), ("default", one.usual)];
    for (key, value) in figures {
        // Writing into a text can't fail.
        let _ = write!(text, "\n{key} = {}", number(value));
    }
    let _ = write!(
        text,
        "\n{}\nwhole = {}\n{}",
        pair("unit", word(ParameterUnit::WORDS, one.unit)),
        one.whole,
        pair("about", &one.about)
    );
    text
}

fn pair(key: &str, value: &str) -> String {
    format!("{key} = {}", quoted(value))
}

fn quoted(value: &str) -> String {
    toml::Value::String(value.to_owned()).to_string()
}

fn list(values: &[String]) -> String {
    let values: Vec<String> = values.iter().map(|value| quoted(value)).collect();
    format!("[{}]", values.join(", "))
}

/// A number as TOML writes it; whole numbers without a point.
fn number(value: f64) -> String {
    if value.is_finite() { value.to_string() } else { toml::Value::Float(value).to_string() }
}

/// The word of a code; a code that means nothing is written as a number, which the reader then refuses.
fn word<T>(words: &'static [(&'static str, T)], code: u32) -> &'static str {
    words.get(code as usize).map_or("unknown", |(word, _)| word)
}

#[cfg(test)]
#[allow(clippy::expect_used, reason = "a test may stop at the first surprise")]
mod tests {
    use proptest::prelude::*;
    use reeve_catalogue::Catalogue;
    use reeve_reading::{SourceText as File, is_unseen};

    use super::*;

    fn described(words: &str, figures: [f64; 3]) -> DescribedKnot {
        let [least, most, usual] = figures;
        let parameter = DescribedParameter {
            name: "turns".to_owned(),
            about: words.to_owned(),
            unit: 0,
            whole: false,
            grows: false,
            least,
            most,
            usual,
        };
        DescribedKnot {
            name: "band".to_owned(),
            title: words.to_owned(),
            also: vec![words.to_owned()],
            kind: 3,
            summary: words.to_owned(),
            on_fitting: true,
            joins: true,
            core_grows: false,
            give_shrinks: false,
            working: (1, 1),
            core: (1, 24),
            take_up_source: 0,
            take_up_note: words.to_owned(),
            time_source: 3,
            time_note: words.to_owned(),
            pull_s_per_m: 1.25,
            cautions: vec![words.to_owned()],
            parameters: vec![parameter],
        }
    }

    proptest! {
        /// Whatever words a library says of itself, the file that is made of them says the same, and no more. Words with
        /// what can't be seen are refused.
        #[test]
        fn the_file_says_what_the_library_says(words in "[\\PC]{1,80}") {
            prop_assume!(!words.trim().is_empty());
            let text = knot_text("small", &described(&words, [1.0, 40.0, 8.5]));
            let mut catalogue = Catalogue::default();
            let faults = catalogue.add(&File::new("band.toml", text));
            if words.chars().any(is_unseen) {
                prop_assert!(!faults.is_empty());
                return Ok(());
            }
            prop_assert_eq!(faults.len(), 0);
            let knot = catalogue.find("band").expect("it is there");
            let words = words.trim();
            prop_assert_eq!(&knot.title, words);
            prop_assert_eq!(&knot.summary, words);
            prop_assert_eq!(&knot.working.note.words, words);
            prop_assert_eq!(&knot.cautions, &[words.to_owned()]);
            prop_assert_eq!(knot.parameters[0].default.to_bits(), 8.5_f64.to_bits());
            prop_assert_eq!(knot.computed.as_ref().map(|computed| computed.library.as_str()), Some("small"));
        }

        /// Whatever figures, the file can be read, or is refused with its faults.
        #[test]
        fn any_figures_are_read_or_refused(figures in any::<[f64; 3]>(), codes in any::<[u32; 4]>()) {
            let [kind, take_up_source, time_source, unit] = codes.map(|code| code % 8);
            let mut knot = DescribedKnot { kind, take_up_source, time_source, ..described("a band", figures) };
            knot.parameters[0].unit = unit;
            let mut catalogue = Catalogue::default();
            let faults = catalogue.add(&File::new("band.toml", knot_text("small", &knot)));
            let [least, most, usual] = figures;
            let sound = kind < 5 && take_up_source < 4 && time_source < 4 && unit < 4;
            let ranged = 0.0 <= least && least <= usual && usual <= most && most <= 1e5;
            prop_assert_eq!(faults.is_empty(), sound && ranged, "{:?} {:?}", figures, codes);
        }
    }

    /// Whatever a library writes into the pipe itself.
    #[test]
    fn forged_descriptions_are_held_to_the_contract() {
        let knot = described("fine", [1.0, 2.0, 1.0]);
        let whole = |knots: Vec<DescribedKnot>| Described {
            name: "small".to_owned(),
            version: "1".to_owned(),
            contract: (1, 0),
            knots,
        };
        assert!(whole(vec![knot.clone()]).checked().is_ok());
        assert!(whole(Vec::new()).checked().is_err());
        assert!(whole(vec![knot.clone(); MOST_KNOTS + 1]).checked().is_err());
        let steers = DescribedKnot { cautions: vec!["fine".to_owned(), "\u{1b}[2J".to_owned()], ..knot.clone() };
        assert!(whole(vec![knot.clone(), steers]).checked().is_err());
        let long = DescribedKnot { time_note: "x".repeat(MOST_TEXT + 1), ..knot };
        assert!(whole(vec![long]).checked().is_err());
    }
}
