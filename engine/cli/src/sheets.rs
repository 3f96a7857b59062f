//! The pages of a commission and of a design.

use reeve_costing::cost::CordBought;
use reeve_costing::pricing::Priced;
use reeve_costing::rates::Rates;
use reeve_office::{Week, Weighed};
use reeve_pages::book::BookPage;
use reeve_pages::compare::Comparison;
use reeve_pages::json::costing_json;
use reeve_pages::{Form, OwnTemplate, Words};
use reeve_shop::{Order, Shop};
use rust_decimal::Decimal;
use serde::Serialize;

use crate::failure::Failure;
use crate::layout::PageLayout;
use crate::papers::Paper;

/// What every page of a shop is made with.
pub(crate) struct PageMaker {
    layout: PageLayout,
    words: Words,
    rates: Rates,
}

impl PageMaker {
    /// Loads the shop's templates and wording. Faults of the shop so far stop it.
    pub(crate) fn new(shop: &mut Shop) -> Result<Self, Failure> {
        let own = own_templates(shop);
        if shop.is_stopped() {
            return Err(Failure::Input(shop.take_faults()));
        }
        Self::by(PageLayout::new(own)?, shop)
    }

    /// With the shop's rates, laid out otherwise.
    pub(crate) fn by(layout: PageLayout, shop: &Shop) -> Result<Self, Failure> {
        Self::with(layout, shop.rates().cloned().ok_or_else(|| Failure::input("shop.toml has faults", ""))?)
    }

    /// With other rates.
    pub(crate) fn with(layout: PageLayout, rates: Rates) -> Result<Self, Failure> {
        let words = Words::new(&rates)
            .map_err(|fault| Failure::input(fault.to_string(), "change `language` or `currency` in shop.toml"))?;
        Ok(Self { layout, words, rates })
    }

    /// The quote, from what the client may know alone.
    pub(crate) fn quote(&self, priced: &Priced, form: Form) -> Result<String, Failure> {
        self.page("quote", form, &reeve_pages::quote::quote_page(&priced.quote, &self.rates, &self.words))
    }

    pub(crate) fn costing(&self, priced: &Priced, form: Form) -> Result<String, Failure> {
        self.page("costing", form, &reeve_pages::costing::costing_page(priced, &self.rates, &self.words))
    }

    pub(crate) fn bench(&self, order: &Order, form: Form) -> Result<String, Failure> {
        let pieces: Vec<_> = order.commission.items.iter().map(|item| (&*item.piece, item.quantity)).collect();
        self.page("bench", form, &reeve_pages::bench::bench_page(&order.priced, &pieces, &self.rates, &self.words))
    }

    /// What is made of a priced commission, each under the name of its file: the client's papers, the maker's own, or
    /// both.
    pub(crate) fn papers(&self, order: &Order, (clients, own): (bool, bool)) -> Result<Vec<Paper>, Failure> {
        let priced = &order.priced;
        let mut papers = Vec::new();
        let mut add = |name: &str, text: String| papers.push((name.to_owned(), text));
        if clients {
            add("quote.html", self.quote(priced, Form::Html)?);
            add("quote.txt", self.quote(priced, Form::Text)?);
            add("quote.json", json(&priced.quote)?);
        }
        if own {
            add("costing.html", self.costing(priced, Form::Html)?);
            add("costing.txt", self.costing(priced, Form::Text)?);
            add("costing.json", json(&costing_json(priced))?);
            add("bench.html", self.bench(order, Form::Html)?);
            add("bench.txt", self.bench(order, Form::Text)?);
        }
        Ok(papers)
    }

    pub(crate) fn takeoff(
        &self,
        found: &reeve_shop::FoundDesign,
        cords: &[CordBought],
        form: Form,
    ) -> Result<String, Failure> {
        let view = reeve_pages::bench::takeoff_page(
            (&found.name, &found.choices.sizes.join(", "), &found.choices.measures_words()),
            &found.piece,
            &found.take_off,
            cords,
            &self.rates,
            &self.words,
        );
        self.page("takeoff", form, &view)
    }

    pub(crate) fn compare(&self, shown: &Comparison<'_>, form: Form) -> Result<String, Failure> {
        self.page("compare", form, &reeve_pages::compare::compare_page(shown, &self.rates, &self.words))
    }

    pub(crate) fn weigh(
        &self,
        weighed: &Weighed<'_>,
        (prices, changes): (&[Decimal], &[String]),
        form: Form,
    ) -> Result<String, Failure> {
        self.page("weigh", form, &reeve_pages::weigh::weigh_page(weighed, prices, changes, &self.words))
    }

    pub(crate) fn mix(&self, week: &Week, changes: &[String], form: Form) -> Result<String, Failure> {
        self.page("mix", form, &reeve_pages::mix::mix_page(week, changes, &self.rates, &self.words))
    }

    pub(crate) fn book(&self, page: &BookPage, form: Form) -> Result<String, Failure> {
        self.page("book", form, page)
    }

    /// The shop's wording.
    pub(crate) fn words(&self) -> &Words {
        &self.words
    }

    /// The shop's rates.
    pub(crate) fn rates(&self) -> &Rates {
        &self.rates
    }

    fn page(&self, name: &str, form: Form, view: &impl Serialize) -> Result<String, Failure> {
        self.layout.page(name, form, view)
    }

    /// What its pages are laid out by.
    pub(crate) fn into_layout(self) -> PageLayout {
        self.layout
    }
}

/// A page in text of a shop, by its own template if it has one.
pub(crate) fn text_page(shop: &mut Shop, name: &str, view: &impl Serialize) -> Result<String, Failure> {
    PageLayout::new(own_templates(shop))?.page(name, Form::Text, view)
}

/// A shop's own templates.
pub(crate) fn own_templates(shop: &mut Shop) -> Vec<OwnTemplate> {
    shop.templates().into_iter().map(OwnTemplate::from).collect()
}

/// A table for a spreadsheet, if it could be written.
pub(crate) fn csv<E: std::fmt::Display>(table: Result<String, E>) -> Result<String, Failure> {
    table.map_err(|error| Failure::System(format!("the table could not be written: {error}")))
}

/// JSON with an end of line.
pub(crate) fn json(value: &impl Serialize) -> Result<String, Failure> {
    serde_json::to_string_pretty(value)
        .map(|text| text + "\n")
        .map_err(|error| Failure::System(format!("the JSON could not be written: {error}")))
}
