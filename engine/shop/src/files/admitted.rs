//! `admitted.toml`: the maker's word on libraries of knots, kept for each user outside every shop.

use reeve_reading::{Flag, Name, Table, Text};

use super::library::is_digest;

/// A library that the maker admitted, by the digest of its file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AdmittedFile {
    /// What it called itself, for her to read.
    pub name: String,
    /// SHA-256 of its file, 64 hexadecimal digits.
    pub sha256: String,
    /// Whether it may run where the system does not hold it back.
    pub unguarded: bool,
}

/// Reads `admitted.toml`.
pub fn admitted_file(t: &mut Table<'_>) -> Option<Vec<AdmittedFile>> {
    let libraries = t.tables("library", "A library that was admitted.", |t| {
        let name = t.need("name", &Name, "What it calls itself.");
        let sha256 = t.need("sha256", &Text, "SHA-256 of its file.");
        let unguarded = t.maybe("unguarded", &Flag, "Whether it may run where the system does not hold it back.");
        let (name, sha256) = (name?, sha256?);
        is_digest(t, &sha256).then(|| AdmittedFile {
            name: name.value,
            sha256: sha256.value,
            unguarded: unguarded.is_some_and(|unguarded| unguarded.value),
        })
    });
    Some(libraries.into_iter().map(|library| library.value).collect())
}

/// The text of `admitted.toml`.
pub fn admitted_text(libraries: &[AdmittedFile]) -> String {
    let quoted = |text: &str| toml_edit::Value::from(text).to_string();
    let library = |library: &AdmittedFile| {
        let (name, sha256) = (quoted(&library.name), quoted(&library.sha256));
        let unguarded = if library.unguarded { "unguarded = true\n" } else { "" };
        format!("\n[[library]]\nname = {name}\nsha256 = {sha256}\n{unguarded}")
    };
    let head = "# Libraries of knots that you have admitted, by the SHA-256 of their files. No other is loaded, whatever a shop's\n\
                # folder says. Written by `reeve knots admit` and `reeve knots dismiss`.\n";
    head.to_owned() + &libraries.iter().map(library).collect::<String>()
}
