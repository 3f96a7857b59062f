//! The file of the book: copied, read in, without room, read only, cut short, strange, old, new.

use std::fs;
use std::process::Command;
use std::sync::LazyLock;

use proptest::prelude::*;
use reeve_book::Book;
use reeve_tests::{reeve, root};

use crate::workshop::Workshop;

const BOOK: &str = "shop/book.sqlite";

/// Whoever is told of a failure enters it again: what is entered is done, whether or not that can be said.
#[cfg(target_os = "linux")]
#[test]
fn what_is_entered_is_done_even_if_nobody_can_be_told() {
    let shop = shop();
    let sample = "knots sample --cord cotton-4-ecru --knot square --tied 10 --before 150cm --after 89cm --made 14.5cm";
    for words in ["book pay 2026-001 1.00 --ahead", "book mark 2026-001 on-bench --ahead", "book issue order-2", sample]
    {
        let mut told = Command::new(reeve());
        told.args(words.split(' ')).args(["--shop", "shop"]).current_dir(shop.shop.path("."));
        let told = told.stdout(fs::File::options().write(true).open("/dev/full").unwrap()).output().unwrap();
        let said = String::from_utf8(told.stderr).unwrap();
        assert!(told.status.success() && said.contains("it is done, and must not be done again"), "{words}: {said}");
    }
    let whole = shop.json(&["show", "2026-001"], "2030-01-01");
    assert_eq!(whole["payments"].as_array().unwrap().len(), 2);
    assert_eq!(shop.numbers().len(), 3);
    assert_eq!(shop.shop.read("shop/knots/samples.toml").matches("[[sample]]").count(), 1);
}

/// A shop with a book of two quotes.
fn shop() -> Workshop {
    let shop = Workshop::with_orders(3);
    for order in ["order-0", "order-1"] {
        shop.book(&["issue", order], "2026-11-25").done();
    }
    shop.book(&["mark", "2026-001", "accepted"], "2026-11-26").done();
    shop.book(&["pay", "2026-001", "9.00"], "2026-11-26").done();
    shop.book(
        &["log", "2026-001", "--minutes", "5", "--cord", "cotton-3-ecru=2", "--bought", "Ring=1.00"],
        "2026-11-27",
    )
    .done();
    shop
}

fn exported(shop: &Workshop, name: &str) -> String {
    shop.book(&["export", name], "2026-11-28").done();
    fs::read_to_string(shop.shop.path(name)).unwrap()
}

#[test]
fn what_is_written_out_and_read_in_is_the_same_book() {
    let (shop, other) = (shop(), Workshop::new());
    let text = exported(&shop, "book.jsonl");
    other.shop.write("book.jsonl", &text);
    other.book(&["import", "book.jsonl"], "2026-11-28").done();
    assert_eq!(exported(&other, "again.jsonl"), text);
    other.sound();
    let list = |shop: &Workshop| shop.book(&["list"], "2026-11-28").done();
    assert_eq!(list(&shop), list(&other));
    // Only into an empty book, and only a whole text.
    assert!(other.book(&["import", "book.jsonl"], "2026-11-28").refused().contains("holds commissions already"));
    let broken = Workshop::new();
    for (text, told) in [
        (text.replacen("\"in\":\"payment\"", "\"in\":\"payments\"", 1), "`payments` is not known"),
        (text.replacen("\"amount\"", "\"sum\"", 1), "has no `sum`"),
        (text.replacen("\"form\":4", "\"form\":9", 1), "it is of form 9"),
        (text.replacen("reeve order book", "another book", 1), "not the text of an order book"),
        (text.replacen("{\"in\"", "{in", 1), "line 2:"),
        (text.replacen("\"state\":\"accepted\"", "\"state\":null", 1), "state: it is missing"),
    ] {
        broken.shop.write("broken.jsonl", text);
        let said = broken.book(&["import", "broken.jsonl"], "2026-11-28").refused();
        assert!(said.contains(told), "{told}: {said}");
    }
    broken.shop.write("book.jsonl", text);
    broken.book(&["import", "book.jsonl"], "2026-11-28").done();
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, ..ProptestConfig::default() })]

    /// A text that was changed anywhere is read in whole or not at all, and never stops the program.
    #[test]
    fn no_text_panics_the_reader(cuts in prop::collection::vec((any::<prop::sample::Index>(), "[\\PC]{0,3}", 0_usize..40), 1..4)) {
        static TEXT: LazyLock<String> = LazyLock::new(|| exported(&shop(), "book.jsonl"));
        let mut text: Vec<char> = TEXT.chars().collect();
        for (at, put, gone) in cuts {
            let at = at.index(text.len());
            let end = (at + gone).min(text.len());
            text.splice(at..end, put.chars());
        }
        let text: String = text.into_iter().collect();
        let folder = tempfile::tempdir().unwrap();
        let mut book = Book::open(&folder.path().join("book.sqlite"), true).unwrap().book;
        let read = book.import(text.as_bytes());
        let listed = book.list(chrono::NaiveDate::MIN);
        prop_assert!(read.is_ok() || listed.is_ok_and(|all| all.is_empty()));
        let _ = book.check(|_, _| None);
    }
}

#[test]
fn a_copy_is_a_book_of_its_own() {
    let shop = shop();
    shop.book(&["backup", "copy.sqlite"], "2026-11-28").done();
    let said = shop.book(&["backup", "copy.sqlite"], "2026-11-28").refused();
    assert!(said.contains("is there already"), "{said}");
    let other = Workshop::new();
    other.shop.write(BOOK, fs::read(shop.shop.path("copy.sqlite")).unwrap());
    other.sound();
    assert_eq!(other.numbers(), shop.numbers());
}

/// The program leaves a file that it can't use as it is.
#[track_caller]
fn refused(shop: &Workshop, told: &str) {
    let before = fs::read(shop.shop.path(BOOK)).unwrap();
    for words in [vec!["list"], vec!["issue", "order-2"], vec!["check"]] {
        let ran = shop.book(&words, "2026-11-28");
        assert_eq!(ran.code, Some(2), "{}", ran.err);
        assert!(ran.err.contains(told) && ran.err.contains("help"), "{told}: {}", ran.err);
    }
    assert_eq!(fs::read(shop.shop.path(BOOK)).unwrap(), before);
    let strays = fs::read_dir(shop.shop.path("shop")).unwrap().filter(|entry| {
        let name = entry.as_ref().unwrap().file_name();
        name.to_str().unwrap().starts_with("book.") && name != "book.sqlite"
    });
    assert_eq!(strays.count(), 0, "something was left beside it");
}

#[test]
fn what_is_no_whole_book_is_refused_and_left_alone() {
    let shop = shop();
    let whole = fs::read(shop.shop.path(BOOK)).unwrap();
    shop.shop.write(BOOK, &whole[..whole.len() / 2]);
    refused(&shop, "its end is missing");
    shop.shop.write(BOOK, &whole[..60]);
    refused(&shop, "its end is missing");
    shop.shop.write(BOOK, "");
    refused(&shop, "it is empty");
    shop.shop.write(BOOK, "Dear diary");
    refused(&shop, "it is not a database");
    // The form stands at byte 60, and whose database it is at byte 68 (SQLite's file format, 1.3).
    let mut newer = whole.clone();
    newer[60..64].copy_from_slice(&99_u32.to_be_bytes());
    shop.shop.write(BOOK, &newer);
    refused(&shop, "a book of form 99");
    let mut other = whole.clone();
    other[68..72].copy_from_slice(&7_u32.to_be_bytes());
    shop.shop.write(BOOK, &other);
    refused(&shop, "another program's database");
    shop.shop.write(BOOK, &whole);
    shop.sound();
}

/// A book of every form there was, kept as it was written then.
#[test]
fn a_book_of_an_older_form_is_brought_up_behind_a_backup() {
    let kept = fs::read(root().join("tests/book/forms/form-1.sqlite")).unwrap();
    let shop = Workshop::new();
    shop.shop.write(BOOK, &kept);
    let ran = shop.book(&["list", "--as", "csv"], "2026-12-01");
    assert!(ran.err.contains("brought to a newer form"), "{}", ran.err);
    assert!(ran.out.contains("2026-001,0,fobs,") && ran.out.contains(",accepted,"), "{}", ran.out);
    assert_eq!(fs::read(shop.shop.path("shop/book.form-1.sqlite")).unwrap().len(), kept.len());
    shop.sound();
    shop.book(&["log", "2026-001", "--minutes", "5"], "2026-12-01").done();
    let again = shop.book(&["list"], "2026-12-01");
    assert!(again.err.is_empty(), "{}", again.err);
    // The backup is a book of the old form, and can be brought up as well.
    shop.shop.write(BOOK, fs::read(shop.shop.path("shop/book.form-1.sqlite")).unwrap());
    shop.sound();
    assert!(shop.shop.path("shop/book.form-1-1.sqlite").exists(), "no backup takes another's place");
}

/// A book of the form before knows what is to be made once it is brought up: what was undone or finished is not.
#[test]
fn a_book_that_kept_no_queue_has_one() {
    let shop = Workshop::new();
    shop.shop.write(BOOK, fs::read(root().join("tests/book/forms/form-3.sqlite")).unwrap());
    let ran = shop.book(&["queue"], "2026-12-01");
    assert!(ran.err.contains("brought to a newer form") && !ran.err.contains("sealed as they stood"), "{}", ran.err);
    assert!(
        ran.out.contains("2026-001") && !ran.out.contains("2026-002") && !ran.out.contains("2026-003"),
        "{}",
        ran.out
    );
    assert_eq!(shop.numbers().len(), 4);
    shop.sound();
}

#[test]
fn without_room_nothing_is_entered_and_the_book_stays_whole() {
    let shop = shop();
    let before = shop.numbers();
    // A limit on how large a file may grow stands for a full disk; the signal that comes with it is not wanted.
    let script = "trap '' XFSZ; ulimit -f 1; exec \"$0\" book issue order-2 --on 2026-11-28 --ahead --shop shop";
    let ran = Command::new("sh").args(["-c", script]).arg(reeve()).current_dir(shop.shop.path(".")).output().unwrap();
    let said = String::from_utf8_lossy(&ran.stderr).into_owned();
    assert_eq!(ran.status.code(), Some(1), "{said}");
    assert!(said.contains("error:") && said.contains("book.sqlite") && !said.contains("panicked"), "{said}");
    assert_eq!(shop.numbers(), before);
    shop.sound();
    shop.book(&["issue", "order-2"], "2026-11-28").done();
    shop.sound();
}

#[cfg(unix)]
#[test]
fn a_folder_that_is_read_only_is_told_of() {
    use std::os::unix::fs::PermissionsExt;
    let shop = shop();
    let (folder, book) = (shop.shop.path("shop"), shop.shop.path(BOOK));
    let allow = |path: &std::path::Path, mode| fs::set_permissions(path, fs::Permissions::from_mode(mode)).unwrap();
    let before = fs::read(&book).unwrap();
    allow(&book, 0o444);
    allow(&folder, 0o555);
    let ran = shop.book(&["issue", "order-2"], "2026-11-28");
    allow(&folder, 0o755);
    allow(&book, 0o644);
    // Whoever may do everything is not kept out by permissions.
    if ran.code == Some(0) {
        return;
    }
    assert_eq!(ran.code, Some(1), "{}", ran.err);
    assert!(ran.err.contains("must be writable"), "{}", ran.err);
    assert_eq!(fs::read(&book).unwrap(), before);
    shop.sound();
}

/// A text of a form without seals is taken as it is; what does not hold together is found all the same.
#[test]
fn damage_is_found() {
    let shop = shop();
    let text = unsealed(&exported(&shop, "book.jsonl"));
    for (text, told) in [
        (text.replacen("\"running\":2", "\"running\":3", 1), "the numbers of 2026 have a gap"),
        (text.replacen("\"state\":\"accepted\"", "\"state\":\"paid\"", 1), "it went from quoted to paid"),
        (text.replacen("\"revision\":0", "\"revision\":4", 1), "revision 4 follows on 0 others"),
        (text.replacen("gross\\\":\\\"24.00", "gross\\\":\\\"23.00", 1), "its document comes to"),
        (text.replacen("\\\"net\\\": \\\"20.00\\\"", "\\\"net\\\": \\\"19.00\\\"", 1), "its totals come to"),
    ] {
        let other = Workshop::new();
        other.shop.write("book.jsonl", text);
        let ran = other.book(&["import", "book.jsonl"], "2026-11-28");
        assert!(ran.err.contains("without seals"), "{}", ran.err);
        ran.done();
        let said = other.book(&["check"], "2026-11-28").refused();
        assert!(said.contains(told), "{told}: {said}");
    }
}

/// The same text as a book of the second form wrote it.
fn unsealed(text: &str) -> String {
    let rows =
        text.lines().skip(1).filter(|line| !line.starts_with("{\"in\":\"seal\"") && !line.contains("\"undoing\""));
    let head = "{\"book\":\"reeve order book\",\"form\":2}";
    std::iter::once(head).chain(rows).collect::<Vec<_>>().join("\n")
}
