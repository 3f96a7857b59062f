//! Words as they are typed into a shell.

use std::path::Path;

/// A path as a word that a shell reads as one: in quotes where it holds more than plain letters and signs.
pub(crate) fn as_typed(path: &Path) -> String {
    let word = path.display().to_string();
    let is_plain = |c: char| c.is_alphanumeric() || "-_./+=@%:,".contains(c);
    if !word.is_empty() && word.chars().all(is_plain) {
        return word;
    }
    format!("'{}'", word.replace('\'', "'\\''"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_is_one_word() {
        for (path, word) in [
            ("my-shop", "my-shop"),
            ("../shops/öse", "../shops/öse"),
            ("My Shop", "'My Shop'"),
            ("Ada's $HOME", "'Ada'\\''s $HOME'"),
            ("~", "'~'"),
        ] {
            assert_eq!(as_typed(Path::new(path)), word);
        }
    }
}
