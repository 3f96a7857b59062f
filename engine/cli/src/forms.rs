//! What several commands are told alike: which shop, as of which day, written as what.

use std::path::PathBuf;

use chrono::NaiveDate;
use clap::{Args as ClapArgs, ValueEnum};
use reeve_measure::bound;
use reeve_shop::{Choice, Wish};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use crate::failure::Failure;

/// Which shop.
#[derive(Debug, ClapArgs)]
pub(crate) struct WhichShop {
    /// The shop's folder, or one inside it; the current folder if not given
    #[arg(long = "shop", value_name = "DIR", conflicts_with = "demo")]
    pub(crate) folder: Option<PathBuf>,
    /// Use the starter shop inside the program
    #[arg(long)]
    pub(crate) demo: bool,
}

/// Which of a design.
#[derive(Debug, Default, ClapArgs)]
pub(crate) struct Chosen {
    /// One of the design's sizes
    #[arg(long, value_name = "SIZE")]
    size: Option<String>,
    /// A measure in place of the design's, such as drop=120cm; may be given several times
    #[arg(long = "measure", value_name = "NAME=FIGURE")]
    measures: Vec<String>,
}

impl Chosen {
    /// What was chosen.
    pub(crate) fn choice(&self) -> Result<Choice, Failure> {
        let measure = |word: &String| {
            let found = word.split_once('=').and_then(|(name, figure)| {
                Some((name.trim().to_owned(), reeve_reading::Figure::parse(figure.trim())?))
            });
            let help = "for example --measure drop=120cm or --measure knots=16";
            found.ok_or_else(|| Failure::input(format!("`{word}` is not a measure"), help))
        };
        let measures = self.measures.iter().map(measure).collect::<Result<_, _>>()?;
        Ok(Choice { size: self.size.clone(), measures })
    }
}

/// What is asked of a commission on top of what its file says.
#[derive(Debug, ClapArgs)]
pub(crate) struct Wished {
    #[command(flatten)]
    chosen: Chosen,
    /// How sure the hours of its prices are, such as 80%: four times in five they suffice
    #[arg(long, value_name = "PERCENT")]
    confidence: Option<String>,
}

impl Wished {
    /// What was asked.
    pub(crate) fn wish(&self) -> Result<Wish, Failure> {
        let confidence = self.confidence.as_deref().map(read_confidence).transpose()?;
        Ok(Wish { choice: self.chosen.choice()?, confidence })
    }
}

/// Reads a confidence such as `80%`, in per cent.
pub(crate) fn read_confidence(word: &str) -> Result<Decimal, Failure> {
    let number = word.trim().trim_end_matches('%').trim().parse::<Decimal>().ok();
    let within = number.filter(|number| number.to_f64().is_some_and(|number| bound::CONFIDENCE.holds(number)));
    within.ok_or_else(|| {
        Failure::input(format!("`{word}` is not a confidence"), format!("{}, such as 80%", bound::CONFIDENCE))
    })
}

/// The price in a word, above nothing; `None` where it holds none that could be meant.
pub(crate) fn price_of(word: &str) -> Option<Decimal> {
    let price = word.trim().parse::<Decimal>().ok();
    price.filter(|price| *price > Decimal::ZERO && *price <= Decimal::from(1_000_000_000) && price.scale() <= 5)
}

/// Holds that the store knows a cord.
pub(crate) fn check_cord(name: &str, known: &[&str]) -> Result<(), Failure> {
    if known.contains(&name) {
        return Ok(());
    }
    let near = reeve_reading::nearest(name, known.iter().copied()).map(|near| format!("did you mean `{near}`? "));
    let help = format!("{}cords of the store: {}", near.unwrap_or_default(), known.join(", "));
    Err(Failure::input(format!("no cord of the store is called `{name}`"), help))
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum TableForm {
    /// Plain text, 80 columns
    Text,
    /// One self-contained page
    Html,
    /// Comma-separated values, for a spreadsheet
    Csv,
    /// For other programs
    Json,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum DataForm {
    /// Plain text, 80 columns
    Text,
    /// For other programs
    Json,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum KnotForm {
    /// Plain text, 80 columns
    Text,
    /// One self-contained page, with the drawing
    Html,
    /// The drawing alone
    Svg,
    /// For other programs
    Json,
}

/// Which shop, and as of which day.
#[derive(Debug, ClapArgs)]
pub(crate) struct Place {
    #[command(flatten)]
    pub(crate) shop: WhichShop,
    /// Work as of this day; today if not given
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub(crate) on: Option<NaiveDate>,
}

/// What a page is written as.
#[derive(Debug, ClapArgs)]
pub(crate) struct Form {
    /// What it is written as
    #[arg(long = "as", value_enum, default_value_t = AnyForm::Text, value_name = "FORM")]
    pub(crate) form: AnyForm,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum AnyForm {
    /// Plain text, 80 columns
    Text,
    /// One self-contained page
    Html,
    /// For other programs
    Json,
}
