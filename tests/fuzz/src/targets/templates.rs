//! A template of the shop: it is read, with the marks that its budget is counted by, or refused at a place inside it.
//!
//! It is not laid out here: what that may take is bounded by a process of its own, and tried end to end.

use reeve_pages::{ENGLISH, OwnTemplate, Phrases, TemplateError, load, tag_at, used_by};

use crate::Target;

pub(super) const TARGET: Target = Target { name: "templates", holds, seeds, longest: 2_000, runs: 600 };

const NAMES: [&str; 2] = ["quote.html", "quote.txt"];

fn holds(bytes: &[u8]) {
    let Some(text) = super::text(bytes) else { return };
    for name in NAMES {
        let path = format!("templates/{name}");
        let own = [OwnTemplate { name: name.to_owned(), path: path.clone(), text: text.to_owned() }];
        assert!(used_by(name, &own).contains(&name.to_owned()), "a page is made with its own template");
        if let Err(fault) = load(&own, &Phrases::of_language(ENGLISH)) {
            of_fault(&fault, &path, text);
        }
    }
    for at in (0..=text.len()).filter(|at| text.is_char_boundary(*at)) {
        if let Some((tag, _)) = tag_at(text, at) {
            assert!(tag.start <= tag.end && text.get(tag.clone()).is_some(), "{tag:?} is no part of the text");
        }
    }
}

fn of_fault(fault: &TemplateError, path: &str, text: &str) {
    assert!(!fault.reason.trim().is_empty(), "a fault without words");
    // A template that is cut off may break one that includes it.
    let (Some(line), true) = (fault.line, fault.file == path) else { return };
    // Behind the last end of a line there is one line more.
    let lines = text.split('\n').count();
    assert!((1..=lines).contains(&line), "line {line} of {lines}: {}", fault.reason);
    let column = fault.column.unwrap_or(1);
    let chars = text.split('\n').nth(line - 1).unwrap_or_default().chars().count();
    assert!((1..=chars + 1).contains(&column), "column {column} of {chars}, line {line}: {}", fault.reason);
}

fn seeds() -> Vec<Vec<u8>> {
    let mut seeds = super::files("templates", ".txt");
    seeds.extend(super::files("templates", ".html"));
    seeds.retain(|seed| seed.len() < 2_000);
    let small = [
        "{% for line in lines %}{{ line.text | left(width=20) }}\n{% endfor %}",
        "{% if taxed %}{{ sums }}{% elif client %}{% else %}{% raw %}{{ no }}{% endraw %}{% endif %}",
        "{# a remark #}{% set x = [1, 2] %}{{- x[0] ~ 'a' -}}",
        "{% include \"totals.txt\" %}{{ 'ä' | times(n=3) }}{{ nothing",
    ];
    seeds.extend(small.map(|text| text.as_bytes().to_vec()));
    seeds
}
