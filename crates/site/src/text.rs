//! Text that is not empty.

use crate::problem::Code;
use crate::reader::{Node, Reader};
use crate::record::Field;
use crate::schema::Definitions;
use crate::stated::Statement;
use quantity::Known;

/// Text with at least one character that is not a space.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Text(String);

impl Text {
    /// The text, unless it is empty.
    pub fn new(text: &str) -> Option<Self> {
        if text.trim().is_empty() {
            None
        } else {
            Some(Self(text.to_owned()))
        }
    }

    /// The characters.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl AsRef<str> for Text {
    fn as_ref(&self) -> &str {
        &self.0
    }
}

impl PartialEq<str> for Text {
    fn eq(&self, other: &str) -> bool {
        self.0 == other
    }
}

impl PartialEq<&str> for Text {
    fn eq(&self, other: &&str) -> bool {
        self.0 == *other
    }
}

impl std::fmt::Display for Text {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.0)
    }
}

impl Field for Text {
    fn read(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Self> {
        let Some(text) = node.text() else {
            reader.refuse_type(node, "words in quotes", "\"some words\"");
            return None;
        };
        let read = Self::new(text);
        if read.is_none() {
            let problem = reader
                .problem(
                    node,
                    Code::EmptyText,
                    format!("{} is empty", node.key_in_words()),
                )
                .expected("words in quotes, or no such line at all");
            reader.report(problem);
        }
        read
    }

    fn state(&self, key: &str, statement: &mut Statement) {
        statement.add(key, self, Known::Stated);
    }

    fn is_same_but_for(&self, later: &Self, _: &mut crate::Changed) -> bool {
        self == later
    }

    fn schema(_: &mut Definitions) -> serde_json::Value {
        serde_json::json!({ "type": "string", "pattern": r"\S" })
    }
}
