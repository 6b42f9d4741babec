//! Every calculation leads back from its outputs to its inputs, and no text makes a reader panic.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test may stop at the first surprise"
)]

use formula::arguments::{Asked, Backward, pair, read};
use formula::case::{Case, cases, embedded, verify};
use formula::solve::{Found, Place, solve};
use formula::{Calculation, find, registry};
use proptest::prelude::*;
use quantity::Value;

/// The first outside case of a calculation that gives values.
fn first_case(calculation: &Calculation) -> Case {
    let all = embedded().flat_map(|(file, text)| cases(file, text).0);
    let mut of_it =
        all.filter(|case| case.calculation == calculation.sheet.name && case.refuses.is_none());
    of_it.next().unwrap()
}

fn inputs(calculation: &Calculation) -> Vec<Value> {
    let pairs: Vec<(String, String)> = first_case(calculation).given.into_iter().collect();
    match read(calculation, &pairs).unwrap() {
        Asked::Forward(inputs) => inputs,
        Asked::Backward(_) => panic!("a case asks backward"),
    }
}

/// Whether what was found holds the input, within what rounding allows at a place where the output is nearly level.
fn holds(found: &Found, input: f64) -> bool {
    let near = |place: &Place| match place {
        Place::At(value) => (value - input).abs() <= 1e-4 * input.abs() + 1e-12,
        Place::Between { from, to } => {
            (from - 1e-6 * from.abs()..=to + 1e-6 * to.abs()).contains(&input)
        }
    };
    match found {
        Found::Any => true,
        Found::None { .. } => false,
        Found::One(place) => near(place),
        Found::Several(places) => places.iter().any(near),
    }
}

#[test]
fn every_output_leads_back_to_every_input() {
    let mut faults = Vec::new();
    let mut asked = 0;
    for calculation in registry() {
        let inputs = inputs(calculation);
        let outputs = calculation.evaluate(&inputs).unwrap();
        for (place, input) in inputs.iter().enumerate() {
            for (output, value) in outputs.iter().enumerate() {
                let (Value::Quantity(_, input), Value::Quantity(_, value)) = (input, value) else {
                    continue;
                };
                let mut given: Vec<Option<Value>> = inputs.iter().copied().map(Some).collect();
                given[place] = None;
                let question = Backward {
                    given,
                    output,
                    value: *value,
                    note: None,
                };
                let solved = solve(calculation, &question).unwrap();
                asked += 1;
                if !holds(&solved.found, *input) {
                    let sheet = calculation.sheet;
                    let (from, to) = (sheet.outputs[output].name, sheet.inputs[place].name);
                    faults.push(format!(
                        "{}: {from} to {to} = {input}: {:?}",
                        sheet.name, solved.found
                    ));
                }
            }
        }
    }
    assert!(asked > 100, "{asked}");
    assert!(
        faults.is_empty(),
        "{} of {asked}\n{}",
        faults.len(),
        faults.join("\n")
    );
}

proptest! {
    #[test]
    fn no_line_makes_the_reader_panic(name in "[a-z_]{0,12}", value in "\\PC{0,24}", other in "\\PC{0,24}") {
        let calculation = find("voltage-drop").unwrap();
        let pairs: Vec<(String, String)> = [
            format!("{name}={value}"),
            format!("length={other}"),
            format!("drop={value}"),
            other,
        ]
        .iter()
        .filter_map(|text| pair(text).ok())
        .collect();
        if let Ok(Asked::Backward(question)) = read(calculation, &pairs) {
            prop_assert!(solve(calculation, &question).is_ok());
        }
    }

    #[test]
    fn no_case_file_makes_the_reader_panic(at in 0.0..1.0, length in 0usize..12, with in "\\PC{0,6}") {
        for (file, text) in embedded().take(3) {
            let letters: Vec<char> = text.chars().collect();
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss, reason = "a place in a short text")]
            let start = (letters.len() as f64 * at) as usize;
            let end = (start + length).min(letters.len());
            let changed: String = letters[..start]
                .iter()
                .copied()
                .chain(with.chars())
                .chain(letters[end..].iter().copied())
                .collect();
            let report = verify(file, &changed);
            prop_assert!(report.problems.iter().all(|problem| !problem.what.is_empty()));
        }
    }
}
