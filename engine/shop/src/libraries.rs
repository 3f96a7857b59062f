//! Libraries of computed knots: those that were admitted to a shop, and what admitting one takes.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use reeve_catalogue::{Catalogue, Compute, Knot, Question, Taken, Unknown};
use reeve_host::{Described, Guards, Library, Probed, Program, digest_of, knot_text, probe};
use reeve_measure::Remedied;
use reeve_reading::{Diagnostics, Fault, Severity, SourceText, read};

use crate::admissions::Admissions;
use crate::files::{LIBRARY_FILE, TypedLibrary, library_file, library_text};
use crate::folder::{Folder, Listed, read_bytes};

/// Where a shop keeps its libraries, each in a folder of its own name.
pub const PLUGINS: &str = "knots/plugins";
/// Where a library's folder keeps its knots: apart from its other files, so that no name of a knot is one of theirs.
const KNOTS: &str = "knots";
/// What a library's own file is called there, but for the ending.
const LIBRARY: &str = "library";

/// A knot, and the file that describes it.
type KnotFile = (Arc<Knot>, Arc<SourceText>);

/// A library that stands in a shop.
#[derive(Debug, Clone)]
pub struct Admitted {
    /// The word it is dismissed by, which is also the name of its folder.
    pub name: String,
    /// Its own version.
    pub version: String,
    /// SHA-256 of its file, as its record says.
    pub digest: String,
    /// Its knots, each with its file.
    knots: Vec<KnotFile>,
    record: Arc<SourceText>,
    runs: MayStart,
}

/// Whether a library's process may be started.
#[derive(Debug, Clone)]
enum MayStart {
    /// The maker has admitted it.
    Admitted(Arc<Library>),
    /// She has not, whoever brought it.
    Unknown(Arc<NotAdmitted>),
}

/// In place of a library that the maker has not admitted: it works nothing out, and says what to do.
#[derive(Debug)]
struct NotAdmitted {
    remedy: String,
}

const NOT_ADMITTED: &str = "is not loaded, as you have not admitted it";

impl Compute for NotAdmitted {
    fn take(&self, _: &Question<'_>) -> Result<Taken, Unknown> {
        Err(Unknown::Trouble { words: NOT_ADMITTED.to_owned(), remedy: self.remedy.clone() })
    }
}

/// Everything that is written when a library is admitted: a folder of its own.
#[derive(Debug, Clone)]
pub struct Admission {
    /// The folder that holds the libraries.
    pub dir: PathBuf,
    /// The name of the library, and of its folder there.
    pub name: String,
    /// SHA-256 of its file: what the maker's word is on.
    pub digest: String,
    /// The files, by name.
    pub files: Vec<(String, Vec<u8>)>,
    /// The version that stands there now and makes room.
    pub replaces: Option<String>,
}

/// A file that may be a library, read once.
#[derive(Debug, Clone)]
pub struct Candidate {
    path: PathBuf,
    bytes: Vec<u8>,
    /// SHA-256 of what was read.
    pub digest: String,
}

impl Candidate {
    /// Reads a file.
    ///
    /// # Errors
    /// A fault when it can't be read or is far too large for a library.
    pub fn read(path: &Path) -> Result<Self, Fault> {
        let bytes = read_bytes(path)?;
        Ok(Self { path: path.to_owned(), digest: digest_of(&bytes), bytes })
    }

    /// Probes it: in processes of their own, and only while the file is what was read.
    ///
    /// # Errors
    /// A fault when it can't be loaded.
    pub fn probe(&self, program: &Program, needs: Guards) -> Result<Probed, Fault> {
        probe(&self.path, &self.digest, program, needs).map_err(|trouble| {
            let shown = self.path.display();
            Fault::without_place(format!("{shown} {trouble}"), trouble.remedy())
        })
    }

    /// What admitting it to a folder of libraries writes.
    pub(crate) fn admission(&self, dir: PathBuf, probed: &Probed, replaces: Option<String>) -> Admission {
        let Described { name, version, .. } = &probed.described;
        let file = format!("{LIBRARY}.{}", std::env::consts::DLL_EXTENSION);
        let record = library_text(name, version, &file, &self.digest);
        let mut files = vec![(LIBRARY_FILE.to_owned(), record.into_bytes()), (file, self.bytes.clone())];
        let knot_file = |name: &str| format!("{KNOTS}/{}", knot_file_name(name));
        files.extend(probed.knots.iter().map(|(knot, text)| (knot_file(&knot.name), text.clone().into_bytes())));
        Admission { dir, name: name.clone(), digest: self.digest.clone(), files, replaces }
    }
}

fn knot_file_name(knot: &str) -> String {
    format!("{knot}.toml")
}

/// Who may run a library, and what runs it.
pub(crate) struct Runner<'a> {
    pub(crate) program: &'a Program,
    pub(crate) admissions: &'a Admissions,
}

/// Reads the libraries of a shop and adds their knots to the catalogue. No library is loaded yet.
pub(crate) fn read_libraries(
    folder: &Folder,
    knots: &mut Catalogue,
    running: &Runner<'_>,
) -> (Vec<Admitted>, Vec<Fault>) {
    let names = match folder.folders(PLUGINS) {
        Ok(names) => names,
        Err(fault) => return (Vec::new(), vec![fault]),
    };
    if names.is_empty() {
        return (Vec::new(), Vec::new());
    }
    let mut faults = running.admissions.faults().to_vec();
    let read = names.iter().filter_map(|name| read_library(folder, name, knots, running, &mut faults));
    let admitted = read.collect();
    (admitted, faults)
}

fn read_library(
    folder: &Folder,
    name: &str,
    knots: &mut Catalogue,
    running: &Runner<'_>,
    faults: &mut Vec<Fault>,
) -> Option<Admitted> {
    let below = format!("{PLUGINS}/{name}");
    let (record, typed) = record_of(folder, name).map_err(|found| faults.extend(found)).ok()?;
    let file = folder.dir(&format!("{below}/{}", typed.file.value)).unwrap_or_default();
    let digest = typed.sha256.value;
    let word = running.admissions.word_on(&digest);
    let runs = if let Some(needs) = word {
        MayStart::Admitted(Arc::new(Library::new(name, &file, &digest, running.program, needs)))
    } else {
        let remedy = admit_remedy(folder, &file, name);
        let title = format!("{}: the library `{name}` {NOT_ADMITTED}", record.path);
        faults.push(Fault { severity: Severity::Warning, ..Fault::without_place(title, remedy.clone()) });
        MayStart::Unknown(Arc::new(NotAdmitted { remedy }))
    };
    let own = read_knots(folder, &format!("{below}/{KNOTS}"), name, knots);
    // One that nobody admitted stops nothing: it is left out.
    let told = |fault: Fault| if word.is_some() { fault } else { Fault { severity: Severity::Warning, ..fault } };
    let own = own.map_err(|found| faults.extend(found.into_iter().map(told))).ok()?;
    for (knot, _) in &own {
        knots.put(Arc::clone(knot));
    }
    Some(Admitted { name: name.to_owned(), version: typed.version, digest, knots: own, record, runs })
}

/// What the maker can do about a library that a shop brought along.
fn admit_remedy(folder: &Folder, file: &Path, name: &str) -> String {
    let shop = folder.root().filter(|root| root != Path::new(".")).map(|root| format!(" --shop {}", root.display()));
    let (file, shop) = (file.display(), shop.unwrap_or_default());
    format!(
        "if you trust who made it, `reeve knots admit {file}{shop}` shows what it declares and takes it in; \
         `reeve knots dismiss {name}{shop}` takes it out"
    )
}

/// The record of a library's folder.
pub(crate) fn record_of(folder: &Folder, name: &str) -> Result<(Arc<SourceText>, TypedLibrary), Vec<Fault>> {
    let below = format!("{PLUGINS}/{name}");
    let record = folder.read(&format!("{below}/{LIBRARY_FILE}")).map_err(|fault| vec![fault])?.ok_or_else(|| {
        let help = "delete the folder, or admit its library again";
        vec![Fault::without_place(format!("{below} holds no {LIBRARY_FILE}"), help)]
    })?;
    let typed = read_record(&record, name)?;
    Ok((record, typed))
}

fn read_record(record: &Arc<SourceText>, name: &str) -> Result<TypedLibrary, Vec<Fault>> {
    let desk = Diagnostics::new(Arc::clone(record));
    let typed = read(&desk, library_file);
    if let Some(typed) = &typed
        && typed.name.value != name
    {
        let title = format!("the library `{}` stands in the folder of `{name}`", typed.name.value);
        desk.refuse(typed.name.span.clone(), title, "", "delete the folder, and admit the library again");
    }
    typed.filter(|_| desk.is_sound()).ok_or_else(|| desk.into_faults())
}

/// The knots of a library's folder, none of which may be called like one that is here already.
fn read_knots(folder: &Folder, below: &str, library: &str, known: &Catalogue) -> Result<Vec<KnotFile>, Vec<Fault>> {
    let Listed { names, mut faults } = folder.stems(below);
    // The program writes this folder: a stray file in it is nobody's knot, and keeps no knot away.
    faults.retain(Fault::is_error);
    let mut read = Vec::new();
    for stem in names {
        let path = format!("{below}/{}", knot_file_name(&stem));
        let source = match folder.read(&path) {
            Ok(Some(source)) => source,
            Ok(None) => continue,
            Err(fault) => {
                faults.push(fault);
                continue;
            }
        };
        let mut alone = Catalogue::default();
        faults.extend(alone.add(&source));
        for knot in alone.iter() {
            faults.extend(clash(known, knot, library));
            read.push((Arc::clone(knot), Arc::clone(&source)));
        }
    }
    if faults.is_empty() { Ok(read) } else { Err(faults) }
}

/// Why a knot of a library can't join the knots that are here: one of them is called so already.
pub(crate) fn clash(known: &Catalogue, knot: &Knot, library: &str) -> Option<Fault> {
    let (word, other) = known.clash(knot, library)?;
    let whose = match &other.computed {
        Some(computed) => format!("is one of the library `{}`", computed.library),
        None => "is here already".to_owned(),
    };
    Some(Fault::without_place(
        format!("the library `{library}` has a knot called `{word}`, and {} {whose}", other.title),
        match &other.computed {
            Some(computed) => format!("keep one: `reeve knots dismiss {}`, or not this one", computed.library),
            None => "ask its author for another name".to_owned(),
        },
    ))
}

impl Admitted {
    /// The text of its record: its name, its version and the digest of its file.
    pub(crate) fn record(&self) -> &str {
        &self.record.text
    }

    /// Whether the maker has admitted it.
    pub fn is_admitted(&self) -> bool {
        matches!(self.runs, MayStart::Admitted(_))
    }

    /// What works its knots out.
    pub(crate) fn by(&self) -> Arc<dyn Compute> {
        match &self.runs {
            MayStart::Admitted(library) => Arc::clone(library) as Arc<dyn Compute>,
            MayStart::Unknown(nothing) => Arc::clone(nothing) as Arc<dyn Compute>,
        }
    }

    /// What is wrong with it now: the file may have changed, and its knots may have been edited. Nothing is loaded that was
    /// not admitted.
    pub(crate) fn check(&self) -> Option<Fault> {
        let MayStart::Admitted(library) = &self.runs else { return None };
        let refused = |words: String, remedy: String| {
            Fault::without_place(format!("{}: the library `{}` {words}", self.record.path, self.name), remedy)
        };
        let described = match library.describe() {
            Ok(described) => described,
            Err(trouble) => return Some(refused(trouble.to_string(), trouble.remedy_of(&self.name))),
        };
        let as_described = |(knot, source): &&KnotFile| {
            let told = described.knots.iter().find(|told| told.name == knot.name);
            told.is_some_and(|told| knot_text(&self.name, told) == source.text)
        };
        let edited = self.knots.iter().find(|knot| !as_described(knot))?;
        let title = format!("{} is not as the library `{}` describes it", edited.1.path, self.name);
        Some(Fault::without_place(
            title,
            format!(
                "a knot of your own belongs in knots/; admit the library again, or `reeve knots dismiss {}`",
                self.name
            ),
        ))
    }
}
