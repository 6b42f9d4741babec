//! Closed lists of words as values of keys.

use crate::nearest::{listed, nearest};
use crate::problem::Code;
use crate::reader::{Node, Reader};
use quantity::Word;

/// Declares an enumeration of words that a key can hold.
macro_rules! site_words {
    ($(#[doc = $doc:literal])* pub enum $name:ident {
        $($(#[doc = $variant_doc:literal])* $variant:ident = $word:literal,)*
    }) => {
        quantity::words! {
            $(#[doc = $doc])*
            pub enum $name { $($(#[doc = $variant_doc])* $variant = $word,)* }
        }

        impl $crate::record::Field for $name {
            fn read(reader: &mut $crate::reader::Reader<'_>, node: &$crate::reader::Node<'_>) -> Option<Self> {
                $crate::word::read_word(reader, node)
            }
            fn state(&self, key: &str, statement: &mut $crate::stated::Statement) {
                statement.add(key, self, quantity::Known::Stated);
            }
            fn is_same_but_for(&self, later: &Self, _: &mut crate::Changed) -> bool {
                self == later
            }
            fn schema(definitions: &mut $crate::schema::Definitions) -> serde_json::Value {
                definitions.words(
                    stringify!($name),
                    &[$($doc,)*],
                    &[$(($word, &[$($variant_doc,)*]),)*],
                )
            }
        }
    };
}

/// Reads a value that must be one of the words of `W`.
pub(crate) fn read_word<W: Word>(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<W> {
    let Some(text) = node.text() else {
        let first = W::WORDS.first().copied().unwrap_or_default();
        reader.refuse_type(
            node,
            &format!("one of {}", listed(W::WORDS)),
            &format!("\"{first}\""),
        );
        return None;
    };
    if let Some(word) = W::from_word(text) {
        return Some(word);
    }
    let near = nearest(text, W::WORDS);
    let what = format!("`{text}` is not a word for {}", node.key_in_words());
    let mut problem = reader
        .problem(node, Code::UnknownWord, what)
        .expected(format!("one of {}", listed(W::WORDS)));
    if let Some(near) = near {
        problem = problem.write(format!("{} = \"{near}\"", node.key));
    }
    reader.report(problem);
    None
}

impl crate::record::Field for quantity::UnitSystem {
    fn read(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Self> {
        read_word(reader, node)
    }
    fn state(&self, key: &str, statement: &mut crate::stated::Statement) {
        statement.add(key, self, quantity::Known::Stated);
    }
    fn is_same_but_for(&self, later: &Self, _: &mut crate::Changed) -> bool {
        self == later
    }
    fn schema(definitions: &mut crate::schema::Definitions) -> serde_json::Value {
        definitions.words(
            "UnitSystem",
            &["Which units a site is written and printed in."],
            &[
                ("us", &["Feet, inches, pounds, degrees Fahrenheit."]),
                ("si", &["Meters, kilograms, degrees Celsius."]),
            ],
        )
    }
}
