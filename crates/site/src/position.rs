//! Positions on the site.

use crate::changed::Changed;
use crate::problem::Code;
use crate::reader::{Node, Reader};
use crate::record::Field;
use crate::schema::Definitions;
use crate::stated::Statement;
use crate::value::read_signed;
use quantity::{Length, Measured};
use toml::de::DeValue;

/// A point of the site: x along the closed leaf from the latching side, y into the property, z up from the finished
/// surface at the gate line. Each may be negative and has its own tolerance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Position {
    /// Along the closed leaf, from the latching side (0) to the far side of the opening.
    pub x: Measured<Length>,
    /// Into the property.
    pub y: Measured<Length>,
    /// Up from the finished surface at the gate line.
    pub z: Measured<Length>,
}

impl Field for Position {
    fn read(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Self> {
        if let DeValue::Array(array) = node.value.get_ref()
            && let [x, y, z] = &array[..]
        {
            let [x, y, z] = [x, y, z].map(|value| {
                read_signed(
                    reader,
                    &Node {
                        value,
                        in_list: true,
                        ..node.clone()
                    },
                )
            });
            return Some(Self {
                x: x?,
                y: y?,
                z: z?,
            });
        }
        let problem = reader
            .problem(
                node,
                Code::NotAPosition,
                format!("{} is not a position", node.key_in_words()),
            )
            .expected("three lengths in brackets: along the gate, into the property, up")
            .write(format!("{} = [\"-2 ft\", \"3 ft\", \"21 in\"]", node.key));
        reader.report(problem);
        None
    }

    fn state(&self, key: &str, statement: &mut Statement) {
        let units = statement.units();
        let [x, y, z] = [&self.x, &self.y, &self.z].map(|at| quantity::print_measured(at, units));
        statement.add(key, format_args!("{x}; {y}; {z}"), self.x.known());
    }

    fn is_same_but_for(&self, later: &Self, changed: &mut Changed) -> bool {
        changed.put(&self.x, &later.x);
        changed.put(&self.y, &later.y);
        changed.put(&self.z, &later.z);
        true
    }

    fn schema(definitions: &mut Definitions) -> serde_json::Value {
        let length = definitions.quantity(quantity::Kind::Length);
        definitions.shared("Position", || {
            serde_json::json!({
                "description": "Along the closed leaf from the latching side, into the property, up from the finished surface.",
                "type": "array",
                "items": length,
                "minItems": 3,
                "maxItems": 3,
                "examples": [["-2 ft", "3 ft", "21 in"]],
            })
        })
    }
}
