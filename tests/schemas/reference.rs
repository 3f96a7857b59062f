//! What is generated and checked in, against what the program prints today.

use std::fmt::Write;

use reeve_catalogue::tighten::GIVES;
use reeve_catalogue::{Catalogue, Knot, Setting, Taken, USUAL_GIVE};
use reeve_measure::Length;
use reeve_tests::{check_kept, commands, kept_names, regenerates};

use crate::{DOCUMENTS, FILES, at, print};

/// Shells whose completions are checked in, with the ending of their files.
const SHELLS: [(&str, &str); 5] =
    [("bash", "bash"), ("elvish", "elv"), ("fish", "fish"), ("powershell", "ps1"), ("zsh", "zsh")];

#[test]
fn schemas_of_files_are_as_checked_in() {
    for kind in FILES {
        check_kept(&at(&format!("engine/shop/schemas/{kind}.json")), &print(&["schema", kind]));
    }
}

#[test]
fn schemas_of_documents_are_as_checked_in() {
    let of_types = reeve_pages::schemas();
    assert_eq!(of_types.len(), DOCUMENTS.len());
    for (name, schema) in of_types {
        let kind = name.strip_suffix("-json").unwrap();
        let text = serde_json::to_string_pretty(&schema).unwrap() + "\n";
        check_kept(&at(&format!("engine/pages/schemas/{kind}.json")), &text);
    }
}

/// The texts themselves are made and held against the types and the words of the command line where those are.
#[test]
fn the_program_prints_what_is_checked_in() {
    let kept = |path: String| std::fs::read_to_string(at(&path)).unwrap();
    assert_eq!(print(&["man"]), kept("engine/cli/reference/reeve.1".to_owned()));
    for (shell, ending) in SHELLS {
        assert_eq!(print(&["completions", shell]), kept(format!("engine/cli/reference/reeve.{ending}")));
    }
    for kind in DOCUMENTS {
        assert_eq!(print(&["schema", &format!("{kind}-json")]), kept(format!("engine/pages/schemas/{kind}.json")));
    }
}

#[test]
fn the_command_page_is_as_checked_in() {
    check_kept(&at("engine/cli/reference/commands.md"), &command_page());
}

#[test]
fn the_page_of_knots_is_as_checked_in() {
    check_kept(&at("engine/cli/reference/knots.md"), &knots_page());
}

/// What every knot takes and rises between the hard limit and the softest cord.
fn knots_page() -> String {
    let mut page = "# Knots\n\nWhat one knot takes of each working leg and how far it rises, in diameters of its cord, for a hard \
                    cord, one of the usual give and the softest. Round two core legs where it can be, or a rod of five \
                    cords. Knots with moves do not depend on give. Generated; not to be edited.\n\n\
                    | knot | kind | from | hard: takes | rises | usual: takes | rises | soft: takes | rises |\n\
                    |---|---|---|---|---|---|---|---|---|\n"
        .to_owned();
    for knot in Catalogue::embedded().iter() {
        let from = if knot.is_drawn() { "path" } else { "moves" };
        write!(page, "| {} | {} | {from} |", knot.title, knot.kind.word()).unwrap();
        for give in [GIVES[0], USUAL_GIVE, GIVES[GIVES.len() - 1]] {
            let taken = taken(knot, give);
            write!(page, " {:.2} | {:.2} |", taken.working.as_mm(), taken.rise.as_mm()).unwrap();
        }
        page.push('\n');
    }
    page
}

fn taken(knot: &Knot, give: f64) -> Taken {
    let cord = Length::mm(1.0);
    let core = knot.usual_core(cord);
    knot.taken(&Setting { cord, working: knot.working.legs.0, core, give, parameters: &[] }).unwrap()
}

/// The help of every command, one after the other.
fn command_page() -> String {
    let mut page =
        "# Commands\n\nThe help of every command, as the program prints it. Generated; not to be edited.\n".to_owned();
    for command in std::iter::once(Vec::new()).chain(commands()) {
        let title = format!("reeve {}", command.join(" "));
        let words: Vec<&str> = command.iter().map(String::as_str).chain(["--help"]).collect();
        write!(page, "\n## {}\n\n```text\n{}\n```\n", title.trim_end(), tidy(&print(&words))).unwrap();
    }
    page
}

/// Without the blanks at the ends of lines.
fn tidy(text: &str) -> String {
    text.trim_end().lines().map(str::trim_end).collect::<Vec<_>>().join("\n")
}

#[test]
fn every_kind_of_schema_is_checked_in() {
    let help = print(&["schema", "--help"]);
    for kind in FILES.map(str::to_owned).into_iter().chain(DOCUMENTS.map(|kind| format!("{kind}-json"))) {
        assert!(help.contains(&kind), "{kind}");
    }
    let listed = help.split_once("[possible values: ").unwrap().1.split_once(']').unwrap().0;
    assert_eq!(listed.split(',').count(), FILES.len() + DOCUMENTS.len(), "{listed}");
}

#[test]
fn nothing_else_is_checked_in_beside_what_is_generated() {
    // While the others are writing there may be less.
    if regenerates() {
        return;
    }
    let named = |names: &[String]| {
        let mut names = names.to_vec();
        names.sort_unstable();
        names
    };
    let json = |kinds: &[&str]| named(&kinds.iter().map(|kind| format!("{kind}.json")).collect::<Vec<_>>());
    assert_eq!(kept_names(&at("engine/shop/schemas")), json(&FILES));
    assert_eq!(kept_names(&at("engine/pages/schemas")), json(&DOCUMENTS));
    let mut reference: Vec<String> = SHELLS.iter().map(|(_, ending)| format!("reeve.{ending}")).collect();
    reference.extend(["commands.md".to_owned(), "knots.md".to_owned(), "reeve.1".to_owned()]);
    assert_eq!(kept_names(&at("engine/cli/reference")), named(&reference));
}
