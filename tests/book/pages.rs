//! The pages of the book, kept as they were last looked at.

use reeve_tests::{check_kept, kept_names, snapshots};

use crate::workshop::Workshop;

/// A page: its name, its command, and the forms that it has.
type Page = (&'static str, &'static [&'static str], &'static [&'static str]);

const PAGES: &[Page] = &[
    ("list", &["list"], &["text", "html", "csv", "json"]),
    ("list-quoted", &["list", "--stands", "quoted", "--client", "gannetry"], &["text"]),
    ("show", &["show", "2026-001"], &["text", "html", "json"]),
    ("quote", &["show", "2026-001", "--page", "quote.txt"], &["text"]),
    ("queue", &["queue"], &["text", "html", "json"]),
    ("took", &["took", "2026-002"], &["text", "html", "json"]),
    ("took-in-all", &["took", "--year", "2026"], &["text", "json"]),
    ("summary", &["summary", "--year", "2026"], &["text", "html", "csv", "json"]),
];

/// A few months of a workshop.
fn workshop() -> Workshop {
    let shop = Workshop::new();
    shop.order("fobs", "Ada Quay", 4);
    shop.order("later", "Bram Sluice", 40);
    let did: &[(&str, &[&str])] = &[
        ("2026-10-01", &["issue", "reading-room"]),
        ("2026-10-02", &["issue", "fobs"]),
        ("2026-10-05", &["enquire", "thwickling", "--note", "for a birthday"]),
        ("2026-10-06", &["mark", "2026-002", "accepted"]),
        ("2026-10-06", &["pay", "2026-002", "30.00", "--note", "deposit"]),
        ("2026-10-07", &["mark", "2026-002", "on-bench"]),
        ("2026-10-07", &["log", "2026-002", "--minutes", "62", "--step", "Round sennit", "--note", "slow start"]),
        ("2026-10-08", &["log", "2026-002", "--minutes", "48", "--bought", "Split rings=2.40"]),
        ("2026-10-08", &["mark", "2026-002", "finished"]),
        ("2026-10-09", &["mark", "2026-002", "delivered"]),
        ("2026-10-20", &["issue", "later"]),
        ("2026-10-21", &["mark", "2026-003", "accepted", "--note", "by letter"]),
    ];
    for (day, words) in did {
        shop.book(words, day).done();
    }
    shop.shop.replace("shop/commissions/reading-room.toml", "quantity = 6", "quantity = 5");
    shop.book(&["issue", "reading-room"], "2026-10-22").done();
    shop
}

fn ending(form: &str) -> &str {
    if form == "text" { "txt" } else { form }
}

#[test]
fn pages_of_the_book_are_as_kept() {
    let shop = workshop();
    let folder = snapshots().join("book");
    let mut names = Vec::new();
    for (name, words, forms) in PAGES {
        for form in *forms {
            let bare = words.contains(&"--page");
            let words = if bare { words.to_vec() } else { [words, &["--as", form][..]].concat() };
            let page = shop.book(&words, "2026-10-25").done();
            let file = format!("{name}.{}", ending(form));
            if *form == "text" {
                assert!(page.lines().all(|line| line.chars().count() <= 80), "{page}");
                assert!(
                    page.lines().all(|line| line.trim_end() == line) && page.is_ascii() | page.contains('\u{20ac}'),
                    "{page}"
                );
            }
            if *form == "html" {
                for element in ["table", "tr", "th", "td", "section", "dl"] {
                    let opened =
                        page.matches(&format!("<{element}>")).count() + page.matches(&format!("<{element} ")).count();
                    assert_eq!(opened, page.matches(&format!("</{element}>")).count(), "{element} in {file}");
                }
            }
            // What tells this program's knots from others changes with them.
            check_kept(&folder.join(&file), &without_digest(&page));
            names.push(file);
        }
    }
    let strays: Vec<String> = kept_names(&folder).into_iter().filter(|name| !names.contains(name)).collect();
    assert!(strays.is_empty(), "kept, but of no page: {strays:?}");
}

fn without_digest(page: &str) -> String {
    let is_digest = |word: &str| word.len() == 64 && word.chars().all(|c| c.is_ascii_hexdigit());
    page.split('"').map(|word| if is_digest(word) { "…" } else { word }).collect::<Vec<_>>().join("\"")
}
