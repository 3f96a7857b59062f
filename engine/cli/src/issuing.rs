//! `reeve book issue`: a quote with a number, its papers in their places.

use std::path::Path;

use chrono::NaiveDate;
use reeve_book::marks::{Markup, fill};
use reeve_book::{Book, QuoteNumber};
use reeve_office::{Issuing, Numbered, Worded};
use reeve_pages::book::{cost_change_words, quote_change_words, ready_words};
use reeve_pages::plain;
use reeve_pages::remarks::remark_words;
use reeve_shop::Order;

use crate::failure::{Failure, say};
use crate::output::print_done;
use crate::papers::{Paper, Papers, WaitingPapers, file_name};
use crate::sheets::PageMaker;

/// A quote that is entered.
pub(crate) struct Issued {
    number: QuoteNumber,
    looks: Vec<String>,
    changes: Vec<String>,
    remarks: Vec<String>,
    waiting: Option<WaitingPapers>,
    page: String,
}

impl Issued {
    /// Says what was entered, puts the papers into their places, and prints the quote.
    pub(crate) fn tell(self) -> Result<(), Failure> {
        let told = |what: &str, lines: &[String]| {
            for line in lines {
                say(&format!("{what}: {line}"));
            }
        };
        told("look", &self.looks);
        told("changed", &self.changes);
        told("look", &self.remarks);
        say(&format!("entered in the book as {}", self.number.words()));
        self.waiting.map_or(Ok(()), WaitingPapers::put)?;
        print_done(&self.page);
        Ok(())
    }
}

/// Enters the quote. Its papers are written beside their places before it is entered, so that a full disk stops it.
pub(crate) fn issue(
    issuing: &Issuing<'_>,
    desk: &PageMaker,
    book: &mut Book,
    papers: &Papers,
) -> Result<Issued, Failure> {
    let looks = when_ready(book, issuing.order, desk, issuing.day)?;
    let client = issuing.enquiry().client;
    let (mut pages, mut changes, mut remarks, mut waiting) = (Vec::new(), Vec::new(), Vec::new(), None);
    let number = issuing.issue(book, |numbered| {
        let words = |remark| plain(&remark_words(remark, desk.words()));
        remarks = numbered.order.priced.remarks.iter().map(words).collect();
        let name = file_name(&numbered.number.words());
        let worded = worded(numbered, desk)?;
        let filled = |(name, text): &Paper| (name.clone(), fill(text, Markup::of(name), &client));
        pages = worded.pages.iter().map(filled).collect();
        let all = worded.changes.iter().chain(&worded.maker_changes);
        changes = all.map(|change| fill(change, Markup::Text, &client)).collect();
        waiting = Some(papers.stage(&name, &pages)?);
        Ok::<_, Failure>(worded)
    })?;
    let page = pages.into_iter().find(|(name, _)| name == "quote.txt").map(|(_, text)| text).unwrap_or_default();
    Ok(Issued { number, looks, changes, remarks, waiting, page })
}

/// The pages under a number, with marks in place of what is personal.
pub(crate) fn worded(Numbered { mut order, changes, .. }: Numbered, desk: &PageMaker) -> Result<Worded, Failure> {
    let client: Vec<String> = changes.client.iter().map(|change| quote_change_words(change, desk.words())).collect();
    let maker_changes = changes.maker.iter().map(|change| cost_change_words(change, desk.words())).collect();
    order.priced.quote.changes.clone_from(&client);
    Ok(Worded { pages: desk.papers(&order, (true, true))?, changes: client, maker_changes })
}

/// When a commission can be ready, behind what waits; and by how much what was asked or promised is missed.
pub(crate) fn when_ready(book: &Book, order: &Order, desk: &PageMaker, day: NaiveDate) -> Result<Vec<String>, Failure> {
    let when = reeve_office::when_ready(book, order, desk.rates(), day)?;
    Ok(when.map(|when| ready_words(&when, &desk.rates().calendar, desk.words())).unwrap_or_default())
}

/// The same, if the shop keeps a book. What is wrong with the book stops no quote.
pub(crate) fn when_ready_by(book: &Path, order: &Order, desk: &PageMaker, day: NaiveDate) -> Vec<String> {
    if !book.exists() {
        return Vec::new();
    }
    let opened = Book::open(book, false).map_err(Failure::from);
    let told = opened.and_then(|opened| when_ready(&opened.book, order, desk, day));
    told.unwrap_or_else(|_| vec!["The order book can't be read: `reeve book check` says why.".to_owned()])
}

/// The order with what the shop's book says was paid, if there is one. What is wrong with the book stops no quote.
pub(crate) fn settled_by(book: &Path, order: &Order, day: NaiveDate) -> Order {
    let opened = book.exists().then(|| Book::open(book, false)).and_then(Result::ok);
    let settled = opened.and_then(|opened| reeve_office::settled(&opened.book, order, day).ok());
    settled.unwrap_or_else(|| order.clone())
}
