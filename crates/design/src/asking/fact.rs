//! What was read of the site: measured values with their ends, and words, counts and sizes.

use crate::figure::Print;
use quantity::{Known, Measured, Quantity, Sort, Tolerance, UnitSystem, Value};
use site::Origin;

/// A measured value of the site that an answer rests on.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Fact<'s> {
    pub(crate) origin: &'s Origin,
    pub(crate) key: &'static str,
    /// Coordinate of a position; empty for everything else.
    pub(crate) part: &'static str,
    pub(crate) sort: Sort,
    pub(crate) nominal: f64,
    pub(crate) low: f64,
    pub(crate) high: f64,
    tolerance: Tolerance,
    pub(crate) known: Known,
    show: fn(f64, Tolerance, UnitSystem) -> String,
}

/// A value with its tolerance, as a person reads it.
fn shown<Q: Quantity>(nominal: f64, tolerance: Tolerance, units: UnitSystem) -> String {
    let measured = Measured::new(Q::from_base(nominal), tolerance, Known::Stated);
    quantity::print_measured(&measured, units)
}

impl<'s> Fact<'s> {
    pub(super) fn new<Q: Quantity>(
        origin: &'s Origin,
        key: &'static str,
        part: &'static str,
        measured: &Measured<Q>,
    ) -> Self {
        Self {
            origin,
            key,
            part,
            sort: Q::SORT,
            nominal: measured.nominal().base(),
            low: measured.low().base(),
            high: measured.high().base(),
            tolerance: measured.tolerance(),
            known: measured.known(),
            show: shown::<Q>,
        }
    }

    /// Keeps only one end, whose value it gives: whoever reads it knows which end is the bad one.
    pub(super) fn taken<Q: Quantity>(mut self, measured: &Measured<Q>, end: End) -> (Self, Q) {
        let value = match end {
            End::Nominal => measured.nominal(),
            End::Low => measured.low(),
            End::High => measured.high(),
        };
        (self.low, self.high) = (value.base(), value.base());
        (self, value)
    }

    /// The value with its tolerance, as a person reads it.
    pub(crate) fn text(&self, print: Print) -> String {
        (self.show)(self.nominal, self.tolerance, print.units())
    }

    /// Its tolerance leaves room.
    pub(crate) fn is_loose(&self) -> bool {
        self.low < self.high
    }

    /// The value at one of its ends.
    pub(crate) fn at(&self, end: End) -> Value {
        let number = match end {
            End::Nominal => self.nominal,
            End::Low => self.low,
            End::High => self.high,
        };
        match self.sort {
            Sort::Quantity(kind) => Value::Quantity(kind, number),
            _ => Value::Count(0),
        }
    }

    pub(super) fn is(&self, origin: &Origin, key: &str, part: &str) -> bool {
        std::ptr::eq(self.origin, origin) && is_word(self.key, key) && is_word(self.part, part)
    }
}

/// Two keys are one: mostly the same text at the same place, which is looked at first.
fn is_word(one: &str, other: &str) -> bool {
    std::ptr::eq(one, other) || one == other
}

/// A word, a count or a conductor size of the site that an answer rests on.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Pick<'s> {
    pub(crate) origin: &'s Origin,
    pub(crate) key: &'static str,
    pub(crate) value: Value,
}

/// Which value of a toleranced fact is handed out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum End {
    Nominal,
    Low,
    High,
}
