//! Runs libraries of computed knots, each in a process of its own.
//!
//! A library is native code: it may crash, hang, eat memory or lie. So it is never loaded into the program that holds the
//! maker's files. The program starts itself a second time ([`serve`]), with an empty environment and no call of the system
//! but what computing takes, and asks it over two pipes. Whatever happens there comes back as a [`LibraryError`], with what to do
//! about it.
//!
//! Native code is loaded in `child/load.rs` and nowhere else.

mod child;
mod copy;
mod described;
mod digest;
mod error;
mod judged;
mod library;
mod probe;
mod process;
mod wire;

pub use child::{SERVE, serve};
pub use described::{Described, DescribedKnot, DescribedParameter, knot_text};
pub use digest::digest_of;
pub use error::LibraryError;
pub use library::{Guards, Library, Program};
pub use probe::{ProbeFinding, Probed, probe, probe_both};
