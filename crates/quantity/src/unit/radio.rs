//! Units of gain, power level and field strength, as radio data sheets have them.

use super::Unit;

/// Gain of a half-wave dipole over an antenna that sends evenly in all directions, in decibels.
const DIPOLE: f64 = 2.15;

/// Units of gain, in decibels; that of an antenna over one that sends evenly, or over a dipole.
pub(super) const GAIN: &[Unit] = &[
    Unit::new(&["dB", "dBi"], 1.0),
    Unit {
        symbols: &["dBd"],
        scale: 1.0,
        offset: DIPOLE,
    },
];

/// Units of power level, in decibels over a milliwatt.
pub(super) const POWER_LEVEL: &[Unit] = &[
    Unit::new(&["dBm"], 1.0),
    Unit {
        symbols: &["dBW"],
        scale: 1.0,
        offset: 30.0,
    },
];

/// Units of field strength, in volts per meter.
pub(super) const FIELD_STRENGTH: &[Unit] = &[
    Unit::new(&["V/m"], 1.0),
    Unit::new(&["mV/m"], 1e-3),
    Unit::new(&["µV/m", "uV/m"], 1e-6),
];
