//! The guide in README.md: every command in it is run, in one folder and in order, and shows what it really prints.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use std::fs;
use std::path::Path;
use std::process::Command;

use reeve_tests::{check_kept, reeve, root, shipped};

const OPEN: &str = "```console";
const CLOSE: &str = "```";
const PROMPT: &str = "$ ";

#[test]
fn the_guide_shows_what_the_program_prints() {
    let readme = root().join("README.md");
    let text = fs::read_to_string(&readme).unwrap();
    assert!(text.contains(OPEN), "the guide has no examples");
    let folder = tempfile::tempdir().unwrap();
    // The guide is read in the workspace's own folder: what it builds stands in `target/release` there.
    fs::create_dir(folder.path().join("target")).unwrap();
    std::os::unix::fs::symlink(shipped(), folder.path().join("target/release")).unwrap();
    check_kept(&readme, &retold(&text, folder.path()));
}

/// The text with the output of every command made anew.
fn retold(text: &str, folder: &Path) -> String {
    let mut told = String::new();
    let mut inside = false;
    for line in text.lines() {
        let command = line.strip_prefix(PROMPT).filter(|_| inside);
        if line == OPEN {
            inside = true;
        } else if line == CLOSE {
            inside = false;
        } else if inside && command.is_none() {
            continue;
        }
        told.push_str(line);
        told.push('\n');
        if let Some(command) = command {
            told.push_str(&printed(command, folder));
        }
    }
    told
}

/// What a command prints, with the program on the path.
fn printed(command: &str, folder: &Path) -> String {
    let mut path = reeve().parent().unwrap().as_os_str().to_owned();
    path.push(":");
    path.push(std::env::var_os("PATH").unwrap_or_default());
    let mut shell = Command::new("sh");
    shell
        .args(["-c", command])
        .current_dir(folder)
        .env("PATH", path)
        .env("XDG_DATA_HOME", folder.join("own"))
        .env("XDG_CACHE_HOME", folder.join("own").join("cache"));
    let output = shell.output().unwrap();
    String::from_utf8(output.stdout).unwrap()
}
