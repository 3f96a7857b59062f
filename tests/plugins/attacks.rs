//! What a library must not do to the maker's files, her other programs and her machine: each call of the system, from a
//! constructor, from a resolver, at the first call and at the thousandth, as root and as another.
//!
//! Numbers of calls are those of Linux for x86-64 (`arch/x86/entry/syscalls/syscall_64.tbl`), of `int 0x80` those of
//! `syscall_32.tbl`.

use std::fs;
use std::os::unix::fs::{MetadataExt, PermissionsExt, chown};
use std::os::unix::process::CommandExt;
use std::path::Path;
use std::process::Command;

use reeve_catalogue::{Compute, Core, Question, Setting, Unknown};
use reeve_host::{Guards, Library, digest_of};
use reeve_measure::Length;
use reeve_tests::{BUILT, host, reeve, root};
use tempfile::TempDir;

use crate::workshop::compile;

/// A call: what it is, its number, and its arguments.
type Attack = (&'static str, i64, &'static [i64]);

/// What stands for the maker's file, the program, the process itself, room to write into, a text, and what goes with a queued
/// signal: see attacks.c.
const FILE: i64 = 0x7e00_0001;
const PARENT: i64 = FILE + 1;
const ITSELF: i64 = FILE + 2;
const ROOM: i64 = FILE + 3;
const TEXT: i64 = FILE + 4;
const QUEUED: i64 = FILE + 5;
/// `AT_FDCWD`.
const HERE: i64 = -100;
const KILL: i64 = 9;
const STOP: i64 = 19;

const ATTACKS: &[Attack] = &[
    // Her files: modes, times, attributes, owners, names, bytes.
    ("chmod", 90, &[FILE, 0]),
    ("fchmod of a descriptor", 91, &[0, 0]),
    ("fchmodat", 268, &[HERE, FILE, 0]),
    ("fchmodat2", 452, &[HERE, FILE, 0, 0]),
    ("utime", 132, &[FILE, 0]),
    ("utimes", 235, &[FILE, 0]),
    ("futimesat", 261, &[HERE, FILE, 0]),
    ("utimensat", 280, &[HERE, FILE, 0, 0]),
    ("setxattr", 188, &[FILE, TEXT, TEXT, 4, 0]),
    ("lsetxattr", 189, &[FILE, TEXT, TEXT, 4, 0]),
    ("setxattrat", 463, &[HERE, FILE, 0, TEXT, ROOM, 16]),
    ("removexattr", 197, &[FILE, TEXT]),
    ("chown", 92, &[FILE, 65534, 65534]),
    ("lchown", 94, &[FILE, 65534, 65534]),
    ("fchownat", 260, &[HERE, FILE, 65534, 65534, 0]),
    ("unlink", 87, &[FILE]),
    ("unlinkat", 263, &[HERE, FILE, 0]),
    ("rename", 82, &[FILE, TEXT]),
    ("renameat2", 316, &[HERE, FILE, HERE, TEXT, 0]),
    ("link", 86, &[FILE, TEXT]),
    ("symlink", 88, &[FILE, TEXT]),
    ("mkdir", 83, &[TEXT, 0o700]),
    ("mknod", 133, &[TEXT, 0o10_600, 0]),
    ("truncate", 76, &[FILE, 0]),
    ("creat", 85, &[FILE, 0o600]),
    ("open to read", 2, &[FILE, 0]),
    ("open to write", 2, &[FILE, 1]),
    ("openat to read", 257, &[HERE, FILE, 0]),
    ("openat of a path alone", 257, &[HERE, FILE, 0o10_000_000]),
    ("openat2", 437, &[HERE, FILE, ROOM, 24]),
    ("name_to_handle_at", 303, &[HERE, FILE, ROOM, ROOM, 0]),
    // What of them there is.
    ("stat", 4, &[FILE, ROOM]),
    ("lstat", 6, &[FILE, ROOM]),
    ("newfstatat", 262, &[HERE, FILE, ROOM, 0]),
    ("newfstatat past a descriptor", 262, &[102, FILE, ROOM, 0x1000]),
    ("statx", 332, &[HERE, FILE, 0, 0xfff, ROOM]),
    ("statfs", 137, &[FILE, ROOM]),
    ("access", 21, &[FILE, 0]),
    ("faccessat2", 439, &[HERE, FILE, 0, 0]),
    ("readlink", 89, &[FILE, ROOM, 64]),
    ("getxattr", 191, &[FILE, TEXT, ROOM, 64]),
    ("chdir", 80, &[TEXT]),
    ("inotify_init1", 294, &[0]),
    // The program that asks, and others.
    ("kill", 62, &[PARENT, KILL]),
    ("tkill", 200, &[PARENT, KILL]),
    ("tgkill", 234, &[PARENT, PARENT, KILL]),
    ("rt_sigqueueinfo", 129, &[PARENT, STOP, QUEUED]),
    ("rt_tgsigqueueinfo", 297, &[PARENT, PARENT, KILL, QUEUED]),
    ("pidfd_open", 434, &[PARENT, 0]),
    ("ptrace", 101, &[16, PARENT, 0, 0]),
    ("process_vm_readv", 310, &[PARENT, ROOM, 1, ROOM, 1, 0]),
    ("prlimit64", 302, &[PARENT, 7, ROOM, 0]),
    ("setpriority", 141, &[0, PARENT, 19]),
    ("getpriority", 140, &[0, PARENT]),
    ("sched_setaffinity", 203, &[PARENT, 8, ROOM]),
    ("sched_setscheduler", 144, &[PARENT, 5, ROOM]),
    ("sched_setattr", 314, &[PARENT, ROOM, 0]),
    ("ioprio_set", 251, &[1, PARENT, 0x6000]),
    ("setpgid", 109, &[0, PARENT]),
    ("setsid", 112, &[]),
    ("kcmp", 312, &[PARENT, ITSELF, 0, 0, 0]),
    // What would stay behind.
    ("prctl: outlive the program", 157, &[1, 0]),
    ("clone", 56, &[17, 0, 0, 0, 0]),
    ("clone3", 435, &[ROOM, 88]),
    ("fork", 57, &[]),
    ("execve", 59, &[FILE, 0, 0]),
    ("shmget", 29, &[0, 4097, 0o1600]),
    ("shmat", 30, &[0, 0, 0]),
    ("msgget", 68, &[0, 0o1600]),
    ("semget", 64, &[0, 1, 0o1600]),
    ("mq_open", 240, &[TEXT, 0o100, 0o600, 0]),
    ("add_key", 248, &[TEXT, TEXT, TEXT, 4, -4]),
    ("keyctl", 250, &[0, -4, 1]),
    ("memfd_create", 319, &[TEXT, 0]),
    ("memfd_secret", 447, &[0]),
    ("timer_create", 222, &[0, 0, ROOM]),
    ("setitimer", 38, &[0, ROOM, 0]),
    ("alarm", 37, &[0]),
    ("nanosleep", 35, &[ROOM, 0]),
    ("io_uring_setup", 425, &[1, ROOM]),
    ("userfaultfd", 323, &[0]),
    ("perf_event_open", 298, &[ROOM, 0, -1, -1, 0]),
    ("bpf", 321, &[0, ROOM, 16]),
    ("seccomp", 317, &[2, 0, 0]),
    ("landlock_create_ruleset", 444, &[0, 0, 1]),
    // The network, and other descriptors.
    ("socket", 41, &[2, 2, 0]),
    ("socketpair", 53, &[1, 1, 0, ROOM]),
    ("connect", 42, &[0, ROOM, 16]),
    ("pipe2", 293, &[ROOM, 0]),
    ("dup", 32, &[0]),
    ("dup2 over its pipe", 33, &[0, 101]),
    ("fcntl: another descriptor", 72, &[0, 0, 0]),
    ("ioctl of a terminal", 16, &[0, 0x5401, ROOM]),
    ("sendfile", 40, &[1, 0, 0, 1]),
    ("read of standard input", 0, &[0, ROOM, 1]),
    ("write to what the program asks by", 1, &[100, TEXT, 0]),
    // The machine, were it root's. Each is one that changes nothing if it is let through.
    ("clock_settime", 227, &[9, ROOM]),
    ("settimeofday", 164, &[0, 0]),
    ("adjtimex", 159, &[ROOM]),
    ("sethostname", 170, &[TEXT, 65]),
    ("chroot", 161, &[FILE]),
    ("umount2", 166, &[FILE, 0]),
    ("mount", 165, &[FILE, FILE, TEXT, 0, 0]),
    ("pivot_root", 155, &[FILE, FILE]),
    ("reboot", 169, &[0, 0, 0, 0]),
    ("unshare", 272, &[0]),
    ("setns", 308, &[0, 0]),
    ("swapon", 167, &[FILE, 0]),
    ("init_module", 175, &[ROOM, 0, TEXT]),
    ("kexec_load", 246, &[0, 0, 0, 0]),
    ("syslog", 103, &[10, 0, 0]),
    ("acct", 163, &[FILE]),
    ("iopl", 172, &[0]),
    ("setuid", 105, &[65534]),
    ("setgroups", 116, &[0, ROOM]),
    ("capset", 126, &[ROOM, ROOM]),
    ("personality", 135, &[0]),
    ("modify_ldt", 154, &[0, ROOM, 16]),
    // Memory with instructions, and memory that is the machine's.
    ("mmap to execute", 9, &[0, 4096, 5, 0x22, -1, 0]),
    ("mmap of a descriptor", 9, &[0, 4096, 1, 2, 0, 0]),
    ("mprotect to execute", 10, &[ROOM, 4096, 5]),
    ("pkey_mprotect", 329, &[ROOM, 4096, 5, -1]),
    ("mlockall", 151, &[1]),
    ("madvise: poison", 28, &[ROOM, 4096, 100]),
    ("process_madvise", 440, &[0, ROOM, 1, 4, 0]),
    // By another table.
    ("getpid of the x32 table", 0x4000_0000 + 39, &[]),
    ("chmod of the x32 table", 0x4000_0000 + 90, &[FILE, 0]),
];

/// When the call is made: numbers of attacks.c.
const MOMENTS: [(&str, i64); 4] =
    [("a constructor", 0), ("a resolver", 1), ("the first call", 2), ("the thousandth", 3)];

/// What a library may ask of the system, by the table of x86-64, and gets an answer to.
const ALLOWED: &[i64] = &[
    3,   // close
    5,   // fstat of the standard streams, which go nowhere
    10,  // mprotect, without execution
    11,  // munmap
    12,  // brk
    14,  // rt_sigprocmask
    15,  // rt_sigreturn
    24,  // sched_yield
    25,  // mremap
    39,  // getpid
    60,  // exit
    96,  // gettimeofday
    131, // sigaltstack
    186, // gettid
    202, // futex
    219, // restart_syscall
    228, // clock_gettime
    229, // clock_getres
    231, // exit_group
    318, // getrandom
    // The kernel puts these two into a traced process itself and lets them past every list (from memory: kernel/seccomp.c, 6.14
    // and later); called by a library they do nothing, or end its process.
    335, // uretprobe
    336, // uprobe
];

/// A folder with the compiled library and a file of the maker's.
struct Range {
    folder: TempDir,
    library: Vec<u8>,
}

/// What became of a library that made one call.
#[derive(Debug, PartialEq)]
enum Fate {
    /// The system refused, and it went on.
    Refused,
    /// The call got through.
    Reached,
    /// Its process ended, and how.
    Ended(String),
}

impl Range {
    fn new() -> Self {
        let folder = TempDir::new().unwrap();
        let victim = folder.path().join("victim");
        fs::write(&victim, "the maker's own").unwrap();
        let file = folder.path().join("attacks.so");
        let flag = format!("-DVICTIM=\"{}\"", victim.display());
        compile(&root().join("tests/plugins/attacks.c"), &[&flag], &["-shared", "-fPIC"], &file);
        let library = fs::read(&file).unwrap();
        Self { folder, library }
    }

    /// The library that makes a call at a moment.
    fn library(&self, moment: i64, old_table: bool, number: i64, arguments: &[i64]) -> Vec<u8> {
        let mark = b"THE ATTACK IS:\0\0";
        let mut bytes = self.library.clone();
        let at = bytes.windows(mark.len()).position(|window| window == mark).unwrap() + mark.len();
        let mut words = [0; 9];
        (words[0], words[1], words[2]) = (moment, i64::from(old_table), number);
        words[3..3 + arguments.len()].copy_from_slice(arguments);
        let words = words.iter().flat_map(|word| word.to_le_bytes()).collect::<Vec<u8>>();
        bytes[at..at + words.len()].copy_from_slice(&words);
        bytes
    }

    /// Loads it, and asks so often.
    fn fate(&self, library: &[u8], questions: u32) -> Fate {
        let file = self.folder.path().join("attack.so");
        fs::write(&file, library).unwrap();
        let library = Library::new("small", &file, &digest_of(library), &host(), Guards::Needed);
        for at in 0..questions {
            match ask(&library, f64::from(at)) {
                None => {}
                Some(words) if words.contains("the status 77") => return Fate::Reached,
                Some(words) => return Fate::Ended(words),
            }
        }
        Fate::Refused
    }

    /// The maker's file and its folder, as they are seen from outside.
    fn state(&self) -> impl PartialEq + std::fmt::Debug + use<> {
        let victim = self.folder.path().join("victim");
        let about = fs::metadata(&victim).unwrap();
        let names: Vec<_> = fs::read_dir(self.folder.path()).unwrap().map(|entry| entry.unwrap().file_name()).collect();
        let owner = (about.uid(), about.gid(), about.nlink());
        let times = (about.mtime(), about.mtime_nsec(), about.ctime(), about.ctime_nsec());
        (fs::read(&victim).unwrap(), about.permissions().mode(), owner, times, names.len())
    }
}

/// Asks a question that was not asked before; what is wrong with the answer.
fn ask(library: &Library, apart: f64) -> Option<String> {
    let cord = Length::mm(4.0);
    let core = Core::Legs { count: 2, diameter: cord };
    let setting = Setting { cord, give: 0.1, working: 1, core, parameters: &[] };
    let asked = Question { knot: "band", setting: &setting, core: cord, values: &[8.0, apart / 100.0] };
    match library.take(&asked) {
        Ok(_) => None,
        Err(Unknown::Trouble { words, .. } | Unknown::Refused { words, .. }) => Some(words),
    }
}

/// What of this process a library could change: its limits, its niceness and where it runs.
fn own_state() -> (String, String, String) {
    let stat = fs::read_to_string("/proc/self/stat").unwrap();
    let nice = stat.rsplit(')').next().unwrap().split_whitespace().nth(16).unwrap().to_owned();
    let status = fs::read_to_string("/proc/self/status").unwrap();
    let cores = status.lines().find(|line| line.starts_with("Cpus_allowed:")).unwrap().to_owned();
    (fs::read_to_string("/proc/self/limits").unwrap(), nice, cores)
}

/// Shared memory, queues and semaphores of the size that the attacks make.
fn left_behind() -> usize {
    let lines = |name: &str| fs::read_to_string(format!("/proc/sysvipc/{name}")).unwrap_or_default();
    lines("shm").lines().filter(|line| line.split_whitespace().any(|word| word == "4097")).count()
}

/// Every attack at every moment; what got through, in words.
fn through(range: &Range) -> Vec<String> {
    let mut found = Vec::new();
    let before = (range.state(), own_state(), left_behind(), fs::read("/proc/sys/kernel/hostname").unwrap());
    for (when, moment) in MOMENTS {
        // Each question is asked twice.
        let questions = if moment == 3 { 500 } else { 1 };
        let control = range.fate(&range.library(moment, false, 39, &[]), questions);
        assert_eq!(control, Fate::Reached, "from {when} nothing gets through at all");
        for (name, number, arguments) in ATTACKS {
            let fate = range.fate(&range.library(moment, false, *number, arguments), questions);
            if !stopped(&fate) {
                found.push(format!("{name}, from {when}: {fate:?}"));
            }
        }
        // By the 32-bit table, chmod is 15; where a kernel has none, the processor itself refuses.
        let fate = range.fate(&range.library(moment, true, 15, &[]), questions);
        if !stopped(&fate) && !matches!(&fate, Fate::Ended(how) if how.contains("signal 11")) {
            found.push(format!("the 32-bit table, from {when}: {fate:?}"));
        }
    }
    let after = (range.state(), own_state(), left_behind(), fs::read("/proc/sys/kernel/hostname").unwrap());
    if after != before {
        found.push(format!("{after:?} was {before:?}"));
    }
    found
}

/// Refused, or ended for asking.
fn stopped(fate: &Fate) -> bool {
    match fate {
        Fate::Refused => true,
        Fate::Reached => false,
        Fate::Ended(how) => how.contains("signal 31"),
    }
}

#[test]
fn no_attack_gets_through() {
    let range = Range::new();
    range.fate(&range.library(-1, false, 0, &[]), 1);
    let found = through(&range);
    assert!(found.is_empty(), "{}", found.join("\n"));
    assert_no_children();
}

/// The same as another user, where this one may become another: root's rights are not what holds a library back.
#[test]
fn nor_does_it_as_another_user() {
    const NOBODY: u32 = 65534;
    if fs::metadata("/proc/self").unwrap().uid() != 0 {
        let mut err = std::io::stderr();
        std::io::Write::write_all(&mut err, b"not run as root: the attacks are made as this user alone\n").unwrap();
        return;
    }
    let folder = TempDir::new().unwrap();
    fs::set_permissions(folder.path(), fs::Permissions::from_mode(0o755)).unwrap();
    let this = std::env::current_exe().unwrap();
    let mut run = Command::new(this);
    run.args(["--exact", "attacks::as_told", "--ignored", "--nocapture"]).env("TMPDIR", folder.path());
    // The program is built already, and the other user could not build it.
    run.env(BUILT, reeve());
    chown(folder.path(), Some(NOBODY), Some(NOBODY)).unwrap();
    let output = run.uid(NOBODY).gid(NOBODY).output().unwrap();
    let said = String::from_utf8_lossy(&output.stdout);
    assert!(output.status.success() && said.contains("1 passed"), "{said}{}", String::from_utf8_lossy(&output.stderr));
}

/// Run by the test above, as another user.
#[test]
#[ignore = "run as another user by the test above"]
fn as_told() {
    no_attack_gets_through();
}

/// Every call that there is, with nothing in its arguments: none gets an answer but those that computing takes.
#[test]
fn nothing_but_the_list_gets_an_answer() {
    let range = Range::new();
    let answered = |number: &i64| !stopped(&range.fate(&range.library(0, false, *number, &[]), 1));
    let found: Vec<i64> = (0..=470).filter(answered).collect();
    let strange: Vec<&i64> = found.iter().filter(|number| !ALLOWED.contains(number)).collect();
    assert!(strange.is_empty(), "{strange:?}");
    assert_no_children();
}

#[track_caller]
fn assert_no_children() {
    let this = std::process::id().to_string();
    let serving = |process: &Path| {
        let told = fs::read(process.join("cmdline")).unwrap_or_default();
        let told: Vec<&[u8]> = told.split(|byte| *byte == 0).collect();
        told.get(1) == Some(&reeve_host::SERVE.as_bytes()) && told.get(5) == Some(&this.as_bytes())
    };
    for _ in 0..200 {
        let processes = fs::read_dir("/proc").unwrap().map(|process| process.unwrap().path());
        if !processes.into_iter().any(|process| serving(&process)) {
            return;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
    }
    panic!("a library's process is left behind");
}
