//! The program `reeve`: words and terminal only.

mod args;
mod book;
mod book_args;
mod commands;
mod compare;
mod failure;
mod forms;
mod issuing;
mod knot_args;
mod knots;
mod learning;
mod libraries;
mod mix;
mod opening;
mod output;
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
    if words.next().is_some_and(|word| word == reeve_host::SERVE) {
        return reeve_host::serve(&words.collect::<Vec<_>>());
    }
    let args = args::Args::parse();
    match commands::run(args) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => failure.report(),
    }
}
