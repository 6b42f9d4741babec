//! Everything that is tested from outside this crate, as one program: each program more would be linked for itself.

mod calc;
mod check;
mod choose;
mod choose_protection;
mod choose_standing;
mod common;
mod fresh;
mod mutated;
mod pack;
mod serve_answers;
mod serve_edit;
mod serve_guard;
mod serve_jobs;
mod serve_kill;
mod serve_live;
mod serve_papers;
mod serve_pictures;
mod serve_stop;
mod set;
mod tidy;
mod verify;
mod walk;
