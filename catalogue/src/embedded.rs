//! The knots that come with the program. Each is read when somebody first asks for it, once in a run.

use std::sync::{Arc, LazyLock, OnceLock};

use include_dir::{Dir, File, include_dir};
use reeve_reading::{Diagnostics, SourceText, read};

use crate::catalogue::{TIGHTENED, table_name};
use crate::knot::Knot;
use crate::reader::{knot_file, table_file};
use crate::table::TighteningTable;

pub(crate) static KNOTS: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/knots");

/// A knot of the program, in a file that is called like it.
///
/// That its file is without a fault, and its table of the path as it is now, a test sees to.
pub(crate) struct EmbeddedKnot {
    pub(crate) name: &'static str,
    file: &'static File<'static>,
    read: OnceLock<Option<Arc<Knot>>>,
}

/// All of them, in order of name.
static ALL: LazyLock<Vec<EmbeddedKnot>> = LazyLock::new(|| {
    let knot = |file: &'static File<'static>| {
        Some(EmbeddedKnot { name: file.path().file_stem()?.to_str()?, file, read: OnceLock::new() })
    };
    let mut all: Vec<_> = KNOTS.files().filter_map(knot).collect();
    all.sort_unstable_by_key(|knot| knot.name);
    all
});

/// All of them, in order of name.
pub(crate) fn all() -> &'static [EmbeddedKnot] {
    &ALL
}

/// One of them, by its name.
pub(crate) fn named(name: &str) -> Option<&'static Arc<Knot>> {
    let at = ALL.binary_search_by(|knot| knot.name.cmp(name)).ok()?;
    ALL[at].knot()
}

impl EmbeddedKnot {
    /// It, with its table and the knots that it is made of.
    pub(crate) fn knot(&self) -> Option<&Arc<Knot>> {
        self.read.get_or_init(|| self.read().map(Arc::new)).as_ref()
    }

    fn read(&self) -> Option<Knot> {
        let mut knot = read(&Diagnostics::new(text(self.file)?), knot_file)?;
        knot.table = if knot.is_drawn() { table(self.name).map(Arc::new) } else { None };
        knot.parts = knot.part_names().into_iter().filter_map(named).cloned().collect();
        Some(knot)
    }
}

fn table(knot: &str) -> Option<TighteningTable> {
    read(&Diagnostics::new(tightened(&table_name(knot))?), table_file)
}

/// The text of a file that tightening left.
pub(crate) fn tightened(name: &str) -> Option<Arc<SourceText>> {
    text(KNOTS.get_file(format!("{TIGHTENED}/{name}"))?)
}

fn text(file: &File<'_>) -> Option<Arc<SourceText>> {
    Some(SourceText::new(format!("catalogue/knots/{}", file.path().display()), file.contents_utf8()?))
}
