//! In which unit and with how many digits a value is printed.

use super::UnitSystem;
use super::digits::Digits;
use crate::unit::unit_written;
use crate::{Kind, Unit};

/// A unit to print in, from so many of it upward.
#[derive(Debug, Clone, Copy)]
struct Choice {
    symbol: &'static str,
    from: f64,
    digits: Digits,
}

/// Three significant digits, as most readings on site have.
const THREE: Digits = Digits::significant(3);
/// Four significant digits, as printed tables and angles have.
const FOUR: Digits = Digits::significant(4);
/// Whole above ten, two digits below.
const WHOLE: Digits = Digits::significant(2);
/// At most one decimal.
const TENTH: Digits = Digits::significant(12).at_most(1);
/// To the thousandth: a millimeter of a meter.
const THOUSANDTH: Digits = Digits::significant(15).at_most(3);
/// At least one decimal: volts.
const VOLTS: Digits = Digits::significant(3).at_least(1);

/// A row of a table of choices.
const fn row(symbol: &'static str, from: f64, digits: Digits) -> Choice {
    Choice {
        symbol,
        from,
        digits,
    }
}

/// The unit and the digits that suit a value best.
pub(super) fn choose(kind: Kind, base: f64, system: UnitSystem) -> (&'static Unit, Digits) {
    let choices = choices(kind, system);
    let apt = choices.iter().find(|choice| {
        unit_of(kind, choice).is_some_and(|unit| {
            let number = unit.from_base(base);
            choice.digits.reaches(number, choice.from)
        })
    });
    let choice = apt.or(choices.last());
    choice
        .and_then(|choice| unit_of(kind, choice).map(|unit| (unit, choice.digits)))
        .unwrap_or((&PLAIN, FOUR))
}

/// The coherent unit, for a kind without a table; every kind has one, as a test shows.
const PLAIN: Unit = Unit {
    symbols: &[""],
    scale: 1.0,
    offset: 0.0,
};

/// The units in which a kind is printed in a system, largest first.
pub(super) fn printed_units(kind: Kind, system: UnitSystem) -> impl Iterator<Item = &'static Unit> {
    choices(kind, system)
        .iter()
        .filter_map(move |choice| unit_of(kind, choice))
}

/// The unit of a choice.
fn unit_of(kind: Kind, choice: &Choice) -> Option<&'static Unit> {
    unit_written(kind, choice.symbol)
}

/// The table of a kind in a system, largest unit first.
fn choices(kind: Kind, system: UnitSystem) -> &'static [Choice] {
    let (us, si) = tables(kind);
    match system {
        UnitSystem::UsCustomary => us,
        UnitSystem::Si => si,
    }
}

/// The tables of a kind for US customary units and for SI.
fn tables(kind: Kind) -> (&'static [Choice], &'static [Choice]) {
    match kind {
        Kind::Length
        | Kind::Area
        | Kind::Volume
        | Kind::SecondMomentOfArea
        | Kind::Angle
        | Kind::Ratio => of_space(kind),
        Kind::Time
        | Kind::Frequency
        | Kind::Velocity
        | Kind::Acceleration
        | Kind::Jerk
        | Kind::AngularVelocity => of_motion(kind),
        Kind::Mass
        | Kind::MassPerLength
        | Kind::MassPerArea
        | Kind::MassDensity
        | Kind::MomentOfInertia => of_mass(kind),
        Kind::Force
        | Kind::ForcePerLength
        | Kind::Torque
        | Kind::Energy
        | Kind::Pressure
        | Kind::PressurePerDepth => of_load(kind),
        Kind::Power
        | Kind::HeatFlux
        | Kind::HeatTransfer
        | Kind::Temperature
        | Kind::TemperatureDifference
        | Kind::ThermalExpansion => of_heat(kind),
        Kind::Current
        | Kind::Voltage
        | Kind::Resistance
        | Kind::ResistancePerLength
        | Kind::Resistivity
        | Kind::Charge
        | Kind::Inductance
        | Kind::Capacitance => of_electricity(kind),
        Kind::Gain | Kind::PowerLevel | Kind::FieldStrength => of_radio(kind),
        Kind::DataSize | Kind::DataRate => of_data(kind),
    }
}

/// Tables for lengths and what is made of them. US lengths from an inch upward are in feet and inches instead.
fn of_space(kind: Kind) -> (&'static [Choice], &'static [Choice]) {
    const FEET: &[Choice] = &[row("ft", 1e5, FOUR), row("in", 0.0, THREE)];
    const METERS: &[Choice] = &[
        row("km", 10.0, THOUSANDTH),
        row("m", 1.0, THOUSANDTH),
        row("mm", 0.0, THREE),
    ];
    const US_AREA: &[Choice] = &[row("ft²", 1.0, THREE), row("in²", 0.0, THREE)];
    const SI_AREA: &[Choice] = &[row("m²", 0.01, THREE), row("mm²", 0.0, THREE)];
    const US_VOLUME: &[Choice] = &[
        row("yd³", 0.1, THREE),
        row("ft³", 0.1, THREE),
        row("in³", 0.0, THREE),
    ];
    const SI_VOLUME: &[Choice] = &[
        row("m³", 0.01, THREE),
        row("L", 0.1, THREE),
        row("mL", 0.0, THREE),
    ];
    const US_BENDING: &[Choice] = &[row("in⁴", 0.0, THREE)];
    const SI_BENDING: &[Choice] = &[row("cm⁴", 0.0, THREE)];
    const DEGREES: &[Choice] = &[row("°", 0.0, FOUR)];
    const SHARE: &[Choice] = &[row("", 1.0, THREE), row("%", 0.0, THREE)];
    match kind {
        Kind::Area => (US_AREA, SI_AREA),
        Kind::Volume => (US_VOLUME, SI_VOLUME),
        Kind::SecondMomentOfArea => (US_BENDING, SI_BENDING),
        Kind::Angle => (DEGREES, DEGREES),
        Kind::Ratio => (SHARE, SHARE),
        _ => (FEET, METERS),
    }
}

/// Tables for time and motion.
fn of_motion(kind: Kind) -> (&'static [Choice], &'static [Choice]) {
    const TIME: &[Choice] = &[
        row("years", 1.0, THREE),
        row("d", 2.0, THREE),
        row("h", 2.0, THREE),
        row("min", 2.0, THREE),
        row("s", 1.0, THREE),
        row("ms", 0.0, THREE),
    ];
    const FREQUENCY: &[Choice] = &[
        row("GHz", 1.0, FOUR),
        row("MHz", 1.0, FOUR),
        row("kHz", 1.0, FOUR),
        row("Hz", 1.0, FOUR),
        row("per minute", 0.0, THREE),
    ];
    const US_SPEED: &[Choice] = &[row("mph", 5.0, THREE), row("ft/s", 0.0, THREE)];
    const SI_SPEED: &[Choice] = &[row("m/s", 0.0, THREE)];
    const US_ACCELERATION: &[Choice] = &[row("ft/s²", 0.0, THREE)];
    const SI_ACCELERATION: &[Choice] = &[row("m/s²", 0.0, THREE)];
    const US_JERK: &[Choice] = &[row("ft/s³", 0.0, THREE)];
    const SI_JERK: &[Choice] = &[row("m/s³", 0.0, THREE)];
    const TURNING: &[Choice] = &[row("rpm", 10.0, THREE), row("deg/s", 0.0, THREE)];
    match kind {
        Kind::Time => (TIME, TIME),
        Kind::Frequency => (FREQUENCY, FREQUENCY),
        Kind::Velocity => (US_SPEED, SI_SPEED),
        Kind::Acceleration => (US_ACCELERATION, SI_ACCELERATION),
        Kind::Jerk => (US_JERK, SI_JERK),
        _ => (TURNING, TURNING),
    }
}

/// Tables for mass.
fn of_mass(kind: Kind) -> (&'static [Choice], &'static [Choice]) {
    const US_MASS: &[Choice] = &[row("lb", 1.0, THREE), row("oz", 0.0, THREE)];
    const SI_MASS: &[Choice] = &[row("kg", 1.0, THREE), row("g", 0.0, THREE)];
    const US_LINE: &[Choice] = &[row("lb/ft", 0.0, THREE)];
    const SI_LINE: &[Choice] = &[row("kg/m", 0.1, THREE), row("g/m", 0.0, THREE)];
    const US_SHEET: &[Choice] = &[row("lb/ft²", 0.0, THREE)];
    const SI_SHEET: &[Choice] = &[row("kg/m²", 0.1, THREE), row("g/m²", 0.0, THREE)];
    const US_INERTIA: &[Choice] = &[row("lb·ft²", 0.0, THREE)];
    const SI_INERTIA: &[Choice] = &[row("kg·m²", 0.0, THREE)];
    const US_DENSITY: &[Choice] = &[row("lb/ft³", 0.0, THREE)];
    const SI_DENSITY: &[Choice] = &[row("kg/m³", 0.0, THREE)];
    match kind {
        Kind::MassPerLength => (US_LINE, SI_LINE),
        Kind::MassPerArea => (US_SHEET, SI_SHEET),
        Kind::MomentOfInertia => (US_INERTIA, SI_INERTIA),
        Kind::MassDensity => (US_DENSITY, SI_DENSITY),
        _ => (US_MASS, SI_MASS),
    }
}

/// Tables for force, torque, energy and pressure. What moves has joules or foot-pounds; batteries are written in
/// ampere-hours.
fn of_load(kind: Kind) -> (&'static [Choice], &'static [Choice]) {
    const US_FORCE: &[Choice] = &[row("lbf", 0.0, WHOLE)];
    const SI_FORCE: &[Choice] = &[row("kN", 10.0, THREE), row("N", 0.0, WHOLE)];
    const US_LINE: &[Choice] = &[row("lbf/ft", 0.0, THREE)];
    const SI_LINE: &[Choice] = &[row("kN/m", 10.0, THREE), row("N/m", 0.0, THREE)];
    const US_TORQUE: &[Choice] = &[row("lbf·ft", 0.0, THREE)];
    const SI_TORQUE: &[Choice] = &[row("kN·m", 10.0, THREE), row("N·m", 0.0, THREE)];
    const US_ENERGY: &[Choice] = &[row("ft·lbf", 0.0, THREE)];
    const SI_ENERGY: &[Choice] = &[row("kJ", 10.0, THREE), row("J", 0.0, THREE)];
    const US_PRESSURE: &[Choice] = &[
        row("ksi", 10.0, THREE),
        row("psi", 100.0, THREE),
        row("psf", 0.0, THREE),
    ];
    const SI_PRESSURE: &[Choice] = &[
        row("MPa", 1.0, THREE),
        row("kPa", 1.0, THREE),
        row("Pa", 0.0, THREE),
    ];
    const US_DEPTH: &[Choice] = &[row("lbf/in³", 3.0, THREE), row("psf/ft", 0.0, THREE)];
    const SI_DEPTH: &[Choice] = &[row("MN/m³", 1.0, THREE), row("kPa/m", 0.0, THREE)];
    match kind {
        Kind::PressurePerDepth => (US_DEPTH, SI_DEPTH),
        Kind::ForcePerLength => (US_LINE, SI_LINE),
        Kind::Torque => (US_TORQUE, SI_TORQUE),
        Kind::Energy => (US_ENERGY, SI_ENERGY),
        Kind::Pressure => (US_PRESSURE, SI_PRESSURE),
        _ => (US_FORCE, SI_FORCE),
    }
}

/// Tables for power, heat and temperature.
fn of_heat(kind: Kind) -> (&'static [Choice], &'static [Choice]) {
    const POWER: &[Choice] = &[
        row("kW", 1.0, THREE),
        row("W", 1.0, THREE),
        row("mW", 0.0, THREE),
    ];
    const FLUX: &[Choice] = &[row("W/m²", 0.0, THREE)];
    const US_TRANSFER: &[Choice] = &[row("BTU/(h·ft²·°F)", 0.0, THREE)];
    const SI_TRANSFER: &[Choice] = &[row("W/(m²·K)", 0.0, THREE)];
    const US_TEMPERATURE: &[Choice] = &[row("°F", 0.0, TENTH)];
    const SI_TEMPERATURE: &[Choice] = &[row("°C", 0.0, TENTH)];
    const US_DIFFERENCE: &[Choice] = &[row("Δ°F", 0.0, TENTH)];
    const SI_DIFFERENCE: &[Choice] = &[row("Δ°C", 0.0, TENTH)];
    const EXPANSION: &[Choice] = &[row("µm/(m·K)", 0.0, THREE)];
    match kind {
        Kind::HeatFlux => (FLUX, FLUX),
        Kind::ThermalExpansion => (EXPANSION, EXPANSION),
        Kind::HeatTransfer => (US_TRANSFER, SI_TRANSFER),
        Kind::Temperature => (US_TEMPERATURE, SI_TEMPERATURE),
        Kind::TemperatureDifference => (US_DIFFERENCE, SI_DIFFERENCE),
        _ => (POWER, POWER),
    }
}

/// Tables for electricity, which is the same everywhere but for the length of a cable.
fn of_electricity(kind: Kind) -> (&'static [Choice], &'static [Choice]) {
    const CURRENT: &[Choice] = &[
        row("A", 1.0, THREE),
        row("mA", 1.0, THREE),
        row("µA", 0.0, THREE),
    ];
    const VOLTAGE: &[Choice] = &[
        row("kV", 1.0, THREE),
        row("V", 1.0, VOLTS),
        row("mV", 0.0, THREE),
    ];
    const RESISTANCE: &[Choice] = &[
        row("MΩ", 1.0, THREE),
        row("kΩ", 1.0, THREE),
        row("Ω", 1.0, THREE),
        row("mΩ", 0.0, THREE),
    ];
    const US_CABLE: &[Choice] = &[row("Ω/kft", 0.0, FOUR)];
    const SI_CABLE: &[Choice] = &[row("Ω/km", 0.0, FOUR)];
    const SOIL: &[Choice] = &[row("Ω·m", 0.0, THREE)];
    const CHARGE: &[Choice] = &[row("Ah", 1.0, THREE), row("mAh", 0.0, THREE)];
    const INDUCTANCE: &[Choice] = &[
        row("H", 1.0, THREE),
        row("mH", 1.0, THREE),
        row("µH", 0.1, THREE),
        row("nH", 0.0, THREE),
    ];
    const CAPACITANCE: &[Choice] = &[
        row("µF", 1.0, THREE),
        row("nF", 1.0, THREE),
        row("pF", 0.0, THREE),
    ];
    match kind {
        Kind::Current => (CURRENT, CURRENT),
        Kind::Voltage => (VOLTAGE, VOLTAGE),
        Kind::Resistance => (RESISTANCE, RESISTANCE),
        Kind::ResistancePerLength => (US_CABLE, SI_CABLE),
        Kind::Resistivity => (SOIL, SOIL),
        Kind::Inductance => (INDUCTANCE, INDUCTANCE),
        Kind::Capacitance => (CAPACITANCE, CAPACITANCE),
        _ => (CHARGE, CHARGE),
    }
}

/// Tables for radio.
fn of_radio(kind: Kind) -> (&'static [Choice], &'static [Choice]) {
    const GAIN: &[Choice] = &[row("dB", 0.0, TENTH)];
    const LEVEL: &[Choice] = &[row("dBm", 0.0, TENTH)];
    const FIELD: &[Choice] = &[
        row("V/m", 1.0, THREE),
        row("mV/m", 1.0, THREE),
        row("µV/m", 0.0, THREE),
    ];
    match kind {
        Kind::Gain => (GAIN, GAIN),
        Kind::PowerLevel => (LEVEL, LEVEL),
        _ => (FIELD, FIELD),
    }
}

/// Tables for data; the same everywhere.
fn of_data(kind: Kind) -> (&'static [Choice], &'static [Choice]) {
    const SIZE: &[Choice] = &[
        row("TB", 1.0, THREE),
        row("GB", 1.0, THREE),
        row("MB", 1.0, THREE),
        row("kB", 0.0, THREE),
    ];
    const RATE: &[Choice] = &[
        row("Gbit/s", 1.0, THREE),
        row("Mbit/s", 1.0, THREE),
        row("kbit/s", 0.0, THREE),
    ];
    match kind {
        Kind::DataSize => (SIZE, SIZE),
        _ => (RATE, RATE),
    }
}
