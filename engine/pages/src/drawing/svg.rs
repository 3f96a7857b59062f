//! A drawing as SVG.

use std::fmt::Write;

use super::edges::{Edges, PATTERNS, edges, spots};
use super::grid::Grid;
use super::order::{Stroke, pieces};
use super::path::{UNITS, data, tenth};
use super::sampling::{PlanePoint, apart};
use super::scene::{Bar, CordLine, Lie, RADIUS, Scene};

/// How wide a diameter is shown where nothing else is said, in CSS pixels.
const PIXELS: f64 = 18.0;
/// How far the work fades where it goes on, in diameters, and in how many steps.
const FADE: (f64, u32) = (1.8, 12);

/// Writes an `<svg>` element; with a style it is a file of its own.
pub(super) fn element(scene: &Scene, title: &str, style: Option<&str>) -> String {
    let grid = Grid::of(scene);
    let sheet = Canvas::of(scene);
    let edges = edges(scene, &grid);
    let mut svg = sheet.opening(title, style);
    svg.push_str(&sheet.tones(scene, &pieces(scene, &grid)));
    svg.push_str(&sheet.over(&edges));
    if scene.goes_on {
        svg.push_str(&sheet.fades());
    }
    svg.push_str(&sheet.numerals(&edges));
    svg.push_str("</svg>\n");
    svg
}

/// The sheet that a scene is laid on.
struct Canvas {
    lie: Lie,
    frame: [f64; 4],
    /// Width and height, in units.
    size: PlanePoint,
}

impl Canvas {
    fn of(scene: &Scene) -> Self {
        let [left, top, right, bottom] = scene.frame;
        let (wide, high) = ((right - left) * UNITS, (bottom - top) * UNITS);
        let size = if scene.lie == Lie::Down { [wide, high] } else { [high, wide] };
        Self { lie: scene.lie, frame: scene.frame, size }
    }

    /// Where a spot comes to lie, in units.
    fn place(&self, [x, y]: PlanePoint) -> PlanePoint {
        let [left, top, right, bottom] = self.frame;
        let at = match self.lie {
            Lie::Down => [x - left, y - top],
            Lie::Right => [y - top, right - x],
            Lie::Left => [bottom - y, x - left],
        };
        at.map(|value| value * UNITS)
    }

    fn placed(&self, runs: &[Vec<PlanePoint>]) -> Vec<Vec<PlanePoint>> {
        runs.iter().map(|run| run.iter().map(|spot| self.place(*spot)).collect()).collect()
    }

    fn opening(&self, title: &str, style: Option<&str>) -> String {
        let [wide, high] = self.size;
        let shown = |units: f64| tenth(units / UNITS * PIXELS);
        let space = style.map_or("", |_| " xmlns=\"http://www.w3.org/2000/svg\"");
        let style = style.map(|style| format!("<style>{style}</style>")).unwrap_or_default();
        format!(
            "<svg{space} class=\"knot\" role=\"img\" width=\"{}\" height=\"{}\" viewBox=\"0 0 {} {}\">\
             <title>{}</title>{style}\n",
            shown(wide),
            shown(high),
            tenth(wide),
            tenth(high),
            escaped(title)
        )
    }

    /// The pieces from the back to the front, those of one tone that follow one another as one path.
    fn tones(&self, scene: &Scene, pieces: &[Stroke]) -> String {
        let mut paths: Vec<(String, Vec<Vec<PlanePoint>>)> = Vec::new();
        for piece in pieces {
            let painted = match piece {
                Stroke::Bar(at) => vec![Self::bar(&scene.bars[*at])],
                Stroke::Cord { line, points } => Self::cord(&scene.lines[*line], *points),
            };
            for (class, run) in painted {
                match paths.last_mut() {
                    Some((last, runs)) if *last == class => runs.push(run),
                    _ => paths.push((class, vec![run])),
                }
            }
        }
        let written = |(class, runs): &(String, Vec<Vec<PlanePoint>>)| {
            format!("<path class=\"{class}\" d=\"{}\"/>\n", data(&self.placed(runs)))
        };
        paths.iter().map(written).collect()
    }

    fn bar(bar: &Bar) -> (String, Vec<PlanePoint>) {
        let (top, bottom) = bar.span;
        let corners = [(-1.0, top), (1.0, top), (1.0, bottom), (-1.0, bottom), (-1.0, top)];
        let outline = corners.map(|(side, y)| [bar.x + side * bar.radius, y]).to_vec();
        let class = if bar.is_fitting { "fitting" } else { "core" };
        (class.to_owned(), outline)
    }

    /// A stretch of a cord; its ends are round, so that no joint shows, but for those that are cut.
    fn cord(line: &CordLine, (from, to): (usize, usize)) -> Vec<(String, Vec<PlanePoint>)> {
        let leg = line.leg % PATTERNS + 1;
        let spots = spots(line, (from, to));
        let (mut first, mut last) = (0, spots.len() - 1);
        let mut ends = Vec::new();
        if line.is_cut_across(false) && from == 0 {
            // As far as it is seen, which is less where it runs towards the viewer.
            let away = |far: f64| spots.iter().position(|spot| apart(*spot, spots[0]) >= far).unwrap_or(last);
            first = away(RADIUS);
            ends.push((0, away(RADIUS * 2.0)));
        }
        if line.is_cut_across(true) && to == line.points.len() - 1 {
            let away = |far: f64| spots.iter().rposition(|spot| apart(*spot, spots[last]) >= far).unwrap_or(0);
            let (start, end) = (away(RADIUS * 2.0), last);
            last = away(RADIUS);
            ends.push((start, end));
        }
        let ends = ends.into_iter().map(|points| (format!("leg end leg-{leg}"), points));
        let stretches = ends.chain([(format!("leg leg-{leg}"), (first, last))]);
        stretches.filter(|(_, (a, b))| a < b).map(|(class, (a, b))| (class, spots[a..=b].to_vec())).collect()
    }

    fn over(&self, edges: &Edges) -> String {
        let mut svg = String::new();
        for (class, runs) in [("gap", &edges.gaps), ("mark", &edges.marks), ("ink", &edges.ink)] {
            if !runs.is_empty() {
                let _ = writeln!(svg, "<path class=\"{class}\" d=\"{}\"/>", data(&self.placed(runs)));
            }
        }
        svg
    }

    /// Veils of paper, one over another, towards the ends of work that goes on.
    fn fades(&self) -> String {
        let [left, top, right, bottom] = self.frame;
        let mut svg = String::new();
        for step in 1..=FADE.1 {
            let deep = FADE.0 * f64::from(step) / f64::from(FADE.1);
            let veil = |from: f64, to: f64| {
                let corners = [[left, from], [right, from], [right, to], [left, to], [left, from]];
                corners.map(|corner| self.place(corner)).to_vec()
            };
            // The sheet ends at a rounded unit, a little beyond the frame.
            let veils = [veil(top - 0.1, top + deep), veil(bottom - deep, bottom + 0.1)];
            let _ = writeln!(svg, "<path class=\"fade\" d=\"{}\"/>", data(&veils));
        }
        svg
    }

    /// A numeral on each leg, where there are several.
    fn numerals(&self, edges: &Edges) -> String {
        let mut svg = String::new();
        if edges.numerals.len() < 2 {
            return svg;
        }
        for (leg, spot) in edges.numerals.iter().enumerate() {
            if let Some(spot) = spot {
                let [x, y] = self.place(*spot);
                let (x, y, base) = (tenth(x), tenth(y), tenth(y + 2.4));
                let numeral = leg + 1;
                let _ = writeln!(
                    svg,
                    "<g class=\"numeral\"><circle cx=\"{x}\" cy=\"{y}\" r=\"4\"/><text x=\"{x}\" y=\"{base}\">{numeral}</text></g>"
                );
            }
        }
        svg
    }
}

/// A text between tags.
pub(crate) fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}
