//! `gatewright calc`: one calculation, forwards or backwards.

use crate::outcome::{Complaint, Outcome, say};
use crate::show::{columns, nearest_name, width, wrapped};
use crate::tint::{paint, quiet, strong, touchable};
use formula::arguments::{ArgumentProblem, Asked, pair, read};
use formula::handbook::{example_inputs, example_line};
use formula::solve::{Found, Place, Solved, solve};
use formula::{Calculation, Discipline, Symbol, find, registry};
use quantity::{Kind, UnitSystem, Value, Word as _, print_kind, print_value};
use serde_json::json;

/// Works the named calculation, or lists them all.
pub(crate) fn run(
    name: Option<&str>,
    values: &[String],
    as_json: bool,
    si: bool,
) -> Result<Outcome, Complaint> {
    let Some(name) = name else {
        say(&list(as_json));
        return Ok(Outcome::Holds);
    };
    let calculation = find(name).ok_or_else(|| unknown(name))?;
    if values.is_empty() {
        say(&sheet(calculation));
        return Ok(Outcome::Holds);
    }
    let units = if si {
        UnitSystem::Si
    } else {
        UnitSystem::UsCustomary
    };
    let pairs = values
        .iter()
        .map(|text| pair(text))
        .collect::<Result<Vec<_>, _>>()
        .map_err(|problem| refused(calculation, &[problem]))?;
    match read(calculation, &pairs).map_err(|problems| refused(calculation, &problems))? {
        Asked::Forward(inputs) => forward(calculation, &inputs, units, as_json),
        Asked::Backward(question) => {
            let solved =
                solve(calculation, &question).map_err(|refusal| Complaint(refusal.to_string()))?;
            say(&backward(&solved, question.note.as_deref(), units, as_json));
            Ok(if matches!(solved.found, Found::None { .. }) {
                Outcome::Open
            } else {
                Outcome::Holds
            })
        }
    }
}

fn unknown(name: &str) -> Complaint {
    let names: Vec<String> = registry()
        .iter()
        .map(|calculation| calculation.sheet.name.to_owned())
        .collect();
    let offer = nearest_name(name, &names)
        .map(|near| format!(" Nearest: {near}."))
        .unwrap_or_default();
    Complaint(format!(
        "There is no calculation named {name}.{offer} `gatewright calc` lists them."
    ))
}

fn refused(calculation: &Calculation, problems: &[ArgumentProblem]) -> Complaint {
    let lines: Vec<String> = problems
        .iter()
        .map(|problem| match &problem.write {
            Some(write) => format!("{problem}\n    write  {write}"),
            None => problem.to_string(),
        })
        .collect();
    Complaint(format!(
        "{}\n`gatewright calc {}` shows what it takes.",
        lines.join("\n"),
        calculation.sheet.name
    ))
}

fn forward(
    calculation: &Calculation,
    inputs: &[Value],
    units: UnitSystem,
    as_json: bool,
) -> Result<Outcome, Complaint> {
    let sheet = calculation.sheet;
    let outputs = calculation.evaluate(inputs).map_err(|refusal| {
        Complaint(format!(
            "Out of reach. {refusal}\nIt holds for: {}",
            sheet.validity
        ))
    })?;
    if as_json {
        let values: serde_json::Map<_, _> = sheet
            .outputs
            .iter()
            .zip(&outputs)
            .map(|(symbol, value)| (symbol.name.to_owned(), to_json(value, units)))
            .collect();
        say(&format_args!(
            "{:#}",
            json!({ "calculation": sheet.name, "gives": values })
        ));
        return Ok(Outcome::Holds);
    }
    say(&paint(sheet.formula, strong()));
    let printed = |values: &[Value]| -> Vec<String> {
        values
            .iter()
            .map(|value| print_value(value, units))
            .collect()
    };
    for line in takes_and_gives(calculation, &printed(inputs), &printed(&outputs)) {
        say(&line);
    }
    say(&paint(
        wrapped(&format!("Holds for: {}", sheet.validity), 0, width()),
        quiet(),
    ));
    say(&paint(wrapped(&source(calculation), 0, width()), quiet()));
    Ok(Outcome::Holds)
}

/// Inputs and outputs with their values, in columns that run through both.
fn takes_and_gives(
    calculation: &Calculation,
    inputs: &[String],
    outputs: &[String],
) -> Vec<String> {
    let sheet = calculation.sheet;
    let row = |(symbol, value): (&Symbol, &String)| {
        [
            symbol.name.to_owned(),
            symbol.letter.to_owned(),
            value.clone(),
            symbol.meaning.to_owned(),
        ]
    };
    let rows: Vec<_> = sheet
        .inputs
        .iter()
        .zip(inputs)
        .chain(sheet.outputs.iter().zip(outputs))
        .map(row)
        .collect();
    let mut lines = columns(&rows, 2, width(), None);
    lines.insert(sheet.inputs.len().min(lines.len()), paint("gives", quiet()));
    lines
}

/// A value for machines.
pub(crate) fn to_json(value: &Value, units: UnitSystem) -> serde_json::Value {
    let si = match value {
        Value::Quantity(_, number) => json!(number),
        Value::Count(count) => json!(count),
        Value::Conductor(_) | Value::Word(_) => serde_json::Value::Null,
    };
    json!({ "text": print_value(value, units), "si": si })
}

fn source(calculation: &Calculation) -> String {
    let source = &calculation.sheet.source;
    let clause = if source.clause.is_empty() {
        String::new()
    } else {
        format!(", {}", source.clause)
    };
    format!(
        "Source: {}{clause} ({}: {})",
        source.work, source.evidence, source.seen
    )
}

/// What was found in the backward direction, in words.
fn backward(solved: &Solved, note: Option<&str>, units: UnitSystem, as_json: bool) -> String {
    let print = |number: f64| print_kind(solved.kind, number, units);
    if as_json {
        let places = places(&solved.found, solved.kind, units);
        let any = matches!(solved.found, Found::Any);
        return format!(
            "{:#}",
            json!({ "input": solved.input.name, "found": places, "any": any })
        );
    }
    let range = format!(
        "looked for from {} to {}",
        print(solved.lowest),
        print(solved.highest)
    );
    let answer = in_words(solved, units);
    let note = note
        .map(|note| format!("\n{}", paint(note, quiet())))
        .unwrap_or_default();
    format!(
        "{}{note}\n{}",
        paint(answer, strong()),
        paint(range, quiet())
    )
}

/// What was found in the backward direction, as a sentence.
pub(crate) fn in_words(solved: &Solved, units: UnitSystem) -> String {
    let print = |number: f64| print_kind(solved.kind, number, units);
    match &solved.found {
        Found::None {
            refused: Some(refusal),
            ..
        } => format!("No {} gives that: {refusal}", solved.input.name),
        Found::None {
            closest: Some(closest),
            ..
        } => format!(
            "No {} gives that. Nearest: {} = {}",
            solved.input.name,
            solved.input.name,
            print(closest.input)
        ),
        Found::None { .. } => format!("No {} gives that", solved.input.name),
        Found::Any => format!(
            "Any {} gives that: the result does not depend on it",
            solved.input.name
        ),
        Found::One(place) => format!(
            "{} = {}",
            solved.input.name,
            shown(*place, solved.kind, units)
        ),
        Found::Several(places) => {
            let all: Vec<String> = places
                .iter()
                .map(|place| shown(*place, solved.kind, units))
                .collect();
            format!(
                "{} values of {} give that: {}",
                all.len(),
                solved.input.name,
                all.join("; ")
            )
        }
    }
}

/// Every value that was found, for machines.
pub(crate) fn places(found: &Found, kind: Kind, units: UnitSystem) -> Vec<serde_json::Value> {
    let places = match found {
        Found::One(place) => std::slice::from_ref(place),
        Found::Several(places) => places,
        Found::None { .. } | Found::Any => &[],
    };
    let each = places.iter();
    each.map(|place| place_to_json(*place, kind, units))
        .collect()
}

fn shown(place: Place, kind: Kind, units: UnitSystem) -> String {
    match place {
        Place::At(number) => print_kind(kind, number, units),
        Place::Between { from, to } => format!(
            "{} to {}",
            print_kind(kind, from, units),
            print_kind(kind, to, units)
        ),
    }
}

fn place_to_json(place: Place, kind: Kind, units: UnitSystem) -> serde_json::Value {
    match place {
        Place::At(number) => json!({ "text": shown(place, kind, units), "si": number }),
        Place::Between { from, to } => {
            json!({ "text": shown(place, kind, units), "si_from": from, "si_to": to })
        }
    }
}

/// Every calculation by discipline.
fn list(as_json: bool) -> String {
    if as_json {
        let names: Vec<_> = registry()
            .iter()
            .map(|calculation| json!({ "name": calculation.sheet.name, "discipline": calculation.sheet.discipline.word(), "prose": calculation.sheet.prose.trim() }))
            .collect();
        return format!("{:#}", json!(names));
    }
    let mut lines = Vec::new();
    for discipline in Discipline::ALL {
        lines.push(paint(discipline.word(), strong()));
        let rows: Vec<_> = registry()
            .iter()
            .map(|calculation| calculation.sheet)
            .filter(|sheet| sheet.discipline == *discipline)
            .map(|sheet| [sheet.name.to_owned(), sheet.title()])
            .collect();
        lines.extend(columns(&rows, 2, width(), Some(touchable())));
        lines.push(String::new());
    }
    lines.push(paint(
        "What one takes: gatewright calc NAME. Work it: gatewright calc NAME input=\"value\" …",
        quiet(),
    ));
    lines.join("\n")
}

/// What a calculation takes and gives.
fn sheet(calculation: &Calculation) -> String {
    let sheet = calculation.sheet;
    let mut lines = vec![
        paint(sheet.name, touchable()),
        wrapped(&sheet.paragraphs().join("\n\n"), 0, width()),
        String::new(),
        paint(sheet.formula, strong()),
        String::new(),
    ];
    let written = example_inputs(calculation);
    let examples: Vec<String> = sheet
        .inputs
        .iter()
        .map(|input| written.get(input.name).cloned().unwrap_or_default())
        .collect();
    let none = vec![String::new(); sheet.outputs.len()];
    lines.extend(takes_and_gives(calculation, &examples, &none));
    lines.push(String::new());
    lines.push(wrapped(
        &format!("Holds for: {}", sheet.validity),
        0,
        width(),
    ));
    lines.push(wrapped(&source(calculation), 0, width()));
    if let Some(line) = example_line(calculation) {
        lines.extend([String::new(), paint(line, touchable())]);
    }
    lines.join("\n")
}
