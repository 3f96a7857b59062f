//! Words on paper.
//!
//! Each page has a view: a plain structure of finished words, made from the sums, that its template lays
//! out. [`quote`] is made from [`reeve_costing::quote::Quote`] alone, which holds no cost; the
//! maker's pages are other views and other templates.

pub mod bench;
pub mod book;
pub mod chart;
pub mod compare;
pub mod costing;
pub mod drawing;
#[cfg(test)]
mod entries;
mod figures;
pub mod graph;
pub mod hand;
pub mod json;
pub mod knots;
pub mod library;
mod marks;
mod meter;
pub mod mix;
mod money;
mod phrases;
pub mod printed;
pub mod quote;
pub mod remarks;
mod render;
pub mod results;
mod schemas;
mod spreadsheet;
mod templates;
pub mod tight;
pub mod weigh;
mod words;

use reeve_reading::seen;
use serde::{Deserialize, Serialize};

pub use marks::tag_at;
pub use meter::{MOST_BYTES, MOST_STEPS, Watch};
pub use phrases::{ENGLISH, Phrases};
pub use render::{OwnTemplate, TemplateError, Templates, fault_at};
pub use schemas::SCHEMAS;
#[cfg(feature = "schemas")]
pub use schemas::schemas;
pub use templates::{BUILT_IN, load, load_page, used_by};
pub use words::{WordingError, Words};

/// What a page is written as.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Form {
    /// One self-contained file.
    Html,
    /// 80 columns, for plain mail.
    Text,
}

impl Form {
    /// The template of a page in this form.
    pub fn template(self, name: &str) -> String {
        match self {
            Self::Html => format!("{name}.html"),
            Self::Text => format!("{name}.txt"),
        }
    }
}

/// Words for a terminal: with the spaces and dashes of a keyboard alone.
pub fn plain(words: &str) -> String {
    money::plain(words)
}

/// Lays a view out by the template of its name.
///
/// Text has no trailing blanks and only the spaces and dashes of a keyboard. Characters that are not seen are shown by a sign.
///
/// # Errors
/// A [`TemplateError`] with the file, line and reason.
pub fn lay_out(templates: &Templates, name: &str, form: Form, view: &impl Serialize) -> Result<String, TemplateError> {
    fill(templates, &form.template(name), form, view)
}

/// Fills in a template, be it a page's or a part's.
///
/// # Errors
/// A [`TemplateError`] with the file, line and reason.
pub fn fill(templates: &Templates, template: &str, form: Form, view: &impl Serialize) -> Result<String, TemplateError> {
    let text = seen(&templates.render(template, view)?).into_owned();
    Ok(match form {
        Form::Html => text,
        Form::Text => tidy(&money::plain(&text)),
    })
}

fn tidy(text: &str) -> String {
    let mut tidy = String::with_capacity(text.len());
    for line in text.trim_end().lines() {
        tidy.push_str(line.trim_end());
        tidy.push('\n');
    }
    tidy
}
