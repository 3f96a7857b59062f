//! A week's bench hours, shared out among designs.

use reeve_costing::mix::{Mix, Offer, Once, best_mix};
use reeve_costing::rates::Rates;
use reeve_reading::{Fault, nearest};
use rust_decimal::Decimal;

use crate::error::OfficeError;
use crate::row::DesignRow;

/// A week, shared out among designs.
#[derive(Debug)]
pub struct Week {
    /// The designs, those first whose hours contribute most.
    pub designs: Vec<WeekDesign>,
    /// What they come to together.
    pub mix: Mix,
    /// Bench hours in the week.
    pub hours: Decimal,
}

/// A design in a week.
#[derive(Debug)]
pub struct WeekDesign {
    /// One of it, made by itself.
    pub row: DesignRow,
    /// What one of it brings and takes.
    pub offer: Offer,
    /// How many to make.
    pub pieces: u32,
}

/// How many of a design, or of a size of it, find a buyer in a week.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Demand {
    /// The design's stem.
    pub design: String,
    /// Its size, where it is not as it stands.
    pub size: Option<String>,
    /// Pieces a week.
    pub pieces: u32,
}

impl Week {
    /// Shares the hours out so that they contribute most.
    ///
    /// # Errors
    /// When a demand is for what is not compared, or there are too many designs to choose from.
    pub fn of(mut rows: Vec<DesignRow>, demands: &[Demand], hours: Decimal) -> Result<Self, OfficeError> {
        for demand in demands {
            let is_its = |row: &&mut DesignRow| row.design == demand.design && row.size == demand.size;
            match rows.iter_mut().find(is_its) {
                Some(row) => row.weekly = Some(demand.pieces),
                None => return Err(not_compared(demand, &rows)),
            }
        }
        let key = |row: &DesignRow| std::cmp::Reverse(row.earned().contribution_per_hour);
        rows.sort_by(|a, b| key(a).cmp(&key(b)).then_with(|| (&a.design, &a.size).cmp(&(&b.design, &b.size))));
        let offers: Vec<Offer> = rows.iter().map(offer).collect();
        let mix = best_mix(&offers, hours).map_err(|error| Fault::of(&error))?;
        let each = rows.into_iter().zip(offers).zip(&mix.pieces);
        let designs = each.map(|((row, offer), pieces)| WeekDesign { row, offer, pieces: *pieces }).collect();
        Ok(Self { designs, mix, hours })
    }
}

/// What one of a design brings and takes.
fn offer(row: &DesignRow) -> Offer {
    let once = Once { hours: row.once_hours, cost: row.once_cost };
    // A row is of one by itself, with all that is done once.
    let contribution = row.earned().contribution + once.cost;
    Offer { contribution, hours: row.hours - once.hours, once, demand: row.weekly }
}

/// The bench hours of a week, as the shop says.
///
/// # Errors
/// When it does not say; the remedy is what can be done besides saying it in shop.toml.
pub fn weekly_hours(rates: &Rates, remedy: &str) -> Result<Decimal, OfficeError> {
    rates.weekly_hours.ok_or_else(|| {
        let help = format!("say {remedy}`weekly-hours` under [bench] in shop.toml");
        OfficeError::input("nobody has said how many bench hours a week has", help)
    })
}

/// A demand for what is not compared is a slip.
fn not_compared(demand: &Demand, rows: &[DesignRow]) -> OfficeError {
    let named =
        |design: &str, size: Option<&str>| size.map_or_else(|| design.to_owned(), |size| format!("{design}:{size}"));
    let known: Vec<String> = rows.iter().map(|row| named(&row.design, row.size.as_deref())).collect();
    let asked = named(&demand.design, demand.size.as_deref());
    let near = nearest(&asked, known.iter().map(String::as_str)).map(|near| format!("did you mean `{near}`? "));
    let help = format!("{}compared: {}", near.unwrap_or_default(), known.join(", "));
    OfficeError::input(format!("`{asked}` is not among the designs compared"), help)
}
