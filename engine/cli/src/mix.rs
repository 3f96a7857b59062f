//! `reeve mix`: the best use of a week's bench hours.

use clap::Args as ClapArgs;
use reeve_office::{Demand, Week, weekly_hours};
use reeve_pages::Form;
use reeve_pages::mix::mix_json;
use reeve_shop::arguments::{read_demand, read_hours};
use rust_decimal::Decimal;

use crate::compare::{Compared, Which, end};
use crate::failure::Failure;
use crate::forms::AnyForm;
use crate::layout::PageLayout;
use crate::output::print;
use crate::sheets::json;

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
    #[arg(long = "as", value_enum, default_value_t = AnyForm::Text, value_name = "FORM")]
    form: AnyForm,
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
    print(&page(&compared, &Week::of(found.rows, &demands, hours)?, asked.form)?)?;
    end(found.left_out)
}

/// A week with two designs of the starter shop: with hours for them, and with hardly any.
pub(crate) fn sample(mut layout: PageLayout) -> Result<PageLayout, Failure> {
    for (changes, hours) in [(&[][..], 30), (&["wage=+10%".to_owned()], 1)] {
        let compared = Compared::sample(layout, changes)?;
        let week = Week::of(compared.rows()?.rows, &[], Decimal::from(hours))?;
        for form in [AnyForm::Text, AnyForm::Html] {
            page(&compared, &week, form)?;
        }
        layout = compared.desk.into_layout();
    }
    Ok(layout)
}

fn page(Compared { desk, what_if, .. }: &Compared, week: &Week, form: AnyForm) -> Result<String, Failure> {
    match form {
        AnyForm::Text => desk.mix(week, what_if, Form::Text),
        AnyForm::Html => desk.mix(week, what_if, Form::Html),
        AnyForm::Json => json(&mix_json(week, desk.rates())),
    }
}
