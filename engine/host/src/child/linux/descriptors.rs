//! Descriptors that whoever started the program left open, and that are no business of a library's.

#![allow(unsafe_code, reason = "closing what nobody here owns")]

use std::os::fd::RawFd;

/// Closes every descriptor but the standard streams and those named. Whether it is done: kernels before 5.9 can't.
pub(super) fn close_all_but(kept: &[RawFd]) -> bool {
    let mut kept = kept.to_vec();
    kept.sort_unstable();
    let starts = std::iter::once(libc::STDERR_FILENO).chain(kept.iter().copied()).map(|fd| fd + 1);
    let ends = kept.iter().map(|fd| fd - 1).chain([RawFd::MAX]);
    starts.zip(ends).filter(|(first, last)| first <= last).all(|(first, last)| {
        // SAFETY: whatever is closed here belongs to no value of this process, which has only just begun.
        unsafe { libc::syscall(libc::SYS_close_range, first, last, 0) == 0 }
    })
}
