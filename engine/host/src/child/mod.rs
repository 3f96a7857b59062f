//! The process that holds one library: it loads it behind every limit there is, and answers.

mod guard;
mod load;
mod questions;

use std::ffi::OsString;
use std::fs::File;
use std::io::{self, Write};
use std::mem::ManuallyDrop;
use std::path::Path;
use std::process::ExitCode;

use crate::described::Described;
use crate::library::{MOST_BYTES, digest_of};
use crate::trouble::Trouble;
use crate::wire::{Answers, Hello, Questions, open, receive, send};
use load::Loaded;

/// The word by which the program is told to be such a process; not for makers.
pub const SERVE: &str = "serve-library";

/// Is such a process, until the pipe ends: reads questions from standard input, writes answers to standard output.
///
/// `words` follow [`SERVE`]: the library's file, the most memory in mebibytes, and the digest that it must have or `-`.
pub fn serve(words: &[OsString]) -> ExitCode {
    let [file, memory, digest] = words else { return ExitCode::from(2) };
    let memory = memory.to_str().and_then(|memory| memory.parse().ok());
    let (Some(memory), Ok((mut from, mut to))) = (memory, pipes()) else { return ExitCode::from(2) };
    let digest = digest.to_str().filter(|digest| *digest != "-");
    let served = match begin(Path::new(file), memory, digest) {
        Ok((loaded, described, guards)) => {
            send(&mut *to, &Hello::Ready { described, guards }).and_then(|()| answer_all(&loaded, &mut *from, &mut *to))
        }
        Err(trouble) => send(&mut *to, &Hello::Trouble(trouble)),
    };
    if served.is_ok() { ExitCode::SUCCESS } else { ExitCode::from(PIPE_GONE) }
}

/// The exit code of such a process that lost its pipe.
pub(crate) const PIPE_GONE: u8 = 97;

/// Takes the pipes for the program's own use, and leaves nothing behind standard input and output for the library.
#[cfg(unix)]
fn pipes() -> io::Result<(ManuallyDrop<File>, ManuallyDrop<File>)> {
    use rustix::io::fcntl_dupfd_cloexec;
    use rustix::stdio::{dup2_stderr, dup2_stdin, dup2_stdout, stdin, stdout};

    // High enough to be out of the way of what a library opens.
    const FROM: i32 = 100;
    let from = fcntl_dupfd_cloexec(stdin(), FROM)?;
    let to = fcntl_dupfd_cloexec(stdout(), FROM)?;
    let nothing = File::options().read(true).write(true).open("/dev/null")?;
    dup2_stdin(&nothing)?;
    dup2_stdout(&nothing)?;
    dup2_stderr(&nothing)?;
    // A library may close them; closing them twice would be this process's own fault.
    Ok((ManuallyDrop::new(from.into()), ManuallyDrop::new(to.into())))
}

/// Where there is no better way, the pipes stay where they are.
#[cfg(not(unix))]
fn pipes() -> io::Result<(Box<io::Stdin>, Box<io::Stdout>)> {
    Ok((Box::new(io::stdin()), Box::new(io::stdout())))
}

/// Reads the file once: what is measured is what is loaded.
fn begin(file: &Path, memory: u64, digest: Option<&str>) -> Result<(Loaded, Described, Vec<String>), Trouble> {
    let bytes = read(file)?;
    let found = digest_of(&bytes);
    if let Some(admitted) = digest.filter(|admitted| *admitted != found) {
        return Err(Trouble::Changed { admitted: admitted.to_owned(), found });
    }
    let place = load::Place::of(file, &bytes);
    drop(bytes);
    let guards = guard::restrict(memory);
    let loaded = load::load(&place)?;
    let described = loaded.describe()?;
    Ok((loaded, described, guards))
}

fn read(file: &Path) -> Result<Vec<u8>, Trouble> {
    let unreadable = |error: io::Error| Trouble::Unreadable(error.to_string());
    let about = std::fs::metadata(file).map_err(unreadable)?;
    if !about.is_file() {
        return Err(Trouble::Unreadable("it is not a file".to_owned()));
    }
    if about.len() > MOST_BYTES {
        return Err(Trouble::Unreadable(format!("it has {} bytes, and at most {MOST_BYTES} are read", about.len())));
    }
    std::fs::read(file).map_err(unreadable)
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
