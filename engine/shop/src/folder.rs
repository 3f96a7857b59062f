//! A shop's folder on disk, or the starter shop inside the program.

use std::ffi::{OsStr, OsString};
use std::fmt;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use include_dir::{Dir, include_dir};
use reeve_door::{MOST_LIBRARY, MOST_TEXT, OpenError};
use reeve_measure::Remedied;
use reeve_reading::{Fault, SourceText, unseen_in};
use reeve_writing::WritingError;

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
pub enum FolderError {
    /// Neither the folder nor a parent holds `shop.toml`.
    NotAShop(PathBuf),
    /// `begin` was given something that is not a new or empty folder.
    NotEmpty(PathBuf),
    /// The system refused.
    Io(PathBuf, io::Error),
    /// A file of a new folder could not be written, and nothing is left of it.
    Unwritten(WritingError),
}

impl fmt::Display for FolderError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotAShop(at) => write!(f, "no {SHOP_FILE} in {} or a folder above it", at.display()),
            Self::NotEmpty(at) => write!(f, "{} is not a new or empty folder", at.display()),
            Self::Io(at, error) => write!(f, "{}: {error}", at.display()),
            Self::Unwritten(refused) => write!(f, "{refused}"),
        }
    }
}

impl std::error::Error for FolderError {}

impl Remedied for FolderError {
    fn remedy(&self) -> String {
        match self {
            Self::NotAShop(_) => {
                "name a shop with --shop DIR, start one with `reeve begin DIR`, or try --demo".to_owned()
            }
            Self::NotEmpty(_) => "nothing was written; name a folder that does not exist yet".to_owned(),
            Self::Unwritten(refused) => refused.remedy(),
            Self::Io(..) => String::new(),
        }
    }
}

impl Folder {
    /// Finds the shop that a folder belongs to: itself or the nearest folder above that holds `shop.toml`.
    pub fn find(from: &Path) -> Result<Self, FolderError> {
        let start = from.canonicalize().map_err(|error| FolderError::Io(from.to_owned(), error))?;
        let mut up = start.ancestors();
        // Whatever it is: what can't be read is told by its reader.
        match up.find(|folder| folder.join(SHOP_FILE).symlink_metadata().is_ok()) {
            // The path is kept as it was typed where it can be: messages then read as the maker wrote them.
            Some(folder) if folder == start => Ok(Self::Disk(from.to_owned())),
            Some(folder) => Ok(Self::Disk(folder.to_owned())),
            None => Err(FolderError::NotAShop(from.to_owned())),
        }
    }

    /// Reads a file of the shop; `None` when there is none.
    ///
    /// A file that can't be read, or is not UTF-8, is a fault.
    pub fn read(&self, path: &str) -> Result<Option<Arc<SourceText>>, Fault> {
        match self {
            Self::Starter => {
                Ok(STARTER.get_file(path).and_then(|file| file.contents_utf8()).map(|text| SourceText::new(path, text)))
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

    /// The stems of the files of a sub-folder that end in `.toml`, in order of name, and what can't be read there.
    pub fn stems(&self, sub: &str) -> Listed {
        let mut listed = self.names(sub, "toml");
        listed.names = listed.names.iter().filter_map(|name| name.strip_suffix(".toml").map(str::to_owned)).collect();
        listed
    }

    /// The names of the folders in a sub-folder, in order; none when there is no such folder.
    pub(crate) fn folders(&self, sub: &str) -> Result<Vec<String>, Fault> {
        let Some(at) = self.dir(sub) else { return Ok(Vec::new()) };
        let mut names: Vec<String> = disk_names(&at)?
            .into_iter()
            .filter_map(|name| name.into_string().ok())
            .filter(|name| at.join(name).is_dir())
            .collect();
        names.retain(|name| !name.starts_with('.'));
        names.sort_unstable();
        Ok(names)
    }

    /// The names of the files of a sub-folder with an ending, in order; none when there is no such folder. A file that
    /// is not read because of its name is told of.
    pub fn names(&self, sub: &str, ending: &str) -> Listed {
        let Some(at) = self.dir(sub) else {
            let names = STARTER.get_dir(sub).map(embedded_names).unwrap_or_default();
            return Listed::of(names.into_iter().map(OsString::from), Path::new(sub), ending);
        };
        match disk_names(&at) {
            Ok(names) => Listed::of(names, &at, ending),
            Err(fault) => Listed { names: Vec::new(), faults: vec![fault] },
        }
    }

    /// Why a file is not read that is there under the same name in other letters, as `Shop.TOML`.
    pub(crate) fn misnamed(&self, path: &str) -> Option<Fault> {
        let path = self.dir(path)?;
        let (folder, name) = (path.parent()?, path.file_name()?);
        let folder = if folder.as_os_str().is_empty() { Path::new(".") } else { folder };
        let other =
            disk_names(folder).ok()?.into_iter().find(|other| other != name && other.eq_ignore_ascii_case(name))?;
        Some(Fault::without_place(
            format!("{} is not read", path.with_file_name(other).display()),
            format!("large and small letters count: rename it to {}", name.display()),
        ))
    }

    /// Writes the starter shop into a new or empty folder; any other is refused and left alone.
    pub fn begin(at: &Path) -> Result<Vec<PathBuf>, FolderError> {
        let mut files = Vec::new();
        list(&STARTER, &mut files);
        Self::make(at, &files)?;
        Ok(files.into_iter().map(|(name, _)| name).collect())
    }

    /// Writes files into a folder that is not there yet, or is empty: all of them, or nothing is left of it.
    pub fn make(at: &Path, files: &[(PathBuf, Vec<u8>)]) -> Result<(), FolderError> {
        reeve_writing::new_folder(at, files).map_err(|refused| match refused.error.kind() {
            io::ErrorKind::DirectoryNotEmpty | io::ErrorKind::AlreadyExists | io::ErrorKind::NotADirectory => {
                FolderError::NotEmpty(at.to_owned())
            }
            _ => FolderError::Unwritten(refused),
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

/// What a sub-folder holds.
#[derive(Debug, Default)]
pub struct Listed {
    /// The names that are read, in order.
    pub names: Vec<String>,
    /// What stands there and is not read, and why.
    pub faults: Vec<Fault>,
}

impl Listed {
    /// Parts the names that are read from those that can't be.
    fn of(names: impl IntoIterator<Item = OsString>, at: &Path, ending: &str) -> Self {
        let mut listed = Self::default();
        for name in names {
            match judged(&name, ending) {
                Ok(true) => listed.names.push(name.to_string_lossy().into_owned()),
                Ok(false) => {}
                Err(remedy) => {
                    let title = format!("{} is not read", at.join(&name).display());
                    listed.faults.push(Fault::look_without_place(title, remedy));
                }
            }
        }
        listed.names.sort_unstable();
        listed.faults.sort_unstable_by(|one, other| one.title.cmp(&other.title));
        listed
    }
}

/// Whether a file is read by its name, which must have the ending if one is asked; else what to do about the name.
fn judged(name: &OsStr, ending: &str) -> Result<bool, String> {
    let Some(found) = Path::new(name).extension() else { return Ok(false) };
    let is_asked = ending.is_empty() || found.eq_ignore_ascii_case(ending);
    if !is_asked || name.as_encoded_bytes().starts_with(b".") {
        return Ok(false);
    }
    let Some(text) = name.to_str() else {
        return Err("its name is not UTF-8: give it another".to_owned());
    };
    if let Some(c) = unseen_in(text).or_else(|| text.chars().find(|c| matches!(c, '\n' | '\t'))) {
        return Err(format!("its name holds a character that can't be seen, U+{:04X}: give it another", u32::from(c)));
    }
    if ending.is_empty() || found == ending {
        return Ok(true);
    }
    Err(format!("large and small letters count: rename it to {}", Path::new(text).with_extension(ending).display()))
}

/// Reads a text file; `None` when it is not there.
pub(crate) fn read_disk(path: &Path) -> Result<Option<Arc<SourceText>>, Fault> {
    let shown = path.display().to_string();
    let closed = match reeve_door::read_text(path, MOST_TEXT) {
        Ok(text) => return Ok(Some(SourceText::new(shown, text))),
        Err(OpenError::Missing) => return dangling(path).map_or(Ok(None), Err),
        Err(closed) => closed,
    };
    let help = match closed {
        OpenError::NotText => closed.remedy(),
        OpenError::TooLong(_) => "a file of the shop is a page or two of text; move this one elsewhere".to_owned(),
        _ => "mend it, or move it out of the shop's folder".to_owned(),
    };
    Err(Fault::without_place(format!("{shown} {closed}"), help))
}

/// Reads a file of bytes.
pub(crate) fn read_bytes(path: &Path) -> Result<Vec<u8>, Fault> {
    reeve_door::read(path, MOST_LIBRARY).map_err(|closed| {
        let help = match &closed {
            OpenError::TooLong(_) => "a library of knots is smaller: build it for release, without what debuggers need",
            _ => "name a library of knots",
        };
        dangling(path).unwrap_or_else(|| Fault::without_place(format!("{} {closed}", path.display()), help))
    })
}

/// A link that leads nowhere.
fn dangling(path: &Path) -> Option<Fault> {
    let to = fs::read_link(path).ok().filter(|_| fs::metadata(path).is_err())?;
    let title = format!("{} is a link to {}, which is not there", path.display(), to.display());
    Some(Fault::without_place(title, "put back what it leads to, or take the link away"))
}

fn disk_names(path: &Path) -> Result<Vec<OsString>, Fault> {
    let entries = match fs::read_dir(path) {
        Ok(entries) => entries,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return dangling(path).map_or(Ok(Vec::new()), Err),
        Err(error) => {
            let title = format!("{} can't be read: {error}", path.display());
            return Err(Fault::without_place(title, "it is to be a folder that you may read"));
        }
    };
    Ok(entries.filter_map(|entry| Some(entry.ok()?.file_name())).collect())
}
