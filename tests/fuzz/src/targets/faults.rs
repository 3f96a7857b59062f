//! Faults of any text at any place: they can be shown on a terminal, and showing them ends soon.

use std::time::{Duration, Instant};

use reeve_reading::{Fault, Severity, SourceText};

use crate::bytes::{Bytes, packed};
use crate::{Target, holds as must};

pub(super) const TARGET: Target = Target { name: "faults", holds, seeds, longest: 4_000, runs: 2_000 };

/// Many times what showing one of the longest texts takes, on a busy machine.
const LONGEST: Duration = Duration::from_secs(2);

fn holds(bytes: &[u8]) {
    let mut bytes = Bytes(bytes);
    let severity = if bytes.flag() { Severity::Error } else { Severity::Warning };
    let (start, length) = (bytes.number(), bytes.number());
    let [path, title, label, help] = [(); 4].map(|()| bytes.text().into_owned());
    let source = SourceText::new(path, bytes.rest());
    let place = Some((source, start..start + length));
    let fault = Fault { severity, title, label, help, place };
    let begun = Instant::now();
    must::shown(&fault.render(false));
    let coloured = fault.render(true);
    let took = begun.elapsed();
    assert!(took < LONGEST, "showing it took {took:?}");
    must::shown(&without_colours(&coloured));
    fault.line_and_column();
}

/// The text without what sets colours (ECMA-48, select graphic rendition), which is all that the printer may add.
fn without_colours(text: &str) -> String {
    let mut plain = String::new();
    let mut rest = text;
    while let Some(at) = rest.find("\u{1b}[") {
        let (before, after) = rest.split_at(at);
        let order = &after[2..];
        let end = order.find(|c: char| !c.is_ascii_digit() && c != ';').unwrap_or(order.len());
        plain.push_str(before);
        match order[end..].strip_prefix('m') {
            Some(left) => rest = left,
            None => return plain + after,
        }
    }
    plain + rest
}

fn seeds() -> Vec<Vec<u8>> {
    let seed = |span: [u8; 4], source: &str| {
        let texts = ["designs/leaf.toml", "`tims` is no key", "did you mean `times`?", "keys known here: times"];
        [vec![1], span.to_vec(), texts.iter().flat_map(|text| packed(text)).collect(), source.as_bytes().to_vec()]
            .concat()
    };
    vec![
        seed([0, 9, 0, 4], "[[step]]\ntims = 3\nknot = \"square\"\n"),
        seed([0, 0, 0, 9], "\ta\u{e9} = \"\u{7d50}\u{3073}\" # x\r\nb\n\n"),
        seed([1, 0, 255, 255], ""),
    ]
}
