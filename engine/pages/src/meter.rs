//! How much a page may take that a shop's own templates lay out.

use std::io;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};

use tera::{Error, TeraResult};

/// The most steps: rounds of loops, values worked out, parts called. The largest pages of the program's own, tables of ten
/// thousand rows, take some three hundred thousand.
pub const MOST_STEPS: u64 = 2_000_000;

/// The most bytes of a page. The largest of the program's own, ten thousand designs compared as HTML, has some 25 million.
pub const MOST_BYTES: usize = 64_000_000;

/// Why a page is stopped that grows past [`MOST_BYTES`].
pub(crate) const TOO_LONG: &str = "the page grows past 64 million characters";

/// Is told the number of every mark passed.
pub type Watch = Box<dyn Fn(u64) + Send + Sync>;

/// Counts what a page takes.
pub(crate) struct Meter {
    steps: AtomicU64,
    last: AtomicU64,
    spent: AtomicBool,
    watch: Option<Watch>,
}

/// Before the first mark.
const NOWHERE: u64 = u64::MAX;

impl Meter {
    pub(crate) fn new(watch: Option<Watch>) -> Self {
        Self { steps: AtomicU64::new(0), last: AtomicU64::new(NOWHERE), spent: AtomicBool::new(false), watch }
    }

    /// Begins another page.
    pub(crate) fn begin(&self) {
        self.steps.store(0, Ordering::Relaxed);
        self.last.store(NOWHERE, Ordering::Relaxed);
        self.spent.store(false, Ordering::Relaxed);
    }

    /// Passes a mark. It prints nothing.
    pub(crate) fn pass(&self, mark: u64) -> TeraResult<&'static str> {
        self.last.store(mark, Ordering::Relaxed);
        if let Some(watch) = &self.watch {
            watch(mark);
        }
        if self.steps.fetch_add(1, Ordering::Relaxed) >= MOST_STEPS {
            self.spent.store(true, Ordering::Relaxed);
            return Err(Error::message("it is still not done after 2 million steps"));
        }
        Ok("")
    }

    /// The mark passed last.
    pub(crate) fn last(&self) -> Option<usize> {
        usize::try_from(self.last.load(Ordering::Relaxed)).ok().filter(|last| *last as u64 != NOWHERE)
    }

    /// Whether the page took too many steps.
    pub(crate) fn is_spent(&self) -> bool {
        self.spent.load(Ordering::Relaxed)
    }
}

/// A page as it is written, up to [`MOST_BYTES`].
pub(crate) struct Bounded {
    pub(crate) text: Vec<u8>,
    pub(crate) full: bool,
}

impl io::Write for Bounded {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        if self.text.len().saturating_add(bytes.len()) > MOST_BYTES {
            self.full = true;
            return Err(io::ErrorKind::FileTooLarge.into());
        }
        self.text.extend_from_slice(bytes);
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

    use std::io::Write;

    use super::*;

    #[test]
    fn one_step_too_many_is_a_fault_and_the_next_page_begins_anew() {
        let meter = Meter::new(None);
        meter.begin();
        for mark in 0..MOST_STEPS {
            meter.pass(mark % 7).unwrap();
        }
        assert!(!meter.is_spent());
        meter.pass(3).unwrap_err();
        assert_eq!((meter.is_spent(), meter.last()), (true, Some(3)));
        meter.begin();
        assert_eq!((meter.is_spent(), meter.last()), (false, None));
        meter.pass(0).unwrap();
    }

    #[test]
    fn a_page_is_written_up_to_its_limit_and_no_further() {
        let mut page = Bounded { text: vec![b' '; MOST_BYTES - 3], full: false };
        page.write_all(b"abc").unwrap();
        page.write_all(b"d").unwrap_err();
        assert!(page.full && page.text.ends_with(b"abc"));
    }
}
