//! `--out`: seven files, whole and all of them, or none.

use std::fs;
use std::path::Path;

use reeve_tests::{DEMO_DAY, Ran, TestShop, tree_of};

const FILES: [&str; 7] =
    ["bench.html", "bench.txt", "costing.html", "costing.txt", "quote.html", "quote.json", "quote.txt"];

fn demo_into(place: &TestShop, dir: &str) -> Ran {
    place.run(&["quote", "--demo", "--on", DEMO_DAY, "--out", dir])
}

#[test]
fn out_writes_seven_files_and_says_so() {
    let place = TestShop::none();
    let ran = demo_into(&place, "made/to-send");
    let names: Vec<_> = tree_of(&place.path("made/to-send")).into_keys().collect();
    assert_eq!(names, FILES.map(Path::new));
    for file in FILES {
        assert!(ran.err.contains(&format!("wrote made/to-send/{file}\n")), "{}", ran.err);
    }
    ran.done();
}

#[test]
fn what_is_written_is_what_is_printed() {
    let place = TestShop::none();
    let printed = demo_into(&place, "out").done();
    assert_eq!(place.read("out/quote.txt"), printed);
    for (file, words) in [
        ("quote.html", ["quote", "html"]),
        ("quote.json", ["quote", "json"]),
        ("costing.html", ["costing", "html"]),
        ("costing.txt", ["costing", "text"]),
        ("bench.html", ["bench", "html"]),
        ("bench.txt", ["bench", "text"]),
    ] {
        let page = place.run(&[words[0], "--demo", "--on", DEMO_DAY, "--as", words[1]]).done();
        assert_eq!(place.read(&format!("out/{file}")), page, "{file}");
    }
}

#[test]
fn out_replaces_its_own_files_and_leaves_others_alone() {
    let place = TestShop::none();
    place.write("out/quote.txt", "old");
    place.write("out/letter.txt", "mine");
    demo_into(&place, "out").done();
    assert_ne!(place.read("out/quote.txt"), "old");
    assert_eq!(place.read("out/letter.txt"), "mine");
    assert_eq!(tree_of(&place.path("out")).len(), FILES.len() + 1);
}

#[test]
fn files_of_another_run_stay_when_the_input_has_faults() {
    let place = TestShop::starter();
    let words = ["quote", "reading-room", "--shop", "shop", "--out", "out"];
    place.run(&words).done();
    place.replace("shop/commissions/reading-room.toml", "quantity = 6", "quantity = 0");
    let before = place.tree();
    place.run(&words).refused();
    assert_eq!(place.tree(), before);
}

#[test]
fn a_fault_of_the_input_makes_no_folder() {
    let place = TestShop::starter();
    place.replace("shop/shop.toml", "wage = \"24.00\"", "wage = 24");
    place.run(&["quote", "reading-room", "--shop", "shop", "--out", "out"]).refused();
    assert!(!place.path("out").exists());
}

#[test]
fn a_folder_that_cannot_be_made_is_the_systems_refusal() {
    let place = TestShop::none();
    place.write("file", "mine");
    let before = place.tree();
    let ran = demo_into(&place, "file/out");
    assert_eq!((ran.code, ran.out.as_str()), (Some(1), ""), "{}", ran.err);
    assert!(ran.err.contains("file/out"), "{}", ran.err);
    assert_eq!(place.tree(), before);
}

#[cfg(target_os = "linux")]
#[test]
fn a_folder_that_cannot_be_written_is_the_systems_refusal() {
    // Not even the superuser makes files there.
    let ran = demo_into(&TestShop::none(), "/proc");
    assert_eq!((ran.code, ran.out.as_str()), (Some(1), ""), "{}", ran.err);
    assert!(ran.err.contains("/proc"), "{}", ran.err);
}

#[test]
fn one_file_that_cannot_be_replaced_leaves_all_others_as_they_were() {
    // A folder stands in the way of one of the seven, whichever it is.
    for blocked in FILES {
        let place = TestShop::none();
        for file in FILES.into_iter().filter(|file| *file != blocked) {
            place.write(&format!("out/{file}"), "old");
        }
        place.write(&format!("out/{blocked}/in-the-way.txt"), "mine");
        let before = place.tree();
        let ran = demo_into(&place, "out");
        assert_eq!((ran.code, ran.out.as_str()), (Some(1), ""), "{blocked}: {}", ran.err);
        assert!(place.tree() == before, "{blocked} was blocked, and others were replaced or left behind");
    }
}

#[test]
fn nothing_temporary_is_left_behind() {
    let place = TestShop::none();
    fs::create_dir_all(place.path("out/bench.html/in-the-way")).unwrap();
    demo_into(&place, "out");
    let left: Vec<_> = tree_of(&place.path("out")).into_keys().filter(|path| path.starts_with(".reeve-")).collect();
    assert!(left.is_empty(), "{left:?}");
    let hidden =
        fs::read_dir(place.path("out")).unwrap().filter_map(|entry| entry.unwrap().file_name().into_string().ok());
    assert!(!hidden.into_iter().any(|name| name.starts_with('.')));
}

#[cfg(unix)]
#[test]
fn what_is_written_can_be_read_by_others() {
    use std::os::unix::fs::PermissionsExt;
    let place = TestShop::none();
    place.write("plain.txt", "made by any other program");
    demo_into(&place, "out").done();
    let mode = |path: &str| fs::metadata(place.path(path)).unwrap().permissions().mode();
    for file in FILES {
        assert_eq!(mode(&format!("out/{file}")), mode("plain.txt"), "{file}");
    }
}
