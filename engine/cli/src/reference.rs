//! The manual page and the completions: texts that are checked in, and what they are made of.

/// The manual: the program's page, then one for each command.
pub(crate) const MANUAL: &str = include_str!("../reference/reeve.1");

/// Every shell that completions are made for: its word, the ending of their file, and their text.
pub(crate) const SHELLS: [(&str, &str, &str); 5] = [
    ("bash", "bash", include_str!("../reference/reeve.bash")),
    ("elvish", "elv", include_str!("../reference/reeve.elv")),
    ("fish", "fish", include_str!("../reference/reeve.fish")),
    ("powershell", "ps1", include_str!("../reference/reeve.ps1")),
    ("zsh", "zsh", include_str!("../reference/reeve.zsh")),
];

/// What makes the texts is too large to be in the program.
#[cfg(test)]
mod tests {
    use clap::{CommandFactory, ValueEnum};
    use clap_complete::Shell;
    use reeve_tests::{check_kept, root};

    use super::SHELLS;
    use crate::args::Args;

    #[track_caller]
    fn check(name: &str, made: &[u8]) {
        check_kept(&root().join("engine/cli/reference").join(name), &String::from_utf8_lossy(made));
    }

    #[test]
    fn completions_are_as_checked_in() {
        assert_eq!(SHELLS.len(), Shell::value_variants().len());
        for (word, ending, _) in SHELLS {
            let shell = Shell::from_str(word, false).unwrap_or(Shell::Bash);
            let mut text = Vec::new();
            clap_complete::generate(shell, &mut Args::command(), "reeve", &mut text);
            check(&format!("reeve.{ending}"), &text);
        }
    }

    #[test]
    fn the_manual_is_as_checked_in() -> std::io::Result<()> {
        let (mut command, mut text) = (Args::command(), Vec::new());
        command.build();
        clap_mangen::Man::new(command.clone()).render(&mut text)?;
        manual_of(&command, "reeve", &mut text)?;
        check("reeve.1", &text);
        Ok(())
    }

    fn manual_of(command: &clap::Command, above: &str, text: &mut Vec<u8>) -> std::io::Result<()> {
        for sub in command.get_subcommands().filter(|sub| sub.get_name() != "help") {
            let name = format!("{above}-{}", sub.get_name());
            clap_mangen::Man::new(sub.clone().name(name.clone())).render(text)?;
            manual_of(sub, &name, text)?;
        }
        Ok(())
    }
}
