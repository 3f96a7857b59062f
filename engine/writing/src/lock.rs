//! One program at a time.

use std::fs::{File, TryLockError};
use std::io;
use std::path::Path;
use std::time::{Duration, Instant};

use crate::refused::WritingError;

/// How long a program waits for another that changes the same folder.
const PATIENCE: Duration = Duration::from_secs(20);
/// How often it looks.
const PAUSE: Duration = Duration::from_millis(10);

/// A folder that no other run of the program changes while this value lives.
#[derive(Debug)]
pub struct Hold {
    _locked: File,
}

/// Holds a folder, which is made if need be: from before its files are read until what follows from them is written.
///
/// The lock goes with the process, however it ends. Reading needs none: files are exchanged whole.
///
/// # Errors
/// [`WritingError`] when another program holds it for more than 20 seconds.
pub fn hold(folder: &Path) -> Result<Hold, WritingError> {
    let refused = WritingError::at(folder);
    let file = std::fs::create_dir_all(folder).and_then(|()| opened(folder)).map_err(&refused)?;
    let start = Instant::now();
    loop {
        match file.try_lock() {
            Err(TryLockError::WouldBlock) if start.elapsed() < PATIENCE => std::thread::sleep(PAUSE),
            Err(TryLockError::WouldBlock) => {
                let words = format!("another run of the program has held it for {} seconds", PATIENCE.as_secs());
                return Err(refused(io::Error::new(io::ErrorKind::TimedOut, words)));
            }
            // A file system without locks has one user at a time, or none that can be told of the other.
            Ok(()) | Err(TryLockError::Error(_)) => return Ok(Hold { _locked: file }),
        }
    }
}

/// The folder itself: nothing is left in it.
#[cfg(unix)]
#[allow(clippy::disallowed_methods, reason = "a folder, to be held and not read")]
fn opened(folder: &Path) -> io::Result<File> {
    File::open(folder)
}

/// Elsewhere a folder can't be opened, and a hidden file stands for it.
#[cfg(not(unix))]
fn opened(folder: &Path) -> io::Result<File> {
    File::options().write(true).create(true).truncate(false).open(folder.join(".reeve-lock"))
}
