//! `reeve book forget`: what is known of a client is blanked, on the maker's word.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;
use std::io::IsTerminal;

use reeve_book::{Book, BookError, Forget, Forgotten};
use reeve_costing::takeoff::plural;
use reeve_pages::BUILT_IN;

use crate::bookkeeping::Bookkeeping;
use crate::failure::{Failure, ask};
use crate::output::{print, print_done};

const CAUTION: &str = "Some records must be kept by law, for years: your adviser knows which. Files of the shop, pages that were \
                       written out and backups are not touched.";

pub(crate) fn forget(place: &Bookkeeping, whom: &str, also: &[String], yes: bool) -> Result<(), Failure> {
    let mut book = place.book()?;
    let usual = usual_words(place);
    let maker = &place.desk.rates().maker;
    let lines = [&maker.name].into_iter().chain(&maker.tagline).chain(&maker.address).chain(&maker.contact);
    let maker = lines.cloned().collect::<Vec<_>>().join("\n");
    let run = |book: &mut Book, really: bool| {
        let is_usual = |word: &str| usual.contains(word);
        book.forget(&Forget { whom, also, maker: &maker, is_usual: &is_usual, day: place.day, really })
    };
    if !yes {
        let looked = told(&run(&mut book, false)?, false);
        if !std::io::stdin().is_terminal() {
            // Only looked at, as `reeve book learn` does without --yes.
            return print(&format!(
                "{looked}{CAUTION}\nNothing was blanked. With --yes it is, and can't be taken back.\n"
            ));
        }
        ask(&format!("{looked}{CAUTION}\nBlank this client in the whole book? Type yes: "));
        let mut answer = String::new();
        let read = std::io::stdin().read_line(&mut answer);
        if read.is_err() || answer.trim() != "yes" {
            return Err(BookError::Wrong("nothing was forgotten".to_owned(), String::new()).into());
        }
    }
    let done = told(&run(&mut book, true)?, true);
    print_done(&format!("{done}{CAUTION}\n"));
    Ok(())
}

/// What was or would be blanked, and what was left alone.
fn told(forgotten: &Forgotten, done: bool) -> String {
    let mut told = String::new();
    let commissions = plural("commission", forgotten.commissions as u64);
    let _ = if done {
        writeln!(told, "Forgotten in {commissions}; numbers and sums stay.")
    } else {
        writeln!(told, "It would be forgotten in {commissions}; numbers and sums stay.")
    };
    if !forgotten.blanked.is_empty() {
        let what = if done { "Blanked" } else { "To be blanked" };
        let _ = writeln!(told, "{what} where it was typed: {}.", some(&forgotten.blanked));
    }
    for word in &forgotten.undecided {
        let _ = writeln!(told, "Left alone: `{}`, as {}: {}.", word.word, word.why, some(&word.places));
    }
    if !forgotten.undecided.is_empty() {
        told.push_str("If one of these is the client too, say so with --also WORD and a number of theirs.\n");
    }
    told
}

/// Places, by commission: `2026-001 (title, note); 2026-002 (note)`.
fn some(places: &[reeve_book::TextPlace]) -> String {
    let mut by_commission: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for place in places {
        by_commission.entry(&place.commission).or_default().push(&place.text);
    }
    let told = by_commission.into_iter().map(|(commission, texts)| format!("{commission} ({})", texts.join(", ")));
    told.collect::<Vec<_>>().join("; ")
}

/// Words of the trade, in small letters: of the program's pages and knots, and of the shop's cords.
fn usual_words(place: &Bookkeeping) -> BTreeSet<String> {
    let knots = place.shop.catalogue().iter().flat_map(|knot| [&knot.name, &knot.title, &knot.summary]);
    let cords = place.shop.cord_names();
    let texts = BUILT_IN.iter().map(|(_, text)| *text).chain(knots.map(String::as_str)).chain(cords);
    texts.chain([COMMON]).flat_map(|text| text.split(|c: char| !c.is_alphanumeric())).map(str::to_lowercase).collect()
}

/// Common words of English that are names as well, or that hardly a note is without.
const COMMON: &str = "a about after all also am an and any april are art as ask asked at august back be been before bill \
    bird black blue bob bright brook brown but by call called came can carol chase chip church cliff come could dale dawn day \
    dean did do does done down drew each eve ever faith fall fern field first fisher for ford forest found fox frank from \
    gave gene get glen go gold good grace grant gray green grey had hand has have hazel he heath heather her here hill him his \
    home hope how i if in into iris is it its ivy jack joy july june just keep king know lake lane last left lily little long \
    look made make mark marsh mason may me might miles mill miss moon more most moss much must my new next nick no north not \
    now of off old olive on once one only or other our out over own page park pat pay penny pearl people piece please poppy \
    price ray read red reed reeve rich right ring river rob robin room rose ruby sage sailor sandy sat saw say see send \
    sent she shore short should silver sky small smith so some south spring stone storm street such sue summer sun sure take \
    than that the their them then there these they this time to today too two under until up us very violet wade want was \
    way we well went were west what when where which white who will winter with wood word work would wren yes yet you young \
    your";
