//! What is paid when: deposit and balance of what is due, whatever was paid already.
//!
//! In the terms of EN 16931: paid is BT-113, the sum of what was paid so far; due is BT-115, the gross less it (BR-CO-16, from memory).
//! Below zero more was paid than the gross, and that is paid back.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use crate::totals::Totals;

/// The deposit agreed.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct Deposit {
    /// In per cent of the gross, 0 to 100.
    pub percent: Decimal,
    /// What that comes to, whether it is paid yet or not.
    pub amount: Decimal,
}

/// A payment to come.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct Instalment {
    /// Which it is. A document from before there were kinds reads as `payment`.
    #[serde(default)]
    pub kind: InstalmentKind,
    /// How much; below zero only for a refund.
    pub amount: Decimal,
}

/// Which payment it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
#[serde(rename_all = "lowercase")]
pub enum InstalmentKind {
    /// The deposit, or what is left of it.
    Deposit,
    /// What remains after a deposit, or after what was paid.
    Balance,
    /// All of it in one.
    #[default]
    Payment,
    /// What was paid too much, back to the client.
    Refund,
}

/// The payments to come; together what is due, and none of them nothing.
pub fn schedule(totals: &Totals, deposit: &Deposit) -> Vec<Instalment> {
    let due = totals.due;
    let instalment = |kind, amount: Decimal| (!amount.is_zero()).then_some(Instalment { kind, amount });
    if due < Decimal::ZERO {
        return instalment(InstalmentKind::Refund, due).into_iter().collect();
    }
    let is_begun = totals.paid > Decimal::ZERO;
    let of_deposit = (deposit.amount - totals.paid.max(Decimal::ZERO)).clamp(Decimal::ZERO, due);
    let rest = if is_begun || !of_deposit.is_zero() { InstalmentKind::Balance } else { InstalmentKind::Payment };
    let both = [instalment(InstalmentKind::Deposit, of_deposit), instalment(rest, due - of_deposit)];
    both.into_iter().flatten().collect()
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::money::to_decimals;

    /// Totals and deposit of so many cents.
    fn asked(gross: i64, percent: i64, paid: i64) -> (Totals, Deposit) {
        let cents = |cents: i64| Decimal::new(cents, 2);
        let (gross, paid) = (cents(gross), cents(paid));
        let totals = Totals { net: gross, gross, paid, due: gross - paid, ..Totals::default() };
        let mut amount = gross * Decimal::new(percent, 2);
        amount = to_decimals(amount, 2);
        (totals, Deposit { percent: Decimal::from(percent), amount })
    }

    fn parts(gross: i64, percent: i64, paid: i64) -> Vec<(InstalmentKind, String)> {
        let (totals, deposit) = asked(gross, percent, paid);
        schedule(&totals, &deposit).into_iter().map(|part| (part.kind, part.amount.to_string())).collect()
    }

    #[test]
    fn what_was_paid_is_not_asked_again() {
        use InstalmentKind::{Balance, Deposit, Payment, Refund};
        let of = |kind, amount: &str| (kind, amount.to_owned());
        // 40 % of 1000.00, by hand, with more and more of it paid.
        assert_eq!(parts(100_000, 40, 0), [of(Deposit, "400.00"), of(Balance, "600.00")]);
        assert_eq!(parts(100_000, 40, 15_000), [of(Deposit, "250.00"), of(Balance, "600.00")]);
        assert_eq!(parts(100_000, 40, 40_000), [of(Balance, "600.00")]);
        assert_eq!(parts(100_000, 40, 70_000), [of(Balance, "300.00")]);
        assert_eq!(parts(100_000, 40, 100_000), []);
        assert_eq!(parts(100_000, 40, 104_250), [of(Refund, "-42.50")]);
        // Without a deposit, and with nothing else.
        assert_eq!(parts(100_000, 0, 0), [of(Payment, "1000.00")]);
        assert_eq!(parts(100_000, 0, 1), [of(Balance, "999.99")]);
        assert_eq!(parts(100_000, 100, 0), [of(Deposit, "1000.00")]);
        assert_eq!(parts(100_000, 100, 30_000), [of(Deposit, "700.00")]);
        // A refund of more than was paid is asked for with the balance.
        assert_eq!(parts(100_000, 40, -5_000), [of(Deposit, "400.00"), of(Balance, "650.00")]);
    }

    proptest! {
        #[test]
        fn parts_add_up_to_what_is_due(gross in 0_i64..1_000_000, percent in 0_i64..=100, paid in -50_000_i64..1_200_000) {
            let (totals, deposit) = asked(gross, percent, paid);
            let parts = schedule(&totals, &deposit);
            prop_assert_eq!(parts.iter().map(|part| part.amount).sum::<Decimal>(), totals.due);
            for part in &parts {
                prop_assert_eq!(part.amount < Decimal::ZERO, part.kind == InstalmentKind::Refund);
                prop_assert!(!part.amount.is_zero());
            }
            // Deposit paid and deposit asked never come to more than the deposit, unless more was paid than that.
            let asked: Decimal =
                parts.iter().filter(|part| part.kind == InstalmentKind::Deposit).map(|part| part.amount).sum();
            prop_assert!(asked.is_zero() || asked + totals.paid.max(Decimal::ZERO) == deposit.amount);
        }
    }
}
