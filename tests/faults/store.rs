//! Faults of the store's two files.

use crate::case::{CHECK, Case, Swap, check_all};
use crate::messages::Module;

pub(crate) const CASES: &[Case] = &[
    Case {
        name: "cord-missing-title",
        edits: &[Swap(
            "store/cords.toml",
            "[[cord]]\nname = \"rope-9\"\ntitle = \"Thick rope\"",
            "§[[cord]]\nname = \"rope-9\"",
        )],
        words: CHECK,
    },
    Case {
        name: "cord-name-with-blanks",
        edits: &[Swap("store/cords.toml", "name = \"rope-9\"", "name = §\"Rope 9\"")],
        words: CHECK,
    },
    Case {
        name: "cord-twice",
        edits: &[Swap("store/cords.toml", "[[cord]]\nname = \"rope-9\"", "§[[cord]]\nname = \"soft-4\"")],
        words: CHECK,
    },
    Case {
        name: "diameter-without-unit",
        edits: &[Swap("store/cords.toml", "diameter = \"9 mm\"", "diameter = §9")],
        words: CHECK,
    },
    Case {
        name: "diameter-without-unit-in-quotes",
        edits: &[Swap("store/cords.toml", "diameter = \"9 mm\"", "diameter = §\"9\"")],
        words: CHECK,
    },
    Case {
        name: "diameter-in-nonsense",
        edits: &[Swap("store/cords.toml", "diameter = \"9 mm\"", "diameter = §\"9 ells\"")],
        words: CHECK,
    },
    Case {
        name: "diameter-zero",
        edits: &[Swap("store/cords.toml", "diameter = \"9 mm\"", "diameter = §\"0 mm\"")],
        words: CHECK,
    },
    Case {
        name: "diameter-negative",
        edits: &[Swap("store/cords.toml", "diameter = \"9 mm\"", "diameter = §\"-9 mm\"")],
        words: CHECK,
    },
    Case {
        name: "diameter-absurd",
        edits: &[Swap("store/cords.toml", "diameter = \"9 mm\"", "diameter = §\"9 m\"")],
        words: CHECK,
    },
    Case {
        name: "diameter-not-a-number",
        edits: &[Swap("store/cords.toml", "diameter = \"9 mm\"", "diameter = §\"nan mm\"")],
        words: CHECK,
    },
    Case {
        name: "diameter-infinite",
        edits: &[Swap("store/cords.toml", "diameter = \"9 mm\"", "diameter = §inf")],
        words: CHECK,
    },
    Case {
        name: "diameter-in-scientific-writing",
        edits: &[Swap("store/cords.toml", "diameter = \"9 mm\"", "diameter = §\"9e-3 m\"")],
        words: CHECK,
    },
    Case {
        name: "fibre-unknown",
        edits: &[Swap("store/cords.toml", "fibre = \"cotton\"", "fibre = §\"coton\"")],
        words: CHECK,
    },
    Case {
        name: "cord-without-weight-or-fibre",
        edits: &[
            Swap(
                "store/cords.toml",
                "[[cord]]\nname = \"rope-9\"\ntitle = \"Thick rope\"\ndiameter = \"9 mm\"\nfibre = \"cotton\"",
                "§[[cord]]\nname = \"rope-9\"\ntitle = \"Thick rope\"\ndiameter = \"9 mm\"",
            ),
            Swap("store/cords.toml", "weight = \"5 kg\"", "length = \"90 m\""),
        ],
        words: CHECK,
    },
    Case {
        name: "cord-weight-in-the-wrong-unit",
        edits: &[Swap("store/cords.toml", "weight = \"8 g/m\"", "weight = §\"8 g\"")],
        words: CHECK,
    },
    Case {
        name: "cord-without-put-up",
        edits: &[
            Swap("store/cords.toml", "[[cord]]\nname = \"rope-9\"", "§[[cord]]\nname = \"rope-9\""),
            Swap("store/cords.toml", "[[cord.put-up]]\ntitle = \"coil\"\nweight = \"5 kg\"\nprice = \"60.00\"\n", ""),
        ],
        words: CHECK,
    },
    Case {
        name: "put-up-without-length",
        edits: &[Swap(
            "store/cords.toml",
            "[[cord.put-up]]\ntitle = \"coil\"\nweight = \"5 kg\"",
            "§[[cord.put-up]]\ntitle = \"coil\"",
        )],
        words: CHECK,
    },
    Case {
        name: "put-up-with-length-and-weight",
        edits: &[Swap(
            "store/cords.toml",
            "[[cord.put-up]]\ntitle = \"coil\"",
            "§[[cord.put-up]]\ntitle = \"coil\"\nlength = \"90 m\"",
        )],
        words: CHECK,
    },
    Case {
        name: "put-up-without-price",
        edits: &[Swap(
            "store/cords.toml",
            "[[cord.put-up]]\ntitle = \"coil\"\nweight = \"5 kg\"\nprice = \"60.00\"",
            "§[[cord.put-up]]\ntitle = \"coil\"\nweight = \"5 kg\"",
        )],
        words: CHECK,
    },
    Case {
        name: "put-up-of-a-hair",
        edits: &[Swap("store/cords.toml", "length = \"100 m\"", "length = §\"1 mm\"")],
        words: CHECK,
    },
    Case {
        name: "charge-unknown",
        edits: &[Swap("store/cords.toml", "charge = \"used\"", "charge = §\"all\"")],
        words: CHECK,
    },
    Case {
        name: "fitting-unknown-key",
        edits: &[Swap("store/fittings.toml", "inner = \"40 mm\"", "§iner = \"40 mm\"")],
        words: CHECK,
    },
    Case {
        name: "fitting-of-two-sections",
        edits: &[Swap(
            "store/fittings.toml",
            "flat = [\"25 mm\", \"6 mm\"]",
            "section = §\"6 mm\"\nflat = [\"25 mm\", \"6 mm\"]",
        )],
        words: CHECK,
    },
    Case {
        name: "fitting-of-three-sides",
        edits: &[Swap(
            "store/fittings.toml",
            "flat = [\"25 mm\", \"6 mm\"]",
            "flat = §[\"25 mm\", \"6 mm\", \"3 mm\"]",
        )],
        words: CHECK,
    },
    Case {
        name: "fitting-price-bare",
        edits: &[Swap("store/fittings.toml", "price = \"0.75\"", "price = §0.75")],
        words: CHECK,
    },
    Case {
        name: "bead-without-length",
        edits: &[Swap("store/fittings.toml", "bore = \"10 mm\"\nlength = \"22 mm\"", "bore = §\"10 mm\"")],
        words: CHECK,
    },
    Case {
        name: "bead-weighs-nothing",
        edits: &[Swap("store/fittings.toml", "weight = \"15 g\"", "weight = §\"0 g\"")],
        words: CHECK,
    },
];

pub(crate) fn module() -> Module {
    crate::module("store", &[CASES], &[])
}

#[test]
fn faults_of_the_store_are_told() {
    check_all(&module(), CASES);
}
