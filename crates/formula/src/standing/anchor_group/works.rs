//! How a calculation is evaluated: with its working kept, or quietly.

use crate::{Formula, OutOfReach};

/// Evaluates calculations one after another.
pub trait Works {
    /// What ends the work where a calculation refuses its inputs.
    type Stop;
    /// Evaluates one.
    fn work<F: Formula>(&mut self, formula: &F) -> Result<F::Gives, Self::Stop>;
}

/// Keeps nothing of the working.
#[derive(Debug, Clone, Copy, Default)]
pub struct Quietly;

impl Works for Quietly {
    type Stop = OutOfReach;
    fn work<F: Formula>(&mut self, formula: &F) -> Result<F::Gives, OutOfReach> {
        formula.evaluate()
    }
}
