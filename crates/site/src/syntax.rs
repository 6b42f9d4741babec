//! Text that is not TOML, as problems.

use crate::problem::{Code, Problem};
use crate::source::Source;

/// What the parser of TOML found, as a problem with its place.
pub(crate) fn problem(source: &Source, error: &toml::de::Error) -> Problem {
    let end = source.text.trim_end().len();
    let span = error.span().unwrap_or(end..end);
    let message = error.message();
    let (what, expected) = message.split_once(", expected ").unwrap_or((message, ""));
    let problem = Problem::wrong(
        source,
        &span,
        Code::NotToml,
        format!("this line cannot be read: {what}"),
    );
    if what == "duplicate key" {
        let problem = Problem::wrong(
            source,
            &span,
            Code::DoubledKey,
            "this key is written twice in the same table".to_owned(),
        );
        return problem.expected("each key once in its table");
    }
    if expected.is_empty() {
        problem.expected("a line such as `name = \"words in quotes\"`")
    } else {
        problem.expected(expected)
    }
}
