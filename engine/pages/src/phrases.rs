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
    language: String,
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
        Self {
            bundles: files.iter().map(|(tag, text)| bundle(tag, text)).collect(),
            own,
            language: language.to_owned(),
        }
    }

    /// The tag of the language that was asked for.
    pub fn language(&self) -> &str {
        &self.language
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
    pub fn known() -> impl Iterator<Item = &'static str> {
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

    use super::*;

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
