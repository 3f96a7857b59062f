//! `reeve mix`: the best use of a week's bench hours.

use reeve_office::{Demand, Week, weekly_hours};
use reeve_pages::results::MixResult;
use reeve_shop::arguments::{read_demand, read_hours};
use rust_decimal::Decimal;

use crate::compare::{Compared, end};
use crate::design_args::MixArgs;
use crate::failure::Failure;
use crate::layout::PageLayout;

pub(crate) fn run(asked: &MixArgs) -> Result<(), Failure> {
    let demands = asked.demands.iter().map(|word| read_demand(word)).collect::<Result<Vec<_>, _>>()?;
    let demand = |(design, size, pieces)| Demand { design, size, pieces };
    let demands: Vec<Demand> = demands.into_iter().map(demand).collect();
    let compared = Compared::open(&asked.which)?;
    let hours = match &asked.hours {
        Some(word) => read_hours(word)?,
        None => weekly_hours(compared.desk.rates(), "--hours 30, or ")?,
    };
    let found = compared.rows()?;
    let week = Week::of(found.rows, &demands, hours)?;
    compared.desk.emit(&result(&compared, &week), asked.format)?;
    end(found.left_out)
}

/// A week with two designs of the starter shop: with hours for them, and with hardly any.
pub(crate) fn sample(mut layout: PageLayout) -> Result<PageLayout, Failure> {
    for (changes, hours) in [(&[][..], 30), (&["wage=+10%".to_owned()], 1)] {
        let compared = Compared::sample(layout, changes)?;
        let week = Week::of(compared.rows()?.rows, &[], Decimal::from(hours))?;
        compared.desk.both_pages(&result(&compared, &week))?;
        layout = compared.desk.into_layout();
    }
    Ok(layout)
}

fn result<'a>(compared: &'a Compared, week: &'a Week) -> MixResult<'a> {
    MixResult { week, changes: &compared.what_if, by: compared.desk.wording() }
}
