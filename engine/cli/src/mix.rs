//! `reeve mix`: the best use of a week's bench hours.

use clap::Args as ClapArgs;
use reeve_office::{Demand, Week, weekly_hours};
use reeve_pages::printed::Format;
use reeve_pages::results::MixResult;
use reeve_shop::arguments::{read_demand, read_hours};
use rust_decimal::Decimal;

use crate::compare::{Compared, Which, end};
use crate::failure::Failure;
use crate::forms::formats;
use crate::layout::PageLayout;

#[derive(Debug, ClapArgs)]
pub(crate) struct MixArgs {
    #[command(flatten)]
    which: Which,
    /// Bench hours in the week; those of shop.toml if not given
    #[arg(long, value_name = "HOURS")]
    hours: Option<String>,
    /// The most of a design, or of a size of it, that find a buyer in a week, in place of what its file says
    #[arg(long = "demand", value_name = "DESIGN[:SIZE]=PIECES")]
    demands: Vec<String>,
    /// What it is written as
    #[arg(long = "as", value_parser = formats(Format::PAGE), default_value = Format::Text.word(), value_name = "FORM")]
    format: Format,
}

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
