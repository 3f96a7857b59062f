//! Help, completions, manual and schemas as the program prints them.

use reeve_tests::{TestShop, commands, root};
use serde_json::Value;

/// Commands that the program must have; it may have more.
const COMMANDS: [&str; 9] = ["begin", "check", "takeoff", "costing", "bench", "quote", "schema", "completions", "man"];
const SHELLS: [&str; 5] = ["bash", "elvish", "fish", "powershell", "zsh"];

fn print(words: &[&str]) -> String {
    TestShop::none().run(words).done()
}

/// The help of a command.
fn help(command: &[String]) -> String {
    let mut words: Vec<&str> = command.iter().map(String::as_str).collect();
    words.push("--help");
    print(&words)
}

#[test]
fn the_program_has_its_commands() {
    let known = commands();
    for command in COMMANDS {
        assert!(known.contains(&vec![command.to_owned()]), "{command}");
    }
}

#[test]
fn help_says_what_every_exit_code_means() {
    let help = print(&["--help"]);
    for code in ["  0  ", "  1  ", "  2  "] {
        assert!(help.contains(code), "exit code {code}");
    }
}

#[test]
fn help_begins_with_what_the_program_is_for() {
    // As the manual and the first line of help say it to a maker, not to a programmer.
    let help = print(&["--help"]);
    let first = help.lines().next().unwrap();
    assert!(first.to_lowercase().contains("pric") && first.contains("knot"), "{first}");
}

#[test]
fn every_help_has_an_example() {
    let mut without = Vec::new();
    for command in std::iter::once(Vec::new()).chain(commands()) {
        let line = format!("  reeve {}", command.join(" "));
        let help = help(&command);
        if !help.contains("Example") || !help.contains(line.trim_end()) {
            without.push(line);
        }
    }
    assert!(without.is_empty(), "no example in the help of {without:?}");
}

#[cfg(unix)]
#[test]
fn every_example_runs_as_it_stands() {
    let place = TestShop::none();
    // The workspace's own folder, as far as the examples speak of it: what it builds.
    place.write("target/.here", "");
    std::os::unix::fs::symlink(reeve_tests::shipped(), place.path("target/release")).unwrap();
    for line in commands().iter().flat_map(|command| examples(command)) {
        // Those that name no shop are meant to be typed inside one.
        let outside = line.contains("my-shop") || line.contains("target/");
        let folder = if outside { place.path(".") } else { place.path("my-shop") };
        let ran = shell(&folder, &line);
        assert!(ran.status.success(), "{line}\n{}", String::from_utf8_lossy(&ran.stderr));
    }
}

/// The examples in the help of a command; what is written into the home folder is left out.
fn examples(command: &[String]) -> Vec<String> {
    // A line that goes on ends in a backslash, as in a shell.
    let help = help(command).replace("\\\n", "");
    let lines = help.lines().filter_map(|line| line.strip_prefix("  ")).filter(|line| line.starts_with("reeve "));
    lines.filter(|line| !line.contains('~')).map(str::to_owned).collect()
}

/// A line, as typed into a shell that finds the program.
#[cfg(unix)]
fn shell(folder: &std::path::Path, line: &str) -> std::process::Output {
    let mut path = reeve_tests::reeve().parent().unwrap().as_os_str().to_owned();
    path.push(":");
    path.push(std::env::var_os("PATH").unwrap_or_default());
    std::process::Command::new("sh").args(["-c", line]).current_dir(folder).env("PATH", path).output().unwrap()
}

#[test]
fn help_keeps_to_80_columns() {
    for command in commands() {
        let help = help(&command);
        let wide = help.lines().filter(|line| line.chars().count() > 80);
        // An example that could be copied in no other way may be longer.
        let wide: Vec<&str> = wide.filter(|line| !line.starts_with("  reeve ")).collect();
        assert!(wide.is_empty(), "{command:?}: {wide:?}");
    }
}

#[test]
fn completions_of_every_shell_know_every_command() {
    for shell in SHELLS {
        let script = print(&["completions", shell]);
        for command in commands() {
            let name = command.last().unwrap();
            assert!(script.contains(name.as_str()), "{command:?} in {shell}");
        }
        for option in ["demo", "shop", "out", "on"] {
            assert!(script.contains(option), "--{option} in {shell}");
        }
    }
}

#[cfg(target_os = "linux")]
#[test]
fn bash_reads_its_completions() {
    let place = TestShop::none();
    place.write("reeve.bash", print(&["completions", "bash"]));
    let read = std::process::Command::new("bash").arg("-n").arg(place.path("reeve.bash")).output().unwrap();
    assert!(read.status.success(), "{}", String::from_utf8_lossy(&read.stderr));
}

#[test]
fn the_manual_has_a_page_for_every_command() {
    let manual = print(&["man"]);
    assert!(manual.contains("\n.TH reeve 1") || manual.starts_with(".TH reeve 1"));
    for command in commands() {
        assert!(manual.contains(&format!(".TH reeve-{} 1", command.join("-"))), "{command:?}");
    }
}

#[test]
fn every_schema_is_a_schema() {
    let help = print(&["schema", "--help"]).replace('\n', " ");
    let (_, kinds) = help.split_once("[possible values: ").unwrap();
    let (kinds, _) = kinds.split_once(']').unwrap();
    let kinds: Vec<&str> = kinds.split(',').map(str::trim).collect();
    assert!(kinds.len() >= 9, "{kinds:?}");
    for kind in kinds {
        let schema: Value = serde_json::from_str(&print(&["schema", kind])).unwrap();
        jsonschema::meta::validate(&schema).unwrap_or_else(|fault| panic!("{kind}: {fault}"));
        assert_eq!(schema["$schema"], "https://json-schema.org/draft/2020-12/schema", "{kind}");
    }
}

#[test]
fn the_version_is_the_workspaces() {
    assert_eq!(print(&["--version"]), format!("reeve {}\n", env!("CARGO_PKG_VERSION")));
    let manifest = std::fs::read_to_string(root().join("Cargo.toml")).unwrap();
    assert!(manifest.contains(&format!("version = \"{}\"", env!("CARGO_PKG_VERSION"))));
}
