//! The command line.

use std::path::PathBuf;

use clap::{Parser, Subcommand};

use crate::book_args::BookCommand;
use crate::design_args::{CompareArgs, MixArgs, WeighArgs};
use crate::forms::{AsPage, ChoiceArgs, ShopArgs, Wished};
use crate::knot_args::KnotsCommand;
use crate::papers::Papers;
use crate::reference::SHELLS;

const EXIT_CODES: &str = "Example:
  reeve quote --demo

Exit codes:
  0  done
  1  the system refused: a file could not be written or read
  2  the input has faults, or the command line is wrong; nothing was written
     (compare prints the designs without faults all the same)";

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
        place: ShopArgs,
    },
    /// Work out what one piece of a design needs: cut list, knots, hours, put-ups
    #[command(
        after_help = "Examples:\n  reeve takeoff curlew-hanger --shop my-shop\n  reeve takeoff curlew-hanger --measure length=120cm --demo"
    )]
    Takeoff {
        /// The design: its file's name without .toml, or a path
        design: Option<String>,
        #[command(flatten)]
        chosen: ChoiceArgs,
        #[command(flatten)]
        place: ShopArgs,
        #[command(flatten)]
        form: AsPage,
    },
    /// Cost and price a commission, for the maker's eyes only
    #[command(after_help = "Example:\n  reeve costing reading-room --shop my-shop")]
    Costing {
        /// The commission: its file's name without .toml, or a path
        commission: Option<String>,
        #[command(flatten)]
        wished: Wished,
        #[command(flatten)]
        place: ShopArgs,
        #[command(flatten)]
        form: AsPage,
    },
    /// Write the bench sheet of a commission: what to buy, cut and tie
    #[command(after_help = "Example:\n  reeve bench reading-room --shop my-shop --as html > bench.html")]
    Bench {
        /// The commission: its file's name without .toml, or a path
        commission: Option<String>,
        #[command(flatten)]
        wished: Wished,
        #[command(flatten)]
        place: ShopArgs,
        #[command(flatten)]
        form: AsPage,
    },
    /// Write the quote that the client signs
    #[command(
        after_help = "Examples:\n  reeve quote --demo\n  reeve quote reading-room --shop my-shop --out to-send --own my-own"
    )]
    Quote {
        /// The commission: its file's name without .toml, or a path
        commission: Option<String>,
        #[command(flatten)]
        wished: Wished,
        #[command(flatten)]
        place: ShopArgs,
        #[command(flatten)]
        form: AsPage,
        #[command(flatten)]
        papers: Papers,
    },
    /// Compare designs and their sizes: what one of each costs, brings in and earns for an hour at the bench
    #[command(
        after_help = "Examples:\n  reeve compare --shop my-shop\n  reeve compare curlew-hanger bay-leaf --price bay-leaf=32 --sort margin\n  reeve compare --where \"hours<3\" --what-if wage=+10% --as csv > designs.csv"
    )]
    Compare(CompareArgs),
    /// Weigh one design: what its price is made of, what moves its margin, how sure its hours are
    #[command(
        after_help = "Examples:\n  reeve weigh curlew-hanger --shop my-shop\n  reeve weigh curlew-hanger --size long --what-if wage=+10% --what-if pace=-5%\n  reeve weigh --demo --prices 80..140/0.50 --as csv > prices.csv"
    )]
    Weigh(WeighArgs),
    /// Find the best mix of designs for a week's bench hours, and what one more hour would bring
    #[command(
        after_help = "Examples:\n  reeve mix --shop my-shop\n  reeve mix curlew-hanger bay-leaf --hours 12 --demand bay-leaf=8"
    )]
    Mix(MixArgs),
    /// Keep the order book: from enquiry to what it really took
    #[command(subcommand, after_help = "Example:\n  reeve book issue --help")]
    Book(BookCommand),
    /// Look at the knots: list them, show one, chart them all, tighten one, check a file, add a sample
    #[command(subcommand, after_help = "Example:\n  reeve knots list")]
    Knots(KnotsCommand),
    /// Print the JSON Schema of a kind of file, for an editor to complete keys
    #[command(after_help = "Example:\n  reeve schema design > design.schema.json")]
    Schema {
        /// The kind of file
        #[arg(value_parser = ["shop", "cords", "fittings", "design", "commission", "knot", "samples", "quote-json", "takeoff-json", "bench-json", "costing-json", "compare-json", "weigh-json", "mix-json", "book-list-json", "book-show-json", "book-queue-json", "book-took-json", "book-summary-json", "knot-json", "tight-json", "hand-json"])]
        kind: String,
    },
    /// Print completions for a shell
    #[command(after_help = "Example:\n  reeve completions bash > ~/.local/share/bash-completion/completions/reeve")]
    Completions {
        /// The shell
        #[arg(value_parser = SHELLS.map(|(shell, ..)| shell))]
        shell: String,
    },
    /// Print the manual page
    #[command(after_help = "Example:\n  reeve man > reeve.1")]
    Man,
}
