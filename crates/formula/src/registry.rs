//! Every calculation, registered once.

use crate::declare::Formula;
use crate::sheet::{OutOfReach, Sheet};
use crate::{leaf, life, mains, motion, power, protection, signal, standing, ways, wind};
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
            mains::CALCULATIONS,
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

#[cfg(test)]
mod tests {
    #![allow(
        clippy::unwrap_used,
        clippy::panic,
        reason = "a test may stop at the first surprise"
    )]
    use super::*;
    use crate::arguments::{Asked, read};
    use crate::case::{cases, embedded};
    use proptest::prelude::*;

    /// The inputs of the first outside case of a calculation.
    fn of_a_case(calculation: &Calculation) -> Vec<Value> {
        let mut all = embedded().flat_map(|(file, text)| cases(file, text).0);
        let case = all
            .find(|case| case.calculation == calculation.sheet.name && case.refuses.is_none())
            .unwrap();
        let pairs: Vec<(String, String)> = case.given.into_iter().collect();
        match read(calculation, &pairs).unwrap() {
            Asked::Forward(inputs) => inputs,
            Asked::Backward(_) => panic!("a case asks backward"),
        }
    }

    /// Every calculation with the inputs of a case of it.
    static WITH_INPUTS: LazyLock<Vec<(Calculation, Vec<Value>)>> = LazyLock::new(|| {
        let with_inputs = |calculation: &Calculation| (*calculation, of_a_case(calculation));
        registry().iter().map(with_inputs).collect()
    });

    /// How an input of a case is bent: to nothing, to the other side of zero, or by up to three powers of ten.
    fn bend() -> impl Strategy<Value = f64> {
        prop_oneof![
            4 => (-3.0..3.0_f64).prop_map(|power| 10f64.powf(power)),
            2 => Just(1.0),
            1 => Just(0.0),
            1 => Just(-1.0),
        ]
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(4000))]

        /// What a calculation does not refuse, it answers in finite numbers, before the registry looks at them.
        #[test]
        fn what_is_not_refused_is_a_number(bends in prop::collection::vec(bend(), 24)) {
            for (calculation, inputs) in WITH_INPUTS.iter() {
                let mut inputs = inputs.clone();
                for (input, bend) in inputs.iter_mut().zip(&bends) {
                    if let Value::Quantity(_, number) = input {
                        *number *= bend;
                    }
                }
                let Ok(outputs) = (calculation.evaluate)(&inputs) else { continue };
                for (symbol, output) in calculation.sheet.outputs.iter().zip(&outputs) {
                    if let Value::Quantity(_, number) = output {
                        prop_assert!(
                            number.is_finite(),
                            "{}: {} is {number} for {inputs:?}",
                            calculation.sheet.name,
                            symbol.name
                        );
                    }
                }
            }
        }
    }
}
