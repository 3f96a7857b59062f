//! Pages filled in from templates.
//!
//! Names ending in `.html` escape what they print; every other template prints it as it is.
//! A shop may replace a built-in template with a file of its own. Whatever is wrong with a
//! template is reported with the file, line and column to look at; that it takes too much as well.

use std::borrow::Cow;
use std::collections::HashSet;
use std::fmt;
use std::sync::Arc;

use fluent_bundle::FluentArgs;
use reeve_measure::Remedied;
use reeve_reading::nearest;
use serde::{Deserialize, Serialize};
use tera::{Context, Error, ErrorKind, Kwargs, ReportError, State, Tera, TeraResult, Value};
use textwrap::{Options, WordSplitter};
use unicode_width::UnicodeWidthStr;

use crate::marks::{MARK, Marked, TemplatePlace, tags};
use crate::meter::{Bounded, Meter, TOO_LONG, Watch};
use crate::phrases::Phrases;

/// The widest that a filter will make anything, so that a slip of the pen in a template
/// cannot ask for a page of a billion columns.
const WIDEST: usize = 1000;

/// A checked set of templates that may extend and include one another.
pub struct Templates {
    engine: Tera,
    own: Own,
    meter: Arc<Meter>,
}

impl Templates {
    /// Checks the built-in templates (name, text) together with the shop's own ones, which replace built-in templates of
    /// the same name.
    ///
    /// # Errors
    /// A [`TemplateError`] with the file, line and reason.
    pub fn new(builtin: &[(&str, &str)], own: &[OwnTemplate], phrases: &Arc<Phrases>) -> Result<Self, TemplateError> {
        Self::watched(builtin, own, phrases, None)
    }

    /// The same; `watch` is told the number of every mark of the shop's own templates that a page passes.
    ///
    /// # Errors
    /// A [`TemplateError`] with the file, line and reason.
    pub fn watched(
        builtin: &[(&str, &str)],
        own: &[OwnTemplate],
        phrases: &Arc<Phrases>,
        watch: Option<Watch>,
    ) -> Result<Self, TemplateError> {
        let own = Own::of(own);
        let meter = Arc::new(Meter::new(watch));
        let mut engine = Tera::new();
        engine.autoescape_on([".html"]);
        // The engine refuses templates that use a filter or function it has not met yet.
        register_filters(&mut engine);
        let phrases = Arc::clone(phrases);
        engine.register_filter("say", move |id: &Value, arguments: Kwargs, _: &State| said(&phrases, id, &arguments));
        let passed = Arc::clone(&meter);
        engine.register_function(MARK, move |arguments: Kwargs, _: &State| passed.pass(arguments.must_get("at")?));
        engine.add_raw_templates(merged(builtin, &own)).map_err(|error| own.fault(&error, "templates"))?;
        Ok(Self { engine, own, meter })
    }

    /// Fills in the template called `name`.
    ///
    /// The data must be a structure or a map. A field that the template uses and the data lacks is a fault, not a blank.
    /// So is a page on which the shop's own templates take more than [`crate::MOST_STEPS`], or that grows past [`crate::MOST_BYTES`].
    ///
    /// # Errors
    /// A [`TemplateError`] with the file, line and reason.
    pub fn render(&self, name: &str, data: &impl Serialize) -> Result<String, TemplateError> {
        let context = Context::from_serialize(data).map_err(|error| self.own.fault(&error, name))?;
        // The program's own templates end by themselves.
        if self.own.is_empty() {
            return self.engine.render(name, &context).map_err(|error| self.own.fault(&error, name));
        }
        self.meter.begin();
        let mut page = Bounded { text: Vec::new(), full: false };
        let rendered = self.engine.render_to(name, &context, &mut page);
        if page.full {
            return Err(self.own.spent(self.meter.last(), TOO_LONG, name));
        }
        rendered.map_err(|error| self.told(self.own.fault(&error, name), name))?;
        String::from_utf8(page.text).map_err(|error| self.own.whole(name, error.to_string()))
    }
}

impl Templates {
    /// A fault with what the marks know of it: whether the page took too much, and where it was.
    fn told(&self, fault: TemplateError, asked: &str) -> TemplateError {
        let spent = self.meter.is_spent();
        if fault.line.is_some() {
            return TemplateError { spent, ..fault };
        }
        TemplateError { spent, ..self.own.spent(self.meter.last(), &fault.reason, asked) }
    }
}

impl From<(String, String, String)> for OwnTemplate {
    fn from((name, path, text): (String, String, String)) -> Self {
        Self { name, path, text }
    }
}

/// A template of the shop's own.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct OwnTemplate {
    /// The name that other templates and pages know it by.
    pub name: String,
    /// Its path as the maker would type it.
    pub path: String,
    /// Its text.
    pub text: String,
}

/// The fault of a page that was stopped when it had passed so many marks last: it takes too much.
pub fn fault_at(own: &[OwnTemplate], mark: Option<usize>, reason: &str, asked: &str) -> TemplateError {
    Own::of(own).spent(mark, reason, asked)
}

/// Lists the texts in use: the built-in ones that nothing replaces, then the shop's own.
fn merged<'a>(builtin: &[(&'a str, &'a str)], own: &'a Own) -> Vec<(&'a str, &'a str)> {
    let replaced: HashSet<&str> = own.0.iter().map(|file| file.name.as_str()).collect();
    let kept = builtin.iter().copied().filter(|(name, _)| !replaced.contains(name));
    kept.chain(own.0.iter().map(|file| (file.name.as_str(), file.marked.text.as_str()))).collect()
}

/// What is wrong with a template, and where.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct TemplateError {
    /// The path of the shop's own template, or the name of a built-in one.
    pub file: String,
    /// The line, counted from one, where it is known.
    pub line: Option<usize>,
    /// The column in characters, counted from one, where it is known.
    pub column: Option<usize>,
    /// What is wrong there.
    pub reason: String,
    /// Whether nothing is wrong but that it takes too much.
    pub spent: bool,
}

impl fmt::Display for TemplateError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.file)?;
        for place in [self.line, self.column].into_iter().flatten() {
            write!(f, ":{place}")?;
        }
        write!(f, ": {}", self.reason)
    }
}

impl std::error::Error for TemplateError {}

impl Remedied for TemplateError {
    fn remedy(&self) -> String {
        if self.spent {
            "look for a loop or a part that calls itself again and again, or a text that doubles"
        } else {
            "mend it, or take it out of templates/ to use the built-in one"
        }
        .to_owned()
    }
}

/// The shop's own templates, with their marks.
struct Own(Vec<OwnFile>);

struct OwnFile {
    name: String,
    path: String,
    marked: Marked,
    /// The number of its first mark.
    first: usize,
}

/// What is wrong, and where.
type PlacedFault = (Option<TemplatePlace>, String);

impl Own {
    fn of(own: &[OwnTemplate]) -> Self {
        let mut first = 0;
        let files = own.iter().map(|file| {
            let marked = Marked::new(&file.text, first);
            let file = OwnFile { name: file.name.clone(), path: file.path.clone(), first, marked };
            first += file.marked.count();
            file
        });
        Self(files.collect())
    }

    fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The fault at a mark: of what takes too much.
    fn spent(&self, mark: Option<usize>, reason: &str, asked: &str) -> TemplateError {
        let found = mark.and_then(|mark| {
            let file = self.0.iter().rfind(|file| file.first <= mark)?;
            Some((file, file.marked.spot(mark - file.first)?))
        });
        let (file, spot) = found.map_or((None, None), |(file, spot)| (Some(file), Some(spot)));
        TemplateError {
            file: file.map_or_else(|| self.named(asked), |file| file.path.clone()),
            line: spot.map(|spot| spot.line),
            column: spot.map(|spot| spot.column),
            reason: reason.to_owned(),
            spent: true,
        }
    }

    fn named(&self, name: &str) -> String {
        self.0.iter().find(|file| file.name == name).map_or(name, |file| &file.path).to_owned()
    }

    /// A fault in the file of a template; its place is one in the text with marks.
    fn at(&self, name: &str, (spot, reason): PlacedFault) -> TemplateError {
        let file = self.0.iter().find(|file| file.name == name);
        let spot = spot.map(|spot| file.map_or(spot, |file| file.marked.original(spot)));
        TemplateError {
            file: self.named(name),
            line: spot.map(|spot| spot.line),
            column: spot.map(|spot| spot.column),
            reason,
            spent: false,
        }
    }

    /// Says what is wrong in terms of files. An error that names no template is laid to
    /// the one called `asked`.
    fn fault(&self, error: &Error, asked: &str) -> TemplateError {
        match error.kind() {
            ErrorKind::SyntaxError(report) | ErrorKind::RenderingError(report) => self.reported(report),
            ErrorKind::MissingParent { current: name, .. }
            | ErrorKind::CircularExtend { tpl: name, .. }
            | ErrorKind::CircularInclude { tpl: name, .. } => self.at(name, (self.kin(name), error.to_string())),
            ErrorKind::TemplateNotFound(name) => self.whole(name, error.to_string()),
            ErrorKind::Msg(text) => self.printed(text).unwrap_or_else(|| self.whole(asked, text.clone())),
            _ => self.whole(asked, error.to_string()),
        }
    }

    /// Where a template first names another.
    fn kin(&self, name: &str) -> Option<TemplatePlace> {
        let text = &self.0.iter().find(|file| file.name == name)?.marked.text;
        let tag = tags(text).into_iter().find(|tag| ["extends", "include"].contains(&tag.word()))?;
        Some(TemplatePlace::START.behind(text.get(..tag.start)?))
    }

    fn reported(&self, report: &ReportError) -> TemplateError {
        let span = report.span();
        // The engine counts columns from zero.
        let spot = TemplatePlace { line: span.start_line, column: span.start_col + 1 };
        self.at(report.filename(), (Some(spot), report.message().to_owned()))
    }

    fn whole(&self, name: &str, reason: String) -> TemplateError {
        self.at(name, (None, reason))
    }

    /// Reads the place back from a printed report.
    ///
    /// A filter, test, function, block or included template that does not exist is found
    /// when the templates are put together, and the engine hands those faults out as
    /// finished text only. The first one is enough to act on.
    fn printed(&self, text: &str) -> Option<TemplateError> {
        let mut lines = text.lines();
        let reason = lines.next()?.strip_prefix("error: ")?;
        let place = lines.next()?.trim_start().strip_prefix("--> ")?;
        // The name may hold colons itself, so the numbers are taken from the end.
        let (place, column) = place.rsplit_once(':')?;
        let (name, line) = place.rsplit_once(':')?;
        let spot = TemplatePlace { line: line.parse().ok()?, column: column.parse().ok()? };
        Some(self.at(name, (Some(spot), reason.to_owned())))
    }
}

/// `{{ "quote-open-until" | say }}`, `{{ "quote-tax-number" | say(number=head.tax_number) }}`: a phrase of the language.
fn said(phrases: &Phrases, id: &Value, arguments: &Kwargs) -> TeraResult<Value> {
    let id = text_of("say", id)?;
    let mut put_in = FluentArgs::new();
    for (name, value) in arguments.iter() {
        put_in.set(name.as_str().unwrap_or_default().to_owned(), text_of("say", value)?.into_owned());
    }
    phrases.say(&id, &put_in).map(Value::from).map_err(|fault| {
        let known = Phrases::known().any(|known| known == id);
        let near = nearest(&id, Phrases::known()).filter(|_| !known).map(|near| format!("; did you mean `{near}`?"));
        Error::message(fault + &near.unwrap_or_default())
    })
}

/// Adds the filters that lay out plain text.
fn register_filters(engine: &mut Tera) {
    engine.register_filter("left", left);
    engine.register_filter("right", right);
    engine.register_filter("centre", centre);
    engine.register_filter("wrap", wrap);
    engine.register_filter("times", times);
    engine.register_filter("laid", laid);
}

/// `{{ name | left(width=20) }}`: fills up with blanks on the right.
fn left(value: &Value, arguments: Kwargs, _: &State) -> TeraResult<Value> {
    Call::new("left", value, arguments, &["width"])?.aligned(|_| 0)
}

/// `{{ price | right(width=10) }}`: fills up with blanks on the left.
fn right(value: &Value, arguments: Kwargs, _: &State) -> TeraResult<Value> {
    Call::new("right", value, arguments, &["width"])?.aligned(|spare| spare)
}

/// `{{ title | centre(width=80) }}`: fills up with blanks on both sides.
fn centre(value: &Value, arguments: Kwargs, _: &State) -> TeraResult<Value> {
    Call::new("centre", value, arguments, &["width"])?.aligned(|spare| spare / 2)
}

/// `{{ note | wrap(width=80, indent=4) }}`: breaks a paragraph into lines, of which all but
/// the first are indented.
fn wrap(value: &Value, arguments: Kwargs, _: &State) -> TeraResult<Value> {
    Call::new("wrap", value, arguments, &["width", "indent"])?.wrapped()
}

/// `{{ "-" | times(n=80) }}`: says the same thing `n` times.
fn times(value: &Value, arguments: Kwargs, _: &State) -> TeraResult<Value> {
    let call = Call::new("times", value, arguments, &["n"])?;
    let count = call.needed("n")?;
    Ok(call.result(call.text.repeat(count)))
}

/// `{{ row.cells | laid(out="14 -20") }}`: the cells of a row side by side, each in its width; a width below zero stands for
/// a figure, filled up on the left. One call for a row: a long list has ten thousand rows.
#[allow(clippy::needless_pass_by_value, reason = "so the engine calls a filter")]
fn laid(value: &Value, arguments: Kwargs, _: &State) -> TeraResult<Value> {
    refuse_others("laid", &arguments, &["out"])?;
    let widths = || Error::message("filter `laid` needs `out`, the width of each cell, such as \"14 -20\"");
    let out = arguments.get::<String>("out").ok().flatten().ok_or_else(widths)?;
    let cells = value.as_array().ok_or_else(|| Error::message("filter `laid` lays out a list of cells"))?;
    let mut row = String::with_capacity(WIDEST / 8);
    for (cell, width) in cells.iter().zip(out.split(' ')) {
        let width = width.parse::<i16>().ok().filter(|width| usize::from(width.unsigned_abs()) <= WIDEST);
        let (width, text) = (width.ok_or_else(widths)?, text_of("laid", cell)?);
        let spare = usize::from(width.unsigned_abs()).saturating_sub(text.width());
        row.extend(std::iter::repeat_n(' ', if width < 0 { spare } else { 0 }));
        row.push_str(&text);
        row.extend(std::iter::repeat_n(' ', if width < 0 { 0 } else { spare }));
    }
    Ok(Value::from(row))
}

/// One use of a filter: what it is applied to, and with which arguments.
struct Call<'a> {
    filter: &'static str,
    text: Cow<'a, str>,
    is_safe: bool,
    arguments: Kwargs,
}

impl<'a> Call<'a> {
    fn new(filter: &'static str, value: &'a Value, arguments: Kwargs, known: &[&str]) -> TeraResult<Self> {
        refuse_others(filter, &arguments, known)?;
        let text = text_of(filter, value)?;
        Ok(Self { filter, text, is_safe: value.is_safe(), arguments })
    }

    /// Pads every line to the width asked for; `before` says how many of the spare columns
    /// go in front. A line that is too long is left whole, for a cut amount is a wrong one; so that it does not run into
    /// what stands beside it, one column is spared for it all the same.
    fn aligned(&self, before: impl Fn(usize) -> usize) -> TeraResult<Value> {
        let width = self.needed("width")?;
        // A long list has tens of thousands of these: one text, filled from the front.
        let mut padded = String::with_capacity(self.text.len() + width);
        for (nth, line) in self.text.split('\n').enumerate() {
            let spare = width.checked_sub(line.width()).unwrap_or(1);
            let front = before(spare);
            padded.extend((nth > 0).then_some('\n'));
            padded.extend(std::iter::repeat_n(' ', front));
            padded.push_str(line);
            padded.extend(std::iter::repeat_n(' ', spare - front));
        }
        Ok(self.result(padded))
    }

    fn wrapped(&self) -> TeraResult<Value> {
        let width = self.needed("width")?;
        let indent = self.optional("indent")?.unwrap_or(0);
        if indent >= width {
            return Err(self.complaint("an `indent` smaller than its `width`"));
        }
        let blank = " ".repeat(indent);
        let options = Options::new(width)
            .subsequent_indent(&blank)
            // Codes and sizes such as COT-5 or 10-12 stay in one piece.
            .word_splitter(WordSplitter::NoHyphenation);
        Ok(self.result(textwrap::fill(&self.text, options)))
    }

    fn needed(&self, name: &str) -> TeraResult<usize> {
        let wanted = || format!("a `{name}`, a whole number up to {WIDEST}");
        self.optional(name)?.ok_or_else(|| self.complaint(&wanted()))
    }

    fn optional(&self, name: &str) -> TeraResult<Option<usize>> {
        match self.arguments.get::<usize>(name) {
            Ok(Some(count)) if count > WIDEST => Err(()),
            Ok(count) => Ok(count),
            Err(_) => Err(()),
        }
        .map_err(|()| self.complaint(&format!("a whole number up to {WIDEST} as `{name}`")))
    }

    /// Says what the filter needs. The engine's own words for a bad argument name neither
    /// the filter nor the argument, and point at the value in front of the filter.
    fn complaint(&self, wanted: &str) -> Error {
        Error::message(format!("filter `{}` needs {wanted}", self.filter))
    }

    /// Marks the result as safe to print unescaped if what went in was.
    fn result(&self, text: String) -> Value {
        if self.is_safe { Value::safe_string(&text) } else { Value::from(text) }
    }
}

/// Refuses arguments that the filter would ignore, since a misspelt name is the likely cause.
fn refuse_others(filter: &str, arguments: &Kwargs, known: &[&str]) -> TeraResult<()> {
    let mut names = arguments.iter().filter_map(|(key, _)| key.as_str());
    match names.find(|name| !known.contains(name)) {
        Some(name) => Err(Error::message(format!("filter `{filter}` has no argument `{name}`"))),
        None => Ok(()),
    }
}

/// Takes the text to lay out from a value. Lists and missing values are mistakes; the engine
/// would let a filter see the latter as an empty text.
fn text_of<'a>(filter: &str, value: &'a Value) -> TeraResult<Cow<'a, str>> {
    if value.is_undefined() || value.is_array() || value.is_map() {
        let kind = value.name();
        return Err(Error::message(format!("filter `{filter}` cannot lay out this value ({kind})")));
    }
    Ok(value.as_str().map_or_else(|| Cow::Owned(value.to_string()), Cow::Borrowed))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

    use serde_json::{Value as Json, json};

    use super::*;

    fn english() -> Arc<Phrases> {
        Phrases::of_language("en")
    }

    /// Renders one template under the given name.
    fn render(name: &str, text: &str, data: &Json) -> Result<String, TemplateError> {
        Templates::new(&[(name, text)], &[], &english())?.render(name, data)
    }

    fn page(text: &str, data: &Json) -> String {
        render("page.txt", text, data).unwrap()
    }

    fn fault(text: &str, data: &Json) -> TemplateError {
        render("page.txt", text, data).unwrap_err()
    }

    fn own(name: &str, path: &str, text: &str) -> OwnTemplate {
        OwnTemplate { name: name.to_owned(), path: path.to_owned(), text: text.to_owned() }
    }

    /// Shows where a fault lies and the start of what it says.
    fn at(fault: &TemplateError) -> (&str, Option<usize>, Option<usize>) {
        (&fault.file, fault.line, fault.column)
    }

    #[test]
    fn cells_are_laid_side_by_side() {
        let data = json!({ "cells": ["ab", "c", "too long"], "out": "4 -3 -2" });
        assert_eq!(page("{{ cells | laid(out=out) }}|", &data), "ab    ctoo long|");
        for text in ["{{ cells | laid }}", "{{ cells | laid(out='4 x') }}", "{{ out | laid(out=out) }}"] {
            assert!(fault(text, &data).reason.contains("filter `laid`"), "{text}");
        }
    }

    #[test]
    fn html_is_escaped_and_text_is_not() {
        let data = json!({ "name": "<b>\"Tom\" & 'Ann'</b>" });
        let html = render("page.html", "{{ name }}", &data).unwrap();
        let escaped = "&lt;b&gt;&quot;Tom&quot; &amp; &#39;Ann&#39;&lt;/b&gt;";
        assert_eq!(html, escaped);
        assert_eq!(page("{{ name }}", &data), "<b>\"Tom\" & 'Ann'</b>");
        let trusted = render("page.html", "{{ name | safe }}", &data).unwrap();
        assert_eq!(trusted, "<b>\"Tom\" & 'Ann'</b>");
    }

    #[test]
    fn attributes_and_filtered_values_are_escaped_too() {
        let text = "<p title=\"{{ name }}\">{{ name | left(width=4) }}</p>";
        let html = render("page.html", text, &json!({ "name": "\"<" })).unwrap();
        assert_eq!(html, "<p title=\"&quot;&lt;\">&quot;&lt;  </p>");
    }

    #[test]
    fn an_included_text_is_escaped_like_the_page_around_it() {
        let builtin = [("page.html", "{% include 'name.txt' %}"), ("name.txt", "{{ name }}")];
        let templates = Templates::new(&builtin, &[], &english()).unwrap();
        let data = json!({ "name": "<" });
        assert_eq!(templates.render("page.html", &data).unwrap(), "&lt;");
        assert_eq!(templates.render("name.txt", &data).unwrap(), "<");
    }

    #[test]
    fn templates_extend_and_include_one_another() {
        let builtin = [
            ("base.txt", "[{% block head %}base{% endblock %}|{% block body %}{% endblock %}]"),
            (
                "quote.txt",
                "{% extends 'base.txt' %}\
                {% block head %}{{ super() }}+{% endblock %}\
                {% block body %}{% for row in rows %}{% include 'row.txt' %}{% endfor %}{% endblock %}",
            ),
            ("row.txt", "<{{ row.name }}>"),
        ];
        let templates = Templates::new(&builtin, &[], &english()).unwrap();
        let data = json!({ "rows": [{ "name": "a" }, { "name": "b" }] });
        assert_eq!(templates.render("quote.txt", &data).unwrap(), "[base+|<a><b>]");
    }

    #[test]
    fn components_stand_in_for_macros() {
        let builtin = [
            ("parts.html", "{% component cell(text) %}<td>{{ text }}</td>{% endcomponent cell %}"),
            ("page.html", "{{<cell text={name} />}}"),
        ];
        let templates = Templates::new(&builtin, &[], &english()).unwrap();
        let html = templates.render("page.html", &json!({ "name": "<" })).unwrap();
        assert_eq!(html, "<td>&lt;</td>");
    }

    #[test]
    fn an_override_shadows_a_builtin_template() {
        let builtin = [("page.txt", "built in {% include 'foot.txt' %}"), ("foot.txt", "foot")];
        let overrides = [own("foot.txt", "shop/foot.txt", "own foot {{ n }}")];
        let templates = Templates::new(&builtin, &overrides, &english()).unwrap();
        let text = templates.render("page.txt", &json!({ "n": 3 })).unwrap();
        assert_eq!(text, "built in own foot 3");
        let fault = templates.render("page.txt", &json!({})).unwrap_err();
        assert_eq!(at(&fault), ("shop/foot.txt", Some(1), Some(13)));
    }

    #[test]
    fn an_override_may_bring_templates_of_its_own() {
        let overrides =
            [own("page.txt", "shop/page.txt", "{% extends 'mine.txt' %}"), own("mine.txt", "shop/mine.txt", "mine")];
        let templates = Templates::new(&[("page.txt", "theirs")], &overrides, &english()).unwrap();
        assert_eq!(templates.render("page.txt", &json!({})).unwrap(), "mine");
    }

    #[test]
    fn a_broken_override_is_reported_by_its_path() {
        let text = "line one\n  {{ name | }}\n";
        let overrides = [own("page.txt", "shop/templates/page.txt", text)];
        let fault = Templates::new(&[("page.txt", "fine")], &overrides, &english()).err().unwrap();
        assert_eq!(at(&fault), ("shop/templates/page.txt", Some(2), Some(13)));
        assert!(!fault.reason.contains('\n'), "{}", fault.reason);
        let shown = format!("shop/templates/page.txt:2:13: {}", fault.reason);
        assert_eq!(fault.to_string(), shown);
    }

    #[test]
    fn columns_count_characters() {
        let fault = fault("né — {{ x y }}", &json!({}));
        assert_eq!(at(&fault), ("page.txt", Some(1), Some(11)));
    }

    #[test]
    fn unfinished_templates_are_faults() {
        let open = fault("a\n{% if x %}\nb", &json!({}));
        assert_eq!((open.file.as_str(), open.line), ("page.txt", Some(3)));
    }

    #[test]
    fn what_does_not_exist_is_found_at_load() {
        let overrides = |text| [own("page.txt", "C:/shop/page.txt", text)];
        let load = |text| Templates::new(&[], &overrides(text), &english()).err().unwrap();
        let filter = load("a\n {{ x | lefft(width=3) }}");
        assert_eq!(at(&filter), ("C:/shop/page.txt", Some(2), Some(9)));
        assert_eq!(filter.reason, "Unknown filter `lefft`");
        let include = load("{% include 'gone.txt' %}");
        assert_eq!(at(&include), ("C:/shop/page.txt", Some(1), Some(12)));
        assert_eq!(include.reason, "Unknown template `gone.txt`");
        assert_eq!(load("{{ nothing() }}").reason, "Unknown function `nothing`");
        assert_eq!(load("{% if x is nothing %}{% endif %}").reason, "Unknown test `nothing`");
    }

    #[test]
    fn a_block_unknown_to_the_parent_is_found_at_load() {
        let builtin = [("base.txt", "base")];
        let text = "{% extends 'base.txt' %}\n{% block x %}{% endblock %}";
        let overrides = [own("page.txt", "shop/page.txt", text)];
        let fault = Templates::new(&builtin, &overrides, &english()).err().unwrap();
        assert_eq!((fault.file.as_str(), fault.line), ("shop/page.txt", Some(2)));
    }

    #[test]
    fn faults_in_the_family_of_templates_lie_where_they_are_named() {
        let load = |text| {
            let overrides = [own("page.txt", "shop/page.txt", text)];
            Templates::new(&[], &overrides, &english()).err().unwrap()
        };
        let missing = load("{% extends 'gone.txt' %}");
        assert_eq!(at(&missing), ("shop/page.txt", Some(1), Some(1)));
        assert!(missing.reason.contains("gone.txt"), "{}", missing.reason);
        let circle = load("\n {% extends 'page.txt' %}");
        assert_eq!(at(&circle), ("shop/page.txt", Some(2), Some(2)));
        let included = load("{% if a %} {% include 'page.txt' %}{% endif %}");
        assert_eq!(at(&included), ("shop/page.txt", Some(1), Some(12)));
    }

    #[test]
    fn a_template_that_does_not_exist_is_named() {
        let fault = Templates::new(&[], &[], &english()).unwrap().render("gone.txt", &json!({})).unwrap_err();
        assert_eq!(at(&fault), ("gone.txt", None, None));
    }

    #[test]
    fn data_must_have_names() {
        assert_eq!(at(&fault("x", &json!([1]))), ("page.txt", None, None));
    }

    #[test]
    fn undefined_names_are_faults() {
        let data = json!({ "piece": { "name": "x" }, "none": null });
        let variable = fault("a\n b {{ nmae }}", &data);
        assert_eq!(at(&variable), ("page.txt", Some(2), Some(7)));
        assert!(variable.reason.contains("nmae"), "{}", variable.reason);
        let field = fault("{{ piece.nmae }}", &data);
        assert_eq!(at(&field), ("page.txt", Some(1), Some(10)));
        assert!(field.reason.contains("nmae"), "{}", field.reason);
        assert_eq!(fault("{% for x in rows %}{% endfor %}", &data).line, Some(1));
        assert_eq!(fault("{{ nmae | left(width=3) }}", &data).line, Some(1));
        assert_eq!(fault("{{ piece.nmae | left(width=3) }}", &data).line, Some(1));
    }

    #[test]
    fn faults_lie_in_the_template_that_holds_them() {
        let builtin = [
            ("base.txt", "base\n{% block body %}{% endblock %}"),
            ("part.txt", "{% component part(x) %}\n\n{{ x.gone }}{% endcomponent part %}"),
            ("child.txt", "{% extends 'base.txt' %}\n\n\n{% block body %}{{ gone }}{% endblock %}"),
            ("user.txt", "{{<part x={y} />}}"),
        ];
        let templates = Templates::new(&builtin, &[], &english()).unwrap();
        let child = templates.render("child.txt", &json!({})).unwrap_err();
        assert_eq!(at(&child), ("child.txt", Some(4), Some(20)));
        let user = templates.render("user.txt", &json!({ "y": {} })).unwrap_err();
        assert_eq!(at(&user), ("part.txt", Some(3), Some(6)));
    }

    #[test]
    fn absent_names_can_be_asked_about() {
        let data = json!({ "none": null });
        assert_eq!(page("{{ gone | default(value='-') }}", &data), "-");
        assert_eq!(page("{% if gone is defined %}a{% else %}b{% endif %}", &data), "b");
        assert_eq!(page("{% if gone %}a{% else %}b{% endif %}", &data), "b");
        assert_eq!(page("[{{ none }}][{{ none | left(width=2) }}]", &data), "[][  ]");
    }

    #[test]
    fn columns_are_padded_to_a_width() {
        let data = json!({ "name": "cord", "n": 7, "f": 1.5, "long": "too long" });
        assert_eq!(page("[{{ name | left(width=6) }}]", &data), "[cord  ]");
        assert_eq!(page("[{{ name | right(width=6) }}]", &data), "[  cord]");
        assert_eq!(page("[{{ name | centre(width=7) }}]", &data), "[ cord  ]");
        assert_eq!(page("[{{ n | right(width=3) }}]", &data), "[  7]");
        assert_eq!(page("[{{ f | right(width=4) }}]", &data), "[ 1.5]");
        assert_eq!(page("[{{ long | left(width=3) }}]", &data), "[too long ]");
        assert_eq!(page("[{{ long | right(width=3) }}]", &data), "[ too long]");
    }

    #[test]
    fn width_is_what_a_terminal_shows() {
        let data = json!({ "kanji": "結び", "accent": "e\u{301}te\u{301}", "yen": "￥5" });
        assert_eq!(page("[{{ kanji | left(width=6) }}]", &data), "[結び  ]");
        assert_eq!(page("[{{ accent | right(width=4) }}]", &data), "[ e\u{301}te\u{301}]");
        assert_eq!(page("[{{ yen | right(width=4) }}]", &data), "[ ￥5]");
    }

    #[test]
    fn every_line_is_padded() {
        let data = json!({ "two": "a\nbcd" });
        assert_eq!(page("{{ two | right(width=4) }}", &data), "   a\n bcd");
    }

    #[test]
    fn paragraphs_are_wrapped_with_a_hanging_indent() {
        let data = json!({ "note": "Wash by hand in cold water, dry flat." });
        let wrapped = page("{{ note | wrap(width=16, indent=2) }}", &data);
        assert_eq!(wrapped, "Wash by hand in\n  cold water,\n  dry flat.");
        let flush = page("{{ note | wrap(width=16) }}", &data);
        assert_eq!(flush, "Wash by hand in\ncold water, dry\nflat.");
    }

    #[test]
    fn wrapping_respects_what_belongs_together() {
        let data = json!({ "code": "use COT-5 cord", "price": "is 1\u{a0}234,50\u{a0}€ now" });
        assert_eq!(page("{{ code | wrap(width=8) }}", &data), "use\nCOT-5\ncord");
        assert_eq!(page("{{ price | wrap(width=11) }}", &data), "is\n1\u{a0}234,50\u{a0}€\nnow");
        let wide = json!({ "text": "結び目の練習" });
        assert_eq!(page("{{ text | wrap(width=6) }}", &wide), "結び目\nの練習");
        let lines = json!({ "text": "one\ntwo three" });
        assert_eq!(page("{{ text | wrap(width=6, indent=1) }}", &lines), "one\n two\n three");
    }

    #[test]
    fn rules_are_drawn_by_repetition() {
        assert_eq!(page("{{ '-' | times(n=5) }}", &json!({})), "-----");
        assert_eq!(page("{{ '=-' | times(n=2) }}", &json!({})), "=-=-");
        assert_eq!(page("[{{ '-' | times(n=0) }}]", &json!({})), "[]");
        let data = json!({ "title": "Quote" });
        let under = "{{ '-' | times(n=title | length) }}";
        assert_eq!(page(under, &data), "-----");
    }

    #[test]
    fn filter_sections_are_laid_out_too() {
        let text = "{% filter wrap(width=8) %}{{ a }} and {{ b }}{% endfilter %}";
        assert_eq!(page(text, &json!({ "a": "one", "b": "<two>" })), "one and\n<two>");
    }

    #[test]
    fn bad_filter_arguments_say_which_and_where() {
        let data = json!({ "name": "x", "list": [1] });
        let reason = |text| fault(text, &data).reason;
        let whole = "filter `left` needs a whole number up to 1000 as `width`";
        assert_eq!(reason("{{ name | left(width='wide') }}"), whole);
        assert_eq!(reason("{{ name | left(width=-1) }}"), whole);
        assert_eq!(reason("{{ name | left(width=1001) }}"), whole);
        assert_eq!(reason("{{ name | left(width=2.5) }}"), whole);
        let needed = "filter `times` needs a `n`, a whole number up to 1000";
        assert_eq!(reason("{{ name | times }}"), needed);
        let unknown = "filter `wrap` has no argument `indnt`";
        assert_eq!(reason("{{ name | wrap(width=9, indnt=2) }}"), unknown);
        let narrow = "filter `wrap` needs an `indent` smaller than its `width`";
        assert_eq!(reason("{{ name | wrap(width=4, indent=4) }}"), narrow);
        let list = "filter `left` cannot lay out this value (array)";
        assert_eq!(reason("{{ list | left(width=4) }}"), list);
        let place = fault("a\n  {{ name | left(width='wide') }}", &data);
        assert_eq!(at(&place), ("page.txt", Some(2), Some(13)));
    }

    #[test]
    fn hyphens_trim_the_white_space_around_tags() {
        let text = "Items:\n\n{%- for row in rows %}\n- {{ row }}\n{%- endfor %}\n\nEnd\n";
        let data = json!({ "rows": ["a", "b"] });
        assert_eq!(page(text, &data), "Items:\n- a\n- b\n\nEnd\n");
        assert_eq!(page("a  {{- 'b' -}}  c", &data), "abc");
        assert_eq!(page("a {#- hidden -#} b", &data), "ab");
    }

    #[test]
    fn maps_keep_the_order_of_their_fields() {
        let data = json!({ "totals": { "cord": 1, "time": 2, "beads": 3, "fees": 4, "ads": 5 } });
        let text = "{% for name, n in totals %}{{ name }}{{ n }} {% endfor %}";
        assert_eq!(page(text, &data), "cord1 time2 beads3 fees4 ads5 ");
    }
}
