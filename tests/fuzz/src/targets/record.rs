//! What is written of a library is read back as it was, whatever its words are.

use reeve_catalogue::Catalogue;
use reeve_host::{DescribedKnot, DescribedParameter, knot_text};
use reeve_reading::{Diagnostics, Fault, SourceText, read};
use reeve_shop::files::{library_file, library_text};

use crate::bytes::{Bytes, packed};
use crate::shop::is_sound;
use crate::{Target, holds as must};

pub(super) const TARGET: Target = Target { name: "record", holds, seeds, longest: 3_000, runs: 2_000 };

fn holds(bytes: &[u8]) {
    if let Some(text) = super::text(bytes) {
        is_sound("knots/plugins/tried/library.toml", text, library_file);
    }
    let mut bytes = Bytes(bytes);
    written(&mut bytes);
    described(&mut bytes);
}

fn written(bytes: &mut Bytes<'_>) {
    let (name, version, file) = (bytes.text(), bytes.text(), bytes.text());
    let digest = "0123456789abcdef".repeat(4);
    let desk = Diagnostics::new(SourceText::new("library.toml", library_text(&name, &version, &file, &digest)));
    let read = read(&desk, library_file);
    let faults = desk.into_faults();
    must::of_faults(&faults);
    if let Some(read) = read {
        // Blanks at either end of a text go, as in every file.
        let back = (&*read.name.value, &*read.version, &*read.file.value, &*read.sha256.value);
        assert_eq!(
            back,
            (&*name, version.trim(), file.trim(), &*digest),
            "the record is read otherwise than it was written"
        );
    }
}

fn described(bytes: &mut Bytes<'_>) {
    let library = bytes.text();
    let knot = knot(bytes);
    let text = knot_text(&library, &knot);
    let mut catalogue = Catalogue::default();
    let faults = catalogue.add(&SourceText::new("knot.toml", text));
    must::of_faults(&faults);
    if faults.iter().any(Fault::is_error) {
        return;
    }
    for read in catalogue.iter() {
        assert_eq!(read.name, knot.name, "a description names another knot than it says");
        assert!(read.is_worked_out_by(&library), "a description gives its knot to another library");
        assert_eq!(read.parameters.len(), knot.parameters.len(), "a parameter came from nowhere");
        must::of_knot(read);
    }
}

fn knot(bytes: &mut Bytes<'_>) -> DescribedKnot {
    let few = |bytes: &mut Bytes<'_>| bytes.small() % 4;
    let code = |bytes: &mut Bytes<'_>| u32::from(bytes.byte()) % 12;
    DescribedKnot {
        name: bytes.text().into_owned(),
        title: bytes.text().into_owned(),
        also: (0..few(bytes)).map(|_| bytes.text().into_owned()).collect(),
        kind: code(bytes),
        summary: bytes.text().into_owned(),
        on_fitting: bytes.flag(),
        joins: bytes.flag(),
        core_grows: bytes.flag(),
        give_shrinks: bytes.flag(),
        working: (code(bytes), code(bytes)),
        core: (code(bytes), code(bytes)),
        take_up_source: code(bytes),
        take_up_note: bytes.text().into_owned(),
        time_source: code(bytes),
        time_note: bytes.text().into_owned(),
        pull_s_per_m: bytes.float(),
        cautions: (0..few(bytes)).map(|_| bytes.text().into_owned()).collect(),
        parameters: (0..few(bytes)).map(|_| parameter(bytes)).collect(),
    }
}

fn parameter(bytes: &mut Bytes<'_>) -> DescribedParameter {
    DescribedParameter {
        name: bytes.text().into_owned(),
        about: bytes.text().into_owned(),
        unit: u32::from(bytes.byte()) % 4,
        whole: bytes.flag(),
        grows: bytes.flag(),
        least: bytes.float(),
        most: bytes.float(),
        usual: bytes.float(),
    }
}

fn seeds() -> Vec<Vec<u8>> {
    let digest = "0123456789abcdef".repeat(4);
    let record = library_text("woven", "1.0", "woven.so", &digest).into_bytes();
    let texts = |words: &[&str]| words.iter().flat_map(|word| packed(word)).collect::<Vec<u8>>();
    let described = [
        texts(&["woven", "1.0", "woven.so", "woven", "turks-head", "Turk's head"]),
        vec![1],
        texts(&["running turk's head"]),
        vec![1],
        texts(&["A woven ring."]),
        vec![1, 0, 1, 1, 1, 2, 0, 0, 0],
        texts(&["counted"]),
        vec![1],
        texts(&["timed"]),
        8.0_f64.to_le_bytes().to_vec(),
        vec![1],
        texts(&["Dry it flat."]),
        vec![1],
        texts(&["leads", "How many leads."]),
        vec![0, 1, 1],
        [3.0_f64, 25.0, 5.0].map(f64::to_le_bytes).concat(),
    ];
    vec![record, described.concat()]
}
