//! A table of a TOML file, asked for its keys one by one.

use std::ops::Range;

use serde_json::{Map, Value, json};
use toml::Spanned;
use toml::de::{DeString, DeTable, DeValue};

use crate::arithmetic::Measures;
use crate::diagnostics::{Diagnostics, Placed};
use crate::fault::SourceText;
use crate::kinds::{Cell, Kind};
use crate::nearest::nearest;

/// A table being read, or the plan of one.
#[derive(Debug)]
pub struct Table<'a> {
    view: View<'a>,
    asked: Vec<&'static str>,
    missing: Vec<(&'static str, String)>,
    /// Whether a key is written but could not be read: what its absence would mean can't be told then.
    misread: bool,
}

#[derive(Debug)]
enum View<'a> {
    Typed { keys: Keys<'a>, span: Range<usize>, desk: &'a Diagnostics },
    Plan { properties: Map<String, Value>, required: Vec<Value> },
}

/// The keys of a table with their values, in the order in which they are written. They are few, and mostly of different lengths:
/// to look through them takes less time than a tree or a table of hashes.
#[derive(Debug)]
struct Keys<'a>(Vec<(&'a Spanned<DeString<'a>>, &'a Spanned<DeValue<'a>>)>);

impl<'a> Keys<'a> {
    fn of(table: &'a DeTable<'a>) -> Self {
        let mut keys: Vec<_> = table.iter().collect();
        keys.sort_unstable_by_key(|(key, _)| key.span().start);
        Self(keys)
    }

    fn get(&self, key: &str) -> Option<&'a Spanned<DeValue<'a>>> {
        self.0.iter().find(|(known, _)| known.get_ref() == key).map(|(_, value)| *value)
    }
}

/// About as many keys as the largest tables ask for.
const KEYS_ASKED: usize = 16;

impl<'a> Table<'a> {
    fn typed(table: &'a DeTable<'a>, span: Range<usize>, desk: &'a Diagnostics) -> Self {
        let view = View::Typed { keys: Keys::of(table), span, desk };
        Self { view, asked: Vec::with_capacity(KEYS_ASKED), missing: Vec::new(), misread: false }
    }

    fn plan() -> Self {
        Self {
            view: View::Plan { properties: Map::new(), required: Vec::new() },
            asked: Vec::new(),
            missing: Vec::new(),
            misread: false,
        }
    }

    /// A key that must be there.
    pub fn need<K: Kind>(&mut self, key: &'static str, kind: &K, about: &str) -> Option<Placed<K::Out>> {
        let found = self.optional(key, kind, about, true);
        if found.is_none() {
            self.note_missing(key, about);
        }
        found
    }

    /// A key that may be left out.
    pub fn maybe<K: Kind>(&mut self, key: &'static str, kind: &K, about: &str) -> Option<Placed<K::Out>> {
        self.optional(key, kind, about, false)
    }

    fn optional<K: Kind>(
        &mut self,
        key: &'static str,
        kind: &K,
        about: &str,
        required: bool,
    ) -> Option<Placed<K::Out>> {
        let (value, desk) = self.ask(key, required, || described(kind.schema(), about))?;
        let cell = Cell { value: value.get_ref(), span: value.span(), key, desk };
        let span = cell.span.clone();
        let read = kind.read(&cell).map(|value| Placed { value, span });
        self.misread |= read.is_none();
        read
    }

    /// A table that may be left out.
    pub fn table<T>(
        &mut self,
        key: &'static str,
        about: &str,
        read: impl FnOnce(&mut Table<'_>) -> Option<T>,
    ) -> Option<Placed<T>> {
        self.subtable(key, about, false, read)
    }

    /// A table that must be there.
    pub fn need_table<T>(
        &mut self,
        key: &'static str,
        about: &str,
        read: impl FnOnce(&mut Table<'_>) -> Option<T>,
    ) -> Option<Placed<T>> {
        let found = self.subtable(key, about, true, read);
        if found.is_none() {
            self.note_missing(key, about);
        }
        found
    }

    fn subtable<T>(
        &mut self,
        key: &'static str,
        about: &str,
        required: bool,
        read: impl FnOnce(&mut Table<'_>) -> Option<T>,
    ) -> Option<Placed<T>> {
        if self.is_plan() {
            let plan = planned(read);
            self.ask(key, required, || described(plan, about));
            return None;
        }
        let (value, desk) = self.ask(key, required, Value::default)?;
        let Some(table) = value.get_ref().as_table() else {
            desk.refuse(
                value.span(),
                format!("`{key}` is not a table"),
                "",
                format!("write a [{key}] heading with keys beneath"),
            );
            self.misread = true;
            return None;
        };
        let found = read_table(table, value.span(), desk, read);
        self.misread |= found.is_none();
        found
    }

    /// A list of tables, each under its own `[[key]]` heading; none is an empty list.
    pub fn tables<T>(
        &mut self,
        key: &'static str,
        about: &str,
        read: impl Fn(&mut Table<'_>) -> Option<T>,
    ) -> Vec<Placed<T>> {
        if self.is_plan() {
            let items = planned(read);
            self.ask(key, false, || described(json!({ "type": "array", "items": items }), about));
            return Vec::new();
        }
        let Some((value, desk)) = self.ask(key, false, Value::default) else { return Vec::new() };
        let Some(items) = value.get_ref().as_array() else {
            let help = format!("give each its own [[{key}]] heading, in double brackets");
            desk.refuse(value.span(), format!("`{key}` is not a list of tables"), "", help);
            return Vec::new();
        };
        let found: Vec<_> = items.iter().filter_map(|item| read_item(item, key, desk, &read)).collect();
        self.misread |= found.len() < items.len();
        found
    }

    /// A table whose keys the maker chooses.
    pub fn pairs<K: Kind>(
        &mut self,
        key: &'static str,
        kind: &K,
        about: &str,
    ) -> Vec<(Placed<String>, Placed<K::Out>)> {
        let schema = || described(json!({ "type": "object", "additionalProperties": kind.schema() }), about);
        let Some((value, desk)) = self.ask(key, false, schema) else { return Vec::new() };
        let Some(table) = value.get_ref().as_table() else {
            desk.refuse(
                value.span(),
                format!("`{key}` is not a table"),
                "",
                format!("write {key} = {{ name = value }}"),
            );
            return Vec::new();
        };
        Keys::of(table).0.into_iter().filter_map(|(name, value)| read_pair(name, value, kind, key, desk)).collect()
    }

    /// Where this table stands.
    pub fn span(&self) -> Range<usize> {
        match &self.view {
            View::Typed { span, .. } => span.clone(),
            View::Plan { .. } => 0..0,
        }
    }

    /// Refuses the table as a whole, for how its keys go together.
    pub fn refuse(&self, title: impl Into<String>, label: impl Into<String>, help: impl Into<String>) {
        self.refuse_together(self.span(), title, label, help);
    }

    /// Refuses how the keys of the table go together, at one of them.
    ///
    /// Nothing is said where a key is written but could not be read: that fault is told already.
    pub fn refuse_together(
        &self,
        span: Range<usize>,
        title: impl Into<String>,
        label: impl Into<String>,
        help: impl Into<String>,
    ) {
        if !self.misread {
            self.refuse_at(span, title, label, help);
        }
    }

    /// Refuses a value of the table that was read before.
    pub fn refuse_at(
        &self,
        span: Range<usize>,
        title: impl Into<String>,
        label: impl Into<String>,
        help: impl Into<String>,
    ) {
        if let View::Typed { desk, .. } = &self.view {
            desk.refuse(span, title, label, help);
        }
    }

    /// Warns of a value of the table that was read before.
    pub fn warn_at(
        &self,
        span: Range<usize>,
        title: impl Into<String>,
        label: impl Into<String>,
        help: impl Into<String>,
    ) {
        if let View::Typed { desk, .. } = &self.view {
            desk.warn(span, title, label, help);
        }
    }

    /// The place of a key's value, if it is written.
    pub fn place(&self, key: &str) -> Option<Range<usize>> {
        match &self.view {
            View::Typed { keys, .. } => keys.get(key).map(Spanned::span),
            View::Plan { .. } => None,
        }
    }

    /// Names what the sums of this file may name, in every key that is asked for from now on.
    pub fn set_measures(&self, measures: Measures) {
        if let View::Typed { desk, .. } = &self.view {
            desk.set_measures(measures);
        }
    }

    /// How many faults have been laid so far, in this table and before it.
    pub fn fault_count(&self) -> usize {
        match &self.view {
            View::Typed { desk, .. } => desk.count(),
            View::Plan { .. } => 0,
        }
    }

    /// Whether the key is written, however wrongly.
    pub fn has(&self, key: &str) -> bool {
        match &self.view {
            View::Typed { keys, .. } => keys.get(key).is_some(),
            View::Plan { .. } => false,
        }
    }

    fn is_plan(&self) -> bool {
        matches!(self.view, View::Plan { .. })
    }

    /// Notes that the key is known; in a plan adds its schema, in a file finds its value.
    fn ask(
        &mut self,
        key: &'static str,
        needed: bool,
        schema: impl FnOnce() -> Value,
    ) -> Option<(&'a Spanned<DeValue<'a>>, &'a Diagnostics)> {
        self.asked.push(key);
        match &mut self.view {
            View::Typed { keys, desk, .. } => keys.get(key).map(|value| (value, *desk)),
            View::Plan { properties, required } => {
                properties.insert(key.to_owned(), schema());
                if needed {
                    required.push(Value::from(key));
                }
                None
            }
        }
    }

    fn note_missing(&mut self, key: &'static str, about: &str) {
        if !self.has(key) {
            self.missing.push((key, about.to_owned()));
        }
    }

    /// Reports keys that nobody asked for, and keys that are missing and not merely misspelt.
    fn report_keys(&self) {
        let View::Typed { keys, desk, .. } = &self.view else { return };
        let mut meant = Vec::new();
        for (key, _) in keys.0.iter().filter(|(key, _)| !self.asked.contains(&key.get_ref().as_ref())) {
            let name: &str = key.get_ref();
            let near = nearest(name, self.asked.iter().copied());
            meant.extend(near);
            let label = near.map(|near| format!("did you mean `{near}`?")).unwrap_or_default();
            let help = format!("keys known here: {}", self.asked.join(", "));
            desk.refuse(key.span(), format!("unknown key `{name}`"), label, help);
        }
        for (key, about) in self.missing.iter().filter(|(key, _)| !meant.contains(key)) {
            self.refuse(format!("`{key}` is missing"), "it is needed here", format!("`{key}`: {about}"));
        }
    }

    fn into_schema(self) -> Value {
        match self.view {
            View::Plan { properties, required } => json!({
                "type": "object", "properties": properties, "required": required, "additionalProperties": false
            }),
            View::Typed { .. } => Value::Null,
        }
    }
}

pub(crate) fn read_table<T>(
    table: &DeTable<'_>,
    span: Range<usize>,
    desk: &Diagnostics,
    read: impl FnOnce(&mut Table<'_>) -> Option<T>,
) -> Option<Placed<T>> {
    let mut table = Table::typed(table, span.clone(), desk);
    let value = read(&mut table);
    table.report_keys();
    value.map(|value| Placed { value, span })
}

fn read_item<T>(
    item: &Spanned<DeValue<'_>>,
    key: &str,
    desk: &Diagnostics,
    read: impl Fn(&mut Table<'_>) -> Option<T>,
) -> Option<Placed<T>> {
    let Some(table) = item.get_ref().as_table() else {
        desk.refuse(
            item.span(),
            format!("an entry of `{key}` is not a table"),
            "",
            format!("write it under [[{key}]]"),
        );
        return None;
    };
    read_table(table, item.span(), desk, read)
}

fn read_pair<K: Kind>(
    name: &Spanned<impl AsRef<str>>,
    value: &Spanned<DeValue<'_>>,
    kind: &K,
    key: &'static str,
    desk: &Diagnostics,
) -> Option<(Placed<String>, Placed<K::Out>)> {
    let cell = Cell { value: value.get_ref(), span: value.span(), key, desk };
    let out = kind.read(&cell)?;
    let name = Placed { value: name.get_ref().as_ref().to_owned(), span: name.span() };
    Some((name, Placed { value: out, span: value.span() }))
}

pub(crate) fn planned<T>(read: impl FnOnce(&mut Table<'_>) -> Option<T>) -> Value {
    let mut plan = Table::plan();
    read(&mut plan);
    plan.into_schema()
}

fn described(mut schema: Value, about: &str) -> Value {
    if let Value::Object(fields) = &mut schema {
        fields.insert("description".to_owned(), Value::from(about));
    }
    schema
}

/// A text, parsed: it can be read any number of times, as a design is once for each size.
#[derive(Debug)]
pub struct Parsed<'a> {
    document: Spanned<DeTable<'a>>,
    /// Where it is not TOML, and why.
    errors: Vec<(Range<usize>, String)>,
}

impl<'a> Parsed<'a> {
    /// Parses a text.
    pub fn of(source: &'a SourceText) -> Self {
        let (document, errors) = DeTable::parse_recoverable(&source.text);
        let placed = |error: &toml::de::Error| (error.span().unwrap_or(0..0), error.message().to_owned());
        let mut errors: Vec<_> = errors.iter().map(placed).collect();
        // What is nested too deep or left open is found again at each level.
        errors.dedup();
        Self { document, errors }
    }
}

/// Reads a whole file. Every fault found is laid on the desk; `None` when it can't be used.
///
/// The reader may lay faults for what only shows when the whole file is known.
pub fn read<T>(desk: &Diagnostics, reader: impl FnOnce(&mut Table<'_>) -> Option<T>) -> Option<T> {
    read_parsed(desk, &Parsed::of(desk.source()), reader)
}

/// The same of a file that was parsed before; it must be the desk's.
pub fn read_parsed<T>(
    desk: &Diagnostics,
    parsed: &Parsed<'_>,
    reader: impl FnOnce(&mut Table<'_>) -> Option<T>,
) -> Option<T> {
    for (span, why) in &parsed.errors {
        desk.refuse(span.clone(), format!("this is not TOML: {why}"), "", "");
    }
    // A half-parsed file would be told of keys that are only missing because parsing stopped.
    if !parsed.errors.is_empty() {
        return None;
    }
    read_table(parsed.document.get_ref(), 0..0, desk, reader).map(|placed| placed.value)
}

/// The JSON Schema (2020-12) of the file that a reader reads.
pub fn schema<T>(title: &str, about: &str, reader: impl FnOnce(&mut Table<'_>) -> Option<T>) -> Value {
    let mut whole = json!({ "$schema": "https://json-schema.org/draft/2020-12/schema", "title": title });
    if let (Value::Object(whole), Value::Object(plan)) = (&mut whole, described(planned(reader), about)) {
        whole.extend(plan);
    }
    whole
}
