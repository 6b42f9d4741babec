//! An output as a function of one input.

use crate::arguments::Backward;
use crate::registry::Calculation;
use crate::sheet::OutOfReach;
use quantity::{Kind, Value};

/// How far an output misses its wanted value, as a function of one input.
pub(super) struct Curve<'c> {
    calculation: &'c Calculation,
    question: &'c Backward,
    place: usize,
    kind: Kind,
}

/// A point of the curve: the input, and by how much the output exceeds the wanted value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Point {
    pub(super) input: f64,
    pub(super) miss: f64,
}

/// Misses up to this share of the value count as none.
const EQUAL: f64 = 1e-12;

impl<'c> Curve<'c> {
    pub(super) fn new(
        calculation: &'c Calculation,
        question: &'c Backward,
        place: usize,
        kind: Kind,
    ) -> Self {
        Self {
            calculation,
            question,
            place,
            kind,
        }
    }

    /// The wanted value.
    pub(super) fn wanted(&self) -> f64 {
        self.question.value
    }

    /// The point at an input, or why there is none.
    pub(super) fn at(&self, input: f64) -> Result<Point, OutOfReach> {
        let given = self.question.given.iter().enumerate();
        let inputs: Vec<Value> = given
            .filter_map(|(place, value)| {
                let tried = (place == self.place).then_some(Value::Quantity(self.kind, input));
                tried.or(*value)
            })
            .collect();
        let outputs = self.calculation.evaluate(&inputs)?;
        match outputs.get(self.question.output) {
            Some(Value::Quantity(_, output)) => Ok(Point {
                input,
                miss: output - self.wanted(),
            }),
            _ => Err(OutOfReach::new("outputs", "this output is no quantity")),
        }
    }

    /// Whether the output at a point is the wanted value, but for rounding.
    pub(super) fn hits(&self, point: Point) -> bool {
        point.miss.abs() <= EQUAL * self.wanted().abs().max((point.miss + self.wanted()).abs())
    }
}
