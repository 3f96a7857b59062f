//! The process that holds one library: it loads it behind every limit there is, and answers.

mod guard;
mod load;
mod questions;

use std::ffi::OsString;
use std::fs::File;
use std::io::{self, Write};
use std::mem::ManuallyDrop;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use crate::described::Described;
use crate::trouble::Trouble;
use crate::wire::{Answers, Hello, Load, Questions, open, receive, send};
use load::Loaded;

/// The word by which the program is told to be such a process; not for makers.
pub const SERVE: &str = "serve-library";

/// Is such a process, until the pipe ends: reads questions from standard input, writes answers to standard output.
///
/// `words` follow [`SERVE`]: the library's file, the most memory in mebibytes, and whether a copy of the file stands in
/// the place of standard error.
pub fn serve(words: &[OsString]) -> ExitCode {
    let [file, memory, from] = words else { return ExitCode::from(2) };
    let memory = memory.to_str().and_then(|memory| memory.parse().ok());
    let (Some(memory), Ok(mut pipes)) = (memory, Pipes::taken(from == COPY)) else { return ExitCode::from(2) };
    let guards = guard::restrict(memory);
    let served = match begin(Path::new(file), &mut pipes) {
        Ok((loaded, described)) => send(&mut *pipes.to, &Hello::Ready { described, guards })
            .and_then(|()| answer_all(&loaded, &mut *pipes.from, &mut *pipes.to)),
        Err(trouble) => send(&mut *pipes.to, &Hello::Trouble(trouble)),
    };
    if served.is_ok() { ExitCode::SUCCESS } else { ExitCode::from(PIPE_GONE) }
}

/// The word for a copy of the library in the place of standard error.
pub(crate) const COPY: &str = "copy";

/// The exit code of such a process that lost its pipe.
pub(crate) const PIPE_GONE: u8 = 97;

/// Loads the library when it is told that the file is the right one.
fn begin(file: &Path, pipes: &mut Pipes) -> Result<(Loaded, Described), Trouble> {
    let told = receive(&mut *pipes.from).ok().flatten();
    told.and_then(|bytes| open::<Load>(&bytes)).ok_or(Trouble::Pipe)?;
    let loaded = load::load(pipes.copy.as_deref().unwrap_or(file), file)?;
    let described = loaded.describe()?;
    Ok((loaded, described))
}

/// The pipes to the program. A library may close them; closing them twice would be this process's own fault.
struct Pipes {
    from: ManuallyDrop<File>,
    to: ManuallyDrop<File>,
    /// Where the copy of the library is, if there is one.
    copy: Option<PathBuf>,
}

impl Pipes {
    /// Takes the pipes for the program's own use, and leaves nothing behind the standard streams for the library.
    #[cfg(unix)]
    fn taken(copy: bool) -> io::Result<Self> {
        use std::os::fd::AsRawFd;

        use rustix::io::fcntl_dupfd_cloexec;
        use rustix::stdio::{dup2_stderr, dup2_stdin, dup2_stdout, stderr, stdin, stdout};

        // High enough to be out of the way of what a library opens.
        const FROM: i32 = 100;
        let from = fcntl_dupfd_cloexec(stdin(), FROM)?;
        let to = fcntl_dupfd_cloexec(stdout(), FROM)?;
        let copy = if copy { Some(ManuallyDrop::new(fcntl_dupfd_cloexec(stderr(), FROM)?)) } else { None };
        let nothing = File::options().read(true).write(true).open("/dev/null")?;
        dup2_stdin(&nothing)?;
        dup2_stdout(&nothing)?;
        dup2_stderr(&nothing)?;
        Ok(Self {
            from: ManuallyDrop::new(from.into()),
            to: ManuallyDrop::new(to.into()),
            copy: copy.map(|copy| format!("/proc/self/fd/{}", copy.as_raw_fd()).into()),
        })
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
