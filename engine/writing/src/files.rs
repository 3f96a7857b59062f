//! Single files, and several that go together.

use std::fs::{self, File};
use std::io;
use std::path::{Path, PathBuf};

use crate::places::{MadeFolders, above, put, put_new};
use crate::refused::WritingError;
use crate::workplace::Workplace;

/// Writes files into a folder, which is made if need be, over those of the same names.
///
/// All are made first and only then moved, one after the other: who must see all of them or none takes [`crate::Staged`].
///
/// # Errors
/// [`WritingError`], naming the file.
pub fn replace(folder: &Path, files: &[(&str, &[u8])]) -> Result<Vec<PathBuf>, WritingError> {
    let made = MadeFolders::down_to(folder).map_err(WritingError::at(folder))?;
    let work = Workplace::within(folder).map_err(WritingError::at(folder))?;
    let mut waiting = Vec::new();
    for (name, bytes) in files {
        let at = folder.join(name);
        if at.is_dir() {
            return Err(WritingError::new(&at, io::ErrorKind::IsADirectory.into()));
        }
        waiting.push((work.write(Path::new(name), bytes).map_err(WritingError::at(&at))?, at));
    }
    for (from, at) in &waiting {
        put(from, at).map_err(WritingError::at(at))?;
    }
    made.keep();
    Ok(waiting.into_iter().map(|(_, at)| at).collect())
}

/// Writes some of the maker's own files anew. A link stays a link, and each file keeps its permissions.
///
/// Whoever reads them first, and adds to them, holds their folder: [`crate::hold`].
///
/// # Errors
/// [`WritingError`], naming the file. Whatever can fail for want of room has been done before the first file is touched.
pub fn rewrite(files: &[(PathBuf, String)]) -> Result<(), WritingError> {
    let (mut made, mut waiting) = (Vec::new(), Vec::new());
    for (at, text) in files {
        let refused = WritingError::at(at);
        made.push(MadeFolders::down_to(above(at)).map_err(&refused)?);
        let real = at.canonicalize().unwrap_or_else(|_| at.clone());
        let work = Workplace::beside(&real).map_err(&refused)?;
        let from = work.write(Path::new("text"), text.as_bytes()).map_err(&refused)?;
        if let Ok(about) = fs::metadata(&real) {
            let permissions = about.permissions();
            if permissions.readonly() {
                return Err(refused(io::ErrorKind::PermissionDenied.into()));
            }
            fs::set_permissions(&from, permissions).map_err(&refused)?;
        }
        waiting.push((work, from, real, refused));
    }
    for (_, from, real, refused) in &waiting {
        put(from, real).map_err(refused)?;
    }
    for folders in made {
        folders.keep();
    }
    Ok(())
}

/// Makes a file that must not be there yet: `make` writes it at the path that it is given, which is not its last one.
///
/// # Errors
/// What `make` answers, or [`WritingError`], naming the file; of kind `AlreadyExists` when it is there.
pub fn new_file<T, E: From<WritingError>>(at: &Path, make: impl FnOnce(&Path) -> Result<T, E>) -> Result<T, E> {
    let refused = WritingError::at(at);
    if fs::symlink_metadata(at).is_ok() {
        return Err(refused(io::ErrorKind::AlreadyExists.into()).into());
    }
    let folders = MadeFolders::down_to(above(at)).map_err(&refused)?;
    let work = Workplace::beside(at).map_err(&refused)?;
    work.open().map_err(&refused)?;
    let from = work.path("file");
    let made = make(&from)?;
    File::options().write(true).open(&from).and_then(|file| file.sync_all()).map_err(&refused)?;
    put_new(&from, at).map_err(&refused)?;
    folders.keep();
    Ok(made)
}

/// Makes a file that must not be there yet: `write` writes into it.
///
/// # Errors
/// What `write` answers, or [`WritingError`], naming the file; of kind `AlreadyExists` when it is there.
pub fn new_stream<T, E: From<WritingError>>(at: &Path, write: impl FnOnce(&mut File) -> Result<T, E>) -> Result<T, E> {
    new_file(at, |from| write(&mut File::create_new(from).map_err(WritingError::at(at))?))
}
