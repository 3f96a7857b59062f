//! The phrases of the pages: one file for a language in templates/phrases/, in the syntax of Project Fluent.
//!
//! A phrase that the file of a language lacks is said in English. Figures come in worded already: see [`crate::words`].

use std::fmt;
use std::sync::Arc;

use fluent_bundle::{FluentArgs, FluentResource, FluentValue, concurrent::FluentBundle};
use include_dir::{Dir, include_dir};
use intl_memoizer::{Memoizable, concurrent::IntlLangMemoizer};
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use unic_langid::LanguageIdentifier;

use crate::money::{MoneyError, NumberWords};

/// The language that has every phrase.
pub const ENGLISH: &str = "en";

static FILES: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/../../templates/phrases");

/// What the pages say in one language.
pub struct Phrases {
    /// The language's own first, English last.
    bundles: Vec<FluentBundle<FluentResource>>,
    /// How many are the language's own.
    own: usize,
}

impl fmt::Debug for Phrases {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_list().entries(self.bundles.iter().map(|bundle| &bundle.locales)).finish()
    }
}

impl Phrases {
    /// The phrases of a language by its tag, such as `fr-CH`: of `fr-CH.ftl`, else of `fr.ftl`, else of `en.ftl`.
    pub fn of_language(language: &str) -> Arc<Self> {
        let general = language.split('-').next().unwrap_or_default();
        let mut own = vec![language, general];
        own.dedup();
        // What a file says in one part of the world is counted as the shop's own part of it does.
        let own = own.into_iter().filter(|tag| *tag != ENGLISH).filter_map(|tag| Some((language, file(tag)?)));
        let english = if general == ENGLISH { language } else { ENGLISH };
        let files: Vec<_> = own.chain(file(ENGLISH).map(|text| (english, text))).collect();
        Arc::new(Self::of(language, &files))
    }

    /// The phrases of some files, each with the tag that it is read by; the one that is asked first in front.
    fn of(language: &str, files: &[(&str, &str)]) -> Self {
        let own = files.iter().filter(|(tag, _)| *tag == language).count();
        Self { bundles: files.iter().map(|(tag, text)| bundle(tag, text)).collect(), own }
    }

    /// What the first language says whose file has the phrase; the fault is what it can't be said for.
    pub(crate) fn say(&self, id: &str, arguments: &FluentArgs<'_>) -> Result<String, String> {
        let said = self.bundles.iter().find_map(|bundle| Some((bundle, bundle.get_message(id)?.value()?)));
        let (bundle, pattern) = said.ok_or_else(|| format!("there is no phrase `{id}`"))?;
        let mut faults = Vec::new();
        let text = bundle.format_pattern(pattern, Some(arguments), &mut faults).into_owned();
        faults.first().map_or(Ok(text), |fault| Err(format!("the phrase `{id}` needs more: {fault}")))
    }

    /// Whether the language itself has the phrase, and not only English.
    pub(crate) fn has_own(&self, id: &str) -> bool {
        self.bundles.iter().take(self.own).any(|bundle| bundle.has_message(id))
    }

    /// Every phrase that can be asked for.
    pub(crate) fn known() -> impl Iterator<Item = &'static str> {
        let lines = file(ENGLISH).unwrap_or_default().lines();
        lines.filter_map(|line| line.split_once(" =").map(|(id, _)| id)).filter(|id| !id.starts_with([' ', '#']))
    }
}

fn file(tag: &str) -> Option<&'static str> {
    FILES.get_file(format!("{tag}.ftl"))?.contents_utf8()
}

/// A count in the figures of the language. It is a whole number: what is measured comes in worded.
fn figure(value: &FluentValue<'_>, language: &IntlLangMemoizer) -> Option<String> {
    let FluentValue::Number(number) = value else { return None };
    let count = Decimal::from_f64(number.value)?;
    language.with_try_get::<Figures, _, _>((), |figures| figures.0.write(count)).ok()
}

/// How a language writes plain numbers, made once for a bundle.
struct Figures(NumberWords);

impl Memoizable for Figures {
    type Args = ();
    type Error = MoneyError;

    fn construct(language: LanguageIdentifier, (): ()) -> Result<Self, MoneyError> {
        NumberWords::new(&language.to_string()).map(Self)
    }
}

/// A language's phrases. A phrase with a slip of the pen is left out here and told by the tests of the files.
fn bundle(tag: &str, text: &str) -> FluentBundle<FluentResource> {
    let resource = FluentResource::try_new(text.to_owned()).unwrap_or_else(|(resource, _)| resource);
    let locale = tag.parse::<LanguageIdentifier>().unwrap_or_default();
    let mut bundle = FluentBundle::new_concurrent(vec![locale]);
    // Pages are set in one direction: marks of direction around each figure would be in the way of whoever copies it.
    bundle.set_use_isolating(false);
    bundle.set_formatter(Some(figure));
    bundle.add_resource_overriding(resource);
    bundle
}

/// Says a phrase: `say!(words, "id", name = value)`.
macro_rules! say {
    ($words:expr, $id:literal $(, $name:ident = $value:expr)* $(,)?) => {
        $words.say($id, &[$((stringify!($name), fluent_bundle::FluentValue::from($value))),*])
    };
}
pub(crate) use say;

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

    use std::collections::{BTreeMap, BTreeSet};
    use std::fs;
    use std::path::Path;

    use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
    use fluent_syntax::parser::parse;

    use super::*;
    use crate::BUILT_IN;

    /// Phrases by name, each with what is put into it.
    type Needs = BTreeMap<String, BTreeSet<String>>;

    /// What a file's phrases need; every slip of the pen in it ends the test.
    fn needs(text: &'static str) -> Needs {
        let resource = parse(text).map_err(|(_, faults)| faults).unwrap();
        let messages = resource.body.into_iter().filter_map(|entry| match entry {
            Entry::Message(message) => Some((message.id.name.to_owned(), variables(&message.value.unwrap()))),
            _ => None,
        });
        let mut needs = Needs::new();
        for (id, variables) in messages {
            assert!(needs.insert(id.clone(), variables).is_none(), "the phrase `{id}` stands twice");
        }
        needs
    }

    fn variables(pattern: &Pattern<&str>) -> BTreeSet<String> {
        let inside = pattern.elements.iter().flat_map(|element| match element {
            PatternElement::Placeable { expression: Expression::Select { selector, variants } } => {
                let within = variants.iter().flat_map(|variant| variables(&variant.value));
                within.chain(variable(selector)).collect::<Vec<_>>()
            }
            PatternElement::Placeable { expression: Expression::Inline(inline) } => {
                variable(inline).into_iter().collect()
            }
            PatternElement::TextElement { .. } => Vec::new(),
        });
        inside.collect()
    }

    fn variable(expression: &InlineExpression<&str>) -> Option<String> {
        match expression {
            InlineExpression::VariableReference { id } => Some(id.name.to_owned()),
            _ => None,
        }
    }

    /// The parts between a bracket that is open and the one that closes it, parted by the commas of the same depth.
    fn parts(text: &str) -> Vec<String> {
        let (mut parts, mut depth, mut quoted) = (vec![String::new()], 0, false);
        for c in text.chars() {
            match c {
                '"' => quoted = !quoted,
                _ if quoted => {}
                ')' | ']' | '}' if depth == 0 => break,
                '(' | '[' | '{' => depth += 1,
                ')' | ']' | '}' => depth -= 1,
                ',' if depth == 0 => {
                    parts.push(String::new());
                    continue;
                }
                _ => {}
            }
            parts.last_mut().unwrap().push(c);
        }
        parts.iter().map(|part| part.trim().to_owned()).filter(|part| !part.is_empty()).collect()
    }

    fn names(parts: &[String]) -> BTreeSet<String> {
        parts.iter().filter_map(|part| Some(part.split_once('=')?.0.trim().to_owned())).collect()
    }

    /// What a template says: the name of each phrase with the names of what is put in.
    fn said_in_template(text: &str) -> Vec<(String, BTreeSet<String>)> {
        let said = text.match_indices("\" | say").map(|(at, asking)| {
            let id = text[..at].rsplit('"').next().unwrap();
            let put_in = text[at + asking.len()..].strip_prefix('(').map(parts).unwrap_or_default();
            (id.to_owned(), names(&put_in))
        });
        said.collect()
    }

    /// The same of a file of the program.
    fn said_in_program(text: &str) -> Vec<(String, BTreeSet<String>)> {
        let said = text.match_indices("say!(").filter_map(|(at, asking)| {
            let parts = parts(&text[at + asking.len()..]);
            let id = parts.get(1)?.strip_prefix('"')?.strip_suffix('"')?;
            Some((id.to_owned(), names(&parts[2..])))
        });
        said.collect()
    }

    fn program(folder: &Path) -> Vec<String> {
        let entries = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
        let texts = entries.flat_map(|path| {
            if path.is_dir() {
                return program(&path);
            }
            let text = fs::read_to_string(&path).unwrap();
            // Tests come last in a file.
            let program = text.split("#[cfg(test)]").next().unwrap();
            vec![program.lines().filter(|line| !line.trim_start().starts_with("//")).collect::<Vec<_>>().join("\n")]
        });
        texts.collect()
    }

    #[test]
    fn every_phrase_that_is_asked_for_is_there_and_gets_what_it_needs_and_none_is_idle() {
        let known = needs(file(ENGLISH).unwrap());
        let here = Path::new(env!("CARGO_MANIFEST_DIR"));
        let program =
            [here.join("src"), here.join("../cli/src")].iter().flat_map(|folder| program(folder)).collect::<Vec<_>>();
        let templates = BUILT_IN.iter().flat_map(|(_, text)| said_in_template(text));
        let said: Vec<_> = templates.chain(program.iter().flat_map(|text| said_in_program(text))).collect();
        for (id, put_in) in &said {
            assert_eq!(known.get(id), Some(put_in), "{id}");
        }
        let idle: Vec<_> = known.keys().filter(|id| said.iter().all(|(said, _)| said != *id)).collect();
        assert!(idle.is_empty(), "no page says {idle:?}");
        assert_eq!(Phrases::known().collect::<BTreeSet<_>>(), known.keys().map(String::as_str).collect());
    }

    #[test]
    fn a_language_puts_the_same_into_a_phrase_as_english() {
        let english = needs(file(ENGLISH).unwrap());
        for other in FILES.files().filter_map(|file| file.contents_utf8()) {
            for (id, variables) in needs(other) {
                assert!(english.get(&id).is_some_and(|known| variables.is_subset(known)), "{id}");
            }
        }
    }

    /// A text without what stands between two signs.
    fn without(text: &str, opened: &str, closed: &str) -> String {
        let mut parts = text.split(opened);
        let first = parts.next().unwrap().to_owned();
        parts.fold(first, |kept, part| kept + part.split_once(closed).map_or("", |(_, rest)| rest))
    }

    #[test]
    fn templates_say_nothing_by_themselves() {
        for (name, text) in BUILT_IN.iter().filter(|(name, _)| !name.ends_with(".css")) {
            let tagless = |text: &str| without(&without(text, "{{", "}}"), "{%", "%}");
            let bare = tagless(text);
            for label in ["aria-label=\"", "data-label=\"", "content: \""] {
                let said = bare.split(label).skip(1).filter_map(|rest| rest.split('"').next());
                assert!(said.clone().all(|said| said.trim().is_empty()), "{name}: {:?}", said.collect::<Vec<_>>());
            }
            // Rules of style are no words; in text, an x is the sign between a number and a thing.
            let unstyled = without(text, "{% block more_style %}", "{% endblock more_style %}");
            let ruled = without(&without(&tagless(&unstyled), "<style>", "</style>"), "<", ">");
            let words = ruled.split(|c: char| !c.is_alphabetic()).filter(|word| !word.is_empty() && *word != "x");
            assert_eq!(words.collect::<Vec<_>>(), Vec::<&str>::new(), "{name}");
        }
    }

    fn say_in(
        phrases: &Phrases,
        id: &str,
        arguments: &[(&'static str, FluentValue<'static>)],
    ) -> Result<String, String> {
        phrases.say(id, &arguments.iter().cloned().collect())
    }

    #[test]
    fn what_a_language_lacks_is_said_in_english() {
        let phrases = Phrases::of("de-AT", &[("de-AT", "quote = Angebot"), (ENGLISH, file(ENGLISH).unwrap())]);
        assert_eq!(say_in(&phrases, "quote", &[]).as_deref(), Ok("Angebot"));
        assert_eq!(say_in(&phrases, "quote-due", &[]).as_deref(), Ok("Due"));
        assert!(phrases.has_own("quote") && !phrases.has_own("quote-due"));
        assert_eq!(say_in(&phrases, "nothing", &[]), Err("there is no phrase `nothing`".to_owned()));
        assert!(say_in(&phrases, "percent", &[]).unwrap_err().starts_with("the phrase `percent` needs more"));
    }

    /// Forms of words by number: Unicode CLDR, plural rules of Polish (one, few, many).
    #[test]
    fn a_count_chooses_the_form_and_is_written_as_the_language_writes_it() {
        let text = "cords = { $count ->\n    [0] nic\n    [one] { $count } sznur\n    [few] { $count } sznury\n   *[many] { $count } sznurów\n}\n";
        let phrases = Phrases::of("pl", &[("pl", text)]);
        let count = |count: usize| say_in(&phrases, "cords", &[("count", FluentValue::from(count))]).unwrap();
        let said = [0, 1, 3, 12, 22, 25, 12345].map(count);
        assert_eq!(
            said,
            ["nic", "1 sznur", "3 sznury", "12 sznurów", "22 sznury", "25 sznurów", "12\u{a0}345 sznurów"]
        );
    }

    #[test]
    fn the_language_is_found_by_its_tag() {
        let days = ["en", "en-IE", "fr-CH", "zz", "", "not a tag"].map(|tag| Phrases::of_language(tag).has_own("date"));
        assert_eq!(days, [true, true, false, false, false, false]);
    }
}
