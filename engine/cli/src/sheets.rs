//! What the pages of a shop are made with, and the one door that results go out by.

use reeve_costing::basis::Basis;
use reeve_costing::rates::Rates;
use reeve_pages::printed::{Format, LayOut, PrintError, Printed, printed};
use reeve_pages::results::{BenchResult, CostingResult, QuoteResult, Wording};
use reeve_pages::{Form, OwnTemplate, Words};
use reeve_reading::Fault;
use reeve_shop::{Order, Shop};
use serde::Serialize;

use crate::failure::{Failure, print_faults};
use crate::layout::PageLayout;
use crate::output::print;
use crate::papers::Paper;

/// What every page of a shop is made with.
pub(crate) struct PageMaker {
    layout: PageLayout,
    words: Words,
    basis: Basis,
}

impl PageMaker {
    /// Loads the shop's templates and wording. Faults found so far stop it.
    pub(crate) fn new(shop: &Shop, faults: &mut Vec<Fault>) -> Result<Self, Failure> {
        let own = own_templates(shop, faults);
        if faults.iter().any(Fault::is_error) {
            return Err(Failure::Input(std::mem::take(faults).into()));
        }
        let basis = basis_of(shop)?;
        let words = Words::new(&basis.rates).map_err(|error| Fault::of(&error))?;
        Ok(Self { layout: PageLayout::new(own, words.phrases()), words, basis })
    }

    /// By what the shop reckons by, laid out otherwise.
    pub(crate) fn by(layout: PageLayout, shop: &Shop) -> Result<Self, Failure> {
        Self::with(layout, basis_of(shop)?)
    }

    /// By other rates, or another hand.
    pub(crate) fn with(layout: PageLayout, basis: Basis) -> Result<Self, Failure> {
        let words = Words::new(&basis.rates).map_err(|error| Fault::of(&error))?;
        Ok(Self { layout, words, basis })
    }

    /// A result in a format.
    pub(crate) fn printed(&self, result: &impl Printed, format: Format) -> Result<String, Failure> {
        printed(result, format, &self.layout)
    }

    /// Prints a result in a format.
    pub(crate) fn emit(&self, result: &impl Printed, format: Format) -> Result<(), Failure> {
        if format != Format::Csv {
            return print(&self.printed(result, format)?);
        }
        result.table().try_for_each(|part| print(&part.map_err(PrintError::Table)?))
    }

    /// Lays a result out as a page of either form; for a sample, whose pages are nobody's to read.
    pub(crate) fn both_pages(&self, result: &impl Printed) -> Result<(), Failure> {
        [Format::Text, Format::Html].into_iter().try_for_each(|format| self.printed(result, format).map(|_| ()))
    }

    /// What is made of a priced commission, each under the name of its file: the client's papers, the maker's own, or
    /// both.
    pub(crate) fn papers(&self, order: &Order, (clients, own): (bool, bool)) -> Result<Vec<Paper>, Failure> {
        let (priced, by) = (&order.priced, self.wording());
        let mut papers = Vec::new();
        let pages = [Format::Html, Format::Text];
        let documents = [Format::Html, Format::Text, Format::Json];
        if clients {
            self.add(&mut papers, &QuoteResult { quote: &priced.quote, by }, &documents)?;
        }
        if own {
            self.add(&mut papers, &CostingResult { priced, by }, &documents)?;
            self.add(&mut papers, &BenchResult { priced, by }, &pages)?;
        }
        Ok(papers)
    }

    /// Adds a paper in some formats.
    fn add<P: Printed>(&self, papers: &mut Vec<Paper>, result: &P, formats: &[Format]) -> Result<(), Failure> {
        for format in formats {
            papers.push((format!("{}.{}", P::PAGE, format.ending()), self.printed(result, *format)?));
        }
        Ok(())
    }

    /// What the shop reckons by, and its wording.
    pub(crate) fn wording(&self) -> Wording<'_> {
        Wording { basis: &self.basis, words: &self.words }
    }

    /// The shop's wording.
    pub(crate) fn words(&self) -> &Words {
        &self.words
    }

    /// The shop's rates.
    pub(crate) fn rates(&self) -> &Rates {
        &self.basis.rates
    }

    /// The shop's rates and the hand beside them.
    pub(crate) fn basis(&self) -> &Basis {
        &self.basis
    }

    /// What its pages are laid out by.
    pub(crate) fn into_layout(self) -> PageLayout {
        self.layout
    }
}

impl LayOut for PageLayout {
    type Error = Failure;

    fn page(&self, name: &str, form: Form, view: &impl Serialize) -> Result<String, Failure> {
        self.fill(&form.template(name), form, view)
    }
}

impl From<PrintError> for Failure {
    fn from(error: PrintError) -> Self {
        Self::system(&error)
    }
}

fn basis_of(shop: &Shop) -> Result<Basis, Failure> {
    shop.basis().cloned().ok_or_else(|| Failure::input("shop.toml has faults", ""))
}

/// What pages of a shop on which no money stands are laid out by: its own templates in place of some.
pub(crate) fn layout_of(shop: &Shop, words: &Words) -> PageLayout {
    let mut faults = Vec::new();
    let own = own_templates(shop, &mut faults);
    print_faults(&faults.into());
    PageLayout::new(own, words.phrases())
}

/// How pages on which no money stands are worded: as a shop's, or in English.
pub(crate) fn words_of(rates: Option<&Rates>) -> Result<Words, Failure> {
    Ok(Words::of_shop(rates).map_err(|error| Fault::of(&error))?)
}

/// A shop's own templates; what is wrong with their folder is noted.
pub(crate) fn own_templates(shop: &Shop, faults: &mut Vec<Fault>) -> Vec<OwnTemplate> {
    shop.templates().noted(faults).into_iter().map(OwnTemplate::from).collect()
}
