//! The book as text: all of it is entered or nothing, and what is entered can be looked at in every view, checked, and
//! written out again as it was.

use std::path::Path;

use reeve_book::{
    Actuals, BOOK_FILE, Book, BookError, BookedClient, Bought, CordUsed, Enquiry, NumberPattern, Origin, PacedFigures,
    QuoteFigures, Snapshot, State, StepFigures, WorkLine,
};
use reeve_costing::rates::Rates;
use reeve_office::{AllActuals, Queue, summary};
use reeve_pages::Words;
use reeve_pages::book as views;
use reeve_shop::{Admissions, Folder, Shop};
use rust_decimal::Decimal;
use tempfile::TempDir;

use crate::shop::{day, no_program};
use crate::{Target, holds as must};

pub(super) const TARGET: Target = Target { name: "import", holds, seeds, longest: 8_000, runs: 300 };

thread_local! {
    static RATES: Rates = Shop::open(Folder::Starter, no_program(), Admissions::default()).value.rates().unwrap().clone();
    /// An empty book takes longer to make than to copy.
    static EMPTY: Vec<u8> = empty();
}

fn empty() -> Vec<u8> {
    let folder = TempDir::new().unwrap();
    let path = folder.path().join(BOOK_FILE);
    drop(Book::open(&path, true).unwrap());
    std::fs::read(path).unwrap()
}

fn new_book(folder: &Path) -> Book {
    let path = folder.join(BOOK_FILE);
    EMPTY.with(|empty| std::fs::write(&path, empty)).unwrap();
    Book::open(&path, false).unwrap().book
}

fn holds(bytes: &[u8]) {
    let folder = TempDir::new().unwrap();
    let mut book = new_book(folder.path());
    match book.import(bytes) {
        Ok(read) => {
            let text = exported(&book);
            let entered = text.lines().skip(1).filter(|line| !is_of_a_seal(line)).count();
            assert!(read.lines >= entered, "more was entered than was read");
            assert!(!read.without_seals || read.lines == entered, "not every line was entered");
            again(&text);
            look(&book, bytes);
        }
        Err(trouble) => {
            of_trouble(&trouble);
            assert_eq!(exported(&book).lines().count(), 1, "a part was entered");
        }
    }
}

/// Whether a line of the text is a seal: a form without any gets them when it is read in.
fn is_of_a_seal(line: &str) -> bool {
    line.starts_with(r#"{"in":"seal""#)
}

/// The same book as text of the second form, which had no seals: else no changed text would get past them.
fn without_seals(text: &str) -> String {
    let rows = text.lines().skip(1).filter(|line| !is_of_a_seal(line));
    let head = r#"{"book":"reeve order book","form":2}"#;
    std::iter::once(head).chain(rows).fold(String::new(), |text, line| text + line + "\n")
}

fn exported(book: &Book) -> String {
    let mut text = Vec::new();
    book.export(&mut text).unwrap();
    String::from_utf8(text).unwrap()
}

/// What was written out is read in again, as the same book.
fn again(text: &str) {
    let folder = TempDir::new().unwrap();
    let mut book = new_book(folder.path());
    book.import(text.as_bytes()).unwrap_or_else(|trouble| panic!("{trouble}\n{text}"));
    assert_eq!(exported(&book), text, "a book is not what its text says");
}

/// Every view. A book that was entered can be read.
fn look(book: &Book, bytes: &[u8]) {
    let typed = String::from_utf8_lossy(bytes);
    for finding in book.check(|_, _| None).unwrap() {
        assert!(!finding.what.is_empty());
    }
    let courses = book.courses(day()).unwrap();
    let list = book.list(day()).unwrap();
    RATES.with(|rates| {
        let words = Words::new(rates).unwrap();
        let tell = |view: &dyn erased::Told| must::figures_of(&view.told(), &typed);
        tell(&views::list_page(&list, day(), rates, &words));
        tell(&views::list_json(&list, day()));
        let table = views::list_csv(&list).unwrap();
        assert!(table.lines().count() > list.len(), "{table}");
        let queue = Queue::of(&list, day(), Decimal::from(12), rates);
        tell(&views::queue_page(&queue, rates, &words));
        tell(&views::queue_json(&queue, rates));
        let periods = summary(&courses, None, day());
        tell(&views::summary_page(&periods, "All", rates, &words));
        tell(&views::summary_json(&periods, rates));
        views::summary_csv(&periods).unwrap();
        let all = AllActuals::of(&courses, None);
        tell(&views::all_actuals_page(all.as_ref(), "All", rates, &words));
        for course in &courses {
            tell(&views::actuals_page(course, rates, &words));
            tell(&views::actuals_json(course));
        }
        for commission in &list {
            match book.whole(commission.name(), day()) {
                Ok(whole) => {
                    tell(&views::history_page(&whole, rates, &words));
                    tell(&views::history_json(&whole));
                }
                // Two enquiries may go by one name; that is asked back.
                Err(trouble) => of_trouble(&trouble),
            }
        }
    });
}

fn of_trouble(trouble: &BookError) {
    assert!(!trouble.to_string().is_empty());
}

mod erased {
    //! Views of many types, told alike.

    pub(super) trait Told {
        fn told(&self) -> String;
    }

    impl<T: serde::Serialize> Told for T {
        fn told(&self) -> String {
            serde_json::to_string(self).unwrap()
        }
    }
}

/// Books of an enquiry, and of a quote that was accepted, paid in part and worked at.
fn seeds() -> Vec<Vec<u8>> {
    let folder = TempDir::new().unwrap();
    let mut book = new_book(folder.path());
    let asked = |reference: &str| Enquiry {
        reference: reference.to_owned(),
        title: "A hanger".to_owned(),
        client: BookedClient { name: "Orla Quill".to_owned(), address: vec!["2 Net Loft".to_owned()] },
        day: day(),
        note: Some("by letter".to_owned()),
    };
    book.enquire(&asked("enquiry")).unwrap();
    let enquiry = exported(&book);
    let pages = ["quote.json", "quote.txt"].map(|name| (name.to_owned(), "for Orla Quill".to_owned()));
    let origin = Origin { program: "0.1.0".to_owned(), catalogue: "0123".to_owned() };
    let pattern = NumberPattern(NumberPattern::USUAL.to_owned());
    let number = book.issue(&asked("hanger"), &pattern, &origin, |_, _| {
        Ok::<_, BookError>(Snapshot {
            figures: figures(),
            pages: pages.into(),
            changes: vec!["another cord".to_owned()],
            maker_changes: Vec::new(),
        })
    });
    let number = number.unwrap().number;
    book.mark(&number, State::Accepted, day(), None).unwrap();
    book.pay(&number, Decimal::from(40), day(), Some("deposit")).unwrap();
    let took = Actuals {
        work: vec![WorkLine { day: day(), step: Some("Sennit".to_owned()), minutes: 42.5, note: None }],
        cord: vec![CordUsed { day: day(), cord: "cotton-4-ecru".to_owned(), metres: 31.5 }],
        bought: vec![Bought { day: day(), amount: Decimal::from(7), what: "a ring".to_owned() }],
    };
    book.log(&number, &took, day()).unwrap();
    book.start(&number, Some("Sennit"), day().and_hms_opt(9, 30, 0).unwrap()).unwrap();
    let whole = exported(&book);
    [without_seals(&enquiry), without_seals(&whole), whole].map(String::into_bytes).into()
}

fn figures() -> QuoteFigures {
    let ten = Decimal::TEN;
    QuoteFigures {
        currency: "EUR".to_owned(),
        net: Decimal::ONE_HUNDRED,
        gross: Decimal::from(119),
        deposit: Decimal::from(40),
        paid: Decimal::ZERO,
        pace: Decimal::ONE,
        hours: ten,
        sure_hours: ten,
        confidence: Decimal::from(80),
        material: ten,
        cord_cost: ten,
        labour: ten,
        cost: ten,
        fees: Decimal::ONE,
        margin: ten,
        cord: vec![("cotton-4-ecru".to_owned(), ten)],
        steps: vec![StepFigures {
            step: "Sennit".to_owned(),
            base: ten,
            pull: Decimal::ONE,
            knot: Some("square".to_owned()),
            doubt: Decimal::ZERO,
        }],
        paced: Some(PacedFigures { base: ten, pull: Decimal::ONE, doubt: Decimal::ZERO, stated: ten }),
        valid_until: day(),
        promised: Some(day()),
        needed_by: None,
    }
}
