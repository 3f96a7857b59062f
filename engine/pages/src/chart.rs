//! The chart of the catalogue, to pin to a wall, and the page of one knot.

use reeve_catalogue::shape::Shape;
use reeve_catalogue::{Knot, KnotKind, Setting, Source, Taken};
use reeve_costing::rates::Rates;
use reeve_measure::Length;
use serde::Serialize;

use crate::drawing::{DrawOptions, draw};
use crate::knots::{KnotPage, kind_words, knot_page, lengths, setting_words, source_words, tied};
use crate::phrases::{ENGLISH, say};
use crate::words::Words;

/// The look of a page that bears no letterhead.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Sheet {
    language: String,
    accent: String,
    maker: Option<String>,
    title: String,
}

impl Sheet {
    /// A sheet of a shop, or of none.
    pub fn new(rates: Option<&Rates>, title: &str) -> Self {
        Self {
            language: rates.map_or(ENGLISH, |rates| &rates.maker.language).to_owned(),
            accent: rates.map_or("#3f5a63", |rates| &rates.maker.accent).to_owned(),
            maker: rates.map(|rates| rates.maker.name.clone()),
            title: title.to_owned(),
        }
    }
}

/// The sheet of the chart.
pub fn chart_sheet(rates: Option<&Rates>, words: &Words) -> Sheet {
    Sheet::new(rates, &say!(words, "chart"))
}

/// The chart in finished words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ChartPage {
    head: Sheet,
    cord: String,
    count: String,
    has_drawings: bool,
    groups: Vec<Group>,
}

/// The knots of one kind.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct Group {
    heading: String,
    about: String,
    cards: Vec<Card>,
}

/// One knot on the chart.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct Card {
    name: String,
    title: String,
    also: String,
    kind: String,
    legs: String,
    setting: String,
    rows: Vec<ChartRow>,
    base: String,
    /// Why it can't be said what it takes.
    trouble: Option<String>,
    sources: String,
    drawing: Option<String>,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct ChartRow {
    text: String,
    diameters: String,
    mm: String,
}

/// The page of one knot: its drawing beside the words that `knots show` says.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct KnotSheet {
    head: Sheet,
    drawing: Option<String>,
    #[serde(flatten)]
    knot: KnotPage,
}

/// A knot of the chart: the setting it is tied in, and its shape where that is known.
#[derive(Debug)]
pub struct Charted<'a> {
    /// The knot.
    pub knot: &'a Knot,
    /// Where and with what it is tied.
    pub setting: Setting<'a>,
    /// What is drawn.
    pub shape: Option<Shape>,
}

/// Words the chart of some knots, kind by kind.
pub fn chart_page(head: Sheet, cord: Length, knots: &[Charted<'_>], words: &Words) -> ChartPage {
    let group = |kind: KnotKind| {
        let of_kind = knots.iter().filter(|charted| charted.knot.kind == kind);
        let (heading, about) = heading(kind, words);
        Group { heading, about, cards: of_kind.map(|charted| card(charted, words)).collect() }
    };
    let groups = KINDS.map(group).into_iter().filter(|group| !group.cards.is_empty()).collect();
    let has_drawings = knots.iter().any(|charted| charted.shape.is_some());
    let count = say!(words, "chart-count", count = knots.len());
    ChartPage { head, cord: words.thickness(cord), count, has_drawings, groups }
}

/// Every kind, in the order of the chart.
const KINDS: [KnotKind; 5] = [KnotKind::Mounting, KnotKind::Sennit, KnotKind::Row, KnotKind::Wrap, KnotKind::Single];

/// The heading of the knots of a kind, and what they are.
fn heading(kind: KnotKind, words: &Words) -> (String, String) {
    match kind {
        KnotKind::Mounting => (say!(words, "chart-mountings"), say!(words, "chart-mountings-are")),
        KnotKind::Sennit => (say!(words, "chart-sennits"), say!(words, "chart-sennits-are")),
        KnotKind::Row => (say!(words, "chart-rows"), say!(words, "chart-rows-are")),
        KnotKind::Wrap => (say!(words, "chart-wraps"), say!(words, "chart-wraps-are")),
        KnotKind::Single => (say!(words, "chart-singles"), say!(words, "chart-singles-are")),
    }
}

fn card(charted: &Charted<'_>, words: &Words) -> Card {
    let Charted { knot, setting, shape } = charted;
    let (rows, base, trouble) = match knot.taken(setting) {
        Ok(taken) => (rows(setting, &taken, words), seconds(taken.base.as_s(), words), None),
        Err(misfit) => (Vec::new(), String::new(), Some(misfit.to_string())),
    };
    Card {
        name: knot.name.clone(),
        title: knot.title.clone(),
        also: knot.also.join(", "),
        kind: kind_words(knot.kind, words),
        legs: tied(knot, words),
        setting: setting_words(setting, words),
        rows,
        base,
        trouble,
        sources: sources(knot, words),
        drawing: drawing(knot, shape.as_ref()),
    }
}

fn drawing(knot: &Knot, shape: Option<&Shape>) -> Option<String> {
    shape.map(|shape| draw(shape, &DrawOptions::of(knot)))
}

fn rows(setting: &Setting<'_>, taken: &Taken, words: &Words) -> Vec<ChartRow> {
    let row = |(text, length): (String, Length)| ChartRow {
        text,
        diameters: words.decimal(length / setting.cord, 2),
        mm: words.decimal(length.as_mm(), 1),
    };
    lengths(setting, taken, words).into_iter().map(row).collect()
}

/// Seconds, or minutes and seconds.
fn seconds(all: f64, words: &Words) -> String {
    let all = all.round();
    let minutes = (all / 60.0).floor();
    let rest = all - minutes * 60.0;
    if minutes < 1.0 {
        return say!(words, "seconds", figure = words.decimal(rest, 0));
    }
    say!(words, "minutes-seconds", minutes = words.decimal(minutes, 0), seconds = format!("{rest:02.0}"))
}

/// Where take-up, rise and time come from; said once where they come from the same.
fn sources(knot: &Knot, words: &Words) -> String {
    // Where a knot is drawn, its rise comes from the same path as its take-up.
    let rise = knot.rise.as_ref().map_or(&knot.working.note, |rise| &rise.note);
    let notes = [
        (say!(words, "chart-take-up"), &knot.working.note),
        (say!(words, "chart-rise"), rise),
        (say!(words, "chart-time"), &knot.time.note),
    ];
    let mut said: Vec<(Source, String)> = Vec::new();
    for (what, note) in notes {
        match said.iter_mut().find(|(known, _)| *known == note.source) {
            Some((_, all)) => *all = say!(words, "chart-and", first = all.as_str(), second = what),
            None => said.push((note.source, what)),
        }
    }
    let one = |(source, what): &(Source, String)| {
        say!(words, "chart-source", what = what.as_str(), source = source_words(*source, words))
    };
    said.iter().map(one).collect::<Vec<_>>().join("; ")
}

/// Words the page of one knot.
pub fn knot_sheet(head: Sheet, charted: &Charted<'_>, taken: &Taken, words: &Words) -> KnotSheet {
    let Charted { knot, setting, shape } = charted;
    KnotSheet { head, drawing: drawing(knot, shape.as_ref()), knot: knot_page(knot, setting, taken, words) }
}

#[cfg(test)]
#[allow(clippy::disallowed_methods, reason = "a test reckons and writes by the standard library")]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use reeve_catalogue::{Catalogue, USUAL_GIVE};

    use super::*;
    use crate::drawing::{draw_alone, shapes};
    use crate::{Form, lay_out, load};

    const CORD: f64 = 4.0;

    fn setting(knot: &Knot) -> Setting<'static> {
        let cord = Length::mm(CORD);
        Setting { cord, working: knot.working.legs.0, core: knot.usual_core(cord), give: USUAL_GIVE, parameters: &[] }
    }

    fn shape(name: &str) -> Option<Shape> {
        Some(match name {
            "square" => shapes::square(),
            "crown" => shapes::crown(),
            "overhand" => shapes::overhand(),
            "button" => shapes::trefoil(),
            "double-half-hitch" => shapes::hitches(),
            "larks-head" => shapes::wrapped_rod(),
            _ => return None,
        })
    }

    /// Writes a page into the folder that `REEVE_LOOK` names, to be looked at.
    fn keep(name: &str, text: &str) {
        if let Some(folder) = std::env::var_os("REEVE_LOOK") {
            std::fs::write(std::path::Path::new(&folder).join(name), text).unwrap();
        }
    }

    fn chart(shape: impl Fn(&str) -> Option<Shape>) -> String {
        let catalogue = Catalogue::embedded();
        let charted = |knot| Charted { knot, setting: setting(knot), shape: shape(&knot.name) };
        let knots: Vec<_> = catalogue.iter().map(|knot| charted(knot)).collect();
        let words = Words::of_shop(None).unwrap();
        let view = chart_page(chart_sheet(None, &words), Length::mm(CORD), &knots, &words);
        lay_out(&load(&[], words.phrases()).unwrap(), "chart", Form::Html, &view).unwrap()
    }

    #[test]
    fn every_knot_has_a_card_and_a_drawing_where_its_shape_is_known() {
        let catalogue = Catalogue::embedded();
        let page = chart(shape);
        keep("chart.html", &page);
        for knot in catalogue.iter() {
            let id = format!("id=\"{}\"", knot.name);
            let (_, card) = page.split_once(&id).unwrap();
            let (card, _) = card.split_once("</article>").unwrap();
            assert!(card.contains(&knot.title.replace('\'', "&#39;")) || card.contains(&knot.title), "{card}");
            assert_eq!(card.contains("<svg"), shape(&knot.name).is_some(), "{}", knot.name);
            assert_eq!(card.contains("not drawn yet"), shape(&knot.name).is_none(), "{}", knot.name);
        }
        assert_eq!(page.matches("<article").count(), catalogue.iter().count());
        assert!(page.contains("working leg 1") && !chart(|_| None).contains("working leg 1"));
    }

    #[test]
    fn a_chart_of_drawings_is_no_heavier_than_a_photograph() {
        let page = chart(|name| shape(name).or_else(|| Some(shapes::square())));
        let each = page.len() / page.matches("<article").count();
        assert!(each * 36 < 500_000, "{each} bytes a knot");
    }

    #[test]
    fn the_page_of_a_knot_shows_its_drawing_and_the_words_of_the_text() {
        let catalogue = Catalogue::embedded();
        let knot = catalogue.find("square").unwrap();
        let charted = Charted { knot, setting: setting(knot), shape: shape("square") };
        let taken = knot.taken(&charted.setting).unwrap();
        let words = Words::of_shop(None).unwrap();
        let view = knot_sheet(Sheet::new(None, &knot.title), &charted, &taken, &words);
        let page = lay_out(&load(&[], words.phrases()).unwrap(), "knot", Form::Html, &view).unwrap();
        keep("knot.html", &page);
        assert!(page.contains("<title>square knot</title>") && page.contains("<svg class=\"knot\" role=\"img\""));
        for words in [&knot.summary, &knot.working.note.words, &knot.time.note.words] {
            assert!(page.contains(words.as_str()), "{words}");
        }
    }

    #[test]
    fn drawings_stand_alone_as_files() {
        for (name, shape, across) in shapes::all() {
            let options = DrawOptions { title: name, across, on_fitting: name == "wrapped-rod" };
            let svg = draw_alone(&shape, &options, include_str!("../../../templates/drawing.css"));
            keep(&format!("{name}.svg"), &svg);
            assert!(svg.starts_with("<svg xmlns=") && svg.ends_with("</svg>\n"), "{name}");
        }
    }

    #[test]
    fn seconds_are_told_as_minutes_from_one_on() {
        let words = Words::of_shop(None).unwrap();
        let told = |all| seconds(all, &words).replace('\u{a0}', " ");
        assert_eq!([9.0, 59.4, 59.7, 108.0].map(told), ["9 s", "59 s", "1 min 00 s", "1 min 48 s"]);
    }
}
