//! `--what-if`: an input of the sums and how far it is changed.

use reeve_costing::rates::{Overhead, Rates};
use reeve_costing::whatif::{By, Change, Input};
use reeve_reading::{Fault, nearest};
use rust_decimal::Decimal;

const HELP: &str = "an input and by how much, such as wage=+10%, wage=26.00, overhead=-5%, fees=4%, pace=1.2, \
                    cord=+8%, or for one cord cord:cotton-4-ecru=0.12 (a metre)";

/// Reads the changes; every one may be a percentage with its sign, or a value.
///
/// # Errors
/// A fault for the first that is no change, or changes nothing that the shop has.
pub fn read_changes(words: &[String], cords: &[&str], rates: &Rates) -> Result<Vec<Change>, Fault> {
    words.iter().map(|word| read_change(word, cords, rates)).collect()
}

fn read_change(word: &str, cords: &[&str], rates: &Rates) -> Result<Change, Fault> {
    let no = |why: &str| Fault::without_place(format!("`{word}` {why}"), HELP);
    let (name, by) = word.split_once('=').ok_or_else(|| no("is not a change"))?;
    let input = read_input(name.trim(), cords)?;
    let by = by.trim();
    let number = |text: &str| text.trim().parse::<Decimal>().ok().filter(|number| number.abs() <= MOST);
    let by = match by.strip_suffix('%') {
        Some(percent) if percent.starts_with(['+', '-']) => {
            By::Percent(number(percent).ok_or_else(|| no("is not a change"))?)
        }
        Some(percent) if in_percent(&input, rates) => By::To(number(percent).ok_or_else(|| no("is not a change"))?),
        Some(percent) => return Err(no(&format!("says neither more nor less: write {name}=+{percent}%"))),
        None if input == Input::Fees => return Err(no("has no %: fees are in per cent of the price")),
        None => By::To(number(by).ok_or_else(|| no("is not a change"))?),
    };
    match by {
        By::Percent(percent) if percent <= -Decimal::ONE_HUNDRED => Err(no("leaves nothing")),
        By::To(value) if value < Decimal::ZERO || (value.is_zero() && input == Input::Pace) => Err(no("is too little")),
        By::To(_) if input == Input::Fees && rates.fees.iter().all(|fee| fee.rate.is_zero()) => {
            Err(Fault::without_place(
                "the shop has no fee that grows with the price",
                "add a [[fee]] with a rate to shop.toml",
            ))
        }
        By::To(_) if matches!(input, Input::Cord(None)) => Err(no("sets every cord to one price: name one")),
        _ => Ok(Change { input, by }),
    }
}

/// Beyond this no figure of a shop was meant.
const MOST: Decimal = Decimal::from_parts(1_000_000, 0, 0, false, 0);

fn read_input(name: &str, cords: &[&str]) -> Result<Input, Fault> {
    if let Some(cord) = name.strip_prefix("cord:") {
        return check_cord(cord, cords).map(|()| Input::Cord(Some(cord.to_owned())));
    }
    let found = Input::WORDS.iter().find(|(word, _)| *word == name).map(|(_, input)| input.clone());
    found.ok_or_else(|| {
        let words: Vec<&str> = Input::WORDS.iter().map(|(word, _)| *word).collect();
        Fault::without_place(format!("`{name}` is not an input"), format!("inputs: {}, cord:NAME", words.join(", ")))
    })
}

/// Holds that the store knows a cord.
///
/// # Errors
/// A fault with the name that was perhaps meant.
pub fn check_cord(name: &str, known: &[&str]) -> Result<(), Fault> {
    if known.contains(&name) {
        return Ok(());
    }
    let near = nearest(name, known.iter().copied()).map(|near| format!("did you mean `{near}`? "));
    let help = format!("{}cords of the store: {}", near.unwrap_or_default(), known.join(", "));
    Err(Fault::without_place(format!("no cord of the store is called `{name}`"), help))
}

/// Whether the input's own value is a percentage.
fn in_percent(input: &Input, rates: &Rates) -> bool {
    match input {
        Input::Fees => true,
        Input::Overhead => !matches!(rates.overhead, Overhead::PerHour(_)),
        Input::Cord(_) | Input::Wage | Input::Pace => false,
    }
}
