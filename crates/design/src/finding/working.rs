//! The working under a finding, put into text.

use super::Reading;
use super::make::reading;
use crate::asking::{Asking, Fact, Record, Step};
use crate::figure::{Figure, Print};
use formula::{Sheet, Source, Symbol};
use quantity::{Sort, Value, Word as _};
use serde::Serialize;
use site::LookedUp;

/// A work that an answer rests on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SourceNote {
    /// The work with its edition.
    pub work: String,
    /// Clause, equation or table; empty where it has none.
    pub clause: String,
    /// How it is known: seen, physics, memory, common practice, looked up for this site.
    pub evidence: String,
    /// Where it was seen, or what was recomputed.
    pub seen: String,
}

/// How a work is known that somebody looked up for this site.
const LOOKED_UP: &str = "looked up";

impl SourceNote {
    /// The work with its clause, as people name it.
    pub fn name(&self) -> String {
        format!("{} {}", self.work, self.clause)
            .trim_end()
            .to_owned()
    }

    /// Known from memory here, and looked up for this site.
    pub fn is_looked_up(&self) -> bool {
        self.evidence == LOOKED_UP
    }

    /// A source, with what somebody found in it for this site.
    pub(crate) fn of(source: &Source, looked_up: Option<&LookedUp>) -> Self {
        let (evidence, seen) = match looked_up {
            Some(found) => (
                LOOKED_UP,
                format!(
                    "edition {}, by {} on {}: {}",
                    found.edition, found.by, found.on, found.says
                ),
            ),
            None => (source.evidence.word(), source.seen.to_owned()),
        };
        Self {
            work: source.work.to_owned(),
            clause: source.clause.to_owned(),
            evidence: evidence.to_owned(),
            seen,
        }
    }
}

/// One line of a step: a symbol with its value.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Line {
    /// Its letter in the literature: `I`; `–` where it has none.
    pub letter: String,
    /// Its name in the calculation: `load_current`.
    pub name: String,
    /// What it means.
    pub meaning: String,
    /// Its value.
    pub value: Figure,
    /// Where the value comes from: a path of the site file, an earlier step; empty for what this step gives.
    pub from: String,
    /// How the value is known, for one of the site file: stated, measured, data sheet, assumed; else empty.
    pub known: String,
    /// The value as written on the site, tolerance included; empty for one that is not of the site file.
    pub written: String,
}

/// One step of the working.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Working {
    /// What the step is, in words.
    pub title: String,
    /// Name of the calculation: `voltage-drop`; empty for a line in words.
    pub calculation: String,
    /// The formula as the literature prints it; empty for a line in words.
    pub formula: String,
    /// What goes in.
    pub given: Vec<Line>,
    /// What comes out.
    pub gives: Vec<Line>,
    /// Where the formula comes from; nothing for a line in words.
    pub source: Option<SourceNote>,
}

/// The steps of a record as text.
pub(super) fn working(asking: &Asking<'_>, record: &Record) -> Vec<Working> {
    let mut told = Vec::with_capacity(record.steps.len());
    for (at, step) in record.steps.iter().enumerate() {
        told.push(match step {
            Step::Line(line) => in_words(line),
            Step::Calculation {
                sheet,
                inputs,
                outputs,
            } => {
                let earlier = &record.steps[..at];
                Working {
                    title: sheet.title(),
                    calculation: sheet.name.to_owned(),
                    formula: sheet.formula.to_owned(),
                    given: given(asking, sheet, inputs, earlier),
                    gives: gives(asking.print(), sheet, outputs),
                    source: Some(SourceNote::of(
                        &sheet.source,
                        asking.looked_up(&sheet.source),
                    )),
                }
            }
        });
    }
    told
}

/// A line in words.
pub(super) fn in_words(line: &str) -> Working {
    Working {
        title: line.to_owned(),
        calculation: String::new(),
        formula: String::new(),
        given: Vec::new(),
        gives: Vec::new(),
        source: None,
    }
}

fn given(asking: &Asking<'_>, sheet: &Sheet, inputs: &[Value], earlier: &[Step]) -> Vec<Line> {
    let mut lines = Vec::with_capacity(inputs.len());
    for (symbol, value) in sheet.inputs.iter().zip(inputs) {
        let mut line = line(asking.print(), symbol, value);
        if let Some(fact) = fact_behind(&asking.facts, symbol, value) {
            let Reading {
                path, known, text, ..
            } = reading(fact, asking.print());
            (line.from, line.known, line.written) = (path, known, text);
        } else if let Some(pick) = asking.picks.iter().find(|pick| pick.value == *value) {
            line.from = pick.origin.path_of(pick.key);
        } else if let Some(step) = step_behind(earlier, value) {
            line.from = format!("step {step}");
        }
        lines.push(line);
    }
    lines
}

fn gives(print: Print, sheet: &Sheet, outputs: &[Value]) -> Vec<Line> {
    sheet
        .outputs
        .iter()
        .zip(outputs)
        .map(|(symbol, value)| line(print, symbol, value))
        .collect()
}

fn line(print: Print, symbol: &Symbol, value: &Value) -> Line {
    let meaning = symbol.meaning.trim();
    Line {
        letter: symbol.letter.to_owned(),
        name: symbol.name.to_owned(),
        meaning: meaning.to_owned(),
        value: Figure::new(symbol.name.replace('_', " "), value, print),
        from: String::new(),
        known: String::new(),
        written: String::new(),
    }
}

/// The fact of the site that an input is: the one of that value, and, where several are, the one of that name.
fn fact_behind<'a, 's>(
    facts: &'a [Fact<'s>],
    symbol: &Symbol,
    value: &Value,
) -> Option<&'a Fact<'s>> {
    let Value::Quantity(kind, number) = value else {
        return None;
    };
    if tells_nothing(*number) {
        return None;
    }
    let same = |fact: &&Fact<'_>| {
        fact.sort == Sort::Quantity(*kind) && fact.nominal.to_bits() == number.to_bits()
    };
    let mut found = facts.iter().filter(same);
    let first = found.next()?;
    let more: Vec<_> = found.collect();
    if more.is_empty() {
        return Some(first);
    }
    std::iter::once(first)
        .chain(more)
        .find(|fact| fact.key == symbol.name)
}

/// Zero and one stand in many places for many reasons, so they do not tell where they come from.
fn tells_nothing(number: f64) -> bool {
    number == 0.0 || (number - 1.0).abs() < f64::EPSILON
}

/// The number, counted from one, of the earlier step that gave a quantity.
fn step_behind(earlier: &[Step], value: &Value) -> Option<usize> {
    if !matches!(value, Value::Quantity(_, number) if !tells_nothing(*number)) {
        return None;
    }
    let gave = |step: &Step| match step {
        Step::Calculation { outputs, .. } => outputs.contains(value),
        Step::Line(_) => false,
    };
    earlier.iter().rposition(gave).map(|at| at + 1)
}
