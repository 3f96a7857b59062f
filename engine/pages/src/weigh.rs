//! One design weighed: what its price is made of, what moves the margin, how sure its hours are, when it pays back.

mod document;
mod page;

use reeve_costing::pricing::Outcome;
use reeve_costing::rates::Rates;
use reeve_costing::single_piece::{Effort, SinglePiece, cost_of_efforts, pieces_to_pay};
use reeve_costing::whatif::Effect;
use rust_decimal::Decimal;

pub use document::{AtPrice, MoveJson, SureHours, WEIGH_COLUMNS, WeighJson, weigh_json, weigh_rows};
pub(crate) use page::{KINDS, effect_bars, price_stack};
pub use page::{WeighPage, weigh_page};

/// A design, costed by itself, with all that its page tells.
#[derive(Debug)]
pub struct Weighed<'a> {
    /// The design's file stem.
    pub design: &'a str,
    /// As written on pages.
    pub title: &'a str,
    /// What one of it costs.
    pub alone: &'a SinglePiece,
    /// The price it is weighed at, as prices are shown.
    pub price: Decimal,
    /// Whether that is what buyers pay, and not the shop's aim.
    pub is_market: bool,
    /// The most that find a buyer in a week.
    pub weekly: Option<u32>,
    /// What each input moves when it alone is changed by [`crate::compare::TENTH`] per cent.
    pub effects: &'a [Effect],
    /// Confidences in per cent, each with the price that the aim asks for its hours.
    pub sure: &'a [(Decimal, Decimal)],
    /// Prices to tell what it comes to at.
    pub prices: &'a [Decimal],
    /// Work done once for it.
    pub efforts: &'a [Effort],
    /// What is otherwise than in the shop, in words.
    pub changes: &'a [String],
    /// The shop's rates, changed so.
    pub rates: &'a Rates,
}

impl Weighed<'_> {
    fn sold(&self) -> Outcome {
        self.alone.sold_at(self.price, self.rates)
    }

    /// The hours that suffice with a confidence.
    fn hours(&self, confidence: Decimal) -> Decimal {
        self.alone.cost.hours * self.alone.job.times_at(confidence)
    }

    /// What remains at the price weighed if it takes the hours that suffice with a confidence.
    fn margin_at(&self, confidence: Decimal) -> Decimal {
        let longer = self.alone.cost.taking(self.alone.job.times_at(confidence), self.rates);
        self.sold().margin - (longer.total() - self.alone.cost.total())
    }

    /// Pieces that pay for the work done once, where there was any.
    fn pays_back(&self) -> Option<(Decimal, Option<Decimal>)> {
        let efforts = cost_of_efforts(self.efforts, self.rates);
        (!self.efforts.is_empty()).then(|| (efforts.total(), pieces_to_pay(&efforts, &self.sold())))
    }
}
