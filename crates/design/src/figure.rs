//! Figures as findings show them: a label, the value in the site's units, and the value for machines.

use quantity::{Kind, Quantity, Ratio, UnitSystem, Value, print_kind, units_of};
use serde::Serialize;

/// A value with what it is called.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Figure {
    /// What it is: `voltage at the reader`.
    pub label: String,
    /// As a person reads it, in the site's units: `10.9 V`.
    pub text: String,
    /// In the coherent SI unit of its kind; nothing for words.
    pub value: Option<f64>,
    /// That unit; empty for counts and words.
    pub unit: String,
}

impl Figure {
    pub(crate) fn new(label: impl Into<String>, value: &Value, print: Print) -> Self {
        let (number, unit) = machine(value);
        Self {
            label: label.into(),
            text: print.value(value),
            value: number,
            unit,
        }
    }
}

/// The number and unit that a machine reads.
fn machine(value: &Value) -> (Option<f64>, String) {
    match value {
        Value::Quantity(kind, base) => (Some(*base), si_unit(*kind).to_owned()),
        Value::Count(count) => (Some(f64::from(*count)), String::new()),
        Value::Conductor(_) | Value::Word(_) => (None, String::new()),
    }
}

/// Symbol of the coherent SI unit of a kind.
fn si_unit(kind: Kind) -> &'static str {
    let coherent = |unit: &&quantity::Unit| {
        (unit.scale - 1.0).abs() < f64::EPSILON && unit.offset.abs() < f64::EPSILON
    };
    units_of(kind)
        .iter()
        .find(coherent)
        .and_then(|unit| unit.symbols.first())
        .copied()
        .unwrap_or_default()
}

/// Prints in the units of one site.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Print {
    units: UnitSystem,
}

impl Print {
    pub(crate) fn new(units: UnitSystem) -> Self {
        Self { units }
    }

    pub(crate) fn units(self) -> UnitSystem {
        self.units
    }

    /// A quantity in a sentence.
    pub(crate) fn q<Q: Quantity>(self, quantity: Q) -> String {
        spoken(quantity::print(quantity, self.units))
    }

    /// A share of a whole in percent, also where it is more than the whole.
    pub(crate) fn percent(self, share: Ratio) -> String {
        if share.base() < 1.0 {
            self.q(share)
        } else {
            format!("{:.0} %", share.base() * 100.0)
        }
    }

    /// A value of any sort as a person reads it.
    pub(crate) fn value(self, value: &Value) -> String {
        quantity::print_value(value, self.units)
    }

    /// The distance between two values of one kind; nothing for counts and words.
    pub(crate) fn distance(self, from: &Value, to: &Value) -> Option<String> {
        match (from, to) {
            (Value::Quantity(kind, a), Value::Quantity(_, b)) => {
                let kind = match kind {
                    Kind::Temperature => Kind::TemperatureDifference,
                    Kind::PowerLevel => Kind::Gain,
                    other => *other,
                };
                // What is left of two like numbers in the last bits is nothing.
                let noise = a.abs().max(b.abs()) * 1e-12;
                let apart = (b - a).abs();
                let apart = if apart <= noise { 0.0 } else { apart };
                Some(spoken(print_kind(kind, apart, self.units)))
            }
            _ => None,
        }
    }
}

/// A quantity as one says it: the difference of two temperatures is in degrees, without a mark.
fn spoken(text: String) -> String {
    if text.contains('Δ') {
        text.replace('Δ', "")
    } else {
        text
    }
}
