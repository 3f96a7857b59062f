//! From cost to price: the aim, fees grossed up, and what bounds the result.

use rust_decimal::Decimal;

use crate::money::{Currency, fraction};
use crate::rates::{Aim, Fee, FeeBase, PriceRule};

/// What a price must carry. All of it for the same number of pieces.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Burden {
    /// Everything it costs: material, labour, other direct costs, overhead.
    pub cost: Decimal,
    /// The labour within it.
    pub labour: Decimal,
    /// Bench hours within it.
    pub hours: Decimal,
    /// Fixed fees that fall on it.
    pub fixed_fees: Decimal,
    /// Fees that grow with the price, as a fraction of the net price.
    pub fee_rate: Decimal,
}

/// An aim that no price reaches: margin and fees take all of every price.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OutOfReach {
    /// Margin aimed at, in per cent of the price; zero for the other aims.
    pub margin: Decimal,
    /// Fees, in per cent of the net price.
    pub fees: Decimal,
}

/// The price without tax that reaches the aim, unrounded.
///
/// Margin: (cost + fixed fees) / (1 - margin - fee rate). Markup: (cost x (1 + markup) + fixed fees) / (1 - fee rate).
/// Earnings an hour: (cost - labour + hours x earnings + fixed fees) / (1 - fee rate).
///
/// # Errors
/// [`OutOfReach`] when the divisor is not above zero.
pub fn price_for(aim: Aim, burden: &Burden) -> Result<Decimal, OutOfReach> {
    let (carried, margin) = match aim {
        Aim::Margin(margin) => (burden.cost, margin),
        Aim::Markup(markup) => (burden.cost * (Decimal::ONE + fraction(markup)), Decimal::ZERO),
        Aim::PerHour(earnings) => (burden.cost - burden.labour + burden.hours * earnings, Decimal::ZERO),
    };
    let left = Decimal::ONE - fraction(margin) - burden.fee_rate;
    if left <= Decimal::ZERO {
        return Err(OutOfReach { margin, fees: burden.fee_rate * Decimal::ONE_HUNDRED });
    }
    Ok((carried + burden.fixed_fees) / left)
}

/// All fees that grow with the price, as a fraction of the net price taxed at so many per cent.
pub fn fee_rate(fees: &[Fee], tax_percent: Decimal) -> Decimal {
    let on_gross = Decimal::ONE + fraction(tax_percent);
    let rate = |fee: &Fee| match fee.on {
        FeeBase::Net => fraction(fee.rate),
        FeeBase::Gross => fraction(fee.rate) * on_gross,
    };
    fees.iter().map(rate).sum()
}

/// What the fees take of an order.
pub fn fees_on(fees: &[Fee], net: Decimal, gross: Decimal) -> Decimal {
    let taken = |fee: &Fee| match fee.on {
        FeeBase::Net => fraction(fee.rate) * net + fee.fixed,
        FeeBase::Gross => fraction(fee.rate) * gross + fee.fixed,
    };
    fees.iter().map(taken).sum()
}

/// How one piece's price came about, as shown: with tax under tax-inclusive prices.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PriceSteps {
    /// What the aim asks.
    pub aimed: Decimal,
    /// Per cent off for the quantity.
    pub quantity_break: Decimal,
    /// Whether the minimum lifted it.
    pub at_minimum: bool,
    /// The price of one piece, rounded up to the price step.
    pub unit: Decimal,
}

/// Takes an aimed price through quantity break, minimum and price step.
pub fn bounded(rule: &PriceRule, currency: Currency, aimed: Decimal, quantity: u32) -> PriceSteps {
    let quantity_break = rule.break_for(quantity);
    let after_break = aimed * (Decimal::ONE - fraction(quantity_break));
    let at_minimum = after_break < rule.minimum;
    let unit = currency.round_up_to(after_break.max(rule.minimum), rule.step);
    PriceSteps { aimed, quantity_break, at_minimum, unit }
}

/// The number of units whose contribution covers a fixed cost, rounded up; `None` if none ever does.
pub fn break_even(fixed: Decimal, price: Decimal, variable: Decimal) -> Option<Decimal> {
    let contribution = price - variable;
    (contribution > Decimal::ZERO).then(|| (fixed / contribution).ceil())
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::money::to_decimals;

    fn burden(cost: i64) -> Burden {
        Burden {
            cost: Decimal::from(cost),
            labour: Decimal::ZERO,
            hours: Decimal::ZERO,
            fixed_fees: Decimal::ZERO,
            fee_rate: Decimal::ZERO,
        }
    }

    fn percent(number: i64) -> Decimal {
        Decimal::from(number)
    }

    #[test]
    fn margins_of_the_textbook() {
        // Cost 75 at 25 % on the price: 100; cost 100 at 20 %: 125 (managerial-accounting textbooks).
        assert_eq!(price_for(Aim::Margin(percent(25)), &burden(75)), Ok(Decimal::from(100)));
        assert_eq!(price_for(Aim::Margin(percent(20)), &burden(100)), Ok(Decimal::from(125)));
        // Unit cost 16 at 20 % on sales: 20 (marketing textbooks' markup on sales).
        assert_eq!(price_for(Aim::Margin(percent(20)), &burden(16)), Ok(Decimal::from(20)));
        // Unit cost 62 plus 40 % on cost: 86.80 (cost-plus exercise, study.com answer).
        assert_eq!(price_for(Aim::Markup(percent(40)), &burden(62)), Ok(Decimal::new(8680, 2)));
    }

    #[test]
    fn break_even_of_the_textbook() {
        // 20,000 / (400 - 250) = 133.3: 134 units (managerial-accounting textbook).
        assert_eq!(break_even(Decimal::from(20_000), Decimal::from(400), Decimal::from(250)), Some(Decimal::from(134)));
        assert_eq!(break_even(Decimal::from(20_000), Decimal::from(250), Decimal::from(250)), None);
    }

    #[test]
    fn an_hour_earns_what_it_aims_at() {
        let burden = Burden {
            cost: Decimal::from(200),
            labour: Decimal::from(100),
            hours: Decimal::from(5),
            fixed_fees: Decimal::from(3),
            fee_rate: Decimal::new(1, 1),
        };
        let price = price_for(Aim::PerHour(Decimal::from(30)), &burden).unwrap();
        let earned = price - price * burden.fee_rate - burden.fixed_fees - (burden.cost - burden.labour);
        assert_eq!(to_decimals(earned / burden.hours, 10), Decimal::from(30));
    }

    #[test]
    fn an_aim_out_of_reach_is_refused() {
        let mut all = burden(75);
        all.fee_rate = Decimal::new(10, 2);
        assert_eq!(
            price_for(Aim::Margin(percent(90)), &all),
            Err(OutOfReach { margin: percent(90), fees: Decimal::from(10) })
        );
    }

    #[test]
    fn a_price_at_the_minimum_is_not_lifted() {
        let rule = PriceRule { minimum: Decimal::from(40), ..crate::sample::rates(crate::rates::TaxScheme::Net).price };
        let euro = Currency::from_code("EUR").unwrap();
        let lifted = [39, 40, 41].map(|aimed| bounded(&rule, euro, Decimal::from(aimed), 1).at_minimum);
        assert_eq!(lifted, [true, false, false]);
    }

    proptest! {
        #[test]
        fn no_price_is_below_its_aim(cost in 1_i64..10_000_000, margin in 0_i64..90, fee in 0_i64..9, fixed in 0_i64..500, step in 0_i64..500) {
            let currency = Currency::from_code("EUR").unwrap();
            let burden = Burden {
                cost: Decimal::new(cost, 2),
                labour: Decimal::ZERO,
                hours: Decimal::ZERO,
                fixed_fees: Decimal::new(fixed, 2),
                fee_rate: Decimal::new(fee, 2),
            };
            let aimed = price_for(Aim::Margin(percent(margin)), &burden).unwrap();
            let rule = PriceRule {
                aim: Aim::Margin(percent(margin)),
                minimum: Decimal::ZERO,
                step: Decimal::new(step, 2),
                confidence: None,
                rush: Decimal::ZERO,
                breaks: Vec::new(),
                itemised: false,
            };
            let price = bounded(&rule, currency, aimed, 1).unit;
            let left = price - price * burden.fee_rate - burden.fixed_fees - burden.cost;
            // A billionth of the price is the rounding of the division, not of the money.
            prop_assert!(left >= price * fraction(percent(margin)) - price * Decimal::new(1, 9));
        }
    }
}
