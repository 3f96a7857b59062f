//! What several commands are told alike: which shop, as of which day, written as what.

use std::path::PathBuf;

use chrono::NaiveDate;
use clap::Args as ClapArgs;
use clap::builder::{PossibleValue, PossibleValuesParser, TypedValueParser};
use reeve_pages::printed::Format;
use reeve_shop::arguments::{read_confidence, read_measure};
use reeve_shop::{Choice, Wish};

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

impl WhichShop {
    /// The starter shop inside the program.
    pub(crate) fn starter() -> Self {
        Self { folder: None, demo: true }
    }
}

/// Which of a design.
#[derive(Debug, Default, ClapArgs)]
pub(crate) struct ChoiceArgs {
    /// One of the design's sizes
    #[arg(long, value_name = "SIZE")]
    size: Option<String>,
    /// A measure in place of the design's, such as drop=120cm; may be given several times
    #[arg(long = "measure", value_name = "NAME=FIGURE")]
    measures: Vec<String>,
}

impl ChoiceArgs {
    /// What was chosen.
    pub(crate) fn choice(&self) -> Result<Choice, Failure> {
        let measures = self.measures.iter().map(|word| read_measure(word)).collect::<Result<_, _>>()?;
        Ok(Choice { size: self.size.clone(), measures })
    }
}

/// What is asked of a commission on top of what its file says.
#[derive(Debug, ClapArgs)]
pub(crate) struct Wished {
    #[command(flatten)]
    chosen: ChoiceArgs,
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

/// Which shop, and as of which day.
#[derive(Debug, ClapArgs)]
pub(crate) struct ShopArgs {
    #[command(flatten)]
    pub(crate) shop: WhichShop,
    /// Work as of this day; today if not given
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub(crate) on: Option<NaiveDate>,
}

/// What a page is written as.
#[derive(Debug, ClapArgs)]
pub(crate) struct AsPage {
    /// What it is written as
    #[arg(long = "as", value_parser = formats(Format::PAGE), default_value = Format::Text.word(), value_name = "FORM")]
    pub(crate) format: Format,
}

/// Reads one of the formats that a result can be printed as.
pub(crate) fn formats(of: &'static [Format]) -> impl TypedValueParser<Value = Format> {
    let values = of.iter().map(|format| PossibleValue::new(format.word()).help(format.help()));
    PossibleValuesParser::new(values).map(|word: String| Format::of_word(&word).unwrap_or(Format::Text))
}

/// The name given, or the demo's own.
pub(crate) fn chosen<'a>(
    given: Option<&'a str>,
    demo_shop: bool,
    demo: &'a str,
    what: &str,
    known: &[String],
) -> Result<&'a str, Failure> {
    match given {
        Some(word) => Ok(word),
        None if demo_shop => Ok(demo),
        None => Err(Failure::input(format!("which {what}?"), format!("name one of: {}", known.join(", ")))),
    }
}
