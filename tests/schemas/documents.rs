//! The documents that the program writes, against their schemas.

use reeve_tests::{DEMO_DAY, TestShop};
use serde_json::Value;

use crate::{DOCUMENTS, breaks, schema};

/// Every document of the starter shop, with its kind.
fn documents() -> Vec<(&'static str, Value)> {
    let place = TestShop::starter();
    let shop = place.open().value;
    let (designs, commissions) = (shop.designs().value, shop.commissions().value);
    let made = |command: &'static str, name: &String| {
        let words = [command, name, "--shop", "shop", "--as", "json", "--on", DEMO_DAY];
        (command, serde_json::from_str(&place.run(&words).done()).unwrap())
    };
    let mut documents: Vec<_> = designs.iter().map(|name| made("takeoff", name)).collect();
    documents
        .extend(commissions.iter().flat_map(|name| [made("quote", name), made("costing", name), made("bench", name)]));
    let other = |words: &[&str]| serde_json::from_str(&place.run(words).done()).unwrap();
    documents.push(("compare", other(&["compare", "--shop", "shop", "--as", "json"])));
    documents.push(("weigh", other(&["weigh", "tideline-panel", "--shop", "shop", "--as", "json"])));
    documents.push(("mix", other(&["mix", "--shop", "shop", "--as", "json"])));
    for (day, words) in [
        ("2026-10-01", &["issue", "reading-room"][..]),
        ("2026-10-02", &["mark", "2026-001", "accepted", "--note", "by letter"]),
        ("2026-10-02", &["pay", "2026-001", "300.00"]),
        ("2026-10-05", &["log", "2026-001", "--minutes", "90", "--cord", "cotton-4-fern=60"]),
        ("2026-10-06", &["enquire", "thwickling"]),
    ] {
        place.run(&[&["book"], words, &["--on", day, "--ahead", "--shop", "shop"]].concat()).done();
    }
    for (kind, words) in [
        ("book-list", &["list"][..]),
        ("book-show", &["show", "2026-001"]),
        ("book-queue", &["queue"]),
        ("book-took", &["took", "2026-001"]),
        ("book-summary", &["summary"]),
    ] {
        let all = [&["book"], words, &["--on", DEMO_DAY, "--shop", "shop", "--as", "json"]].concat();
        documents.push((kind, other(&all)));
    }
    for knot in ["square", "gathering-wrap", "collared-square"] {
        documents.push(("knot", other(&["knots", "show", knot, "--shop", "shop", "--as", "json"])));
    }
    documents.push(("tight", other(&["knots", "tighten", "square", "--give", "hard", "--as", "json"])));
    documents.push(("hand", other(&["knots", "hand", "--shop", "shop", "--as", "json"])));
    // Two samples that bear each other out, and one that is odd.
    let sample = "[[sample]]\ncord = \"cotton-4-ecru\"\nknot = \"square\"\ntied = 10\nbefore = \"150 cm\"\n\
                  after = \"91 cm\"\nmade = \"14 cm\"\nminutes = 3\n";
    place.write("shop/knots/samples.toml", sample.repeat(2) + &sample.replace("91 cm", "60 cm"));
    documents.push(("hand", other(&["knots", "hand", "--shop", "shop", "--as", "json"])));
    documents
}

#[test]
fn every_document_keeps_to_its_schema() {
    let documents = documents();
    for kind in DOCUMENTS {
        let schema = schema(&format!("{kind}-json"));
        let of_kind: Vec<_> = documents.iter().filter(|(found, _)| *found == kind).collect();
        assert!(!of_kind.is_empty(), "{kind}");
        for (_, document) in of_kind {
            assert_eq!(breaks(&schema, document), [""; 0], "{kind}: {document}");
        }
    }
}

#[test]
fn a_document_without_a_key_breaks_its_schema() {
    for (kind, document) in documents() {
        let schema = schema(&format!("{kind}-json"));
        for key in required(&schema) {
            let mut less = document.clone();
            less.as_object_mut().unwrap().remove(&key).unwrap_or_else(|| panic!("{kind} has no {key}"));
            assert_ne!(breaks(&schema, &less), [""; 0], "{kind} without {key}");
        }
    }
}

fn required(schema: &Value) -> Vec<String> {
    schema["required"].as_array().unwrap().iter().map(|key| key.as_str().unwrap().to_owned()).collect()
}

#[test]
fn documents_have_the_fields_that_are_promised() {
    let promised: [(&str, &[&str]); 2] = [
        (
            "quote",
            &[
                "/lines/0/text",
                "/lines/0/quantity",
                "/lines/0/unit_price",
                "/lines/0/amount",
                "/lines/0/tax_rate",
                "/allowances",
                "/charges",
                "/taxes/0/rate",
                "/taxes/0/base",
                "/taxes/0/tax",
                "/totals/lines",
                "/totals/allowances",
                "/totals/charges",
                "/totals/net",
                "/totals/tax",
                "/totals/gross",
                "/totals/paid",
                "/totals/due",
                "/deposit/percent",
                "/deposit/amount",
                "/schedule/0/kind",
                "/schedule/0/amount",
                "/valid_until",
                "/currency",
            ],
        ),
        (
            "takeoff",
            &[
                "/cords/0/group",
                "/cords/0/cord",
                "/cords/0/count",
                "/cords/0/cut_mm",
                "/cords/0/fold_mm",
                "/legs/0/set",
                "/legs/0/count",
                "/legs/0/length_mm",
                "/knots/0/step",
                "/knots/0/knot",
                "/knots/0/count",
                "/knots/0/take_up_mm",
                "/knots/0/seconds",
                "/knots/0/source",
                "/purchases",
                "/weight_g",
                "/seconds",
            ],
        ),
    ];
    let documents = documents();
    for (kind, pointers) in promised {
        for (_, document) in documents.iter().filter(|(found, _)| *found == kind) {
            for pointer in pointers {
                assert!(document.pointer(pointer).is_some(), "{kind} has no {pointer}");
            }
        }
    }
}

#[test]
fn money_is_text_and_never_a_number() {
    // A knot, as kept or just tightened, and a hand have no price.
    for (kind, document) in documents().into_iter().filter(|(kind, _)| !["knot", "tight", "hand"].contains(kind)) {
        let mut numbers = Vec::new();
        find_numbers(&document, "", &mut numbers);
        // Counts, versions, and physical quantities with their unit in the name.
        let endings = [
            "form",
            "minor_units",
            "count",
            "revision",
            "weekly",
            "pieces",
            "_days",
            "_mm",
            "_g",
            "seconds",
            "parameters/value",
            "entries/number",
        ];
        let plain = |path: &String| endings.iter().any(|end| path.ends_with(end));
        numbers.retain(|path| !plain(path));
        assert!(numbers.is_empty(), "{kind}: {numbers:?}");
    }
}

fn find_numbers(value: &Value, path: &str, numbers: &mut Vec<String>) {
    match value {
        Value::Number(_) => numbers.push(path.to_owned()),
        Value::Array(items) => items.iter().for_each(|item| find_numbers(item, path, numbers)),
        Value::Object(fields) => {
            fields.iter().for_each(|(key, value)| find_numbers(value, &format!("{path}/{key}"), numbers));
        }
        _ => {}
    }
}
