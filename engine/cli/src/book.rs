//! `reeve book`: the order book.

use std::fs::File;
use std::io::{BufReader, BufWriter, IsTerminal, Write};
use std::path::{Path, PathBuf};

use chrono::{Datelike, NaiveDate};
use reeve_book::{BOOK_FILE, Book, Bought, CordUsed, Figures, State, Took, Trouble, WorkLine};
use reeve_costing::quote::Quote;
use reeve_costing::takeoff::plural;
use reeve_pages::Form;
use reeve_pages::book as pages;
use reeve_shop::Shop;
use reeve_shop::arguments::check_cord;
use rust_decimal::Decimal;

use crate::book_args::{At, Book as Command};
use crate::failure::{Failure, ask, print_faults, say};
use crate::forms::{AnyForm, TableForm, WhichShop};
use crate::issuing::Issuing;
use crate::learning::learn;
use crate::opening::{day, now, open};
use crate::output::print;
use crate::sheets::{Desk, csv, json};

pub(crate) fn run(command: Command) -> Result<(), Failure> {
    match command {
        Command::Enquire { commission, note, at } => enquire(&commission, note, &at),
        Command::Issue { commission, wished, note, out, at } => {
            let mut place = Place::open(&at)?;
            let order = place.order(&commission, &wished.wish()?)?;
            let mut book = place.book(true)?;
            let issuing = Issuing { order: &order, desk: &place.desk, day: place.day, note };
            issuing.issue(&mut book, &place.shop, out.as_deref())
        }
        Command::List { stands, client, year, at, form } => list(&stands, client.as_deref(), year, &at, form),
        Command::Show { commission, page, revision, at, form } => {
            show(&commission, page.as_deref(), revision, &at, form)
        }
        Command::Mark { commission, state, note, at } => mark(&commission, &state, note.as_deref(), &at),
        Command::Pay { commission, amount, note, at } => pay(&commission, &amount, note.as_deref(), &at),
        Command::Queue { at, form } => queue(&at, form),
        Command::Log { commission, minutes, step, cord, bought, note, at } => {
            let work = minutes.map(|minutes| (minutes, step, note));
            log(&commission, work, (&cord, &bought), &at)
        }
        Command::Start { commission, step, folder } => start(&commission, step.as_deref(), folder),
        Command::Stop { drop, note, folder } => stop(drop, note.as_deref(), folder),
        Command::Took { commission, year, at, form } => took(commission.as_deref(), year, &at, form),
        Command::Learn { yes, at } => learn(yes, &Place::open(&at)?),
        Command::Summary { year, at, form } => summary(year, &at, form),
        Command::Check { at } => check(&at),
        Command::Export { file, at } => export(&file, &at),
        Command::Import { file, at } => import(&file, &at),
        Command::Backup { file, at } => {
            Place::open(&at)?.book(false)?.back_up(&file)?;
            print(&format!("The book stands in {} as well.\n", file.display()))
        }
        Command::Forget { client, yes, at } => forget(&client, yes, &at),
    }
}

/// A shop with what its pages are made with, and a day.
pub(crate) struct Place {
    pub(crate) shop: Shop,
    pub(crate) desk: Desk,
    pub(crate) day: NaiveDate,
    pub(crate) folder: PathBuf,
}

impl Place {
    fn open(at: &At) -> Result<Self, Failure> {
        Self::of(&at.shop(), at.on)
    }

    fn of(shop: &WhichShop, on: Option<NaiveDate>) -> Result<Self, Failure> {
        let mut shop = open(shop)?;
        let desk = Desk::new(&mut shop)?;
        print_faults(&shop.take_faults());
        let folder = shop
            .book_folder()
            .ok_or_else(|| Failure::input("the starter shop keeps no book", "name a shop with --shop DIR"))?;
        Ok(Self { shop, desk, day: day(on), folder })
    }

    fn order(&mut self, word: &str, wish: &reeve_shop::Wish) -> Result<reeve_shop::Order, Failure> {
        let order = self.shop.order(word, wish, self.day);
        let faults = self.shop.take_faults();
        let Some(order) = order else { return Err(Failure::Input(faults)) };
        print_faults(&faults);
        Ok(order)
    }

    /// The shop's book; made if it is not there and is to be written.
    pub(crate) fn book(&self, make: bool) -> Result<Book, Failure> {
        let opened = Book::open(&self.folder.join(BOOK_FILE), make)?;
        if let Some(backup) = opened.backup {
            say(&format!("look: the book was brought to a newer form; as it was, it stands in {}", backup.display()));
        }
        Ok(opened.book)
    }

    fn text_or_html(&self, page: &pages::BookPage, form: AnyForm) -> Result<String, Failure> {
        self.desk.book(page, if form == AnyForm::Html { Form::Html } else { Form::Text })
    }
}

fn enquire(commission: &str, note: Option<String>, at: &At) -> Result<(), Failure> {
    let mut place = Place::open(at)?;
    let order = place.order(commission, &reeve_shop::Wish::default())?;
    let mut book = place.book(true)?;
    let issuing = Issuing { order: &order, desk: &place.desk, day: place.day, note };
    book.enquire(&issuing.asked())?;
    for look in issuing.when_ready(&book)? {
        say(&format!("look: {look}"));
    }
    print(&format!("{} is in the book as an enquiry.\n", order.commission.reference))
}

fn list(stands: &[String], client: Option<&str>, year: Option<i32>, at: &At, form: TableForm) -> Result<(), Failure> {
    let place = Place::open(at)?;
    let letters = client.map(str::to_lowercase);
    let mut all = place.book(false)?.list(place.day)?;
    all.retain(|one| {
        (stands.is_empty() || stands.iter().any(|word| word == one.state.word()))
            && letters.as_ref().is_none_or(|letters| one.client.name.to_lowercase().contains(letters))
            && year.is_none_or(|year| one.begun.year() == year)
    });
    let page = || pages::list_page(&all, place.day, place.desk.rates(), place.desk.words());
    print(&match form {
        TableForm::Text => place.desk.book(&page(), Form::Text)?,
        TableForm::Html => place.desk.book(&page(), Form::Html)?,
        TableForm::Json => json(&pages::list_json(&all, place.day))?,
        TableForm::Csv => csv(pages::list_csv(&all))?,
    })
}

fn show(word: &str, page: Option<&str>, revision: Option<u32>, at: &At, form: AnyForm) -> Result<(), Failure> {
    let place = Place::open(at)?;
    let book = place.book(false)?;
    if let Some(name) = page {
        return print(&book.page(word, revision, name, place.day)?);
    }
    let whole = book.whole(word, place.day)?;
    print(&match form {
        AnyForm::Json => json(&pages::whole_json(&whole))?,
        form => place.text_or_html(&pages::whole_page(&whole, place.desk.rates(), place.desk.words()), form)?,
    })
}

fn mark(word: &str, state: &str, note: Option<&str>, at: &At) -> Result<(), Failure> {
    let place = Place::open(at)?;
    let to = State::of_word(state).ok_or_else(|| Failure::input(format!("no state is called `{state}`"), ""))?;
    let from = place.book(false)?.mark(word, to, place.day, note)?;
    print(&format!("{word} was {from} and is {to}.\n"))
}

fn pay(word: &str, amount: &str, note: Option<&str>, at: &At) -> Result<(), Failure> {
    let place = Place::open(at)?;
    let currency = place.desk.rates().currency;
    let found = amount.trim().parse::<Decimal>().ok().filter(|amount| {
        !amount.is_zero() && amount.abs() <= Decimal::from(1_000_000_000) && amount.scale() <= currency.minor_units()
    });
    let amount = found.ok_or_else(|| {
        let help = format!("digits and a point, at most {} decimals, such as 120.00", currency.minor_units());
        Failure::input(format!("`{amount}` is not an amount"), help)
    })?;
    let amount = currency.round_half_away(amount);
    let due = currency.round_half_away(place.book(false)?.pay(word, amount, place.day, note)?);
    print(&format!("{amount} {} entered for {word}; {due} is owed.\n", currency.code()))
}

fn queue(at: &At, form: AnyForm) -> Result<(), Failure> {
    let place = Place::open(at)?;
    let weekly = place.desk.rates().weekly_hours.ok_or_else(|| {
        Failure::input(
            "nobody has said how many bench hours a week has",
            "say `weekly-hours` under [bench] in shop.toml",
        )
    })?;
    let queue = pages::queue(&place.book(false)?.list(place.day)?, place.day, weekly, place.desk.rates());
    print(&match form {
        AnyForm::Json => json(&pages::queue_json(&queue))?,
        form => place.text_or_html(&pages::queue_page(&queue, place.desk.rates(), place.desk.words()), form)?,
    })
}

/// Minutes at a step, with a remark.
type Work = (f64, Option<String>, Option<String>);

fn log(word: &str, work: Option<Work>, (cord, bought): (&[String], &[String]), at: &At) -> Result<(), Failure> {
    const MOST_MINUTES: f64 = 100_000.0;
    let place = Place::open(at)?;
    let mut took = Took::default();
    if let Some((minutes, step, note)) = work {
        if !(0.0..=MOST_MINUTES).contains(&minutes) {
            return Err(Failure::input(format!("{minutes} minutes can't be"), "from 0 to 100000"));
        }
        took.work.push(WorkLine { day: place.day, step, minutes, note });
    }
    for word in cord {
        took.cord.push(read_cord(word, &place)?);
    }
    for word in bought {
        let no =
            || Failure::input(format!("`{word}` is not something bought"), "for example --bought \"Felt pads=3.20\"");
        let (what, amount) = word.rsplit_once('=').ok_or_else(no)?;
        let amount = amount.trim().parse::<Decimal>().ok().filter(|amount| amount.abs() <= Decimal::from(1_000_000));
        took.bought.push(Bought { day: place.day, amount: amount.ok_or_else(no)?, what: what.trim().to_owned() });
    }
    if took == Took::default() {
        return Err(Failure::input("nothing to enter", "say --minutes, --cord or --bought"));
    }
    place.book(false)?.log(word, &took, place.day)?;
    print(&format!("Entered for {word}.\n"))
}

fn read_cord(word: &str, place: &Place) -> Result<CordUsed, Failure> {
    let no =
        || Failure::input(format!("`{word}` is not cord"), "its name and metres, for example --cord cotton-4-ecru=42");
    let (name, metres) = word.split_once('=').ok_or_else(no)?;
    let metres = metres.trim().trim_end_matches('m').trim().parse::<f64>().ok();
    let metres = metres.filter(|metres| (0.0..=1_000_000.0).contains(metres)).ok_or_else(no)?;
    let name = name.trim();
    check_cord(name, &place.shop.cord_names())?;
    Ok(CordUsed { day: place.day, cord: name.to_owned(), metres })
}

fn start(word: &str, step: Option<&str>, folder: Option<PathBuf>) -> Result<(), Failure> {
    let place = Place::of(&WhichShop { folder, demo: false }, None)?;
    place.book(false)?.start(word, step, now())?;
    print(&format!("The timer runs for {word}.\n"))
}

fn stop(drop: bool, note: Option<&str>, folder: Option<PathBuf>) -> Result<(), Failure> {
    let place = Place::of(&WhichShop { folder, demo: false }, None)?;
    let mut book = place.book(false)?;
    if drop {
        let dropped = book.drop_timer()?;
        return print(if dropped.is_some() {
            "The timer is dropped; nothing was entered.\n"
        } else {
            "The timer did not run.\n"
        });
    }
    let (timer, minutes) = book.stop(now(), note)?;
    print(&format!("{minutes} minutes entered for {}.\n", timer.name))
}

fn took(word: Option<&str>, year: Option<i32>, at: &At, form: AnyForm) -> Result<(), Failure> {
    let place = Place::open(at)?;
    let book = place.book(false)?;
    let (rates, words) = (place.desk.rates(), place.desk.words());
    let Some(word) = word else {
        let all = pages::took_in_all(&book.courses(place.day)?, year);
        let title = year.map(|year| year.to_string()).unwrap_or_default();
        return print(&match form {
            AnyForm::Json => json(&pages::took_in_all_json(all))?,
            form => place.text_or_html(&pages::took_in_all_page(all.as_ref(), &title, rates, words), form)?,
        });
    };
    let whole = book.whole(word, place.day)?;
    print(&match form {
        AnyForm::Json => json(&pages::took_json(&whole.course))?,
        form => place.text_or_html(&pages::took_page(&whole.course, rates, words), form)?,
    })
}

fn summary(year: Option<i32>, at: &At, form: TableForm) -> Result<(), Failure> {
    let place = Place::open(at)?;
    let periods = pages::summary(&place.book(false)?.courses(place.day)?, year, place.day);
    let (rates, words) = (place.desk.rates(), place.desk.words());
    let title = year.map(|year| year.to_string()).unwrap_or_default();
    let page = || pages::summary_page(&periods, &title, rates, words);
    print(&match form {
        TableForm::Text => place.desk.book(&page(), Form::Text)?,
        TableForm::Html => place.desk.book(&page(), Form::Html)?,
        TableForm::Json => json(&pages::summary_json(&periods, rates))?,
        TableForm::Csv => csv(pages::summary_csv(&periods))?,
    })
}

fn check(at: &At) -> Result<(), Failure> {
    let place = Place::open(at)?;
    let book = place.book(false)?;
    let found = book.check(judge)?;
    if found.is_empty() {
        let count = book.list(place.day)?.len();
        return print(&format!("{}: no faults\n", plural("commission", count as u64)));
    }
    let faults = found.into_iter().map(|finding| {
        let name = if finding.name.is_empty() { "the book".to_owned() } else { finding.name };
        reeve_reading::Fault::without_place(
            format!("{name}: {}", finding.what),
            "put back a backup, and enter what came after it",
        )
    });
    Err(Failure::Input(faults.collect()))
}

/// Reckons a quote's document anew.
fn judge(document: &str, figures: &Figures) -> Option<String> {
    let quote: Quote = match serde_json::from_str(document) {
        Ok(quote) => quote,
        Err(error) => return Some(format!("its document can't be read: {error}")),
    };
    if quote.totals.gross != figures.gross {
        return Some(format!("its document comes to {}, and the book says {}", quote.totals.gross, figures.gross));
    }
    quote.recheck()
}

fn export(file: &Path, at: &At) -> Result<(), Failure> {
    let place = Place::open(at)?;
    let book = place.book(false)?;
    let refused = |error: std::io::Error| Failure::System(format!("{} can't be written: {error}", file.display()));
    let target = File::create_new(file).map_err(refused)?;
    let mut target = BufWriter::new(target);
    let count = book.export(&mut target)?;
    target.flush().and_then(|()| target.get_ref().sync_all()).map_err(refused)?;
    print(&format!(
        "{} written to {}. It holds names and addresses: keep it as you keep the book.\n",
        plural("line", count as u64),
        file.display()
    ))
}

fn import(file: &Path, at: &At) -> Result<(), Failure> {
    let place = Place::open(at)?;
    let text =
        File::open(file).map_err(|error| Failure::input(format!("{} can't be read: {error}", file.display()), ""))?;
    let count = place.book(true)?.import(BufReader::new(text))?;
    print(&format!("{} read in.\n", plural("line", count as u64)))
}

fn forget(client: &str, yes: bool, at: &At) -> Result<(), Failure> {
    let place = Place::open(at)?;
    let mut book = place.book(false)?;
    let caution = "Some records must be kept by law, for years: your adviser knows which. Files of the shop, pages that were \
                   written out and backups are not touched.";
    if !yes {
        if !std::io::stdin().is_terminal() {
            return Err(Failure::input(
                "nothing was forgotten: it can't be taken back",
                format!("{caution} Say --yes to do it"),
            ));
        }
        ask(&format!("{caution}\nBlank this client's name and address in the whole book? Type yes: "));
        let mut answer = String::new();
        let read = std::io::stdin().read_line(&mut answer);
        if read.is_err() || answer.trim() != "yes" {
            return Err(Trouble::Wrong("nothing was forgotten".to_owned(), String::new()).into());
        }
    }
    let count = book.forget(client, place.day)?;
    print(&format!("Forgotten in {}; numbers and sums stay.\n{caution}\n", plural("commission", count as u64)))
}
