//! The words of `reeve compare`, `weigh` and `mix`.

use clap::Args as ClapArgs;
use reeve_pages::compare::column_words;
use reeve_pages::printed::Format;

use crate::forms::{ChoiceArgs, WhichShop, formats};

/// Which designs, and as what they are compared.
#[derive(Debug, ClapArgs)]
pub(crate) struct Which {
    /// The designs; all of the shop if none is named
    pub(crate) designs: Vec<String>,
    #[command(flatten)]
    pub(crate) chosen: ChoiceArgs,
    /// What buyers pay for a design, or for a size of it, in place of what its file says
    #[arg(long = "price", value_name = "DESIGN[:SIZE]=AMOUNT")]
    pub(crate) prices: Vec<String>,
    /// An input otherwise than in the shop, such as wage=+10%; may be given several times
    #[arg(long = "what-if", value_name = "INPUT=CHANGE", allow_hyphen_values = true)]
    pub(crate) changes: Vec<String>,
    #[command(flatten)]
    pub(crate) shop: WhichShop,
}

#[derive(Debug, ClapArgs)]
pub(crate) struct CompareArgs {
    #[command(flatten)]
    pub(crate) which: Which,
    /// The column it is sorted by, the greatest first
    #[arg(long, value_parser = clap::builder::PossibleValuesParser::new(column_words()), hide_possible_values = true, default_value = "per-hour", value_name = "COLUMN")]
    pub(crate) sort: String,
    /// Show only such rows: a column, a sign and a figure, such as hours<3; may be given several times
    #[arg(long = "where", value_name = "CONDITION")]
    pub(crate) conditions: Vec<String>,
    /// What it is written as
    #[arg(long = "as", value_parser = formats(Format::TABLE), default_value = Format::Text.word(), value_name = "FORM")]
    pub(crate) format: Format,
}

#[derive(Debug, ClapArgs)]
pub(crate) struct WeighArgs {
    /// The design: its file's name without .toml, or a path
    pub(crate) design: Option<String>,
    #[command(flatten)]
    pub(crate) chosen: ChoiceArgs,
    /// The price it is weighed at; what buyers pay if not given, or else the price by the shop's aim
    #[arg(long, value_name = "AMOUNT")]
    pub(crate) price: Option<String>,
    /// An input otherwise than in the shop, such as wage=+10%; may be given several times
    #[arg(long = "what-if", value_name = "INPUT=CHANGE", allow_hyphen_values = true)]
    pub(crate) changes: Vec<String>,
    /// The prices to tell what it comes to at, such as 80..140 or 80..140/2.50
    #[arg(long, value_name = "FROM..TO[/STEP]")]
    pub(crate) prices: Option<String>,
    #[command(flatten)]
    pub(crate) shop: WhichShop,
    /// What it is written as; csv holds the prices alone
    #[arg(long = "as", value_parser = formats(Format::TABLE), default_value = Format::Text.word(), value_name = "FORM")]
    pub(crate) format: Format,
}

#[derive(Debug, ClapArgs)]
pub(crate) struct MixArgs {
    #[command(flatten)]
    pub(crate) which: Which,
    /// Bench hours in the week; those of shop.toml if not given
    #[arg(long, value_name = "HOURS")]
    pub(crate) hours: Option<String>,
    /// The most of a design, or of a size of it, that find a buyer in a week, in place of what its file says
    #[arg(long = "demand", value_name = "DESIGN[:SIZE]=PIECES")]
    pub(crate) demands: Vec<String>,
    /// What it is written as
    #[arg(long = "as", value_parser = formats(Format::PAGE), default_value = Format::Text.word(), value_name = "FORM")]
    pub(crate) format: Format,
}
