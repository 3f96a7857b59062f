//! A child process that serves a library, and the pipes to it.

use std::io::{self, Cursor, Read, Write};
use std::process::{Child, Command, ExitStatus};
use std::sync::mpsc::{Receiver, RecvTimeoutError, SyncSender, sync_channel};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread;
use std::time::Duration;

use serde::Serialize;
use serde::de::DeserializeOwned;

use crate::child::PIPE_GONE;
use crate::error::LibraryError;
use crate::wire::{open, receive, send};

/// A child process and the pipes to it. It ends with this value, whatever it is doing.
pub(crate) struct Process {
    /// Nothing once it has ended and nobody need end it any more.
    child: Arc<Mutex<Option<Child>>>,
    to: Box<dyn Write + Send>,
    from: Receiver<Said>,
}

/// What comes from a process.
enum Said {
    Message(Vec<u8>),
    /// The pipe is closed.
    Nothing,
    Ended(ExitStatus),
}

impl Process {
    /// Starts a process whose standard input and output are pipes.
    pub(crate) fn start(mut command: Command) -> Result<Self, LibraryError> {
        let no_process = |why: &str| LibraryError::NoProcess(why.to_owned());
        let mut child = command.spawn().map_err(|error| no_process(&error.to_string()))?;
        let (Some(to), Some(out)) = (child.stdin.take(), child.stdout.take()) else {
            return Err(no_process("it has no pipes"));
        };
        Ok(Self::over(Some(child), to, out))
    }

    /// A process that has said all that it ever will, and ended. Nothing is started.
    pub(crate) fn that_said(said: &[u8]) -> Self {
        Self::over(None, io::sink(), Cursor::new(said.to_vec()))
    }

    /// Listens to what comes out of a process, until it ends.
    fn over(child: Option<Child>, to: impl Write + Send + 'static, mut out: impl Read + Send + 'static) -> Self {
        // One message waits at most: whoever writes more than was asked fills its pipe, and not this program's memory.
        let (sender, from) = sync_channel(1);
        let child = Arc::new(Mutex::new(child));
        let watched = Arc::clone(&child);
        // Reading waits for as long as it takes; whoever wants an answer waits for this thread no longer than is allowed.
        thread::spawn(move || {
            while let Ok(Some(bytes)) = receive(&mut out) {
                if sender.send(Said::Message(bytes)).is_err() {
                    break;
                }
            }
            reap(&watched, &sender);
        });
        Self { child, to: Box::new(to), from }
    }

    /// Sends a message.
    ///
    /// That the process is gone shows when its answer is read: that tells more than that it could not be written to.
    pub(crate) fn tell(&mut self, message: &impl Serialize) {
        let _ = send(&mut self.to, message);
    }

    /// The next message, if it comes in time.
    pub(crate) fn next<T: DeserializeOwned>(&mut self, patience: Duration) -> Result<T, LibraryError> {
        match self.from.recv_timeout(patience) {
            Ok(Said::Message(bytes)) => open(&bytes).ok_or(LibraryError::Pipe),
            Ok(Said::Ended(status)) => Err(how(status)),
            Ok(Said::Nothing) => Err(self.end()),
            Err(RecvTimeoutError::Timeout) => Err(LibraryError::Slow { seconds: patience.as_secs() }),
            Err(RecvTimeoutError::Disconnected) => Err(LibraryError::Pipe),
        }
    }

    /// How the process ended; one that only closed the pipe has not.
    fn end(&mut self) -> LibraryError {
        // An end of the process closes the pipe a moment before it can be seen.
        match self.from.recv_timeout(Duration::from_millis(500)) {
            Ok(Said::Ended(status)) => how(status),
            _ => LibraryError::Pipe,
        }
    }
}

/// Waits for the end of a process that said its last word, and takes it off the system's list.
fn reap(child: &Mutex<Option<Child>>, sender: &SyncSender<Said>) {
    let _ = sender.send(Said::Nothing);
    loop {
        let mut child = child.lock().unwrap_or_else(PoisonError::into_inner);
        let ended = child.as_mut().map(Child::try_wait);
        match ended {
            Some(Ok(None)) => {}
            Some(Ok(Some(status))) => {
                *child = None;
                // Sending may have to wait, and whoever ends the process must not wait for that.
                drop(child);
                let _ = sender.send(Said::Ended(status));
                return;
            }
            _ => return,
        }
        drop(child);
        thread::sleep(Duration::from_millis(1));
    }
}

impl Drop for Process {
    /// Ends the process. Its thread takes it off the system's list; where the program ends first, the system does.
    fn drop(&mut self) {
        let mut child = self.child.lock().unwrap_or_else(PoisonError::into_inner);
        let Some(child) = child.as_mut() else { return };
        #[cfg(unix)]
        {
            // Whatever it may have started goes with it.
            let group = rustix::process::Pid::from_child(child);
            let _ = rustix::process::kill_process_group(group, rustix::process::Signal::KILL);
        }
        let _ = child.kill();
    }
}

/// How a process ended, in words.
fn how(status: ExitStatus) -> LibraryError {
    if status.code() == Some(PIPE_GONE.into()) {
        return LibraryError::Pipe;
    }
    LibraryError::Ended(ended(status))
}

fn ended(status: ExitStatus) -> String {
    #[cfg(unix)]
    {
        use std::os::unix::process::ExitStatusExt;
        if let Some(signal) = status.signal() {
            let known = SIGNALS.iter().find(|(number, _)| *number == signal).map(|(_, words)| format!(", {words}"));
            return format!("signal {signal}{}", known.unwrap_or_default());
        }
    }
    status.code().map_or_else(|| status.to_string(), |code| format!("it left with the code {code}"))
}

/// Signals by the numbers that POSIX gives them, and what they mean here.
#[cfg(unix)]
const SIGNALS: &[(i32, &str)] = &[
    (4, "an instruction that there is not"),
    (6, "it aborted, as a program does that gets no more memory or stack"),
    (7, "a part of its file that is not there"),
    (8, "a division by zero"),
    (9, "it was killed, perhaps for want of memory"),
    (11, "it touched memory that is not its own"),
    (24, "it used up its time"),
    (25, "it wrote into a file"),
    (31, "it asked the system for what a library may not have"),
];

#[cfg(all(test, unix))]
#[allow(clippy::expect_used, reason = "a test may stop at the first surprise")]
mod tests {
    use std::process::Stdio;

    use super::*;

    /// Four zeros are a message of no bytes: without a bound ten million of them would wait in this program's memory.
    #[test]
    fn whoever_writes_without_end_has_to_wait() {
        let mut command = Command::new("head");
        command.args(["-c", "40000000", "/dev/zero"]).stdin(Stdio::piped()).stdout(Stdio::piped());
        let mut process = Process::start(command).expect("head is everywhere");
        let first: Result<(), _> = process.next(Duration::from_secs(5));
        assert!(first.is_ok(), "{first:?}");
        thread::sleep(Duration::from_secs(2));
        let mut child = process.child.lock().expect("nobody stopped");
        let ended = child.as_mut().expect("it is there").try_wait().expect("it can be asked");
        assert!(ended.is_none(), "it wrote all of it");
    }
}
