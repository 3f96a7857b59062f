//! `reeve mix`: the best use of a week's bench hours.

use clap::Args as ClapArgs;
use reeve_costing::mix::{Offer, best_mix};
use reeve_pages::Form;
use reeve_pages::compare::{DesignRow, sort_rows};
use reeve_pages::mix::{Week, mix_json, offer};
use reeve_reading::nearest;
use reeve_shop::arguments::{read_demand, read_hours};
use rust_decimal::Decimal;

use crate::compare::{Compared, Which};
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
    let compared = Compared::open(&asked.which)?;
    let hours = hours(asked.hours.as_deref(), &compared)?;
    let mut found = compared.rows(|_| true)?;
    for (design, size, pieces) in demands {
        let row = found.rows.iter_mut().find(|row| row.design == design && row.size == size);
        match row {
            Some(row) => row.weekly = Some(pieces),
            None => return Err(not_compared(&design, size.as_deref(), &found.rows)),
        }
    }
    sort_rows(&mut found.rows, "contribution");
    print(&page(&compared, &found.rows, hours, asked.form)?)?;
    found.end()
}

/// A week with two designs of the starter shop: with hours for them, and with hardly any.
pub(crate) fn sample(mut layout: PageLayout) -> Result<PageLayout, Failure> {
    for (changes, hours) in [(&[][..], 30), (&["wage=+10%".to_owned()], 1)] {
        let compared = Compared::sample(layout, changes)?;
        let found = compared.rows(|_| true)?;
        for form in [AnyForm::Text, AnyForm::Html] {
            page(&compared, &found.rows, Decimal::from(hours), form)?;
        }
        layout = compared.desk.into_layout();
    }
    Ok(layout)
}

/// A demand for what is not compared is a slip.
fn not_compared(design: &str, size: Option<&str>, rows: &[DesignRow]) -> Failure {
    let named =
        |row: &DesignRow| row.size.as_ref().map_or_else(|| row.design.clone(), |size| format!("{}:{size}", row.design));
    let known: Vec<String> = rows.iter().map(named).collect();
    let asked = size.map_or_else(|| design.to_owned(), |size| format!("{design}:{size}"));
    let near = nearest(&asked, known.iter().map(String::as_str)).map(|near| format!("did you mean `{near}`? "));
    let help = format!("{}compared: {}", near.unwrap_or_default(), known.join(", "));
    Failure::input(format!("`{asked}` is not among the designs compared"), help)
}

fn page(compared: &Compared, rows: &[DesignRow], hours: Decimal, form: AnyForm) -> Result<String, Failure> {
    let offers: Vec<Offer> = rows.iter().map(offer).collect();
    let mix = best_mix(&offers, hours)
        .map_err(|fault| Failure::input(fault.to_string(), "name the designs to choose from"))?;
    let week = Week { rows, offers: &offers, mix: &mix, hours, changes: &compared.what_if };
    match form {
        AnyForm::Text => compared.desk.mix(&week, Form::Text),
        AnyForm::Html => compared.desk.mix(&week, Form::Html),
        AnyForm::Json => json(&mix_json(&week, compared.desk.rates())),
    }
}

fn hours(given: Option<&str>, compared: &Compared) -> Result<Decimal, Failure> {
    let Some(word) = given else {
        return compared.desk.rates().weekly_hours.ok_or_else(|| {
            let help = "say --hours 30, or `weekly-hours` under [bench] in shop.toml";
            Failure::input("nobody has said how many bench hours a week has", help)
        });
    };
    Ok(read_hours(word)?)
}
