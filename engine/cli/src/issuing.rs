//! `reeve book issue`: a quote with a number, kept as it is.

use std::path::Path;

use chrono::NaiveDate;
use reeve_book::marks::{Kind, address_mark, fill, mark, name_mark};
use reeve_book::{Asked, Before, Book, Client, Figures, Number, NumberPattern, Origin, Snapshot, Trouble};
use reeve_costing::cost::Cost;
use reeve_costing::pricing::Priced;
use reeve_costing::quote::{Quote, QuoteClient};
use reeve_costing::rates::Rates;
use reeve_pages::book::{Queue, changed, queue};
use reeve_pages::json::costing_json;
use reeve_shop::{Order, Shop};
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;

use crate::expected;
use crate::failure::{Failure, say};
use crate::output::{print, write_files};
use crate::sheets::{Desk, json};

/// A commission with its price, ready to be issued.
pub(crate) struct Issuing<'a> {
    pub(crate) order: &'a Order,
    pub(crate) desk: &'a Desk,
    pub(crate) day: NaiveDate,
    pub(crate) note: Option<String>,
}

impl Issuing<'_> {
    /// Enters the quote, prints it, and writes its pages if they are asked for.
    pub(crate) fn issue(&self, book: &mut Book, shop: &Shop, out: Option<&Path>) -> Result<(), Failure> {
        let asked = self.asked();
        let figures = figures(&self.order.priced, self.order.commission.needed_by, self.desk.rates());
        for look in self.when_ready(book)? {
            say(&format!("look: {look}"));
        }
        let rule = self.desk.rates().number_pattern.clone().unwrap_or_else(|| NumberPattern::USUAL.to_owned());
        let origin = Origin { program: env!("CARGO_PKG_VERSION").to_owned(), catalogue: shop.knots_digest() };
        let mut kept = Vec::new();
        let number = book.issue(&asked, &figures, &NumberPattern(rule), &origin, |number, before| {
            let snapshot = self.snapshot(number, before, &figures)?;
            kept.clone_from(&snapshot.pages);
            for change in snapshot.changes.iter().chain(&snapshot.maker_changes) {
                say(&format!("changed: {}", fill(change, Kind::Text, &asked.client)));
            }
            Ok::<_, Failure>(snapshot)
        })?;
        let pages: Vec<(&str, String)> =
            kept.iter().map(|(name, text)| (name.as_str(), fill(text, Kind::of(name), &asked.client))).collect();
        if let Some(dir) = out {
            for path in write_files(dir, &pages)? {
                say(&format!("wrote {}", path.display()));
            }
        }
        for remark in &self.order.priced.remarks {
            say(&format!("look: {remark}"));
        }
        say(&format!("entered in the book as {}", number.words()));
        print(pages.iter().find(|(name, _)| *name == "quote.txt").map_or("", |(_, text)| text))
    }

    pub(crate) fn asked(&self) -> Asked {
        let commission = &self.order.commission;
        Asked {
            reference: commission.reference.clone(),
            title: commission.title.clone(),
            client: Client { name: commission.client.name.clone(), address: commission.client.address.clone() },
            day: self.day,
            note: self.note.clone(),
        }
    }

    /// The pages under a number, with marks in place of what is personal.
    fn snapshot(&self, number: &Number, before: Option<&Before>, figures: &Figures) -> Result<Snapshot, Failure> {
        let mut order = self.order.clone();
        let client = self.asked().client;
        mark_quote(&mut order.priced.quote, &client);
        order.priced.quote.reference = number.words();
        let mut maker_changes = Vec::new();
        if let Some(before) = before {
            let old: Quote = serde_json::from_str(&before.quote)
                .map_err(|error| Trouble::Damaged(format!("a quote's document can't be read: {error}")))?;
            let changed = changed((&old, &before.figures), (&order.priced.quote, figures), self.desk.words());
            if !changed.is_more_than_dates && !before.lapsed {
                return Err(Trouble::Unchanged(number.number.clone()).into());
            }
            order.priced.quote.changes = changed.client;
            maker_changes = changed.maker;
        }
        let mut pages = self.desk.papers(&order)?;
        let beside_costing = pages.partition_point(|(name, _)| !name.starts_with("bench"));
        pages.insert(beside_costing, ("costing.json", json(&costing_json(&order.priced))?));
        Ok(Snapshot {
            pages: pages.into_iter().map(|(name, text)| (name.to_owned(), text)).collect(),
            changes: order.priced.quote.changes.clone(),
            maker_changes,
        })
    }

    /// When it can be ready, behind what waits; and by how much what was asked or promised is missed.
    pub(crate) fn when_ready(&self, book: &Book) -> Result<Vec<String>, Failure> {
        let rates = self.desk.rates();
        let Some(weekly) = rates.weekly_hours else { return Ok(Vec::new()) };
        let waiting = book.list(self.day)?;
        let reference = &self.order.commission.reference;
        let others: Vec<_> = waiting.into_iter().filter(|one| one.reference != *reference).collect();
        let queue: Queue = queue(&others, self.day, weekly, rates);
        let hours = queue.hours() + self.order.priced.sure.outcome.cost.hours;
        let commission = &self.order.commission;
        let ready = rates.calendar.done(self.day, hours, weekly);
        let mut told = Vec::new();
        if let Some(ready) = ready {
            let behind = queue.works.len();
            let after = if behind == 0 { String::new() } else { format!(", behind {behind} accepted before") };
            told.push(format!("It can honestly be ready by {ready}{after}."));
        }
        for (what, day) in
            [("The client needs it by", commission.needed_by), ("It is promised for", commission.promised)]
        {
            let Some(day) = day else { continue };
            let short = hours - rates.calendar.hours_between(self.day, day, weekly);
            if short > Decimal::ZERO {
                told.push(format!("{what} {day}: {} bench hours short.", short.round_dp(1).normalize()));
            }
        }
        Ok(told)
    }
}

/// When a commission can be ready, if the shop keeps a book. What is wrong with the book stops no quote.
pub(crate) fn when_ready(book: &Path, order: &Order, desk: &Desk, day: NaiveDate) -> Vec<String> {
    if !book.exists() {
        return Vec::new();
    }
    let opened = Book::open(book, false).map_err(Failure::from);
    let told = opened.and_then(|opened| Issuing { order, desk, day, note: None }.when_ready(&opened.book));
    told.unwrap_or_else(|_| vec!["The order book can't be read: `reeve book check` says why.".to_owned()])
}

/// Marks in place of the client, wherever the quote says who that is.
fn mark_quote(quote: &mut Quote, client: &Client) {
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

fn figures(priced: &Priced, needed_by: Option<NaiveDate>, rates: &Rates) -> Figures {
    let (cost, quote): (&Cost, &Quote) = (&priced.outcome.cost, &priced.quote);
    let metres = |mm: f64| Decimal::from_f64(mm / 1000.0).unwrap_or_default().round_dp(3).normalize();
    let deposit = quote.schedule.first().filter(|_| quote.schedule.len() > 1);
    let six = |amount: Decimal| amount.round_dp(6).normalize();
    let (steps, paced) = expected::figures(priced, rates);
    Figures {
        currency: quote.currency.clone(),
        net: quote.totals.net,
        gross: quote.totals.gross,
        deposit: deposit.map_or(Decimal::ZERO, |part| part.amount),
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
