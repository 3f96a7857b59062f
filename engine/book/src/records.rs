//! What is entered in the book: enquiries, quotes with their figures, numbers.

use chrono::NaiveDate;
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

/// Who asks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BookedClient {
    /// Name.
    pub name: String,
    /// Lines of the address.
    pub address: Vec<String>,
}

/// What is asked, by whom and when.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Enquiry {
    /// The commission's file stem.
    pub reference: String,
    /// What it is about.
    pub title: String,
    /// Who asks.
    pub client: BookedClient,
    /// The day of the entry.
    pub day: NaiveDate,
    /// A remark.
    pub note: Option<String>,
}

/// What a quote comes to, in the shop's currency: what lists and summaries are made of.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct QuoteFigures {
    /// Three letters of ISO 4217.
    pub currency: String,
    /// Without tax.
    pub net: Decimal,
    /// With tax.
    pub gross: Decimal,
    /// Deposit on acceptance.
    pub deposit: Decimal,
    /// Paid when it was entered: before a first quote, and by the book when it is a revision.
    pub paid: Decimal,
    /// The shop's pace then.
    pub pace: Decimal,
    /// Bench hours expected.
    pub hours: Decimal,
    /// Bench hours that suffice with the confidence.
    pub sure_hours: Decimal,
    /// The confidence, in per cent.
    pub confidence: Decimal,
    /// Cord, fittings and what else is used up or bought in.
    pub material: Decimal,
    /// Cord alone.
    pub cord_cost: Decimal,
    /// Labour.
    pub labour: Decimal,
    /// Everything it costs.
    pub cost: Decimal,
    /// Fees of selling.
    pub fees: Decimal,
    /// What remains.
    pub margin: Decimal,
    /// Cord to be cut, by the cord's name, in metres.
    pub cord: Vec<(String, Decimal)>,
    /// What the catalogue expects of the knots of each step, all pieces together.
    #[serde(default)]
    pub steps: Vec<StepFigures>,
    /// What of the hours the maker's pace scales; nothing where that was not entered.
    #[serde(default)]
    pub paced: Option<PacedFigures>,
    /// Last day on which it can be accepted.
    pub valid_until: NaiveDate,
    /// Day on which it is promised.
    pub promised: Option<NaiveDate>,
    /// Day by which the client needs it.
    pub needed_by: Option<NaiveDate>,
}

/// What of a step the maker's pace scales, knots and handling, in minutes, allowances in, at the catalogue's pace.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct StepFigures {
    /// The step, as on the bench sheet.
    pub step: String,
    /// What does not depend on length.
    pub base: Decimal,
    /// What pulling takes.
    pub pull: Decimal,
    /// The only knot that it ties, if it is of one.
    #[serde(default)]
    pub knot: Option<String>,
    /// How doubtful the two are together, as a logarithm; zero where it is of one knot.
    #[serde(default)]
    pub doubt: Decimal,
}

/// The same of all the work, and what else there is to do.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PacedFigures {
    /// What does not depend on length.
    pub base: Decimal,
    /// What pulling takes.
    pub pull: Decimal,
    /// How doubtful the two are together, as a logarithm.
    pub doubt: Decimal,
    /// Minutes that the maker states herself: her pace does not scale them.
    pub stated: Decimal,
}

/// How numbers are written: `{year}` and `{running}`, the latter of three digits at least.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NumberPattern(pub String);

impl NumberPattern {
    /// If the shop says nothing.
    pub const USUAL: &str = "{year}-{running}";

    pub(crate) fn written(&self, year: i32, running: i64) -> String {
        self.0.replace("{year}", &year.to_string()).replace("{running}", &format!("{running:03}"))
    }
}

/// The number that a quote gets.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct QuoteNumber {
    /// As written on the page.
    pub number: String,
    /// 0 for the first quote; each further one supersedes the one before.
    pub revision: u32,
}

impl QuoteNumber {
    /// With the revision, if it is one: `2027-004`, `2027-004, revision 1`.
    pub fn words(&self) -> String {
        if self.revision == 0 { self.number.clone() } else { format!("{}, revision {}", self.number, self.revision) }
    }
}

/// The quote that a new one supersedes.
#[derive(Debug, Clone, PartialEq)]
pub struct Before {
    /// Its document, with marks.
    pub quote: String,
    /// What it came to.
    pub figures: QuoteFigures,
    /// Whether its last day has passed.
    pub lapsed: bool,
    /// What was paid so far, by the payments of the book that stand.
    pub paid: Decimal,
}

/// A quote as it is kept, with marks in place of what is personal.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Snapshot {
    /// What it comes to.
    pub figures: QuoteFigures,
    /// Pages and documents under the names of their files; `quote.json` and `costing.json` among them.
    pub pages: Vec<(String, String)>,
    /// What changed against the quote before, for the client.
    pub changes: Vec<String>,
    /// The same for the maker alone.
    pub maker_changes: Vec<String>,
}

/// What is kept of the program that made a quote.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Origin {
    /// The program's version.
    pub program: String,
    /// What tells its knots from others.
    pub catalogue: String,
}
