//! Laws that hold for every text and every value.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

use proptest::prelude::*;
use quantity::{
    Area, ConductorSize, Current, Force, Kind, Known, Length, Mass, Measured, Quantity, Ratio,
    ReadError, Sort, Temperature, TemperatureDifference, Tolerance, UnitSystem, Value, print_kind,
    print_measured, print_rounding, read_conductor, read_kind, read_measured, read_value, units_of,
    write_kind, write_measured, write_value,
};

/// Texts that are right, to be spoiled letter by letter.
const RIGHT: &[&str] = &[
    "14 ft 3 1/2 in",
    "14'-3 1/2\"",
    "14′ 3½″ ± 1/16 in",
    "640 lb ± 5 %, assumed",
    "1.2 m +5/-0 mm, data sheet",
    "-40 °F ± 9 Δ°F",
    "1 in 40",
    "1/0 AWG",
    "1.5 mm²",
    "1,200.5 lb",
    "4,35 m",
    "1e-3 N·m",
    "5.5 W/(m²·K)",
    "20 % ± 5 %",
    "6.385 Ω/kft +1 %/-2 %",
];

/// Letters that mean something to the reader.
const LETTERS: &str = "[-0-9 ./'\"+,±−–′″½¼²³·°ΔΩµ%:()eEfilnmtbsaFCKAWGV]{0,24}";

/// A right text with one piece replaced.
fn spoiled() -> impl Strategy<Value = String> {
    (
        prop::sample::select(RIGHT),
        any::<prop::sample::Index>(),
        0..4usize,
        LETTERS,
    )
        .prop_map(|(text, at, cut, new)| {
            let letters: Vec<char> = text.chars().collect();
            let start = at.index(letters.len() + 1);
            let end = (start + cut).min(letters.len());
            let new: String = new.chars().take(cut + 1).collect();
            letters[..start]
                .iter()
                .copied()
                .chain(new.chars())
                .chain(letters[end..].iter().copied())
                .collect()
        })
}

/// Any text at all, texts of the letters that matter, and spoiled right texts.
fn text() -> impl Strategy<Value = String> {
    prop_oneof![any::<String>(), LETTERS, spoiled()]
}

/// A kind.
fn kind() -> impl Strategy<Value = Kind> {
    prop::sample::select(Kind::ALL)
}

/// A system of units.
fn system() -> impl Strategy<Value = UnitSystem> {
    prop::sample::select(UnitSystem::ALL)
}

/// A value of any size, and more often of a size that is met on site.
fn base() -> impl Strategy<Value = f64> {
    prop_oneof![
        1 => prop::num::f64::NORMAL | prop::num::f64::ZERO | prop::num::f64::SUBNORMAL,
        4 => -1e6..1e6,
        4 => (-9i32..9, 0..100_000u32).prop_map(|(power, digits)| f64::from(digits) * 10f64.powi(power)),
    ]
}

/// As it may stand on the scale of a kind: no temperature is below absolute zero.
fn possible(kind: Kind, base: f64) -> f64 {
    if kind == Kind::Temperature {
        base.abs()
    } else {
        base
    }
}

/// The place of an error is a piece of the text, and what it says is not empty.
fn is_placed(error: &ReadError, text: &str) -> bool {
    text.get(error.place.clone()).is_some() && !error.what.is_empty()
}

/// Reads a measured value of some type and checks what comes back.
fn measured_is_sound<Q: Quantity>(text: &str) -> Result<(), TestCaseError> {
    match read_measured::<Q>(text) {
        Err(error) => prop_assert!(is_placed(&error, text), "{text:?}: {error:?}"),
        Ok(read) => {
            let (low, nominal, high) =
                (read.low().base(), read.nominal().base(), read.high().base());
            prop_assert!(
                low <= nominal && nominal <= high,
                "{text:?}: {low} {nominal} {high}"
            );
            prop_assert!(low.is_finite() && high.is_finite());
        }
    }
    Ok(())
}

/// Writes and reads a measured value; only a share may differ, by its last binary digit.
fn survives<Q: Quantity>(measured: &Measured<Q>, system: UnitSystem) -> Result<(), TestCaseError> {
    let text = write_measured(measured, system);
    let read = read_measured::<Q>(&text)
        .map_err(|error| TestCaseError::fail(format!("{text}: {error}")))?;
    prop_assert_eq!(read.nominal(), measured.nominal(), "{}", text);
    prop_assert_eq!(read.known(), measured.known(), "{}", text);
    match (read.tolerance(), measured.tolerance()) {
        (
            Tolerance::Relative { below, above },
            Tolerance::Relative {
                below: old_below,
                above: old_above,
            },
        ) => {
            let near = |new: f64, old: f64| new >= old.next_down() && new <= old.next_up();
            prop_assert!(near(below, old_below) && near(above, old_above), "{text}");
        }
        (new, old) => prop_assert_eq!(new, old, "{}", text),
    }
    let printed = print_measured(measured, system);
    prop_assert!(read_measured::<Q>(&printed).is_ok(), "{printed}");
    Ok(())
}

/// A tolerance that a value may have.
fn tolerance() -> impl Strategy<Value = Tolerance> {
    prop_oneof![
        Just(Tolerance::Exact),
        (0.0..1e3, 0.0..1e3).prop_map(|(below, above)| Tolerance::Absolute { below, above }),
        (0.0..1e3).prop_map(|side| Tolerance::Absolute {
            below: side,
            above: side
        }),
        (0.0..1.0, 0.0..2.0).prop_map(|(below, above)| Tolerance::Relative { below, above }),
        (0..50u8).prop_map(|percent| {
            let share = f64::from(percent) / 100.0;
            Tolerance::Relative {
                below: share,
                above: share,
            }
        }),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_text_makes_a_reader_panic(text in text(), kind in kind()) {
        match read_kind(kind, &text) {
            Ok(base) => prop_assert!(base.is_finite(), "{text:?}"),
            Err(error) => prop_assert!(is_placed(&error, &text), "{text:?}: {error:?}"),
        }
        measured_is_sound::<Length>(&text)?;
        measured_is_sound::<Mass>(&text)?;
        measured_is_sound::<Ratio>(&text)?;
        measured_is_sound::<Temperature>(&text)?;
        for sort in [Sort::Count, Sort::Conductor, Sort::Words(&["slide", "swing", ""])] {
            if let Err(error) = read_value(sort, &text) {
                prop_assert!(is_placed(&error, &text), "{text:?}: {error:?}");
            }
        }
    }

    #[test]
    fn what_is_written_is_read_as_the_same_value(kind in kind(), base in base(), system in system()) {
        let base = possible(kind, base);
        let text = write_kind(kind, base, system);
        let read = read_kind(kind, &text);
        prop_assert_eq!(read.clone().map(f64::to_bits), Ok(base.to_bits()), "{} {:?}", text, read);
    }

    #[test]
    fn what_is_printed_lies_within_its_rounding(kind in kind(), base in base(), system in system()) {
        let base = possible(kind, base);
        let text = print_kind(kind, base, system);
        // A temperature prints to a tenth: the lowest may round below absolute zero, which no reader takes.
        prop_assume!(kind != Kind::Temperature || base > 0.1);
        prop_assume!(base.abs() < 1e300);
        let read = read_kind(kind, &text).map_err(|error| TestCaseError::fail(format!("{text}: {error}")))?;
        let slack = print_rounding(kind, base, system) * (1.0 + 1e-9) + 1e-14 * base.abs() + f64::MIN_POSITIVE;
        prop_assert!((read - base).abs() <= slack, "{text}: {read} is not within {slack} of {base}");
    }

    #[test]
    fn measured_values_survive_writing(
        nominal in 1.0..1e5f64, tolerance in tolerance(), known in prop::sample::select(Known::ALL), system in system()
    ) {
        survives(&Measured::new(Length::from_base(nominal), tolerance, known), system)?;
        survives(&Measured::new(Mass::from_base(nominal), tolerance, known), system)?;
        survives(&Measured::new(Force::from_base(-nominal), tolerance, known), system)?;
        survives(&Measured::new(Current::from_base(nominal * 1e-4), tolerance, known), system)?;
        survives(&Measured::new(Ratio::from_base(nominal * 1e-4), tolerance, known), system)?;
        survives(&Measured::new(TemperatureDifference::from_base(nominal), tolerance, known), system)?;
        if !matches!(tolerance, Tolerance::Relative { .. }) {
            survives(&Measured::new(Temperature::from_base(nominal), tolerance, known), system)?;
        }
    }

    #[test]
    fn metric_conductors_survive_writing(area in 1e-9..1e-3f64, system in system()) {
        let value = Value::Conductor(ConductorSize::Metric(Area::from_base(area)));
        let text = write_value(&value, system);
        prop_assert_eq!(read_conductor(&text).map(Value::Conductor), Ok(value), "{}", text);
    }
}

#[test]
fn every_spelling_of_every_unit_is_read_as_that_unit() {
    for kind in Kind::ALL {
        for unit in units_of(*kind) {
            for symbol in unit.symbols {
                let read = read_kind(*kind, &format!("300 {symbol}"));
                assert_eq!(read, Ok(unit.to_base(300.0)), "{kind:?} {symbol}");
            }
        }
    }
}

#[test]
fn no_spelling_means_two_units_of_one_kind() {
    for kind in Kind::ALL {
        let mut spellings: Vec<&str> = units_of(*kind)
            .iter()
            .flat_map(|unit| unit.symbols)
            .copied()
            .collect();
        let count = spellings.len();
        spellings.sort_unstable();
        spellings.dedup();
        assert_eq!(spellings.len(), count, "{kind:?}");
    }
}
