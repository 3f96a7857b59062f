//! A shop's own templates.

use reeve_tests::TestShop;

const QUOTE: [&str; 4] = ["quote", "reading-room", "--shop", "shop"];

#[test]
fn a_template_of_the_shop_takes_the_built_in_ones_place() {
    let place = TestShop::starter();
    place.write("shop/templates/quote.txt", "Dear {{ client | first }},\n{{ head.title }}.\n");
    assert_eq!(
        place.run(&QUOTE).done(),
        "Dear Gannetry Row Reading Room,\nSix plant hangers and a wall panel for the reading room.\n"
    );
    // Only that page is another one.
    let html = ["quote", "reading-room", "--shop", "shop", "--as", "html"];
    assert!(place.run(&html).done().contains("</html>"));
}

#[test]
fn a_template_of_the_shop_is_used_inside_the_built_in_ones() {
    let place = TestShop::starter();
    place.write("shop/templates/style.css", "body { color: rebeccapurple }\n");
    for command in ["quote", "costing", "bench"] {
        let page = place.run(&[command, "reading-room", "--shop", "shop", "--as", "html"]).done();
        assert!(page.contains("body { color: rebeccapurple }"), "{command}");
    }
}

#[test]
fn templates_may_include_others_of_the_shop() {
    let place = TestShop::starter();
    place.write("shop/templates/quote.txt", "{% include 'greeting.txt' %} {{ reference }}\n");
    place.write("shop/templates/greeting.txt", "Good day.");
    assert_eq!(place.run(&QUOTE).done(), "Good day. reading-room\n");
}

#[test]
fn the_demo_does_not_look_at_templates_around_it() {
    let place = TestShop::starter();
    place.write("shop/templates/quote.txt", "mine\n");
    assert_ne!(reeve_tests::run(&place.path("shop"), &["quote", "--demo"]).done(), "mine\n");
}

#[test]
fn a_template_that_fails_is_told_with_file_line_and_reason_and_nothing_is_written() {
    for (text, place_in_it, reason) in [
        ("Dear {{ client | first }},\n{{ head.titel }}\n", "line 2", "titel"),
        ("one\ntwo\n{{ reference | }}\n", "line 3", ""),
        ("{% if promised %}\nno end\n", "line", ""),
        ("{{ reference | backwards }}\n", "line 1", "backwards"),
        ("\n{% include 'nowhere.txt' %}\n", "line 2", "nowhere.txt"),
    ] {
        let shop = TestShop::starter();
        shop.write("shop/templates/quote.txt", text);
        let before = shop.tree();
        let said = shop.run(&["quote", "reading-room", "--shop", "shop", "--out", "out"]).refused();
        for words in ["shop/templates/quote.txt", place_in_it, reason] {
            assert!(said.contains(words), "{text}: {said}");
        }
        assert_eq!(shop.tree(), before, "{text}");
    }
}

#[test]
fn check_reads_the_templates_too() {
    let place = TestShop::starter();
    place.write("shop/templates/costing.html", "<p>\n{{ reference | backwards }}\n");
    let said = place.run(&["check", "--shop", "shop"]).refused();
    assert!(said.contains("shop/templates/costing.html") && said.contains("line 2"), "{said}");
}

#[test]
fn a_template_that_fails_stops_only_the_pages_it_makes() {
    let place = TestShop::starter();
    place.write("shop/templates/costing.txt", "{{ nothing.of.the.kind }}\n");
    place.run(&QUOTE).done();
    place.run(&["costing", "reading-room", "--shop", "shop"]).refused();
}
