//! Charts of invented designs; `REEVE_LOOK=DIR` leaves them in a folder as pages, to be looked at.

use serde_json::json;

use super::*;
use crate::{ENGLISH, OwnTemplate, Phrases, load};

const KINDS: [&str; 5] = ["material", "labour", "overhead", "fees", "what is left"];

/// A design: name, the five parts in euros, bench hours.
type Design = (&'static str, [f64; 5], f64);

/// Names and figures are invented.
const DESIGNS: [Design; 9] = [
    ("Plant hanger, four legs", [14.2, 36.0, 9.5, 6.1, 21.2], 2.0),
    ("Wall panel, dunes", [61.0, 171.0, 44.5, 24.0, 39.5], 9.5),
    ("Ring mobile", [9.8, 27.0, 7.0, 4.4, 13.8], 1.5),
    ("Lamp shade, small", [22.5, 63.0, 16.4, 9.2, -8.1], 3.5),
    ("Curtain for a door", [88.0, 234.0, 60.8, 31.5, 22.7], 13.0),
    ("Bell pull", [6.1, 22.5, 5.9, 3.2, 7.3], 1.25),
    ("Shelf hanger, two boards", [31.4, 54.0, 14.0, 9.1, 21.5], 3.0),
    ("Mobile of seven rings", [17.7, 58.5, 15.2, 7.9, -14.3], 3.25),
    ("Cushion front", [24.9, 117.0, 30.4, 14.0, 3.7], 6.5),
];

const LONG: &str = "Wall panel of unbleached cotton, three fields with fringes & <beads>, wide as a door";

fn euros(amount: f64) -> String {
    let sign = if amount < 0.0 { "-" } else { "" };
    format!("{sign}€{:.2}", amount.abs())
}

fn stack((name, parts, _): &Design) -> Stack {
    let price: f64 = parts.iter().sum();
    let left = parts[4];
    let words = KINDS.iter().zip(parts).map(|(kind, part)| format!("{kind} {}", euros(*part))).collect();
    Stack {
        label: (*name).to_owned(),
        parts: parts.iter().map(|part| part.max(0.0)).collect(),
        total: euros(price),
        tick: "price".to_owned(),
        beyond: (left < 0.0).then_some(price),
        words,
    }
}

fn spot((name, parts, hours): &Design) -> Spot {
    Spot { label: (*name).to_owned(), x: *hours, y: parts[4] / hours.max(0.1) }
}

fn axis(label: &str, values: impl Iterator<Item = f64>, words: impl Fn(f64) -> String) -> Axis {
    let (least, most) = values.fold((0.0, 0.0), |(least, most): (f64, f64), value| (least.min(value), most.max(value)));
    Axis { label: label.to_owned(), ticks: ticks(least, most).into_iter().map(|tick| (tick, words(tick))).collect() }
}

fn spots_of(designs: &[Design]) -> String {
    let all: Vec<Spot> = designs.iter().map(spot).collect();
    let x = axis("bench hours", all.iter().map(|spot| spot.x), |value| format!("{value}\u{a0}h"));
    let y = axis("margin an hour at the bench", all.iter().map(|spot| spot.y), |value| euros(value).replace(".00", ""));
    spots("Margin by the hour against hours", &x, &y, &all)
}

fn effects_of(designs: &[Design]) -> String {
    let row = |(name, parts, hours): &Design| EffectBar {
        label: format!("{name}: cord dearer by a tenth"),
        changes: [parts[4] / 4.0 - hours, 0.0],
        words: format!("{} a piece", euros(parts[4] / 4.0 - hours)),
    };
    effects("What changes do to the margin", &designs.iter().map(row).collect::<Vec<_>>())
}

fn stacks_of(designs: &[Design]) -> String {
    stacks("What a price is made up of", &KINDS.map(str::to_owned), &designs.iter().map(stack).collect::<Vec<_>>())
}

/// As many designs as are wanted, each a little different from those before.
fn many(count: u32) -> Vec<Design> {
    let vary = |at: u32| {
        let (name, parts, hours) = DESIGNS[at as usize % DESIGNS.len()];
        let more = 1.0 + f64::from(at * 7 % 11) / 18.0;
        (name, parts.map(|part| part * more), hours * (1.0 + f64::from(at * 5 % 7) / 30.0))
    };
    (0..count).map(vary).collect()
}

fn page(designs: &[Design]) -> String {
    let look = "{% extends 'page.html' %}{% block kind %}Charts{% endblock kind %}\
                {% block more_style %}\n{% include 'graph.css' %}{% endblock more_style %}\
                {% block main %}{% for chart in charts %}<section><h2>{{ chart.title }}</h2>\n\
                {{ chart.drawn | safe }}</section>\n\
                {% endfor %}{% endblock main %}";
    let charts = [
        ("What a price is made up of", stacks_of(designs)),
        ("What an hour at the bench leaves", spots_of(designs)),
        ("What changes do to the margin", effects_of(designs)),
    ]
    .map(|(title, drawn)| json!({ "title": title, "drawn": drawn }));
    let head = json!({
        "language": "en", "title": "Designs beside one another", "maker": "The Loft at Sandgate", "accent": "#1f4a52",
        "tagline": null, "address": [], "contact": [],
    });
    let own = [("look.html".to_owned(), "look.html".to_owned(), look.to_owned())];
    load(&own.map(OwnTemplate::from), &Phrases::of_language(ENGLISH))
        .unwrap()
        .render("look.html", &json!({ "head": head, "charts": charts }))
        .unwrap()
}

/// Writes a page into the folder that `REEVE_LOOK` names, to be looked at.
fn keep(name: &str, text: &str) {
    if let Some(folder) = std::env::var_os("REEVE_LOOK") {
        std::fs::write(std::path::Path::new(&folder).join(name), text).unwrap();
    }
}

#[test]
fn charts_of_any_designs_are_whole() {
    let nothing = [("Sample", [0.0; 5], 0.0); 9];
    let losses: Vec<Design> = DESIGNS
        .iter()
        .map(|(name, [a, b, c, d, left], hours)| (*name, [*a, *b, *c, *d, -left.abs()], *hours))
        .collect();
    let long: Vec<Design> = DESIGNS.iter().map(|(_, parts, hours)| (LONG, *parts, *hours)).collect();
    for (name, designs) in [
        ("nine", DESIGNS.to_vec()),
        ("one", DESIGNS[..1].to_vec()),
        ("forty", many(40)),
        ("losses", losses),
        ("nothing", nothing.to_vec()),
        ("long", long),
        ("none", Vec::new()),
    ] {
        let page = page(&designs);
        keep(&format!("graph-{name}.html"), &page);
        assert!(!page.contains("NaN") && !page.contains("inf"), "{name}");
        assert_eq!(page.matches("<svg role=\"img\"").count(), page.matches("</svg>").count(), "{name}");
        assert_eq!(page.matches("<li>").count(), designs.len(), "{name}");
        assert_eq!(page.matches("<circle class=\"piece").count(), designs.len(), "{name}");
        let ids: Vec<&str> = page.split(" id=\"").skip(1).filter_map(|rest| rest.split('"').next()).collect();
        for (at, id) in ids.iter().enumerate() {
            assert!(!ids[..at].contains(id), "{name}: {id}");
        }
        for used in page.split("url(#").skip(1).filter_map(|rest| rest.split(')').next()) {
            assert!(ids.contains(&used), "{name}: {used}");
        }
    }
}

/// The rectangles of a class, as x and width.
fn bars(svg: &str, class: &str) -> Vec<(f64, f64)> {
    let value = |bar: &str, name: &str| bar.split_once(name).unwrap().1.split('"').next().unwrap().parse().unwrap();
    let is_of = |bar: &&str| bar.starts_with(&format!("class=\"{class}"));
    svg.split("<rect ").filter(is_of).map(|bar| (value(bar, " x=\""), value(bar, " width=\""))).collect()
}

#[test]
fn the_parts_of_a_bar_meet_and_follow_the_key() {
    let row = Stack { parts: vec![1.0, 0.0, 2.0, -4.0, f64::NAN, 1.0], total: "4".into(), ..Stack::default() };
    let wide = Stack { parts: vec![8.0], beyond: Some(2.0), tick: "price".into(), ..Stack::default() };
    let svg = stacks("parts", &["a", "b", "c", "d", "e", "f"].map(str::to_owned), &[row, wide]);
    let pieces = bars(&svg, "piece");
    let [.., first, second, third, whole] = pieces.as_slice() else { unreachable!("{pieces:?}") };
    assert_eq!(pieces.len(), 6 + 4);
    assert!((first.1 - 339.0 / 8.0).abs() < 0.1 && (second.1 - 2.0 * first.1).abs() < 0.2);
    assert!((first.0 + first.1 - second.0).abs() < 1e-9 && (second.0 + second.1 - third.0).abs() < 1e-9);
    assert!((whole.1 - 339.0).abs() < 1e-9);
    assert_eq!(svg.matches(">price<").count(), 1);
}

#[test]
fn losses_go_to_the_left_and_are_hatched() {
    let effect = |changes| EffectBar { label: "a".into(), changes, words: "b".into() };
    let svg = effects("changes", &[effect([-2.0, 4.0]), effect([0.0, 0.0])]);
    assert_eq!(svg.matches("fill=\"url(#effects-changes-1)\" x=\"85.3\"").count(), 1);
    assert_eq!(bars(&svg, "piece solid"), [(170.0, 169.5)]);
    assert_eq!(bars(&svg, "piece").len(), 2);
}

#[test]
fn each_row_is_a_drawing_that_says_what_it_shows() {
    let svg = effects_of(&many(40)) + &stacks_of(&many(40));
    assert_eq!(svg.matches("<svg role=\"img\"").count(), 40 + 1 + 40);
    let svg = effects_of(&DESIGNS) + &stacks_of(&DESIGNS);
    assert!(svg.contains("<title>Ring mobile: cord dearer by a tenth: €1.95 a piece</title>"));
    assert!(svg.contains("<title>Ring mobile: €62.00</title>"));
    assert_eq!(svg.matches("<pattern").count(), 1 + 3);
}

#[test]
fn dots_keep_their_places_and_losses_are_hollow() {
    let marked =
        |ticks: &[f64]| Axis { label: "a".into(), ticks: ticks.iter().map(|tick| (*tick, tick.to_string())).collect() };
    let spot = |x, y| Spot { label: "b".into(), x, y };
    let svg = spots("dots", &marked(&[0.0, 10.0]), &marked(&[-5.0, 5.0]), &[spot(0.0, -5.0), spot(10.0, 5.0)]);
    let dots: Vec<&str> = svg.split("<circle ").skip(1).collect();
    assert!(dots[0].starts_with("class=\"piece open\"") && dots[0].contains(" cy=\"193\""), "{}", dots[0]);
    assert!(dots[1].starts_with("class=\"piece solid\"") && dots[1].contains(" cy=\"23\""), "{}", dots[1]);
    // The line of zero lies in the middle.
    assert!(svg.contains("class=\"tick\" d=\"M") && svg.contains(" 108L"));
}

#[test]
fn words_are_escaped_and_cut_to_their_room() {
    let svg = stacks_of(&[(LONG, [1.0; 5], 1.0)]) + &effects_of(&[(LONG, [1.0; 5], 1.0)]);
    assert_eq!(svg.matches('…').count(), 2);
    let listed = spots_of(&[(LONG, [1.0; 5], 1.0)]);
    assert!(listed.contains("&amp; &lt;beads&gt;") && !listed.contains("<beads>"));
    for room in [30.0, 100.0, 200.0] {
        assert!(sheet::width(&sheet::cut(LONG, room)) <= room);
    }
    assert_eq!(sheet::cut("short", 100.0), "short");
}

#[test]
fn fills_are_all_different() {
    let fills = fills::Fills::of("stacks", "A title, 1");
    let all: Vec<String> = (0..fills::FILLS).map(|fill| fills.fill(fill)).collect();
    for (at, fill) in all.iter().enumerate() {
        assert!(!all[..at].contains(fill), "{fill}");
    }
    assert_eq!(fills.patterns(0..fills::FILLS).matches("<pattern").count(), 4);
}
