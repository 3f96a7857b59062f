//! The maker's word: which libraries she has admitted. It is kept for each user, outside every shop: a folder that comes
//! from elsewhere can say what it likes.

use std::path::{Path, PathBuf};

use reeve_host::Guards;
use reeve_reading::{Diagnostics, Fault, read};

use crate::files::{AdmittedFile, admitted_file, admitted_text};
use crate::folder::read_disk;

/// What the maker has admitted.
#[derive(Debug, Clone, Default)]
pub struct Admissions {
    /// The folder that her word is kept in; nothing where the system names none.
    dir: Option<PathBuf>,
    libraries: Vec<AdmittedFile>,
    faults: Vec<Fault>,
}

impl Admissions {
    /// The name of the file in its folder.
    pub const FILE: &'static str = "admitted.toml";

    /// Reads her word from the folder that it is kept in. A fault in the file is kept, and nothing is admitted by it.
    pub fn read(dir: Option<PathBuf>) -> Self {
        let Some(dir) = dir else { return Self::default() };
        let mut this = Self { libraries: Vec::new(), faults: Vec::new(), dir: Some(dir.clone()) };
        match read_disk(&dir.join(Self::FILE)) {
            Ok(None) => {}
            Err(fault) => this.faults.push(fault),
            Ok(Some(source)) => {
                let desk = Diagnostics::new(source);
                let libraries = read(&desk, admitted_file);
                this.faults = desk.into_faults();
                this.libraries = libraries.filter(|_| this.faults.is_empty()).unwrap_or_default();
            }
        }
        this
    }

    /// The folder that her word is kept in.
    pub fn dir(&self) -> Option<&Path> {
        self.dir.as_deref()
    }

    /// The faults of the file.
    pub fn faults(&self) -> &[Fault] {
        &self.faults
    }

    /// Whether a file of this digest was admitted, and how it may run.
    pub(crate) fn word_on(&self, sha256: &str) -> Option<Guards> {
        let library = self.libraries.iter().find(|library| library.sha256 == sha256)?;
        Some(if library.unguarded { Guards::Waived } else { Guards::Needed })
    }

    /// The text of the file with one library more, or the other word on it.
    pub fn with(&self, name: &str, sha256: &str, guards: Guards) -> String {
        let mut libraries = self.others(sha256);
        libraries.push(AdmittedFile {
            name: name.to_owned(),
            sha256: sha256.to_owned(),
            unguarded: guards == Guards::Waived,
        });
        libraries.sort_by(|one, two| (&one.name, &one.sha256).cmp(&(&two.name, &two.sha256)));
        admitted_text(&libraries)
    }

    /// The text of the file without the word on a file of this digest; `None` where there is no such word.
    pub fn without(&self, sha256: &str) -> Option<String> {
        self.word_on(sha256).map(|_| admitted_text(&self.others(sha256)))
    }

    fn others(&self, sha256: &str) -> Vec<AdmittedFile> {
        self.libraries.iter().filter(|library| library.sha256 != sha256).cloned().collect()
    }
}
