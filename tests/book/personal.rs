//! Names and addresses stand in one place, and can be blanked there.

use std::fs;

use crate::workshop::Workshop;

const NAME: &str = "Zebedee & Sons \"Quay\"";

/// Whether a file holds some bytes.
fn holds(bytes: &[u8], what: &str) -> bool {
    bytes.windows(what.len()).any(|window| window == what.as_bytes())
}

/// A name may be a word of every other sentence.
#[test]
fn a_name_that_is_a_common_word_is_asked_about() {
    let shop = Workshop::new();
    shop.order("fobs", "Will Quayside", 2);
    shop.book(&["enquire", "fobs", "--note", "a boy will ring; quayside"], "2026-11-25").done();
    shop.book(&["issue", "fobs"], "2026-11-25").done();
    let told = shop.book(&["forget", "Will Quayside", "--yes"], "2026-11-26").done();
    assert!(told.contains("Left alone: `will`, as it is a usual word"), "{told}");
    let whole = shop.json(&["show", "2026-001"], "2026-11-26");
    assert_eq!(whole["happenings"][0]["note"], "a boy will ring; (forgotten)");
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

    let said = shop.book(&["forget", NAME], "2026-11-26").done();
    assert!(said.contains("--yes") && said.contains("kept by law") && !said.contains("Zebedee"), "{said}");
    assert!(shop.book(&["show", "2026-001"], "2026-11-26").done().contains("Zebedee"), "only looked at");
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

/// Who is to be forgotten, in all that a maker might type of them.
const PLANTED: &[&str] = &["zebedee", "quillon", "unmistakable", "harbourton", "0104477", "quillon.example"];

fn planted_client(shop: &Workshop, reference: &str) {
    // The design itself speaks of them too: its title and a step.
    let design = fs::read_to_string(shop.shop.path("shop/designs/fender-fob.toml")).unwrap();
    let design =
        design.replacen("title = \"", "title = \"Quillon's ", 1).replace("Round sennit", "Sennit as Zebedee likes it");
    shop.shop.write("shop/designs/own-fob.toml", design);
    let text = "[commission]\ntitle = 'Fobs for ZEBEDEE and the reading room'\nclient = 'Zebedee Quillon Reading'\n\
                address = ['9 Unmistakable Row', 'Harbourton', 'tel. 0555 010 4477', 'zeb@quillon.example']\n\
                note = 'Hang it in Unmistakable Row, for zebedee and Quillon. Call 0555-0104477'\n\n\
                [[item]]\ndesign = 'own-fob'\ntext = 'Fob of mr quillon, Harbourton'\n";
    shop.shop.write(&format!("shop/commissions/{reference}.toml"), text);
}

/// A client whose parts stand in every text that a maker types, in other cases too: none stays in the book's bytes, the
/// journal or free pages, what may be meant otherwise is told, and the seals hold.
#[test]
fn what_was_typed_of_a_client_is_forgotten_everywhere() {
    let shop = Workshop::with_orders(1);
    planted_client(&shop, "quillon-fobs");
    let on = "2020-11-25";
    shop.book(&["enquire", "quillon-fobs", "--note", "Zebedee rang from HARBOURTON"], on).done();
    shop.book(&["issue", "quillon-fobs", "--note", "sent to zeb@QUILLON.example"], on).done();
    shop.shop.replace("shop/commissions/quillon-fobs.toml", "mr quillon", "mr QUILLON");
    shop.book(&["issue", "quillon-fobs"], on).done();
    shop.book(&["mark", "2020-001", "accepted", "--note", "quillon said yes"], on).done();
    shop.book(&["pay", "2020-001", "5.00", "--note", "from (0555) 010 4477"], on).done();
    let log = [
        "--minutes",
        "5",
        "--step",
        "Sennit for Quillon",
        "--note",
        "zebedee's idea",
        "--bought",
        "Gift for Mrs quillon=1",
    ];
    shop.book(&[&["log", "2020-001"][..], &log].concat(), on).done();
    shop.book(&["undo", "2020-001", "6", "--why", "Zebedee paid it himself"], on).done();
    // And in the commission of another.
    shop.book(&["issue", "order-0", "--note", "send with that of 9 unmistakable row; reading can wait"], on).done();
    shop.book(&["mark", "2020-002", "accepted", "--note", "as quillon's"], on).done();
    shop.shop.run(&["book", "start", "2020-001", "--step", "At Zebedee's", "--shop", "shop"]).done();
    let gross = shop.json(&["list"], on)["commissions"][0]["gross"].clone();

    let looked = shop.book(&["forget", "zebedee quillon READING"], on).done();
    assert!(looked.contains("It would be forgotten in 1 commission") && looked.contains("`reading`"), "{looked}");
    shop.sound();
    let done = shop.book(&["forget", "zebedee quillon READING", "--yes"], on).done();
    for told in [
        "Forgotten in 1 commission",
        "2020-001 (title, figures, changes, ",
        "quote.html, quote.txt, quote.json, costing.html, costing.txt, costing.json, bench.html, bench.txt, note, step, \
         what was bought, step of the timer, why it was undone); 2020-002 (note).",
        "Left alone: `quillon`, as it is in the name of the commission's file: 2020-001 (file).",
        "Left alone: `quillon`, as it stands in another client's commission: 2020-002 (note).",
    ] {
        assert!(all_of(&done).contains(told), "{told}: {done}");
    }
    let usual = done.lines().find(|line| line.contains("`reading`, as it is a usual word: 2020-001 (title, "));
    assert!(usual.is_some_and(|line| !line.contains("2020-002")), "{done}");
    shop.sound();
    // What was left alone is all that is left.
    let left: Vec<String> =
        PLANTED.iter().filter(|word| in_the_book(&shop, word)).map(|word| (*word).to_owned()).collect();
    assert_eq!(left, ["quillon"]);
    // The maker decides.
    let more = shop.book(&["forget", "2020-001", "--also", "Quillon", "--also", "reading", "--yes"], on).done();
    assert!(
        more.contains("2020-001 (title, file") && more.contains("2020-002 (note)") && !more.contains("Left alone"),
        "{more}"
    );
    for word in PLANTED {
        assert!(!in_the_book(&shop, word), "{word} is still there");
    }
    shop.sound();
    let list = shop.json(&["list"], on);
    assert_eq!((&list["commissions"][0]["client"], &list["commissions"][0]["gross"]), (&"(forgotten)".into(), &gross));
    assert_eq!(
        (&list["commissions"][1]["client"], &list["commissions"][0]["reference"]),
        (&"Client 0".into(), &"forgotten-1".into())
    );
    let other = shop.json(&["show", "2020-002"], on);
    assert_eq!(other["happenings"][0]["note"], "send with that of (forgotten); reading can wait");
    let page = shop.book(&["show", "2020-001", "--page", "quote.html"], on).done();
    assert!(page.contains("(forgotten)") && page.contains("</html>"), "{page}");
    shop.book(&["export", "book.jsonl"], on).done();
    let other = Workshop::new();
    other.shop.write("book.jsonl", fs::read(shop.shop.path("book.jsonl")).unwrap());
    other.book(&["import", "book.jsonl"], on).done();
    other.sound();
}

/// A told list on one line.
fn all_of(told: &str) -> String {
    told.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Whether the book, its journal or a free page holds a word, in any case; digits with what may stand between them.
fn in_the_book(shop: &Workshop, word: &str) -> bool {
    let files = shop.shop.tree().into_iter().filter(|(path, _)| path.to_str().unwrap().contains("book.sqlite"));
    files.into_iter().any(|(_, bytes)| {
        let mut small = bytes.to_ascii_lowercase();
        if word.bytes().all(|byte| byte.is_ascii_digit()) {
            small.retain(|byte| !b" -()./".contains(byte));
        }
        holds(&small, word)
    })
}

/// A name that another client bears too is left alone and told.
#[test]
fn what_another_client_is_called_is_left_alone() {
    let shop = Workshop::new();
    for (name, client) in [("one", "Ada Quillon"), ("two", "Bram Quillon")] {
        shop.order(name, client, 1);
        shop.book(&["issue", name, "--note", &format!("{client} asks, Quillon that is")], "2020-11-25").done();
    }
    let done = shop.book(&["forget", "Ada Quillon", "--yes"], "2020-11-26").done();
    let told = "Left alone: `quillon`, as it is in another client's name or address, or in yours: 2020-001 (note).";
    assert!(all_of(&done).contains(told), "{done}");
    let note = |number| shop.json(&["show", number], "2020-11-26")["happenings"][0]["note"].clone();
    assert_eq!(note("2020-001"), "(forgotten) asks, Quillon that is");
    shop.book(&["forget", "2020-001", "--also", "quillon", "--yes"], "2020-11-26").done();
    assert_eq!(note("2020-001"), "(forgotten) asks, (forgotten) that is");
    assert_eq!(note("2020-002"), "Bram Quillon asks, Quillon that is");
    shop.sound();
}

/// The maker lives in the same town: the head of her own pages stays.
#[test]
fn the_makers_own_address_stays() {
    let shop = Workshop::new();
    let text = fs::read_to_string(shop.shop.path("shop/shop.toml")).unwrap();
    let town = text.lines().find_map(|line| line.strip_prefix("address = [")).unwrap();
    let town = town.trim_end_matches(']').rsplit('"').nth(1).unwrap().to_owned();
    let order = format!(
        "[commission]\ntitle = \"Fobs\"\nclient = \"Ada Quillon\"\naddress = [\"{town}\"]\n\n[[item]]\ndesign = \"fender-fob\"\n"
    );
    shop.shop.write("shop/commissions/fobs.toml", order);
    shop.book(&["issue", "fobs"], "2020-11-25").done();
    let done = shop.book(&["forget", "Ada Quillon", "--yes"], "2020-11-26").done();
    assert!(done.contains("or in yours"), "{done}");
    let page = shop.book(&["show", "2020-001", "--page", "quote.txt"], "2020-11-26").done();
    assert!(page.contains(&town) && !page.contains("Quillon"), "{page}");
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
