//! Faults of a commission.

use crate::case::{Case, New, QUOTE, Swap, check_all};
use crate::messages::Module;

pub(crate) const CASES: &[Case] = &[
    Case {
        name: "commission-unknown-key",
        edits: &[Swap("commissions/order.toml", "paid = \"5.00\"", "§payed = \"5.00\"")],
        words: QUOTE,
    },
    Case {
        name: "promised-before-it-was-asked",
        edits: &[
            Swap("commissions/order.toml", "promised = 2027-02-19", "promised = §2026-02-19"),
            Swap("commissions/order.toml", "needed-by = 2027-02-26", "needed-by = §2027-01-10"),
        ],
        words: QUOTE,
    },
    Case {
        name: "commission-missing-client",
        edits: &[Swap(
            "commissions/order.toml",
            "[commission]\ntitle = \"Three pendants\"\nclient = \"A client\"",
            "§[commission]\ntitle = \"Three pendants\"",
        )],
        words: QUOTE,
    },
    Case {
        name: "commission-without-its-head",
        edits: &[New("commissions/order.toml", "§[[item]]\ndesign = \"pendant\"\n")],
        words: QUOTE,
    },
    Case {
        name: "commission-for-nothing",
        edits: &[New("commissions/order.toml", "§[commission]\ntitle = \"Nothing\"\nclient = \"A client\"\n")],
        words: QUOTE,
    },
    Case {
        name: "quantity-in-words",
        edits: &[Swap("commissions/order.toml", "quantity = 3", "quantity = §\"three\"")],
        words: QUOTE,
    },
    Case {
        name: "quantity-a-decimal",
        edits: &[Swap("commissions/order.toml", "quantity = 3", "quantity = §3.5")],
        words: QUOTE,
    },
    Case {
        name: "quantity-zero",
        edits: &[Swap("commissions/order.toml", "quantity = 3", "quantity = §0")],
        words: QUOTE,
    },
    Case {
        name: "quantity-negative",
        edits: &[Swap("commissions/order.toml", "quantity = 3", "quantity = §-3")],
        words: QUOTE,
    },
    Case {
        name: "quantity-absurd",
        edits: &[Swap("commissions/order.toml", "quantity = 3", "quantity = §10001")],
        words: QUOTE,
    },
    Case {
        name: "design-unknown",
        edits: &[Swap("commissions/order.toml", "design = \"pendant\"", "design = §\"pedant\"")],
        words: QUOTE,
    },
    Case {
        name: "design-with-a-fault",
        edits: &[
            Swap("commissions/order.toml", "design = \"pendant\"", "design = §\"pendant\""),
            Swap("designs/pendant.toml", "count = 2", "count = §0"),
        ],
        words: QUOTE,
    },
    Case {
        name: "swapped-cord-unknown",
        edits: &[Swap("commissions/order.toml", "{ soft-4 = \"soft-4\" }", "{ soft-4 = §\"soft-5\" }")],
        words: QUOTE,
    },
    Case {
        name: "swapped-cord-not-of-the-design",
        edits: &[Swap("commissions/order.toml", "{ soft-4 = \"soft-4\" }", "{ §rope-9 = \"soft-4\" }")],
        words: QUOTE,
    },
    Case {
        name: "swapped-cord-that-does-not-fit",
        edits: &[Swap("commissions/order.toml", "{ soft-4 = \"soft-4\" }", "{ soft-4 = §\"rope-9\" }")],
        words: QUOTE,
    },
    Case {
        name: "unit-price-bare",
        edits: &[Swap("commissions/order.toml", "unit-price = \"17.50\"", "unit-price = §17.50")],
        words: QUOTE,
    },
    Case {
        name: "unit-price-with-6-decimals",
        edits: &[Swap("commissions/order.toml", "unit-price = \"17.50\"", "unit-price = §\"17.500001\"")],
        words: QUOTE,
    },
    Case {
        name: "unit-price-absurd",
        edits: &[Swap("commissions/order.toml", "unit-price = \"17.50\"", "unit-price = §\"99999999999\"")],
        words: QUOTE,
    },
    Case {
        name: "line-quantity-not-a-number",
        edits: &[Swap("commissions/order.toml", "quantity = 2", "quantity = §nan")],
        words: QUOTE,
    },
    Case {
        name: "line-quantity-a-bare-decimal",
        edits: &[Swap("commissions/order.toml", "quantity = 2", "quantity = §2.5")],
        words: QUOTE,
    },
    Case {
        name: "line-quantity-absurd",
        edits: &[Swap("commissions/order.toml", "quantity = 2", "quantity = §10000000")],
        words: QUOTE,
    },
    Case {
        name: "line-quantity-past-64-bits",
        edits: &[Swap("commissions/order.toml", "quantity = 2", "quantity = §99999999999999999999999999999999")],
        words: QUOTE,
    },
    Case {
        name: "line-tax-without-sign",
        edits: &[Swap("commissions/order.toml", "tax = \"9 %\"", "tax = §\"9\"")],
        words: QUOTE,
    },
    Case {
        name: "line-tax-above-100",
        edits: &[Swap("commissions/order.toml", "tax = \"9 %\"", "tax = §\"900 %\"")],
        words: QUOTE,
    },
    Case {
        name: "line-taxed-and-exempt",
        edits: &[Swap("commissions/order.toml", "tax = \"9 %\"", "tax = §\"9 %\"\nexempt = true")],
        words: QUOTE,
    },
    Case {
        name: "tax-in-a-shop-that-charges-none",
        edits: &[
            Swap("shop.toml", "prices = \"net\"\nrate = \"20 %\"", "prices = \"not-registered\""),
            Swap("commissions/order.toml", "tax = \"9 %\"", "tax = §\"9 %\""),
        ],
        words: QUOTE,
    },
    Case {
        name: "discount-in-two-ways",
        edits: &[Swap("commissions/order.toml", "[discount]", "§[discount]\namount = \"3.00\"")],
        words: QUOTE,
    },
    Case {
        name: "discount-in-no-way",
        edits: &[Swap(
            "commissions/order.toml",
            "[discount]\ntext = \"For an old friend\"\nrate = \"5 %\"",
            "§[discount]\ntext = \"For an old friend\"",
        )],
        words: QUOTE,
    },
    Case {
        name: "discount-above-100",
        edits: &[Swap("commissions/order.toml", "rate = \"5 %\"", "rate = §\"105 %\"")],
        words: QUOTE,
    },
    Case {
        name: "charge-negative",
        edits: &[Swap("commissions/order.toml", "amount = \"4.00\"", "amount = §\"-4.00\"")],
        words: QUOTE,
    },
    Case {
        name: "commission-deposit-above-100",
        edits: &[Swap("commissions/order.toml", "deposit = \"50 %\"", "deposit = §\"150 %\"")],
        words: QUOTE,
    },
    Case {
        name: "paid-negative",
        edits: &[Swap("commissions/order.toml", "paid = \"5.00\"", "paid = §\"-5.00\"")],
        words: QUOTE,
    },
    Case {
        name: "date-that-is-none",
        edits: &[Swap("commissions/order.toml", "asked = 2027-01-11", "asked = §\"2027-02-30\"")],
        words: QUOTE,
    },
    Case {
        name: "date-in-words",
        edits: &[Swap("commissions/order.toml", "asked = 2027-01-11", "asked = §\"next week\"")],
        words: QUOTE,
    },
    Case {
        name: "date-day-first",
        edits: &[Swap("commissions/order.toml", "asked = 2027-01-11", "asked = §\"11.01.2027\"")],
        words: QUOTE,
    },
    Case {
        name: "date-a-number",
        edits: &[Swap("commissions/order.toml", "asked = 2027-01-11", "asked = §2027")],
        words: QUOTE,
    },
    Case {
        name: "date-with-an-hour",
        edits: &[Swap("commissions/order.toml", "asked = 2027-01-11", "asked = §2027-01-11T10:00:00")],
        words: QUOTE,
    },
    Case {
        name: "day-past-the-calendar",
        edits: &[Swap("commissions/order.toml", "[[item]]", "§[[item]]")],
        words: &["quote", "order", "--shop", "shop", "--on", "+262142-12-31", "--out", "out"],
    },
    Case {
        name: "commission-several-faults",
        edits: &[
            Swap("commissions/order.toml", "quantity = 3", "quantity = §0"),
            Swap("commissions/order.toml", "unit-price = \"17.50\"", "unit-price = §17.50"),
            Swap("commissions/order.toml", "deposit = \"50 %\"", "deposit = §\"150 %\""),
            Swap("commissions/order.toml", "text = \"Gift wrapping\"", "§txt = \"Gift wrapping\""),
        ],
        words: QUOTE,
    },
];

pub(crate) fn module() -> Module {
    crate::module("commission", &[CASES], &[])
}

#[test]
fn faults_of_a_commission_are_told() {
    check_all(&module(), CASES);
}
