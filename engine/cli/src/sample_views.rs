//! What every page is made of in a sample shop: the starter shop, as it is and with all that may be left out left out.
//!
//! The pages are made as for any shop, only that nothing lays them out.

use chrono::NaiveDate;
use reeve_costing::basis::Basis;
use reeve_costing::commission::Commission;
use reeve_costing::learning_curve::{LearningCurve, Model};
use reeve_costing::pricing::price_commission;
use reeve_costing::rates::{Rates, TaxScheme};
use reeve_office::TakenOff;
use reeve_pages::results::TakeOffResult;
use reeve_shop::{Choice, Order, Shop, Wish};

use crate::failure::Failure;
use crate::forms::WhichShop;
use crate::layout::{Noted, PageLayout};
use crate::opening::open;
use crate::sheets::PageMaker;
use crate::{book, compare, knots, mix, samples, weigh};

/// Every view, with the template that lays it out.
pub(crate) fn all() -> Result<Vec<Noted>, Failure> {
    let shop = open(&WhichShop::starter())?.value;
    let day = NaiveDate::from_ymd_opt(2027, 1, 15).unwrap_or_default();
    let orders: Vec<Order> =
        shop.commissions().value.iter().filter_map(|stem| shop.order(stem, &Wish::default(), day).value).collect();
    let basis = shop.basis().ok_or_else(|| Failure::System("the starter shop has no rates".to_owned()))?;
    let mut noted = Vec::new();
    for (rates, bare) in [(full(&basis.rates), false), (spare(&basis.rates), true)] {
        let desk = PageMaker::with(PageLayout::noting(), Basis { rates, hand: basis.hand.clone() })?;
        for order in &orders {
            commission_pages(&desk, &order.commission, bare, day)?;
        }
        design_pages(&desk, &shop)?;
        noted.extend(desk.into_layout().noted());
    }
    noted.extend(compare::sample(PageLayout::noting())?.noted());
    noted.extend(mix::sample(PageLayout::noting())?.noted());
    noted.extend(weigh::sample(PageLayout::noting())?.noted());
    noted.extend(knots::sample(PageLayout::noting())?.noted());
    noted.extend(samples::sample(PageLayout::noting())?.noted());
    if let Some(order) = orders.first() {
        noted.extend(book::sample(PageLayout::noting(), order, day)?.noted());
    }
    Ok(noted)
}

/// Rates with everything that may be said.
fn full(rates: &Rates) -> Rates {
    let mut full = rates.clone();
    full.tax.note = Some("Tax is shown for your records.".to_owned());
    full.bench.practice = LearningCurve { model: Model::Unit, rate: 0.9, steady: 20 };
    full
}

/// Rates with nothing that may be left out.
fn spare(rates: &Rates) -> Rates {
    let mut spare = rates.clone();
    spare.maker.tagline = None;
    spare.maker.address.clear();
    spare.maker.contact.clear();
    spare.tax.scheme = TaxScheme::NotRegistered;
    spare.tax.number = None;
    spare.tax.note = None;
    spare.price.itemised = false;
    spare.fees.clear();
    spare.terms.sentences.clear();
    spare.terms.care.clear();
    spare
}

/// The commission as it stands, or with nothing that may be left out.
fn commission_pages(desk: &PageMaker, commission: &Commission, bare: bool, day: NaiveDate) -> Result<(), Failure> {
    let mut commission = commission.clone();
    if bare {
        commission.client.address.clear();
        commission.promised = None;
        commission.note = None;
        commission.lines.clear();
        commission.discount = None;
        commission.allowances.clear();
        commission.charges.clear();
        commission.items.iter_mut().for_each(|item| item.tax = reeve_costing::pricing::own_tax(desk.rates()));
    }
    let priced = price_commission(&commission, desk.basis(), day);
    let mut priced = priced.map_err(|fault| Failure::System(format!("the sample can't be priced: {fault}")))?;
    if !bare {
        // As on a revision.
        priced.quote.changes = vec!["Another cord".to_owned()];
    }
    desk.papers(&Order { commission, priced }, (true, true)).map(|_| ())
}

fn design_pages(desk: &PageMaker, shop: &Shop) -> Result<(), Failure> {
    for stem in shop.designs().value.iter() {
        let Some(found) = shop.design(stem, &Choice::default()).value else { continue };
        let Ok(taken) = TakenOff::of(found) else { continue };
        desk.both_pages(&TakeOffResult { taken: &taken, by: desk.wording() })?;
    }
    Ok(())
}
