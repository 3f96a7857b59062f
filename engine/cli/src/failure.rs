//! What can stop a command, and the one printer of it.

use std::io::Write;
use std::process::ExitCode;

use reeve_book::Trouble;
use reeve_reading::{Fault, Severity};

/// Why a command stopped.
#[derive(Debug)]
pub(crate) enum Failure {
    /// The input has faults.
    Input(Vec<Fault>),
    /// Some of the input has faults, which are told already; a result of the rest was printed.
    Partly,
    /// The system refused.
    System(String),
}

impl From<Fault> for Failure {
    fn from(fault: Fault) -> Self {
        Self::Input(vec![fault])
    }
}

impl From<Trouble> for Failure {
    fn from(trouble: Trouble) -> Self {
        let (title, remedy) = (trouble.to_string(), trouble.remedy());
        if !trouble.is_of_the_system() {
            return Self::input(title, remedy);
        }
        Self::System(if remedy.is_empty() { title } else { format!("{title}; {remedy}") })
    }
}

impl Failure {
    /// A fault of the input that has no place in a file.
    pub(crate) fn input(title: impl Into<String>, help: impl Into<String>) -> Self {
        Self::Input(vec![Fault::without_place(title, help)])
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
                print_faults(&[Fault::without_place(reason.clone(), "")]);
                ExitCode::from(1)
            }
        }
    }
}

/// Prints faults to standard error, in colour on a terminal, and counts them.
pub(crate) fn print_faults(faults: &[Fault]) {
    for fault in faults {
        // The stream takes the colour out again where there is no terminal.
        tell(&format!("{}\n\n", fault.render(true)));
    }
    let errors = faults.iter().filter(|fault| fault.severity == Severity::Error).count();
    if errors > 1 {
        tell(&format!("{errors} faults\n"));
    }
}

/// Asks something, on the same line as the answer.
pub(crate) fn ask(question: &str) {
    tell(question);
}

/// Says something that is neither a result nor a fault.
pub(crate) fn say(words: &str) {
    tell(&format!("{words}\n"));
}

/// The one printer of messages. Where even they can't be written the exit code still says how it went.
fn tell(words: &str) {
    let _ = anstream::stderr().write_all(words.as_bytes());
}
