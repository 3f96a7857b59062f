//! The process that holds one library: it loads it behind every limit there is, and answers.

#[cfg(not(all(target_os = "linux", any(target_arch = "x86_64", target_arch = "aarch64"))))]
mod elsewhere;
mod guard;
#[cfg(all(target_os = "linux", any(target_arch = "x86_64", target_arch = "aarch64")))]
mod linux;
mod load;
mod questions;

use std::ffi::OsString;
use std::fs::File;
use std::io::{self, Write};
use std::mem::ManuallyDrop;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use crate::described::Described;
use crate::error::LibraryError;
use crate::wire::{Answers, Hello, Load, Questions, open, receive, send};
#[cfg(not(all(target_os = "linux", any(target_arch = "x86_64", target_arch = "aarch64"))))]
use elsewhere as system;
use guard::Guard;
#[cfg(all(target_os = "linux", any(target_arch = "x86_64", target_arch = "aarch64")))]
use linux as system;
use load::Loaded;

/// The word by which the program is told to be such a process; not for makers.
pub const SERVE: &str = "serve-library";

/// Is such a process, until the pipe ends: reads questions from standard input, writes answers to standard output.
///
/// `words` follow [`SERVE`]: the library's file, the most memory in mebibytes, whether a copy of the file stands in the
/// place of standard error, and the number of the process that started this one.
pub fn serve(words: &[OsString]) -> ExitCode {
    let [file, memory, from, program] = words else { return ExitCode::from(2) };
    let number = |word: &OsString| word.to_str().and_then(|word| word.parse().ok());
    let (Some(memory), Some(program), Ok(mut pipes)) = (number(memory), number(program), Pipes::taken(from == COPY))
    else {
        return ExitCode::from(2);
    };
    let guard = Guard::begin(memory, program, &pipes);
    let served = match begin(Path::new(file), guard, &mut pipes) {
        Ok((loaded, described)) => send(&mut *pipes.to, &Hello::Ready(described))
            .and_then(|()| answer_all(&loaded, &mut *pipes.from, &mut *pipes.to)),
        Err(trouble) => send(&mut *pipes.to, &Hello::Error(trouble)),
    };
    if served.is_ok() { ExitCode::SUCCESS } else { ExitCode::from(PIPE_GONE) }
}

/// The word for a copy of the library in the place of standard error.
pub(crate) const COPY: &str = "copy";

/// The exit code of such a process that lost its pipe.
pub(crate) const PIPE_GONE: u8 = 97;

/// Loads the library when it is told that the file is the right one, and all that holds it back has been told.
fn begin(file: &Path, guard: Guard, pipes: &mut Pipes) -> Result<(Loaded, Described), LibraryError> {
    let told = receive(&mut *pipes.from).ok().flatten();
    let load = told.and_then(|bytes| open::<Load>(&bytes)).ok_or(LibraryError::Pipe)?;
    let held = guard.close(pipes.copy.as_deref_mut(), load.waived);
    // Before any code of the library's runs: after that the pipe may tell anything.
    send(&mut *pipes.to, &held).map_err(|_| LibraryError::Pipe)?;
    held?;
    let path = pipes.path();
    let loaded = load::load(path.as_deref().unwrap_or(file), file)?;
    let described = loaded.describe()?;
    Ok((loaded, described))
}

/// The pipes to the program. A library may close them; closing them twice would be this process's own fault.
struct Pipes {
    from: ManuallyDrop<File>,
    to: ManuallyDrop<File>,
    /// The copy of the library, if there is one.
    copy: Option<ManuallyDrop<File>>,
}

impl Pipes {
    /// Takes the pipes for the program's own use, and leaves nothing behind the standard streams for the library.
    #[cfg(unix)]
    fn taken(copy: bool) -> io::Result<Self> {
        use rustix::io::fcntl_dupfd_cloexec;
        use rustix::stdio::{dup2_stderr, dup2_stdin, dup2_stdout, stderr, stdin, stdout};

        // High enough to be out of the way of what a library opens.
        const FROM: i32 = 100;
        let from = fcntl_dupfd_cloexec(stdin(), FROM)?;
        let to = fcntl_dupfd_cloexec(stdout(), FROM)?;
        let copy = if copy { Some(fcntl_dupfd_cloexec(stderr(), FROM)?) } else { None };
        #[allow(clippy::disallowed_methods, reason = "a device, and no file")]
        let nothing = File::options().read(true).write(true).open("/dev/null")?;
        dup2_stdin(&nothing)?;
        dup2_stdout(&nothing)?;
        dup2_stderr(&nothing)?;
        Ok(Self {
            from: ManuallyDrop::new(from.into()),
            to: ManuallyDrop::new(to.into()),
            copy: copy.map(|copy| ManuallyDrop::new(copy.into())),
        })
    }

    /// Where the system finds the copy.
    #[cfg(unix)]
    fn path(&self) -> Option<PathBuf> {
        use std::os::fd::AsRawFd;
        self.copy.as_ref().map(|copy| format!("/proc/self/fd/{}", copy.as_raw_fd()).into())
    }

    #[cfg(windows)]
    #[allow(clippy::unused_self, reason = "as elsewhere")]
    fn path(&self) -> Option<PathBuf> {
        None
    }

    /// Where there is no better way, the pipes stay where they are.
    #[cfg(windows)]
    fn taken(_: bool) -> io::Result<Self> {
        use std::os::windows::io::AsHandle;
        let from = File::from(io::stdin().as_handle().try_clone_to_owned()?);
        let to = File::from(io::stdout().as_handle().try_clone_to_owned()?);
        Ok(Self { from: ManuallyDrop::new(from), to: ManuallyDrop::new(to), copy: None })
    }
}

fn answer_all(loaded: &Loaded, from: &mut impl io::Read, to: &mut impl Write) -> io::Result<()> {
    while let Some(bytes) = receive(from)? {
        let asked: Questions = open(&bytes).ok_or_else(|| io::Error::other("not a question"))?;
        let mut slowest_ns = 0;
        let answers = asked
            .iter()
            .map(|asked| {
                let (answer, ns) = questions::answer(loaded, asked);
                slowest_ns = slowest_ns.max(ns);
                answer
            })
            .collect();
        send(to, &Answers { answers, slowest_ns })?;
    }
    Ok(())
}
