//! Faults of measures, sums and sizes, and of what a comparison is asked.

use crate::case::{CHECK, Case, New, Swap, check_all};
use crate::messages::Module;

pub(crate) const CASES: &[Case] = &[
    Case {
        name: "measure-with-a-hyphen",
        edits: &[Swap("designs/spray.toml", "blades = 2", "blades = 2\n§long-drop = \"30 cm\"")],
        words: CHECK,
    },
    Case {
        name: "measure-called-like-a-unit",
        edits: &[Swap("designs/spray.toml", "blades = 2", "blades = 2\n§cm = 3")],
        words: CHECK,
    },
    Case {
        name: "measure-called-like-a-function",
        edits: &[Swap("designs/spray.toml", "blades = 2", "blades = 2\n§floor = 3")],
        words: CHECK,
    },
    Case {
        name: "measure-without-a-unit",
        edits: &[Swap("designs/spray.toml", "drop = \"9 cm\"\n", "drop = §\"9\"\n")],
        words: CHECK,
    },
    Case {
        name: "sum-of-an-unknown-measure",
        edits: &[Swap("designs/spray.toml", "tail = \"drop\"", "tail = \"drop / 3 + §dorp\"")],
        words: CHECK,
    },
    Case {
        name: "sum-in-a-design-without-measures",
        edits: &[
            Swap(
                "designs/spray.toml",
                "[measures]\ndrop = \"9 cm\"\nblades = 2\n\n[[size]]\nname = \"long\"\nmeasures = { drop = \"12 cm\" }\n",
                "",
            ),
            Swap("designs/spray.toml", "count = \"blades\"", "count = 2"),
            Swap("designs/spray.toml", "tail = \"drop\"", "tail = \"2 * §drop\""),
        ],
        words: CHECK,
    },
    Case {
        name: "sum-that-mixes",
        edits: &[Swap("designs/spray.toml", "tail = \"drop\"", "tail = \"2 * §(drop + blades)\"")],
        words: CHECK,
    },
    Case {
        name: "sum-that-is-an-area",
        edits: &[Swap("designs/spray.toml", "tail = \"drop\"", "tail = \"§drop * drop\"")],
        words: CHECK,
    },
    Case {
        name: "sum-of-an-unknown-function",
        edits: &[Swap("designs/spray.toml", "tail = \"drop\"", "tail = \"§flor(drop)\"")],
        words: CHECK,
    },
    Case {
        name: "sum-of-a-function-of-a-length",
        edits: &[Swap("designs/spray.toml", "count = \"blades\"", "count = \"§floor(drop)\"")],
        words: CHECK,
    },
    Case {
        name: "sum-by-nothing",
        edits: &[Swap("designs/spray.toml", "tail = \"drop\"", "tail = \"§drop / (blades - 2)\"")],
        words: CHECK,
    },
    Case {
        name: "sum-that-stops",
        edits: &[Swap("designs/spray.toml", "tail = \"drop\"", "tail = \"§drop +\"")],
        words: CHECK,
    },
    Case {
        name: "sum-not-understood",
        edits: &[Swap("designs/spray.toml", "tail = \"drop\"", "tail = \"drop §% 3\"")],
        words: CHECK,
    },
    Case {
        name: "sum-comes-to-a-half",
        edits: &[Swap("designs/spray.toml", "count = \"blades\"", "count = §\"blades / 4\"")],
        words: CHECK,
    },
    Case {
        name: "sum-comes-to-a-length",
        edits: &[Swap("designs/spray.toml", "count = \"blades\"", "count = §\"drop / 2\"")],
        words: CHECK,
    },
    Case {
        name: "sum-comes-to-a-number",
        edits: &[Swap("designs/spray.toml", "tail = \"drop\"", "tail = §\"blades + 1\"")],
        words: CHECK,
    },
    Case {
        name: "sum-comes-to-too-little",
        edits: &[Swap("designs/spray.toml", "tail = \"drop\"", "tail = §\"drop - 40 cm\"")],
        words: CHECK,
    },
    Case {
        name: "sum-too-long",
        edits: &[Swap(
            "designs/spray.toml",
            "tail = \"drop\"",
            "tail = \"§drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + drop + 1 cm\"",
        )],
        words: CHECK,
    },
    Case {
        name: "text-with-an-unknown-measure",
        edits: &[Swap("designs/spray.toml", "name = \"Spray\"", "name = \"Spray\"\nfinished = \"about {§dorp} long\"")],
        words: CHECK,
    },
    Case {
        name: "text-with-an-open-brace",
        edits: &[Swap("designs/spray.toml", "name = \"Spray\"", "name = \"Spray\"\nfinished = \"about §{drop long\"")],
        words: CHECK,
    },
    Case {
        name: "size-of-an-unknown-measure",
        edits: &[Swap("designs/spray.toml", "{ drop = \"12 cm\" }", "{ §dorp = \"12 cm\" }")],
        words: CHECK,
    },
    Case {
        name: "size-with-a-number-for-a-length",
        edits: &[Swap("designs/spray.toml", "{ drop = \"12 cm\" }", "{ drop = §12 }")],
        words: CHECK,
    },
    Case {
        name: "two-sizes-of-one-name",
        edits: &[Swap("designs/spray.toml", "[[cord]]", "[[size]]\nname = §\"long\"\n\n[[cord]]")],
        words: CHECK,
    },
    Case {
        name: "size-that-can-not-be-made",
        edits: &[Swap("designs/spray.toml", "tail = \"drop\"", "tail = §\"11 cm - drop\"")],
        words: CHECK,
    },
    Case {
        name: "market-price-bare",
        edits: &[Swap("designs/spray.toml", "[[cord]]", "[market]\nprice = §12.5\n\n[[cord]]")],
        words: CHECK,
    },
    Case {
        name: "effort-without-a-name",
        edits: &[Swap("designs/spray.toml", "[[cord]]", "§[[effort]]\nminutes = 30\n\n[[cord]]")],
        words: CHECK,
    },
    Case {
        name: "minutes-that-do-not-rise",
        edits: &[Swap(
            "designs/spray.toml",
            "[[cord]]",
            "[[task]]\nname = \"Wire\"\nminutes = §{ low = 9, likely = 5, high = 12 }\n\n[[cord]]",
        )],
        words: CHECK,
    },
    Case {
        name: "minutes-without-the-likely",
        edits: &[Swap(
            "designs/spray.toml",
            "[[cord]]",
            "[[task]]\nname = \"Wire\"\nminutes = §{ low = 9, high = 12 }\n\n[[cord]]",
        )],
        words: CHECK,
    },
    Case {
        name: "minutes-of-a-step-absurd",
        edits: &[Swap("designs/spray.toml", "tail = \"drop\"", "tail = \"drop\"\nminutes = §20000")],
        words: CHECK,
    },
    Case {
        name: "work-without-minutes",
        edits: &[New("knots/samples.toml", "§[[work]]\nnumber = \"2026-001\"\nbase = 30\npull = 2\n")],
        words: CHECK,
    },
    Case {
        name: "work-twice",
        edits: &[New(
            "knots/samples.toml",
            "[[work]]\nnumber = \"2026-001\"\nstep = \"Tie\"\nbase = 30\npull = 2\nminutes = 35\n\n\
             §[[work]]\nnumber = \"2026-001\"\nstep = \"Tie\"\nbase = 30\npull = 2\nminutes = 36\n",
        )],
        words: CHECK,
    },
    Case {
        name: "work-of-an-unknown-knot",
        edits: &[New(
            "knots/samples.toml",
            "[[work]]\nnumber = \"2026-001\"\nstep = \"Tie\"\nknot = §\"sqare\"\nbase = 30\npull = 2\nminutes = 35\n",
        )],
        words: CHECK,
    },
    Case {
        name: "item-of-an-unknown-size",
        edits: &[Swap("commissions/order.toml", "quantity = 3", "quantity = 3\nsize = §\"big\"")],
        words: CHECK,
    },
    Case {
        name: "item-of-an-unknown-measure",
        edits: &[Swap("commissions/order.toml", "quantity = 3", "quantity = 3\nmeasures = { §drop = \"1 m\" }")],
        words: CHECK,
    },
    Case {
        name: "confidence-too-sure",
        edits: &[Swap("commissions/order.toml", "deposit = \"50 %\"", "deposit = \"50 %\"\nconfidence = §\"100 %\"")],
        words: CHECK,
    },
    Case {
        name: "size-not-had-on-the-command-line",
        edits: &[],
        words: &["takeoff", "spray", "--size", "big", "--shop", "shop"],
    },
    Case {
        name: "measure-not-had-on-the-command-line",
        edits: &[],
        words: &["takeoff", "spray", "--measure", "dorp=3cm", "--shop", "shop"],
    },
    Case {
        name: "measure-not-one-on-the-command-line",
        edits: &[],
        words: &["takeoff", "spray", "--measure", "drop", "--shop", "shop"],
    },
    Case { name: "no-design-in-that-size", edits: &[], words: &["compare", "--size", "big", "--shop", "shop"] },
    Case { name: "condition-without-a-sign", edits: &[], words: &["compare", "--where", "hours", "--shop", "shop"] },
    Case { name: "condition-of-no-column", edits: &[], words: &["compare", "--where", "hour<3", "--shop", "shop"] },
    Case { name: "condition-on-words", edits: &[], words: &["compare", "--where", "design<leaf", "--shop", "shop"] },
    Case {
        name: "condition-without-a-figure",
        edits: &[],
        words: &["compare", "--where", "hours<few", "--shop", "shop"],
    },
    Case { name: "what-if-of-nothing", edits: &[], words: &["compare", "--what-if", "rent=+10%", "--shop", "shop"] },
    Case { name: "what-if-without-a-sign", edits: &[], words: &["compare", "--what-if", "wage=10%", "--shop", "shop"] },
    Case {
        name: "what-if-that-leaves-nothing",
        edits: &[],
        words: &["compare", "--what-if", "wage=-100%", "--shop", "shop"],
    },
    Case {
        name: "what-if-of-fees-without-per-cent",
        edits: &[],
        words: &["compare", "--what-if", "fees=4", "--shop", "shop"],
    },
    Case {
        name: "what-if-of-an-unknown-cord",
        edits: &[],
        words: &["compare", "--what-if", "cord:soft-5=+1%", "--shop", "shop"],
    },
    Case {
        name: "what-if-of-all-cords-at-one-price",
        edits: &[],
        words: &["compare", "--what-if", "cord=0.10", "--shop", "shop"],
    },
    Case {
        name: "what-if-not-a-number",
        edits: &[],
        words: &["compare", "--what-if", "wage=+lots%", "--shop", "shop"],
    },
    Case { name: "weigh-nothing-named", edits: &[], words: &["weigh", "--shop", "shop"] },
    Case { name: "weigh-at-no-price", edits: &[], words: &["weigh", "leaf", "--price", "cheap", "--shop", "shop"] },
    Case { name: "mix-without-hours", edits: &[], words: &["mix", "--shop", "shop"] },
    Case { name: "mix-of-absurd-hours", edits: &[], words: &["mix", "--hours", "200", "--shop", "shop"] },
    Case {
        name: "mix-with-no-demand",
        edits: &[],
        words: &["mix", "--hours", "20", "--demand", "leaf=some", "--shop", "shop"],
    },
    Case {
        name: "mix-with-a-demand-for-another",
        edits: &[],
        words: &["mix", "--hours", "20", "--demand", "laef=3", "--shop", "shop"],
    },
];

pub(crate) fn module() -> Module {
    crate::module("sizes", &[CASES], &[])
}

#[test]
fn faults_of_measures_and_comparisons_are_told() {
    check_all(&module(), CASES);
}
