//! Lays pages out: by the built-in templates here, by a shop's own in a process that can be ended.

use std::cell::RefCell;
use std::sync::Arc;

use reeve_measure::Remedied;
use reeve_pages::{Form, OwnTemplate, Phrases, TemplateError, fill, load_page, used_by};
use reeve_reading::{Fault, SourceText};
use serde::Serialize;
use serde_json::Value;

use crate::failure::Failure;
use crate::page_process::{self, Ended};

/// What pages are laid out by.
pub(crate) enum PageLayout {
    /// The built-in templates, with a shop's own in the place of some.
    Templates { own: Vec<OwnTemplate>, phrases: Arc<Phrases> },
    /// Nothing: what would be laid out is noted.
    Notes(RefCell<Vec<Noted>>),
}

/// What a template would have been filled in with.
pub(crate) struct Noted {
    pub(crate) template: String,
    pub(crate) form: Form,
    pub(crate) view: Value,
}

impl PageLayout {
    /// By the built-in templates and a shop's own, with the phrases of a language.
    pub(crate) fn new(own: Vec<OwnTemplate>, phrases: &Arc<Phrases>) -> Self {
        Self::Templates { own, phrases: Arc::clone(phrases) }
    }

    /// By nothing: pages come out empty, and what they would be made of is noted.
    pub(crate) fn noting() -> Self {
        Self::Notes(RefCell::default())
    }

    /// What was noted.
    pub(crate) fn noted(self) -> Vec<Noted> {
        match self {
            Self::Templates { .. } => Vec::new(),
            Self::Notes(notes) => notes.into_inner(),
        }
    }

    /// Fills in a template. Where it uses none of the shop's own, those can't hinder it.
    pub(crate) fn fill(&self, template: &str, form: Form, view: &impl Serialize) -> Result<String, Failure> {
        let (own, phrases) = match self {
            Self::Templates { own, phrases } => (own, phrases),
            Self::Notes(notes) => {
                let view = serde_json::to_value(view).map_err(|error| Failure::System(error.to_string()))?;
                notes.borrow_mut().push(Noted { template: template.to_owned(), form, view });
                return Ok(String::new());
            }
        };
        let own = used(template, own);
        if own.is_empty() {
            return load_page(template, phrases)
                .and_then(|templates| fill(&templates, template, form, view))
                .map_err(|fault| template_fault(&fault, &[]).into());
        }
        page_process::fill(&own, phrases.language(), template, form, &[view]).map_err(|ended| match ended {
            Ended::Fault(fault) => template_fault(&fault, &own).into(),
            Ended::System(why) => Failure::System(why),
        })
    }
}

/// A shop's own templates that a template uses, itself among them.
pub(crate) fn used(template: &str, own: &[OwnTemplate]) -> Vec<OwnTemplate> {
    if own.is_empty() {
        return Vec::new();
    }
    let names = used_by(template, own);
    own.iter().filter(|file| names.contains(&file.name)).cloned().collect()
}

/// A template's fault at its place.
pub(crate) fn template_fault(fault: &TemplateError, own: &[OwnTemplate]) -> Fault {
    let help = fault.remedy();
    let title = if fault.spent { "takes too much" } else { "fails" };
    let file = own.iter().find(|file| file.path == fault.file);
    let place = file.zip(fault.line.zip(fault.column));
    let Some((file, (line, column))) = place else {
        return Fault::without_place(format!("the template {} {title}: {}", fault.file, fault.reason), help);
    };
    let start = byte_at(&file.text, line, column);
    let mut told = Fault::without_place(format!("this template {title}: {}", fault.reason), help);
    told.place =
        Some((SourceText::new(file.path.as_str(), file.text.as_str()), start..start + length_at(&file.text, start)));
    told
}

/// The byte of a line and a column, both counted from one.
pub(crate) fn byte_at(text: &str, line: usize, column: usize) -> usize {
    let before: usize = text.split_inclusive('\n').take(line - 1).map(str::len).sum();
    let rest = text.get(before..).unwrap_or_default();
    before + rest.char_indices().nth(column - 1).map_or(rest.len(), |(at, _)| at)
}

/// How much to point at: a whole tag, or a name.
fn length_at(text: &str, start: usize) -> usize {
    let rest = text.get(start..).unwrap_or_default();
    let close = if rest.starts_with("{{") { Some("}}") } else { rest.starts_with("{%").then_some("%}") };
    if let Some(close) = close {
        return rest.find(close).map_or(rest.len(), |at| at + close.len());
    }
    let name = rest.find(|c: char| !c.is_alphanumeric() && !"_.".contains(c)).unwrap_or(rest.len());
    name.max(rest.chars().next().map_or(0, char::len_utf8))
}
