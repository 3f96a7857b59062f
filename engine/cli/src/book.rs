//! `reeve book`: the order book.

use std::io::{BufReader, BufWriter, Write};
use std::path::{Path, PathBuf};

use chrono::NaiveDate;
use reeve_book::{Actuals, BOOK_FILE, Book, BookError, Bought, CordUsed, Seals, State, WorkLine};
use reeve_costing::money::decimal;
use reeve_costing::takeoff::plural;
use reeve_door::{MOST_LINE, ShortLines};
use reeve_office::{
    AllActuals, Issuing, Looked, Queue, UnknownStep, recheck, summary as summary_of, unknown_step, weekly_hours,
};
use reeve_pages::book::Entered;
use reeve_pages::printed::Format;
use reeve_pages::results::{ActualsResult, AllActualsResult, HistoryResult, ListResult, QueueResult, SummaryResult};
use reeve_shop::Order;
use reeve_shop::arguments::check_cord;
use reeve_writing::WritingError;
use rust_decimal::Decimal;

use crate::book_args::{At, BookCommand as Command, Entering};
use crate::bookkeeping::Bookkeeping;
use crate::failure::{Failure, say};
use crate::forgetting::forget;
use crate::forms::WhichShop;
use crate::issuing::{issue, when_ready, worded};
use crate::layout::PageLayout;
use crate::learning::learn;
use crate::opening::{hold, now, open};
use crate::output::{new_file, new_stream, print, print_done};
use crate::sheets::PageMaker;

/// What to do where a file is there already that must not be.
const NAME_ANOTHER: &str = "name a file that does not exist yet";

pub(crate) fn run(command: Command) -> Result<(), Failure> {
    match command {
        Command::Enquire { commission, note, at } => enquire(&commission, note, &at),
        Command::Issue { commission, wished, note, papers, at } => {
            let place = Bookkeeping::to_enter(&at)?;
            papers.judge(Some(&place.folder))?;
            let order = place.order(&commission, &wished.wish()?)?;
            let issuing = place.issuing(&order, note);
            place.enter(|book| issue(&issuing, &place.desk, book, &papers))?.tell()
        }
        Command::List { stands, client, year, at, format } => list(&stands, client.as_deref(), year, &at, format),
        Command::Show { commission, page, revision, at, format } => {
            show(&commission, page.as_deref(), revision, &at, format)
        }
        Command::Mark { commission, state, note, at } => mark(&commission, &state, note.as_deref(), &at),
        Command::Pay { commission, amount, note, at } => pay(&commission, &amount, note.as_deref(), &at),
        Command::Queue { at, format } => queue(&at, format),
        Command::Log { commission, minutes, step, cord, bought, note, at } => {
            let work = minutes.map(|minutes| (minutes, step, note));
            log(&commission, work, (&cord, &bought), &at)
        }
        Command::Undo { commission, entry, why, at } => undo(&commission, entry, &why, &at),
        Command::Start { commission, step, folder } => start(&commission, step.as_deref(), folder),
        Command::Stop { drop, note, folder } => stop(drop, note.as_deref(), folder),
        Command::Took { commission, year, at, format } => took(commission.as_deref(), year, &at, format),
        Command::Learn { yes, at } => {
            let _held = if yes { hold(&at.shop())? } else { None };
            learn(yes, &Bookkeeping::open(&at)?)
        }
        Command::Summary { year, at, format } => summary(year, &at, format),
        Command::Check { seal, at } => check(seal.as_deref(), &at),
        Command::Export { file, at } => export(&file, &at),
        Command::Import { file, at } => import(&file, &at),
        Command::Backup { file, at } => {
            let book = Bookkeeping::open(&at)?.book()?;
            new_file(&file, NAME_ANOTHER, |at| Ok(book.copy_to(at, &file)?))?;
            print(&format!("The book stands in {} as well.\n", file.display()))
        }
        Command::Forget { client, also, yes, at } => forget(&Bookkeeping::open(&at)?, &client, &also, yes),
    }
}

/// Pages of a book with one commission, made, paid in part and logged, and of a book with none.
pub(crate) fn sample(layout: PageLayout, order: &Order, day: NaiveDate) -> Result<PageLayout, Failure> {
    let folder = tempfile::tempdir().map_err(|error| Failure::System(error.to_string()))?;
    let mut book = Book::open(&folder.path().join(BOOK_FILE), true)?.book;
    let shop = open(&WhichShop::starter())?.value;
    let desk = PageMaker::by(layout, &shop)?;
    sample_pages(&desk, &book, day)?;
    let issuing = Issuing { order, basis: desk.basis(), shop: &shop, day, note: None };
    let name = issuing.issue(&mut book, |numbered| worded(numbered, &desk))?.number;
    book.mark(&name, State::Accepted, day, Some("By letter"))?;
    book.pay(&name, Decimal::from(40), day, Some("Deposit"))?;
    let work = WorkLine { day, step: None, minutes: 90.0, note: Some("Cut and hung".to_owned()) };
    let cord = CordUsed { day, cord: "cotton-4-ecru".to_owned(), metres: 40.0 };
    let bought = Bought { day, amount: Decimal::TEN, what: "Felt pads".to_owned() };
    book.log(&name, &Actuals { work: vec![work], cord: vec![cord], bought: vec![bought] }, day)?;
    sample_pages(&desk, &book, day)?;
    let history = book.whole(&name, day)?;
    desk.both_pages(&HistoryResult { history: &history, by: desk.wording() })?;
    desk.both_pages(&ActualsResult { course: &history.course, by: desk.wording() })?;
    Ok(desk.into_layout())
}

/// The pages that are there of any book.
fn sample_pages(desk: &PageMaker, book: &Book, day: NaiveDate) -> Result<(), Failure> {
    let by = desk.wording();
    let (commissions, courses) = (book.list(day)?, book.courses(day)?);
    let weekly = by.basis.rates.weekly_hours.unwrap_or(Decimal::TEN);
    desk.both_pages(&ListResult { commissions: &commissions, day, by })?;
    desk.both_pages(&QueueResult { queue: &Queue::of(&commissions, day, weekly, &by.basis.rates), by })?;
    desk.both_pages(&SummaryResult { periods: &summary_of(&courses, None, day), year: None, by })?;
    desk.both_pages(&AllActualsResult { all: AllActuals::of(&courses, None).as_ref(), year: None, by })
}

fn enquire(commission: &str, note: Option<String>, at: &Entering) -> Result<(), Failure> {
    let place = Bookkeeping::to_enter(at)?;
    let order = place.order(commission, &reeve_shop::Wish::default())?;
    let issuing = place.issuing(&order, note);
    let looks = place.enter(|book| {
        book.enquire(&issuing.enquiry())?;
        when_ready(book, &order, &place.desk, place.day)
    })?;
    for look in looks {
        say(&format!("look: {look}"));
    }
    place.tell(&Entered::Enquiry(&order.commission.reference));
    Ok(())
}

fn list(stands: &[String], client: Option<&str>, year: Option<i32>, at: &At, format: Format) -> Result<(), Failure> {
    let place = Bookkeeping::open(at)?;
    let looked = Looked {
        stands: stands.iter().filter_map(|word| State::of_word(word)).collect(),
        client: client.map(str::to_owned),
        year,
    };
    let all = looked.find(&place.book()?, place.day)?;
    place.desk.emit(&ListResult { commissions: &all, day: place.day, by: place.desk.wording() }, format)
}

fn show(word: &str, page: Option<&str>, revision: Option<u32>, at: &At, format: Format) -> Result<(), Failure> {
    let place = Bookkeeping::open(at)?;
    let book = place.book()?;
    if let Some(name) = page {
        return print(&book.page(word, revision, name, place.day)?);
    }
    let history = book.whole(word, place.day)?;
    place.desk.emit(&HistoryResult { history: &history, by: place.desk.wording() }, format)
}

fn mark(word: &str, state: &str, note: Option<&str>, at: &Entering) -> Result<(), Failure> {
    let place = Bookkeeping::to_enter(at)?;
    let to = State::of_word(state).ok_or_else(|| Failure::input(format!("no state is called `{state}`"), ""))?;
    let from = place.book()?.mark(word, to, place.day, note)?;
    place.tell(&Entered::Marked(word, from, to));
    Ok(())
}

fn pay(word: &str, amount: &str, note: Option<&str>, at: &Entering) -> Result<(), Failure> {
    let place = Bookkeeping::to_enter(at)?;
    let currency = place.desk.rates().currency;
    let found = amount
        .trim()
        .parse::<Decimal>()
        .ok()
        .filter(|amount| !amount.is_zero() && amount.scale() <= currency.minor_units());
    let amount = found.ok_or_else(|| {
        let help = format!("digits and a point, at most {} decimals, such as 120.00", currency.minor_units());
        Failure::input(format!("`{amount}` is not an amount"), help)
    })?;
    let amount = currency.round_half_away(amount);
    let due = currency.round_half_away(place.book()?.pay(word, amount, place.day, note)?);
    place.tell(&Entered::Paid { name: word, amount, due });
    Ok(())
}

fn queue(at: &At, format: Format) -> Result<(), Failure> {
    let place = Bookkeeping::open(at)?;
    let weekly = weekly_hours(place.desk.rates(), "")?;
    let queue = Queue::of(&place.book()?.to_be_made(place.day)?, place.day, weekly, place.desk.rates());
    place.desk.emit(&QueueResult { queue: &queue, by: place.desk.wording() }, format)
}

/// Minutes at a step, with a remark.
type LoggedMinutes = (f64, Option<String>, Option<String>);

fn log(
    word: &str,
    work: Option<LoggedMinutes>,
    (cord, bought): (&[String], &[String]),
    at: &Entering,
) -> Result<(), Failure> {
    let place = Bookkeeping::to_enter(at)?;
    let mut took = Actuals::default();
    if let Some((minutes, step, note)) = work {
        took.work.push(WorkLine { day: place.day, step, minutes, note });
    }
    for word in cord {
        took.cord.push(read_cord(word, &place)?);
    }
    for word in bought {
        let no =
            || Failure::input(format!("`{word}` is not something bought"), "for example --bought \"Felt pads=3.20\"");
        let (what, amount) = word.rsplit_once('=').ok_or_else(no)?;
        let amount = amount.trim().parse::<Decimal>().ok();
        took.bought.push(Bought { day: place.day, amount: amount.ok_or_else(no)?, what: what.trim().to_owned() });
    }
    if took == Actuals::default() {
        return Err(Failure::input("nothing to enter", "say --minutes, --cord or --bought"));
    }
    let mut book = place.book()?;
    book.log(word, &took, place.day)?;
    for step in took.work.iter().filter_map(|line| line.step.as_deref()) {
        name_unknown_step(&book, word, step, place.day);
    }
    place.tell(&Entered::Logged(word));
    Ok(())
}

fn read_cord(word: &str, place: &Bookkeeping) -> Result<CordUsed, Failure> {
    let no =
        || Failure::input(format!("`{word}` is not cord"), "its name and metres, for example --cord cotton-4-ecru=42");
    let (name, metres) = word.split_once('=').ok_or_else(no)?;
    let metres = metres.trim().trim_end_matches('m').trim().parse::<f64>().map_err(|_| no())?;
    let name = name.trim();
    check_cord(name, &place.shop.cord_names())?;
    Ok(CordUsed { day: place.day, cord: name.to_owned(), metres })
}

fn undo(word: &str, entry: u32, why: &str, at: &Entering) -> Result<(), Failure> {
    let place = Bookkeeping::to_enter(at)?;
    let line = place.book()?.undo(word, entry, why, place.day)?;
    place.tell(&Entered::Undone(word, entry, &line.what));
    Ok(())
}

fn start(word: &str, step: Option<&str>, folder: Option<PathBuf>) -> Result<(), Failure> {
    let place = Bookkeeping::of(&WhichShop { folder, demo: false }, None)?;
    let mut book = place.book()?;
    book.start(word, step, now())?;
    if let Some(step) = step {
        name_unknown_step(&book, word, step, place.day);
    }
    place.tell(&Entered::TimerRuns(word));
    Ok(())
}

/// Says so where the quote has no such step: work at other steps is logged as well, but nothing is learnt from it.
///
/// It is entered by then: what hinders this remark is no failure of the entry.
fn name_unknown_step(book: &Book, word: &str, step: &str, day: NaiveDate) {
    let Some(UnknownStep { step, near, known }) = unknown_step(book, word, step, day) else { return };
    let meant = match near {
        Some(near) => format!("did you mean `{near}`? Then undo the entry, and enter it anew"),
        None => format!("steps of its quote: {}", known.join(", ")),
    };
    say(&format!("look: nothing is learnt from the step `{step}`; {meant}"));
}

fn stop(drop: bool, note: Option<&str>, folder: Option<PathBuf>) -> Result<(), Failure> {
    let place = Bookkeeping::of(&WhichShop { folder, demo: false }, None)?;
    let mut book = place.book()?;
    if drop {
        let dropped = book.drop_timer()?;
        place.tell(if dropped.is_some() { &Entered::TimerDropped } else { &Entered::NoTimer });
        return Ok(());
    }
    let (timer, minutes) = book.stop(now(), note)?;
    let name = timer.name.as_str();
    let minutes = decimal(minutes, 2);
    place.tell(&if minutes.is_zero() { Entered::TooShort(name) } else { Entered::Timed(name, minutes) });
    Ok(())
}

fn took(word: Option<&str>, year: Option<i32>, at: &At, format: Format) -> Result<(), Failure> {
    let place = Bookkeeping::open(at)?;
    let book = place.book()?;
    let by = place.desk.wording();
    let Some(word) = word else {
        let all = AllActuals::of(&book.courses(place.day)?, year);
        return place.desk.emit(&AllActualsResult { all: all.as_ref(), year, by }, format);
    };
    let history = book.whole(word, place.day)?;
    place.desk.emit(&ActualsResult { course: &history.course, by }, format)
}

fn summary(year: Option<i32>, at: &At, format: Format) -> Result<(), Failure> {
    let place = Bookkeeping::open(at)?;
    let periods = summary_of(&place.book()?.courses(place.day)?, year, place.day);
    place.desk.emit(&SummaryResult { periods: &periods, year, by: place.desk.wording() }, format)
}

fn check(seal: Option<&str>, at: &At) -> Result<(), Failure> {
    let known = seal.map(read_seal).transpose()?;
    let place = Bookkeeping::open(at)?;
    let book = place.book()?;
    let mut found = book.check(recheck)?;
    if let Some(known) = known.filter(|_| found.is_empty()) {
        let what =
            format!("it does not begin with what was in it at seal {}: it was rewritten or cut off", known.word());
        let finding = reeve_book::CheckFinding { name: String::new(), what };
        found.extend((!book.begins_with(&known)?).then_some(finding));
    }
    if found.is_empty() {
        let count = plural("commission", book.count()?);
        return print(&format!("{count}: no faults. The last seal is {}.\n", book.seals()?.word()));
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

fn read_seal(word: &str) -> Result<Seals, Failure> {
    Seals::of_word(word).ok_or_else(|| {
        Failure::input(
            format!("`{word}` is not a seal"),
            "as `reeve book check` printed it, such as 57-3f2a9c0b11d24e68",
        )
    })
}

fn export(file: &Path, at: &At) -> Result<(), Failure> {
    let place = Bookkeeping::open(at)?;
    let book = place.book()?;
    let refused = |error: std::io::Error| Failure::from(WritingError::new(file, error));
    let count = new_stream(file, NAME_ANOTHER, |target| {
        let mut target = BufWriter::new(target);
        let count = book.export(&mut target).map_err(|trouble| match trouble {
            // Of the text that is written, not of the book.
            BookError::File(_, error) => refused(error),
            other => other.into(),
        })?;
        target.flush().map_err(refused)?;
        Ok(count)
    })?;
    print(&format!(
        "{} written to {}. It holds names and addresses: keep it as you keep the book.\n",
        plural("line", count as u64),
        file.display()
    ))
}

fn import(file: &Path, at: &At) -> Result<(), Failure> {
    let place = Bookkeeping::open(at)?;
    let read = place.enter(|book| {
        let text = reeve_door::open(file).map_err(|closed| {
            Failure::input(format!("{} {closed}", file.display()), "name a file that `reeve book export` wrote")
        })?;
        Ok(book.import(BufReader::new(ShortLines::new(text, MOST_LINE)))?)
    })?;
    if read.without_seals {
        say("look: the text is of a form without seals: what was altered in it can't be noticed");
    }
    print_done(&format!("{} read in.\n", plural("line", read.lines as u64)));
    Ok(())
}
