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
mod figures;
pub mod graph;
pub mod hand;
pub mod json;
pub mod knots;
pub mod library;
pub mod mix;
mod money;
pub mod quote;
mod render;
mod schemas;
mod templates;
pub mod tight;
pub mod weigh;
mod words;

use serde::Serialize;

pub use render::{TemplateFault, Templates};
pub use schemas::schemas;
pub use templates::{BUILT_IN, load};
pub use words::{WordFault, Words};

/// What a page is written as.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// One self-contained file.
    Html,
    /// 80 columns, for plain mail.
    Text,
}

/// Lays a view out by the template of its name.
///
/// Text has no trailing blanks and only the spaces and dashes of a keyboard.
///
/// # Errors
/// A [`TemplateFault`] with the file, line and reason.
pub fn lay_out(templates: &Templates, name: &str, form: Form, view: &impl Serialize) -> Result<String, TemplateFault> {
    match form {
        Form::Html => templates.render(&format!("{name}.html"), view),
        Form::Text => templates.render(&format!("{name}.txt"), view).map(|text| tidy(&money::plain(&text))),
    }
}

fn tidy(text: &str) -> String {
    let mut tidy = String::with_capacity(text.len());
    for line in text.trim_end().lines() {
        tidy.push_str(line.trim_end());
        tidy.push('\n');
    }
    tidy
}
