//! The calls of the system that a library's process may make: those named here, and no others.
//!
//! Calls of another architecture's table are none of them. What is not named ends the process, so that a library that
//! reaches for more is told of; but what runtimes ask in passing is only refused.

use std::collections::BTreeMap;
use std::error::Error;
use std::os::fd::RawFd;

use libc::{MAP_ANONYMOUS, PROT_EXEC, c_long};
use rustix::process::getpid;
use seccompiler::{
    BpfProgram, SeccompAction, SeccompCmpArgLen, SeccompCmpOp, SeccompCondition, SeccompFilter, SeccompRule,
};

type Rules = BTreeMap<i64, Vec<SeccompRule>>;
type Built<T> = Result<T, Box<dyn Error>>;

/// Memory without instructions, the clock, chance, its own name, its own end: whatever they are called with.
const COMPUTING: &[c_long] = &[
    libc::SYS_brk,
    libc::SYS_clock_getres,
    libc::SYS_clock_gettime,
    libc::SYS_close,
    libc::SYS_exit,
    libc::SYS_exit_group,
    libc::SYS_futex,
    libc::SYS_getpid,
    libc::SYS_getrandom,
    libc::SYS_gettid,
    libc::SYS_gettimeofday,
    libc::SYS_mprotect,
    libc::SYS_mremap,
    libc::SYS_munmap,
    libc::SYS_restart_syscall,
    libc::SYS_rt_sigprocmask,
    libc::SYS_rt_sigreturn,
    libc::SYS_sched_yield,
    libc::SYS_sigaltstack,
];

/// What runtimes and loaders ask in passing, and do without.
const ASKED_IN_PASSING: &[c_long] = &[
    libc::SYS_faccessat,
    libc::SYS_fcntl,
    libc::SYS_getcwd,
    libc::SYS_getegid,
    libc::SYS_geteuid,
    libc::SYS_getgid,
    libc::SYS_getppid,
    libc::SYS_getrusage,
    libc::SYS_getuid,
    libc::SYS_ioctl,
    libc::SYS_lseek,
    libc::SYS_readlinkat,
    libc::SYS_sched_getaffinity,
    libc::SYS_statx,
    libc::SYS_sysinfo,
    libc::SYS_uname,
    #[cfg(target_arch = "x86_64")]
    libc::SYS_access,
    #[cfg(target_arch = "x86_64")]
    libc::SYS_lstat,
    #[cfg(target_arch = "x86_64")]
    libc::SYS_readlink,
    #[cfg(target_arch = "x86_64")]
    libc::SYS_stat,
];

/// What the loader opens and looks at a file with. It never gets to the system: `handing` answers.
const ANSWERED_HERE: &[c_long] = &[
    libc::SYS_newfstatat,
    libc::SYS_openat,
    #[cfg(target_arch = "x86_64")]
    libc::SYS_open,
];

/// What the first list allows more: loading the system's libraries, and what the last list takes to be laid on.
const LOADING: &[c_long] = &[
    libc::SYS_fstat,
    libc::SYS_landlock_create_ruleset,
    libc::SYS_landlock_restrict_self,
    libc::SYS_lseek,
    libc::SYS_mmap,
    libc::SYS_newfstatat,
    libc::SYS_pread64,
    libc::SYS_read,
    libc::SYS_rt_sigaction,
    libc::SYS_seccomp,
    libc::SYS_write,
];

/// The list while the system's own libraries are loaded. What it does not name fails: they are the system's, and may try.
pub(super) fn first() -> Built<BpfProgram> {
    let mut rules = plain(COMPUTING);
    rules.extend(plain(LOADING));
    rules.insert(libc::SYS_openat, to_read(2)?);
    #[cfg(target_arch = "x86_64")]
    rules.insert(libc::SYS_open, to_read(1)?);
    rules.insert(libc::SYS_prctl, any_of(0, &[libc::PR_SET_NO_NEW_PRIVS])?);
    rules.insert(libc::SYS_tgkill, itself()?);
    program(rules, SeccompAction::Errno(refused()?), SeccompAction::Allow)
}

/// The list for the library, in the order in which it is laid on: of what several say the strictest holds.
pub(super) fn last(from: RawFd, to: RawFd, library: RawFd) -> Built<Vec<BpfProgram>> {
    Ok(vec![
        program(plain(ANSWERED_HERE), SeccompAction::Allow, SeccompAction::Trap)?,
        program(only_refused(library)?, SeccompAction::Allow, SeccompAction::Errno(refused()?))?,
        // From here on no list can be laid on any more.
        program(allowed(from, to, library)?, SeccompAction::KillProcess, SeccompAction::Allow)?,
    ])
}

/// All that does not end the process.
fn allowed(from: RawFd, to: RawFd, library: RawFd) -> Built<Rules> {
    // What is written to the standard streams goes nowhere.
    let written = [to, libc::STDOUT_FILENO, libc::STDERR_FILENO];
    let faults = [libc::SIGABRT, libc::SIGBUS, libc::SIGSEGV];
    let advice = [libc::MADV_DONTNEED, libc::MADV_FREE, libc::MADV_HUGEPAGE, libc::MADV_NOHUGEPAGE];
    let mut rules = plain(COMPUTING);
    rules.extend(plain(ASKED_IN_PASSING));
    rules.extend(plain(ANSWERED_HERE));
    rules.insert(libc::SYS_read, any_of(0, &[from, library])?);
    rules.insert(libc::SYS_write, any_of(0, &written)?);
    rules.insert(libc::SYS_writev, any_of(0, &written)?);
    rules.insert(libc::SYS_pread64, any_of(0, &[library])?);
    rules.insert(libc::SYS_fstat, any_of(0, &[library, 0, libc::STDOUT_FILENO, libc::STDERR_FILENO])?);
    rules.insert(libc::SYS_mmap, [vec![has(3, MAP_ANONYMOUS)?], any_of(4, &[library])?].concat());
    rules.insert(libc::SYS_madvise, any_of(2, &advice)?);
    rules.insert(libc::SYS_rt_sigaction, any_of(0, &faults)?);
    rules.insert(libc::SYS_tgkill, itself()?);
    Ok(rules)
}

/// What fails without an end: what is asked in passing, and memory with instructions that are not the library's own.
fn only_refused(library: RawFd) -> Built<Rules> {
    let mut rules = plain(ASKED_IN_PASSING);
    rules.insert(libc::SYS_mprotect, vec![has(2, PROT_EXEC)?]);
    let elsewhere = condition(4, SeccompCmpOp::Ne, library)?;
    rules.insert(libc::SYS_mmap, vec![SeccompRule::new(vec![masked(2, PROT_EXEC, PROT_EXEC)?, elsewhere])?]);
    Ok(rules)
}

fn plain(calls: &[c_long]) -> Rules {
    calls.iter().map(|call| (*call, Vec::new())).collect()
}

/// A signal to this process and its one thread, which is what an abort sends.
fn itself() -> Built<Vec<SeccompRule>> {
    let own = getpid().as_raw_nonzero().get();
    let both = vec![condition(0, SeccompCmpOp::Eq, own)?, condition(1, SeccompCmpOp::Eq, own)?];
    Ok(vec![SeccompRule::new(both)?])
}

/// Flags that open a file to read, and do nothing else.
fn to_read(argument: u8) -> Built<Vec<SeccompRule>> {
    let others = !(libc::O_CLOEXEC | libc::O_NOFOLLOW | libc::O_DIRECTORY | LARGE_FILE);
    Ok(vec![SeccompRule::new(vec![masked(argument, others, libc::O_RDONLY)?])?])
}

/// The kernel's own `O_LARGEFILE`, which the C library shows as 0 where every file may be large (x86-64).
#[cfg(target_arch = "x86_64")]
const LARGE_FILE: i32 = 0o10_0000;
#[cfg(not(target_arch = "x86_64"))]
const LARGE_FILE: i32 = 0o40_0000;

fn any_of(argument: u8, values: &[i32]) -> Built<Vec<SeccompRule>> {
    values.iter().map(|value| Ok(SeccompRule::new(vec![condition(argument, SeccompCmpOp::Eq, *value)?])?)).collect()
}

fn has(argument: u8, bits: i32) -> Built<SeccompRule> {
    Ok(SeccompRule::new(vec![masked(argument, bits, bits)?])?)
}

fn masked(argument: u8, mask: i32, value: i32) -> Built<SeccompCondition> {
    condition(argument, SeccompCmpOp::MaskedEq(u64::from(mask.cast_unsigned())), value)
}

/// The kernel takes each of these arguments as 32 bits, so more are not compared.
fn condition(argument: u8, op: SeccompCmpOp, value: i32) -> Built<SeccompCondition> {
    Ok(SeccompCondition::new(argument, SeccompCmpArgLen::Dword, op, u64::from(value.cast_unsigned()))?)
}

fn refused() -> Built<u32> {
    Ok(u32::try_from(libc::EPERM)?)
}

fn program(rules: Rules, others: SeccompAction, these: SeccompAction) -> Built<BpfProgram> {
    Ok(SeccompFilter::new(rules, others, these, std::env::consts::ARCH.try_into()?)?.try_into()?)
}
