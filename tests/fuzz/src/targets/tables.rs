//! Tables for spreadsheets: whatever the words of a row are, a reader of RFC 4180 reads as many rows and fields as were
//! written, and no field begins as a formula does.

use reeve_office::{DesignRow, Offered};
use reeve_pages::compare::{Condition, column_words, compare_csv, sort_rows};
use reeve_shop::{Admissions, Choice, Folder, Shop};

use crate::Target;
use crate::bytes::{Bytes, packed};
use crate::shop::no_program;

pub(super) const TARGET: Target = Target { name: "tables", holds, seeds, longest: 1_000, runs: 3_000 };

thread_local! {
    static ROW: DesignRow = row();
}

fn row() -> DesignRow {
    let shop = Shop::open(Folder::Starter, no_program(), Admissions::default()).value;
    let found = shop.sizes("curlew-hanger", &Choice::default(), true).value;
    let (found, basis) = (&found[0], shop.basis().unwrap());
    let (alone, basis) = reeve_costing::whatif::with_changes(&found.piece, &found.take_off, basis, &[]).unwrap();
    let (design, title) = (found.name.as_str(), found.piece.title.as_str());
    DesignRow::of(&Offered { design, size: None, title, market: None, weekly: Some(3) }, &alone, &basis.rates)
}

/// A condition, a column to sort by, and the words of each row.
fn holds(bytes: &[u8]) {
    let mut bytes = Bytes(bytes);
    let condition = bytes.text().into_owned();
    let columns: Vec<&str> = column_words().collect();
    let sort = columns[bytes.small() % columns.len()];
    let mut rows = Vec::new();
    while !bytes.0.is_empty() {
        let size = bytes.flag().then(|| bytes.text().into_owned());
        rows.push(DesignRow {
            design: bytes.text().into(),
            title: bytes.text().into(),
            size,
            ..ROW.with(Clone::clone)
        });
    }
    match condition.parse::<Condition>() {
        Ok(condition) => rows.iter().for_each(|row| {
            condition.holds(row);
        }),
        Err(no) => assert!(!no.to_string().is_empty()),
    }
    sort_rows(&mut rows, sort);
    let text = compare_csv(&rows).unwrap();
    let records = records(&text);
    assert_eq!(records.len(), rows.len() + 1, "{text:?}");
    for record in &records {
        assert_eq!(record.len(), columns.len(), "{text:?}");
        for field in record {
            assert!(
                field.parse::<f64>().is_ok() || !field.starts_with(['=', '+', '-', '@', '\t', '\r']),
                "{field:?} is a formula"
            );
        }
    }
}

/// The fields of a text as RFC 4180 has them, read without the library that wrote it.
fn records(text: &str) -> Vec<Vec<String>> {
    let mut records = vec![vec![String::new()]];
    let mut inside = false;
    let mut rest = text.chars().peekable();
    while let Some(c) = rest.next() {
        let record = records.last_mut().unwrap();
        match c {
            '"' if inside && rest.peek() == Some(&'"') => record.last_mut().unwrap().push(rest.next().unwrap()),
            '"' => inside = !inside,
            ',' if !inside => record.push(String::new()),
            '\n' if !inside => records.push(vec![String::new()]),
            c => record.last_mut().unwrap().push(c),
        }
    }
    // The last line ends as every other.
    assert_eq!(records.pop(), Some(vec![String::new()]), "{text:?}");
    records
}

fn seeds() -> Vec<Vec<u8>> {
    let words = |words: &[&str]| words.iter().flat_map(|word| packed(word)).collect::<Vec<u8>>();
    vec![
        [words(&["hours<3"]), vec![2, 0], words(&["curlew-hanger", "A hanger"])].concat(),
        [words(&["per-hour>=30%"]), vec![5, 1], words(&["long", "=1+1", "a \"b\", c"]), vec![0], words(&["x", "y\nz"])]
            .concat(),
        [words(&["design=leaf"]), vec![0]].concat(),
    ]
}
