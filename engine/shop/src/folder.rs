//! A shop's folder on disk, or the starter shop inside the program.

use std::fmt;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use include_dir::{Dir, include_dir};
use reeve_reading::{Fault, Source};
use reeve_writing::Refused;

static STARTER: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/starter");

/// The file that makes a folder a shop.
pub(crate) const SHOP_FILE: &str = "shop.toml";

/// Where a shop's files are read from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Folder {
    /// A folder on disk, and the words its files are shown under.
    Disk(PathBuf),
    /// The starter shop inside the program.
    Starter,
}

/// A folder that can't be used.
#[derive(Debug)]
pub enum FolderFault {
    /// Neither the folder nor a parent holds `shop.toml`.
    NotAShop(PathBuf),
    /// `begin` was given something that is not a new or empty folder.
    NotEmpty(PathBuf),
    /// The system refused.
    Io(PathBuf, io::Error),
    /// A file of a new folder could not be written, and nothing is left of it.
    Unwritten(Refused),
}

impl fmt::Display for FolderFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotAShop(at) => write!(f, "no {SHOP_FILE} in {} or a folder above it", at.display()),
            Self::NotEmpty(at) => write!(f, "{} is not a new or empty folder", at.display()),
            Self::Io(at, error) => write!(f, "{}: {error}", at.display()),
            Self::Unwritten(refused) => write!(f, "{refused}"),
        }
    }
}

impl Folder {
    /// Finds the shop that a folder belongs to: itself or the nearest folder above that holds `shop.toml`.
    pub fn find(from: &Path) -> Result<Self, FolderFault> {
        let start = from.canonicalize().map_err(|error| FolderFault::Io(from.to_owned(), error))?;
        let mut up = start.ancestors();
        match up.find(|folder| folder.join(SHOP_FILE).is_file()) {
            // The path is kept as it was typed where it can be: messages then read as the maker wrote them.
            Some(folder) if folder == start => Ok(Self::Disk(from.to_owned())),
            Some(folder) => Ok(Self::Disk(folder.to_owned())),
            None => Err(FolderFault::NotAShop(from.to_owned())),
        }
    }

    /// Reads a file of the shop; `None` when there is none.
    ///
    /// A file that can't be read, or is not UTF-8, is a fault.
    pub fn read(&self, path: &str) -> Result<Option<Arc<Source>>, Fault> {
        match self {
            Self::Starter => {
                Ok(STARTER.get_file(path).and_then(|file| file.contents_utf8()).map(|text| Source::new(path, text)))
            }
            // In the shop's own folder a file is called as the maker would: without "./".
            Self::Disk(root) if root == Path::new(".") => read_disk(Path::new(path)),
            Self::Disk(root) => read_disk(&root.join(path)),
        }
    }

    /// The folder itself on disk; `None` inside the program.
    pub(crate) fn root(&self) -> Option<PathBuf> {
        match self {
            Self::Starter => None,
            Self::Disk(root) => Some(root.clone()),
        }
    }

    /// A sub-folder on disk; `None` inside the program.
    pub(crate) fn dir(&self, sub: &str) -> Option<PathBuf> {
        match self {
            Self::Starter => None,
            Self::Disk(root) if root == Path::new(".") => Some(PathBuf::from(sub)),
            Self::Disk(root) => Some(root.join(sub)),
        }
    }

    /// The stems of the files of a sub-folder that end in `.toml`, in order of name.
    pub fn stems(&self, sub: &str) -> Result<Vec<String>, Fault> {
        self.names(sub, "toml")
            .map(|names| names.into_iter().filter_map(|name| name.strip_suffix(".toml").map(str::to_owned)).collect())
    }

    /// The names of the folders in a sub-folder, in order; none when there is no such folder.
    pub(crate) fn folders(&self, sub: &str) -> Result<Vec<String>, Fault> {
        let Self::Disk(root) = self else { return Ok(Vec::new()) };
        let at = root.join(sub);
        let mut names = disk_names(&at)?;
        names.retain(|name| !name.starts_with('.') && at.join(name).is_dir());
        names.sort_unstable();
        Ok(names)
    }

    /// The names of the files of a sub-folder with an ending, in order; none when there is no such folder.
    pub fn names(&self, sub: &str, ending: &str) -> Result<Vec<String>, Fault> {
        let mut names: Vec<String> = match self {
            Self::Starter => STARTER.get_dir(sub).map(embedded_names).unwrap_or_default(),
            Self::Disk(root) => disk_names(&root.join(sub))?,
        };
        names.retain(|name| {
            Path::new(name).extension().is_some_and(|found| ending.is_empty() || found == ending)
                && !name.starts_with('.')
        });
        names.sort_unstable();
        Ok(names)
    }

    /// Writes the starter shop into a new or empty folder; any other is refused and left alone.
    pub fn begin(at: &Path) -> Result<Vec<PathBuf>, FolderFault> {
        let mut files = Vec::new();
        list(&STARTER, &mut files);
        Self::make(at, &files)?;
        Ok(files.into_iter().map(|(name, _)| name).collect())
    }

    /// Writes files into a folder that is not there yet, or is empty: all of them, or nothing is left of it.
    pub fn make(at: &Path, files: &[(PathBuf, Vec<u8>)]) -> Result<(), FolderFault> {
        reeve_writing::new_folder(at, files).map_err(|refused| match refused.error.kind() {
            io::ErrorKind::DirectoryNotEmpty | io::ErrorKind::AlreadyExists | io::ErrorKind::NotADirectory => {
                FolderFault::NotEmpty(at.to_owned())
            }
            _ => FolderFault::Unwritten(refused),
        })
    }
}

fn list(dir: &Dir<'_>, all: &mut Vec<(PathBuf, Vec<u8>)>) {
    all.extend(dir.files().map(|file| (file.path().to_owned(), file.contents().to_vec())));
    dir.dirs().for_each(|sub| list(sub, all));
}

fn embedded_names(dir: &Dir<'_>) -> Vec<String> {
    dir.files().filter_map(|file| Some(file.path().file_name()?.to_str()?.to_owned())).collect()
}

/// Reads a text file; `None` when it is not there.
pub(crate) fn read_disk(path: &Path) -> Result<Option<Arc<Source>>, Fault> {
    // A design is a page or two of text; a file of this size is something else.
    const MOST_BYTES: u64 = 4_000_000;
    let shown = path.display().to_string();
    match fs::metadata(path) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
        Ok(about) if about.len() > MOST_BYTES => {
            return Err(Fault::without_place(
                format!("{shown} has {} bytes", about.len()),
                format!("at most {MOST_BYTES} are read"),
            ));
        }
        _ => {}
    }
    match fs::read_to_string(path) {
        Ok(text) => Ok(Some(Source::new(shown, text))),
        Err(error) if error.kind() == io::ErrorKind::InvalidData => {
            Err(Fault::without_place(format!("{shown} is not text in UTF-8"), "save it as plain text, UTF-8"))
        }
        Err(error) => Err(Fault::without_place(
            format!("{shown} can't be read: {error}"),
            "mend it, or move it out of the shop's folder",
        )),
    }
}

/// Reads a file of bytes.
pub(crate) fn read_bytes(path: &Path) -> Result<Vec<u8>, Fault> {
    // A library with everything in it is far smaller.
    const MOST_BYTES: u64 = 256_000_000;
    let shown = path.display();
    let refused = |why: String, help: &str| Fault::without_place(format!("{shown} {why}"), help);
    let about =
        fs::metadata(path).map_err(|error| refused(format!("can't be read: {error}"), "name a library of knots"))?;
    if !about.is_file() {
        return Err(refused("is not a file".to_owned(), "name a library of knots"));
    }
    if about.len() > MOST_BYTES {
        return Err(refused(format!("has {} bytes", about.len()), "a library of knots has at most 256 million"));
    }
    fs::read(path).map_err(|error| refused(format!("can't be read: {error}"), "name a library of knots"))
}

fn disk_names(path: &Path) -> Result<Vec<String>, Fault> {
    let entries = match fs::read_dir(path) {
        Ok(entries) => entries,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Vec::new()),
        Err(error) => return Err(Fault::without_place(format!("{} can't be read: {error}", path.display()), "")),
    };
    Ok(entries.filter_map(|entry| entry.ok()?.file_name().into_string().ok()).collect())
}
