//! A sample more in the text of `knots/samples.toml`, all else in it left as it is.

use chrono::NaiveDate;
use reeve_costing::hand::TimedWork;
use reeve_measure::Time;
use reeve_reading::Figure;
use toml_edit::{Array, Datetime, DocumentMut, InlineTable, Item, Table, TomlError, Value, value};

/// A sample to be written down: lengths with their units, as a maker types them. It is judged by the reader of the file.
#[derive(Debug, Clone, PartialEq)]
pub struct NewSample {
    /// The cord's name in the store.
    pub cord: String,
    /// The knot's name or other name.
    pub knot: String,
    /// Knots tied, one after the other.
    pub tied: u32,
    /// Core legs.
    pub core: Option<u32>,
    /// Thickness of a rod or ring in their place.
    pub rod: Option<String>,
    /// Working legs in one knot.
    pub working: Option<u32>,
    /// Parameters of the knot.
    pub parameters: Vec<(String, Figure)>,
    /// One working leg before tying.
    pub before: String,
    /// The same leg after tying.
    pub after: String,
    /// Length made along the core.
    pub made: String,
    /// Minutes that it took.
    pub minutes: Option<f64>,
    /// When.
    pub on: Option<NaiveDate>,
    /// A remark.
    pub note: Option<String>,
}

/// The text of `shop.toml` with another pace; a remark beside the old one stays.
pub(crate) fn with_pace(text: &str, pace: f64) -> Result<String, TomlError> {
    let mut document: DocumentMut = text.parse()?;
    let mut new = Value::from(pace);
    if let Some(old) = document.get("bench").and_then(|bench| bench.get("pace")).and_then(Item::as_value) {
        new.decor_mut().clone_from(old.decor());
    }
    document["bench"]["pace"] = Item::Value(new);
    Ok(document.to_string())
}

/// The text of `knots/samples.toml` with steps of finished work at its end. What is there already keeps every byte.
pub(crate) fn with_works(text: &str, works: &[TimedWork]) -> String {
    let minutes = |time: Time| (time.as_s() / 6.0).round() / 10.0;
    let table = |work: &TimedWork| {
        let mut table = Table::new();
        table.insert("of", value(work.of.as_str()));
        table.insert("base", value(minutes(work.base)));
        table.insert("pull", value(minutes(work.pull)));
        table.insert("minutes", value(minutes(work.took)));
        table
    };
    let mut document = DocumentMut::new();
    document.insert("work", Item::ArrayOfTables(works.iter().map(table).collect()));
    let ends = if text.contains("\r\n") { "\r\n" } else { "\n" };
    format!("{text}{}{}", gap_after(text, ends), document.to_string().replace('\n', ends))
}

impl NewSample {
    fn table(&self) -> Table {
        let mut table = Table::new();
        let mut put = |key: &str, item: Option<Item>| item.map(|item| table.insert(key, item));
        put("cord", Some(value(self.cord.as_str())));
        put("knot", Some(value(self.knot.as_str())));
        put("tied", Some(value(i64::from(self.tied))));
        put("core", self.core.map(|legs| value(i64::from(legs))));
        put("rod", self.rod.as_deref().map(value));
        put("working", self.working.map(|legs| value(i64::from(legs))));
        let parameters: InlineTable =
            self.parameters.iter().map(|(name, chosen)| (name.as_str(), figure(*chosen))).collect();
        put("parameters", (!parameters.is_empty()).then(|| value(parameters)));
        put("before", Some(value(self.before.as_str())));
        put("after", Some(value(self.after.as_str())));
        put("made", Some(value(self.made.as_str())));
        put("minutes", self.minutes.map(|minutes| value(number(minutes))));
        put("on", self.on.map(day));
        put("note", self.note.as_deref().map(value));
        table
    }

    /// The lines that it takes in a file.
    pub fn lines(&self) -> String {
        let mut document = DocumentMut::new();
        document.insert("sample", Item::ArrayOfTables([self.table()].into_iter().collect()));
        document.to_string()
    }

    /// A file's text with this sample at its end. What is there already keeps every byte.
    ///
    /// # Errors
    /// The text is not TOML.
    pub(crate) fn added_to(&self, text: &str) -> Result<String, TomlError> {
        let mut document: DocumentMut = text.parse()?;
        let ends = if text.contains("\r\n") { "\r\n" } else { "\n" };
        // Only a list in brackets has to be written anew; a heading may follow on any text.
        let Some(list) = document.get_mut("sample").and_then(Item::as_array_mut) else {
            let gap = gap_after(text, ends);
            return Ok(format!("{text}{gap}{}", self.lines().replace('\n', ends)));
        };
        push_last(list, self.table().into_inline_table().into());
        Ok(document.to_string().replace('\n', ends))
    }
}

/// Adds to a list. A remark behind its last entry stays there.
fn push_last(list: &mut Array, mut entry: Value) {
    let behind = list.trailing().as_str().unwrap_or_default().to_owned();
    if list.trailing_comma() && behind.contains('\n') {
        entry.decor_mut().set_prefix(format!("{behind}    "));
        list.set_trailing("\n");
        list.push_formatted(entry);
    } else {
        list.push(entry);
    }
}

/// What parts a new heading from the text above it: an empty line.
fn gap_after(text: &str, ends: &str) -> String {
    let blank = format!("{ends}{ends}");
    if text.trim_start_matches('\u{feff}').is_empty() || text.ends_with(&blank) {
        String::new()
    } else if text.ends_with('\n') {
        ends.to_owned()
    } else {
        blank
    }
}

/// A day as TOML writes it; one past its calendar as text, for the reader to refuse.
fn day(day: NaiveDate) -> Item {
    let text = day.to_string();
    text.parse::<Datetime>().map_or_else(|_| value(text), value)
}

/// A number as short as it can be written.
/// As a maker writes it: a number, or a length with its unit.
fn figure(figure: Figure) -> Value {
    match figure {
        Figure::Number(plain) => number(plain),
        Figure::Length(length) => format!("{} mm", length.as_mm()).into(),
    }
}

fn number(number: f64) -> Value {
    number.to_string().parse().unwrap_or_else(|_| number.into())
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use super::*;

    fn new() -> NewSample {
        NewSample {
            cord: "soft-4".to_owned(),
            knot: "square".to_owned(),
            tied: 10,
            core: None,
            rod: None,
            working: None,
            parameters: vec![("turns".to_owned(), Figure::Number(12.0))],
            before: "150 cm".to_owned(),
            after: "91 cm".to_owned(),
            made: "14 cm".to_owned(),
            minutes: Some(4.0),
            on: NaiveDate::from_ymd_opt(2026, 11, 2),
            note: Some("a \"tight\" hand".to_owned()),
        }
    }

    const LINES: &str = "[[sample]]
cord = \"soft-4\"
knot = \"square\"
tied = 10
parameters = { turns = 12 }
before = \"150 cm\"
after = \"91 cm\"
made = \"14 cm\"
minutes = 4
on = 2026-11-02
note = 'a \"tight\" hand'
";

    #[test]
    fn a_sample_is_written_as_a_maker_would() {
        assert_eq!(new().lines(), LINES);
        assert_eq!(new().added_to("").unwrap(), LINES);
    }

    #[test]
    fn what_is_there_keeps_every_byte() {
        for (text, gap) in [
            ("# Only a remark.\n", "\n"),
            ("# Only a remark.", "\n\n"),
            ("[[sample]]\ntied   =  3 # three\n\n# the last one\n", "\n"),
            ("[[sample]]\ntied = 3\n\n", ""),
            ("\u{feff}[[sample]]\ntied = 3\n", "\n"),
            ("[[sample]]\ntied = 3\n[sample.parameters]\nturns = 3", "\n\n"),
        ] {
            assert_eq!(new().added_to(text).unwrap(), format!("{text}{gap}{LINES}"));
        }
    }

    #[test]
    fn the_ends_of_lines_stay_as_they_are() {
        let text = "[[sample]]\r\ntied = 3\r\n";
        assert_eq!(new().added_to(text).unwrap(), format!("{text}\r\n{}", LINES.replace('\n', "\r\n")));
    }

    #[test]
    fn a_list_in_brackets_is_added_to_in_brackets() {
        let added = new().added_to("# mine\nsample = [\n    { tied = 3 }, # three\n]\n# the end\n").unwrap();
        assert!(added.starts_with("# mine\nsample = [\n    { tied = 3 }, # three\n"), "{added}");
        assert!(added.ends_with("# the end\n") && added.contains("cord = \"soft-4\""), "{added}");
        assert_eq!(added.parse::<DocumentMut>().unwrap()["sample"].as_array().unwrap().len(), 2);
    }

    #[test]
    fn what_is_not_toml_is_not_added_to() {
        assert!(new().added_to("[[sample\n").is_err());
    }
}
