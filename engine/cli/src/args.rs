//! The command line.

use std::path::PathBuf;

use chrono::NaiveDate;
use clap::{Args as ClapArgs, Parser, Subcommand, ValueEnum};
use clap_complete::Shell;
use reeve_catalogue::USUAL_GIVE;
use reeve_catalogue::tighten::GIVES;

const EXIT_CODES: &str = "Example:
  reeve quote --demo

Exit codes:
  0  done
  1  the system refused: a file could not be written or read
  2  the input has faults, or the command line is wrong; nothing was written";

/// Prices commissions of knotted work from the knots themselves
#[derive(Debug, Parser)]
#[command(name = "reeve", version, after_help = EXIT_CODES, max_term_width = 80)]
pub(crate) struct Args {
    #[command(subcommand)]
    pub(crate) command: Command,
}

#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Write the starter shop into a new or empty folder
    #[command(after_help = "Example:\n  reeve begin my-shop")]
    Begin {
        /// The folder; made if it is not there
        dir: PathBuf,
    },
    /// Read a whole shop and report every fault of every file
    #[command(after_help = "Example:\n  reeve check --shop my-shop")]
    Check {
        #[command(flatten)]
        place: Place,
    },
    /// Work out what one piece of a design needs: cut list, knots, hours, put-ups
    #[command(after_help = "Example:\n  reeve takeoff curlew-hanger --shop my-shop")]
    Takeoff {
        /// The design: its file's name without .toml, or a path
        design: Option<String>,
        #[command(flatten)]
        place: Place,
        #[command(flatten)]
        form: Form,
    },
    /// Cost and price a commission, for the maker's eyes only
    #[command(after_help = "Example:\n  reeve costing reading-room --shop my-shop")]
    Costing {
        /// The commission: its file's name without .toml, or a path
        commission: Option<String>,
        #[command(flatten)]
        place: Place,
        #[command(flatten)]
        form: Form,
    },
    /// Write the bench sheet of a commission: what to buy, cut and tie
    #[command(after_help = "Example:\n  reeve bench reading-room --shop my-shop --as html > bench.html")]
    Bench {
        /// The commission: its file's name without .toml, or a path
        commission: Option<String>,
        #[command(flatten)]
        place: Place,
        /// What it is written as
        #[arg(long = "as", value_enum, default_value_t = PageForm::Text, value_name = "FORM")]
        form: PageForm,
    },
    /// Write the quote that the client signs
    #[command(after_help = "Examples:\n  reeve quote --demo\n  reeve quote reading-room --shop my-shop --out to-send")]
    Quote {
        /// The commission: its file's name without .toml, or a path
        commission: Option<String>,
        #[command(flatten)]
        place: Place,
        #[command(flatten)]
        form: Form,
        /// Also write quote, costing and bench sheet as HTML and text, and quote.json, into this folder
        #[arg(long, value_name = "DIR")]
        out: Option<PathBuf>,
    },
    /// Compare designs: what one of each costs, brings in and earns for an hour at the bench
    #[command(
        after_help = "Examples:\n  reeve compare --shop my-shop\n  reeve compare curlew-hanger bay-leaf --price curlew-hanger=110 --sort margin\n  reeve compare --as csv > designs.csv"
    )]
    Compare {
        /// The designs; all of the shop if none is named
        designs: Vec<String>,
        /// The column it is sorted by, the greatest first
        #[arg(long, value_parser = clap::builder::PossibleValuesParser::new(reeve_pages::compare::sort_words()), default_value = "per-hour", value_name = "COLUMN")]
        sort: String,
        /// What the market pays for a design, in place of the computed price
        #[arg(long = "price", value_name = "DESIGN=AMOUNT")]
        prices: Vec<String>,
        #[command(flatten)]
        shop: WhichShop,
        /// What it is written as
        #[arg(long = "as", value_enum, default_value_t = TableForm::Text, value_name = "FORM")]
        form: TableForm,
    },
    /// Look at the knots: list them, show one, chart them all, tighten one, check a file, add a sample
    #[command(subcommand, after_help = "Example:\n  reeve knots list")]
    Knots(Knots),
    /// Print the JSON Schema of a kind of file, for an editor to complete keys
    #[command(after_help = "Example:\n  reeve schema design > design.schema.json")]
    Schema {
        /// The kind of file
        #[arg(value_parser = ["shop", "cords", "fittings", "design", "commission", "knot", "samples", "quote-json", "takeoff-json", "costing-json", "compare-json", "knot-json", "tight-json", "hand-json"])]
        kind: String,
    },
    /// Print completions for a shell
    #[command(after_help = "Example:\n  reeve completions bash > ~/.local/share/bash-completion/completions/reeve")]
    Completions {
        /// The shell
        shell: Shell,
    },
    /// Print the manual page
    #[command(after_help = "Example:\n  reeve man > reeve.1")]
    Man,
}

#[derive(Debug, Subcommand)]
pub(crate) enum Knots {
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
        #[arg(long = "as", value_enum, default_value_t = DataForm::Text, value_name = "FORM")]
        form: DataForm,
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
        /// A parameter of the knot
        #[arg(long = "set", value_name = "NAME=NUMBER")]
        parameters: Vec<String>,
        #[command(flatten)]
        shop: WhichShop,
        /// What it is written as
        #[arg(long = "as", value_enum, default_value_t = KnotForm::Text, value_name = "FORM")]
        form: KnotForm,
        /// Write it into this file, not to standard output
        #[arg(long, value_name = "FILE")]
        out: Option<PathBuf>,
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
        /// Write it into this file, not to standard output
        #[arg(long, value_name = "FILE")]
        out: Option<PathBuf>,
    },
    /// Tighten a drawn knot: compute from its path what it takes and how far it rises
    #[command(
        after_help = "Examples:\n  reeve knots tighten square --core 4\n  reeve knots tighten square --give hard --as json\n  reeve knots tighten my-shop/knots/herring.toml --keep\n  reeve knots tighten --every --into catalogue/knots/tightened"
    )]
    Tighten(Tighten),
    /// Add a sample: a knot tied a few times for trial, measured, and perhaps timed
    #[command(
        override_usage = "reeve knots sample [OPTIONS] --cord <NAME> --knot <NAME> --tied <N>\n           --before <LENGTH> --after <LENGTH> --made <LENGTH>",
        after_help = "Example:\n  reeve knots sample --cord cotton-4-ecru --knot square --tied 10 \\\n    --before \"150 cm\" --after \"89 cm\" --made \"14.5 cm\" --minutes 3 --only-show"
    )]
    Sample(Box<Sample>),
    /// Show what the samples say: give of cords, factors of knots, pace and pull
    #[command(after_help = "Example:\n  reeve knots hand --shop my-shop")]
    Hand {
        #[command(flatten)]
        shop: WhichShop,
        /// What it is written as
        #[arg(long = "as", value_enum, default_value_t = DataForm::Text, value_name = "FORM")]
        form: DataForm,
    },
    /// Read a knot file and report every fault
    #[command(after_help = "Example:\n  reeve knots check my-shop/knots/collared-square.toml")]
    Check {
        /// The file
        file: PathBuf,
    },
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
    #[arg(long = "as", value_enum, default_value_t = DataForm::Text, value_name = "FORM")]
    pub(crate) form: DataForm,
}

/// Reads a give: a share, or the word for none.
fn give(word: &str) -> Result<f64, String> {
    let (least, most) = (GIVES[0], GIVES[GIVES.len() - 1]);
    let number = if word == "hard" { Some(0.0) } else { word.parse::<f64>().ok() };
    number
        .filter(|give| (least..=most).contains(give))
        .ok_or_else(|| format!("a give is a share from {least} to {most}, or `hard`"))
}

/// A sample.
#[derive(Debug, ClapArgs)]
pub(crate) struct Sample {
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
    /// A parameter of the knot
    #[arg(long = "set", value_name = "NAME=NUMBER")]
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
