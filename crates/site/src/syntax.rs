//! Text that is not TOML, as problems.

use crate::problem::{Code, Problem};
use crate::source::Source;
use std::ops::Range;

/// What the parser of TOML says, what that means, and what was expected instead.
const MEANINGS: &[(&str, &str, &str)] = &[
    (
        "string values must be quoted",
        NO_QUOTES,
        "text, quantities and words in quotes",
    ),
    (
        "key with no value",
        NO_VALUE,
        "an equals sign and a value behind the key",
    ),
    ("missing value", NO_VALUE, "a value behind the equals sign"),
    (
        "missing assignment",
        NO_VALUE,
        "an equals sign and a value behind the key",
    ),
    (
        "missing comma between array",
        "this list goes on without a comma",
        LIST,
    ),
    (
        "unexpected `=` in array",
        "this list goes on without a comma",
        LIST,
    ),
    (
        "unclosed array table",
        "this header is not closed",
        "`]]` behind the name of the table",
    ),
    ("unclosed array", "this list is not closed", LIST),
    (
        "extra comma in array",
        "this list has a comma too many",
        LIST,
    ),
    (
        "unclosed inline table",
        "these braces are not closed",
        BRACES,
    ),
    (
        "missing comma between key",
        "these braces go on without a comma",
        BRACES,
    ),
    (
        "extra comma in inline",
        "these braces have a comma too many",
        BRACES,
    ),
    (
        "unclosed table",
        "this header is not closed",
        "`]` behind the name of the table",
    ),
    (
        "missing opening quote",
        "these quotes are not closed",
        "quotes before and behind the text",
    ),
    (
        "invalid basic string",
        "these quotes are not closed",
        "quotes before and behind the text",
    ),
    (
        "invalid date",
        "the calendar has no such day",
        "a day of the calendar, such as `2026-11-25`",
    ),
    (
        "invalid unquoted key",
        "this cannot be a key",
        "small letters and `_`",
    ),
    (
        "unexpected key or value",
        "this stands behind the end of the value",
        "one key with its value on a line",
    ),
    (
        "duplicate key",
        "this stands twice in the same table",
        "each key, and each header in single brackets, once",
    ),
    (
        "invalid boolean",
        NO_QUOTES,
        "text, quantities and words in quotes",
    ),
    (
        "invalid literal string",
        "these quotes are not closed",
        "quotes before and behind the text",
    ),
    (
        "invalid multi-line",
        "these quotes are not closed",
        "three quotes before and behind the text, or one of each on a line",
    ),
    (
        "missing escaped value",
        "a backslash in double quotes begins a sign that there is not",
        "single quotes around a text with backslashes",
    ),
    (
        "unexpected leading zero",
        "a number cannot begin with a zero",
        "a quantity or a text in quotes",
    ),
];

const NO_QUOTES: &str = "this value has no quotes";
const NO_VALUE: &str = "this key has no value";
const LIST: &str = "a comma between the values of a list, and `]` behind the last";
const BRACES: &str = "a comma between the keys inside braces, and `}` behind the last";

/// What the parser of TOML found, as a problem with its place.
pub(crate) fn problem(source: &Source, error: &toml::de::Error) -> Problem {
    let span = error.span().unwrap_or_else(|| end(source));
    let message = error.message();
    let code = if message.starts_with("duplicate key") {
        Code::DoubledKey
    } else {
        Code::NotToml
    };
    let (what, expected) = meaning(message, span.is_empty());
    let problem = Problem::wrong(source, &span, code, what).expected(expected);
    let lacks_quotes = problem.what == NO_QUOTES;
    match quoted(source, &span).filter(|_| lacks_quotes) {
        Some(write) => problem.write(write),
        None => problem,
    }
}

/// What a message of the parser means, and what was expected. A value at no bytes is a value that is not there.
fn meaning(message: &str, at_nothing: bool) -> (String, String) {
    let found = MEANINGS
        .iter()
        .find(|(begin, ..)| message.starts_with(begin));
    match found {
        Some((_, NO_QUOTES, _)) if at_nothing => (
            NO_VALUE.to_owned(),
            "a value behind the equals sign".to_owned(),
        ),
        Some((_, what, expected)) => ((*what).to_owned(), (*expected).to_owned()),
        None => (
            format!("this line cannot be read: {message}"),
            "a line such as `name = \"words in quotes\"`".to_owned(),
        ),
    }
}

/// The end of the text.
fn end(source: &Source) -> Range<usize> {
    let end = source.text.trim_end().len();
    end..end
}

/// The line with quotes around what stands behind the equals sign.
fn quoted(source: &Source, span: &Range<usize>) -> Option<String> {
    let line = source
        .text
        .get(source.line_span(source.line_of(span.start)))?;
    let (line, _) = line.split_once('#').unwrap_or((line, ""));
    let (key, value) = line.split_once('=')?;
    let value = value.trim();
    let plain = !value.is_empty() && !value.contains(['"', '\'', '[', '{', '\\']);
    plain.then(|| format!("{} = \"{value}\"", key.trim()))
}
