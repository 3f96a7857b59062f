//! What several commands are told alike: which shop, as of which day, written as what.

use std::path::PathBuf;

use chrono::NaiveDate;
use clap::{Args as ClapArgs, ValueEnum};

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

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum PageForm {
    /// Plain text, 80 columns
    Text,
    /// One self-contained page
    Html,
}
