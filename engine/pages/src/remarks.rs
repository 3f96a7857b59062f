//! What the maker should look at before she sends a quote, in words.

use reeve_costing::pricing::Remark;

use crate::phrases::say;
use crate::words::Words;

/// A remark as the maker reads it.
pub fn remark_words(remark: &Remark, words: &Words) -> String {
    match remark {
        Remark::PromisedTooLate { promised, needed } => {
            say!(words, "remark-promised-too-late", promised = words.date(*promised), needed = words.date(*needed))
        }
        Remark::BelowAim { aim, left } => {
            say!(words, "remark-below-aim", aim = words.exact_percent(*aim), left = words.exact_percent(*left))
        }
        Remark::Loses => say!(words, "remark-loses"),
        Remark::EarnsLess => say!(words, "remark-earns-less"),
        Remark::WeightEstimated { cord } => say!(words, "remark-weight-estimated", cord = cord.as_str()),
        Remark::MaybeCheaper { cord } => say!(words, "remark-maybe-cheaper", cord = cord.as_str()),
        Remark::Overpaid { amount } => say!(words, "remark-overpaid", amount = words.money(*amount)),
    }
}
