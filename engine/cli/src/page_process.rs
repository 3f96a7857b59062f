//! The process that lays out pages by a shop's own templates, and can be ended whatever they do.
//!
//! Steps and length are counted as a page is laid out; memory, stack and time only the system can hold to a limit, and what
//! goes past one is ended by it without a word. So the process notes each mark that it passes where this one can read it.

use std::fs::File;
use std::io::{self, Read, Seek, SeekFrom, Write};
use std::process::{Child, Command, ExitCode, ExitStatus, Stdio};
use std::sync::mpsc::{RecvTimeoutError, channel};
use std::thread;
use std::time::Duration;

use reeve_pages::{BUILT_IN, Form, OwnTemplate, Phrases, TemplateError, Templates, Watch, fault_at, fill as fill_in};
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// The word by which the program is told to be such a process; not for makers.
pub(crate) const LAY_OUT: &str = "lay-out-page";

/// The most seconds of the processor's time: a page of ten thousand rows takes less than one.
const MOST_SECONDS: u64 = 3;
/// The most seconds by the clock, on a machine that does other things as well.
const MOST_PATIENCE: Duration = Duration::from_secs(120);
/// The most memory, in bytes: stack, and the program itself among it.
const MOST_MEMORY: u64 = 1_000_000_000;
/// The most stack, in bytes.
const MOST_STACK: usize = 1 << 28;
/// Where in its standard error the process notes the last mark; what the system says of its end stands before it.
const NOTE_AT: u64 = 1 << 16;

/// What the process is asked.
#[derive(Serialize)]
struct Asking<'a, View> {
    own: &'a [OwnTemplate],
    language: &'a str,
    template: &'a str,
    form: Form,
    views: &'a [View],
}

/// The same, as it arrives.
#[derive(Deserialize)]
struct PageRequest {
    own: Vec<OwnTemplate>,
    language: String,
    template: String,
    form: Form,
    views: Vec<Value>,
}

/// Why there is no page.
pub(crate) enum Ended {
    /// A template is at fault.
    Fault(TemplateError),
    /// The system is.
    System(String),
}

/// Fills in a template that uses some of the shop's own with each of some views; yields the last page.
pub(crate) fn fill(
    own: &[OwnTemplate],
    language: &str,
    template: &str,
    form: Form,
    views: &[impl Serialize],
) -> Result<String, Ended> {
    let refused = |error: &dyn std::fmt::Display| Ended::System(format!("no process for the page: {error}"));
    let asked =
        serde_json::to_vec(&Asking { own, language, template, form, views }).map_err(|error| refused(&error))?;
    let mut notes = tempfile::tempfile().map_err(|error| refused(&error))?;
    let said = run(&asked, &notes).map_err(|error| refused(&error))?;
    match said {
        PageAnswer::Answer(answer) if answer.first() == Some(&PAGE) => {
            String::from_utf8(answer.get(1..).unwrap_or_default().to_vec()).map_err(|error| refused(&error))
        }
        PageAnswer::Answer(answer) if !answer.is_empty() => {
            let fault = serde_json::from_slice(answer.get(1..).unwrap_or_default());
            Err(fault.map_or_else(|error| refused(&error), Ended::Fault))
        }
        PageAnswer::Answer(_) => Err(refused(&"it said nothing")),
        PageAnswer::Died(status) => {
            Err(Ended::Fault(fault_at(own, last_mark(&mut notes), &why(status, &mut notes), template)))
        }
        PageAnswer::Slow => {
            Err(Ended::Fault(fault_at(own, last_mark(&mut notes), &too_slow(MOST_PATIENCE.as_secs()), template)))
        }
    }
}

/// The first byte of an answer that is a page.
const PAGE: u8 = b'P';
/// The first byte of an answer that is a fault.
const FAULT: u8 = b'F';

enum PageAnswer {
    Answer(Vec<u8>),
    Died(ExitStatus),
    Slow,
}

/// Asks such a process, and waits for its end.
fn run(asked: &[u8], notes: &File) -> io::Result<PageAnswer> {
    let mut command = Command::new(std::env::current_exe()?);
    command.arg(LAY_OUT).stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::from(notes.try_clone()?));
    let mut child = Kept(command.spawn()?);
    let (Some(mut to), Some(mut from)) = (child.0.stdin.take(), child.0.stdout.take()) else {
        return Err(io::Error::other("it has no pipes"));
    };
    // It reads all before it says anything. That it is gone shows in what it says.
    let _ = to.write_all(asked);
    drop(to);
    let (sender, answer) = channel();
    thread::spawn(move || {
        let mut bytes = Vec::new();
        let read = from.read_to_end(&mut bytes);
        let _ = sender.send(read.map(|_| bytes));
    });
    match answer.recv_timeout(MOST_PATIENCE) {
        Ok(answer) => {
            let answer = answer?;
            let status = child.0.wait()?;
            Ok(if status.success() { PageAnswer::Answer(answer) } else { PageAnswer::Died(status) })
        }
        Err(RecvTimeoutError::Timeout | RecvTimeoutError::Disconnected) => Ok(PageAnswer::Slow),
    }
}

/// A child process that ends with this value.
struct Kept(Child);

impl Drop for Kept {
    fn drop(&mut self) {
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

/// Why it ended without an answer.
fn why(status: ExitStatus, notes: &mut File) -> String {
    let mut said = Vec::new();
    let read = notes.seek(SeekFrom::Start(0)).and_then(|_| notes.take(NOTE_AT).read_to_end(&mut said));
    let said = read.map(|_| String::from_utf8_lossy(&said).into_owned()).unwrap_or_default();
    if said.contains("overflowed its stack") {
        return "parts stand within parts too deep".to_owned();
    }
    #[cfg(unix)]
    {
        use std::os::unix::process::ExitStatusExt;
        // POSIX's number for a process that has used up its time.
        const SIGXCPU: i32 = 24;
        if status.signal() == Some(SIGXCPU) {
            return too_slow(MOST_SECONDS);
        }
    }
    // Memory that is not there ends a process by a signal, or by a word of the kind.
    if status.code().is_none() || said.contains("memory allocation") || said.contains("capacity overflow") {
        return format!("it takes more than {} GB of memory", MOST_MEMORY / 1_000_000_000);
    }
    "the template engine breaks off there".to_owned()
}

fn too_slow(seconds: u64) -> String {
    format!("it is still not done after {seconds} seconds")
}

/// The mark that the process passed last.
fn last_mark(notes: &mut File) -> Option<usize> {
    let mut bytes = [0; 8];
    notes.seek(SeekFrom::Start(NOTE_AT)).ok()?;
    notes.read_exact(&mut bytes).ok()?;
    usize::try_from(u64::from_le_bytes(bytes)).ok()
}

/// Is such a process: reads what is asked from standard input, writes the last page or the first fault to standard output.
pub(crate) fn serve() -> ExitCode {
    restrict();
    // Pages within pages take stack; how much is measured out here.
    let page = thread::Builder::new().stack_size(MOST_STACK).spawn(answer);
    let answered = page.map(thread::JoinHandle::join);
    match answered {
        Ok(Ok(Ok(()))) => ExitCode::SUCCESS,
        _ => ExitCode::FAILURE,
    }
}

fn answer() -> io::Result<()> {
    let mut bytes = Vec::new();
    io::stdin().lock().read_to_end(&mut bytes)?;
    let asked: PageRequest = serde_json::from_slice(&bytes)?;
    drop(bytes);
    let mut out = io::stdout().lock();
    match last_page(&asked) {
        Ok(page) => {
            out.write_all(&[PAGE])?;
            out.write_all(page.as_bytes())?;
        }
        Err(fault) => {
            out.write_all(&[FAULT])?;
            serde_json::to_writer(&mut out, &fault)?;
        }
    }
    out.flush()
}

fn last_page(asked: &PageRequest) -> Result<String, TemplateError> {
    let templates = Templates::watched(BUILT_IN, &asked.own, &Phrases::of_language(&asked.language), note())?;
    let mut page = String::new();
    for view in &asked.views {
        page = fill_in(&templates, &asked.template, asked.form, view)?;
    }
    Ok(page)
}

/// Notes each mark passed where it outlives this process.
#[cfg(unix)]
fn note() -> Option<Watch> {
    use std::os::fd::AsFd;
    use std::os::unix::fs::FileExt;
    let notes = File::from(io::stderr().as_fd().try_clone_to_owned().ok()?);
    Some(Box::new(move |mark| {
        // A note that can't be written costs a line in a message, no more.
        let _ = notes.write_all_at(&mark.to_le_bytes(), NOTE_AT);
    }))
}

#[cfg(not(unix))]
fn note() -> Option<Watch> {
    None
}

/// Holds this process to its limits.
#[cfg(unix)]
fn restrict() {
    use rustix::process::{Resource, Rlimit, setrlimit};
    // At the lower of two limits of time the system says that it is one of time; at the other it kills without a word.
    let limits = [
        (Resource::As, MOST_MEMORY, MOST_MEMORY),
        (Resource::Cpu, MOST_SECONDS, MOST_SECONDS + 2),
        (Resource::Core, 0, 0),
    ];
    for (resource, most, end) in limits {
        // A lower limit that is set already stays.
        let set = rustix::process::getrlimit(resource).maximum;
        let lower = |most: u64| Some(set.map_or(most, |set| set.min(most)));
        let _ = setrlimit(resource, Rlimit { current: lower(most), maximum: lower(end) });
    }
}

#[cfg(not(unix))]
fn restrict() {}
