//! One fault of the input: the value, the limit, the place and the remedy.

use std::borrow::Cow;
use std::ops::Range;
use std::sync::Arc;

use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};

/// A text and the name it is shown under.
#[derive(Debug, PartialEq, Eq)]
pub struct Source {
    /// The file's path as the maker would type it.
    pub path: String,
    /// The whole text.
    pub text: String,
}

impl Source {
    /// Pairs a path with its text.
    pub fn new(path: impl Into<String>, text: impl Into<String>) -> Arc<Self> {
        Arc::new(Self { path: path.into(), text: text.into() })
    }
}

/// Whether the fault stops the work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
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
    pub place: Option<(Arc<Source>, Range<usize>)>,
}

impl Fault {
    /// A fault that has no place in a text, such as a folder that isn't there.
    pub fn without_place(title: impl Into<String>, help: impl Into<String>) -> Self {
        Self { severity: Severity::Error, title: title.into(), label: String::new(), help: help.into(), place: None }
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
    pub fn render(&self, colour: bool) -> String {
        let level = match self.severity {
            Severity::Error => Level::ERROR,
            Severity::Warning => Level::WARNING,
        };
        let title = shown(&self.title);
        let mut group = Group::with_title(level.primary_title(title.as_ref()));
        if let Some((source, span)) = &self.place {
            let label = if self.label.is_empty() { None } else { Some(shown(&self.label).into_owned()) };
            let annotation = AnnotationKind::Primary.span(within(&source.text, span)).label(label);
            group =
                group.element(Snippet::source(source.text.as_str()).path(source.path.as_str()).annotation(annotation));
        }
        if !self.help.is_empty() {
            group = group.element(Level::HELP.message(shown(&self.help).into_owned()));
        }
        let renderer = if colour { Renderer::styled() } else { Renderer::plain() };
        renderer.render(&[group])
    }
}

/// Control characters from the input must not reach a terminal.
fn shown(text: &str) -> Cow<'_, str> {
    if text.chars().any(|c| c.is_control() && c != '\n') {
        text.chars().map(|c| if c.is_control() && c != '\n' { '\u{fffd}' } else { c }).collect()
    } else {
        Cow::Borrowed(text)
    }
}

/// The span cut to its first line and to whole characters, so that a table's fault marks its
/// header and not its whole body.
fn within(text: &str, span: &Range<usize>) -> Range<usize> {
    let start = floor_boundary(text, span.start);
    let end = floor_boundary(text, span.end).max(start);
    let first_line = text.get(start..end).and_then(|part| part.find('\n')).map_or(end, |newline| start + newline);
    start..first_line
}

fn floor_boundary(text: &str, at: usize) -> usize {
    let mut at = at.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_past_the_text_is_cut_to_it() {
        assert_eq!(within("æ\nb", &(1..99)), 0..2);
        assert_eq!(within("", &(5..9)), 0..0);
    }

    #[test]
    fn line_and_column_count_from_one_in_characters() {
        let source = Source::new("a.toml", "a = 1\næ = 2\n");
        let mut fault = Fault::without_place("", "");
        fault.place = Some((source, 9..10));
        assert_eq!(fault.line_and_column(), Some((2, 3)));
    }
}
