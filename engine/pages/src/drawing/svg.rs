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
/// How far the work fades where it goes on, in diameters.
const FADE: f64 = 1.8;

/// Writes an `<svg>` element; with a style it is a file of its own.
pub(super) fn element(scene: &Scene, title: &str, style: Option<&str>) -> String {
    let grid = Grid::of(scene);
    let sheet = Canvas::of(scene);
    let edges = edges(scene, &grid);
    let mut svg = sheet.opening(title, style);
    let drawn = sheet.tones(scene, &pieces(scene, &grid)) + &sheet.over(&edges);
    if scene.goes_on {
        let (name, mask) = sheet.fade();
        let _ = write!(svg, "{mask}<g mask=\"url(#{name})\">\n{drawn}</g>\n");
    } else {
        svg.push_str(&drawn);
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

    /// What lets work that goes on fade towards its ends, whatever it lies on: a mask, white where all is seen.
    ///
    /// A page may hold many drawings, so its name follows from what it is: two of one name are one mask.
    fn fade(&self) -> (String, String) {
        let ([left, top, right, bottom], [wide, high]) = (self.frame, self.size);
        let [from, to] = [[left, top], [left, bottom]].map(|spot| self.place(spot));
        let share = FADE / (bottom - top).max(2.0 * FADE);
        let name = format!("fade-{}-{}-{:?}", tenth(wide), tenth(high), self.lie).replace('.', "-").to_lowercase();
        let stop = |(at, tone): (f64, &str)| format!("<stop offset=\"{at:.3}\" stop-color=\"{tone}\"/>");
        let stops = [(0.0, "#000"), (share, "#fff"), (1.0 - share, "#fff"), (1.0, "#000")].map(stop).concat();
        let middle = self.place([f64::midpoint(left, right), f64::midpoint(top, bottom)]);
        // Straight down, or straight across where the work lies so.
        let along = |spot: PlanePoint| match self.lie {
            Lie::Down => [middle[0], spot[1]],
            Lie::Right | Lie::Left => [spot[0], middle[1]],
        };
        let [x1, y1] = along(from).map(tenth);
        let [x2, y2] = along(to).map(tenth);
        let mask = format!(
            "<linearGradient id=\"{name}-tone\" gradientUnits=\"userSpaceOnUse\" x1=\"{x1}\" y1=\"{y1}\" x2=\"{x2}\" y2=\"{y2}\">\
             {stops}</linearGradient>\n\
             <mask id=\"{name}\" maskUnits=\"userSpaceOnUse\" x=\"0\" y=\"0\" width=\"{}\" height=\"{}\">\
             <rect width=\"{}\" height=\"{}\" fill=\"url(#{name}-tone)\"/></mask>\n",
            tenth(wide),
            tenth(high),
            tenth(wide),
            tenth(high)
        );
        (name, mask)
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
