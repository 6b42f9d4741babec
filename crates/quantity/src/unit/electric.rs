//! Units of current, voltage, resistance, resistivity, charge, inductance and capacitance.

use super::{FOOT, Unit};

/// Units of electric current, in amperes.
pub(super) const CURRENT: &[Unit] = &[
    Unit::new(&["A", "amp", "amps", "ampere", "amperes"], 1.0),
    Unit::new(&["mA", "milliamp", "milliamps"], 1e-3),
    Unit::new(&["µA", "uA"], 1e-6),
    Unit::new(&["kA"], 1e3),
];

/// Units of voltage, in volts.
pub(super) const VOLTAGE: &[Unit] = &[
    Unit::new(&["V", "volt", "volts"], 1.0),
    Unit::new(&["mV"], 1e-3),
    Unit::new(&["kV"], 1e3),
];

/// Units of resistance, in ohms.
pub(super) const RESISTANCE: &[Unit] = &[
    Unit::new(&["Ω", "ohm", "ohms"], 1.0),
    Unit::new(&["mΩ", "mohm", "milliohm"], 1e-3),
    Unit::new(&["kΩ", "kohm"], 1e3),
    Unit::new(&["MΩ", "Mohm", "megohm"], 1e6),
];

/// Units of resistance per length, in ohms per meter; `kft` is a thousand feet.
pub(super) const RESISTANCE_PER_LENGTH: &[Unit] = &[
    Unit::new(&["Ω/km", "ohm/km"], 1e-3),
    Unit::new(&["Ω/kft", "ohm/kft"], 1e-3 / FOOT),
    Unit::new(&["Ω/m", "ohm/m"], 1.0),
    Unit::new(&["mΩ/m", "mohm/m"], 1e-3),
    Unit::new(&["Ω/ft", "ohm/ft"], 1.0 / FOOT),
    Unit::new(&["mΩ/ft", "mohm/ft"], 1e-3 / FOOT),
];

/// Units of resistivity, in ohm meters.
pub(super) const RESISTIVITY: &[Unit] = &[
    Unit::new(&["Ω·m", "ohm·m"], 1.0),
    Unit::new(&["Ω·cm", "ohm·cm"], 1e-2),
];

/// Units of electric charge, in coulombs.
pub(super) const CHARGE: &[Unit] = &[
    Unit::new(&["Ah", "A·h", "amp hours", "amp-hours"], 3600.0),
    Unit::new(&["mAh", "mA·h"], 3.6),
    Unit::new(&["C", "coulomb", "coulombs", "A·s", "As"], 1.0),
];

/// Units of inductance, in henries.
pub(super) const INDUCTANCE: &[Unit] = &[
    Unit::new(&["µH", "uH", "microhenry", "microhenries"], 1e-6),
    Unit::new(&["mH", "millihenry", "millihenries"], 1e-3),
    Unit::new(&["H", "henry", "henries"], 1.0),
    Unit::new(&["nH"], 1e-9),
];

/// Units of capacitance, in farads.
pub(super) const CAPACITANCE: &[Unit] = &[
    Unit::new(&["nF"], 1e-9),
    Unit::new(&["µF", "uF", "microfarad", "microfarads"], 1e-6),
    Unit::new(&["pF"], 1e-12),
    Unit::new(&["F", "farad", "farads"], 1.0),
];
