//! What the literature says: one module a discipline, each formula beside its source, its tables and its cases.
//!
//! A calculation is declared once with [`formula!`] and then has five faces: the Rust type that is filled in and
//! evaluated, a line of the calculator, a form, a page of the handbook, and the thing that outside cases call.

#[macro_use]
mod declare;
pub mod arguments;
pub mod case;
mod check;
pub mod handbook;
mod registry;
mod sheet;
pub mod solve;
mod table;

pub mod leaf;
pub mod life;
pub mod mains;
pub mod motion;
pub mod power;
pub mod protection;
pub mod signal;
pub mod standing;
pub mod ways;
pub mod wind;

pub use declare::Formula;
pub use registry::{Calculation, find, registry};
pub use sheet::{Discipline, Evidence, OutOfReach, Sheet, Source, Symbol};
