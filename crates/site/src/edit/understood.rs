//! How a value would be understood, without writing it.

use super::walk::{Goal, Place, walk};
use super::{source_of_text, splice, value};
use crate::overlay::Parts;
use crate::problem::{Code, Problem};
use crate::reader::{Node, Reader};
use crate::record::Key;
use crate::source::{Source, SourceFile};
use crate::stated::Statement;
use crate::syntax;
use quantity::{UnitSystem, Word as _};
use serde::Serialize;
use std::collections::BTreeSet;
use toml::de::DeTable;

/// How a value is understood.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Understood {
    /// The value as it stands, or would stand, in the file: `"640 lb ± 5 %"`.
    pub written: String,
    /// The value as it is printed, with its tolerance and how it is known: `640 lb ± 5 %, measured`.
    pub text: String,
    /// How it is known: stated, measured, data sheet, assumed.
    pub known: String,
}

/// How a value at a path would be understood: what is refused by [`set_value`](super::set_value) for its own sake is refused
/// here in the same words.
pub fn understood(
    text: &str,
    path: &str,
    value: &str,
    units: UnitSystem,
) -> Result<Understood, Box<Problem>> {
    let (tree, errors) = DeTable::parse_recoverable(text);
    if let Some(error) = errors.first() {
        return Err(Box::new(syntax::problem(&source_of_text(text), error)));
    }
    let Goal { key, place } = walk(tree.get_ref(), text, path)?;
    let (one, whole) = match place {
        Place::Whole(_) | Place::Missing(_) => {
            let one = value::readable(key, value, str::to_owned)?;
            (one.clone(), one)
        }
        Place::OneOf { list, one } => {
            let inside = one.start - list.start..one.end - list.start;
            let list = text.get(list).unwrap_or_default();
            let one = value::readable(key, value, |one| splice(list, inside.clone(), one))?;
            let whole = splice(list, inside, &one);
            (one, whole)
        }
    };
    of(key, &one, &whole, units).ok_or_else(|| {
        let what = format!("this cannot be a value of `{}`", key.name);
        Box::new(Problem::wrong(
            &source_of_text(&whole),
            &(0..whole.len()),
            Code::NotToml,
            what,
        ))
    })
}

/// How a value that reads is understood, in the whole value of its key.
pub(super) fn of(
    key: &'static Key,
    value: &str,
    whole: &str,
    units: UnitSystem,
) -> Option<Understood> {
    let (text, known) = stated(key, whole, units)?;
    Some(Understood {
        written: value.to_owned(),
        text,
        known,
    })
}

/// A value as it is printed, and how it is known; nothing where it does not read.
pub(crate) fn stated(
    key: &'static Key,
    value: &str,
    units: UnitSystem,
) -> Option<(String, String)> {
    let name = key.name;
    let sources = [Source::new(SourceFile {
        name: "new value".to_owned(),
        text: format!("{name} = {value}\n"),
    })];
    let (tree, _) = DeTable::parse_recoverable(&sources[0].text);
    let (parts, spoiled) = (Parts::new(), BTreeSet::new());
    let mut reader = Reader::new(&sources, &parts, &spoiled);
    let mut statement = Statement::new(units);
    let node = Node::top(0, tree.get_ref().get(name)?, name, false);
    (key.state)(&mut reader, &node, &mut statement);
    let keys = statement.keys();
    let known = keys.first()?.known.word().to_owned();
    let texts: Vec<&str> = keys.iter().map(|one| one.text.as_str()).collect();
    Some((texts.join("; "), known))
}
