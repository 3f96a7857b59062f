//! The book beside a plain model of it: whatever is entered, undone and tried, both refuse the same and tell the same.
//!
//! The model restates the rules of the book in plain lists, so that a slip in a question to the database shows.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may stop at the first surprise")]

use chrono::{Datelike, Days, NaiveDate, NaiveDateTime};
use proptest::prelude::*;
use reeve_book::{
    Actuals, Book, BookError, BookedClient, Bought, CordUsed, Enquiry, Logged, NumberPattern, Origin, QuoteFigures,
    Snapshot, State, WorkLine,
};
use rust_decimal::Decimal;

/// Days of validity of every quote.
const VALID: u64 = 12;

/// Where a commission can be marked to go, a second time.
const MOVES: &[(State, &[State])] = &[
    (State::Enquiry, &[State::Cancelled]),
    (State::Quoted, &[State::Accepted, State::Declined, State::Cancelled]),
    (State::Lapsed, &[State::Declined, State::Cancelled]),
    (State::Accepted, &[State::OnBench, State::Cancelled]),
    (State::OnBench, &[State::Finished, State::Cancelled]),
    (State::Finished, &[State::Delivered, State::Cancelled]),
    (State::Delivered, &[State::Paid]),
];
const QUOTABLE: &[State] = &[State::Enquiry, State::Quoted, State::Lapsed, State::Accepted, State::Declined];

/// What a maker may try with one of two files, for one of two clients. Some days lie back behind today.
#[derive(Debug, Clone)]
enum Try {
    Enquire {
        client: usize,
    },
    Issue {
        client: usize,
        gross: i64,
        paid: i64,
    },
    Mark {
        to: State,
        back: u64,
    },
    /// The next step on the way to the end.
    Advance,
    Pay {
        amount: i64,
        back: u64,
    },
    Log {
        minutes: u32,
        metres: u32,
        bought: i64,
        back: u64,
    },
    Undo {
        number: u32,
        back: u64,
    },
    Start {
        step: bool,
    },
    Stop {
        after: u32,
        drop: bool,
    },
    Wait(u64),
}

fn tries() -> impl Strategy<Value = Vec<(usize, Try)>> {
    let states: Vec<State> = State::WORDS.iter().map(|(_, state)| *state).collect();
    let back = || prop_oneof![9 => Just(0_u64), 1 => 1_u64..9];
    let one = prop_oneof![
        1 => (0_usize..2).prop_map(|client| Try::Enquire { client }),
        3 => (0_usize..2, 1_i64..900, prop_oneof![3 => Just(0), 1 => 1_i64..50])
            .prop_map(|(client, gross, paid)| Try::Issue { client, gross, paid }),
        8 => (prop::sample::select(states), back()).prop_map(|(to, back)| Try::Mark { to, back }),
        8 => Just(Try::Advance),
        3 => (-50_i64..900, back()).prop_map(|(amount, back)| Try::Pay { amount, back }),
        3 => (0_u32..200, 0_u32..40, 0_i64..90, back())
            .prop_map(|(minutes, metres, bought, back)| Try::Log { minutes, metres, bought, back }),
        3 => (0_u32..12, back()).prop_map(|(number, back)| Try::Undo { number, back }),
        1 => any::<bool>().prop_map(|step| Try::Start { step }),
        1 => (0_u32..9_000, prop::bool::weighted(0.2)).prop_map(|(after, drop)| Try::Stop { after, drop }),
        2 => (1_u64..9).prop_map(Try::Wait),
    ];
    prop::collection::vec((0_usize..2, one), 1..60)
}

/// A line of a commission, as the book numbers them.
#[derive(Debug, Clone, PartialEq)]
struct Line {
    day: NaiveDate,
    what: Logged,
    undone: bool,
}

#[derive(Debug, Clone, Default)]
struct Job {
    reference: &'static str,
    client: usize,
    number: Option<String>,
    /// Of each quote: its day, its gross amount, and for whom.
    quotes: Vec<(NaiveDate, i64, usize)>,
    lines: Vec<Line>,
}

impl Job {
    fn standing(&self) -> impl DoubleEndedIterator<Item = &Line> {
        self.lines.iter().filter(|line| !line.undone)
    }

    fn marks(&self) -> Vec<(State, NaiveDate)> {
        let marked = |line: &Line| if let Logged::Marked(state) = line.what { Some((state, line.day)) } else { None };
        self.standing().filter_map(marked).collect()
    }

    /// Whatever the day.
    fn state(&self) -> State {
        self.marks().last().unwrap().0
    }

    fn on(&self, day: NaiveDate) -> State {
        let valid = self.quotes.last().map(|(issued, ..)| *issued + Days::new(VALID));
        if self.state() == State::Quoted && valid.is_some_and(|last| day > last) { State::Lapsed } else { self.state() }
    }

    fn paid(&self) -> Decimal {
        let paid = |line: &Line| if let Logged::Paid(amount) = line.what { amount } else { Decimal::ZERO };
        self.standing().map(paid).sum()
    }

    fn due(&self) -> Decimal {
        self.quotes.last().map_or(Decimal::ZERO, |(_, gross, _)| Decimal::from(*gross)) - self.paid()
    }

    fn minutes(&self) -> f64 {
        self.standing().map(|line| if let Logged::Worked(minutes, _) = line.what { minutes } else { 0.0 }).sum()
    }

    fn begun(&self) -> NaiveDate {
        self.lines[0].day
    }

    fn is_open(&self) -> bool {
        !matches!(self.state(), State::Paid | State::Cancelled)
    }

    fn takes_work(&self) -> bool {
        !matches!(self.state(), State::Cancelled | State::Declined)
    }

    fn enter(&mut self, day: NaiveDate, what: Logged) {
        self.lines.push(Line { day, what, undone: false });
    }
}

#[derive(Debug, Default)]
struct BookModel {
    jobs: Vec<Job>,
    /// Which commission, at which step, and since when.
    timer: Option<(usize, Option<String>, NaiveDateTime)>,
}

const FILES: [&str; 2] = ["fobs", "panel"];
/// A remark that names nobody.
const NOTE: &str = "by letter";
const CLIENTS: [&str; 2] = ["Ada Quill", "Bo Sedge"];

fn client(which: usize) -> BookedClient {
    BookedClient { name: CLIENTS[which].to_owned(), address: vec![format!("{which} Rope Walk")] }
}

fn figures(gross: i64, paid: i64, day: NaiveDate) -> QuoteFigures {
    let (zero, gross) = (Decimal::ZERO, Decimal::from(gross));
    QuoteFigures {
        currency: "EUR".to_owned(),
        net: gross,
        gross,
        deposit: zero,
        paid: Decimal::from(paid),
        pace: Decimal::ONE,
        hours: Decimal::from(4),
        sure_hours: Decimal::from(5),
        confidence: Decimal::from(80),
        material: zero,
        cord_cost: zero,
        labour: zero,
        cost: zero,
        fees: zero,
        margin: gross,
        cord: Vec::new(),
        steps: Vec::new(),
        paced: None,
        valid_until: day + Days::new(VALID),
        promised: None,
        needed_by: None,
    }
}

impl BookModel {
    fn last(&self, file: usize) -> Option<usize> {
        self.jobs.iter().rposition(|job| job.reference == FILES[file])
    }

    fn next_number(&self, day: NaiveDate) -> String {
        let this_year = format!("{}-", day.year());
        let given = self.jobs.iter().filter_map(|job| job.number.as_ref());
        format!("{this_year}{:03}", given.filter(|number| number.starts_with(&this_year)).count() + 1)
    }

    fn begin(&mut self, file: usize, client: usize) -> usize {
        self.jobs.push(Job { reference: FILES[file], client, ..Job::default() });
        self.jobs.len() - 1
    }

    /// Where a commission goes next on its way to the end.
    fn next(&self, file: usize, today: NaiveDate) -> State {
        let state = self.last(file).map(|at| self.jobs[at].on(today));
        let moves = MOVES.iter().find(|(from, _)| Some(*from) == state);
        moves.map_or(State::Accepted, |(_, to)| to[0])
    }

    /// What is known of the quote that a new one supersedes: whether it has lapsed, and what was paid.
    fn before(&self, file: usize, today: NaiveDate) -> Option<(bool, Decimal)> {
        let job = &self.jobs[self.last(file)?];
        let quoted = job.is_open() && !job.quotes.is_empty();
        quoted.then(|| (job.on(today) == State::Lapsed, job.paid()))
    }

    /// What the model makes of a try: `None` where the book must refuse.
    fn attempt(&mut self, file: usize, what: &Try, today: NaiveDate, now: NaiveDateTime) -> Option<()> {
        let last = self.last(file);
        let earlier = |back: u64| today - Days::new(back);
        match what {
            Try::Wait(_) => {}
            Try::Enquire { client } => {
                if last.is_some_and(|at| self.jobs[at].is_open()) {
                    return None;
                }
                let at = self.begin(file, *client);
                self.jobs[at].enter(today, Logged::Marked(State::Enquiry));
            }
            Try::Issue { client, gross, paid } => {
                let at = match last.filter(|at| self.jobs[*at].is_open()) {
                    Some(at) if !QUOTABLE.contains(&self.jobs[at].on(today)) => return None,
                    Some(at) if today < self.jobs[at].marks().last()?.1 => return None,
                    Some(at) => at,
                    None => self.begin(file, *client),
                };
                let number = self.jobs[at].number.clone().unwrap_or_else(|| self.next_number(today));
                let job = &mut self.jobs[at];
                job.client = *client;
                job.number = Some(number);
                job.quotes.push((today, *gross, *client));
                job.enter(today, Logged::Marked(State::Quoted));
                if job.quotes.len() == 1 && *paid != 0 {
                    job.enter(today, Logged::Paid(Decimal::from(*paid)));
                }
            }
            Try::Advance => {
                let mark = Try::Mark { to: self.next(file, today), back: 0 };
                return self.attempt(file, &mark, today, now);
            }
            Try::Mark { to, back } => {
                let (job, day) = (&mut self.jobs[last?], earlier(*back));
                let (from, due) = (job.on(day), job.due());
                let moves = MOVES.iter().find(|(state, _)| *state == from)?.1;
                let owed = *to == State::Paid && due > Decimal::ZERO;
                if !moves.contains(to) || owed || day < job.marks().last()?.1 {
                    return None;
                }
                job.enter(day, Logged::Marked(*to));
            }
            Try::Pay { amount, back } => {
                let (job, day) = (&mut self.jobs[last?], earlier(*back));
                if job.number.is_none() || day < job.begun() {
                    return None;
                }
                job.enter(day, Logged::Paid(Decimal::from(*amount)));
            }
            Try::Log { minutes, metres, bought, back } => {
                let (job, day) = (&mut self.jobs[last?], earlier(*back));
                if !job.takes_work() || day < job.begun() {
                    return None;
                }
                job.enter(day, Logged::Worked(f64::from(*minutes), Some("Knots".to_owned())));
                job.enter(day, Logged::Cord("cotton".to_owned(), f64::from(*metres)));
                job.enter(day, Logged::Bought("a ring".to_owned(), Decimal::from(*bought)));
            }
            Try::Undo { number, back } => {
                let (job, day) = (&mut self.jobs[last?], earlier(*back));
                let at = usize::try_from(*number).unwrap().checked_sub(1)?;
                let line = job.lines.get(at)?.clone();
                let marks = |line: &Line| matches!(line.what, Logged::Marked(_));
                let last_mark = job.lines.iter().rposition(|line| marks(line) && !line.undone);
                let rests = match line.what {
                    Logged::Marked(State::Enquiry | State::Quoted) => true,
                    Logged::Marked(_) => last_mark != Some(at),
                    Logged::Paid(_) => job.state() == State::Paid,
                    _ => false,
                };
                if line.undone || rests || day < line.day {
                    return None;
                }
                job.lines[at].undone = true;
            }
            Try::Start { step } => {
                let at = last?;
                if self.timer.is_some() || !self.jobs[at].takes_work() || now.date() < self.jobs[at].begun() {
                    return None;
                }
                self.timer = Some((at, step.then(|| "Knots".to_owned()), now));
            }
            Try::Stop { drop: true, .. } => self.timer = None,
            Try::Stop { .. } => {
                let (at, step, since) = self.timer.clone()?;
                let seconds = i32::try_from((now - since).num_seconds()).ok()?;
                let minutes = (f64::from(seconds) / 60.0).round();
                if !(0.0..=reeve_book::MOST_MINUTES).contains(&minutes) || !self.jobs[at].takes_work() {
                    return None;
                }
                self.timer = None;
                if minutes > 0.0 {
                    self.jobs[at].enter(since.date(), Logged::Worked(minutes, step));
                }
            }
        }
        Some(())
    }
}

/// Tries it with the book. `model` is as it was before.
fn attempt(
    book: &mut Book,
    (model, file): (&BookModel, usize),
    what: &Try,
    (today, now): (NaiveDate, NaiveDateTime),
) -> Result<(), BookError> {
    let earlier = |back: &u64| today - Days::new(*back);
    let asked = |which: usize| Enquiry {
        reference: FILES[file].to_owned(),
        title: format!("Work for {}", CLIENTS[which]),
        client: client(which),
        day: today,
        note: Some(format!("{} came by", CLIENTS[which])),
    };
    match what {
        Try::Wait(_) => Ok(()),
        Try::Enquire { client } => book.enquire(&asked(*client)),
        Try::Issue { client, gross, paid } => {
            let pattern = NumberPattern(NumberPattern::USUAL.to_owned());
            let origin = Origin { program: "0".to_owned(), catalogue: "0".to_owned() };
            let made = |number: &reeve_book::QuoteNumber, before: Option<&reeve_book::Before>| {
                assert_eq!(before.map(|before| (before.lapsed, before.paid)), model.before(file, today));
                let pages = vec![
                    ("quote.json".to_owned(), "{}".to_owned()),
                    ("quote.txt".to_owned(), format!("{} comes to {gross}", number.words())),
                ];
                let figures = figures(*gross, *paid, today);
                Ok::<_, BookError>(Snapshot { figures, pages, changes: Vec::new(), maker_changes: Vec::new() })
            };
            book.issue(&asked(*client), &pattern, &origin, made).map(|_| ())
        }
        Try::Advance => book.mark(FILES[file], model.next(file, today), today, Some(NOTE)).map(|_| ()),
        Try::Mark { to, back } => book.mark(FILES[file], *to, earlier(back), None).map(|_| ()),
        Try::Pay { amount, back } => {
            let amount = Decimal::from(*amount);
            let due = book.pay(FILES[file], amount, earlier(back), Some(NOTE))?;
            let before = model.last(file).map_or(Decimal::ZERO, |at| model.jobs[at].due());
            assert_eq!(due, before - amount);
            Ok(())
        }
        Try::Log { minutes, metres, bought, back } => {
            let day = earlier(back);
            let took = Actuals {
                work: vec![WorkLine { day, step: Some("Knots".to_owned()), minutes: f64::from(*minutes), note: None }],
                cord: vec![CordUsed { day, cord: "cotton".to_owned(), metres: f64::from(*metres) }],
                bought: vec![Bought { day, amount: Decimal::from(*bought), what: "a ring".to_owned() }],
            };
            book.log(FILES[file], &took, day)
        }
        Try::Undo { number, back } => book.undo(FILES[file], *number, "a slip", earlier(back)).map(|_| ()),
        Try::Start { step } => book.start(FILES[file], step.then_some("Knots"), now),
        Try::Stop { drop: true, .. } => book.drop_timer().map(|_| ()),
        Try::Stop { .. } => book.stop(now, None).map(|_| ()),
    }
}

/// Everything that the book tells of its commissions is what the model holds.
fn alike(book: &Book, model: &BookModel, today: NaiveDate) -> Result<(), TestCaseError> {
    let listed = book.list(today).unwrap();
    prop_assert_eq!(listed.len(), model.jobs.len());
    for (one, job) in listed.iter().zip(&model.jobs) {
        let marks = job.marks();
        prop_assert_eq!(&one.reference, job.reference);
        prop_assert_eq!(&one.number, &job.number);
        prop_assert_eq!(&one.client, &client(job.client));
        prop_assert_eq!(&one.title, &format!("Work for {}", CLIENTS[job.client]));
        prop_assert_eq!(one.name(), job.number.as_deref().unwrap_or(job.reference));
        prop_assert_eq!((one.state, one.since, one.begun), (job.on(today), marks.last().unwrap().1, job.begun()));
        let accepted = marks.iter().rev().find(|(state, _)| *state == State::Accepted).map(|(_, day)| *day);
        prop_assert_eq!((one.accepted, one.first_issued), (accepted, job.quotes.first().map(|(day, ..)| *day)));
        let quoted = one.quoted.as_ref().map(|(revision, figures)| (*revision as usize + 1, figures.gross));
        prop_assert_eq!(quoted, job.quotes.last().map(|(_, gross, _)| (job.quotes.len(), Decimal::from(*gross))));
        prop_assert_eq!((one.paid, one.due()), (job.paid(), job.due()));
        prop_assert!((one.minutes - job.minutes()).abs() < 1e-9);
    }
    for file in 0..2 {
        let Some(at) = model.last(file) else { continue };
        told_whole(book, &model.jobs[at], today)?;
    }
    let running = book.timer().unwrap().map(|timer| (timer.name, timer.step, timer.started));
    let name = |at: usize| model.jobs[at].number.clone().unwrap_or_else(|| model.jobs[at].reference.to_owned());
    prop_assert_eq!(running, model.timer.clone().map(|(at, step, since)| (name(at), step, since)));
    Ok(())
}

fn told_whole(book: &Book, job: &Job, today: NaiveDate) -> Result<(), TestCaseError> {
    let whole = book.whole(job.reference, today).unwrap();
    let told: Vec<Line> = whole
        .lines
        .iter()
        .map(|line| Line { day: line.day, what: line.what.clone(), undone: line.undone.is_some() })
        .collect();
    prop_assert_eq!(&told, &job.lines);
    prop_assert!(whole.lines.iter().map(|line| line.number).eq(1..=u32::try_from(told.len()).unwrap()));
    let marks: Vec<(State, NaiveDate)> = whole.course.happenings.iter().map(|one| (one.state, one.day)).collect();
    prop_assert_eq!(marks, job.marks());
    let client = CLIENTS[job.client];
    for event in &whole.course.happenings {
        let asked = matches!(event.state, State::Enquiry | State::Quoted);
        let told = event.note.as_deref().unwrap_or(NOTE);
        prop_assert_eq!(told, if asked { format!("{client} came by") } else { NOTE.to_owned() });
    }
    let bought = |line: &Line| if let Logged::Bought(_, amount) = line.what { amount } else { Decimal::ZERO };
    prop_assert_eq!(whole.course.took.bought_in_all(), job.standing().map(bought).sum::<Decimal>());
    let cord = |line: &Line| if let Logged::Cord(_, metres) = line.what { metres } else { 0.0 };
    let metres: f64 = whole.course.took.cord.iter().map(|line| line.metres).sum();
    prop_assert!((metres - job.standing().map(cord).sum::<f64>()).abs() < 1e-9);
    prop_assert_eq!(whole.entries.len(), job.quotes.len());
    for (revision, (day, gross, _)) in job.quotes.iter().enumerate() {
        let entry = &whole.entries[revision];
        prop_assert_eq!(
            (entry.revision as usize, entry.day, entry.figures.gross),
            (revision, *day, Decimal::from(*gross))
        );
        let page = book.page(job.reference, Some(entry.revision), "quote.txt", today).unwrap();
        let end = format!("comes to {gross}");
        prop_assert!(page.ends_with(&end), "{}", page);
    }
    if let Some((_, gross, _)) = job.quotes.last() {
        let last = book.page(job.number.as_deref().unwrap(), None, "quote.txt", today).unwrap();
        let (first, end) = (job.number.as_deref().unwrap(), format!("comes to {gross}"));
        prop_assert!(last.starts_with(first) && last.ends_with(&end), "{}", last);
    }
    let open = job.number.clone().filter(|_| job.is_open()).map(|number| (number, job.paid()));
    prop_assert_eq!(book.paid_for(job.reference, today).unwrap(), open);
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, ..ProptestConfig::default() })]

    #[test]
    fn the_book_is_its_model(tries in tries()) {
        let folder = tempfile::tempdir().unwrap();
        let mut book = Book::open(&folder.path().join("book.sqlite"), true).unwrap().book;
        let mut model = BookModel::default();
        // Close to the end of a year, so that numbers begin anew.
        let mut today = NaiveDate::from_ymd_opt(2026, 12, 10).unwrap();
        for (file, what) in tries {
            let mut now = today.and_hms_opt(9, 0, 0).unwrap();
            match what {
                Try::Wait(days) => today = today + Days::new(days),
                Try::Stop { after, .. } => now += chrono::TimeDelta::seconds(after.into()),
                _ => {}
            }
            let found = attempt(&mut book, (&model, file), &what, (today, now));
            let expected = model.attempt(file, &what, today, now);
            prop_assert_eq!(found.is_ok(), expected.is_some(), "{:?} of {} on {}: {:?}", what, FILES[file], today, found);
            alike(&book, &model, today)?;
        }
        let odd = book.check(|_, _| None).unwrap();
        prop_assert!(odd.is_empty(), "{:?}", odd);
    }
}
