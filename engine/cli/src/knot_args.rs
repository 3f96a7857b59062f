//! The command line of `reeve knots`.

use std::path::PathBuf;

use chrono::NaiveDate;
use clap::{Args as ClapArgs, Subcommand};
use reeve_catalogue::{GIVE_RANGE, USUAL_GIVE};
use reeve_host::Guards;

use reeve_pages::printed::Format;

use crate::forms::{WhichShop, formats};
use crate::output::IntoFile;

#[derive(Debug, Subcommand)]
pub(crate) enum KnotsCommand {
    /// List the knots at hand, the shop's own with them
    #[command(after_help = "Examples:\n  reeve knots list\n  reeve knots list hitch --kind row")]
    List {
        /// Only those with this word in a name or other name
        word: Option<String>,
        /// Only those of this use
        #[arg(long, value_parser = ["sennit", "row", "mounting", "wrap", "single"])]
        kind: Option<String>,
        #[command(flatten)]
        shop: WhichShop,
        /// What it is written as
        #[arg(long = "as", value_parser = formats(Format::LINES), default_value = Format::Text.word(), value_name = "FORM")]
        format: Format,
    },
    /// Show one knot: what it takes, how far it rises, how long it lasts, and where each figure comes from
    #[command(
        after_help = "Examples:\n  reeve knots show square --cord 4 --core 2\n  reeve knots show 'cow hitch' --rod 22\n  reeve knots show gathering-wrap --core 24 --set turns=12\n  reeve knots show crown --as html --out crown.html"
    )]
    Show {
        /// The knot: its name or another name the trade uses
        knot: String,
        /// Thickness of the cord, in mm
        #[arg(long, value_name = "MM", default_value_t = 4.0)]
        cord: f64,
        /// Core legs in one column; as few as the knot allows, but two if it can, when not given
        #[arg(long, value_name = "N", conflicts_with = "rod")]
        core: Option<u32>,
        /// Thickness of a rod or ring it is tied on, in mm, in place of core legs
        #[arg(long, value_name = "MM")]
        rod: Option<f64>,
        /// Working legs in one knot, where that may differ
        #[arg(long, value_name = "N")]
        working: Option<u32>,
        /// How much the cord gives: from 0 to 0.2, or `hard`
        #[arg(long, value_name = "GIVE", default_value_t = USUAL_GIVE, value_parser = give)]
        give: f64,
        /// A parameter of the knot: a number, or a length such as 8cm
        #[arg(long = "set", value_name = "NAME=VALUE")]
        parameters: Vec<String>,
        #[command(flatten)]
        shop: WhichShop,
        /// What it is written as
        #[arg(long = "as", value_parser = formats(Format::DRAWN), default_value = Format::Text.word(), value_name = "FORM")]
        format: Format,
        #[command(flatten)]
        into: IntoFile,
    },
    /// Write the chart of the knots, to pin to a wall: a page with each one's drawing and what it takes
    #[command(
        after_help = "Examples:\n  reeve knots chart --out chart.html\n  reeve knots chart --kind sennit --cord 3 > sennits.html"
    )]
    Chart {
        /// Only those of this use
        #[arg(long, value_parser = ["sennit", "row", "mounting", "wrap", "single"])]
        kind: Option<String>,
        /// Thickness of the cord, in mm
        #[arg(long, value_name = "MM", default_value_t = 4.0)]
        cord: f64,
        #[command(flatten)]
        shop: WhichShop,
        #[command(flatten)]
        into: IntoFile,
    },
    /// Tighten a drawn knot: compute from its path what it takes and how far it rises
    #[command(
        after_help = "Examples:\n  reeve knots tighten square --core 4\n  reeve knots tighten square --give hard --as json\n  reeve knots tighten my-shop/knots/cross-lacing.toml --keep\n  reeve knots tighten --every --into catalogue/knots/tightened"
    )]
    Tighten(Tighten),
    /// Add a sample: a knot tied a few times for trial, measured, and perhaps timed
    #[command(
        override_usage = "reeve knots sample [OPTIONS] --cord <NAME> --knot <NAME> --tied <N>\n           --before <LENGTH> --after <LENGTH> --made <LENGTH>",
        after_help = "Example:\n  reeve knots sample --cord cotton-4-ecru --knot square --tied 10 \\\n    --before \"150 cm\" --after \"89 cm\" --made \"14.5 cm\" --minutes 3 --only-show"
    )]
    Sample(Box<SampleArgs>),
    /// Show what the samples say: give of cords, factors of knots, pace and pull
    #[command(after_help = "Example:\n  reeve knots hand --shop my-shop")]
    Hand {
        #[command(flatten)]
        shop: WhichShop,
        /// What it is written as
        #[arg(long = "as", value_parser = formats(Format::LINES), default_value = Format::Text.word(), value_name = "FORM")]
        format: Format,
    },
    /// Take a library of computed knots into a shop, after probing it and showing what it declares
    #[command(after_help = "Example:\n  reeve knots admit target/release/libwoven.so --shop my-shop --yes")]
    Admit {
        /// The library
        file: PathBuf,
        /// Don't ask
        #[arg(long)]
        yes: bool,
        #[command(flatten)]
        guards: WhichGuards,
        #[command(flatten)]
        shop: WhichShop,
    },
    /// Take a library out of a shop
    #[command(after_help = "Example:\n  reeve knots dismiss woven --shop my-shop")]
    Dismiss {
        /// The library's name
        library: String,
        #[command(flatten)]
        shop: WhichShop,
    },
    /// Hold a library of computed knots to what it declares, over the whole range of every knot; for its author
    #[command(after_help = "Example:\n  reeve knots probe target/release/libwoven.so")]
    Probe {
        /// The library
        file: PathBuf,
        #[command(flatten)]
        guards: WhichGuards,
    },
    /// Write a small library of computed knots to begin one's own from, in Rust and in C, into a new or empty folder
    #[command(after_help = "Example:\n  reeve knots begin my-knots")]
    Begin {
        /// The folder; made if it is not there
        dir: PathBuf,
    },
    /// Read a knot file and report every fault
    #[command(after_help = "Example:\n  reeve knots check my-shop/knots/collared-square.toml")]
    Check {
        /// The file
        file: PathBuf,
    },
}

/// Whether a library may run with nothing to hold it back.
#[derive(Debug, Clone, Copy, ClapArgs)]
pub(crate) struct WhichGuards {
    /// Let it run even where the system does not hold it back; there it can do whatever you can. Linux holds it back
    #[arg(long)]
    unguarded: bool,
}

impl WhichGuards {
    /// What was asked.
    pub(crate) fn needed(self) -> Guards {
        if self.unguarded { Guards::Waived } else { Guards::Needed }
    }
}

/// What to tighten, and how.
#[derive(Debug, ClapArgs)]
pub(crate) struct Tighten {
    /// The knot: its name, or its file
    #[arg(required_unless_present = "every")]
    pub(crate) knot: Option<String>,
    /// All knots at hand that are drawn
    #[arg(long, requires = "into", conflicts_with = "knot")]
    pub(crate) every: bool,
    /// Thickness of the cord, in mm
    #[arg(long, value_name = "MM", default_value_t = 4.0)]
    pub(crate) cord: f64,
    /// How much the cord gives: from 0 to 0.2, or `hard`
    #[arg(long, value_name = "GIVE", default_value_t = USUAL_GIVE, value_parser = give)]
    pub(crate) give: f64,
    /// Core legs in one column; as few as the knot allows, but two if it can, when not given
    #[arg(long, value_name = "N", conflicts_with = "rod")]
    pub(crate) core: Option<u32>,
    /// Thickness of a rod or ring it is tied on, in mm, in place of core legs
    #[arg(long, value_name = "MM")]
    pub(crate) rod: Option<f64>,
    /// Working legs in one knot, where that may differ
    #[arg(long, value_name = "N")]
    pub(crate) working: Option<u32>,
    /// Tighten it round every core it may have, and keep the table and the shape beside its file
    #[arg(long, conflicts_with_all = ["core", "rod", "working", "give", "cord"])]
    pub(crate) keep: bool,
    /// Keep them in this folder
    #[arg(long, value_name = "DIR", conflicts_with_all = ["core", "rod", "working", "give", "cord"])]
    pub(crate) into: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) shop: WhichShop,
    /// What it is written as
    #[arg(long = "as", value_parser = formats(Format::LINES), default_value = Format::Text.word(), value_name = "FORM")]
    pub(crate) format: Format,
}

/// Reads a give: a share, or the word for none.
fn give(word: &str) -> Result<f64, String> {
    let (least, most) = GIVE_RANGE;
    let number = if word == "hard" { Some(0.0) } else { word.parse::<f64>().ok() };
    number
        .filter(|give| (least..=most).contains(give))
        .ok_or_else(|| format!("a give is a share from {least} to {most}, or `hard`"))
}

/// A sample.
#[derive(Debug, ClapArgs)]
pub(crate) struct SampleArgs {
    /// The cord, by its name in the store; core legs are of the same cord
    #[arg(long, value_name = "NAME")]
    pub(crate) cord: String,
    /// The knot, by its name or another name the trade uses
    #[arg(long, value_name = "NAME")]
    pub(crate) knot: String,
    /// How many were tied, one after the other
    #[arg(long, value_name = "N")]
    pub(crate) tied: u32,
    /// Core legs; two, or as near to two as the knot allows, when not given
    #[arg(long, value_name = "N")]
    pub(crate) core: Option<u32>,
    /// Thickness of a round rod or ring it was tied on, in place of core legs
    #[arg(long, value_name = "LENGTH", conflicts_with = "core")]
    pub(crate) rod: Option<String>,
    /// Working legs in one knot, where that may differ
    #[arg(long, value_name = "N")]
    pub(crate) working: Option<u32>,
    /// A parameter of the knot: a number, or a length such as 8cm
    #[arg(long = "set", value_name = "NAME=VALUE")]
    pub(crate) parameters: Vec<String>,
    /// One working leg before the first knot, such as "150 cm"
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    pub(crate) before: String,
    /// What is left of the same leg below the last knot
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    pub(crate) after: String,
    /// The length made, from the top of the first knot to the foot of the last
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    pub(crate) made: String,
    /// Minutes that tying them took
    #[arg(long, value_name = "MINUTES", allow_hyphen_values = true)]
    pub(crate) minutes: Option<f64>,
    /// When they were tied
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub(crate) on: Option<NaiveDate>,
    /// A remark
    #[arg(long, value_name = "WORDS")]
    pub(crate) note: Option<String>,
    /// Show what it would change, and write nothing
    #[arg(long)]
    pub(crate) only_show: bool,
    #[command(flatten)]
    pub(crate) shop: WhichShop,
}
