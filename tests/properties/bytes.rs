//! No bytes of a shop's files panic a reader.

use proptest::prelude::*;
use proptest::sample::Index;
use reeve_reading::FaultTally;
use reeve_shop::Answer;
use reeve_tests::{TestShop, Tree};

use crate::{cases, day};

/// Words that a careless or a wicked hand might put anywhere.
const WORDS: &[&[u8]] = &[
    b"nan",
    b"inf",
    b"-1",
    b"0",
    b"1e999",
    b"99999999999999999999",
    b"0xffffffffffffffffffff",
    b"\"\"",
    b"\"1e9 cm\"",
    b"\"-0 %\"",
    b"\"99999999999999999999999999999\"",
    b"[[",
    b"]]",
    b"{",
    b"}",
    b"=",
    b"\n",
    b"\"",
    b"'''",
    b"\"\"\"",
    b"#",
    b"\xff",
    b"\xed\xa0\x80",
    b"\0",
    b"\r",
    b"\xef\xbb\xbf",
    "\u{202e}".as_bytes(),
    "\u{1f9f6}".as_bytes(),
    b"true",
    b"2027-02-30",
    b"10000-01-01",
    b"times = 20000\n",
    b"count = 5000\n",
    b"quantity = 10000\n",
    b"[[step]]\n",
    b"[[part]]\ndesign = \"halyard-garland\"\ncount = 1000\n",
    b"share = \"even\"\n",
    b"{{ x }}",
    b"{% for %}",
];

/// How many of them, from the first on, stand where a number could.
const NUMBERS: usize = 11;

/// One change of a file.
#[derive(Debug, Clone)]
enum Change {
    /// This byte there.
    Set(Index, u8),
    /// Bytes from there on, so many at most, gone.
    Drop(Index, usize),
    /// A word put in there.
    Put(Index, usize),
    /// The number that stands there or next, replaced by a word.
    Number(Index, usize),
    /// Two lines in each other's place.
    Swap(Index, Index),
    /// A line a second time.
    Twice(Index),
    /// Everything from there on gone.
    Cut(Index),
}

fn changes() -> impl Strategy<Value = Change> {
    let at = any::<Index>;
    let word = || 0..WORDS.len();
    prop_oneof![
        1 => (at(), any::<u8>()).prop_map(|(at, byte)| Change::Set(at, byte)),
        1 => (at(), 1_usize..40).prop_map(|(at, many)| Change::Drop(at, many)),
        1 => (at(), word()).prop_map(|(at, word)| Change::Put(at, word)),
        3 => (at(), word()).prop_map(|(at, word)| Change::Number(at, word)),
        2 => (at(), at()).prop_map(|(a, b)| Change::Swap(a, b)),
        1 => at().prop_map(Change::Twice),
        1 => at().prop_map(Change::Cut),
    ]
}

impl Change {
    fn apply(&self, bytes: &mut Vec<u8>) {
        if bytes.is_empty() {
            return;
        }
        let size = bytes.len();
        match self {
            Self::Set(at, byte) => bytes[at.index(size)] = *byte,
            Self::Drop(at, many) => drop(bytes.drain(at.index(size)..(at.index(size) + many).min(size))),
            Self::Put(at, word) => put(bytes, at.index(size)..at.index(size), *word),
            Self::Number(at, word) => put(bytes, number_from(bytes, at.index(size)), *word),
            Self::Swap(a, b) => with_lines(bytes, |lines| {
                let many = lines.len();
                lines.swap(a.index(many), b.index(many));
            }),
            Self::Twice(at) => with_lines(bytes, |lines| lines.push(lines[at.index(lines.len())].clone())),
            Self::Cut(at) => bytes.truncate(at.index(size)),
        }
    }
}

fn put(bytes: &mut Vec<u8>, place: std::ops::Range<usize>, word: usize) {
    bytes.splice(place, WORDS[word].iter().copied());
}

/// The digits that stand at a place or next after it.
fn number_from(bytes: &[u8], from: usize) -> std::ops::Range<usize> {
    let digit = |at: &usize| bytes[*at].is_ascii_digit();
    let start = (from..bytes.len()).find(digit).unwrap_or(from);
    let end = (start..bytes.len()).find(|at| !digit(at)).unwrap_or(bytes.len());
    start..end
}

fn with_lines(bytes: &mut Vec<u8>, change: impl FnOnce(&mut Vec<Vec<u8>>)) {
    let mut lines: Vec<Vec<u8>> = bytes.split(|byte| *byte == b'\n').map(<[u8]>::to_vec).collect();
    change(&mut lines);
    *bytes = lines.join(&b'\n');
}

/// Samples, some of them odd.
const SAMPLES: &str = r#"
[[sample]]
cord = "cotton-4-ecru"
knot = "square"
tied = 10
core = 2
before = "150 cm"
after = "91 cm"
made = "14 cm"
minutes = 3.5
on = 2026-11-02

[[sample]]
cord = "cotton-4-ecru"
knot = "square"
tied = 10
before = "150 cm"
after = "62 cm"
made = "14 cm"
minutes = 40

[[sample]]
cord = "hemp-2"
knot = "gathering-wrap"
tied = 2
core = 8
parameters = { turns = 12 }
before = "2 m"
after = "120 cm"
made = "5 cm"
"#;

/// The starter shop with samples.
fn shop() -> TestShop {
    let place = TestShop::starter();
    place.write("shop/knots/samples.toml", SAMPLES);
    place
}

/// Its files, and a template.
fn files() -> Tree {
    let mut files = shop().tree();
    files.insert("shop/templates/quote.txt".into(), include_bytes!("../../templates/quote.txt").to_vec());
    files
}

/// Opens and checks the whole shop, as `reeve check` does, and words every fault.
fn check(place: &TestShop) {
    let Answer { value: shop, mut faults } = place.open();
    let mut told = FaultTally::default();
    shop.check(day(), &mut told);
    faults.extend(told.shown().into_iter().cloned());
    let own: Vec<_> = shop.templates().noted(&mut faults).into_iter().map(reeve_pages::OwnTemplate::from).collect();
    let _ = reeve_pages::load(&own, &reeve_pages::Phrases::of_language(reeve_pages::ENGLISH))
        .map_err(|fault| fault.to_string());
    for fault in faults {
        assert!(!fault.render(false).is_empty() && !fault.render(true).is_empty());
        fault.line_and_column();
    }
}

proptest! {
    #![proptest_config(cases(96))]

    #[test]
    fn no_change_of_any_file_panics_the_reader(
        which in any::<Index>(),
        changes in prop::collection::vec(changes(), 1..6),
    ) {
        let place = shop();
        let files = files();
        let (path, bytes) = files.iter().nth(which.index(files.len())).unwrap();
        let mut bytes = bytes.clone();
        for change in &changes {
            change.apply(&mut bytes);
        }
        place.write(path.to_str().unwrap(), bytes);
        check(&place);
    }

    #[test]
    fn no_bytes_at_all_panic_the_reader(which in any::<Index>(), bytes in prop::collection::vec(any::<u8>(), 0..300)) {
        let place = shop();
        let files = files();
        let path = files.keys().nth(which.index(files.len())).unwrap();
        place.write(path.to_str().unwrap(), bytes);
        check(&place);
    }
}

#[test]
fn no_word_in_the_place_of_any_number_panics_the_reader() {
    // Every number of one design, of the commission that asks for it and of samples, by every word that looks like one: all in
    // turn, not by chance.
    for path in ["shop/designs/fender-fob.toml", "shop/commissions/thwickling.toml", "shop/knots/samples.toml"] {
        let place = shop();
        let bytes = place.read(path).into_bytes();
        let mut from = 0;
        while from < bytes.len() {
            let number = number_from(&bytes, from);
            for word in 0..NUMBERS {
                let mut changed = bytes.clone();
                put(&mut changed, number.clone(), word);
                place.write(path, changed);
                check_one(&place, path);
            }
            from = number.end.max(from + 1);
        }
    }
}

/// Reads the one file that was changed, with what it names.
fn check_one(place: &TestShop, path: &str) {
    let Answer { value: shop, mut faults } = place.open();
    let stem = path.rsplit('/').next().unwrap().trim_end_matches(".toml");
    if path.contains("designs") {
        shop.design(stem, &reeve_shop::Choice::default()).noted(&mut faults);
    } else if path.contains("commissions") {
        shop.order(stem, &reeve_shop::Wish::default(), day()).noted(&mut faults);
    }
    for fault in faults {
        fault.render(false);
    }
}

#[test]
fn the_samples_of_these_tests_are_sound() {
    let Answer { value: shop, faults } = shop().open();
    assert!(faults.is_empty());
    let hand = &shop.basis().unwrap().hand;
    assert_eq!((hand.given, hand.odd.len()), (3, 1));
}
