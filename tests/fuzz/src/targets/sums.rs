//! Sums over measures, as designs hold them: they come to a finite figure, or are refused at a place inside the sum.

use reeve_measure::bound;
use reeve_reading::{
    Diagnostics, Figure, FilledText, Lengths, Measures, Number, Reckoned, SourceText, is_measure_name, read,
};
use serde_json::Value;

use crate::holds::ANY;
use crate::{Target, holds as must};

pub(super) const TARGET: Target = Target { name: "sums", holds, seeds, longest: 400, runs: 3_000 };

/// A sum, and beneath it a line for each measure.
fn holds(bytes: &[u8]) {
    let Some(text) = super::text(bytes) else { return };
    let mut lines = text.split('\n');
    let sum = lines.next().unwrap_or_default();
    let known: Vec<(String, Figure)> = lines.filter_map(measure).collect();
    let typed = quoted(sum);
    let source = SourceText::new("designs/tried.toml", format!("number = {typed}\nlength = {typed}\ntext = {typed}\n"));
    let desk = Diagnostics::new(source);
    let found = read(&desk, |t| {
        t.set_measures(Measures { known: known.clone(), incomplete: false });
        let number = t.maybe("number", &Reckoned(Number(ANY)), "A number.");
        let length = t.maybe("length", &Reckoned(Lengths(ANY)), "A length.");
        let text = t.maybe("text", &FilledText, "A text.");
        Some((number, length, text))
    });
    let faults = desk.into_faults();
    must::of_faults(&faults);
    let Some((number, length, text)) = found else { return assert!(!faults.is_empty()) };
    assert!(number.is_none() || length.is_none(), "{sum} is both a number and a length");
    if let Some(number) = number {
        assert!(number.value.is_finite(), "{sum} comes to {}", number.value);
    }
    if let Some(length) = length {
        assert!(length.value.as_mm().is_finite(), "{sum} comes to {:?}", length.value);
    }
    if let Some(text) = text {
        must::figures_of(&text.value.text, sum);
    }
}

fn measure(line: &str) -> Option<(String, Figure)> {
    let (name, figure) = line.split_once('=')?;
    // As the reader of designs has them.
    let figure = Figure::parse(figure)?;
    let within = match figure {
        Figure::Number(number) => bound::PARAMETER.holds(number),
        Figure::Length(length) => bound::PARAMETER_LENGTH.holds(length.as_mm()),
    };
    (within && is_measure_name(name)).then(|| (name.to_owned(), figure))
}

/// As TOML writes a text; it is JSON's way but for one character.
fn quoted(text: &str) -> String {
    Value::from(text).to_string().replace('\u{7f}', "\\u007f")
}

fn seeds() -> Vec<Vec<u8>> {
    let sums = [
        "knots * 2 + 4",
        "drop / 2 - 3 cm",
        "floor(drop / 35 mm)",
        "max(drop, 1 m, 12 in)",
        "min(knots, 5) - round( 7 / 2 )",
        "about {drop + 12 cm} long, {ceil(drop / knots / 1 cm)} times",
        "(2 + 3) * -4",
        "((((knots))))",
        "drop * drop",
    ];
    sums.map(|sum| format!("{sum}\nknots=12\ndrop=95 cm\nwide=100000").into_bytes()).into()
}
