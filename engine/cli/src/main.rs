//! The program `reeve`: words and terminal only.

mod args;
mod commands;
mod compare;
mod failure;
mod forms;
mod knot_args;
mod knots;
mod opening;
mod output;
mod samples;
mod sheets;
mod shelf;
mod tighten;

use std::process::ExitCode;

use clap::Parser;

fn main() -> ExitCode {
    let args = args::Args::parse();
    match commands::run(args) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => failure.report(),
    }
}
