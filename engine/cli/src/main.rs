//! The program `reeve`: words and terminal only.

mod args;
mod book;
mod book_args;
mod commands;
mod compare;
mod expected;
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
mod sample_views;
mod samples;
mod sheets;
mod shelf;
mod tighten;
mod weigh;

use std::process::ExitCode;

use clap::Parser;

fn main() -> ExitCode {
    let mut words = std::env::args_os().skip(1);
    // The program starts itself so for each library of knots: before anything else of it is there.
    match words.next() {
        Some(word) if word == reeve_host::SERVE => return reeve_host::serve(&words.collect::<Vec<_>>()),
        Some(word) if word == page_process::LAY_OUT => return page_process::serve(),
        _ => {}
    }
    output::outlive_limits();
    let args = args::Args::parse();
    match commands::run(args) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => failure.report(),
    }
}
