//! A hidden folder beside a place, where things are made before they are moved there.

use std::fs::{self, File, TryLockError};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use tempfile::TempDir;

use crate::places::above;

/// How every workplace is called; six letters follow.
const PREFIX: &str = ".reeve-";
/// The file in it that is locked as long as its program lives.
const LOCK: &str = "lock";
/// The folder in it of what is made: beside the lock, so that no name can be the lock's.
const MADE: &str = "made";
/// What that file says: a folder with another one is not the program's.
const MARK: &[u8] = b"A run of reeve is writing here.\n";

/// A workplace: on the same disk as the place beside it, and gone with its value.
#[derive(Debug)]
pub struct Workplace {
    _locked: File,
    folder: TempDir,
}

impl Workplace {
    /// Makes one in a folder, and clears away those that killed runs have left there.
    ///
    /// # Errors
    /// The folder is not there, or can't be written to.
    pub fn within(folder: &Path) -> io::Result<Self> {
        const TRIES: usize = 16;
        let folder = if folder.as_os_str().is_empty() { Path::new(".") } else { folder };
        clear(folder);
        let mut last = io::Error::from(io::ErrorKind::NotFound);
        for _ in 0..TRIES {
            match Self::made(folder) {
                // Another run may have taken it for left behind, in the moment before it was locked.
                Err(error) if error.kind() == io::ErrorKind::NotFound && folder.is_dir() => last = error,
                made => return made,
            }
        }
        Err(last)
    }

    /// Makes one beside a path.
    ///
    /// # Errors
    /// The folder of the path is not there, or can't be written to.
    pub fn beside(at: &Path) -> io::Result<Self> {
        Self::within(above(at))
    }

    fn made(folder: &Path) -> io::Result<Self> {
        let folder = tempfile::Builder::new().prefix(PREFIX).tempdir_in(folder)?;
        let at = folder.path().join(LOCK);
        let mut lock = File::create_new(&at)?;
        // Another run that clears up may have been quicker, and may have been there and gone. On a file system without
        // locks nothing is cleared away either.
        if matches!(lock.try_lock(), Err(TryLockError::WouldBlock)) {
            return Err(io::ErrorKind::NotFound.into());
        }
        fs::metadata(&at)?;
        lock.write_all(MARK)?;
        Ok(Self { _locked: lock, folder })
    }

    /// The place of a file or folder in it.
    pub fn path(&self, name: impl AsRef<Path>) -> PathBuf {
        self.folder.path().join(MADE).join(name)
    }

    /// The folder of what is made, which is there from now on.
    ///
    /// # Errors
    /// The system refuses it.
    pub fn open(&self) -> io::Result<PathBuf> {
        let made = self.folder.path().join(MADE);
        match fs::create_dir(&made) {
            Err(error) if error.kind() != io::ErrorKind::AlreadyExists => Err(error),
            _ => Ok(made),
        }
    }

    /// Writes a file in it, down to the disk.
    pub(crate) fn write(&self, name: &Path, bytes: &[u8]) -> io::Result<PathBuf> {
        self.open()?;
        let at = self.path(name);
        fs::create_dir_all(above(&at))?;
        let mut file = File::create_new(&at)?;
        file.write_all(bytes)?;
        file.sync_all()?;
        Ok(at)
    }
}

impl Drop for Workplace {
    fn drop(&mut self) {
        // The lock goes last: without one a workplace is never taken for left behind while something is in it.
        let _ = fs::remove_dir_all(self.folder.path().join(MADE));
    }
}

/// Takes workplaces away whose program has ended without doing so.
fn clear(folder: &Path) {
    let Ok(entries) = fs::read_dir(folder) else { return };
    for entry in entries.flatten() {
        let is_folder = entry.file_type().is_ok_and(|kind| kind.is_dir());
        if is_folder && entry.file_name().to_string_lossy().starts_with(PREFIX) {
            clear_one(&entry.path());
        }
    }
}

/// Takes one away if it is a workplace and nobody holds it. What can't be taken away stays for the next run.
fn clear_one(folder: &Path) {
    let at = folder.join(LOCK);
    if !fs::symlink_metadata(&at).is_ok_and(|about| about.is_file()) {
        // Its program ended before there was a lock, or is about to make one and will then make another workplace.
        let _ = fs::remove_dir(folder);
        return;
    }
    let Ok(lock) = File::options().read(true).write(true).open(&at) else { return };
    if lock.try_lock().is_err() {
        return;
    }
    // Less was written where the disk was full.
    if reeve_door::read(&at, MARK.len() as u64).is_ok_and(|said| MARK.starts_with(&said)) {
        // The lock last, as above.
        let _ = fs::remove_dir_all(folder.join(MADE));
        let _ = fs::remove_dir_all(folder);
    }
}

#[cfg(test)]
#[allow(
    clippy::unwrap_used,
    clippy::disallowed_methods,
    reason = "a test may stop at the first surprise, and reads its own files"
)]
mod tests {
    use super::*;

    fn names(folder: &Path) -> Vec<String> {
        let names = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
        let mut names: Vec<String> = names.collect();
        names.sort_unstable();
        names
    }

    /// A workplace whose program was killed.
    fn left_behind(folder: &Path) -> PathBuf {
        let work = Workplace::within(folder).unwrap();
        work.write(Path::new("half.txt"), b"half").unwrap();
        // Its value goes, so that the lock goes, and the folder stays.
        let folder = work.folder.path().to_owned();
        let aside = folder.with_file_name("aside");
        fs::rename(&folder, &aside).unwrap();
        drop(work);
        fs::rename(&aside, &folder).unwrap();
        folder
    }

    #[test]
    fn what_a_killed_run_left_is_cleared_away_by_the_next() {
        let place = tempfile::tempdir().unwrap();
        left_behind(place.path());
        assert_eq!(names(place.path()).len(), 1);
        // One that was killed while it cleared up, and one before it began.
        let folder = left_behind(place.path());
        fs::remove_dir_all(folder.join(MADE)).unwrap();
        fs::create_dir(place.path().join(".reeve-aaaaaa")).unwrap();
        drop(Workplace::within(place.path()).unwrap());
        assert!(names(place.path()).is_empty());
    }

    #[test]
    fn what_is_another_runs_or_the_makers_own_stays() {
        let place = tempfile::tempdir().unwrap();
        let alive = Workplace::within(place.path()).unwrap();
        alive.write(Path::new("half.txt"), b"half").unwrap();
        for (name, text) in [(".reeve-notes/ideas.txt", "mine"), (".reeve-keys/lock", "mine as well")] {
            let at = place.path().join(name);
            fs::create_dir_all(at.parent().unwrap()).unwrap();
            fs::write(at, text).unwrap();
        }
        fs::write(place.path().join(".reeve-letter"), "mine").unwrap();
        let before = names(place.path());
        drop(Workplace::within(place.path()).unwrap());
        assert_eq!(names(place.path()), before);
        assert_eq!(fs::read(alive.path("half.txt")).unwrap(), b"half");
    }

    #[test]
    fn many_make_and_clear_at_once() {
        let place = tempfile::tempdir().unwrap();
        std::thread::scope(|scope| {
            for _ in 0..8 {
                scope.spawn(|| {
                    for _ in 0..100 {
                        let work = Workplace::within(place.path()).unwrap();
                        let at = work.write(Path::new("one.txt"), b"whole").unwrap();
                        assert_eq!(fs::read(at).unwrap(), b"whole");
                    }
                });
            }
        });
        assert!(names(place.path()).is_empty());
    }
}
