//! The program `reeve`: words and terminal only.

mod args;
mod book;
mod book_args;
mod bookkeeping;
mod commands;
mod compare;
mod design_args;
mod failure;
mod forgetting;
mod forms;
mod issuing;
mod knot_args;
mod knots;
mod layout;
mod learning;
mod libraries;
mod mix;
mod opening;
mod output;
mod own_templates;
mod page_process;
mod papers;
mod reference;
mod sample_views;
mod samples;
mod sheets;
mod shelf;
mod shell;
mod tighten;
mod weigh;

use std::ffi::OsString;
use std::process::ExitCode;

use clap::Parser;
use reeve_reading::unseen_in;

use crate::failure::Failure;

fn main() -> ExitCode {
    let words: Vec<OsString> = std::env::args_os().skip(1).collect();
    // The program starts itself so for each library of knots: before anything else of it is there.
    match words.split_first() {
        Some((word, others)) if word == reeve_host::SERVE => return reeve_host::serve(others),
        Some((word, _)) if word == page_process::LAY_OUT => return page_process::serve(),
        _ => {}
    }
    output::outlive_limits();
    // Before they are understood: what is told of them, and what is kept of them, then holds nothing that can't be seen.
    match all_seen(&words).and_then(|()| commands::run(args::Args::parse())) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => failure.report(),
    }
}

/// Refuses words of the command line that hold what can't be seen.
fn all_seen(words: &[OsString]) -> Result<(), Failure> {
    for word in words {
        let word = word.to_string_lossy();
        if let Some(c) = unseen_in(&word) {
            let title = format!("`{word}` holds a character that can't be seen, U+{:04X}", u32::from(c));
            return Err(Failure::input(title, "type it anew; a file that is called so must be renamed"));
        }
    }
    Ok(())
}
