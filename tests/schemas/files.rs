//! The maker's files against their schemas.

use std::fs;
use std::path::Path;

use reeve_tests::{TestShop, files_below};
use serde_json::Value;

use crate::{FILES, at, breaks, schema};

/// Which schema a file of a shop answers to.
fn kind_of(path: &Path) -> &'static str {
    let name = path.file_name().unwrap().to_str().unwrap();
    let folder = path.parent().unwrap().file_name().unwrap().to_str().unwrap();
    match (folder, name) {
        (_, "shop.toml") => "shop",
        ("store", "cords.toml") => "cords",
        ("store", "fittings.toml") => "fittings",
        ("designs", _) => "design",
        ("commissions", _) => "commission",
        ("knots", "samples.toml") => "samples",
        ("knots", _) => "knot",
        other => panic!("of what kind is {other:?}?"),
    }
}

/// A TOML file as JSON; a date becomes its text.
fn as_json(value: toml::Value) -> Value {
    match value {
        toml::Value::String(text) => Value::from(text),
        toml::Value::Integer(number) => Value::from(number),
        toml::Value::Float(number) => Value::from(number),
        toml::Value::Boolean(flag) => Value::from(flag),
        toml::Value::Datetime(date) => Value::from(date.to_string()),
        toml::Value::Array(items) => items.into_iter().map(as_json).collect(),
        toml::Value::Table(table) => table.into_iter().map(|(key, value)| (key, as_json(value))).collect(),
    }
}

fn read(path: &Path) -> Value {
    as_json(toml::Value::Table(fs::read_to_string(path).unwrap().parse().unwrap()))
}

#[track_caller]
fn all_keep_to_their_schemas(folder: &str, fewest: usize) {
    // What tightening leaves is written by the program.
    let kept = |path: &Path| path.components().any(|part| part.as_os_str() == "tightened");
    let toml = |path: &Path| path.extension().is_some_and(|ending| ending == "toml");
    let files: Vec<_> = files_below(&at(folder)).into_iter().filter(|path| toml(path) && !kept(path)).collect();
    assert!(files.len() >= fewest, "{} files in {folder}", files.len());
    let schemas: Vec<(&str, Value)> = FILES.iter().map(|kind| (*kind, schema(kind))).collect();
    for path in files {
        let schema = &schemas.iter().find(|(kind, _)| *kind == kind_of(&path)).unwrap().1;
        assert_eq!(breaks(schema, &read(&path)), [""; 0], "{}", path.display());
    }
}

#[test]
fn every_file_of_the_starter_shop_keeps_to_its_schema() {
    all_keep_to_their_schemas("engine/shop/starter", 15);
}

#[test]
fn every_knot_of_the_catalogue_keeps_to_its_schema() {
    all_keep_to_their_schemas("catalogue/knots", 15);
}

#[test]
fn every_file_of_the_test_shops_keeps_to_its_schema() {
    all_keep_to_their_schemas("tests/faults/shop", 8);
    all_keep_to_their_schemas("tests/published/shop", 7);
}

/// A sound file of each kind, and changes that the program refuses: the schema must refuse them too.
const WRONG: &[(&str, &str, &str, &str)] = &[
    ("shop", "shop.toml", "wage = \"24.00\"", "wage = 24.00"),
    ("shop", "shop.toml", "valid-days = 30", "valid-days = 0"),
    ("shop", "shop.toml", "prices = \"net\"", "prices = \"nett\""),
    ("shop", "shop.toml", "[pay]", "[payment]"),
    ("cords", "store/cords.toml", "diameter = \"4 mm\"", "diameter = 4"),
    ("cords", "store/cords.toml", "diameter = \"4 mm\"", "diameter = \"4 ells\""),
    ("fittings", "store/fittings.toml", "price = \"0.85\"", ""),
    ("design", "designs/fender-fob.toml", "count = 2", "coutn = 2"),
    ("design", "designs/fender-fob.toml", "count = 2", "count = \"2\""),
    ("design", "designs/fender-fob.toml", "purpose = \"decoration\"", "purpose = \"decorations\""),
    ("commission", "commissions/reading-room.toml", "asked = 2027-01-11", "asked = \"soon\""),
    ("commission", "commissions/reading-room.toml", "rate = \"5 %\"", "rate = \"5\""),
    ("knot", "knots/collared-square.toml", "kind = \"sennit\"", "kind = \"sinnet\""),
];

#[test]
fn what_the_program_refuses_by_its_shape_the_schema_refuses_too() {
    for (kind, path, from, to) in WRONG {
        let text = fs::read_to_string(at("engine/shop/starter").join(path)).unwrap();
        assert!(text.contains(from), "{path} does not hold {from}");
        let wrong = as_json(toml::Value::Table(text.replacen(from, to, 1).parse().unwrap()));
        assert_ne!(breaks(&schema(kind), &wrong), [""; 0], "{path} with {to}");
    }
}

/// A sample with every key.
const SAMPLE: &str = r#"
[[sample]]
cord = "cotton-4-ecru"
knot = "gathering-wrap"
tied = 1
core = 8
working = 1
parameters = { turns = 12 }
before = "150 cm"
after = "80 cm"
made = "5 cm"
minutes = 2.5
on = 2026-11-02
note = "With a waxed end."

[[work]]
number = "2026-001"
step = "Wrap it"
on = 2026-11-04
knot = "gathering-wrap"
base = 20
pull = 3.5
doubt = 0.1
minutes = 31

[[sample]]
cord = "cotton-4-ecru"
knot = "larks-head"
tied = 3
rod = "22 mm"
before = "60 in"
after = "49 in"
made = "1.5 in"
"#;

#[test]
fn what_the_program_reads_of_samples_keeps_to_their_schema_and_the_rest_does_not() {
    let place = TestShop::starter();
    place.write("shop/knots/samples.toml", SAMPLE);
    place.run(&["check", "--shop", "shop"]).done();
    let schema = schema("samples");
    let breaks = |text: &str| breaks(&schema, &as_json(toml::Value::Table(text.parse().unwrap())));
    assert_eq!(breaks(SAMPLE), [""; 0]);
    for (from, to) in [
        ("tied = 1", "tied = 0"),
        ("tied = 1\n", ""),
        ("\"150 cm\"", "150"),
        ("\"150 cm\"", "\"150 ells\""),
        ("minutes = 2.5", "minutes = 0"),
        ("2026-11-02", "\"in autumn\""),
        ("note", "remark"),
        ("minutes = 31\n", ""),
        ("doubt = 0.1", "doubt = -1"),
        ("number = \"2026-001\"", "of = \"2026-001\""),
    ] {
        let wrong = SAMPLE.replacen(from, to, 1);
        assert_ne!(breaks(&wrong), [""; 0], "{to}");
        place.write("shop/knots/samples.toml", &wrong);
        place.run(&["check", "--shop", "shop"]).refused();
    }
}

#[test]
fn every_key_of_every_schema_says_what_it_is() {
    for kind in FILES {
        let mut silent = Vec::new();
        undescribed(&schema(kind), kind, &mut silent);
        assert!(silent.is_empty(), "{silent:?}");
    }
}

/// Paths of the properties that have no description.
fn undescribed(schema: &Value, path: &str, silent: &mut Vec<String>) {
    for (key, property) in schema["properties"].as_object().into_iter().flatten() {
        let path = format!("{path}.{key}");
        if property["description"].as_str().is_none_or(|about| about.trim().is_empty()) {
            silent.push(path.clone());
        }
        undescribed(property, &path, silent);
        undescribed(&property["items"], &path, silent);
    }
}
