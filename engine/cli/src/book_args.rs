//! The command line of the order book.

use std::path::PathBuf;

use chrono::NaiveDate;
use clap::{Args as ClapArgs, Subcommand};
use reeve_book::State;

use reeve_pages::printed::Format;

use crate::forms::{WhichShop, Wished, formats};
use crate::papers::Papers;

/// Which shop's book, and as of which day.
#[derive(Debug, ClapArgs)]
pub(crate) struct At {
    /// The shop's folder, or one inside it; the current folder if not given
    #[arg(long = "shop", value_name = "DIR")]
    pub(crate) folder: Option<PathBuf>,
    /// Work as of this day; today if not given
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub(crate) on: Option<NaiveDate>,
}

impl At {
    pub(crate) fn shop(&self) -> WhichShop {
        WhichShop { folder: self.folder.clone(), demo: false }
    }
}

/// The same for what is entered.
#[derive(Debug, ClapArgs)]
pub(crate) struct Entering {
    #[command(flatten)]
    pub(crate) at: At,
    /// Allow a day after today
    #[arg(long)]
    pub(crate) ahead: bool,
}

fn state_words() -> clap::builder::PossibleValuesParser {
    clap::builder::PossibleValuesParser::new(State::WORDS.iter().map(|(word, _)| *word))
}

#[derive(Debug, Subcommand)]
pub(crate) enum BookCommand {
    /// Enter an enquiry that is not quoted yet
    #[command(after_help = "Example:\n  reeve book enquire thwickling --on 2025-11-24 --shop my-shop")]
    Enquire {
        /// The commission: its file's name without .toml, or a path
        commission: String,
        /// A remark
        #[arg(long)]
        note: Option<String>,
        #[command(flatten)]
        at: Entering,
    },
    /// Issue a quote: give it a number, or its own next revision, and keep it as it is
    #[command(after_help = "Example:\n  reeve book issue reading-room --on 2025-11-25 --out to-send --shop my-shop")]
    Issue {
        /// The commission: its file's name without .toml, or a path
        commission: String,
        #[command(flatten)]
        wished: Wished,
        /// A remark
        #[arg(long)]
        note: Option<String>,
        #[command(flatten)]
        papers: Papers,
        #[command(flatten)]
        at: Entering,
    },
    /// List the commissions and where they stand
    #[command(after_help = "Example:\n  reeve book list --stands quoted --shop my-shop")]
    List {
        /// Only those that stand so; may be given several times
        #[arg(long, value_parser = state_words(), value_name = "STATE")]
        stands: Vec<String>,
        /// Only those of a client whose name holds these letters
        #[arg(long, value_name = "LETTERS")]
        client: Option<String>,
        /// Only those first entered in this year
        #[arg(long)]
        year: Option<i32>,
        #[command(flatten)]
        at: At,
        /// What it is written as
        #[arg(long = "as", value_parser = formats(Format::TABLE), default_value = Format::Text.word(), value_name = "FORM")]
        format: Format,
    },
    /// Show one commission whole, or a page of a quote as it was issued
    #[command(
        after_help = "Examples:\n  reeve book show 2025-001 --shop my-shop\n  reeve book show 2025-001 --page quote.txt --shop my-shop"
    )]
    Show {
        /// Its number, or its file's name
        commission: String,
        /// A page or document as it was issued, such as quote.html or costing.json
        #[arg(long, value_name = "NAME")]
        page: Option<String>,
        /// Of this revision; the last if not given
        #[arg(long, requires = "page")]
        revision: Option<u32>,
        #[command(flatten)]
        at: At,
        /// What it is written as
        #[arg(long = "as", value_parser = formats(Format::PAGE), default_value = Format::Text.word(), value_name = "FORM")]
        format: Format,
    },
    /// Mark where a commission stands now
    #[command(
        after_help = "Examples:\n  reeve book mark 2025-001 accepted --on 2025-12-01 --shop my-shop\n  reeve book mark 2025-001 on-bench --on 2025-12-03 --shop my-shop\n  reeve book mark 2025-001 finished --on 2025-12-11 --shop my-shop"
    )]
    Mark {
        /// Its number, or its file's name
        commission: String,
        /// Where it stands now
        #[arg(value_parser = state_words())]
        state: String,
        /// A remark
        #[arg(long)]
        note: Option<String>,
        #[command(flatten)]
        at: Entering,
    },
    /// Enter a payment, or a refund with a minus sign
    #[command(after_help = "Example:\n  reeve book pay 2025-001 400.00 --note deposit --on 2025-12-02 --shop my-shop")]
    Pay {
        /// Its number, or its file's name
        commission: String,
        /// How much
        #[arg(allow_hyphen_values = true)]
        amount: String,
        /// A remark
        #[arg(long)]
        note: Option<String>,
        #[command(flatten)]
        at: Entering,
    },
    /// Show what is on the bench, what is next and when each will be done
    #[command(after_help = "Example:\n  reeve book queue --on 2025-12-03 --shop my-shop")]
    Queue {
        #[command(flatten)]
        at: At,
        /// What it is written as
        #[arg(long = "as", value_parser = formats(Format::PAGE), default_value = Format::Text.word(), value_name = "FORM")]
        format: Format,
    },
    /// Enter what it took: minutes, cord, what was bought
    #[command(
        after_help = "Examples:\n  reeve book log 2025-001 --minutes 4300 --step \"Six arms\" --shop my-shop\n  reeve book log 2025-001 --minutes 430 --step \"Six arms\" --shop my-shop\n  reeve book log 2025-001 --cord cotton-4-fern=42 --bought \"Felt pads=3.20\""
    )]
    Log {
        /// Its number, or its file's name
        commission: String,
        /// Minutes at the bench
        #[arg(long)]
        minutes: Option<f64>,
        /// At which step
        #[arg(long)]
        step: Option<String>,
        /// Cord that was cut, in metres; may be given several times
        #[arg(long, value_name = "CORD=METRES")]
        cord: Vec<String>,
        /// Something bought for it; may be given several times
        #[arg(long, value_name = "WHAT=AMOUNT")]
        bought: Vec<String>,
        /// A remark
        #[arg(long)]
        note: Option<String>,
        #[command(flatten)]
        at: Entering,
    },
    /// Undo an entry that was a slip: it stays in the book, struck out, and counts no more
    #[command(
        after_help = "`reeve book show` lists the entries with their numbers.\n\nExample:\n  reeve book undo 2025-001 6 --why \"430 minutes, not 4300\" --shop my-shop"
    )]
    Undo {
        /// Its number, or its file's name
        commission: String,
        /// The entry's number
        entry: u32,
        /// Why
        #[arg(long, value_name = "WORDS")]
        why: String,
        #[command(flatten)]
        at: Entering,
    },
    /// Start the timer for a commission
    #[command(after_help = "Example:\n  reeve book start 2025-001 --step \"Upper sennits\" --shop my-shop")]
    Start {
        /// Its number, or its file's name
        commission: String,
        /// At which step
        #[arg(long)]
        step: Option<String>,
        /// The shop's folder, or one inside it; the current folder if not given
        #[arg(long = "shop", value_name = "DIR")]
        folder: Option<PathBuf>,
    },
    /// Stop the timer and enter its minutes
    #[command(after_help = "Example:\n  reeve book stop --shop my-shop")]
    Stop {
        /// Drop the timer, and enter nothing
        #[arg(long)]
        drop: bool,
        /// A remark
        #[arg(long, conflicts_with = "drop")]
        note: Option<String>,
        /// The shop's folder, or one inside it; the current folder if not given
        #[arg(long = "shop", value_name = "DIR")]
        folder: Option<PathBuf>,
    },
    /// Show what was quoted beside what it really took, of one commission or of all that are finished
    #[command(
        after_help = "Examples:\n  reeve book took 2025-001 --shop my-shop\n  reeve book took --year 2025 --shop my-shop"
    )]
    Took {
        /// Its number, or its file's name; all finished ones together if not given
        commission: Option<String>,
        /// Those finished in this year
        #[arg(long, conflicts_with = "commission")]
        year: Option<i32>,
        #[command(flatten)]
        at: At,
        /// What it is written as
        #[arg(long = "as", value_parser = formats(Format::PAGE), default_value = Format::Text.word(), value_name = "FORM")]
        format: Format,
    },
    /// Learn pace and knots from what finished work really took
    #[command(after_help = "Example:\n  reeve book learn --shop my-shop")]
    Learn {
        /// Write it into knots/samples.toml
        #[arg(long)]
        yes: bool,
        #[command(flatten)]
        at: At,
    },
    /// Sum up months and years for the maker's books
    #[command(after_help = "Example:\n  reeve book summary --year 2025 --shop my-shop")]
    Summary {
        /// One year; all if not given
        #[arg(long)]
        year: Option<i32>,
        #[command(flatten)]
        at: At,
        /// What it is written as
        #[arg(long = "as", value_parser = formats(Format::TABLE), default_value = Format::Text.word(), value_name = "FORM")]
        format: Format,
    },
    /// Look through the whole book: file, rows, seals, numbers, states, sums, pages
    #[command(
        after_help = "Every entry has a seal that hangs on all before it; the last one is printed. Write it down outside the shop:\nwhoever rewrites the book whole can make new seals, and what you wrote down tells: with --seal 57-3f2a9c0b11d24e68\n(yours) it says whether the book still begins with all that was in it then.\n\nExample:\n  reeve book check --shop my-shop"
    )]
    Check {
        /// A seal that was written down: say whether the book still begins with all that was in it then
        #[arg(long, value_name = "SEAL")]
        seal: Option<String>,
        #[command(flatten)]
        at: At,
    },
    /// Write the whole book as JSON Lines
    #[command(after_help = "Example:\n  reeve book export book.jsonl")]
    Export {
        /// The file; it must not exist yet
        file: PathBuf,
        #[command(flatten)]
        at: At,
    },
    /// Read a book from JSON Lines into a shop that has none
    #[command(after_help = "Example:\n  reeve begin new-shop\n  reeve book import book.jsonl --shop new-shop")]
    Import {
        /// The file
        file: PathBuf,
        #[command(flatten)]
        at: At,
    },
    /// Write a copy of the book, whole and consistent, while others may go on writing
    #[command(after_help = "Example:\n  reeve book backup book-copy.sqlite --shop my-shop")]
    Backup {
        /// The file; it must not exist yet
        file: PathBuf,
        #[command(flatten)]
        at: At,
    },
    /// Blank a client's name and address, and what you typed of them, in the whole book; numbers and sums stay
    #[command(
        after_help = "Without --yes it says what it would blank, and what it found and can't decide: a name that is also a usual word,\nor another client's. Say --also WORD for each of these that is to be blanked too, then or later.\n\nSome records must be kept by law, for years: what and how long, your adviser knows. Files of the shop,\npages that were written out and backups are not touched.\n\nExamples:\n  reeve book forget \"Gannetry Row Reading Room\" --shop my-shop\n  reeve book forget 2025-001 --also gannetry --yes --shop my-shop"
    )]
    Forget {
        /// The name, as it stands in the commission, or the number of one of their commissions
        client: String,
        /// A word that is to be blanked as well; may be given several times
        #[arg(long, value_name = "WORD")]
        also: Vec<String>,
        /// Do it, and don't ask
        #[arg(long)]
        yes: bool,
        #[command(flatten)]
        at: At,
    },
}
