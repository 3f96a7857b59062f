//! What was quoted beside what it really took.

use reeve_book::{Figures, Whole};
use reeve_costing::rates::Rates;
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use schemars::JsonSchema;
use serde::Serialize;

use super::FORM;
use super::table::{BookPage, Table, figures, words as text};
use crate::figures::cents;
use crate::words::Words;

/// A commission, quoted or as it was.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Reckoned {
    /// Bench hours.
    pub hours: Decimal,
    /// Cord, in metres.
    pub cord_m: Decimal,
    /// Cord, fittings, what was used up and bought.
    pub material: Decimal,
    /// Everything it costs.
    pub cost: Decimal,
    /// What remains after cost and fees.
    pub margin: Decimal,
    /// What a bench hour earns; nothing without hours.
    pub per_hour: Option<Decimal>,
}

impl Reckoned {
    fn of(figures: &Figures, hours: Decimal, cord_m: Decimal, material: Decimal) -> Self {
        let quoted = if figures.hours.is_zero() { Decimal::ONE } else { figures.hours };
        let labour = figures.labour / quoted * hours;
        let overhead = (figures.cost - figures.labour - figures.material) / quoted * hours;
        let cost = material + labour + overhead;
        let margin = figures.net - figures.fees - cost;
        let per_hour = (!hours.is_zero()).then(|| cents((margin + labour) / hours));
        Self { hours, cord_m, material: cents(material), cost: cents(cost), margin: cents(margin), per_hour }
    }
}

/// What a commission was quoted at and what it took, at the rates of the quote; `None` where nothing was logged.
pub fn reckoned(whole: &Whole) -> Option<(Reckoned, Option<Reckoned>)> {
    let (_, figures) = whole.commission.quoted.as_ref()?;
    let cord: Decimal = figures.cord.iter().map(|(_, metres)| *metres).sum();
    let quoted = Reckoned::of(figures, figures.hours, cord, figures.material);
    let took = &whole.took;
    if took.work.is_empty() && took.cord.is_empty() && took.bought.is_empty() {
        return Some((quoted, None));
    }
    let decimal = |number: f64| Decimal::from_f64(number).unwrap_or_default().round_dp(4);
    let hours = if took.work.is_empty() { figures.hours } else { decimal(took.minutes() / 60.0) };
    // A cord of which nothing was logged went as it was quoted.
    let logged = |name: &str| took.cord.iter().filter(|line| line.cord == name).map(|line| line.metres).sum::<f64>();
    let of_cord = |(name, metres): &(String, Decimal)| {
        let used = logged(name);
        if used > 0.0 { decimal(used) } else { *metres }
    };
    let strays = took.cord.iter().filter(|line| !figures.cord.iter().any(|(name, _)| *name == line.cord));
    let used = figures.cord.iter().map(of_cord).sum::<Decimal>() + decimal(strays.map(|line| line.metres).sum());
    // Cord costs by length: more of it costs more in proportion.
    let share = if cord.is_zero() { Decimal::ONE } else { used / cord };
    let material = figures.material - figures.cord_cost + figures.cord_cost * share + took.bought_in_all();
    Some((quoted, Some(Reckoned::of(figures, hours, used, material))))
}

/// Words what it took.
pub fn took_page(whole: &Whole, rates: &Rates, words: &Words) -> BookPage {
    let mut page = BookPage::new("What it really took", &whole.commission.title, rates);
    page.fact("Number", whole.commission.name());
    page.fact("Client", whole.commission.client.name.clone());
    page.fact("Stands", whole.commission.state.to_string());
    let columns = [text("", 32), figures("Quoted", 16), figures("Really", 16), figures("Difference", 16)];
    let mut table = Table::new("", &columns, "No quote was issued.");
    if let Some((quoted, really)) = reckoned(whole) {
        for (what, worded, of) in lines(words) {
            let really = really.as_ref().map(of);
            let difference = really.map(|really| worded(really - of(&quoted)));
            let cells = vec![
                what.to_owned(),
                worded(of(&quoted)),
                really.map(&worded).unwrap_or_default(),
                difference.unwrap_or_default(),
            ];
            table.row(cells, "");
        }
        if !whole.commission.state.is_made() && really.is_some() {
            page.remarks.push("It is not finished: this is what is logged so far.".to_owned());
        }
        if really.is_none() {
            page.after.push("Nothing is logged yet: `reeve book log`, or `start` and `stop`.".to_owned());
        }
    }
    page.tables.push(table);
    let mut steps =
        Table::new("What was logged", &[text("Day", 12), text("Step", 44), figures("Time", 24)], "Nothing yet.");
    for line in &whole.took.work {
        let step = line.step.clone().unwrap_or_else(|| "the whole".to_owned());
        let time = words.hours(Decimal::from_f64(line.minutes / 60.0).unwrap_or_default().round_dp(2));
        steps.row(vec![line.day.to_string(), step, time], line.note.clone().unwrap_or_default());
    }
    page.tables.push(steps);
    page
}

type Line<'a> = (&'static str, Box<dyn Fn(Decimal) -> String + 'a>, fn(&Reckoned) -> Decimal);

fn lines(words: &Words) -> Vec<Line<'_>> {
    let money = || Box::new(|amount: Decimal| words.rounded(amount)) as Box<dyn Fn(Decimal) -> String>;
    vec![
        ("Bench hours", Box::new(|hours: Decimal| words.hours(hours.round_dp(2))), |one| one.hours),
        ("Cord", Box::new(|metres: Decimal| format!("{}\u{a0}m", words.number(metres.round_dp(1)))), |one| one.cord_m),
        ("Material", money(), |one| one.material),
        ("Cost", money(), |one| one.cost),
        ("Margin", money(), |one| one.margin),
        ("A bench hour earns", money(), |one| one.per_hour.unwrap_or_default()),
    ]
}

/// What it took, for other programs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct TookJson {
    /// Version of this form.
    pub form: u32,
    /// Its number.
    pub number: String,
    /// As quoted; nothing without a quote.
    pub quoted: Option<Reckoned>,
    /// As it was; nothing where nothing was logged.
    pub really: Option<Reckoned>,
}

/// What it took, for other programs.
pub fn took_json(whole: &Whole) -> TookJson {
    let (quoted, really) = reckoned(whole).map_or((None, None), |(quoted, really)| (Some(quoted), really));
    TookJson { form: FORM, number: whole.commission.name().to_owned(), quoted, really }
}
