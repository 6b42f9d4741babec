//! Reading `key=value` pairs as the inputs of a calculation.

use crate::registry::Calculation;
use crate::sheet::{Sheet, Symbol};
use quantity::{Kind, Sort, Value, read_kind, read_value};

/// What is wrong with one of the pairs, for the person who wrote it.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{name}: {what}")]
pub struct ArgumentProblem {
    /// The name at fault, or the whole text where it has none.
    pub name: String,
    /// What is so and what was expected.
    pub what: String,
    /// What to write instead, ready to paste, where that is known.
    pub write: Option<String>,
}

/// What a line of the calculator asks for.
#[derive(Debug, Clone, PartialEq)]
pub enum Asked {
    /// The outputs for these inputs, in the order of the sheet.
    Forward(Vec<Value>),
    /// The value of one input at which an output has a wanted value.
    Backward(Backward),
}

/// A question in the backward direction.
#[derive(Debug, Clone, PartialEq)]
pub struct Backward {
    /// The inputs in the order of the sheet; nothing at the place that is looked for.
    pub given: Vec<Option<Value>>,
    /// The place of the wanted output in the sheet.
    pub output: usize,
    /// The wanted value, in the coherent SI unit of the output.
    pub value: f64,
    /// How a wanted share was understood, when it was given for another output.
    pub note: Option<String>,
}

/// Splits `length=100 ft` at its first equals sign.
pub fn pair(text: &str) -> Result<(String, String), ArgumentProblem> {
    match text.split_once('=') {
        Some((name, value)) if !name.trim().is_empty() => {
            Ok((name.trim().to_owned(), value.trim().to_owned()))
        }
        _ => Err(ArgumentProblem {
            name: text.to_owned(),
            what: "this is not `name=value`; write it like `length=\"100 ft\"`".to_owned(),
            write: None,
        }),
    }
}

/// Reads all pairs of a line: every input, or every input but the one written `?` with one wanted output.
///
/// A share such as `10 %` may be wanted of an output that is itself no ratio, if the sheet has that output's share:
/// `drop="10 %"` asks for `share` (ΔU/U), a tenth of the source voltage. Which output is the share of which is told by
/// the letters: the share of ΔU has a letter that begins with `ΔU/`.
pub fn read(
    calculation: &Calculation,
    pairs: &[(String, String)],
) -> Result<Asked, Vec<ArgumentProblem>> {
    let sheet = calculation.sheet;
    let mut problems = doubled(pairs);
    let unknown: Vec<usize> = sheet
        .inputs
        .iter()
        .enumerate()
        .filter(|(_, input)| text_of(pairs, input.name) == Some("?"))
        .map(|(place, _)| place)
        .collect();
    let outputs: Vec<&Symbol> = sheet
        .outputs
        .iter()
        .filter(|output| !is_input(sheet, output.name) && text_of(pairs, output.name).is_some())
        .collect();
    problems.extend(
        pairs
            .iter()
            .filter(|(name, _)| symbol(sheet, name).is_none())
            .map(|(name, _)| unknown_name(sheet, name)),
    );
    let given = inputs(sheet, pairs, &mut problems);
    let wanted = direction(sheet, &unknown, &outputs, &mut problems)
        .and_then(|output| wanted(sheet, output, pairs, &mut problems));
    if !problems.is_empty() {
        return Err(problems);
    }
    match wanted {
        Some((output, value, note)) => Ok(Asked::Backward(Backward {
            given,
            output,
            value,
            note,
        })),
        None => Ok(Asked::Forward(given.into_iter().flatten().collect())),
    }
}

/// The names that are given more than once.
fn doubled(pairs: &[(String, String)]) -> Vec<ArgumentProblem> {
    let repeated = |place: usize, name: &str| pairs[..place].iter().any(|(other, _)| other == name);
    pairs
        .iter()
        .enumerate()
        .filter(|(place, (name, _))| repeated(*place, name))
        .map(|(_, (name, _))| ArgumentProblem {
            name: name.clone(),
            what: "this is given more than once; give it once".to_owned(),
            write: None,
        })
        .collect()
}

fn text_of<'p>(pairs: &'p [(String, String)], name: &str) -> Option<&'p str> {
    pairs
        .iter()
        .find(|(other, _)| other == name)
        .map(|(_, text)| text.as_str())
}

fn is_input(sheet: &Sheet, name: &str) -> bool {
    sheet.inputs.iter().any(|input| input.name == name)
}

fn symbol<'s>(sheet: &'s Sheet, name: &str) -> Option<&'s Symbol> {
    sheet
        .inputs
        .iter()
        .chain(sheet.outputs)
        .find(|symbol| symbol.name == name)
}

/// The values of the inputs in the order of the sheet, nothing where one is looked for; what is missing or cannot be
/// read is added to the problems.
fn inputs(
    sheet: &Sheet,
    pairs: &[(String, String)],
    problems: &mut Vec<ArgumentProblem>,
) -> Vec<Option<Value>> {
    let mut values = Vec::with_capacity(sheet.inputs.len());
    for input in sheet.inputs {
        let value = match text_of(pairs, input.name) {
            Some("?") => None,
            Some(text) => read_value(input.sort, text)
                .map_err(|error| {
                    problems.push(ArgumentProblem {
                        name: input.name.to_owned(),
                        what: error.what,
                        write: error.write,
                    });
                })
                .ok(),
            None => {
                problems.push(missing(input));
                None
            }
        };
        values.push(value);
    }
    values
}

fn missing(input: &Symbol) -> ArgumentProblem {
    ArgumentProblem {
        name: input.name.to_owned(),
        what: format!("this input is missing: {}", input.meaning),
        write: Some(format!("{}=\"{}\"", input.name, example(input.sort))),
    }
}

/// An example of how a value of a sort is written.
pub fn example(sort: Sort) -> String {
    match sort {
        Sort::Quantity(kind) => kind.example().to_owned(),
        Sort::Count => "3".to_owned(),
        Sort::Conductor => "18 AWG".to_owned(),
        Sort::Words(words) => words.first().copied().unwrap_or_default().to_owned(),
    }
}

fn unknown_name(sheet: &Sheet, name: &str) -> ArgumentProblem {
    let names = || {
        sheet
            .inputs
            .iter()
            .chain(sheet.outputs)
            .map(|symbol| symbol.name)
    };
    let inputs: Vec<&str> = sheet.inputs.iter().map(|input| input.name).collect();
    ArgumentProblem {
        name: name.to_owned(),
        what: format!(
            "`{}` has no input of this name; it takes {}",
            sheet.name,
            inputs.join(", ")
        ),
        write: nearest(name, names()).map(str::to_owned),
    }
}

/// The candidate nearest to a word in spelling, if it is near enough to be meant.
pub fn nearest<'w>(word: &str, candidates: impl IntoIterator<Item = &'w str>) -> Option<&'w str> {
    let allowed = word.chars().count().div_ceil(3);
    candidates
        .into_iter()
        .map(|candidate| (strsim::damerau_levenshtein(word, candidate), candidate))
        .filter(|(distance, _)| *distance <= allowed)
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, candidate)| candidate)
}

/// The wanted output, if the line is a question backward; a line that is half of one is a problem.
fn direction<'s>(
    sheet: &Sheet,
    unknown: &[usize],
    outputs: &[&'s Symbol],
    problems: &mut Vec<ArgumentProblem>,
) -> Option<&'s Symbol> {
    let name = |place: &usize| sheet.inputs[*place].name;
    let mut refuse = |name: &str, what: String| {
        problems.push(ArgumentProblem {
            name: name.to_owned(),
            what,
            write: None,
        });
    };
    match (unknown, outputs) {
        ([_], [output]) => return Some(output),
        ([], []) => {}
        ([], [output, ..]) => refuse(
            output.name,
            "this is an output; to look for the input that gives it, write `?` for one input, such as `length=?`"
                .to_owned(),
        ),
        ([place], []) => refuse(
            name(place),
            format!(
                "to look for this input, say what is wanted of one output: {}",
                sheet.outputs.iter().map(|output| output.name).collect::<Vec<_>>().join(", ")
            ),
        ),
        ([_, second, ..], _) => refuse(
            name(second),
            "only one input can be looked for at a time; give a value here".to_owned(),
        ),
        ([_], [_, second, ..]) => refuse(
            second.name,
            "only one output can be wanted at a time; leave this one out".to_owned(),
        ),
    }
    None
}

/// The place, the value and the reading of a wanted output.
fn wanted(
    sheet: &Sheet,
    output: &Symbol,
    pairs: &[(String, String)],
    problems: &mut Vec<ArgumentProblem>,
) -> Option<(usize, f64, Option<String>)> {
    let text = text_of(pairs, output.name)?;
    let place_of = |name: &str| sheet.outputs.iter().position(|other| other.name == name);
    let mut refuse = |what: String, write: Option<String>| {
        problems.push(ArgumentProblem {
            name: output.name.to_owned(),
            what,
            write,
        });
        None
    };
    let Sort::Quantity(kind) = output.sort else {
        return refuse(
            "this output is not a quantity; only a quantity can be looked for".to_owned(),
            None,
        );
    };
    match read_kind(kind, text) {
        Ok(value) => Some((place_of(output.name)?, value, None)),
        Err(error) => match (read_kind(Kind::Ratio, text), share_of(sheet, output)) {
            (Ok(value), Some(share)) if text.contains('%') => {
                let note = format!(
                    "{text} for `{}` is read as `{}` ({}): {}",
                    output.name,
                    share.name,
                    share.letter,
                    share.meaning.to_lowercase()
                );
                Some((place_of(share.name)?, value, Some(note)))
            }
            _ => refuse(error.what, error.write),
        },
    }
}

/// The output that is the share of another one: its letter begins with that one's letter and a stroke.
fn share_of<'s>(sheet: &'s Sheet, output: &Symbol) -> Option<&'s Symbol> {
    sheet.outputs.iter().find(|other| {
        other.sort == Sort::Quantity(Kind::Ratio)
            && other
                .letter
                .strip_prefix(output.letter)
                .is_some_and(|rest| rest.starts_with('/'))
    })
}
