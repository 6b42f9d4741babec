//! What a check concludes, before it is put into words.

use quantity::{Argument, Kind, Value};

/// A value with what it is called.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Labeled {
    pub(crate) label: &'static str,
    pub(crate) value: Value,
}

impl Labeled {
    pub(crate) fn new(label: &'static str, value: impl Argument + Copy) -> Self {
        Self {
            label,
            value: value.to_value(),
        }
    }

    /// The number behind the value.
    fn number(&self) -> f64 {
        match self.value {
            Value::Quantity(_, base) => base,
            Value::Count(count) => f64::from(count),
            Value::Conductor(_) | Value::Word(_) => f64::NAN,
        }
    }
}

/// Demand against capacity.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Comparison {
    pub(crate) demand: Labeled,
    pub(crate) capacity: Labeled,
    strict: bool,
}

/// Values nearer than this share of themselves count as equal: conversions of units round in the last digits.
const EQUAL: f64 = 1e-9;

impl Comparison {
    /// Holds when the demand is at most the capacity.
    pub(crate) fn at_most(demand: Labeled, capacity: Labeled) -> Self {
        Self {
            demand,
            capacity,
            strict: false,
        }
    }

    /// Holds when the demand is below the capacity.
    pub(crate) fn below(demand: Labeled, capacity: Labeled) -> Self {
        Self {
            strict: true,
            ..Self::at_most(demand, capacity)
        }
    }

    /// Both figures are finite numbers.
    pub(crate) fn is_finite(&self) -> bool {
        self.demand.number().is_finite() && self.capacity.number().is_finite()
    }

    pub(crate) fn holds(&self) -> bool {
        let (demand, capacity) = (self.demand.number(), self.capacity.number());
        let slack = EQUAL * demand.abs().max(capacity.abs());
        if self.strict {
            demand < capacity - slack
        } else {
            demand <= capacity + slack
        }
    }

    /// Demand over capacity; infinite where there is no capacity to speak of. The larger, the worse.
    pub(crate) fn strain(&self) -> f64 {
        let (demand, capacity) = (self.demand.number(), self.capacity.number());
        if capacity > 0.0 {
            demand / capacity
        } else if self.holds() {
            1.0
        } else {
            f64::INFINITY
        }
    }

    /// Demand over capacity as shown; nothing for temperatures, whose zero says nothing here, and over a
    /// capacity that is not above zero, such as a level below the gate line.
    pub(crate) fn ratio(&self) -> Option<f64> {
        let on_a_scale = matches!(self.demand.value, Value::Quantity(Kind::Temperature, _));
        let strain = self.strain();
        (!on_a_scale && strain.is_finite() && self.capacity.number() > 0.0).then_some(strain)
    }
}

/// What a check concludes.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Outcome {
    /// Demand against capacity.
    Compared(Comparison),
    /// A rule without figures: kept, or broken.
    Rule(bool),
    /// A figure with nothing to hold it against.
    Figure(Labeled),
}

impl Outcome {
    pub(crate) fn at_most(demand: Labeled, capacity: Labeled) -> Self {
        Self::Compared(Comparison::at_most(demand, capacity))
    }

    /// The worst of several comparisons: one that fails before one that holds, then the one with the least in hand.
    pub(crate) fn worst(comparisons: impl IntoIterator<Item = Comparison>) -> Option<Self> {
        comparisons
            .into_iter()
            .max_by(|a, b| {
                (!a.holds())
                    .cmp(&!b.holds())
                    .then(a.strain().total_cmp(&b.strain()))
            })
            .map(Self::Compared)
    }

    /// How hard the answer is strained: what the search for the worst corner drives up.
    pub(crate) fn strain(&self) -> f64 {
        match self {
            Self::Compared(comparison) => comparison.strain(),
            Self::Rule(kept) => {
                if *kept {
                    0.0
                } else {
                    2.0
                }
            }
            Self::Figure(figure) => figure.number(),
        }
    }
}

/// A check stopped: a fact is missing, or a calculation is out of reach. `Asking` knows which.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Halt;

/// What a check gives for one subject.
pub(crate) type Answer = Result<Outcome, Halt>;
