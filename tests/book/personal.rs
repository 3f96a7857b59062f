//! Names and addresses stand in one place, and can be blanked there.

use std::fs;

use crate::workshop::Workshop;

const NAME: &str = "Zebedee & Sons \"Quay\"";

/// Whether a file holds some bytes.
fn holds(bytes: &[u8], what: &str) -> bool {
    bytes.windows(what.len()).any(|window| window == what.as_bytes())
}

#[test]
fn a_forgotten_client_is_nowhere_in_the_file() {
    let shop = Workshop::with_orders(1);
    let text = format!(
        "[commission]\ntitle = 'Fobs for {NAME}'\nclient = '{NAME}'\naddress = ['Unmistakable Row 9']\nnote = 'For {NAME} with thanks'\n\n\
         [[item]]\ndesign = \"fender-fob\"\ntext = 'Fob of {NAME}'\n"
    );
    shop.shop.write("shop/commissions/fobs.toml", text);
    let page = shop.book(&["issue", "fobs"], "2026-11-25").done();
    assert!(page.contains(NAME) && page.contains("Unmistakable Row 9"), "{page}");
    shop.book(&["issue", "order-0"], "2026-11-25").done();
    let html = shop.book(&["show", "2026-001", "--page", "quote.html"], "2026-11-26").done();
    assert!(html.contains("Zebedee &amp; Sons") && !html.contains("Zebedee & Sons"), "escaped where it must be");
    let noted = format!("{NAME} said yes");
    shop.book(&["mark", "2026-001", "accepted", "--note", &noted], "2026-11-25").done();
    shop.book(&["pay", "2026-001", "5.00", "--note", &noted], "2026-11-25").done();
    shop.book(&["log", "2026-001", "--minutes", "5", "--note", &noted, "--bought", &format!("{NAME}=1")], "2026-11-25")
        .done();
    let whole = shop.json(&["show", "2026-001"], "2026-11-26");
    assert_eq!(
        (&whole["happenings"][1]["note"], &whole["payments"][0]["note"]),
        (&noted.as_str().into(), &noted.as_str().into())
    );
    let gross = shop.json(&["list"], "2026-11-26")["commissions"][0]["gross"].clone();

    let said = shop.book(&["forget", NAME], "2026-11-26").refused();
    assert!(said.contains("--yes") && said.contains("kept by law") && !said.contains("Zebedee"), "{said}");
    let said = shop.book(&["forget", "Nobody", "--yes"], "2026-11-26").refused();
    assert!(!said.contains("Nobody"), "a name is not repeated: {said}");
    let done = shop.book(&["forget", NAME, "--yes"], "2026-11-26").done();
    assert!(done.contains("1 commission") && done.contains("kept by law"), "{done}");

    for (path, bytes) in shop.shop.tree() {
        if path.to_str().unwrap().contains("book.sqlite") {
            assert!(!holds(&bytes, "Zebedee") && !holds(&bytes, "Unmistakable"), "{} still holds it", path.display());
            assert!(path.ends_with("book.sqlite") || bytes.is_empty());
        }
    }
    let page = shop.book(&["show", "2026-001", "--page", "quote.txt"], "2026-11-26").done();
    assert!(page.contains("(forgotten)") && !page.contains("Zebedee"), "{page}");
    let list = shop.json(&["list"], "2026-11-26");
    assert_eq!((&list["commissions"][0]["client"], &list["commissions"][0]["gross"]), (&"(forgotten)".into(), &gross));
    assert_eq!(list["commissions"][1]["client"], "Client 0");
    shop.sound();
}

#[test]
fn only_one_table_of_the_text_holds_names() {
    let shop = Workshop::with_orders(2);
    for order in ["order-0", "order-1"] {
        shop.book(&["issue", order], "2026-11-25").done();
    }
    shop.book(&["export", "book.jsonl"], "2026-11-26").done();
    let text = fs::read_to_string(shop.shop.path("book.jsonl")).unwrap();
    for line in text.lines().filter(|line| line.contains("Client 0") || line.contains("Client 1")) {
        assert!(line.contains("\"in\":\"client\""), "{line}");
    }
}
