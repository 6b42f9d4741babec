//! `gatewright calc`: forwards, backwards, and what it says when something is missing.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common::{Run, run};

/// Works a calculation.
fn calc(words: &[&str]) -> Run {
    let mut arguments = vec!["calc"];
    arguments.extend(words);
    run(&arguments)
}

const RUN_OF_100_FEET: [&str; 5] = [
    "voltage-drop",
    "source=12 V",
    "current=0.5 A",
    "resistance=6.385 Ω/kft",
    "length=100 ft",
];

#[test]
fn the_list_names_every_calculation() {
    let run = calc(&[]);
    assert_eq!(run.status, 0);
    for calculation in formula::registry() {
        let name = format!("  {} ", calculation.sheet.name);
        assert!(run.printed.contains(&name), "{name}");
    }
    insta::assert_snapshot!(run.printed);
}

#[test]
fn the_list_as_json_names_every_calculation() {
    let all: serde_json::Value = serde_json::from_str(&calc(&["--json"]).printed).unwrap();
    assert_eq!(all.as_array().unwrap().len(), formula::registry().len());
}

#[test]
fn a_name_alone_shows_what_it_takes() {
    let run = calc(&["voltage-drop"]);
    assert_eq!(run.status, 0);
    insta::assert_snapshot!(run.printed);
}

#[test]
fn every_sheet_ends_with_a_line_that_works() {
    for calculation in formula::registry() {
        let name = calculation.sheet.name;
        let line = formula::handbook::example_line(calculation).unwrap();
        assert!(calc(&[name]).printed.contains(&line), "{name}");
        let given: Vec<String> = formula::handbook::example_inputs(calculation)
            .into_iter()
            .map(|(input, value)| format!("{input}={value}"))
            .collect();
        let mut words = vec![name];
        words.extend(given.iter().map(String::as_str));
        let run = calc(&words);
        assert_eq!(run.status, 0, "{line}: {}", run.complaints);
    }
}

#[test]
fn forward_shows_formula_values_and_source() {
    let run = calc(&RUN_OF_100_FEET);
    assert_eq!(run.status, 0);
    // 2 · 100 ft · 6.385 Ω/kft = 1.277 Ω, times 0.5 A is 638.5 mV, by hand.
    for text in ["ΔU = I · R", "1.28 Ω", "638 mV", "11.4 V", "Ohm's law"] {
        assert!(run.printed.contains(text), "{text}: {}", run.printed);
    }
}

#[test]
fn si_prints_metric_units() {
    let mut words = RUN_OF_100_FEET.to_vec();
    words.push("--si");
    let run = calc(&words);
    assert!(run.printed.contains("30.48 m"), "{}", run.printed);
    assert!(!run.printed.contains(" ft"), "{}", run.printed);
}

#[test]
fn json_gives_text_and_number() {
    let mut words = RUN_OF_100_FEET.to_vec();
    words.push("--json");
    let all: serde_json::Value = serde_json::from_str(&calc(&words).printed).unwrap();
    assert_eq!(all["calculation"], "voltage-drop");
    let drop = all["gives"]["drop"]["si"].as_f64().unwrap();
    assert!((drop - 0.6385).abs() < 1e-9, "{drop}");
}

#[test]
fn backward_finds_the_length_for_a_drop_of_a_tenth() {
    let run = calc(&[
        "voltage-drop",
        "source=12 V",
        "current=0.5 A",
        "resistance=6.385 Ω/kft",
        "length=?",
        "drop=10 %",
    ]);
    assert_eq!(run.status, 0, "{}", run.complaints);
    // 12 V · 10 % / (2 · 0.5 A · 6.385 Ω/kft) = 187.94 ft, by hand.
    assert!(
        run.printed.starts_with("length = 187 ft 11 5/16 in\n"),
        "{}",
        run.printed
    );
}

#[test]
fn backward_as_json_gives_the_number() {
    let run = calc(&[
        "voltage-drop",
        "source=12 V",
        "current=0.5 A",
        "resistance=6.385 Ω/kft",
        "length=?",
        "drop=1.2 V",
        "--json",
    ]);
    let all: serde_json::Value = serde_json::from_str(&run.printed).unwrap();
    let meters = all["found"][0]["si"].as_f64().unwrap();
    assert!((meters / 0.3048 - 187.940_486).abs() < 1e-4, "{meters}");
}

#[test]
fn backward_says_when_no_value_gives_that() {
    let run = calc(&[
        "voltage-drop",
        "source=?",
        "current=1 A",
        "length=100 ft",
        "resistance=6.385 Ω/kft",
        "drop=5 V",
    ]);
    assert_eq!(run.status, 1);
    assert!(
        run.printed.starts_with("No source gives that"),
        "{}",
        run.printed
    );
}

/// A leaf on a slope: rolling resistance is the same uphill as downhill.
const ON_A_SLOPE: [&str; 16] = [
    "slide-gate-force",
    "mass=1000 kg",
    "load_factor=1",
    "slope=?",
    "wheel_radius=100 mm",
    "lever_arm=0.5 mm",
    "axle_radius=0 mm",
    "bearing_friction=0",
    "rim_factor=0",
    "seal_force=0 N",
    "guide_load=0 N",
    "guide_friction=0",
    "debris_force=0 N",
    "acceleration=0 m/s²",
    "rotating_share=0",
    "rolling=49 N",
];

#[test]
fn backward_lists_several_values() {
    let run = calc(&ON_A_SLOPE);
    assert_eq!(run.status, 0, "{}{}", run.printed, run.complaints);
    assert!(
        run.printed.starts_with("2 values of slope give that: -"),
        "{}",
        run.printed
    );
    let mut words = ON_A_SLOPE.to_vec();
    words.push("--json");
    let all: serde_json::Value = serde_json::from_str(&calc(&words).printed).unwrap();
    let slopes: Vec<f64> = all["found"]
        .as_array()
        .unwrap()
        .iter()
        .map(|found| found["si"].as_f64().unwrap())
        .collect();
    // Normal force m · g · cos θ times lever arm over radius: cos θ = 49 N · 100 mm / (9806.65 N · 0.5 mm), by hand.
    let by_hand = (49.0_f64 * 100.0 / (9806.65 * 0.5)).acos().tan();
    assert!((slopes[0] + by_hand).abs() < 1e-6, "{slopes:?} {by_hand}");
    assert!((slopes[1] - by_hand).abs() < 1e-6, "{slopes:?} {by_hand}");
}

#[test]
fn backward_says_when_any_value_gives_that() {
    let run = calc(&[
        "voltage-drop",
        "source=?",
        "current=1 A",
        "length=100 ft",
        "resistance=5 Ω/kft",
        "loop_resistance=1 Ω",
    ]);
    assert_eq!(run.status, 0, "{}{}", run.printed, run.complaints);
    assert!(
        run.printed.starts_with("Any source gives that"),
        "{}",
        run.printed
    );
}

#[test]
fn missing_inputs_are_listed_with_what_to_write() {
    let run = calc(&["voltage-drop", "source=12 V"]);
    assert_eq!(run.status, 2);
    for input in ["current", "length", "resistance"] {
        assert!(
            run.complaints.contains(&format!("write  {input}=")),
            "{input}: {}",
            run.complaints
        );
    }
}

#[test]
fn a_wrong_unit_says_which_is_wanted() {
    let mut words = RUN_OF_100_FEET.to_vec();
    words[2] = "current=0.5 V";
    let run = calc(&words);
    assert_eq!(run.status, 2);
    assert!(run.complaints.contains("current"), "{}", run.complaints);
}

#[test]
fn out_of_reach_says_where_it_holds() {
    let mut words = RUN_OF_100_FEET.to_vec();
    words[1] = "source=0 V";
    let run = calc(&words);
    assert_eq!(run.status, 2);
    assert!(
        run.complaints.starts_with("Out of reach.") && run.complaints.contains("It holds for:"),
        "{}",
        run.complaints
    );
}

#[test]
fn an_unknown_calculation_gets_the_nearest_name() {
    let run = calc(&["voltage-dorp"]);
    assert_eq!(run.status, 2);
    assert!(
        run.complaints.contains("Nearest: voltage-drop."),
        "{}",
        run.complaints
    );
}
