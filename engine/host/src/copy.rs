//! A copy of a library's file in memory: what is measured is what is loaded, whatever happens to the file.

use std::fs::File;
use std::io::{Read, Write};
use std::path::Path;
use std::process::Stdio;

use reeve_door::{MOST_LIBRARY, OpenError};

use crate::digest::Measure;

/// A copy of a file, where the system offers files in memory; else the file itself is loaded.
pub(crate) struct Copy(Option<File>);

impl Copy {
    /// A copy with nothing in it yet.
    pub(crate) fn new() -> Self {
        Self(in_memory())
    }

    /// Whether there is one.
    pub(crate) fn is_there(&self) -> bool {
        self.0.is_some()
    }

    /// The copy in the place of a stream, for the process that loads it.
    pub(crate) fn handed_over(&self) -> Stdio {
        let shared = self.0.as_ref().and_then(|copy| copy.try_clone().ok());
        shared.map_or_else(Stdio::null, Stdio::from)
    }

    /// Copies a file into it, and measures it on the way.
    ///
    /// # Errors
    /// When it can't be read, is no plain file, or is far too large for a library.
    pub(crate) fn fill(&mut self, file: &Path) -> Result<String, OpenError> {
        let mut from = reeve_door::open(file)?.take(MOST_LIBRARY + 1);
        let mut measure = Measure::default();
        // Piece by piece: a buffer for the whole would cost more time than the copying.
        let mut buffer = vec![0; 1 << 16];
        loop {
            let count = from.read(&mut buffer)?;
            if from.limit() == 0 {
                return Err(OpenError::TooLong(MOST_LIBRARY));
            }
            if count == 0 {
                return Ok(measure.digest());
            }
            let piece = &buffer[..count];
            measure.add(piece);
            if let Some(copy) = &mut self.0 {
                copy.write_all(piece)?;
            }
        }
    }
}

#[cfg(target_os = "linux")]
fn in_memory() -> Option<File> {
    rustix::fs::memfd_create("library", rustix::fs::MemfdFlags::CLOEXEC).ok().map(File::from)
}

#[cfg(not(target_os = "linux"))]
fn in_memory() -> Option<File> {
    None
}

#[cfg(all(test, unix))]
#[allow(clippy::expect_used, reason = "a test may stop at the first surprise")]
mod tests {
    use super::*;

    /// A device without an end, and a folder: a FIFO is met in the tests of the shops.
    #[test]
    fn only_plain_files_are_copied() {
        for path in ["/dev/zero", "/dev/tty", "/"] {
            Copy::new().fill(Path::new(path)).expect_err(path);
        }
    }
}
