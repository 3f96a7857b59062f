//! Sums that must come out, and bounds that must hold, for every commission.

use proptest::prelude::*;
use reeve_costing::money::Currency;
use reeve_costing::quote::Quote;
use reeve_costing::rates::TaxScheme;
use reeve_costing::schedule::InstalmentKind;
use rust_decimal::Decimal;

use crate::random::{Aim, Plan, plans};
use crate::{cases, order};

fn sum(amounts: impl Iterator<Item = Decimal>) -> Decimal {
    amounts.sum()
}

fn lines_of(quote: &Quote) -> Decimal {
    sum(quote.lines.iter().map(|line| line.amount))
}

/// Per cent of a tax rate as the quote writes it.
fn percent(word: &str) -> Decimal {
    if word == "exempt" { Decimal::ZERO } else { word.parse().unwrap() }
}

/// Without anything that takes off a price or gives one.
fn plain(mut plan: Plan) -> Plan {
    plan.rates.breaks = false;
    plan.order.agreed.iter_mut().for_each(|price| *price = None);
    plan.order.lines.clear();
    plan.order.discount = None;
    plan.order.allowance = None;
    plan
}

proptest! {
    #![proptest_config(cases(64))]

    #[test]
    fn lines_add_up_to_the_totals(plan in plans()) {
        let quote = order(&plan.shop()).priced.quote;
        let totals = quote.totals;
        prop_assert_eq!(totals.lines, lines_of(&quote));
        prop_assert_eq!(totals.allowances, sum(quote.allowances.iter().map(|amount| amount.amount)));
        prop_assert_eq!(totals.charges, sum(quote.charges.iter().map(|amount| amount.amount)));
        prop_assert_eq!(totals.tax, sum(quote.taxes.iter().map(|tax| tax.tax)));
        prop_assert_eq!(totals.gross, totals.net + totals.tax);
        prop_assert_eq!(totals.due, totals.gross - totals.paid);
        let whole = totals.lines - totals.allowances + totals.charges;
        let shown = if plan.rates.scheme == "inclusive" { totals.gross } else { totals.net };
        prop_assert_eq!(shown, whole);
    }

    #[test]
    fn bases_add_up_to_the_net_and_each_carries_its_rate(plan in plans()) {
        let order = order(&plan.shop());
        let quote = &order.priced.quote;
        if plan.rates.scheme == "not-registered" {
            prop_assert!(quote.taxes.is_empty() && quote.totals.tax.is_zero());
            return Ok(());
        }
        prop_assert_eq!(sum(quote.taxes.iter().map(|tax| tax.base)), quote.totals.net);
        let unit = Decimal::new(1, quote.minor_units);
        for tax in &quote.taxes {
            let off = (tax.base * percent(&tax.rate) / Decimal::ONE_HUNDRED - tax.tax).abs();
            // Half a unit from rounding; where tax is taken out of a price its base is rounded with it.
            prop_assert!(off <= unit, "{:?}", tax);
        }
    }

    #[test]
    fn every_amount_is_a_whole_number_of_minor_units(plan in plans()) {
        let quote = order(&plan.shop()).priced.quote;
        let totals = quote.totals;
        let mut amounts = vec![totals.lines, totals.net, totals.tax, totals.gross, totals.paid, totals.due];
        amounts.extend(quote.lines.iter().flat_map(|line| line.parts.iter().map(|part| part.amount).chain([line.amount])));
        amounts.extend(quote.allowances.iter().chain(&quote.charges).map(|amount| amount.amount));
        amounts.extend(quote.taxes.iter().flat_map(|tax| [tax.base, tax.tax]));
        amounts.extend(quote.schedule.iter().map(|part| part.amount));
        for amount in amounts {
            prop_assert_eq!(amount.scale(), quote.minor_units, "{}", amount);
        }
    }

    #[test]
    fn parts_of_a_line_add_up_to_it(plan in plans()) {
        let quote = order(&plan.shop()).priced.quote;
        let made = plan.designs.len();
        for (at, line) in quote.lines.iter().enumerate() {
            let parts = sum(line.parts.iter().map(|part| part.amount));
            if at < made && plan.rates.itemised && !line.amount.is_zero() {
                prop_assert_eq!(parts, line.amount, "{}", line.text);
            } else {
                prop_assert!(parts.is_zero(), "{}", line.text);
            }
            prop_assert!(line.parts.iter().all(|part| part.amount >= Decimal::ZERO));
        }
    }

    #[test]
    fn a_line_is_its_quantity_times_its_price(plan in plans()) {
        let quote = order(&plan.shop()).priced.quote;
        for line in &quote.lines {
            let off = (line.quantity * line.unit_price - line.amount).abs();
            prop_assert!(off * Decimal::TWO <= Decimal::new(1, quote.minor_units), "{:?}", line);
        }
    }

    #[test]
    fn the_schedule_adds_up_to_what_is_due(plan in plans()) {
        let quote = order(&plan.shop()).priced.quote;
        prop_assert_eq!(sum(quote.schedule.iter().map(|part| part.amount)), quote.totals.due);
        prop_assert!(quote.schedule.iter().all(|part| !part.amount.is_zero()));
    }

    #[test]
    fn a_deposit_never_exceeds_the_whole_nor_what_is_due(plan in plans()) {
        let quote = order(&plan.shop()).priced.quote;
        let deposits = quote.schedule.iter().filter(|part| part.kind == InstalmentKind::Deposit);
        for deposit in deposits {
            prop_assert!(deposit.amount > Decimal::ZERO);
            prop_assert!(deposit.amount <= quote.totals.gross && deposit.amount <= quote.totals.due, "{:?}", deposit);
        }
    }

    #[test]
    fn nothing_taken_off_is_below_zero(plan in plans()) {
        let quote = order(&plan.shop()).priced.quote;
        prop_assert!(quote.allowances.iter().all(|allowance| allowance.amount > Decimal::ZERO), "{:?}", quote.allowances);
    }

    #[test]
    fn a_discount_of_an_amount_takes_off_that_amount(plan in plans(), cents in 1_u32..10_000) {
        // Where there is something to take it off; the lines with a price given may come to less than nothing.
        let mut plan = plain(plan);
        plan.order.discount = Some(crate::random::Discount::Amount(cents));
        let quote = order(&plan.shop()).priced.quote;
        let mut amount = Decimal::new(i64::from(cents), 2);
        amount = amount.round_dp_with_strategy(quote.minor_units, rust_decimal::RoundingStrategy::MidpointAwayFromZero);
        prop_assert_eq!(quote.totals.allowances, amount);
    }

    #[test]
    fn no_price_is_below_its_aim(plan in plans()) {
        let plan = plain(plan);
        let order = order(&plan.shop());
        let outcome = &order.priced.outcome;
        // The tax that a fee is taken on may be rounded by half a unit, and net income likewise where tax is inside it.
        let unit = Decimal::new(1, order.priced.quote.minor_units);
        let left = match plan.rates.aim {
            Aim::Margin(tenths) => outcome.margin - outcome.income * Decimal::new(i64::from(tenths), 3),
            Aim::Markup(tenths) => outcome.margin - outcome.cost.total() * Decimal::new(i64::from(tenths), 3),
            Aim::PerHour(cents) => {
                outcome.margin + outcome.cost.labour() - outcome.cost.hours * Decimal::new(i64::from(cents), 2)
            }
        };
        prop_assert!(left >= -unit, "{left} below the aim {:?}: {outcome:?}", plan.rates.aim);
    }

    #[test]
    fn no_piece_is_sold_below_the_minimum(plan in plans()) {
        let mut plan = plan;
        plan.order.agreed.iter_mut().for_each(|price| *price = None);
        let quote = order(&plan.shop()).priced.quote;
        let minimum = Decimal::new(i64::from(plan.rates.minimum), 2);
        for line in quote.lines.iter().take(plan.designs.len()) {
            prop_assert!(line.unit_price >= minimum, "{:?}", line);
        }
    }

    #[test]
    fn the_costing_is_what_it_says(plan in plans()) {
        let order = order(&plan.shop());
        let (priced, outcome) = (&order.priced, &order.priced.outcome);
        prop_assert_eq!(outcome.income - outcome.fees - outcome.cost.total(), outcome.margin);
        let cord: Decimal = priced.needs.cords.iter().map(|bought| bought.charged).sum();
        let carried: Decimal = priced.items.iter().map(|item| item.cost.cost.cord).sum();
        prop_assert!((cord - carried).abs() < Decimal::new(1, 9), "cord charged {cord}, carried by the items {carried}");
        for bought in &priced.needs.cords {
            prop_assert!(bought.bought >= bought.cut && bought.charged <= bought.price);
        }
        prop_assert!(outcome.cost.total() >= Decimal::ZERO);
    }

    #[test]
    fn the_scheme_of_the_shop_is_the_scheme_of_the_quote(plan in plans()) {
        let shop = plan.shop().open().value;
        let scheme = shop.rates().unwrap().tax.scheme;
        let expected = TaxScheme::WORDS.iter().find(|(word, _)| *word == plan.rates.scheme).unwrap().1;
        prop_assert_eq!(scheme, expected);
    }
}

proptest! {
    // A case is one sum.
    #![proptest_config(cases(2000))]

    #[test]
    fn rounding_up_never_comes_out_below(amount in 0_i64..1_000_000_000, step in 0_i64..4000, code in 0_usize..3) {
        // A step need not be a whole number of the currency's coins: 1.08 in yen.
        let currency = Currency::from_code(["EUR", "JPY", "KWD"][code]).unwrap();
        let (amount, step) = (Decimal::new(amount, 4), Decimal::new(step, 3));
        let up = currency.round_up_to(amount, step);
        prop_assert!(up >= amount, "{} by {} is {} {}", amount, step, up, currency.code());
        prop_assert!(up <= amount + step + currency.smallest(), "{} by {} is {}", amount, step, up);
    }
}
