//! Lines of the calculator that work, made from the first outside case.

use super::outside::tried;
use crate::arguments::{Asked, Backward, read};
use crate::registry::Calculation;
use crate::sheet::{Sheet, Symbol};
use crate::solve::{Found, Place, solve};
use quantity::{UnitSystem, Value, print_value, read_kind, write_kind};
use std::collections::BTreeMap;

/// The section with the examples; nothing where no case gives values.
pub(super) fn section(calculation: &Calculation) -> Option<String> {
    let sheet = calculation.sheet;
    let given = &first_given(sheet)?;
    let pairs: Vec<(String, String)> = given
        .iter()
        .map(|(name, value)| (name.clone(), value.clone()))
        .collect();
    let Ok(Asked::Forward(inputs)) = read(calculation, &pairs) else {
        return None;
    };
    let outputs = calculation.evaluate(&inputs).ok()?;
    let gives: Vec<String> = sheet.outputs.iter().zip(&outputs).map(gives).collect();
    let forward = format!(
        "{}\n\n{}",
        fenced(&line(sheet, given, None)),
        gives.join("\n")
    );
    match backward(calculation, given, &inputs, &outputs) {
        Some(backward) => Some(format!("{forward}\n\nBackward:\n\n{backward}")),
        None => Some(forward),
    }
}

/// What the first outside case that is not about a refusal gives.
fn first_given(sheet: &Sheet) -> Option<BTreeMap<String, String>> {
    let first = tried(sheet).find(|tried| tried.case.refuses.is_none())?;
    Some(first.case.given.clone())
}

/// Inputs that work, as written in the first outside case, each by its name.
pub fn example_inputs(calculation: &Calculation) -> BTreeMap<String, String> {
    first_given(calculation.sheet).unwrap_or_default()
}

/// A line of the calculator that works.
pub fn example_line(calculation: &Calculation) -> Option<String> {
    let given = first_given(calculation.sheet)?;
    Some(line(calculation.sheet, &given, None))
}

fn fenced(line: &str) -> String {
    format!("```sh\n{line}\n```")
}

/// The line of the calculator, its inputs in the order of the sheet, one of them looked for where `wanted` says so.
fn line(
    sheet: &Sheet,
    given: &BTreeMap<String, String>,
    wanted: Option<(&str, &str, &str)>,
) -> String {
    let mut words: Vec<String> = sheet
        .inputs
        .iter()
        .filter_map(|input| match wanted {
            Some((looked_for, _, _)) if looked_for == input.name => Some(format!("{looked_for}=?")),
            _ => Some(argument(input.name, given.get(input.name)?)),
        })
        .collect();
    words.extend(wanted.map(|(_, output, value)| argument(output, value)));
    format!("gatewright calc {} {}", sheet.name, words.join(" "))
}

/// A pair as a shell takes it.
fn argument(name: &str, value: &str) -> String {
    let plain = |letter: char| letter.is_ascii_alphanumeric() || ".-+%".contains(letter);
    if value.chars().all(plain) {
        format!("{name}={value}")
    } else if value.contains(['"', '$', '`', '\\']) {
        format!("{name}='{}'", value.replace('\'', "'\\''"))
    } else {
        format!("{name}=\"{value}\"")
    }
}

/// An output in US customary units, and in SI where that is another text.
fn gives((symbol, value): (&Symbol, &Value)) -> String {
    format!("- `{}`: {}", symbol.name, both(value))
}

fn both(value: &Value) -> String {
    let us = print_value(value, UnitSystem::UsCustomary);
    let si = print_value(value, UnitSystem::Si);
    if us == si { us } else { format!("{us} ({si})") }
}

/// The same question backward, for the first input that one of the outputs, the last one first, leads back to.
fn backward(
    calculation: &Calculation,
    given: &BTreeMap<String, String>,
    inputs: &[Value],
    outputs: &[Value],
) -> Option<String> {
    let sheet = calculation.sheet;
    (0..inputs.len()).find_map(|place| {
        (0..outputs.len()).rev().find_map(|output| {
            let (text, value) = wanted(outputs.get(output)?)?;
            let mut others: Vec<Option<Value>> = inputs.iter().copied().map(Some).collect();
            *others.get_mut(place)? = None;
            let question = Backward {
                given: others,
                output,
                value,
                note: None,
            };
            let found = one(calculation, &question, inputs.get(place)?)?;
            let (input, symbol) = (
                sheet.inputs.get(place)?.name,
                sheet.outputs.get(output)?.name,
            );
            let line = fenced(&line(sheet, given, Some((input, symbol, &text))));
            Some(format!("{line}\n\n- `{input}`: {}", both(&found)))
        })
    })
}

/// An output as a short text, with the value of that text.
fn wanted(output: &Value) -> Option<(String, f64)> {
    let Value::Quantity(kind, base) = output else {
        return None;
    };
    let printed = print_value(output, UnitSystem::UsCustomary);
    let text = match read_kind(*kind, &printed) {
        Ok(_) => printed,
        Err(_) => write_kind(*kind, *base, UnitSystem::UsCustomary),
    };
    let value = read_kind(*kind, &text).ok()?;
    Some((text, value))
}

/// How far the digits of the printed output may carry the answer from the input that it came from.
const NEAR: f64 = 0.01;

/// The answer where there is exactly one and it is the input that the output came from.
fn one(calculation: &Calculation, question: &Backward, input: &Value) -> Option<Value> {
    let Value::Quantity(kind, expected) = input else {
        return None;
    };
    match solve(calculation, question).ok()?.found {
        Found::One(Place::At(found)) if (found - expected).abs() <= NEAR * expected.abs() => {
            Some(Value::Quantity(*kind, found))
        }
        _ => None,
    }
}
