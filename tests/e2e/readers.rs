//! What stands in the place of a file: devices, pipes, links, too much of everything. A message in a moment, whatever it is.

use std::ffi::OsStr;
use std::fs;
use std::os::unix::ffi::OsStrExt;
use std::os::unix::fs::symlink;
use std::os::unix::net::UnixListener;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use reeve_tests::{Ran, TestShop, reeve};

/// Runs the program with little memory, and ends it when it does not end: reading without end would take all of both.
fn bounded(place: &TestShop, words: &[&str]) -> Ran {
    const PATIENCE: Duration = Duration::from_secs(100);
    let mut command = Command::new("sh");
    // Half a gigabyte of addresses: the program's own and those of its threads.
    command.args(["-c", "ulimit -v 500000; exec \"$@\"", "sh"]).arg(reeve()).args(words).current_dir(place.path(""));
    let out = fs::File::create(place.path("said.out")).unwrap();
    let err = fs::File::create(place.path("said.err")).unwrap();
    let mut child = command.stdin(Stdio::null()).stdout(out).stderr(err).spawn().unwrap();
    let start = Instant::now();
    let code = loop {
        if let Some(status) = child.try_wait().unwrap() {
            break status.code();
        }
        if start.elapsed() > PATIENCE {
            child.kill().unwrap();
            child.wait().unwrap();
            break None;
        }
        std::thread::sleep(Duration::from_millis(5));
    };
    Ran { code, out: place.read("said.out"), err: place.read("said.err") }
}

fn pipe(at: &Path) {
    assert!(Command::new("mkfifo").arg(at).status().unwrap().success());
}

/// Puts something that is no readable file under a name, and says what the program calls it.
type Put = fn(&Path) -> &'static str;

const PUT: [Put; 5] = [
    |at| {
        symlink("/dev/zero", at).unwrap();
        "is a device and not a file"
    },
    |at| {
        pipe(at);
        "is a pipe and not a file"
    },
    |at| {
        // The name of a socket stays when nobody listens any more.
        UnixListener::bind(at).unwrap();
        "is a socket and not a file"
    },
    |at| {
        fs::create_dir(at).unwrap();
        "is a folder and not a file"
    },
    |at| {
        // One line of 200 million characters.
        fs::File::create(at).unwrap().set_len(200_000_000).unwrap();
        "has more than"
    },
];

/// Every file that a shop is read from, with a command that reads it.
const READ: &[(&str, &[&str])] = &[
    ("shop/shop.toml", &["check", "--shop", "shop"]),
    ("shop/store/cords.toml", &["check", "--shop", "shop"]),
    ("shop/store/fittings.toml", &["check", "--shop", "shop"]),
    ("shop/knots/samples.toml", &["check", "--shop", "shop"]),
    ("shop/knots/own.toml", &["check", "--shop", "shop"]),
    ("shop/designs/own.toml", &["check", "--shop", "shop"]),
    ("shop/commissions/own.toml", &["check", "--shop", "shop"]),
    ("shop/templates/quote.txt", &["check", "--shop", "shop"]),
    ("own.toml", &["takeoff", "./own.toml", "--shop", "shop"]),
    ("own.toml", &["quote", "./own.toml", "--shop", "shop"]),
    ("own.toml", &["knots", "check", "own.toml"]),
    ("own.so", &["knots", "probe", "own.so"]),
    ("own.so", &["knots", "admit", "own.so", "--yes", "--shop", "shop"]),
];

#[test]
fn what_is_no_file_is_refused_wherever_a_file_is_read() {
    for (file, words) in READ {
        for put in PUT {
            let place = TestShop::starter();
            let at = place.path(file);
            fs::create_dir_all(at.parent().unwrap()).unwrap();
            let _ = fs::remove_file(&at);
            let said = put(&at);
            let ran = bounded(&place, words);
            assert_eq!(ran.code, Some(2), "{file}, which {said}: {}", ran.err);
            assert!(ran.err.contains(&format!("{file} {said}")) || ran.err.contains(said), "{file}: {}", ran.err);
            assert!(ran.err.contains(file.rsplit('/').next().unwrap()), "{file}: {}", ran.err);
        }
    }
}

#[test]
fn a_file_that_grows_while_it_is_read_stops_at_the_bound() {
    // The system says that it has no bytes, and gives them without end as far as memory goes.
    if !Path::new("/proc/self/pagemap").exists() {
        return;
    }
    let place = TestShop::starter();
    symlink("/proc/self/pagemap", place.path("shop/designs/own.toml")).unwrap();
    let ran = bounded(&place, &["check", "--shop", "shop"]);
    assert_eq!(ran.code, Some(2), "{}", ran.err);
    assert!(ran.err.contains("shop/designs/own.toml "), "{}", ran.err);
}

#[test]
fn a_book_and_its_text_are_read_from_files_alone() {
    for put in PUT {
        let place = TestShop::starter();
        let said = put(&place.path("book.jsonl"));
        let ran = bounded(&place, &["book", "import", "book.jsonl", "--shop", "shop"]);
        assert_eq!(ran.code, Some(2), "which {said}: {}", ran.err);
        assert!(ran.err.contains(said), "{}", ran.err);
        assert!(!place.run(&["book", "list", "--shop", "shop"]).out.contains("enquiry"), "something was entered");
    }
    // What the database keeps beside the book, it opens by itself.
    for beside in ["-journal", "-wal", "-shm"] {
        let place = TestShop::starter();
        place.run(&["book", "issue", "reading-room", "--shop", "shop"]).done();
        pipe(&place.path(&format!("shop/book.sqlite{beside}")));
        let ran = bounded(&place, &["book", "list", "--shop", "shop"]);
        assert_eq!(ran.code, Some(2), "which {beside}: {}", ran.err);
        assert!(ran.err.contains("it stands beside the book and is not a file"), "{}", ran.err);
    }
    for put in &PUT[..4] {
        let place = TestShop::starter();
        let said = put(&place.path("shop/book.sqlite"));
        let ran = bounded(&place, &["book", "list", "--shop", "shop"]);
        assert_eq!(ran.code, Some(2), "which {said}: {}", ran.err);
        assert!(ran.err.contains("it is not a file"), "{}", ran.err);
    }
}

#[test]
fn names_that_are_not_read_are_told_with_the_remedy() {
    let place = TestShop::starter();
    let design = place.read("shop/designs/fender-fob.toml");
    place.write("shop/designs/Fob.TOML", &design);
    place.write("shop/commissions/order.Toml", "");
    fs::write(place.path("shop/designs").join(OsStr::from_bytes(b"f\xfcb.toml")), &design).unwrap();
    fs::write(place.path("shop/designs/f\u{202e}b.toml"), &design).unwrap();
    fs::rename(place.path("shop/store/fittings.toml"), place.path("shop/store/Fittings.toml")).unwrap();
    let ran = place.run(&["check", "--shop", "shop"]);
    for (told, times) in [
        ("warning: shop/designs/Fob.TOML is not read", 1),
        ("rename it to Fob.toml", 1),
        ("warning: shop/commissions/order.Toml is not read", 1),
        ("warning: shop/designs/f\u{fffd}b.toml is not read", 2),
        ("its name is not UTF-8", 1),
        ("U+202E", 1),
        ("error: shop/store/Fittings.toml is not read", 1),
        ("rename it to fittings.toml", 1),
    ] {
        assert_eq!(ran.err.matches(told).count(), times, "{told}: {}", ran.err);
    }
}

#[test]
fn a_link_that_leads_nowhere_says_so() {
    let place = TestShop::starter();
    symlink("elsewhere/fob.toml", place.path("shop/designs/own.toml")).unwrap();
    let err = place.run(&["check", "--shop", "shop"]).refused();
    assert!(err.contains("shop/designs/own.toml is a link to elsewhere/fob.toml, which is not there"), "{err}");
    fs::remove_file(place.path("shop/shop.toml")).unwrap();
    symlink("mine.toml", place.path("shop/shop.toml")).unwrap();
    let err = place.run(&["check", "--shop", "shop"]).refused();
    assert!(err.contains("shop/shop.toml is a link to mine.toml, which is not there"), "{err}");
}

/// A design that is made of so many of each of these.
fn made_of(parts: &[(&str, u32)]) -> String {
    let part = |(design, count): &(&str, u32)| format!("\n[[part]]\ndesign = \"{design}\"\ncount = {count}\n");
    let head = "[piece]\nname = \"Piece\"\npurpose = \"decoration\"\n".to_owned();
    parts.iter().fold(head, |text, one| text + &part(one))
}

/// A shop with a chain of designs, each made of so many of the next; the last is a key fob.
fn chain(length: usize, parts: &[u32]) -> TestShop {
    let place = TestShop::starter();
    let name = |at: usize| if at + 1 < length { format!("link-{at:05}") } else { "fender-fob".to_owned() };
    for at in 0..length - 1 {
        let next = name(at + 1);
        let parts: Vec<(&str, u32)> = parts.iter().map(|count| (next.as_str(), *count)).collect();
        place.write(&format!("shop/designs/{}.toml", name(at)), made_of(&parts));
    }
    place
}

#[test]
fn parts_stand_at_most_32_deep_and_a_chain_of_any_length_ends_in_a_message() {
    chain(33, &[1]).run(&["takeoff", "link-00000", "--shop", "shop"]).done();
    let place = chain(4_000, &[1]);
    for words in [&["takeoff", "link-00000", "--shop", "shop"][..], &["check", "--shop", "shop"]] {
        let err = bounded(&place, words).refused();
        assert!(err.contains("parts stand 33 deep within parts"), "{err}");
        assert!(err.contains("--> shop/designs/link-03966.toml:6:10"), "{err}");
    }
    // Closed to a ring of the same length.
    place.write("shop/designs/fender-fob.toml", made_of(&[("link-00000", 1)]));
    let err = bounded(&place, &["takeoff", "link-00000", "--shop", "shop"]).refused();
    assert!(err.contains("the design contains itself"), "{err}");
}

#[test]
fn parts_that_double_are_refused_before_they_are_built() {
    for (length, counts, said) in
        [(60, &[1, 1][..], "lines of a design with its parts"), (12, &[1000], "pieces in all")]
    {
        let err = bounded(&chain(length, counts), &["takeoff", "link-00000", "--shop", "shop"]).refused();
        assert!(err.contains(said), "{err}");
    }
}

#[test]
fn what_is_nested_without_end_is_told() {
    let place = TestShop::starter();
    for nested in ["[", "{a=", "a."] {
        place.write("shop/designs/own.toml", format!("a = {}", nested.repeat(300_000)));
        let err = bounded(&place, &["check", "--shop", "shop"]).refused();
        assert!(err.contains("this is not TOML") && err.lines().count() < 200, "{err}");
    }
    for nested in ["(", "-", "min("] {
        let sum = format!("knots + {}", nested.repeat(180 / nested.len()));
        place.write(
            "shop/designs/own.toml",
            format!("{}\n[[part]]\ndesign = \"bay-leaf\"\ncount = \"{sum}\"\n", made_of(&[])),
        );
        let err = bounded(&place, &["check", "--shop", "shop"]).refused();
        assert!(err.contains("can't be worked out"), "{err}");
    }
}

#[test]
fn ten_thousand_faults_are_told_in_a_moment() {
    let place = TestShop::starter();
    let step = "\n[[step]]\nknot = \"bogus\"\ntimes = 0\n";
    place.write("shop/designs/own.toml", made_of(&[("bay-leaf", 1)]) + &step.repeat(5_000));
    let start = Instant::now();
    let err = bounded(&place, &["check", "--shop", "shop"]).refused();
    assert_eq!(err.matches("error: ").count(), 20, "{err}");
    assert!(err.contains("more in shop/designs/own.toml\n") && err.ends_with("faults\n"), "{err}");
    // Many times what it takes, on a machine that is busy with other tests; it took minutes once.
    assert!(start.elapsed() < Duration::from_secs(20));
}

#[test]
fn a_long_value_is_shortened() {
    let place = TestShop::starter();
    place.write("shop/designs/own.toml", made_of(&[]).replace("decoration", &"æ".repeat(1_000_000)));
    let err = bounded(&place, &["check", "--shop", "shop"]).refused();
    assert!(err.len() < 8_000, "{} bytes", err.len());
}
