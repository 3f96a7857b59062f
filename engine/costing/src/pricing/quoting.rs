//! What the client reads: lines, amounts on the whole, payments, terms and cautions.

use chrono::NaiveDate;
use rust_decimal::Decimal;

use super::PricedItem;
use crate::caution::Caution;
use crate::commission::{Commission, DiscountSize, NamedAmount};
use crate::cost::Cost;
use crate::money::{fraction, share_out};
use crate::piece::{Piece, Work};
use crate::quote::{
    AmountKind, PartKind, Prices, QUOTE_FORM, Quote, QuoteAmount, QuoteClient, QuoteLine, QuoteMaker, QuotePart,
    QuoteTax,
};
use crate::rates::{Rates, TaxScheme};
use crate::schedule::{Deposit, schedule};
use crate::totals::{Amount, TaxLine, Totals};

pub(super) fn quote_lines(commission: &Commission, rates: &Rates, items: &[PricedItem]) -> Vec<(QuoteLine, Amount)> {
    let made = items.iter().map(|PricedItem { item, cost, price }| {
        let amount = rates.currency.round_half_away(price.steps.unit * Decimal::from(item.quantity));
        let line = QuoteLine {
            text: item.text.clone().unwrap_or_else(|| item.piece.title.clone()),
            about: item.piece.about.clone(),
            finished: item.piece.finished.clone(),
            quantity: Decimal::from(item.quantity),
            unit_price: price.steps.unit,
            amount,
            tax_rate: item.tax.word(),
            parts: if rates.price.itemised { parts(rates, amount, &cost.cost) } else { Vec::new() },
        };
        (line, Amount { amount, tax: item.tax })
    });
    let fixed = commission.lines.iter().map(|line| {
        let amount = rates.currency.round_half_away(line.unit_price * line.quantity);
        let quoted = QuoteLine {
            text: line.text.clone(),
            about: None,
            finished: None,
            quantity: line.quantity,
            unit_price: line.unit_price,
            amount,
            tax_rate: line.tax.word(),
            parts: Vec::new(),
        };
        (quoted, Amount { amount, tax: line.tax })
    });
    made.chain(fixed).collect()
}

/// Spreads a line's amount over what it pays for, so that the parts add up to it exactly.
fn parts(rates: &Rates, amount: Decimal, cost: &Cost) -> Vec<QuotePart> {
    let labour = cost.labour();
    let making_part = if labour.is_zero() { Decimal::ONE } else { cost.making / labour };
    let weights = [
        (PartKind::Cord, cost.cord),
        (PartKind::Fittings, cost.fittings),
        (PartKind::Making, cost.making + cost.overhead * making_part),
        (PartKind::Finishing, cost.finishing + cost.other + cost.overhead * (Decimal::ONE - making_part)),
    ];
    let shares = share_out(rates.currency, amount, &weights.map(|(_, weight)| weight));
    let parts = weights.iter().zip(shares).map(|((kind, _), amount)| QuotePart { kind: *kind, amount });
    parts.filter(|part| !part.amount.is_zero()).collect()
}

/// What is taken off and put on the whole: discount and rush, then what the commission names itself.
pub(super) fn whole_amounts(
    commission: &Commission,
    rates: &Rates,
    lines: &[(QuoteLine, Amount)],
) -> (Vec<NamedAmount>, Vec<NamedAmount>) {
    let all = by_tax(lines.iter().map(|(_, amount)| *amount));
    let made = by_tax(lines.iter().take(commission.items.len()).map(|(_, amount)| *amount));
    let mut allowances = match &commission.discount {
        Some(discount) => spread(rates, (AmountKind::Discount, Some(discount.text.as_str())), discount.size, &all),
        None => Vec::new(),
    };
    allowances.extend(commission.allowances.iter().cloned());
    let rush = if commission.rush { rates.price.rush } else { Decimal::ZERO };
    let mut charges = spread(rates, (AmountKind::Rush, None), DiscountSize::Percent(rush), &made);
    charges.extend(commission.charges.iter().cloned());
    (allowances, charges)
}

fn by_tax(amounts: impl Iterator<Item = Amount>) -> Vec<Amount> {
    let mut sums: Vec<Amount> = Vec::new();
    for amount in amounts {
        match sums.iter_mut().find(|sum| sum.tax.word() == amount.tax.word()) {
            Some(sum) => sum.amount += amount.amount,
            None => sums.push(amount),
        }
    }
    sums
}

/// One amount for each tax rate, since EN 16931 gives each allowance and charge one rate.
///
/// None is below zero: what is below zero at a rate, a credit, lowers what the percentage is taken of, and what comes off
/// then is shared out over the rates that it can come off. So a percentage off never comes back as something put on.
fn spread(
    rates: &Rates,
    (kind, text): (AmountKind, Option<&str>),
    size: DiscountSize,
    sums: &[Amount],
) -> Vec<NamedAmount> {
    let weights = || sums.iter().map(|sum| sum.amount.max(Decimal::ZERO)).collect::<Vec<_>>();
    let amounts: Vec<Decimal> = match size {
        DiscountSize::Percent(percent) if sums.iter().all(|sum| sum.amount >= Decimal::ZERO) => {
            sums.iter().map(|sum| rates.currency.round_half_away(sum.amount * fraction(percent))).collect()
        }
        DiscountSize::Percent(percent) => {
            let whole: Decimal = sums.iter().map(|sum| sum.amount).sum();
            let off = rates.currency.round_half_away(whole.max(Decimal::ZERO) * fraction(percent));
            share_out(rates.currency, off, &weights())
        }
        DiscountSize::Amount(amount) => share_out(rates.currency, rates.currency.round_half_away(amount), &weights()),
    };
    let percent = if let DiscountSize::Percent(percent) = size { Some(percent.normalize()) } else { None };
    let text = text.map(str::to_owned);
    let named = sums.iter().zip(amounts).map(|(sum, amount)| NamedAmount {
        kind,
        text: text.clone(),
        percent,
        amount: Amount { amount, tax: sum.tax },
    });
    named.filter(|named| !named.amount.amount.is_zero()).collect()
}

pub(super) fn quote(
    commission: &Commission,
    rates: &Rates,
    (date, valid_until): (NaiveDate, NaiveDate),
    lines: Vec<QuoteLine>,
    (allowances, charges): (&[NamedAmount], &[NamedAmount]),
    (totals, taxes): (Totals, &[TaxLine]),
) -> Quote {
    let deposit = deposit(commission, rates, &totals);
    Quote {
        form: QUOTE_FORM,
        reference: commission.reference.clone(),
        changes: Vec::new(),
        title: commission.title.clone(),
        maker: maker(rates),
        client: QuoteClient { name: commission.client.name.clone(), address: commission.client.address.clone() },
        date,
        valid_until,
        promised: commission.promised,
        currency: rates.currency.code().to_owned(),
        minor_units: rates.currency.minor_units(),
        prices: match rates.tax.scheme {
            TaxScheme::Net => Prices::Net,
            TaxScheme::Inclusive => Prices::Inclusive,
            TaxScheme::NotRegistered => Prices::Untaxed,
        },
        lines,
        allowances: allowances.iter().map(quote_amount).collect(),
        charges: charges.iter().map(quote_amount).collect(),
        taxes: taxes.iter().map(quote_tax).collect(),
        schedule: schedule(&totals, &deposit),
        deposit,
        totals,
        terms: rates.terms.sentences.clone(),
        made_to_order: !commission.items.is_empty(),
        care: if commission.items.is_empty() { Vec::new() } else { rates.terms.care.clone() },
        cautions: cautions(commission),
        note: commission.note.clone(),
    }
}

fn maker(rates: &Rates) -> QuoteMaker {
    QuoteMaker {
        name: rates.maker.name.clone(),
        tagline: rates.maker.tagline.clone(),
        address: rates.maker.address.clone(),
        contact: rates.maker.contact.clone(),
        tax_number: rates.tax.number.clone(),
        tax_note: rates.tax.note.clone(),
    }
}

fn quote_amount(named: &NamedAmount) -> QuoteAmount {
    QuoteAmount {
        kind: named.kind,
        text: named.text.clone(),
        percent: named.percent,
        amount: named.amount.amount,
        tax_rate: named.amount.tax.word(),
    }
}

fn quote_tax(line: &TaxLine) -> QuoteTax {
    QuoteTax { rate: line.tax_class.word().unwrap_or_default(), base: line.base, tax: line.tax }
}

/// The deposit agreed: the commission's own, else that of the shop's terms.
fn deposit(commission: &Commission, rates: &Rates, totals: &Totals) -> Deposit {
    let percent = commission.deposit.unwrap_or(rates.terms.deposit).normalize();
    Deposit { percent, amount: rates.currency.round_half_away(totals.gross.max(Decimal::ZERO) * fraction(percent)) }
}

/// The cautions of every piece and part and of their knots, each once, in order.
fn cautions(commission: &Commission) -> Vec<Caution> {
    let mut cautions = Vec::new();
    for item in &commission.items {
        gather(&item.piece, &mut |caution| {
            if !cautions.contains(&caution) {
                cautions.push(caution);
            }
        });
    }
    cautions
}

fn gather(piece: &Piece, take: &mut impl FnMut(Caution)) {
    piece.purpose.cautions().iter().cloned().for_each(&mut *take);
    for step in &piece.steps {
        if let Work::Tie(tie) = &step.work {
            tie.knot.cautions.iter().for_each(|text| take(Caution::OfKnot { text: text.clone() }));
        }
    }
    piece.parts.iter().for_each(|part| gather(&part.piece, take));
}
