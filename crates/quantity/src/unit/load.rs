//! Units of mass, force, torque, energy and pressure.

use super::{BTU, FOOT, GRAVITY, INCH, POUND, POUND_FORCE, Unit};

/// Units of mass, in kilograms. The ton is left out: it has three meanings.
pub(super) const MASS: &[Unit] = &[
    Unit::new(&["kg", "kilogram", "kilograms"], 1.0),
    Unit::new(&["lb", "lbs", "lbm", "pound", "pounds"], POUND),
    Unit::new(&["oz", "ounce", "ounces"], POUND / 16.0),
    Unit::new(&["g", "gram", "grams"], 1e-3),
    Unit::new(&["t", "tonne", "tonnes"], 1e3),
];

/// Units of mass per length, in kilograms per meter; `kft` is a thousand feet.
pub(super) const MASS_PER_LENGTH: &[Unit] = &[
    Unit::new(&["kg/m"], 1.0),
    Unit::new(&["lb/ft", "lbs/ft", "pounds per foot"], POUND / FOOT),
    Unit::new(&["lb/kft"], POUND / FOOT / 1000.0),
    Unit::new(&["lb/in"], POUND / INCH),
    Unit::new(&["g/m"], 1e-3),
    Unit::new(&["kg/km"], 1e-3),
];

/// Units of mass per area, in kilograms per square meter.
pub(super) const MASS_PER_AREA: &[Unit] = &[
    Unit::new(&["kg/m²"], 1.0),
    Unit::new(&["lb/ft²", "lb/sq ft"], POUND / (FOOT * FOOT)),
    Unit::new(&["g/m²"], 1e-3),
    Unit::new(&["oz/ft²"], POUND / 16.0 / (FOOT * FOOT)),
];

/// Units of moment of inertia, in kilogram square meters.
pub(super) const MOMENT_OF_INERTIA: &[Unit] = &[
    Unit::new(&["kg·m²"], 1.0),
    Unit::new(&["lb·ft²"], POUND * FOOT * FOOT),
    Unit::new(&["lb·in²"], POUND * INCH * INCH),
    Unit::new(&["kg·cm²"], 1e-4),
];

/// Units of density, in kilograms per cubic meter.
pub(super) const MASS_DENSITY: &[Unit] = &[
    Unit::new(&["kg/m³"], 1.0),
    Unit::new(&["lb/ft³", "lb/cu ft", "pcf"], POUND / (FOOT * FOOT * FOOT)),
    Unit::new(&["lb/in³"], POUND / (INCH * INCH * INCH)),
    Unit::new(&["g/cm³"], 1e3),
];

/// Units of force, in newtons; a kip is a thousand pounds-force.
pub(super) const FORCE: &[Unit] = &[
    Unit::new(&["N", "newton", "newtons"], 1.0),
    Unit::new(&["lbf", "pounds-force", "pound-force"], POUND_FORCE),
    Unit::new(&["kN"], 1e3),
    Unit::new(&["kip", "kips"], 1000.0 * POUND_FORCE),
    Unit::new(&["ozf"], POUND_FORCE / 16.0),
    Unit::new(&["kgf"], GRAVITY),
];

/// Units of force per length, in newtons per meter.
pub(super) const FORCE_PER_LENGTH: &[Unit] = &[
    Unit::new(&["N/m"], 1.0),
    Unit::new(&["lbf/ft", "plf"], POUND_FORCE / FOOT),
    Unit::new(&["lbf/in"], POUND_FORCE / INCH),
    Unit::new(&["N/mm"], 1e3),
    Unit::new(&["kN/m"], 1e3),
];

/// Units of torque, in newton meters; the force comes first, `lbf·ft`, to tell it from energy, `ft·lbf`.
pub(super) const TORQUE: &[Unit] = &[
    Unit::new(&["N·m", "Nm", "newton meters"], 1.0),
    Unit::new(&["lbf·ft"], POUND_FORCE * FOOT),
    Unit::new(&["lbf·in"], POUND_FORCE * INCH),
    Unit::new(&["ozf·in"], POUND_FORCE / 16.0 * INCH),
    Unit::new(&["kN·m", "kNm"], 1e3),
    Unit::new(&["kip·ft"], 1000.0 * POUND_FORCE * FOOT),
];

/// Units of energy, in joules.
pub(super) const ENERGY: &[Unit] = &[
    Unit::new(&["J", "joule", "joules", "Ws", "W·s"], 1.0),
    Unit::new(&["ft·lbf"], POUND_FORCE * FOOT),
    Unit::new(&["kJ"], 1e3),
    Unit::new(&["MJ"], 1e6),
    Unit::new(&["Wh", "W·h"], 3600.0),
    Unit::new(&["kWh", "kW·h"], 3.6e6),
    Unit::new(&["BTU", "Btu"], BTU),
];

/// Units of pressure and stress, in pascals.
pub(super) const PRESSURE: &[Unit] = &[
    Unit::new(&["Pa"], 1.0),
    Unit::new(&["psf", "lbf/ft²"], POUND_FORCE / (FOOT * FOOT)),
    Unit::new(&["psi", "lbf/in²"], POUND_FORCE / (INCH * INCH)),
    Unit::new(&["ksi", "kip/in²"], 1000.0 * POUND_FORCE / (INCH * INCH)),
    Unit::new(&["kPa", "kN/m²"], 1e3),
    Unit::new(&["MPa", "N/mm²"], 1e6),
    Unit::new(&["hPa", "mbar"], 1e2),
    Unit::new(&["bar"], 1e5),
    Unit::new(&["N/m²"], 1.0),
    Unit::new(&["ksf"], 1000.0 * POUND_FORCE / (FOOT * FOOT)),
];

/// Units of pressure per depth, in pascals per meter.
pub(super) const PRESSURE_PER_DEPTH: &[Unit] = &[
    Unit::new(&["Pa/m"], 1.0),
    Unit::new(&["psf/ft"], POUND_FORCE / (FOOT * FOOT * FOOT)),
    Unit::new(&["kPa/m", "kN/m³"], 1e3),
    Unit::new(&["MN/m³", "MPa/m", "N/cm³"], 1e6),
    Unit::new(
        &["lbf/in³", "psi/in", "pci"],
        POUND_FORCE / (INCH * INCH * INCH),
    ),
];
