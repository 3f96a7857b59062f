//! What holds a library back, as far as the system offers it.
//!
//! Each guard stands by itself: where one is not to be had the others still hold, and the list says which do.

/// Restricts this process, for good. Yields what holds now, in words.
pub(super) fn restrict(memory_mib: u32) -> Vec<String> {
    let mut guards = Vec::new();
    #[cfg(unix)]
    guards.extend(limits(memory_mib));
    #[cfg(not(unix))]
    let _ = memory_mib;
    #[cfg(target_os = "linux")]
    guards.extend(linux::restrict());
    guards
}

#[cfg(unix)]
fn limits(memory_mib: u32) -> Vec<String> {
    use rustix::process::{Resource, Rlimit, setrlimit};
    // Beyond this a process that lost its program ends by itself.
    const SECONDS: u64 = 600;
    let set = |resource, most: u64| setrlimit(resource, Rlimit { current: Some(most), maximum: Some(most) }).is_ok();
    let mut guards = Vec::new();
    let mut hold = |held: bool, words: String| guards.extend(held.then_some(words));
    hold(set(Resource::As, u64::from(memory_mib) * 1024 * 1024), format!("at most {memory_mib} MiB of memory"));
    hold(set(Resource::Fsize, 0), "no byte into a file".to_owned());
    hold(set(Resource::Cpu, SECONDS) && set(Resource::Core, 0), format!("at most {SECONDS} s of the processor"));
    guards
}

#[cfg(target_os = "linux")]
mod linux {
    use std::collections::BTreeMap;
    use std::error::Error;

    use landlock::{
        ABI, Access, AccessFs, AccessNet, Ruleset, RulesetAttr, RulesetCreatedAttr, RulesetStatus, path_beneath_rules,
    };
    use rustix::process::{Signal, getpid, getppid, set_parent_process_death_signal};
    use rustix::thread::set_no_new_privs;
    use seccompiler::{
        BpfProgram, SeccompAction, SeccompCmpArgLen, SeccompCmpOp, SeccompCondition, SeccompFilter, SeccompRule,
        apply_filter,
    };

    /// Where a system keeps what a library is linked with. Reading is allowed beneath these and nowhere else.
    const LIBRARIES: &[&str] =
        &["/usr", "/lib", "/lib64", "/lib32", "/etc/ld.so.cache", "/nix/store", "/gnu/store", "/opt", "/dev/null"];

    pub(super) fn restrict() -> Vec<String> {
        let mut guards = Vec::new();
        let mut hold = |held: bool, words: &str| guards.extend(held.then(|| words.to_owned()));
        let orphaned = set_parent_process_death_signal(Some(Signal::KILL)).is_err() || getppid().is_none();
        hold(!orphaned, "an end with the program that asks");
        hold(set_no_new_privs(true).is_ok(), "no new privileges");
        hold(files().unwrap_or(false), "no files but the system's libraries, and those only to read");
        hold(calls().is_ok(), "no network, no other programs or threads, no writing");
        guards
    }

    /// No file but those that libraries are linked with, and none to write; no network.
    fn files() -> Result<bool, Box<dyn Error>> {
        let abi = ABI::V5;
        let status = Ruleset::default()
            .handle_access(AccessFs::from_all(abi))?
            .handle_access(AccessNet::from_all(abi))?
            .create()?
            .add_rules(path_beneath_rules(LIBRARIES, AccessFs::from_read(abi)))?
            .restrict_self()?;
        Ok(status.ruleset != RulesetStatus::NotEnforced)
    }

    /// System calls that a library has no use for fail as not permitted.
    fn calls() -> Result<(), Box<dyn Error>> {
        let filter = SeccompFilter::new(
            forbidden()?,
            SeccompAction::Allow,
            SeccompAction::Errno(u32::try_from(libc::EPERM)?),
            std::env::consts::ARCH.try_into()?,
        )?;
        let program: BpfProgram = filter.try_into()?;
        Ok(apply_filter(&program)?)
    }

    type Rules = BTreeMap<i64, Vec<SeccompRule>>;

    fn forbidden() -> Result<Rules, Box<dyn Error>> {
        let mut rules: Rules = ALWAYS.iter().map(|call| (*call, Vec::new())).collect();
        #[cfg(target_arch = "x86_64")]
        rules.extend(OLD.iter().map(|call| (*call, Vec::new())));
        rules.insert(libc::SYS_openat, writing(2)?);
        #[cfg(target_arch = "x86_64")]
        rules.insert(libc::SYS_open, writing(1)?);
        // Ending itself is allowed, which is what an abort does.
        let own = u64::try_from(getpid().as_raw_nonzero().get())?;
        rules.insert(libc::SYS_tgkill, vec![rule(0, SeccompCmpOp::Ne, own)?]);
        Ok(rules)
    }

    const ALWAYS: &[i64] = &[
        libc::SYS_clone,
        libc::SYS_clone3,
        libc::SYS_openat2,
        libc::SYS_io_uring_setup,
        libc::SYS_socket,
        libc::SYS_socketpair,
        libc::SYS_connect,
        libc::SYS_bind,
        libc::SYS_execve,
        libc::SYS_execveat,
        libc::SYS_ptrace,
        libc::SYS_process_vm_readv,
        libc::SYS_process_vm_writev,
        libc::SYS_kill,
        libc::SYS_tkill,
        libc::SYS_pidfd_open,
        libc::SYS_pidfd_send_signal,
        libc::SYS_unlinkat,
        libc::SYS_renameat2,
        libc::SYS_mkdirat,
        libc::SYS_linkat,
        libc::SYS_symlinkat,
        libc::SYS_mknodat,
        libc::SYS_truncate,
        libc::SYS_ftruncate,
        libc::SYS_fchmod,
        libc::SYS_fchmodat,
        libc::SYS_fchown,
        libc::SYS_fchownat,
        libc::SYS_mount,
        libc::SYS_unshare,
        libc::SYS_setns,
        libc::SYS_bpf,
    ];

    #[cfg(target_arch = "x86_64")]
    const OLD: &[i64] = &[
        libc::SYS_fork,
        libc::SYS_vfork,
        libc::SYS_creat,
        libc::SYS_unlink,
        libc::SYS_rename,
        libc::SYS_renameat,
        libc::SYS_mkdir,
        libc::SYS_rmdir,
        libc::SYS_link,
        libc::SYS_symlink,
        libc::SYS_mknod,
        libc::SYS_chmod,
        libc::SYS_chown,
        libc::SYS_lchown,
    ];

    fn rule(argument: u8, op: SeccompCmpOp, value: u64) -> Result<SeccompRule, Box<dyn Error>> {
        Ok(SeccompRule::new(vec![SeccompCondition::new(argument, SeccompCmpArgLen::Dword, op, value)?])?)
    }

    /// Matches flags that open a file to write, to make or to empty it.
    fn writing(argument: u8) -> Result<Vec<SeccompRule>, Box<dyn Error>> {
        let ways = [
            (libc::O_ACCMODE, libc::O_WRONLY),
            (libc::O_ACCMODE, libc::O_RDWR),
            (libc::O_CREAT, libc::O_CREAT),
            (libc::O_TRUNC, libc::O_TRUNC),
        ];
        let way = |(mask, value): (i32, i32)| {
            rule(argument, SeccompCmpOp::MaskedEq(u64::try_from(mask)?), u64::try_from(value)?)
        };
        ways.into_iter().map(way).collect()
    }
}
