//! `knots/plugins/NAME/library.toml`: what was admitted, written by the program and read by it.

use reeve_reading::{Name, Placed, Table, Text};

/// The name of the file in a library's folder.
pub const LIBRARY_FILE: &str = "library.toml";

/// A library as recorded.
#[derive(Debug, Clone, PartialEq)]
pub struct TypedLibrary {
    /// The word it is admitted and dismissed by.
    pub name: Placed<String>,
    /// Its own version, in its own words.
    pub version: String,
    /// The name of its file, beside this one.
    pub file: Placed<String>,
    /// SHA-256 of that file when it was admitted, 64 hexadecimal digits.
    pub sha256: Placed<String>,
}

/// Reads `library.toml`.
pub fn library_file(t: &mut Table<'_>) -> Option<TypedLibrary> {
    let library = t.need_table("library", "The library that was admitted.", |t| {
        let name = t.need("name", &Name, "The word it is admitted and dismissed by.");
        let version = t.need("version", &Text, "Its own version.");
        let file = t.need("file", &Text, "The name of its file, beside this one.");
        let sha256 = t.need("sha256", &Text, "SHA-256 of that file when it was admitted.");
        let library = TypedLibrary { name: name?, version: version?.value, file: file?, sha256: sha256? };
        is_sound(t, &library).then_some(library)
    });
    library.map(|library| library.value)
}

const HELP: &str = "admit the library again";

fn is_sound(t: &Table<'_>, library: &TypedLibrary) -> bool {
    let file = &library.file;
    let plain = !file.value.contains(['/', '\\']) && !file.value.starts_with('.');
    if !plain {
        t.refuse_at(
            file.span.clone(),
            format!("`{}` is not the name of a file", file.value),
            "a file beside this one",
            HELP,
        );
    }
    is_digest(t, &library.sha256) && plain
}

/// Holds that a text is a digest.
pub(super) fn is_digest(t: &Table<'_>, digest: &Placed<String>) -> bool {
    let hexadecimal = |digit: char| digit.is_ascii_digit() || ('a'..='f').contains(&digit);
    let whole = digest.value.len() == 64 && digest.value.chars().all(hexadecimal);
    if !whole {
        t.refuse_at(digest.span.clone(), "this is not a SHA-256", "64 digits from 0 to 9 and a to f", HELP);
    }
    whole
}

/// The text of `library.toml`.
pub fn library_text(name: &str, version: &str, file: &str, sha256: &str) -> String {
    let quoted = |text: &str| toml_edit::Value::from(text).to_string();
    format!(
        "# Written by `reeve knots admit`. The library is only loaded while its file has this digest, and for a maker who has\n\
         # admitted it herself; `reeve knots dismiss` takes it out again.\n\n[library]\nname = {}\nversion = {}\nfile = {}\nsha256 = {}\n",
        quoted(name),
        quoted(version),
        quoted(file),
        quoted(sha256)
    )
}
