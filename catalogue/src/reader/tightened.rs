//! What tightening leaves beside a knot, as text and back: its table and its shape.

use std::fmt::Write as _;

use reeve_measure::bound;
use reeve_reading::{Count, List, Name, Number, Placed, Table as Typed, Text};

use crate::shape::{Point, Repeat, Rod, Shape, Strand, Then};
use crate::table::{ByGive, TighteningRow, TighteningTable};
use crate::tighten::GIVES;

const FIGURES: List<Number> = List(Number(bound::MOVE));
const POINTS: List<List<Number>> = List(List(Number(bound::PATH_POINT)));

/// Reads a table that [`table_text`] wrote.
pub(crate) fn table_file(t: &mut Typed<'_>) -> Option<TighteningTable> {
    let knot = t.need("knot", &Name, "The knot's name.");
    let mark = t.need("mark", &Text, "The mark of the path that was tightened.");
    let gives = t.need("gives", &FIGURES, "The gives of the columns, from hard to soft.");
    let rows = t.tables("row", "What it takes round one core.", row);
    let gives = gives?;
    if gives.value.iter().map(|give| give.value).ne(GIVES) {
        t.refuse_at(gives.span, "these are not the gives that knots are tightened at", "", "tighten the knot anew");
        return None;
    }
    Some(TighteningTable {
        knot: knot?.value,
        mark: mark?.value,
        rows: rows.into_iter().map(|row| row.value).collect(),
    })
}

fn row(t: &mut Typed<'_>) -> Option<TighteningRow> {
    let working = t.need("working", &Count(bound::ROLE_LEGS), "Working legs in one knot.");
    let core = t.need("core", &Number(bound::MOVE), "The core, as a rod of the same girth, in cord diameters.");
    let take_up = figures(t, "take-up", "Leg that one knot eats, in cord diameters, at each give.");
    let rise = figures(t, "rise", "How far one knot carries the work, in cord diameters, at each give.");
    Some(TighteningRow { working: working?.value, core: core?.value, take_up: take_up?, rise: rise? })
}

fn figures(t: &mut Typed<'_>, key: &'static str, about: &str) -> Option<ByGive> {
    let list = t.need(key, &FIGURES, about)?;
    let values: Vec<f64> = list.value.iter().map(|value| value.value).collect();
    values.try_into().map_err(|_| t.refuse_at(list.span, format!("`{key}` needs a figure for each give"), "", "")).ok()
}

/// The text of a table, with how it came about.
pub fn table_text(table: &TighteningTable) -> String {
    let mut text = format!(
        "# What one {} takes, in cord diameters, tightened from its path.\n\
         # Written by `reeve knots tighten {}`, not by hand. Columns: the cord's give, from hard to soft.\n\n\
         knot = \"{}\"\nmark = \"{}\"\ngives = {}\n",
        table.knot,
        table.knot,
        table.knot,
        table.mark,
        list(&GIVES, 2)
    );
    for row in &table.rows {
        let _ = write!(
            text,
            "\n[[row]]\nworking = {}\ncore = {:.4}\ntake-up = {}\nrise = {}\n",
            row.working,
            row.core,
            list(&row.take_up, 3),
            list(&row.rise, 3)
        );
    }
    text
}

fn list(values: &[f64], digits: usize) -> String {
    let words: Vec<String> = values.iter().map(|value| format!("{value:.digits$}")).collect();
    format!("[{}]", words.join(", "))
}

/// Reads a shape that [`shape_text`] wrote, with the mark of the path that was tightened.
pub(crate) fn shape_file(t: &mut Typed<'_>) -> Option<(String, Shape)> {
    t.need("knot", &Name, "The knot's name.");
    let mark = t.need("mark", &Text, "The mark of the path that was tightened.");
    let repeat = t.table("repeat", "How it repeats along its core.", repeat);
    let rods = t.tables("rod", "A straight core leg or fitting.", rod);
    let strands = t.tables("strand", "The centreline of one leg.", strand);
    let shape = Shape {
        strands: strands.into_iter().map(|strand| strand.value).collect(),
        rods: rods.into_iter().map(|rod| rod.value).collect(),
        repeat: repeat.map(|repeat| repeat.value),
    };
    Some((mark?.value, shape))
}

fn repeat(t: &mut Typed<'_>) -> Option<Repeat> {
    let rise = t.need("rise", &Number(bound::REPEAT), "In cord diameters.");
    let twist = t.need("twist", &Number(bound::TURN), "In degrees.");
    Some(Repeat { rise: rise?.value, twist: twist?.value.to_radians() })
}

fn rod(t: &mut Typed<'_>) -> Option<Rod> {
    let x = t.need("x", &Number(bound::PATH_POINT), "Across.");
    let z = t.need("z", &Number(bound::PATH_POINT), "Towards the viewer.");
    let diameter = t.need("diameter", &Number(bound::REPEAT), "In cord diameters.");
    Some(Rod { x: x?.value, z: z?.value, diameter: diameter?.value })
}

fn strand(t: &mut Typed<'_>) -> Option<Strand> {
    let on = t.maybe("goes-on-as", &Count(bound::ROLE_LEGS), "The strand, counted from 1, that it is next.");
    let points = t.need("points", &POINTS, "Across, down, towards the viewer.")?;
    let point = |typed: &Placed<Vec<Placed<f64>>>| -> Option<Point> {
        let [x, y, z] = typed.value.as_slice() else { return None };
        Some([x.value, y.value, z.value])
    };
    let points: Option<Vec<Point>> = points.value.iter().map(point).collect();
    let then = on.map_or(Then::Pulled, |on| Then::GoesOnAs((on.value as usize).saturating_sub(1)));
    Some(Strand { points: points?, then })
}

/// The text of the shape of a knot whose path has this mark.
pub fn shape_text(knot: &str, mark: &str, shape: &Shape) -> String {
    let mut text = format!(
        "# The centrelines of one {knot}, tightened, in cord diameters. Written by `reeve knots tighten {knot}`.\n\n\
         knot = \"{knot}\"\nmark = \"{mark}\"\n"
    );
    if let Some(repeat) = shape.repeat {
        let _ = write!(text, "\n[repeat]\nrise = {:.3}\ntwist = {:.3}\n", repeat.rise, repeat.twist.to_degrees());
    }
    for rod in &shape.rods {
        let _ = write!(text, "\n[[rod]]\nx = {:.3}\nz = {:.3}\ndiameter = {:.3}\n", rod.x, rod.z, rod.diameter);
    }
    for strand in &shape.strands {
        text.push_str("\n[[strand]]\n");
        if let Then::GoesOnAs(next) = strand.then {
            let _ = writeln!(text, "goes-on-as = {}", next + 1);
        }
        text.push_str("points = [\n");
        for five in strand.points.chunks(5) {
            let points: Vec<String> = five.iter().map(|[x, y, z]| format!("[{x:.2}, {y:.2}, {z:.2}]")).collect();
            let _ = writeln!(text, "  {},", points.join(", "));
        }
        text.push_str("]\n");
    }
    text
}
