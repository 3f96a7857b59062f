//! Knots that a library works out, and the door that its figures come in by.

use std::fmt::Debug;
use std::sync::Arc;

use reeve_measure::Length;

use crate::knot::{Knot, Setting, Taken};
use crate::misfit::Misfit;

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

    /// What one knot takes.
    pub(crate) fn take(&self, knot: &Knot, setting: &Setting<'_>) -> Result<Taken, Misfit> {
        let trouble = |words: String, remedy: String| Misfit::Library {
            knot: knot.title.clone(),
            library: self.library.clone(),
            words,
            remedy,
        };
        let Some(by) = &self.by else {
            return Err(trouble(
                "is not admitted to this shop".to_owned(),
                "`reeve knots admit` takes a library in".to_owned(),
            ));
        };
        let values: Vec<f64> =
            knot.parameters.iter().map(|parameter| knot.parameter(&parameter.name, setting.parameters)).collect();
        let core = setting.cord * knot.core_thickness(setting);
        let asked = Question { knot: &knot.name, setting, core, values: &values };
        by.take(&asked).map_err(|unknown| match unknown {
            Unknown::Trouble { words, remedy } => trouble(words, remedy),
            Unknown::Refused { parameter, words } => Misfit::Refused {
                knot: knot.title.clone(),
                parameter: parameter.and_then(|at| knot.parameters.get(at)).map(|parameter| parameter.name.clone()),
                words,
            },
        })
    }
}
