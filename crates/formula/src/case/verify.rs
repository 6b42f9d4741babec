//! Trying outside cases.

use super::printed::{Printed, alike, printed};
use super::read::{Case, Problem, cases, problem};
use crate::arguments::{self, Asked};
use crate::registry::{Calculation, find, registry};
use crate::sheet::{OutOfReach, Symbol};
use quantity::{Kind, Sort, UnitSystem, Value, print_value, read_kind, read_value};

/// What trying the cases of a file showed.
#[derive(Debug, Clone, PartialEq)]
pub struct Report {
    /// The file.
    pub file: String,
    /// Each case that could be tried.
    pub tried: Vec<Tried>,
    /// What is wrong with the file or with cases that could not be tried.
    pub problems: Vec<Problem>,
}

impl Report {
    /// Whether every case of the file was tried and holds.
    pub fn holds(&self) -> bool {
        self.problems.is_empty() && self.tried.iter().all(Tried::holds)
    }
}

/// A case that was tried.
#[derive(Debug, Clone, PartialEq)]
pub struct Tried {
    /// The case.
    pub case: Case,
    /// Each expected value beside ours.
    pub compared: Vec<Compared>,
}

impl Tried {
    /// Whether every value agrees.
    pub fn holds(&self) -> bool {
        self.compared.iter().all(|compared| compared.holds)
    }
}

/// An expected value beside ours.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Compared {
    /// The output, or the input whose refusal is expected.
    pub name: String,
    /// What the source prints.
    pub expected: String,
    /// What we compute, in the unit of the print.
    pub ours: String,
    /// Whether ours rounds to the printed digits, or lies within the stated tolerance.
    pub holds: bool,
}

/// Reads a file of cases and tries each.
pub fn verify(file: &str, text: &str) -> Report {
    let (cases, mut problems) = cases(file, text);
    let mut tried = Vec::new();
    for case in cases {
        match compare(&case) {
            Ok(compared) => tried.push(Tried { case, compared }),
            Err(what) => problems.push(problem(file, Some(&case.id), what)),
        }
    }
    Report {
        file: file.to_owned(),
        tried,
        problems,
    }
}

fn compare(case: &Case) -> Result<Vec<Compared>, String> {
    let calculation = find(&case.calculation).ok_or_else(|| no_calculation(&case.calculation))?;
    let inputs = inputs(calculation, case)?;
    match (&case.refuses, calculation.evaluate(&inputs)) {
        (Some(input), result) => refusal(calculation, input, result).map(|compared| vec![compared]),
        (None, Err(refused)) => Ok(vec![Compared {
            name: refused.input.to_owned(),
            expected: "a value".to_owned(),
            ours: format!("refused, {refused}"),
            holds: false,
        }]),
        (None, Ok(outputs)) => case
            .gives
            .iter()
            .map(|(name, text)| output(calculation, case, &outputs, name, text))
            .collect(),
    }
}

fn no_calculation(name: &str) -> String {
    let names = registry().iter().map(|known| known.sheet.name);
    match arguments::nearest(name, names) {
        Some(near) => format!("there is no calculation `{name}`; did you mean `{near}`?"),
        None => format!("there is no calculation `{name}`"),
    }
}

fn inputs(calculation: &Calculation, case: &Case) -> Result<Vec<Value>, String> {
    let pairs: Vec<(String, String)> = case
        .given
        .iter()
        .map(|(name, text)| (name.clone(), text.clone()))
        .collect();
    match arguments::read(calculation, &pairs) {
        Ok(Asked::Forward(values)) => Ok(values),
        Ok(Asked::Backward(_)) => Err("a case gives every input; `?` is not one".to_owned()),
        Err(problems) => {
            let all: Vec<String> = problems.iter().map(ToString::to_string).collect();
            Err(all.join("; "))
        }
    }
}

fn refusal(
    calculation: &Calculation,
    input: &str,
    result: Result<Vec<Value>, OutOfReach>,
) -> Result<Compared, String> {
    let names = || calculation.sheet.inputs.iter().map(|input| input.name);
    if !names().any(|name| name == input) {
        let all: Vec<&str> = names().collect();
        return Err(format!(
            "`{input}` is no input; there are {}",
            all.join(", ")
        ));
    }
    Ok(Compared {
        name: input.to_owned(),
        expected: "a refusal".to_owned(),
        holds: matches!(&result, Err(refused) if refused.input == input),
        ours: match result {
            Ok(_) => "a value".to_owned(),
            Err(refused) => format!("refused, {refused}"),
        },
    })
}

fn output(
    calculation: &Calculation,
    case: &Case,
    outputs: &[Value],
    name: &str,
    text: &str,
) -> Result<Compared, String> {
    let symbols = calculation.sheet.outputs;
    let found = symbols
        .iter()
        .zip(outputs)
        .find(|(symbol, _)| symbol.name == name);
    let Some((symbol, ours)) = found else {
        let all: Vec<&str> = symbols.iter().map(|symbol| symbol.name).collect();
        return Err(format!(
            "`{name}` is no output; there are {}",
            all.join(", ")
        ));
    };
    let (shown, holds) =
        agreement(symbol, ours, text, case).map_err(|what| format!("{name}: {what}"))?;
    Ok(Compared {
        name: name.to_owned(),
        expected: text.to_owned(),
        ours: shown,
        holds,
    })
}

/// Our value in the unit of the print, and whether it agrees.
fn agreement(
    symbol: &Symbol,
    ours: &Value,
    text: &str,
    case: &Case,
) -> Result<(String, bool), String> {
    let plain = || print_value(ours, UnitSystem::Si);
    let (Sort::Quantity(kind), Value::Quantity(_, base)) = (symbol.sort, ours) else {
        let expected = read_value(symbol.sort, text).map_err(|error| error.what)?;
        return Ok((plain(), expected == *ours));
    };
    let print = printed(kind, text)?;
    let allowed = match &case.tolerance {
        Some((tolerance, _)) => print.half_step.max(width(kind, print, tolerance)?),
        None => print.half_step,
    };
    let rounding = 1e-9 * allowed + 1e-12 * print.base.abs();
    let holds = (base - print.base).abs() <= allowed + rounding;
    Ok((alike(kind, *base, text).unwrap_or_else(plain), holds))
}

/// A stated tolerance in the coherent SI unit: a share of the printed value, or a distance.
fn width(kind: Kind, print: Printed, tolerance: &str) -> Result<f64, String> {
    let distance = if kind == Kind::Temperature {
        Kind::TemperatureDifference
    } else {
        kind
    };
    if !tolerance.contains('%') {
        return read_kind(distance, tolerance)
            .map_err(|error| format!("tolerance: {}", error.what));
    }
    if kind == Kind::Temperature {
        return Err(
            "tolerance: a share of a temperature says nothing; write it like `0.5 K`".into(),
        );
    }
    let share =
        read_kind(Kind::Ratio, tolerance).map_err(|error| format!("tolerance: {}", error.what))?;
    Ok((share * print.base).abs())
}
