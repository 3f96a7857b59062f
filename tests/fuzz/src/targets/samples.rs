//! Samples: the hand that they make prices every commission of the shop; a sample more leaves every byte as it was.

use reeve_reading::Fault;
use reeve_shop::NewSample;
use reeve_shop::files::samples_file;

use super::text;
use crate::shop::{is_sound, with_file};
use crate::{Target, holds as must};

pub(super) const TARGET: Target = Target { name: "samples", holds, seeds, longest: 3_000, runs: 3_000 };

fn holds(bytes: &[u8]) {
    let Some(text) = text(bytes) else { return };
    let path = "knots/samples.toml";
    if !is_sound(path, text, samples_file) {
        return;
    }
    with_file(path, text, |place| {
        let opened = place.open();
        let (shop, faults) = (&opened.value, &opened.faults);
        must::of_faults(faults);
        one_more(shop, text, faults);
        if !faults.iter().any(Fault::is_error) {
            for stem in shop.commissions().value {
                place.order(&opened, &stem, text);
            }
        }
    });
}

/// A sample more is one more, and what is there keeps every byte. A list in brackets is another matter: it is opened.
fn one_more(shop: &reeve_shop::Shop, text: &str, faults: &[Fault]) {
    let before = shop.basis().unwrap().hand.given;
    match shop.with_sample(&sample()) {
        Ok(added) => {
            assert_eq!(added.hand.given, before + 1, "a sample more is not one more");
            let headed = text.lines().any(|line| line.starts_with("[[sample]]"));
            assert!(!headed || added.text.starts_with(text), "what was there is changed:\n{}", added.text);
        }
        Err(more) => {
            must::of_faults(&more);
            assert!(faults.iter().any(Fault::is_error), "a sound sample can't be added to a sound file: {more:?}");
        }
    }
}

fn sample() -> NewSample {
    NewSample {
        cord: "cotton-4-ecru".to_owned(),
        knot: "square".to_owned(),
        tied: 10,
        core: Some(2),
        rod: None,
        working: None,
        parameters: Vec::new(),
        before: "150 cm".to_owned(),
        after: "91 cm".to_owned(),
        made: "14 cm".to_owned(),
        minutes: Some(3.5),
        on: None,
        note: None,
    }
}

fn seeds() -> Vec<Vec<u8>> {
    SEEDS.iter().map(|seed| seed.as_bytes().to_vec()).collect()
}

const SEEDS: &[&str] = &[
    "",
    r#"
[[sample]]
cord = "cotton-4-ecru"
knot = "square"
tied = 10
core = 2
before = "150 cm"
after = "91 cm"
made = "14 cm"
minutes = 3.5
on = 2026-11-02
note = "on the new board"

[[sample]]
cord = "cotton-4-ecru"
knot = "square"
tied = 10
before = "150 cm"
after = "62 cm"
made = "14 cm"
minutes = 40
"#,
    r#"
[[sample]]
cord = "hemp-2"
knot = "gathering-wrap"
tied = 2
core = 8
parameters = { turns = 12 }
before = "2 m"
after = "120 cm"
made = "5 cm"

[[work]]
of = "2026-007"
base = 12.5
pull = 3.2
minutes = 19
"#,
    "sample = [\n  { cord = \"cotton-4-ecru\", knot = \"square\", tied = 4, before = \"60 cm\", after = \"36 cm\", made = \"56 mm\" }, # one\n]\n",
];
