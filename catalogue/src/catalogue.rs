//! All the knot types at hand: the embedded ones and a shop's own.

use std::collections::BTreeMap;
use std::sync::Arc;

use reeve_reading::{Diagnostics, Fault, SourceText, nearest, read};

use crate::computed::Compute;
use crate::embedded::{self, EmbeddedKnot};
use crate::knot::Knot;
use crate::path::Path;
use crate::reader::{knot_file, shape_file, table_file};
use crate::shape::Shape;
use crate::tying_error::TyingError;

/// Where what tightening left beside the knots is kept, under the folder of the knots.
pub const TIGHTENED: &str = "tightened";

/// The knot types at hand.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Catalogue {
    /// Whether the program's knots are among them.
    embedded: bool,
    /// Those that were added, in order of name. One of them stands in for the program's of the same name.
    added: Vec<Arc<Knot>>,
    /// The shapes that were added, not read before somebody wants to draw them.
    shapes: BTreeMap<String, Arc<SourceText>>,
}

impl Catalogue {
    /// The knots that come with the program. A file of theirs is read when its knot is first asked for.
    pub fn embedded() -> Self {
        Self { embedded: true, ..Self::default() }
    }

    /// Gives every knot that is made of others those knots, as they stand now. Call it when all have been added.
    ///
    /// A part must be a knot by itself: one that is made of others in turn is refused, as one that is not here.
    pub fn join_parts(&mut self) -> Vec<Fault> {
        self.renew_embedded();
        let mut faults = Vec::new();
        for at in 0..self.added.len() {
            let named = self.added[at].part_names();
            let found = |name: &&str| self.named(name).filter(|part| part.is_whole()).cloned();
            let parts: Vec<Arc<Knot>> = named.iter().filter_map(found).collect();
            let missing = named.iter().filter(|name| !parts.iter().any(|part| part.name == **name));
            faults.extend(missing.map(|part| self.missing_part(&self.added[at], part)));
            Arc::make_mut(&mut self.added[at]).parts = parts;
        }
        faults
    }

    /// Takes each of the program's knots that is made of one that was added among those added, to be given that one.
    fn renew_embedded(&mut self) {
        let stands_in = |knot: &Arc<Knot>| self.embedded && embedded::named(&knot.name).is_some();
        let replaced: Vec<String> =
            self.added.iter().filter(|knot| stands_in(knot)).map(|knot| knot.name.clone()).collect();
        if replaced.is_empty() {
            return;
        }
        let made_of = |knot: &&Arc<Knot>| knot.part_names().iter().any(|part| replaced.iter().any(|name| name == part));
        let renewed: Vec<Arc<Knot>> = self.iter().filter(made_of).cloned().collect();
        for knot in renewed {
            self.put(knot);
        }
    }

    fn missing_part(&self, knot: &Knot, part: &str) -> Fault {
        let missing = TyingError::MissingPart { knot: knot.title.clone(), part: part.to_owned() };
        let whole = self.iter().filter(|knot| knot.is_whole());
        let near = nearest(part, whole.map(|knot| knot.name.as_str()));
        let help =
            near.map_or("name a knot that is not made of others".to_owned(), |near| format!("did you mean `{near}`?"));
        Fault::without_place(missing.to_string(), help)
    }

    /// Hands the knots that a library works out what runs it. What is not here stays unknown until somebody asks.
    pub fn join_library(&mut self, library: &str, by: &Arc<dyn Compute>) {
        for knot in self.added.iter_mut().filter(|knot| knot.is_worked_out_by(library)) {
            if let Some(computed) = &mut Arc::make_mut(knot).computed {
                computed.found(Arc::clone(by));
            }
        }
    }

    /// Reads the table that tightening left for a knot, which must be here already.
    ///
    /// A table whose knot is not here, or whose path has changed since, is told and left aside.
    pub fn add_table(&mut self, source: &Arc<SourceText>) -> Vec<Fault> {
        let desk = Diagnostics::new(Arc::clone(source));
        let Some(table) = read(&desk, table_file) else { return desk.into_faults() };
        match self.named(&table.knot) {
            Some(knot) if knot.path.as_ref().is_some_and(|path| path.mark() == table.mark) => {
                let tightened = Knot { table: Some(Arc::new(table)), ..Knot::clone(knot) };
                self.put(Arc::new(tightened));
            }
            Some(knot) => desk.warn(
                0..0,
                format!("the path of `{}` has changed since it was tightened", knot.name),
                "",
                format!("`reeve knots tighten {}` does it anew", knot.name),
            ),
            None => desk.warn(0..0, format!("there is no knot `{}`", table.knot), "", "delete this file"),
        }
        desk.into_faults()
    }

    /// Adds the text of the shape that tightening left for a knot.
    pub fn add_shape(&mut self, knot: &str, source: Arc<SourceText>) {
        self.shapes.insert(knot.to_owned(), source);
    }

    /// The shape of a knot, tight, and the faults of the file it stands in; none where nobody has tightened it.
    pub fn shape(&self, knot: &Knot) -> (Option<Shape>, Vec<Fault>) {
        let own = self.shapes.get(&knot.name).cloned();
        let Some(source) = own.or_else(|| embedded::tightened(&shape_name(&knot.name))) else {
            return (None, Vec::new());
        };
        let desk = Diagnostics::new(source);
        let mark = knot.path.as_ref().map(Path::mark);
        let shape = read(&desk, shape_file).filter(|(of, _)| Some(of) == mark.as_ref());
        (shape.map(|(_, shape)| shape), desk.into_faults())
    }

    /// Reads a knot file and adds its knot; a knot of the same name is replaced by the later one.
    pub fn add(&mut self, source: &Arc<SourceText>) -> Vec<Fault> {
        let desk = Diagnostics::new(Arc::clone(source));
        if let Some(knot) = read(&desk, knot_file) {
            self.put(Arc::new(knot));
        }
        desk.into_faults()
    }

    /// Adds a knot that was read before; one of the same name is replaced.
    pub fn put(&mut self, knot: Arc<Knot>) {
        match self.place_of(&knot.name) {
            Ok(at) => self.added[at] = knot,
            Err(at) => self.added.insert(at, knot),
        }
    }

    fn place_of(&self, name: &str) -> Result<usize, usize> {
        self.added.binary_search_by(|knot| knot.name.as_str().cmp(name))
    }

    /// Finds a knot by its name.
    fn named(&self, name: &str) -> Option<&Arc<Knot>> {
        let added = self.place_of(name).ok().map(|at| &self.added[at]);
        added.or_else(|| embedded::named(name).filter(|_| self.embedded))
    }

    /// Finds a knot by its name or by another name the trade uses. Another name has every knot read.
    pub fn find(&self, word: &str) -> Option<&Arc<Knot>> {
        self.named(word).or_else(|| self.iter().find(|knot| knot.answers_to(word)))
    }

    /// The knot of the catalogue that answers to a word of a library's knot already, and that word. What the library works
    /// out itself does not count: it may be here from before.
    pub fn clash(&self, knot: &Knot, library: &str) -> Option<(String, &Arc<Knot>)> {
        let words = [&knot.name, &knot.title].into_iter().chain(&knot.also);
        let other =
            |word: &String| self.iter().find(|known| !known.is_worked_out_by(library) && known.answers_to(word));
        words.into_iter().find_map(|word| other(word).map(|known| (word.clone(), known)))
    }

    /// Every name and other name.
    pub fn words(&self) -> impl Iterator<Item = &str> + Clone {
        let knots: Vec<&Arc<Knot>> = self.iter().collect();
        knots
            .into_iter()
            .flat_map(|knot| std::iter::once(knot.name.as_str()).chain(knot.also.iter().map(String::as_str)))
    }

    /// Every knot, in order of name.
    pub fn iter(&self) -> impl Iterator<Item = &Arc<Knot>> {
        let own = self.embedded.then(embedded::all).unwrap_or_default().iter();
        let own = own.filter(|knot| self.place_of(knot.name).is_err()).filter_map(EmbeddedKnot::knot);
        let mut all: Vec<&Arc<Knot>> = self.added.iter().chain(own).collect();
        all.sort_by(|a, b| a.name.cmp(&b.name));
        all.into_iter()
    }

    /// The knots that are not the program's, or stand in for one of them, in order of name.
    pub fn added(&self) -> &[Arc<Knot>] {
        &self.added
    }
}

/// The name of the file that a knot's table is kept in.
pub fn table_name(knot: &str) -> String {
    format!("{knot}.toml")
}

/// The name of the file that a knot's shape is kept in.
pub fn shape_name(knot: &str) -> String {
    format!("{knot}.shape.toml")
}
