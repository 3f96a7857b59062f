//! Quotes issued, revised and shown as they were.

use crate::workshop::{Workshop, running};

#[test]
fn a_quote_gets_the_next_number_and_keeps_its_pages() {
    let shop = Workshop::new();
    let issued = shop.book(&["issue", "reading-room", "--out", "sent", "--own", "own"], "2026-11-25");
    assert!(issued.err.contains("entered in the book as 2026-001"), "{}", issued.err);
    let page = issued.done();
    assert!(page.contains("Reference     2026-001\n") && page.contains("Gannetry Row Reading Room"), "{page}");
    for name in ["quote.html", "quote.txt", "quote.json", "costing.html", "costing.txt", "costing.json", "bench.txt"] {
        let kept = shop.book(&["show", "2026-001", "--page", name], "2031-05-05").done();
        let folder = if name.starts_with("quote") { "sent" } else { "own" };
        assert_eq!(kept, shop.shop.read(&format!("{folder}/2026-001/2026-001-{name}")), "{name}");
    }
    let said = shop.book(&["show", "2026-001", "--page", "quote.pdf"], "2026-11-26").refused();
    assert!(said.contains("has no quote.pdf") && said.contains(".html and .txt"), "{said}");
    // Whatever changes afterwards, what was sent stays.
    shop.shop.replace("shop/shop.toml", "wage = \"24.00\"", "wage = \"48.00\"");
    shop.shop.write("shop/commissions/reading-room.toml", "nonsense");
    assert_eq!(shop.book(&["show", "2026-001", "--page", "quote.txt"], "2031-05-05").done(), page);
    let whole = shop.json(&["show", "2026-001"], "2026-11-26");
    assert_eq!(whole["quotes"][0]["program"], env!("CARGO_PKG_VERSION"));
    assert_eq!(whole["quotes"][0]["catalogue"].as_str().unwrap().len(), 64);
    shop.sound();
}

#[test]
fn the_same_knots_have_the_same_digest_in_every_folder() {
    let digest = |shop: &Workshop| {
        shop.book(&["issue", "reading-room"], "2026-11-25").done();
        shop.json(&["show", "2026-001"], "2026-11-26")["quotes"][0]["catalogue"].as_str().unwrap().to_owned()
    };
    let (one, two, other) = (Workshop::new(), Workshop::new(), Workshop::new());
    let own = other.shop.read("shop/knots/collared-square.toml");
    other.shop.write("shop/knots/collared-square.toml", own.replacen("title = \"", "title = \"Old ", 1));
    let [one, two, other] = [one, two, other].map(|shop| digest(&shop));
    assert_eq!(one, two);
    assert_ne!(one, other);
}

#[test]
fn a_changed_quote_is_a_revision_that_says_what_changed() {
    let shop = Workshop::new();
    shop.order("fobs", "Ada Quay", 2);
    shop.book(&["issue", "fobs"], "2026-11-25").done();
    let said = shop.book(&["issue", "fobs"], "2026-11-26").refused();
    assert!(said.contains("nothing has changed since 2026-001 was issued"), "{said}");
    shop.order("fobs", "Ada Quay", 3);
    let issued = shop.book(&["issue", "fobs", "--note", "one more"], "2026-11-27");
    for words in ["changed: Fender key fob: 3 in place of 2.", "changed: Bench hours:", "as 2026-001, revision 1"] {
        assert!(issued.err.contains(words), "{words}: {}", issued.err);
    }
    let page = issued.done();
    assert!(page.contains("CHANGED SINCE THE LAST QUOTE\n- Fender key fob: 3 in place of 2."), "{page}");
    assert!(!page.contains("Bench hours"), "what is the maker's stays the maker's: {page}");
    let first = shop.book(&["show", "2026-001", "--page", "quote.txt", "--revision", "0"], "2026-11-28").done();
    assert!(first.contains("Reference     2026-001\n") && !first.contains("CHANGED"), "{first}");
    let whole = shop.json(&["show", "2026-001"], "2026-11-28");
    assert_eq!(whole["quotes"].as_array().unwrap().len(), 2);
    assert_eq!(whole["quotes"][1]["changes"][0], "Fender key fob: 3 in place of 2.");
    let maker = whole["quotes"][1]["maker_changes"].as_array().unwrap();
    assert!(maker.iter().any(|told| told.as_str().unwrap().starts_with("Margin:")), "{maker:?}");
    // What has lapsed can be issued again as it is.
    assert_eq!(whole["commission"]["valid_until"], "2026-12-27");
    let renewed = shop.book(&["issue", "fobs"], "2027-02-01");
    assert!(renewed.err.contains("changed: Valid until: 3 March 2027"), "{}", renewed.err);
    shop.sound();
}

/// A quote keeps the name and address it was sent to, and the book goes by the newest.
#[test]
fn a_client_who_moves_is_quoted_anew() {
    let shop = Workshop::new();
    let order = |address: &str, quantity: u32| {
        let text = format!(
            "[commission]\ntitle = \"Fobs\"\nclient = \"Ada Quay\"\naddress = [\"{address}\"]\n\n\
             [[item]]\ndesign = \"fender-fob\"\nquantity = {quantity}\n"
        );
        shop.shop.write("shop/commissions/fobs.toml", text);
    };
    order("1 Old Row", 1);
    let first = shop.book(&["issue", "fobs"], "2026-11-25").done();
    order("2 New Row", 2);
    let second = shop.book(&["issue", "fobs"], "2026-11-26").done();
    assert!(first.contains("1 Old Row") && second.contains("2 New Row") && !second.contains("1 Old Row"));
    let page = |revision: &str| {
        shop.book(&["show", "2026-001", "--page", "quote.txt", "--revision", revision], "2026-11-27").done()
    };
    assert_eq!((page("0"), page("1")), (first, second));
    let whole = shop.book(&["show", "2026-001"], "2026-11-27").done();
    assert!(whole.contains("2 New Row"), "{whole}");
    shop.book(&["forget", "Ada Quay", "--yes"], "2026-11-27").done();
    assert!(!page("0").contains("Old Row") && !page("1").contains("New Row"));
    shop.sound();
}

/// The clock of a workshop may stand wrong; numbers and order come from the book.
#[test]
fn a_clock_moved_back_gives_no_number_twice() {
    let shop = Workshop::with_orders(5);
    for (order, day) in [("order-0", "2027-01-05"), ("order-1", "2026-12-30"), ("order-2", "2027-01-02")] {
        shop.book(&["issue", order], day).done();
    }
    shop.book(&["issue", "order-3"], "2026-01-01").done();
    shop.book(&["issue", "order-4"], "2027-01-06").done();
    assert_eq!(shop.numbers(), ["2027-001", "2026-001", "2027-002", "2026-002", "2027-003"]);
    shop.sound();
}

#[test]
fn the_shop_says_how_numbers_are_written() {
    let shop = Workshop::with_orders(2);
    shop.shop.replace("shop/shop.toml", "number = \"{year}-{running}\"", "number = \"Q{running}/{year}\"");
    shop.book(&["issue", "order-0"], "2026-11-25").done();
    shop.shop.replace("shop/shop.toml", "[book]\nnumber = \"Q{running}/{year}\"", "");
    shop.book(&["issue", "order-1"], "2026-11-25").done();
    assert_eq!(shop.numbers(), ["Q001/2026", "2026-002"]);
    shop.book(&["show", "Q001/2026"], "2026-11-26").done();
    shop.shop.replace("shop/shop.toml", "[calendar]", "[book]\nnumber = \"{year}\"\n\n[calendar]");
    let said = shop.book(&["list"], "2026-11-26").refused();
    assert!(said.contains("`{year}` can't number quotes"), "{said}");
}

/// A year of a small shop: every number, and none twice.
#[test]
fn numbers_run_on_without_a_gap() {
    let shop = Workshop::with_orders(12);
    for at in 0..12 {
        shop.book(&["issue", &format!("order-{at}")], "2026-11-25").done();
    }
    assert_eq!(shop.numbers(), running(2026, 12));
}

#[test]
fn what_cannot_be_ready_in_time_is_told() {
    let shop = Workshop::new();
    let with = |key: &str| {
        format!(
            "[commission]\ntitle = \"Panels\"\nclient = \"Ada\"\n{key}\n\n[[item]]\ndesign = \"tideline-panel\"\nquantity = 9\n"
        )
    };
    shop.shop.write("shop/commissions/panels.toml", with("needed-by = 2026-12-01\npromised = 2026-12-04"));
    let issued = shop.book(&["issue", "panels"], "2026-11-25");
    // Nothing is at the bench before 30 November, and what leaves it after the 29th is not there by 1 December.
    assert!(issued.err.contains("The client needs it by 1 December 2026:"), "{}", issued.err);
    assert!(issued.err.contains("bench hours short"), "{}", issued.err);
    shop.book(&["mark", "2026-001", "accepted"], "2026-11-26").done();
    // The next one waits for it.
    shop.order("fobs", "Ada Quay", 1);
    let behind = shop.shop.run(&["quote", "fobs", "--on", "2026-11-26", "--shop", "shop"]);
    assert!(behind.err.contains("behind 1 accepted before"), "{}", behind.err);
    let queue = shop.json(&["queue"], "2026-11-26");
    let work = &queue["works"][0];
    assert_eq!((&work["number"], &work["promised"]), (&"2026-001".into(), &"2026-12-04".into()));
    assert_eq!(work["holds"], false);
    assert_ne!(work["hours_short"], "0");
    let page = shop.book(&["queue"], "2026-11-26").done();
    assert!(page.contains("days late") && page.lines().all(|line| line.chars().count() <= 80), "{page}");
}
