//! Moving what is made to its place, in one step.

use std::fs::{self, File};
use std::io;
use std::path::{Path, PathBuf};

/// Moves a file or folder to a place where nothing may stand yet.
///
/// # Errors
/// `AlreadyExists` when something stands there, whoever put it there and whenever; it stays as it is.
pub fn put_new(from: &Path, to: &Path) -> io::Result<()> {
    moved_to_nothing(from, to)?;
    keep_names(to);
    Ok(())
}

/// Moves a file to a place, over the one that may stand there.
pub(crate) fn put(from: &Path, to: &Path) -> io::Result<()> {
    fs::rename(from, to)?;
    keep_names(to);
    Ok(())
}

#[cfg(any(target_os = "linux", target_os = "macos"))]
fn moved_to_nothing(from: &Path, to: &Path) -> io::Result<()> {
    use rustix::fs::{CWD, RenameFlags, renameat_with};
    match renameat_with(CWD, from, CWD, to, RenameFlags::NOREPLACE) {
        Ok(()) => Ok(()),
        Err(rustix::io::Errno::EXIST) => Err(io::ErrorKind::AlreadyExists.into()),
        // A file system that does not know how.
        Err(rustix::io::Errno::INVAL | rustix::io::Errno::NOSYS | rustix::io::Errno::NOTSUP) => linked(from, to),
        Err(error) => Err(error.into()),
    }
}

#[cfg(not(any(target_os = "linux", target_os = "macos")))]
fn moved_to_nothing(from: &Path, to: &Path) -> io::Result<()> {
    linked(from, to)
}

/// A second name is never given over another; a folder never takes the place of one that holds something.
fn linked(from: &Path, to: &Path) -> io::Result<()> {
    if from.is_dir() {
        if fs::symlink_metadata(to).is_ok() {
            return Err(io::ErrorKind::AlreadyExists.into());
        }
        return fs::rename(from, to);
    }
    fs::hard_link(from, to)?;
    fs::remove_file(from)
}

/// Puts a folder where one stands, and that one in its place: nobody finds none.
pub(crate) fn exchange_places(new: &Path, old: &Path) -> io::Result<()> {
    #[cfg(any(target_os = "linux", target_os = "macos"))]
    {
        use rustix::fs::{CWD, RenameFlags, renameat_with};
        if renameat_with(CWD, new, CWD, old, RenameFlags::EXCHANGE).is_ok() {
            return Ok(());
        }
    }
    // Without such a step there is a moment without either.
    let aside = new.with_extension("old");
    fs::rename(old, &aside)?;
    fs::rename(new, old).or_else(|error| fs::rename(&aside, old).and(Err(error)))
}

/// The names in a folder go down to the disk as well, so that a power failure does not take them back.
#[allow(clippy::disallowed_methods, reason = "a folder, to be kept and not read")]
pub(crate) fn keep_names(at: &Path) {
    if cfg!(unix) {
        // Some file systems refuse it, and lose nothing by that.
        let _ = File::open(above(at)).and_then(|folder| folder.sync_all());
    }
}

/// The folder that a path stands in.
pub(crate) fn above(at: &Path) -> &Path {
    at.parent().filter(|above| !above.as_os_str().is_empty()).unwrap_or(Path::new("."))
}

/// Folders that were made for what is written in them; they go again if nothing is.
#[derive(Debug, Default)]
pub(crate) struct MadeFolders(Vec<PathBuf>);

impl MadeFolders {
    /// Makes a folder, and those above it that are missing.
    pub(crate) fn down_to(folder: &Path) -> io::Result<Self> {
        let mut missing: Vec<&Path> = folder
            .ancestors()
            .take_while(|at| !at.as_os_str().is_empty() && fs::symlink_metadata(at).is_err())
            .collect();
        missing.reverse();
        let mut made = Self::default();
        for at in missing {
            match fs::create_dir(at) {
                Ok(()) => made.0.push(at.to_owned()),
                Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {}
                Err(error) => return Err(error),
            }
        }
        if folder.is_dir() || folder.as_os_str().is_empty() {
            return Ok(made);
        }
        Err(io::ErrorKind::NotADirectory.into())
    }

    /// Something stands in them now.
    pub(crate) fn keep(mut self) {
        self.0.clear();
    }
}

impl Drop for MadeFolders {
    fn drop(&mut self) {
        // One that another run writes into meanwhile is not empty, and stays.
        for at in self.0.iter().rev() {
            let _ = fs::remove_dir(at);
        }
    }
}
