//! What holds a library back, as far as the system offers it.
//!
//! On Linux all of it is to be had, and a library is not loaded without it. Elsewhere there are limits at best: then a
//! library is only loaded on the maker's word.

use std::fs::File;

use super::Pipes;
use super::system::Begun;
use crate::error::LibraryError;

/// What holds and what must hold but does not, in words.
#[derive(Default)]
pub(super) struct Guarded {
    holds: Vec<String>,
    lacks: Vec<String>,
}

impl Guarded {
    /// A guard that a library is not loaded without.
    pub(super) fn must(&mut self, holds: bool, words: &str) {
        if holds { &mut self.holds } else { &mut self.lacks }.push(words.to_owned());
    }

    /// A guard that stands behind others.
    pub(super) fn may(&mut self, holds: bool, words: &str) {
        self.holds.extend(holds.then(|| words.to_owned()));
    }
}

/// The guard that matters most.
pub(super) const ONLY_COMPUTING: &str = "no call of the system but what computing takes";

/// The guards, as far as they hold before the library is known.
pub(super) struct Guard {
    held: Guarded,
    begun: Option<Begun>,
}

impl Guard {
    /// Restricts this process, for good. `program` is the process that started it.
    pub(super) fn begin(memory_mib: u32, program: u32, pipes: &Pipes) -> Self {
        let mut held = Guarded::default();
        limits(memory_mib, &mut held);
        let begun = Begun::begin(pipes, program, &mut held);
        Self { held, begun }
    }

    /// Restricts it to what computing takes, once the library's file is there. Yields what holds, in words.
    ///
    /// # Errors
    /// A [`LibraryError`] when something does not hold that must, and the maker has not said that it need not.
    pub(super) fn close(self, library: Option<&mut File>, waived: bool) -> Result<Vec<String>, LibraryError> {
        if !waived && !self.held.lacks.is_empty() {
            return Err(LibraryError::Unguarded(self.held.lacks));
        }
        if let (Some(begun), Some(library)) = (self.begun, library) {
            begun.close(library)?;
        }
        Ok(self.held.holds)
    }
}

#[cfg(unix)]
fn limits(memory_mib: u32, held: &mut Guarded) {
    use rustix::process::{Resource, Rlimit, setrlimit};
    // Beyond this a process that lost its program ends by itself.
    const SECONDS: u64 = 600;
    let set = |resource, most: u64| setrlimit(resource, Rlimit { current: Some(most), maximum: Some(most) }).is_ok();
    held.must(set(Resource::As, u64::from(memory_mib) * 1024 * 1024), &format!("at most {memory_mib} MiB of memory"));
    held.must(set(Resource::Fsize, 0), "no byte into a file");
    let processor = set(Resource::Cpu, SECONDS) && set(Resource::Core, 0) && set(Resource::Memlock, 0);
    held.must(processor, &format!("at most {SECONDS} s of the processor"));
}

#[cfg(not(unix))]
fn limits(_: u32, held: &mut Guarded) {
    held.must(false, "a limit of memory");
}
