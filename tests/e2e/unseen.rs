//! Characters that drive a terminal or turn a line round never reach one, nor a page.

use reeve_tests::{Ran, TestShop};

/// Clears the screen, sets the title, rings, turns the line round, and hides.
const NASTY: [&str; 6] = ["\u{1b}[2J", "\u{1b}]0;x\u{7}", "\u{9b}31m", "\u{202e}", "\u{2066}", "\u{200b}"];

fn is_nasty(c: char) -> bool {
    let control = c.is_control() && c != '\n' && c != '\t';
    control || matches!(c, '\u{200b}' | '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

#[track_caller]
fn clean(ran: &Ran) {
    for said in [&ran.out, &ran.err] {
        assert!(!said.contains(is_nasty), "{:?}", said.lines().find(|line| line.contains(is_nasty)));
    }
}

#[test]
fn nothing_unseen_is_said_of_files_that_hold_it() {
    for nasty in NASTY {
        let place = TestShop::starter();
        for at in ["designs", "commissions", "knots", "templates"] {
            let text = format!("a{nasty} = \"{nasty}\"\n[piece]\nname = \"{nasty}\"\n{nasty}\n");
            place.write(&format!("shop/{at}/own.toml"), &text);
            place.write(&format!("shop/{at}/own{nasty}.toml"), text);
        }
        place.write("shop/templates/bench.txt", format!("{{{{ {nasty} }}}}"));
        for words in [
            &["check"][..],
            &["takeoff", "own"],
            &["takeoff", "none"],
            &["quote", "own"],
            &["compare"],
            &["weigh"],
            &["mix"],
            &["knots", "list"],
            &["book", "list"],
            &["bench", "reading-room"],
        ] {
            let ran = place.run(&[words, &["--shop", "shop"]].concat());
            assert_ne!(ran.code, None, "{words:?}");
            clean(&ran);
        }
    }
}

#[test]
fn what_a_client_reads_refuses_it_at_its_place() {
    for (file, key) in [
        ("shop/commissions/reading-room.toml", "client = \""),
        ("shop/shop.toml", "name = \""),
        ("shop/designs/fender-fob.toml", "name = \""),
    ] {
        let place = TestShop::starter();
        place.replace(file, key, &format!("{key}\\u202e"));
        let ran = place.run(&["check", "--shop", "shop"]);
        clean(&ran);
        let err = ran.refused();
        assert!(
            err.contains("holds a character that can't be seen, U+202E") && err.contains(&format!("--> {file}:")),
            "{err}"
        );
    }
}

#[test]
fn words_of_the_command_line_refuse_it() {
    let place = TestShop::starter();
    for nasty in NASTY {
        let word = format!("x{nasty}");
        for words in [
            &["quote", &word][..],
            &["quote", "--as", &word],
            &[&word],
            &["check", "--shop", &word],
            &["book", "enquire", "reading-room", "--note", &word, "--shop", "shop"],
        ] {
            let ran = place.run(words);
            clean(&ran);
            assert!(ran.refused().contains("holds a character that can't be seen"), "{words:?}");
        }
    }
    assert_eq!(place.run(&["book", "list", "--shop", "shop"]).code, Some(2), "something was entered");
}

#[test]
fn a_page_and_a_result_hold_none_of_it_even_from_a_template() {
    let place = TestShop::starter();
    place.write("shop/templates/quote.txt", "Dear client\u{1b}[2J\u{202e}\n");
    let ran = place.run(&["quote", "reading-room", "--shop", "shop", "--out", "out"]);
    clean(&ran);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let papers: Vec<String> = place
        .tree()
        .into_iter()
        .filter(|(at, _)| at.starts_with("out"))
        .map(|(_, bytes)| String::from_utf8(bytes).unwrap())
        .collect();
    assert!(papers.iter().any(|paper| paper.contains("Dear client")), "{papers:?}");
    for out in papers {
        clean(&Ran { code: None, out, err: String::new() });
    }
}

#[test]
fn what_a_spreadsheet_would_run_is_text_in_a_table() {
    let place = TestShop::starter();
    place.replace("shop/commissions/reading-room.toml", "title = \"", "title = \"=1+1 ");
    place.replace("shop/commissions/reading-room.toml", "client = \"", "client = \"@SUM(A1) ");
    place.run(&["book", "enquire", "reading-room", "--shop", "shop"]).done();
    let book = place.run(&["book", "list", "--shop", "shop", "--as", "csv"]).done();
    assert!(book.contains(",'@SUM(A1) ") && book.contains(",'=1+1 "), "{book}");
}
