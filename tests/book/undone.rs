//! A slip is undone by a further entry, stays to be seen, and counts no more.

use crate::workshop::Workshop;

/// What was entered, by its number: kind, value, when it was undone and why.
fn entries(shop: &Workshop, on: &str) -> Vec<serde_json::Value> {
    shop.json(&["show", "2020-001"], on)["entries"].as_array().unwrap().clone()
}

fn made() -> Workshop {
    let shop = Workshop::with_orders(1);
    shop.book(&["issue", "order-0"], "2020-11-25").done();
    for (state, day) in [("accepted", "2020-11-26"), ("on-bench", "2020-11-27")] {
        shop.book(&["mark", "2020-001", state], day).done();
    }
    shop
}

#[test]
fn what_is_undone_is_struck_and_out_of_every_sum() {
    let (shop, plain) = (made(), made());
    let log = |shop: &Workshop, words: &[&str]| {
        shop.book(&[&["log", "2020-001"], words].concat(), "2020-11-27").done();
    };
    log(&shop, &["--minutes", "950", "--step", "Round sennit", "--note", "slow"]);
    shop.book(&["pay", "2020-001", "240.00"], "2020-11-27").done();
    log(&shop, &["--cord", "cotton-3-ecru=500"]);
    log(&shop, &["--bought", "Ring=100.00"]);
    for shop in [&shop, &plain] {
        log(shop, &["--minutes", "95", "--step", "Round sennit"]);
        shop.book(&["pay", "2020-001", "24.00"], "2020-11-27").done();
        log(shop, &["--cord", "cotton-3-ecru=5", "--bought", "Ring=1.00"]);
    }
    for (entry, told) in [
        ("4", "Entry 4 of 2020-001 is undone: 950 minutes, Round sennit."),
        ("5", "paid €240.00"),
        ("6", "500 m of cotton-3-ecru"),
        ("7", "bought for €100.00: Ring"),
    ] {
        let said = shop.book(&["undo", "2020-001", entry, "--why", "a slip of the pen"], "2020-11-28").done();
        assert!(said.replace('\u{a0}', " ").contains(told) && said.contains("counts no more"), "{said}");
    }
    let said = shop.book(&["undo", "2020-001", "4", "--why", "again"], "2020-11-28").refused();
    assert!(said.contains("entry 4 was undone already, on 2020-11-28: a slip of the pen"), "{said}");
    for shop in [&shop, &plain] {
        shop.book(&["mark", "2020-001", "finished"], "2020-11-28").done();
    }
    // Every view tells the same as that of a book in which the slips never were.
    for words in [
        &["list", "--as", "json"][..],
        &["queue", "--as", "json"],
        &["took", "2020-001", "--as", "json"],
        &["took", "--year", "2020", "--as", "json"],
        &["summary", "--as", "json"],
        &["summary"],
        &["took", "2020-001"],
        &["learn"],
    ] {
        assert_eq!(shop.book(words, "2020-11-29").out, plain.book(words, "2020-11-29").out, "{words:?}");
    }
    let (one, other) =
        (shop.json(&["show", "2020-001"], "2020-11-29"), plain.json(&["show", "2020-001"], "2020-11-29"));
    assert_eq!((&one["payments"], &one["commission"]["due"]), (&other["payments"], &other["commission"]["due"]));
    // And yet it stands there.
    let told = &entries(&shop, "2020-11-29")[3];
    assert_eq!(
        (&told["value"], &told["undone"], &told["why"]),
        (&"950".into(), &"2020-11-28".into(), &"a slip of the pen".into())
    );
    let page = shop.book(&["show", "2020-001"], "2020-11-29").done();
    assert!(page.contains("4    2020-11-27  undone: 950 minutes, Round sennit"), "{page}");
    assert!(page.contains("  slow. Undone on 28 November 2020: a slip of the pen"), "{page}");
    let page = shop.book(&["show", "2020-001", "--as", "html"], "2020-11-29").done();
    assert!(page.contains("<tr class=\"struck\">"), "{page}");
    shop.sound();
}

#[test]
fn a_mark_is_undone_as_long_as_nothing_rests_on_it() {
    let shop = made();
    let undo = |entry: &str| shop.book(&["undo", "2020-001", entry, "--why", "the wrong one"], "2020-11-28");
    assert!(undo("1").refused().contains("a quote that was sent"));
    assert!(undo("2").refused().contains("more was marked since it was accepted"));
    undo("3").done();
    let stands = |shop: &Workshop| shop.json(&["show", "2020-001"], "2020-11-28")["commission"]["state"].clone();
    assert_eq!(stands(&shop), "accepted");
    for state in ["on-bench", "finished", "delivered"] {
        shop.book(&["mark", "2020-001", state], "2020-11-28").done();
    }
    shop.book(&["pay", "2020-001", "24.00"], "2020-11-28").done();
    shop.book(&["mark", "2020-001", "paid"], "2020-11-28").done();
    // Paid stays paid.
    assert!(undo("7").refused().contains("the commission is marked paid"));
    undo("8").done();
    undo("7").done();
    assert_eq!(stands(&shop), "delivered");
    assert!(shop.book(&["mark", "2020-001", "paid"], "2020-11-28").refused().contains("24.00 is still owed"));
    assert!(undo("99").refused().contains("numbered from 1 to 8"));
    let said = shop.book(&["undo", "2020-001", "6", "--why", " "], "2020-11-28").refused();
    assert!(said.contains("nothing says why"), "{said}");
    let said = shop.book(&["undo", "2020-001", "6", "--why", "early"], "2020-11-20").refused();
    assert!(said.contains("entry 6 is of 2020-11-28"), "{said}");
    shop.sound();
}

#[test]
fn nothing_is_logged_on_what_was_called_off() {
    for state in ["cancelled", "declined"] {
        let shop = Workshop::with_orders(1);
        shop.book(&["issue", "order-0"], "2020-11-25").done();
        let timer = |words: &[&str]| shop.shop.run(&[&["book"], words, &["--shop", "shop"]].concat());
        timer(&["start", "2020-001"]).done();
        shop.book(&["mark", "2020-001", state], "2020-11-26").done();
        let told = format!("2020-001 is {state}: nothing is logged for it any more");
        for words in [&["--minutes", "5"][..], &["--cord", "cotton-3-ecru=5"], &["--bought", "Ring=1"]] {
            let said = shop.book(&[&["log", "2020-001"], words].concat(), "2020-11-27").refused();
            assert!(said.contains(&told) && said.contains("reeve book undo"), "{said}");
        }
        assert!(timer(&["stop"]).refused().contains(&told));
        timer(&["stop", "--drop"]).done();
        assert!(timer(&["start", "2020-001"]).refused().contains(&told));
        // Money may go back.
        shop.book(&["pay", "2020-001", "-5.00"], "2020-11-27").done();
        shop.book(&["undo", "2020-001", "2", "--why", "the wrong one"], "2020-11-27").done();
        shop.book(&["log", "2020-001", "--minutes", "5"], "2020-11-27").done();
        shop.sound();
    }
}
