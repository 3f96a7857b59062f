//! What can stop a command, and the one printer of it.

use std::io::Write;
use std::process::ExitCode;

use reeve_book::BookError;
use reeve_measure::Remedied;
use reeve_office::OfficeError;
use reeve_reading::{Fault, FaultTally, seen};

/// Why a command stopped.
#[derive(Debug)]
pub(crate) enum Failure {
    /// The input has faults.
    Input(FaultTally),
    /// Some of the input has faults, which are told already; a result of the rest was printed.
    Partly,
    /// The system refused.
    System(String),
}

impl From<Fault> for Failure {
    fn from(fault: Fault) -> Self {
        Self::Input(vec![fault].into())
    }
}

impl From<OfficeError> for Failure {
    fn from(error: OfficeError) -> Self {
        match error {
            OfficeError::Input(faults) => Self::Input(faults),
            OfficeError::Book(error) => error.into(),
            OfficeError::Writing(error) => error.into(),
        }
    }
}

impl From<BookError> for Failure {
    fn from(trouble: BookError) -> Self {
        if trouble.is_of_the_system() { Self::system(&trouble) } else { Fault::of(&trouble).into() }
    }
}

impl Failure {
    /// A fault of the input that has no place in a file.
    pub(crate) fn input(title: impl Into<String>, help: impl Into<String>) -> Self {
        Fault::without_place(title, help).into()
    }

    /// A refusal of the system.
    pub(crate) fn system(error: &impl Remedied) -> Self {
        let remedy = error.remedy();
        Self::System(if remedy.is_empty() { error.to_string() } else { format!("{error}; {remedy}") })
    }

    /// Prints it and gives the exit code.
    pub(crate) fn report(&self) -> ExitCode {
        match self {
            Self::Input(faults) => {
                print_faults(faults);
                ExitCode::from(2)
            }
            Self::Partly => ExitCode::from(2),
            Self::System(reason) => {
                print_faults(&vec![Fault::without_place(reason.clone(), "")].into());
                ExitCode::from(1)
            }
        }
    }
}

/// Prints faults to standard error, in colour on a terminal, and counts them.
pub(crate) fn print_faults(faults: &FaultTally) {
    for fault in faults.shown() {
        // The stream takes the colour out again where there is no terminal.
        tell(&format!("{}\n\n", fault.render(true)));
    }
    for (path, more) in faults.left_out() {
        say(&match path {
            Some(path) => format!("and {more} more in {path}"),
            None => format!("and {more} more"),
        });
    }
    if faults.errors() > 1 {
        say(&format!("{} faults", faults.errors()));
    }
}

/// Asks something, on the same line as the answer.
pub(crate) fn ask(question: &str) {
    tell(&seen(question));
}

/// Says something that is neither a result nor a fault.
pub(crate) fn say(words: &str) {
    tell(&format!("{}\n", seen(words)));
}

/// The one printer of messages. Where even they can't be written the exit code still says how it went.
fn tell(words: &str) {
    let _ = anstream::stderr().write_all(words.as_bytes());
}
