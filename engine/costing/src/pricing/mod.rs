//! From a commission's cost to its quote and to what really remains.

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::panic, reason = "a test may stop at the first surprise")]
mod tests;

use std::collections::BTreeSet;
use std::sync::Arc;

use chrono::{Days, NaiveDate};
use rust_decimal::Decimal;

use crate::caution::MADE_TO_ORDER;
use crate::commission::{Commission, DiscountSize, Item, Named};
use crate::cost::{Cost, CostFault, ItemCost, JobCost, cost_job};
use crate::money::{fraction, share_out};
use crate::piece::Piece;
use crate::price::{Burden, OutOfReach, PriceSteps, bounded, fee_rate, fees_on, price_for};
use crate::quote::{
    Instalment, Prices, QUOTE_FORM, Quote, QuoteAmount, QuoteClient, QuoteLine, QuoteMaker, QuotePart, QuoteTax,
};
use crate::rates::{Aim, Rates, TaxScheme};
use crate::totals::{Amount, Sums, TaxClass, TaxLine, Totals, add_up};

/// A commission, costed and priced: for the maker's eyes.
#[derive(Debug, Clone, PartialEq)]
pub struct Priced {
    /// What it needs and costs.
    pub job: JobCost,
    /// How each item's price came about.
    pub items: Vec<ItemPrice>,
    /// What remains of it.
    pub outcome: Outcome,
    /// What the maker should look at before sending the quote.
    pub remarks: Vec<String>,
    /// What the client reads.
    pub quote: Quote,
}

/// How an item's price came about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ItemPrice {
    /// The steps of the price, with tax under tax-inclusive prices.
    pub steps: PriceSteps,
    /// Whether the price was given and not computed.
    pub given: bool,
    /// What all its pieces bring in without tax, before any discount.
    pub net: Decimal,
}

/// What remains of a commission after cost and fees.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Outcome {
    /// What comes in without tax.
    pub income: Decimal,
    /// Fees of selling.
    pub fees: Decimal,
    /// Everything it costs.
    pub cost: Cost,
    /// What remains.
    pub margin: Decimal,
    /// The same in per cent of the income; `None` without income.
    pub margin_percent: Option<Decimal>,
    /// What a bench hour earns: the margin and the labour, by hours; `None` without hours.
    pub per_hour: Option<Decimal>,
}

/// Why a commission can't be priced.
#[derive(Debug, Clone, PartialEq)]
pub enum PriceFault {
    /// It can't be costed.
    Cost(CostFault),
    /// The aim can't be reached.
    OutOfReach(OutOfReach),
    /// The last day of validity is past the calendar.
    Date,
}

/// Costs and prices a commission as of a day.
///
/// # Errors
/// [`PriceFault`] when it can't be costed or the shop's aim can't be reached.
pub fn price_commission(commission: &Commission, rates: &Rates, today: NaiveDate) -> Result<Priced, PriceFault> {
    let job = cost_job(commission, rates).map_err(PriceFault::Cost)?;
    let items = price_items(commission, rates, &job)?;
    let lines = quote_lines(commission, rates, &job, &items);
    let (allowances, charges) = whole_amounts(commission, rates, &lines);
    let sums = Sums {
        lines: lines.iter().map(|(_, amount)| *amount).collect(),
        allowances: allowances.iter().map(|named| named.amount).collect(),
        charges: charges.iter().map(|named| named.amount).collect(),
        paid: commission.paid,
    };
    let (totals, taxes) = add_up(&sums, rates.tax.scheme, rates.currency);
    let outcome = outcome(&job, rates, &totals);
    let valid_until = today.checked_add_days(Days::new(u64::from(rates.terms.valid_days))).ok_or(PriceFault::Date)?;
    let lines = lines.into_iter().map(|(line, _)| line).collect();
    let quote = quote(commission, rates, (today, valid_until), lines, (&allowances, &charges), (totals, &taxes));
    let remarks = remarks(commission, rates, &job, &outcome, &totals);
    Ok(Priced { job, items, outcome, remarks, quote })
}

/// A design by itself: one piece, made and sold alone.
#[derive(Debug, Clone, PartialEq)]
pub struct Alone {
    /// What it needs and costs.
    pub job: JobCost,
    /// How its price came about.
    pub price: ItemPrice,
    /// What remains of it.
    pub outcome: Outcome,
    /// The lowest price of one that still pays the wage: cost and fees, nothing left over. As prices are shown.
    pub lowest: Decimal,
}

/// Costs and prices one piece by itself, at the shop's aim or at a price given.
///
/// # Errors
/// [`PriceFault`] when it can't be costed or the shop's aim can't be reached.
pub fn price_alone(
    design: &str,
    piece: &Arc<Piece>,
    rates: &Rates,
    price: Option<Decimal>,
) -> Result<Alone, PriceFault> {
    let commission = Commission::of_one(design, piece, own_tax(rates), price);
    let job = cost_job(&commission, rates).map_err(PriceFault::Cost)?;
    let tax = own_tax(rates);
    let fixed: Decimal = rates.fees.iter().map(|fee| fee.fixed).sum();
    let cost = job.total();
    let price = price_item(&commission.items[0], &cost, fixed, rates)?;
    let amount = rates.currency.round_half_away(price.steps.unit);
    let sums = Sums { lines: vec![Amount { amount, tax }], ..Sums::default() };
    let (totals, _) = add_up(&sums, rates.tax.scheme, rates.currency);
    let outcome = outcome(&job, rates, &totals);
    let lowest = lowest_price(&cost, fixed, rates)?;
    Ok(Alone { job, price, outcome, lowest })
}

/// The price of one at which nothing is left over, rounded up to the smallest coin.
fn lowest_price(cost: &Cost, fixed_fees: Decimal, rates: &Rates) -> Result<Decimal, PriceFault> {
    let tax = own_tax(rates).percent();
    let burden = burden(cost, fixed_fees, rates, tax);
    let net = price_for(Aim::Margin(Decimal::ZERO), &burden).map_err(PriceFault::OutOfReach)?;
    Ok(rates.currency.round_up_to(net * as_shown(rates, tax), Decimal::ZERO))
}

/// What a price without tax is multiplied by to be shown.
fn as_shown(rates: &Rates, tax: Decimal) -> Decimal {
    match rates.tax.scheme {
        TaxScheme::Inclusive => Decimal::ONE + fraction(tax),
        TaxScheme::Net | TaxScheme::NotRegistered => Decimal::ONE,
    }
}

fn burden(cost: &Cost, fixed_fees: Decimal, rates: &Rates, tax: Decimal) -> Burden {
    Burden {
        cost: cost.total(),
        labour: cost.labour(),
        hours: cost.hours,
        fixed_fees,
        fee_rate: fee_rate(&rates.fees, tax),
    }
}

fn price_items(commission: &Commission, rates: &Rates, job: &JobCost) -> Result<Vec<ItemPrice>, PriceFault> {
    let fixed: Decimal = rates.fees.iter().map(|fee| fee.fixed).sum();
    let whole: Decimal = job.items.iter().map(|item| item.cost.total()).sum();
    let price = |(item, cost): (&Item, &ItemCost)| {
        let share = if whole.is_zero() { Decimal::ZERO } else { fixed * cost.cost.total() / whole };
        price_item(item, &cost.cost, share, rates)
    };
    commission.items.iter().zip(&job.items).map(price).collect()
}

fn price_item(item: &Item, cost: &Cost, fixed_fees: Decimal, rates: &Rates) -> Result<ItemPrice, PriceFault> {
    let pieces = Decimal::from(item.quantity);
    let tax = item.tax.percent();
    let with_tax = as_shown(rates, tax);
    let burden = burden(cost, fixed_fees, rates, tax);
    let aimed = price_for(rates.price.aim, &burden).map_err(PriceFault::OutOfReach)? / pieces * with_tax;
    let mut steps = bounded(&rates.price, rates.currency, aimed, item.quantity);
    if let Some(price) = item.price {
        steps = PriceSteps { aimed, quantity_break: Decimal::ZERO, at_minimum: false, unit: price };
    }
    let net = rates.currency.round_half_away(steps.unit * pieces) / with_tax;
    Ok(ItemPrice { steps, given: item.price.is_some(), net })
}

fn quote_lines(commission: &Commission, rates: &Rates, job: &JobCost, items: &[ItemPrice]) -> Vec<(QuoteLine, Amount)> {
    let made = commission.items.iter().zip(items).zip(&job.items).map(|((item, price), cost)| {
        let amount = rates.currency.round_half_away(price.steps.unit * Decimal::from(item.quantity));
        let line = QuoteLine {
            text: item.text.clone().unwrap_or_else(|| item.piece.title.clone()),
            about: about(&item.piece),
            quantity: Decimal::from(item.quantity),
            unit_price: price.steps.unit,
            net: amount,
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
            quantity: line.quantity,
            unit_price: line.unit_price,
            net: amount,
            tax_rate: line.tax.word(),
            parts: Vec::new(),
        };
        (quoted, Amount { amount, tax: line.tax })
    });
    made.chain(fixed).collect()
}

fn about(piece: &Piece) -> Option<String> {
    match (&piece.about, &piece.finished) {
        (Some(about), Some(finished)) => Some(format!("{about} Finished size: {finished}.")),
        (Some(about), None) => Some(about.clone()),
        (None, Some(finished)) => Some(format!("Finished size: {finished}.")),
        (None, None) => None,
    }
}

/// Spreads a line's amount over what it pays for, so that the parts add up to it exactly.
fn parts(rates: &Rates, amount: Decimal, cost: &Cost) -> Vec<QuotePart> {
    let labour = cost.labour();
    let making_part = if labour.is_zero() { Decimal::ONE } else { cost.making / labour };
    let weights = [
        ("Cord", cost.cord),
        ("Rings, dowels and beads", cost.fittings),
        ("Making", cost.making + cost.overhead * making_part),
        ("Finishing and packing", cost.finishing + cost.other + cost.overhead * (Decimal::ONE - making_part)),
    ];
    let shares = share_out(rates.currency, amount, &weights.map(|(_, weight)| weight));
    let parts = weights.iter().zip(shares).map(|((text, _), amount)| QuotePart { text: (*text).to_owned(), amount });
    parts.filter(|part| !part.amount.is_zero()).collect()
}

/// What is taken off and put on the whole: discount and rush, then what the commission names itself.
fn whole_amounts(commission: &Commission, rates: &Rates, lines: &[(QuoteLine, Amount)]) -> (Vec<Named>, Vec<Named>) {
    let all = by_tax(lines.iter().map(|(_, amount)| *amount));
    let made = by_tax(lines.iter().take(commission.items.len()).map(|(_, amount)| *amount));
    let mut allowances = match &commission.discount {
        Some(discount) => spread(rates, &discount.text, discount.size, &all),
        None => Vec::new(),
    };
    allowances.extend(commission.allowances.iter().cloned());
    let rush = if commission.rush { rates.price.rush } else { Decimal::ZERO };
    let mut charges = spread(rates, "Work out of turn", DiscountSize::Percent(rush), &made);
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
fn spread(rates: &Rates, text: &str, size: DiscountSize, sums: &[Amount]) -> Vec<Named> {
    let amounts: Vec<Decimal> = match size {
        DiscountSize::Percent(percent) => {
            sums.iter().map(|sum| rates.currency.round_half_away(sum.amount * fraction(percent))).collect()
        }
        DiscountSize::Amount(amount) => {
            let weights: Vec<Decimal> = sums.iter().map(|sum| sum.amount.max(Decimal::ZERO)).collect();
            share_out(rates.currency, amount, &weights)
        }
    };
    let text = match size {
        DiscountSize::Percent(percent) => format!("{text}, {} %", percent.normalize()),
        DiscountSize::Amount(_) => text.to_owned(),
    };
    let named = sums
        .iter()
        .zip(amounts)
        .map(|(sum, amount)| Named { text: text.clone(), amount: Amount { amount, tax: sum.tax } });
    named.filter(|named| !named.amount.amount.is_zero()).collect()
}

fn outcome(job: &JobCost, rates: &Rates, totals: &Totals) -> Outcome {
    let cost = job.total();
    let fees = fees_on(&rates.fees, totals.net, totals.gross);
    let margin = totals.net - fees - cost.total();
    let percent = (!totals.net.is_zero()).then(|| margin / totals.net * Decimal::ONE_HUNDRED);
    let per_hour = (!cost.hours.is_zero()).then(|| (margin + cost.labour()) / cost.hours);
    Outcome { income: totals.net, fees, cost, margin, margin_percent: percent, per_hour }
}

fn quote(
    commission: &Commission,
    rates: &Rates,
    (date, valid_until): (NaiveDate, NaiveDate),
    lines: Vec<QuoteLine>,
    (allowances, charges): (&[Named], &[Named]),
    (totals, taxes): (Totals, &[TaxLine]),
) -> Quote {
    Quote {
        form: QUOTE_FORM,
        reference: commission.reference.clone(),
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
        schedule: schedule(commission, rates, &totals),
        totals,
        terms: terms(commission, rates),
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

fn quote_amount(named: &Named) -> QuoteAmount {
    QuoteAmount { text: named.text.clone(), amount: named.amount.amount, tax_rate: named.amount.tax.word() }
}

fn quote_tax(line: &TaxLine) -> QuoteTax {
    QuoteTax { rate: line.tax_class.word().unwrap_or_default(), base: line.base, tax: line.tax }
}

/// Deposit and balance; together what is due.
fn schedule(commission: &Commission, rates: &Rates, totals: &Totals) -> Vec<Instalment> {
    let percent = commission.deposit.unwrap_or(rates.terms.deposit);
    let agreed = rates.currency.round_half_away(totals.gross * fraction(percent));
    let deposit = (agreed - totals.paid).clamp(Decimal::ZERO, totals.due.max(Decimal::ZERO));
    let balance = totals.due - deposit;
    let less = if totals.paid > Decimal::ZERO { ", less what is paid" } else { "" };
    let instalments = [
        (format!("Deposit, {} %{less}", percent.normalize()), "on acceptance", deposit),
        (if deposit.is_zero() { "Payment" } else { "Balance" }.to_owned(), "before delivery", balance),
    ];
    let due = instalments.into_iter().filter(|(_, _, amount)| !amount.is_zero());
    due.map(|(text, when, amount)| Instalment { text, when: when.to_owned(), amount }).collect()
}

fn terms(commission: &Commission, rates: &Rates) -> Vec<String> {
    let mut terms = rates.terms.sentences.clone();
    if !commission.items.is_empty() {
        terms.push(MADE_TO_ORDER.to_owned());
    }
    terms
}

/// The cautions of every piece and part, each once, in order.
fn cautions(commission: &Commission) -> Vec<String> {
    let mut seen = BTreeSet::new();
    let mut cautions = Vec::new();
    for item in &commission.items {
        gather(&item.piece, &mut |caution| {
            if seen.insert(caution) {
                cautions.push(caution.to_owned());
            }
        });
    }
    cautions
}

fn gather(piece: &Piece, take: &mut impl FnMut(&'static str)) {
    piece.purpose.cautions().iter().for_each(|caution| take(caution));
    piece.parts.iter().for_each(|part| gather(&part.piece, take));
}

fn remarks(commission: &Commission, rates: &Rates, job: &JobCost, outcome: &Outcome, totals: &Totals) -> Vec<String> {
    let mut remarks = Vec::new();
    if let (Some(promised), Some(needed)) = (commission.promised, commission.needed_by)
        && promised > needed
    {
        remarks.push(format!("Promised for {promised}, but the client needs it by {needed}."));
    }
    if let (Aim::Margin(aim), Some(left)) = (rates.price.aim, outcome.margin_percent)
        && left < aim - Decimal::ONE
        && outcome.margin >= Decimal::ZERO
    {
        let (aim, left) = (aim.normalize(), left.round_dp(1).normalize());
        remarks.push(format!("The shop aims at {aim} %, and {left} % remain after breaks, discount and prices given."));
    }
    if outcome.margin < Decimal::ZERO {
        remarks.push("This commission loses money: it brings in less than it costs.".to_owned());
    }
    if outcome.per_hour.is_some_and(|earned| earned < rates.wage) {
        remarks.push("An hour at the bench earns less here than the wage.".to_owned());
    }
    if totals.due < Decimal::ZERO {
        remarks.push("More has been paid than is asked.".to_owned());
    }
    for bought in &job.cords {
        if bought.cord.density_estimated {
            remarks.push(format!(
                "The weight of {} is a rough estimate from fibre and thickness: weigh 10 m of it.",
                bought.cord.full_title()
            ));
        }
        if !bought.proven {
            remarks.push(format!(
                "A cheaper way to buy {} may exist; the search was cut short.",
                bought.cord.full_title()
            ));
        }
    }
    remarks
}

/// How the shop's own pieces are taxed.
pub fn own_tax(rates: &Rates) -> TaxClass {
    match rates.tax.scheme {
        TaxScheme::NotRegistered => TaxClass::Untaxed,
        TaxScheme::Net | TaxScheme::Inclusive => TaxClass::Rate(rates.tax.rate),
    }
}
