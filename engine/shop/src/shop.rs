//! A shop, opened: names resolved, faults gathered.

use std::path::{Path, PathBuf};
use std::sync::{Arc, OnceLock};

use reeve_catalogue::{Catalogue, Knot, TIGHTENED, knot_file, shape_name, table_name};
use reeve_costing::basis::Basis;
use reeve_costing::hand::{Hand, Sample, TimedWork};
use reeve_costing::rates::Rates;
use reeve_costing::store::{Cord, Fitting};
use reeve_host::{Probed, Program, digest_of};
use reeve_reading::{Diagnostics, Fault, SourceText, Table, nearest, read};
use toml_edit::TomlError;

use crate::adding::{Learnt, NewSample};
use crate::admissions::Admissions;
use crate::answer::Answer;
use crate::files::{cords_file, fittings_file, shop_file};
use crate::folder::{Folder, Listed, SHOP_FILE, read_disk};
use crate::libraries::{Admission, Admitted, Candidate, PLUGINS, Runner, clash, read_libraries, record_of};
use crate::resolve::Names;
use crate::samples::{Samples, read_samples};

pub(crate) const DESIGNS: &str = "designs";
pub(crate) const COMMISSIONS: &str = "commissions";
pub(crate) const KNOTS: &str = "knots";
pub(crate) const TEMPLATES: &str = "templates";
/// The folder of cords and fittings.
pub(crate) const STORE: &str = "store";
const CORDS_FILE: &str = "store/cords.toml";
const FITTINGS_FILE: &str = "store/fittings.toml";
/// Kept in the knots folder, but not a knot.
const SAMPLES: &str = "samples";
const SAMPLES_FILE: &str = "knots/samples.toml";

/// A shop, opened.
#[derive(Debug)]
pub struct Shop {
    folder: Folder,
    catalogue: Catalogue,
    basis: Option<Basis>,
    cords: Vec<Arc<Cord>>,
    fittings: Vec<Arc<Fitting>>,
    /// The stems of all designs, once they have been listed, and what is wrong with their folder.
    listed_designs: OnceLock<(Arc<[String]>, Vec<Fault>)>,
    samples: Samples,
    program: Program,
    admissions: Admissions,
    libraries: Vec<Admitted>,
    /// Every file that opening read, by its path in the shop.
    texts: Vec<(String, Arc<SourceText>)>,
    /// Whether nothing that opening read stops the work.
    sound: bool,
    /// Whether store and knots could all be read: else a name may be unknown without being misspelt.
    names_sound: bool,
}

/// The commission that `--demo` prices.
pub const DEMO_COMMISSION: &str = "reading-room";
/// The design that `--demo` takes off.
pub const DEMO_DESIGN: &str = "curlew-hanger";

/// A sample, added to its file's text.
#[derive(Debug, Clone)]
pub struct Added {
    /// The folder of the file; `None` for the starter shop inside the program, which can't be written.
    pub dir: Option<PathBuf>,
    /// The file's whole text.
    pub text: String,
    /// The lines added.
    pub lines: String,
    /// The sample.
    pub sample: Sample,
    /// Its place among the samples.
    pub at: usize,
    /// The hand that it makes.
    pub hand: Hand,
}

impl Added {
    /// The name of the file in its folder.
    pub const FILE: &'static str = "samples.toml";
}

/// The samples' file with what finished work says.
#[derive(Debug, Clone)]
pub struct Relearnt {
    /// The folder of the file; `None` for the starter shop inside the program, which can't be written.
    pub dir: Option<PathBuf>,
    /// The file's whole text.
    pub text: String,
    /// Whether that is another text than there was.
    pub changes: bool,
    /// All works in it.
    pub works: Vec<TimedWork>,
    /// The hand that it makes.
    pub hand: Hand,
}

impl Shop {
    /// Opens a shop: reads its rates, store and knots, and says what is wrong with them. It is only read from then on.
    ///
    /// `program` is what is started when a knot must be worked out by one of the shop's libraries, and `admissions` says which
    /// of them may be.
    pub fn open(folder: Folder, program: Program, admissions: Admissions) -> Answer<Self> {
        let shop = Self {
            folder,
            catalogue: Catalogue::embedded(),
            basis: None,
            cords: Vec::new(),
            fittings: Vec::new(),
            listed_designs: OnceLock::new(),
            samples: Samples::default(),
            program,
            admissions,
            libraries: Vec::new(),
            texts: Vec::new(),
            sound: true,
            names_sound: true,
        };
        Opening { shop, faults: Vec::new() }.read()
    }

    pub(crate) fn folder(&self) -> &Folder {
        &self.folder
    }

    /// The knots at hand: the program's and the shop's own.
    pub fn catalogue(&self) -> &Catalogue {
        &self.catalogue
    }

    /// What tells the knots at hand from others: SHA-256 over every knot's bytes, then over the record of each library.
    ///
    /// The same knots have the same digest in whatever folder the shop stands.
    pub fn knots_digest(&self) -> String {
        let mut bytes = self.catalogue.bytes();
        for library in &self.libraries {
            bytes.extend(library.record().as_bytes());
        }
        digest_of(&bytes)
    }

    /// What tells everything that opening read from what it was: SHA-256 over the texts of rates, store, samples and own knots
    /// with their names and lengths, the digest of the knots at hand, and which libraries are admitted.
    pub fn opening_digest(&self) -> String {
        let mut bytes = Vec::new();
        let mut part = |part: &[u8]| {
            bytes.extend_from_slice(&(part.len() as u64).to_be_bytes());
            bytes.extend_from_slice(part);
        };
        for (name, source) in &self.texts {
            part(name.as_bytes());
            part(source.text.as_bytes());
        }
        part(self.knots_digest().as_bytes());
        for library in &self.libraries {
            part(library.record().as_bytes());
            part(&[u8::from(library.is_admitted())]);
        }
        digest_of(&bytes)
    }

    /// The shop's rates; `None` when `shop.toml` has faults.
    pub fn rates(&self) -> Option<&Rates> {
        self.basis.as_ref().map(|basis| &basis.rates)
    }

    /// The rates, and the hand that the shop's samples show; `None` when `shop.toml` has faults.
    pub fn basis(&self) -> Option<&Basis> {
        self.basis.as_ref()
    }

    /// Finished works, and steps of them, that the shop has learnt from.
    pub fn works(&self) -> &[TimedWork] {
        &self.samples.works
    }

    /// What learning from the order book would make of the shop; nothing is written.
    ///
    /// # Errors
    /// Every fault of the file as it would be, places in it included.
    pub fn with_learnt(&self, learnt: &Learnt) -> Result<Relearnt, Vec<Fault>> {
        let source = self.folder.read(SAMPLES_FILE).map_err(|fault| vec![fault])?;
        let (path, text) = source.as_ref().map_or((SAMPLES_FILE, ""), |source| (&source.path, &source.text));
        let new = learnt.laid_into(text).map_err(|error| vec![not_toml(path, &error)])?;
        // The place of a fault can't be looked up in a file that was not written.
        let shown = SourceText::new(format!("{path} (not written)"), new.clone());
        let (samples, faults) = read_samples(&shown, &self.names());
        let (Some(rates), false) = (self.rates(), faults.iter().any(Fault::is_error)) else { return Err(faults) };
        let hand = Hand::with_works(&samples.all, &samples.works, rates.bench.pace);
        let changes = new != text;
        Ok(Relearnt { dir: self.folder.dir(KNOTS), text: new, changes, works: samples.works, hand })
    }

    /// Where the order book stands; `None` inside the program.
    pub fn book_folder(&self) -> Option<PathBuf> {
        self.folder.root()
    }

    /// The names of all cords of the store.
    pub fn cord_names(&self) -> Vec<&str> {
        self.cords.iter().map(|cord| cord.name.as_str()).collect()
    }

    /// Where a sample stands: its file and line.
    pub fn place_of_sample(&self, at: usize) -> &str {
        self.samples.places.get(at).map_or(SAMPLES_FILE, String::as_str)
    }

    /// What adding a sample would make of the shop; nothing is written.
    ///
    /// # Errors
    /// Every fault of the file as it would be, places in it included.
    pub fn with_sample(&self, new: &NewSample) -> Result<Added, Vec<Fault>> {
        let source = self.folder.read(SAMPLES_FILE).map_err(|fault| vec![fault])?;
        let (path, text) = match &source {
            Some(source) => (source.path.as_str(), source.text.as_str()),
            None => (SAMPLES_FILE, ""),
        };
        let text = new.added_to(text).map_err(|error| vec![not_toml(path, &error)])?;
        // The place of a fault can't be looked up in a file that was not written.
        let shown = SourceText::new(format!("{path} (not written)"), text.clone());
        let (samples, faults) = read_samples(&shown, &self.names());
        let (Some(sample), Some(rates), false) = (samples.all.last(), self.rates(), faults.iter().any(Fault::is_error))
        else {
            return Err(faults);
        };
        let hand = Hand::with_works(&samples.all, &samples.works, rates.bench.pace);
        Ok(Added {
            dir: self.folder.dir(KNOTS),
            text,
            lines: new.lines(),
            sample: sample.clone(),
            at: samples.all.len() - 1,
            hand,
        })
    }

    /// The libraries that stand in the shop, in order of name.
    pub fn libraries(&self) -> &[Admitted] {
        &self.libraries
    }

    /// The folder of libraries; `None` inside the program.
    pub fn library_folder(&self) -> Option<PathBuf> {
        self.folder.dir(PLUGINS)
    }

    /// The name of each library that stands there, even of one that can't be read.
    ///
    /// # Errors
    /// A fault when the folder can't be read.
    pub fn library_names(&self) -> Result<Vec<String>, Fault> {
        self.folder.folders(PLUGINS)
    }

    /// The maker's word on libraries.
    pub fn admissions(&self) -> &Admissions {
        &self.admissions
    }

    /// The digest in the record of a library that stands there, if it can be read.
    pub fn library_digest(&self, name: &str) -> Option<String> {
        record_of(&self.folder, name).ok().map(|(_, typed)| typed.sha256.value)
    }

    /// What admitting a library that was probed writes; nothing is written yet.
    ///
    /// # Errors
    /// A fault for each of its knots that is called like one of another library, of the program or of the shop.
    pub fn admission(&self, candidate: &Candidate, probed: &Probed) -> Result<Admission, Vec<Fault>> {
        let dir = self.library_folder().ok_or_else(|| {
            let help = "start a shop with `reeve begin DIR`, and name it with --shop";
            vec![Fault::without_place("the starter shop is inside the program and can't take libraries in", help)]
        })?;
        let name = &probed.described.name;
        let clash = |(knot, _): &(Arc<Knot>, String)| clash(&self.catalogue, knot, name);
        let faults: Vec<Fault> = probed.knots.iter().filter_map(clash).collect();
        if !faults.is_empty() {
            return Err(faults);
        }
        let replaces = self.libraries.iter().find(|known| known.name == *name).map(|known| known.version.clone());
        Ok(candidate.admission(dir, probed, replaces))
    }

    /// The stems of all designs.
    pub fn designs(&self) -> Answer<Arc<[String]>> {
        let (stems, faults) = self.listed_designs();
        Answer { value: Arc::clone(stems), faults: faults.clone() }
    }

    fn listed_designs(&self) -> &(Arc<[String]>, Vec<Fault>) {
        self.listed_designs.get_or_init(|| {
            let Listed { names, faults } = self.folder.stems(DESIGNS);
            (names.into(), faults)
        })
    }

    /// The stems of all commissions.
    pub fn commissions(&self) -> Answer<Vec<String>> {
        let Listed { names, faults } = self.folder.stems(COMMISSIONS);
        Answer { value: names, faults }
    }

    /// The shop's own templates: name, path shown, text.
    pub fn templates(&self) -> Answer<Vec<(String, String, String)>> {
        let Listed { names, mut faults } = self.folder.names(TEMPLATES, "");
        let mut templates = Vec::new();
        for name in names {
            match self.folder.read(&format!("{TEMPLATES}/{name}")) {
                Ok(Some(source)) => templates.push((name, source.path.clone(), source.text.clone())),
                Ok(None) => {}
                Err(fault) => faults.push(fault),
            }
        }
        Answer { value: templates, faults }
    }

    /// Whether a design that could not be taken off must have faults of its own.
    pub fn can_tell(&self) -> bool {
        self.names_sound && self.basis.is_some()
    }

    /// Whether nothing that opening read stops the work.
    pub(crate) fn is_sound(&self) -> bool {
        self.sound
    }

    pub(crate) fn names(&self) -> Names<'_> {
        Names { cords: &self.cords, fittings: &self.fittings, catalogue: &self.catalogue, sound: self.names_sound }
    }

    /// The stem and text of a file named by its stem or its path.
    pub(crate) fn locate(
        &self,
        sub: &str,
        what: &str,
        word: &str,
        faults: &mut Vec<Fault>,
    ) -> Option<(String, Arc<SourceText>)> {
        let found =
            if is_path(word) { read_disk(Path::new(word)) } else { self.folder.read(&format!("{sub}/{word}.toml")) };
        let stem =
            Path::new(word).file_stem().map_or_else(|| word.to_owned(), |stem| stem.to_string_lossy().into_owned());
        let missing = match found {
            Ok(Some(source)) => return Some((stem, source)),
            Ok(None) => self.not_there(sub, what, word, &stem),
            Err(fault) => fault,
        };
        faults.push(missing);
        None
    }

    fn not_there(&self, sub: &str, what: &str, word: &str, stem: &str) -> Fault {
        let known = self.folder.stems(sub).names;
        let near = nearest(stem, known.iter().map(String::as_str)).map(|near| format!("did you mean `{near}`? "));
        let help =
            if known.is_empty() { format!("{sub}/ is empty") } else { format!("{sub}/ holds: {}", known.join(", ")) };
        let title =
            if is_path(word) { format!("there is no file {word}") } else { format!("no {what} is called `{word}`") };
        Fault::without_place(title, near.unwrap_or_default() + &help)
    }
}

/// A file that is there and can't be read.
struct Unread;

/// A shop that is being opened, and what is wrong with it so far.
struct Opening {
    shop: Shop,
    faults: Vec<Fault>,
}

impl Opening {
    fn read(mut self) -> Answer<Shop> {
        let rates = self.read_needed(SHOP_FILE, shop_file);
        let before = self.faults.len();
        self.shop.cords = self.read_needed(CORDS_FILE, cords_file).unwrap_or_default();
        self.shop.fittings = self.read_optional(FITTINGS_FILE, fittings_file).unwrap_or_default();
        self.read_knots();
        self.shop.names_sound = self.faults.len() == before;
        self.shop.samples = self.read_samples();
        let Samples { all, works, .. } = &self.shop.samples;
        self.shop.basis = rates.map(|rates| Basis { hand: Hand::with_works(all, works, rates.bench.pace), rates });
        self.shop.sound = !self.faults.iter().any(Fault::is_error);
        Answer { value: self.shop, faults: self.faults }
    }

    fn read_knots(&mut self) {
        let running = Runner { program: &self.shop.program, admissions: &self.shop.admissions };
        let (libraries, faults) = read_libraries(&self.shop.folder, &mut self.shop.catalogue, &running);
        self.shop.libraries = libraries;
        self.faults.extend(faults);
        let Listed { names, faults } = self.shop.folder.stems(KNOTS);
        self.faults.extend(faults);
        for stem in names.into_iter().filter(|stem| stem != SAMPLES) {
            if let Ok(Some(source)) = self.file(&format!("{KNOTS}/{stem}.toml")) {
                self.faults.extend(self.shop.catalogue.add(&source));
            }
        }
        self.read_tightened();
        self.faults.extend(self.shop.catalogue.join_parts());
        // A knot of the shop's own may be worked out by a library as well.
        for library in &self.shop.libraries {
            self.shop.catalogue.join_library(&library.name, &library.by());
        }
    }

    /// Reads what tightening left beside the shop's own knots: tables now, shapes when they are drawn.
    fn read_tightened(&mut self) {
        let folder = format!("{KNOTS}/{TIGHTENED}");
        let own: Vec<String> = self
            .shop
            .catalogue
            .added()
            .iter()
            .filter(|knot| knot.path.is_some() && knot.table.is_none())
            .map(|k| k.name.clone())
            .collect();
        for name in own {
            if let Ok(Some(table)) = self.file(&format!("{folder}/{}", table_name(&name))) {
                self.faults.extend(self.shop.catalogue.add_table(&table));
            }
            if let Ok(Some(shape)) = self.file(&format!("{folder}/{}", shape_name(&name))) {
                self.shop.catalogue.add_shape(&name, shape);
            }
        }
    }

    fn read_samples(&mut self) -> Samples {
        let Some(source) = self.read_if_there(SAMPLES_FILE) else { return Samples::default() };
        let (samples, faults) = read_samples(&source, &self.shop.names());
        self.faults.extend(faults);
        samples
    }

    fn read_needed<T>(&mut self, path: &str, reader: impl FnOnce(&mut Table<'_>) -> Option<T>) -> Option<T> {
        let source = self.file(path).ok()?;
        if source.is_none() {
            let missing = || {
                let help = "`reeve begin` writes a starter shop to copy it from";
                Fault::without_place(format!("{path} is missing"), help)
            };
            self.faults.push(self.shop.folder.misnamed(path).unwrap_or_else(missing));
        }
        self.read_source(source?, reader)
    }

    fn read_optional<T>(&mut self, path: &str, reader: impl FnOnce(&mut Table<'_>) -> Option<T>) -> Option<T> {
        let source = self.read_if_there(path)?;
        self.read_source(source, reader)
    }

    /// A file that need not be there.
    fn read_if_there(&mut self, path: &str) -> Option<Arc<SourceText>> {
        let source = self.file(path).ok()?;
        if source.is_none() {
            self.faults.extend(self.shop.folder.misnamed(path));
        }
        source
    }

    fn read_source<T>(
        &mut self,
        source: Arc<SourceText>,
        reader: impl FnOnce(&mut Table<'_>) -> Option<T>,
    ) -> Option<T> {
        let desk = Diagnostics::new(source);
        let value = read(&desk, reader);
        self.faults.extend(desk.into_faults());
        value
    }

    /// A file of the shop, or nothing where there is none; that it can't be read is told.
    fn file(&mut self, path: &str) -> Result<Option<Arc<SourceText>>, Unread> {
        let source = self.shop.folder.read(path).map_err(|fault| {
            self.faults.push(fault);
            Unread
        })?;
        self.shop.texts.extend(source.iter().map(|source| (path.to_owned(), Arc::clone(source))));
        Ok(source)
    }
}

pub(crate) fn is_path(word: &str) -> bool {
    word.contains(['/', '\\']) || Path::new(word).extension().is_some_and(|ending| ending == "toml")
}

/// A file that the samples can't be laid into.
fn not_toml(path: &str, error: &TomlError) -> Fault {
    Fault::without_place(format!("{path} is not TOML: {}", error.message()), "mend it first")
}

/// Reads one knot file, wherever it stands, with all its faults, and the table that tightening left beside it.
///
/// It may be made of knots of the program.
pub fn read_knot(path: &Path) -> (Option<Arc<Knot>>, Vec<Fault>) {
    let source = match read_disk(path) {
        Ok(Some(source)) => source,
        Ok(None) => {
            return (
                None,
                vec![Fault::without_place(
                    format!("there is no file {}", path.display()),
                    "name a knot file, such as knots/my-knot.toml",
                )],
            );
        }
        Err(fault) => return (None, vec![fault]),
    };
    let desk = Diagnostics::new(Arc::clone(&source));
    let name = read(&desk, knot_file).map(|knot| knot.name);
    let mut catalogue = Catalogue::embedded();
    let mut faults = catalogue.add(&source);
    let Some(name) = name else { return (None, faults) };
    let beside = path.parent().unwrap_or(Path::new("")).join(TIGHTENED).join(table_name(&name));
    match read_disk(&beside) {
        Ok(table) => faults.extend(table.iter().flat_map(|table| catalogue.add_table(table))),
        Err(fault) => faults.push(fault),
    }
    faults.extend(catalogue.join_parts());
    (catalogue.find(&name).cloned(), faults)
}
