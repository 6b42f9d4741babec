//! Printing quantities as the trade rounds them.
use crate::{Kind, Measured, Quantity};

crate::words! {
    /// Which units a site is written and printed in.
    pub enum UnitSystem {
        /// Feet, inches, pounds, degrees Fahrenheit.
        UsCustomary = "us",
        /// Meters, kilograms, degrees Celsius.
        Si = "si",
    }
}

/// A quantity as a person reads it.
pub fn print<Q: Quantity>(quantity: Q, system: UnitSystem) -> String {
    print_kind(Q::KIND, quantity.base(), system)
}

/// A quantity whose kind is known only at run time.
pub fn print_kind(kind: Kind, base: f64, system: UnitSystem) -> String {
    let _ = (kind, system);
    format!("{base}")
}

/// A measured value with its tolerance.
pub fn print_measured<Q: Quantity>(measured: &Measured<Q>, system: UnitSystem) -> String {
    print(measured.nominal(), system)
}
