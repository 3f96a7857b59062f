//! Faults of a design.

use crate::case::{CHECK, Case, New, Swap, check_all};
use crate::messages::Module;

pub(crate) const CASES: &[Case] = &[
    Case {
        name: "design-unknown-key",
        edits: &[Swap("designs/tassel.toml", "count = 4", "count = 4\n§foldde = true")],
        words: CHECK,
    },
    Case {
        name: "design-missing-key",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[cord]]\ngroup = \"wrap\"\nof = \"soft-4\"",
            "§[[cord]]\ngroup = \"wrap\"",
        )],
        words: CHECK,
    },
    Case {
        name: "design-purpose-unknown",
        edits: &[Swap("designs/tassel.toml", "purpose = \"decoration\"", "purpose = §\"decorations\"")],
        words: CHECK,
    },
    Case {
        name: "count-in-quotes",
        edits: &[Swap("designs/tassel.toml", "count = 4", "count = §\"4\"")],
        words: CHECK,
    },
    Case { name: "count-a-decimal", edits: &[Swap("designs/tassel.toml", "count = 4", "count = §4.0")], words: CHECK },
    Case { name: "count-zero", edits: &[Swap("designs/tassel.toml", "count = 4", "count = §0")], words: CHECK },
    Case { name: "count-negative", edits: &[Swap("designs/tassel.toml", "count = 4", "count = §-4")], words: CHECK },
    Case { name: "count-absurd", edits: &[Swap("designs/tassel.toml", "count = 4", "count = §5001")], words: CHECK },
    Case {
        name: "count-past-64-bits",
        edits: &[Swap("designs/tassel.toml", "count = 4", "count = §99999999999999999999999")],
        words: CHECK,
    },
    Case {
        name: "count-past-64-bits-in-hexadecimal",
        edits: &[Swap("designs/tassel.toml", "count = 4", "count = §0xffffffffffffffffffff")],
        words: CHECK,
    },
    Case {
        name: "folded-in-quotes",
        edits: &[Swap("designs/tassel.toml", "folded = true", "folded = §\"yes\"")],
        words: CHECK,
    },
    Case {
        name: "cord-unknown",
        edits: &[Swap(
            "designs/tassel.toml",
            "group = \"wrap\"\nof = \"soft-4\"",
            "group = \"wrap\"\nof = §\"sotf-4\"",
        )],
        words: CHECK,
    },
    Case {
        name: "cord-unknown-and-like-no-other",
        edits: &[Swap("designs/tassel.toml", "group = \"wrap\"\nof = \"soft-4\"", "group = \"wrap\"\nof = §\"wire\"")],
        words: CHECK,
    },
    Case {
        name: "group-twice",
        edits: &[Swap("designs/tassel.toml", "group = \"wrap\"", "group = §\"arms\"")],
        words: CHECK,
    },
    Case {
        name: "set-twice",
        edits: &[
            Swap(
                "designs/tassel.toml",
                "legs = [\"worker\", \"filler\"]\n\n[[cord]]",
                "legs = [\"worker\", §\"worker\"]\n\n[[cord]]",
            ),
            Swap(
                "designs/tassel.toml",
                "[[step]]\nknot = \"square\"\ntimes = 6\ncolumns = 2\nworking = [\"worker\"]\ncore = [\"filler\"]",
                "[[step]]\nbare = \"1 cm\"\nlegs = [\"worker\"]",
            ),
        ],
        words: CHECK,
    },
    Case {
        name: "sets-three-of-a-folded-cord",
        edits: &[Swap(
            "designs/tassel.toml",
            "legs = [\"worker\", \"filler\"]\n\n[[cord]]",
            "legs = §[\"worker\", \"filler\", \"third\"]\n\n[[cord]]",
        )],
        words: CHECK,
    },
    Case {
        name: "sets-two-of-a-single-cord",
        edits: &[Swap(
            "designs/tassel.toml",
            "group = \"wrap\"\nof = \"soft-4\"\ncount = 1",
            "group = \"wrap\"\nof = \"soft-4\"\ncount = 1\nlegs = §[\"one\", \"other\"]",
        )],
        words: CHECK,
    },
    Case {
        name: "design-of-nothing",
        edits: &[New("designs/empty.toml", "§[piece]\nname = \"Nothing\"\npurpose = \"decoration\"\n")],
        words: CHECK,
    },
    Case {
        name: "knot-unknown",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[step]]\nknot = \"square\"\ntimes = 6\ncolumns = 2\nworking = [\"worker\"]\ncore = [\"filler\"]",
            "[[step]]\nknot = §\"sqaure\"\ntimes = 6\ncolumns = 2\nworking = [\"worker\"]\ncore = [\"filler\"]",
        )],
        words: CHECK,
    },
    Case {
        name: "knot-unknown-and-like-no-other",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[step]]\nknot = \"square\"\ntimes = 6\ncolumns = 2\nworking = [\"worker\"]\ncore = [\"filler\"]",
            "[[step]]\nknot = §\"granny\"\ntimes = 6\ncolumns = 2\nworking = [\"worker\"]\ncore = [\"filler\"]",
        )],
        words: CHECK,
    },
    Case {
        name: "fitting-unknown",
        edits: &[Swap("designs/tassel.toml", "on = \"ring-40\"", "on = §\"ring-44\"")],
        words: CHECK,
    },
    Case {
        name: "bead-unknown",
        edits: &[Swap("designs/tassel.toml", "thread = \"bead-25\"", "thread = §\"bead-52\"")],
        words: CHECK,
    },
    Case {
        name: "set-unknown",
        edits: &[Swap("designs/tassel.toml", "core = [\"filler\"]", "core = [§\"filer\"]")],
        words: CHECK,
    },
    Case {
        name: "group-unknown",
        edits: &[Swap("designs/tassel.toml", "hang = [\"arms\"]", "hang = [§\"amrs\"]")],
        words: CHECK,
    },
    Case {
        name: "bare-without-unit",
        edits: &[Swap("designs/tassel.toml", "bare = \"3 cm\"", "bare = §3")],
        words: CHECK,
    },
    Case {
        name: "bare-without-unit-in-quotes",
        edits: &[Swap("designs/tassel.toml", "bare = \"3 cm\"", "bare = §\"3\"")],
        words: CHECK,
    },
    Case {
        name: "bare-in-nonsense",
        edits: &[Swap("designs/tassel.toml", "bare = \"3 cm\"", "bare = §\"3 furlongs\"")],
        words: CHECK,
    },
    Case {
        name: "bare-with-a-comma",
        edits: &[Swap("designs/tassel.toml", "bare = \"3 cm\"", "bare = §\"3,5 cm\"")],
        words: CHECK,
    },
    Case {
        name: "bare-zero",
        edits: &[Swap("designs/tassel.toml", "bare = \"3 cm\"", "bare = §\"0 cm\"")],
        words: CHECK,
    },
    Case {
        name: "bare-negative",
        edits: &[Swap("designs/tassel.toml", "bare = \"3 cm\"", "bare = §\"-3 cm\"")],
        words: CHECK,
    },
    Case {
        name: "bare-absurd",
        edits: &[Swap("designs/tassel.toml", "bare = \"3 cm\"", "bare = §\"300 m\"")],
        words: CHECK,
    },
    Case {
        name: "bare-of-two-points",
        edits: &[Swap("designs/tassel.toml", "bare = \"3 cm\"", "bare = §\"3.5.1 cm\"")],
        words: CHECK,
    },
    Case {
        name: "bare-of-legs-not-named",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[step]]\nbare = \"3 cm\"\nlegs = [\"worker\", \"filler\"]",
            "§[[step]]\nbare = \"3 cm\"",
        )],
        words: CHECK,
    },
    Case {
        name: "bare-of-no-legs",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[step]]\nbare = \"3 cm\"\nlegs = [\"worker\", \"filler\"]",
            "[[step]]\nbare = \"3 cm\"\nlegs = §[]",
        )],
        words: CHECK,
    },
    Case {
        name: "bare-of-a-set-twice",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[step]]\nbare = \"3 cm\"\nlegs = [\"worker\", \"filler\"]",
            "[[step]]\nbare = \"3 cm\"\nlegs = [§\"worker\", \"worker\"]",
        )],
        words: CHECK,
    },
    Case { name: "times-zero", edits: &[Swap("designs/tassel.toml", "times = 6", "times = §0")], words: CHECK },
    Case { name: "times-absurd", edits: &[Swap("designs/tassel.toml", "times = 6", "times = §20001")], words: CHECK },
    Case {
        name: "parameter-not-a-number",
        edits: &[Swap("designs/tassel.toml", "{ turns = 6 }", "{ turns = §nan }")],
        words: CHECK,
    },
    Case {
        name: "parameter-infinite",
        edits: &[Swap("designs/tassel.toml", "{ turns = 6 }", "{ turns = §inf }")],
        words: CHECK,
    },
    Case {
        name: "parameter-unknown",
        edits: &[Swap("designs/tassel.toml", "{ turns = 6 }", "{ §rounds = 6 }")],
        words: CHECK,
    },
    Case {
        name: "parameter-out-of-range",
        edits: &[Swap("designs/tassel.toml", "{ turns = 6 }", "{ turns = §2 }")],
        words: CHECK,
    },
    Case {
        name: "minutes-infinite",
        edits: &[Swap("designs/tassel.toml", "minutes = 3", "minutes = §inf")],
        words: CHECK,
    },
    Case { name: "minutes-zero", edits: &[Swap("designs/tassel.toml", "minutes = 3", "minutes = §0")], words: CHECK },
    Case {
        name: "task-cost-bare",
        edits: &[Swap("designs/tassel.toml", "cost = \"0.20\"", "cost = §0.20")],
        words: CHECK,
    },
    Case {
        name: "step-of-two-things",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[step]]\nbare = \"3 cm\"\nlegs = [\"worker\", \"filler\"]",
            "§[[step]]\nbare = \"3 cm\"\ntail = \"3 cm\"\nlegs = [\"worker\", \"filler\"]",
        )],
        words: CHECK,
    },
    Case {
        name: "step-of-nothing",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[step]]\nbare = \"3 cm\"\nlegs = [\"worker\", \"filler\"]",
            "§[[step]]\nname = \"Rest\"",
        )],
        words: CHECK,
    },
    Case {
        name: "step-with-a-stray-key",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[step]]\nbare = \"3 cm\"\nlegs = [\"worker\", \"filler\"]",
            "[[step]]\nbare = \"3 cm\"\nlegs = [\"worker\", \"filler\"]\ntimes = §3",
        )],
        words: CHECK,
    },
    Case {
        name: "core-the-knot-cannot-take",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[step]]\nknot = \"square\"\ntimes = 6\ncolumns = 2\nworking = [\"worker\"]\ncore = [\"filler\"]",
            "[[step]]\nknot = \"overhand\"\ncolumns = 4\nworking = [\"worker\"]\ncore = §[\"filler\"]",
        )],
        words: CHECK,
    },
    Case {
        name: "core-of-too-many-legs",
        edits: &[
            Swap("designs/tassel.toml", "count = 4", "count = 26"),
            Swap(
                "designs/tassel.toml",
                "columns = 2\nworking = [\"worker\"]\ncore = [\"filler\"]",
                "columns = 1\nworking = [\"wrap\"]\ncore = §[\"filler\"]",
            ),
            Swap("designs/tassel.toml", "hang = [\"arms\"]", "hang = [\"arms\", \"wrap\"]"),
            Swap(
                "designs/tassel.toml",
                "group = \"wrap\"\nof = \"soft-4\"\ncount = 1",
                "group = \"wrap\"\nof = \"soft-4\"\ncount = 1\nfolded = true",
            ),
            Swap(
                "designs/tassel.toml",
                "[[step]]\nthread = \"bead-25\"\nlegs-each = 4\nlegs = [\"worker\", \"filler\"]\n",
                "",
            ),
            Swap(
                "designs/tassel.toml",
                "[[step]]\nknot = \"square\"\ntimes = 2\ncolumns = 2\nworking = [\"worker\", \"filler\"]\ncore = [\"worker\", \"filler\"]\nshare = \"even\"\n",
                "",
            ),
            Swap(
                "designs/tassel.toml",
                "[[step]]\nknot = \"gathering-wrap\"\nworking = [\"wrap\"]\ncore = [\"worker\", \"filler\"]\nparameters = { turns = 6 }\n",
                "",
            ),
            Swap("designs/tassel.toml", "on = \"ring-40\"", "on = \"lath\""),
        ],
        words: CHECK,
    },
    Case {
        name: "knot-not-on-a-fitting",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[step]]\nknot = \"square\"\ntimes = 6\ncolumns = 2\nworking = [\"worker\"]\ncore = [\"filler\"]",
            "[[step]]\nknot = \"square\"\ncolumns = 2\non = §\"ring-40\"\nworking = [\"worker\"]",
        )],
        words: CHECK,
    },
    Case {
        name: "knot-without-its-fitting",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[step]]\nknot = \"square\"\ntimes = 6\ncolumns = 2\nworking = [\"worker\"]\ncore = [\"filler\"]",
            "[[step]]\nknot = §\"double-half-hitch-on-ring\"\nworking = [\"worker\"]",
        )],
        words: CHECK,
    },
    Case {
        name: "knot-on-a-bead",
        edits: &[Swap("designs/tassel.toml", "on = \"ring-40\"", "on = §\"bead-25\"")],
        words: CHECK,
    },
    Case {
        name: "fold-of-a-cord-that-is-not-folded",
        edits: &[
            Swap("designs/tassel.toml", "hang = [\"arms\"]", "hang = §[\"arms\", \"wrap\"]"),
            Swap(
                "designs/tassel.toml",
                "[[step]]\nknot = \"gathering-wrap\"\nworking = [\"wrap\"]\ncore = [\"worker\", \"filler\"]\nparameters = { turns = 6 }\n",
                "",
            ),
        ],
        words: CHECK,
    },
    Case {
        name: "round-a-fitting-and-round-legs",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[step]]\nknot = \"square\"\ntimes = 6\ncolumns = 2\nworking = [\"worker\"]\ncore = [\"filler\"]",
            "[[step]]\nknot = \"square\"\ntimes = 6\ncolumns = 2\nworking = [\"worker\"]\non = \"ring-40\"\ncore = §[\"filler\"]",
        )],
        words: CHECK,
    },
    Case {
        name: "legs-that-do-not-divide",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[step]]\nknot = \"square\"\ntimes = 6\ncolumns = 2\nworking = [\"worker\"]\ncore = [\"filler\"]",
            "[[step]]\nknot = \"square\"\ntimes = 6\ncolumns = 3\nworking = §[\"worker\"]\ncore = [\"filler\"]",
        )],
        words: CHECK,
    },
    Case {
        name: "core-legs-that-do-not-divide",
        edits: &[
            Swap(
                "designs/tassel.toml",
                "[[step]]\nknot = \"square\"\ntimes = 6\ncolumns = 2\nworking = [\"worker\"]\ncore = [\"filler\"]",
                "[[step]]\nknot = \"half-hitch\"\ncolumns = 4\nworking = [\"worker\"]\ncore = [\"filler\"]",
            ),
            Swap(
                "designs/tassel.toml",
                "[[step]]\nbare = \"3 cm\"\nlegs = [\"worker\", \"filler\"]",
                "[[step]]\nknot = \"half-hitch\"\ncolumns = 1\nworking = [\"wrap\"]\ncore = [\"filler\"]\n\n[[step]]\nknot = \"square\"\ncolumns = 2\nworking = [\"worker\"]\ncore = §[\"filler\", \"wrap\"]",
            ),
            Swap("designs/tassel.toml", "hang = [\"arms\"]", "hang = [\"arms\"]\n\n[[step]]\nhang = [\"wrap\"]"),
        ],
        words: CHECK,
    },
    Case {
        name: "legs-too-many-for-the-columns",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[step]]\nknot = \"square\"\ntimes = 6\ncolumns = 2\nworking = [\"worker\"]\ncore = [\"filler\"]",
            "[[step]]\nknot = \"square\"\ntimes = 6\ncolumns = 1\nworking = §[\"worker\"]\ncore = [\"filler\"]",
        )],
        words: CHECK,
    },
    Case {
        name: "legs-not-named",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[step]]\nknot = \"square\"\ntimes = 6\ncolumns = 2\nworking = [\"worker\"]\ncore = [\"filler\"]",
            "§[[step]]\nknot = \"square\"\ncore = [\"filler\"]",
        )],
        words: CHECK,
    },
    Case {
        name: "legs-change-places-without-columns",
        edits: &[Swap(
            "designs/tassel.toml",
            "times = 2\ncolumns = 2\nworking = [\"worker\", \"filler\"]\ncore = [\"worker\", \"filler\"]\nshare = \"even\"",
            "times = 2\nworking = [\"worker\", \"filler\"]\ncore = [\"worker\", \"filler\"]\nshare = §\"even\"",
        )],
        words: CHECK,
    },
    Case {
        name: "legs-change-places-and-do-not-suffice",
        edits: &[Swap(
            "designs/tassel.toml",
            "times = 2\ncolumns = 2\nworking = [\"worker\", \"filler\"]",
            "times = 2\ncolumns = §5\nworking = [\"worker\", \"filler\"]",
        )],
        words: CHECK,
    },
    Case {
        name: "legs-change-places-over-a-leader",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[step]]\nknot = \"square\"\ntimes = 6\ncolumns = 2\nworking = [\"worker\"]\ncore = [\"filler\"]",
            "[[step]]\nknot = \"double-half-hitch\"\ncolumns = 2\nworking = [\"worker\"]\ncore = [\"filler\"]\nshare = §\"even\"",
        )],
        words: CHECK,
    },
    Case {
        name: "a-set-ties-and-is-tied-round",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[step]]\nknot = \"square\"\ntimes = 6\ncolumns = 2\nworking = [\"worker\"]\ncore = [\"filler\"]",
            "[[step]]\nknot = \"square\"\ntimes = 6\ncolumns = 2\nworking = [\"worker\"]\ncore = §[\"worker\"]",
        )],
        words: CHECK,
    },
    Case {
        name: "set-not-hung",
        edits: &[Swap(
            "designs/tassel.toml",
            "hang = [\"arms\"]\n",
            "hang = [\"arms\"]\n\n[[step]]\nbare = \"1 cm\"\nlegs = §[\"wrap\"]\n",
        )],
        words: CHECK,
    },
    Case {
        name: "group-hung-twice",
        edits: &[Swap(
            "designs/tassel.toml",
            "[[step]]\nbare = \"3 cm\"\nlegs = [\"worker\", \"filler\"]",
            "[[step]]\nbare = \"3 cm\"\nlegs = [\"worker\", \"filler\"]\nhang = §[\"arms\"]",
        )],
        words: CHECK,
    },
    Case {
        name: "group-never-hung",
        edits: &[Swap(
            "designs/tassel.toml",
            "group = \"wrap\"",
            "group = §\"spare\"\nof = \"soft-4\"\ncount = 1\n\n[[cord]]\ngroup = \"wrap\"",
        )],
        words: CHECK,
    },
    Case {
        name: "no-room-on-a-ring",
        edits: &[
            Swap("designs/tassel.toml", "count = 4", "count = 16"),
            Swap("designs/tassel.toml", "on = \"ring-40\"", "on = §\"ring-40\""),
            Swap("designs/tassel.toml", "columns = 2\nworking = [\"worker\"]", "columns = 8\nworking = [\"worker\"]"),
            Swap("designs/tassel.toml", "times = 2\ncolumns = 2", "times = 2\ncolumns = 8"),
        ],
        words: CHECK,
    },
    Case {
        name: "bead-too-narrow",
        edits: &[
            Swap("designs/tassel.toml", "group = \"arms\"\nof = \"soft-4\"", "group = \"arms\"\nof = \"rope-9\""),
            Swap("designs/tassel.toml", "thread = \"bead-25\"", "thread = §\"bead-25\""),
        ],
        words: CHECK,
    },
    Case {
        name: "bead-legs-that-do-not-divide",
        edits: &[Swap(
            "designs/tassel.toml",
            "legs-each = 4\nlegs = [\"worker\", \"filler\"]",
            "legs-each = 3\nlegs = §[\"worker\", \"filler\"]",
        )],
        words: CHECK,
    },
    Case {
        name: "thread-a-ring",
        edits: &[Swap("designs/tassel.toml", "thread = \"bead-25\"", "thread = §\"ring-40\"")],
        words: CHECK,
    },
    Case {
        name: "cord-longer-than-any-put-up",
        edits: &[
            Swap("designs/tassel.toml", "group = \"arms\"\nof = \"soft-4\"", "group = \"arms\"\nof = §\"soft-4\""),
            Swap("designs/tassel.toml", "bare = \"3 cm\"", "bare = \"49 m\""),
        ],
        words: CHECK,
    },
    Case {
        name: "cord-past-500-metres",
        edits: &[
            Swap("designs/tassel.toml", "group = \"arms\"", "group = §\"arms\""),
            Swap("designs/tassel.toml", "times = 6", "times = 20000"),
        ],
        words: CHECK,
    },
    Case {
        name: "design-several-faults",
        edits: &[
            Swap("designs/tassel.toml", "count = 4", "count = §0"),
            Swap("designs/tassel.toml", "bare = \"3 cm\"", "bare = §\"3\""),
            Swap("designs/tassel.toml", "minutes = 3", "minutes = §\"three\""),
            Swap("designs/tassel.toml", "combed = true", "§combde = true"),
        ],
        words: CHECK,
    },
];

pub(crate) const NESTED: &[Case] = &[
    Case {
        name: "part-unknown",
        edits: &[Swap("designs/garland.toml", "design = \"leaf\"", "design = §\"leav\"")],
        words: CHECK,
    },
    Case { name: "part-zero-times", edits: &[Swap("designs/garland.toml", "count = 5", "count = §0")], words: CHECK },
    Case {
        name: "part-with-a-fault",
        edits: &[
            Swap("designs/leaf.toml", "count = 2", "count = §0"),
            Swap("designs/garland.toml", "design = \"leaf\"", "design = §\"leaf\""),
        ],
        words: CHECK,
    },
    Case {
        name: "design-contains-itself",
        edits: &[New(
            "designs/loop.toml",
            "[piece]\nname = \"Loop\"\npurpose = \"decoration\"\n\n[[part]]\ndesign = §\"loop\"\ncount = 1\n",
        )],
        words: CHECK,
    },
    Case {
        name: "design-contains-itself-through-another",
        edits: &[
            New(
                "designs/hen.toml",
                "[piece]\nname = \"Hen\"\npurpose = \"decoration\"\n\n[[part]]\ndesign = §\"egg\"\ncount = 1\n",
            ),
            New(
                "designs/egg.toml",
                "[piece]\nname = \"Egg\"\npurpose = \"decoration\"\n\n[[part]]\ndesign = §\"hen\"\ncount = 1\n",
            ),
        ],
        words: &["takeoff", "egg", "--shop", "shop"],
    },
    Case {
        name: "design-contains-itself-through-two-others",
        edits: &[
            New(
                "designs/a.toml",
                "[piece]\nname = \"A\"\npurpose = \"decoration\"\n\n[[part]]\ndesign = §\"b\"\ncount = 1\n",
            ),
            New(
                "designs/b.toml",
                "[piece]\nname = \"B\"\npurpose = \"decoration\"\n\n[[part]]\ndesign = §\"c\"\ncount = 1\n",
            ),
            New(
                "designs/c.toml",
                "[piece]\nname = \"C\"\npurpose = \"decoration\"\n\n[[part]]\ndesign = §\"a\"\ncount = 1\n",
            ),
        ],
        words: &["takeoff", "c", "--shop", "shop"],
    },
    Case {
        name: "parts-past-all-counting",
        edits: &[
            New(
                "designs/hundred.toml",
                "[piece]\nname = \"Hundred\"\npurpose = \"decoration\"\n\n[[part]]\ndesign = \"garland\"\ncount = 1000\n",
            ),
            New(
                "designs/forest.toml",
                "[piece]\nname = \"Forest\"\npurpose = \"decoration\"\n\n[[part]]\ndesign = §\"hundred\"\ncount = 1000\n",
            ),
        ],
        words: CHECK,
    },
];

pub(crate) fn module() -> Module {
    crate::module("design", &[CASES, NESTED], &[])
}

#[test]
fn faults_of_a_design_are_told() {
    check_all(&module(), CASES);
}

#[test]
fn faults_of_designs_within_designs_are_told() {
    check_all(&module(), NESTED);
}
