//! Where the faults of one file are laid down, and the places they stand at.

use std::cell::{Ref, RefCell};
use std::ops::{Deref, Range};
use std::sync::Arc;

use crate::arithmetic::Measures;
use crate::fault::{Fault, Severity, SourceText};
use crate::nearest::nearest;

/// A value with the bytes it stands at in its file.
#[derive(Debug, Clone, PartialEq)]
pub struct Placed<T> {
    /// The value.
    pub value: T,
    /// Its place in the file's text.
    pub span: Range<usize>,
}

impl<T> Deref for Placed<T> {
    type Target = T;
    fn deref(&self) -> &T {
        &self.value
    }
}

/// How many faults of one file are shown; of the others their number is told.
pub const FAULTS_SHOWN: usize = 20;

/// Where the faults of one file are laid down.
#[derive(Debug)]
pub struct Diagnostics {
    source: Arc<SourceText>,
    faults: RefCell<Vec<Fault>>,
    measures: RefCell<Measures>,
}

impl Diagnostics {
    /// An empty desk for one text.
    pub fn new(source: Arc<SourceText>) -> Self {
        Self { source, faults: RefCell::default(), measures: RefCell::default() }
    }

    /// The text whose faults these are.
    pub(crate) fn source(&self) -> &SourceText {
        &self.source
    }

    /// What the sums of this file may name.
    pub(crate) fn measures(&self) -> Ref<'_, Measures> {
        self.measures.borrow()
    }

    /// Names what the sums of this file may name.
    pub(crate) fn set_measures(&self, measures: Measures) {
        self.measures.replace(measures);
    }

    /// How many faults have been laid down so far.
    pub(crate) fn count(&self) -> usize {
        self.faults.borrow().len()
    }

    /// Lays down an error at a place.
    pub fn refuse(
        &self,
        span: Range<usize>,
        title: impl Into<String>,
        label: impl Into<String>,
        help: impl Into<String>,
    ) {
        self.lay(Severity::Error, span, title.into(), label.into(), help.into());
    }

    /// Lays down a warning at a place.
    pub fn warn(
        &self,
        span: Range<usize>,
        title: impl Into<String>,
        label: impl Into<String>,
        help: impl Into<String>,
    ) {
        self.lay(Severity::Warning, span, title.into(), label.into(), help.into());
    }

    /// Refuses a word that names nothing, suggesting the nearest of the words that would.
    pub fn refuse_unknown<'c>(
        &self,
        name: &Placed<String>,
        what: &str,
        known: impl IntoIterator<Item = &'c str> + Clone,
    ) {
        self.refuse_unknown_word(name, what, known.clone(), known);
    }

    /// The same where a thing answers to more words than are worth listing.
    pub fn refuse_unknown_word<'c>(
        &self,
        name: &Placed<String>,
        what: &str,
        words: impl IntoIterator<Item = &'c str>,
        known: impl IntoIterator<Item = &'c str>,
    ) {
        let title = format!("no {what} is called `{}`", name.value);
        // Nobody reads on so far, and to look for the nearest of many words each time would take minutes.
        if self.count() > FAULTS_SHOWN {
            return self.refuse(name.span.clone(), title, "", "");
        }
        let near = nearest(name, words);
        let label = near.map(|near| format!("did you mean `{near}`?")).unwrap_or_default();
        let mut all: Vec<&str> = known.into_iter().collect();
        all.sort_unstable();
        let help = match all.len() {
            0 => format!("no {what} is known here yet"),
            // With the word at hand, a long list only hides it.
            13.. if near.is_some() => String::new(),
            _ => format!("known: {}", all.join(", ")),
        };
        self.refuse(name.span.clone(), title, label, help);
    }

    /// Whether no error has been laid down so far.
    pub fn is_sound(&self) -> bool {
        !self.faults.borrow().iter().any(Fault::is_error)
    }

    /// The faults laid down so far.
    pub fn into_faults(self) -> Vec<Fault> {
        self.faults.into_inner()
    }

    fn lay(&self, severity: Severity, span: Range<usize>, title: String, label: String, help: String) {
        let place = Some((Arc::clone(&self.source), span));
        self.faults.borrow_mut().push(Fault { severity, title, label, help, place });
    }
}
