//! One file a command.

pub(crate) mod calc;
mod check;
mod choose;
mod cuts;
mod handbook;
mod kept;
mod offer;
mod pack;
mod plan;
mod queue;
mod serve;
mod set;
mod verify;
mod walk;

pub(crate) use kept::{WALK_FILE, answer_by_walks, held_against, keep, records_in, rests_on};
pub(crate) use pack::issue_day;
pub(crate) use walk::{Heard, Walked, record, walk_past};

use crate::arguments::Command;
use crate::outcome::{Complaint, Outcome};
use std::num::NonZeroUsize;

/// Runs a command.
pub(crate) fn run(command: Command) -> Result<Outcome, Complaint> {
    match command {
        Command::Check {
            site,
            explain,
            questions,
            json,
        } => check::run(&site, explain.as_deref(), questions, json),
        Command::Pack {
            site,
            output,
            date,
            since,
        } => pack::run(&site, &output, date.as_deref(), since.as_deref()),
        Command::Calc {
            name,
            values,
            json,
            si,
        } => calc::run(name.as_deref(), &values, json, si),
        Command::Verify { files, all } => verify::run(&files, all),
        Command::Choose {
            what,
            site,
            json,
            write,
        } => choose::run(&what, &site, json, write),
        Command::Walk(arguments) => walk::run(&arguments),
        Command::Queue(arguments) => queue::run(&arguments),
        Command::Offer(arguments) => offer::run(&arguments),
        Command::Plan(arguments) => plan::run(&arguments),
        Command::Serve { folder, port } => serve::run(folder.as_deref(), port),
        Command::Set { site, path, value } => set::run(&site, &path, &value),
        Command::Handbook { output } => handbook::run(&output),
    }
}

/// As many threads as this computer has for a program.
pub(crate) fn threads() -> NonZeroUsize {
    std::thread::available_parallelism().unwrap_or(NonZeroUsize::MIN)
}
