//! What tightening left beside a knot, perhaps edited since: tables yield finite lengths, shapes are drawn in finite figures.

use reeve_catalogue::Catalogue;
use reeve_pages::drawing::{DrawOptions, draw_alone};
use reeve_reading::SourceText;

use super::{files, text};
use crate::{Target, holds as must};

pub(super) const TARGET: Target = Target { name: "tightened", holds, seeds, longest: 8_000, runs: 1_000 };

/// A knot with a path, a table and a shape.
const KNOT: &str = "overhand";

thread_local! {
    static CATALOGUE: Catalogue = Catalogue::embedded();
}

fn holds(bytes: &[u8]) {
    let Some(text) = text(bytes) else { return };
    let source = SourceText::new("knots/tightened/tried.toml", text);
    let mut catalogue = CATALOGUE.with(Clone::clone);
    must::of_faults(&catalogue.add_table(&source));
    for knot in catalogue.iter().filter(|knot| knot.table.is_some()) {
        must::of_knot(knot);
    }
    catalogue.add_shape(KNOT, source);
    let knot = catalogue.find(KNOT).unwrap();
    let (shape, faults) = catalogue.shape(knot);
    must::of_faults(&faults);
    if let Some(shape) = shape {
        must::figures_of(&draw_alone(&shape, &DrawOptions::of(knot), ""), "");
    }
}

/// Shapes are of one knot, the others are long.
fn seeds() -> Vec<Vec<u8>> {
    let tables = files("catalogue/knots/tightened", ".toml").into_iter().filter(|table| table.len() < TARGET.longest);
    let shape = super::file("catalogue/knots/tightened/overhand.shape.toml");
    tables.chain([shape]).collect()
}
