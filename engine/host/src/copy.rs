//! A copy of a library's file in memory: what is measured is what is loaded, whatever happens to the file.

use std::fs::File;
use std::io::{self, Read, Write};
use std::path::Path;
use std::process::Stdio;

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
    pub(crate) fn fill(&mut self, file: &Path) -> io::Result<String> {
        let mut from = File::open(file)?;
        let mut measure = Measure::default();
        // Piece by piece: a buffer for the whole would cost more time than the copying.
        let mut buffer = vec![0; 1 << 16];
        loop {
            let count = from.read(&mut buffer)?;
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
