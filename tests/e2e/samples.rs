//! Samples: added by the program, counted by it, and what they change.

use std::fs;

use reeve_tests::{DEMO_DAY, Ran, TestShop};
use serde_json::Value;

const FILE: &str = "shop/knots/samples.toml";

/// Ten square knots as the catalogue expects them in 4 mm cord, near enough.
const TEN: &[&str] = &["--knot", "square", "--tied", "10", "--before", "150 cm", "--after", "91 cm", "--made", "14 cm"];

fn sample(place: &TestShop, more: &[&str]) -> Ran {
    let words = ["knots", "sample", "--shop", "shop", "--cord", "cotton-4-ecru"];
    place.run(&[&words[..], TEN, more].concat())
}

fn hand(place: &TestShop) -> Value {
    serde_json::from_str(&place.run(&["knots", "hand", "--shop", "shop", "--as", "json"]).done()).unwrap()
}

#[test]
fn a_sample_makes_the_file_and_shows_what_it_changes() {
    let place = TestShop::starter();
    let page = sample(&place, &["--minutes", "3.5", "--on", "2026-11-02", "--note", "A new reel."]).done();
    let lines = "[[sample]]\ncord = \"cotton-4-ecru\"\nknot = \"square\"\ntied = 10\nbefore = \"150 cm\"\nafter = \"91 cm\"\n\
                 made = \"14 cm\"\nminutes = 3.5\non = 2026-11-02\nnote = \"A new reel.\"\n";
    assert_eq!(place.read(FILE), lines);
    assert!(page.contains(FILE) && page.contains(lines), "{page}");
    for change in
        ["Give of cotton-4-ecru", "factor on take-up", "geometry -> your sample", "factor on time", "  Pace  "]
    {
        assert!(page.contains(change), "{change}: {page}");
    }
    let hand = hand(&place);
    assert_eq!(
        (&hand["samples"], &hand["knots"][0]["samples"], &hand["pace"]["samples"]),
        (&1.into(), &1.into(), &1.into())
    );
    place.run(&["check", "--shop", "shop"]).done();
}

#[test]
fn what_is_in_the_file_keeps_every_byte() {
    let place = TestShop::starter();
    let old = "# Tied at the bench.\n\n[[sample]]\nmade   = \"14.1 cm\"  # the order is mine\ncord = 'cotton-4-ecru'\nknot = \"flat knot\"\n\
               tied=10\nbefore=\"1.5 m\"\nafter=\"90 cm\"\n# a damp day\n";
    for (old, gap) in [(old.to_owned(), "\n"), (old.replace('\n', "\r\n"), "\r\n")] {
        place.write(FILE, &old);
        sample(&place, &[]).done();
        let new = place.read(FILE);
        assert!(new.starts_with(&format!("{old}{gap}[[sample]]{gap}cord = ")), "{new}");
        assert_eq!(hand(&place)["samples"], 2);
    }
}

#[test]
fn a_refused_sample_leaves_the_shop_as_it_was() {
    let place = TestShop::starter();
    sample(&place, &[]).done();
    let before = place.tree();
    for (more, answer) in [
        (&["--core", "99"][..], "0 to 24 core legs"),
        (&["--minutes", "0.001"], "0.005"),
        (&["--working", "3"], "2 working legs"),
        (&["--set", "turns=3"], "no parameters"),
        (&["--set", "turns"], "not a parameter"),
        (&["--note", " "], "empty"),
    ] {
        let said = sample(&place, more).refused();
        assert!(said.contains(answer), "{more:?}: {said}");
        assert!(place.tree() == before, "{more:?} wrote something");
    }
}

#[test]
fn a_file_with_a_fault_is_not_added_to() {
    let place = TestShop::starter();
    place.write(FILE, "[[sample]]\ncord = \"cotton-4-ecru\"\n");
    let before = place.tree();
    let said = sample(&place, &[]).refused();
    assert!(said.contains("`knot` is missing"), "{said}");
    assert!(place.tree() == before);
}

#[test]
fn only_show_writes_nothing_and_shows_the_same_changes() {
    let place = TestShop::starter();
    let before = place.tree();
    let shown = sample(&place, &["--only-show"]).done();
    assert!(place.tree() == before);
    let done = sample(&place, &[]).done();
    let changes = |page: &str| page.split_once("What it changes").unwrap().1.to_owned();
    assert_eq!(changes(&shown), changes(&done));
    assert!(shown.starts_with("Nothing was written."), "{shown}");
}

#[test]
fn the_starter_shop_inside_the_program_is_only_shown() {
    let place = TestShop::none();
    let words = ["knots", "sample", "--demo", "--cord", "cotton-4-ecru"];
    let said = place.run(&[&words[..], TEN].concat()).refused();
    assert!(said.contains("inside the program"), "{said}");
    place.run(&[&words[..], TEN, &["--only-show"]].concat()).done();
    assert!(place.tree().is_empty());
}

#[cfg(unix)]
#[test]
fn a_link_stays_a_link_and_permissions_stay() {
    use std::os::unix::fs::PermissionsExt;
    let place = TestShop::starter();
    place.write("elsewhere/mine.toml", "# mine\n");
    let real = place.path("elsewhere/mine.toml");
    fs::set_permissions(&real, fs::Permissions::from_mode(0o640)).unwrap();
    std::os::unix::fs::symlink(&real, place.path(FILE)).unwrap();
    sample(&place, &[]).done();
    assert!(fs::symlink_metadata(place.path(FILE)).unwrap().is_symlink());
    assert!(place.read("elsewhere/mine.toml").starts_with("# mine\n\n[[sample]]\n"));
    assert_eq!(fs::metadata(&real).unwrap().permissions().mode() & 0o777, 0o640);
    fs::set_permissions(&real, fs::Permissions::from_mode(0o440)).unwrap();
    let before = place.tree();
    assert_eq!(sample(&place, &[]).code, Some(1));
    assert!(place.tree() == before);
}

#[test]
fn an_odd_sample_is_named_with_what_was_expected_and_is_not_counted() {
    let place = TestShop::starter();
    sample(&place, &[]).done();
    let before = hand(&place);
    let text = place.read(FILE);
    place.write(FILE, format!("{text}\n{}", text.replace("91 cm", "62 cm")));
    let said = place.run(&["check", "--shop", "shop"]);
    assert!(
        said.err.starts_with("look: shop/knots/samples.toml:9: the square knots in cotton-4-ecru took 88.0 mm"),
        "{}",
        said.err
    );
    assert!(said.err.contains("mm are expected"), "{}", said.err);
    said.done();
    let after = hand(&place);
    assert_eq!(after["knots"], before["knots"]);
    assert_eq!((&after["odd"][0]["figure"], &after["odd"][0]["got"]), (&"take-up".into(), &88.0.into()));
    let page = place.run(&["knots", "hand", "--shop", "shop"]).done();
    assert!(page.contains("1 of them not counted") && page.contains("Not counted"), "{page}");
}

#[test]
fn samples_reach_the_cut_list_the_sheets_and_the_hours() {
    let place = TestShop::starter();
    let page = |place: &TestShop, command: &str, form: &str| {
        place.run(&[command, "reading-room", "--shop", "shop", "--on", DEMO_DAY, "--as", form]).done()
    };
    let takeoff = |place: &TestShop| -> Value {
        serde_json::from_str(&place.run(&["takeoff", "curlew-hanger", "--shop", "shop", "--as", "json"]).done())
            .unwrap()
    };
    let (costing, bench, before) = (page(&place, "costing", "text"), page(&place, "bench", "text"), takeoff(&place));
    assert!(!costing.contains("your sample") && !bench.contains("your sample"));
    let cord = before["cords"][0]["cord"].as_str().unwrap().to_owned();
    // Three samples that took an eighth more and twice the time.
    let one = format!(
        "[[sample]]\ncord = \"{cord}\"\nknot = \"square\"\ntied = 10\nbefore = \"150 cm\"\nafter = \"80.2 cm\"\nmade = \"14 cm\"\nminutes = 6\n"
    );
    // The commission is tied in another cord than the design's own.
    place.write(FILE, one.repeat(3) + &one.replace(&cord, "cotton-4-fern").repeat(3));
    let after = takeoff(&place);
    let square = |takeoff: &Value| {
        let knots = takeoff["knots"].as_array().unwrap().clone();
        knots.into_iter().find(|knot| knot["knot"] == "square").unwrap()
    };
    let (was, is) = (square(&before), square(&after));
    assert!(is["take_up_mm"].as_f64().unwrap() > was["take_up_mm"].as_f64().unwrap() * 1.05, "{was} {is}");
    assert!(is["seconds"].as_f64().unwrap() > was["seconds"].as_f64().unwrap() * 1.2, "{was} {is}");
    assert_eq!((&was["source"], &is["source"]), (&"geometry".into(), &"your sample".into()));
    assert!(after["cords"][0]["cut_mm"].as_u64().unwrap() > before["cords"][0]["cut_mm"].as_u64().unwrap());
    for form in ["text", "html"] {
        let (costing, bench) = (page(&place, "costing", form), page(&place, "bench", form));
        assert!(
            costing.contains("of cotton-4-fern: your sample.") && costing.contains("from 6 timed samples."),
            "{costing}"
        );
        // A line may break anywhere.
        let words: Vec<&str> = bench.split_whitespace().collect();
        assert!(words.join(" ").contains("of leg, by your sample"), "{bench}");
        let wide: Vec<&str> = costing.lines().chain(bench.lines()).filter(|line| line.chars().count() > 80).collect();
        assert!(form == "html" || wide.is_empty(), "{wide:?}");
    }
}

/// A knot of the maker's own whose figures are guesses, in the cord of the hanger.
const GUESSED: &str = r#"
[knot]
name = "lump"
title = "lump"
kind = "sennit"
summary = "Three turns round the core."

[core]
legs = [1, 8]

[[role]]
role = "working"
legs = [2, 2]
moves = [{ round = "core", turns = 3 }]
source = "from memory"
note = "Guessed."

[rise]
diameters = 3
source = "from memory"
note = "Guessed."

[time]
base = 10
pull = 0
source = "from memory"
note = "Guessed."
"#;

#[test]
fn samples_of_a_knot_that_was_guessed_leave_every_other_price_alone() {
    let place = TestShop::starter();
    place.write("shop/knots/lump.toml", GUESSED);
    let hours = |place: &TestShop| -> (f64, Value) {
        let words = ["costing", "reading-room", "--shop", "shop", "--on", DEMO_DAY, "--as", "json"];
        let told: Value = serde_json::from_str(&place.run(&words).done()).unwrap();
        (told["cost"]["hours"].as_str().unwrap().parse().unwrap(), told["purchases"].clone())
    };
    let before = hours(&place);
    // Ten seconds were guessed, and twenty-four measured; 122 mm guessed, and 70 measured.
    let one = "[[sample]]\ncord = \"cotton-4-fern\"\nknot = \"lump\"\ntied = 20\nbefore = \"200 cm\"\nafter = \"60 cm\"\n\
               made = \"20 cm\"\nminutes = 8\n";
    place.write(FILE, one.repeat(3));
    let after = hours(&place);
    assert!((after.0 / before.0 - 1.0).abs() < 0.02, "{} {}", before.0, after.0);
    assert_eq!(after.1, before.1, "no cord is cut longer");
    let hand = hand(&place);
    assert_eq!(hand["odd"], Value::Array(Vec::new()));
    let own = |key: &str| hand["knots"][0][key].as_f64().unwrap();
    assert!(own("take_up") < 0.72 && own("rise") < 0.9, "{hand}");
    let time = hand["times"][0]["time"].as_f64().unwrap();
    assert!(time > 2.0 && time < 2.2, "what is left of 24 s at a pace of 1.1: {time}");
}

#[test]
fn pages_of_samples_keep_to_80_columns() {
    let place = TestShop::starter();
    sample(&place, &["--minutes", "3.5"]).done();
    place.write(
        FILE,
        format!("{}\n{}", place.read(FILE), place.read(FILE).replace("91 cm", "62 cm").replace("3.5", "60")),
    );
    let pages = [place.run(&["knots", "hand", "--shop", "shop"]).done(), sample(&place, &["--minutes", "3"]).done()];
    let wide: Vec<&str> = pages.iter().flat_map(|page| page.lines()).filter(|line| line.chars().count() > 80).collect();
    assert!(wide.is_empty(), "{wide:?}");
}

#[test]
fn sixteen_add_a_sample_at_once_and_none_is_lost() {
    const PROGRAMS: usize = 16;
    let place = TestShop::starter();
    let start = std::sync::Barrier::new(PROGRAMS);
    std::thread::scope(|scope| {
        for at in 0..PROGRAMS {
            let (place, start) = (&place, &start);
            scope.spawn(move || {
                start.wait();
                let ran = sample(place, &["--note", &format!("by {at}.")]);
                assert_eq!(ran.code, Some(0), "{}", ran.err);
            });
        }
    });
    let text = place.read(FILE);
    let lost: Vec<usize> = (0..PROGRAMS).filter(|at| !text.contains(&format!("note = \"by {at}.\""))).collect();
    assert!(lost.is_empty(), "lost: {lost:?}");
    assert_eq!(text.matches("[[sample]]").count(), PROGRAMS);
    place.run(&["check", "--shop", "shop"]).done();
}

/// A run that is stopped while it holds the shop keeps others waiting for a while, not for ever.
#[cfg(unix)]
#[test]
fn a_shop_that_is_held_too_long_is_told_and_left_alone() {
    let place = TestShop::starter();
    let before = place.tree();
    let held = fs::File::open(place.path("shop")).unwrap();
    held.lock().unwrap();
    // Looking needs no turn.
    place.run(&["check", "--shop", "shop"]).done();
    sample(&place, &["--only-show"]).done();
    let ran = sample(&place, &[]);
    assert_eq!(ran.code, Some(1), "{}", ran.err);
    assert!(ran.err.contains("shop can't be written: another run of the program has held it for"), "{}", ran.err);
    assert_eq!(place.tree(), before);
    drop(held);
    sample(&place, &[]).done();
}
