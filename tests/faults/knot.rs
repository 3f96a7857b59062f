//! Faults of a knot of the shop's own.

use crate::case::{CHECK, Case, Swap, check_all};
use crate::messages::Module;

pub(crate) const CASES: &[Case] = &[
    Case { name: "knot-unknown-key", edits: &[Swap("knots/bow.toml", "draws = 2", "§drwas = 2")], words: CHECK },
    Case {
        name: "knot-missing-time",
        edits: &[
            Swap("knots/bow.toml", "[knot]\nname", "§[knot]\nname"),
            Swap(
                "knots/bow.toml",
                "[time]\nbase = 8\npull = 1\nsource = \"from memory\"\nnote = \"Only for these tests.\"\n",
                "",
            ),
        ],
        words: CHECK,
    },
    Case {
        name: "knot-kind-unknown",
        edits: &[Swap("knots/bow.toml", "kind = \"single\"", "kind = §\"sinlge\"")],
        words: CHECK,
    },
    Case {
        name: "knot-core-range-reversed",
        edits: &[Swap("knots/bow.toml", "legs = [0, 2]", "legs = §[2, 0]")],
        words: CHECK,
    },
    Case {
        name: "knot-core-range-of-three",
        edits: &[Swap("knots/bow.toml", "legs = [0, 2]", "legs = §[0, 1, 2]")],
        words: CHECK,
    },
    Case {
        name: "knot-role-without-moves",
        edits: &[
            Swap("knots/bow.toml", "[[role]]", "§[[role]]"),
            Swap(
                "knots/bow.toml",
                "moves = [\n    { round = \"core\", turns = 1, each = \"loops\" },\n    { across = 4 },\n]\n",
                "",
            ),
        ],
        words: CHECK,
    },
    Case {
        name: "knot-with-a-core-role-alone",
        edits: &[
            Swap("knots/bow.toml", "[knot]\nname", "§[knot]\nname"),
            Swap("knots/bow.toml", "role = \"working\"\nlegs = [1, 2]\ndraws = 2\n", "role = \"core\"\n"),
        ],
        words: CHECK,
    },
    Case {
        name: "knot-move-without-turns",
        edits: &[Swap("knots/bow.toml", "{ round = \"core\", turns = 1, each = \"loops\" }", "§{ round = \"core\" }")],
        words: CHECK,
    },
    Case {
        name: "knot-move-of-two-things",
        edits: &[Swap("knots/bow.toml", "{ across = 4 }", "§{ across = 4, along = 1 }")],
        words: CHECK,
    },
    Case {
        name: "knot-move-not-a-number",
        edits: &[Swap("knots/bow.toml", "{ across = 4 }", "{ across = §nan }")],
        words: CHECK,
    },
    Case {
        name: "knot-move-negative",
        edits: &[Swap("knots/bow.toml", "{ across = 4 }", "{ across = §-4 }")],
        words: CHECK,
    },
    Case {
        name: "knot-parameter-missing",
        edits: &[
            Swap("knots/bow.toml", "[knot]\nname", "§[knot]\nname"),
            Swap("knots/bow.toml", "name = \"loops\"", "name = \"turns\""),
        ],
        words: CHECK,
    },
    Case {
        name: "knot-default-out-of-range",
        edits: &[Swap("knots/bow.toml", "default = 2", "default = §9")],
        words: CHECK,
    },
    Case {
        name: "knot-source-unknown",
        edits: &[Swap(
            "knots/bow.toml",
            "base = 8\npull = 1\nsource = \"from memory\"",
            "base = 8\npull = 1\nsource = §\"hearsay\"",
        )],
        words: CHECK,
    },
    Case { name: "knot-base-infinite", edits: &[Swap("knots/bow.toml", "base = 8", "base = §inf")], words: CHECK },
];

pub(crate) fn module() -> Module {
    crate::module("knot", &[CASES], &[])
}

#[test]
fn faults_of_a_knot_are_told() {
    check_all(&module(), CASES);
}
