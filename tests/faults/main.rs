//! Input with faults, and the message that each gets.
//!
//! Every case puts a fault into the small shop of `shop/`. The message is kept in `tests/snapshots/faults/`; besides, each
//! run must exit with 2, print nothing, write nothing, and point at every place marked in the case, and at no other.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

mod case;
mod commission;
mod design;
mod folder;
mod knot;
mod path;
mod samples;
mod shop;
mod sizes;
mod store;
mod syntax;

/// The tables, all of them: the kept messages are those of these cases.
const TABLES: [&[case::Case]; 11] = [
    commission::CASES,
    design::CASES,
    design::NESTED,
    folder::CASES,
    knot::CASES,
    path::CASES,
    samples::CASES,
    shop::CASES,
    sizes::CASES,
    store::CASES,
    syntax::CASES,
];

#[test]
fn kept_messages_are_those_of_the_cases() {
    let mut names: Vec<String> = TABLES.iter().copied().flatten().map(|case| format!("{}.txt", case.name)).collect();
    names.extend(samples::MORE.iter().map(|name| format!("{name}.txt")));
    names.extend(folder::MORE.iter().map(|name| format!("{name}.txt")));
    names.sort_unstable();
    let all = names.len();
    names.dedup();
    assert_eq!(names.len(), all, "two cases share a name");
    case::keep_only(&names);
}

#[test]
fn the_shop_of_the_cases_has_no_faults_itself() {
    case::shop().run(&["check", "--shop", "shop"]).done();
}
