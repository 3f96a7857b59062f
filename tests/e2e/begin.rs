//! `reeve begin`, and the shop it writes.

use std::fs;

use reeve_shop::{DEMO_COMMISSION, DEMO_DESIGN};
use reeve_tests::{TestShop, root, tree_of};

#[test]
fn begin_writes_the_starter_shop_into_a_new_folder() {
    let place = TestShop::none();
    place.run(&["begin", "shop"]).done();
    assert_eq!(tree_of(&place.path("shop")), tree_of(&root().join("engine/shop/starter")));
}

#[test]
fn begin_makes_the_folders_above_it() {
    let place = TestShop::none();
    place.run(&["begin", "work/knots/shop"]).done();
    place.run(&["check", "--shop", "work/knots/shop"]).done();
}

#[test]
fn begin_writes_into_an_empty_folder() {
    let place = TestShop::none();
    fs::create_dir(place.path("shop")).unwrap();
    place.run(&["begin", "shop"]).done();
    assert!(place.path("shop/shop.toml").is_file());
}

#[test]
fn begin_refuses_a_folder_that_holds_something_and_leaves_it_alone() {
    let place = TestShop::none();
    place.write("shop/notes.txt", "mine");
    let before = place.tree();
    assert!(place.run(&["begin", "shop"]).refused().contains("not a new or empty folder"));
    assert_eq!(place.tree(), before);
}

#[test]
fn begin_refuses_a_shop_that_it_wrote_itself() {
    let place = TestShop::starter();
    let before = place.tree();
    place.run(&["begin", "shop"]).refused();
    assert_eq!(place.tree(), before);
}

#[test]
fn begin_refuses_a_file() {
    let place = TestShop::none();
    place.write("shop", "mine");
    let before = place.tree();
    place.run(&["begin", "shop"]).refused();
    place.run(&["begin", "shop/inside"]).refused();
    assert_eq!(place.tree(), before);
}

#[test]
fn begin_says_what_to_try_next_and_all_of_it_works() {
    let place = TestShop::none();
    let said = place.run(&["begin", "shop"]).done();
    let tries: Vec<Vec<&str>> = said.lines().filter_map(|line| line.trim().strip_prefix("reeve ")).map(words).collect();
    assert_eq!(tries.iter().map(|words| words[0]).collect::<Vec<_>>(), ["check", "takeoff", "quote"]);
    for words in &tries {
        place.run(words).done();
    }
}

fn words(line: &str) -> Vec<&str> {
    line.split(' ').collect()
}

#[test]
fn the_starter_shop_has_no_faults_and_nothing_to_remark() {
    let ran = TestShop::starter().run(&["check", "--shop", "shop"]);
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""));
    assert!(ran.out.contains("no faults"), "{}", ran.out);
}

#[test]
fn the_demo_is_the_starter_shop() {
    let place = TestShop::starter();
    for words in
        [["quote", DEMO_COMMISSION], ["costing", DEMO_COMMISSION], ["bench", DEMO_COMMISSION], ["takeoff", DEMO_DESIGN]]
    {
        let demo = place.run(&[words[0], "--demo", "--on", "2026-11-25"]).done();
        let own = place.run(&[words[0], words[1], "--shop", "shop", "--on", "2026-11-25"]).done();
        assert_eq!(demo, own, "{words:?}");
    }
}

#[test]
fn every_design_and_commission_of_the_starter_shop_has_its_pages() {
    let place = TestShop::starter();
    let shop = place.open().value;
    for design in shop.designs().value.iter() {
        for form in ["text", "html", "json"] {
            place.run(&["takeoff", design, "--shop", "shop", "--as", form]).done();
        }
    }
    for commission in shop.commissions().value {
        for command in ["quote", "costing", "bench"] {
            place.run(&[command, &commission, "--shop", "shop"]).done();
        }
    }
}
