//! `[measures]` and `[[size]]` of a design: what its sums name, and what that is in each size.

use std::ops::Range;

use reeve_measure::bound;
use reeve_reading::{Count, Figure, Measures, Money, Name, NumberOrLength, Placed, Table, Text, is_measure_name};

use super::Chosen;
use crate::choice::{Choice, Choices, Market};

/// What a design is in the size chosen.
pub(super) struct Sized {
    /// What may be chosen.
    pub(super) choices: Choices,
    /// Finished size in words, where the size has its own.
    pub(super) finished: Option<String>,
    /// What the market says of the size.
    pub(super) market: Market,
    /// Whether some measures are not what they usually are.
    pub(super) is_changed: bool,
}

/// A size of a design, as typed.
struct TypedSize {
    name: Placed<String>,
    measures: Chosen,
    finished: Option<String>,
    market: Market,
}

/// Reads measures, sizes and market, and lets the sums that follow name the measures of the choice.
pub(super) fn sized(t: &mut Table<'_>, choice: &Choice) -> Sized {
    let before = t.fault_count();
    let typed = t.pairs(
        "measures",
        &NumberOrLength,
        "What sums in this file may name: { drop = \"95 cm\", knots = 12 }, and what each usually is.",
    );
    let many = few_enough(t, &typed);
    let named = typed.iter().take(many).filter(|(name, _)| named_well(t, name));
    let usual: Vec<(String, Figure)> = named.map(plain).collect();
    let incomplete = t.fault_count() > before;
    let sizes = t.tables("size", "A size that the design is made in.", size);
    let sizes: Vec<TypedSize> = sizes.into_iter().map(|size| size.value).collect();
    for (at, size) in sizes.iter().enumerate() {
        check_size(t, size, &sizes[..at], &usual, incomplete);
    }
    let market =
        t.table("market", "What buyers pay for the design as it stands, and how many find one.", |t| Some(market(t)));
    let size = choice.size.as_ref().and_then(|chosen| sizes.iter().find(|size| size.name.value == *chosen));
    let of_size: Vec<(String, Figure)> = size.map(|size| size.measures.iter().map(plain).collect()).unwrap_or_default();
    let known: Vec<(String, Figure)> = usual
        .iter()
        .map(|(name, figure)| {
            let put = choice.measures.iter().chain(&of_size).find(|(put, _)| put == name);
            (name.clone(), put.map_or(*figure, |(_, put)| *put))
        })
        .collect();
    let is_changed = known != usual;
    t.set_measures(Measures { known, incomplete });
    let market = match size {
        Some(size) => size.market,
        None => market.map(|market| market.value).unwrap_or_default(),
    };
    Sized {
        finished: size.and_then(|size| size.finished.clone()),
        // What is made to a client's own measures has no market.
        market: if choice.measures.is_empty() { market } else { Market::default() },
        choices: Choices { measures: usual, sizes: sizes.into_iter().map(|size| size.name.value).collect() },
        is_changed,
    }
}

fn plain((name, figure): &(Placed<String>, Placed<Figure>)) -> (String, Figure) {
    (name.value.clone(), figure.value)
}

/// How many of the measures are read; the first that is too many is refused.
fn few_enough(t: &Table<'_>, typed: &Chosen) -> usize {
    let within = |many: &usize| bound::MEASURES.holds(reeve_measure::count(*many as u64));
    let many = (0..=typed.len()).rev().find(within).unwrap_or_default();
    if let Some((name, _)) = typed.get(many) {
        let title = format!("the design has {} measures", typed.len());
        t.refuse_at(name.span.clone(), title, bound::MEASURES.to_string(), "take out what no sum names");
    }
    many
}

fn named_well(t: &Table<'_>, name: &Placed<String>) -> bool {
    let well = is_measure_name(name);
    if !well {
        let label = "a small letter, then small letters, digits and _; no unit, no function";
        t.refuse_at(name.span.clone(), format!("`{}` can't be a measure", name.value), label, "for example `drop`");
    }
    well
}

fn size(t: &mut Table<'_>) -> Option<TypedSize> {
    let name = t.need("name", &Name, "The word it is asked by.");
    let measures = t.pairs("measures", &NumberOrLength, "What is other than usual in it: { drop = \"120 cm\" }.");
    let finished = t.maybe("finished", &Text, "Finished size in words, in place of the piece's.");
    let market = market(t);
    Some(TypedSize { name: name?, measures, finished: finished.map(|finished| finished.value), market })
}

fn market(t: &mut Table<'_>) -> Market {
    let price = t.maybe("price", &Money::AMOUNT, "What buyers pay for one.");
    let weekly = t.maybe("weekly", &Count(bound::WEEKLY), "The most that find a buyer in a week.");
    Market { price: price.map(|price| price.value), weekly: weekly.map(|weekly| weekly.value) }
}

fn check_size(t: &Table<'_>, size: &TypedSize, before: &[TypedSize], usual: &[(String, Figure)], incomplete: bool) {
    if before.iter().any(|other| other.name.value == size.name.value) {
        let title = format!("a second size is called `{}`", size.name.value);
        t.refuse_at(size.name.span.clone(), title, "", "rename one of them");
    }
    if incomplete {
        return;
    }
    for (name, figure) in &size.measures {
        match fit(usual, &name.value, figure.value) {
            Ok(()) => {}
            Err(misfit) => t.refuse_at(misfit.place(name, figure), misfit.title, misfit.label, misfit.help),
        }
    }
}

/// A measure that can't be put in place of another.
pub(crate) struct MeasureMisfit {
    is_name: bool,
    pub(crate) title: String,
    pub(crate) label: String,
    pub(crate) help: String,
}

impl MeasureMisfit {
    /// Where it stands, of a name and its figure.
    pub(crate) fn place(&self, name: &Placed<String>, figure: &Placed<Figure>) -> Range<usize> {
        if self.is_name { name.span.clone() } else { figure.span.clone() }
    }
}

/// Whether a figure can stand for the measure of a name.
pub(crate) fn fit(usual: &[(String, Figure)], name: &str, figure: Figure) -> Result<(), MeasureMisfit> {
    let Some((_, known)) = usual.iter().find(|(known, _)| known == name) else {
        let known: Vec<&str> = usual.iter().map(|(name, _)| name.as_str()).collect();
        let near = reeve_reading::nearest(name, known.iter().copied()).map(|near| format!("did you mean `{near}`?"));
        let help = match known.len() {
            0 => "the design has no [measures]".to_owned(),
            _ => format!("measures of the design: {}", known.join(", ")),
        };
        let title = format!("no measure is called `{name}`");
        return Err(MeasureMisfit { is_name: true, title, label: near.unwrap_or_default(), help });
    };
    if known.is_like(&figure) {
        return Ok(());
    }
    let sort = if matches!(known, Figure::Length(_)) { "a length" } else { "a plain number" };
    let (title, label) = (format!("`{name}` can't be {figure}"), format!("it is {sort}, usually {known}"));
    Err(MeasureMisfit { is_name: false, title, label, help: format!("give {sort}") })
}
