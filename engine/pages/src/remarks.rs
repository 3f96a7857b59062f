//! What the maker should look at before she sends a quote, in words.

use reeve_costing::pricing::Remark;

use crate::words::Words;

/// A remark as the maker reads it.
pub fn remark_words(remark: &Remark, words: &Words) -> String {
    match remark {
        Remark::PromisedTooLate { promised, needed } => {
            format!("Promised for {}, but the client needs it by {}.", words.date(*promised), words.date(*needed))
        }
        Remark::BelowAim { aim, left } => format!(
            "The shop aims at {}, and {} remain after breaks, discount and prices given.",
            words.exact_percent(*aim),
            words.exact_percent(*left)
        ),
        Remark::Loses => "This commission loses money: it brings in less than it costs.".to_owned(),
        Remark::EarnsLess => "An hour at the bench earns less here than the wage.".to_owned(),
        Remark::WeightEstimated { cord } => {
            format!("The weight of {cord} is a rough estimate from fibre and thickness: weigh 10 m of it.")
        }
        Remark::MaybeCheaper { cord } => {
            format!("A cheaper way to buy {cord} may exist; the search was cut short.")
        }
        Remark::Overpaid { amount } => {
            format!("More was paid than this comes to: {} goes back to the client.", words.money(*amount))
        }
    }
}
