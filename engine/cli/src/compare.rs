//! `reeve compare`: designs beside one another.

use reeve_costing::pricing::price_alone;
use reeve_costing::takeoff::plural;
use reeve_pages::Form;
use reeve_pages::compare::{DesignRow, compare_csv, compare_json, design_row, sort_rows};
use reeve_reading::nearest;
use reeve_shop::Found;
use rust_decimal::Decimal;

use crate::failure::{Failure, print_faults, say};
use crate::forms::{TableForm, WhichShop};
use crate::opening::open;
use crate::output::print;
use crate::sheets::{Desk, json};

/// A design and what the market pays for it.
type Given = (String, Decimal);

pub(crate) fn run(
    words: &[String],
    sort: &str,
    prices: &[String],
    shop: &WhichShop,
    form: TableForm,
) -> Result<(), Failure> {
    let mut shop = open(shop)?;
    let words = if words.is_empty() { shop.designs().to_vec() } else { words.to_vec() };
    // What is wrong with the shop stops it; what is wrong with a design leaves out that design.
    let desk = Desk::new(&mut shop)?;
    let found: Vec<Found> = words.iter().filter_map(|word| shop.design(word, &reeve_shop::Choice::default())).collect();
    let faults = shop.take_faults();
    if found.is_empty() && !faults.is_empty() {
        return Err(Failure::Input(faults));
    }
    let given = read_prices(prices, &found, &words)?;
    print_faults(&faults);
    let mut rows = found.iter().map(|found| row(found, &given, &desk)).collect::<Result<Vec<_>, _>>()?;
    sort_rows(&mut rows, sort);
    let page = match form {
        TableForm::Text => desk.compare(&rows, sort, Form::Text)?,
        TableForm::Html => desk.compare(&rows, sort, Form::Html)?,
        TableForm::Json => json(&compare_json(&rows, desk.rates()))?,
        TableForm::Csv => {
            compare_csv(&rows).map_err(|error| Failure::System(format!("the table could not be written: {error}")))?
        }
    };
    print(&page)?;
    match words.len() - found.len() {
        0 => Ok(()),
        left_out => {
            say(&format!("look: {} left out for the faults above", plural("design", left_out as u64)));
            Err(Failure::Partly)
        }
    }
}

fn row(found: &Found, given: &[Given], desk: &Desk) -> Result<DesignRow, Failure> {
    let price = given.iter().find(|(design, _)| *design == found.name).map(|(_, price)| *price);
    let alone = price_alone(&found.name, &found.piece, desk.rates(), price)
        .map_err(|_| Failure::input(format!("{} can't be priced", found.name), "`reeve check` says why"))?;
    Ok(design_row(&found.name, &found.piece.title, &alone))
}

fn read_prices(prices: &[String], found: &[Found], asked: &[String]) -> Result<Vec<Given>, Failure> {
    prices.iter().map(|word| read_price(word, found, asked)).collect()
}

fn read_price(word: &str, found: &[Found], asked: &[String]) -> Result<Given, Failure> {
    let not_one = || Failure::input(format!("`{word}` is not a price"), "for example --price curlew-hanger=110.00");
    let (design, amount) = word.split_once('=').ok_or_else(not_one)?;
    let amount: Decimal = amount.trim().parse().map_err(|_| not_one())?;
    if amount <= Decimal::ZERO || amount > Decimal::from(1_000_000_000) || amount.scale() > 5 {
        return Err(not_one());
    }
    // One that was left out for its faults may have a price all the same.
    let known = || found.iter().map(|found| found.name.as_str()).chain(asked.iter().map(String::as_str));
    if known().any(|name| name == design) {
        return Ok((design.to_owned(), amount));
    }
    let near = nearest(design, known()).map(|near| format!("did you mean `{near}`?"));
    Err(Failure::input(format!("`{design}` is not among the designs compared"), near.unwrap_or_default()))
}
