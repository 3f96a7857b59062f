//! What can stop a command, and the one printer of it.

use std::collections::BTreeMap;
use std::io::Write;
use std::process::ExitCode;

use reeve_book::BookError;
use reeve_measure::Remedied;
use reeve_office::OfficeError;
use reeve_reading::{FAULTS_SHOWN, Fault, Severity, seen};

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
        Self::Input(vec![Fault::without_place(title, help)])
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
                print_faults(&[Fault::without_place(reason.clone(), "")]);
                ExitCode::from(1)
            }
        }
    }
}

/// The most faults that are shown in one run.
const MOST_SHOWN: usize = 100;

/// Prints faults to standard error, in colour on a terminal, and counts them.
pub(crate) fn print_faults(faults: &[Fault]) {
    for fault in shown(faults) {
        // The stream takes the colour out again where there is no terminal.
        tell(&format!("{}\n\n", fault.render(true)));
    }
    for (path, more) in left_out(faults) {
        say(&match path {
            Some(path) => format!("and {more} more in {path}"),
            None => format!("and {more} more"),
        });
    }
    let errors = faults.iter().filter(|fault| fault.severity == Severity::Error).count();
    if errors > 1 {
        say(&format!("{errors} faults"));
    }
}

/// The faults that are shown, in their order: so many of each file, so many in all. What only asks to be looked at makes
/// room for what stops the work.
fn shown(faults: &[Fault]) -> Vec<&Fault> {
    let mut of_files: BTreeMap<Option<&str>, usize> = BTreeMap::new();
    let mut chosen: Vec<usize> = (0..faults.len()).collect();
    chosen.sort_by_key(|at| !faults[*at].is_error());
    chosen.retain(|at| {
        let of_file = of_files.entry(path_of(&faults[*at])).or_default();
        *of_file += 1;
        *of_file <= FAULTS_SHOWN
    });
    chosen.truncate(MOST_SHOWN);
    chosen.sort_unstable();
    chosen.into_iter().map(|at| &faults[at]).collect()
}

/// How many faults are not shown: of each file that has any shown, and of all others together.
fn left_out(faults: &[Fault]) -> Vec<(Option<&str>, usize)> {
    let mut count: BTreeMap<Option<&str>, (usize, usize)> = BTreeMap::new();
    for fault in faults {
        count.entry(path_of(fault)).or_default().0 += 1;
    }
    for fault in shown(faults) {
        count.entry(path_of(fault)).or_default().1 += 1;
    }
    let (told, silent): (Vec<_>, Vec<_>) =
        count.into_iter().partition(|(path, (_, shown))| path.is_some() && *shown > 0);
    let others = silent.iter().map(|(_, (all, shown))| all - shown).sum();
    let told = told.into_iter().map(|(path, (all, shown))| (path, all - shown));
    told.chain([(None, others)]).filter(|(_, more)| *more > 0).collect()
}

fn path_of(fault: &Fault) -> Option<&str> {
    fault.place.as_ref().map(|(source, _)| source.path.as_str())
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

#[cfg(test)]
mod tests {
    use reeve_reading::SourceText;

    use super::*;

    fn faults(path: &str, count: usize) -> Vec<Fault> {
        let source = SourceText::new(path, "a = 1\n");
        let one = Fault { place: Some((source, 0..1)), ..Fault::without_place("wrong", "") };
        vec![one; count]
    }

    #[test]
    fn so_many_of_each_file_are_shown_and_the_others_counted() {
        let all = [faults("a.toml", 10_000), faults("b.toml", 3), faults("c.toml", 21)].concat();
        assert_eq!(shown(&all).len(), 20 + 3 + 20);
        assert_eq!(left_out(&all), [(Some("a.toml"), 9980), (Some("c.toml"), 1)]);
        assert!(left_out(&faults("b.toml", 20)).is_empty());
    }

    #[test]
    fn so_many_in_all_are_shown() {
        let all: Vec<Fault> = (0..300).flat_map(|at| faults(&format!("{at:03}.toml"), 2)).collect();
        assert_eq!(shown(&all).len(), MOST_SHOWN);
        assert_eq!(left_out(&all), [(None, 500)]);
    }

    #[test]
    fn what_stops_the_work_is_shown_before_what_does_not() {
        let look = Fault { severity: Severity::Warning, ..Fault::without_place("look", "") };
        let mut all = vec![look; 30];
        all.push(Fault::without_place("wrong", ""));
        assert_eq!(shown(&all).len(), FAULTS_SHOWN);
        assert!(shown(&all).last().is_some_and(|fault| fault.is_error()));
    }
}
