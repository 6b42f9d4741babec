//! A new value as it is written in the file, after it was read on trial.

use crate::overlay::Parts;
use crate::problem::{Code, Problem};
use crate::reader::{Node, Reader};
use crate::record::Key;
use crate::source::{Source, SourceFile};
use std::collections::BTreeSet;
use toml::de::DeTable;

/// The value as it is written in the file: as given, or in quotes. `whole` makes the whole value of the key from it.
pub(super) fn readable(
    key: &'static Key,
    value: &str,
    whole: impl Fn(&str) -> String,
) -> Result<String, Box<Problem>> {
    let given = value.trim().to_owned();
    let quoted = toml::Value::String(given.clone()).to_string();
    match (trial(key, &whole(&given)), trial(key, &whole(&quoted))) {
        (Trial::Reads, _) => Ok(given),
        (_, Trial::Reads) => Ok(quoted),
        (Trial::Refused(as_given), Trial::Refused(in_quotes)) if wants_no_text(in_quotes.code) => {
            Err(as_given)
        }
        (_, Trial::Refused(in_quotes)) => Err(in_quotes),
        (Trial::Refused(as_given), Trial::NotToml) => Err(as_given),
        (Trial::NotToml, Trial::NotToml) => Err(Box::new(unreadable(key, &given))),
    }
}

/// What came out of reading a value on trial.
enum Trial {
    Reads,
    Refused(Box<Problem>),
    NotToml,
}

/// Reads a value on trial.
fn trial(key: &'static Key, value: &str) -> Trial {
    let name = key.name;
    let sources = [source(format!("{name} = {value}\n"))];
    let (tree, errors) = DeTable::parse_recoverable(&sources[0].text);
    let (parts, spoiled) = (Parts::new(), BTreeSet::new());
    let mut reader = Reader::new(&sources, &parts, &spoiled);
    match tree.get_ref().get(name) {
        Some(value) if errors.is_empty() && tree.get_ref().len() == 1 => {
            (key.check)(&mut reader, &Node::top(0, value, name, false));
        }
        _ => return Trial::NotToml,
    }
    match reader.problems.into_iter().next() {
        Some(problem) => Trial::Refused(Box::new(problem)),
        None => Trial::Reads,
    }
}

/// The refusal says that no text in quotes can be right.
fn wants_no_text(code: Code) -> bool {
    let codes = [
        Code::NotACount,
        Code::NotYesOrNo,
        Code::NotAPosition,
        Code::NotAList,
        Code::NotATable,
        Code::NotADay,
    ];
    codes.contains(&code)
}

/// A value that no quotes can hold.
fn unreadable(key: &'static Key, text: &str) -> Problem {
    let what = format!("this cannot be a value of `{}`", key.name);
    Problem::wrong(
        &source(text.to_owned()),
        &(0..text.len()),
        Code::NotToml,
        what,
    )
}

/// A text that problems can point into.
fn source(text: String) -> Source {
    Source::new(SourceFile {
        name: "new value".to_owned(),
        text,
    })
}
