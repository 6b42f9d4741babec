//! Names of things, by which other lines refer to them.

use crate::problem::Code;
use crate::reader::{Node, Reader};
use crate::record::Field;
use crate::schema::Definitions;
use crate::stated::Statement;
use quantity::Known;

/// A name that other lines refer to: small letters, digits and single hyphens, such as `reader-in`.
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Id(String);

impl Id {
    /// The name, if it is written as one.
    pub fn new(text: &str) -> Option<Self> {
        let word = |word: &str| {
            !word.is_empty()
                && word
                    .bytes()
                    .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit())
        };
        if text.split('-').all(word) {
            Some(Self(text.to_owned()))
        } else {
            None
        }
    }

    /// The characters.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// A name as like `text` as the rule allows.
fn proposal(text: &str) -> Option<String> {
    let lower = text.to_lowercase();
    let words: Vec<&str> = lower
        .split(|c: char| !c.is_ascii_lowercase() && !c.is_ascii_digit())
        .filter(|w| !w.is_empty())
        .collect();
    if words.is_empty() {
        None
    } else {
        Some(words.join("-"))
    }
}

impl AsRef<str> for Id {
    fn as_ref(&self) -> &str {
        &self.0
    }
}

impl PartialEq<str> for Id {
    fn eq(&self, other: &str) -> bool {
        self.0 == other
    }
}

impl PartialEq<&str> for Id {
    fn eq(&self, other: &&str) -> bool {
        self.0 == *other
    }
}

impl std::fmt::Display for Id {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.0)
    }
}

impl Field for Id {
    fn read(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Self> {
        let Some(text) = node.text() else {
            reader.refuse_type(node, "a name in quotes", "\"reader-in\"");
            return None;
        };
        if let Some(id) = Self::new(text) {
            reader.note_id(node, &id);
            return Some(id);
        }
        let mut problem = reader
            .problem(
                node,
                Code::BadName,
                format!("`{text}` cannot serve as a name"),
            )
            .expected("small letters, digits and single hyphens, such as `reader-in`");
        if let Some(proposal) = proposal(text) {
            problem = problem.write(format!("{} = \"{proposal}\"", node.key));
        }
        reader.report(problem);
        None
    }

    fn state(&self, key: &str, statement: &mut Statement) {
        statement.add(key, self, Known::Stated);
    }

    fn is_same_but_for(&self, later: &Self, _: &mut crate::Changed) -> bool {
        self == later
    }

    fn schema(definitions: &mut Definitions) -> serde_json::Value {
        definitions.shared("Id", || {
            serde_json::json!({
                "description": "A name: small letters, digits and single hyphens.",
                "type": "string",
                "pattern": "^[a-z0-9]+(-[a-z0-9]+)*$",
                "examples": ["reader-in"],
            })
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_kebab_case() {
        assert!(Id::new("reader-in").is_some());
        assert!(Id::new("w-01").is_some());
        for wrong in [
            "",
            "-",
            "a--b",
            "-a",
            "a-",
            "Reader",
            "reader_in",
            "reader in",
            "ø",
        ] {
            assert_eq!(Id::new(wrong), None, "{wrong}");
        }
    }

    #[test]
    fn a_wrong_name_has_a_proposal() {
        assert_eq!(proposal("Reader In"), Some("reader-in".to_owned()));
        assert_eq!(proposal("--"), None);
    }
}
