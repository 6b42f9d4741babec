//! `gatewright`: the command line. It reads files, asks the crates below, and prints what they answer.

mod arguments;
mod command;
mod folder;
mod making;
mod outcome;
mod serve;
mod show;
mod tint;

use clap::Parser as _;
use std::process::ExitCode;

fn main() -> ExitCode {
    let arguments = arguments::Arguments::parse();
    match command::run(arguments.command.unwrap_or_default()) {
        Ok(outcome) => outcome.exit_code(),
        Err(complaint) => {
            outcome::complain(&complaint);
            ExitCode::from(outcome::BAD_INPUT)
        }
    }
}
