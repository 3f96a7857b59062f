//! Where papers go: the client's into one folder, the maker's own into another.

use std::path::{Path, PathBuf};

use reeve_book::BOOK_FILE;
use reeve_writing::{Staged, WritingError};

use crate::failure::{Failure, say};
use crate::output::not_into_a_shop;

/// Folders that papers are written into.
#[derive(Debug, Default, clap::Args)]
pub(crate) struct Papers {
    /// Write what the client gets (the quote as HTML, text and JSON) into a folder of its own in DIR
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
    /// Write what is for the maker's eyes (costing and bench sheet) into a folder of its own in DIR
    #[arg(long, value_name = "DIR")]
    own: Option<PathBuf>,
}

/// A page or document with the name of its file.
pub(crate) type Paper = (String, String);

/// Whether a paper is the client's: all others are the maker's own.
fn is_the_clients(name: &str) -> bool {
    ["quote.html", "quote.txt", "quote.json"].contains(&name)
}

impl Papers {
    /// Whether the client's papers are asked for, and the maker's own.
    pub(crate) fn asked_for(&self) -> (bool, bool) {
        (self.out.is_some(), self.own.is_some())
    }

    /// Refuses folders that papers can't go to, before anything is worked out.
    pub(crate) fn judge(&self, shop: Option<&Path>) -> Result<(), Failure> {
        for dir in [&self.out, &self.own].into_iter().flatten() {
            not_into_a_shop(dir, shop)?;
            not_a_name_of_the_programs(dir)?;
        }
        let (Some(out), Some(own)) = (&self.out, &self.own) else { return Ok(()) };
        let (out_is, own_is) = (reeve_shop::real_path(out), reeve_shop::real_path(own));
        if out_is.starts_with(&own_is) || own_is.starts_with(&out_is) {
            return Err(Failure::input(
                format!("--out {} and --own {} are not apart", out.display(), own.display()),
                "what the client gets and what is for your eyes only go into two folders, neither within the other",
            ));
        }
        Ok(())
    }

    /// Writes the papers beside their places: whatever can fail for want of room fails now.
    pub(crate) fn stage(&self, name: &str, papers: &[Paper]) -> Result<WaitingPapers, Failure> {
        let staged = |dir: &Option<PathBuf>, clients: bool| -> Result<Option<Staged>, Failure> {
            let Some(dir) = dir else { return Ok(None) };
            let papers = papers.iter().filter(|(paper, _)| is_the_clients(paper) == clients);
            let papers: Vec<(&str, &[u8])> = papers.map(|(paper, text)| (&**paper, text.as_bytes())).collect();
            Ok(Some(Staged::new(dir, &papers)?))
        };
        // Beside shop.toml a set can't be called like one of the shop's own folders.
        for dir in [&self.out, &self.own].into_iter().flatten() {
            not_into_a_shop(&dir.join(name), None)?;
        }
        let sets = [staged(&self.out, true)?, staged(&self.own, false)?];
        Ok(WaitingPapers { name: name.to_owned(), sets: sets.into_iter().flatten().collect() })
    }
}

/// Refuses folders that are called like what the program keeps for itself.
fn not_a_name_of_the_programs(dir: &Path) -> Result<(), Failure> {
    let name = dir.file_name().map(|name| name.to_string_lossy()).unwrap_or_default();
    if name.starts_with(BOOK_FILE) || name.starts_with(".reeve-") {
        return Err(Failure::input(
            format!("{} is a name that the program keeps for itself", dir.display()),
            "name another folder, for example to-send",
        ));
    }
    Ok(())
}

/// Papers that wait beside their places.
pub(crate) struct WaitingPapers {
    name: String,
    sets: Vec<Staged>,
}

impl WaitingPapers {
    /// Puts every set into its place and says where; the client's and the maker's own get the same name.
    pub(crate) fn put(self) -> Result<(), Failure> {
        const MOST: usize = 10_000;
        let mut left = self.sets;
        let mut last = None;
        for count in 1..=MOST {
            let name = if count == 1 { self.name.clone() } else { format!("{}-{count}", self.name) };
            if left.is_empty() {
                return Ok(());
            }
            if !left.iter().all(|set| set.fits(&name)) {
                continue;
            }
            let mut again = Vec::new();
            for set in left {
                match set.put(&name) {
                    Ok((paths, is_new)) => tell(&paths, is_new),
                    // Another run took the name a moment ago.
                    Err((set, refused)) if refused.error.kind() == std::io::ErrorKind::AlreadyExists => {
                        again.push(*set);
                        last = Some(refused);
                    }
                    Err((_, refused)) => return Err(refused.into()),
                }
            }
            left = again;
        }
        let full = || WritingError::new(Path::new(&self.name), std::io::ErrorKind::AlreadyExists.into());
        if left.is_empty() { Ok(()) } else { Err(last.unwrap_or_else(full).into()) }
    }
}

fn tell(paths: &[PathBuf], is_new: bool) {
    for path in paths {
        say(&format!("{} {}", if is_new { "wrote" } else { "unchanged, it is there already:" }, path.display()));
    }
}

/// A reference or number as the name of a file on any system: letters, digits, dots, hyphens and underscores.
pub(crate) fn file_name(words: &str) -> String {
    const MOST: usize = 60;
    let mut name = String::new();
    for letter in words.chars().filter(|letter| *letter != ',') {
        let fits = letter.is_alphanumeric() || ".-_".contains(letter);
        name.push(if fits { letter } else { '-' });
    }
    let name: String = name.trim_matches(['.', '-']).chars().take(MOST).collect();
    let stem = name.split('.').next().unwrap_or_default().to_lowercase();
    let is_a_device = ["con", "prn", "aux", "nul"].contains(&stem.as_str())
        || ["com", "lpt"].iter().any(|device| stem.len() == 4 && stem.starts_with(device));
    if name.is_empty() || is_a_device { format!("quote-{name}").trim_end_matches('-').to_owned() } else { name }
}

#[cfg(test)]
mod tests {
    use super::file_name;

    #[test]
    fn a_name_is_one_on_every_system() {
        for (words, name) in [
            ("reading-room", "reading-room"),
            ("2026-001", "2026-001"),
            ("2026-001, revision 1", "2026-001-revision-1"),
            ("Q/2026/7", "Q-2026-7"),
            ("../../etc/passwd", "etc-passwd"),
            ("a\\b:c*d?\"e\u{202e}\n", "a-b-c-d--e"),
            ("Öse 12 €", "Öse-12"),
            ("con", "quote-con"),
            ("COM1.x", "quote-COM1.x"),
            ("", "quote"),
            ("...", "quote"),
        ] {
            assert_eq!(file_name(words), name, "{words}");
        }
        assert_eq!(file_name(&"ö".repeat(500)).chars().count(), 60);
    }
}
