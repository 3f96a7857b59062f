//! Marks in a shop's own template: a call before each tag, so that a page can be stopped anywhere, and it is known where.
//!
//! The engine knows no limits of its own. A mark is put into the line where its tag stands, so that lines stay as they are;
//! columns are reckoned back.

use std::ops::Range;

/// The function that a mark calls.
pub(crate) const MARK: &str = "reeve_mark";

/// A tag of a template: `{{ … }}` or `{% … %}`.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Tag<'a> {
    /// The byte where it begins.
    pub(crate) start: usize,
    /// The byte behind it.
    pub(crate) end: usize,
    /// What stands between its braces.
    pub(crate) inside: &'a str,
    /// Whether it prints a value.
    pub(crate) prints: bool,
}

impl<'a> Tag<'a> {
    /// The word it begins with.
    pub(crate) fn word(&self) -> &'a str {
        let inside = self.inside.trim_start_matches('-').trim_start();
        inside.split(|c: char| !c.is_ascii_alphanumeric() && c != '_').next().unwrap_or_default()
    }

    /// The texts in quotes that stand in it.
    pub(crate) fn quoted(&self) -> Vec<&'a str> {
        let mut found = Vec::new();
        let mut rest = self.inside;
        while let Some(start) = rest.find(['"', '\'', '`']) {
            let Some(length) = string_length(rest.get(start..).unwrap_or_default()) else { break };
            found.extend(rest.get(start + 1..start + length - 1));
            rest = rest.get(start + length..).unwrap_or_default();
        }
        found
    }
}

/// The tags of a template, in order. What follows a tag without an end is left out: the engine refuses such a template.
pub(crate) fn tags(text: &str) -> Vec<Tag<'_>> {
    let mut tags = Vec::new();
    let mut at = 0;
    while let Some(start) = text.get(at..).and_then(|rest| rest.find('{')).map(|found| at + found) {
        let rest = text.get(start..).unwrap_or_default();
        let found = match rest.as_bytes().get(1) {
            Some(b'#') => rest.get(2..).and_then(|rest| rest.find("#}")).map(|length| start + length + 4),
            Some(b'{') => tag(text, start, "}}", &mut tags),
            Some(b'%') => tag(text, start, "%}", &mut tags),
            _ => Some(start + 1),
        };
        let Some(end) = found else { break };
        let is_raw = tags.last().is_some_and(|tag| tag.end == end && tag.word() == "raw");
        // Nothing is a tag up to its end.
        at = if is_raw { end_of_raw(text, end) } else { end };
    }
    tags
}

/// The bytes of the tag that a byte stands in, and whether it prints a value.
pub fn tag_at(text: &str, at: usize) -> Option<(Range<usize>, bool)> {
    tags(text).into_iter().find(|tag| (tag.start..tag.end).contains(&at)).map(|tag| (tag.start..tag.end, tag.prints))
}

/// Takes in the tag that begins here; yields the byte behind it.
fn tag<'a>(text: &'a str, start: usize, close: &str, tags: &mut Vec<Tag<'a>>) -> Option<usize> {
    let mut at = start + 2;
    loop {
        let rest = text.get(at..)?;
        if rest.starts_with(close) {
            let inside = text.get(start + 2..at)?;
            tags.push(Tag { start, end: at + 2, inside, prints: close == "}}" });
            return Some(at + 2);
        }
        at += match rest.chars().next()? {
            '"' | '\'' | '`' => string_length(rest)?,
            other => other.len_utf8(),
        };
    }
}

/// The bytes of the text in quotes at the beginning, quotes included.
fn string_length(rest: &str) -> Option<usize> {
    let quote = rest.chars().next()?;
    let mut escaped = false;
    let close = rest.char_indices().skip(1).find(|(_, c)| {
        let closes = !escaped && *c == quote;
        escaped = !escaped && *c == '\\';
        closes
    });
    close.map(|(at, _)| at + 1)
}

fn end_of_raw(text: &str, from: usize) -> usize {
    let mut at = from;
    while let Some(start) = text.get(at..).and_then(|rest| rest.find("{%")).map(|found| at + found) {
        let mut found = Vec::new();
        if let Some(end) = tag(text, start, "%}", &mut found)
            && found.iter().any(|tag| tag.word() == "endraw")
        {
            return end;
        }
        at = start + 2;
    }
    text.len()
}

/// A template with its marks.
#[derive(Debug)]
pub(crate) struct Marked {
    /// Its text, as the engine reads it.
    pub(crate) text: String,
    marks: Vec<Mark>,
}

/// A place in a template, as its author reads it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct TemplatePlace {
    /// Counted from one.
    pub(crate) line: usize,
    /// In characters, counted from one.
    pub(crate) column: usize,
}

#[derive(Debug)]
struct Mark {
    spot: TemplatePlace,
    /// How many characters it has.
    length: usize,
}

impl Marked {
    /// Puts a mark before each tag that works something out; they are numbered on from `first`.
    pub(crate) fn new(text: &str, first: usize) -> Self {
        let mut marked = Self { text: String::with_capacity(text.len() * 2), marks: Vec::new() };
        let tags = tags(text);
        // Beside its blocks such a template may hold nothing.
        let extends = tags.first().is_some_and(|tag| tag.word() == "extends");
        let (mut depth, mut copied, mut spot) = (0_usize, 0, TemplatePlace::START);
        for tag in &tags {
            let before = text.get(copied..tag.start).unwrap_or_default();
            spot = spot.behind(before);
            marked.text.push_str(before);
            if (!extends || depth > 0) && is_work(tag) {
                marked.add(first, spot, tag.inside.starts_with('-'));
            }
            match tag.word() {
                "block" | "component" => depth += 1,
                "endblock" | "endcomponent" => depth = depth.saturating_sub(1),
                _ => {}
            }
            copied = tag.start;
        }
        marked.text.push_str(text.get(copied..).unwrap_or_default());
        marked
    }

    fn add(&mut self, first: usize, spot: TemplatePlace, trims: bool) {
        let number = first + self.marks.len();
        // A tag that takes away the blanks before it would now find none.
        let trim = if trims { "-" } else { "" };
        let mark = format!("{{{{{trim}{MARK}(at={number})}}}}");
        self.marks.push(Mark { spot, length: mark.len() });
        self.text.push_str(&mark);
    }

    /// How many marks there are.
    pub(crate) fn count(&self) -> usize {
        self.marks.len()
    }

    /// Where the mark of this place among them stands.
    pub(crate) fn spot(&self, nth: usize) -> Option<TemplatePlace> {
        self.marks.get(nth).map(|mark| mark.spot)
    }

    /// The place in the author's text of a place in the text with marks.
    pub(crate) fn original(&self, marked: TemplatePlace) -> TemplatePlace {
        let mut before = 0;
        for mark in self.marks.iter().filter(|mark| mark.spot.line == marked.line) {
            let start = mark.spot.column + before;
            if marked.column < start + mark.length {
                return TemplatePlace { line: marked.line, column: marked.column.min(start) - before };
            }
            before += mark.length;
        }
        TemplatePlace { line: marked.line, column: marked.column - before }
    }
}

impl TemplatePlace {
    pub(crate) const START: Self = Self { line: 1, column: 1 };

    /// The place behind a text that begins here.
    pub(crate) fn behind(self, text: &str) -> Self {
        let lines = text.bytes().filter(|byte| *byte == b'\n').count();
        let last = text.rsplit('\n').next().unwrap_or_default().chars().count();
        Self { line: self.line + lines, column: if lines > 0 { last + 1 } else { self.column + last } }
    }
}

/// Whether a tag does more than say one of the page's own words: only such need a mark.
fn is_work(tag: &Tag<'_>) -> bool {
    if tag.prints {
        return tag.inside.contains(['|', '(', '~', '<', '[']);
    }
    // Where the engine looks for the first tag or for the end of raw text, nothing may stand.
    tag.word() != "extends"
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn spots(text: &str) -> Vec<(usize, usize)> {
        let marked = Marked::new(text, 0);
        (0..marked.count()).filter_map(|nth| marked.spot(nth)).map(|spot| (spot.line, spot.column)).collect()
    }

    #[test]
    fn marks_stand_before_tags_and_in_no_comment_text_or_raw_part() {
        let text =
            "{# {% if x %} #}ä{% if x == \"%}\" %}{{ x }}{% raw %}{{ x | y }}{% endraw %}\n  {{- x | y -}}{%- endif %}";
        assert_eq!(spots(text), [(1, 18), (1, 43), (2, 3), (2, 16)]);
        assert_eq!(spots("{% extends 'a' %}{% block b %}{{ x | y }}{% endblock %}"), [(1, 31), (1, 42)]);
        assert_eq!(spots("{{ never ends"), []);
    }

    #[test]
    fn texts_in_quotes_are_found() {
        let all: Vec<_> =
            tags("{% include \"a.txt\" %}{% include ['b', `c`] %}").iter().flat_map(Tag::quoted).collect();
        assert_eq!(all, ["a.txt", "b", "c"]);
    }

    proptest! {
        /// Whatever the text, taking the marks out again gives it back, and every character keeps its place.
        #[test]
        fn marks_change_no_place(text in "([a-zä{}%#'\"\\\\ \n-]|\\{\\{|\\}\\}|\\{%|%\\}){0,60}") {
            let marked = Marked::new(&text, 7);
            let mut plain = marked.text.clone();
            for number in 7..7 + marked.count() {
                plain = plain.replace(&format!("{{{{{MARK}(at={number})}}}}"), "").replace(&format!("{{{{-{MARK}(at={number})}}}}"), "");
            }
            prop_assert_eq!(&plain, &text);
            let lines: Vec<Vec<char>> = text.split('\n').map(|line| line.chars().collect()).collect();
            for (nth, line) in marked.text.split('\n').enumerate() {
                for (at, c) in line.chars().enumerate() {
                    let spot = marked.original(TemplatePlace { line: nth + 1, column: at + 1 });
                    prop_assert_eq!(spot.line, nth + 1);
                    prop_assert!(spot.column <= lines[nth].len() + 1);
                    // The last character of a line stands behind all marks of the line.
                    if at + 1 == line.chars().count() {
                        prop_assert_eq!(lines[nth].get(spot.column - 1), Some(&c));
                    }
                }
            }
        }
    }
}
