//! The program itself, built once, and what a run of it leaves behind.

use std::io::Read;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};
use std::sync::OnceLock;

use serde_json::Value;

/// The workspace's folder.
pub fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap()
}

/// The variable that names the program where a test is run by a user who can't build it.
pub const BUILT: &str = "REEVE_BUILT";

/// The program, built by the cargo that runs the tests, into the same folder and by the same profile.
pub fn reeve() -> &'static Path {
    static PROGRAM: OnceLock<PathBuf> = OnceLock::new();
    PROGRAM.get_or_init(|| std::env::var_os(BUILT).map_or_else(build, PathBuf::from))
}

fn build() -> PathBuf {
    // TARGET/PROFILE/deps/this-test
    let this = std::env::current_exe().unwrap();
    let profile = this.ancestors().nth(2).unwrap();
    let mut cargo = cargo_build(profile);
    // With a test beside it the program is built of the same libraries, with the same features, as the tests were: asked for
    // alone it would build most of them a second time.
    cargo.args(["--package", "reeve-cli", "--bin", "reeve"]);
    cargo.args(["--package", "reeve-tests", "--test", "published"]);
    let output = cargo.args(["--message-format", "json-render-diagnostics"]).output().unwrap();
    assert!(output.status.success(), "the program can't be built:\n{}", String::from_utf8_lossy(&output.stderr));
    executable(&output).unwrap_or_else(|| panic!("cargo names no program"))
}

/// The program's place, from what cargo says of it.
fn executable(output: &Output) -> Option<PathBuf> {
    let messages = std::str::from_utf8(&output.stdout).ok()?.lines();
    let mut messages = messages.filter_map(|line| serde_json::from_str::<Value>(line).ok());
    let program = messages.find(|message| message["target"]["name"] == "reeve" && message["executable"].is_string())?;
    program["executable"].as_str().map(PathBuf::from)
}

/// The folder that holds the libraries of knots that ship with the program, built as the program is.
pub fn shipped() -> &'static Path {
    static FOLDER: OnceLock<PathBuf> = OnceLock::new();
    FOLDER.get_or_init(|| {
        let profile = reeve().parent().unwrap();
        let mut cargo = cargo_build(profile);
        for package in ["reeve-woven", "reeve-bound", "reeve-monkeys-fist"] {
            cargo.args(["--package", package]);
        }
        let output = cargo.arg("--lib").output().unwrap();
        assert!(output.status.success(), "the libraries can't be built:\n{}", String::from_utf8_lossy(&output.stderr));
        profile.to_owned()
    })
}

/// This run's cargo, told to build into the same folder by the same profile.
fn cargo_build(profile: &Path) -> Command {
    let mut cargo = Command::new(std::env::var_os("CARGO").unwrap_or_else(|| env!("CARGO").into()));
    cargo.args(["build", "--quiet", "--target-dir"]).arg(profile.parent().unwrap());
    if profile.ends_with("release") {
        cargo.arg("--release");
    }
    cargo.current_dir(root());
    cargo
}

/// What a run of the program leaves behind.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ran {
    /// The exit code; `None` when a signal ended it.
    pub code: Option<i32>,
    /// Standard output.
    pub out: String,
    /// Standard error.
    pub err: String,
}

impl Ran {
    /// Standard output of a run that must have gone well.
    #[track_caller]
    pub fn done(self) -> String {
        assert_eq!(self.code, Some(0), "{}", self.err);
        self.out
    }

    /// Standard error of a run that must have refused its input and printed no result.
    #[track_caller]
    pub fn refused(self) -> String {
        assert_eq!((self.code, self.out.as_str()), (Some(2), ""), "{}", self.err);
        self.err
    }
}

/// Runs the program in a folder and waits for its end.
pub fn run(folder: &Path, words: &[&str]) -> Ran {
    run_reading(folder, words, Stdio::piped())
}

/// Runs the program in a folder with a standard output of the caller's choice.
pub fn run_reading(folder: &Path, words: &[&str], out: Stdio) -> Ran {
    let mut command = command(folder, words);
    command.stdout(out);
    ended(command)
}

/// Waits for the end of a program that prints into pipes.
pub(crate) fn ran(mut command: Command) -> Ran {
    command.stdout(Stdio::piped());
    ended(command)
}

fn ended(mut command: Command) -> Ran {
    let output = command.stderr(Stdio::piped()).spawn().unwrap().wait_with_output().unwrap();
    Ran { code: output.status.code(), out: text(&output.stdout), err: text(&output.stderr) }
}

/// The folder of the maker's own, for a program that is run in a folder: no test sees another's.
pub(crate) fn own(folder: &Path) -> PathBuf {
    folder.join("own")
}

/// The program, to be run in a folder.
pub(crate) fn command(folder: &Path, words: &[&str]) -> Command {
    command_by(None, folder, words)
}

/// The program, to be run in a folder, perhaps by another one that starts it.
pub(crate) fn command_by(starter: Option<&Path>, folder: &Path, words: &[&str]) -> Command {
    let mut command = Command::new(starter.unwrap_or(reeve()));
    command.args(starter.map(|_| reeve()));
    command
        .current_dir(folder)
        .args(words)
        .stdin(Stdio::null())
        .env("XDG_DATA_HOME", own(folder))
        .env("XDG_CACHE_HOME", own(folder).join("cache"));
    // Width and colour must not depend on who runs the tests.
    for variable in ["COLUMNS", "LINES", "NO_COLOR", "CLICOLOR", "CLICOLOR_FORCE", "FORCE_COLOR"] {
        command.env_remove(variable);
    }
    command
}

/// Every command, as the program's own help lists them: the words after `reeve`, commands of commands with them.
pub fn commands() -> Vec<Vec<String>> {
    below(&[])
}

fn below(words: &[String]) -> Vec<Vec<String>> {
    let mut asked: Vec<&str> = words.iter().map(String::as_str).collect();
    asked.push("--help");
    let help = run(root(), &asked).done();
    let mut commands = Vec::new();
    for name in listed(&help) {
        let mut command = words.to_vec();
        command.push(name);
        commands.push(command.clone());
        commands.extend(below(&command));
    }
    commands
}

/// The names under the heading of the commands; `help` itself is left out.
fn listed(help: &str) -> Vec<String> {
    let lines = help.lines().skip_while(|line| *line != "Commands:").skip(1).take_while(|line| !line.is_empty());
    let names = lines.filter(|line| line.starts_with("  ") && !line.starts_with("   "));
    let names = names.filter_map(|line| line.split_whitespace().next()).filter(|name| *name != "help");
    names.map(str::to_owned).collect()
}

/// What the program writes is UTF-8, all of it.
fn text(mut bytes: &[u8]) -> String {
    let mut text = String::new();
    bytes.read_to_string(&mut text).unwrap();
    text
}
