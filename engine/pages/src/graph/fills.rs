//! Fills that are told apart without colour.

use crate::drawing::tenth;

/// How many fills there are.
pub(super) const FILLS: usize = 6;
/// The fill of what is lost.
pub(super) const SLANTED: usize = 1;
/// The fill of what is gained, or left.
pub(super) const SOLID: usize = 4;

/// The fills of one drawing. Patterns are known by a name, which must be the drawing's own.
pub(super) struct Fills {
    name: String,
}

impl Fills {
    pub(super) fn of(chart: &str, title: &str) -> Self {
        let plain = |c: char| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '-' };
        Self { name: format!("{chart}-{}", title.chars().map(plain).collect::<String>()) }
    }

    /// The attributes that fill something.
    pub(super) fn fill(&self, fill: usize) -> String {
        match fill % FILLS {
            0 => "class=\"piece open\"".to_owned(),
            SOLID => "class=\"piece solid\"".to_owned(),
            at => format!("class=\"piece\" fill=\"url(#{}-{at})\"", self.name),
        }
    }

    /// The patterns of those fills that are used.
    pub(super) fn patterns(&self, used: impl IntoIterator<Item = usize>) -> String {
        let drawn = |fill| tile(fill).map(|tile| self.pattern(fill, &tile));
        let patterns: String = used.into_iter().filter_map(drawn).collect();
        if patterns.is_empty() { patterns } else { format!("<defs>\n{patterns}</defs>\n") }
    }

    fn pattern(&self, fill: usize, tile: &Tile) -> String {
        let Tile { size, turn, marks } = tile;
        let (id, size) = (format!("{}-{fill}", self.name), tenth(*size));
        format!(
            "<pattern id=\"{id}\" width=\"{size}\" height=\"{size}\" patternUnits=\"userSpaceOnUse\" \
             patternTransform=\"rotate({turn})\"><rect class=\"open\" width=\"{size}\" height=\"{size}\"/>\
             {marks}</pattern>\n"
        )
    }
}

/// What a pattern repeats: a square of so many units, turned by so many degrees.
struct Tile {
    size: f64,
    turn: i32,
    marks: &'static str,
}

fn tile(fill: usize) -> Option<Tile> {
    let lines = "<path class=\"hatch\" d=\"M2 0v4\"/>";
    Some(match fill % FILLS {
        SLANTED => Tile { size: 4.0, turn: 45, marks: lines },
        2 => Tile { size: 3.4, turn: 45, marks: "<circle class=\"solid\" cx=\"1.7\" cy=\"1.7\" r=\".8\"/>" },
        3 => Tile { size: 4.0, turn: 45, marks: "<path class=\"hatch\" d=\"M2 0v4M0 2h4\"/>" },
        5 => Tile { size: 4.0, turn: 0, marks: lines },
        _ => return None,
    })
}
