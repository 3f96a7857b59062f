//! What a value may be: text, a name, a length with its unit, money, a share, a date.

use std::ops::Range;
use std::str::FromStr;

use chrono::NaiveDate;
use reeve_measure::{Bound, Length, LinearDensity, Mass, bound};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde_json::{Value, json};
use toml::de::DeValue;

use crate::diagnostics::{Diagnostics, Placed};
use crate::figure::{Figure, LENGTH_UNITS, Unit, plain_number, split_unit};
use crate::nearest::nearest;
use crate::seen::unseen_in;

/// One value of a file, with its place and the key it stands under.
#[derive(Debug)]
pub struct Cell<'a> {
    pub(crate) value: &'a DeValue<'a>,
    pub(crate) span: Range<usize>,
    pub(crate) key: &'a str,
    pub(crate) desk: &'a Diagnostics,
}

impl Cell<'_> {
    /// Refuses the value and yields nothing.
    pub(crate) fn refuse<T>(
        &self,
        title: impl Into<String>,
        label: impl Into<String>,
        help: impl Into<String>,
    ) -> Option<T> {
        self.desk.refuse(self.span.clone(), title, label, help);
        None
    }

    /// Refuses a value of the wrong type. The example is the value itself where only its quotes are too many.
    fn wrong_type<T>(&self, wanted: &str, example: &str) -> Option<T> {
        let found = self.value.type_str();
        let unquoted = self.value.as_str().map(str::trim).filter(|text| plain_number(text).is_some());
        let example = if example.starts_with('"') { example } else { unquoted.unwrap_or(example) };
        self.refuse(
            format!("`{}` is {} {found}", self.key, article(found)),
            format!("{wanted} is needed"),
            format!("write it like {} = {example}", self.key),
        )
    }

    fn out_of<T>(&self, shown: &str, bound: &Bound) -> Option<T> {
        self.refuse(format!("{shown} is out of range"), bound.to_string(), "")
    }

    /// The number as typed, if the value is a number.
    fn number_text(&self) -> Option<&str> {
        match self.value {
            DeValue::Integer(integer) if integer.radix() == 10 => Some(integer.as_str()),
            DeValue::Float(float) => Some(float.as_str()),
            _ => None,
        }
    }
}

fn article(word: &str) -> &'static str {
    if word.starts_with(['a', 'e', 'i', 'o', 'u']) { "an" } else { "a" }
}

/// How one kind of value is read, and what it looks like to an editor.
pub trait Kind {
    /// The value read.
    type Out;
    /// Reads the value; lays every fault on the cell's desk and yields nothing if there is one.
    fn read(&self, cell: &Cell<'_>) -> Option<Self::Out>;
    /// The JSON Schema of the value.
    fn schema(&self) -> Value;
}

/// Words: at least one visible character, at most 2,000.
#[derive(Debug, Clone, Copy)]
pub struct Text;

impl Kind for Text {
    type Out = String;

    fn read(&self, cell: &Cell<'_>) -> Option<String> {
        const MOST: usize = 2000;
        let Some(text) = cell.value.as_str() else { return cell.wrong_type("text in quotes", "\"some words\"") };
        if text.trim().is_empty() {
            return cell.refuse(format!("`{}` is empty", cell.key), "it needs words", "");
        }
        if text.chars().count() > MOST {
            return cell.refuse(format!("`{}` is too long", cell.key), format!("at most {MOST} characters"), "");
        }
        if let Some(c) = unseen_in(&text.replace("\r\n", "\n")) {
            let title = format!("`{}` holds a character that can't be seen, U+{:04X}", cell.key, u32::from(c));
            return cell.refuse(
                title,
                "only what can be seen",
                "delete it: type the words anew where you can't find it",
            );
        }
        Some(text.trim().to_owned())
    }

    fn schema(&self) -> Value {
        json!({ "type": "string", "minLength": 1, "maxLength": 2000 })
    }
}

/// Whether a text can be a [`Name`].
pub fn is_name(text: &str) -> bool {
    let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    !text.is_empty() && text.len() <= 60 && text.chars().all(plain)
}

/// A name that other entries call this one by: small letters, digits and hyphens, at most 60.
#[derive(Debug, Clone, Copy)]
pub struct Name;

impl Kind for Name {
    type Out = String;

    fn read(&self, cell: &Cell<'_>) -> Option<String> {
        let Some(text) = cell.value.as_str() else { return cell.wrong_type("a name in quotes", "\"a-name\"") };
        if !is_name(text) {
            let label = "small letters a to z, digits and hyphens, at most 60";
            return cell.refuse(format!("`{text}` can't be a name"), label, suggest_name(text));
        }
        Some(text.to_owned())
    }

    fn schema(&self) -> Value {
        json!({ "type": "string", "pattern": "^[a-z0-9-]{1,60}$" })
    }
}

fn suggest_name(text: &str) -> String {
    let fit: String = text.to_lowercase().chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '-' }).collect();
    let fit: String = fit.trim_matches('-').chars().take(60).collect();
    if fit.is_empty() { String::new() } else { format!("for example \"{fit}\"") }
}

/// `true` or `false`.
#[derive(Debug, Clone, Copy)]
pub struct Flag;

impl Kind for Flag {
    type Out = bool;

    fn read(&self, cell: &Cell<'_>) -> Option<bool> {
        cell.value.as_bool().or_else(|| cell.wrong_type("true or false, without quotes,", "true"))
    }

    fn schema(&self) -> Value {
        json!({ "type": "boolean" })
    }
}

/// A whole number within a bound.
#[derive(Debug, Clone, Copy)]
pub struct Count(pub Bound);

impl Kind for Count {
    type Out = u32;

    fn read(&self, cell: &Cell<'_>) -> Option<u32> {
        let DeValue::Integer(integer) = cell.value else {
            return cell.wrong_type("a whole number without quotes", "4");
        };
        let number = i64::from_str_radix(&integer.as_str().replace('_', ""), integer.radix()).ok();
        let within = number.and_then(|n| u32::try_from(n).ok()).filter(|n| self.0.holds(f64::from(*n)));
        within.or_else(|| cell.out_of(integer.as_str(), &self.0))
    }

    fn schema(&self) -> Value {
        json!({ "type": "integer", "minimum": self.0.least, "maximum": self.0.most })
    }
}

/// A plain number within a bound.
#[derive(Debug, Clone, Copy)]
pub struct Number(pub Bound);

impl Kind for Number {
    type Out = f64;

    fn read(&self, cell: &Cell<'_>) -> Option<f64> {
        let Some(text) = cell.number_text() else { return cell.wrong_type("a number without quotes", "1.5") };
        if text.ends_with(char::is_alphabetic) {
            return cell.refuse(format!("nothing can be reckoned with `{text}`"), self.0.to_string(), "");
        }
        let number = text.replace('_', "").parse::<f64>().ok();
        number.filter(|n| self.0.holds(*n)).or_else(|| cell.out_of(text, &self.0))
    }

    fn schema(&self) -> Value {
        json!({ "type": "number", "minimum": self.0.least, "maximum": self.0.most })
    }
}

/// One of a fixed set of words.
#[derive(Debug, Clone, Copy)]
pub struct OneOf<T: 'static> {
    /// The words and what each stands for.
    pub words: &'static [(&'static str, T)],
}

impl<T: Copy> Kind for OneOf<T> {
    type Out = T;

    fn read(&self, cell: &Cell<'_>) -> Option<T> {
        let Some(text) = cell.value.as_str() else {
            return cell.wrong_type("a word in quotes", &format!("\"{}\"", self.words.first().map_or("", |w| w.0)));
        };
        let found = self.words.iter().find(|(word, _)| *word == text).map(|(_, value)| *value);
        found.or_else(|| {
            let words: Vec<&str> = self.words.iter().map(|(word, _)| *word).collect();
            let label = nearest(text, words.iter().copied()).map(|near| format!("did you mean `{near}`?"));
            cell.refuse(
                format!("`{text}` is not a choice for `{}`", cell.key),
                label.unwrap_or_default(),
                format!("choose from: {}", words.join(", ")),
            )
        })
    }

    fn schema(&self) -> Value {
        let words: Vec<&str> = self.words.iter().map(|(word, _)| *word).collect();
        json!({ "type": "string", "enum": words })
    }
}

const MASS_UNITS: &[Unit] = &[("g", 1.0), ("kg", 1000.0), ("oz", 28.349_523_125), ("lb", 453.592_37)];
// One tex is one gram a kilometre (ISO 1144, from memory).
const DENSITY_UNITS: &[Unit] = &[("g/m", 1.0), ("ktex", 1.0), ("tex", 0.001)];

/// A number and its unit in one piece of text, converted to the base unit and held to a bound.
fn measured(cell: &Cell<'_>, units: &[Unit], bound: &Bound, example: &str) -> Option<f64> {
    let Some(text) = cell.value.as_str() else {
        return match cell.number_text() {
            Some(number) => cell.refuse(
                format!("{number} has no unit"),
                format!("a number and its unit, in quotes: {}", unit_names(units)),
                format!("write {} = \"{number} {}\", with the unit you mean", cell.key, example_unit(example)),
            ),
            None => cell.wrong_type("a number with its unit, in quotes,", &format!("\"{example}\"")),
        };
    };
    let (number, unit) = split_unit(text);
    let Some(factor) = units.iter().find(|(name, _)| *name == unit).map(|(_, factor)| *factor) else {
        let title =
            if unit.is_empty() { format!("`{text}` has no unit") } else { format!("`{unit}` is not a unit here") };
        return cell.refuse(title, format!("units: {}", unit_names(units)), format!("for example \"{example}\""));
    };
    let Some(number) = plain_number(number) else {
        return cell.refuse(
            format!("`{text}` is not a number with a unit"),
            "digits, with a point if need be",
            format!("for example \"{example}\""),
        );
    };
    let value = number * factor;
    if bound.holds(value) { Some(value) } else { cell.out_of(&format!("`{text}`"), bound) }
}

/// The unit of an example such as "9 cm".
fn example_unit(example: &str) -> &str {
    split_unit(example).1
}

fn unit_names(units: &[Unit]) -> String {
    units.iter().map(|(name, _)| *name).collect::<Vec<_>>().join(", ")
}

/// Text of a quantity, for a schema.
fn measured_schema(units: &[Unit]) -> Value {
    let names: Vec<String> = units.iter().map(|(name, _)| (*name).to_owned()).collect();
    json!({ "type": "string", "pattern": format!("^\\s*[0-9]+(\\.[0-9]*)?\\s*({})\\s*$", names.join("|")) })
}

/// A length with its unit; the bound is in millimetres.
#[derive(Debug, Clone, Copy)]
pub struct Lengths(pub Bound);

impl Kind for Lengths {
    type Out = Length;

    fn read(&self, cell: &Cell<'_>) -> Option<Length> {
        measured(cell, LENGTH_UNITS, &self.0, "9 cm").map(Length::mm)
    }

    fn schema(&self) -> Value {
        measured_schema(LENGTH_UNITS)
    }
}

/// A plain number, or a length with its unit in quotes.
#[derive(Debug, Clone, Copy)]
pub struct NumberOrLength;

impl Kind for NumberOrLength {
    type Out = Figure;

    fn read(&self, cell: &Cell<'_>) -> Option<Figure> {
        if cell.value.as_str().is_some() {
            return Lengths(bound::PARAMETER_LENGTH).read(cell).map(Figure::Length);
        }
        Number(bound::PARAMETER).read(cell).map(Figure::Number)
    }

    fn schema(&self) -> Value {
        json!({ "anyOf": [Number(bound::PARAMETER).schema(), Lengths(bound::PARAMETER_LENGTH).schema()] })
    }
}

/// A mass with its unit; the bound is in grams.
#[derive(Debug, Clone, Copy)]
pub struct Weight(pub Bound);

impl Kind for Weight {
    type Out = Mass;

    fn read(&self, cell: &Cell<'_>) -> Option<Mass> {
        measured(cell, MASS_UNITS, &self.0, "35 g").map(Mass::g)
    }

    fn schema(&self) -> Value {
        measured_schema(MASS_UNITS)
    }
}

/// Mass for each length of cord.
#[derive(Debug, Clone, Copy)]
pub struct WeightPerLength;

impl Kind for WeightPerLength {
    type Out = LinearDensity;

    fn read(&self, cell: &Cell<'_>) -> Option<LinearDensity> {
        measured(cell, DENSITY_UNITS, &bound::LINEAR_DENSITY, "8.2 g/m").map(LinearDensity::g_per_m)
    }

    fn schema(&self) -> Value {
        measured_schema(DENSITY_UNITS)
    }
}

/// Decimal digits in quotes, exact.
fn exact(cell: &Cell<'_>, decimals: u32, bound: &Bound, example: &str) -> Option<Decimal> {
    let Some(text) = cell.value.as_str() else {
        return match cell.number_text() {
            Some(number) => cell.refuse(
                format!("{number} is a bare number"),
                "it is written in quotes, so that no digit is lost",
                format!("write {} = \"{number}\"", cell.key),
            ),
            None => cell.wrong_type("an amount in quotes", &format!("\"{example}\"")),
        };
    };
    let Some(amount) = plain_decimal(text.trim()) else {
        let help = format!("digits and a point, no sign of currency, no commas: {} = \"{example}\"", cell.key);
        return cell.refuse(format!("`{text}` is not an amount"), "", help);
    };
    if amount.scale() > decimals {
        return cell.refuse(format!("`{text}` has {} decimals", amount.scale()), format!("at most {decimals}"), "");
    }
    let in_bound = amount.to_f64().is_some_and(|value| bound.holds(value));
    if in_bound { Some(amount) } else { cell.out_of(&format!("`{text}`"), bound) }
}

fn plain_decimal(text: &str) -> Option<Decimal> {
    let digits = text.strip_prefix('-').unwrap_or(text);
    let well_formed = digits.starts_with(|c: char| c.is_ascii_digit())
        && digits.ends_with(|c: char| c.is_ascii_digit())
        && digits.chars().all(|c| c.is_ascii_digit() || c == '.');
    if well_formed { Decimal::from_str(text).ok() } else { None }
}

/// An amount of money in the shop's currency, in quotes.
#[derive(Debug, Clone, Copy)]
pub struct Money {
    /// Lowest allowed.
    pub least: i64,
    /// Decimals allowed.
    pub decimals: u32,
}

impl Money {
    /// A price or cost: nothing below zero.
    pub const AMOUNT: Self = Self { least: 0, decimals: 5 };
    /// An amount that may also be a credit.
    pub const EITHER_WAY: Self = Self { least: -1_000_000_000, decimals: 5 };
}

impl Kind for Money {
    type Out = Decimal;

    fn read(&self, cell: &Cell<'_>) -> Option<Decimal> {
        let amount = exact(cell, self.decimals, &bound::MONEY, "12.50")?;
        if amount < Decimal::from(self.least) {
            return cell.refuse(format!("`{amount}` is below {}", self.least), "it can't be negative here", "");
        }
        Some(amount)
    }

    fn schema(&self) -> Value {
        let sign = if self.least < 0 { "-?" } else { "" };
        json!({ "type": "string", "pattern": format!("^\\s*{sign}[0-9]+(\\.[0-9]{{1,{}}})?\\s*$", self.decimals) })
    }
}

/// An exact quantity on a line with a given price, in quotes or as a whole number.
#[derive(Debug, Clone, Copy)]
pub struct Quantity;

impl Kind for Quantity {
    type Out = Decimal;

    fn read(&self, cell: &Cell<'_>) -> Option<Decimal> {
        if let DeValue::Integer(integer) = cell.value {
            let whole =
                plain_decimal(integer.as_str()).filter(|n| n.to_f64().is_some_and(|n| bound::LINE_QUANTITY.holds(n)));
            return whole.or_else(|| cell.out_of(integer.as_str(), &bound::LINE_QUANTITY));
        }
        exact(cell, 4, &bound::LINE_QUANTITY, "2.5")
    }

    fn schema(&self) -> Value {
        json!({ "type": ["string", "integer"] })
    }
}

/// A percentage such as `"20 %"`, as the number before the sign.
#[derive(Debug, Clone, Copy)]
pub struct Percent(pub Bound);

impl Kind for Percent {
    type Out = Decimal;

    fn read(&self, cell: &Cell<'_>) -> Option<Decimal> {
        const MOST_DECIMALS: u32 = 4;
        let Some(text) = cell.value.as_str() else {
            return match cell.number_text() {
                Some(number) => cell.refuse(
                    format!("{number} is a bare number"),
                    "a percentage is written with its sign, in quotes",
                    format!("write {} = \"{number} %\"", cell.key),
                ),
                None => cell.wrong_type("a percentage in quotes", "\"20 %\""),
            };
        };
        let number = text.trim().strip_suffix('%').and_then(|number| plain_decimal(number.trim()));
        let Some(number) = number.filter(|number| number.scale() <= MOST_DECIMALS) else {
            let help = format!("for example {} = \"20 %\"", cell.key);
            return cell.refuse(format!("`{text}` is not a percentage"), "a number and %, at most 4 decimals", help);
        };
        let in_bound = number.to_f64().is_some_and(|value| self.0.holds(value));
        if in_bound { Some(number) } else { cell.out_of(&format!("`{text}`"), &self.0) }
    }

    fn schema(&self) -> Value {
        json!({ "type": "string", "pattern": "^\\s*[0-9]+(\\.[0-9]{1,4})?\\s*%\\s*$" })
    }
}

/// A calendar date, year first.
#[derive(Debug, Clone, Copy)]
pub struct Day;

impl Kind for Day {
    type Out = NaiveDate;

    fn read(&self, cell: &Cell<'_>) -> Option<NaiveDate> {
        let text = match cell.value {
            DeValue::Datetime(date) => date.to_string(),
            DeValue::String(text) => text.trim().to_owned(),
            _ => return cell.wrong_type("a date", "2027-03-14"),
        };
        let day = NaiveDate::parse_from_str(&text, "%Y-%m-%d").ok().filter(|_| text.len() == 10);
        day.or_else(|| {
            cell.refuse(
                format!("`{text}` is not a date"),
                "year-month-day, a day that exists",
                "for example 2027-03-14",
            )
        })
    }

    fn schema(&self) -> Value {
        json!({ "type": "string", "format": "date" })
    }
}

/// A list of values of one kind, each keeping its own place.
#[derive(Debug, Clone, Copy)]
pub struct List<K>(pub K);

impl<K: Kind> Kind for List<K> {
    type Out = Vec<Placed<K::Out>>;

    fn read(&self, cell: &Cell<'_>) -> Option<Self::Out> {
        let Some(items) = cell.value.as_array() else {
            return cell.wrong_type("a list in square brackets", "[\"one\", \"two\"]");
        };
        let read: Vec<_> = items
            .iter()
            .filter_map(|item| {
                let cell = Cell { value: item.get_ref(), span: item.span(), key: cell.key, desk: cell.desk };
                self.0.read(&cell).map(|value| Placed { value, span: item.span() })
            })
            .collect();
        (read.len() == items.len()).then_some(read)
    }

    fn schema(&self) -> Value {
        json!({ "type": "array", "items": self.0.schema() })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fault::SourceText;
    use crate::table::read;

    fn titles<K: Kind>(text: &str, kind: &K) -> Vec<String> {
        let desk = Diagnostics::new(SourceText::new("t.toml", text));
        read(&desk, |t| t.need("v", kind, "a value"));
        desk.into_faults().into_iter().map(|fault| fault.title).collect()
    }

    fn value<K: Kind>(text: &str, kind: &K) -> Option<K::Out> {
        let desk = Diagnostics::new(SourceText::new("t.toml", text));
        read(&desk, |t| t.need("v", kind, "a value")).map(|placed| placed.value)
    }

    #[test]
    fn lengths_read_every_unit() {
        let kind = Lengths(bound::STEP_LENGTH);
        for (text, mm) in
            [("9 cm", 90.0), ("9cm", 90.0), ("1.5 m", 1500.0), ("2 in", 50.8), ("1 ft", 304.8), ("35 mm", 35.0)]
        {
            let read = value(&format!("v = \"{text}\""), &kind).map(Length::as_mm);
            assert!(read.is_some_and(|read| (read - mm).abs() < 1e-9), "{text} read as {read:?}");
        }
    }

    #[test]
    fn a_figure_is_a_number_or_a_length() {
        assert_eq!(value("v = 12", &NumberOrLength), Some(Figure::Number(12.0)));
        assert_eq!(value("v = \"8 cm\"", &NumberOrLength), Some(Figure::Length(Length::mm(80.0))));
        assert_eq!(titles("v = \"8\"", &NumberOrLength), ["`8` has no unit"]);
        assert_eq!(titles("v = true", &NumberOrLength), ["`v` is a boolean"]);
        let parsed = ["12", "8cm", "8 cm", "8 ells", "nan", "", "cm", "-3"].map(Figure::parse);
        let (eighty, three) = (Some(Figure::Length(Length::mm(80.0))), Some(Figure::Number(-3.0)));
        assert_eq!(parsed, [Some(Figure::Number(12.0)), eighty, eighty, None, None, None, None, three]);
    }

    #[test]
    fn what_is_not_a_length_is_refused_by_name() {
        let kind = Lengths(bound::STEP_LENGTH);
        for (text, title) in [
            ("v = 9", "9 has no unit"),
            ("v = \"9\"", "`9` has no unit"),
            ("v = \"9 ells\"", "`ells` is not a unit here"),
            ("v = \"-9 cm\"", "`-9 cm` is out of range"),
            ("v = \"0 cm\"", "`0 cm` is out of range"),
            ("v = \"9,5 cm\"", "`9,5 cm` is not a number with a unit"),
            ("v = \"nan cm\"", "`nan cm` is not a unit here"),
            ("v = \"1e9 cm\"", "`e9 cm` is not a unit here"),
            ("v = true", "`v` is a boolean"),
            ("", "`v` is missing"),
        ] {
            assert_eq!(titles(text, &kind), [title], "for {text}");
        }
    }

    #[test]
    fn what_is_no_number_or_can_not_be_seen_is_refused() {
        assert_eq!(titles("v = inf", &Number(bound::PACE)), ["nothing can be reckoned with `inf`"]);
        assert_eq!(titles("v = -nan", &Number(bound::PACE)), ["nothing can be reckoned with `-nan`"]);
        for (text, code) in [("\\u001b[2J", "001B"), ("\\u009b", "009B"), ("a\u{202e}b", "202E"), ("\u{200b}", "200B")]
        {
            let title = format!("`v` holds a character that can't be seen, U+{code}");
            assert_eq!(titles(&format!("v = \"x{text}\""), &Text), [title], "for {text}");
        }
        assert_eq!(titles("v = \"\"\"one\r\ntwo\"\"\"", &Text), [""; 0]);
    }

    #[test]
    fn money_is_exact_and_quoted() {
        assert_eq!(value("v = \"12.50000\"", &Money::AMOUNT).map(|d| d.to_string()), Some("12.50000".to_owned()));
        for (text, title) in [
            ("v = 12.50", "12.50 is a bare number"),
            ("v = \"12,50\"", "`12,50` is not an amount"),
            ("v = \"1e3\"", "`1e3` is not an amount"),
            ("v = \"12.123456\"", "`12.123456` has 6 decimals"),
            ("v = \"-1\"", "`-1` is below 0"),
            ("v = \"99999999999999999999999999999999\"", "`99999999999999999999999999999999` is not an amount"),
            ("v = \"9999999999\"", "`9999999999` is out of range"),
        ] {
            assert_eq!(titles(text, &Money::AMOUNT), [title], "for {text}");
        }
    }

    #[test]
    fn percentages_dates_and_counts() {
        assert_eq!(value("v = \"20 %\"", &Percent(bound::SHARE)), Some(Decimal::from(20)));
        assert_eq!(titles("v = \"120 %\"", &Percent(bound::SHARE)), ["`120 %` is out of range"]);
        assert_eq!(titles("v = 0.2", &Percent(bound::SHARE)), ["0.2 is a bare number"]);
        assert_eq!(value("v = 2026-12-01", &Day), NaiveDate::from_ymd_opt(2026, 12, 1));
        assert_eq!(titles("v = \"2026-02-30\"", &Day), ["`2026-02-30` is not a date"]);
        assert_eq!(value("v = 1_000", &Count(bound::TIMES)), Some(1000));
        assert_eq!(titles("v = 0", &Count(bound::TIMES)), ["0 is out of range"]);
        assert_eq!(titles("v = 99999999999999999999", &Count(bound::TIMES)), ["99999999999999999999 is out of range"]);
    }

    #[test]
    fn every_fault_of_a_table_comes_in_one_reading() {
        let desk = Diagnostics::new(SourceText::new("t.toml", "coutn = 3\nname = \"No Good\"\nlength = 5\n"));
        read(&desk, |t| {
            t.need("count", &Count(bound::CORDS), "how many");
            t.need("name", &Name, "its name");
            t.need("length", &Lengths(bound::STEP_LENGTH), "how long");
            Some(())
        });
        let titles: Vec<_> = desk.into_faults().into_iter().map(|fault| fault.title).collect();
        assert_eq!(titles, ["`No Good` can't be a name", "5 has no unit", "unknown key `coutn`"]);
    }

    proptest::proptest! {
        #[test]
        fn no_text_panics_a_reader(text in "\\PC{0,60}") {
            let text = format!("v = {text}");
            for _ in 0..1 {
                titles(&text, &Text);
                titles(&text, &Lengths(bound::STEP_LENGTH));
                titles(&text, &Money::EITHER_WAY);
                titles(&text, &Percent(bound::SHARE));
                titles(&text, &Day);
                titles(&text, &List(Count(bound::TIMES)));
            }
        }
    }
}
