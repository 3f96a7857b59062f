//! The starter shop in a folder of its own, with one of its files in another's words.

use std::cell::RefCell;
use std::fs;
use std::path::Path;

use chrono::NaiveDate;
use reeve_costing::rates::Rates;
use reeve_host::Program;
use reeve_office::{DesignRow, Offered};
use reeve_pages::{Form, Templates, Words, lay_out};
use reeve_reading::{Diagnostics, Fault, SourceText, Table, read};
use reeve_shop::{Admissions, Answer, Folder, FoundDesign, Order, Shop, Wish};
use tempfile::TempDir;

use crate::holds;

/// The stem of the file that is tried, where it may have any.
pub(crate) const TRIED: &str = "tried";

/// The day of every quote.
pub(crate) fn day() -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 11, 25).unwrap()
}

/// A shop on disk: beginning and opening one takes longer than trying many texts, so one is used for many.
pub(crate) struct Place {
    folder: TempDir,
    /// Opened with no file in another's words.
    opened: Shop,
    templates: Templates,
}

thread_local! {
    static PLACE: RefCell<Option<Place>> = const { RefCell::new(None) };
}

/// Does something in the starter shop with a file more, or in place of its own; afterwards the shop is as it was.
pub(crate) fn with_file<T>(file: &str, text: &str, work: impl FnOnce(&Place) -> T) -> T {
    PLACE.with_borrow_mut(|place| {
        let place = place.get_or_insert_with(Place::begin);
        let path = place.folder.path().join(file);
        let before = fs::read(&path).ok();
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(&path, text).unwrap();
        let done = work(place);
        match before {
            Some(before) => fs::write(&path, before).unwrap(),
            None => fs::remove_file(&path).unwrap(),
        }
        done
    })
}

impl Place {
    fn begin() -> Self {
        let folder = TempDir::new().unwrap();
        Folder::begin(folder.path()).unwrap();
        // A shop lists its designs once: the one that is tried must be there by then.
        let tried = folder.path().join(format!("designs/{TRIED}.toml"));
        fs::copy(folder.path().join("designs/bay-leaf.toml"), tried).unwrap();
        let opened = open(folder.path()).value;
        opened.designs();
        Self {
            folder,
            opened,
            templates: reeve_pages::load(&[], &reeve_pages::Phrases::of_language(reeve_pages::ENGLISH)).unwrap(),
        }
    }

    /// Opens the shop as it stands now.
    pub(crate) fn open(&self) -> Answer<Shop> {
        open(self.folder.path())
    }

    /// The shop as it was opened at first: a design is read anew each time that it is asked for.
    pub(crate) fn opened(&self) -> &Shop {
        &self.opened
    }

    /// Prices a commission of the shop; whatever comes of it must hold.
    pub(crate) fn order(&self, Answer { value: shop, faults }: &Answer<Shop>, stem: &str, typed: &str) {
        let mut faults = faults.clone();
        let order = shop.order(stem, &Wish::default(), day()).noted(&mut faults);
        holds::of_faults(&faults);
        match order {
            Some(order) => self.papers(shop, &order, typed),
            None => assert!(faults.iter().any(Fault::is_error), "{stem} is not priced, and nothing says why"),
        }
    }

    /// Every paper of an order.
    fn papers(&self, shop: &Shop, order: &Order, typed: &str) {
        let rates = shop.rates().unwrap();
        let Some(words) = words(rates) else { return };
        let quote = &order.priced.quote;
        let due: rust_decimal::Decimal = quote.schedule.iter().map(|instalment| instalment.amount).sum();
        assert_eq!(due, quote.totals.due, "what is paid when does not add up to what is due");
        let client = reeve_pages::quote::quote_page(quote, rates, &words);
        let costing = reeve_pages::costing::costing_page(&order.priced, shop.basis().unwrap(), &words);
        let bench = reeve_pages::bench::bench_page(&order.priced, rates, &words);
        for form in [Form::Text, Form::Html] {
            holds::figures_of(&lay_out(&self.templates, "quote", form, &client).unwrap(), typed);
            holds::figures_of(&lay_out(&self.templates, "costing", form, &costing).unwrap(), typed);
            holds::figures_of(&lay_out(&self.templates, "bench", form, &bench).unwrap(), typed);
        }
        holds::figures_of(&serde_json::to_string(quote).unwrap(), typed);
        holds::figures_of(&serde_json::to_string(&reeve_pages::json::costing_json(&order.priced)).unwrap(), typed);
    }

    /// The take-off of a design, and the design sold by itself.
    pub(crate) fn design(&self, shop: &Shop, found: &FoundDesign, typed: &str) {
        let words = words(shop.rates().unwrap()).unwrap();
        let priced = reeve_costing::whatif::with_changes(&found.piece, &found.take_off, shop.basis().unwrap(), &[]);
        let (alone, basis) = match priced {
            Ok(priced) => priced,
            Err(fault) => return assert!(!fault.to_string().is_empty()),
        };
        let size = found.choice.word();
        let offered = Offered {
            design: &found.name,
            size: size.as_deref(),
            title: &found.piece.title,
            market: found.market.price,
            weekly: found.market.weekly,
        };
        let row = DesignRow::of(&offered, &alone, &basis.rates);
        holds::figures_of(&reeve_pages::compare::compare_csv(&[row]).unwrap(), typed);
        let view = reeve_pages::bench::takeoff_page(
            reeve_pages::bench::DesignNames { design: &found.name, sizes: "", measures: "" },
            &found.piece,
            &found.take_off,
            &alone.job.needs.cords,
            &basis.rates,
            &words,
        );
        for form in [Form::Text, Form::Html] {
            holds::figures_of(&lay_out(&self.templates, "takeoff", form, &view).unwrap(), typed);
        }
    }
}

fn open(folder: &Path) -> Answer<Shop> {
    Shop::open(Folder::Disk(folder.to_owned()), no_program(), Admissions::default())
}

/// No target starts a process.
pub(crate) fn no_program() -> Program {
    Program::at("/nonexistent/reeve".into())
}

/// A language or a currency may be one that nobody has words for: that is told.
fn words(rates: &Rates) -> Option<Words> {
    Words::new(rates).map_err(|fault| assert!(!fault.to_string().is_empty())).ok()
}

/// Reads one text by its reader alone. Whether it is sound: there is no fault that stops the work.
pub(crate) fn is_sound<T>(file: &str, text: &str, reader: impl FnOnce(&mut Table<'_>) -> Option<T>) -> bool {
    let desk = Diagnostics::new(SourceText::new(file, text));
    let found = read(&desk, reader);
    let faults = desk.into_faults();
    holds::of_faults(&faults);
    let stopped = faults.iter().any(Fault::is_error);
    assert!(found.is_some() || stopped, "nothing was read, and nothing says why");
    found.is_some() && !stopped
}
