//! Quantities and numbers as values of keys.

use crate::Signed;
use crate::changed::Changed;
use crate::problem::Code;
use crate::reader::{Node, Reader};
use crate::record::Field;
use crate::schema::Definitions;
use crate::stated::Statement;
use quantity::{ConductorSize, Kind, Known, Measured, Quantity, ReadError};
use serde_json::{Value, json};
use toml::de::DeValue;

impl<Q: Quantity> Field for Measured<Q> {
    fn read(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Self> {
        let measured = read_signed::<Q>(reader, node)?;
        if may_be_negative(Q::KIND) {
            return Some(measured);
        }
        if measured.nominal().base() < 0.0 {
            let problem = reader
                .problem(
                    node,
                    Code::BelowZero,
                    format!("{} cannot be below zero", node.key_in_words()),
                )
                .expected(format!("{} of zero or more", Q::KIND.with_article()));
            reader.report(problem);
            return None;
        }
        if measured.low().base() < 0.0 {
            let problem = reader
                .problem(
                    node,
                    Code::ToleranceBelowZero,
                    format!(
                        "the tolerance of {} reaches below zero",
                        node.key_in_words()
                    ),
                )
                .expected("a tolerance that is smaller than the value");
            reader.report(problem);
            return None;
        }
        Some(measured)
    }

    fn state(&self, key: &str, statement: &mut Statement) {
        let text = quantity::print_measured(self, statement.units());
        statement.add(key, text, self.known());
    }

    fn is_same_but_for(&self, later: &Self, changed: &mut Changed) -> bool {
        changed.put(self, later);
        true
    }

    fn schema(definitions: &mut Definitions) -> Value {
        definitions.quantity(Q::KIND)
    }
}

impl<Q: Quantity> Field for Signed<Q> {
    fn read(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Self> {
        read_signed(reader, node).map(Self::new)
    }

    fn state(&self, key: &str, statement: &mut Statement) {
        (**self).state(key, statement);
    }

    fn is_same_but_for(&self, later: &Self, changed: &mut Changed) -> bool {
        (**self).is_same_but_for(later, changed)
    }

    fn schema(definitions: &mut Definitions) -> Value {
        definitions.quantity(Q::KIND)
    }
}

/// Kinds of which a plain value may be negative: scales and directions.
fn may_be_negative(kind: Kind) -> bool {
    matches!(
        kind,
        Kind::Temperature | Kind::TemperatureDifference | Kind::Angle
    )
}

/// Reads a quantity of either sign.
pub(crate) fn read_signed<Q: Quantity>(
    reader: &mut Reader<'_>,
    node: &Node<'_>,
) -> Option<Measured<Q>> {
    let Some(text) = node.text() else {
        refuse_other_than_text(reader, node, Q::KIND);
        return None;
    };
    match quantity::read_measured::<Q>(text) {
        Ok(measured) => Some(from_data_sheet(measured, node)),
        Err(error) => {
            refuse(reader, node, &error, in_quotes(Q::KIND));
            None
        }
    }
}

/// What a quantity looks like in the file.
fn in_quotes(kind: Kind) -> String {
    format!(
        "{} in quotes, such as `\"{}\"`",
        kind.with_article(),
        kind.example()
    )
}

/// Reports a quantity without quotes: a bare number above all.
fn refuse_other_than_text(reader: &mut Reader<'_>, node: &Node<'_>, kind: Kind) {
    let Some(number) = bare_number(node.value.get_ref()) else {
        reader.refuse_type(node, &in_quotes(kind), &format!("\"{}\"", kind.example()));
        return;
    };
    let what = format!(
        "{} is a bare number: nobody can tell the unit",
        node.key_in_words()
    );
    let problem = reader
        .problem(node, Code::NumberWithoutUnit, what)
        .expected(in_quotes(kind))
        .write(with_units(node, kind, &number));
    reader.report(problem);
}

/// A value of a parts entry comes from a data sheet, unless it says otherwise.
fn from_data_sheet<Q: Quantity>(measured: Measured<Q>, node: &Node<'_>) -> Measured<Q> {
    if node.from_part && measured.known() == Known::Stated {
        Measured::new(measured.nominal(), measured.tolerance(), Known::DataSheet)
    } else {
        measured
    }
}

/// Reports what the reader of quantities found, with its place inside the quotes.
fn refuse(reader: &mut Reader<'_>, node: &Node<'_>, error: &ReadError, expected: String) {
    let what = format!("{}: {}", node.key_in_words(), error.what);
    let mut problem = reader
        .problem_inside(node, &error.place, Code::UnreadableQuantity, what)
        .expected(expected);
    if let Some(write) = &error.write {
        problem = problem.write(line(node, write));
    }
    reader.report(problem);
}

/// The line to write, when the value stands alone behind its key.
fn line(node: &Node<'_>, text: &str) -> String {
    if node.in_list {
        format!("\"{text}\"")
    } else {
        format!("{} = \"{text}\"", node.key)
    }
}

/// The number with each of the first two units of its kind, one for each system: nobody can tell which is meant.
fn with_units(node: &Node<'_>, kind: Kind, number: &str) -> String {
    let texts = quantity::units_of(kind)
        .iter()
        .take(2)
        .map(|unit| format!("{number} {}", unit.symbol()));
    let lines: Vec<String> = texts.map(|text| line(node, text.trim_end())).collect();
    lines.join("   or   ")
}

/// A number as it was written, if the value is one.
fn bare_number(value: &DeValue<'_>) -> Option<String> {
    match value {
        DeValue::Integer(integer) => Some(integer.to_string()),
        DeValue::Float(float) => Some(float.to_string()),
        _ => None,
    }
}

impl Field for ConductorSize {
    fn read(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Self> {
        let expected = "a conductor size in quotes, such as `\"18 AWG\"` or `\"1.5 mm²\"`";
        let Some(text) = node.text() else {
            reader.refuse_type(node, expected, "\"18 AWG\"");
            return None;
        };
        match quantity::read_conductor(text) {
            Ok(size) => Some(size),
            Err(error) => {
                refuse(reader, node, &error, expected.to_owned());
                None
            }
        }
    }

    fn state(&self, key: &str, statement: &mut Statement) {
        statement.add(key, self, Known::Stated);
    }

    fn is_same_but_for(&self, later: &Self, _: &mut crate::Changed) -> bool {
        self == later
    }

    fn schema(definitions: &mut Definitions) -> Value {
        definitions.shared("ConductorSize", || {
            json!({
                "description": "A conductor size: a gauge number or a cross-section.",
                "type": "string",
                "pattern": "[0-9]",
                "examples": ["18 AWG", "1.5 mm²"],
            })
        })
    }
}

impl Field for u32 {
    fn read(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Self> {
        let count = node
            .value
            .get_ref()
            .as_integer()
            .and_then(|i| u32::from_str_radix(i.as_str(), i.radix()).ok());
        if count.is_none() {
            let problem = reader
                .problem(
                    node,
                    Code::NotACount,
                    format!("{} is not a whole number", node.key_in_words()),
                )
                .expected("a whole number without quotes, zero or more")
                .write(format!("{} = 2", node.key));
            reader.report(problem);
        }
        count
    }

    fn state(&self, key: &str, statement: &mut Statement) {
        statement.add(key, self, Known::Stated);
    }

    fn is_same_but_for(&self, later: &Self, _: &mut crate::Changed) -> bool {
        self == later
    }

    fn schema(_: &mut Definitions) -> Value {
        json!({ "type": "integer", "minimum": 0, "maximum": u32::MAX })
    }
}

impl Field for bool {
    fn read(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Self> {
        let answer = node.value.get_ref().as_bool();
        if answer.is_none() {
            let problem = reader
                .problem(
                    node,
                    Code::NotYesOrNo,
                    format!("{} is neither true nor false", node.key_in_words()),
                )
                .expected("`true` or `false`, without quotes")
                .write(format!("{} = true", node.key));
            reader.report(problem);
        }
        answer
    }

    fn state(&self, key: &str, statement: &mut Statement) {
        statement.add(key, if *self { "yes" } else { "no" }, Known::Stated);
    }

    fn is_same_but_for(&self, later: &Self, _: &mut crate::Changed) -> bool {
        self == later
    }

    fn schema(_: &mut Definitions) -> Value {
        json!({ "type": "boolean" })
    }
}
