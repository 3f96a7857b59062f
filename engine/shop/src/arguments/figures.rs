//! Prices, measures, hours and shares, each from one word.

use reeve_measure::bound;
use reeve_reading::{Fault, Figure};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// What buyers pay for a design in a size.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct GivenPrice {
    /// The design.
    pub design: String,
    /// Its size; nothing for the design as it stands.
    pub size: Option<String>,
    /// The price, as prices are shown.
    pub price: Decimal,
}

/// Reads a measure such as `drop=120cm`.
///
/// # Errors
/// A fault when it is none.
pub fn read_measure(word: &str) -> Result<(String, Figure), Fault> {
    let found =
        word.split_once('=').and_then(|(name, figure)| Some((name.trim().to_owned(), Figure::parse(figure.trim())?)));
    let help = "for example --measure drop=120cm or --measure knots=16";
    found.ok_or_else(|| Fault::without_place(format!("`{word}` is not a measure"), help))
}

/// Reads a confidence such as `80%`, in per cent.
///
/// # Errors
/// A fault when it is none, or beyond what can be worked out.
pub fn read_confidence(word: &str) -> Result<Decimal, Fault> {
    let number = word.trim().trim_end_matches('%').trim().parse::<Decimal>().ok();
    let within = number.filter(|number| number.to_f64().is_some_and(|number| bound::CONFIDENCE.holds(number)));
    within.ok_or_else(|| {
        Fault::without_place(format!("`{word}` is not a confidence"), format!("{}, such as 80%", bound::CONFIDENCE))
    })
}

/// Reads a price, above nothing and up to a thousand million.
///
/// # Errors
/// A fault when it is none.
pub fn read_amount(word: &str) -> Result<Decimal, Fault> {
    price_of(word)
        .ok_or_else(|| Fault::without_place(format!("`{word}` is not a price"), "digits and a point, such as 110.00"))
}

/// The price in a word, above nothing; `None` where it holds none that could be meant.
fn price_of(word: &str) -> Option<Decimal> {
    let price = word.trim().parse::<Decimal>().ok();
    price.filter(|price| *price > Decimal::ZERO && *price <= Decimal::from(1_000_000_000) && price.scale() <= 5)
}

/// Reads what buyers pay: `DESIGN=AMOUNT`, or `DESIGN:SIZE=AMOUNT`.
///
/// # Errors
/// A fault when it is not so written.
pub fn read_given_price(word: &str) -> Result<GivenPrice, Fault> {
    let no = || Fault::without_place(format!("`{word}` is not a price"), "for example --price curlew-hanger=110.00");
    let (design, amount) = word.split_once('=').ok_or_else(no)?;
    let price = price_of(amount).ok_or_else(no)?;
    let (design, size) = which_size(design);
    Ok(GivenPrice { design, size, price })
}

/// A design and its size, from `DESIGN` or `DESIGN:SIZE`.
fn which_size(word: &str) -> (String, Option<String>) {
    match word.split_once(':') {
        Some((design, size)) => (design.trim().to_owned(), Some(size.trim().to_owned())),
        None => (word.trim().to_owned(), None),
    }
}

/// Reads how many find a buyer: a design, its size, and the pieces.
///
/// # Errors
/// A fault when it is not so written.
pub fn read_demand(word: &str) -> Result<(String, Option<String>, u32), Fault> {
    let no = || Fault::without_place(format!("`{word}` is not a demand"), "for example --demand curlew-hanger=3");
    let (name, pieces) = word.split_once('=').ok_or_else(no)?;
    let pieces = pieces.trim().parse::<u32>().ok().filter(|pieces| *pieces <= 10_000).ok_or_else(no)?;
    let (design, size) = which_size(name);
    Ok((design, size, pieces))
}

/// Reads the bench hours of a week, as many as `weekly-hours` may be.
///
/// # Errors
/// A fault when it is no such number.
pub fn read_hours(word: &str) -> Result<Decimal, Fault> {
    let number = word.trim().parse::<Decimal>().ok();
    let within = number.filter(|hours| hours.to_f64().is_some_and(|hours| bound::WEEKLY_HOURS.holds(hours)));
    within.ok_or_else(|| {
        let help = format!("{}, such as --hours 30", bound::WEEKLY_HOURS);
        Fault::without_place(format!("`{word}` is not a number of hours"), help)
    })
}

/// Reads a range of fewer than `most` prices: `FROM..TO`, or `FROM..TO/STEP`; without a step ten of them.
///
/// # Errors
/// A fault when it is not so written, runs downwards or holds too many.
pub fn read_prices(word: &str, most: u64) -> Result<Vec<Decimal>, Fault> {
    let no = |why: &str| Fault::without_place(format!("`{word}` {why}"), "for example --prices 80..140/5");
    let (from, rest) = word.split_once("..").ok_or_else(|| no("is not a range of prices"))?;
    let (to, step) = rest.split_once('/').unwrap_or((rest, ""));
    let (from, to) = (read_amount(from)?, read_amount(to)?);
    let step = if step.is_empty() { ((to - from) / Decimal::TEN).max(Decimal::new(1, 2)) } else { read_amount(step)? };
    if to < from {
        return Err(no("ends below where it begins"));
    }
    let steps = u64::try_from((to - from) / step).unwrap_or(u64::MAX);
    if steps >= most {
        return Err(no(&format!("holds more than {most} prices")));
    }
    Ok((0..=steps).map(|nth| from + step * Decimal::from(nth)).collect())
}
