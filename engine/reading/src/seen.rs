//! Characters that are not seen: they drive a terminal, turn the order of a line round, or hide what else is written.

use std::borrow::Cow;

use icu_properties::props::{
    BinaryProperty, DefaultIgnorableCodePoint, EnumeratedProperty, GeneralCategory, PrependedConcatenationMark,
    VariationSelector,
};

/// Stands for a character that has no sign of its own.
const UNSEEN: char = '\u{fffd}';

/// Whether a character is not seen where it is written, line ends and tabs apart.
///
/// The classes are those of the Unicode Character Database: control, format, line and paragraph separator, and default
/// ignorable. What languages and signs are written with is let pass: joiners, variation selectors, soft hyphens.
pub fn is_unseen(c: char) -> bool {
    const WRITTEN: [char; 3] = ['\u{ad}', '\u{200c}', '\u{200d}'];
    if matches!(c, ' '..='~' | '\n' | '\t') || WRITTEN.contains(&c) {
        return false;
    }
    match GeneralCategory::for_char(c) {
        GeneralCategory::Control | GeneralCategory::LineSeparator | GeneralCategory::ParagraphSeparator => true,
        // A few signs of Arabic and of other scripts are of this class, and are seen.
        GeneralCategory::Format => !PrependedConcatenationMark::for_char(c),
        _ => DefaultIgnorableCodePoint::for_char(c) && !VariationSelector::for_char(c),
    }
}

/// The first character of a text that is not seen.
pub fn unseen_in(text: &str) -> Option<char> {
    // Nearly every text is plain ASCII: without a way out in between, that is seen many characters at a time.
    let plain = |part: &[u8]| part.iter().fold(true, |plain, byte| plain & matches!(byte, b' '..=b'~' | b'\n' | b'\t'));
    let plain = text.as_bytes().chunks(64).all(plain);
    if plain { None } else { text.chars().find(|c| is_unseen(*c)) }
}

/// A text with a sign in the place of each character that is not seen, one for one, so that columns stay.
///
/// A line's end may be written with a carriage return.
pub fn seen(text: &str) -> Cow<'_, str> {
    if unseen_in(text).is_none() {
        return Cow::Borrowed(text);
    }
    let next = text.chars().skip(1).map(Some).chain([None]);
    let sign = |(c, next): (char, Option<char>)| if c == '\r' && next == Some('\n') { c } else { sign_of(c) };
    Cow::Owned(text.chars().zip(next).map(sign).collect())
}

/// Control characters of ASCII have pictures of their own (Unicode's block Control Pictures, U+2400).
fn sign_of(c: char) -> char {
    match c {
        c if !is_unseen(c) => c,
        '\u{7f}' => '\u{2421}',
        '\0'..='\u{1f}' => char::from_u32(0x2400 + u32::from(c)).unwrap_or(UNSEEN),
        _ => UNSEEN,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_drives_a_terminal_or_turns_a_line_is_shown_by_a_sign() {
        for (text, shown) in [
            ("plain æ ☂ 日本\n\ttext", "plain æ ☂ 日本\n\ttext"),
            ("\u{1b}[2J", "␛[2J"),
            ("a\u{7f}\u{0}b", "a␡␀b"),
            ("\u{9b}31m", "\u{fffd}31m"),
            ("\u{1b}]0;title\u{7}", "␛]0;title␇"),
            ("abc\rdef\r\n", "abc␍def\r\n"),
            ("x\u{202e}y\u{2066}z\u{2069}", "x\u{fffd}y\u{fffd}z\u{fffd}"),
            ("in\u{200b}side\u{feff}\u{2028}\u{e0041}", "in\u{fffd}side\u{fffd}\u{fffd}\u{fffd}"),
        ] {
            assert_eq!(seen(text), shown);
            assert!(!seen(text).replace("\r\n", "\n").chars().any(is_unseen));
        }
    }

    #[test]
    fn what_languages_are_written_with_passes() {
        // Persian joins by U+200C, families and hearts are put together by U+200D and U+FE0F, and 葛󠄀 is one of two forms.
        for text in
            ["می\u{200c}خواهم", "👩\u{200d}👧", "❤\u{fe0f}", "葛\u{e0100}", "e\u{301}", "12\u{a0}€", "\u{600}12"]
        {
            assert_eq!(unseen_in(text), None, "{text}");
        }
    }

    /// The Unicode Character Database's own list of bidirectional controls (PropList.txt, `Bidi_Control`).
    #[test]
    fn no_bidirectional_control_is_let_pass() {
        for c in
            "\u{61c}\u{200e}\u{200f}\u{202a}\u{202b}\u{202c}\u{202d}\u{202e}\u{2066}\u{2067}\u{2068}\u{2069}".chars()
        {
            assert!(is_unseen(c), "{c:?}");
        }
    }
}
