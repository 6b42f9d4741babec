//! Calculations backward: every value of one input at which an output has a wanted value.

mod curve;
mod range;
mod scan;

use crate::arguments::Backward;
use crate::registry::Calculation;
use crate::sheet::{OutOfReach, Symbol};
use curve::Curve;
use quantity::{Kind, Sort};

/// The answer to a question backward.
#[derive(Debug, Clone)]
pub struct Solved {
    /// The input that was looked for.
    pub input: &'static Symbol,
    /// Its kind; the numbers are in its coherent SI unit.
    pub kind: Kind,
    /// The lowest value that was tried.
    pub lowest: f64,
    /// The highest value that was tried.
    pub highest: f64,
    /// What was found there.
    pub found: Found,
}

/// How many values of the input give the wanted output.
#[derive(Debug, Clone, PartialEq)]
pub enum Found {
    /// None does in the range.
    None {
        /// The nearest that was reached, if any value of the range has an output at all.
        closest: Option<Closest>,
        /// Why the calculation refuses, where it has no output in the whole range.
        refused: Option<OutOfReach>,
    },
    /// One value, or one unbroken range of values.
    One(Place),
    /// Several, rising.
    Several(Vec<Place>),
    /// Every value that the calculation accepts: the output does not depend on this input.
    Any,
}

/// An input and the output it gives, when it is not the wanted one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Closest {
    /// The input, in the coherent SI unit.
    pub input: f64,
    /// The output there, in the coherent SI unit.
    pub output: f64,
}

/// Where an output has the wanted value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Place {
    /// At one value.
    At(f64),
    /// At every value from one to the other.
    Between {
        /// The lowest such value.
        from: f64,
        /// The highest such value.
        to: f64,
    },
}

/// Looks for every value of the missing input at which the wanted output has its value.
///
/// The range that is typical of the input's kind is tried from end to end, and each place where the output crosses or
/// touches the wanted value is narrowed down to the last digit. Where the output jumps over the wanted value there is
/// no answer. Two answers closer together than a twentieth of their size may be taken for one or for none.
pub fn solve(calculation: &Calculation, question: &Backward) -> Result<Solved, OutOfReach> {
    let sheet = calculation.sheet;
    let mut missing = (0..sheet.inputs.len())
        .filter(|place| question.given.get(*place).is_none_or(Option::is_none));
    let (Some(place), None) = (missing.next(), missing.next()) else {
        let why = "exactly one input can be looked for; give all the others";
        return Err(OutOfReach::new("inputs", why));
    };
    let input = &sheet.inputs[place];
    let Sort::Quantity(kind) = input.sort else {
        let why = "only a quantity can be looked for; try the values of this input one by one";
        return Err(OutOfReach::new(input.name, why));
    };
    let is_quantity = |output: &Symbol| matches!(output.sort, Sort::Quantity(_));
    if !sheet.outputs.get(question.output).is_some_and(is_quantity) || !question.value.is_finite() {
        let why = "only an output that is a quantity can be wanted";
        return Err(OutOfReach::new("outputs", why));
    }
    let tried = range::samples(kind);
    let curve = Curve::new(calculation, question, place, kind);
    Ok(Solved {
        input,
        kind,
        lowest: tried.first().copied().unwrap_or_default(),
        highest: tried.last().copied().unwrap_or_default(),
        found: scan::scan(&curve, &tried),
    })
}

#[cfg(test)]
mod tests;
