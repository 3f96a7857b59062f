//! A library as it describes itself, and its knots as files of the catalogue.

use std::fmt::Write;

use reeve_catalogue::{Kind, Source, Unit, WORKING_ROLE};
use serde::{Deserialize, Serialize};

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
    line(&pair("kind", word(Kind::WORDS, knot.kind)));
    line(&pair("summary", &knot.summary));
    line(&format!("cautions = {}", list(&knot.cautions)));
    line(&format!("\n[core]\nlegs = [{}, {}]\nfitting = {}", knot.core.0, knot.core.1, knot.on_fitting));
    line(&format!("runs = \"{}\"", if word(Kind::WORDS, knot.kind) == Kind::Row.word() { "across" } else { "down" }));
    line(&format!("\n[computed]\n{}", pair("library", library)));
    line(&format!("\n[[role]]\nrole = \"{WORKING_ROLE}\"\nlegs = [{}, {}]", knot.working.0, knot.working.1));
    line(&format!("joins = {}", knot.joins));
    line(&pair("source", word(Source::WORDS, knot.take_up_source)));
    line(&pair("note", &knot.take_up_note));
    line(&format!("\n[time]\npull = {}", number(knot.pull_s_per_m)));
    line(&pair("source", word(Source::WORDS, knot.time_source)));
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
        pair("unit", word(Unit::WORDS, one.unit)),
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
