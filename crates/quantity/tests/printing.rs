//! What a person reads: units, digits and fractions as the trade prints them.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

use quantity::UnitSystem::{Si, UsCustomary};
use quantity::{
    Awg, ConductorSize, Kind, Known, Length, Mass, Measured, Quantity, Ratio, Temperature,
    Tolerance, UnitSystem, Value, print_kind, print_measured, print_value, read_kind,
    read_measured, write_kind, write_measured,
};

/// The text that is read, its kind, and how it is printed in US customary units and in SI.
const PRINTED: &[(Kind, &str, &str, &str)] = &[
    (Kind::Length, "14 ft 3 1/2 in", "14 ft 3 1/2 in", "4.356 m"),
    (Kind::Length, "4.35 m", "14 ft 3 1/4 in", "4.35 m"),
    (Kind::Length, "11 31/32 in", "1 ft", "304 mm"),
    (Kind::Length, "11.98 in", "1 ft", "304 mm"),
    (Kind::Length, "1 ft 11.99 in", "2 ft", "609 mm"),
    (Kind::Length, "6 ft", "6 ft", "1.829 m"),
    (Kind::Length, "0 m", "0 in", "0 mm"),
    (Kind::Length, "-3 1/2 in", "-3 1/2 in", "-88.9 mm"),
    (Kind::Length, "3/16 in", "3/16 in", "4.76 mm"),
    (Kind::Length, "0.080808 in", "0.0808 in", "2.05 mm"),
    (Kind::Length, "0.9999 m", "3 ft 3 3/8 in", "1 m"),
    (
        Kind::Length,
        "12.3456789 km",
        // 12345.6789 m less 40504 × 0.3048 m leaves 0.0597 m, which is 37.6 sixteenths.
        "40504 ft 2 3/8 in",
        "12.346 km",
    ),
    (Kind::Area, "48 ft²", "48 ft²", "4.46 m²"),
    (Kind::Volume, "0.6 yd³", "0.6 yd³", "0.459 m³"),
    (Kind::Angle, "90°", "90°", "90°"),
    (Kind::Ratio, "1 in 40", "2.5 %", "2.5 %"),
    (Kind::Ratio, "1.3", "1.3", "1.3"),
    (Kind::Time, "250 ms", "250 ms", "250 ms"),
    (Kind::Time, "90 s", "90 s", "90 s"),
    (Kind::Time, "26 h", "26 h", "26 h"),
    (Kind::Frequency, "433.92 MHz", "433.9 MHz", "433.9 MHz"),
    (Kind::Velocity, "1 ft/s", "1 ft/s", "0.305 m/s"),
    (Kind::Velocity, "115 mph", "115 mph", "51.4 m/s"),
    (Kind::Mass, "640 lb", "640 lb", "290 kg"),
    (Kind::Mass, "100 g", "3.53 oz", "100 g"),
    (Kind::Force, "25.4 lbf", "25 lbf", "113 N"),
    (Kind::Force, "400 N", "90 lbf", "400 N"),
    (Kind::Torque, "120 lbf·ft", "120 lbf·ft", "163 N·m"),
    (Kind::Energy, "120 ft·lbf", "120 ft·lbf", "163 J"),
    (Kind::Energy, "312 Wh", "828430 ft·lbf", "1123 kJ"),
    (Kind::Pressure, "24.3 psf", "24.3 psf", "1.16 kPa"),
    (Kind::Pressure, "3000 psi", "3000 psi", "20.7 MPa"),
    (Kind::Power, "25.5 W", "25.5 W", "25.5 W"),
    (Kind::Temperature, "100 °F", "100 °F", "37.8 °C"),
    (Kind::Temperature, "-0.01 °C", "32 °F", "0 °C"),
    (Kind::TemperatureDifference, "20 Δ°F", "20 Δ°F", "11.1 Δ°C"),
    (Kind::Current, "500 mA", "500 mA", "500 mA"),
    (Kind::Current, "0.99999 A", "1 A", "1 A"),
    (Kind::Voltage, "10.9123 V", "10.9 V", "10.9 V"),
    (Kind::Voltage, "117.64 V", "117.6 V", "117.6 V"),
    (
        Kind::ResistancePerLength,
        "6.385 Ω/kft",
        "6.385 Ω/kft",
        "20.95 Ω/km",
    ),
    (Kind::Resistivity, "123.4 Ω·m", "123 Ω·m", "123 Ω·m"),
    (Kind::Charge, "26 Ah", "26 Ah", "26 Ah"),
    (Kind::Inductance, "126.74 µH", "127 µH", "127 µH"),
    (Kind::Capacitance, "0.1 µF", "100 nF", "100 nF"),
    (Kind::DataSize, "1.234 TB", "1.23 TB", "1.23 TB"),
    (Kind::DataRate, "12.5 Mbit/s", "12.5 Mbit/s", "12.5 Mbit/s"),
];

#[test]
fn values_are_printed_as_the_trade_rounds_them() {
    for (kind, text, us, si) in PRINTED {
        let base = read_kind(*kind, text).unwrap();
        assert_eq!(print_kind(*kind, base, UsCustomary), *us, "{text}");
        assert_eq!(print_kind(*kind, base, Si), *si, "{text}");
    }
}

#[test]
fn values_that_are_not_finite_are_said_to_be_none() {
    for kind in Kind::ALL {
        for base in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert_eq!(print_kind(*kind, base, Si), "no finite value");
            assert_eq!(write_kind(*kind, base, UsCustomary), "no finite value");
        }
    }
}

#[test]
fn the_largest_values_are_printed_as_numbers() {
    for kind in Kind::ALL {
        for system in UnitSystem::ALL {
            for base in [f64::MAX, f64::MIN_POSITIVE, 5e-324] {
                let text = print_kind(*kind, base, *system);
                assert!(
                    !text.contains("inf") && !text.contains("NaN"),
                    "{kind:?}: {text}"
                );
            }
        }
    }
}

#[test]
fn values_are_written_in_the_units_of_the_site() {
    let pounds = read_kind(Kind::Mass, "640 lb").unwrap();
    assert_eq!(write_kind(Kind::Mass, pounds, UsCustomary), "640 lb");
    let feet = read_kind(Kind::Length, "14 ft 3 1/2 in").unwrap();
    assert_eq!(
        write_kind(Kind::Length, feet, UsCustomary),
        "14 ft 3 1/2 in"
    );
    assert_eq!(write_kind(Kind::Length, feet, Si), "4.3561 m");
    let warm = read_kind(Kind::Temperature, "100 °F").unwrap();
    assert_eq!(write_kind(Kind::Temperature, warm, UsCustomary), "100 °F");
}

/// Reads, prints in a system.
fn reprinted<Q: Quantity>(text: &str, system: UnitSystem) -> String {
    print_measured(&read_measured::<Q>(text).unwrap(), system)
}

#[test]
fn tolerances_are_printed_after_the_value() {
    assert_eq!(
        reprinted::<Mass>("640 lb ± 5 %", UsCustomary),
        "640 lb ± 5 %"
    );
    assert_eq!(
        reprinted::<Mass>("640 lb ± 5 %, assumed", Si),
        "290 kg ± 5 %, assumed"
    );
    assert_eq!(
        reprinted::<Length>("14 ft ± 2 in, measured", UsCustomary),
        "14 ft ± 2 in, measured"
    );
    assert_eq!(reprinted::<Length>("1.2 m +5/-0 mm", Si), "1.2 m +5/-0 mm");
    assert_eq!(
        reprinted::<Length>("4 ft +1/2 in/-0 in", UsCustomary),
        "4 ft +1/2 in/-0 in"
    );
    assert_eq!(
        reprinted::<Mass>("640 lb +10/-5 %", UsCustomary),
        "640 lb +10/-5 %"
    );
    assert_eq!(
        reprinted::<Temperature>("68 °F ± 9 °F", UsCustomary),
        "68 °F ± 9 Δ°F"
    );
    assert_eq!(
        reprinted::<Temperature>("68 °F ± 9 °F", Si),
        "20 °C ± 5 Δ°C"
    );
    assert_eq!(reprinted::<Ratio>("20 % ± 5 %", Si), "20 % ± 5 %");
    assert_eq!(reprinted::<Ratio>("0.2 ± 5 %", Si), "0.2 ± 5 %");
    assert_eq!(reprinted::<Ratio>("1.2 ± 0.05", Si), "1.2 ± 0.05");
}

#[test]
fn a_share_of_a_temperature_is_printed_as_a_difference() {
    let cold = Temperature::from_base(300.0);
    let measured = Measured::new(
        cold,
        Tolerance::Relative {
            below: 0.01,
            above: 0.01,
        },
        Known::Stated,
    );
    assert_eq!(print_measured(&measured, Si), "26.9 °C ± 3 Δ°C");
    assert_eq!(write_measured(&measured, Si), "26.85 °C ± 3 Δ°C");
}

#[test]
fn values_of_every_sort_are_printed() {
    assert_eq!(print_value(&Value::Count(3), Si), "3");
    assert_eq!(print_value(&Value::Word("copper"), Si), "copper");
    let gauge = Value::Conductor(ConductorSize::Gauge(Awg::new(-2).unwrap()));
    assert_eq!(print_value(&gauge, Si), "3/0 AWG");
    assert_eq!(
        print_value(&Value::Quantity(Kind::Voltage, 24.0), Si),
        "24 V"
    );
}
