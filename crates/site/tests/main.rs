//! Everything that is tested from outside this crate, as one program: each program more would be linked for itself.

mod common;
mod edit;
mod exchange;
mod full;
mod known;
mod mutation;
mod problems;
mod schema;
