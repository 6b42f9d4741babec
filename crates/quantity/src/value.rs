//! A value whose kind is known only at run time, for the calculator, the handbook and the outside cases.

use crate::{ConductorSize, Kind};

/// What sort of value an input or output of a calculation takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sort {
    /// A physical quantity.
    Quantity(Kind),
    /// A whole number of things.
    Count,
    /// A conductor size.
    Conductor,
    /// One of these words.
    Words(&'static [&'static str]),
}

/// A value of some [`Sort`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Value {
    /// A quantity, in the coherent SI unit of its kind.
    Quantity(Kind, f64),
    /// A whole number of things.
    Count(u32),
    /// A conductor size.
    Conductor(ConductorSize),
    /// One of the words that its sort allows.
    Word(&'static str),
}

/// A type that can be an input or an output of a calculation.
pub trait Argument: Sized {
    /// The sort of value that this type takes.
    const SORT: Sort;
    /// The value without its compile-time type.
    fn to_value(&self) -> Value;
    /// The typed value again, or nothing if the sort differs.
    fn from_value(value: &Value) -> Option<Self>;
}

impl Argument for u32 {
    const SORT: Sort = Sort::Count;
    fn to_value(&self) -> Value {
        Value::Count(*self)
    }
    fn from_value(value: &Value) -> Option<Self> {
        match value {
            Value::Count(count) => Some(*count),
            _ => None,
        }
    }
}

impl Argument for ConductorSize {
    const SORT: Sort = Sort::Conductor;
    fn to_value(&self) -> Value {
        Value::Conductor(*self)
    }
    fn from_value(value: &Value) -> Option<Self> {
        match value {
            Value::Conductor(size) => Some(*size),
            _ => None,
        }
    }
}
