//! The one door out: what a result can be printed as, and how it then reads.

use std::fmt;

use reeve_measure::Remedied;
use serde::Serialize;

use crate::Form;

/// What a result is printed as.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Format {
    /// A page of 80 columns.
    Text,
    /// One self-contained page.
    Html,
    /// Comma-separated values (RFC 4180).
    Csv,
    /// A drawing (SVG 1.1).
    Svg,
    /// A document for other programs (RFC 8259).
    Json,
}

/// A format: the word it is called by, and what it is.
type FormatRow = (Format, &'static str, &'static str);

/// Every format with its word and help.
const FORMATS: &[FormatRow] = &[
    (Format::Text, "text", "Plain text, 80 columns"),
    (Format::Html, "html", "One self-contained page"),
    (Format::Csv, "csv", "Comma-separated values, for a spreadsheet"),
    (Format::Svg, "svg", "The drawing alone"),
    (Format::Json, "json", "For other programs"),
];

impl Format {
    /// A page alone, or a document for other programs.
    pub const PAGE: &'static [Self] = &[Self::Text, Self::Html, Self::Json];
    /// A page that is a table as well.
    pub const TABLE: &'static [Self] = &[Self::Text, Self::Html, Self::Csv, Self::Json];
    /// Lines for the terminal.
    pub const LINES: &'static [Self] = &[Self::Text, Self::Json];
    /// A page with a drawing that can stand alone.
    pub const DRAWN: &'static [Self] = &[Self::Text, Self::Html, Self::Svg, Self::Json];

    fn row(self) -> &'static FormatRow {
        FORMATS.iter().find(|(format, ..)| *format == self).unwrap_or(&FORMATS[0])
    }

    /// The word it is called by.
    pub fn word(self) -> &'static str {
        self.row().1
    }

    /// What it is, for the command line's help.
    pub fn help(self) -> &'static str {
        self.row().2
    }

    /// What the name of a file in it ends with.
    pub fn ending(self) -> &'static str {
        if self == Self::Text { "txt" } else { self.word() }
    }

    /// The format of a word.
    pub fn of_word(word: &str) -> Option<Self> {
        FORMATS.iter().find(|(_, known, _)| *known == word).map(|(format, ..)| *format)
    }
}

/// A table (RFC 4180), part by part. Values that can't be written are an error, which those in memory never are.
pub type TableParts<'a> = Box<dyn Iterator<Item = Result<String, csv::Error>> + 'a>;

/// A result that can be printed. What a result can't be printed as is not in [`Printed::FORMATS`], and is never asked for.
pub trait Printed {
    /// The name of its page's template.
    const PAGE: &'static str;
    /// What it can be printed as, the usual one first.
    const FORMATS: &'static [Format];

    /// What its page is filled in with: finished words.
    fn view(&self, form: Form) -> impl Serialize;

    /// What other programs read.
    fn document(&self) -> impl Serialize;

    /// The rows of its table, under the words of their columns, in parts: a long one need not stand in memory as a whole.
    fn table(&self) -> TableParts<'_> {
        Box::new(std::iter::empty())
    }

    /// Its drawing.
    fn drawing(&self) -> String {
        String::new()
    }
}

/// What lays pages out by their templates.
pub trait LayOut {
    /// Why a page or a document can't be made.
    type Error: From<PrintError>;

    /// Lays out the page of a name.
    ///
    /// # Errors
    /// When the template fails.
    fn page(&self, name: &str, form: Form, view: &impl Serialize) -> Result<String, Self::Error>;
}

/// Why a document or table can't be written.
#[derive(Debug)]
pub enum PrintError {
    /// JSON.
    Document(serde_json::Error),
    /// Comma-separated values.
    Table(csv::Error),
}

impl fmt::Display for PrintError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Document(error) => write!(f, "the JSON could not be written: {error}"),
            Self::Table(error) => write!(f, "the table could not be written: {error}"),
        }
    }
}

impl std::error::Error for PrintError {}

impl Remedied for PrintError {
    /// Nothing: figures in memory can always be written, so this is the program's own fault.
    fn remedy(&self) -> String {
        String::new()
    }
}

/// Prints a result in a format.
///
/// # Errors
/// When its template fails, or a value can't be written.
pub fn printed<P: Printed, L: LayOut>(result: &P, format: Format, layout: &L) -> Result<String, L::Error> {
    match format {
        Format::Text => layout.page(P::PAGE, Form::Text, &result.view(Form::Text)),
        Format::Html => layout.page(P::PAGE, Form::Html, &result.view(Form::Html)),
        Format::Json => Ok(json(&result.document())?),
        Format::Csv => Ok(result.table().collect::<Result<String, _>>().map_err(PrintError::Table)?),
        Format::Svg => Ok(result.drawing()),
    }
}

/// JSON with an end of line.
///
/// # Errors
/// When a value has no JSON.
pub fn json(value: &impl Serialize) -> Result<String, PrintError> {
    serde_json::to_string_pretty(value).map(|text| text + "\n").map_err(PrintError::Document)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_format_has_a_word_of_its_own() {
        for (format, word, _) in FORMATS {
            assert_eq!((Format::of_word(word), format.word()), (Some(*format), *word));
        }
        assert_eq!(Format::of_word("pdf"), None);
    }
}
