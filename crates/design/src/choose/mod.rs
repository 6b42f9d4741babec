//! Better choices: which part suits, and where the pins of a drive go.

mod mounting;
mod parts;

pub use mounting::{Mounted, Pin, mountings};
pub use parts::{Candidate, Choice, Choosable, choose};
