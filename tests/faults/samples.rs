//! Faults of the samples.

use crate::case::{CHECK, Case, New, Swap, check_all, judge, shop};
use crate::messages::Module;

/// The file of the samples.
const FILE: &str = "knots/samples.toml";

/// A knot whose figures are guesses: a leg goes round the core five times.
const LUMP: &str = "[knot]\nname = \"lump\"\ntitle = \"lump\"\nkind = \"sennit\"\nsummary = \"A lump.\"\n\n[core]\nlegs = [1, 8]\n\n\
    [[role]]\nrole = \"working\"\nlegs = [2, 2]\nmoves = [{ round = \"core\", turns = 5 }]\nsource = \"from memory\"\n\
    note = \"Guessed.\"\n\n[rise]\ndiameters = 2\nsource = \"from memory\"\nnote = \"Guessed.\"\n\n\
    [time]\nbase = 10\npull = 0\nsource = \"from memory\"\nnote = \"Guessed.\"\n";

/// A file of one sample, of these lines.
macro_rules! sample {
    ($($line:literal),* $(,)?) => {
        concat!("# Tied for trial.\n\n[[sample]]\n", $($line, "\n"),*)
    };
}

pub(crate) const CASES: &[Case] = &[
    Case {
        name: "sample-cord-unknown",
        edits: &[New(
            FILE,
            sample![
                "cord = §\"sotf-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = \"14 cm\""
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-knot-unknown",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = §\"sqaure\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = \"14 cm\""
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-cord-and-knot-unknown",
        edits: &[New(
            FILE,
            sample![
                "cord = §\"soft-5\"",
                "knot = §\"granny\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = \"14 cm\""
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-unknown-key",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = \"14 cm\"",
                "§minuets = 3"
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-missing-made",
        edits: &[New(
            FILE,
            "§[[sample]]\ncord = \"soft-4\"\nknot = \"square\"\ntied = 10\nbefore = \"150 cm\"\nafter = \"91 cm\"\n",
        )],
        words: CHECK,
    },
    Case {
        name: "sample-tied-zero",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = §0",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = \"14 cm\""
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-length-negative",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = §\"-91 cm\"",
                "made = \"14 cm\""
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-length-zero",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = §\"0 cm\""
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-length-without-unit",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = §150",
                "after = \"91 cm\"",
                "made = \"14 cm\""
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-longer-after-tying",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"91 cm\"",
                "after = §\"150 cm\"",
                "made = \"14 cm\""
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-of-two-cores",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = \"14 cm\"",
                "core = 2",
                "rod = §\"5 mm\""
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-makes-more-than-it-takes",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = §\"60 cm\""
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-takes-too-little",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = §\"125 cm\"",
                "made = \"14 cm\""
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-takes-too-much",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"15 m\"",
                "after = §\"91 mm\"",
                "made = \"14 cm\""
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-made-in-the-wrong-unit",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = §\"14 mm\""
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-made-of-a-mile",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"double-half-hitch\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = §\"14 m\"",
                "core = 1"
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-of-too-many-core-legs",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = \"14 cm\"",
                "core = §99"
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-on-a-rod-it-cannot-take",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = \"14 cm\"",
                "rod = §\"9 mm\""
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-without-its-rod",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = §\"double-half-hitch-on-ring\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = \"14 cm\""
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-of-three-working-legs",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = \"14 cm\"",
                "working = §3"
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-parameter-unknown",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = \"14 cm\"",
                "parameters = { §rounds = 3 }"
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-parameter-out-of-range",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"gathering-wrap\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = \"14 cm\"",
                "core = 8",
                "parameters = { turns = §2 }"
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-in-no-time",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = \"14 cm\"",
                "minutes = §0.04"
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-of-a-week",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = \"14 cm\"",
                "minutes = §10000"
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-far-from-a-guess",
        edits: &[
            New("knots/lump.toml", LUMP),
            New(
                FILE,
                sample![
                    "cord = \"soft-4\"",
                    "knot = \"lump\"",
                    "tied = 10",
                    "before = \"150 cm\"",
                    "after = §\"140 cm\"",
                    "made = \"7 cm\""
                ],
            ),
        ],
        words: CHECK,
    },
    Case {
        name: "sample-minutes-negative",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = \"14 cm\"",
                "minutes = §-3"
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-minutes-not-a-number",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = \"14 cm\"",
                "minutes = §nan"
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "sample-on-no-day",
        edits: &[New(
            FILE,
            sample![
                "cord = \"soft-4\"",
                "knot = \"square\"",
                "tied = 10",
                "before = \"150 cm\"",
                "after = \"91 cm\"",
                "made = \"14 cm\"",
                "on = §\"2026-02-30\""
            ],
        )],
        words: CHECK,
    },
    Case {
        name: "cord-give-too-soft",
        edits: &[Swap("store/cords.toml", "charge = \"used\"", "charge = \"used\"\ngive = §0.5")],
        words: CHECK,
    },
];

pub(crate) fn module() -> Module {
    crate::module("samples", &[CASES], &MORE)
}

#[test]
fn faults_of_the_samples_are_told() {
    check_all(&module(), CASES);
}

/// Messages of the tests of this file that are no cases of a table.
pub(crate) const MORE: [&str; 1] = ["sample-added-to-no-cord"];

#[test]
fn a_sample_that_is_added_is_judged_before_it_is_written() {
    // The place is one in the file as it would be.
    let places = ["knots/samples.toml (not written):2:8".to_owned(), "knots/samples.toml (not written):3:8".to_owned()];
    let words = ["knots", "sample", "--shop", "shop", "--cord", "sotf-4", "--knot", "sqaure", "--tied", "10"];
    let lengths = ["--before", "150 cm", "--after", "91 cm", "--made", "14 cm"];
    judge(&shop(), (&module(), MORE[0], &[]), &[&words[..], &lengths].concat(), &places).unwrap();
}
