//! `store/cords.toml` and `store/fittings.toml`: the materials the shop buys.

use std::sync::Arc;

use reeve_costing::store::{Bead, Charge, Cord, FIBRES, Fitting, PutUp, Section, estimated_density};
use reeve_measure::{Length, LinearDensity, Mass, bound};
use reeve_reading::{Lengths, List, Money, Name, Number, OneOf, Placed, Table, Text, Weight, WeightPerLength};
use rust_decimal::prelude::ToPrimitive;

/// Reads `store/cords.toml`.
pub fn cords_file(t: &mut Table<'_>) -> Option<Vec<Arc<Cord>>> {
    let cords = t.tables("cord", "A cord that the shop buys.", cord);
    Some(unique(t, "cord", cords, |cord| &cord.name))
}

/// Reads `store/fittings.toml`.
pub fn fittings_file(t: &mut Table<'_>) -> Option<Vec<Arc<Fitting>>> {
    let fittings = t.tables("fitting", "A ring, dowel, bead or other thing that is not cord.", fitting);
    Some(unique(t, "fitting", fittings, |fitting| &fitting.name))
}

/// Two entries must not share a name.
fn unique<T>(t: &Table<'_>, what: &str, entries: Vec<Placed<T>>, name: impl Fn(&T) -> &String) -> Vec<Arc<T>> {
    let mut kept: Vec<Arc<T>> = Vec::new();
    for entry in entries {
        if kept.iter().any(|other| name(other) == name(&entry)) {
            t.refuse_at(
                entry.span,
                format!("a second {what} is called `{}`", name(&entry.value)),
                "names are unique in a file",
                "rename one of them",
            );
        } else {
            kept.push(Arc::new(entry.value));
        }
    }
    kept
}

fn cord(t: &mut Table<'_>) -> Option<Cord> {
    let name = t.need("name", &Name, "The word designs use.");
    let title = t.need("title", &Text, "As written on pages.");
    let colour = t.maybe("colour", &Text, "Its colour.");
    let diameter = t.need("diameter", &Lengths(bound::CORD_DIAMETER), "Thickness.");
    let density = t.maybe(
        "weight",
        &WeightPerLength,
        "Weight of a metre, the best figure to have: weigh 10 m and divide by ten.",
    );
    let fibre = t.maybe(
        "fibre",
        &OneOf { words: FIBRES },
        "Where the weight is not known it is estimated from the fibre and the thickness.",
    );
    let charge = t.maybe(
        "charge",
        &OneOf { words: Charge::WORDS },
        "What a commission pays for: the length `used` (the default) or the `whole` put-ups bought.",
    );
    let give = t.maybe(
        "give",
        &Number(bound::GIVE),
        "How soft it is, from 0 (hard) to 0.2: the share of its diameter by which it sinks into a like cord that it is \
         wound round, at the tension of tying. Samples in knots/samples.toml refine it.",
    );
    let density_given = density.is_some();
    let density = match (&diameter, density, fibre) {
        (_, Some(density), _) => Some(density.value),
        (Some(diameter), None, Some(fibre)) => Some(estimated_density(diameter.value, fibre.value)),
        (None, None, Some(_)) => None,
        (_, None, None) => {
            t.refuse(
                "the cord has neither `weight` nor `fibre`",
                "one of them is needed",
                "for example weight = \"8.2 g/m\", or fibre = \"cotton\" for an estimate",
            );
            None
        }
    };
    let put_ups = t.tables("put-up", "A form it is sold in: a reel, cone or hank.", |t| put_up(t, density));
    if put_ups.is_empty() && !t.has("put-up") {
        t.refuse(
            "the cord has no put-up",
            "it must be sold in some form",
            "add [[cord.put-up]] with title, length and price",
        );
    }
    if put_ups.is_empty() {
        return None;
    }
    Some(Cord {
        name: name?.value,
        title: title?.value,
        colour: colour.map(|colour| colour.value),
        diameter: diameter?.value,
        density: density?,
        density_estimated: !density_given,
        give: give.map(|give| give.value),
        put_ups: put_ups.into_iter().map(|put_up| put_up.value).collect(),
        charge: charge.map_or(Charge::Used, |charge| charge.value),
    })
}

fn put_up(t: &mut Table<'_>, density: Option<LinearDensity>) -> Option<PutUp> {
    let title = t.need("title", &Text, "As the supplier calls it.");
    let length = t.maybe("length", &Lengths(bound::PUT_UP_LENGTH), "Cord on it.");
    let weight =
        t.maybe("weight", &Weight(bound::PUT_UP_WEIGHT), "In place of the length: its weight without the core.");
    let price = t.need("price", &Money::AMOUNT, "What it costs.");
    let length = match (length, weight) {
        (Some(length), None) => length.value,
        (None, Some(weight)) => density?.length_of(weight.value),
        _ => {
            t.refuse("a put-up has a length or a weight", "one of the two", "for example length = \"100 m\"");
            return None;
        }
    };
    Some(PutUp { title: title?.value, length_mm: whole_mm(length), price: price?.value })
}

/// Never more cord than is on the put-up.
fn whole_mm(length: Length) -> u64 {
    length.as_mm().floor().to_u64().unwrap_or_default()
}

fn fitting(t: &mut Table<'_>) -> Option<Fitting> {
    let name = t.need("name", &Name, "The word designs use.");
    let title = t.need("title", &Text, "As written on pages.");
    let section = section(t);
    let inner = t.maybe("inner", &Lengths(bound::FITTING_EXTENT), "For a ring: its inner diameter.");
    let length = t.maybe(
        "length",
        &Lengths(bound::FITTING_EXTENT),
        "For a dowel or bar: its length. For a bead: its length along the hole.",
    );
    let bore = t.maybe("bore", &Lengths(bound::SECTION), "For a bead: the diameter of its hole.");
    let weight = t.maybe("weight", &Weight(bound::FITTING_WEIGHT), "Its weight.");
    let price = t.need("price", &Money::AMOUNT, "What one costs.");
    let length = length.map(|length| length.value);
    let bead = match (bore, length) {
        (Some(bore), Some(length)) => Some(Bead { bore: bore.value, length }),
        (Some(bore), None) => {
            t.refuse_at(
                bore.span,
                "a bead needs its `length` too",
                "how much leg does it cover?",
                "add length = \"18 mm\"",
            );
            return None;
        }
        (None, _) => None,
    };
    // Knots on a ring are crowded at its inner edge.
    let room = inner.map(|inner| inner.value * std::f64::consts::PI).or(if bead.is_none() { length } else { None });
    Some(Fitting {
        name: name?.value,
        title: title?.value,
        section,
        room,
        bead,
        weight: weight.map_or(Mass::ZERO, |weight| weight.value),
        price: price?.value,
    })
}

fn section(t: &mut Table<'_>) -> Option<Section> {
    let round = t.maybe("section", &Lengths(bound::SECTION), "Thickness of what is tied round, when it is round.");
    let flat = t.maybe("flat", &List(Lengths(bound::SECTION)), "In its place, for a flat bar: its two sides.");
    match (round, flat) {
        (Some(round), None) => Some(Section::Round(round.value)),
        (None, Some(flat)) => {
            if let [a, b] = flat.value.as_slice() {
                return Some(Section::Flat(a.value, b.value));
            }
            t.refuse_at(
                flat.span,
                "`flat` has two sides",
                "width and thickness",
                "for example flat = [\"20 mm\", \"4 mm\"]",
            );
            None
        }
        (Some(round), Some(_)) => {
            t.refuse_at(round.span, "a fitting is round or flat, not both", "", "take out `section` or `flat`");
            None
        }
        (None, None) => None,
    }
}
