//! Everything that is tested from outside this crate, as one program: each program more would be linked for itself.

mod conversions;
mod laws;
mod printing;
mod reading;
