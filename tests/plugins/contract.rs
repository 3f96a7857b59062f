//! The header and its mirror in Rust are the same contract.

use std::fmt::Write;
use std::mem::offset_of;
use std::process::Command;

use reeve_kit::abi;

use crate::workshop::compile;

/// A struct: its name, its size, and the place of every field.
type Layout = (&'static str, usize, Vec<(&'static str, usize)>);

macro_rules! layout {
    ($c:literal, $rust:ty: $($field:ident),+) => {
        ($c, size_of::<$rust>(), vec![$((stringify!($field), offset_of!($rust, $field))),+])
    };
}

/// Every struct of the contract with every field.
fn layouts() -> Vec<Layout> {
    vec![
        layout!("reeve_text", abi::Text: bytes, length),
        layout!("reeve_parameter", abi::Parameter: size, unit, flags, reserved, name, about, least, most, usual),
        layout!("reeve_knot", abi::Knot: size, kind, flags, take_up_source, time_source, working_least, working_most,
            core_least, core_most, also_count, caution_count, parameter_count, name, title, summary, take_up_note, time_note,
            also, cautions, parameters, pull_s_per_m),
        layout!("reeve_setting", abi::Setting: size, working, core, core_legs, parameter_count, reserved, cord_mm, give,
            core_mm, core_a_mm, core_b_mm, parameters),
        layout!("reeve_taken", abi::Taken: size, parameter, working_mm, core_mm, rise_mm, base_s, draws, words),
        layout!("reeve_library", abi::Library: magic, major, minor, size, knot_count, name, version, knot, take),
    ]
}

/// Every constant of the header and its value in Rust.
fn constants() -> Vec<(&'static str, u64)> {
    use reeve_kit::{Kind, Source, Unit};
    vec![
        ("REEVE_MAGIC", abi::MAGIC),
        ("REEVE_MAJOR", abi::MAJOR.into()),
        ("REEVE_MINOR", abi::MINOR.into()),
        ("REEVE_WHOLE", abi::WHOLE.into()),
        ("REEVE_GROWS", abi::GROWS.into()),
        ("REEVE_ON_FITTING", abi::ON_FITTING.into()),
        ("REEVE_JOINS", abi::JOINS.into()),
        ("REEVE_CORE_GROWS", abi::CORE_GROWS.into()),
        ("REEVE_GIVE_SHRINKS", abi::GIVE_SHRINKS.into()),
        ("REEVE_LEGS", abi::LEGS.into()),
        ("REEVE_ROD", abi::ROD.into()),
        ("REEVE_BAR", abi::BAR.into()),
        ("REEVE_DONE", abi::DONE.into()),
        ("REEVE_REFUSED", abi::REFUSED.into()),
        ("REEVE_FAILED", abi::FAILED.into()),
        ("REEVE_WORDS", abi::WORDS as u64),
        ("REEVE_NO_PARAMETER", abi::NO_PARAMETER.into()),
        ("REEVE_NUMBER", Unit::Number as u64),
        ("REEVE_MM", Unit::Mm as u64),
        ("REEVE_DEGREES", Unit::Degrees as u64),
        ("REEVE_DIAMETERS", Unit::Diameters as u64),
        ("REEVE_SENNIT", Kind::Sennit as u64),
        ("REEVE_ROW", Kind::Row as u64),
        ("REEVE_MOUNTING", Kind::Mounting as u64),
        ("REEVE_WRAP", Kind::Wrap as u64),
        ("REEVE_SINGLE", Kind::Single as u64),
        ("REEVE_GEOMETRY", Source::Geometry as u64),
        ("REEVE_PUBLISHED", Source::Published as u64),
        ("REEVE_COMMON_PRACTICE", Source::CommonPractice as u64),
        ("REEVE_FROM_MEMORY", Source::FromMemory as u64),
    ]
}

/// Runs a small C program that prints the same lines, and compares.
#[test]
fn the_header_and_its_mirror_agree_on_every_byte() {
    let mut lines = Vec::new();
    let mut program = String::from("#include <stdio.h>\n#include \"reeve_knots.h\"\nint main(void) {\n");
    for (name, size, fields) in layouts() {
        lines.push(format!("{name} {size}"));
        writeln!(program, "printf(\"{name} %zu\\n\", sizeof({name}));").unwrap();
        for (field, at) in fields {
            lines.push(format!("{name}.{field} {at}"));
            writeln!(program, "printf(\"{name}.{field} %zu\\n\", offsetof({name}, {field}));").unwrap();
        }
    }
    for (name, value) in constants() {
        lines.push(format!("{name} {value}"));
        writeln!(program, "printf(\"{name} %llu\\n\", (unsigned long long)({name}));").unwrap();
    }
    program += "return 0;\n}\n";
    let folder = tempfile::tempdir().unwrap();
    let (source, built) = (folder.path().join("layout.c"), folder.path().join("layout"));
    std::fs::write(&source, program).unwrap();
    compile(&source, &[], &[], &built);
    let told = String::from_utf8(Command::new(&built).output().unwrap().stdout).unwrap();
    assert_eq!(told.lines().collect::<Vec<_>>(), lines);
}

/// No field and no constant of the header is missing from the lists above.
#[test]
fn the_lists_hold_everything_that_the_header_declares() {
    let header = std::fs::read_to_string(reeve_tests::root().join("plugins/kit/reeve_knots.h")).unwrap();
    let bare = without_comments(&header);
    for (name, _, fields) in layouts() {
        let (_, body) = bare.split_once(&format!("typedef struct {name} {{")).unwrap();
        let (body, _) = body.split_once("} ").unwrap();
        assert_eq!(body.matches(';').count(), fields.len(), "fields of {name}: {body}");
    }
    let known: Vec<&str> = constants().into_iter().map(|(name, _)| name).collect();
    let declared = bare.lines().filter_map(|line| {
        let line = line.trim().trim_start_matches("#define ");
        let (word, rest) = line.split_once([' ', '='])?;
        (word.starts_with("REEVE_") && !rest.is_empty()).then_some(word)
    });
    for word in declared.filter(|word| !word.starts_with("REEVE_TEXT")) {
        assert!(known.contains(&word), "{word}");
    }
    assert!(!bare.contains("enum {") && known.iter().all(|name| bare.contains(name)));
}

fn without_comments(text: &str) -> String {
    let mut bare = String::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once("/*") {
        bare.push_str(before);
        rest = after.split_once("*/").unwrap().1;
    }
    bare + rest
}

/// The codes of the contract are the places of the words that the catalogue's files use.
#[test]
fn codes_stand_for_the_catalogues_words() {
    use reeve_catalogue::{KnotKind, ParameterUnit, Source};
    let kinds: Vec<&str> = KnotKind::WORDS.iter().map(|(word, _)| *word).collect();
    assert_eq!(kinds, ["sennit", "row", "mounting", "wrap", "single"]);
    let sources: Vec<&str> = Source::OF_LIBRARIES.iter().map(|(word, _)| *word).collect();
    assert_eq!(sources, ["geometry", "published", "common practice", "from memory"]);
    let units: Vec<&str> = ParameterUnit::WORDS.iter().map(|(word, _)| *word).collect();
    assert_eq!(units, ["number", "mm", "degrees", "diameters"]);
}
