//! Calculations: the list, what one takes and gives, and one worked forward or backward.

use super::Answer;
use crate::command::calc::{places, to_json};
use crate::serve::body::{Given, Sent};
use crate::serve::refusal::Refusal;
use axum::Json;
use axum::extract::Path;
use formula::arguments::{ArgumentProblem, Asked, read};
use formula::handbook::example_inputs;
use formula::solve::{Found, solve};
use formula::{Calculation, Symbol, find, registry};
use quantity::{UnitSystem, Value as Worked, Word as _};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// The input that says in which units the answer is written: `us` or `si`.
const UNITS: &str = "units";

/// Every calculation.
pub(super) async fn list() -> Json<Value> {
    let all = registry().iter().map(|calculation| {
        let sheet = calculation.sheet;
        json!({ "name": sheet.name, "discipline": sheet.discipline.word(), "title": sheet.title() })
    });
    Json(all.collect())
}

/// One calculation by the address: its sheet, and, where inputs are given, what comes out.
pub(super) async fn by_address(
    Path(name): Path<String>,
    Given(pairs): Given<Vec<(String, String)>>,
) -> Answer {
    answered(&name, pairs)
}

/// One calculation with its inputs as a body.
pub(super) async fn by_body(
    Path(name): Path<String>,
    Sent(inputs): Sent<BTreeMap<String, String>>,
) -> Answer {
    answered(&name, inputs.into_iter().collect())
}

fn answered(name: &str, mut pairs: Vec<(String, String)>) -> Answer {
    let calculation = find(name).ok_or_else(|| {
        Refusal::absent(
            "There is no such calculation.",
            "Take a name from /api/calculations.",
        )
        .at(name)
    })?;
    let units = units(&mut pairs)?;
    pairs.retain(|(_, value)| !value.trim().is_empty());
    let mut told = sheet(calculation);
    if !pairs.is_empty() {
        let asked = read(calculation, &pairs).map_err(|problems| refused(&problems))?;
        told["answer"] = worked(calculation, &asked, units)?;
    }
    Ok(Json(told))
}

/// The units that are asked for; they are no input of the calculation.
fn units(pairs: &mut Vec<(String, String)>) -> Result<UnitSystem, Refusal> {
    let Some(at) = pairs.iter().position(|(name, _)| name == UNITS) else {
        return Ok(UnitSystem::UsCustomary);
    };
    let (_, word) = pairs.remove(at);
    UnitSystem::from_word(&word).ok_or_else(|| {
        Refusal::unusable(
            "These units are not known here.",
            "Leave them out, or write us or si.",
        )
        .at(UNITS)
        .expected("us or si")
    })
}

fn worked(calculation: &Calculation, asked: &Asked, units: UnitSystem) -> Result<Value, Refusal> {
    let sheet = calculation.sheet;
    match asked {
        Asked::Forward(inputs) => {
            let outputs = calculation.evaluate(inputs).map_err(|refusal| {
                Refusal::unusable(format!("Out of reach. {refusal}"), "Take other inputs.")
                    .expected(sheet.validity)
            })?;
            Ok(json!({
                "takes": values(sheet.inputs, inputs, units),
                "gives": values(sheet.outputs, &outputs, units),
            }))
        }
        Asked::Backward(question) => {
            let solved = solve(calculation, question)
                .map_err(|refusal| Refusal::unusable(refusal.to_string(), "Take other inputs."))?;
            Ok(json!({
                "input": solved.input.name,
                "found": places(&solved.found, solved.kind, units),
                "any": matches!(solved.found, Found::Any),
                "note": question.note,
                "says": crate::command::calc::in_words(&solved, units),
            }))
        }
    }
}

fn values(symbols: &[Symbol], values: &[Worked], units: UnitSystem) -> Value {
    let each = symbols
        .iter()
        .zip(values)
        .map(|(symbol, value)| (symbol.name.to_owned(), to_json(value, units)));
    Value::Object(each.collect())
}

/// What a calculation takes and gives, where it holds and where it comes from.
fn sheet(calculation: &Calculation) -> Value {
    let sheet = calculation.sheet;
    let examples = example_inputs(calculation);
    let symbols = |symbols: &[Symbol]| -> Value {
        symbols
            .iter()
            .map(|symbol| {
                json!({
                    "name": symbol.name, "letter": symbol.letter, "meaning": symbol.meaning.trim(),
                    "example": examples.get(symbol.name),
                })
            })
            .collect()
    };
    json!({
        "name": sheet.name,
        "discipline": sheet.discipline.word(),
        "prose": sheet.paragraphs(),
        "formula": sheet.formula,
        "inputs": symbols(sheet.inputs),
        "outputs": symbols(sheet.outputs),
        "valid": sheet.validity,
        "source": {
            "work": sheet.source.work, "clause": sheet.source.clause,
            "evidence": sheet.source.evidence.word(), "seen": sheet.source.seen,
        },
    })
}

fn refused(problems: &[ArgumentProblem]) -> Refusal {
    let what: Vec<String> = problems.iter().map(ToString::to_string).collect();
    let write: Vec<&str> = problems
        .iter()
        .filter_map(|problem| problem.write.as_deref())
        .collect();
    let names: Vec<&str> = problems
        .iter()
        .map(|problem| problem.name.as_str())
        .collect();
    let act = if write.is_empty() {
        "See what the calculation takes.".to_owned()
    } else {
        format!("Write {}", write.join("; "))
    };
    let told = problems
        .iter()
        .map(|problem| json!({ "where": problem.name, "what": problem.what, "do": problem.write }));
    Refusal::unusable(what.join(" "), act)
        .at(names.join(", "))
        .now(told.collect())
}
