//! Libraries of computed knots: those that were admitted to a shop, and what admitting one takes.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use reeve_catalogue::{Catalogue, Compute, Knot};
use reeve_host::{Described, Library, Probed, Program, digest_of, knot_text, probe};
use reeve_reading::{Desk, Fault, Source, read};

use crate::files::{LIBRARY_FILE, TypedLibrary, library_file, library_text};
use crate::folder::{Folder, read_bytes};

/// Where a shop keeps its libraries, each in a folder of its own name.
pub const PLUGINS: &str = "knots/plugins";

/// A knot, and the file that describes it.
type KnotFile = (Arc<Knot>, Arc<Source>);

/// A library that was admitted.
#[derive(Debug, Clone)]
pub struct Admitted {
    /// The word it is dismissed by, which is also the name of its folder.
    pub name: String,
    /// Its own version.
    pub version: String,
    /// Its knots, each with its file.
    knots: Vec<KnotFile>,
    record: Arc<Source>,
    library: Arc<Library>,
}

/// Everything that is written when a library is admitted: a folder of its own.
#[derive(Debug, Clone)]
pub struct Admission {
    /// The folder that holds the libraries.
    pub dir: PathBuf,
    /// The name of the library, and of its folder there.
    pub name: String,
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
    pub fn probe(&self, program: &Program) -> Result<Probed, Fault> {
        probe(&self.path, &self.digest, program).map_err(|trouble| {
            let shown = self.path.display();
            Fault::without_place(format!("{shown} {trouble}"), trouble.remedy_before())
        })
    }

    /// What admitting it to a folder of libraries writes.
    pub(crate) fn admission(&self, dir: PathBuf, probed: &Probed, replaces: Option<String>) -> Admission {
        let Described { name, version, .. } = &probed.described;
        let ending = self.path.extension().and_then(|ending| ending.to_str()).unwrap_or("so");
        let file = format!("{name}.{ending}");
        let record = library_text(name, version, &file, &self.digest);
        let mut files = vec![(LIBRARY_FILE.to_owned(), record.into_bytes()), (file, self.bytes.clone())];
        files.extend(probed.knots.iter().map(|(knot, text)| (knot_file_name(&knot.name), text.clone().into_bytes())));
        Admission { dir, name: name.clone(), files, replaces }
    }
}

fn knot_file_name(knot: &str) -> String {
    format!("{knot}.toml")
}

/// Reads what was admitted to a shop and adds its knots to the catalogue. No library is loaded yet.
pub(crate) fn read_libraries(folder: &Folder, knots: &mut Catalogue, program: &Program) -> (Vec<Admitted>, Vec<Fault>) {
    let names = match folder.folders(PLUGINS) {
        Ok(names) => names,
        Err(fault) => return (Vec::new(), vec![fault]),
    };
    let mut faults = Vec::new();
    let read = names
        .iter()
        .filter_map(|name| read_library(folder, name, knots, program).map_err(|found| faults.extend(found)).ok());
    let admitted = read.collect();
    (admitted, faults)
}

fn read_library(folder: &Folder, name: &str, knots: &mut Catalogue, program: &Program) -> Result<Admitted, Vec<Fault>> {
    let below = format!("{PLUGINS}/{name}");
    let record = folder.read(&format!("{below}/{LIBRARY_FILE}")).map_err(|fault| vec![fault])?.ok_or_else(|| {
        let help = "delete the folder, or admit its library again";
        vec![Fault::without_place(format!("{below} holds no {LIBRARY_FILE}"), help)]
    })?;
    let typed = read_record(&record, name)?;
    let own = read_knots(folder, &below, name, knots)?;
    let file = folder.dir(&format!("{below}/{}", typed.file.value)).unwrap_or_default();
    let library = Arc::new(Library::new(name, &file, &typed.sha256.value, program));
    for (knot, _) in &own {
        knots.put(Arc::clone(knot));
    }
    Ok(Admitted { name: name.to_owned(), version: typed.version, knots: own, record, library })
}

fn read_record(record: &Arc<Source>, name: &str) -> Result<TypedLibrary, Vec<Fault>> {
    let desk = Desk::new(Arc::clone(record));
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
    let stems = folder.stems(below).map_err(|fault| vec![fault])?;
    let mut read = Vec::new();
    let mut faults = Vec::new();
    for stem in stems.into_iter().filter(|stem| knot_file_name(stem) != LIBRARY_FILE) {
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

    /// What works its knots out.
    pub(crate) fn by(&self) -> Arc<dyn Compute> {
        Arc::clone(&self.library) as Arc<dyn Compute>
    }

    /// What is wrong with it now: the file may have changed, and its knots may have been edited.
    pub(crate) fn check(&self) -> Option<Fault> {
        let refused = |words: String, remedy: String| {
            Fault::without_place(format!("{}: the library `{}` {words}", self.record.path, self.name), remedy)
        };
        let described = match self.library.describe() {
            Ok(described) => described,
            Err(trouble) => return Some(refused(trouble.to_string(), trouble.remedy(&self.name))),
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
