//! Our factors against the factors that others printed.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

use quantity::{Kind, read_kind};

/// Factors as printed in NIST SP 811 (2008), appendix B.8: the digits set the tolerance.
/// Written from memory; the table's exact factors are printed there in bold.
const PRINTED: &[(Kind, &str, &str)] = &[
    (Kind::Length, "1 ft", "3.048e-1"),
    (Kind::Length, "1 in", "2.54e-2"),
    (Kind::Length, "1 mil", "2.54e-5"),
    (Kind::Length, "1 mi", "1.609344e3"),
    (Kind::Area, "1 ft²", "9.290304e-2"),
    (Kind::Area, "1 in²", "6.4516e-4"),
    (Kind::Area, "0.001 kcmil", "5.067075e-10"),
    (Kind::Volume, "1 yd³", "7.645549e-1"),
    (Kind::Volume, "1 ft³", "2.831685e-2"),
    (Kind::Volume, "1 gal", "3.785412e-3"),
    (Kind::Angle, "1°", "1.745329e-2"),
    (Kind::AngularVelocity, "1 rpm", "1.047198e-1"),
    (Kind::Velocity, "1 mph", "4.4704e-1"),
    (Kind::Velocity, "1 ft/min", "5.08e-3"),
    (Kind::Velocity, "1 km/h", "2.777778e-1"),
    (Kind::Velocity, "1 kn", "5.144444e-1"),
    (Kind::Acceleration, "1 g", "9.80665e0"),
    (Kind::Mass, "1 lb", "4.535924e-1"),
    (Kind::Mass, "1 oz", "2.834952e-2"),
    (Kind::MassPerLength, "1 lb/ft", "1.488164e0"),
    (Kind::MassDensity, "1 lb/ft³", "1.601846e1"),
    (Kind::Force, "1 lbf", "4.448222e0"),
    (Kind::Force, "1 kip", "4.448222e3"),
    (Kind::Force, "1 kgf", "9.80665e0"),
    (Kind::ForcePerLength, "1 lbf/ft", "1.459390e1"),
    (Kind::ForcePerLength, "1 lbf/in", "1.751268e2"),
    (Kind::Torque, "1 lbf·ft", "1.355818e0"),
    (Kind::Torque, "1 lbf·in", "1.129848e-1"),
    (Kind::Energy, "1 ft·lbf", "1.355818e0"),
    (Kind::Energy, "1 kWh", "3.6e6"),
    (Kind::Energy, "1 BTU", "1.055056e3"),
    (Kind::Pressure, "1 psi", "6.894757e3"),
    (Kind::Pressure, "1 psf", "4.788026e1"),
    (Kind::Pressure, "1 ksi", "6.894757e6"),
    (Kind::PressurePerDepth, "1 psf/ft", "1.570875e2"),
    (Kind::Power, "1 hp", "7.456999e2"),
    (Kind::Power, "1 BTU/h", "2.930711e-1"),
    (Kind::HeatFlux, "1 BTU/(h·ft²)", "3.154591e0"),
    (Kind::HeatTransfer, "1 BTU/(h·ft²·°F)", "5.678263e0"),
    (Kind::Charge, "1 Ah", "3.6e3"),
    (Kind::Inductance, "1 µH", "1e-6"),
    (Kind::Capacitance, "1 nF", "1e-9"),
];

#[test]
fn factors_round_to_the_printed_digits() {
    for (kind, text, printed) in PRINTED {
        let decimals = printed
            .split_once('e')
            .unwrap()
            .0
            .split_once('.')
            .map_or(0, |(_, places)| places.len());
        let ours = format!("{:.decimals$e}", read_kind(*kind, text).unwrap());
        assert_eq!(ours, *printed, "{text}");
    }
}

/// Fixed points of the scales of temperature, by their definitions.
#[test]
fn temperatures_meet_at_their_fixed_points() {
    for (one, other) in [
        ("32 °F", "0 °C"),
        ("212 °F", "100 °C"),
        ("-40 °F", "-40 °C"),
        ("273.15 K", "0 °C"),
    ] {
        let (one, other) = (
            read_kind(Kind::Temperature, one).unwrap(),
            read_kind(Kind::Temperature, other).unwrap(),
        );
        assert!((one - other).abs() < 1e-10, "{one} {other}");
    }
}

/// Several prefixes and spellings against each other, where the definition makes them equal.
#[test]
fn equal_values_are_equal_to_the_last_digit() {
    let pairs = [
        (Kind::Length, "14 ft 3 1/2 in", "4.3561 m"),
        (Kind::Length, "1 mi", "5280 ft"),
        (Kind::Current, "500 mA", "0.5 A"),
        (Kind::Current, "3 mA", "0.003 A"),
        (Kind::Mass, "5 lb 8 oz", "5.5 lb"),
        (Kind::Time, "1 h 30 min", "1.5 h"),
        (Kind::Pressure, "2.5 N/mm²", "2.5 MPa"),
        (Kind::Power, "1 kW", "1000 W"),
    ];
    for (kind, one, other) in pairs {
        assert_eq!(
            read_kind(kind, one),
            read_kind(kind, other),
            "{one} is {other}"
        );
    }
}
