//! Writing values so that reading them gives the very same value.

use super::choice::printed_units;
use super::measured::{Style, with_tolerance};
use super::{UnitSystem, feet, joined};
use crate::number::shortest;
use crate::read::{read_conductor, read_kind};
use crate::{ConductorSize, Kind, Measured, Quantity, Unit, Value, units_of};

/// A quantity with all its digits: reading the text gives the same value, bit for bit.
pub fn write_exact<Q: Quantity>(quantity: Q, system: UnitSystem) -> String {
    write_kind(Q::KIND, quantity.base(), system)
}

/// As [`write_exact`], for a quantity whose kind is known only at run time.
///
/// The unit is one of the system's where some twelve digits of it hold the value, and else the coherent SI unit.
pub fn write_kind(kind: Kind, base: f64, system: UnitSystem) -> String {
    if !base.is_finite() {
        return super::print_kind(kind, base, system);
    }
    let same =
        |text: &String| read_kind(kind, text).is_ok_and(|read| read.to_bits() == base.to_bits());
    let in_feet = (kind == Kind::Length && system == UnitSystem::UsCustomary && feet::is_apt(base))
        .then(|| feet::sixteenths(base));
    let (apt, _) = super::choice::choose(kind, base, system);
    let units = std::iter::once(apt)
        .chain(printed_units(kind, system))
        .chain(units_of(kind));
    let short = units.map(|unit| joined(&plain(unit.from_base(base)), unit));
    in_feet
        .into_iter()
        .chain(short)
        .find(same)
        .unwrap_or_else(|| coherent(kind, base))
}

/// A number to twelve digits.
fn plain(number: f64) -> String {
    let size = number.abs();
    if size > 0.0 && !(1e-6..1e15).contains(&size) {
        format!("{number:e}")
    } else {
        shortest(number)
    }
}

/// All digits, in the coherent SI unit.
fn coherent(kind: Kind, base: f64) -> String {
    let is_coherent =
        |unit: &&Unit| unit.scale.to_bits() == 1f64.to_bits() && unit.offset.to_bits() == 0;
    let symbol = units_of(kind)
        .iter()
        .find(is_coherent)
        .map_or("", Unit::symbol);
    let size = base.abs();
    let number = if size > 0.0 && !(1e-6..1e15).contains(&size) {
        format!("{base:e}")
    } else {
        format!("{base}")
    };
    format!("{number} {symbol}").trim_end().to_owned()
}

/// A measured value with all its digits, its tolerance and how it is known.
///
/// Reading the text gives the same value and tolerance; a tolerance in percent may differ in its last binary digit.
pub fn write_measured<Q: Quantity>(measured: &Measured<Q>, system: UnitSystem) -> String {
    with_tolerance(measured, system, Style::Exact)
}

/// A value of any sort with all its digits.
pub fn write_value(value: &Value, system: UnitSystem) -> String {
    match value {
        Value::Quantity(kind, base) => write_kind(*kind, *base, system),
        Value::Conductor(ConductorSize::Metric(area)) => {
            let printed = super::print_value(value, system);
            let same = read_conductor(&printed).is_ok_and(|read| Value::Conductor(read) == *value);
            if same {
                printed
            } else {
                write_kind(Kind::Area, area.base(), UnitSystem::Si)
            }
        }
        other => super::print_value(other, system),
    }
}
