//! How a library is held back on Linux.
//!
//! In two steps. Before the file is looked at, the process gives up its rights, and may open nothing but the system's own
//! libraries, to read ([`Begun::begin`]). These are loaded first. Then comes the last list of calls ([`Begun::close`]): it
//! holds while the one file is mapped, while its constructors and resolvers run, and ever after. What mapping needs is
//! bound to one descriptor, which the system's loader closes when it is done.

mod calls;
mod descriptors;
mod files;
mod handing;
mod needed;
mod rights;

use std::error::Error;
use std::fs::File;
use std::io::Seek;
use std::os::fd::AsRawFd;

use seccompiler::{BpfProgram, apply_filter};

use super::guard::{Guarded, ONLY_COMPUTING};
use super::{Pipes, load};
use crate::error::LibraryError;

/// The first step, done; the second is ready.
pub(super) struct Begun {
    last: Vec<BpfProgram>,
}

impl Begun {
    /// Gives up all rights, for good. Yields what is needed for the second step, where the system offers that.
    ///
    /// `program` is the process that this one must not outlive.
    pub(super) fn begin(pipes: &Pipes, program: u32, held: &mut Guarded) -> Option<Self> {
        let Some(copy) = &pipes.copy else {
            held.must(false, "a copy of the library in memory");
            return None;
        };
        let [from, to, copy] = [&pipes.from, &pipes.to, copy].map(|pipe| pipe.as_raw_fd());
        rights::give_up(held);
        held.must(rights::ends_with(program), "an end with the program that asks");
        held.may(descriptors::close_all_but(&[from, to, copy]), "nothing open but its pipes");
        held.may(files::only(files::LIBRARIES), "no files but the system's libraries, and those only to read");
        held.may(files::no_signals(), "no signals to others");
        let last = calls::last(from, to, copy).and_then(|last| Ok((last, apply_filter(&calls::first()?)?)));
        held.must(last.is_ok(), ONLY_COMPUTING);
        last.ok().map(|(last, ())| Self { last })
    }

    /// Loads what the system has of what the library needs, and takes everything else away.
    ///
    /// # Errors
    /// A [`LibraryError`] when the file is no library, when the system has not what it needs, or refuses the list.
    pub(super) fn close(self, library: &mut File) -> Result<(), LibraryError> {
        for name in needed::needed(library)? {
            load::load_system(&name)?;
        }
        let mut closed = || -> Result<(), Box<dyn Error>> {
            library.rewind()?;
            handing::hand_over(library.as_raw_fd())?;
            // Nothing is open to it any more, not even to read.
            files::only(&[]);
            self.last.iter().try_for_each(|program| apply_filter(program))?;
            Ok(())
        };
        closed().map_err(|error| LibraryError::Unguarded(vec![error.to_string()]))
    }
}
