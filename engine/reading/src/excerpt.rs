//! The part of a text that a fault is shown with: its line, and no more of it than can be looked at.

use std::ops::Range;

use crate::seen::seen;

/// A line of a text, as it is shown, and the place in it.
pub(crate) struct Excerpt {
    /// The line, counted from one.
    pub(crate) line: usize,
    /// Its text.
    pub(crate) text: String,
    /// The place in that text.
    pub(crate) span: Range<usize>,
}

/// The most bytes that are shown of a place and behind it: far more than a screen is wide.
const MOST_SHOWN: usize = 1000;

/// The line that a place begins on. A place that goes on over further lines is cut to its first, so that a table's fault
/// marks its header and not its whole body.
pub(crate) fn excerpt(text: &str, span: &Range<usize>) -> Excerpt {
    let at = floor_boundary(text, span.start);
    let begins = text[..at].rfind('\n').map_or(0, |newline| newline + 1);
    let ends = text[at..].find('\n').map_or(text.len(), |newline| at + newline);
    let ends = floor_boundary(text, ends.min(at + MOST_SHOWN));
    let to = floor_boundary(text, span.end).clamp(at, ends);
    let line = text[..begins].bytes().filter(|byte| *byte == b'\n').count() + 1;
    let before = &text[begins..at];
    // Some programs begin a file with a mark that is no part of its words.
    let before = if begins == 0 { before.trim_start_matches('\u{feff}') } else { before };
    let mut shown = seen(before).into_owned();
    let start = shown.len();
    shown.push_str(&seen(&text[at..to]));
    let end = shown.len();
    shown.push_str(&seen(text[to..ends].trim_end_matches('\r')));
    Excerpt { line, text: shown, span: start..end }
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

    fn shown(text: &str, span: Range<usize>) -> (usize, String, Range<usize>) {
        let Excerpt { line, text, span } = excerpt(text, &span);
        (line, text, span)
    }

    #[test]
    fn a_place_past_the_text_is_cut_to_it() {
        assert_eq!(shown("æ\nb", 1..99), (1, "æ".to_owned(), 0..2));
        assert_eq!(shown("", 5..9), (1, String::new(), 0..0));
        assert_eq!(shown("a\n", 2..2), (2, String::new(), 0..0));
    }

    #[test]
    fn only_the_line_is_kept_and_signs_keep_the_place() {
        assert_eq!(shown("x = 1\ny\u{202e} = 22\r\nz = 3", 13..15), (2, "y\u{fffd} = 22".to_owned(), 7..9));
        assert_eq!(shown("\u{feff}a = 1\n", 3..4), (1, "a = 1".to_owned(), 0..1));
        let long = format!("a = \"{}\"", "b".repeat(5000));
        assert_eq!(excerpt(&long, &(4..5006)).text.len(), 4 + MOST_SHOWN);
    }
}
