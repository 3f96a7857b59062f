//! Hands the system's loader the one file, without any call that opens one.
//!
//! The loader opens what it loads by a path, and no list of calls can tell one path from another. So opening never gets to the
//! system. The call is answered here, in the process itself: once with the descriptor of the library, then with a refusal.
//! The same goes for the call that looks at a file by descriptor or by path.

#![allow(unsafe_code, reason = "the answer to a call is put where the processor looks for it")]

use std::io;
use std::os::fd::RawFd;
use std::sync::atomic::{AtomicI32, Ordering};
use std::{mem, ptr};

use libc::{c_int, c_long, c_void, siginfo_t, ucontext_t};

const NONE: i32 = -1;
/// The library's descriptor.
static LIBRARY: AtomicI32 = AtomicI32::new(NONE);
/// The same, until it has been handed over.
static WAITING: AtomicI32 = AtomicI32::new(NONE);

/// Makes ready to hand over a descriptor, once.
pub(super) fn hand_over(library: RawFd) -> io::Result<()> {
    LIBRARY.store(library, Ordering::Relaxed);
    WAITING.store(library, Ordering::Relaxed);
    let answer: extern "C" fn(c_int, *mut siginfo_t, *mut c_void) = answer;
    // SAFETY: all zeros is an action without flags and with an empty mask.
    let mut action: libc::sigaction = unsafe { mem::zeroed() };
    action.sa_sigaction = answer as libc::sighandler_t;
    action.sa_flags = libc::SA_SIGINFO;
    // SAFETY: the action is this frame's own, and the handler below calls nothing that may not be called there.
    match unsafe { libc::sigaction(libc::SIGSYS, &raw const action, ptr::null_mut()) } {
        0 => Ok(()),
        _ => Err(io::Error::last_os_error()),
    }
}

/// Answers the call that was stopped.
extern "C" fn answer(_: c_int, _: *mut siginfo_t, context: *mut c_void) {
    // SAFETY: the system hands in the state of the one thread, which goes on with what is written there.
    let context = unsafe { &mut *context.cast::<ucontext_t>() };
    let call = registers::call(context);
    let answer = if call == libc::SYS_newfstatat {
        look(registers::argument(context, 0), registers::argument(context, 2))
    } else {
        let library = WAITING.swap(NONE, Ordering::Relaxed);
        if library == NONE { -c_long::from(libc::EPERM) } else { c_long::from(library) }
    };
    registers::answer(context, answer);
}

/// What the system tells of the library's descriptor; of no other.
fn look(file: c_long, into: c_long) -> c_long {
    if file != c_long::from(LIBRARY.load(Ordering::Relaxed)) {
        return -c_long::from(libc::EPERM);
    }
    // SAFETY: the system itself refuses an address that it can't write to, as it would have done for the call.
    let done = unsafe { libc::syscall(libc::SYS_fstat, file, into) };
    if done < 0 { -c_long::from(libc::EPERM) } else { done }
}

/// Where a stopped call's number, arguments and answer stand: `seccomp(2)`, `syscall(2)`.
#[cfg(target_arch = "x86_64")]
mod registers {
    use libc::{REG_R10, REG_RAX, REG_RDI, REG_RDX, REG_RSI, c_int, c_long, ucontext_t};

    const ARGUMENTS: [c_int; 4] = [REG_RDI, REG_RSI, REG_RDX, REG_R10];

    fn at(register: c_int) -> usize {
        usize::try_from(register).unwrap_or_default()
    }

    pub(super) fn call(context: &ucontext_t) -> c_long {
        context.uc_mcontext.gregs[at(REG_RAX)]
    }

    pub(super) fn argument(context: &ucontext_t, place: usize) -> c_long {
        context.uc_mcontext.gregs[at(ARGUMENTS[place])]
    }

    pub(super) fn answer(context: &mut ucontext_t, value: c_long) {
        context.uc_mcontext.gregs[at(REG_RAX)] = value;
    }
}

#[cfg(target_arch = "aarch64")]
mod registers {
    use libc::{c_long, ucontext_t};

    pub(super) fn call(context: &ucontext_t) -> c_long {
        context.uc_mcontext.regs[8].cast_signed()
    }

    pub(super) fn argument(context: &ucontext_t, place: usize) -> c_long {
        context.uc_mcontext.regs[place].cast_signed()
    }

    pub(super) fn answer(context: &mut ucontext_t, value: c_long) {
        context.uc_mcontext.regs[0] = value.cast_unsigned();
    }
}
