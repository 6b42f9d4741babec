//! Everything that is tested from outside this crate, as one program: each program more would be linked for itself.

mod common;
mod dxf;
mod laws;
mod plot;
mod sheet;
