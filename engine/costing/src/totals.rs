//! Totals of a quote: semantics and arithmetic of EN 16931.
//!
//! BT-106 sum of lines, BT-107 allowances, BT-108 charges, BT-109 net, BT-110 tax, BT-112 gross, BT-113 paid, BT-115 due.
//! Tax of each rate is base x rate, rounded to the currency's minor unit half away from zero; every sum is exact.
//! With tax-inclusive prices the tax of each rate is taken out of what is paid at that rate, rounded the same way.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use crate::money::Currency;
use crate::rates::TaxScheme;

/// How an amount is taxed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TaxClass {
    /// At so many per cent.
    Rate(Decimal),
    /// Exempt.
    Exempt,
    /// The seller charges no tax.
    Untaxed,
}

impl TaxClass {
    /// The rate in per cent.
    pub fn percent(self) -> Decimal {
        match self {
            Self::Rate(percent) => percent.normalize(),
            Self::Exempt | Self::Untaxed => Decimal::ZERO,
        }
    }

    /// As written in JSON: the rate in per cent, `exempt`, or nothing.
    pub fn word(self) -> Option<String> {
        match self {
            Self::Rate(percent) => Some(percent.normalize().to_string()),
            Self::Exempt => Some("exempt".to_owned()),
            Self::Untaxed => None,
        }
    }
}

/// An amount, rounded already, and how it is taxed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Amount {
    /// The amount: without tax, or with it under tax-inclusive prices.
    pub amount: Decimal,
    /// How it is taxed.
    pub tax: TaxClass,
}

/// Everything that goes into the totals.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Sums {
    /// Lines.
    pub lines: Vec<Amount>,
    /// Taken off the whole, each a positive amount.
    pub allowances: Vec<Amount>,
    /// Put on the whole.
    pub charges: Vec<Amount>,
    /// Paid already.
    pub paid: Decimal,
}

/// Tax at one rate.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TaxLine {
    /// How it is taxed.
    pub tax_class: TaxClass,
    /// What is taxed, without tax.
    pub base: Decimal,
    /// The tax.
    pub tax: Decimal,
}

/// The totals.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct Totals {
    /// Sum of the lines, as shown.
    pub lines: Decimal,
    /// Sum of the allowances.
    pub allowances: Decimal,
    /// Sum of the charges.
    pub charges: Decimal,
    /// Without tax.
    pub net: Decimal,
    /// All tax.
    pub tax: Decimal,
    /// With tax.
    pub gross: Decimal,
    /// Paid so far (BT-113): for a quote from the book what its payments come to.
    pub paid: Decimal,
    /// Left to pay: gross less paid (BT-115); below zero where more was paid, which is then paid back.
    pub due: Decimal,
}

/// Adds everything up.
///
/// Amounts must be rounded to the currency's minor unit; the sums are then exact.
pub fn add_up(sums: &Sums, scheme: TaxScheme, currency: Currency) -> (Totals, Vec<TaxLine>) {
    let sum = |amounts: &[Amount]| currency.round_half_away(amounts.iter().map(|amount| amount.amount).sum());
    let (lines, allowances, charges) = (sum(&sums.lines), sum(&sums.allowances), sum(&sums.charges));
    let whole = lines - allowances + charges;
    let taxes = tax_lines(sums, scheme, currency);
    let tax = currency.round_half_away(taxes.iter().map(|line| line.tax).sum());
    let (net, gross) = match scheme {
        TaxScheme::Inclusive => (whole - tax, whole),
        TaxScheme::Net | TaxScheme::NotRegistered => (whole, whole + tax),
    };
    let paid = currency.round_half_away(sums.paid);
    (Totals { lines, allowances, charges, net, tax, gross, paid, due: gross - paid }, taxes)
}

/// What one amount comes to without tax and with it.
pub fn net_and_gross(amount: Amount, scheme: TaxScheme, currency: Currency) -> (Decimal, Decimal) {
    if scheme == TaxScheme::NotRegistered {
        return (amount.amount, amount.amount);
    }
    let line = tax_line(amount.tax, amount.amount, scheme, currency);
    (line.base, line.base + line.tax)
}

fn tax_lines(sums: &Sums, scheme: TaxScheme, currency: Currency) -> Vec<TaxLine> {
    if scheme == TaxScheme::NotRegistered {
        return Vec::new();
    }
    let mut bases: Vec<(TaxClass, Decimal)> = Vec::new();
    let allowances = sums.allowances.iter().map(|amount| Amount { amount: -amount.amount, ..*amount });
    for amount in sums.lines.iter().copied().chain(allowances).chain(sums.charges.iter().copied()) {
        match bases.iter_mut().find(|(class, _)| same(*class, amount.tax)) {
            Some((_, base)) => *base += amount.amount,
            None => bases.push((amount.tax, amount.amount)),
        }
    }
    // Highest rate first; exempt after the zero rate.
    bases.sort_by(|a, b| (b.0.percent(), a.0 == TaxClass::Exempt).cmp(&(a.0.percent(), b.0 == TaxClass::Exempt)));
    bases.into_iter().map(|(class, base)| tax_line(class, base, scheme, currency)).collect()
}

/// 20 % and 20.0 % are one rate.
fn same(a: TaxClass, b: TaxClass) -> bool {
    a.word() == b.word()
}

fn tax_line(tax_class: TaxClass, amount: Decimal, scheme: TaxScheme, currency: Currency) -> TaxLine {
    let percent = tax_class.percent();
    let (part, whole) = match scheme {
        TaxScheme::Inclusive => (percent, Decimal::ONE_HUNDRED + percent),
        TaxScheme::Net | TaxScheme::NotRegistered => (percent, Decimal::ONE_HUNDRED),
    };
    let tax = currency.round_half_away(amount * part / whole);
    let base = if scheme == TaxScheme::Inclusive { amount - tax } else { amount };
    TaxLine { tax_class, base: currency.round_half_away(base), tax }
}
