//! Every calculation, registered once.

use crate::declare::Formula;
use crate::sheet::{OutOfReach, Sheet};
use crate::{leaf, life, motion, power, protection, signal, standing, ways, wind};
use quantity::Value;
use std::sync::LazyLock;

/// A registered calculation whose types are known only at run time.
#[derive(Debug, Clone, Copy)]
pub struct Calculation {
    /// Everything said about it.
    pub sheet: &'static Sheet,
    evaluate: fn(&[Value]) -> Result<Vec<Value>, OutOfReach>,
}

impl Calculation {
    pub(crate) const fn of<F: Formula>() -> Self {
        Self {
            sheet: F::SHEET,
            evaluate: evaluate::<F>,
        }
    }

    /// Computes the outputs for inputs given in the order of the sheet. A result that is not a finite number is
    /// refused here, so that none ever leaves the crate through the registry.
    pub fn evaluate(&self, inputs: &[Value]) -> Result<Vec<Value>, OutOfReach> {
        let outputs = (self.evaluate)(inputs)?;
        for (symbol, value) in self.sheet.outputs.iter().zip(&outputs) {
            if matches!(value, Value::Quantity(_, number) if !number.is_finite()) {
                return Err(OutOfReach::new(
                    symbol.name,
                    "these inputs lead to no finite value; look for one that is zero or far too large",
                ));
            }
        }
        Ok(outputs)
    }
}

fn evaluate<F: Formula>(inputs: &[Value]) -> Result<Vec<Value>, OutOfReach> {
    let formula = F::from_inputs(inputs).ok_or_else(|| {
        OutOfReach::new(
            "inputs",
            "the inputs are not those of the sheet, in its order",
        )
    })?;
    formula.evaluate().map(|gives| F::outputs(&gives))
}

/// Every calculation, by discipline.
pub fn registry() -> &'static [Calculation] {
    static ALL: LazyLock<Vec<Calculation>> = LazyLock::new(|| {
        [
            wind::CALCULATIONS,
            leaf::CALCULATIONS,
            motion::CALCULATIONS,
            standing::CALCULATIONS,
            protection::CALCULATIONS,
            life::CALCULATIONS,
            power::CALCULATIONS,
            signal::CALCULATIONS,
            ways::CALCULATIONS,
        ]
        .concat()
    });
    &ALL
}

/// The calculation of that name.
pub fn find(name: &str) -> Option<&'static Calculation> {
    registry()
        .iter()
        .find(|calculation| calculation.sheet.name == name)
}
