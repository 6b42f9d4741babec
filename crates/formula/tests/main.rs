//! Everything that is tested from outside this crate, as one program: each program more would be linked for itself.

mod arguments;
mod backward;
mod cases;
mod handbook;
mod tables;
