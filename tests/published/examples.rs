//! The public EN 16931 examples, as data: lines, document-level amounts, tax of each rate and totals.

use rust_decimal::Decimal;
use serde_json::Value;

/// One published example.
pub(crate) struct Example {
    /// The number or name of its file.
    pub(crate) name: String,
    data: Value,
}

/// A tax category with its rate: `S` is taxed at the rate, `E` is exempt, `O` is outside the scope of tax.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Category {
    pub(crate) letter: String,
    pub(crate) percent: Decimal,
}

/// Tax of one category, as published.
pub(crate) struct PublishedTax {
    pub(crate) category: Category,
    pub(crate) base: Decimal,
    pub(crate) tax: Decimal,
}

/// All of them, with where each stands.
pub(crate) fn examples() -> Vec<Example> {
    let all: Vec<Value> = serde_json::from_str(include_str!("en16931.json")).unwrap();
    all.into_iter().map(|data| Example { name: word(&data["example"]), data }).collect()
}

/// The example of a number.
pub(crate) fn example(number: u32) -> Example {
    examples().into_iter().find(|example| example.name == number.to_string()).unwrap()
}

impl Example {
    /// The repository, file and commit it is taken from.
    pub(crate) fn source(&self) -> String {
        word(&self.data["source"])
    }

    pub(crate) fn currency(&self) -> String {
        word(&self.data["currency"])
    }

    /// Net amount and category of each line.
    pub(crate) fn lines(&self) -> Vec<(Decimal, Category)> {
        self.amounts("lines", "net")
    }

    /// Amount and category of each document-level allowance or charge.
    pub(crate) fn on_the_whole(&self, which: &str) -> Vec<(Decimal, Category)> {
        self.amounts(which, "amount")
    }

    fn amounts(&self, list: &str, key: &str) -> Vec<(Decimal, Category)> {
        list_of(&self.data[list]).iter().map(|entry| (amount(&entry[key]), category(entry))).collect()
    }

    pub(crate) fn taxes(&self) -> Vec<PublishedTax> {
        let read = |tax: &Value| PublishedTax {
            category: category(tax),
            base: amount(&tax["base"]),
            tax: amount(&tax["tax"]),
        };
        list_of(&self.data["taxes"]).iter().map(read).collect()
    }

    /// A total by its name; a total that the example leaves out is nothing.
    pub(crate) fn total(&self, name: &str) -> Decimal {
        amount(&self.data["totals"][name])
    }

    /// Whether the example rounds the payable amount by hand, which the program does not.
    pub(crate) fn rounds_by_hand(&self) -> bool {
        !self.data["totals"]["rounding"].is_null()
    }
}

fn list_of(value: &Value) -> &[Value] {
    value.as_array().unwrap()
}

fn word(value: &Value) -> String {
    value.as_str().map_or_else(|| value.to_string(), str::to_owned)
}

fn amount(value: &Value) -> Decimal {
    value.as_str().map_or(Decimal::ZERO, |text| text.parse().unwrap())
}

fn category(entry: &Value) -> Category {
    Category { letter: word(&entry["category"]), percent: amount(&entry["rate"]) }
}
