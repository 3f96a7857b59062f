//! One library, asked through a process of its own that begins with the first question and ends with this value.

use std::collections::HashMap;
use std::fmt;
use std::io;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::Duration;

use reeve_catalogue::{Compute, Core, Question, Taken, Unknown};
use reeve_kit::abi;
use reeve_measure::{Length, Time};

use crate::child::{COPY, SERVE};
use crate::copy::Copy;
use crate::described::Described;
use crate::error::LibraryError;
use crate::judged::{JudgedAnswer, judged};
use crate::process::Process;
use crate::wire::{Answers, BATCH, Held, Hello, Load, TakenFigures, WireQuestion};

/// The longest that an answer to one message is waited for.
const PATIENCE: Duration = Duration::from_secs(5);
/// The most memory that a library's process may have, in mebibytes.
const MEMORY_MIB: u32 = 512;

/// The program that is started for each library: this one, told to serve.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Program(PathBuf);

impl Program {
    /// The program at a path, which must serve libraries when told to.
    pub fn at(path: PathBuf) -> Self {
        Self(path)
    }

    /// The program that runs now.
    ///
    /// # Errors
    /// When the system does not tell where it is.
    pub fn this() -> io::Result<Self> {
        std::env::current_exe().map(Self)
    }
}

/// Whether a library may run where the system does not hold it back.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Guards {
    /// It may not: it is not loaded there.
    Needed,
    /// It may, on the maker's word: it could then do whatever she can.
    Waived,
}

/// One library.
pub struct Library {
    /// The word it is admitted by, as messages call it.
    name: String,
    file: PathBuf,
    digest: String,
    program: Program,
    needs: Guards,
    state: Mutex<ProcessState>,
}

enum ProcessState {
    /// Nobody has asked yet.
    Asleep,
    Awake(Box<RunningProcess>),
    /// It will not be asked again.
    Lost(LibraryError),
}

/// A process and what it has told.
struct RunningProcess {
    process: Process,
    described: Described,
    guards: Vec<String>,
    /// What it has answered already.
    known: HashMap<QuestionKey, JudgedAnswer>,
}

/// A question, by its bits.
type QuestionKey = (u32, u32, u32, u32, [u64; 5], Vec<u64>);

impl fmt::Debug for Library {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Library").field("name", &self.name).field("file", &self.file).finish_non_exhaustive()
    }
}

impl Library {
    /// A library in a file, which must have this digest. Nothing is started yet.
    pub fn new(name: &str, file: &Path, digest: &str, program: &Program, needs: Guards) -> Self {
        Self {
            name: name.to_owned(),
            file: file.to_owned(),
            digest: digest.to_owned(),
            program: program.clone(),
            needs,
            state: Mutex::new(ProcessState::Asleep),
        }
    }

    /// A library whose process has said all that it ever will, from its first byte on; nothing is started.
    ///
    /// So it can be tried what the program makes of anything that a process may say.
    pub fn that_said(name: &str, said: &[u8]) -> Self {
        let state = RunningProcess::begin(Process::that_said(said));
        let state = state.map_or_else(ProcessState::Lost, |running| ProcessState::Awake(Box::new(running)));
        Self {
            state: Mutex::new(state),
            ..Self::new(name, Path::new(""), "", &Program::at(PathBuf::new()), Guards::Needed)
        }
    }

    /// The library as it describes itself.
    ///
    /// # Errors
    /// A [`LibraryError`] when it can't be loaded.
    pub fn describe(&self) -> Result<Described, LibraryError> {
        self.with(|running| Ok(running.described.clone()))
    }

    /// What holds its process back, in words.
    ///
    /// # Errors
    /// A [`LibraryError`] when it can't be loaded.
    pub fn guards(&self) -> Result<Vec<String>, LibraryError> {
        self.with(|running| Ok(running.guards.clone()))
    }

    /// Asks many questions, message by message. Yields the answers and the slowest of them.
    pub(crate) fn ask_all(&self, asked: &[WireQuestion]) -> Result<(Vec<JudgedAnswer>, Duration), LibraryError> {
        self.with(|running| {
            let mut answers = Vec::with_capacity(asked.len());
            let mut slowest = 0;
            for batch in asked.chunks(BATCH) {
                let (some, ns) = running.ask(batch)?;
                slowest = slowest.max(ns);
                answers.extend(some);
            }
            Ok((answers, Duration::from_nanos(slowest)))
        })
    }

    /// Asks one question, once in a run.
    fn ask(&self, knot: &str, asked: &Question<'_>) -> Result<JudgedAnswer, LibraryError> {
        self.with(|running| {
            let Some(place) = running.place(knot) else {
                return Ok(JudgedAnswer::Error(LibraryError::NoSuchKnot(knot.to_owned())));
            };
            let asked = as_asked(place, asked);
            let key = key(&asked);
            if let Some(known) = running.known.get(&key) {
                return Ok(known.clone());
            }
            let (answers, _) = running.ask(&[asked])?;
            let answer = answers.into_iter().next().ok_or(LibraryError::Pipe)?;
            running.known.insert(key, answer.clone());
            Ok(answer)
        })
    }

    /// Does something with the process, which is started if need be. One that failed is not started again.
    fn with<T>(&self, work: impl FnOnce(&mut RunningProcess) -> Result<T, LibraryError>) -> Result<T, LibraryError> {
        let mut state: MutexGuard<'_, ProcessState> = self.state.lock().unwrap_or_else(PoisonError::into_inner);
        if matches!(*state, ProcessState::Asleep) {
            *state = match self.start() {
                Ok(running) => ProcessState::Awake(Box::new(running)),
                Err(trouble) => ProcessState::Lost(trouble),
            };
        }
        let done = match &mut *state {
            ProcessState::Awake(running) => work(running),
            ProcessState::Lost(trouble) => return Err(trouble.clone()),
            ProcessState::Asleep => return Err(LibraryError::Pipe),
        };
        if let Err(trouble) = &done {
            // Dropping it ends the process.
            *state = ProcessState::Lost(trouble.clone());
        }
        done
    }

    fn start(&self) -> Result<RunningProcess, LibraryError> {
        let mut copy = Copy::new();
        let mut process = Process::start(self.command(&copy))?;
        // While the process comes to life the file is copied and measured.
        let found = copy.fill(&self.file).map_err(|error| LibraryError::Unreadable(error.to_string()))?;
        if found != self.digest {
            return Err(LibraryError::Changed { admitted: self.digest.clone(), found });
        }
        process.tell(&Load { waived: self.needs == Guards::Waived });
        RunningProcess::begin(process)
    }

    fn command(&self, copy: &Copy) -> Command {
        let mut command = Command::new(&self.program.0);
        command.arg(SERVE).arg(&self.file).arg(MEMORY_MIB.to_string());
        command.arg(if copy.is_there() { COPY } else { "file" }).arg(std::process::id().to_string());
        command.env_clear().stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(copy.handed_over());
        #[cfg(unix)]
        {
            use std::os::unix::process::CommandExt;
            // What ends the program at a terminal does not end the process by itself: its end is this program's to see.
            command.process_group(0);
        }
        command
    }
}

impl RunningProcess {
    /// Hears what the process says first: what holds it back, and then what it has loaded.
    fn begin(mut process: Process) -> Result<Self, LibraryError> {
        let guards = process.next::<Held>(PATIENCE)??;
        match process.next(PATIENCE)? {
            Hello::Error(trouble) => Err(trouble),
            Hello::Ready(told) => {
                let described = told.checked()?;
                Ok(Self { process, described, guards, known: HashMap::new() })
            }
        }
    }

    fn place(&self, knot: &str) -> Option<u32> {
        let place = self.described.knots.iter().position(|known| known.name == knot);
        place.and_then(|place| u32::try_from(place).ok())
    }

    /// The answers to some questions, and the time of the slowest in nanoseconds.
    fn ask(&mut self, asked: &[WireQuestion]) -> Result<(Vec<JudgedAnswer>, u64), LibraryError> {
        self.process.tell(&asked);
        let told: Answers = self.process.next(PATIENCE)?;
        if told.answers.len() != asked.len() {
            return Err(LibraryError::Pipe);
        }
        Ok((told.answers.into_iter().map(judged).collect(), told.slowest_ns))
    }
}

pub(crate) fn as_asked(place: u32, asked: &Question<'_>) -> WireQuestion {
    let setting = asked.setting;
    let (core, core_legs, a, b) = match setting.core {
        Core::Legs { count, diameter } => (abi::LEGS, count, diameter, Length::ZERO),
        Core::Rod(diameter) => (abi::ROD, 0, diameter, Length::ZERO),
        Core::Bar(a, b) => (abi::BAR, 0, a, b),
    };
    WireQuestion {
        place,
        cord_mm: setting.cord.as_mm(),
        give: setting.give,
        working: setting.working,
        core,
        core_legs,
        core_mm: asked.core.as_mm(),
        core_a_mm: a.as_mm(),
        core_b_mm: b.as_mm(),
        values: asked.values.to_vec(),
    }
}

fn key(asked: &WireQuestion) -> QuestionKey {
    let figures = [asked.cord_mm, asked.give, asked.core_mm, asked.core_a_mm, asked.core_b_mm].map(f64::to_bits);
    let values = asked.values.iter().map(|value| value.to_bits()).collect();
    (asked.place, asked.working, asked.core, asked.core_legs, figures, values)
}

impl Compute for Library {
    fn take(&self, asked: &Question<'_>) -> Result<Taken, Unknown> {
        let trouble = |trouble: LibraryError| Unknown::Trouble {
            words: trouble.to_string(),
            remedy: trouble.remedy_of(&self.name),
        };
        match self.ask(asked.knot, asked).map_err(trouble)? {
            JudgedAnswer::Done(figures) => Ok(taken(&figures)),
            JudgedAnswer::Refused(parameter, words) => {
                Err(Unknown::Refused { parameter: parameter.and_then(|at| usize::try_from(at).ok()), words })
            }
            JudgedAnswer::Error(found) => Err(trouble(found)),
        }
    }
}

fn taken(figures: &TakenFigures) -> Taken {
    Taken {
        working: Length::mm(figures.working_mm),
        core: Length::mm(figures.core_mm),
        rise: Length::mm(figures.rise_mm),
        base: Time::s(figures.base_s),
        draws: figures.draws,
    }
}
