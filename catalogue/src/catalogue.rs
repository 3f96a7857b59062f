//! All the knot types at hand: the embedded ones and a shop's own.

use std::collections::BTreeMap;
use std::sync::{Arc, LazyLock};

use include_dir::{Dir, include_dir};
use reeve_reading::{Diagnostics, Fault, SourceText, nearest, read};

use crate::computed::Compute;
use crate::knot::Knot;
use crate::path::Path;
use crate::reader::{knot_file, shape_file, table_file};
use crate::shape::Shape;
use crate::tying_error::TyingError;

static KNOTS: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/knots");

/// Where what tightening left beside the knots is kept, under the folder of the knots.
pub const TIGHTENED: &str = "tightened";

/// The knot types at hand, in order of name.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Catalogue {
    knots: Vec<Arc<Knot>>,
    /// The shapes that were added, not read before somebody wants to draw them.
    shapes: BTreeMap<String, Arc<SourceText>>,
}

impl Catalogue {
    /// The knots that come with the program, with the faults of their files (none, as a test sees to).
    ///
    /// They are read once in a run, whoever asks for them again.
    pub fn embedded() -> (Self, Vec<Fault>) {
        static READ: LazyLock<(Catalogue, Vec<Fault>)> = LazyLock::new(Catalogue::read_embedded);
        READ.clone()
    }

    fn read_embedded() -> (Self, Vec<Fault>) {
        let mut catalogue = Self::default();
        let mut faults = Vec::new();
        for file in KNOTS.files() {
            let text = file.contents_utf8().unwrap_or_default();
            let path = format!("catalogue/knots/{}", file.path().display());
            faults.extend(catalogue.add(&SourceText::new(path, text)));
        }
        let drawn: Vec<String> = catalogue.iter().filter(|k| k.is_drawn()).map(|k| k.name.clone()).collect();
        for name in drawn {
            faults.extend(embedded(&table_name(&name)).map(|table| catalogue.add_table(&table)).unwrap_or_default());
        }
        faults.extend(catalogue.join_parts());
        (catalogue, faults)
    }

    /// Gives every knot that is made of others those knots, as they stand now. Call it when all have been added.
    ///
    /// A part must be a knot by itself: one that is made of others in turn is refused, as one that is not here.
    pub fn join_parts(&mut self) -> Vec<Fault> {
        let whole: Vec<Arc<Knot>> = self.iter().filter(|knot| knot.named_parts().next().is_none()).cloned().collect();
        let mut faults = Vec::new();
        for knot in self.knots.iter_mut().filter(|knot| knot.named_parts().next().is_some()) {
            let named: Vec<String> = knot.named_parts().map(|part| part.knot.clone()).collect();
            let knot = Arc::make_mut(knot);
            knot.parts = whole.iter().filter(|part| named.contains(&part.name)).cloned().collect();
            let missing = named.iter().filter(|name| !whole.iter().any(|part| part.name == **name));
            faults.extend(missing.map(|part| missing_part(knot, part, &whole)));
        }
        faults
    }

    /// Hands the knots that a library works out what runs it. What is not here stays unknown until somebody asks.
    pub fn join_library(&mut self, library: &str, by: &Arc<dyn Compute>) {
        for knot in self.knots.iter_mut().filter(|knot| knot.is_worked_out_by(library)) {
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
        let at = self.knots.binary_search_by(|knot| knot.name.cmp(&table.knot)).ok();
        let knot = at.map(|at| &mut self.knots[at]);
        match knot {
            Some(knot) if knot.path.as_ref().is_some_and(|path| path.mark() == table.mark) => {
                Arc::make_mut(knot).table = Some(Arc::new(table));
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
        let Some(source) = own.or_else(|| embedded(&shape_name(&knot.name))) else { return (None, Vec::new()) };
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
        match self.knots.binary_search_by(|other| other.name.cmp(&knot.name)) {
            Ok(at) => self.knots[at] = knot,
            Err(at) => self.knots.insert(at, knot),
        }
    }

    /// Finds a knot by its name or by another name the trade uses.
    pub fn find(&self, word: &str) -> Option<&Arc<Knot>> {
        let by_name = self.knots.iter().find(|knot| knot.name == word);
        by_name.or_else(|| self.knots.iter().find(|knot| knot.answers_to(word)))
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
        self.knots
            .iter()
            .flat_map(|knot| std::iter::once(knot.name.as_str()).chain(knot.also.iter().map(String::as_str)))
    }

    /// Every knot, in order of name.
    pub fn iter(&self) -> impl Iterator<Item = &Arc<Knot>> {
        self.knots.iter()
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

fn missing_part(knot: &Knot, part: &str, whole: &[Arc<Knot>]) -> Fault {
    let missing = TyingError::MissingPart { knot: knot.title.clone(), part: part.to_owned() };
    let near = nearest(part, whole.iter().map(|knot| knot.name.as_str()));
    let help =
        near.map_or("name a knot that is not made of others".to_owned(), |near| format!("did you mean `{near}`?"));
    Fault::without_place(missing.to_string(), help)
}

fn embedded(name: &str) -> Option<Arc<SourceText>> {
    let path = format!("{TIGHTENED}/{name}");
    let text = KNOTS.get_file(&path)?.contents_utf8()?;
    Some(SourceText::new(format!("catalogue/knots/{path}"), text))
}
