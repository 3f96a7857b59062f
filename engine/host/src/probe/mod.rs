//! Holds a library to what it describes: every knot over its whole range, in two processes.

mod battery;
mod laws;

use std::path::Path;
use std::sync::Arc;
use std::time::Duration;

use reeve_catalogue::{Catalogue, Knot};
use reeve_reading::{Fault, SourceText, is_name};

use crate::described::{Described, DescribedKnot, knot_text};
use crate::error::LibraryError;
use crate::judged::JudgedAnswer;
use crate::library::{Guards, Library, Program};
use crate::wire::WireQuestion;
use battery::{ProbeQuestion, battery};

/// The longest that one answer may take.
const SLOWEST: Duration = Duration::from_millis(50);

/// What a probe found.
#[derive(Debug, Clone)]
pub struct Probed {
    /// The library as it describes itself.
    pub described: Described,
    /// Its knots, as the catalogue reads their descriptions, with the text that says so; without those that have faults.
    pub knots: Vec<(Arc<Knot>, String)>,
    /// What held its process back, in words.
    pub guards: Vec<String>,
    /// How many questions were asked, each twice in two processes.
    pub asked: usize,
    /// How many of them it refused, as it may.
    pub refused: usize,
    /// The slowest answer.
    pub slowest: Duration,
    /// What is wrong with it; nothing in a good library.
    pub findings: Vec<ProbeFinding>,
}

/// One thing that is wrong.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ProbeFinding {
    /// The knot, or nothing where it is the library as a whole.
    pub knot: Option<String>,
    /// What is wrong, with the values.
    pub words: String,
}

/// Probes a library whose file has this digest.
///
/// # Errors
/// A [`LibraryError`] when it can't be loaded at all; everything else is a [`ProbeFinding`].
pub fn probe(file: &Path, digest: &str, program: &Program, needs: Guards) -> Result<Probed, LibraryError> {
    let named = file.display().to_string();
    let begin = || Library::new(&named, file, digest, program, needs);
    probe_both(&begin(), &begin())
}

/// Probes a library that two processes hold.
///
/// # Errors
/// A [`LibraryError`] when it can't be loaded at all; everything else is a [`ProbeFinding`].
pub fn probe_both(first: &Library, second: &Library) -> Result<Probed, LibraryError> {
    let described = first.describe()?;
    let mut probed = Probed {
        knots: Vec::new(),
        guards: first.guards()?,
        asked: 0,
        refused: 0,
        slowest: Duration::ZERO,
        findings: whole(&described),
        described,
    };
    if second.describe()? != probed.described {
        probed.find(None, "it describes itself in one way now and in another then".to_owned());
    }
    for (place, knot) in (0..).zip(probed.described.knots.clone()) {
        match read(&probed.described.name, &knot) {
            Ok((read, text)) => {
                probed.knot(place, &knot, &read, [first, second]);
                probed.knots.push((read, text));
            }
            Err(faults) => faults.iter().for_each(|fault| probed.find(Some(&knot), words_of(fault))),
        }
    }
    Ok(probed)
}

/// What can be wrong with the library as a whole.
fn whole(described: &Described) -> Vec<ProbeFinding> {
    let mut findings = Vec::new();
    let mut find = |words: String| findings.push(ProbeFinding { knot: None, words });
    if !is_name(&described.name) {
        find(format!("its name `{}` must be small letters, digits and hyphens, at most 60", described.name));
    }
    if described.version.len() > 40 {
        find(format!("its version has {} bytes, and 40 are allowed", described.version.len()));
    }
    let names: Vec<&str> = described.knots.iter().map(|knot| knot.name.as_str()).collect();
    let twice = names.iter().enumerate().filter(|(at, name)| names[..*at].contains(name));
    twice.for_each(|(_, name)| find(format!("it describes two knots called `{name}`")));
    findings
}

/// The knot as the catalogue reads its description.
fn read(library: &str, knot: &DescribedKnot) -> Result<(Arc<Knot>, String), Vec<Fault>> {
    let text = knot_text(library, knot);
    let mut catalogue = Catalogue::default();
    let faults = catalogue.add(&SourceText::new(format!("{}.toml", knot.name), text.clone()));
    let sound = !faults.iter().any(Fault::is_error);
    catalogue.find(&knot.name).filter(|_| sound).cloned().map(|knot| (knot, text)).ok_or(faults)
}

fn words_of(fault: &Fault) -> String {
    if fault.label.is_empty() { fault.title.clone() } else { format!("{}: {}", fault.title, fault.label) }
}

impl Probed {
    fn find(&mut self, knot: Option<&DescribedKnot>, words: String) {
        self.findings.push(ProbeFinding { knot: knot.map(|knot| knot.name.clone()), words });
    }

    /// Probes one knot in two processes.
    fn knot(&mut self, place: u32, described: &DescribedKnot, knot: &Knot, processes: [&Library; 2]) {
        let cases = battery(described, knot);
        let asked: Vec<WireQuestion> = cases.iter().map(|case| case.asked(place, knot)).collect();
        let mut told = Vec::new();
        for library in processes {
            match library.ask_all(&asked) {
                Ok((answers, slowest)) => {
                    self.slowest = self.slowest.max(slowest);
                    told.push(answers);
                }
                // What it did in one process it need not do in the next: the first is told.
                Err(trouble) => return self.find(Some(described), format!("it {trouble}")),
            }
        }
        self.asked += asked.len();
        let [first, second] = told.as_slice() else { return };
        self.refused += first.iter().filter(|answer| matches!(answer, JudgedAnswer::Refused(..))).count();
        if let Some(at) = first.iter().zip(second).position(|(one, two)| one != two) {
            let setting = cases[at].words(knot);
            self.find(Some(described), format!("it answers one way in one process and another in the next: {setting}"));
        }
        if let Some((case, trouble)) = in_trouble(&cases, first) {
            self.find(Some(described), format!("it {trouble}: {}", case.words(knot)));
        }
        if self.slowest > SLOWEST {
            let (took, most) = (self.slowest.as_millis(), SLOWEST.as_millis());
            self.find(Some(described), format!("an answer took {took} ms, and {most} are allowed"));
        }
        for words in laws::broken(described, knot, &cases, first) {
            self.find(Some(described), words);
        }
    }
}

fn in_trouble<'a>(
    cases: &'a [ProbeQuestion],
    answers: &'a [JudgedAnswer],
) -> Option<(&'a ProbeQuestion, &'a LibraryError)> {
    cases.iter().zip(answers).find_map(|(case, answer)| match answer {
        JudgedAnswer::Error(trouble) => Some((case, trouble)),
        _ => None,
    })
}
