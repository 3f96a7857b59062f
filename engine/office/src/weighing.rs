//! One design weighed: what its price is made of, what moves the margin, how sure its hours are, when it pays back.

use std::sync::Arc;

use reeve_costing::basis::Basis;
use reeve_costing::money::to_decimals;
use reeve_costing::pricing::{Outcome, PriceError};
use reeve_costing::rates::{PriceRule, Rates};
use reeve_costing::single_piece::{SinglePiece, cost_of_efforts, pieces_to_pay};
use reeve_costing::takeoff::TakeOff;
use reeve_costing::whatif::{Change, Changed, Effect, effects};
use reeve_shop::FoundDesign;
use rust_decimal::Decimal;

use crate::comparing::{TENTH, unpriced};
use crate::error::OfficeError;

/// Confidences told, in per cent.
const CONFIDENCES: [i64; 4] = [50, 80, 90, 95];

/// A design on the scales: costed by itself, with the inputs that are changed.
#[derive(Debug)]
pub struct Scales {
    /// The design.
    pub found: FoundDesign,
    /// The piece, what making it takes, and the rates, changed so.
    pub changed: Changed,
    /// What one of it costs.
    pub alone: SinglePiece,
}

/// A design weighed at a price.
#[derive(Debug)]
pub struct Weighed<'a> {
    /// The design.
    pub scales: &'a Scales,
    /// The price it is weighed at, as prices are shown.
    pub price: Decimal,
    /// Whether that is what buyers pay, and not the shop's aim.
    pub is_market: bool,
    /// What each input moves when it alone is changed by [`TENTH`] per cent.
    pub effects: Vec<Effect>,
    /// How sure the hours are.
    pub sure: Vec<SurePrice>,
}

/// The hours that cover the job at a confidence, and what they ask and leave.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SurePrice {
    /// In per cent.
    pub confidence: Decimal,
    /// Bench hours.
    pub hours: Decimal,
    /// The price that the shop's aim asks for them.
    pub price: Decimal,
    /// What remains at the price weighed if it takes them all.
    pub margin: Decimal,
}

impl Scales {
    /// Puts a design on the scales.
    ///
    /// # Errors
    /// When it can't be priced so.
    pub fn of(found: FoundDesign, basis: &Basis, changes: &[Change]) -> Result<Self, OfficeError> {
        let no = |fault| unpriced(&found.piece.title, &fault);
        let changed = Changed::of(&found.piece, &found.take_off, basis, changes).map_err(no)?;
        let alone = SinglePiece::of(&changed.made, &changed.basis).map_err(no)?;
        Ok(Self { found, changed, alone })
    }

    /// Weighs it at a price; at what buyers pay if none is given, or else at the price by the shop's aim.
    ///
    /// # Errors
    /// When it can't be priced with an input changed.
    pub fn weigh(&self, price: Option<Decimal>) -> Result<Weighed<'_>, OfficeError> {
        let no = |fault| unpriced(&self.found.piece.title, &fault);
        let market = price.or(self.found.market.price);
        let price = market.unwrap_or(self.alone.price.unit);
        let Changed { piece, made, basis } = &self.changed;
        let effects = effects(piece, made, basis, price, TENTH).map_err(no)?;
        let sure = CONFIDENCES.iter().map(|percent| self.sure_price(Decimal::from(*percent), price));
        let sure = sure.collect::<Result<_, _>>().map_err(no)?;
        Ok(Weighed { scales: self, price, is_market: market.is_some(), effects, sure })
    }

    fn sure_price(&self, confidence: Decimal, weighed: Decimal) -> Result<SurePrice, PriceError> {
        let Changed { made, basis, .. } = &self.changed;
        let times = self.alone.job.needs.times_at(confidence);
        let longer = self.alone.cost.taking(times, &basis.rates);
        Ok(SurePrice {
            confidence,
            hours: self.alone.cost.hours * times,
            price: price_at(made, basis, confidence)?,
            margin: self.sold_at(weighed).margin - (longer.total() - self.alone.cost.total()),
        })
    }

    /// What it comes to at a price.
    pub fn sold_at(&self, price: Decimal) -> Outcome {
        self.alone.sold_at(price, &self.changed.basis.rates)
    }
}

impl Weighed<'_> {
    /// What it comes to at the price weighed.
    pub fn sold(&self) -> Outcome {
        self.scales.sold_at(self.price)
    }

    /// What work done once for it cost, and how many pieces pay for that; no number if none ever do. `None` where there was
    /// no such work.
    pub fn pays_back(&self) -> Option<(Decimal, Option<Decimal>)> {
        let efforts = &self.scales.found.efforts;
        let cost = cost_of_efforts(efforts, &self.scales.changed.basis.rates);
        (!efforts.is_empty()).then(|| (cost.total(), pieces_to_pay(&cost, &self.sold())))
    }

    /// The lowest price, the price weighed, and three others at even distances to either side, in whole units.
    pub fn prices_around(&self) -> Vec<Decimal> {
        let step = to_decimals(self.price / Decimal::from(20), 0).max(Decimal::ONE);
        let mut all: Vec<Decimal> = (-3_i64..=3).map(|nth| self.price + step * Decimal::from(nth)).collect();
        all.push(self.scales.alone.lowest);
        all.retain(|price| *price > Decimal::ZERO);
        all.sort_unstable();
        all.dedup();
        all
    }
}

/// The price that the aim asks for the hours that cover the job at a confidence.
fn price_at(made: &Arc<TakeOff>, basis: &Basis, confidence: Decimal) -> Result<Decimal, PriceError> {
    let price = PriceRule { confidence: Some(confidence), ..basis.rates.price.clone() };
    let basis = Basis { rates: Rates { price, ..basis.rates.clone() }, hand: basis.hand.clone() };
    Ok(SinglePiece::of(made, &basis)?.price.unit)
}
