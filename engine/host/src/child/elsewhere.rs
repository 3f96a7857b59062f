//! Where the system offers no list of calls, nothing holds a library back but its limits.

use std::fs::File;

use super::Pipes;
use super::guard::Held;
use crate::error::LibraryError;

/// Nothing could be begun.
pub(super) struct Begun;

impl Begun {
    pub(super) fn begin(_: &Pipes, _: u32, held: &mut Held) -> Option<Self> {
        held.must(false, super::guard::ONLY_COMPUTING);
        None
    }

    #[allow(clippy::unused_self, reason = "as on Linux")]
    pub(super) fn close(self, _: &mut File) -> Result<(), LibraryError> {
        Ok(())
    }
}
