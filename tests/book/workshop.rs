//! A shop with many commissions, and its book.

use reeve_tests::{Ran, TestShop};
use serde_json::Value;

/// Commands that enter something, and so refuse a day after today without a word.
const ENTERING: &[&str] = &["enquire", "issue", "mark", "pay", "log", "undo"];

/// The starter shop.
pub(crate) struct Workshop {
    pub(crate) shop: TestShop,
}

impl Workshop {
    pub(crate) fn new() -> Self {
        Self { shop: TestShop::starter() }
    }

    /// The same with so many small commissions more: `order-0`, `order-1`, …
    pub(crate) fn with_orders(count: usize) -> Self {
        let this = Self::new();
        for at in 0..count {
            this.order(&format!("order-{at}"), &format!("Client {at}"), 1);
        }
        this
    }

    /// Writes a commission for so many key fobs.
    pub(crate) fn order(&self, name: &str, client: &str, quantity: u32) {
        let text = format!(
            "[commission]\ntitle = \"Fobs for {client}\"\nclient = \"{client}\"\naddress = [\"7 {client} Row\"]\n\n\
             [[item]]\ndesign = \"fender-fob\"\nquantity = {quantity}\n"
        );
        self.shop.write(&format!("shop/commissions/{name}.toml"), text);
    }

    /// Runs `reeve book` on a day, wherever the clock stands.
    pub(crate) fn book(&self, words: &[&str], on: &str) -> Ran {
        let enters = words.first().is_some_and(|word| ENTERING.contains(word));
        let ahead: &[&str] = if enters { &["--ahead"] } else { &[] };
        self.shop.run(&[&["book"], words, &["--on", on, "--shop", "shop"], ahead].concat())
    }

    /// The same, as JSON.
    pub(crate) fn json(&self, words: &[&str], on: &str) -> Value {
        serde_json::from_str(&self.book(&[words, &["--as", "json"]].concat(), on).done()).unwrap()
    }

    /// The numbers in the book, in order.
    pub(crate) fn numbers(&self) -> Vec<String> {
        let list = self.json(&["list"], "2030-01-01");
        let all = list["commissions"].as_array().unwrap().iter();
        all.filter_map(|one| one["number"].as_str().map(str::to_owned)).collect()
    }

    /// The book has no faults.
    #[track_caller]
    pub(crate) fn sound(&self) {
        let ran = self.book(&["check"], "2030-01-01");
        assert_eq!(ran.code, Some(0), "{}", ran.err);
    }
}

/// The numbers of a year up to a count, in order.
pub(crate) fn running(year: i32, count: usize) -> Vec<String> {
    (1..=count).map(|running| format!("{year}-{running:03}")).collect()
}
