//! Admitting a library, using its knots, and taking it out again.

use reeve_tests::Ran;
use serde_json::Value;

use crate::workshop::Workshop;

const LIBRARY: &str = "shop/knots/plugins/small/library.toml";

fn quote(place: &Workshop) -> Ran {
    place.shop.run(&["quote", "order", "--shop", "shop", "--on", "2027-01-12", "--out", "out"])
}

#[test]
fn an_admitted_knot_is_used_like_any_other() {
    let place = Workshop::with_good_library();
    let shop = &place.shop;
    shop.run(&["check", "--shop", "shop"]).done();
    assert!(shop.run(&["knots", "list", "band", "--shop", "shop"]).done().contains("by `small`"));
    let chart = shop.run(&["knots", "chart", "--shop", "shop"]).done();
    assert!(chart.contains("id=\"band\"") && !chart.contains("is not known"));
    let page = shop.run(&["takeoff", "tassel", "--shop", "shop"]).done();
    assert!(page.contains("band"), "{page}");
    let ran = quote(&place);
    assert!(ran.clone().done().contains("A band can slip"), "the caution of the knot: {}", ran.out);
    place.assert_nobody_left();
}

#[test]
fn its_figures_are_those_of_its_closed_form() {
    let place = Workshop::with_good_library();
    let words =
        ["knots", "show", "band", "--shop", "shop", "--cord", "4", "--rod", "20", "--give", "hard", "--as", "json"];
    let more = ["--set", "turns=10", "--set", "apart=0.4cm"];
    let shown: Value = serde_json::from_str(&place.shop.run(&[&words[..], &more].concat()).done()).unwrap();
    // Ten turns of a helix round 24 mm that climbs 8 mm a turn.
    let turn = (std::f64::consts::PI * 24.0).hypot(8.0);
    let told = shown["roles"][0]["take_up_mm"].as_f64().unwrap();
    assert!((told - 10.0 * turn).abs() <= 0.05, "{told}");
    assert_eq!(
        (&shown["rise_mm"], &shown["base_seconds"], &shown["library"]),
        (&80.0.into(), &40.0.into(), &"small".into())
    );
}

#[test]
fn a_quote_takes_what_the_moves_of_the_same_knot_take() {
    // The band with its turns close together, in a hard cord, is the winding of the catalogue.
    let place = Workshop::with_good_library();
    let shown = |knot: &str| {
        let words =
            ["knots", "show", knot, "--shop", "shop", "--cord", "5", "--rod", "30", "--give", "hard", "--as", "json"];
        let shown: Value =
            serde_json::from_str(&place.shop.run(&[&words[..], &["--set", "turns=9"]].concat()).done()).unwrap();
        shown["roles"][0]["take_up_mm"].as_f64().unwrap()
    };
    assert!(
        (shown("band") - shown("winding")).abs() / shown("winding") < 1e-3,
        "{} {}",
        shown("band"),
        shown("winding")
    );
}

#[test]
fn nobody_to_agree_and_nothing_is_written() {
    let place = Workshop::new();
    let file = place.library("good", &[]);
    let before = place.shop.tree();
    let said = place.shop.run(&["knots", "admit", &file, "--shop", "shop"]).refused();
    assert!(said.contains("--yes"), "{said}");
    assert_eq!(place.shop.tree(), before);
    let said = place.shop.run(&["knots", "admit", &file, "--yes", "--demo"]).refused();
    assert!(said.contains("reeve begin"), "{said}");
}

#[test]
fn a_probe_shows_what_a_library_declares_and_writes_nothing() {
    let place = Workshop::new();
    let file = place.library("good", &[]);
    let before = place.shop.tree();
    let page = place.shop.run(&["knots", "probe", &file]).done();
    for words in
        ["small 1.0", "SHA-256", "band (band, wrap)", "turns: Turns of the band.", "Caution: A band can slip", "MiB"]
    {
        assert!(page.contains(words), "{words}: {page}");
    }
    assert!(page.lines().all(|line| line.chars().count() <= 80), "{page}");
    assert_eq!(place.shop.tree(), before);
}

#[test]
fn a_changed_library_is_refused_until_it_is_admitted_again() {
    let place = Workshop::with_good_library();
    let old = place.shop.read(LIBRARY);
    let newer = place.library("newer", &["-DVERSION=\"1.1\""]);
    let bytes = std::fs::read(place.shop.path(&newer)).unwrap();
    place.shop.write("shop/knots/plugins/small/library.so", &bytes);
    for ran in [quote(&place), place.shop.run(&["check", "--shop", "shop"])] {
        let said = ran.refused();
        let (_, recorded) = old.split_once("sha256 = \"").unwrap();
        assert!(said.contains(&recorded[..64]) && said.contains(&reeve_host::digest_of(&bytes)), "{said}");
        assert!(said.contains("band") && said.contains("`small`") && said.contains("reeve knots admit"), "{said}");
    }
    assert!(!place.shop.path("out").exists());
    // What does not use it goes on.
    place.shop.run(&["takeoff", "pendant", "--shop", "shop"]).done();
    place.shop.run(&["knots", "show", "square", "--shop", "shop"]).done();
    let page = place.admit(&newer).done();
    assert!(page.contains("small 1.1") && place.shop.read(LIBRARY).contains("version = \"1.1\""), "{page}");
    quote(&place).done();
}

#[test]
fn a_dismissed_library_is_gone_with_its_knots() {
    let place = Workshop::with_good_library();
    let said = place.shop.run(&["knots", "dismiss", "smal", "--shop", "shop"]).refused();
    assert!(said.contains("did you mean `small`?"), "{said}");
    place.shop.run(&["knots", "dismiss", "small", "--shop", "shop"]).done();
    assert!(!place.shop.path("shop/knots/plugins/small").exists());
    let said = place.shop.run(&["takeoff", "tassel", "--shop", "shop"]).refused();
    assert!(said.contains("shop/designs/tassel.toml:") && said.contains("no knot is called `band`"), "{said}");
    place.shop.run(&["takeoff", "pendant", "--shop", "shop"]).done();
}

#[test]
fn two_libraries_never_share_a_name() {
    let place = Workshop::with_good_library();
    let other = place.library("other", &["-DLIBRARY=\"other\""]);
    let before = place.shop.tree();
    let said = place.admit(&other).refused();
    assert!(said.contains("`other`") && said.contains("`band`") && said.contains("dismiss small"), "{said}");
    let known = place.library("known", &["-DLIBRARY=\"known\"", "-DKNOT=\"square\"", "-DTITLE=\"my own\""]);
    let said = place.admit(&known).refused();
    assert!(said.contains("`square`") && said.contains("another name"), "{said}");
    let mut after = place.shop.tree();
    after.retain(|path, _| path.to_str() != Some("known.so"));
    assert_eq!(after, before, "nothing was written");
    // Put there by hand, two of them stop every command with both names.
    for file in ["library.toml", "library.so", "knots/band.toml"] {
        let bytes = std::fs::read(place.shop.path(&format!("shop/knots/plugins/small/{file}"))).unwrap();
        let text = String::from_utf8_lossy(&bytes).replace("\"small\"", "\"twin\"");
        place.shop.write(&format!("shop/knots/plugins/twin/{file}"), text.as_bytes());
    }
    let said = place.shop.run(&["check", "--shop", "shop"]).refused();
    assert!(said.contains("`twin`") && said.contains("`small`") && said.contains("dismiss small"), "{said}");
    place.shop.run(&["knots", "dismiss", "twin", "--shop", "shop"]).done();
    place.shop.run(&["check", "--shop", "shop"]).done();
}

#[test]
fn a_knot_of_the_makers_own_takes_the_place_of_a_librarys() {
    let place = Workshop::with_good_library();
    let own = place.shop.read("shop/knots/plugins/small/knots/band.toml").replace("pull = 1", "pull = 3");
    place.shop.write("shop/knots/band.toml", own);
    let shown = place.shop.run(&["knots", "show", "band", "--shop", "shop", "--as", "json"]).done();
    let shown: Value = serde_json::from_str(&shown).unwrap();
    assert_eq!((&shown["pull_seconds"], &shown["library"]), (&3.0.into(), &"small".into()));
}

#[test]
fn an_edited_description_is_told_by_check() {
    let place = Workshop::with_good_library();
    place.shop.replace("shop/knots/plugins/small/knots/band.toml", "most = 40", "most = 400");
    let said = place.shop.run(&["check", "--shop", "shop"]).refused();
    assert!(said.contains("band.toml is not as the library `small` describes it"), "{said}");
}

/// Faults of parameters point at the value in the design.
#[test]
fn parameters_are_refused_at_their_place() {
    for (parameters, place, words) in [
        ("turns = 6.5", "24", "must be a whole number"),
        ("turns = 41", "24", "must be from 1 to 40"),
        ("turns = \"6 cm\"", "24", "is a plain number"),
        ("trns = 6", "16", "did you mean"),
        ("apart = 3", "24", "without a unit"),
        ("turns = 6, apart = \"2.5 cm\"", "35", "show the core; at most 20 mm cover it"),
        ("apart = \"5.5 cm\"", "24", "must be from 0 to 50 mm"),
    ] {
        let shop = Workshop::with_good_library();
        shop.shop.replace("shop/designs/tassel.toml", "{ turns = 6 }", &format!("{{ {parameters} }}"));
        let said = shop.shop.run(&["takeoff", "tassel", "--shop", "shop"]).refused();
        assert!(said.contains(&format!("shop/designs/tassel.toml:50:{place}")), "{parameters}: {said}");
        if words != "did you mean" {
            assert!(said.contains(words), "{parameters}: {said}");
        }
        assert!(said.contains("= help: ") || said.contains("^ "), "{said}");
    }
}

/// A shop from elsewhere that brings a library along, with a record that fits it: nothing of it runs, and all else goes on.
#[test]
fn a_shop_from_elsewhere_runs_nothing() {
    let place = Workshop::with_good_library();
    // One that would be noticed if it were loaded at all.
    let foreign = std::fs::read(place.shop.path(&place.library("foreign", &["-DLOADS_BADLY"]))).unwrap();
    place.put(&foreign);
    let ran = place.shop.run(&["check", "--shop", "shop"]);
    assert!(!ran.err.contains("signal"), "{}", ran.err);
    for words in [
        "warning: shop/knots/plugins/small/library.toml: the library `small` is not loaded, as you have not admitted it",
        "reeve knots admit shop/knots/plugins/small/library.so --shop shop",
        "reeve knots dismiss small --shop shop",
    ] {
        assert!(ran.err.contains(words), "{words}: {}", ran.err);
    }
    // The design that ties its knot is told at its line; the others are not touched.
    assert!(ran.err.contains("shop/designs/tassel.toml:47:8") && !ran.err.contains("pendant"), "{}", ran.err);
    place.shop.run(&["takeoff", "pendant", "--shop", "shop"]).done();
    place.shop.run(&["knots", "show", "square", "--shop", "shop"]).done();
    let said = place.shop.run(&["knots", "show", "band", "--shop", "shop", "--cord", "4"]);
    assert!(said.err.contains("you have not admitted it"), "{}", said.err);
    let said = quote(&place).refused();
    assert!(said.contains("you have not admitted it") && !place.shop.path("out").exists(), "{said}");
    place.assert_nobody_left();
}

/// The maker's word goes with the file, into every shop; and it is hers alone.
#[test]
fn the_word_is_the_makers_own() {
    let place = Workshop::with_good_library();
    let word = place.shop.own().join("reeve/admitted.toml");
    let kept = std::fs::read_to_string(&word).unwrap();
    assert!(kept.contains("name = \"small\""), "{kept}");
    // Another maker, who has admitted nothing.
    std::fs::remove_file(&word).unwrap();
    assert!(quote(&place).refused().contains("you have not admitted it"));
    // She admits it where it stands.
    place.admit("shop/knots/plugins/small/library.so").done();
    assert_eq!(std::fs::read_to_string(&word).unwrap(), kept);
    quote(&place).done();
    // A slip in the file is told by its line, and admits nothing.
    std::fs::write(&word, kept.replace("sha256 = \"", "sha256 = \"g")).unwrap();
    let said = quote(&place).refused();
    assert!(said.contains("admitted.toml:6:10") && said.contains("this is not a SHA-256"), "{said}");
    assert!(place.admit("good.so").refused().contains("admitted.toml:6:10"));
    std::fs::write(&word, &kept).unwrap();
    // Taken out of the shop, it is taken back.
    place.shop.run(&["knots", "dismiss", "small", "--shop", "shop"]).done();
    assert!(!std::fs::read_to_string(&word).unwrap().contains("[[library]]"));
}

/// One that clashes with what is here is left out with a warning, as long as nobody has admitted it.
#[test]
fn a_foreign_library_takes_no_knots_place() {
    let place = Workshop::with_good_library();
    for file in ["library.toml", "library.so", "knots/band.toml"] {
        let bytes = std::fs::read(place.shop.path(&format!("shop/knots/plugins/small/{file}"))).unwrap();
        let text =
            String::from_utf8_lossy(&bytes).replace("\"small\"", "\"twin\"").replace("sha256 = \"", "sha256 = \"0");
        let text = if file == "library.toml" { text[..text.len() - 3].to_owned() + "\"\n" } else { text };
        place.shop.write(&format!("shop/knots/plugins/twin/{file}"), text);
    }
    let ran = place.shop.run(&["check", "--shop", "shop"]);
    assert!(ran.err.contains("warning: the library `twin` has a knot called `band`"), "{}", ran.err);
    ran.done();
    quote(&place).done();
}

/// What stands in the place of its file may have no end, or no beginning.
#[test]
fn a_file_that_is_none_is_told_at_once() {
    let place = Workshop::with_good_library();
    let file = place.shop.path("shop/knots/plugins/small/library.so");
    std::fs::remove_file(&file).unwrap();
    let made = std::process::Command::new("mkfifo").arg(&file).status().unwrap();
    assert!(made.success());
    let said = quote(&place).refused();
    assert!(said.contains("`small` is a pipe and not a file"), "{said}");
    std::fs::remove_file(&file).unwrap();
    std::os::unix::fs::symlink("/dev/zero", &file).unwrap();
    let said = quote(&place).refused();
    assert!(said.contains("`small` is a device and not a file"), "{said}");
}

/// A knot may be called as its library's own files are.
#[test]
fn no_name_of_a_knot_is_one_of_its_librarys_files() {
    for name in ["library", "record", "small", "knots", "admitted"] {
        let place = Workshop::new();
        let flags = [format!("-DKNOT=\"{name}\""), "-DTITLE=\"a band\"".to_owned()];
        // The ending of the file that it comes in is not taken over either.
        let file = place.library("odd", &[&flags[0], &flags[1]]);
        std::fs::rename(place.shop.path(&file), place.shop.path("odd.toml")).unwrap();
        place.admit("odd.toml").done();
        let record = place.shop.read(LIBRARY);
        assert!(record.contains("[library]") && record.contains("file = \"library.so\""), "{name}: {record}");
        place.shop.run(&["check", "--shop", "shop"]).done();
        let shown = place.shop.run(&["knots", "show", name, "--shop", "shop", "--as", "json"]).done();
        assert!(shown.contains("\"library\": \"small\""), "{name}: {shown}");
    }
}

/// Where the system can't hold a library back it is not loaded, unless the maker says so.
#[cfg(all(target_os = "linux", target_arch = "x86_64"))]
#[test]
fn without_guards_only_on_the_makers_word() {
    let place = Workshop::with_good_library();
    let without = place.shop.path("without-guards");
    crate::workshop::compile(&reeve_tests::root().join("tests/plugins/without_guards.c"), &[], &[], &without);
    let run = |words: &[&str]| place.shop.run_by(&without, words);
    let said = run(&["takeoff", "tassel", "--shop", "shop"]).refused();
    assert!(said.contains("its library `small` was not loaded: the system does not hold it back"), "{said}");
    assert!(said.contains("no call of the system but what computing takes"), "{said}");
    assert!(said.contains("--unguarded") && said.contains("shop/designs/tassel.toml:47:8"), "{said}");
    run(&["takeoff", "pendant", "--shop", "shop"]).done();
    let said = run(&["knots", "probe", "good.so"]).refused();
    assert!(said.contains("--unguarded"), "{said}");
    let page = run(&["knots", "probe", "good.so", "--unguarded"]).done();
    assert!(!page.contains("no call of the system"), "{page}");
    run(&["knots", "admit", "good.so", "--unguarded", "--yes", "--shop", "shop"]).done();
    let kept = std::fs::read_to_string(place.shop.own().join("reeve/admitted.toml")).unwrap();
    assert!(kept.contains("unguarded = true"), "{kept}");
    run(&["takeoff", "tassel", "--shop", "shop"]).done();
    // Her word is not needed where the system does hold it back, and takes nothing away there.
    let page = place.shop.run(&["knots", "probe", "good.so", "--unguarded"]).done();
    let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(page.contains("no call of the system but what computing takes"), "{page}");
}
