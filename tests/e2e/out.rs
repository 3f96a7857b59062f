//! `--out` and `--own`: sets of papers, each whole, in a folder of its own, and never over what is there.

use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::atomic::{AtomicBool, Ordering};

use reeve_tests::{DEMO_DAY, Ran, TestShop, reeve, tree_of};
use serde_json::Value;

/// What the client gets.
const CLIENTS: [&str; 3] = ["quote.html", "quote.json", "quote.txt"];
/// What is the maker's own.
const OWN: [&str; 5] = ["bench.html", "bench.txt", "costing.html", "costing.json", "costing.txt"];

fn demo(place: &TestShop, more: &[&str]) -> Ran {
    place.run(&[&["quote", "--demo", "--on", DEMO_DAY], more].concat())
}

/// The names of a set's files.
fn called(set: &str, papers: &[&str]) -> Vec<String> {
    papers.iter().map(|paper| format!("{set}/{set}-{paper}")).collect()
}

fn names(place: &TestShop, folder: &str) -> Vec<String> {
    tree_of(&place.path(folder)).into_keys().map(|path| path.to_str().unwrap().to_owned()).collect()
}

#[test]
fn out_holds_the_clients_papers_alone_and_own_the_makers() {
    let place = TestShop::none();
    let ran = demo(&place, &["--out", "made/to-send", "--own", "made/mine"]);
    for (folder, papers) in [("made/to-send", &CLIENTS[..]), ("made/mine", &OWN)] {
        assert_eq!(names(&place, folder), called("reading-room", papers));
        for paper in papers {
            let told = format!("wrote {folder}/reading-room/reading-room-{paper}\n");
            assert!(ran.err.contains(&told), "{}", ran.err);
        }
    }
    let printed = ran.done();
    for (path, words) in [
        ("made/to-send/reading-room/reading-room-quote.txt", ["quote", "text"]),
        ("made/to-send/reading-room/reading-room-quote.html", ["quote", "html"]),
        ("made/to-send/reading-room/reading-room-quote.json", ["quote", "json"]),
        ("made/mine/reading-room/reading-room-costing.html", ["costing", "html"]),
        ("made/mine/reading-room/reading-room-costing.txt", ["costing", "text"]),
        ("made/mine/reading-room/reading-room-costing.json", ["costing", "json"]),
        ("made/mine/reading-room/reading-room-bench.html", ["bench", "html"]),
        ("made/mine/reading-room/reading-room-bench.txt", ["bench", "text"]),
    ] {
        let page = place.run(&[words[0], "--demo", "--on", DEMO_DAY, "--as", words[1]]).done();
        assert_eq!(place.read(path), page, "{path}");
    }
    assert_eq!(place.read("made/to-send/reading-room/reading-room-quote.txt"), printed);
}

#[test]
fn two_clients_never_get_each_others_papers() {
    let place = TestShop::starter();
    for commission in ["reading-room", "thwickling"] {
        place.run(&["quote", commission, "--shop", "shop", "--out", "out"]).done();
    }
    let both = [called("reading-room", &CLIENTS), called("thwickling", &CLIENTS)].concat();
    assert_eq!(names(&place, "out"), both);
    // Another shop's commission of the same name.
    let other = ["quote", "thwickling", "--shop", "other", "--out", "out"];
    place.run(&["begin", "other"]).done();
    place.replace("other/commissions/thwickling.toml", "Ondine", "Undine");
    let before = place.tree();
    place.run(&other).done();
    assert!(before.iter().all(|(path, bytes)| place.tree().get(path) == Some(bytes)));
    assert!(place.read("out/thwickling-2/thwickling-2-quote.txt").contains("Undine"));
}

#[test]
fn issued_papers_bear_the_books_number() {
    let place = TestShop::starter();
    place.replace("shop/shop.toml", "\"{year}-{running}\"", "\"Q/{year}/{running}\"");
    let issue = |day: &str| {
        let words =
            ["book", "issue", "reading-room", "--on", day, "--ahead", "--shop", "shop", "--out", "out", "--own", "own"];
        place.run(&words).done()
    };
    issue("2026-11-25");
    place.replace("shop/commissions/reading-room.toml", "quantity = 6", "quantity = 5");
    issue("2026-11-27");
    let both = [called("Q-2026-001", &CLIENTS), called("Q-2026-001-revision-1", &CLIENTS)].concat();
    assert_eq!(names(&place, "out"), both);
    assert_eq!(names(&place, "own").len(), 2 * OWN.len());
}

#[test]
fn what_is_there_stays_whoever_wrote_it() {
    let place = TestShop::none();
    place.write("out/reading-room/reading-room-quote.txt", "a letter of mine");
    place.write("out/reading-room-2", "a file of mine");
    place.write("out/letter.txt", "mine");
    let before = place.tree();
    demo(&place, &["--out", "out"]).done();
    let after = place.tree();
    assert!(before.iter().all(|(path, bytes)| after.get(path) == Some(bytes)));
    assert_eq!(after.len(), before.len() + CLIENTS.len());
    assert!(place.path("out/reading-room-3/reading-room-3-quote.txt").is_file());
    // The same papers again are the same set.
    let again = demo(&place, &["--out", "out"]);
    assert!(again.err.contains("unchanged, it is there already: out/reading-room-3/"), "{}", again.err);
    again.done();
    assert_eq!(place.tree(), after);
}

#[test]
fn both_sets_of_a_run_get_the_same_name() {
    let place = TestShop::none();
    place.write("own/reading-room/notes.txt", "mine");
    demo(&place, &["--out", "out", "--own", "own"]).done();
    assert!(place.path("out/reading-room-2").is_dir() && place.path("own/reading-room-2").is_dir());
    assert!(!place.path("out/reading-room").exists());
}

#[test]
fn a_file_that_is_there_is_replaced_on_the_makers_word_alone() {
    let place = TestShop::none();
    place.write("chart.html", "mine");
    let said = place.run(&["knots", "chart", "--out", "chart.html"]).refused();
    assert!(said.contains("chart.html is there already") && said.contains("--replace"), "{said}");
    assert_eq!(place.read("chart.html"), "mine");
    place.run(&["knots", "chart", "--out", "chart.html", "--replace"]).done();
    assert!(place.read("chart.html").contains("</html>"));
    place.run(&["knots", "chart", "--replace"]).refused();
}

#[test]
fn faults_of_the_input_leave_everything_as_it_is() {
    let place = TestShop::starter();
    let words = ["quote", "reading-room", "--shop", "shop", "--out", "out/a", "--own", "out/b"];
    place.replace("shop/shop.toml", "wage = \"24.00\"", "wage = 24");
    place.run(&words).refused();
    assert!(!place.path("out").exists());
    place.replace("shop/shop.toml", "wage = 24", "wage = \"24.00\"");
    place.run(&words).done();
    place.replace("shop/commissions/reading-room.toml", "quantity = 6", "quantity = 0");
    let before = place.tree();
    place.run(&words).refused();
    assert_eq!(place.tree(), before);
}

#[test]
fn a_folder_that_cannot_be_made_is_the_systems_refusal() {
    let place = TestShop::none();
    place.write("file", "mine");
    let before = place.tree();
    let ran = demo(&place, &["--out", "new/folder", "--own", "file/own"]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(1), ""), "{}", ran.err);
    assert!(ran.err.contains("file/own"), "{}", ran.err);
    assert!(place.tree() == before && !place.path("new").exists());
}

#[cfg(target_os = "linux")]
#[test]
fn a_folder_that_cannot_be_written_is_the_systems_refusal() {
    // Not even the superuser makes files there.
    let ran = demo(&TestShop::none(), &["--out", "/proc"]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(1), ""), "{}", ran.err);
    assert!(ran.err.contains("/proc"), "{}", ran.err);
}

#[cfg(unix)]
#[test]
fn papers_never_go_among_the_shops_own_files() {
    use std::os::unix::fs::symlink;
    let place = TestShop::starter();
    symlink(place.path("shop/designs"), place.path("link")).unwrap();
    // A folder of the shop that stands elsewhere.
    fs::rename(place.path("shop/knots"), place.path("my-knots")).unwrap();
    symlink(place.path("my-knots"), place.path("shop/knots")).unwrap();
    let before = place.tree();
    for (dir, own) in [
        ("shop/templates", "templates"),
        ("shop/templates/new/deep", "templates"),
        ("shop/designs", "designs"),
        ("shop/commissions/../designs/.", "designs"),
        ("link/below", "designs"),
        ("shop/knots", "knots"),
        ("my-knots/more", "knots"),
        ("shop/commissions", "commissions"),
        ("shop/store", "store"),
    ] {
        for option in ["--out", "--own"] {
            for words in [&["quote"][..], &["book", "issue"]] {
                let words = [words, &["reading-room", "--shop", "shop", option, dir]].concat();
                let said = place.run(&words).refused();
                assert!(said.contains(dir) && said.contains(&format!("{own}/ of the shop")), "{dir}: {said}");
            }
        }
    }
    // What the program keeps for itself there: a folder of that name would stand in the book's place.
    for dir in ["shop/book.sqlite", "shop/book.sqlite-wal", ".reeve-x"] {
        let said = place.run(&["quote", "reading-room", "--shop", "shop", "--out", dir]).refused();
        assert!(said.contains("a name that the program keeps for itself"), "{said}");
    }
    let chart = place.run(&["knots", "show", "crown", "--as", "html", "--out", "shop/templates/knot.html"]).refused();
    assert!(chart.contains("templates/ of the shop"), "{chart}");
    assert_eq!(place.tree(), before);
    place.run(&["quote", "reading-room", "--shop", "shop", "--out", "shop/to-send"]).done();
    place.run(&["quote", "reading-room", "--shop", "shop", "--out", "shop"]).done();
    place.run(&["check", "--shop", "shop"]).done();
}

#[cfg(unix)]
#[test]
fn the_clients_folder_and_the_makers_own_are_two() {
    let place = TestShop::none();
    fs::create_dir(place.path("a")).unwrap();
    std::os::unix::fs::symlink("a", place.path("b")).unwrap();
    for (out, own) in [("a", "a"), ("a", "./a/."), ("a", "b"), ("new", "a/../new"), ("a", "a/own"), ("b/out", "a")] {
        let said = demo(&place, &["--out", out, "--own", own]).refused();
        assert!(said.contains("are not apart"), "{out} {own}: {said}");
    }
    assert!(place.tree().is_empty());
}

#[cfg(unix)]
#[test]
fn what_is_written_can_be_read_by_others() {
    use std::os::unix::fs::PermissionsExt;
    let place = TestShop::none();
    place.write("plain/file.txt", "made by any other program");
    demo(&place, &["--out", "out"]).done();
    let mode = |path: &str| fs::metadata(place.path(path)).unwrap().permissions().mode();
    assert_eq!(mode("out/reading-room"), mode("plain"));
    for file in called("reading-room", &CLIENTS) {
        assert_eq!(mode(&format!("out/{file}")), mode("plain/file.txt"), "{file}");
    }
}

/// What the three papers of a set say that it comes to; each is opened by its path, as anybody would.
fn sums(set: &Path) -> [bool; 3] {
    let name = set.file_name().unwrap().to_str().unwrap();
    let read = |paper: &str| fs::read_to_string(set.join(format!("{name}-{paper}"))).unwrap_or_default();
    let document: Value = serde_json::from_str(&read("quote.json")).unwrap_or_default();
    let gross = document["totals"]["gross"].as_str().unwrap_or("nothing").to_owned();
    let holds = |page: String| page.replace(',', "").contains(&format!("€{gross}"));
    [gross != "nothing", holds(read("quote.txt")), holds(read("quote.html"))]
}

#[test]
fn no_look_sees_half_a_set_while_others_are_written() {
    const RUNS: usize = 24;
    let place = TestShop::starter();
    fs::create_dir(place.path("out")).unwrap();
    let over = AtomicBool::new(false);
    let looks = std::thread::scope(|scope| {
        let reader = scope.spawn(|| {
            let mut looks = 0;
            while !over.load(Ordering::Relaxed) {
                for entry in fs::read_dir(place.path("out")).unwrap() {
                    let set = entry.unwrap().path();
                    if !set.file_name().unwrap().to_str().unwrap().starts_with('.') {
                        assert_eq!(sums(&set), [true; 3], "{}", set.display());
                        looks += 1;
                    }
                }
            }
            looks
        });
        for run in 1..=RUNS {
            let (old, new) = (format!("price = \"{}.00\"", 54 + run), format!("price = \"{}.00\"", 55 + run));
            place.replace("shop/commissions/thwickling.toml", &old, &new);
            place.run(&["quote", "thwickling", "--shop", "shop", "--out", "out"]).done();
        }
        over.store(true, Ordering::Relaxed);
        reader.join().unwrap()
    });
    assert!(looks > RUNS, "only {looks} looks");
    assert_eq!(names(&place, "out").len(), RUNS * CLIENTS.len());
}

#[test]
fn what_a_killed_run_left_is_cleaned_up_by_the_next() {
    let place = TestShop::none();
    fs::create_dir(place.path("out")).unwrap();
    let start = std::time::Instant::now();
    demo(&place, &["--out", "whole"]).done();
    let whole = start.elapsed();
    let hidden = || {
        fs::read_dir(place.path("out"))
            .unwrap()
            .filter(|entry| entry.as_ref().unwrap().file_name().to_str().unwrap().starts_with('.'))
            .count()
    };
    let mut left = 0;
    for kill in 0..40_u32 {
        let mut run = Command::new(reeve());
        run.args(["quote", "--demo", "--on", DEMO_DAY, "--out", "out"]).current_dir(place.path("."));
        let mut child = run.stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap();
        // Around the time when the papers are written, at the end of a run.
        std::thread::sleep(whole * (30 + kill * 2) / 100);
        child.kill().unwrap();
        child.wait().unwrap();
        left += hidden();
        // Whatever was killed, a set is whole or not there.
        for entry in fs::read_dir(place.path("out")).unwrap().flatten() {
            if !entry.file_name().to_str().unwrap().starts_with('.') {
                assert_eq!(sums(&entry.path()), [true; 3]);
            }
        }
    }
    // Another program's folder of a like name stays.
    place.write("out/.reeve-mine/notes.txt", "mine");
    demo(&place, &["--out", "out"]).done();
    assert_eq!(hidden(), 1, "{left} were left by killed runs");
    assert_eq!(place.read("out/.reeve-mine/notes.txt"), "mine");
}
