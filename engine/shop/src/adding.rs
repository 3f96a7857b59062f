//! A sample more in the text of `knots/samples.toml`, all else in it left as it is.

use chrono::NaiveDate;
use reeve_costing::hand::TimedWork;
use reeve_measure::Time;
use reeve_reading::Figure;
use toml_edit::{Array, ArrayOfTables, Datetime, DocumentMut, InlineTable, Item, Table, TomlError, Value, value};

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

/// What the order book says of finished work.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Learnt {
    /// The numbers of all its commissions, in any state: of these the book alone says what they took.
    pub numbers: Vec<String>,
    /// What those that are finished took.
    pub works: Vec<TimedWork>,
}

impl Learnt {
    /// The text of `knots/samples.toml` with the works of the book as the book has them: a work that is there already is
    /// changed in its place, one that the book no longer bears out is taken out, and others follow. All else stays as it is.
    ///
    /// # Errors
    /// The text is not TOML.
    pub(crate) fn laid_into(&self, text: &str) -> Result<String, TomlError> {
        let mut document: DocumentMut = text.parse()?;
        let ends = if text.contains("\r\n") { "\r\n" } else { "\n" };
        let mut fresh: Vec<&TimedWork> = self.works.iter().collect();
        if let Some(item) = document.get_mut("work") {
            // Works in brackets become headings, which more can follow.
            if let Ok(tables) = std::mem::take(item).into_array_of_tables() {
                *item = Item::ArrayOfTables(self.brought_up(tables, &mut fresh));
            }
        }
        if document.get("work").and_then(Item::as_array_of_tables).is_some_and(ArrayOfTables::is_empty) {
            document.remove("work");
        }
        let mut new = document.to_string();
        if !fresh.is_empty() {
            let mut behind = DocumentMut::new();
            behind.insert("work", Item::ArrayOfTables(fresh.into_iter().map(work_table).collect()));
            new = format!("{new}{}{behind}", gap_after(&new, "\n"));
        }
        let mark = if text.starts_with(MARK) && !new.starts_with(MARK) { MARK.to_string() } else { String::new() };
        Ok(format!("{mark}{}", new.replace('\n', ends)))
    }

    /// The tables that stay, with what the book says now; those found are no longer fresh.
    fn brought_up(&self, tables: ArrayOfTables, fresh: &mut Vec<&TimedWork>) -> ArrayOfTables {
        let word = |table: &Table, key: &str| table.get(key).and_then(Item::as_str).map(str::to_owned);
        let mut kept = ArrayOfTables::new();
        for mut table in tables {
            let (number, step) = (word(&table, "number").unwrap_or_default(), word(&table, "step"));
            if let Some(at) = fresh.iter().position(|work| work.is_of(&number, step.as_deref())) {
                bring_up(&mut table, &work_table(fresh.remove(at)));
                kept.push(table);
            } else if !self.numbers.contains(&number) {
                kept.push(table);
            }
        }
        kept
    }
}

/// Puts what is new in place of what was there; remarks beside it stay.
fn bring_up(table: &mut Table, new: &Table) {
    let gone: Vec<String> = table.iter().map(|(key, _)| key.to_owned()).filter(|key| !new.contains_key(key)).collect();
    for key in gone {
        table.remove(&key);
    }
    for (key, item) in new {
        let old = table.get(key).and_then(Item::as_value);
        let same = old.is_some_and(|old| Some(plain(old)) == item.as_value().map(plain));
        if same {
            continue;
        }
        let mut item = item.clone();
        if let (Some(old), Some(new)) = (old, item.as_value_mut()) {
            new.decor_mut().clone_from(old.decor());
        }
        table.insert(key, item);
    }
}

/// A value as it is meant: 5 and 5.0 are one.
fn plain(value: &Value) -> String {
    match value {
        Value::Integer(whole) => whole.value().to_string(),
        Value::Float(number) => number.value().to_string(),
        Value::String(text) => text.value().clone(),
        other => other.to_string().trim().to_owned(),
    }
}

/// Minutes to the hundredth.
fn work_table(work: &TimedWork) -> Table {
    let minutes = |time: Time| value(number((time.as_s() / 0.6).round() / 100.0));
    let mut table = Table::new();
    let mut put = |key: &str, item: Option<Item>| item.map(|item| table.insert(key, item));
    put("number", Some(value(work.number.as_str())));
    put("step", work.step.as_deref().map(value));
    put("on", work.on.map(day));
    put("knot", work.knot.as_ref().map(|knot| value(knot.name.as_str())));
    put("base", Some(minutes(work.base)));
    put("pull", Some(minutes(work.pull)));
    put("doubt", (work.doubt > 0.0).then(|| value(number((work.doubt * 1000.0).round() / 1000.0))));
    put("minutes", Some(minutes(work.took)));
    table
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

/// A mark of the order of bytes, as some editors put it at a file's start.
const MARK: char = '\u{feff}';

/// What parts a new heading from the text above it: an empty line.
fn gap_after(text: &str, ends: &str) -> String {
    let blank = format!("{ends}{ends}");
    if text.trim_start_matches(MARK).is_empty() || text.ends_with(&blank) {
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

    fn work(number: &str, step: Option<&str>, minutes: f64) -> TimedWork {
        TimedWork {
            number: number.to_owned(),
            step: step.map(str::to_owned),
            on: NaiveDate::from_ymd_opt(2026, 11, 2),
            knot: None,
            base: Time::minutes(40.123),
            pull: Time::minutes(10.0),
            doubt: 0.25,
            took: Time::minutes(minutes),
        }
    }

    fn learnt(numbers: &[&str], works: Vec<TimedWork>) -> Learnt {
        Learnt { numbers: numbers.iter().map(|number| (*number).to_owned()).collect(), works }
    }

    const WORK: &str = "[[work]]
number = \"2026-001\"
on = 2026-11-02
base = 40.12
pull = 10
doubt = 0.25
minutes = 60
";

    #[test]
    fn a_work_learnt_four_times_stands_once() {
        let learnt = learnt(&["2026-001"], vec![work("2026-001", None, 60.0)]);
        for before in
            ["", "# mine", "[[sample]]\ntied = 3 # three\n", "\u{feff}# mine\n", "# mine\r\n[[sample]]\r\ntied = 3\r\n"]
        {
            let once = learnt.laid_into(before).unwrap();
            let ends = if before.contains("\r\n") { "\r\n" } else { "\n" };
            assert!(once.starts_with(before) && once.ends_with(&WORK.replace('\n', ends)), "{once:?}");
            let mut again = once.clone();
            for _ in 0..3 {
                again = learnt.laid_into(&again).unwrap();
            }
            assert_eq!(again, once);
        }
    }

    #[test]
    fn a_work_is_brought_up_to_what_the_book_says_now() {
        let text = format!("# mine\n{}\n[[sample]]\ntied = 3\n", WORK.replace("= 60\n", "= 60 # slow\n"));
        // More was logged, or less stands.
        for (minutes, written) in [(75.5, "75.5"), (41.0, "41")] {
            let learnt = learnt(&["2026-001"], vec![work("2026-001", None, minutes)]);
            assert_eq!(learnt.laid_into(&text).unwrap(), text.replace("= 60 # slow", &format!("= {written} # slow")));
        }
        // A step in place of the whole: the whole is no longer what the book says.
        let by_step = learnt(&["2026-001"], vec![work("2026-001", Some("Tie"), 50.0)]).laid_into(&text).unwrap();
        assert_eq!(by_step.matches("[[work]]").count(), 1);
        assert!(by_step.contains("step = \"Tie\"") && by_step.contains("tied = 3") && by_step.contains("minutes = 50"));
        // Nothing stands any more; and what the book does not know of is not its affair.
        let none = learnt(&["2026-001"], Vec::new()).laid_into(&text).unwrap();
        assert!(!none.contains("work") && none.contains("tied = 3"), "{none}");
        assert_eq!(learnt(&["2026-002"], Vec::new()).laid_into(&text).unwrap(), text);
    }

    #[test]
    fn works_in_brackets_are_brought_up_too() {
        let text = "work = [{ number = \"2026-001\", base = 40.12, pull = 10, minutes = 60 }]\n";
        let new = learnt(&["2026-001"], vec![work("2026-001", None, 61.0), work("2026-002", None, 30.0)]);
        let new = new.laid_into(text).unwrap();
        let works = new.parse::<DocumentMut>().unwrap()["work"].as_array_of_tables().unwrap().len();
        assert!(works == 2 && new.contains("minutes = 61") && new.contains("2026-002"), "{new}");
    }

    #[test]
    fn what_is_not_toml_is_not_added_to() {
        assert!(new().added_to("[[sample\n").is_err());
    }
}
