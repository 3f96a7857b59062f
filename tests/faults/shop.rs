//! Faults of `shop.toml`.

use crate::case::{CHECK, Case, Swap, check_all};
use crate::messages::Module;

pub(crate) const CASES: &[Case] = &[
    Case {
        name: "practice-model-unknown",
        edits: &[Swap(
            "shop.toml",
            "[bench.seconds]",
            "[bench.practice]\nmodel = §\"units\"\nrate = \"85 %\"\n\n[bench.seconds]",
        )],
        words: CHECK,
    },
    Case {
        name: "practice-rate-too-low",
        edits: &[Swap(
            "shop.toml",
            "[bench.seconds]",
            "[bench.practice]\nmodel = \"unit\"\nrate = §\"8.5 %\"\n\n[bench.seconds]",
        )],
        words: CHECK,
    },
    Case {
        name: "practice-without-a-model",
        edits: &[Swap(
            "shop.toml",
            "[bench.seconds]",
            "§[bench.practice]\nrate = \"85 %\"\nsteady = 20\n\n[bench.seconds]",
        )],
        words: CHECK,
    },
    Case {
        name: "calendar-day-unknown",
        edits: &[Swap("shop.toml", "[terms]", "[calendar]\ndays = [\"tuesday\", §\"thurday\"]\n\n[terms]")],
        words: CHECK,
    },
    Case {
        name: "calendar-without-days",
        edits: &[Swap("shop.toml", "[terms]", "[calendar]\ndays = §[]\n\n[terms]")],
        words: CHECK,
    },
    Case {
        name: "calendar-day-twice",
        edits: &[Swap("shop.toml", "[terms]", "[calendar]\ndays = [\"tuesday\", \"friday\", §\"tuesday\"]\n\n[terms]")],
        words: CHECK,
    },
    Case {
        name: "lead-days-none",
        edits: &[Swap("shop.toml", "[terms]", "[calendar]\nlead-days = { post = §0 }\n\n[terms]")],
        words: CHECK,
    },
    Case {
        name: "lead-days-a-number",
        edits: &[Swap("shop.toml", "[terms]", "[calendar]\nlead-days = §3\n\n[terms]")],
        words: CHECK,
    },
    Case {
        name: "after-days-of-years",
        edits: &[Swap("shop.toml", "[terms]", "[calendar]\nafter-days = { post = §1000 }\n\n[terms]")],
        words: CHECK,
    },
    Case {
        name: "days-off-backwards",
        edits: &[Swap("shop.toml", "[terms]", "[[calendar.off]]\nfrom = 2027-07-20\nto = §2027-07-02\n\n[terms]")],
        words: CHECK,
    },
    Case {
        name: "number-without-running",
        edits: &[Swap("shop.toml", "[terms]", "[book]\nnumber = §\"{year}\"\n\n[terms]")],
        words: CHECK,
    },
    Case {
        name: "week-of-absurd-hours",
        edits: &[Swap("shop.toml", "pace = 1.1", "pace = 1.1\nweekly-hours = §200")],
        words: CHECK,
    },
    Case {
        name: "confidence-too-low",
        edits: &[Swap("shop.toml", "[price]\n", "[price]\nconfidence = §\"20 %\"\n")],
        words: CHECK,
    },
    Case { name: "shop-unknown-key", edits: &[Swap("shop.toml", "minimum = ", "§minimun = ")], words: CHECK },
    Case { name: "shop-unknown-table", edits: &[Swap("shop.toml", "[pay]", "[§payments]\n[pay]")], words: CHECK },
    Case {
        name: "shop-missing-key",
        edits: &[Swap(
            "shop.toml",
            "[shop]\nname = \"The fault bench\"\naccent = \"#3f5a63\"\ncurrency = \"EUR\"",
            "§[shop]\nname = \"The fault bench\"\naccent = \"#3f5a63\"",
        )],
        words: CHECK,
    },
    Case {
        name: "shop-missing-table",
        edits: &[
            Swap("shop.toml", "# A small shop", "§# A small shop"),
            Swap("shop.toml", "[pay]\nwage = \"20.00\"\n", ""),
        ],
        words: CHECK,
    },
    Case {
        name: "shop-several-faults",
        edits: &[
            Swap("shop.toml", "language = \"en\"", "language = §5"),
            Swap("shop.toml", "wage = \"20.00\"", "wage = §20.00"),
            Swap("shop.toml", "valid-days = 30", "valid-days = §0"),
        ],
        words: CHECK,
    },
    Case {
        name: "shop-name-a-number",
        edits: &[Swap("shop.toml", "name = \"The fault bench\"", "name = §5")],
        words: CHECK,
    },
    Case {
        name: "shop-name-empty",
        edits: &[Swap("shop.toml", "name = \"The fault bench\"", "name = §\"  \"")],
        words: CHECK,
    },
    Case {
        name: "shop-name-with-a-control-character",
        edits: &[Swap("shop.toml", "name = \"The fault bench\"", "name = §\"Bell\\u0007\"")],
        words: CHECK,
    },
    Case {
        name: "shop-table-is-a-value",
        edits: &[
            Swap("shop.toml", "[pay]\nwage = \"20.00\"\n", ""),
            Swap("shop.toml", "# A small shop", "pay = §\"20.00\"\n# A small shop"),
        ],
        words: CHECK,
    },
    Case { name: "shop-list-is-a-table", edits: &[Swap("shop.toml", "[[fee]]", "§[fee]")], words: CHECK },
    Case {
        name: "money-bare-decimal", edits: &[Swap("shop.toml", "wage = \"20.00\"", "wage = §20.00")], words: CHECK
    },
    Case { name: "money-bare-whole", edits: &[Swap("shop.toml", "wage = \"20.00\"", "wage = §20")], words: CHECK },
    Case {
        name: "money-with-a-sign-of-currency",
        edits: &[Swap("shop.toml", "wage = \"20.00\"", "wage = §\"€20.00\"")],
        words: CHECK,
    },
    Case {
        name: "money-with-a-comma",
        edits: &[Swap("shop.toml", "wage = \"20.00\"", "wage = §\"20,00\"")],
        words: CHECK,
    },
    Case {
        name: "money-negative",
        edits: &[Swap("shop.toml", "wage = \"20.00\"", "wage = §\"-20.00\"")],
        words: CHECK,
    },
    Case {
        name: "money-absurd",
        edits: &[Swap("shop.toml", "wage = \"20.00\"", "wage = §\"20000000000\"")],
        words: CHECK,
    },
    Case {
        name: "money-of-40-digits",
        edits: &[Swap("shop.toml", "wage = \"20.00\"", "wage = §\"2000000000000000000000000000000000000000\"")],
        words: CHECK,
    },
    Case {
        name: "money-with-6-decimals",
        edits: &[Swap("shop.toml", "wage = \"20.00\"", "wage = §\"20.000001\"")],
        words: CHECK,
    },
    Case { name: "money-not-a-number", edits: &[Swap("shop.toml", "wage = \"20.00\"", "wage = §nan")], words: CHECK },
    Case { name: "money-infinite", edits: &[Swap("shop.toml", "wage = \"20.00\"", "wage = §\"inf\"")], words: CHECK },
    Case {
        name: "currency-for-tests",
        edits: &[Swap("shop.toml", "currency = \"EUR\"", "currency = §\"XTS\"")],
        words: CHECK,
    },
    Case {
        name: "currency-of-none",
        edits: &[Swap("shop.toml", "currency = \"EUR\"", "currency = §\"XXX\"")],
        words: CHECK,
    },
    Case {
        name: "currency-unknown",
        edits: &[Swap("shop.toml", "currency = \"EUR\"", "currency = §\"EUX\"")],
        words: CHECK,
    },
    Case {
        name: "currency-by-its-sign",
        edits: &[Swap("shop.toml", "currency = \"EUR\"", "currency = §\"€\"")],
        words: CHECK,
    },
    Case {
        name: "currency-in-small-letters",
        edits: &[Swap("shop.toml", "currency = \"EUR\"", "currency = §\"eur\"")],
        words: CHECK,
    },
    Case {
        name: "language-by-its-name",
        edits: &[Swap("shop.toml", "language = \"en\"", "language = §\"English\"")],
        words: CHECK,
    },
    Case {
        name: "accent-not-a-colour",
        edits: &[Swap("shop.toml", "accent = \"#3f5a63\"", "accent = §\"teal\"")],
        words: CHECK,
    },
    Case {
        name: "accent-too-pale",
        edits: &[Swap("shop.toml", "accent = \"#3f5a63\"", "accent = §\"#ffee88\"")],
        words: CHECK,
    },
    Case {
        name: "tax-scheme-unknown",
        edits: &[Swap("shop.toml", "prices = \"net\"", "prices = §\"nett\"")],
        words: CHECK,
    },
    Case {
        name: "tax-rate-missing",
        edits: &[Swap("shop.toml", "prices = \"net\"\nrate = \"20 %\"", "prices = §\"net\"")],
        words: CHECK,
    },
    Case {
        name: "tax-rate-without-sign",
        edits: &[Swap("shop.toml", "rate = \"20 %\"", "rate = §\"20\"")],
        words: CHECK,
    },
    Case { name: "tax-rate-a-fraction", edits: &[Swap("shop.toml", "rate = \"20 %\"", "rate = §0.2")], words: CHECK },
    Case {
        name: "tax-rate-in-words",
        edits: &[Swap("shop.toml", "rate = \"20 %\"", "rate = §\"twenty %\"")],
        words: CHECK,
    },
    Case {
        name: "tax-rate-above-100",
        edits: &[Swap("shop.toml", "rate = \"20 %\"", "rate = §\"120 %\"")],
        words: CHECK,
    },
    Case {
        name: "tax-rate-negative",
        edits: &[Swap("shop.toml", "rate = \"20 %\"", "rate = §\"-5 %\"")],
        words: CHECK,
    },
    Case {
        name: "tax-rate-but-not-registered",
        edits: &[Swap(
            "shop.toml",
            "prices = \"net\"\nrate = \"20 %\"",
            "prices = \"not-registered\"\nrate = §\"20 %\"",
        )],
        words: CHECK,
    },
    Case {
        name: "overhead-in-two-ways",
        edits: &[Swap("shop.toml", "[overhead]\n", "§[overhead]\nof-labour = \"10 %\"\n")],
        words: CHECK,
    },
    Case {
        name: "overhead-in-no-way",
        edits: &[Swap("shop.toml", "[overhead]\nyearly = \"5000.00\"\nbench-hours = 1000", "§[overhead]")],
        words: CHECK,
    },
    Case {
        name: "overhead-without-hours",
        edits: &[Swap(
            "shop.toml",
            "[overhead]\nyearly = \"5000.00\"\nbench-hours = 1000",
            "§[overhead]\nyearly = \"5000.00\"",
        )],
        words: CHECK,
    },
    Case {
        name: "bench-hours-zero",
        edits: &[Swap("shop.toml", "bench-hours = 1000", "bench-hours = §0")],
        words: CHECK,
    },
    Case {
        name: "bench-hours-more-than-a-year-has",
        edits: &[Swap("shop.toml", "bench-hours = 1000", "bench-hours = §9000")],
        words: CHECK,
    },
    Case { name: "pace-not-a-number", edits: &[Swap("shop.toml", "pace = 1.1", "pace = §nan")], words: CHECK },
    Case { name: "pace-infinite", edits: &[Swap("shop.toml", "pace = 1.1", "pace = §inf")], words: CHECK },
    Case { name: "pace-minus-infinite", edits: &[Swap("shop.toml", "pace = 1.1", "pace = §-inf")], words: CHECK },
    Case { name: "pace-zero", edits: &[Swap("shop.toml", "pace = 1.1", "pace = §0")], words: CHECK },
    Case { name: "pace-in-quotes", edits: &[Swap("shop.toml", "pace = 1.1", "pace = §\"1.1\"")], words: CHECK },
    Case { name: "seconds-negative", edits: &[Swap("shop.toml", "cut = 20", "cut = §-20")], words: CHECK },
    Case { name: "seconds-absurd", edits: &[Swap("shop.toml", "cut = 20", "cut = §1e30")], words: CHECK },
    Case {
        name: "allowance-negative",
        edits: &[Swap("shop.toml", "rest = \"11 %\"", "rest = §\"-11 %\"")],
        words: CHECK,
    },
    Case {
        name: "cutting-step-zero",
        edits: &[Swap("shop.toml", "step = \"1 cm\"", "step = §\"0 cm\"")],
        words: CHECK,
    },
    Case { name: "aim-missing", edits: &[Swap("shop.toml", "[price]\nmargin = \"20 %\"", "§[price]")], words: CHECK },
    Case {
        name: "aims-two",
        edits: &[Swap("shop.toml", "[price]\nmargin = \"20 %\"", "§[price]\nmargin = \"20 %\"\nmarkup = \"20 %\"")],
        words: CHECK,
    },
    Case {
        name: "margin-of-100",
        edits: &[Swap("shop.toml", "margin = \"20 %\"", "margin = §\"100 %\"")],
        words: CHECK,
    },
    Case {
        name: "margin-and-fees-of-100",
        edits: &[Swap("shop.toml", "margin = \"20 %\"", "margin = §\"98 %\"")],
        words: CHECK,
    },
    Case {
        name: "fees-of-100",
        edits: &[
            Swap("shop.toml", "margin = \"20 %\"", "markup = \"20 %\""),
            Swap("shop.toml", "rate = \"2 %\"", "rate = §\"90 %\""),
        ],
        words: CHECK,
    },
    Case { name: "fee-of-100", edits: &[Swap("shop.toml", "rate = \"2 %\"", "rate = §\"100 %\"")], words: CHECK },
    Case {
        name: "fees-of-100-together",
        edits: &[
            Swap("shop.toml", "rate = \"2 %\"", "rate = \"30 %\""),
            Swap("shop.toml", "[terms]", "[[fee]]\nname = \"Stall\"\nrate = §\"70 %\"\non = \"net\"\n\n[terms]"),
        ],
        words: CHECK,
    },
    Case { name: "break-from-zero", edits: &[Swap("shop.toml", "from = 10", "from = §0")], words: CHECK },
    Case {
        name: "deposit-above-100",
        edits: &[Swap("shop.toml", "deposit = \"40 %\"", "deposit = §\"140 %\"")],
        words: CHECK,
    },
    Case { name: "valid-days-zero", edits: &[Swap("shop.toml", "valid-days = 30", "valid-days = §0")], words: CHECK },
    Case {
        name: "valid-days-of-three-years",
        edits: &[Swap("shop.toml", "valid-days = 30", "valid-days = §1095")],
        words: CHECK,
    },
];

pub(crate) fn module() -> Module {
    crate::module("shop", &[CASES], &[])
}

#[test]
fn faults_of_the_shop_file_are_told() {
    check_all(&module(), CASES);
}
