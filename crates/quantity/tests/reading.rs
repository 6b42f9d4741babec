//! Every form in which the trade writes a value, and what is said where a text is not one.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

use quantity::{
    Awg, ConductorSize, Kind, Known, Length, Mass, Measured, Quantity, Ratio, Sort, Temperature,
    Tolerance, Value, read_conductor, read_kind, read_measured, read_value,
};

/// Equal to within a few binary digits.
fn same(read: f64, expected: f64) -> bool {
    (read - expected).abs() <= 4.0 * f64::EPSILON * expected.abs()
}

/// Each text, the kind it is read as, and the coherent SI value worked by hand from the unit's definition.
const FORMS: &[(Kind, &str, f64)] = &[
    (Kind::Length, "14 ft 3 1/2 in", 4.3561),
    (Kind::Length, "14'-3 1/2\"", 4.3561),
    (Kind::Length, "14' 3-1/2\"", 4.3561),
    (Kind::Length, "14′ 3½″", 4.3561),
    (Kind::Length, "14' - 3 1/2\"", 4.3561),
    (Kind::Length, "14'3.5''", 4.3561),
    (Kind::Length, "14 feet 3.5 inches", 4.3561),
    (Kind::Length, "14 ft-3 in", 4.3434),
    (Kind::Length, "4.35 m", 4.35),
    (Kind::Length, "4350 mm", 4.35),
    (Kind::Length, "1/2 in", 0.0127),
    (Kind::Length, "3/16\"", 0.0047625),
    (Kind::Length, "−2 in", -0.0508),
    (Kind::Length, "- 2 in", -0.0508),
    (Kind::Length, "+5 mm", 0.005),
    (Kind::Length, "1e-3 m", 0.001),
    (Kind::Length, ".5 m", 0.5),
    (Kind::Length, "80.8 mil", 0.00205232),
    (Kind::Length, "12um", 12e-6),
    (Kind::Length, "1 mi", 1609.344),
    (Kind::Length, "2 yd 1 ft", 2.1336),
    (Kind::Length, "  6 ft  ", 1.8288),
    (Kind::Area, "48 ft²", 4.45934592),
    (Kind::Area, "48 ft2", 4.45934592),
    (Kind::Area, "48 sq ft", 4.45934592),
    (Kind::Area, "1.5 mm^2", 1.5e-6),
    (Kind::Volume, "1 yd3", 0.764554857984),
    (Kind::Volume, "1 gal", 0.003785411784),
    (Kind::Angle, "90°", std::f64::consts::FRAC_PI_2),
    (Kind::Angle, "180 deg", std::f64::consts::PI),
    (Kind::Ratio, "2.5 %", 0.025),
    (Kind::Ratio, "1 in 40", 0.025),
    (Kind::Ratio, "1:40", 0.025),
    (Kind::Ratio, "-1 : 40", -0.025),
    (Kind::Ratio, "1/40", 0.025),
    (Kind::Ratio, "0.85", 0.85),
    (Kind::Time, "250 ms", 0.25),
    (Kind::Time, "1 h 30 min", 5400.0),
    (Kind::Frequency, "60 Hz", 60.0),
    (Kind::Velocity, "3 ft/s", 0.9144),
    (Kind::Velocity, "115 mph", 51.4096),
    (Kind::Velocity, "60 ft/min", 0.3048),
    (Kind::Velocity, "36 km/h", 10.0),
    (Kind::Acceleration, "1 g", 9.80665),
    (Kind::Acceleration, "10 ft/s2", 3.048),
    (Kind::AngularVelocity, "30 rpm", std::f64::consts::PI),
    (Kind::Mass, "640 lb", 290.2991168),
    (Kind::Mass, "640lbs", 290.2991168),
    (Kind::Mass, "5 lb 8 oz", 2.494758035),
    (Kind::Mass, "3 g", 0.003),
    (Kind::MassPerLength, "100 kg/km", 0.1),
    (Kind::MassDensity, "7850 kg/m3", 7850.0),
    (Kind::Force, "25 lbf", 111.2055403815125),
    (Kind::Force, "2 kN", 2000.0),
    (Kind::ForcePerLength, "2 N/mm", 2000.0),
    (Kind::Torque, "1 lbf·ft", 1.3558179483314004),
    (Kind::Torque, "1 lbf-ft", 1.3558179483314004),
    (Kind::Torque, "1 lbf ft", 1.3558179483314004),
    (Kind::Torque, "1 lbf*ft", 1.3558179483314004),
    (Kind::Torque, "12 Nm", 12.0),
    (Kind::Energy, "1 ft·lbf", 1.3558179483314004),
    (Kind::Energy, "1 ft-lbf", 1.3558179483314004),
    (Kind::Energy, "2 Wh", 7200.0),
    (Kind::Pressure, "3 kN/m²", 3000.0),
    (Kind::PressurePerDepth, "2 kPa/m", 2000.0),
    (Kind::Frequency, "30 per minute", 0.5),
    (Kind::Power, "25.5 W", 25.5),
    (Kind::HeatFlux, "900 W/m²", 900.0),
    (Kind::HeatTransfer, "5.5 W/(m²·K)", 5.5),
    (Kind::HeatTransfer, "5.5 W/(m2 K)", 5.5),
    (Kind::Temperature, "100 °F", 310.92777777777777),
    (Kind::Temperature, "-40 degF", 233.15),
    (Kind::Temperature, "38 °C", 311.15),
    (Kind::Temperature, "38 deg C", 311.15),
    (Kind::Temperature, "-273.15 °C", 0.0),
    (Kind::TemperatureDifference, "18 Δ°F", 10.0),
    (Kind::TemperatureDifference, "18 °F difference", 10.0),
    (Kind::TemperatureDifference, "18 delta degF", 10.0),
    (Kind::TemperatureDifference, "11 K", 11.0),
    (Kind::Current, "500 mA", 0.5),
    (Kind::Current, "7 µA", 7e-6),
    (Kind::Current, "7 μA", 7e-6),
    (Kind::Voltage, "120 V", 120.0),
    (Kind::Resistance, "6.4 \u{2126}", 6.4),
    (Kind::Resistance, "6.4 ohm", 6.4),
    (Kind::ResistancePerLength, "0.3048 ohm/kft", 0.001),
    (Kind::Resistivity, "5000 ohm-cm", 50.0),
    (Kind::Charge, "26 Ah", 93_600.0),
    (Kind::Inductance, "120 µH", 120e-6),
    (Kind::Capacitance, "0.1 µF", 1e-7),
    (Kind::DataSize, "2 TB", 16e12),
    (Kind::DataRate, "100 Mbps", 1e8),
];

#[test]
fn every_form_is_read() {
    for (kind, text, expected) in FORMS {
        let read = read_kind(*kind, text).unwrap_or_else(|error| panic!("{text}: {error}"));
        assert!(
            same(read, *expected),
            "{text}: read {read}, expected {expected}"
        );
    }
}

#[test]
fn every_kind_reads_its_own_example() {
    for kind in Kind::ALL {
        assert!(
            read_kind(*kind, kind.example()).is_ok(),
            "{kind:?}: {}",
            kind.example()
        );
    }
}

/// The kind that is wanted, the text, what is said, the text at fault, and what to write.
type Refusal = (
    Kind,
    &'static str,
    &'static str,
    &'static str,
    Option<&'static str>,
);

/// Texts that are refused.
const REFUSALS: &[Refusal] = &[
    (
        Kind::Mass,
        "640 lbf",
        "`640 lbf` is a force; a mass is wanted, such as `640 lb`",
        "lbf",
        Some("640 lb"),
    ),
    (
        Kind::Force,
        "25 lb",
        "`25 lb` is a mass; a force is wanted, such as `25 lbf`",
        "lb",
        Some("25 lbf"),
    ),
    (
        Kind::Force,
        "25 pounds",
        "`25 pounds` is a mass; a force is wanted, such as `25 lbf`",
        "pounds",
        Some("25 lbf"),
    ),
    (
        Kind::Torque,
        "9 ft·lbf",
        "`9 ft·lbf` is an energy; a torque is wanted, such as `9 lbf·ft`",
        "ft·lbf",
        Some("9 lbf·ft"),
    ),
    (
        Kind::Energy,
        "9 lbf·ft",
        "`9 lbf·ft` is a torque; an energy is wanted, such as `9 ft·lbf`",
        "lbf·ft",
        Some("9 ft·lbf"),
    ),
    (
        Kind::TemperatureDifference,
        "20 °F",
        "`20 °F` is a temperature; a temperature difference is wanted, such as `20 Δ°F`",
        "°F",
        Some("20 Δ°F"),
    ),
    (
        Kind::Temperature,
        "20 Δ°F",
        "`20 Δ°F` is a temperature difference; a temperature is wanted, such as `20 °F`",
        "Δ°F",
        Some("20 °F"),
    ),
    (
        Kind::Temperature,
        "38 C",
        "`C` is not a scale; a temperature is wanted, such as `38 °C`",
        "C",
        Some("38 °C"),
    ),
    (
        Kind::Charge,
        "5 °C",
        "`5 °C` is a temperature; a charge is wanted, such as `26 Ah`",
        "°C",
        None,
    ),
    (
        Kind::Length,
        "18 AWG",
        "`18 AWG` is a conductor size; a length is wanted, such as `14 ft 3 1/2 in`",
        "AWG",
        None,
    ),
    (
        Kind::Mass,
        "640",
        "`640` has no unit; a mass is wanted, such as `640 lb`",
        "640",
        None,
    ),
    (
        Kind::Mass,
        "",
        "nothing is written here; a mass is wanted, such as `640 lb`",
        "",
        None,
    ),
    (
        Kind::Mass,
        "heavy",
        "`heavy` does not begin with a number; a mass is wanted, such as `640 lb`",
        "heavy",
        None,
    ),
    (
        Kind::Current,
        "500 MA",
        "`MA` is not a unit of current; did you mean `mA`?",
        "MA",
        Some("500 mA"),
    ),
    (
        Kind::Length,
        "6 feeet",
        "`feeet` is not a unit of length; did you mean `feet`?",
        "feeet",
        Some("6 feet"),
    ),
    (
        Kind::Voltage,
        "6 volumes",
        "`volumes` is not a unit of voltage; write `V`, `mV`, `kV`, as in `24 V`",
        "volumes",
        None,
    ),
    (
        Kind::Mass,
        "1,200 lb",
        "a comma in a number can mean thousands or decimals; write `1200` or `1.200` in place of `1,200`",
        "1,200",
        Some("1200 lb"),
    ),
    (
        Kind::Length,
        "4,35 m",
        "a comma in a number can mean thousands or decimals; write `4.35` in place of `4,35`",
        "4,35",
        Some("4.35 m"),
    ),
    (
        Kind::Mass,
        "1,234,567.5 kg",
        "a comma in a number can mean thousands or decimals; write `1234567.5` in place of `1,234,567.5`",
        "1,234,567.5",
        Some("1234567.5 kg"),
    ),
    (Kind::Length, "1/0 in", "`1/0` divides by zero", "1/0", None),
    (
        Kind::Length,
        "1e999 m",
        "`1e999` is larger than any number that can be worked with",
        "1e999",
        None,
    ),
    (
        Kind::Length,
        "1e307 km",
        "`1e307 km` is larger than any number that can be worked with",
        "1e307 km",
        None,
    ),
    (
        Kind::Temperature,
        "-300 °C",
        "`-300 °C` is colder than absolute zero, −273.15 °C",
        "-300 °C",
        None,
    ),
    (
        Kind::Length,
        "3 in 14 ft",
        "`14 ft` cannot follow `3 in`: the larger unit comes first",
        "14 ft",
        None,
    ),
    (
        Kind::Length,
        "14 ft 12 in",
        "`12 in` is 1 ft or more; add it to `14 ft`",
        "12 in",
        None,
    ),
    (
        Kind::Length,
        "1.5 ft 3 in",
        "`1.5 ft` has a fraction already, so `3 in` cannot follow it",
        "3 in",
        None,
    ),
    (
        Kind::Ratio,
        "1 in 0",
        "`1 in 0` is not a slope; write it like `1 in 40`",
        "1 in 0",
        None,
    ),
    (
        Kind::Voltage,
        "24 V ± 1 V",
        "`± 1 V` cannot be added here; a voltage is written like `24 V`",
        "± 1 V",
        None,
    ),
];

#[test]
fn what_is_refused_is_explained() {
    for (kind, text, what, at_fault, write) in REFUSALS {
        let error = read_kind(*kind, text).expect_err(text);
        assert_eq!(error.to_string(), *what);
        assert_eq!(&text[error.place.clone()], *at_fault, "{text}");
        assert_eq!(error.write.as_deref(), *write, "{text}");
        if let Some(write) = write {
            assert!(read_kind(*kind, write).is_ok(), "{write} must be readable");
        }
    }
}

/// A measured value's nominal, low and high.
fn spread<Q: Quantity>(text: &str) -> (Measured<Q>, f64, f64, f64) {
    let read = read_measured::<Q>(text).unwrap_or_else(|error| panic!("{text}: {error}"));
    (
        read,
        read.nominal().base(),
        read.low().base(),
        read.high().base(),
    )
}

#[test]
fn tolerances_are_read() {
    let forms: &[(&str, f64, f64, f64)] = &[
        ("100 mm ± 2 mm", 0.1, 0.098, 0.102),
        ("100 mm +/- 2 mm", 0.1, 0.098, 0.102),
        ("100 mm±2mm", 0.1, 0.098, 0.102),
        ("100 mm +5/-0 mm", 0.1, 0.1, 0.105),
        ("100 mm +5/−0 mm", 0.1, 0.1, 0.105),
        ("100 mm + 5 / - 2 mm", 0.1, 0.098, 0.105),
        ("100 mm +5 mm/-1 mm", 0.1, 0.099, 0.105),
        ("100 mm +5 mm -1 mm", 0.1, 0.099, 0.105),
        ("100 mm -1/+5 mm", 0.1, 0.099, 0.105),
        ("100 mm ± 5 %", 0.1, 0.095, 0.105),
        ("100 mm +5/-10 %", 0.1, 0.09, 0.105),
        ("-100 mm ± 5 %", -0.1, -0.105, -0.095),
        ("10 ft ± 1/2 in", 3.048, 3.0353, 3.0607),
        ("10 ft 6 in +1/4 in/-1/2 in", 3.2004, 3.1877, 3.20675),
        ("100 mm", 0.1, 0.1, 0.1),
    ];
    for (text, nominal, low, high) in forms {
        let (_, read, lowest, highest) = spread::<Length>(text);
        assert!(
            same(read, *nominal) && same(lowest, *low) && same(highest, *high),
            "{text}: {lowest} {highest}"
        );
    }
}

#[test]
fn a_temperature_has_a_difference_as_tolerance() {
    for text in [
        "20 °C ± 9 Δ°F",
        "20 °C ± 9 °F",
        "20 °C ± 5 K",
        "20 °C +5/-5 °C",
    ] {
        let (_, _, low, high) = spread::<Temperature>(text);
        assert!(
            (low - 288.15).abs() < 1e-9 && (high - 298.15).abs() < 1e-9,
            "{text}: {low} {high}"
        );
    }
    let error = read_measured::<Temperature>("20 °C ± 5 %").expect_err("a share of a temperature");
    assert_eq!(
        error.what,
        "a share of a temperature has no meaning; write a difference, such as `± 5 Δ°F`"
    );
}

#[test]
fn percent_after_percent_is_a_distance() {
    let (_, _, low, high) = spread::<Ratio>("20 % ± 5 %");
    assert!((low - 0.15).abs() < 1e-12 && (high - 0.25).abs() < 1e-12);
    let (_, _, low, high) = spread::<Ratio>("0.2 ± 5 %");
    assert!((low - 0.19).abs() < 1e-12 && (high - 0.21).abs() < 1e-12);
}

#[test]
fn how_a_value_is_known_is_read() {
    let (read, ..) = spread::<Mass>("640 lb ± 5 %, assumed");
    assert_eq!(read.known(), Known::Assumed);
    assert_eq!(
        read.tolerance(),
        Tolerance::Relative {
            below: 0.05,
            above: 0.05
        }
    );
    assert_eq!(spread::<Mass>("640 lb,measured").0.known(), Known::Measured);
    assert_eq!(
        spread::<Mass>("640 lb , data sheet ").0.known(),
        Known::DataSheet
    );
    assert_eq!(spread::<Mass>("640 lb").0.known(), Known::Stated);
    let error = read_measured::<Mass>("640 lb ± 5 % assumed").expect_err("no comma");
    assert_eq!(error.write.as_deref(), Some("640 lb ± 5 %, assumed"));
    let error = read_measured::<Mass>("640 lb, asumed").expect_err("a misspelled word");
    assert_eq!(error.write.as_deref(), Some("640 lb, assumed"));
}

#[test]
fn a_tolerance_that_is_none_is_explained() {
    let refusals = [
        (
            "640 lb ± -5 lb",
            "a tolerance is a distance and cannot be negative",
            "-",
        ),
        (
            "640 lb ± 5",
            "`5` has no unit; a mass is wanted, such as `640 lb`",
            "5",
        ),
        (
            "640 lb ± 5 lbf",
            "`5 lbf` is a force; a mass is wanted, such as `5 lb`",
            "lbf",
        ),
        (
            "640 lb +5 %/-2 lb",
            "one side is in percent and the other is not; write both in the same unit",
            "+5 %/-2 lb",
        ),
        (
            "640 lb +5 lb",
            "`+5 lb` is one side of a tolerance only; write both, as in `+5/-0 mm`, or `± 5 mm`",
            "+5 lb",
        ),
    ];
    for (text, what, at_fault) in refusals {
        let error = read_measured::<Mass>(text).expect_err(text);
        assert_eq!(
            (error.what.as_str(), &text[error.place.clone()]),
            (what, at_fault)
        );
    }
    assert!(read_measured::<Mass>("1e308 kg ± 1e308 kg").is_err());
}

#[test]
fn conductor_sizes_are_read() {
    let gauges = [
        ("18 AWG", 18),
        ("18AWG", 18),
        ("AWG 18", 18),
        ("1/0 AWG", 0),
        ("4/0 awg", -3),
        ("00 AWG", -1),
        ("0 AWG", 0),
    ];
    for (text, number) in gauges {
        assert_eq!(
            read_conductor(text),
            Ok(ConductorSize::Gauge(Awg::new(number).expect("a real size"))),
            "{text}"
        );
    }
    let Ok(ConductorSize::Metric(area)) = read_conductor("1.5 mm²") else {
        panic!("a metric size")
    };
    assert!(same(area.base(), 1.5e-6));
    for text in [
        "",
        "5/0 AWG",
        "41 AWG",
        "0/0 AWG",
        "-1 AWG",
        "0 mm²",
        "-1.5 mm²",
        "1.5 mm",
        "AWG",
        "x",
    ] {
        assert!(read_conductor(text).is_err(), "{text}");
    }
    assert_eq!(
        read_conductor("#18").expect_err("no unit").write.as_deref(),
        Some("18 AWG")
    );
    assert_eq!(
        read_conductor("1/0").expect_err("no unit").write.as_deref(),
        Some("1/0 AWG")
    );
}

#[test]
fn values_of_every_sort_are_read() {
    assert_eq!(read_value(Sort::Count, " 3 "), Ok(Value::Count(3)));
    for text in ["", "-1", "3.0", "4294967296", "three"] {
        assert!(read_value(Sort::Count, text).is_err(), "{text}");
    }
    let metals = Sort::Words(&["copper", "aluminum"]);
    assert_eq!(read_value(metals, "copper"), Ok(Value::Word("copper")));
    let error = read_value(metals, "aluminium").expect_err("another spelling");
    assert_eq!(
        error.what,
        "`aluminium` is not one of the words `copper`, `aluminum`"
    );
    assert_eq!(error.write.as_deref(), Some("aluminum"));
    assert_eq!(
        read_value(Sort::Quantity(Kind::Voltage), "24 V"),
        Ok(Value::Quantity(Kind::Voltage, 24.0))
    );
}
