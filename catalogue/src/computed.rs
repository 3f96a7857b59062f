//! Knots that a library works out, and the door that its figures come in by.

use std::fmt::Debug;
use std::sync::Arc;

use reeve_measure::Length;

use crate::setting::{Setting, Taken};

/// Works out what the knots of one library take.
///
/// The catalogue runs no library: whoever opens a shop hands in something that does.
pub trait Compute: Debug + Send + Sync {
    /// What one knot takes. The same question gets the same answer.
    ///
    /// # Errors
    /// An [`Unknown`] when the knot can't be tied so, or the library can't tell.
    fn take(&self, asked: &Question<'_>) -> Result<Taken, Unknown>;
}

/// What a library is asked: only what its description allows.
#[derive(Debug, Clone, PartialEq)]
pub struct Question<'a> {
    /// The knot's name.
    pub knot: &'a str,
    /// Where and with what it is tied.
    pub setting: &'a Setting<'a>,
    /// The core as a rod of the same girth.
    pub core: Length,
    /// A value for every parameter of the knot, in their order.
    pub values: &'a [f64],
}

/// Why a library gave no figures.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unknown {
    /// The knot can't be tied so.
    Refused {
        /// The place among the knot's parameters of the one to change.
        parameter: Option<usize>,
        /// Why.
        words: String,
    },
    /// The library is at fault.
    Trouble {
        /// What happened.
        words: String,
        /// What the maker can do.
        remedy: String,
    },
}

/// The library that works a knot out.
#[derive(Debug, Clone)]
pub struct Computed {
    /// The word it is admitted by.
    pub library: String,
    by: Option<Arc<dyn Compute>>,
}

/// Two are alike when the same library works them out.
impl PartialEq for Computed {
    fn eq(&self, other: &Self) -> bool {
        self.library == other.library
    }
}

impl Computed {
    /// By a library of this name, which nobody has found yet.
    pub fn by(library: String) -> Self {
        Self { library, by: None }
    }

    pub(crate) fn found(&mut self, by: Arc<dyn Compute>) {
        self.by = Some(by);
    }

    /// What one knot takes, by the library's word.
    pub(crate) fn take(&self, asked: &Question<'_>) -> Result<Taken, Unknown> {
        match &self.by {
            Some(by) => by.take(asked),
            None => Err(Unknown::Trouble {
                words: "is not admitted to this shop".to_owned(),
                remedy: "`reeve knots admit` takes a library in".to_owned(),
            }),
        }
    }
}
