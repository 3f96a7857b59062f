//! Results: to standard output, or into files that are written whole or not at all.

use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use tempfile::{NamedTempFile, TempDir};

use crate::failure::{Failure, say};

/// Writes a result to standard output. A reader that has had enough is no failure.
pub(crate) fn print(text: &str) -> Result<(), Failure> {
    let mut out = io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => {
            Err(Failure::System(format!("standard output can't be written: {error}")))
        }
        _ => Ok(()),
    }
}

/// Writes a result into a file, or to standard output where none is named.
pub(crate) fn print_or_write(out: Option<&Path>, text: String) -> Result<(), Failure> {
    let Some(path) = out else { return print(&text) };
    let no_name = || Failure::input(format!("{} is no file's name", path.display()), "for example --out chart.html");
    let name = path.file_name().and_then(|name| name.to_str()).ok_or_else(no_name)?;
    let dir = path.parent().filter(|dir| !dir.as_os_str().is_empty()).unwrap_or(Path::new("."));
    write_files(dir, &[(name, text)])?;
    say(&format!("wrote {}", path.display()));
    Ok(())
}

/// Writes files into a folder, which is made if need be.
///
/// All are written beside their places first and only then renamed, so that a full disk leaves the
/// folder's old files as they were.
pub(crate) fn write_files(dir: &Path, files: &[(&str, String)]) -> Result<Vec<PathBuf>, Failure> {
    let refused = |at: &Path, error: &io::Error| Failure::System(format!("{} can't be written: {error}", at.display()));
    fs::create_dir_all(dir).map_err(|error| refused(dir, &error))?;
    let mut waiting = Vec::new();
    for (name, text) in files {
        let at = dir.join(name);
        if at.is_dir() {
            return Err(refused(&at, &io::Error::from(io::ErrorKind::IsADirectory)));
        }
        let file = beside(dir, text).map_err(|error| refused(&at, &error))?;
        waiting.push((file, at));
    }
    let mut written = Vec::new();
    for (file, at) in waiting {
        file.persist(&at).map_err(|error| refused(&at, &error.error))?;
        written.push(at);
    }
    Ok(written)
}

/// Writes files into a new folder, and folders beneath it.
pub(crate) fn write_below(dir: &Path, files: &[(PathBuf, &[u8])]) -> Result<(), Failure> {
    for (name, bytes) in files {
        let at = dir.join(name);
        let written = fs::create_dir_all(at.parent().unwrap_or(dir)).and_then(|()| fs::write(&at, bytes));
        written.map_err(|error| Failure::System(format!("{} can't be written: {error}", at.display())))?;
    }
    Ok(())
}

/// Writes a folder of files in the place of the one of that name, whole or not at all.
pub(crate) fn write_folder(dir: &Path, name: &str, files: &[(String, Vec<u8>)]) -> Result<PathBuf, Failure> {
    let at = dir.join(name);
    let refused = |error: io::Error| Failure::System(format!("{} can't be written: {error}", at.display()));
    fs::create_dir_all(dir).map_err(refused)?;
    let new = folder_beside(dir).map_err(refused)?;
    for (name, bytes) in files {
        let file = new.path().join(name);
        fs::create_dir_all(file.parent().unwrap_or(dir)).map_err(refused)?;
        fs::write(&file, bytes).and_then(|()| fs::File::open(&file)?.sync_all()).map_err(refused)?;
    }
    remove_folder(dir, name)?;
    fs::rename(new.keep(), &at).map_err(refused)?;
    Ok(at)
}

/// Takes a folder away, if it is there: out of sight in one move, and then away.
pub(crate) fn remove_folder(dir: &Path, name: &str) -> Result<(), Failure> {
    let at = dir.join(name);
    if !at.exists() {
        return Ok(());
    }
    let refused = |error: io::Error| Failure::System(format!("{} can't be taken away: {error}", at.display()));
    let gone = folder_beside(dir).map_err(refused)?;
    fs::rename(&at, gone.path().join(name)).map_err(refused)?;
    gone.close().map_err(refused)
}

/// A folder that no reader looks into, and that is gone with its value.
fn folder_beside(dir: &Path) -> io::Result<TempDir> {
    tempfile::Builder::new().prefix(".reeve-").tempdir_in(dir)
}

/// Writes one of the maker's own files anew. A link stays a link, and the file keeps its permissions.
pub(crate) fn rewrite(dir: &Path, name: &str, text: &str) -> Result<(), Failure> {
    let at = dir.join(name);
    let refused = |error: &io::Error| Failure::System(format!("{} can't be written: {error}", at.display()));
    let Ok(real) = at.canonicalize() else {
        return write_files(dir, &[(name, text.to_owned())]).map(|_| ());
    };
    let permissions = fs::metadata(&real).map_err(|error| refused(&error))?.permissions();
    if permissions.readonly() {
        return Err(refused(&io::Error::from(io::ErrorKind::PermissionDenied)));
    }
    let file = beside(real.parent().unwrap_or(dir), text).map_err(|error| refused(&error))?;
    file.as_file().set_permissions(permissions).map_err(|error| refused(&error))?;
    file.persist(&real).map(|_| ()).map_err(|error| refused(&error.error))
}

fn beside(dir: &Path, text: &str) -> io::Result<NamedTempFile> {
    let mut builder = tempfile::Builder::new();
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        // A page is for reading; a temporary file's own permissions would hide it from others. The umask still holds.
        builder.permissions(fs::Permissions::from_mode(0o666));
    }
    let mut file = builder.prefix(".reeve-").tempfile_in(dir)?;
    file.write_all(text.as_bytes())?;
    file.as_file().sync_all()?;
    Ok(file)
}
