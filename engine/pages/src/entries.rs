//! The entries of a file of phrases. The build takes the built-in files apart by this, before the program runs.

/// The phrases and terms of a file, each by its name with its whole text. One begins where a line begins with a letter or
/// `-`, and ends where the next one or a comment begins.
pub(crate) fn entries(text: &str) -> Vec<(&str, &str)> {
    let mut entries = Vec::new();
    let mut open: Option<(&str, usize)> = None;
    let mut at = 0;
    for line in text.split_inclusive('\n') {
        let begins = line.starts_with(|first: char| first.is_ascii_alphabetic() || first == '-');
        if begins || line.starts_with('#') {
            entries.extend(open.take().map(|(id, from)| (id, &text[from..at])));
        }
        if begins {
            open = line.split_once('=').map(|(id, _)| (id.trim_end(), at));
        }
        at += line.len();
    }
    entries.extend(open.map(|(id, from)| (id, &text[from..])));
    entries
}
