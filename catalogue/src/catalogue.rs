//! All the knot types at hand: the embedded ones and a shop's own.

use std::sync::Arc;

use include_dir::{Dir, include_dir};
use reeve_reading::{Desk, Fault, Source, read};

use crate::knot::Knot;
use crate::reader::knot_file;

static KNOTS: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/knots");

/// The knot types at hand, in order of name.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Catalogue {
    knots: Vec<Arc<Knot>>,
}

impl Catalogue {
    /// The knots that come with the program, with the faults of their files (none, as a test sees to).
    pub fn embedded() -> (Self, Vec<Fault>) {
        let mut catalogue = Self::default();
        let mut faults = Vec::new();
        for file in KNOTS.files() {
            let text = file.contents_utf8().unwrap_or_default();
            let path = format!("catalogue/knots/{}", file.path().display());
            faults.extend(catalogue.add(&Source::new(path, text)));
        }
        (catalogue, faults)
    }

    /// Reads a knot file and adds its knot; a knot of the same name is replaced by the later one.
    pub fn add(&mut self, source: &Arc<Source>) -> Vec<Fault> {
        let desk = Desk::new(Arc::clone(source));
        if let Some(knot) = read(&desk, knot_file) {
            self.insert(knot);
        }
        desk.into_faults()
    }

    fn insert(&mut self, knot: Knot) {
        match self.knots.binary_search_by(|other| other.name.cmp(&knot.name)) {
            Ok(at) => self.knots[at] = Arc::new(knot),
            Err(at) => self.knots.insert(at, Arc::new(knot)),
        }
    }

    /// Finds a knot by its name or by another name the trade uses.
    pub fn find(&self, word: &str) -> Option<&Arc<Knot>> {
        let by_name = self.knots.iter().find(|knot| knot.name == word);
        by_name.or_else(|| self.knots.iter().find(|knot| knot.answers_to(word)))
    }

    /// Every name and other name.
    pub fn words(&self) -> impl Iterator<Item = &str> + Clone {
        self.knots
            .iter()
            .flat_map(|knot| std::iter::once(knot.name.as_str()).chain(knot.also.iter().map(String::as_str)))
    }

    /// Every knot, in order of name.
    pub fn iter(&self) -> impl Iterator<Item = &Arc<Knot>> {
        self.knots.iter()
    }
}
