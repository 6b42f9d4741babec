//! Values that may be missing, lists of values, and records as values.

use crate::changed::Changed;
use crate::overlay::Layers;
use crate::problem::Code;
use crate::reader::{Node, Reader};
use crate::record::{Field, Key, Record};
use crate::schema::Definitions;
use crate::stated::Statement;
use serde_json::{Value, json};
use toml::de::DeValue;

impl<T: Field> Field for Option<T> {
    const REQUIRED: bool = false;

    fn read<'t>(reader: &mut Reader<'t>, node: &Node<'t>) -> Option<Self> {
        Some(T::read(reader, node))
    }

    fn absent() -> Option<Self> {
        Some(None)
    }

    fn state(&self, key: &str, statement: &mut Statement) {
        if let Some(value) = self {
            value.state(key, statement);
        }
    }

    fn is_same_but_for(&self, later: &Self, changed: &mut Changed) -> bool {
        match (self, later) {
            (Some(was), Some(is)) => was.is_same_but_for(is, changed),
            (was, is) => was.is_none() && is.is_none(),
        }
    }

    fn schema(definitions: &mut Definitions) -> Value {
        T::schema(definitions)
    }

    fn keys() -> Option<&'static [Key]> {
        T::keys()
    }
}

impl<T: Field> Field for Vec<T> {
    const REQUIRED: bool = false;

    fn read<'t>(reader: &mut Reader<'t>, node: &Node<'t>) -> Option<Self> {
        let DeValue::Array(array) = node.value.get_ref() else {
            let is_record = T::keys().is_some();
            let expected = if is_record {
                "a table for each, with double brackets"
            } else {
                "a list in brackets"
            };
            let write = if is_record {
                format!("[[{}]]", node.header())
            } else {
                format!("{} = [\"…\"]", node.key)
            };
            let problem = reader
                .problem(
                    node,
                    Code::NotAList,
                    format!("{} is not a list", node.key_in_words()),
                )
                .expected(expected)
                .write(write);
            reader.report(problem);
            return Some(Vec::new());
        };
        let read = |(index, value)| {
            T::read(
                reader,
                &Node {
                    value,
                    in_list: true,
                    index: Some(index),
                    ..node.clone()
                },
            )
        };
        Some(array.iter().enumerate().filter_map(read).collect())
    }

    fn absent() -> Option<Self> {
        Some(Vec::new())
    }

    fn state(&self, key: &str, statement: &mut Statement) {
        statement.add_list(key, self);
    }

    fn is_same_but_for(&self, later: &Self, changed: &mut Changed) -> bool {
        let mut pairs = self.iter().zip(later);
        self.len() == later.len() && pairs.all(|(was, is)| was.is_same_but_for(is, changed))
    }

    fn schema(definitions: &mut Definitions) -> Value {
        json!({ "type": "array", "items": T::schema(definitions) })
    }

    fn keys() -> Option<&'static [Key]> {
        T::keys()
    }
}

impl<T: Record> Field for T {
    fn read<'t>(reader: &mut Reader<'t>, node: &Node<'t>) -> Option<Self> {
        let DeValue::Table(table) = node.value.get_ref() else {
            let header = node.header();
            let brackets = if node.in_list {
                format!("[[{header}]]")
            } else {
                format!("[{header}]")
            };
            let what = match node.value.get_ref() {
                DeValue::Array(_) => {
                    format!("{} is a list; there is only one of it", node.key_in_words())
                }
                _ => format!("{} is not a table", node.key_in_words()),
            };
            let problem = reader
                .problem(node, Code::NotATable, what)
                .expected("a table with keys below its header")
                .write(brackets);
            reader.report(problem);
            return None;
        };
        let layers = Layers::new(reader, node, table, T::KEYS);
        T::read_record(reader, &layers)
    }

    fn state(&self, key: &str, statement: &mut Statement) {
        self.state_record(key, statement);
    }

    fn is_same_but_for(&self, later: &Self, changed: &mut Changed) -> bool {
        self.stands_but_for(later, changed)
    }

    fn schema(definitions: &mut Definitions) -> Value {
        definitions.record(T::NAME, T::DOC, T::KEYS)
    }

    fn keys() -> Option<&'static [Key]> {
        Some(T::KEYS)
    }
}
