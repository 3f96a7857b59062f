//! Results: to standard output, or into files that are written whole or not at all.

use std::fs::File;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use reeve_reading::seen;
use reeve_shop::own_folder_around;
use reeve_writing::{Hold, WritingError};

use crate::failure::{Failure, say};

impl From<WritingError> for Failure {
    fn from(refused: WritingError) -> Self {
        Self::system(&refused)
    }
}

/// Lets a file that may not grow be an error that is told, not a signal that ends the program without a word.
pub(crate) fn outlive_limits() {
    #[cfg(unix)]
    {
        // Where it can't be set the system's own way stays.
        let _ = signal_hook::flag::register(signal_hook::consts::SIGXFSZ, std::sync::Arc::default());
    }
}

/// Writes a result to standard output. A reader that has had enough is no failure.
pub(crate) fn print(text: &str) -> Result<(), Failure> {
    let mut out = io::stdout().lock();
    match out.write_all(seen(text).as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => {
            Err(Failure::System(format!("standard output can't be written: {error}")))
        }
        _ => Ok(()),
    }
}

/// Says what was entered or written. It stays so whether or not that can be said: whoever repeats it would do it twice.
pub(crate) fn print_done(text: &str) {
    if let Err(Failure::System(why)) = print(text) {
        say(&format!("look: it is done, and must not be done again; only saying so failed: {why}"));
    }
}

/// A file that a result goes into, if one is named.
#[derive(Debug, Default, clap::Args)]
pub(crate) struct IntoFile {
    /// Write it into this file, not to standard output
    #[arg(long = "out", value_name = "FILE")]
    file: Option<PathBuf>,
    /// Write the file anew if it is there
    #[arg(long, requires = "file")]
    replace: bool,
}

impl IntoFile {
    /// Writes a result into the file, or to standard output where none is named.
    pub(crate) fn print_or_write(&self, text: String) -> Result<(), Failure> {
        let Some(path) = &self.file else { return print(&text) };
        let no_name =
            || Failure::input(format!("{} is no file's name", path.display()), "for example --out chart.html");
        let name = path.file_name().and_then(|name| name.to_str()).ok_or_else(no_name)?;
        let dir = path.parent().filter(|dir| !dir.as_os_str().is_empty()).unwrap_or(Path::new("."));
        not_into_a_shop(dir, None)?;
        if self.replace {
            write_files(dir, &[(name, text)])?;
        } else {
            new_stream(path, "say --replace to write it anew, or name another file", |file| {
                file.write_all(text.as_bytes()).map_err(|error| WritingError::new(path, error).into())
            })?;
        }
        say(&format!("wrote {}", path.display()));
        Ok(())
    }
}

/// Makes a file that must not be there yet, at the path that `make` is given.
pub(crate) fn new_file<T>(
    path: &Path,
    help: &str,
    make: impl FnOnce(&Path) -> Result<T, Failure>,
) -> Result<T, Failure> {
    told(path, help, reeve_writing::new_file(path, |at| make(at).map_err(MakingStopped::Own)))
}

/// Makes a file that must not be there yet, of what `write` writes into it.
pub(crate) fn new_stream<T>(
    path: &Path,
    help: &str,
    write: impl FnOnce(&mut File) -> Result<T, Failure>,
) -> Result<T, Failure> {
    told(path, help, reeve_writing::new_stream(path, |file| write(file).map_err(MakingStopped::Own)))
}

fn told<T>(path: &Path, help: &str, made: Result<T, MakingStopped>) -> Result<T, Failure> {
    made.map_err(|stopped| match stopped {
        MakingStopped::Own(failure) => failure,
        MakingStopped::System(refused) if refused.error.kind() == io::ErrorKind::AlreadyExists => {
            Failure::input(format!("{} is there already", path.display()), help)
        }
        MakingStopped::System(refused) => refused.into(),
    })
}

/// What stopped a file that is made: its maker, or the system.
enum MakingStopped {
    Own(Failure),
    System(WritingError),
}

impl From<WritingError> for MakingStopped {
    fn from(refused: WritingError) -> Self {
        Self::System(refused)
    }
}

/// Refuses a folder that a shop's own files are read from.
pub(crate) fn not_into_a_shop(dir: &Path, shop: Option<&Path>) -> Result<(), Failure> {
    let Some((shop, own)) = own_folder_around(dir, shop) else { return Ok(()) };
    Err(Failure::input(
        format!("{} leads to {own}/ of the shop {}", dir.display(), shop.display()),
        format!("the program reads the shop's own files there: name a folder beside {own}/, for example to-send"),
    ))
}

/// Holds a folder, from before its files are read until what follows from them is written.
pub(crate) fn hold_folder(folder: &Path) -> Result<Hold, Failure> {
    Ok(reeve_writing::hold(folder)?)
}

/// Writes files into a folder, which is made if need be, over those of the same names.
pub(crate) fn write_files(dir: &Path, files: &[(&str, String)]) -> Result<Vec<PathBuf>, Failure> {
    let files: Vec<(&str, &[u8])> = files.iter().map(|(name, text)| (*name, text.as_bytes())).collect();
    Ok(reeve_writing::replace(dir, &files)?)
}
