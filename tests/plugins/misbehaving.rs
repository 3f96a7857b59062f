//! Every way in which a library can misbehave: probed, and met in the middle of a quote.

use std::fs;
use std::thread;
use std::time::Duration;

use reeve_tests::Ran;

use crate::workshop::Workshop;

/// A way to misbehave: the flags that compile it, and what is said of it.
type Way = (&'static str, &'static [&'static str], &'static str);

/// Found by a probe, and by any command that asks for the knot.
const ALWAYS: &[Way] = &[
    ("aborts", &["-DABORTS"], "signal 6"),
    ("segfaults", &["-DSEGFAULTS"], "signal 11"),
    ("hangs", &["-DHANGS"], "did not answer within 5 s"),
    ("sleeps", &["-DSLEEPS"], "did not answer within 5 s"),
    ("eats memory", &["-DEATS"], "ended its process: signal"),
    ("overflows its stack", &["-DOVERFLOWS", "-Wno-infinite-recursion"], "signal 6"),
    ("exits", &["-DEXITS"], "left with the code 0"),
    ("closes the pipe", &["-DCLOSES"], "closed or disturbed the pipe"),
    ("scribbles into the pipe", &["-DSCRIBBLES"], "closed or disturbed the pipe"),
    ("answers no number", &["-DANSWERS=NAN"], "a length of working leg of NaN"),
    ("answers infinity", &["-DANSWERS=INFINITY"], "a length of working leg of inf, which must be from 0 to"),
    ("answers less than nothing", &["-DANSWERS=-1.0"], "a length of working leg of -1.0"),
    ("answers the absurd", &["-DANSWERS=1e300"], "a length of working leg of 1e300"),
    ("fails", &["-DFAILS"], "failed: the moon is in the wrong place"),
    ("answers an unknown status", &["-DSTATUS=9"], "the status 9"),
    ("wavers", &["-DWAVERS"], "gave two answers to one question"),
    ("bears another mark", &["-DMAGIC=1"], "does not begin with the mark of the contract"),
    ("keeps a newer contract", &["-DMAJOR=2"], "keeps version 2 of the contract, and this program keeps version 1"),
    ("has a short table", &["-DSIZE=16"], "a table of 16 bytes"),
    ("exports no table", &["-DWITHOUT_TABLE"], "exports no table `reeve_knots`"),
    ("has no functions", &["-DWITHOUT_TAKE"], "points at no functions"),
    ("describes nothing", &["-DDESCRIBES_NOTHING"], "nothing stands in the place of its knot 0"),
    ("describes badly", &["-DDESCRIBES_BADLY"], "signal 11"),
    ("is not UTF-8", &["-DTITLE=\"\\xff\\xfe\""], "the title of `band` is not text in UTF-8"),
    ("writes to the terminal", &["-DTITLE=\"a \\x1b[2J\""], "the title of `band` holds a control character"),
    ("aborts when loaded", &["-DLOADS_BADLY"], "signal 6"),
    ("takes a file away", &["-DUNLINKS"], "signal 31, it asked the system for what a library may not have"),
    ("would outlive the program", &["-DFORGETS"], "signal 31"),
];

/// Found by a probe alone: one question does not show it.
const PROBED: &[Way] = &[
    ("crashes late", &["-DCRASHES_LATE"], "signal 11"),
    ("answers by chance", &["-DSWAYS"], "one way in one process and another in the next"),
    ("describes itself by chance", &["-DFICKLE_DESCRIPTION"], "in one way now and in another then"),
    ("takes less for more turns", &["-DSHRINKS"], "more of `turns` takes less"),
    ("has a length of its own", &["-DFIXED_LENGTH"], "with every length twice as long"),
    ("takes less round more", &["-DCORE_SHRINKS"], "a thicker core takes less"),
    ("takes more of a soft cord", &["-DGIVE_GROWS"], "a softer cord takes more"),
    ("refuses all", &["-DREFUSES"], "refuses its usual figures everywhere: it is never right"),
    ("dawdles", &["-DDAWDLES"], "an answer took"),
    ("has no name", &["-DKNOT=\"No Name\""], "`No Name` can't be a name"),
    ("has a usual figure out of range", &["-DUSUAL=100"], "the default 100 is out of its own range"),
    ("has a range without end", &["-DMOST=1e12"], "out of range"),
    ("has a library without a name", &["-DLIBRARY=\"../up\""], "must be small letters"),
];

fn quote(place: &Workshop) -> Ran {
    place.shop.run(&["quote", "order", "--shop", "shop", "--on", "2027-01-12", "--out", "out"])
}

#[track_caller]
fn assert_refused(ran: &Ran, name: &str, words: &[&str]) {
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""), "{name}: {}", ran.err);
    for word in words {
        assert!(ran.err.contains(word), "{name} does not say {word:?}: {}", ran.err);
    }
    assert!(ran.err.contains("= help: ") && !ran.err.contains("panicked"), "{name}: {}", ran.err);
}

/// Each of them is refused, nothing is written, and nobody is left behind.
#[test]
fn none_of_them_is_admitted() {
    let place = Workshop::new();
    for (name, flags, words) in ALWAYS.iter().chain(PROBED) {
        let file = place.library("bad", flags);
        let before = place.shop.tree();
        assert_refused(&place.shop.run(&["knots", "probe", &file]), name, &[words]);
        assert_refused(&place.admit(&file), name, &[words]);
        assert!(place.shop.tree() == before, "{name}: something was written");
        place.assert_nobody_left();
    }
    place.shop.run(&["check", "--shop", "shop"]).done();
}

/// Each of them stops a quote at the step that ties its knot, with its name and the knot's; other commands go on.
#[test]
fn none_of_them_harms_a_quote() {
    let place = Workshop::with_good_library();
    for (name, flags, words) in ALWAYS {
        let file = place.library("bad", flags);
        place.smuggle(&file);
        let before = place.shop.tree();
        assert_refused(&quote(&place), name, &[words, "`small`", "band", "shop/designs/tassel.toml:47:8"]);
        assert!(place.shop.tree() == before, "{name}: something was written");
        place.assert_nobody_left();
        place.shop.run(&["takeoff", "pendant", "--shop", "shop"]).done();
        place.shop.run(&["knots", "list", "--shop", "shop"]).done();
    }
}

/// What the system can't load at all.
const NO_LIBRARY: &str = "is not a library that can be loaded";

#[test]
fn what_is_no_library_is_told_so() {
    let place = Workshop::with_good_library();
    let whole = fs::read(place.shop.path("good.so")).unwrap();
    place.shop.write("half.so", &whole[..whole.len() / 2]);
    place.shop.write("words.so", "these are words");
    place.shop.write("nothing.so", "");
    for file in ["half.so", "words.so", "nothing.so"] {
        assert_refused(&place.admit(file), file, &[NO_LIBRARY]);
        place.smuggle(file);
        assert_refused(&quote(&place), file, &[NO_LIBRARY, "`small`", "band"]);
    }
    for file in ["missing.so", "shop"] {
        assert_refused(&place.admit(file), file, &["name a library of knots"]);
    }
    fs::remove_file(place.shop.path("shop/knots/plugins/small/library.so")).unwrap();
    assert_refused(&quote(&place), "removed", &["`small` is not there", "dismiss small"]);
}

/// A folder of a library that was tampered with is told by its file and line.
#[test]
fn a_spoilt_record_is_told() {
    let place = Workshop::with_good_library();
    let record = "shop/knots/plugins/small/library.toml";
    let good = place.shop.read(record);
    for (from, to, words) in [
        ("file = \"library.so\"", "file = \"../../../elsewhere.so\"", "is not the name of a file"),
        ("sha256 = \"", "sha256 = \"g", "this is not a SHA-256"),
        ("name = \"small\"", "name = \"large\"", "stands in the folder of `small`"),
        ("version = \"1.0\"", "verson = \"1.0\"", "did you mean `version`?"),
    ] {
        assert!(good.contains(from), "{from}");
        place.shop.write(record, good.replace(from, to));
        assert_refused(&quote(&place), words, &[words, record]);
    }
    fs::remove_file(place.shop.path(record)).unwrap();
    assert_refused(&quote(&place), "no record", &["holds no library.toml", "knots/plugins/small"]);
    place.shop.run(&["knots", "dismiss", "small", "--shop", "shop"]).done();
}

/// What it writes to standard output goes nowhere, and a later minor version of the contract is taken.
#[test]
fn what_does_no_harm_is_admitted() {
    let place = Workshop::with_good_library();
    let plain = quote(&place).done();
    for flags in [&["-DPRINTS"][..], &["-DMINOR=7"]] {
        let file = place.library("odd", flags);
        place.admit(&file).done();
        assert_eq!(quote(&place).done(), plain, "{flags:?}");
    }
}

/// One that crashes at its thousandth call, in a design that asks so often.
#[test]
fn one_that_crashes_late_stops_what_it_crashes_in() {
    let place = Workshop::with_good_library();
    let design = place.shop.read("shop/designs/tassel.toml");
    let step = "[[step]]\nknot = \"band\"\nworking = [\"wrap\"]\ncore = [\"worker\", \"filler\"]\n";
    let steps: Vec<String> =
        (0..700).map(|at| format!("{step}parameters = {{ turns = 1, apart = \"1.{at:03} mm\" }}\n\n")).collect();
    let steps = steps.concat();
    let (before, after) = design.split_once("[[step]]\ntail = \"8 cm\"").unwrap();
    place.shop.write("shop/designs/long.toml", format!("{before}{steps}[[step]]\ntail = \"8 cm\"{after}"));
    place.shop.run(&["takeoff", "long", "--shop", "shop"]).done();
    place.smuggle(&place.library("late", &["-DCRASHES_LATE"]));
    let said = place.shop.run(&["takeoff", "long", "--shop", "shop"]).refused();
    assert!(
        said.contains("signal 11") && said.contains("`small`") && said.contains("shop/designs/long.toml:"),
        "{said}"
    );
    place.shop.run(&["takeoff", "tassel", "--shop", "shop"]).done();
    place.assert_nobody_left();
}

/// A sample of its knot is left out, with a warning: what does not ask for the knot goes on.
#[test]
fn samples_of_a_lost_library_are_left_out() {
    let place = Workshop::with_good_library();
    let sample = "[[sample]]\ncord = \"soft-4\"\nknot = \"band\"\ntied = 2\ncore = 4\nparameters = { turns = 6 }\n\
                  before = \"150 cm\"\nafter = \"98 cm\"\nmade = \"48 mm\"\n";
    place.shop.write("shop/knots/samples.toml", sample);
    let hand = place.shop.run(&["knots", "hand", "--shop", "shop"]).done();
    assert!(hand.contains("band"), "{hand}");
    place.smuggle(&place.library("bad", &["-DABORTS"]));
    let ran = place.shop.run(&["takeoff", "pendant", "--shop", "shop"]);
    assert!(ran.err.contains("a sample is not counted: the library `small`"), "{}", ran.err);
    assert!(ran.err.contains("shop/knots/samples.toml:3:8"), "{}", ran.err);
    ran.done();
    assert_refused(&quote(&place), "with a sample", &["signal 6", "`small`", "band"]);
    place.assert_nobody_left();
}

/// Designs that don't tie its knots are compared; the one that does is told and left out.
#[test]
fn a_comparison_goes_on_without_what_a_lost_library_ties() {
    let place = Workshop::with_good_library();
    let all = place.shop.run(&["compare", "--shop", "shop", "--as", "csv"]).done();
    assert!(all.contains("tassel"), "{all}");
    place.smuggle(&place.library("bad", &["-DABORTS"]));
    let ran = place.shop.run(&["compare", "--shop", "shop", "--as", "csv", "--price", "tassel=40"]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.out.contains("pendant") && !ran.out.contains("tassel"), "{}", ran.out);
    assert_eq!(ran.out.lines().count() + 1, all.lines().count());
    for words in ["signal 6", "`small`", "band", "shop/designs/tassel.toml:47:8", "1 design left out"] {
        assert!(ran.err.contains(words), "{words}: {}", ran.err);
    }
    let said = place.shop.run(&["compare", "tassel", "--shop", "shop"]).refused();
    assert!(said.contains("signal 6"), "{said}");
}

/// What it asks in passing is refused, and it goes on.
#[test]
fn a_library_reaches_nothing() {
    let place = Workshop::with_good_library();
    place.shop.write("reach/secret", "the maker's own");
    let reach = format!("-DREACHES=\"{}\"", place.shop.path("reach").display());
    place.smuggle(&place.library("reaching", &[&reach]));
    let words = ["knots", "show", "band", "--shop", "shop", "--as", "json"];
    let shown: serde_json::Value = serde_json::from_str(&place.shop.run(&words).done()).unwrap();
    // 1000 and a bit for each thing that it reached.
    assert_eq!(shown["base_seconds"], 1000.0);
    place.assert_nobody_left();
}

/// However the program ends, its libraries end with it: those that compute for ever, and those that wait.
#[test]
fn no_library_outlives_the_program() {
    let place = Workshop::with_good_library();
    for flags in [["-DHANGS"], ["-DSLEEPS"], ["-DFORGETS"]] {
        place.smuggle(&place.library("lasting", &flags));
        let mut run = place.shop.start(&["knots", "show", "band", "--shop", "shop"]);
        for _ in 0..500 {
            if !place.left().is_empty() {
                break;
            }
            thread::sleep(Duration::from_millis(2));
        }
        // Long enough to be in the middle of its first answer.
        thread::sleep(Duration::from_millis(300));
        run.kill().unwrap();
        run.wait().unwrap();
        place.assert_nobody_left();
    }
}
