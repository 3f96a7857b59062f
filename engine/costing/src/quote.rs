//! What the client reads.
//!
//! [`Quote`] has no field for cost, wage, overhead or margin: a page made from it can't show what it was never given.

use chrono::NaiveDate;
use rust_decimal::Decimal;
use serde::{Deserialize, Deserializer, Serialize};

use crate::caution::Caution;
use crate::money::{Currency, to_decimals};
use crate::rates::TaxScheme;
use crate::schedule::{Deposit, Instalment, schedule};
use crate::totals::{Amount, Sums, TaxClass, Totals, add_up};

/// The form of `quote.json`; raised when a field changes its meaning or goes.
pub const QUOTE_FORM: u32 = 2;

/// A quote as the client reads it. Amounts are decimal strings in `currency`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct Quote {
    /// Version of this form.
    pub form: u32,
    /// The commission's file stem, or the number of a quote that was issued from the book.
    pub reference: String,
    /// What changed against the quote that this one supersedes; empty for a first one.
    #[serde(default)]
    pub changes: Vec<String>,
    /// What it is about.
    pub title: String,
    /// Who makes and sells.
    pub maker: QuoteMaker,
    /// Who asks.
    pub client: QuoteClient,
    /// Day of the quote.
    pub date: NaiveDate,
    /// Last day on which it can be accepted.
    pub valid_until: NaiveDate,
    /// Day on which the work will be ready, if one is promised.
    pub promised: Option<NaiveDate>,
    /// Three letters of ISO 4217.
    pub currency: String,
    /// Decimals of the currency's minor unit, from ISO 4217.
    pub minor_units: u32,
    /// Whether amounts of lines, allowances and charges are without tax, with it, or not taxed.
    pub prices: Prices,
    /// The lines.
    pub lines: Vec<QuoteLine>,
    /// Taken off the whole; amounts are positive.
    pub allowances: Vec<QuoteAmount>,
    /// Put on the whole.
    pub charges: Vec<QuoteAmount>,
    /// Tax of each rate, the highest first.
    pub taxes: Vec<QuoteTax>,
    /// The totals.
    pub totals: Totals,
    /// The deposit agreed; none in a document from before it was told.
    #[serde(default)]
    pub deposit: Deposit,
    /// What is paid when; adds up to `totals.due`.
    pub schedule: Vec<Instalment>,
    /// Sentences of the terms.
    pub terms: Vec<String>,
    /// Whether a piece of it is made to the client's measure: then the law says something on taking it back.
    #[serde(default)]
    pub made_to_order: bool,
    /// How to look after the pieces.
    pub care: Vec<String>,
    /// Cautions that go with the pieces.
    #[serde(deserialize_with = "read_cautions")]
    pub cautions: Vec<Caution>,
    /// A sentence to the client.
    pub note: Option<String>,
}

/// A caution as documents have it: those of form 1 word it.
#[derive(Deserialize)]
#[serde(untagged)]
enum ReadCaution {
    Kind(Caution),
    Text(String),
}

fn read_cautions<'de, D: Deserializer<'de>>(from: D) -> Result<Vec<Caution>, D::Error> {
    let read = |caution| match caution {
        ReadCaution::Kind(caution) => caution,
        ReadCaution::Text(text) => Caution::OfKnot { text },
    };
    Ok(Vec::<ReadCaution>::deserialize(from)?.into_iter().map(read).collect())
}

/// The maker as the client reads it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct QuoteMaker {
    /// The shop's name.
    pub name: String,
    /// A line beneath it.
    pub tagline: Option<String>,
    /// Lines of the address.
    pub address: Vec<String>,
    /// Lines of how to reach it.
    pub contact: Vec<String>,
    /// Tax registration number.
    pub tax_number: Option<String>,
    /// A sentence on tax.
    pub tax_note: Option<String>,
}

/// The client.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct QuoteClient {
    /// Name.
    pub name: String,
    /// Lines of the address.
    pub address: Vec<String>,
}

/// How amounts stand to tax.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
#[serde(rename_all = "lowercase")]
pub enum Prices {
    /// Without tax.
    Net,
    /// With tax.
    Inclusive,
    /// The seller charges no tax.
    Untaxed,
}

/// A line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct QuoteLine {
    /// What it is.
    pub text: String,
    /// More about it.
    pub about: Option<String>,
    /// How large it comes out, as the design says.
    #[serde(default)]
    pub finished: Option<String>,
    /// How many.
    pub quantity: Decimal,
    /// Price of one.
    pub unit_price: Decimal,
    /// Amount of the line: without tax, or with it when `prices` is `inclusive`.
    // Books hold quotes of form 1, which called it so.
    #[serde(alias = "net")]
    pub amount: Decimal,
    /// Tax rate in per cent, `exempt`, or null when the seller charges no tax.
    pub tax_rate: Option<String>,
    /// What the amount is made up of; adds up to `amount`; may be empty.
    pub parts: Vec<QuotePart>,
}

/// A part of a line's amount.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct QuotePart {
    /// What it is for. A document of form 1 reads as `making`.
    #[serde(default)]
    pub kind: PartKind,
    /// How much.
    pub amount: Decimal,
}

/// What a part of a line's amount is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
#[serde(rename_all = "lowercase")]
pub enum PartKind {
    /// Cord.
    Cord,
    /// Rings, dowels and beads.
    Fittings,
    /// Making.
    #[default]
    Making,
    /// Finishing and packing.
    Finishing,
}

/// An amount taken off or put on the whole.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct QuoteAmount {
    /// Why it is taken off or put on. A document of form 1 reads as `named`.
    #[serde(default)]
    pub kind: AmountKind,
    /// What the maker calls it; null for work out of turn.
    pub text: Option<String>,
    /// How many per cent it is, where it is so many of the lines.
    #[serde(default)]
    pub percent: Option<Decimal>,
    /// How much, positive.
    pub amount: Decimal,
    /// Tax rate in per cent, `exempt`, or null.
    pub tax_rate: Option<String>,
}

/// Why an amount is taken off or put on the whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
#[serde(rename_all = "lowercase")]
pub enum AmountKind {
    /// A discount on all lines.
    Discount,
    /// Work out of turn.
    Rush,
    /// An amount that the commission names itself.
    #[default]
    Named,
}

/// Tax of one rate.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schemas", derive(schemars::JsonSchema))]
pub struct QuoteTax {
    /// Tax rate in per cent, or `exempt`.
    pub rate: String,
    /// What is taxed, without tax.
    pub base: Decimal,
    /// The tax.
    pub tax: Decimal,
}

impl Quote {
    /// Counts what was paid so far, and asks for the rest alone.
    pub fn settle(&mut self, paid: Decimal) {
        let mut paid = to_decimals(paid, self.minor_units);
        paid.rescale(self.minor_units);
        self.totals.paid = paid;
        self.totals.due = self.totals.gross - paid;
        self.schedule = schedule(&self.totals, &self.deposit);
    }

    /// Reckons lines and totals anew and says what does not add up; nothing if all does.
    pub fn recheck(&self) -> Option<String> {
        let Some(currency) = Currency::from_code(&self.currency) else {
            return Some(format!("no currency is called {}", self.currency));
        };
        let tax = |rate: &Option<String>| match rate.as_deref() {
            None => TaxClass::Untaxed,
            Some("exempt") => TaxClass::Exempt,
            Some(percent) => percent.parse().map_or(TaxClass::Exempt, TaxClass::Rate),
        };
        let amount = |named: &QuoteAmount| Amount { amount: named.amount, tax: tax(&named.tax_rate) };
        let sums = Sums {
            lines: self.lines.iter().map(|line| Amount { amount: line.amount, tax: tax(&line.tax_rate) }).collect(),
            allowances: self.allowances.iter().map(amount).collect(),
            charges: self.charges.iter().map(amount).collect(),
            paid: self.totals.paid,
        };
        let scheme = match self.prices {
            Prices::Net => TaxScheme::Net,
            Prices::Inclusive => TaxScheme::Inclusive,
            Prices::Untaxed => TaxScheme::NotRegistered,
        };
        let (totals, _) = add_up(&sums, scheme, currency);
        if totals != self.totals {
            return Some(format!("its totals come to {} and not to {}", totals.gross, self.totals.gross));
        }
        let odd = self.lines.iter().find(|line| {
            let parts: Decimal = line.parts.iter().map(|part| part.amount).sum();
            !line.parts.is_empty() && parts != line.amount
        });
        let instalments: Decimal = self.schedule.iter().map(|part| part.amount).sum();
        match odd {
            Some(line) => Some(format!("the parts of a line do not come to its {}", line.amount)),
            None if instalments != self.totals.due => {
                Some(format!("what is to be paid comes to {instalments} and not to {}", self.totals.due))
            }
            None => None,
        }
    }
}
