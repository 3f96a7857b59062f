//! A shop and its order book, opened for a command.

use std::path::PathBuf;

use chrono::NaiveDate;
use reeve_book::{BOOK_FILE, Book, BroughtUp};
use reeve_costing::takeoff::plural;
use reeve_office::Issuing;
use reeve_pages::book::{Entered, entered_words};
use reeve_pages::plain;
use reeve_shop::{Answer, Order, Shop};

use crate::book_args::{At, Entering};
use crate::failure::{Failure, print_faults, say};
use crate::forms::WhichShop;
use crate::opening::{day, open};
use crate::output::print_done;
use crate::sheets::PageMaker;

/// A shop with what its pages are made with, and a day.
pub(crate) struct Bookkeeping {
    pub(crate) shop: Shop,
    pub(crate) desk: PageMaker,
    pub(crate) day: NaiveDate,
    pub(crate) folder: PathBuf,
}

impl Bookkeeping {
    pub(crate) fn open(at: &At) -> Result<Self, Failure> {
        Self::of(&at.shop(), at.on)
    }

    /// For what is entered: on a day after today only on the maker's word.
    pub(crate) fn to_enter(entering: &Entering) -> Result<Self, Failure> {
        let (at, today) = (&entering.at, day(None));
        match at.on {
            Some(on) if on > today && !entering.ahead => Err(Failure::input(
                format!("{on} is after today, {today}"),
                "say the right day with --on; if it is meant, say --ahead too",
            )),
            _ => Self::open(at),
        }
    }

    pub(crate) fn of(shop: &WhichShop, on: Option<NaiveDate>) -> Result<Self, Failure> {
        let Answer { value: shop, mut faults } = open(shop)?;
        let desk = PageMaker::new(&shop, &mut faults)?;
        print_faults(&faults.into());
        let folder = shop
            .book_folder()
            .ok_or_else(|| Failure::input("the starter shop keeps no book", "name a shop with --shop DIR"))?;
        Ok(Self { shop, desk, day: day(on), folder })
    }

    pub(crate) fn order(&self, word: &str, wish: &reeve_shop::Wish) -> Result<Order, Failure> {
        let Answer { value: order, faults } = self.shop.order(word, wish, self.day);
        let Some(order) = order else { return Err(Failure::Input(faults.into())) };
        print_faults(&faults.into());
        Ok(order)
    }

    /// The shop's book.
    pub(crate) fn book(&self) -> Result<Book, Failure> {
        let opened = Book::open(&self.folder.join(BOOK_FILE), false)?;
        tell_brought_up(opened.brought_up.as_ref());
        Ok(opened.book)
    }

    /// Enters something in the shop's book, which is begun for it if there is none.
    pub(crate) fn enter<T>(&self, work: impl FnMut(&mut Book) -> Result<T, Failure>) -> Result<T, Failure> {
        let (entered, brought_up) = Book::enter(&self.folder.join(BOOK_FILE), work)?;
        tell_brought_up(brought_up.as_ref());
        Ok(entered)
    }

    /// A commission of the shop, ready to be entered.
    /// Says what was entered.
    pub(crate) fn tell(&self, entered: &Entered<'_>) {
        print_done(&(plain(&entered_words(entered, self.desk.words())) + "\n"));
    }

    pub(crate) fn issuing<'a>(&'a self, order: &'a Order, note: Option<String>) -> Issuing<'a> {
        Issuing { order, basis: self.desk.basis(), shop: &self.shop, day: self.day, note }
    }
}

fn tell_brought_up(brought: Option<&BroughtUp>) {
    let Some(brought) = brought else { return };
    let stands = format!("as it was, it stands in {}", brought.backup.display());
    say(&format!("look: the book was brought to a newer form; {stands}"));
    if brought.sealed > 0 {
        let rows = plural("row", brought.sealed);
        say(&format!("look: {rows} sealed as they stood; what was altered before can't be noticed"));
    }
}
