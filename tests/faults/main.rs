//! Input with faults, and the message that each gets.
//!
//! Every case puts a fault into the small shop of `shop/`. The messages of a module are kept in one file of
//! `tests/snapshots/faults/`, each beneath its case; besides, each
//! run must exit with 2, print nothing, write nothing, and point at every place marked in the case, and at no other.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

mod case;
mod commission;
mod design;
mod folder;
mod knot;
mod messages;
mod path;
mod samples;
mod shop;
mod sizes;
mod store;
mod syntax;

/// Every module, with its cases in the order in which they are kept.
fn modules() -> [messages::Module; 10] {
    [
        commission::module(),
        design::module(),
        folder::module(),
        knot::module(),
        path::module(),
        samples::module(),
        shop::module(),
        sizes::module(),
        store::module(),
        syntax::module(),
    ]
}

/// A module of tables, and of messages that its tests judge one by one.
fn module(name: &'static str, tables: &[&'static [case::Case]], more: &[&'static str]) -> messages::Module {
    let cases = tables.iter().copied().flatten().map(|case| case.name).chain(more.iter().copied()).collect();
    messages::Module { name, cases }
}

#[test]
fn kept_messages_are_those_of_the_cases() {
    let modules = modules();
    let mut names: Vec<&str> = modules.iter().flat_map(|module| &module.cases).copied().collect();
    names.sort_unstable();
    let all = names.len();
    names.dedup();
    assert_eq!(names.len(), all, "two cases share a name");
    if !reeve_tests::regenerates() {
        let strays = messages::strays(&modules);
        assert!(strays.is_empty(), "kept, but of no case: {strays:?}");
    }
}

#[test]
fn the_shop_of_the_cases_has_no_faults_itself() {
    case::shop().run(&["check", "--shop", "shop"]).done();
}
