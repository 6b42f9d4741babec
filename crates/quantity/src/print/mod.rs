//! Printing quantities as the trade rounds them, and writing them so that nothing is lost.

mod choice;
mod digits;
mod exact;
mod feet;
mod measured;

pub use exact::{write_exact, write_kind, write_measured, write_value};
pub use measured::print_measured;

use crate::{Kind, Quantity, Unit, Value};

crate::words! {
    /// Which units a site is written and printed in.
    pub enum UnitSystem {
        /// Feet, inches, pounds, degrees Fahrenheit.
        UsCustomary = "us",
        /// Meters, kilograms, degrees Celsius.
        Si = "si",
    }
}

/// A quantity as a person reads it, rounded as the trade rounds; [`write_exact`] loses nothing.
pub fn print<Q: Quantity>(quantity: Q, system: UnitSystem) -> String {
    print_kind(Q::KIND, quantity.base(), system)
}

/// A quantity whose kind is known only at run time.
pub fn print_kind(kind: Kind, base: f64, system: UnitSystem) -> String {
    if !base.is_finite() {
        return "no finite value".to_owned();
    }
    if kind == Kind::Length && system == UnitSystem::UsCustomary && feet::is_apt(base) {
        return feet::sixteenths(base);
    }
    let (unit, digits) = choice::choose(kind, base, system);
    let number = unit.from_base(base);
    // Near the largest number there is, a smaller unit no longer holds the value.
    if number.is_finite() {
        joined(&digits.text(number), unit)
    } else {
        write_kind(kind, base, system)
    }
}

/// A value whose sort is known only at run time.
pub fn print_value(value: &Value, system: UnitSystem) -> String {
    match value {
        Value::Quantity(kind, base) => print_kind(*kind, *base, system),
        Value::Count(count) => count.to_string(),
        Value::Conductor(size) => size.to_string(),
        Value::Word(word) => (*word).to_owned(),
    }
}

/// The most that [`print_kind`] may differ from the value, in the coherent SI unit: half of the last place printed.
pub fn print_rounding(kind: Kind, base: f64, system: UnitSystem) -> f64 {
    if kind == Kind::Length && system == UnitSystem::UsCustomary && feet::is_apt(base) {
        return feet::ROUNDING;
    }
    let (unit, digits) = choice::choose(kind, base, system);
    unit.scaled(digits.rounding(unit.from_base(base)))
}

/// A number with its unit: degrees and plain numbers without a space.
fn joined(number: &str, unit: &Unit) -> String {
    match unit.symbol() {
        "" => number.to_owned(),
        "°" => format!("{number}°"),
        symbol => format!("{number} {symbol}"),
    }
}
