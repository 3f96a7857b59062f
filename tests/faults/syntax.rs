//! Files that are not TOML.

use crate::case::{CHECK, Case, Swap, check_all};
use crate::messages::Module;

pub(crate) const CASES: &[Case] = &[
    Case {
        name: "toml-string-not-closed",
        edits: &[Swap("designs/tassel.toml", "name = \"Tassel\"", "name = \"Tassel§")],
        words: CHECK,
    },
    Case {
        name: "toml-bracket-not-closed",
        // The second is how the parser goes on after the first.
        edits: &[
            Swap("designs/tassel.toml", "[piece]", "[piece§"),
            Swap("designs/tassel.toml", "[[cord]]\ngroup = \"wrap\"", "[[§cord]]\ngroup = \"wrap\""),
        ],
        words: CHECK,
    },
    Case { name: "toml-value-missing", edits: &[Swap("designs/tassel.toml", "count = 1", "count =§")], words: CHECK },
    Case {
        name: "toml-word-without-quotes",
        edits: &[Swap("designs/tassel.toml", "purpose = \"decoration\"", "purpose = §decoration")],
        words: CHECK,
    },
    Case {
        name: "toml-key-twice",
        edits: &[Swap("designs/tassel.toml", "count = 4", "count = 4\n§count = 5")],
        words: CHECK,
    },
    Case {
        name: "toml-table-twice",
        edits: &[Swap("shop.toml", "[pay]\nwage = \"20.00\"", "[pay]\nwage = \"1.00\"\n\n[§pay]\n§wage = \"20.00\"")],
        words: CHECK,
    },
    Case {
        name: "toml-equals-sign-missing",
        edits: &[Swap("designs/tassel.toml", "count = 1", "count §1")],
        words: CHECK,
    },
    Case {
        name: "toml-date-that-is-none",
        edits: &[Swap("commissions/order.toml", "asked = 2027-01-11", "asked = §2027-02-30")],
        words: CHECK,
    },
    Case {
        name: "toml-several-errors",
        edits: &[
            Swap("designs/tassel.toml", "name = \"Tassel\"", "name = \"Tassel§"),
            Swap("designs/tassel.toml", "count = 1", "count =§"),
            Swap("designs/tassel.toml", "minutes = 3", "minutes = §three"),
        ],
        words: CHECK,
    },
    Case {
        name: "toml-typographic-quotes",
        edits: &[Swap("designs/tassel.toml", "name = \"Tassel\"", "name = §“Tassel”")],
        words: CHECK,
    },
    Case {
        name: "toml-control-character",
        edits: &[Swap("designs/tassel.toml", "name = \"Tassel\"", "name = \"Tas§\u{1}sel\"")],
        words: CHECK,
    },
];

pub(crate) fn module() -> Module {
    crate::module("syntax", &[CASES], &[])
}

#[test]
fn what_is_not_toml_is_told() {
    check_all(&module(), CASES);
}
