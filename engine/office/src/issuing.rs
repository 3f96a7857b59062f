//! Enquiries and quotes: what is entered in the book, kept under a number, and never counted twice.

use chrono::NaiveDate;
use reeve_book::marks::{address_mark, mark, name_mark};
use reeve_book::{
    Before, Book, BookError, BookedClient, Enquiry, NumberPattern, Origin, QuoteFigures, QuoteNumber, Snapshot,
};
use reeve_costing::basis::Basis;
use reeve_costing::cost::Cost;
use reeve_costing::money::{decimal, to_millionths};
use reeve_costing::pricing::Priced;
use reeve_costing::quote::{Quote, QuoteClient};
use reeve_shop::{Order, Shop};
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;

use crate::changes::Changes;
use crate::error::OfficeError;
use crate::expected;

/// A commission with its price, ready to be entered on a day.
#[derive(Debug)]
pub struct Issuing<'a> {
    /// The commission.
    pub order: &'a Order,
    /// The rates it was priced at.
    pub basis: &'a Basis,
    /// What makes it: the shop's knots are told from others.
    pub shop: &'a Shop,
    /// The day of the entry.
    pub day: NaiveDate,
    /// A remark.
    pub note: Option<String>,
}

/// What is laid out of a quote before it is entered.
#[derive(Debug)]
pub struct Numbered {
    /// Its number.
    pub number: QuoteNumber,
    /// The order as it is kept: numbered, what was paid counted, and with marks in place of what is personal.
    pub order: Order,
    /// What changed against the quote that it supersedes; nothing in a first one.
    pub changes: Changes,
}

/// What is kept of a quote, in words.
#[derive(Debug, Default)]
pub struct Worded {
    /// Pages and documents under the names of their files, `quote.json` among them.
    pub pages: Vec<(String, String)>,
    /// What changed, for the client.
    pub changes: Vec<String>,
    /// The same for the maker alone.
    pub maker_changes: Vec<String>,
}

impl Issuing<'_> {
    /// What is asked, by whom and when.
    pub fn enquiry(&self) -> Enquiry {
        let commission = &self.order.commission;
        Enquiry {
            reference: commission.reference.clone(),
            title: commission.title.clone(),
            client: BookedClient { name: commission.client.name.clone(), address: commission.client.address.clone() },
            day: self.day,
            note: self.note.clone(),
        }
    }

    /// Enters the quote under the next number. `word` words it and lays it out once the number is known; nothing is entered
    /// if that fails.
    ///
    /// # Errors
    /// What `word` answers; [`OfficeError`] when the book refuses, nothing but dates has changed, or the commission's file and
    /// the book don't agree on what was paid.
    pub fn issue<E: From<OfficeError>>(
        &self,
        book: &mut Book,
        mut word: impl FnMut(Numbered) -> Result<Worded, E>,
    ) -> Result<QuoteNumber, E> {
        let rule = self.basis.rates.number_pattern.clone().unwrap_or_else(|| NumberPattern::USUAL.to_owned());
        let issued = book.issue(&self.enquiry(), &NumberPattern(rule), &self.origin(), |number, before| {
            let (numbered, figures) = self.numbered(number, before)?;
            let Worded { pages, changes, maker_changes } = word(numbered).map_err(Stopped::Own)?;
            Ok::<_, Stopped<E>>(Snapshot { figures, pages, changes, maker_changes })
        });
        issued.map_err(|stopped| match stopped {
            Stopped::Own(error) => error,
            Stopped::Office(error) => error.into(),
        })
    }

    fn numbered(&self, number: &QuoteNumber, before: Option<&Before>) -> Result<(Numbered, QuoteFigures), OfficeError> {
        let mut order = self.order.clone();
        if let Some(before) = before {
            self.check_paid(number, before)?;
            order.priced.settle(before.paid);
        }
        let figures = figures(&order.priced, order.commission.needed_by, self.basis);
        let quote = &mut order.priced.quote;
        mark_quote(quote, &self.enquiry().client);
        quote.reference = number.words();
        let mut changes = Changes::default();
        if let Some(before) = before {
            let old: Quote = serde_json::from_str(&before.quote)
                .map_err(|error| BookError::Damaged(format!("a quote's document can't be read: {error}")))?;
            changes = Changes::between((&old, &before.figures), (quote, &figures), self.basis.rates.currency);
            if !changes.is_more_than_dates && !before.lapsed {
                return Err(BookError::Unchanged(number.number.clone()).into());
            }
        }
        Ok((Numbered { number: number.clone(), order, changes }, figures))
    }

    /// What makes the quote: this program, and the knots at hand.
    fn origin(&self) -> Origin {
        Origin { program: env!("CARGO_PKG_VERSION").to_owned(), catalogue: self.shop.knots_digest() }
    }

    /// From its first quote on the book says what was paid: a payment that stands in the file alone is not lost in silence,
    /// nor is money of one currency counted in another.
    fn check_paid(&self, number: &QuoteNumber, before: &Before) -> Result<(), BookError> {
        let (noted, currency) = (self.order.commission.paid, self.basis.rates.currency);
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
}

/// What stopped an entry: whoever words it, or the office.
enum Stopped<E> {
    Own(E),
    Office(OfficeError),
}

impl<E> From<OfficeError> for Stopped<E> {
    fn from(error: OfficeError) -> Self {
        Self::Office(error)
    }
}

impl<E> From<BookError> for Stopped<E> {
    fn from(error: BookError) -> Self {
        Self::Office(error.into())
    }
}

/// The order with what the book says was paid, where it was quoted from there.
///
/// # Errors
/// When the book can't be read.
pub fn settled(book: &Book, order: &Order, day: NaiveDate) -> Result<Order, BookError> {
    let mut order = order.clone();
    if let Some((_, paid)) = book.paid_for(&order.commission.reference, day)? {
        order.priced.settle(paid);
    }
    Ok(order)
}

/// Reckons a quote's kept document anew: what does not hold, in words.
pub fn recheck(document: &str, figures: &QuoteFigures) -> Option<String> {
    let quote: Quote = match serde_json::from_str(document) {
        Ok(quote) => quote,
        Err(error) => return Some(format!("its document can't be read: {error}")),
    };
    if quote.totals.gross != figures.gross {
        return Some(format!("its document comes to {}, and the book says {}", quote.totals.gross, figures.gross));
    }
    quote.recheck()
}

/// Marks in place of the client, wherever the quote says who that is.
fn mark_quote(quote: &mut Quote, client: &BookedClient) {
    let marked = |text: &mut String| *text = mark(text, client);
    marked(&mut quote.title);
    quote.note.iter_mut().for_each(marked);
    for line in &mut quote.lines {
        marked(&mut line.text);
        line.about.iter_mut().chain(&mut line.finished).for_each(marked);
    }
    for named in quote.allowances.iter_mut().chain(&mut quote.charges) {
        named.text.iter_mut().for_each(marked);
    }
    let address = (0..quote.client.address.len()).map(address_mark).collect();
    quote.client = QuoteClient { name: name_mark(), address };
}

fn figures(priced: &Priced, needed_by: Option<NaiveDate>, basis: &Basis) -> QuoteFigures {
    let (cost, quote): (&Cost, &Quote) = (&priced.outcome.cost, &priced.quote);
    let metres = |mm: f64| decimal(mm / 1000.0, 3).normalize();
    let (steps, paced) = expected::figures(priced, basis);
    QuoteFigures {
        currency: quote.currency.clone(),
        net: quote.totals.net,
        gross: quote.totals.gross,
        deposit: quote.deposit.amount,
        paid: quote.totals.paid,
        pace: Decimal::from_f64(basis.rates.bench.pace).unwrap_or(Decimal::ONE),
        hours: cost.hours.normalize(),
        sure_hours: to_millionths(priced.sure.outcome.cost.hours),
        confidence: priced.sure.confidence.normalize(),
        material: to_millionths(cost.material() + cost.other),
        cord_cost: to_millionths(cost.cord),
        labour: to_millionths(cost.labour()),
        cost: to_millionths(cost.total()),
        fees: to_millionths(priced.outcome.fees),
        margin: to_millionths(priced.outcome.margin),
        cord: priced.needs.cords.iter().map(|cord| (cord.cord.name.clone(), metres(cord.cut.as_mm()))).collect(),
        steps,
        paced: Some(paced),
        valid_until: quote.valid_until,
        promised: quote.promised,
        needed_by,
    }
}
