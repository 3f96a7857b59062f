//! What of a client is looked for when they are forgotten, and where it stands in a text.

use std::ops::Range;

use unicode_normalization::char::{decompose_compatible, is_combining_mark};

use crate::marks::{EDGE, FORGOTTEN, Markup};
use crate::records::BookedClient;

/// Words of names that say nothing of who it is.
const OF_NOBODY: &[&str] = &[
    "and", "the", "of", "for", "mr", "mrs", "ms", "mx", "miss", "dr", "sir", "co", "und", "et", "de", "van", "von",
    "la", "le",
];
/// Digits that make a telephone number, and how many of its last ones tell it (what is before may be a country's).
const PHONE: usize = 7;
/// A name part of fewer letters may be anything.
const LETTERS: usize = 3;

/// How sure it is that a text that holds this speaks of the client.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Sureness {
    /// The whole name, a line of the address, its street, a telephone number, a mail address.
    Whole,
    /// A part of the name, or a place.
    Part,
}

/// What is looked for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct SearchTerm {
    /// As it is written, in small letters; of a telephone number its digits.
    pub(crate) words: String,
    pub(crate) sureness: Sureness,
    phone: bool,
}

impl SearchTerm {
    pub(crate) fn new(words: &str, sureness: Sureness) -> Self {
        let words = folded(words, Markup::Text).iter().map(|letter| letter.char).collect::<String>();
        Self { words: words.trim().to_owned(), sureness, phone: false }
    }

    fn phone(digits: &str) -> Self {
        let tells = digits.len() - PHONE;
        Self { words: digits[tells..].to_owned(), sureness: Sureness::Whole, phone: true }
    }

    /// Whether its parts are too few letters to be sure of.
    pub(crate) fn is_short(&self) -> bool {
        self.words.chars().count() < LETTERS
    }
}

/// All that is looked for of a client, the longest first.
pub(crate) fn terms(client: &BookedClient) -> Vec<SearchTerm> {
    // A name of one word is no surer than a part of one.
    let mut all = vec![SearchTerm::new(&client.name, sureness(&client.name))];
    all.extend(parts(&client.name).map(|part| SearchTerm::new(part, Sureness::Part)));
    for line in &client.address {
        all.push(SearchTerm::new(line, sureness(line)));
        let place: Vec<&str> =
            line.split_whitespace().filter(|word| !word.contains(|c: char| c.is_ascii_digit())).collect();
        let place = place.join(" ");
        let place = place.trim_matches(|c: char| !c.is_alphanumeric());
        all.push(SearchTerm::new(place, sureness(place)));
        all.extend(phones(line).iter().map(|digits| SearchTerm::phone(digits)));
        let mail = line.split_whitespace().filter(|word| word.contains('@'));
        all.extend(
            mail.map(|mail| SearchTerm::new(mail.trim_matches(|c: char| !c.is_alphanumeric()), Sureness::Whole)),
        );
    }
    all.retain(|term| term.words.chars().any(char::is_alphanumeric));
    all.sort_by_key(|term| std::cmp::Reverse((term.sureness == Sureness::Whole, term.words.len())));
    let mut seen: Vec<String> = Vec::new();
    all.retain(|term| {
        !seen.contains(&term.words) && {
            seen.push(term.words.clone());
            true
        }
    });
    all
}

/// The words of a name that may tell whose it is.
pub(crate) fn parts(name: &str) -> impl Iterator<Item = &str> {
    let words = name.split(|c: char| !c.is_alphanumeric() && !is_combining_mark(c) && c != '\'' && c != '’');
    words.filter(|word| word.chars().count() > 1 && !OF_NOBODY.contains(&word.to_lowercase().as_str()))
}

/// A line of several words tells an address; a single one may be any place.
fn sureness(line: &str) -> Sureness {
    let several = line.split_whitespace().nth(1).is_some() || line.contains('@');
    if several { Sureness::Whole } else { Sureness::Part }
}

/// The telephone numbers of a line, as digits.
fn phones(line: &str) -> Vec<String> {
    runs(&folded(line, Markup::Text))
        .into_iter()
        .map(|(digits, _)| digits)
        .filter(|digits| digits.len() >= PHONE)
        .collect()
}

/// Runs of digits with what stands between those of a telephone number, and where.
fn runs(letters: &[Letter]) -> Vec<(String, Range<usize>)> {
    let mut runs: Vec<(String, Range<usize>)> = Vec::new();
    let mut open = false;
    let mut plus: Option<usize> = None;
    for letter in letters {
        match (letter.char, runs.last_mut().filter(|_| open)) {
            (c, Some((digits, at))) if c.is_ascii_digit() => {
                digits.push(c);
                at.end = letter.at.end;
            }
            (c, None) if c.is_ascii_digit() => {
                runs.push((c.to_string(), plus.unwrap_or(letter.at.start)..letter.at.end));
                open = true;
            }
            (' ' | '-' | '/' | '(' | ')' | '.', _) => {}
            _ => open = false,
        }
        plus = (letter.char == '+').then_some(letter.at.start);
    }
    runs
}

/// A letter of a text in its small form, and where it stands.
#[derive(Debug, Clone)]
struct Letter {
    char: char,
    at: Range<usize>,
}

/// Stands for what no term can hold: a mark, a tag.
const OTHER: char = '\0';

/// A letter's plain small forms: without accents, `ß` as `ss`, one form of sigma, one apostrophe. None of an accent that
/// stands by itself.
fn plain(letter: char, mut each: impl FnMut(char)) {
    decompose_compatible(letter, |part| match part {
        part if is_combining_mark(part) => {}
        '’' | '‘' | 'ʼ' => each('\''),
        'ß' | 'ẞ' => ['s', 's'].into_iter().for_each(&mut each),
        'ς' => each('σ'),
        'ı' => each('i'),
        part => part.to_lowercase().filter(|small| !is_combining_mark(*small)).for_each(&mut each),
    });
}

/// A text in its letters' plain small forms.
pub(crate) fn plain_text(text: &str) -> String {
    let mut told = String::with_capacity(text.len());
    text.chars().for_each(|letter| plain(letter, |small| told.push(small)));
    told
}

/// A text letter by letter: plain small ones, white space as one space, what a page writes for a letter as that letter.
fn folded(text: &str, kind: Markup) -> Vec<Letter> {
    let mut letters: Vec<Letter> = Vec::with_capacity(text.len());
    let mut at = 0;
    while let Some(c) = text[at..].chars().next() {
        let rest = &text[at..];
        let (char, length) = match c {
            EDGE => (OTHER, mark_length(rest)),
            '<' if kind == Markup::Html => (OTHER, tag_length(rest)),
            '&' if kind == Markup::Html => entity(rest),
            c if c.is_whitespace() => (' ', c.len_utf8()),
            c => (c, c.len_utf8()),
        };
        let end = at + length;
        match letters.last_mut() {
            Some(last) if char == ' ' && last.char == ' ' => last.at.end = end,
            Some(last) if is_combining_mark(char) => last.at.end = end,
            _ => plain(char, |char| letters.push(Letter { char, at: at..end })),
        }
        at = end;
    }
    letters
}

fn mark_length(text: &str) -> usize {
    let edge = EDGE.len_utf8();
    text[edge..].find(EDGE).map_or(edge, |end| end + 2 * edge)
}

/// A tag, or what a page holds besides text.
fn tag_length(text: &str) -> usize {
    let ending = ["<style", "<script", "<!--"].iter().zip(["</style>", "</script>", "-->"]);
    let other = ending.into_iter().find(|(start, _)| text.starts_with(**start));
    let end = other.map_or(">", |(_, end)| end);
    text.find(end).map_or(text.len(), |at| at + end.len())
}

fn entity(text: &str) -> (char, usize) {
    const KNOWN: &[(&str, char)] = &[
        ("&amp;", '&'),
        ("&lt;", '<'),
        ("&gt;", '>'),
        ("&quot;", '"'),
        ("&#39;", '\''),
        ("&#x27;", '\''),
        ("&nbsp;", ' '),
    ];
    let found = KNOWN.iter().find(|(written, _)| text.starts_with(written));
    found.map_or(('&', 1), |(written, char)| (*char, written.len()))
}

/// Where a term stands in a text, as words of its own.
fn places(letters: &[Letter], term: &SearchTerm) -> Vec<Range<usize>> {
    if term.phone {
        let tells = |digits: &str| digits.len() >= PHONE && digits.ends_with(&term.words);
        return runs(letters).into_iter().filter(|(digits, _)| tells(digits)).map(|(_, at)| at).collect();
    }
    let wanted: Vec<char> = term.words.chars().collect();
    let inside =
        |at: Option<usize>| at.and_then(|at| letters.get(at)).is_some_and(|letter| letter.char.is_alphanumeric());
    let mut found = Vec::new();
    let mut from = 0;
    while let Some(window) = letters.get(from..from + wanted.len()) {
        let here = window.iter().zip(&wanted).all(|(letter, wanted)| letter.char == *wanted)
            && !inside(from.checked_sub(1))
            && !inside(Some(from + wanted.len()));
        match (here, window.first(), window.last()) {
            (true, Some(first), Some(last)) => {
                found.push(first.at.start..last.at.end);
                from += wanted.len();
            }
            _ => from += 1,
        }
    }
    found
}

/// Whether a text may hold a term at all: quickly told, for most texts hold none.
fn may_hold(small: &str, term: &SearchTerm) -> bool {
    let longest = term.words.split(|c: char| !c.is_alphanumeric()).max_by_key(|word| word.len());
    term.phone || longest.is_none_or(|word| small.contains(word))
}

/// The terms that a text holds.
pub(crate) fn held<'a>(text: &str, kind: Markup, terms: impl Iterator<Item = &'a SearchTerm>) -> Vec<&'a SearchTerm> {
    let small = plain_text(text);
    let likely: Vec<&SearchTerm> = terms.filter(|term| may_hold(&small, term)).collect();
    if likely.is_empty() {
        return Vec::new();
    }
    if kind == Markup::Json {
        let mut found: Vec<&SearchTerm> = Vec::new();
        json_strings(text, |value| {
            let letters = folded(value, Markup::Text);
            found.extend(likely.iter().filter(|term| !places(&letters, term).is_empty()));
            None
        });
        return likely.into_iter().filter(|term| found.contains(term)).collect();
    }
    let letters = folded(text, kind);
    likely.into_iter().filter(|term| !places(&letters, term).is_empty()).collect()
}

/// A text without some terms; `None` if it holds none of them.
pub(crate) fn without(text: &str, kind: Markup, terms: &[&SearchTerm]) -> Option<String> {
    let small = plain_text(text);
    let likely: Vec<&SearchTerm> = terms.iter().copied().filter(|term| may_hold(&small, term)).collect();
    match kind {
        _ if likely.is_empty() => None,
        Markup::Json => json_strings(text, |value| blanked(value, Markup::Text, &likely)),
        kind => blanked(text, kind, &likely),
    }
}

fn blanked(text: &str, kind: Markup, terms: &[&SearchTerm]) -> Option<String> {
    let mut text = text.to_owned();
    let mut any = false;
    for term in terms {
        for at in places(&folded(&text, kind), term).into_iter().rev() {
            text.replace_range(at, FORGOTTEN);
            any = true;
        }
    }
    any.then_some(text)
}

/// Gives each string of a text of JSON that is not a key another value, if there is one; the rest stays as it is.
fn json_strings(text: &str, mut other: impl FnMut(&str) -> Option<String>) -> Option<String> {
    let (mut told, mut from, mut any) = (String::with_capacity(text.len()), 0, false);
    while let Some(start) = text[from..].find('"').map(|at| from + at) {
        let end = string_end(text, start);
        let is_key = text[end..].trim_start().starts_with(':');
        let value: Option<String> = if is_key { None } else { serde_json::from_str(&text[start..end]).ok() };
        told.push_str(&text[from..start]);
        match value.and_then(|value| other(&value)) {
            Some(value) => {
                told.push_str(&serde_json::Value::from(value).to_string());
                any = true;
            }
            None => told.push_str(&text[start..end]),
        }
        from = end;
    }
    told.push_str(&text[from..]);
    any.then_some(told)
}

/// Where a string of JSON ends that starts at a quote.
fn string_end(text: &str, start: usize) -> usize {
    let mut escaped = false;
    for (at, byte) in text.bytes().enumerate().skip(start + 1) {
        match byte {
            b'"' if !escaped => return at + 1,
            b'\\' => escaped = !escaped,
            _ => escaped = false,
        }
    }
    text.len()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn client() -> BookedClient {
        BookedClient {
            name: "Ms Zebedee Quillon & Sons".to_owned(),
            address: vec![
                "9 Unmistakable Row".to_owned(),
                "Harbourton".to_owned(),
                "tel. +99 (0)555 010-4477".to_owned(),
                "zeb@quillon.example".to_owned(),
            ],
        }
    }

    fn blank(text: &str, kind: Markup) -> String {
        let terms = terms(&client());
        without(text, kind, &terms.iter().collect::<Vec<_>>()).unwrap_or_else(|| text.to_owned())
    }

    #[test]
    fn every_part_is_found_in_every_case_and_over_lines() {
        for text in [
            "ms zebedee quillon & sons",
            "ZEBEDEE",
            "Quillon",
            "sons",
            "9 unmistakable\n   ROW",
            "Unmistakable Row",
            "harbourton",
            "0555 0104477",
            "+99 (0)555 010-4477",
            "ZEB@quillon.example",
        ] {
            assert_eq!(blank(&format!("For {text}, soon"), Markup::Text), format!("For {FORGOTTEN}, soon"), "{text}");
        }
        let kept = "Zebedees, Quillonia, 2026-11-25, row, unmistakable";
        assert_eq!(blank(kept, Markup::Text), kept);
    }

    #[test]
    fn the_same_letters_are_found_however_they_are_spelt() {
        for (name, typed) in [
            ("Sofias Νικος", "ΝΙΚΟΣ"),
            ("Greta Weiß", "WEISS"),
            ("Greta Weiss", "weiß"),
            ("Zoë Nuñez", "NUN\u{303}EZ"),
            ("Zoe\u{308} Nun\u{303}ez", "nuñez"),
            ("Zoë Nuñez", "Nunez"),
            ("İdil Kaya", "idil"),
            ("Idil Kaya", "İDİL"),
            ("Ada O'Brien-Smyth", "O’BRIEN"),
        ] {
            let client = BookedClient { name: name.to_owned(), address: Vec::new() };
            let terms = terms(&client);
            let told = without(&format!("{typed}; rang"), Markup::Text, &terms.iter().collect::<Vec<_>>());
            assert_eq!(told, Some(format!("{FORGOTTEN}; rang")), "{name}, {typed}");
        }
    }

    #[test]
    fn pages_keep_their_form() {
        let page = "<style>.sons { }</style><p class=\"sons\">Quillon &amp; SONS</p><p>Zebedee\nQuillon &amp; Sons</p>";
        let told = "<style>.sons { }</style><p class=\"sons\">(forgotten) &amp; (forgotten)</p><p>(forgotten)\n(forgotten) &amp; (forgotten)</p>";
        assert_eq!(blank(page, Markup::Html), told);
        let document = r#"{ "sons": "for \"Sons\"", "n": ["Quillon\n"], "x": 1.50 }"#;
        assert_eq!(
            blank(document, Markup::Json),
            r#"{ "sons": "for \"(forgotten)\"", "n": ["(forgotten)\n"], "x": 1.50 }"#
        );
    }

    #[test]
    fn marks_stay_marks() {
        let name = BookedClient { name: "Name Given".to_owned(), address: Vec::new() };
        let text = format!("{} said, and Name", crate::marks::name_mark());
        let terms = terms(&name);
        let told = without(&text, Markup::Text, &terms.iter().collect::<Vec<_>>());
        assert_eq!(told, Some(format!("{} said, and {FORGOTTEN}", crate::marks::name_mark())));
    }
}
