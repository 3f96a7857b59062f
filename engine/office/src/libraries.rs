//! Libraries of computed knots, taken into a shop on the maker's word, and taken out again.

use std::path::{Path, PathBuf};

use reeve_host::{Guards, ProbeFinding, Probed, Program};
use reeve_reading::{Fault, nearest};
use reeve_shop::{Admission, Admissions, Candidate, PLUGINS, Shop};

use crate::error::OfficeError;

/// A library that was probed and found good.
#[derive(Debug)]
pub struct GoodLibrary {
    /// Its file.
    pub candidate: Candidate,
    /// What the probe found.
    pub probed: Probed,
}

impl GoodLibrary {
    /// Probes a file; every finding is a fault.
    ///
    /// # Errors
    /// When it can't be read or loaded, or is not good.
    pub fn probe(file: &Path, program: &Program, guards: Guards) -> Result<Self, OfficeError> {
        let candidate = Candidate::read(file)?;
        let probed = candidate.probe(program, guards)?;
        if probed.findings.is_empty() {
            return Ok(Self { candidate, probed });
        }
        let library = &probed.described.name;
        let fault = |finding: &ProbeFinding| {
            let title = match &finding.knot {
                Some(knot) => format!("the knot `{knot}` of the library `{library}`: {}", finding.words),
                None => format!("the library `{library}`: {}", finding.words),
            };
            Fault::without_place(title, "its author must mend it; it was not taken in, and nothing was written")
        };
        Err(OfficeError::Input(probed.findings.iter().map(fault).collect()))
    }

    /// What taking it into a shop would write.
    ///
    /// # Errors
    /// When a knot of it is called like another one, or the maker's word can't be kept.
    pub fn admission(&self, shop: &Shop) -> Result<Admission, OfficeError> {
        let admission =
            shop.admission(&self.candidate, &self.probed).map_err(|faults| OfficeError::Input(faults.into()))?;
        word_folder(shop.admissions())?;
        Ok(admission)
    }

    /// Takes it into a shop that is held: the maker's word first, then the library; yields where it stands.
    ///
    /// # Errors
    /// As [`Self::admission`], and when a file can't be written.
    pub fn admit(&self, shop: &Shop, guards: Guards) -> Result<PathBuf, OfficeError> {
        let admission = self.admission(shop)?;
        let word = shop.admissions().with(&admission.name, &admission.digest, guards);
        keep_word(word_folder(shop.admissions())?, &word)?;
        let files: Vec<(PathBuf, Vec<u8>)> =
            admission.files.into_iter().map(|(name, bytes)| (name.into(), bytes)).collect();
        Ok(reeve_writing::exchange(&admission.dir, &admission.name, &files)?)
    }
}

/// The folder of the maker's word, which must be readable before anything is added to it.
///
/// # Errors
/// When it has faults, or the system names no place for it.
pub fn word_folder(admissions: &Admissions) -> Result<&Path, OfficeError> {
    if !admissions.faults().is_empty() {
        return Err(OfficeError::Input(admissions.faults().to_vec().into()));
    }
    let help = "set HOME, or XDG_DATA_HOME; libraries that you admit are kept there, outside every shop";
    admissions.dir().ok_or_else(|| OfficeError::input("the system does not tell where your home is", help))
}

fn keep_word(folder: &Path, word: &str) -> Result<(), OfficeError> {
    reeve_writing::replace(folder, &[(Admissions::FILE, word.as_bytes())])?;
    Ok(())
}

/// Takes a library out of a shop that is held.
///
/// # Errors
/// When no such library was admitted, or its folder can't be taken away.
pub fn dismiss(shop: &Shop, library: &str) -> Result<(), OfficeError> {
    let known = shop.library_names()?;
    let folder = shop.library_folder().filter(|_| known.iter().any(|name| name == library));
    let folder = folder.ok_or_else(|| not_admitted(library, &known))?;
    take_back(shop, library, &known)?;
    Ok(reeve_writing::remove(&folder, library)?)
}

fn not_admitted(library: &str, known: &[String]) -> OfficeError {
    let near = nearest(library, known.iter().map(String::as_str)).map(|near| format!("did you mean `{near}`? "));
    let holds = if known.is_empty() {
        format!("{PLUGINS}/ is empty")
    } else {
        format!("{PLUGINS}/ holds: {}", known.join(", "))
    };
    OfficeError::input(format!("no library called `{library}` was admitted"), near.unwrap_or_default() + &holds)
}

/// Takes the maker's word on a library back, unless another one here has the same file.
fn take_back(shop: &Shop, library: &str, known: &[String]) -> Result<(), OfficeError> {
    let Some(digest) = shop.library_digest(library) else { return Ok(()) };
    let others = known.iter().filter(|name| *name != library);
    let mut others = others.filter_map(|name| shop.library_digest(name));
    let admissions = shop.admissions();
    match (admissions.without(&digest), admissions.dir()) {
        (Some(word), Some(folder)) if others.all(|other| other != digest) => keep_word(folder, &word),
        _ => Ok(()),
    }
}
