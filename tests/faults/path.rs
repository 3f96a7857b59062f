//! Faults of a knot that is drawn: its path, and what tightening left beside it.

use crate::case::{CHECK, Case, New, Swap, check_all};
use crate::messages::Module;

/// A knot with a path without faults, and the heading of each of its parts in one place to change.
const DRAWN: &str = "[knot]\nname = \"lace\"\ntitle = \"lace\"\nkind = \"sennit\"\nsummary = \"Two legs cross.\"\n\n[core]\nlegs = [1, 4]\n\n[[role]]\nrole = \"working\"\nlegs = [2, 2]\nsource = \"geometry\"\nnote = \"From the path.\"\n\n[path]\nrepeats = 6\n\n[[path.leg]]\npoints = [[-1.8, 0, 0], [0, 1.5, 1.3], [1.1, 3, 0], [0, 4.5, -1.3]]\n\n[[path.leg]]\npoints = [[-1.1, 0, 0], [0, 1.5, -1.3], [1.8, 3, 0], [0, 4.5, 1.3]]\n\n[time]\nbase = 8\npull = 1\nsource = \"from memory\"\nnote = \"Only for these tests.\"\n";

const LACE: &str = "knots/lace.toml";

pub(crate) const CASES: &[Case] = &[
    Case {
        name: "path-point-of-two-numbers",
        edits: &[New(LACE, DRAWN), Swap(LACE, "[1.8, 3, 0]", "§[1.8, 3]")],
        words: CHECK,
    },
    Case {
        name: "path-line-of-two-points",
        edits: &[New(LACE, DRAWN), Swap(LACE, "[[-1.1, 0, 0], [0, 1.5, -1.3], [1.8, 3, 0], ", "§[[-1.1, 0, 0], ")],
        words: CHECK,
    },
    Case {
        name: "path-point-far-away",
        edits: &[New(LACE, DRAWN), Swap(LACE, "[1.8, 3, 0]", "[§1800, 3, 0]")],
        words: CHECK,
    },
    Case {
        name: "path-leg-without-points",
        edits: &[
            New(LACE, DRAWN),
            Swap(
                LACE,
                "[[path.leg]]\npoints = [[-1.1, 0, 0], [0, 1.5, -1.3], [1.8, 3, 0], [0, 4.5, 1.3]]",
                "§[[path.leg]]\nturned = 180",
            ),
        ],
        words: CHECK,
    },
    Case {
        name: "path-leg-like-one-not-drawn",
        edits: &[
            New(LACE, DRAWN),
            Swap(
                LACE,
                "[[path.leg]]\npoints = [[-1.1, 0, 0], [0, 1.5, -1.3], [1.8, 3, 0], [0, 4.5, 1.3]]",
                "§[[path.leg]]\nlike = 3",
            ),
        ],
        words: CHECK,
    },
    Case {
        name: "path-leg-goes-on-as-one-taken",
        edits: &[
            New(LACE, DRAWN),
            Swap(LACE, "[[path.leg]]\npoints = [[-1.1", "§[[path.leg]]\ngoes-on-as = 1\npoints = [[-1.1"),
        ],
        words: CHECK,
    },
    Case {
        name: "path-mirrored-some-other-way",
        edits: &[
            New(LACE, DRAWN),
            Swap(
                LACE,
                "points = [[-1.1, 0, 0], [0, 1.5, -1.3], [1.8, 3, 0], [0, 4.5, 1.3]]",
                "like = 1\nmirrored = §\"acros\"",
            ),
        ],
        words: CHECK,
    },
    Case {
        name: "path-twist-of-one-that-stands-alone",
        edits: &[New(LACE, DRAWN), Swap(LACE, "repeats = 6", "twist = §90")],
        words: CHECK,
    },
    Case {
        name: "path-of-other-legs-than-the-role",
        edits: &[New(LACE, DRAWN), Swap(LACE, "legs = [2, 2]", "legs = [3, 3]"), Swap(LACE, "[path]", "§[path]")],
        words: CHECK,
    },
    Case {
        name: "path-drawn-for-an-unknown-parameter",
        edits: &[
            New(LACE, DRAWN),
            Swap(LACE, "[path]\nrepeats = 6", "§[path]\nrepeats = 6\nparameters = { turns = 3 }"),
        ],
        words: CHECK,
    },
    Case {
        name: "path-and-a-rise-without-moves",
        edits: &[
            New(LACE, DRAWN),
            Swap(LACE, "[time]", "§[rise]\ndiameters = 2\nsource = \"geometry\"\nnote = \"Both.\"\n\n[time]"),
        ],
        words: CHECK,
    },
    Case {
        name: "path-without-a-leg",
        edits: &[
            New(LACE, DRAWN),
            Swap(
                LACE,
                "[path]\nrepeats = 6\n\n[[path.leg]]\npoints = [[-1.8, 0, 0], [0, 1.5, 1.3], [1.1, 3, 0], [0, 4.5, -1.3]]\n\n[[path.leg]]\npoints = [[-1.1, 0, 0], [0, 1.5, -1.3], [1.8, 3, 0], [0, 4.5, 1.3]]",
                "§[path]\nrepeats = 6",
            ),
        ],
        words: CHECK,
    },
    Case {
        name: "knot-made-of-one-that-is-not-here",
        edits: &[Swap("knots/bow.toml", "{ across = 4 }", "{ knot = \"sqare\", times = 2 }")],
        words: CHECK,
    },
    Case {
        name: "knot-not-tightened-yet",
        edits: &[New(LACE, DRAWN)],
        words: &["knots", "show", "lace", "--shop", "shop"],
    },
    Case { name: "tighten-a-knot-of-moves", edits: &[], words: &["knots", "tighten", "bow", "--shop", "shop"] },
    Case {
        name: "tighten-what-comes-undone",
        edits: &[
            New(LACE, DRAWN),
            Swap(
                LACE,
                "[[-1.8, 0, 0], [0, 1.5, 1.3], [1.1, 3, 0], [0, 4.5, -1.3]]",
                "[[1.8, 0, 0], [1.9, 2, 0], [1.8, 4, 0]]",
            ),
            Swap(
                LACE,
                "[[-1.1, 0, 0], [0, 1.5, -1.3], [1.8, 3, 0], [0, 4.5, 1.3]]",
                "[[-1.8, 0, 0], [-1.9, 2, 0], [-1.8, 4, 0]]",
            ),
        ],
        words: &["knots", "tighten", "lace", "--shop", "shop"],
    },
    Case {
        name: "tighten-a-leg-too-long",
        edits: &[New(LACE, DRAWN), Swap(LACE, "[1.1, 3, 0]", "[190, 3, 0], [-190, 3.2, 0], [190, 3.4, 0]")],
        words: &["knots", "tighten", "lace", "--shop", "shop"],
    },
    Case {
        name: "tighten-round-more-core-than-it-takes",
        edits: &[],
        words: &["knots", "tighten", "square", "--core", "400", "--shop", "shop"],
    },
    Case { name: "tighten-what-friction-holds", edits: &[], words: &["knots", "tighten", "crown", "--shop", "shop"] },
    Case {
        name: "tighten-the-programs-own-to-keep",
        edits: &[],
        words: &["knots", "tighten", "square", "--keep", "--shop", "shop"],
    },
];

pub(crate) fn module() -> Module {
    crate::module("path", &[CASES], &[])
}

#[test]
fn faults_of_a_drawn_knot_are_told() {
    check_all(&module(), CASES);
}
