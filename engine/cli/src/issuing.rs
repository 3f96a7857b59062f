//! `reeve book issue`: a quote with a number, kept as it is.

use std::path::Path;

use chrono::NaiveDate;
use reeve_book::marks::{Markup, address_mark, fill, mark, name_mark};
use reeve_book::{
    Before, Book, BookError, BookedClient, Enquiry, NumberPattern, Origin, QuoteFigures, QuoteNumber, Snapshot,
};
use reeve_costing::calendar::Calendar;
use reeve_costing::cost::Cost;
use reeve_costing::pricing::Priced;
use reeve_costing::quote::{Quote, QuoteClient};
use reeve_costing::rates::Rates;
use reeve_costing::takeoff::plural;
use reeve_pages::book::{Queue, changed, passing_words, queue};
use reeve_shop::{Order, Shop};
use rust_decimal::prelude::FromPrimitive;
use rust_decimal::{Decimal, RoundingStrategy};

use crate::expected;
use crate::failure::{Failure, say};
use crate::output::print_done;
use crate::papers::{Paper, Papers, WaitingPapers, file_name};
use crate::sheets::PageMaker;

/// A commission with its price, ready to be issued.
pub(crate) struct Issuing<'a> {
    pub(crate) order: &'a Order,
    pub(crate) desk: &'a PageMaker,
    pub(crate) day: NaiveDate,
    pub(crate) note: Option<String>,
}

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

impl Issuing<'_> {
    /// Enters the quote. Its papers are written beside their places before it is entered, so that a full disk stops it.
    pub(crate) fn issue(&self, book: &mut Book, shop: &Shop, papers: &Papers) -> Result<Issued, Failure> {
        let asked = self.asked();
        let looks = self.when_ready(book)?;
        let rule = self.desk.rates().number_pattern.clone().unwrap_or_else(|| NumberPattern::USUAL.to_owned());
        let (mut pages, mut changes, mut remarks, mut waiting) = (Vec::new(), Vec::new(), Vec::new(), None);
        let number = book.issue(&asked, &NumberPattern(rule), &origin(shop), |number, before| {
            let mut order = self.order.clone();
            if let Some(before) = before {
                self.check_paid(number, before)?;
                order.priced.settle(before.paid);
            }
            remarks.clone_from(&order.priced.remarks);
            let snapshot = self.snapshot(number, before, order)?;
            let filled = |(name, text): &Paper| (name.clone(), fill(text, Markup::of(name), &asked.client));
            pages = snapshot.pages.iter().map(filled).collect();
            let all = snapshot.changes.iter().chain(&snapshot.maker_changes);
            changes = all.map(|change| fill(change, Markup::Text, &asked.client)).collect();
            waiting = Some(papers.stage(&file_name(&number.words()), &pages)?);
            Ok::<_, Failure>(snapshot)
        })?;
        let page = pages.into_iter().find(|(name, _)| name == "quote.txt").map(|(_, text)| text).unwrap_or_default();
        Ok(Issued { number, looks, changes, remarks, waiting, page })
    }

    /// Enters the quote and no more; for a sample, whose pages are nobody's to read.
    pub(crate) fn enter(&self, book: &mut Book, shop: &Shop) -> Result<QuoteNumber, Failure> {
        let pattern = NumberPattern(NumberPattern::USUAL.to_owned());
        book.issue(&self.asked(), &pattern, &origin(shop), |number, before| {
            self.snapshot(number, before, self.order.clone())
        })
    }

    pub(crate) fn asked(&self) -> Enquiry {
        let commission = &self.order.commission;
        Enquiry {
            reference: commission.reference.clone(),
            title: commission.title.clone(),
            client: BookedClient { name: commission.client.name.clone(), address: commission.client.address.clone() },
            day: self.day,
            note: self.note.clone(),
        }
    }

    /// The pages under a number, with marks in place of what is personal.
    fn snapshot(&self, number: &QuoteNumber, before: Option<&Before>, mut order: Order) -> Result<Snapshot, Failure> {
        let figures = figures(&order.priced, self.order.commission.needed_by, self.desk.rates());
        let client = self.asked().client;
        mark_quote(&mut order.priced.quote, &client);
        order.priced.quote.reference = number.words();
        let mut maker_changes = Vec::new();
        if let Some(before) = before {
            let old: Quote = serde_json::from_str(&before.quote)
                .map_err(|error| BookError::Damaged(format!("a quote's document can't be read: {error}")))?;
            let changed = changed((&old, &before.figures), (&order.priced.quote, &figures), self.desk.words());
            if !changed.is_more_than_dates && !before.lapsed {
                return Err(BookError::Unchanged(number.number.clone()).into());
            }
            order.priced.quote.changes = changed.client;
            maker_changes = changed.maker;
        }
        Ok(Snapshot {
            pages: self.desk.papers(&order, (true, true))?,
            changes: order.priced.quote.changes.clone(),
            maker_changes,
            figures,
        })
    }

    /// From its first quote on the book says what was paid: a payment that stands in the file alone is not lost in silence,
    /// nor is money of one currency counted in another.
    fn check_paid(&self, number: &QuoteNumber, before: &Before) -> Result<(), BookError> {
        let (noted, currency) = (self.order.commission.paid, self.desk.rates().currency);
        let number = &number.number;
        if before.figures.currency != currency.code() && !before.paid.is_zero() {
            let why = format!(
                "{} {} was paid for {number}, and this quote is in {}",
                before.paid,
                before.figures.currency,
                currency.code()
            );
            return Err(BookError::Wrong(why, "enter the refund with `reeve book pay`, below zero, first".to_owned()));
        }
        if noted <= before.paid.max(Decimal::ZERO) {
            return Ok(());
        }
        let paid = currency.round_half_away(before.paid);
        let why = format!("its file says that {noted} is paid, and by the book {paid} was paid for {number}");
        let more = noted - before.paid;
        let remedy = format!(
            "enter the payment with `reeve book pay {number} {more}`, and take `paid` out of {}.toml: from the first quote \
             on the book counts what was paid",
            self.order.commission.reference
        );
        Err(BookError::Wrong(why, remedy))
    }

    /// When it can be ready, behind what waits; and by how much what was asked or promised is missed.
    pub(crate) fn when_ready(&self, book: &Book) -> Result<Vec<String>, Failure> {
        let rates = self.desk.rates();
        let Some(weekly) = rates.weekly_hours else { return Ok(Vec::new()) };
        let waiting = book.list(self.day)?;
        let reference = &self.order.commission.reference;
        let others: Vec<_> = waiting.into_iter().filter(|one| one.reference != *reference).collect();
        let queue: Queue = queue(&others, self.day, weekly, rates);
        let hours = self.order.priced.sure.outcome.cost.hours;
        let ready = |promised| queue.ready_behind(hours, promised, rates);
        let mut told = Vec::new();
        if let Some(day) = ready(None).and_then(|ready| ready.on) {
            told.push(format!("It can honestly be ready by {day}{}.", counted(&queue, &rates.calendar)));
        }
        let commission = &self.order.commission;
        for (what, day) in
            [("The client needs it by", commission.needed_by), ("It is promised for", commission.promised)]
        {
            let Some((day, missed)) = day.zip(ready(day).and_then(|ready| ready.missed)) else { continue };
            let late = missed.days.map_or_else(String::new, |days| format!("{} too late, ", plural("day", days)));
            // Up: a promise that is missed by a minute is not missed by nothing.
            let short = missed.hours.round_dp_with_strategy(1, RoundingStrategy::ToPositiveInfinity).normalize();
            told.push(format!("{what} {day}: {late}{short} bench hours short."));
        }
        Ok(told)
    }
}

/// What makes the quote: this program, and the knots at hand.
fn origin(shop: &Shop) -> Origin {
    Origin { program: env!("CARGO_PKG_VERSION").to_owned(), catalogue: shop.knots_digest() }
}

/// What the day it is ready counts besides its own hours.
fn counted(queue: &Queue, calendar: &Calendar) -> String {
    let behind = match queue.works.len() {
        0 => String::new(),
        works => format!(", behind {works} accepted before"),
    };
    let after = if calendar.after.is_empty() {
        String::new()
    } else {
        format!("; after the last, {}", passing_words(&calendar.after))
    };
    format!("{behind} (days before the first knot: {}{after})", passing_words(&calendar.lead))
}

/// When a commission can be ready, if the shop keeps a book. What is wrong with the book stops no quote.
pub(crate) fn when_ready(book: &Path, order: &Order, desk: &PageMaker, day: NaiveDate) -> Vec<String> {
    if !book.exists() {
        return Vec::new();
    }
    let opened = Book::open(book, false).map_err(Failure::from);
    let told = opened.and_then(|opened| Issuing { order, desk, day, note: None }.when_ready(&opened.book));
    told.unwrap_or_else(|_| vec!["The order book can't be read: `reeve book check` says why.".to_owned()])
}

/// The order with what the shop's book says was paid, where it was quoted from there. What is wrong with the book stops no
/// quote.
pub(crate) fn settled(book: &Path, order: &Order, day: NaiveDate) -> Order {
    let mut order = order.clone();
    if book.exists()
        && let Ok(opened) = Book::open(book, false)
        && let Ok(Some((_, paid))) = opened.book.paid_for(&order.commission.reference, day)
    {
        order.priced.settle(paid);
    }
    order
}

/// Marks in place of the client, wherever the quote says who that is.
fn mark_quote(quote: &mut Quote, client: &BookedClient) {
    let marked = |text: &mut String| *text = mark(text, client);
    marked(&mut quote.title);
    quote.note.iter_mut().for_each(marked);
    for line in &mut quote.lines {
        marked(&mut line.text);
        line.about.iter_mut().for_each(marked);
    }
    for named in quote.allowances.iter_mut().chain(&mut quote.charges) {
        marked(&mut named.text);
    }
    let address = (0..quote.client.address.len()).map(address_mark).collect();
    quote.client = QuoteClient { name: name_mark(), address };
}

fn figures(priced: &Priced, needed_by: Option<NaiveDate>, rates: &Rates) -> QuoteFigures {
    let (cost, quote): (&Cost, &Quote) = (&priced.outcome.cost, &priced.quote);
    let metres = |mm: f64| Decimal::from_f64(mm / 1000.0).unwrap_or_default().round_dp(3).normalize();
    let six = |amount: Decimal| amount.round_dp(6).normalize();
    let (steps, paced) = expected::figures(priced, rates);
    QuoteFigures {
        currency: quote.currency.clone(),
        net: quote.totals.net,
        gross: quote.totals.gross,
        deposit: quote.deposit.amount,
        paid: quote.totals.paid,
        pace: Decimal::from_f64(rates.bench.pace).unwrap_or(Decimal::ONE),
        hours: cost.hours.normalize(),
        sure_hours: six(priced.sure.outcome.cost.hours),
        confidence: priced.sure.confidence.normalize(),
        material: six(cost.material() + cost.other),
        cord_cost: six(cost.cord),
        labour: six(cost.labour()),
        cost: six(cost.total()),
        fees: six(priced.outcome.fees),
        margin: six(priced.outcome.margin),
        cord: priced.job.cords.iter().map(|cord| (cord.cord.name.clone(), metres(cord.cut.as_mm()))).collect(),
        steps,
        paced: Some(paced),
        valid_until: quote.valid_until,
        promised: quote.promised,
        needed_by,
    }
}
