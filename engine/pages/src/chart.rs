//! The chart of the catalogue, to pin to a wall, and the page of one knot.

use reeve_catalogue::shape::Shape;
use reeve_catalogue::{Knot, KnotKind, Setting, Taken};
use reeve_costing::rates::Rates;
use reeve_costing::takeoff::plural;
use reeve_measure::Length;
use serde::Serialize;

use crate::drawing::{DrawOptions, draw};
use crate::knots::{KnotPage, knot_page, lengths, setting_words, tied};

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
            language: rates.map_or("en", |rates| &rates.maker.language).to_owned(),
            accent: rates.map_or("#3f5a63", |rates| &rates.maker.accent).to_owned(),
            maker: rates.map(|rates| rates.maker.name.clone()),
            title: title.to_owned(),
        }
    }
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
    heading: &'static str,
    about: &'static str,
    cards: Vec<Card>,
}

/// One knot on the chart.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct Card {
    name: String,
    title: String,
    also: String,
    kind: &'static str,
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
    text: &'static str,
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
pub fn chart_page(head: Sheet, cord: Length, knots: &[Charted<'_>]) -> ChartPage {
    let group = |(kind, heading, about): &KindWords| {
        let of_kind = knots.iter().filter(|charted| charted.knot.kind == *kind);
        Group { heading, about, cards: of_kind.map(card).collect() }
    };
    let groups = KINDS.iter().map(group).filter(|group| !group.cards.is_empty()).collect();
    let has_drawings = knots.iter().any(|charted| charted.shape.is_some());
    let count = plural("knot", knots.iter().map(|_| 1).sum());
    ChartPage { head, cord: format!("{} mm", cord.as_mm()), count, has_drawings, groups }
}

/// A kind, its heading, and what it is.
type KindWords = (KnotKind, &'static str, &'static str);

/// Every kind, in the order of the chart.
const KINDS: &[KindWords] = &[
    (KnotKind::Mounting, "Mountings", "They fasten cords to a fitting or to a carrying leg."),
    (KnotKind::Sennit, "Sennits", "Repeated down their own core, many columns side by side."),
    (KnotKind::Row, "Rows", "Tied side by side over a core that all knots of a row share."),
    (KnotKind::Wrap, "Wraps", "They bind a bundle with a cord of its own."),
    (KnotKind::Single, "Single knots", "Tied once: they stop, join or decorate."),
];

fn card(charted: &Charted<'_>) -> Card {
    let Charted { knot, setting, shape } = charted;
    let (rows, base, trouble) = match knot.taken(setting) {
        Ok(taken) => (rows(setting, &taken), seconds(taken.base.as_s()), None),
        Err(misfit) => (Vec::new(), String::new(), Some(misfit.to_string())),
    };
    Card {
        name: knot.name.clone(),
        title: knot.title.clone(),
        also: knot.also.join(", "),
        kind: knot.kind.word(),
        legs: tied(knot),
        setting: setting_words(setting),
        rows,
        base,
        trouble,
        sources: sources(knot),
        drawing: drawing(knot, shape.as_ref()),
    }
}

fn drawing(knot: &Knot, shape: Option<&Shape>) -> Option<String> {
    shape.map(|shape| draw(shape, &DrawOptions::of(knot)))
}

fn rows(setting: &Setting<'_>, taken: &Taken) -> Vec<ChartRow> {
    let row = |(text, length): (&'static str, Length)| ChartRow {
        text,
        diameters: format!("{:.2}", length / setting.cord),
        mm: format!("{:.1}", length.as_mm()),
    };
    lengths(setting, taken).into_iter().map(row).collect()
}

/// Seconds, or minutes and seconds.
fn seconds(all: f64) -> String {
    let all = all.round();
    let minutes = (all / 60.0).floor();
    let rest = all - minutes * 60.0;
    if minutes < 1.0 { format!("{rest:.0}\u{a0}s") } else { format!("{minutes:.0}\u{a0}min\u{a0}{rest:02.0}\u{a0}s") }
}

/// Where take-up, rise and time come from; said once where they come from the same.
fn sources(knot: &Knot) -> String {
    // Where a knot is drawn, its rise comes from the same path as its take-up.
    let rise = knot.rise.as_ref().map_or(&knot.working.note, |rise| &rise.note);
    let notes = [("take-up", &knot.working.note), ("rise", rise), ("time", &knot.time.note)];
    let mut said: Vec<(&str, Vec<&str>)> = Vec::new();
    for (what, note) in notes {
        let source = note.source.word();
        match said.iter_mut().find(|(known, _)| *known == source) {
            Some((_, what_all)) => what_all.push(what),
            None => said.push((source, vec![what])),
        }
    }
    let one = |(source, what): &(&str, Vec<&str>)| format!("{}: {source}", what.join(" and "));
    said.iter().map(one).collect::<Vec<_>>().join("; ")
}

/// Words the page of one knot.
pub fn knot_sheet(head: Sheet, charted: &Charted<'_>, taken: &Taken) -> KnotSheet {
    let Charted { knot, setting, shape } = charted;
    KnotSheet { head, drawing: drawing(knot, shape.as_ref()), knot: knot_page(knot, setting, taken) }
}

#[cfg(test)]
#[allow(clippy::disallowed_methods, reason = "a test reckons and writes by the standard library")]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use reeve_catalogue::{Catalogue, USUAL_GIVE};

    use super::*;
    use crate::drawing::{draw_alone, shapes};
    use crate::{ENGLISH, Form, Phrases, lay_out, load};

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
        let (catalogue, _) = Catalogue::embedded();
        let charted = |knot| Charted { knot, setting: setting(knot), shape: shape(&knot.name) };
        let knots: Vec<_> = catalogue.iter().map(|knot| charted(knot)).collect();
        let view = chart_page(Sheet::new(None, "Knot chart"), Length::mm(CORD), &knots);
        lay_out(&load(&[], &Phrases::of_language(ENGLISH)).unwrap(), "chart", Form::Html, &view).unwrap()
    }

    #[test]
    fn every_knot_has_a_card_and_a_drawing_where_its_shape_is_known() {
        let (catalogue, _) = Catalogue::embedded();
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
        let (catalogue, _) = Catalogue::embedded();
        let knot = catalogue.find("square").unwrap();
        let charted = Charted { knot, setting: setting(knot), shape: shape("square") };
        let taken = knot.taken(&charted.setting).unwrap();
        let view = knot_sheet(Sheet::new(None, &knot.title), &charted, &taken);
        let page = lay_out(&load(&[], &Phrases::of_language(ENGLISH)).unwrap(), "knot", Form::Html, &view).unwrap();
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
        let told = |all| seconds(all).replace('\u{a0}', " ");
        assert_eq!([9.0, 59.4, 59.7, 108.0].map(told), ["9 s", "59 s", "1 min 00 s", "1 min 48 s"]);
    }
}
