//! Units of power, heat and temperature.

use super::{BTU, DEGREE_FAHRENHEIT, FOOT, POUND_FORCE, Unit};

/// Units of power, in watts. The horsepower is the mechanical one of 550 ft·lbf/s.
pub(super) const POWER: &[Unit] = &[
    Unit::new(&["W", "watt", "watts", "J/s"], 1.0),
    Unit::new(&["mW"], 1e-3),
    Unit::new(&["kW"], 1e3),
    Unit::new(&["hp", "horsepower"], 550.0 * POUND_FORCE * FOOT),
    Unit::new(&["BTU/h", "Btu/h", "BTU/hr"], BTU / 3600.0),
];

/// Units of heat flux, in watts per square meter.
pub(super) const HEAT_FLUX: &[Unit] = &[
    Unit::new(&["W/m²"], 1.0),
    Unit::new(
        &["BTU/(h·ft²)", "Btu/(h·ft²)"],
        BTU / 3600.0 / (FOOT * FOOT),
    ),
    Unit::new(&["kW/m²"], 1e3),
    Unit::new(&["kWh/(m²·day)", "kWh/m²/day", "kWh/(m²·d)"], 1e3 / 24.0),
    Unit::new(&["W/ft²"], 1.0 / (FOOT * FOOT)),
];

/// Units of heat transfer coefficient, in watts per square meter and kelvin.
pub(super) const HEAT_TRANSFER: &[Unit] = &[
    Unit::new(&["W/(m²·K)", "W/m²K", "W/m²/K", "W/(m²K)"], 1.0),
    Unit::new(
        &["BTU/(h·ft²·°F)", "Btu/(h·ft²·°F)", "BTU/(h·ft²·degF)"],
        BTU / 3600.0 / (FOOT * FOOT) / DEGREE_FAHRENHEIT,
    ),
];

/// Scales of temperature, in kelvin. A bare `C` or `F` is not read.
pub(super) const TEMPERATURE: &[Unit] = &[
    Unit {
        symbols: &["°C", "℃", "degC", "deg C", "degrees Celsius"],
        scale: 1.0,
        offset: 273.15,
    },
    Unit {
        symbols: &["°F", "℉", "degF", "deg F", "degrees Fahrenheit"],
        scale: DEGREE_FAHRENHEIT,
        offset: 459.67 * DEGREE_FAHRENHEIT,
    },
    Unit::new(&["K", "kelvin"], 1.0),
];

/// Units of temperature difference, in kelvin; the Δ tells them from a temperature.
pub(super) const TEMPERATURE_DIFFERENCE: &[Unit] = &[
    Unit::new(
        &[
            "Δ°C",
            "ΔdegC",
            "delta degC",
            "delta °C",
            "°C difference",
            "degC difference",
        ],
        1.0,
    ),
    Unit::new(
        &[
            "Δ°F",
            "ΔdegF",
            "delta degF",
            "delta °F",
            "°F difference",
            "degF difference",
        ],
        DEGREE_FAHRENHEIT,
    ),
    Unit::new(&["K", "ΔK", "kelvin"], 1.0),
];

/// Units of thermal expansion, per kelvin. `1/K` is left out: behind a number it would read as a fraction.
pub(super) const THERMAL_EXPANSION: &[Unit] = &[
    Unit::new(&["/K", "/°C", "per kelvin"], 1.0),
    Unit::new(
        &["/°F", "in/(in·°F)", "per degree Fahrenheit"],
        1.0 / DEGREE_FAHRENHEIT,
    ),
    Unit::new(&["µm/(m·K)"], 1e-6),
];
