//! One fault of the input: the value, the limit, the place and the remedy.

use reeve_measure::Remedied;
use std::borrow::Cow;
use std::ops::Range;
use std::sync::Arc;

use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};

use crate::excerpt::excerpt;
use crate::seen::seen;

/// A text and the name it is shown under.
#[derive(Debug, PartialEq, Eq)]
pub struct SourceText {
    /// The file's path as the maker would type it.
    pub path: String,
    /// The whole text.
    pub text: String,
}

impl SourceText {
    /// Pairs a path with its text.
    pub fn new(path: impl Into<String>, text: impl Into<String>) -> Arc<Self> {
        Arc::new(Self { path: path.into(), text: text.into() })
    }
}

/// Whether the fault stops the work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// The work can't go on.
    Error,
    /// The work goes on, but the maker should look.
    Warning,
}

/// Something wrong with the input.
#[derive(Debug, Clone, PartialEq)]
pub struct Fault {
    /// Whether it stops the work.
    pub severity: Severity,
    /// What is wrong, naming the offending value.
    pub title: String,
    /// The limit that was broken, shown beside the place; may be empty.
    pub label: String,
    /// What to write instead; may be empty.
    pub help: String,
    /// Where: the text and the bytes in it.
    pub place: Option<(Arc<SourceText>, Range<usize>)>,
}

impl Fault {
    /// A fault of what an error says, without a place: its words, and its remedy.
    pub fn of(error: &impl Remedied) -> Self {
        Self::without_place(error.to_string(), error.remedy())
    }

    /// A fault that has no place in a text, such as a folder that isn't there.
    pub fn without_place(title: impl Into<String>, help: impl Into<String>) -> Self {
        Self { severity: Severity::Error, title: title.into(), label: String::new(), help: help.into(), place: None }
    }

    /// The same, of what does not stop the work.
    pub fn look_without_place(title: impl Into<String>, help: impl Into<String>) -> Self {
        Self { severity: Severity::Warning, ..Self::without_place(title, help) }
    }

    /// Whether it stops the work.
    pub fn is_error(&self) -> bool {
        self.severity == Severity::Error
    }

    /// The 1-based line and column (in characters) of the place, if it has one.
    pub fn line_and_column(&self) -> Option<(usize, usize)> {
        let (source, span) = self.place.as_ref()?;
        let before = source.text.get(..span.start)?;
        let line = before.bytes().filter(|byte| *byte == b'\n').count() + 1;
        let column = before.rsplit('\n').next().unwrap_or_default().chars().count() + 1;
        Some((line, column))
    }

    /// Writes the fault as text with the offending line beneath, in colour if asked.
    ///
    /// Long values are shortened, and characters that are not seen are shown by a sign.
    pub fn render(&self, colour: bool) -> String {
        const MOST_SAID: usize = 300;
        const MOST_HELP: usize = 1500;
        let level = match self.severity {
            Severity::Error => Level::ERROR,
            Severity::Warning => Level::WARNING,
        };
        let title = said(&self.title, MOST_SAID);
        let mut group = Group::with_title(level.primary_title(title));
        if let Some((source, span)) = &self.place {
            let label = if self.label.is_empty() { None } else { Some(said(&self.label, MOST_SAID)) };
            let part = excerpt(&source.text, span);
            let annotation = AnnotationKind::Primary.span(part.span).label(label);
            let snippet = Snippet::source(part.text).line_start(part.line).path(seen(&source.path));
            group = group.element(snippet.annotation(annotation));
        }
        if !self.help.is_empty() {
            group = group.element(Level::HELP.message(said(&self.help, MOST_HELP)));
        }
        let renderer = if colour { Renderer::styled() } else { Renderer::plain() };
        renderer.render(&[group])
    }
}

/// Words as they are told: of a long text the beginning and the end, for what is said of a value stands there.
fn said(text: &str, most: usize) -> Cow<'_, str> {
    let count = text.chars().count();
    if count <= most {
        return seen(text);
    }
    let half = most / 2;
    let cut = |at: usize| text.char_indices().nth(at).map_or(text.len(), |(byte, _)| byte);
    Cow::Owned(seen(&format!("{} … {}", &text[..cut(half)], &text[cut(count - half)..])).into_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn line_and_column_count_from_one_in_characters() {
        let source = SourceText::new("a.toml", "a = 1\næ = 2\n");
        let mut fault = Fault::without_place("", "");
        fault.place = Some((source, 9..10));
        assert_eq!(fault.line_and_column(), Some((2, 3)));
    }

    #[test]
    fn a_long_value_keeps_what_is_said_of_it() {
        let title = format!("`{}` can't be a name", "æ".repeat(10_000));
        let shown = Fault::without_place(title, "").render(false);
        assert!(shown.starts_with("error: `ææ") && shown.ends_with("æ` can't be a name"), "{shown}");
        assert!(shown.chars().count() < 320, "{shown}");
    }

    #[test]
    fn the_line_of_a_fault_is_told_as_it_stands_in_the_whole_text() {
        let text = "a = 1\nb = 2\n\u{1b}[2J = 3\n";
        let at = text.find('3').unwrap_or_default();
        let place = Some((SourceText::new("a\u{202e}.toml", text), at..at + 1));
        let fault = Fault { place, label: "here".to_owned(), ..Fault::without_place("x\u{7}", "") };
        let shown = fault.render(false);
        assert_eq!(shown, "error: x␇\n --> a\u{fffd}.toml:3:8\n  |\n3 | ␛[2J = 3\n  |        ^ here");
    }
}
