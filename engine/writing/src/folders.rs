//! Whole folders.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use crate::lock::hold;
use crate::places::{MadeFolders, above, exchange_places, put, put_new};
use crate::refused::WritingError;
use crate::workplace::Workplace;

/// Writes files, and folders beneath, into a folder that is not there yet or is empty.
///
/// # Errors
/// [`WritingError`], naming the file; of kind `DirectoryNotEmpty` when something stands there. Then nothing is left of it.
pub fn new_folder(at: &Path, files: &[(PathBuf, Vec<u8>)]) -> Result<(), WritingError> {
    let refused = WritingError::at(at);
    match fs::read_dir(at).map(|mut entries| entries.next().is_none()) {
        // Whoever stands in an empty folder goes on standing in the same one.
        Ok(true) => return filled(at, files),
        Ok(false) => return Err(refused(io::ErrorKind::DirectoryNotEmpty.into())),
        Err(error) if error.kind() == io::ErrorKind::NotFound => {}
        Err(error) => return Err(refused(error)),
    }
    let folders = MadeFolders::down_to(above(at)).map_err(&refused)?;
    let work = Workplace::beside(at).map_err(&refused)?;
    let new = written(&work, at, files)?;
    put_new(&new, at).map_err(&refused)?;
    folders.keep();
    Ok(())
}

/// Moves files into an empty folder; those that arrived go again if one does not.
fn filled(at: &Path, files: &[(PathBuf, Vec<u8>)]) -> Result<(), WritingError> {
    let refused = WritingError::at(at);
    let work = Workplace::within(at).map_err(&refused)?;
    let new = written(&work, at, files)?;
    let entries: Result<Vec<_>, io::Error> = fs::read_dir(&new).and_then(Iterator::collect);
    let mut moved = Vec::new();
    for entry in entries.map_err(&refused)? {
        let to = at.join(entry.file_name());
        if let Err(error) = put_new(&entry.path(), &to) {
            // Back to where they go with the workplace.
            for (from, to) in &moved {
                let _ = fs::rename(to, from);
            }
            return Err(WritingError::new(&to, error));
        }
        moved.push((entry.path(), to));
    }
    Ok(())
}

/// Makes a folder of files in a workplace.
fn written(work: &Workplace, at: &Path, files: &[(PathBuf, Vec<u8>)]) -> Result<PathBuf, WritingError> {
    for (name, bytes) in files {
        work.write(&Path::new("folder").join(name), bytes).map_err(WritingError::at(&at.join(name)))?;
    }
    let new = work.path("folder");
    work.open().and_then(|_| fs::create_dir_all(&new)).map_err(WritingError::at(at))?;
    Ok(new)
}

/// Writes a folder of files in the place of the one of that name, whole or not at all.
///
/// # Errors
/// [`WritingError`], naming the file.
pub fn exchange(folder: &Path, name: &str, files: &[(PathBuf, Vec<u8>)]) -> Result<PathBuf, WritingError> {
    let at = folder.join(name);
    let refused = WritingError::at(&at);
    let folders = MadeFolders::down_to(folder).map_err(&refused)?;
    let _held = hold(folder)?;
    let work = Workplace::within(folder).map_err(&refused)?;
    let new = written(&work, &at, files)?;
    if fs::symlink_metadata(&at).is_ok() {
        exchange_places(&new, &at).map_err(&refused)?;
    } else {
        put_new(&new, &at).map_err(&refused)?;
    }
    folders.keep();
    Ok(at)
}

/// Takes a folder away, if it is there: out of sight in one step, and then away.
///
/// # Errors
/// [`WritingError`], naming the folder.
pub fn remove(folder: &Path, name: &str) -> Result<(), WritingError> {
    let at = folder.join(name);
    if fs::symlink_metadata(&at).is_err() {
        return Ok(());
    }
    let refused = WritingError::at(&at);
    let _held = hold(folder)?;
    let work = Workplace::within(folder).map_err(&refused)?;
    work.open().map_err(&refused)?;
    put(&at, &work.path("gone")).map_err(&refused)
}
