//! Seals: whatever is altered, taken out or put in is noticed.

use std::fs;

use proptest::prelude::*;
use reeve_book::Book;
use reeve_tests::root;
use rusqlite::Connection;

use crate::workshop::Workshop;

const BOOK: &str = "shop/book.sqlite";

/// A shop whose book has something in every table.
fn shop() -> Workshop {
    let shop = Workshop::with_orders(2);
    shop.book(&["enquire", "order-0"], "2020-11-20").done();
    for order in ["order-0", "order-1"] {
        shop.book(&["issue", order], "2020-11-25").done();
    }
    shop.book(&["mark", "2020-001", "accepted", "--note", "by letter"], "2020-11-26").done();
    shop.book(&["pay", "2020-001", "9.00", "--note", "deposit"], "2020-11-26").done();
    shop.book(&["pay", "2020-001", "8.00"], "2020-11-26").done();
    let log = ["log", "2020-001", "--minutes", "950", "--step", "Tie", "--note", "slow"];
    shop.book(&log, "2020-11-27").done();
    shop.book(&["log", "2020-001", "--cord", "cotton-3-ecru=2", "--bought", "Ring=1.00"], "2020-11-27").done();
    shop.book(&["undo", "2020-001", "6", "--why", "95, not 950"], "2020-11-28").done();
    shop.book(&["forget", "Client 1", "--yes"], "2020-11-28").done();
    shop.shop.run(&["book", "start", "2020-001", "--step", "Tie", "--shop", "shop"]).done();
    shop.sound();
    shop
}

/// Changes a book behind the program's back: with what guards it taken down and put up again.
pub(crate) fn tamper(shop: &Workshop, change: &str) {
    let db = Connection::open(shop.shop.path(BOOK)).unwrap();
    tamper_with(&db, change).unwrap();
}

fn tamper_with(db: &Connection, change: &str) -> rusqlite::Result<usize> {
    db.pragma_update(None, "foreign_keys", false)?;
    db.execute_batch("PRAGMA synchronous = OFF; BEGIN")?;
    let guards = "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'";
    let guards: Vec<(String, String)> =
        db.prepare(guards)?.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?.collect::<Result<_, _>>()?;
    for (name, _) in &guards {
        db.execute_batch(&format!("DROP TRIGGER {name}"))?;
    }
    let done = db.execute(change, []);
    for (_, sql) in &guards {
        db.execute_batch(sql)?;
    }
    db.execute_batch("COMMIT")?;
    done
}

fn tables(db: &Connection) -> Vec<String> {
    let all = "SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name";
    db.prepare(all).unwrap().query_map([], |row| row.get(0)).unwrap().collect::<Result<_, _>>().unwrap()
}

fn columns(db: &Connection, table: &str) -> Vec<(String, String)> {
    let all = format!("SELECT name, type FROM pragma_table_info('{table}')");
    db.prepare(&all)
        .unwrap()
        .query_map([], |row| Ok((row.get(0)?, row.get(1)?)))
        .unwrap()
        .collect::<Result<_, _>>()
        .unwrap()
}

fn rows(db: &Connection, table: &str) -> Vec<i64> {
    let all = format!("SELECT rowid FROM {table} ORDER BY rowid");
    db.prepare(&all).unwrap().query_map([], |row| row.get(0)).unwrap().collect::<Result<_, _>>().unwrap()
}

/// Every value of every row of every table, one by one: altered so that it still could be, blanked, and the row taken out.
#[test]
fn every_value_altered_and_every_row_taken_out_is_noticed() {
    let shop = shop();
    let kept = shop.shop.path("kept.sqlite");
    shop.book(&["backup", "kept.sqlite"], "2020-11-29").done();
    let whole = Connection::open(&kept).unwrap();
    let mut tried = 0;
    for table in tables(&whole) {
        assert!(!rows(&whole, &table).is_empty(), "nothing to alter in {table}");
        let mut changes: Vec<String> = Vec::new();
        for row in rows(&whole, &table) {
            for (column, kind) in columns(&whole, &table) {
                let other = match kind.as_str() {
                    "TEXT" => format!("coalesce({column}, '') || ' '"),
                    _ => format!("coalesce({column}, 0) + 1"),
                };
                changes.push(format!("UPDATE {table} SET {column} = {other} WHERE rowid = {row}"));
                changes.push(format!(
                    "UPDATE OR IGNORE {table} SET {column} = NULL WHERE rowid = {row} AND {column} IS NOT NULL"
                ));
            }
            changes.push(format!("DELETE FROM {table} WHERE rowid = {row}"));
        }
        for change in changes {
            let altered = shop.shop.path("altered.sqlite");
            fs::copy(&kept, &altered).unwrap();
            let db = Connection::open(&altered).unwrap();
            // What the database itself refuses can't be done; nothing may have been there to blank.
            if !tamper_with(&db, &change).is_ok_and(|changed| changed > 0) {
                continue;
            }
            drop(db);
            tried += 1;
            let book = Book::open(&altered, false).map(|opened| opened.book);
            let found = book.and_then(|book| book.check(|_, _| None));
            assert!(!found.is_ok_and(|found| found.is_empty()), "not noticed: {change}");
        }
    }
    assert!(tried > 400, "{tried}");
}

#[test]
fn the_row_is_named() {
    for (change, told) in [
        ("UPDATE payment SET amount = '7.00' WHERE id = 2", "2020-001: payment 2: it was altered"),
        (
            "UPDATE page SET text = text || '!' WHERE entry = 2 AND name = 'bench.txt'",
            "2020-002: page 2/bench.txt: it was altered",
        ),
        ("UPDATE client SET name = 'Ada' WHERE id = 1", "the book: client 1: it was altered"),
        ("DELETE FROM payment WHERE id = 1", "payment 1 is missing: seal "),
        (
            "INSERT INTO payment (commission, day, amount) VALUES (1, '2020-11-26', '1.00')",
            "payment 3: it was never entered",
        ),
        ("DELETE FROM seal WHERE nth = 5", "seal 6 follows where seal 5 is due"),
        ("UPDATE seal SET key = '9' WHERE nth = 5", "seal 5 is not the one that was made"),
        ("UPDATE sealed SET count = count - 1", "the last seal should be "),
        ("DELETE FROM undoing", "undoing 1 is missing"),
        ("DELETE FROM timer", "timer 1 is missing"),
    ] {
        let shop = shop();
        tamper(&shop, change);
        let said = shop.book(&["check"], "2020-11-29").refused();
        assert!(said.contains(told), "{told}: {said}");
    }
}

#[test]
fn guards_that_were_taken_down_are_noticed() {
    let shop = shop();
    let db = Connection::open(shop.shop.path(BOOK)).unwrap();
    db.execute_batch("DROP TRIGGER payment_stays").unwrap();
    drop(db);
    let said = shop.book(&["check"], "2020-11-29").refused();
    assert!(said.contains("what guards them are not as the program made them"), "{said}");
}

#[test]
fn what_is_entered_is_not_edited() {
    let shop = shop();
    let db = Connection::open(shop.shop.path(BOOK)).unwrap();
    for table in ["entry", "page", "happening", "payment", "work", "cord_used", "bought", "undoing", "seal"] {
        let (column, _) = columns(&db, table).into_iter().next_back().unwrap();
        for change in [format!("UPDATE {table} SET {column} = {column}"), format!("DELETE FROM {table}")] {
            let said = db.execute(&change, []).unwrap_err().to_string();
            assert!(said.contains("never edited"), "{change}: {said}");
        }
    }
    assert!(db.execute("UPDATE seal SET salt = 'x'", []).is_err() && db.execute("DELETE FROM sealed", []).is_err());
    // Not even after a client was forgotten, for which the guards were taken down.
    shop.sound();
}

/// Whoever cuts off the last entries with their seals and notes another last seal is not noticed by the book alone, and
/// what was written down tells.
#[test]
fn a_seal_that_was_written_down_tells_what_the_book_alone_cannot() {
    let shop = shop();
    let said = shop.book(&["check"], "2020-11-29").done();
    let seal = said.trim().trim_end_matches('.').rsplit(' ').next().unwrap().to_owned();
    let with = |seal: &str| shop.book(&["check", "--seal", seal], "2020-11-29");
    with(&seal).done();
    shop.book(&["pay", "2020-001", "1.00"], "2020-11-29").done();
    with(&seal).done();
    let later = shop.book(&["check"], "2020-11-29").done();
    let later = later.trim().trim_end_matches('.').rsplit(' ').next().unwrap().to_owned();
    assert!(with("57").refused().contains("is not a seal"));
    tamper(&shop, "DELETE FROM payment WHERE id = 3");
    tamper(&shop, "DELETE FROM seal WHERE nth = (SELECT max(nth) FROM seal)");
    tamper(
        &shop,
        "UPDATE sealed SET count = (SELECT max(nth) FROM seal), link = (SELECT link FROM seal ORDER BY nth DESC LIMIT 1)",
    );
    shop.sound();
    with(&seal).done();
    let said = with(&later).refused();
    assert!(said.contains("does not begin with what was in it at seal"), "{said}");
}

fn exported(shop: &Workshop) -> String {
    let _ = fs::remove_file(shop.shop.path("book.jsonl"));
    shop.book(&["export", "book.jsonl"], "2020-11-29").done();
    fs::read_to_string(shop.shop.path("book.jsonl")).unwrap()
}

/// Any line altered in a way that could be, left out or doubled: the import names a line and enters nothing.
#[test]
fn an_altered_line_is_told_with_its_line() {
    let shop = shop();
    let text = exported(&shop);
    let lines: Vec<&str> = text.lines().collect();
    let folder = tempfile::tempdir().unwrap();
    let mut nth = 0;
    let mut import = |text: &str| {
        nth += 1;
        let mut book = Book::open(&folder.path().join(format!("{nth}.sqlite")), true).unwrap().book;
        book.import(text.as_bytes()).map_err(|error| error.to_string())
    };
    assert!(import(&text).is_ok());
    let line_of = |part: &str| lines.iter().position(|line| line.contains(part)).unwrap() + 1;
    for (part, other) in [
        ("\"amount\":\"9.00\"", "\"amount\":\"9.50\""),
        ("\"note\":\"deposit\"", "\"note\":\"a deposit\""),
        ("\"minutes\":950.0", "\"minutes\":95.0"),
        ("\"name\":\"Client 0\"", "\"name\":\"Client 7\""),
        ("\"why\":\"95, not 950\"", "\"why\":\"95\""),
    ] {
        let said = import(&text.replacen(part, other, 1)).unwrap_err();
        assert!(said.contains(&format!("line {}: it was altered", line_of(part))), "{other}: {said}");
    }
    for at in 0..lines.len() {
        let without: Vec<&str> = [&lines[..at], &lines[at + 1..]].concat();
        assert!(import(&without.join("\n")).unwrap_err().contains("line "), "line {at} left out");
    }
    for cut in [1, 2, lines.len() / 2, lines.len() - 1] {
        assert!(import(&lines[..cut].join("\n")).is_err(), "cut after {cut}");
    }
}

/// What the book keeps of its queue is reckoned anew by the check.
#[test]
fn a_queue_that_does_not_follow_from_what_happened_is_noticed() {
    let told = |change: &str| {
        let shop = shop();
        shop.book(&["mark", "2020-001", "on-bench"], "2020-11-29").done();
        tamper(&shop, change);
        shop.book(&["check"], "2020-12-01").refused()
    };
    let lacks = told("DELETE FROM to_be_made");
    assert!(lacks.contains("2020-001: it is on the bench, and is not among what is to be made"), "{lacks}");
    let more = told("INSERT INTO to_be_made SELECT id FROM commission WHERE number = '2020-002'");
    assert!(more.contains("2020-002: it is quoted, and is among what is to be made"), "{more}");
}

/// Books of both forms without seals are brought up, and everything in them is sealed.
#[test]
fn a_book_without_seals_is_sealed_as_it_stands() {
    for (form, commissions) in [(1, 1), (2, 2)] {
        let shop = Workshop::new();
        shop.shop.write(BOOK, fs::read(root().join(format!("tests/book/forms/form-{form}.sqlite"))).unwrap());
        let ran = shop.book(&["list"], "2026-12-01");
        assert!(ran.err.contains("brought to a newer form") && ran.err.contains("sealed as they stood"), "{}", ran.err);
        assert_eq!(shop.numbers().len(), commissions);
        shop.sound();
        tamper(&shop, "UPDATE happening SET note = 'x' WHERE id = 1");
        assert!(shop.book(&["check"], "2026-12-01").refused().contains("happening 1: it was altered"));
    }
}

/// What a maker may do, at random.
#[derive(Debug, Clone)]
enum Did {
    Enquire(usize),
    Issue(usize, i64),
    Mark(usize, &'static str),
    Pay(usize, i64),
    Log(usize, f64),
    Undo(usize, u32),
    Forget(usize),
}

fn did() -> impl Strategy<Value = Vec<Did>> {
    let of = || 0_usize..4;
    let states =
        prop::sample::select(vec!["accepted", "on-bench", "finished", "delivered", "paid", "cancelled", "declined"]);
    let one = prop_oneof![
        of().prop_map(Did::Enquire),
        (of(), 1_i64..900).prop_map(|(at, gross)| Did::Issue(at, gross)),
        (of(), states).prop_map(|(at, state)| Did::Mark(at, state)),
        (of(), -50_i64..500).prop_map(|(at, amount)| Did::Pay(at, amount)),
        // In tenths: with all the digits that a figure can have, two spellings that differ in the last one can be one figure.
        (of(), 0_u32..1_000_000).prop_map(|(at, tenths)| Did::Log(at, f64::from(tenths) / 10.0)),
        (of(), 1_u32..9).prop_map(|(at, entry)| Did::Undo(at, entry)),
        of().prop_map(Did::Forget),
    ];
    prop::collection::vec(one, 1..40)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 32, ..ProptestConfig::default() })]

    /// Whatever is entered, undone and forgotten: the book is found sound, written out and read in it is the same, and a
    /// digit altered anywhere in a row is noticed.
    #[test]
    fn a_book_of_any_entries_is_sound(all in did(), at in any::<prop::sample::Index>()) {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("book.sqlite");
        let mut book = Book::open(&path, true).unwrap().book;
        for one in all {
            do_it(&mut book, &one);
        }
        let found = book.check(|_, _| None).unwrap();
        prop_assert!(found.is_empty(), "{found:?}");
        let day = chrono::NaiveDate::from_ymd_opt(2027, 1, 4).unwrap();
        let mut listed = book.list(day).unwrap();
        prop_assert_eq!(listed.len() as u64, book.count().unwrap());
        listed.retain(|one| one.state.is_to_be_made());
        prop_assert_eq!(book.to_be_made(day).unwrap(), listed);
        let mut text = Vec::new();
        book.export(&mut text).unwrap();
        let mut other = Book::open(&folder.path().join("other.sqlite"), true).unwrap().book;
        let text = String::from_utf8(text).unwrap();
        if other.import(text.as_bytes()).is_ok() {
            let mut again = Vec::new();
            other.export(&mut again).unwrap();
            prop_assert_eq!(String::from_utf8(again).unwrap(), text.clone());
            prop_assert!(other.check(|_, _| None).unwrap().is_empty());
        } else {
            prop_assert_eq!(text.lines().count(), 1, "only a book with nothing in it is not read in");
        }
        // Another digit in place of one, anywhere.
        let digits: Vec<usize> = text.bytes().enumerate().filter(|(_, byte)| byte.is_ascii_digit()).map(|(at, _)| at).collect();
        let at = digits[at.index(digits.len())];
        let mut bytes = text.into_bytes();
        bytes[at] = if bytes[at] == b'9' { b'8' } else { bytes[at] + 1 };
        let mut other = Book::open(&folder.path().join("altered.sqlite"), true).unwrap().book;
        prop_assert!(other.import(bytes.as_slice()).is_err());
    }
}

fn do_it(book: &mut Book, one: &Did) {
    let day = chrono::NaiveDate::from_ymd_opt(2027, 1, 4).unwrap();
    let reference = |at: usize| format!("order-{at}");
    // What can't be is refused; the book must be sound either way.
    match *one {
        Did::Enquire(at) => {
            let _ = book.enquire(&crate::course::asked(&reference(at), &format!("Client {at}"), day));
        }
        Did::Issue(at, gross) => {
            let _ = crate::course::issue_for(book, &reference(at), &format!("Client {at}"), gross, day);
        }
        Did::Mark(at, word) => {
            let note = format!("client {at} said so");
            let _ = book.mark(&reference(at), reeve_book::State::of_word(word).unwrap(), day, Some(&note));
        }
        Did::Pay(at, amount) => {
            let _ = book.pay(&reference(at), amount.into(), day, Some("deposit"));
        }
        Did::Log(at, minutes) => {
            let line = reeve_book::WorkLine { day, step: Some("Tie".to_owned()), minutes, note: None };
            let _ = book.log(&reference(at), &reeve_book::Actuals { work: vec![line], ..Default::default() }, day);
        }
        Did::Undo(at, entry) => {
            let _ = book.undo(&reference(at), entry, "a slip", day);
        }
        Did::Forget(at) => {
            let name = format!("Client {at}");
            let forget =
                reeve_book::Forget { whom: &name, also: &[], maker: "", is_usual: &|_| false, day, really: true };
            let _ = book.forget(&forget);
        }
    }
}
