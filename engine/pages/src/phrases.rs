//! The phrases of the pages: one file for a language in templates/phrases/, in the syntax of Project Fluent.
//!
//! A phrase that the file of a language lacks is said in English. Figures come in worded already: see [`crate::words`].

use std::fmt;
use std::sync::{Arc, OnceLock};

use fluent_bundle::{FluentArgs, FluentResource, FluentValue, concurrent::FluentBundle};
use fluent_syntax::ast::{Entry, Pattern};
use intl_memoizer::{Memoizable, concurrent::IntlLangMemoizer};
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use unic_langid::LanguageIdentifier;

use crate::money::{MoneyError, NumberWords};

/// The language that has every phrase.
pub const ENGLISH: &str = "en";

// `FILES`: the files of templates/phrases by their tags, each with its phrases in order of name.
include!(concat!(env!("OUT_DIR"), "/phrases.rs"));

/// What the pages say in one language.
pub struct Phrases {
    /// The language's own first, English last.
    files: Vec<PhraseFile>,
    /// How many are the language's own.
    own: usize,
    language: String,
}

impl fmt::Debug for Phrases {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_list().entries(self.files.iter().map(|file| &file.terms.locales)).finish()
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
        let files: Vec<_> = own.chain(file(ENGLISH).map(|phrases| (english, phrases))).collect();
        Arc::new(Self::of(language, &files))
    }

    /// The phrases of some files, each with the tag that it is read by; the one that is asked first in front.
    fn of(language: &str, files: &[(&str, &'static [Phrase])]) -> Self {
        let own = files.iter().filter(|(tag, _)| *tag == language).count();
        Self {
            files: files.iter().map(|(tag, phrases)| PhraseFile::of(tag, phrases)).collect(),
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
        let said = self.files.iter().find_map(|file| Some((file, file.phrase(id)?)));
        let (file, pattern) = said.ok_or_else(|| format!("there is no phrase `{id}`"))?;
        let mut faults = Vec::new();
        let text = file.terms.format_pattern(pattern, Some(arguments), &mut faults).into_owned();
        faults.first().map_or(Ok(text), |fault| Err(format!("the phrase `{id}` needs more: {fault}")))
    }

    /// Whether the language itself has the phrase, and not only English.
    pub(crate) fn has_own(&self, id: &str) -> bool {
        self.files.iter().take(self.own).any(|file| file.phrase(id).is_some())
    }

    /// Every phrase that can be asked for.
    pub fn known() -> impl Iterator<Item = &'static str> {
        let phrases = file(ENGLISH).unwrap_or_default().iter();
        phrases.filter(|phrase| !phrase.is_term()).map(|phrase| phrase.id)
    }
}

fn file(tag: &str) -> Option<&'static [Phrase]> {
    FILES.iter().find(|(of, _)| *of == tag).map(|(_, phrases)| *phrases)
}

/// The file of one language. A page says few of its phrases: each is read when it is first said.
struct PhraseFile {
    /// Its terms (`-name`), which stand in phrases. One phrase can't stand in another.
    terms: FluentBundle<FluentResource>,
    /// In order of name.
    phrases: &'static [Phrase],
}

/// An entry of a file of phrases.
struct Phrase {
    id: &'static str,
    text: &'static str,
    read: OnceLock<FluentResource>,
}

impl PhraseFile {
    fn of(tag: &str, phrases: &'static [Phrase]) -> Self {
        let locale = tag.parse::<LanguageIdentifier>().unwrap_or_default();
        let mut terms = FluentBundle::new_concurrent(vec![locale]);
        // Pages are set in one direction: marks of direction around each figure would be in the way of whoever copies it.
        terms.set_use_isolating(false);
        terms.set_formatter(Some(figure));
        // `-` stands before every letter.
        for term in phrases.iter().take_while(|phrase| phrase.is_term()) {
            terms.add_resource_overriding(parsed(term.text));
        }
        Self { terms, phrases }
    }

    /// What the file says; nothing for a phrase with a slip of the pen, which the tests of the files tell.
    fn phrase(&self, id: &str) -> Option<&Pattern<&str>> {
        let at = self.phrases.binary_search_by(|phrase| phrase.id.cmp(id)).ok()?;
        self.phrases[at].pattern()
    }
}

impl Phrase {
    const fn new(id: &'static str, text: &'static str) -> Self {
        Self { id, text, read: OnceLock::new() }
    }

    fn is_term(&self) -> bool {
        self.id.starts_with('-')
    }

    fn pattern(&self) -> Option<&Pattern<&str>> {
        match self.read.get_or_init(|| parsed(self.text)).get_entry(0)? {
            Entry::Message(message) => message.value.as_ref(),
            _ => None,
        }
    }
}

fn parsed(text: &str) -> FluentResource {
    FluentResource::try_new(text.to_owned()).unwrap_or_else(|(resource, _)| resource)
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
    use crate::entries::entries;

    /// The phrases of a text, as the build takes a file apart.
    fn phrases_of(text: &'static str) -> &'static [Phrase] {
        let mut phrases: Vec<_> = entries(text).into_iter().map(|(id, text)| Phrase::new(id, text)).collect();
        phrases.sort_by_key(|phrase| phrase.id);
        phrases.leak()
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
        let phrases =
            Phrases::of("de-AT", &[("de-AT", phrases_of("quote = Angebot")), (ENGLISH, file(ENGLISH).unwrap())]);
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
        let phrases = Phrases::of("pl", &[("pl", phrases_of(text))]);
        let count = |count: usize| say_in(&phrases, "cords", &[("count", FluentValue::from(count))]).unwrap();
        let said = [0, 1, 3, 12, 22, 25, 12345].map(count);
        assert_eq!(
            said,
            ["nic", "1 sznur", "3 sznury", "12 sznurów", "22 sznury", "25 sznurów", "12\u{a0}345 sznurów"]
        );
    }

    /// Syntax: Project Fluent, "Syntax Guide", sections Terms, Comments and Multiline Text.
    #[test]
    fn an_entry_ends_where_the_next_or_a_comment_begins() {
        let text = "-cord = Schnur\n# a comment\nplain = { -cord }, fest\nlong =\n    eins\n\n    zwei\n## a group\nslip = { \nlast = Ende";
        let phrases = Phrases::of("de", &[("de", phrases_of(text))]);
        let said = ["plain", "long", "last"].map(|id| say_in(&phrases, id, &[]).unwrap());
        assert_eq!(said, ["Schnur, fest", "eins\n\nzwei", "Ende"]);
        assert!(!phrases.has_own("slip") && !phrases.has_own("-cord"));
    }

    #[test]
    fn every_phrase_reads_by_itself_as_in_its_whole_file() {
        let whole = parsed(include_str!("../../../templates/phrases/en.ftl"));
        let messages = whole.entries().filter_map(|entry| match entry {
            Entry::Message(message) => Some((message.id.name, message.value.as_ref())),
            _ => None,
        });
        let messages: Vec<_> = messages.collect();
        let alone = PhraseFile::of(ENGLISH, file(ENGLISH).unwrap());
        assert!(messages.iter().all(|(id, pattern)| alone.phrase(id) == *pattern));
        assert_eq!(messages.len(), Phrases::known().count());
    }

    #[test]
    fn the_language_is_found_by_its_tag() {
        let days = ["en", "en-IE", "fr-CH", "zz", "", "not a tag"].map(|tag| Phrases::of_language(tag).has_own("date"));
        assert_eq!(days, [true, true, false, false, false, false]);
    }
}
